"""The balance of the turns against the best that there is, found by an integer programme (HiGHS).

On small random classes the solver finds the least possible value of the largest difference between
two learners' counts of a job, at any time of the weeks planned, and ours is compared with it. The
solver knows the rules and nothing of the planner: every turn is given, nobody has two clashing jobs,
nobody has a job again before all who are free have had it. A weekly job keeps that rule whatever
the daily jobs are; where not even that can be, it breaks it as seldom as can be.

Without the rule a solver finds a smaller difference within three weeks in some classes: it gives the
weekly job to one learner week after week where daily jobs clash with it, so that over a year one has
it always and others never. Those classes are counted beside.

A smoke run takes a few; BALANCE_CLASSES=200 runs more.
"""

from __future__ import annotations

import os
import random
from collections import Counter, defaultdict
from dataclasses import dataclass, field
from datetime import date, timedelta
from math import inf

import pytest

from bank.calendar import SchoolCalendar
from bank.morning.jobs import DAILY, WEEKLY, Job, Member, TurnSettings
from bank.morning.turns import plan_turns

CLASSES = int(os.environ.get("BALANCE_CLASSES", "12"))
FIRST = date(2026, 9, 7)
KINDS = ["daily", "weekly", "mixed"]
PARTS = ["line", "line", "line", "snack"]


def small_class(seed: int, kind: str) -> tuple[TurnSettings, int]:
    """Three to six learners, two to four jobs that mostly clash, and two or three weeks.

    Weekly jobs alone get eight weeks.
    """
    rng = random.Random(seed)
    learners = [f"K{n}" for n in range(1, rng.randint(3, 6) + 1)]
    jobs = []
    for number in range(rng.randint(2, 4)):
        some = tuple(sorted(rng.sample(learners, rng.randint(2, len(learners)))))
        rhythm = rng.choice([DAILY, DAILY, DAILY, WEEKLY]) if kind == "mixed" else kind
        only = some if rng.random() < 0.6 else ()
        part = rng.choice(PARTS)
        jobs.append(Job(f"job{number}", f"Job {number}", rhythm, only=only, during=(part,)))
    weeks = 8 if kind == "weekly" else rng.choice([2, 3])
    return TurnSettings(tuple(Member(code) for code in learners), tuple(jobs)), weeks


@dataclass
class Programme:
    """Rows of an integer programme: low <= sum of coefficient * variable <= high."""

    prices: dict[object, float] = field(default_factory=dict)
    rows: list[tuple[dict[object, float], float, float]] = field(default_factory=list)

    def least(self, seconds: float = 20) -> dict[object, float] | None:
        """The values at the least price, or None where there is no solution."""
        import numpy as np
        from scipy.optimize import Bounds, LinearConstraint, milp
        from scipy.sparse import lil_matrix

        names = list(dict.fromkeys(name for row, _, _ in self.rows for name in row))
        column = {name: number for number, name in enumerate(names)}
        matrix = lil_matrix((len(self.rows), len(names)))
        for number, (row, _, _) in enumerate(self.rows):
            for name, value in row.items():
                matrix[number, column[name]] = value
        limits = LinearConstraint(
            matrix.tocsr(), [low for _, low, _ in self.rows], [high for _, _, high in self.rows]
        )
        upper = [100 if name == "worst" else 1 for name in names]
        found = milp(
            [self.prices.get(name, 0) for name in names],
            constraints=limits,
            integrality=np.ones(len(names)),
            bounds=Bounds(np.zeros(len(names)), upper),
            options={"time_limit": seconds},
        )
        return dict(zip(names, found.x, strict=True)) if found.x is not None else None


def best_balance(settings: TurnSettings, weeks: int, rules: bool = True) -> int | None:
    """The least largest difference of counts of all plans, or None where there is no plan.

    With `rules` only plans count in which nobody has a job again before all who are free had it.
    """
    made = Programme(prices={"worst": 1})
    days = [(week, day) for week in range(weeks) for day in range(5)]
    turns = {
        job.code: [[(w, d) for d in range(5)] for w in range(weeks)]
        if job.rhythm == WEEKLY
        else [[one] for one in days]
        for job in settings.jobs
    }
    turn_of = {
        code: {day: n for n, turn in enumerate(those) for day in turn}
        for code, those in turns.items()
    }
    able = {j.code: [m.code for m in settings.members if j.can_take(m.code)] for j in settings.jobs}
    for job in settings.jobs:
        code, many = job.code, len(turns[job.code])
        # A daily job is no reason for who has a weekly one.
        excuses = [
            other
            for other in settings.jobs
            if other.code != code
            and other.clashes(job)
            and (other.rhythm == WEEKLY or job.rhythm == DAILY)
        ]
        for turn, on in enumerate(turns[code]):
            made.rows.append(({(code, turn, c): 1 for c in able[code]}, 1, 1))
            broken = (code, turn, "broken")
            made.prices[broken] = 1000 if job.rhythm == WEEKLY else 30
            for one in able[code]:
                for other in able[code]:
                    if one == other:
                        continue
                    before: dict[object, float] = {}
                    for earlier in range(turn):
                        before[code, earlier, one] = 1
                        before[code, earlier, other] = -1
                    now = {(code, turn, one): 1, (code, turn, other): -1, "worst": -1}
                    made.rows.append(({**before, **now}, -inf, 0))
                    if not rules:
                        continue
                    # `one` has this turn, so they had no more than `other`, or `other` is not free.
                    row = defaultdict(float, before)
                    row[code, turn, one] += many
                    row[broken] -= 2 * many
                    for excuse in excuses:
                        if excuse.can_take(other):
                            for number in {turn_of[excuse.code][day] for day in on}:
                                row[excuse.code, number, other] -= many
                    made.rows.append((dict(row), -inf, many))
    for day in days:
        for part in set(PARTS):
            for member in settings.members:
                row = {
                    (job.code, turn_of[job.code][day], member.code): 1.0
                    for job in settings.jobs
                    if part in job.during and job.can_take(member.code)
                }
                if len(row) > 1:
                    made.rows.append((row, 0, 1))
    found = made.least()
    return round(found["worst"]) if found is not None else None


def our_balance(settings: TurnSettings, weeks: int) -> tuple[int | None, bool]:
    """The largest difference of counts at any time in our plan, and whether a problem was named."""
    plan = plan_turns(
        settings, [], SchoolCalendar(), [], FIRST, FIRST + timedelta(days=7 * weeks - 3)
    )
    if any(problem.rule == "nobody" for problem in plan.problems):
        return None, True
    worst = 0
    for job in settings.jobs:
        able = [m.code for m in settings.members if job.can_take(m.code)]
        count = Counter(dict.fromkeys(able, 0))
        for turn in sorted(t for t in plan.turns if t.job == job.code):
            if job.rhythm == DAILY or turn.day.weekday() == 0:
                count[turn.learner] += 1
                worst = max(worst, max(count.values()) - min(count.values()))
    return worst, bool(plan.problems)


@pytest.mark.bench
@pytest.mark.parametrize("kind", KINDS)
def test_no_plan_is_better_balanced_than_ours(kind: str) -> None:
    pytest.importorskip("scipy")
    equal = uneven = rightly = without = 0
    apart = []
    for seed in range(CLASSES):
        settings, weeks = small_class(seed, kind)
        best = best_balance(settings, weeks)
        ours, named = our_balance(settings, weeks)
        cannot_be_even = best is None or best > 1
        equal += ours == best
        uneven += cannot_be_even
        rightly += named == cannot_be_even
        without += best != best_balance(settings, weeks, rules=False) if kind == "mixed" else 0
        if ours != best or named != cannot_be_even:
            apart.append((seed, best, ours, named))
    print(
        f"\n{CLASSES} small classes, {kind} jobs: balance equal to the solver's best in "
        f"{equal} ({equal / CLASSES:.1%}); {uneven} cannot be even; a constraint is named exactly "
        f"where that is so in {rightly} ({rightly / CLASSES:.1%}); smaller without the rule in "
        f"{without}; apart (class, best, ours, named): {apart}"
    )
    assert rightly == CLASSES
    assert equal == CLASSES


# The last three cannot be even, and giving each turn to whoever had it least is not the best there.
CROWDED = [("daily", 114), ("mixed", 68), ("mixed", 155)]


@pytest.mark.parametrize(
    ("kind", "seed"), [(kind, seed) for kind in KINDS for seed in (65, 1001, 1002)] + CROWDED
)
def test_a_small_class_is_balanced_as_well_as_can_be(kind: str, seed: int) -> None:
    """The smoke run that always runs; the benchmark above takes many more."""
    pytest.importorskip("scipy")
    settings, weeks = small_class(seed, kind)
    best = best_balance(settings, weeks)
    assert our_balance(settings, weeks) == (best, best is None or best > 1)
