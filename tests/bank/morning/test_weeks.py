"""A look ahead holds: a day has the same turns whichever day is asked, and when it has come."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from bank.calendar import SchoolCalendar
from bank.morning.jobs import DAILY, WEEKLY, Away, Job, Member, TurnSettings
from bank.morning.tally import Turn
from bank.morning.weeks import plan_weeks

MONDAY = date(2026, 9, 14)
DAYS = [MONDAY + timedelta(days=n) for n in (0, 1, 2, 3, 4, 7, 8, 9, 10, 11)]


def crowded(*jobs: tuple[str, tuple[str, ...]], learners: int) -> TurnSettings:
    """Jobs that all clash, each with its rhythm and those who can take it."""
    made = tuple(
        Job(f"job{n}", f"Job {n}", rhythm, only=only, during=("line",))
        for n, (rhythm, only) in enumerate(jobs)
    )
    return TurnSettings(tuple(Member(f"K{n}") for n in range(1, learners + 1)), made)


CLASSES = [
    crowded((DAILY, ()), (DAILY, ("K2", "K3")), (DAILY, ("K1", "K3")), learners=3),
    crowded((WEEKLY, ()), (DAILY, ()), (WEEKLY, ("K1", "K2", "K4")), learners=5),
]


def told(
    class_: TurnSettings, posted: list[Turn], away: list[Away], today: date, day: date
) -> list[Turn]:
    plan = plan_weeks(class_, posted, SchoolCalendar(), away, today, day)
    return [turn for turn in plan.turns if turn.day == day]


@pytest.mark.parametrize("class_", CLASSES)
def test_what_was_told_on_monday_holds_while_the_days_are_given_out(class_: TurnSettings) -> None:
    plan = plan_weeks(class_, [], SchoolCalendar(), [], MONDAY, DAYS[-1]).turns
    first = {day: [turn for turn in plan if turn.day == day] for day in DAYS}
    posted: list[Turn] = []
    for at, today in enumerate(DAYS):
        for day in (DAYS[at], DAYS[-1]) if at in (0, 1, 4, 6) else ():
            assert told(class_, posted, [], today, day) == first[day]
        posted += first[today]


def test_a_stand_in_and_the_turn_given_back_are_told_whichever_day_is_asked() -> None:
    class_ = TurnSettings(tuple(Member(f"K{n}") for n in range(1, 5)), (Job("line", "Line"),))
    posted = list(plan_weeks(class_, [], SchoolCalendar(), [], MONDAY, DAYS[4]).turns)
    (second,) = (turn.learner for turn in posted if turn.day == DAYS[1])
    away = [Away(second, DAYS[1], DAYS[1])]
    whole = plan_weeks(class_, posted, SchoolCalendar(), away, MONDAY, DAYS[4])
    (stand_in, given_back) = whole.new
    assert stand_in.instead_of == second and given_back.learner == second
    assert given_back in told(class_, posted, away, MONDAY, given_back.day)
    # Both halves of the swap are given out together.
    assert whole.new_until(DAYS[0]) == []
    assert whole.new_until(DAYS[1]) == [stand_in, given_back]
