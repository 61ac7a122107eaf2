"""Learners whose true rate is known: how often, and how soon, each rule calls a skill mastered.

Simulated: 500 learners for each rate, 90 data days, one or two opportunities a day. The posterior and
the bare rule of written goals (80 % on 3 data days in a row) look at the same days in the same run.
"""

import datetime as dt
import random

import pytest

from bank.progress.mastery import MASTERED, goal_met, verdict
from bank.progress.settings import ProgressSettings

pytestmark = pytest.mark.bench

LEARNERS, DAYS = 500, 90
RATES = (0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.99)
WRONG_AT, RIGHT_AT, SOON = 0.6, 0.95, 20
MOST_WRONG, LEAST_RIGHT = 0.10, 0.80
SETTINGS = ProgressSettings()
Called = tuple[int | None, int | None]


def first_called(rate: float, rng: random.Random) -> Called:
    """The data day on which the posterior and the bare rule first call it mastered (None: never)."""
    last: list[bool] = []
    days: list[tuple[dt.date, int, int]] = []
    posterior = bare = None
    for number in range(1, DAYS + 1):
        today = [rng.random() < rate for _ in range(rng.choice((1, 2)))]
        last = (last + today)[-SETTINGS.window :]
        days.append((dt.date(2026, 1, 1) + dt.timedelta(number), sum(today), len(today)))
        if posterior is None and verdict(sum(last), len(last), SETTINGS) == MASTERED:
            posterior = number
        if bare is None and goal_met(days, SETTINGS.goal_share, SETTINGS.goal_days):
            bare = number
        if posterior and bare:
            break
    return posterior, bare


def test_a_skill_is_called_mastered_seldom_wrongly_and_soon_rightly() -> None:
    shares: dict[float, tuple[float, float, float, float]] = {}
    print(f"\n{LEARNERS} learners for each rate, {DAYS} data days, 1 or 2 opportunities a day")
    print(f"{'':10}{'posterior':>24}{'80 % on 3 days in a row':>30}")
    print(f"{'true rate':10}{'ever':>10}{f'in {SOON} days':>14}{'ever':>16}{f'in {SOON} days':>14}")
    for rate in RATES:
        rng = random.Random(f"mastery {rate}")
        called = [first_called(rate, rng) for _ in range(LEARNERS)]
        ever = [sum(one[rule] is not None for one in called) / LEARNERS for rule in (0, 1)]
        soon = [
            sum((one[rule] or DAYS + 1) <= SOON for one in called) / LEARNERS for rule in (0, 1)
        ]
        shares[rate] = (ever[0], soon[0], ever[1], soon[1])
        print(f"{rate:<10}{ever[0]:>10.1%}{soon[0]:>14.1%}{ever[1]:>16.1%}{soon[1]:>14.1%}")
    assert shares[WRONG_AT][0] <= MOST_WRONG, "called mastered at a true rate of 0.6"
    assert shares[RIGHT_AT][1] >= LEAST_RIGHT, "called mastered in time at a true rate of 0.95"
    assert shares[WRONG_AT][2] > 0.9, "the bare rule nearly always calls it at 0.6"
