"""A goal as teams draw it: data points, an aim line and phase lines (single-subject graphs).

Common practice, from memory: points are joined within a phase and never across a phase line; the aim
line runs from the middle of the first three points to the aim on the day by which it is to be met.
"""

from __future__ import annotations

import datetime as dt
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from bank.item import BankError

INDEPENDENCE = "independence"
BASELINE_POINTS = 3


@dataclass(frozen=True, slots=True)
class Point:
    """One data point: so many of so many in the days from `first` to `last`."""

    first: dt.date
    last: dt.date
    alone: int
    count: int

    @property
    def share(self) -> float:
        return self.alone / self.count


@dataclass(frozen=True, slots=True)
class Phase:
    """Something changed on that day: a line on every chart."""

    day: dt.date
    words: str


@dataclass(frozen=True, slots=True)
class Goal:
    """What a learner works towards: `name` is `independence` or a skill's code.

    `aim` is a share; `by` is the day by which it is to be reached, None where nobody said.
    """

    name: str
    aim: float = 0.8
    by: dt.date | None = None
    words: str = ""

    def __post_init__(self) -> None:
        if not 0 < self.aim <= 1:
            raise BankError(f"an aim is a share between 1 and 100 %, not {self.aim:.0%}")

    def to_dict(self) -> dict[str, Any]:
        return {
            "name": self.name,
            "aim": self.aim,
            "by": self.by.isoformat() if self.by else "",
            "words": self.words,
        }

    @classmethod
    def from_dict(cls, plain: dict[str, Any]) -> Goal:
        by = dt.date.fromisoformat(plain["by"]) if plain.get("by") else None
        return cls(plain["name"], plain.get("aim", 0.8), by, plain.get("words", ""))


@dataclass(frozen=True, slots=True)
class Chart:
    """One goal with its points; `aim_line` is ((day, share), (day, share)) or None."""

    goal: Goal
    points: tuple[Point, ...]
    phases: tuple[Phase, ...]
    aim_line: tuple[tuple[dt.date, float], tuple[dt.date, float]] | None

    @property
    def first(self) -> dt.date:
        return self.points[0].first

    @property
    def last(self) -> dt.date:
        ends = [self.points[-1].last]
        if self.aim_line:
            ends.append(self.aim_line[1][0])
        return max(ends)

    def stretches(self) -> list[list[Point]]:
        """The points that are joined: broken at each phase line."""
        made: list[list[Point]] = []
        before: Point | None = None
        for point in self.points:
            between = before is not None and any(
                before.first < phase.day <= point.first for phase in self.phases
            )
            if before is None or between:
                made.append([])
            made[-1].append(point)
            before = point
        return made


def weekly(days: Sequence[tuple[dt.date, int, int]]) -> list[Point]:
    """One point for each week: a skill's one or two opportunities a day are no picture by themselves."""
    weeks: dict[dt.date, list[tuple[dt.date, int, int]]] = {}
    for day in days:
        weeks.setdefault(day[0] - dt.timedelta(days=day[0].weekday()), []).append(day)
    return [
        Point(
            week[0][0],
            week[-1][0],
            sum(alone for _, alone, _ in week),
            sum(count for _, _, count in week),
        )
        for _, week in sorted(weeks.items())
    ]


def daily(days: Sequence[tuple[dt.date, int, int]]) -> list[Point]:
    return [Point(day, day, alone, count) for day, alone, count in days if count]


def chart(goal: Goal, points: Sequence[Point], phases: Sequence[Phase]) -> Chart | None:
    """The chart of a goal; None where there is no point yet."""
    if not points:
        return None
    inside = tuple(phase for phase in phases if points[0].first <= phase.day <= points[-1].last)
    line = None
    base = points[:BASELINE_POINTS]
    if goal.by and len(base) == BASELINE_POINTS and goal.by > base[1].first:
        line = ((base[1].first, statistics.median(p.share for p in base)), (goal.by, goal.aim))
    return Chart(goal, tuple(points), inside, line)


def in_words(found: Chart) -> str:
    """What the last points are beside the aim, in plain words."""
    last = found.points[-3:]
    where = f"aim {found.goal.aim:.0%}"
    if found.aim_line is None:
        above = sum(point.share >= found.goal.aim for point in last)
        return f"{where}; {above} of the last {len(last)} points reach it"
    above = sum(point.share >= aim_on(found, point.first) for point in last)
    return f"{where}; {above} of the last {len(last)} points on or above the aim line"


def aim_on(found: Chart, day: dt.date) -> float:
    """The aim line's height on a day; the aim itself after its end."""
    if found.aim_line is None:
        return found.goal.aim
    (first, low), (last, high) = found.aim_line
    part = min(1.0, max(0.0, (day - first).days / max(1, (last - first).days)))
    return low + part * (high - low)
