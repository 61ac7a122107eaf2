"""The class jobs and who can take which: the teacher's settings for the turns.

A job has a rhythm (one learner a day, a week, or two weeks), may belong to some weekdays only, and
names the parts of the morning that it takes: two jobs clash when they share one. The learner in
charge of the game is a job with `in_charge`; the keyboard has a form of its own, because everybody
has it once a week.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import asdict, dataclass, field
from datetime import date, timedelta
from typing import Any

from bank.calendar import monday_of

DAILY, WEEKLY, TWO_WEEKS = "daily", "weekly", "two weeks"
RHYTHMS = (DAILY, WEEKLY, TWO_WEEKS)
# Fortnights are counted from this Monday, so that a change of calendar never shifts them.
FIRST_FORTNIGHT = date(2001, 1, 1)


class NotAJob(ValueError):
    """Settings that contradict themselves; the message names the job and what is wrong."""


@dataclass(frozen=True, slots=True)
class Member:
    """A learner of the class; `first` and `last` are the days between which they are in it."""

    code: str
    first: date | None = None
    last: date | None = None

    def in_class(self, day: date) -> bool:
        return (self.first is None or self.first <= day) and (self.last is None or day <= self.last)


@dataclass(frozen=True, slots=True)
class Away:
    """A learner's absence; `first` and `last` both belong to it."""

    learner: str
    first: date
    last: date

    def holds(self, learner: str, day: date) -> bool:
        return learner == self.learner and self.first <= day <= self.last


@dataclass(frozen=True, slots=True)
class Job:
    """A class job in the teacher's words.

    `code` never changes; `name` and the `steps` of its how-to card are the teacher's. `weekdays`
    (0 is Monday; none means every school day) are the only days with this job. `only` names those
    who can take it (none means everyone) and `not_for` those who cannot. `during` names the parts
    of the morning that it takes, in any words; jobs that share one clash. `places` learners have
    it together, usually one. `in_charge` marks the game's: never the same learner two school days
    running where there is a choice.
    """

    code: str
    name: str
    rhythm: str = DAILY
    weekdays: tuple[int, ...] = ()
    places: int = 1
    only: tuple[str, ...] = ()
    not_for: tuple[str, ...] = ()
    during: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
    in_charge: bool = False

    def __post_init__(self) -> None:
        if not self.code:
            raise NotAJob(f"the job {self.name!r} needs a code")
        if self.rhythm not in RHYTHMS:
            raise NotAJob(f"{self.code}: the rhythm is one of {', '.join(RHYTHMS)}")
        if self.places < 1:
            raise NotAJob(f"{self.code}: a job needs at least one place")
        if any(day not in range(7) for day in self.weekdays):
            raise NotAJob(f"{self.code}: weekdays are 0 (Monday) to 6")
        if self.in_charge and self.rhythm != DAILY:
            raise NotAJob(f"{self.code}: someone else is in charge of the game every day")

    def can_take(self, learner: str) -> bool:
        return learner not in self.not_for and (not self.only or learner in self.only)

    def is_on(self, day: date) -> bool:
        return not self.weekdays or day.weekday() in self.weekdays

    def clashes(self, other: Job) -> bool:
        """Whether nobody can have both at once."""
        if self.weekdays and other.weekdays and set(self.weekdays).isdisjoint(other.weekdays):
            return False
        return self.code == other.code or not set(self.during).isdisjoint(other.during)

    @property
    def turn_length(self) -> str:
        """The rhythm in which the turns go round: a job of one weekday goes round by the week."""
        return WEEKLY if self.rhythm == DAILY and len(self.weekdays) == 1 else self.rhythm

    def turn_of(self, day: date) -> date:
        """The day that a turn is known by: the day itself, its Monday, or its fortnight's."""
        if self.turn_length == DAILY:
            return day
        monday = monday_of(day)
        if self.turn_length == TWO_WEEKS:
            return monday - timedelta(days=(monday - FIRST_FORTNIGHT).days % 14)
        return monday


@dataclass(frozen=True, slots=True)
class Keyboard:
    """The keyboard for the journal: `computers` places a day, once a week for all who can."""

    computers: int = 1
    only: tuple[str, ...] = ()
    not_for: tuple[str, ...] = ()
    during: tuple[str, ...] = ("journal",)
    name: str = "Keyboard"
    steps: tuple[str, ...] = ()

    def as_job(self) -> Job:
        return Job(
            KEYBOARD,
            self.name,
            places=max(1, self.computers),
            only=self.only,
            not_for=self.not_for,
            during=self.during,
            steps=self.steps,
        )


KEYBOARD = "keyboard"


@dataclass(frozen=True, slots=True)
class TurnSettings:
    """The class, its jobs and its keyboard."""

    members: tuple[Member, ...] = ()
    jobs: tuple[Job, ...] = ()
    keyboard: Keyboard | None = field(default=None)

    def __post_init__(self) -> None:
        for what, codes in (
            ("learner", [member.code for member in self.members]),
            ("job", [job.code for job in self.jobs]),
        ):
            twice = sorted({code for code in codes if codes.count(code) > 1})
            if twice:
                raise NotAJob(f"the {what} {', '.join(twice)} is named twice")
        if any(job.code == KEYBOARD for job in self.jobs):
            raise NotAJob(f"the code {KEYBOARD!r} is the keyboard's own")

    def job(self, code: str) -> Job | None:
        """The job or the keyboard under `code`, or None where the teacher has dropped it."""
        if code == KEYBOARD and self.keyboard is not None:
            return self.keyboard.as_job()
        return next((job for job in self.jobs if job.code == code), None)

    def who_can(self, job: Job, day: date) -> list[str]:
        """Those in class on `day` who can take `job`, in the class's order."""
        return [m.code for m in self.members if m.in_class(day) and job.can_take(m.code)]

    def to_dict(self) -> dict[str, Any]:
        """The settings as plain JSON values."""
        return {
            "members": [
                {
                    "code": member.code,
                    "first": member.first.isoformat() if member.first else None,
                    "last": member.last.isoformat() if member.last else None,
                }
                for member in self.members
            ],
            "jobs": [_plain(asdict(job)) for job in self.jobs],
            "keyboard": _plain(asdict(self.keyboard)) if self.keyboard else None,
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> TurnSettings:
        """The settings that `to_dict` wrote; what is left out takes its default."""
        keyboard = plain.get("keyboard")
        return cls(
            members=tuple(
                Member(m["code"], _day(m.get("first")), _day(m.get("last")))
                for m in plain.get("members", ())
            ),
            jobs=tuple(Job(**_tuples(job)) for job in plain.get("jobs", ())),
            keyboard=Keyboard(**_tuples(keyboard)) if keyboard else None,
        )


def present(away: Collection[Away], learner: str, day: date) -> bool:
    """Whether no absence of `learner` holds `day`."""
    return not any(absence.holds(learner, day) for absence in away)


def _day(text: str | None) -> date | None:
    return date.fromisoformat(text) if text else None


def _plain(values: dict[str, Any]) -> dict[str, Any]:
    return {key: list(v) if isinstance(v, tuple) else v for key, v in values.items()}


def _tuples(values: Mapping[str, Any]) -> dict[str, Any]:
    return {key: tuple(v) if isinstance(v, list) else v for key, v in values.items()}
