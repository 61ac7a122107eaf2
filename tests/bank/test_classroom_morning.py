"""Turns, sorts, baskets and the routine as a classroom keeps them."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest
from making import MONDAY, make_item, put

from bank.calendar import DayOff, SchoolCalendar, monday_of
from bank.classroom import Bank
from bank.classroom_morning_paper import morning_lines, sort_paper, turn_paper, with_morning
from bank.item import BankError
from bank.learner import Away
from bank.morning.jobs import WEEKLY, Job, Keyboard
from bank.morning.routine import DEFAULT_ROUTINE
from bank.morning.sorts import SortColumn, WordSort
from bank.morning.tally import Turn
from bank.page.content import DayContent

LINE = Job("line", "Line leader", during=("line",), steps=("Walk at the front.",))
PLANTS = Job("plants", "Plants", WEEKLY, not_for=("K2",))


def day(n: int) -> dt.date:
    return MONDAY + dt.timedelta(days=n)


@pytest.fixture
def room(bank: Bank) -> Bank:
    """A class of four with two jobs and the keyboard."""
    for code in ("K1", "K2", "K3", "K4"):
        bank.learners.add(code, 3.0)
    bank.morning.keep_jobs([LINE, PLANTS], Keyboard(1))
    return bank


def a_sort(number: int, pattern: str = "ch-sh") -> WordSort:
    words = tuple(f"w{number}x{n}" for n in range(12))
    columns = (SortColumn("ch-", words[:6]), SortColumn("sh-", words[6:]))
    return WordSort(pattern, "ch or sh", columns, words)


def put_sorts(bank: Bank, *sorts: WordSort) -> list[str]:
    ids = []
    for number, sort in enumerate(sorts):
        item = make_item(number, "sort", text=sort.text, sort=sort.to_dict())
        put(bank, item)
        ids.append(item.id)
    return ids


def test_turns_that_were_given_out_stand_when_the_jobs_change(room: Bank) -> None:
    first = room.morning.post(day(0), day(4)).turns
    room.morning.keep_jobs([LINE, Job("board", "Board")], None)
    again = room.morning.turns(day(0), day(4)).turns
    assert [t for t in again if t.job == "line"] == [t for t in first if t.job == "line"]
    assert {t.job for t in again} == {"line", "board", "plants", "keyboard"}
    assert {job.code for job, _, _ in room.morning.who(again, day(0))} == {"line", "board"}


def test_looking_ahead_gives_nothing_out(room: Bank) -> None:
    room.morning.turns(day(0), day(4))
    assert room.morning.given_out(day(0), day(4)) == []


def test_a_learner_who_is_away_has_a_stand_in_and_comes_next(room: Bank) -> None:
    room.morning.post(day(0))
    (line,) = [
        who
        for job, who, _ in room.morning.who(room.morning.turns(day(0)).turns, day(0))
        if job.code == "line"
    ]
    room.learners.change(line, away=(Away(day(0), day(0)),))
    plan = room.morning.post(day(0))
    after = [one for one in room.morning.who(plan.turns, day(0)) if one[0].code == "line"]
    assert after[0][1] != line and after[0][2] == line
    following = room.morning.post(day(1))
    assert line in [
        who for job, who, _ in room.morning.who(following.turns, day(1)) if job.code == "line"
    ]


def test_the_teacher_can_say_who_stands_in(room: Bank) -> None:
    room.morning.post(day(0))
    held = {
        job.code: who for job, who, _ in room.morning.who(room.morning.turns(day(0)).turns, day(0))
    }
    other = next(code for code in ("K1", "K2", "K3") if code != held["line"])
    assert room.morning.stand_in(day(0), "line", other).instead_of == held["line"]
    now = {
        job.code: who for job, who, _ in room.morning.who(room.morning.turns(day(0)).turns, day(0))
    }
    assert now["line"] == other
    with pytest.raises(BankError, match="already"):
        room.morning.stand_in(day(0), "line", other)
    with pytest.raises(BankError, match="no job"):
        room.morning.stand_in(day(0), "cooking", other)


@pytest.fixture
def on_tuesday(room: Bank, monkeypatch: pytest.MonkeyPatch) -> Bank:
    """The class on a Tuesday."""
    monkeypatch.setattr("bank.classroom_morning.Morning.today", lambda _: day(1))
    return room


def told(room: Bank, n: int) -> list[Turn]:
    return [turn for turn in room.morning.turns(day(n)).turns if turn.day == day(n)]


def test_friday_s_turns_are_the_same_asked_on_any_day_and_once_printed(on_tuesday: Bank) -> None:
    order = [4, 9, 2, 3, 8, 1]
    first = {n: told(on_tuesday, n) for n in order}
    assert first[4] == [
        t for t in on_tuesday.morning.turns(day(0), day(4)).turns if t.day == day(4)
    ]
    on_tuesday.morning.post(day(1))
    assert {n: told(on_tuesday, n) for n in order} == first
    on_tuesday.morning.post(day(8))
    assert {n: told(on_tuesday, n) for n in order} == first


def test_what_is_printed_ahead_stands_and_so_do_the_days_before_it(on_tuesday: Bank) -> None:
    told_before = [told(on_tuesday, n) for n in (1, 2, 3, 4)]
    on_tuesday.morning.post(day(4))
    assert on_tuesday.morning.given_out(day(0), day(9)) == sorted(sum(told_before, []))


def test_a_day_gone_by_without_turns_has_none(on_tuesday: Bank) -> None:
    assert told(on_tuesday, 0) == [] != told(on_tuesday, 1)


def test_nobody_stands_in_for_a_job_that_they_cannot_take(room: Bank) -> None:
    (plants,) = (turn for turn in told(room, 0) if turn.job == "plants")
    others = ", ".join(code for code in ("K1", "K3", "K4") if code != plants.learner)
    with pytest.raises(BankError, match=f"K2 cannot take Plants.*; {others} can"):
        room.morning.stand_in(day(0), "plants", "K2")
    room.morning.keep_jobs([LINE, PLANTS], Keyboard(1, not_for=("K4",)))
    with pytest.raises(BankError, match="K4 cannot take Keyboard"):
        room.morning.stand_in(day(0), "keyboard", "K4")
    room.learners.change("K3", away=(Away(day(0), day(0)),))
    with pytest.raises(BankError, match="K3 is not there"):
        room.morning.stand_in(day(0), "line", "K3")
    assert room.morning.given_out(day(0), day(4)) == []


def test_a_learner_keeps_their_turns_under_another_code(room: Bank) -> None:
    room.morning.post(day(0), day(4))
    room.learners.change("K1", code="Z9")
    assert "Z9" in {turn.learner for turn in room.morning.turns(day(0), day(4)).turns}
    room.learners.change("K2", code="Y8")
    assert room.morning.settings().jobs[1].not_for == ("Y8",)


def test_a_learner_who_comes_in_the_middle_of_the_year_does_not_make_up_for_it(room: Bank) -> None:
    for n in (0, 1, 2, 3, 4, 7, 8, 9):
        room.morning.post(day(n))
    room.learners.add("K5", 3.0)
    had = []
    for n in (10, 11, 14, 15, 16):
        room.morning.post(day(n))
        had += [t.learner for t in room.morning.turns(day(n)).turns if t.job == "line"]
    assert sorted(had) == ["K1", "K2", "K3", "K4", "K5"]


def test_turns_taken_back_are_given_out_anew(room: Bank) -> None:
    room.morning.post(day(0), day(4))
    assert room.morning.take_back(day(2)) > 0
    assert {turn.day for turn in room.morning.given_out(day(0), day(9))} == {day(0), day(1)}


def test_turns_of_a_day_that_became_a_day_off_come_again(room: Bank) -> None:
    given = room.morning.post(day(0), day(1)).turns
    lost = next(turn.learner for turn in given if turn.job == "line" and turn.day == day(1))
    room.morning.keep_calendar(SchoolCalendar(days_off=(DayOff(day(1), day(1), "Snow"),)))
    following = room.morning.post(day(2)).turns
    assert lost == next(turn.learner for turn in following if turn.job == "line")


def test_a_job_for_a_learner_that_nobody_is_is_refused(room: Bank) -> None:
    with pytest.raises(BankError, match="no learner 'K9'"):
        room.morning.keep_jobs([Job("x", "X", only=("K9",))], None)


def test_a_bank_without_jobs_says_what_to_do(bank: Bank) -> None:
    bank.learners.add("K1", 2.0)
    with pytest.raises(BankError, match="job add"):
        bank.morning.turns(day(0))


def test_one_sort_lasts_two_school_days_for_those_who_have_mastered_its_pattern(room: Bank) -> None:
    one, two = put_sorts(room, a_sort(1), a_sort(2))
    room.morning.keep_mastered("K1", ["ch-sh"])
    given = [room.morning.sorts_of(day(n)) for n in (0, 1, 2, 3, 4)]
    assert given == [{"K1": one}, {"K1": one}, {"K1": two}, {"K1": two}, {"K1": one}]
    assert room.morning.sorts_of(day(2)) == {"K1": two}, "what was given stays"


def test_looking_ahead_at_sorts_gives_nothing_out(room: Bank) -> None:
    put_sorts(room, a_sort(1), a_sort(2))
    room.morning.keep_mastered("K1", ["ch-sh"])
    for n in range(4):
        assert list(room.morning.sorts_of(day(n), keep=False)) == ["K1"]
    assert room.store.value("SELECT count(*) FROM sort_day") == 0


def school_days_ahead(room: Bank, count: int) -> list[dt.date]:
    """The next school days, today not among them."""
    days = [dt.date.today()]
    while len(days) <= count:
        days.append(room.morning.calendar.next_school_day(days[-1]))
    return days[1:]


def sorts_ahead(room: Bank, days: list[dt.date], keep: bool = False) -> list[str]:
    return [room.morning.sorts_of(one, keep=keep)["K1"] for one in days]


def test_a_look_ahead_counts_the_school_days_between_in_whatever_order(room: Bank) -> None:
    one, two, three = put_sorts(room, a_sort(1), a_sort(2), a_sort(3))
    room.morning.keep_mastered("K1", ["ch-sh"])
    days = school_days_ahead(room, 6)
    room.morning.sorts_of(days[0])
    # Today, where it is a school day, is the first day of the first sort.
    seen = sorts_ahead(room, days)
    run = [one, one, two, two, three, three, one]
    assert seen == run[1:] if room.morning.calendar.is_school_day(dt.date.today()) else run[:6]
    assert sorts_ahead(room, days[::-1], keep=True) == seen[::-1]
    assert sorts_ahead(room, days, keep=True) == seen


def test_a_snow_day_is_none_of_the_two_days_of_a_sort(room: Bank) -> None:
    one, two, three = put_sorts(room, a_sort(1), a_sort(2), a_sort(3))
    room.morning.keep_mastered("K1", ["ch-sh"])
    for n in (0, 1, 2, 3):
        room.morning.sorts_of(day(n))
    room.morning.keep_calendar(SchoolCalendar(days_off=(DayOff(day(3), day(3), "Snow"),)))
    assert room.morning.sorts_of(day(4)) == {"K1": two}
    assert room.morning.sorts_of(day(7)) == {"K1": three}


def test_a_day_whose_sets_were_not_used_is_none_of_the_two_days_of_a_sort(stocked: Bank) -> None:
    one, two = put_sorts(stocked, a_sort(1), a_sort(2))
    stocked.morning.keep_mastered("K4", ["ch-sh"])
    for n in (0, 1):
        stocked.days.draw(day(n))
        stocked.morning.sorts_of(day(n))
    stocked.days.set_state(day(1), "unused")
    assert stocked.morning.sorts_after_unused(day(1)) == (day(2), ["K4"], [])
    assert stocked.morning.sorts_of(day(2)) == {"K4": one}
    assert stocked.morning.sorts_of(day(3)) == {"K4": two}
    stocked.days.draw(day(2))
    stocked.days.set_state(day(2), "unused")
    assert stocked.morning.sorts_after_unused(day(2)) == (day(3), [], ["K4"]), "given out already"


def test_a_day_on_which_a_learner_is_away_is_none_of_the_two_days_of_their_sort(room: Bank) -> None:
    one, two = put_sorts(room, a_sort(1), a_sort(2))
    room.morning.keep_mastered("K1", ["ch-sh"])
    days = school_days_ahead(room, 4)
    room.learners.change("K1", away=(Away(dt.date.today(), days[0]),))
    assert sorts_ahead(room, days[1:]) == [one, one, two]


def test_who_has_no_word_sort_has_no_step_for_it_to_tick_or_to_mark(stocked: Bank) -> None:
    put_sorts(stocked, a_sort(1))
    stocked.morning.keep_mastered("K4", ["ch-sh"])
    stocked.days.draw(day(0))
    pages, _ = stocked.paper.pages(day(0))
    assert [page.without for page in pages] == [(), ("Word sort",)]
    steps = {
        learner.code: [slot.text for slot in sheet.slots if slot.kind == "step"]
        for learner, sheet in stocked.marks.sheets(day(0))
    }
    assert "Word sort" in steps["K4"] and "Word sort" not in steps["M7"]
    assert "Game" in steps["M7"] and len(steps["M7"]) == len(steps["K4"]) - 1


def test_a_word_sort_that_was_marked_can_still_be_marked_otherwise(stocked: Bank) -> None:
    put_sorts(stocked, a_sort(1))
    stocked.morning.keep_mastered("K4", ["ch-sh"])
    stocked.days.draw(day(0))
    stocked.morning.sorts_of(day(0))
    ((learner, sheet),) = stocked.marks.sheets(day(0), ["K4"])
    sheet.press("a")
    stocked.marks.save(learner, sheet)
    with stocked.store.writing():
        stocked.store.execute("DELETE FROM sort_day")
    stocked.morning.keep_mastered("K4", [])
    ((_, again),) = stocked.marks.sheets(day(0), ["K4"])
    assert "Word sort" in [slot.text for slot in again.slots]


def test_making_sorts_says_what_is_being_done(bank: Bank) -> None:
    said: list[tuple[int, str]] = []
    bank.morning.make_sorts("ch-sh", 2, progress=lambda made, doing: said.append((made, doing)))
    assert said[0] == (0, "reading how words sound")
    assert sum(made for made, _ in said) == 2


def test_a_pattern_that_is_none_is_refused(room: Bank) -> None:
    with pytest.raises(BankError, match="no pattern"):
        room.morning.keep_mastered("K1", ["zz"])


def test_baskets_stay_for_the_week_and_change_the_next(room: Bank) -> None:
    for n in range(12):
        room.morning.put_book(f"Book {n}", 0.5 + n / 20)
    first = room.morning.baskets(day(0), size=1).baskets
    assert room.morning.baskets(day(3), size=1).baskets == first
    second = room.morning.baskets(day(7), size=1).baskets
    assert all(a.books != b.books for a, b in zip(first, second, strict=True))
    room.morning.remove_book("b1")
    assert room.morning.basket_titles(day(0))["K1"]
    assert room.morning.empty_baskets(day(7)) == 4
    with pytest.raises(BankError, match="no book"):
        room.morning.remove_book("b1")


def fill_shelf(room: Bank, count: int) -> dt.date:
    """A shelf of easy books, and a Monday that is not over."""
    for n in range(count):
        room.morning.put_book(f"Book {n}", 0.5)
    return monday_of(dt.date.today() + dt.timedelta(days=7))


def baskets_told(room: Bank, when: dt.date) -> dict[str, str]:
    codes = ["K1", "K2", "K3", "K4"]
    return {code: said.basket for code, said in morning_lines(room.morning, when, codes).items()}


def test_a_page_fills_the_baskets_of_the_week_once(room: Bank) -> None:
    monday = fill_shelf(room, 40)
    first = baskets_told(room, monday)
    assert all(len(titles.split(", ")) == 4 for titles in first.values())
    room.morning.put_book("A harder book", 1.5)
    assert baskets_told(room, monday + dt.timedelta(days=3)) == first
    second = baskets_told(room, monday + dt.timedelta(days=7))
    for code in first:
        assert not set(first[code].split(", ")) & set(second[code].split(", "))


def test_a_learner_who_joins_in_the_week_has_a_basket_and_the_others_keep_theirs(
    room: Bank,
) -> None:
    monday = fill_shelf(room, 40)
    first = baskets_told(room, monday)
    room.learners.add("K5", 3.0)
    codes = [*first, "K5"]
    after = morning_lines(room.morning, monday, codes)
    assert {code: after[code].basket for code in first} == first and after["K5"].basket


def test_as_many_books_as_were_said_the_last_time(room: Bank) -> None:
    monday = fill_shelf(room, 40)
    room.morning.baskets(monday, size=2)
    later = baskets_told(room, monday + dt.timedelta(days=7))
    assert {titles.count(",") for titles in later.values()} == {1}


def test_no_basket_is_filled_for_a_week_that_is_over_or_before_later_ones(room: Bank) -> None:
    monday = fill_shelf(room, 40)
    assert set(baskets_told(room, monday - dt.timedelta(days=70)).values()) == {""}
    room.morning.baskets(monday + dt.timedelta(days=7))
    assert set(baskets_told(room, monday).values()) == {""}
    assert all(room.morning.baskets(monday).baskets), "the teacher can still say so"


def test_without_books_nothing_is_written(room: Bank) -> None:
    assert set(baskets_told(room, fill_shelf(room, 0)).values()) == {""}
    assert room.store.value("SELECT count(*) FROM basket") == 0


def test_the_code_of_a_book_that_was_read_is_not_given_to_another(room: Bank) -> None:
    monday = fill_shelf(room, 4)
    room.morning.baskets(monday, size=1)
    room.morning.remove_book("b1")
    assert room.morning.put_book("New", 0.5).code == "b5"


def test_pages_and_board_know_the_turns_the_sort_and_the_basket(room: Bank) -> None:
    put_sorts(room, a_sort(1))
    room.morning.keep_mastered("K2", ["ch-sh"])
    for n in range(4):
        room.morning.put_book(f"Book {n}", 0.5)
    room.morning.baskets(day(0), size=1)
    lines = morning_lines(room.morning, day(0), ["K1", "K2", "K3", "K4"])
    assert lines["K2"].sort == "ch or sh" and lines["K2"].basket.startswith("Book")
    content = with_morning(DayContent(day(0)), room.morning)
    told = {(turn.job, turn.code) for turn in content.turns}
    assert {code for _, code in told} == {code for code, said in lines.items() if said.job}
    # What a page has told stands.
    assert {turn.learner for turn in room.morning.given_out(day(0), day(0))} == {c for _, c in told}


def test_the_routine_gives_the_pages_their_steps(room: Bank) -> None:
    names = tuple(step.name for step in DEFAULT_ROUTINE.steps)
    assert with_morning(DayContent(day(0)), room.morning).steps == names
    room.morning.keep_routine(replace(DEFAULT_ROUTINE, steps=DEFAULT_ROUTINE.steps[:2]))
    assert with_morning(DayContent(day(0)), room.morning).steps == names[:2]


def test_the_week_and_the_sorts_go_on_paper(room: Bank) -> None:
    pypdf = pytest.importorskip("pypdf")
    import io

    (item,) = put_sorts(room, a_sort(1))
    week = [day(n) for n in range(5)]
    turns = room.morning.post(day(0), day(4)).turns
    made = turn_paper(room.morning, turns, week, "letter")
    assert [file.name for file in made.files] == [
        f"{day(0)}-turns-letter.pdf",
        f"{day(0)}-job-cards-letter.pdf",
    ]
    sheet, cards = (
        " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file.data)).pages)
        for file in made.files
    )
    assert "Line leader" in sheet and "Friday" in sheet and "Walk at the front." in cards
    made = sort_paper(room.morning, {item: ["K1", "K2"]}, day(0), "a4")
    to_cut, key = (
        [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file.data)).pages]
        for file in made.files
    )
    assert all(word in to_cut[0] and word in key[0] for word in a_sort(1).cards)
    # A set of cards for each learner, with the code at its head, and one key for the aide.
    assert [text.partition(":")[0] for text in to_cut] == ["K1", "K2"]
    assert len(key) == 1 and "2 sets of cards, for K1, K2" in key[0]


def test_sentences_to_build_are_cut_from_the_bank_s_own_at_the_learner_s_level(room: Bank) -> None:
    from bank.classroom_morning_paper import building_paper

    put(
        room,
        *(make_item(n, "sentence", 1.5, text=f"The dog ran home {n} times.") for n in range(6)),
    )
    put(room, make_item(9, "sentence", 6.0, text="Too hard for this learner."))
    pypdf = pytest.importorskip("pypdf")
    import io

    made = building_paper(room.morning, "K1", 3, False, day(0), "letter")
    cards, key = (
        " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file.data)).pages)
        for file in made.files
    )
    assert cards.count("times.") == 3 and key.count("The dog ran home") == 3
    assert "Too hard" not in key
    with pytest.raises(BankError, match="no sentence to build"):
        room.learners.change("K1", taught=12.0)
        building_paper(room.morning, "K1", 3, False, day(0), "letter")
