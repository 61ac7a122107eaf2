import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bank.progress.marks import FIXED, MISSED, Mark
from bank.progress.mastery import (
    MASTERED,
    NOT_YET,
    TOO_FEW,
    by_skill,
    has_slipped,
    mastery,
    verdict,
)
from bank.progress.settings import ProgressSettings

FIRST = dt.date(2026, 9, 14)
USUAL = ProgressSettings()


def chances(text: str, each: int = 1) -> list[tuple[dt.date, bool]]:
    """`+` for fixed alone, `-` for not; `each` to a day."""
    return [(FIRST + dt.timedelta(days=n // each), letter == "+") for n, letter in enumerate(text)]


def test_two_of_three_are_too_few_to_tell() -> None:
    found = mastery("tense", chances("++-"), USUAL)
    assert found.said == TOO_FEW
    assert (found.alone, found.count) == (2, 3)


def test_three_perfect_days_meet_the_rule_of_goals_but_tell_too_little() -> None:
    found = mastery("tense", chances("+++"), USUAL)
    assert found.goal_met and found.goal_first == FIRST + dt.timedelta(days=2)
    assert found.said == TOO_FEW


def test_a_day_below_the_share_breaks_the_rule_of_goals_and_it_stays_known_that_it_was_met() -> (
    None
):
    found = mastery("tense", chances("+++-"), USUAL)
    assert not found.goal_met and found.goal_first is not None


def test_one_of_two_on_a_day_is_below_eighty_percent() -> None:
    assert not mastery("tense", chances("+++++-", each=2), USUAL).goal_met
    assert mastery("tense", chances("++++++", each=2), USUAL).goal_met


def test_many_alone_are_mastered_and_as_many_misses_are_not() -> None:
    assert mastery("tense", chances("+" * 12), USUAL).said == MASTERED
    assert mastery("tense", chances("+-" * 10), USUAL).said == NOT_YET


def test_only_the_last_opportunities_count_since_learners_learn() -> None:
    found = mastery("tense", chances("-" * 30 + "+" * 20), USUAL)
    assert (found.alone, found.count, found.total) == (20, 20, 50)
    assert found.said == MASTERED


def test_numbers_of_the_rule_are_settings() -> None:
    strict = ProgressSettings(goal_share=0.9, goal_days=5, certainty=0.95)
    found = mastery("tense", chances("+" * 12), strict)
    assert found.goal_met and found.said == NOT_YET


def test_a_skill_that_is_missed_again_and_again_has_slipped() -> None:
    assert has_slipped(mastery("tense", chances("+" * 10 + "-+-+--+-+-" * 2), USUAL), USUAL)
    assert not has_slipped(mastery("tense", chances("+" * 18 + "--"), USUAL), USUAL)


@given(st.integers(8, 60), st.data())
def test_one_more_alone_never_makes_a_skill_less_mastered(count: int, data: st.DataObject) -> None:
    successes = data.draw(st.integers(0, count - 1))
    if verdict(successes, count, USUAL) == MASTERED:
        assert verdict(successes + 1, count, USUAL) == MASTERED


@pytest.mark.parametrize("help_given", ["gesture", "physical"])
def test_what_was_fixed_with_help_is_an_opportunity_but_not_alone(help_given: str) -> None:
    marks = [
        Mark(FIRST, "sentence", part="1", skill="tense", outcome=FIXED, help=help_given),
        Mark(FIRST, "sentence", part="2", skill="tense", outcome=MISSED),
        Mark(FIRST, "sentence", part="3", skill="plural", outcome=FIXED),
    ]
    found = {one.skill: (one.alone, one.count) for one in by_skill(marks, USUAL)}
    assert found == {"tense": (0, 2), "plural": (1, 1)}
