"""The morning has its steps in the teacher's order and words."""

from __future__ import annotations

import json
from datetime import date

import pytest

from bank.calendar import HalfDay, SchoolCalendar
from bank.morning.routine import DEFAULT_ROUTINE, MorningStep, NotARoutine, Routine

MONDAY = date(2026, 9, 7)
OWN = Routine(
    steps=(
        MorningStep("page", "My page", 10),
        MorningStep("song", "Song", 5, weekdays=(0,)),
        MorningStep("game", "Game", 20, short_morning=False),
    ),
    starts="8:50",
    specials={0: "Music", 2: "Gym"},
    lunches={MONDAY: "Rice and beans"},
)


def test_the_morning_that_comes_with_the_tool_is_an_hour_with_a_game_of_twenty_minutes() -> None:
    assert DEFAULT_ROUTINE.minutes_of(MONDAY) == 60
    assert {s.code: s.minutes for s in DEFAULT_ROUTINE.steps}["game"] == 20


def test_each_step_has_its_time_and_some_are_on_one_weekday_only() -> None:
    shown = [(t.step.name, t.begins, t.ends) for t in OWN.of_day(MONDAY)]
    assert shown == [
        ("My page", "8:50", "9:00"),
        ("Song", "9:00", "9:05"),
        ("Game", "9:05", "9:25"),
    ]
    assert [t.step.code for t in OWN.of_day(date(2026, 9, 8))] == ["page", "game"]


def test_a_half_day_leaves_out_what_does_not_fit() -> None:
    calendar = SchoolCalendar(half_days=(HalfDay(MONDAY),))
    assert [t.step.code for t in OWN.of_day(MONDAY, calendar)] == ["page", "song"]


def test_specials_go_by_weekday_and_lunch_by_date() -> None:
    assert (OWN.special_of(MONDAY), OWN.lunch_of(MONDAY)) == ("Music", "Rice and beans")
    assert (OWN.special_of(date(2026, 9, 8)), OWN.lunch_of(date(2026, 9, 8))) == ("", "")


def test_a_routine_survives_storing() -> None:
    for routine in (OWN, DEFAULT_ROUTINE):
        assert Routine.from_dict(json.loads(json.dumps(routine.to_dict()))) == routine


def test_a_routine_that_contradicts_itself_is_refused() -> None:
    with pytest.raises(NotARoutine, match="8:30"):
        Routine((MorningStep("page", "Page", 5),), starts="half past")
    with pytest.raises(NotARoutine, match="twice"):
        Routine((MorningStep("a", "A", 5), MorningStep("a", "B", 5)))
    with pytest.raises(NotARoutine, match="negative"):
        MorningStep("a", "A", -1)
