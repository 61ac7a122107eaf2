"""Mastery of a skill: the share fixed alone with its uncertainty, and the rule of written goals.

A sentence a day gives one or two opportunities for a skill, so a bare share says little: two of three
is anything from a rate of 0.25 to 0.9. The posterior says how sure one can be; beside it stands the
rule that teachers write into goals, which a learner meets by luck more often than one thinks.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from bank.progress.beta import above, interval
from bank.progress.marks import Mark, opportunities
from bank.progress.settings import ProgressSettings

# What the last opportunities say about a skill.
TOO_FEW, NOT_YET, MASTERED = "too few to tell", "not yet", "mastered"
Chance = tuple[dt.date, bool]


@dataclass(frozen=True, slots=True)
class Mastery:
    """One learner and one skill.

    `alone` of `count` over the last opportunities, between `low` and `high` with 90 % probability;
    `chance` is the probability that the true rate is above the goal; `said` is one of `too few to
    tell`, `not yet`, `mastered`. `goal_met` is the written goal's rule on the last data days, and
    `goal_first` the first day on which it was ever met. `days` are (day, alone, count), all of them.
    """

    skill: str
    alone: int
    count: int
    total: int
    low: float
    high: float
    chance: float
    said: str
    goal_met: bool
    goal_first: dt.date | None
    days: tuple[tuple[dt.date, int, int], ...]

    @property
    def share(self) -> float:
        return self.alone / self.count if self.count else 0.0


def by_skill(marks: Sequence[Mark], settings: ProgressSettings) -> list[Mastery]:
    """Each skill that there were opportunities for, by code."""
    chances: dict[str, list[Chance]] = {}
    for mark in opportunities(marks):
        chances.setdefault(mark.skill, []).append((mark.day, mark.alone))
    return [mastery(skill, chances[skill], settings) for skill in sorted(chances)]


def mastery(skill: str, chances: Sequence[Chance], settings: ProgressSettings) -> Mastery:
    """What the opportunities (day, fixed alone), in order, say about a skill."""
    last = [alone for _, alone in chances[-settings.window :]]
    days = tuple(by_data_day(chances))
    met = [
        goal_met(days[: n + 1], settings.goal_share, settings.goal_days) for n in range(len(days))
    ]
    successes, count = sum(last), len(last)
    low, high = interval(successes, count)
    chance = above(settings.goal_share, successes, count)
    return Mastery(
        skill,
        successes,
        count,
        len(chances),
        low,
        high,
        chance,
        verdict(successes, count, settings),
        bool(met and met[-1]),
        next((day for (day, _, _), is_met in zip(days, met, strict=True) if is_met), None),
        days,
    )


def verdict(successes: int, count: int, settings: ProgressSettings) -> str:
    """What so many successes in the last opportunities say."""
    if count < settings.fewest:
        return TOO_FEW
    sure = above(settings.goal_share, successes, count) >= settings.certainty
    return MASTERED if sure else NOT_YET


def by_data_day(chances: Sequence[Chance]) -> list[tuple[dt.date, int, int]]:
    """(day, fixed alone, opportunities) for each day with any, in order."""
    days: dict[dt.date, tuple[int, int]] = {}
    for day, alone in chances:
        before = days.get(day, (0, 0))
        days[day] = (before[0] + alone, before[1] + 1)
    return [(day, *days[day]) for day in sorted(days)]


def goal_met(days: Sequence[tuple[dt.date, int, int]], share: float, count: int) -> bool:
    """The rule of written goals: at least `share` on each of the last `count` data days."""
    last = days[-count:]
    return len(last) == count and all(alone >= share * of - 1e-9 for _, alone, of in last)


def has_slipped(found: Mastery, settings: ProgressSettings) -> bool:
    """Whether a skill that was called mastered is, by its last opportunities, likely not."""
    return found.count >= settings.fewest and found.chance < 1 - settings.certainty
