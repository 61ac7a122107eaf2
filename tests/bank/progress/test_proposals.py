import datetime as dt

from bank.progress.independence import Day
from bank.progress.mastery import mastery
from bank.progress.proposals import (
    EASIER,
    SKILL_MASTERED,
    SKILL_SLIPPED,
    STEADY,
    STUCK,
    Proposal,
    proposals,
)
from bank.progress.settings import ProgressSettings

USUAL = ProgressSettings()
MONDAY = dt.date(2026, 9, 14)


def days(*alone: int) -> list[Day]:
    """Days with so many of ten steps done alone."""
    return [Day(MONDAY + dt.timedelta(days=n), one, 10) for n, one in enumerate(alone)]


def looked(
    some: list[Day], skills: str = "", state: str = "in-work", band: tuple[float, float] = (1, 2.5)
) -> dict[str, Proposal]:
    chances = [(MONDAY + dt.timedelta(days=n), letter == "+") for n, letter in enumerate(skills)]
    found = [mastery("tense", chances, USUAL)] if skills else []
    all_found = proposals("K4", band, {"tense": state}, some, found, USUAL)
    return {one.kind: one for one in all_found}


def test_trouble_is_said_after_two_days_with_its_numbers() -> None:
    found = looked(days(10, 9, 6, 5))
    assert set(found) == {STUCK}
    assert "6 of 10 and 5 of 10" in found[STUCK].evidence and not found[STUCK].command


def test_two_weeks_under_eighty_percent_propose_an_easier_band() -> None:
    found = looked(days(*[7] * 10))
    assert set(found) == {EASIER}
    assert found[EASIER].command == "learner change K4 --band 0.5-2"
    assert "70 of 100" in found[EASIER].evidence


def test_two_bad_days_in_two_good_weeks_propose_no_easier_band() -> None:
    assert EASIER not in looked(days(10, 10, 10, 10, 10, 10, 10, 10, 0, 0))
    assert EASIER not in looked(days(*[7] * 9))


def test_the_easiest_band_cannot_get_easier() -> None:
    assert set(looked(days(*[7] * 10), band=(0, 1))) == {STUCK}


def test_steady_work_is_only_mentioned_and_changes_nothing() -> None:
    found = looked(days(*[10] * 9, 9))
    assert set(found) == {STEADY} and not found[STEADY].command


def test_a_skill_in_work_that_is_likely_mastered_is_proposed_with_its_range() -> None:
    found = looked([], "+" * 12)
    assert found[SKILL_MASTERED].command == "learner change K4 --skill tense=mastered"
    assert "12 of the last 12" in found[SKILL_MASTERED].evidence
    assert not looked([], "+" * 12, state="taught")
    assert not looked([], "+++")


def test_a_mastered_skill_that_slipped_is_proposed_for_work_again() -> None:
    found = looked([], "+-" * 10, state="mastered")
    assert found[SKILL_SLIPPED].command == "learner change K4 --skill tense=in-work"
