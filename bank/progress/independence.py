"""Independence: what was done without an adult, by day and by step, and whether help is falling."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from bank.progress.marks import DONE, STEP, Mark, whole

# Days that are set side by side to say whether help rises or falls (common practice: a week).
WEEK = 5
# A mean level of help that moved by less is called steady.
NOTICED = 0.15


@dataclass(frozen=True, slots=True)
class Day:
    """How many steps of a day were done alone, and the mean level of help.

    `help` counts 0 for alone, 1 for the least help and so on, over what was done; None where nothing was.
    """

    day: dt.date
    alone: int
    count: int
    help: float | None = None

    @property
    def share(self) -> float:
        return self.alone / self.count if self.count else 0.0


@dataclass(frozen=True, slots=True)
class StepShare:
    """One step of the morning: its days, and how the help went between the last two weeks."""

    step: str
    days: tuple[Day, ...]
    trend: str

    @property
    def alone(self) -> int:
        return sum(day.alone for day in self.days)

    @property
    def count(self) -> int:
        return sum(day.count for day in self.days)


def by_day(marks: Iterable[Mark], prompts: Sequence[str]) -> list[Day]:
    """The days with marks, in order."""
    days: dict[dt.date, list[Mark]] = {}
    for mark in whole(list(marks)):
        days.setdefault(mark.day, []).append(mark)
    return [_day(day, days[day], prompts) for day in sorted(days)]


def by_step(marks: Iterable[Mark], prompts: Sequence[str]) -> list[StepShare]:
    """Each step with its days: questions together, the sentence, the topic, then the routine's."""
    steps: dict[str, list[Mark]] = {}
    for mark in whole(list(marks)):
        steps.setdefault(mark.part if mark.kind == STEP else mark.kind, []).append(mark)
    order = {"question": 0, "sentence": 1, "topic": 2}
    found = []
    for step in sorted(steps, key=lambda name: (order.get(name, 3), name)):
        days = by_day(steps[step], prompts)
        found.append(StepShare(step, tuple(days), trend(days)))
    return found


def _day(day: dt.date, marks: Sequence[Mark], prompts: Sequence[str]) -> Day:
    levels = [level_of(mark, prompts) for mark in marks if mark.outcome == DONE]
    mean = sum(levels) / len(levels) if levels else None
    return Day(day, sum(mark.alone for mark in marks), len(marks), mean)


def level_of(mark: Mark, prompts: Sequence[str]) -> int:
    """0 for alone, 1 for the least help …; a word that is no longer in use counts as the most."""
    if not mark.help:
        return 0
    return prompts.index(mark.help) + 1 if mark.help in prompts else len(prompts)


def trend(days: Sequence[Day]) -> str:
    """`falling`, `rising` or `steady`: the help of the last five data days beside the five before.

    Empty where there are too few days: at least three on each side.
    """
    levels = [day.help for day in days if day.help is not None]
    last, before = levels[-WEEK:], levels[-2 * WEEK : -WEEK]
    if len(last) < 3 or len(before) < 3:
        return ""
    change = sum(last) / len(last) - sum(before) / len(before)
    if abs(change) < NOTICED:
        return "steady"
    return "rising" if change > 0 else "falling"


def is_stuck(days: Sequence[Day], share: float, count: int) -> bool:
    """Whether the last `count` data days all lie below `share`."""
    last = days[-count:]
    return len(last) == count and all(day.share < share for day in last)
