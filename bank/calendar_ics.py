"""School calendars as districts publish them: files of the iCalendar kind (RFC 5545).

`read_ics` finds days off, short mornings and terms by the titles of the entries
(`bank.calendar_words`) and hands back every entry with what it was taken for, so that a teacher can
look it over: nothing is dropped silently. `write_ics` writes a calendar that others can read.
The libraries are imported when a file is read or written, never before.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from bank import calendar_words as words
from bank.calendar import DayOff, HalfDay, SchoolCalendar, Term

_DAY = timedelta(days=1)
# What we write says by its category what it is, so that any title reads back as the same.
_CATEGORIES = {
    words.OFF: "school day off",
    words.HALF: "school half day",
    words.FIRST: "school term first day",
    words.LAST: "school term last day",
}
_MEANINGS = {category: meaning for meaning, category in _CATEGORIES.items()}


class NotACalendarFile(ValueError):
    """The text is not an iCalendar file; the message says what stands in the way."""


@dataclass(frozen=True, slots=True, order=True)
class Entry:
    """One entry of a calendar file on the school's own days; `first` and `last` both belong to it.

    `meaning` is one of `bank.calendar_words.MEANINGS`.
    """

    first: date
    last: date
    title: str
    meaning: str


@dataclass(frozen=True, slots=True)
class Reading:
    """What a calendar file says: the entries in order of date, and what they come to."""

    entries: tuple[Entry, ...]

    @property
    def unknown(self) -> tuple[Entry, ...]:
        """The entries that no rule understood: for the teacher to look over."""
        return tuple(entry for entry in self.entries if entry.meaning == words.UNKNOWN)

    def calendar(self, base: SchoolCalendar | None = None) -> SchoolCalendar:
        """`base` (by default Monday to Friday) with this file's days.

        Days off and short mornings are added to those that `base` has; terms replace its terms
        where the file has any. A term that is opened and never closed is left out.
        """
        base = base or SchoolCalendar()
        return replace(
            base,
            terms=_terms(self.entries) or base.terms,
            days_off=base.days_off
            + tuple(DayOff(e.first, e.last, e.title) for e in self._that_mean(words.OFF)),
            half_days=base.half_days
            + tuple(
                HalfDay(entry.first + n * _DAY, entry.title)
                for entry in self._that_mean(words.HALF)
                for n in range((entry.last - entry.first).days + 1)
            ),
        )

    def _that_mean(self, meaning: str) -> list[Entry]:
        return [entry for entry in self.entries if entry.meaning == meaning]


def _terms(entries: Iterable[Entry]) -> tuple[Term, ...]:
    """The terms between a first day and the next last day."""
    terms: list[Term] = []
    opened: Entry | None = None
    for entry in sorted(entries):
        if entry.meaning == words.FIRST and opened is None:
            opened = entry
        elif entry.meaning == words.LAST and opened is not None:
            name = words.term_name(opened.title) or words.term_name(entry.title)
            terms.append(Term(opened.first, entry.last, name))
            opened = None
    return tuple(terms)


def read_ics(
    text: str | bytes,
    first: date,
    last: date,
    zone: str | None = None,
    meaning: Callable[[str, bool], str] = words.meaning,
) -> Reading:
    """The entries of an iCalendar file from `first` to `last`, both included.

    Repeating entries are written out; an entry that lasts all day ends on the day before its DTEND,
    which is exclusive (RFC 5545, 3.6.1); one with times lies on the day that its own time zone (or
    the file's) gives, and one in universal time on the day in `zone` (a name such as
    "America/Chicago"; without one, the computer's own). Cancelled entries are left out. `meaning`
    reads a title, given whether the entry has times.

    Raises `NotACalendarFile` for what is not such a file.
    """
    import recurring_ical_events

    calendar = _parsed(text)
    # A day to either side: an entry in universal time may lie on another day at the school.
    found = recurring_ical_events.of(calendar).between(first - _DAY, last + 2 * _DAY)
    entries = {_entry(event, zone, meaning) for event in found if not _cancelled(event)}
    return Reading(tuple(sorted(e for e in entries if e.last >= first and e.first <= last)))


def _parsed(text: str | bytes) -> Any:
    import icalendar

    if isinstance(text, bytes):
        text = text.decode("utf-8-sig", errors="replace")
    if "BEGIN:VCALENDAR" not in text.upper():
        raise NotACalendarFile("this is not a calendar file: it has no BEGIN:VCALENDAR")
    try:
        return icalendar.Calendar.from_ical(text.lstrip("\ufeff"))
    except (ValueError, KeyError, IndexError) as reason:
        raise NotACalendarFile(f"this calendar file cannot be read: {reason}") from reason


def _cancelled(event: Any) -> bool:
    return str(event.get("STATUS", "")).upper() == "CANCELLED"


def _entry(event: Any, zone: str | None, meaning: Callable[[str, bool], str]) -> Entry:
    title = " ".join(str(event.get("SUMMARY", "")).split())
    start, end = event.start, event.end
    timed = isinstance(start, datetime)
    first = _school_day(start, zone)
    # An end at midnight belongs to the day before, like the exclusive end of an all-day entry.
    last = _school_day(end - timedelta(microseconds=1), zone) if timed else end - _DAY
    means = _by_category(event) or meaning(title, timed)
    return Entry(first, max(first, last), title, means)


def _by_category(event: Any) -> str | None:
    found = event.get("CATEGORIES")
    labels = [str(label) for label in getattr(found, "cats", ())]
    return next((_MEANINGS[label] for label in labels if label in _MEANINGS), None)


def _school_day(moment: date, zone: str | None) -> date:
    if not isinstance(moment, datetime):
        return moment
    # "Floating" times have no zone: they are the school's own (RFC 5545, 3.3.5).
    in_universal_time = moment.tzinfo is not None and moment.tzname() == "UTC"
    if in_universal_time:
        moment = moment.astimezone(ZoneInfo(zone) if zone else None)
    return moment.date()


def write_ics(calendar: SchoolCalendar, name: str, stamp: datetime | None = None) -> str:
    """An iCalendar file with the terms, the days off and the short mornings of `calendar`.

    Everything is an all-day entry, so no time zone is needed. The same calendar always gives the
    same file: an entry's UID is made from its day and kind, and `stamp` (when the file was made)
    is 1 January 2000 unless it is given. Weekdays in session have no place in such a file.
    """
    import icalendar

    made = stamp or datetime(2000, 1, 1, tzinfo=UTC)
    file = icalendar.Calendar()
    file.add("prodid", "-//binderbank//school calendar//EN")
    file.add("version", "2.0")
    file.add("x-wr-calname", name)
    for entry in _written(calendar):
        event = icalendar.Event()
        number = sum(
            e.get("uid", "").startswith(f"{entry.first}-{entry.meaning}") for e in file.events
        )
        event.add("uid", f"{entry.first}-{entry.meaning}-{number}@binderbank.invalid")
        event.add("dtstamp", made)
        event.add("dtstart", entry.first)
        event.add("dtend", entry.last + _DAY)
        event.add("summary", entry.title)
        event.add("categories", [_CATEGORIES[entry.meaning]])
        event.add("transp", "TRANSPARENT")
        file.add_component(event)
    written: bytes = file.to_ical()
    return written.decode("utf-8")


def _written(calendar: SchoolCalendar) -> list[Entry]:
    entries = []
    for term in calendar.terms:
        name = term.name or "school"
        entries.append(Entry(term.first, term.first, f"First day of {name}", words.FIRST))
        entries.append(Entry(term.last, term.last, f"Last day of {name}", words.LAST))
    for off in calendar.days_off:
        entries.append(Entry(off.first, off.last, off.reason or "No school", words.OFF))
    for half in calendar.half_days:
        entries.append(Entry(half.day, half.day, half.reason or "Half day", words.HALF))
    return sorted(entries)
