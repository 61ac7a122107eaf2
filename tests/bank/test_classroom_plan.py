import datetime as dt
from dataclasses import replace

import pytest
from making import MONDAY, make_item, put

from bank.calendar import DayOff
from bank.classroom import Bank
from bank.classroom_plan import Plans
from bank.item import BankError

FRIDAY = MONDAY + dt.timedelta(days=4)
NEXT = MONDAY + dt.timedelta(days=7)


def drawn(bank: Bank, day: dt.date) -> dict[str, list[str]]:
    return {one.learner.code: [part.item for part in one.given] for one in bank.days.sets(day)}


@pytest.fixture
def plenty(stocked: Bank) -> Bank:
    put(stocked, *(make_item(n, "question", (n % 40) / 10) for n in range(100, 400)))
    put(
        stocked,
        *(
            make_item(n, kind, (n % 40) / 10)
            for n in range(100, 180)
            for kind in ("sentence", "topic")
        ),
    )
    return stocked


def test_a_plan_fixes_the_sets_that_the_draw_then_takes(plenty: Bank) -> None:
    planned = Plans(plenty.days).make(MONDAY, NEXT)
    assert [one.day.weekday() for one in planned] == [0, 1, 2, 3, 4, 0]
    before = drawn(plenty, FRIDAY)
    assert {s.learner.code: [p.item for p in s.given] for s in plenty.days.draw(FRIDAY)} == before
    items = [
        item
        for n in range(8)
        for item in drawn(plenty, MONDAY + dt.timedelta(days=n)).get("K4", [])
    ]
    assert len(items) == len(set(items)) == 6 * 7


def test_a_plan_keeps_the_days_that_are_drawn(plenty: Bank) -> None:
    before = plenty.days.draw(FRIDAY)
    Plans(plenty.days).make(MONDAY, NEXT)
    assert drawn(plenty, FRIDAY) == {s.learner.code: [p.item for p in s.given] for s in before}


def test_a_plan_leaves_out_days_off(plenty: Bank) -> None:
    calendar = replace(plenty.days.calendar(), days_off=(DayOff(FRIDAY, FRIDAY, "fair"),))
    plenty.store.set_setting("calendar", calendar.to_dict())
    assert FRIDAY not in [one.day for one in Plans(plenty.days).make(MONDAY, NEXT)]


@pytest.mark.parametrize(
    ("first", "last"), [(FRIDAY, MONDAY), (MONDAY, MONDAY + dt.timedelta(days=999))]
)
def test_a_span_that_cannot_be_is_refused(plenty: Bank, first: dt.date, last: dt.date) -> None:
    with pytest.raises(BankError):
        Plans(plenty.days).make(first, last)


def test_a_lost_day_moves_the_rest_on(plenty: Bank) -> None:
    plans = Plans(plenty.days)
    plans.make(MONDAY, FRIDAY)
    before = [drawn(plenty, MONDAY + dt.timedelta(days=n)) for n in range(5)]
    moved = plans.skip(MONDAY + dt.timedelta(days=1))
    assert moved == [MONDAY + dt.timedelta(days=n) for n in (2, 3, 4, 7)]
    after = [drawn(plenty, MONDAY + dt.timedelta(days=n)) for n in (0, 2, 3, 4, 7)]
    assert after == before
    assert drawn(plenty, MONDAY + dt.timedelta(days=1)) == {}
    with pytest.raises(BankError, match="skipped"):
        plenty.days.draw(MONDAY + dt.timedelta(days=1))


def test_an_item_whose_season_is_over_is_exchanged_when_its_day_moves(bank: Bank) -> None:
    bank.learners.add("K4", 2.0, questions=1)
    put(
        bank,
        make_item(1, grade=1.0, seasons=("09-14..09-14",)),
        *(make_item(n, grade=1.0) for n in range(2, 6)),
    )
    plans = Plans(bank.days)
    plans.make(MONDAY, MONDAY)
    assert drawn(bank, MONDAY) == {"K4": ["q00001"]}
    plans.skip(MONDAY)
    (moved,) = drawn(bank, MONDAY + dt.timedelta(days=1)).values()
    assert len(moved) == 1 and moved != ["q00001"]


def test_a_printed_set_moves_as_it_is_on_paper(bank: Bank) -> None:
    bank.learners.add("K4", 2.0, questions=1)
    put(bank, make_item(1, grade=1.0, seasons=("09-14..09-14",)), make_item(2, grade=1.0))
    bank.days.draw(MONDAY)
    bank.days.printed(MONDAY)
    Plans(bank.days).skip(MONDAY)
    (moved,) = bank.days.sets(MONDAY + dt.timedelta(days=1))
    assert moved.state == "printed" and moved.given[0].item == "q00001"


def test_who_was_away_on_the_lost_day_gets_a_set_on_the_new_one(plenty: Bank) -> None:
    from bank.learner import Away

    plenty.learners.change("K4", away=(Away(MONDAY, MONDAY),))
    plans = Plans(plenty.days)
    plans.make(MONDAY, MONDAY)
    assert set(drawn(plenty, MONDAY)) == {"M7"}
    plans.skip(MONDAY)
    assert set(drawn(plenty, MONDAY + dt.timedelta(days=1))) == {"K4", "M7"}


def test_a_plan_that_cannot_be_finished_changes_nothing(plenty: Bank) -> None:
    from bank.calendar import Term

    calendar = replace(plenty.days.calendar(), terms=(Term(MONDAY, FRIDAY, "one week"),))
    plenty.store.set_setting("calendar", calendar.to_dict())
    plans = Plans(plenty.days)
    plans.make(MONDAY, FRIDAY)
    before = drawn(plenty, FRIDAY)
    with pytest.raises(BankError, match="no school day after"):
        plans.skip(MONDAY)
    assert drawn(plenty, FRIDAY) == before
    assert plenty.days.calendar() == calendar
