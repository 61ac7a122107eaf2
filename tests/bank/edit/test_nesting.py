"""One sentence for a whole class: each learner's errors, nested."""

from __future__ import annotations

import pytest

from bank.edit import Door, compare, doors, mark_attempt, offers

TEXT = "On May 4, 2020, my grandmother and I went to Austin, Texas, and we saw two big dogs."
EASY = ("capital-first", "end-mark", "capital-i")
MORE = (*EASY, "capital-name", "tense", "plural")
MOST = (*MORE, "comma-date", "comma-place", "comma-join", "homophone", "spelling", "agreement")
CLASS = (
    Door(4, MORE, ("capital-first", "end-mark", "capital-i", "capital-name"), ("tense",)),
    Door(2, EASY, ("capital-first", "end-mark"), ("capital-i",)),
    Door(6, MOST, MORE, ("comma-place",)),
)


@pytest.mark.parametrize("seed", [0, 1, 2])
def test_every_learner_gets_as_many_errors_of_taught_skills_as_the_setting_says(seed: int) -> None:
    for door, version in zip(CLASS, doors(TEXT, CLASS, seed), strict=True):
        assert len(version.fixes) == door.errors
        assert {fix.skill for fix in version.fixes} <= set(door.taught)
        assert compare(version.faulty, TEXT) == version.fixes


@pytest.mark.parametrize("seed", [0, 1, 2])
def test_versions_nest_so_that_the_board_agrees_with_every_page(seed: int) -> None:
    made = sorted(doors(TEXT, CLASS, seed), key=lambda version: len(version.fixes))
    for easier, fuller in zip(made, made[1:], strict=False):
        places = {(fix.skill, fix.right_start) for fix in fuller.fixes}
        assert {(fix.skill, fix.right_start) for fix in easier.fixes} <= places
        marks = mark_attempt(fuller.faulty, TEXT, easier.faulty)
        assert marks.introduced == []
        assert len(marks.missed) == len(easier.fixes)


def test_all_but_one_error_are_of_mastered_skills_and_one_is_in_work() -> None:
    for door, version in zip(CLASS, doors(TEXT, CLASS), strict=True):
        if not version.lacks:
            work = [fix for fix in version.fixes if fix.skill in door.in_work]
            assert len(work) == 1
            assert all(f.skill in door.mastered for f in version.fixes if f not in work)
    assert sum(not version.lacks for version in doors(TEXT, CLASS)) >= 2


def test_a_learner_for_whom_nothing_can_be_made_gets_the_right_sentence_and_a_note() -> None:
    version, other = doors("It is hot.", [Door(1, ("comma-date",)), Door(1, ("capital-first",))])
    assert version.fixes == [] and version.faulty == "It is hot."
    assert version.lacks == ["0 of 1 errors"]
    assert other.faulty in ("it is hot.", "It is hot.")


def test_three_versions_are_offered_from_one_error_to_three() -> None:
    made = offers("We went to the park, and I saw a big dog.")
    assert [len(one.fixes) for one in made] == [1, 2, 3]
