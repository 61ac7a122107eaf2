"""A term is shown as a wall calendar shows it."""

from __future__ import annotations

import calendar as months
import re
from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from bank.calendar import DayOff, HalfDay, SchoolCalendar, Term
from bank.calendar_picture import LEGEND, month_picture, term_picture

YEAR = SchoolCalendar(
    terms=(Term(date(2026, 9, 1), date(2026, 12, 18), "Fall"),),
    days_off=(DayOff(date(2026, 11, 25), date(2026, 11, 27), "Thanksgiving break"),),
    half_days=(HalfDay(date(2026, 10, 7), "Early release"),),
)


def test_a_month_stands_as_on_a_wall_calendar() -> None:
    shown = month_picture(YEAR, date(2026, 11, 1), date(2026, 11, 30), today=date(2026, 11, 24))
    assert shown.splitlines()[:8] == [
        "    November 2026",
        "Mo Tu We Th Fr Sa Su",
        "                   .",
        " 2  3  4  5  6  .  .",
        " 9 10 11 12 13  .  .",
        "16 17 18 19 20  .  .",
        "23 24*-- -- --  .  .",
        "30",
    ]


def test_days_off_and_short_mornings_are_listed_with_their_reasons() -> None:
    shown = term_picture(YEAR, date(2026, 10, 1))
    assert "Nov 25 - Nov 27  Thanksgiving break" in shown
    assert "          Oct 7  Early release" in shown
    assert " 7½" in shown.split(LEGEND)[0]
    assert shown.endswith("76 school days from 2026-09-01 to 2026-12-18\n")


def test_the_coming_term_is_shown_in_the_holidays() -> None:
    assert "September 2026" in term_picture(YEAR, date(2026, 7, 10))


@given(st.dates(date(2000, 1, 1), date(2050, 1, 1)))
def test_every_school_day_of_a_month_is_drawn_once_under_its_weekday(day: date) -> None:
    length = months.monthrange(day.year, day.month)[1]
    first, last = day.replace(day=1), day.replace(day=length)
    shown = month_picture(SchoolCalendar(), first, last).split(LEGEND)[0].splitlines()[2:]
    drawn = [
        (int(found.group()), found.start() // 3)
        for row in shown
        for found in re.finditer(r"\d+", row)
    ]
    assert drawn == [(one.day, one.weekday()) for one in SchoolCalendar().school_days(first, last)]


@given(st.dates(date(2000, 1, 1), date(2050, 1, 1)), st.dates(date(2000, 1, 1), date(2050, 1, 1)))
def test_three_months_fit_into_a_terminal(one: date, other: date) -> None:
    first, last = sorted((one, date(one.year, other.month, other.day if other.day < 29 else 1)))
    assert max(map(len, month_picture(SchoolCalendar(), first, last).splitlines())) <= 79
