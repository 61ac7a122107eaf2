"""The balance of the turns against the best that there is, found by an integer programme (HiGHS).

On small random classes the solver finds the least possible value of the largest difference between
two learners' counts of a job, at any time of the weeks planned, and ours is compared with it. A
smoke run takes a few; BALANCE_CLASSES=300 runs more.
"""

from __future__ import annotations

import os
import random
from collections import Counter
from datetime import date, timedelta

import pytest

from bank.calendar import SchoolCalendar
from bank.morning.jobs import DAILY, WEEKLY, Job, Member, TurnSettings
from bank.morning.turns import plan_turns

CLASSES = int(os.environ.get("BALANCE_CLASSES", "12"))
FIRST = date(2026, 9, 7)


def small_class(seed: int, mixed: bool) -> tuple[TurnSettings, int]:
    """Three to six learners, two to four jobs that mostly clash, two or three weeks.

    Jobs are daily, or where they are `mixed`, some of them weekly.
    """
    rng = random.Random(seed)
    learners = [f"K{n}" for n in range(1, rng.randint(3, 6) + 1)]
    jobs = []
    for number in range(rng.randint(2, 4)):
        some = tuple(sorted(rng.sample(learners, rng.randint(2, len(learners)))))
        jobs.append(
            Job(
                f"job{number}",
                f"Job {number}",
                rng.choice([DAILY, DAILY, DAILY, WEEKLY]) if mixed else DAILY,
                only=some if rng.random() < 0.6 else (),
                during=(rng.choice(["line", "line", "line", "snack"]),),
            )
        )
    return TurnSettings(tuple(Member(code) for code in learners), tuple(jobs)), rng.choice([2, 3])


def best_balance(settings: TurnSettings, weeks: int) -> int | None:
    """The least largest difference of counts that any plan has, or None where there is no plan."""
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, milp
    from scipy.sparse import lil_matrix

    days = [(week, day) for week in range(weeks) for day in range(5)]
    slots = {
        job.code: sorted({(w, None if job.rhythm == WEEKLY else d) for w, d in days}, key=str)
        for job in settings.jobs
    }
    order = {
        code: sorted(s, key=lambda p: (p[0], -1 if p[1] is None else p[1]))
        for code, s in slots.items()
    }
    able = {j.code: [m.code for m in settings.members if j.can_take(m.code)] for j in settings.jobs}
    index: dict[tuple[str, tuple[int, int | None], str], int] = {}
    for job in settings.jobs:
        for slot in order[job.code]:
            for learner in able[job.code]:
                index[job.code, slot, learner] = len(index)
    worst = len(index)
    rows: list[tuple[dict[int, float], float, float]] = []
    for job in settings.jobs:
        for slot in order[job.code]:
            rows.append(({index[job.code, slot, c]: 1 for c in able[job.code]}, 1, 1))
        for end in range(1, len(order[job.code]) + 1):
            for one in able[job.code]:
                for other in able[job.code]:
                    if one != other:
                        row: dict[int, float] = {worst: -1}
                        for slot in order[job.code][:end]:
                            row[index[job.code, slot, one]] = 1
                            row[index[job.code, slot, other]] = -1
                        rows.append((row, -np.inf, 0))
    for week, day in days:
        for part in ("line", "snack"):
            for member in settings.members:
                row = {}
                for job in settings.jobs:
                    slot = (week, None if job.rhythm == WEEKLY else day)
                    key = (job.code, slot, member.code)
                    if part in job.during and key in index:
                        row[index[key]] = 1
                if len(row) > 1:
                    rows.append((row, 0, 1))
    matrix = lil_matrix((len(rows), worst + 1))
    for number, (row, _, _) in enumerate(rows):
        for column, value in row.items():
            matrix[number, column] = value
    costs = np.zeros(worst + 1)
    costs[worst] = 1
    upper = np.ones(worst + 1)
    upper[worst] = 100
    found = milp(
        costs,
        constraints=LinearConstraint(
            matrix.tocsr(), [low for _, low, _ in rows], [high for _, _, high in rows]
        ),
        integrality=np.ones(worst + 1),
        bounds=Bounds(np.zeros(worst + 1), upper),
        options={"time_limit": 20},
    )
    return round(found.x[worst]) if found.x is not None else None


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
@pytest.mark.parametrize("mixed", [False, True], ids=["daily jobs", "daily and weekly jobs"])
def test_no_plan_is_better_balanced_than_ours(mixed: bool) -> None:
    pytest.importorskip("scipy")
    equal = uneven = rightly = 0
    apart = []
    for seed in range(CLASSES):
        settings, weeks = small_class(seed, mixed)
        best = best_balance(settings, weeks)
        ours, named = our_balance(settings, weeks)
        cannot_be_even = best is None or best > 1
        equal += ours == best
        uneven += cannot_be_even
        rightly += named == cannot_be_even
        if ours != best or named != cannot_be_even:
            apart.append((seed, best, ours, named))
    print(
        f"\n{CLASSES} small classes: balance equal to the solver's best in {equal / CLASSES:.1%}; "
        f"{uneven} cannot be even; a constraint is named exactly where that is so in "
        f"{rightly / CLASSES:.1%}; apart (class, best, ours, named): {apart}"
    )
    # A solver that sees only three weeks gives a weekly job to the same learner again and again
    # where daily jobs clash with it; over a year that is not fair, so mixed rhythms may differ.
    assert rightly / CLASSES >= (0.9 if mixed else 1)
    assert equal / CLASSES >= (0.75 if mixed else 1)


@pytest.mark.parametrize("seed", range(1001, 1005))
def test_a_small_class_is_balanced_as_well_as_can_be(seed: int) -> None:
    """The smoke run that always runs; the benchmark above takes many more."""
    pytest.importorskip("scipy")
    settings, weeks = small_class(seed, mixed=False)
    best = best_balance(settings, weeks)
    assert our_balance(settings, weeks) == (best, best is None or best > 1)
