"""One answer for a day, whichever day of its week is asked: weeks are planned whole, one by one.

Each week is planned to its end, from what was given out and planned before it. A week that has begun
is planned as on its first day as long as that agrees with what was given out since, so that a look
ahead still holds when its day comes.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import replace
from datetime import date, timedelta

from bank.calendar import SchoolCalendar, monday_of
from bank.morning.jobs import Away, TurnSettings
from bank.morning.tally import Turn
from bank.morning.turns import Problem, TurnPlan, plan_turns


def plan_weeks(
    settings: TurnSettings,
    posted: Iterable[Turn],
    calendar: SchoolCalendar,
    away: Collection[Away],
    start: date,
    last: date,
) -> TurnPlan:
    """The turns from `start` to the end of the week of `last`; earlier days stay as posted."""
    given = list(posted)
    turns: list[Turn] = []
    new: list[Turn] = []
    problems: list[Problem] = []
    monday = monday_of(start)
    while monday <= last:
        first, end = max(start, monday), monday + timedelta(days=6)
        plan = _week(settings, given, calendar, away, first, end)
        given += plan.new
        turns += plan.turns
        new += plan.new
        problems += plan.problems
        monday += timedelta(days=7)
    return TurnPlan(tuple(turns), tuple(new), tuple(problems))


def _week(
    settings: TurnSettings,
    given: Collection[Turn],
    calendar: SchoolCalendar,
    away: Collection[Away],
    first: date,
    end: date,
) -> TurnPlan:
    """The turns from `first` to the `end` of its week."""
    plan = plan_turns(settings, given, calendar, away, first, end)
    begun = {turn for turn in given if monday_of(first) <= turn.day <= end}
    if not begun or all(turn.instead_of for turn in plan.new):
        return plan
    # Planned day by day, the rest of the week could come out otherwise than it was first told.
    before = [turn for turn in given if turn not in begun]
    began = min(first, *(turn.day for turn in begun))
    afresh = plan_turns(settings, before, calendar, away, began, end)
    if not begun <= set(afresh.turns):
        return plan
    return replace(
        afresh,
        turns=tuple(turn for turn in afresh.turns if turn.day >= first),
        new=tuple(turn for turn in afresh.new if turn.day >= first and turn not in begun),
        problems=tuple(p for p in afresh.problems if p.day >= first or p.rule == "keyboard"),
    )
