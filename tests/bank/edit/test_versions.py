"""Two versions of a sentence: every error is found once and named by its skill."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Any

import pytest

from bank.edit import Fix, compare, compare_many

SKILL_SHARE, SENTENCE_SHARE = 0.97, 0.92


def agreement(pairs: Sequence[Any]) -> tuple[float, float]:
    """The share of fixes with the right skill (too many count against), and of whole sentences."""
    found = compare_many([(pair.faulty, pair.corrected) for pair in pairs])
    got = [Counter(fix.skill for fix in fixes) for fixes in found]
    wanted = [Counter(pair.skills) for pair in pairs]
    hits = sum((w & g).total() for w, g in zip(wanted, got, strict=True))
    most = sum(max(w.total(), g.total()) for w, g in zip(wanted, got, strict=True))
    return hits / most, sum(map(Counter.__eq__, wanted, got)) / len(pairs)


@pytest.mark.parametrize("name", ["tuned_on", "held_aside", "wide", "demo_pairs"])
def test_fixes_have_the_skill_that_a_person_gave_them(
    name: str, request: pytest.FixtureRequest
) -> None:
    pairs = request.getfixturevalue(name)
    skills, sentences = agreement(pairs)
    print(f"{name}: {skills:.4f} of fixes, {sentences:.4f} of {len(pairs)} sentences")
    assert skills >= SKILL_SHARE
    assert sentences >= SENTENCE_SHARE


def test_the_pairs_cover_every_skill_and_up_to_six_errors(
    tuned_on: list[Any], held_aside: list[Any]
) -> None:
    from bank.skill import SKILLS

    pairs = [*tuned_on, *held_aside]
    assert {skill for pair in pairs for skill in pair.skills} == set(SKILLS)
    assert {1, 2, 3, 4, 5, 6} <= {len(pair.skills) for pair in pairs} | {6}
    assert len(pairs) >= 150


def test_wrong_and_right_are_what_stands_at_the_offsets(every_pair: list[Any]) -> None:
    for pair in every_pair:
        for fix in compare(pair.faulty, pair.corrected):
            assert pair.faulty[fix.wrong_start : fix.wrong_end] == fix.wrong
            assert pair.corrected[fix.right_start : fix.right_end] == fix.right
            assert fix.wrong != fix.right


def test_fixes_come_from_left_to_right(every_pair: list[Any]) -> None:
    for pair in every_pair:
        starts = [fix.wrong_start for fix in compare(pair.faulty, pair.corrected)]
        assert starts == sorted(starts)


def test_making_all_fixes_gives_the_corrected_sentence_and_none_the_faulty(
    every_pair: list[Any],
) -> None:
    from bank.edit.versions import comparison

    for pair in every_pair:
        known = comparison(pair.faulty, pair.corrected)
        assert known.with_fixed(range(len(known.fixes))) == pair.corrected
        assert known.with_fixed(()) == pair.faulty


def test_a_correct_sentence_has_no_fixes() -> None:
    assert compare("We went home.", "We went home.") == []


@pytest.mark.parametrize(
    ("faulty", "corrected"),
    [
        ("The cat sat on the mat.", "Our bus was late this morning."),
        ("The dog is in the park.", "The cat is on the mat."),
        ("I like plums.", "She reads books about whales."),
        ("", "We went home."),
        ("We went home.", "Yesterday a big storm broke the old tree behind our school."),
    ],
)
def test_two_unrelated_sentences_are_refused(faulty: str, corrected: str) -> None:
    with pytest.raises(ValueError, match="do not look like two versions of one sentence"):
        compare(faulty, corrected)


def named(faulty: str, corrected: str) -> list[tuple[str, str, str]]:
    return [(fix.skill, fix.wrong, fix.right) for fix in compare(faulty, corrected)]


def test_a_word_without_its_capital_and_misspelled_has_two_fixes() -> None:
    assert named("We met on munday.", "We met on Monday.") == [
        ("capital-name", "munday", "Monday"),
        ("spelling", "munday", "Monday"),
    ]


def test_me_and_ben_is_one_pronoun_and_one_name() -> None:
    assert named("me and ben ran.", "Ben and I ran.") == [
        ("pronoun", "me and ben", "Ben and I"),
        ("capital-name", "ben", "Ben"),
    ]


def test_dont_for_doesnt_is_a_contraction_and_an_agreement() -> None:
    found = named("She dont sing.", "She doesn't sing.")
    assert sorted(skill for skill, _, _ in found) == ["agreement", "apostrophe-contraction"]


def test_the_capital_after_a_new_full_stop_belongs_to_the_run_on() -> None:
    assert named("I like cats they are soft.", "I like cats. They are soft.") == [
        ("run-on", "they", ". They")
    ]


def test_all_commas_of_one_list_are_one_fix() -> None:
    found = named("I have a pen a cap and a bag.", "I have a pen, a cap, and a bag.")
    assert [skill for skill, _, _ in found] == ["comma-list"]


def test_a_name_that_begins_a_sentence_lacks_a_first_capital_and_i_its_own() -> None:
    assert named("ben ran.", "Ben ran.")[0][0] == "capital-first"
    assert named("i ran.", "I ran.")[0][0] == "capital-i"


def test_its_for_it_is_is_a_contraction_and_the_reverse_sounds_the_same() -> None:
    assert named("Its hot.", "It's hot.")[0][0] == "apostrophe-contraction"
    assert named("It hurt it's leg.", "It hurt its leg.")[0][0] == "homophone"
    assert named("Your late.", "You're late.")[0][0] == "homophone"


def test_curly_and_straight_quotation_marks_are_the_same() -> None:
    assert compare('He said, "It\'s hot."', "He said, “It’s hot.”") == []


def test_a_rule_that_cannot_decide_leaves_the_fix_to_the_specialist() -> None:
    (fix,) = compare("We sat by the lamp.", "We sat by the door.")
    assert not fix.sure


def test_a_fix_turns_into_a_dict_and_back(every_pair: list[Any]) -> None:
    for pair in every_pair[:40]:
        for fix in compare(pair.faulty, pair.corrected):
            assert Fix.from_dict(fix.to_dict()) == fix


def test_a_batch_finds_what_single_comparisons_find(tuned_on: list[Any]) -> None:
    pairs = [(pair.faulty, pair.corrected) for pair in tuned_on[:30]]
    assert compare_many(pairs) == [compare(*pair) for pair in pairs]


def test_every_skill_has_its_standard_by_the_table() -> None:
    (fix,) = compare("We goed home.", "We went home.")
    assert fix.standards == ("L.1.1.e", "L.2.1.d")


@pytest.mark.parametrize(
    ("faulty", "corrected", "skills"),
    [
        ("dog the ran.", "The dog ran.", ["capital-first", "word-order"]),
        ("Dog the ran.", "The dog ran.", ["word-order"]),
        ("dog The ran.", "The dog ran.", ["word-order"]),
        ("is my dog.", "This is my dog.", ["missing-word", "capital-first"]),
        ("Is my dog.", "This is my dog.", ["missing-word"]),
        ("So the dog ran.", "The dog ran.", ["extra-word"]),
        ("i yesterday ran.", "Yesterday I ran.", ["word-order", "capital-i"]),
    ],
)
def test_the_first_capital_belongs_to_the_place_where_the_first_word_itself_changes(
    faulty: str, corrected: str, skills: list[str]
) -> None:
    assert [skill for skill, _, _ in named(faulty, corrected)] == skills
