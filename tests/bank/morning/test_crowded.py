"""Turns where a small class is too crowded for even ones: as even as can be, and no rule broken."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bank.calendar import SchoolCalendar
from bank.morning import crowded
from bank.morning.crowded import Slot, most_even
from bank.morning.jobs import DAILY, TWO_WEEKS, WEEKLY, Job, Member, TurnSettings
from bank.morning.rota import Facts
from bank.morning.tally import Record, Tally, Turn
from bank.morning.turns import plan_turns

MONDAY = date(2026, 9, 7)
DAYS = [MONDAY + timedelta(days=n) for n in range(5)]


def slot(job: Job, day: date, here: tuple[str, ...], able: tuple[str, ...] = ()) -> Slot:
    prices = dict.fromkeys(able or here, 0.0)
    return Slot(job, day, frozenset([day]), Facts([*here], [*here], prices, 1, [], True))


def test_one_who_alone_can_take_another_job_gives_theirs_up_in_time():
    # K1 alone can take the bell on Thursday and Friday, so the mat is K2's on these days: K1 has it
    # earlier, and the counts are never more than one apart.
    mat = Job("mat", "Mat", DAILY, only=("K1", "K2"), during=("line",))
    bell = Job("bell", "Bell", DAILY, only=("K1",), during=("line",))
    slots = [slot(mat, day, ("K1", "K2")) for day in DAYS[:4]]
    slots += [slot(bell, DAYS[3], ("K1",))]
    found = most_even(slots, {"mat": Tally(), "bell": Tally()}, worst=3)
    assert found["bell", DAYS[3]] == ["K1"] and found["mat", DAYS[3]] == ["K2"]
    mats = [found["mat", day][0] for day in DAYS[:4]]
    counts = [mats[:n].count("K1") - mats[:n].count("K2") for n in range(5)]
    assert max(map(abs, counts)) == 1


def test_nothing_is_found_where_nothing_is_more_even():
    mat = Job("mat", "Mat", DAILY, only=("K1", "K2"), during=("line",))
    # The whole class is here, and only K2 can come on these days.
    slots = [slot(mat, day, ("K1", "K2"), able=("K2",)) for day in DAYS]
    assert most_even(slots, {"mat": Tally()}, worst=5) == {}


codes = st.sampled_from(["K1", "K2", "K3", "K4", "K5"])
jobs = st.lists(
    st.tuples(st.sets(codes, min_size=2), st.sampled_from([DAILY, DAILY, WEEKLY])),
    min_size=2,
    max_size=4,
)


@settings(max_examples=40, deadline=None)
@given(jobs, st.integers(4, 5))
def test_crowded_jobs_never_clash_and_days_stay_as_posted(made, size):
    members = tuple(Member(f"K{n}") for n in range(1, size + 1))
    here = {member.code for member in members}
    wanted = [
        Job(f"job{n}", f"Job {n}", rhythm, only=tuple(sorted(only & here)), during=("line",))
        for n, (only, rhythm) in enumerate(made)
        if only & here
    ]
    class_ = TurnSettings(members, tuple(wanted))
    calendar = SchoolCalendar()
    first = plan_turns(class_, [], calendar, [], MONDAY, DAYS[4])
    for day in DAYS:
        at_once = [turn.learner for turn in first.on(day)]
        assert len(at_once) == len(set(at_once)), at_once
    again = plan_turns(class_, first.turns, calendar, [], MONDAY, DAYS[4])
    assert again.turns == first.turns and not again.new
    longer = {job.code for job in wanted if job.rhythm == WEEKLY}
    for one, other in pairwise(DAYS):
        held = [
            {t.job: t.learner for t in first.on(day) if t.job in longer} for day in (one, other)
        ]
        assert held[0] == held[1]


@pytest.mark.parametrize("days", [1, 3, 5])
def test_a_day_looks_the_same_however_far_one_looks_in_its_week(days):
    names = ("K1", "K2", "K3", "K4")
    wanted = [
        Job("job0", "Job 0", DAILY, during=("line",)),
        Job("job1", "Job 1", DAILY, only=("K3", "K4"), during=("line",)),
        Job("job2", "Job 2", DAILY, only=("K1", "K2", "K4"), during=("line",)),
        Job("job3", "Job 3", DAILY, only=("K2", "K3", "K4"), during=("line",)),
    ]
    class_ = TurnSettings(tuple(Member(code) for code in names), tuple(wanted))
    whole = plan_turns(class_, [], SchoolCalendar(), [], MONDAY, DAYS[4])
    part = plan_turns(class_, [], SchoolCalendar(), [], MONDAY, DAYS[days - 1])
    assert list(part.turns) == [turn for turn in whole.turns if turn.day <= DAYS[days - 1]]


def test_a_weekly_job_of_one_weekday_keeps_nobody_from_the_game_on_the_others():
    # K2 cleans on Tuesday, so K1, who was in charge on Friday, is not in charge on Monday again.
    game = Job("game", "Game", DAILY, in_charge=True, during=("game",))
    clean = Job("clean", "Cleaning", WEEKLY, weekdays=(1,), only=("K2",), during=("game",))
    class_ = TurnSettings((Member("K1"), Member("K2")), (game, clean))
    record = Record(class_, [], ())
    slots, _ = crowded._slots(record, [game, clean], DAYS, SchoolCalendar())
    assert [slot.days for slot in slots if slot.job is clean] == [frozenset([DAYS[1]])]
    posted = [Turn(MONDAY - timedelta(days=3), "game", "K1")]
    plan = plan_turns(class_, posted, SchoolCalendar(), [], MONDAY, DAYS[4])
    in_charge = [turn.learner for turn in plan.turns if turn.job == "game"]
    assert in_charge[:2] == ["K2", "K1"]


def test_a_long_job_whose_first_days_are_given_out_binds_on_the_others_only():
    # The mat of this week is K1's; who gets its last days next week can be in charge this week.
    game = Job("game", "Game", DAILY, in_charge=True, during=("game",))
    mat = Job("mat", "Mat", TWO_WEEKS, during=("game",))
    monday = mat.turn_of(MONDAY + timedelta(days=7))
    week = [monday + timedelta(days=n) for n in range(5)]
    class_ = TurnSettings((Member("K1"), Member("K2"), Member("K3")), (game, mat))
    record = Record(class_, [Turn(day, "mat", "K1") for day in week], ())
    slots, _ = crowded._slots(record, [game, mat], week, SchoolCalendar())
    held = frozenset(day for slot in slots if slot.job is mat for day in slot.days)
    assert held and held.isdisjoint(week)
