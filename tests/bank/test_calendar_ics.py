"""Calendar files of the shapes that districts publish are read on the school's own days.

The three files in tests/bank/calendars are our own: all-day ranges with exclusive ends, entries
that come back every year or week, and short mornings with times and time zones.
"""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bank.calendar import DayOff, HalfDay, SchoolCalendar, Term
from bank.calendar_ics import NotACalendarFile, Reading, read_ics, write_ics
from bank.calendar_words import meaning, term_name

FILES = Path(__file__).parent / "calendars"
YEAR = (date(2026, 8, 1), date(2027, 7, 31))
OWN = SchoolCalendar(
    terms=(
        Term(date(2026, 9, 1), date(2026, 12, 18), "Fall term"),
        Term(date(2027, 1, 4), date(2027, 6, 11), "Spring term"),
    ),
    days_off=(
        DayOff(date(2026, 9, 7), date(2026, 9, 7), "Labor Day"),
        DayOff(date(2026, 11, 25), date(2026, 11, 27), "Fall break, with family; rest"),
        DayOff(date(2027, 2, 15), date(2027, 2, 15), "The boiler is being mended"),
        DayOff(date(2027, 3, 1), date(2027, 3, 1)),
    ),
    half_days=(HalfDay(date(2026, 10, 7), "Early release"), HalfDay(date(2026, 10, 8), "Fair")),
)


def read(name: str, zone: str | None = None) -> Reading:
    return read_ics((FILES / name).read_bytes(), *YEAR, zone=zone)


def test_an_all_day_range_ends_the_day_before_its_exclusive_end() -> None:
    calendar = read("all_day_ranges.ics").calendar()
    assert not calendar.is_school_day(date(2026, 11, 25))
    assert not calendar.is_school_day(date(2026, 11, 27))
    assert calendar.is_school_day(date(2026, 11, 30))
    assert not calendar.is_school_day(date(2027, 1, 1))
    assert calendar.is_school_day(date(2027, 1, 4))


def test_an_entry_without_an_end_lasts_one_day_and_a_duration_counts() -> None:
    calendar = read("all_day_ranges.ics").calendar()
    assert calendar.why_off(date(2026, 10, 12)) == "Staff Development Day (no students)"
    assert calendar.is_school_day(date(2026, 10, 13))
    assert [calendar.is_school_day(date(2027, 4, day)) for day in (1, 2, 5)] == [False, False, True]


def test_the_first_and_last_day_make_a_term() -> None:
    calendar = read("all_day_ranges.ics").calendar()
    assert calendar.terms == (Term(date(2026, 8, 31), date(2027, 6, 11), ""),)
    assert calendar.is_half_day(date(2026, 10, 16))


def test_what_no_rule_knows_is_handed_back() -> None:
    titles = [entry.title for entry in read("all_day_ranges.ics").unknown]
    assert titles == ["Spirit Day: wear something warm", "School resumes after Winter Break"]


def test_entries_of_every_year_fall_on_this_year() -> None:
    calendar = read("yearly.ics").calendar()
    assert calendar.why_off(date(2026, 9, 7)) == "Labor Day"
    assert calendar.why_off(date(2026, 11, 26)) == "Thanksgiving holidays"
    assert calendar.why_off(date(2026, 11, 27)) == "Thanksgiving holidays"
    assert calendar.why_off(date(2026, 12, 25)) == "Christmas Day"
    assert calendar.why_off(date(2027, 1, 1)) == "New Year’s Day (observed)"
    assert calendar.is_school_day(date(2027, 6, 18))  # that series stopped years ago


def test_weekly_short_mornings_leave_out_the_excepted_day() -> None:
    calendar = read("yearly.ics").calendar()
    half = [half.day for half in calendar.half_days]
    assert half[0] == date(2026, 9, 16) and half[-1] == date(2026, 12, 16)
    assert len(half) == 13 and date(2026, 11, 25) not in half
    assert {day.weekday() for day in half} == {2}


def test_a_timed_half_day_lies_on_the_school_s_own_day() -> None:
    days = [
        half.day for half in read("zoned_half_days.ics", "America/Chicago").calendar().half_days
    ]
    assert days == [date(2026, 10, 2), date(2026, 11, 4), date(2026, 12, 11), date(2026, 12, 18)]


def test_an_end_at_midnight_does_not_take_the_next_day() -> None:
    calendar = read("zoned_half_days.ics", "America/Chicago").calendar()
    assert [calendar.is_school_day(date(2026, 11, n)) for n in (9, 10, 11)] == [False, False, True]


def test_a_meeting_a_concert_and_a_cancelled_entry_change_no_school_day() -> None:
    calendar = read("zoned_half_days.ics", "America/Chicago").calendar()
    for day in (date(2026, 10, 14), date(2026, 10, 15), date(2026, 11, 20), date(2026, 12, 10)):
        assert calendar.is_school_day(day) and not calendar.is_half_day(day)


@pytest.mark.parametrize(
    ("title", "timed", "expected"),
    [
        ("No School", False, "off"),
        ("NO SCHOOL – Professional Learning", True, "off"),
        ("Schools Closed (snow)", False, "off"),
        ("Presidents’ Day", False, "off"),
        ("Veterans Day Assembly", True, "unknown"),
        ("Holiday Concert", False, "unknown"),
        ("Spring Break Camp", False, "unknown"),
        ("Winter recess begins", False, "unknown"),
        ("Last day before spring break", False, "unknown"),
        ("No school for kindergarten", False, "unknown"),
        ("No school for students", False, "off"),
        ("Minimum Day", False, "half"),
        ("2-hour delay", True, "half"),
        ("Classes dismiss early", True, "half"),
        ("Breakfast with the principal", True, "unknown"),
        ("First day of winter", False, "unknown"),
        ("First day for students", False, "first"),
        ("Second semester begins", False, "first"),
        ("Last Day of Classes", False, "last"),
        ("Pictures", False, "unknown"),
        ("Teacher work day", False, "off"),
    ],
)
def test_a_title_is_read_as_a_teacher_reads_it(title: str, timed: bool, expected: str) -> None:
    assert meaning(title, timed) == expected


def test_a_term_has_its_name_from_the_title() -> None:
    assert term_name("First day of Fall term") == "Fall term"
    assert term_name("First Day of School") == ""


def test_what_is_no_calendar_file_is_refused() -> None:
    with pytest.raises(NotACalendarFile, match="BEGIN:VCALENDAR"):
        read_ics("date,what\n2026-09-07,Labor Day\n", *YEAR)
    with pytest.raises(NotACalendarFile):
        read_ics("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nDTSTART:soon\r\n", *YEAR)


def test_a_second_library_reads_what_we_write() -> None:
    vobject = pytest.importorskip("vobject")
    (file,) = vobject.readComponents(write_ics(OWN, "Room 4"))
    found = {
        (event.dtstart.value, event.dtend.value, event.summary.value) for event in file.vevent_list
    }
    for off in OWN.days_off:
        (title,) = [
            t for first, end, t in found if (first, end) == (off.first, off.last + timedelta(1))
        ]
        assert off.reason in title
    for half in OWN.half_days:
        assert any(first == half.day and half.reason in t for first, _, t in found)
    assert (date(2026, 9, 1), date(2026, 9, 2), "First day of Fall term") in found
    assert len(found) == 4 + len(OWN.days_off) + len(OWN.half_days)


def test_a_third_library_reads_what_we_write() -> None:
    ics = pytest.importorskip("ics")
    events = ics.Calendar(write_ics(OWN, "Room 4")).events
    spans = {(event.begin.date(), event.end.date()) for event in events if event.all_day}
    assert {(off.first, off.last + timedelta(1)) for off in OWN.days_off} <= spans
    assert len(events) == 10 and len({event.uid for event in events}) == 10


def test_our_own_reading_gives_the_calendar_back() -> None:
    again = read_ics(write_ics(OWN, "Room 4"), *YEAR)
    assert again.unknown == ()
    assert again.calendar().terms == OWN.terms
    assert again.calendar().half_days == OWN.half_days
    assert again.calendar().days_off[:3] == OWN.days_off[:3]
    every_day = [YEAR[0] + timedelta(days=n) for n in range(365)]
    for day in every_day:
        assert again.calendar().is_school_day(day) == OWN.is_school_day(day)
        assert again.calendar().is_half_day(day) == OWN.is_half_day(day)


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.tuples(st.dates(*YEAR), st.integers(0, 12), st.text(max_size=90)), max_size=6),
    st.lists(st.tuples(st.dates(*YEAR), st.text(max_size=30)), max_size=4),
)
def test_any_days_survive_the_file(
    off: list[tuple[date, int, str]], half: list[tuple[date, str]]
) -> None:
    calendar = SchoolCalendar(
        days_off=tuple(DayOff(day, day + timedelta(days=n), why) for day, n, why in off),
        half_days=tuple(HalfDay(day, why) for day, why in half),
    )
    again = read_ics(write_ics(calendar, "any"), YEAR[0], YEAR[1] + timedelta(days=20)).calendar()
    assert {(one.first, one.last) for one in again.days_off} == {
        (one.first, one.last) for one in calendar.days_off
    }
    assert {one.day for one in again.half_days} == {one.day for one in calendar.half_days}
