import datetime as dt

import pytest

from bank.item import BankError
from bank.progress.chart import Goal, Phase, Point, aim_on, chart, in_words, weekly
from bank.progress.spark import sparkline

MONDAY = dt.date(2026, 9, 14)


def points(*shares: int) -> list[Point]:
    """A point a week, so many of ten."""
    weeks = [MONDAY + dt.timedelta(weeks=n) for n in range(len(shares))]
    return [Point(week, week, share, 10) for week, share in zip(weeks, shares, strict=True)]


def test_the_aim_line_runs_from_the_middle_of_the_first_three_points_to_the_aim() -> None:
    by = MONDAY + dt.timedelta(weeks=11)
    found = chart(Goal("tense", 0.9, by), points(4, 2, 5, 6), [])
    assert found is not None and found.aim_line is not None
    (first, low), (last, high) = found.aim_line
    assert (first, low) == (MONDAY + dt.timedelta(weeks=1), 0.4)
    assert (last, high) == (by, 0.9)
    assert aim_on(found, MONDAY + dt.timedelta(weeks=6)) == pytest.approx(0.65)
    assert "on or above the aim line" in in_words(found)


def test_without_a_day_to_reach_it_there_is_a_level_and_no_line() -> None:
    found = chart(Goal("tense", 0.8), points(4, 9, 9, 8), [])
    assert found is not None and found.aim_line is None
    assert in_words(found) == "aim 80%; 3 of the last 3 points reach it"


def test_points_are_not_joined_across_a_phase_line() -> None:
    noted = [Phase(MONDAY + dt.timedelta(weeks=2), "new seat")]
    found = chart(Goal("tense"), points(4, 5, 7, 8), noted)
    assert found is not None
    assert [[p.alone for p in some] for some in found.stretches()] == [[4, 5], [7, 8]]


def test_a_change_before_the_first_point_is_no_line() -> None:
    noted = [Phase(MONDAY - dt.timedelta(days=3), "before"), Phase(MONDAY, "on the first day")]
    found = chart(Goal("tense"), points(4, 5), noted)
    assert found is not None and [one.words for one in found.phases] == ["on the first day"]


def test_a_week_is_one_point_with_its_counts() -> None:
    days = [(MONDAY, 1, 1), (MONDAY + dt.timedelta(days=3), 0, 2), (MONDAY + dt.timedelta(7), 1, 1)]
    assert [(p.alone, p.count) for p in weekly(days)] == [(1, 3), (1, 1)]


def test_an_aim_that_is_no_share_is_refused() -> None:
    with pytest.raises(BankError):
        Goal("tense", 1.2)


def test_a_sparkline_shows_the_last_days_and_leaves_gaps() -> None:
    assert sparkline([0.0, 1.0, None, 0.5], 3) == "█ ▄"
