"""The steps of the morning in the teacher's order and words, with specials and lunch.

The routine that comes with the tool is our own: an hour in all, the game twenty minutes of it
(common practice).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from datetime import date
from typing import Any

from bank.calendar import WEEKDAYS, SchoolCalendar

SORT_STEPS = frozenset(("sort", "word-sort", "word-sorts"))
"""The codes of the word sort, as it comes along and as a teacher would type it."""


class NotARoutine(ValueError):
    """A routine that contradicts itself; the message names the step."""


@dataclass(frozen=True, slots=True)
class MorningStep:
    """One step: a `code` that never changes, its `name` in the teacher's words, its `minutes`.

    `weekdays` (0 is Monday) are the only days with it; none means every day. `short_morning` says
    whether it stays on half days.
    """

    code: str
    name: str
    minutes: int
    weekdays: tuple[int, ...] = ()
    short_morning: bool = True

    def __post_init__(self) -> None:
        if not self.code or not self.name:
            raise NotARoutine("a step needs a code and a name")
        if self.minutes < 0:
            raise NotARoutine(f"{self.name}: minutes cannot be negative")
        if any(day not in range(7) for day in self.weekdays):
            raise NotARoutine(f"{self.name}: weekdays are 0 (Monday) to 6")

    @property
    def needs_sort(self) -> bool:
        """Whether only those who have a word sort that day have this step."""
        return self.code in SORT_STEPS


@dataclass(frozen=True, slots=True)
class TimedStep:
    """A step of one day with its place on the clock; the times are empty without a start."""

    step: MorningStep
    begins: str
    ends: str


@dataclass(frozen=True, slots=True)
class Routine:
    """The morning: when it `starts` ("8:30"), its steps, the special of each weekday, lunches.

    `specials` go by weekday (0 is Monday), `lunches` by date.
    """

    steps: tuple[MorningStep, ...]
    starts: str = ""
    specials: Mapping[int, str] = field(default_factory=dict)
    lunches: Mapping[date, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        codes = [step.code for step in self.steps]
        twice = sorted({code for code in codes if codes.count(code) > 1})
        if twice:
            raise NotARoutine(f"the step {', '.join(twice)} comes twice")
        if self.starts:
            _minutes(self.starts)

    def of_day(self, day: date, calendar: SchoolCalendar | None = None) -> tuple[TimedStep, ...]:
        """The steps of `day` in order; on a half day only those that stay."""
        half = calendar is not None and calendar.is_half_day(day)
        clock = _minutes(self.starts) if self.starts else None
        timed = []
        for step in self.steps:
            if (step.weekdays and day.weekday() not in step.weekdays) or (
                half and not step.short_morning
            ):
                continue
            ends = None if clock is None else clock + step.minutes
            timed.append(TimedStep(step, _clock(clock), _clock(ends)))
            clock = ends
        return tuple(timed)

    def minutes_of(self, day: date, calendar: SchoolCalendar | None = None) -> int:
        """How long the morning of `day` is in all."""
        return sum(timed.step.minutes for timed in self.of_day(day, calendar))

    def special_of(self, day: date) -> str:
        """The special of the weekday of `day` (art, music …), or an empty text."""
        return self.specials.get(day.weekday(), "")

    def lunch_of(self, day: date) -> str:
        """What there is for lunch on `day`, or an empty text where the school gives no list."""
        return self.lunches.get(day, "")

    def to_dict(self) -> dict[str, Any]:
        return {
            "starts": self.starts,
            "steps": [{**asdict(step), "weekdays": list(step.weekdays)} for step in self.steps],
            "specials": {WEEKDAYS[day]: name for day, name in sorted(self.specials.items())},
            "lunches": {day.isoformat(): meal for day, meal in sorted(self.lunches.items())},
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> Routine:
        return cls(
            steps=tuple(
                MorningStep(**{**step, "weekdays": tuple(step.get("weekdays", ()))})
                for step in plain["steps"]
            ),
            starts=plain.get("starts", ""),
            specials={
                WEEKDAYS.index(name): text for name, text in plain.get("specials", {}).items()
            },
            lunches={
                date.fromisoformat(day): meal for day, meal in plain.get("lunches", {}).items()
            },
        )


DEFAULT_ROUTINE = Routine(
    steps=(
        MorningStep("homework", "Homework in the tray", 3),
        MorningStep("binder", "Binder page", 12),
        MorningStep("sort", "Word sort", 8, short_morning=False),
        MorningStep("reading", "Quiet reading", 10),
        MorningStep("game", "Game", 20, short_morning=False),
        MorningStep("keyboard", "Journal, at the keyboard on your day", 7),
    )
)


def _minutes(text: str) -> int:
    """Minutes since midnight.

    >>> _minutes("8:30")
    510
    """
    hours, _, minutes = text.partition(":")
    if not (hours.isdigit() and minutes.isdigit() and len(minutes) == 2):
        raise NotARoutine(f"a time is written as 8:30, not {text!r}")
    found = int(hours) * 60 + int(minutes)
    if found >= 24 * 60 or int(minutes) > 59:
        raise NotARoutine(f"there is no time {text!r}")
    return found


def _clock(minutes: int | None) -> str:
    return "" if minutes is None else f"{minutes // 60 % 24}:{minutes % 60:02}"
