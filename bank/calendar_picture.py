"""A term as small month pictures for the terminal: plain text, no colours, three months abreast."""

from __future__ import annotations

import calendar as months
from collections.abc import Iterator
from datetime import date, timedelta

from bank.calendar import SchoolCalendar

_CELL = 3
_WIDTH = 7 * _CELL
_GAP = "   "
LEGEND = " 7  school day    7½ short morning    7* today    -- day off    .  no school"


def month_picture(
    calendar: SchoolCalendar, first: date, last: date, today: date | None = None, abreast: int = 3
) -> str:
    """The months from `first` to `last` with a mark for every day, and a list of what is special.

    A school day shows its number, a short morning a ½ after it, a day off two dashes, a day that is
    never in session a point; `today` has a star. Below stand the legend, the days off and short
    mornings in order, and the number of school days. Lines are at most 69 characters wide with the
    usual three months `abreast`.
    """
    blocks = [_month(calendar, year, month, today) for year, month in _months(first, last)]
    lines: list[str] = []
    for row in range(0, len(blocks), abreast):
        side_by_side = zip(*blocks[row : row + abreast], strict=True)
        drawn = [_GAP.join(parts).rstrip() for parts in side_by_side]
        lines += [line for line in drawn if line] + [""]
    counted = calendar.count_school_days(first, last)
    lines += [LEGEND, *_specials(calendar, first, last)]
    lines.append(f"{counted} school day{'s' * (counted != 1)} from {first} to {last}")
    return "\n".join(lines) + "\n"


def term_picture(calendar: SchoolCalendar, day: date, today: date | None = None) -> str:
    """The picture of the term in which `day` lies, or else the next one.

    Without terms, or after the last, it is the month of `day` and the two after it.
    """
    coming = next((term for term in calendar.terms if term.last >= day), None)
    if coming is not None:
        return month_picture(calendar, coming.first, coming.last, today)
    month_after_next = (day.replace(day=1) + timedelta(days=63)).replace(day=1)
    length = months.monthrange(month_after_next.year, month_after_next.month)[1]
    return month_picture(calendar, day.replace(day=1), month_after_next.replace(day=length), today)


def _months(first: date, last: date) -> Iterator[tuple[int, int]]:
    for count in range(first.year * 12 + first.month - 1, last.year * 12 + last.month):
        yield count // 12, count % 12 + 1


def _month(calendar: SchoolCalendar, year: int, month: int, today: date | None) -> list[str]:
    """Eight lines of `_WIDTH` characters: the name, the weekdays, six weeks."""
    lines = [f"{months.month_name[month]} {year}".center(_WIDTH)]
    lines.append("".join(f"{name[:2]} " for name in months.day_name))
    weeks = months.Calendar(firstweekday=0).monthdatescalendar(year, month)
    for week in weeks:
        lines.append("".join(_cell(calendar, day, month, today) for day in week))
    return lines + [" " * _WIDTH] * (8 - len(lines))


def _cell(calendar: SchoolCalendar, day: date, month: int, today: date | None) -> str:
    if day.month != month:
        return " " * _CELL
    if calendar.is_school_day(day):
        mark = "½" if calendar.is_half_day(day) else " "
        return f"{day.day:2}{'*' if day == today else mark}"
    in_session = day.weekday() in calendar.weekdays
    off = in_session and any(one.holds(day) for one in calendar.days_off)
    return f"{'--' if off else ' .'}{'*' if day == today else ' '}"


def _specials(calendar: SchoolCalendar, first: date, last: date) -> Iterator[str]:
    """One line for each day off and each short morning, in order of date."""
    found = [
        (off.first, _range(off.first, off.last), off.reason or "day off")
        for off in calendar.days_off
        if off.last >= first and off.first <= last
    ]
    found += [
        (half.day, _range(half.day, half.day), half.reason or "short morning")
        for half in calendar.half_days
        if first <= half.day <= last and calendar.is_half_day(half.day)
    ]
    for _, when, reason in sorted(found):
        yield f"{when:>15}  {reason}"


def _range(first: date, last: date) -> str:
    """A short name for the days from `first` to `last`.

    >>> _range(date(2026, 11, 25), date(2026, 11, 27))
    'Nov 25 - Nov 27'
    """
    ends = [f"{months.month_abbr[day.month]} {day.day}" for day in (first, last)]
    return ends[0] if first == last else " - ".join(ends)
