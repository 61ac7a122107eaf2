"""A learner's own version: fewer errors of the same sentence, by skills."""

import itertools
from typing import Any

import pytest

from bank.choose.own_version import atoms, choose, only


def fix(skill: str, wrong: str, right: str, wrong_start: int, right_start: int) -> dict[str, Any]:
    return {
        "skill": skill,
        "wrong": wrong,
        "right": right,
        "wrong_start": wrong_start,
        "wrong_end": wrong_start + len(wrong),
        "right_start": right_start,
        "right_end": right_start + len(right),
    }


SENTENCES = {
    "two errors in a word": (
        "max has two Frends",
        "Max has two friends.",
        [
            fix("capital-first", "max", "Max", 0, 0),
            fix("capital-extra", "Frends", "friends", 12, 12),
            fix("spelling", "Frends", "friends", 12, 12),
            fix("end-mark", "", ".", 18, 19),
        ],
    ),
    "a word left out": (
        "we sitt on rug.",
        "We sit on the rug.",
        [
            fix("capital-first", "we", "We", 0, 0),
            fix("spelling", "sitt", "sit", 3, 3),
            fix("article", "", "the", 11, 10),
        ],
    ),
    "a word too many": (
        "the hill is is big",
        "The hill is big.",
        [
            fix("capital-first", "the", "The", 0, 0),
            fix("extra-word", "is", "", 12, 12),
            fix("end-mark", "", ".", 18, 15),
        ],
    ),
    "two sentences run together": (
        "The singer practice now they know it.",
        "The singers practice. Now they know it.",
        [fix("plural", "singer", "singers", 4, 4), fix("run-on", "now", ". Now", 20, 20)],
    ),
}


@pytest.mark.parametrize("case", SENTENCES)
def test_any_errors_can_stay_and_the_others_are_mended(case: str) -> None:
    faulty, corrected, fixes = SENTENCES[case]
    groups = atoms(faulty, corrected, fixes)
    assert sorted(n for group in groups for n in group) == list(range(len(fixes)))
    for count in range(len(groups) + 1):
        for some in itertools.combinations(groups, count):
            keep = {n for group in some for n in group}
            made = only(faulty, corrected, fixes, keep)
            assert made is not None
            text, left = made
            assert {one["skill"] for one in left} == {fixes[n]["skill"] for n in keep}
            assert all(text[one["wrong_start"] : one["wrong_end"]] == one["wrong"] for one in left)
            assert "  " not in text and text == text.strip()
            if not keep:
                assert text == corrected
            if len(keep) == len(fixes):
                assert text == faulty


def test_a_capital_is_mended_by_itself_in_a_word_with_another_error() -> None:
    faulty, corrected, fixes = SENTENCES["two errors in a word"]
    spelled, _ = only(faulty, corrected, fixes, {2}) or ("", [])
    capital, _ = only(faulty, corrected, fixes, {1}) or ("", [])
    assert spelled == "Max has two frends."
    assert capital == "Max has two Friends."


def test_the_number_on_the_key_stays_what_it_was() -> None:
    faulty, corrected, fixes = SENTENCES["a word left out"]
    _, left = only(faulty, corrected, fixes, {2}) or ("", [])
    assert (left[0]["right_start"], left[0]["right_end"]) == (10, 13)


def test_places_that_do_not_lead_to_the_corrected_text_are_refused() -> None:
    fixes = [fix("spelling", "sitt", "sit", 4, 3)]
    assert only("we sitt", "We sit", fixes, set()) is None
    assert atoms("we sitt", "We sit", fixes) == []
    assert only("a", "b", [{"skill": "spelling", "wrong": "a", "right": "b"}], {0}) is None


def staying(errors: int, states: dict[str, str], **waited: int) -> set[str]:
    faulty, corrected, fixes = SENTENCES["two errors in a word"]
    groups = atoms(faulty, corrected, fixes)
    named = {code.replace("_", "-"): days for code, days in waited.items()}
    return {fixes[n]["skill"] for n in choose(groups, fixes, errors, states, named)}


def test_a_sentence_has_one_skill_in_work_and_the_others_are_mastered() -> None:
    states = {"spelling": "in-work", "capital-extra": "in-work", "end-mark": "mastered"}
    states["capital-first"] = "mastered"
    found = staying(3, states)
    assert found - {"spelling", "capital-extra"} == {"end-mark", "capital-first"}
    assert len(found & {"spelling", "capital-extra"}) == 1


def test_a_skill_that_was_never_taught_does_not_stay() -> None:
    states = {"end-mark": "mastered", "spelling": "in-work"}
    assert staying(4, states) == {"end-mark", "spelling"}


def test_of_mastered_skills_the_one_that_waited_longest_comes_first() -> None:
    states = {"end-mark": "mastered", "capital-first": "mastered"}
    assert staying(1, states, end_mark=3, capital_first=-2) == {"end-mark"}
    assert staying(1, states, end_mark=-2, capital_first=3) == {"capital-first"}


def test_where_only_work_is_listed_the_rest_counts_as_taught() -> None:
    found = staying(2, {"spelling": "in-work"})
    assert "spelling" in found and len(found) == 2


def test_nothing_stays_where_nothing_was_taught() -> None:
    assert staying(2, {"tense": "mastered"}) == set()
