"""Mastered skills come back at growing intervals, so that they stay (common practice).

After the first interval a skill is due; fixed alone, it waits for the next longer one; missed, it
starts again with the first. Intervals are counted in school days.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence


def due_day(
    days: Sequence[tuple[dt.date, bool]],
    intervals: Sequence[int],
    later: Callable[[dt.date, int], dt.date],
) -> dt.date | None:
    """The day from which a mastered skill should come up again; None where it never came up.

    `days` are its data days in order with whether all was fixed alone. `later(day, n)` is the school
    day `n` after `day`. A day on which the skill came up before it was due moves nothing on but the
    count of days: only work after the wait earns a longer wait.
    """
    rung = 0
    due: dt.date | None = None
    for day, alone in days:
        if not alone:
            rung = 0
        elif due is not None and day >= due:
            rung = min(rung + 1, len(intervals) - 1)
        due = later(day, intervals[rung])
    return due


NEVER_CAME_UP = 10_000


def days_overdue(
    days: Sequence[tuple[dt.date, bool]], today: dt.date, intervals: Sequence[int]
) -> int:
    """By how many days a mastered skill is overdue; below 0 it is not due yet.

    One that never came up since there are marks is due before all others.

    >>> monday = dt.date(2026, 9, 14)
    >>> days_overdue([(monday, True)], dt.date(2026, 9, 17), (2, 4, 8))
    1
    """
    due = due_day(days, intervals, weekdays_later)
    return NEVER_CAME_UP if due is None else (today - due).days


def weekdays_later(day: dt.date, count: int) -> dt.date:
    """`count` weekdays after `day`: what a school day is where no calendar says otherwise."""
    weeks, rest = divmod(count, 5)
    day += dt.timedelta(days=7 * weeks)
    while rest:
        day += dt.timedelta(days=1)
        rest -= day.weekday() < 5
    return day
