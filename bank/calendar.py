"""School days: weekdays in session, terms, days off and half days.

A plain value without a database: `SchoolCalendar()` alone is Monday to Friday all year, and every
question works on it. Counting is in school days throughout ("30 school days", "every other school
day", "this week"). Files of the iCalendar kind are read and written in `bank.calendar_ics`; the
small month pictures are drawn in `bank.calendar_picture`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
# A calendar without terms counts its school days from here (month, day): common practice.
YEAR_STARTS = (8, 1)
# Without terms, a search for a school day gives up after this many days: longer than any summer.
_HORIZON = 400
_DAY = timedelta(days=1)


class NotASchoolCalendar(ValueError):
    """A calendar that contradicts itself; the message names what is wrong."""


@dataclass(frozen=True, slots=True, order=True)
class Term:
    """A stretch of school days; `first` and `last` both belong to it."""

    first: date
    last: date
    name: str = ""

    def __post_init__(self) -> None:
        _in_order(self.first, self.last, f"term {self.name!r}" if self.name else "a term")

    def holds(self, day: date) -> bool:
        return self.first <= day <= self.last


@dataclass(frozen=True, slots=True, order=True)
class DayOff:
    """One day without school, or a range of them; `first` and `last` both are off."""

    first: date
    last: date
    reason: str = ""

    def __post_init__(self) -> None:
        _in_order(self.first, self.last, f"day off {self.reason!r}" if self.reason else "a day off")

    def holds(self, day: date) -> bool:
        return self.first <= day <= self.last


@dataclass(frozen=True, slots=True, order=True)
class HalfDay:
    """A school day with a short morning."""

    day: date
    reason: str = ""


def _in_order(first: date, last: date, what: str) -> None:
    if last < first:
        raise NotASchoolCalendar(f"{what} ends on {last}, before it starts on {first}")


@dataclass(frozen=True, slots=True)
class SchoolCalendar:
    """When there is school.

    `weekdays` are in session (0 is Monday); without `terms` every week of the year counts. Both
    ends of a term and of a day off belong to it. The lists are kept in order of date.
    """

    weekdays: tuple[int, ...] = (0, 1, 2, 3, 4)
    terms: tuple[Term, ...] = ()
    days_off: tuple[DayOff, ...] = ()
    half_days: tuple[HalfDay, ...] = ()

    def __post_init__(self) -> None:
        wrong = [day for day in self.weekdays if day not in range(7)]
        if wrong or not self.weekdays:
            raise NotASchoolCalendar(f"weekdays are 0 (Monday) to 6, at least one; got {wrong}")
        object.__setattr__(self, "weekdays", tuple(sorted(set(self.weekdays))))
        for name in ("terms", "days_off", "half_days"):
            object.__setattr__(self, name, tuple(sorted(set(getattr(self, name)))))
        for one, other in zip(self.terms, self.terms[1:], strict=False):
            if other.first <= one.last:
                raise NotASchoolCalendar(f"terms {one.name!r} and {other.name!r} overlap")

    # What a day is

    def is_school_day(self, day: date) -> bool:
        """Whether there is school on `day`.

        >>> SchoolCalendar().is_school_day(date(2026, 9, 12))  # a Saturday
        False
        """
        return self.why_off(day) is None

    def is_half_day(self, day: date) -> bool:
        """Whether `day` is a school day with a short morning."""
        return any(half.day == day for half in self.half_days) and self.is_school_day(day)

    def why_off(self, day: date) -> str | None:
        """Why there is no school on `day`, in plain words; None on a school day.

        >>> SchoolCalendar().why_off(date(2026, 9, 12))
        'no school on Saturdays'
        """
        for off in self.days_off:
            if off.holds(day):
                return off.reason or "a day off"
        if day.weekday() not in self.weekdays:
            return f"no school on {WEEKDAYS[day.weekday()]}s"
        if self.terms and self.term_of(day) is None:
            return "not in a term"
        return None

    def term_of(self, day: date) -> Term | None:
        """The term that holds `day`, or None."""
        return next((term for term in self.terms if term.holds(day)), None)

    # Counting

    def school_days(self, start: date, end: date) -> Iterator[date]:
        """The school days from `start` to `end`, both included, in order."""
        day = start
        while day <= end:
            if self.is_school_day(day):
                yield day
            if day == date.max:
                return
            day += _DAY

    def count_school_days(self, start: date, end: date) -> int:
        """How many school days there are from `start` to `end`, both included."""
        return sum(1 for _ in self.school_days(start, end))

    def next_school_day(self, day: date) -> date | None:
        """The first school day after `day`; None when the last term is over.

        >>> SchoolCalendar().next_school_day(date(2026, 9, 11))
        datetime.date(2026, 9, 14)
        """
        end = max((term.last for term in self.terms), default=day + _HORIZON * _DAY)
        return next(self.school_days(day + _DAY, end), None)

    def previous_school_day(self, day: date) -> date | None:
        """The last school day before `day`; None before the first term."""
        first = min((term.first for term in self.terms), default=day - _HORIZON * _DAY)
        return next(self._backwards(day - _DAY, first), None)

    def nth_school_day_before(self, day: date, n: int) -> date:
        """The school day that lies `n` school days before `day`; 0 is `day` itself.

        What was used on or after the answer lies in a window of `n` school days. Where the terms
        begin less than `n` school days ago the answer is `date.min`: such a window reaches back
        over everything that the calendar does not know, so that a new school year's calendar never
        lets last June's items come back early.

        >>> SchoolCalendar().nth_school_day_before(date(2026, 9, 14), 5)
        datetime.date(2026, 9, 7)
        """
        if n <= 0:
            return day
        first = min((term.first for term in self.terms), default=day - (_HORIZON + 7 * n) * _DAY)
        for found, past in enumerate(self._backwards(day - _DAY, first), start=1):
            if found == n:
                return past
        return date.min

    def _backwards(self, day: date, first: date) -> Iterator[date]:
        while day >= first:
            if self.is_school_day(day):
                yield day
            day -= _DAY

    def school_day_number(self, day: date) -> int:
        """How many school days of its term have begun by `day`, itself included; 1 is the first.

        Without terms the count starts on 1 August; on a day between two terms it is 0.
        """
        if self.terms:
            term = self.term_of(day)
            return self.count_school_days(term.first, day) if term else 0
        start = date(day.year, *YEAR_STARTS)
        if day < start:
            start = date(day.year - 1, *YEAR_STARTS)
        return self.count_school_days(start, day)

    def week_of(self, day: date) -> tuple[date, ...]:
        """The school days of the week (Monday to Sunday) in which `day` lies; may be empty."""
        monday = monday_of(day)
        return tuple(self.school_days(monday, monday + 6 * _DAY))

    # To and from plain values

    def to_dict(self) -> dict[str, Any]:
        """The calendar as plain JSON values; dates are written as 2026-09-14."""
        return {
            "weekdays": list(self.weekdays),
            "terms": [
                {"first": t.first.isoformat(), "last": t.last.isoformat(), "name": t.name}
                for t in self.terms
            ],
            "days_off": [
                {"first": d.first.isoformat(), "last": d.last.isoformat(), "reason": d.reason}
                for d in self.days_off
            ],
            "half_days": [{"day": h.day.isoformat(), "reason": h.reason} for h in self.half_days],
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> SchoolCalendar:
        """The calendar that `to_dict` wrote; what is left out takes its default."""
        day = date.fromisoformat
        return cls(
            weekdays=tuple(plain.get("weekdays", (0, 1, 2, 3, 4))),
            terms=tuple(
                Term(day(t["first"]), day(t["last"]), t.get("name", ""))
                for t in plain.get("terms", ())
            ),
            days_off=tuple(
                DayOff(day(d["first"]), day(d.get("last", d["first"])), d.get("reason", ""))
                for d in plain.get("days_off", ())
            ),
            half_days=tuple(
                HalfDay(day(h["day"]), h.get("reason", "")) for h in plain.get("half_days", ())
            ),
        )


def monday_of(day: date) -> date:
    """The Monday of the week in which `day` lies.

    >>> monday_of(date(2026, 9, 13))
    datetime.date(2026, 9, 7)
    """
    return day - day.weekday() * _DAY


def read_date(text: str) -> date:
    """A date as people write it: 2026-09-14, or as spreadsheets turn it in the United States, 9/14/2026.

    `ValueError` for anything else.

    >>> read_date("9/14/2026"), read_date("9/14/26") == read_date("2026-09-14")
    (datetime.date(2026, 9, 14), True)
    """
    month, _, rest = text.strip().partition("/")
    day, _, year = rest.partition("/")
    if month.isdecimal() and day.isdecimal() and year.isdecimal() and len(year) in (2, 4):
        return date(int(year) + (2000 if len(year) == 2 else 0), int(month), int(day))
    return date.fromisoformat(text.strip())
