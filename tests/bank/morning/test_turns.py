"""Turns are fair, clash with nothing, and stand once they are posted."""

from __future__ import annotations

import json
from collections import Counter
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bank.calendar import DayOff, SchoolCalendar
from bank.morning.jobs import (
    DAILY,
    KEYBOARD,
    TWO_WEEKS,
    WEEKLY,
    Away,
    Job,
    Keyboard,
    Member,
    NotAJob,
    TurnSettings,
)
from bank.morning.tally import Record, Turn
from bank.morning.turns import TurnPlan, plan_turns

MONDAY = date(2026, 9, 7)
EVERY_DAY = SchoolCalendar()
LINE = Job("line", "Line leader", during=("line",))
GAME = Job("game", "Game leader", in_charge=True, during=("game",))


def of(count: int, *jobs: Job, keyboard: Keyboard | None = None) -> TurnSettings:
    members = tuple(Member(f"K{n}") for n in range(1, count + 1))
    return TurnSettings(members, jobs, keyboard)


def day(n: int) -> date:
    """The n-th school day from Monday on, counted from 0."""
    return MONDAY + timedelta(days=n + 2 * (n // 5))


def plan(
    settings: TurnSettings, posted: list[Turn], away: list[Away], first: int, last: int
) -> TurnPlan:
    return plan_turns(settings, posted, EVERY_DAY, away, day(first), day(last))


def real(settings: TurnSettings, turns: list[Turn], away: list[Away], job: str) -> list[str]:
    record = Record(settings, turns, away)
    return [code for one in record.days() for code in record.holders(one, job)]


def test_everybody_has_a_daily_job_once_before_anybody_has_it_twice() -> None:
    turns = plan(of(6, LINE), [], [], 0, 17).turns
    had = [turn.learner for turn in turns]
    for n in range(0, 18, 6):
        assert sorted(had[n : n + 6]) == [f"K{k}" for k in range(1, 7)]
    # Where nothing clashes the order stays the same, so that everyone knows when it is their turn.
    assert had[:6] == had[6:12] == had[12:]


def test_a_weekly_job_stays_for_the_week_and_a_fortnight_s_for_two() -> None:
    jobs = (Job("plants", "Plants", WEEKLY), Job("board", "Board", TWO_WEEKS))
    turns = plan(of(4, *jobs), [], [], 0, 19).turns
    plants = [turn.learner for turn in turns if turn.job == "plants"]
    board = [turn.learner for turn in turns if turn.job == "board"]
    assert [len(set(plants[n : n + 5])) for n in range(0, 20, 5)] == [1, 1, 1, 1]
    assert len(set(plants)) == 4
    whole = [code for code, days in Counter(board).items() if days == 10]
    changes = [n for n in range(1, 20) if board[n] != board[n - 1]]
    assert whole and all(change % 5 == 0 for change in changes) and len(changes) <= 2


def test_cleaning_is_on_fridays_only_and_goes_round_by_the_week() -> None:
    turns = plan(of(4, Job("clean", "Cleaning", weekdays=(4,))), [], [], 0, 19).turns
    assert {turn.day.weekday() for turn in turns} == {4}
    assert sorted(turn.learner for turn in turns) == ["K1", "K2", "K3", "K4"]


def test_nobody_has_two_jobs_at_the_same_time() -> None:
    jobs = [Job(f"job{n}", f"Job {n}", during=("line",)) for n in range(5)]
    found = plan(of(5, *jobs), [], [], 0, 19)
    assert found.problems == ()
    for n in range(20):
        assert len({turn.learner for turn in found.on(day(n))}) == 5
    for job in jobs:
        had = [turn.learner for turn in found.turns if turn.job == job.code]
        assert all(len(set(had[n : n + 5])) == 5 for n in range(0, 20, 5))


def test_jobs_on_different_weekdays_never_clash() -> None:
    monday = Job("mon", "Water", weekdays=(0,), during=("snack",))
    friday = Job("fri", "Sweep", weekdays=(4,), during=("snack",), only=("K1",))
    assert not monday.clashes(friday) and monday.clashes(Job("x", "X", during=("snack",)))


def test_the_one_in_charge_changes_every_day_even_over_the_end_of_a_round() -> None:
    had = [turn.learner for turn in plan(of(3, GAME), [], [], 0, 29).turns]
    assert all(one != other for one, other in zip(had, had[1:], strict=False))
    two = [turn.learner for turn in plan(of(2, GAME), [], [], 0, 9).turns]
    assert two == ["K1", "K2"] * 5


def test_everybody_has_the_keyboard_once_a_week() -> None:
    found = plan(of(9, keyboard=Keyboard(computers=2)), [], [], 0, 9)
    for week in (found.turns[:9], found.turns[9:]):
        assert len({turn.learner for turn in week}) == 9
        assert max(Counter(turn.day for turn in week).values()) == 2
    first, second = (
        {turn.learner: turn.day.weekday() for turn in week}
        for week in (found.turns[:9], found.turns[9:])
    )
    assert first == second, "each keeps their weekday"


def test_a_week_too_short_for_the_keyboard_says_so_and_the_left_out_come_first_next_week() -> None:
    calendar = SchoolCalendar(days_off=(DayOff(MONDAY, MONDAY + timedelta(days=2), "Flood"),))
    settings_ = of(5, keyboard=Keyboard(computers=1))
    found = plan_turns(settings_, [], calendar, [], day(0), day(4))
    (problem,) = found.problems
    assert problem.rule == "keyboard" and "2 places are free (1 at a time, 2 days)" in problem.text
    later = plan_turns(settings_, found.turns, calendar, [], day(5), day(7))
    assert {turn.learner for turn in later.turns} == set(problem.learners)


def test_the_tool_names_who_stands_in_the_way() -> None:
    door = Job("door", "Door holder", during=("line",), only=("K1",))
    line = Job("line", "Line leader", during=("line",), only=("K1", "K2"))
    problems = plan(of(2, door, line), [], [], 0, 4).problems
    assert problems and all(problem.rule == "again" for problem in problems)
    assert problems[0].job == "line" and "K1 has Door holder at the same time" in problems[0].text


def test_whoever_a_weekly_job_will_keep_from_a_daily_one_has_the_daily_one_before() -> None:
    line = Job("line", "Line leader", only=("K1", "K3", "K4"), during=("line",))
    door = Job("door", "Door holder", WEEKLY, only=("K1", "K2"), during=("line",))
    turns = plan(of(4, line, door), [Turn(day(n), "door", "K2") for n in range(5)], [], 0, 9).turns
    assert {turn.learner for turn in turns if turn.job == "door" and turn.day >= day(5)} == {"K1"}
    had = [turn.learner for turn in turns if turn.job == "line"]
    assert had[:5].count("K1") == 2 and len(set(had[:3])) == 3
    assert abs(had.count("K3") - had.count("K4")) <= 1


def test_a_job_that_nobody_may_do_is_named() -> None:
    (problem, *_) = plan(of(2, Job("cook", "Cook", only=("K9",))), [], [], 0, 0).problems
    assert problem.rule == "nobody" and "no learner in class is allowed it" in problem.text


# Away, and back


def test_who_is_away_swaps_with_someone_later_in_the_week() -> None:
    settings_ = of(5, LINE)
    posted = list(plan(settings_, [], [], 0, 4).turns)
    assert [turn.learner for turn in posted] == ["K1", "K2", "K3", "K4", "K5"]
    found = plan(settings_, posted, [Away("K1", day(0), day(1))], 0, 4)
    assert found.new == (
        Turn(day(0), "line", "K3", instead_of="K1"),
        Turn(day(2), "line", "K1", instead_of="K3"),
    )


def test_who_is_away_comes_first_when_back_if_no_swap_was_to_be_had() -> None:
    settings_ = of(3, LINE)
    away = [Away("K1", day(0), day(0))]
    posted: list[Turn] = list(plan(settings_, [], [], 0, 0).turns)
    assert posted == [Turn(day(0), "line", "K1")]
    posted += plan(settings_, posted, away, 0, 0).new
    posted += plan(settings_, posted, away, 1, 5).new
    assert real(settings_, posted, away, "line") == ["K2", "K1", "K3", "K2", "K1", "K3"]


def test_a_long_absence_is_not_made_up_for_turn_by_turn() -> None:
    settings_ = of(3, LINE)
    away = [Away("K1", day(0), day(14))]
    posted: list[Turn] = []
    for n in range(24):
        posted += plan(settings_, posted, away, n, n).new
    back = real(settings_, posted, away, "line")[15:]
    assert back[:2].count("K1") == 1 and Counter(back)["K1"] <= 4


def test_a_day_away_from_a_weekly_job_is_stood_in_for_and_the_week_stays_theirs() -> None:
    settings_ = of(3, Job("plants", "Plants", WEEKLY))
    posted = list(plan(settings_, [], [], 0, 4).turns)
    away = [Away("K1", day(1), day(1))]
    posted += plan(settings_, posted, away, 1, 1).new
    assert real(settings_, posted, away, "plants") == ["K1", "K2", "K1", "K1", "K1"]
    following = plan(settings_, posted, away, 5, 14).turns
    assert [turn.learner for turn in following][::5] == ["K2", "K3"]


def test_a_keyboard_day_missed_is_swapped_for_a_later_one_of_the_week() -> None:
    settings_ = of(5, keyboard=Keyboard(computers=1))
    posted = list(plan(settings_, [], [], 0, 4).turns)
    away = [Away("K1", day(0), day(0))]
    new = plan(settings_, posted, away, 0, 4).new
    swapped = real(settings_, posted + list(new), away, KEYBOARD)
    assert sorted(swapped) == ["K1", "K2", "K3", "K4", "K5"] and swapped[0] != "K1"


def test_a_stand_in_who_is_away_too_has_a_stand_in() -> None:
    settings_ = of(3, LINE)
    posted = [Turn(day(0), "line", "K1"), Turn(day(0), "line", "K2", instead_of="K1")]
    away = [Away("K1", day(0), day(0)), Away("K2", day(0), day(0))]
    (new,) = plan(settings_, posted, away, 0, 0).new
    assert new == Turn(day(0), "line", "K3", instead_of="K2")
    assert real(settings_, [*posted, new], away, "line") == ["K3"]


# Joining and leaving


def test_a_learner_who_joins_comes_next_and_takes_nobody_s_turn() -> None:
    before = of(3, LINE)
    posted = list(plan(before, [], [], 0, 6).turns)
    joined = TurnSettings((*before.members, Member("K4", first=day(7))), (LINE,))
    after = [turn.learner for turn in plan(joined, posted, [], 7, 14).turns]
    assert sorted(after[:3]) == ["K2", "K3", "K4"] and sorted(after[3:7]) == [
        "K1",
        "K2",
        "K3",
        "K4",
    ]


def test_a_learner_who_was_added_without_a_date_does_not_make_up_the_whole_year() -> None:
    before = of(3, LINE)
    posted = list(plan(before, [], [], 0, 29).turns)
    after = [turn.learner for turn in plan(of(4, LINE), posted, [], 30, 37).turns]
    assert Counter(after) == {"K1": 2, "K2": 2, "K3": 2, "K4": 2}


def test_a_learner_who_leaves_in_the_middle_of_a_week_hands_the_job_on() -> None:
    settings_ = TurnSettings(
        (Member("K1", last=day(1)), Member("K2"), Member("K3")), (Job("plants", "Plants", WEEKLY),)
    )
    posted = [Turn(day(0), "plants", "K1"), Turn(day(1), "plants", "K1")]
    after = [turn.learner for turn in plan(settings_, posted, [], 2, 4).turns]
    assert after == ["K2", "K2", "K2"]


# Posted


@settings(max_examples=25, deadline=None)
@given(
    st.integers(2, 7),
    st.lists(st.tuples(st.integers(1, 7), st.integers(0, 14), st.integers(0, 3)), max_size=6),
    st.sampled_from([DAILY, WEEKLY, TWO_WEEKS]),
)
def test_turns_once_posted_stay(
    learners: int, absences: list[tuple[int, int, int]], rhythm: str
) -> None:
    settings_ = of(learners, LINE, Job("plants", "Plants", rhythm), keyboard=Keyboard(2))
    away = [Away(f"K{k}", day(n), day(n + more)) for k, n, more in absences]
    posted: list[Turn] = []
    for n in range(15):
        whole_week = plan(settings_, posted, away if n % 2 else [], n, min(14, n + n % 5))
        assert [turn for turn in posted if day(n) <= turn.day <= day(min(14, n + n % 5))] == sorted(
            turn for turn in whole_week.turns if turn in posted
        )
        posted = sorted({*posted, *whole_week.new})


def test_the_same_question_has_the_same_answer() -> None:
    settings_ = of(7, LINE, GAME, Job("plants", "Plants", WEEKLY), keyboard=Keyboard(2))
    assert plan(settings_, [], [], 0, 9) == plan(settings_, [], [], 0, 9)


def test_a_day_looks_the_same_by_itself_and_in_its_week() -> None:
    settings_ = of(7, LINE, GAME, Job("plants", "Plants", WEEKLY), keyboard=Keyboard(2))
    assert plan(settings_, [], [], 0, 0).turns == plan(settings_, [], [], 0, 4).on(day(0))


def test_no_turns_are_given_out_on_a_day_off() -> None:
    calendar = SchoolCalendar(days_off=(DayOff(day(2), day(2), "Fair"),))
    found = plan_turns(of(3, LINE), [], calendar, [], day(0), day(4))
    assert day(2) not in {turn.day for turn in found.turns} and len(found.turns) == 4
    assert plan_turns(of(3, LINE), [], calendar, [], day(2), day(2)).turns == ()


# Settings


def test_the_settings_survive_storing() -> None:
    settings_ = TurnSettings(
        (Member("K1", first=day(1)), Member("K2", last=day(9))),
        (Job("clean", "Cleaning", weekdays=(4,), steps=("Get the broom.", "Sweep.")), GAME),
        Keyboard(2, not_for=("K2",)),
    )
    assert TurnSettings.from_dict(json.loads(json.dumps(settings_.to_dict()))) == settings_
    turn = Turn(day(0), "line", "K2", instead_of="K1")
    assert Turn.from_dict(json.loads(json.dumps(turn.to_dict()))) == turn


def test_settings_that_contradict_themselves_are_refused() -> None:
    with pytest.raises(NotAJob, match="rhythm"):
        Job("x", "X", "monthly")
    with pytest.raises(NotAJob, match="named twice"):
        of(2, LINE, LINE)
    with pytest.raises(NotAJob, match="every day"):
        Job("game", "Game", WEEKLY, in_charge=True)
