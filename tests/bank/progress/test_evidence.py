from bank.progress.evidence import Given, evidence


def given(item: str, learner: int, alone: bool, grade: float = 1.0, **more: int) -> Given:
    return Given(item, learner, "question", grade, True, alone, **more)


def a_class(alone_on_hard: int) -> list[Given]:
    """Six learners with ten easy items each, all done alone, and one that fewer did alone."""
    found = [given(f"q{n}", who, True) for who in range(6) for n in range(10)]
    return found + [given("hard", who, who < alone_on_hard) for who in range(6)]


def test_an_item_that_the_same_learners_do_worse_stands_first_with_its_counts() -> None:
    first = evidence(a_class(2))[0]
    assert (first.item, first.given, first.alone, first.helped) == ("hard", 6, 2, 4)
    assert first.expected == 6.0 and first.goes_worse


def test_one_learner_more_or_less_is_no_evidence() -> None:
    assert not any(one.goes_worse for one in evidence(a_class(6)))
    two = [given("q1", who, False) for who in range(2)]
    two += [given(f"q{n}", who, True) for who in range(2) for n in range(2, 9)]
    assert not any(one.goes_worse for one in evidence(two))


def test_a_learner_who_seldom_works_alone_is_their_own_measure() -> None:
    found = [given(f"q{n}", who, False) for who in range(4) for n in range(8)]
    assert not any(one.goes_worse for one in evidence(found))


def test_items_of_another_level_are_no_measure_where_there_are_enough_of_its_own() -> None:
    found = [given(f"easy{n}", who, True, 0.5) for who in range(4) for n in range(6)]
    found += [given(f"hard{n}", who, False, 3.0) for who in range(4) for n in range(7)]
    by_item = {one.item: one for one in evidence(found)}
    assert not by_item["hard1"].goes_worse and by_item["hard1"].expected == 0.0


def test_swaps_and_objections_bring_an_item_up_without_any_mark() -> None:
    found = {one.item: one for one in evidence([], ["q1", "q1", "q2"], {"q3": "sad topic"})}
    assert found["q1"].needs_a_look and not found["q2"].needs_a_look
    assert found["q3"].needs_a_look and found["q3"].objection == "sad topic"


def test_counts_of_learners_who_were_forgotten_still_count() -> None:
    left = {"q1": {"given": 2, "alone": 1, "helped": 1, "not_done": 0, "fixes": 0, "missed": 0}}
    (one,) = evidence([given("q1", 1, True)], forgotten=left)
    assert (one.given, one.alone, one.helped) == (3, 2, 1)
