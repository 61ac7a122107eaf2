"""The commands of the rest of the morning, as a teacher types them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from making import MONDAY, Ran

from bank.calendar import monday_of

Run = Callable[..., Ran]
DAY = str(MONDAY)


@pytest.fixture
def ready(run: Run) -> Run:
    """A class of three with two jobs."""
    run("new")
    for code in ("K1", "K2", "K3"):
        run("learner", "add", code, "--reads", "2")
    run("job", "add", "Line leader", "--during", "line", "--step", "Walk at the front.")
    run("job", "add", "Cleaning", "--on", "friday", "--not-for", "k2")
    return run


def test_jobs_are_listed_as_they_were_said(ready: Run) -> None:
    said = ready("job", "keyboard", "--computers", "2", "--json").json
    assert [job["code"] for job in said["jobs"]] == ["line-leader", "cleaning"]
    assert said["jobs"][1]["weekdays"] == [4] and said["jobs"][1]["not_for"] == ["K2"]
    assert said["keyboard"]["computers"] == 2
    assert "once a week each" in ready("job", "list").out
    assert ready("job", "remove", "Cleaning").code == 0
    assert ready("job", "remove", "Cleaning").code == 2


def test_the_week_is_shown_with_its_days(ready: Run) -> None:
    shown = ready("turns", DAY)
    assert shown.code == 0
    assert "Turns, Monday 14 September 2026" in shown.out
    assert "Mon 14" in shown.out and "Fri 18" in shown.out and "Cleaning" in shown.out


def test_the_printed_week_stands(ready: Run, tmp_path: Path) -> None:
    made = ready("turns", DAY, "--print", "--json").json
    assert [Path(name).name for name in made["files"]] == [
        f"{DAY}-turns-letter.pdf",
        f"{DAY}-job-cards-letter.pdf",
    ]
    first = ready("turns", DAY, "--json").json
    assert first["new"] == []
    ready("job", "add", "Board")
    again = ready("turns", DAY, "--json").json
    kept = [turn for turn in again["turns"] if turn["job"] != "board"]
    assert kept == first["turns"]
    assert ready("turns", DAY, "--undo").code == 2, "nobody is there to say yes"
    assert "taken back" in ready("turns", DAY, "--undo", "--yes").out
    assert ready("forget-prints", "--yes").out.startswith("2 printed files")


def test_a_stand_in_is_shown(ready: Run) -> None:
    ready("turns", DAY, "--print")
    shown = ready("turns", DAY).out
    held = next(code for code in ("K1", "K2", "K3") if f"Line leader  {code}" in shown)
    other = next(code for code in ("K1", "K2", "K3") if code != held)
    shown = ready("turns", DAY, "--stand-in", f"line leader={other}")
    assert shown.code == 0 and f"{other} (for {held})" in shown.out


def test_a_look_ahead_at_friday_shows_the_stand_ins_of_the_whole_week(ready: Run) -> None:
    today = dt.date.today()
    days = [str(monday_of(today) + dt.timedelta(days=7 + n)) for n in range(5)]
    ready("turns", days[0], "--print")
    for code in ("K1", "K2"):
        ready("learner", "away", code, days[1], days[2])
    weeks = [ready("turns", day).out.split("this week")[1] for day in (days[4], days[0], days[2])]
    assert weeks[0] == weeks[1] == weeks[2] and "(for K" in weeks[0]


def test_no_turns_on_a_day_off(ready: Run) -> None:
    ready("calendar", "--off", f"{DAY}=Snow")
    refused = ready("turns", DAY)
    assert refused.code == 2 and "no school day (Snow)" in refused.err
    assert ready("turns", DAY, "--anyway").code == 0


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("job", "add", "X", "--every", "month"), "no rhythm"),
        (("job", "add", "X", "--only", "K9"), "no learner"),
        (("job", "add", "X", "--on", "someday"), "no weekday"),
        (("job", "keyboard", "--computers", "0"), "1 to 30"),
        (("turns", DAY, "--stand-in", "line"), "no stand-in"),
        (("turns", DAY, "--stand-in", "cook=K1"), "no job"),
        (("turns", "2026-09-18", "--stand-in", "cleaning=K2"), "cannot take Cleaning"),
        (("calendar", "--term", "2026-12-01..2026-09-01=Back"), "before it starts"),
        (("calendar", "--read", "none.ics"), "none.ics"),
        (("routine", "--step", "Game"), "WORDS=MINUTES"),
        (("routine", "--starts", "early"), "8:30"),
        (("sort", "make", "zz"), "no pattern"),
        (("sort", "make"), "sort patterns"),
        (("sort", "show", "zz"), "no item"),
        (("sort", "mastered", "K1", "--add", "zz"), "no pattern"),
        (("sort", "print"), "nobody has a word sort that day"),
        (("sort", "strips", "K1"), "no sentence"),
        (("shelf", "add", "A book"), "level"),
        (("shelf", "remove", "zz"), "no book"),
        (("basket", "--books", "0"), "1 to 12"),
        (("calendar", "--term", "2026-08-31=One"), "no last day"),
    ],
)
def test_what_is_refused_is_one_line(ready: Run, words: tuple[str, ...], said: str) -> None:
    refused = ready(*words)
    assert refused.code == 2
    assert said in refused.err and refused.err.count("\n") <= 3


def test_a_calendar_is_said_shown_written_and_read(ready: Run, tmp_path: Path) -> None:
    ready("calendar", "--term", "2026-09-01..2026-12-18=Fall term", "--half", "2026-12-18=Early")
    shown = ready("calendar", DAY, "--off", "2026-11-26..2026-11-27=Thanksgiving break")
    assert "Nov 26 - Nov 27  Thanksgiving break" in shown.out and "18½" in shown.out
    assert ready("calendar", "2026-11-27", "--json").json["why_off"] == "Thanksgiving break"
    assert ready("calendar", DAY, "--write", "own.ics").code == 0
    ready("calendar", "--clear", "2026-11-27", "--clear", "2026-12-18")
    assert ready("calendar", DAY, "--json").json["terms"] == []
    assert ready("calendar", DAY, "--read", "own.ics").code == 0
    again = ready("calendar", DAY, "--json").json
    assert again["terms"][0]["name"] == "Fall term" and len(again["days_off"]) == 1
    (tmp_path / "more.ics").write_text(
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nBEGIN:VEVENT\r\nUID:1\r\nSUMMARY:Spirit day\r\n"
        "DTSTART;VALUE=DATE:20261001\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n"
    )
    read = ready("calendar", DAY, "--read", "more.ics")
    assert read.code == 1 and "Spirit day" in read.err


def test_the_routine_is_in_the_teacher_s_words(ready: Run, tmp_path: Path) -> None:
    assert "60 minutes in all" in ready("routine", DAY).out
    (tmp_path / "lunch.csv").write_text(f"date,lunch\n{DAY},Rice and beans\n")
    shown = ready(
        "routine", DAY, "--step", "Binder page=15", "--step", "Our game=20", "--starts", "8:50",
        "--special", "monday=Music", "--lunches", "lunch.csv", "--not-on-short", "our game",
    )  # fmt: skip
    assert "9:05" in shown.out and "Music" in shown.out and "Rice and beans" in shown.out
    assert ready("routine", DAY, "--json").json["minutes"] == 35
    assert "60 minutes" in ready("routine", DAY, "--plain").out


@pytest.mark.parametrize(
    ("content", "said"),
    [
        ("date,lunch\n2026-09-14,crème\n".encode("cp1252"), "UTF-8"),
        (b"", "the columns are date and lunch"),
        (b"day,food\n2026-09-14,Rice\n", "the columns are date and lunch"),
        (b"date,lunch\n2026-09-14,Rice\nsoon,Beans\n", "row 3, column date: 'soon'"),
    ],
)
def test_a_list_of_lunches_that_is_none_is_refused_in_one_line(
    ready: Run, tmp_path: Path, content: bytes, said: str
) -> None:
    (tmp_path / "lunch.csv").write_bytes(content)
    refused = ready("routine", DAY, "--lunches", "lunch.csv")
    assert refused.code == 2 and said in refused.err and refused.err.count("\n") == 1


def test_a_list_of_lunches_may_come_back_from_a_spreadsheet(ready: Run, tmp_path: Path) -> None:
    (tmp_path / "lunch.csv").write_text("date,lunch\n9/14/2026,Rice and beans\n,\n")
    assert "Rice and beans" in ready("routine", DAY, "--lunches", "lunch.csv").out


def test_a_shelf_fills_the_baskets(ready: Run) -> None:
    assert "K1: 0 of 4" in ready("basket", DAY).err
    for n in range(3):
        ready("shelf", "add", f"Book {n}", "--level", "K")
    made = ready("basket", DAY, "--books", "1", "--json").json
    assert sorted(one["books"][0] for one in made["baskets"]) == ["b1", "b2", "b3"]
    assert "3 books" in ready("basket", DAY, "--undo").out


def test_what_was_printed_stays_the_sort_of_its_day(ready: Run) -> None:
    ready("sort", "make", "ai-ay", "--count", "2")
    ready("sort", "mastered", "K1", "--add", "ai-ay")
    monday = str(monday_of(dt.date.today()) + dt.timedelta(days=7))
    printed = ready("sort", "print", "--on", monday, "--json").json["sorts"][0]["id"]
    ready("sort", "make", "ch-sh")
    ready("sort", "mastered", "K1", "--add", "ch-sh", "--remove", "ai-ay")
    assert ready("sort", "today", monday, "--json").json["sorts"] == {"K1": printed}


def test_a_day_off_has_no_sort(ready: Run) -> None:
    for words in (("sort", "today", "saturday"), ("sort", "print", "--on", "saturday")):
        refused = ready(*words)
        assert refused.code == 2 and "the next is" in refused.err


def test_sorts_are_made_kept_and_given(ready: Run) -> None:
    made = ready("sort", "make", "ai-ay", "--count", "2", "--odd", "1", "--json").json["sorts"]
    assert len(made) == 2 and made[0]["columns"][2]["words"] == ["said"]
    assert ready("sort", "mastered", "K1", "--add", "ai-ay").code == 0
    today = ready("sort", "today", DAY, "--json").json
    assert today["sorts"] == {"K1": made[0]["id"]} and today["without"] == ["K2", "K3"]
    assert made[1]["id"] in ready("sort", "list").out
    assert "odd one out: said" in ready("sort", "show", made[0]["id"]).out
    ready("sort", "mastered", "K2", "--add", "ai-ay")
    printed = ready("sort", "print", "--on", DAY, "--json").json
    assert printed["sorts"] == [
        {"id": made[0]["id"], "title": "ai or ay", "learners": ["K1", "K2"], "sets": 2}
    ]
    assert "2 sets of cards, for K1, K2" in ready("sort", "print", "--on", DAY).out
    names = [Path(one).name for one in printed["files"]]
    assert names == [f"{DAY}-sort-cards-letter.pdf", f"{DAY}-sort-key-letter.pdf"]
    assert ready("find", "--kind", "sort", "--json").json["items"][0]["state"] == "ready"
