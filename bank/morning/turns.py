"""Who does what on a school day: jobs, the one in charge of the game, the keyboard.

`plan_turns` is a pure function of the settings, the turns already posted, the calendar, the known
absences and the days asked for. Turns once posted stand; what it adds are the turns that nobody has
yet, stand-ins for those who are away, and for every rule that cannot be kept a sentence that names
what stands in the way.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from bank.calendar import SchoolCalendar, monday_of
from bank.morning.crowded import Fixed, evened
from bank.morning.jobs import (
    DAILY,
    KEYBOARD,
    TWO_WEEKS,
    WEEKLY,
    Away,
    Job,
    TurnSettings,
)
from bank.morning.keyboard import match_places
from bank.morning.rota import Given, Rota
from bank.morning.steps import needs_a_look_ahead, steps_from, tallies_of, that_clash
from bank.morning.swaps import add_stand_ins
from bank.morning.tally import Record, Turn, tally, up_to_date

# Plans made by putting off what was in the way, and more by chance where that does not help, until
# so many are no better.
_ATTEMPTS = 5
_BY_CHANCE = 12
_IN_VAIN = 6


@dataclass(frozen=True, slots=True)
class Problem:
    """A rule that cannot be kept on `day`, in plain words.

    `rule` is "again" (someone has a job again before all others), "nobody" (nobody can take it) or
    "keyboard" (someone has no keyboard this week). `because` are the jobs that stand in the way, each
    with the learner who has it; `ahead` is how many more turns one has than another then.
    """

    rule: str
    day: date
    job: str
    learners: tuple[str, ...]
    text: str
    because: tuple[tuple[str, str], ...] = ()
    ahead: int = 0


@dataclass(frozen=True, slots=True)
class TurnPlan:
    """The turns of the days asked for, in order; `new` are those that were not posted before."""

    turns: tuple[Turn, ...]
    new: tuple[Turn, ...]
    problems: tuple[Problem, ...]

    def on(self, day: date) -> tuple[Turn, ...]:
        """The turns given out on `day`, stand-ins beside those they stand in for."""
        return tuple(turn for turn in self.turns if turn.day == day)

    def new_until(self, last: date) -> list[Turn]:
        """What is given out with the days up to `last`: swaps with both halves."""
        soon = [turn for turn in self.new if turn.day <= last]
        swaps = {(turn.job, turn.learner, turn.instead_of) for turn in soon if turn.instead_of}
        later = (turn for turn in self.new if turn.day > last)
        return soon + [t for t in later if (t.job, t.instead_of, t.learner) in swaps]


def plan_turns(
    settings: TurnSettings,
    posted: Iterable[Turn],
    calendar: SchoolCalendar,
    away: Iterable[Away],
    first: date,
    last: date,
) -> TurnPlan:
    """The turns from `first` to `last`, both included.

    `posted` are all turns given out so far, of the past and of days to come, with their stand-ins;
    they are never changed. `away` are the absences that are known, of the past too: a posted turn
    of somebody who was away without a stand-in counts as not had.
    """
    # What was given out for a day that became a day off was never had.
    before = set(posted)
    given_out = sorted(turn for turn in before if not _fell_out(calendar, turn.day))
    days = list(calendar.school_days(first, last))
    if not days:
        return TurnPlan((), (), ())
    # The rest of the last week is planned along, so that a day looks the same in every view.
    week = list(calendar.school_days(days[0], monday_of(days[-1]) + timedelta(days=6)))
    known = Record(settings, given_out, tuple(away))
    later = [day for day in known.days() if day > last]
    add_stand_ins(known, days, week + [day for day in later if day > week[-1]])
    swapped = [t for day in later for t in known.on(day) if t not in before]
    record, problems = _best_attempt(known, week, calendar)
    add_stand_ins(record, days, [])
    turns = [turn for day in days for turn in _in_order(record.on(day), settings)]
    new = [turn for turn in turns if turn not in before] + swapped
    return TurnPlan(tuple(turns), tuple(new), tuple(p for p in problems if p.day <= last))


def _best_attempt(
    known: Record, week: list[date], calendar: SchoolCalendar
) -> tuple[Record, list[Problem]]:
    """The plan with the least that goes against the rules in `week`.

    Longer jobs are given out first. Where one stands in the way of a shorter one, another attempt
    gives the longer one to somebody else first, and then to others by chance.
    """
    later_with: dict[tuple[str, str], int] = {}
    best: tuple[Record, list[Problem]] | None = None
    best_worth: tuple[int, ...] = ()
    chance = random.Random(week[0].toordinal())
    in_vain = 0
    for attempt in range(_ATTEMPTS + _BY_CHANCE):
        record, problems, settled = _attempt(known, week, calendar, later_with)
        soon = [problem for problem in problems if problem.day <= week[-1]]
        worth = _worth(soon)
        in_vain += 1
        if best is None or worth > best_worth:
            best, best_worth, in_vain = (record, problems), worth, 0
        blamed = {pair for problem in soon for pair in problem.because} - settled
        if not blamed or in_vain == _IN_VAIN:
            break
        if attempt < _ATTEMPTS and not blamed <= set(later_with):
            for pair in blamed:
                later_with[pair] = later_with.get(pair, 0) + 1
        else:
            later_with = _by_chance(record, chance)
    assert best is not None
    ahead: dict[str, int] = {}
    for problem in best[1]:
        ahead[problem.job] = max(problem.ahead, ahead.get(problem.job, 0))
    fixed = evened(_begun(known, week), week, calendar, ahead)
    if fixed:
        record, problems, _ = _attempt(known, week, calendar, {}, fixed)
        if _worth([problem for problem in problems if problem.day <= week[-1]]) > best_worth:
            best = record, problems
    return best


def _attempt(
    known: Record,
    week: list[date],
    calendar: SchoolCalendar,
    later_with: Mapping[tuple[str, str], int],
    fixed: Fixed | None = None,
) -> tuple[Record, list[Problem], set[tuple[str, str]]]:
    """One plan of `week` with its problems, and who had which job before it was made.

    `fixed` are the turns of jobs that are given out as they stand there.
    """
    record = _begun(known, week)
    problems: list[Problem] = []
    settled = {(t.job, t.learner) for day in week for t in record.on(day)}
    for rhythm in (TWO_WEEKS, WEEKLY, DAILY):
        problems += _plan_rhythm(record, rhythm, week, calendar, later_with, fixed or {})
    problems += _plan_keyboard(record, week)
    return record, problems, settled


def _begun(known: Record, week: list[date]) -> Record:
    """A record to plan in: what is known, with the turns that go on."""
    record = Record(known.settings, [t for day in known.days() for t in known.on(day)], known.away)
    for job in record.settings.jobs:
        _carry_on(record, job, week)
    return record


def _worth(problems: Sequence[Problem]) -> tuple[int, ...]:
    """What makes one plan better than another: nothing left undone, even counts, few problems."""
    return (
        -sum(problem.rule == "nobody" for problem in problems),
        -max((problem.ahead for problem in problems), default=0),
        -len(problems),
    )


def _by_chance(record: Record, chance: random.Random) -> dict[tuple[str, str], int]:
    return {
        (job.code, member.code): chance.randrange(4)
        for job in record.settings.jobs
        if job.turn_length != DAILY
        for member in record.settings.members
    }


def _fell_out(calendar: SchoolCalendar, day: date) -> bool:
    return any(off.holds(day) for off in calendar.days_off)


def _in_order(turns: Iterable[Turn], settings: TurnSettings) -> list[Turn]:
    """Turns in the order of the teacher's jobs, stand-ins after those they stand in for."""
    codes = [job.code for job in settings.jobs]

    def order(turn: Turn) -> tuple[int, bool, str]:
        place = codes.index(turn.job) if turn.job in codes else len(codes)
        return place, bool(turn.instead_of), turn.learner

    return sorted(turns, key=order)


# Jobs


def _plan_rhythm(
    record: Record,
    rhythm: str,
    week: list[date],
    calendar: SchoolCalendar,
    later_with: Mapping[tuple[str, str], int],
    fixed: Fixed,
) -> Iterator[Problem]:
    """Give out the jobs of one rhythm from the first day of `week` on, and look ahead."""
    jobs = [job for job in record.settings.jobs if job.turn_length == rhythm]
    for together in that_clash(jobs):
        if not any(_has_room(record, job, day) for job in together for day in week):
            continue
        is_fixed = any(job.code in {code for code, _ in fixed} for job in together)
        look_ahead = not is_fixed and needs_a_look_ahead(record, together)
        steps = steps_from(together, week, calendar, look_ahead)
        tallies = tallies_of(record, together, week)
        rota = Rota(record, together, tallies, later_with, fixed if is_fixed else None)
        for given in rota.plan(steps, week[-1]):
            yield from _problem(record, given)
            for day in _days_of(record, given):
                if given.learner is not None:
                    record.add(Turn(day, given.job.code, given.learner))


def _carry_on(record: Record, job: Job, week: list[date]) -> None:
    """A turn that has begun goes on with the same learner while they are in class."""
    begun: dict[date, list[str]] = {}
    for first, days in record.turns_of(job):
        begun[first] = list(
            dict.fromkeys(c for day in days for c in record.assigned(day, job.code))
        )
    in_class = {member.code: member for member in record.settings.members}
    for day in week:
        for learner in begun.get(job.turn_of(day), ()):
            assigned = record.assigned(day, job.code)
            stays = learner in in_class and in_class[learner].in_class(day)
            free = job.is_on(day) and len(assigned) < job.places and learner not in assigned
            if stays and free and job.can_take(learner) and job.turn_length != DAILY:
                record.add(Turn(day, job.code, learner))


def _days_of(record: Record, given: Given) -> list[date]:
    """The days of a turn on which its job still has a free place."""
    return [day for day in given.step.days if _has_room(record, given.job, day)]


def _has_room(record: Record, job: Job, day: date) -> bool:
    return job.is_on(day) and len(record.assigned(day, job.code)) < job.places


def _problem(record: Record, given: Given) -> Iterator[Problem]:
    """Name what stands in the way where a turn could not be given by the rules."""
    job, day = given.job, given.step.first
    if given.learner is None:
        why = [_why_not(record, job, code, given) for code in record.settings.who_can(job, day)]
        text = f"{job.name}: nobody can take it, because no learner in class is allowed it"
        if why:
            text = f"{job.name}: nobody can take it on {day}: {'; '.join(why)}"
        able = record.settings.who_can(job, day)
        yield Problem("nobody", day, job.code, (), text, _because(record, job, able, given))
    elif given.overlooked:
        why = [_why_not(record, job, code, given) for code in given.overlooked]
        text = f"{job.name}: {given.learner} has it again before all others: {'; '.join(why)}"
        because = _because(record, job, given.overlooked, given)
        yield Problem("again", day, job.code, given.overlooked, text, because, given.ahead)


def _because(
    record: Record, job: Job, learners: Sequence[str], given: Given
) -> tuple[tuple[str, str], ...]:
    """The jobs of a longer rhythm that keep `learners` from `job`."""
    days = [day for day in given.step.days if job.is_on(day)]
    busy = [(record.clashing(learner, job, days), learner) for learner in learners]
    return tuple(
        (other.code, learner)
        for other, learner in busy
        if other is not None and other.turn_length != job.turn_length
    )


def _why_not(record: Record, job: Job, learner: str, given: Given) -> str:
    days = [day for day in given.step.days if job.is_on(day)]
    if not any(record.is_present(learner, day) for day in days):
        return f"{learner} is away"
    busy = record.clashing(learner, job, days)
    clash = given.in_the_way.get(learner, busy)
    if clash is not None:
        return f"{learner} has {clash.name} at the same time"
    return f"{learner} is needed for other jobs at the same time"


# The keyboard


def _plan_keyboard(record: Record, week: list[date]) -> Iterator[Problem]:
    """Give out the free keyboard places of each week in `week`."""
    if record.settings.keyboard is None:
        return
    weeks: dict[date, list[date]] = defaultdict(list)
    for day in week:
        weeks[monday_of(day)].append(day)
    for monday, days in weeks.items():
        yield from _plan_keyboard_week(record, monday, days)


def _plan_keyboard_week(record: Record, monday: date, days: list[date]) -> Iterator[Problem]:
    keyboard = record.settings.keyboard
    assert keyboard is not None
    job = keyboard.as_job()
    this_week = [day for day in record.days() if monday_of(day) == monday]
    had = {code for day in this_week for code in record.holders(day, KEYBOARD)}
    count = tally(record, job, before=monday)
    open_to = dict.fromkeys(code for day in days for code in record.settings.who_can(job, day))
    up_to_date(count, open_to)
    due = [code for code in open_to if code not in had]
    due.sort(key=lambda c: (count.levels[c], count.last.get(c, date.min), list(open_to).index(c)))
    here = {code: [day for day in days if record.is_present(code, day)] for code in due}
    can = {
        code: _liked(record, code, [d for d in here[code] if not record.clashing(code, job, [d])])
        for code in due
    }
    places = {day: keyboard.computers - len(record.holders(day, KEYBOARD)) for day in days}
    found = match_places(due, can, places)
    for learner, day in found.items():
        record.add(Turn(day, KEYBOARD, learner))
    left_out = [code for code in due if code not in found and here[code]]
    busy = [code for code in left_out if not can[code]]
    for code in busy:
        other = record.clashing(code, job, here[code])
        text = f"{job.name}: {code} has {other.name if other else 'another job'} at the same time "
        yield Problem("keyboard", days[0], KEYBOARD, (code,), text + "on every day of the week")
    crowded = tuple(code for code in left_out if can[code])
    if crowded:
        free = sum(max(0, number) for number in places.values())
        text = (
            f"{job.name}: no place this week for {', '.join(crowded)}: {len(due)} learners have "
            f"not had it, and {free} places are free ({keyboard.computers} at a time, "
            f"{len(days)} {'day' if len(days) == 1 else 'days'}); they come first next week"
        )
        yield Problem("keyboard", days[0], KEYBOARD, crowded, text)


def _liked(record: Record, learner: str, days: list[date]) -> list[date]:
    """`days` with the weekday of the learner's last keyboard turn first: weeks are alike."""
    before = (
        [d for d in record.days() if d < days[0] and learner in record.holders(d, KEYBOARD)]
        if days
        else []
    )
    weekday = before[-1].weekday() if before else None
    return sorted(days, key=lambda day: (day.weekday() != weekday, day))
