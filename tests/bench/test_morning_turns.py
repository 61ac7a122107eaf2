"""Random classes for a school year: do the turns keep every rule?

Each class has 4 to 14 learners, 3 to 12 jobs, constraints, absences, joiners and leavers, and runs
for 36 weeks. The rules are checked from the posted turns alone, by code that shares nothing with
the planner. A smoke run takes a few classes; TURNS_CLASSES=500 runs them all.
"""

from __future__ import annotations

import os
import random
from collections import Counter, defaultdict
from dataclasses import dataclass, field
from datetime import date, timedelta

import pytest

from bank.calendar import DayOff, SchoolCalendar
from bank.morning.jobs import (
    DAILY,
    KEYBOARD,
    TWO_WEEKS,
    WEEKLY,
    Away,
    Job,
    Keyboard,
    Member,
    TurnSettings,
)
from bank.morning.tally import Turn
from bank.morning.turns import plan_turns

CLASSES = int(os.environ.get("TURNS_CLASSES", "6"))
WEEKS = int(os.environ.get("TURNS_WEEKS", "36"))
FIRST = date(2026, 8, 31)
CALENDAR = SchoolCalendar(
    days_off=(
        DayOff(date(2026, 9, 7), date(2026, 9, 7), "Labor Day"),
        DayOff(date(2026, 11, 25), date(2026, 11, 27), "Thanksgiving break"),
        DayOff(date(2026, 12, 21), date(2027, 1, 1), "Winter break"),
        DayOff(date(2027, 3, 29), date(2027, 4, 2), "Spring break"),
    )
)


@dataclass
class Year:
    """What a class lived through: every turn as posted, and what the tool said it could not do."""

    settings: TurnSettings
    away: list[Away]
    turns: list[Turn] = field(default_factory=list)
    problems: list[tuple[str, date, str, tuple[str, ...]]] = field(default_factory=list)
    changed: int = 0


def random_class(seed: int, absences: bool = True) -> tuple[TurnSettings, list[Away]]:
    rng = random.Random(seed)
    learners = [f"K{n}" for n in range(1, rng.randint(4, 14) + 1)]
    last = FIRST + timedelta(days=7 * WEEKS - 1)
    members = []
    for code in learners:
        kind = rng.random()
        day = FIRST + timedelta(days=rng.randint(20, 7 * WEEKS - 20))
        members.append(
            Member(code, first=day if kind < 0.07 else None, last=day if kind > 0.93 else None)
        )
    parts = ["arrival", "line", "snack", "game", "cleaning up"]
    jobs = [Job("game", "Game leader", in_charge=True, during=("game",))]
    for number in range(rng.randint(2, 11)):
        rhythm = rng.choice([DAILY, DAILY, WEEKLY, WEEKLY, TWO_WEEKS])
        limits = rng.random()
        some = tuple(rng.sample(learners, rng.randint(2, len(learners))))
        part = rng.choice([*parts, "", "", ""])
        jobs.append(
            Job(
                f"job{number}",
                f"Job {number}",
                rhythm,
                weekdays=(rng.randrange(5),) if rng.random() < 0.15 else (),
                only=some if limits < 0.2 else (),
                not_for=some[:1] if 0.2 <= limits < 0.4 else (),
                during=(part,) if part else (),
            )
        )
    fits = -(-len(learners) // 4)
    computers = rng.choice([fits, fits, fits + 1, max(1, fits - 1)])
    away = []
    for code in learners if absences else ():
        for week in range(WEEKS):
            monday = FIRST + timedelta(days=7 * week)
            chance = rng.random()
            if chance < 0.02:
                away.append(Away(code, monday, monday + timedelta(days=4)))
            elif chance < 0.15:
                day = monday + timedelta(days=rng.randrange(5))
                away.append(Away(code, day, day))
    settings = TurnSettings(tuple(members), tuple(jobs), Keyboard(computers))
    return settings, [one for one in away if one.first <= last]


def live(settings: TurnSettings, away: list[Away], weekly: bool = True) -> Year:
    """Post the turns as a teacher does: the week on its first day, then each morning's swaps.

    Absences of a whole week are known before; those of a day only in the morning.
    """
    year = Year(settings, away)
    for week in range(WEEKS):
        monday = FIRST + timedelta(days=7 * week)
        for day in CALENDAR.week_of(monday):
            known = [one for one in away if one.first <= day or one.last > one.first]
            start = day == CALENDAR.week_of(monday)[0]
            last = monday + timedelta(days=4) if weekly and start else day
            before = set(year.turns)
            plan = plan_turns(settings, year.turns, CALENDAR, known, day, last)
            year.changed += sum(
                turn not in plan.turns for turn in before if day <= turn.day <= last
            )
            year.turns += plan.new
            year.problems += [(p.rule, p.day, p.job, p.learners) for p in plan.problems]
    return year


# An independent reading of the posted turns


def is_away(year: Year, code: str, day: date) -> bool:
    member = next(m for m in year.settings.members if m.code == code)
    outside = (member.first and day < member.first) or (member.last and day > member.last)
    return bool(outside) or any(a.learner == code and a.first <= day <= a.last for a in year.away)


def done(year: Year) -> dict[tuple[date, str], list[str]]:
    """Who really did each job on each day: the last in every chain of stand-ins, if here."""
    found: dict[tuple[date, str], list[str]] = defaultdict(list)
    instead: dict[tuple[date, str, str], str] = {}
    for turn in year.turns:
        if turn.instead_of:
            instead[turn.day, turn.job, turn.instead_of] = turn.learner
    for turn in year.turns:
        if turn.instead_of:
            continue
        code, steps = turn.learner, 0
        while (turn.day, turn.job, code) in instead and steps < 20:
            code, steps = instead[turn.day, turn.job, code], steps + 1
        if not is_away(year, code, turn.day):
            found[turn.day, turn.job].append(code)
    return found


def stretch(job: Job, day: date) -> date:
    monday = day - timedelta(days=day.weekday())
    if job.rhythm == TWO_WEEKS:
        return monday - timedelta(days=(monday.toordinal() - date(2001, 1, 1).toordinal()) % 14)
    return monday if job.rhythm == WEEKLY or len(job.weekdays) == 1 else day


def had(year: Year, job: Job) -> list[tuple[date, list[date], str]]:
    """The turns of `job` in order: when each began, its days, who had most of them."""
    days: dict[date, list[date]] = defaultdict(list)
    who: dict[date, Counter[str]] = defaultdict(Counter)
    real = done(year)
    given = {(t.day, t.learner) for t in year.turns if t.job == job.code and not t.instead_of}
    for day in sorted({turn.day for turn in year.turns if turn.job == job.code}):
        days[stretch(job, day)].append(day)
        who[stretch(job, day)].update(real[day, job.code])

    def most(first: date) -> str:
        # With as many days each, the turn is that of the one to whom it was given.
        own = {code for day, code in given if day in days[first]}
        return max(who[first], key=lambda code: (who[first][code], code in own))

    return [(first, mine, most(first)) for first, mine in sorted(days.items()) if who[first]]


def can(year: Year, job: Job, code: str) -> bool:
    return code not in job.not_for and (not job.only or code in job.only)


def named(year: Year, job: str, day: date | None = None) -> bool:
    """Whether the tool said that `job` cannot be given by the rules (up to `day`)."""
    return any(j == job and (day is None or d <= day) for _, d, j, _ in year.problems)


def broken_rules(year: Year) -> list[str]:
    """Every rule that does not hold and was not named as impossible."""
    broken = []
    real = done(year)
    days = sorted({day for day, _ in real})
    if year.changed:
        broken.append(f"{year.changed} posted turns changed")
    jobs = {job.code: job for job in year.settings.jobs}
    for day in days:
        mine: dict[str, list[Job]] = defaultdict(list)
        for code, job in jobs.items():
            for learner in real.get((day, code), ()):
                mine[learner].append(job)
                if not can(year, job, learner):
                    broken.append(f"{day} {code}: {learner} cannot take it")
        for learner, those in mine.items():
            parts = [part for job in those for part in job.during]
            if len(parts) != len(set(parts)):
                broken.append(f"{day}: {learner} has clashing jobs")
        for code, job in jobs.items():
            on = not job.weekdays or day.weekday() in job.weekdays
            if on and len(real.get((day, code), ())) != 1 and not named(year, code, day):
                free = [m.code for m in year.settings.members if can(year, job, m.code)]
                if any(
                    not is_away(year, c, day)
                    and not any(set(o.during) & set(job.during) for o in mine[c])
                    for c in free
                ):
                    broken.append(f"{day} {code}: nobody has it")
    for code, job in jobs.items():
        broken += [f"{code}: {text}" for text in unfair(year, job)]
    broken += running(year) + without_keyboard(year)
    return broken


def unfair(year: Year, job: Job) -> list[str]:
    if named(year, job.code):
        return []
    found = []
    turns = had(year, job)
    able = [m.code for m in year.settings.members if can(year, job, m.code)]
    missed = {c: [d for _, days, _ in turns for d in days if is_away(year, c, d)] for c in able}
    always = [c for c in able if not missed[c]]
    count: Counter[str] = Counter()
    for first, _, learner in turns:
        count[learner] += 1
        counts = [count[c] for c in always]
        if counts and max(counts) - min(counts) > 1:
            found.append(f"{first}: counts {dict(count)} of those never away")
            break
    return found


def running(year: Year) -> list[str]:
    """The same learner in charge two days running although another could have been."""
    real = done(year)
    job = next(job for job in year.settings.jobs if job.in_charge)
    days = sorted({day for day, code in real if code == job.code})
    stood_in = {turn.day for turn in year.turns if turn.job == job.code and turn.instead_of}
    found = []
    for at in range(1, len(days)):
        one, other = days[at - 1], days[at]
        both = set(real[one, job.code]) & set(real[other, job.code])
        # What was posted stands: with a stand-in, the choice was on the day of the stand-in.
        chosen = at - 1 if one in stood_in else at
        left = choice(year, job, days, chosen, real)
        if both and left:
            found.append(f"{one} and {other}: {both} in charge, {left} could have been")
    return found


def choice(
    year: Year, job: Job, days: list[date], at: int, real: dict[tuple[date, str], list[str]]
) -> list[str]:
    """Those who could have been in charge on a day without being so on a day beside it."""
    beside = [c for day in days[max(0, at - 1) : at + 2] for c in real[day, job.code]]
    return [
        m.code
        for m in year.settings.members
        if can(year, job, m.code)
        and m.code not in beside
        and not is_away(year, m.code, days[at])
        and not any(
            m.code in real.get((days[at], other.code), ()) and set(other.during) & set(job.during)
            for other in year.settings.jobs
        )
    ]


def without_keyboard(year: Year) -> list[str]:
    found = []
    real = done(year)
    computers = year.settings.keyboard.computers if year.settings.keyboard else 0
    for week in range(WEEKS):
        days = CALENDAR.week_of(FIRST + timedelta(days=7 * week))
        if not days:
            continue
        used = Counter(c for day in days for c in real.get((day, KEYBOARD), ()))
        if any(len(real.get((day, KEYBOARD), ())) > computers for day in days):
            found.append(f"{days[0]}: more than {computers} at the keyboard")
        said = {
            c for rule, d, _, who in year.problems if rule == "keyboard" and d in days for c in who
        }
        for member in year.settings.members:
            here = [day for day in days if not is_away(year, member.code, day)]
            if used[member.code] > 1:
                found.append(f"{days[0]}: {member.code} has the keyboard {used[member.code]} times")
            if len(here) == len(days) and not used[member.code] and member.code not in said:
                found.append(f"{days[0]}: {member.code} has no keyboard")
    return found


@pytest.mark.bench
@pytest.mark.parametrize("absences", [False, True], ids=["all here", "with absences"])
def test_every_rule_holds_for_a_year_or_the_tool_says_why_not(absences: bool) -> None:
    kept = turns = named_jobs = jobs = 0
    wrong: dict[int, list[str]] = {}
    for seed in range(CLASSES):
        settings, away = random_class(seed, absences)
        year = live(settings, away, weekly=seed % 3 != 0)
        if broken := broken_rules(year):
            wrong[seed] = broken[:3]
            print(f"class {seed}: {broken[:3]}", flush=True)
        kept += not year.problems
        turns += len(year.turns)
        jobs += len(settings.jobs)
        named_jobs += sum(named(year, job.code) for job in settings.jobs)
        if seed % 50 == 49:
            print(f"{seed + 1} classes, {len(wrong)} with a rule broken in silence", flush=True)
    print(
        f"\n{CLASSES} classes, {WEEKS} weeks, {turns} turns: {len(wrong)} classes with a rule broken in silence; "
        f"{kept} classes ({kept / CLASSES:.0%}) without any problem named; "
        f"{named_jobs} of {jobs} jobs ({named_jobs / jobs:.0%}) named as impossible in some turn"
    )
    assert wrong == {}


@pytest.mark.parametrize("seed", [501, 502])
def test_a_random_class_keeps_every_rule_for_a_year(seed: int) -> None:
    """The smoke run that always runs; the benchmark above takes many more."""
    assert broken_rules(live(*random_class(seed))) == []
