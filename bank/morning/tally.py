"""Who had which job on which day, and how often: the record of the turns.

A `Turn` that was posted stays as it was. When its learner is away, a second turn says who stands in
`instead_of` them; the record counts who really had the job. The tally of a job keeps a level for
each learner: the number of turns, made comparable for those who joined later or were away.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from bank.morning.jobs import Away, Job, TurnSettings, present


@dataclass(frozen=True, slots=True, order=True)
class Turn:
    """`learner` has `job` on `day`; `instead_of` names the one who is away and gets it back."""

    day: date
    job: str
    learner: str
    instead_of: str = ""

    def to_dict(self) -> dict[str, Any]:
        return {
            "day": self.day.isoformat(),
            "job": self.job,
            "learner": self.learner,
            "instead_of": self.instead_of,
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> Turn:
        return cls(
            date.fromisoformat(plain["day"]),
            plain["job"],
            plain["learner"],
            plain.get("instead_of") or "",
        )


class Record:
    """The turns of the past and of the plan, asked by day and job.

    It is filled while planning and never handed out; the turns that it holds are.
    """

    def __init__(
        self, settings: TurnSettings, turns: Iterable[Turn], away: Collection[Away]
    ) -> None:
        self.settings = settings
        self.away = tuple(away)
        self._on: dict[date, list[Turn]] = defaultdict(list)
        self._assigned: dict[tuple[date, str], list[str]] = defaultdict(list)
        self._away: dict[str, list[Away]] = defaultdict(list)
        self._members = {member.code: member for member in settings.members}
        self._jobs: dict[str, Job | None] = {}
        self._here: dict[tuple[str, date], bool] = {}
        self._busy: dict[date, dict[str, list[Job]]] = {}
        for absence in away:
            self._away[absence.learner].append(absence)
        for turn in turns:
            self.add(turn)

    def add(self, turn: Turn) -> None:
        self._on[turn.day].append(turn)
        if not turn.instead_of:
            self._assigned[turn.day, turn.job].append(turn.learner)
        self._busy.pop(turn.day, None)

    def days(self) -> list[date]:
        return sorted(day for day, turns in self._on.items() if turns)

    def on(self, day: date) -> list[Turn]:
        return list(self._on.get(day, ()))

    def is_present(self, learner: str, day: date) -> bool:
        """Whether `learner` is in class and here on `day`, as far as is known."""
        key = (learner, day)
        if key not in self._here:
            member = self._members.get(learner)
            self._here[key] = (
                member is not None
                and member.in_class(day)
                and present(self._away.get(learner, ()), learner, day)
            )
        return self._here[key]

    def assigned(self, day: date, job: str) -> list[str]:
        """Those to whom `job` was given on `day`, whether or not they were here."""
        return self._assigned.get((day, job), [])

    def holder(self, day: date, job: str, assigned: str) -> str | None:
        """Who really has `assigned`'s turn: they, a stand-in, or nobody (None)."""
        known, learner = set(), assigned
        while learner not in known:
            known.add(learner)
            stand_ins = [
                turn.learner
                for turn in self._on.get(day, ())
                if turn.job == job and turn.instead_of == learner
            ]
            if not stand_ins:
                break
            learner = stand_ins[-1]
        return learner if self.is_present(learner, day) else None

    def holders(self, day: date, job: str) -> list[str]:
        """Those who really have `job` on `day`."""
        found = (self.holder(day, job, learner) for learner in self.assigned(day, job))
        return [learner for learner in found if learner is not None]

    def jobs_of(self, learner: str, day: date) -> list[Job]:
        """The jobs that `learner` really has on `day`, the keyboard among them."""
        if day not in self._busy:
            busy: dict[str, list[Job]] = defaultdict(list)
            for code in dict.fromkeys(turn.job for turn in self._on.get(day, ())):
                job = self._job(code)
                for holder in self.holders(day, code) if job else ():
                    busy[holder].append(job)  # type: ignore[arg-type]
            self._busy[day] = busy
        return self._busy[day].get(learner, [])

    def _job(self, code: str) -> Job | None:
        if code not in self._jobs:
            self._jobs[code] = self.settings.job(code)
        return self._jobs[code]

    def clashing(self, learner: str, job: Job, days: Iterable[date]) -> Job | None:
        """A job of `learner` on one of `days` that clashes with `job`, or None."""
        for day in days:
            for other in self.jobs_of(learner, day):
                if job.clashes(other):
                    return other
        return None

    def neighbours(self, job: Job, day: date) -> list[str]:
        """Those who have `job` on the last day before `day` that has it, and on the next one."""
        given = [one for one in self.days() if one != day and self.assigned(one, job.code)]
        before = [one for one in given if one < day][-1:]
        after = [one for one in given if one > day][:1]
        return [code for one in before + after for code in self.holders(one, job.code)]

    def turns_of(self, job: Job, before: date | None = None) -> Iterator[tuple[date, list[date]]]:
        """The turns of `job` that were begun, in order: the first day and the days given out."""
        stretches: dict[date, list[date]] = defaultdict(list)
        for day in self.days():
            if (before is None or day < before) and self.assigned(day, job.code):
                stretches[job.turn_of(day)].append(day)
        yield from sorted(stretches.items())


class Tally:
    """How often each learner had a job, with those who joined or were away made comparable.

    A learner who joins starts at the level of those who had it least, so that they come next and
    take nobody's turn. A learner who is away stays at most one turn behind: that is the turn they
    get back. `last` is the day on which each began their last turn.
    """

    def __init__(self) -> None:
        self.levels: dict[str, int] = {}
        self.last: dict[str, date] = {}

    def open(self, in_class: Iterable[str]) -> None:
        """Take in who is new and forget who is gone, before a turn is given."""
        members = list(in_class)
        self.levels = {code: level for code, level in self.levels.items() if code in members}
        least = min(self.levels.values(), default=0)
        for code in members:
            self.levels.setdefault(code, least)

    def give(self, learner: str, day: date) -> None:
        least = min(self.levels.values(), default=0)
        self.levels[learner] = self.levels.get(learner, least) + 1
        self.last[learner] = day

    def forgive(self, here: Collection[str]) -> None:
        """Let nobody who is away fall more than one turn behind those who are here."""
        least = min((self.levels[code] for code in here if code in self.levels), default=0)
        for code, level in self.levels.items():
            if code not in here:
                self.levels[code] = max(level, least - 1)

    def copy(self) -> Tally:
        other = Tally()
        other.levels, other.last = dict(self.levels), dict(self.last)
        return other


def tally(record: Record, job: Job, before: date | None = None) -> Tally:
    """The tally of `job` from the record, of the turns begun `before` a day where one is given."""
    count = Tally()
    for first, days in record.turns_of(job, before):
        count.open(record.settings.who_can(job, days[0]))
        for learner in winners(record, job, days):
            count.give(learner, first)
        count.forgive([code for code in count.levels if mostly_here(record, code, days)])
    return count


# Somebody who never had a job that the others had this often was allowed it only now.
_NEWLY_ALLOWED = 3


def up_to_date(count: Tally, in_class: Iterable[str]) -> Tally:
    """`count` for those in class now; whoever was allowed the job only lately counts as new."""
    count.open(in_class)
    had = [level for code, level in count.levels.items() if code in count.last]
    least = min(had, default=0)
    for code in count.levels:
        if code not in count.last and least >= _NEWLY_ALLOWED:
            count.levels[code] = max(count.levels[code], least)
    return count


def mostly_here(record: Record, learner: str, days: Collection[date]) -> bool:
    """Whether `learner` is in class and here on more than half of `days`."""
    return 2 * sum(record.is_present(learner, day) for day in days) > len(days)


def winners(record: Record, job: Job, days: Collection[date]) -> Iterator[str]:
    """Those for whom a stretch of days counts as a turn: whoever had most of it.

    Who takes over the last days of somebody who leaves has their own turn still to come.
    """
    given: dict[str, list[date]] = defaultdict(list)
    for day in days:
        for learner in record.assigned(day, job.code):
            given[learner].append(day)
    for assigned, mine in given.items():
        if 2 * len(mine) < len(days):
            continue
        had = Counter(record.holder(day, job.code, assigned) for day in mine)
        if 2 * had[assigned] >= len(mine):
            yield assigned
            continue
        stand_in, most = max(
            ((code, n) for code, n in had.items() if code is not None),
            key=lambda pair: pair[1],
            default=("", 0),
        )
        if most:
            yield stand_in
