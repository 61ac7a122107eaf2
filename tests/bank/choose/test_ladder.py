"""Who answers with a ring around a choice gets questions that have choices, and no rule is bent for it."""

from __future__ import annotations

import datetime as dt

from making import MONDAY, make_item, put

from bank.classroom import Bank

CHOICES = ("a cow", "a frog")


def questions_of(bank: Bank, code: str, day: dt.date = MONDAY) -> list[str]:
    (one,) = [found for found in bank.days.draw(day) if found.learner.code == code]
    return [part.item for part in one.of("question")]


def test_one_who_circles_is_asked_what_can_be_circled_while_the_bank_has_it(bank: Bank) -> None:
    """Also where one question in forty has choices, so that a sample of the band may miss them."""
    listed = [make_item(n, grade=1.0, choices=CHOICES) for n in range(10)]
    plain = [make_item(n, grade=1.0) for n in range(100, 500)]
    asked = [make_item(n, grade=1.0, question_word="yes-no") for n in range(1000, 1010)]
    put(bank, *plain, *listed, *asked)
    bank.learners.add("K4", 2.0, questions=5, mode="circles")
    given: list[str] = []
    for number in range(5):
        given += questions_of(bank, "K4", MONDAY + dt.timedelta(days=number))
    to_circle = {item.id for item in [*listed, *asked]}
    assert len(set(given)) == 25
    first = len(to_circle & {*given[:20]})
    assert first >= 18, "what can be circled comes before anything else, but for a theme's sake"


def test_others_are_asked_as_before(bank: Bank) -> None:
    put(bank, *(make_item(n, grade=1.0, choices=CHOICES if n % 4 == 0 else ()) for n in range(80)))
    bank.learners.add("K4", 2.0, questions=5)
    before = questions_of(bank, "K4")
    bank.days.undo(MONDAY)
    bank.learners.add("B2", 2.0, questions=5, mode="circles")
    assert questions_of(bank, "K4") == before


def test_in_a_group_the_question_suits_the_one_who_circles(bank: Bank) -> None:
    put(bank, *(make_item(n, grade=1.0, choices=CHOICES if n % 4 == 0 else ()) for n in range(80)))
    bank.learners.add("K4", 2.0, questions=5, group="A")
    bank.learners.add("B2", 2.0, questions=5, group="A", mode="circles")
    shared = questions_of(bank, "B2")
    assert shared == questions_of(bank, "K4")
    assert all(bank.items.get(item).choices for item in shared)


def test_choices_bring_no_easier_question_while_the_band_has_a_new_one(bank: Bank) -> None:
    put(bank, *(make_item(n, grade=0.2, choices=CHOICES) for n in range(20)))
    put(bank, *(make_item(n, grade=1.8) for n in range(100, 103)))
    bank.learners.add("K4", 3.0, questions=5, mode="circles")
    given = questions_of(bank, "K4")
    assert {"q00100", "q00101", "q00102"} < set(given)


def test_choices_bring_no_third_question_of_a_theme_while_there_is_another(bank: Bank) -> None:
    put(bank, *(make_item(n, grade=1.0, choices=CHOICES, themes=("snow",)) for n in range(20)))
    put(bank, *(make_item(n, grade=1.0) for n in range(100, 140)))
    bank.learners.add("K4", 2.0, questions=5, mode="circles")
    given = questions_of(bank, "K4")
    assert sum("snow" in bank.items.get(item).themes for item in given) == 2


def test_where_all_are_of_one_theme_those_to_circle_fill_the_page(bank: Bank) -> None:
    put(bank, *(make_item(n, grade=1.0, choices=CHOICES, themes=("snow",)) for n in range(5)))
    put(bank, *(make_item(n, grade=1.0, themes=("snow",)) for n in range(100, 140)))
    bank.learners.add("K4", 2.0, questions=5, mode="circles")
    assert all(bank.items.get(item).choices for item in questions_of(bank, "K4"))


def test_a_teacher_may_still_name_a_question_without_choices(bank: Bank) -> None:
    put(bank, *(make_item(n, grade=1.0, choices=CHOICES) for n in range(20)))
    put(bank, make_item(100, grade=1.0))
    bank.learners.add("K4", 2.0, questions=5, mode="circles")
    bank.days.draw(MONDAY)
    assert bank.days.swap("K4", MONDAY, "question 1", "fits today", "q00100")[1].item == "q00100"
    again = bank.days.swap("K4", MONDAY, "question 1", "no, choices")[1]
    assert again.choices
