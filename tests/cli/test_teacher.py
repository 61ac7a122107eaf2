import os
from collections.abc import Callable
from pathlib import Path

import pytest
from making import MONDAY, Ran, make_item, put

from bank.classroom import Bank, open_bank
from bank.morning.sorts import SortColumn, WordSort

Run = Callable[..., Ran]
DAY = str(MONDAY)


@pytest.fixture
def ready(run: Run, tmp_path: Path) -> Run:
    """A bank with items and one learner."""
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, *(make_item(n, grade=1.0) for n in range(30)))
        put(bank, *(make_item(n, "sentence", 1.0) for n in range(9)))
        put(bank, *(make_item(n, "topic", 1.0) for n in range(9)))
    run("learner", "add", "K4", "--reads", "2")
    return run


def test_a_draw_shows_the_set_in_words_and_in_json(ready: Run) -> None:
    shown = ready("draw", DAY)
    assert shown.code == 0
    assert "K4" in shown.out and "works alone from K to 1.5" in shown.out
    drawn = ready("draw", DAY, "--json").json
    assert drawn["day"] == DAY
    assert [item["kind"] for item in drawn["sets"][0]["items"]].count("question") == 5
    assert set(drawn["sets"][0]) == {"learner", "day", "state", "short", "notes", "items"}


def test_a_draw_that_is_short_of_items_is_done_in_part(ready: Run) -> None:
    ready("learner", "change", "K4", "--avoid", "theme1", "--avoid", "theme2", "--questions", "20")
    ready("learner", "change", "K4", *(w for n in range(3, 7) for w in ("--avoid", f"theme{n}")))
    shown = ready("draw", DAY)
    assert shown.code == 1
    assert "missing" in shown.out


def test_a_draw_says_why(ready: Run) -> None:
    shown = " ".join(ready("draw", DAY, "--why").out.split())
    assert "not seen before" in shown and "band K to 1.5" in shown and "chosen over" in shown


def test_an_undone_draw_gives_its_items_back(ready: Run) -> None:
    first = ready("draw", DAY, "--json").json
    undone = ready("draw", DAY, "--undo", "--json")
    assert (undone.code, undone.json) == (0, {"day": DAY, "taken_back": 1, "left": 0})
    assert ready("key", DAY).code == 2
    assert ready("draw", DAY, "--json").json == first


def test_a_swap_is_shown_and_kept(ready: Run) -> None:
    first = ready("draw", DAY, "--json").json["sets"][0]["items"][1]["item"]
    shown = ready("swap", "K4", "question", "2", "--on", DAY, "--reason", "done at home")
    assert shown.code == 0 and "was:" in shown.out and "now:" in shown.out
    assert ready("draw", DAY, "--json").json["sets"][0]["items"][1]["item"] != first


def test_an_unused_day_can_be_used_after_all(ready: Run) -> None:
    ready("draw", DAY)
    assert "may come again" in ready("unused", DAY).out
    assert ready("draw", DAY, "--json").json["sets"][0]["state"] == "unused"
    assert ready("unused", DAY, "--used").code == 0
    assert ready("draw", DAY, "--json").json["sets"][0]["state"] == "used"


def test_an_unused_day_says_who_has_its_word_sort_once_more(ready: Run, tmp_path: Path) -> None:
    columns = (SortColumn("ch-", ("chin", "chop")), SortColumn("sh-", ("shop", "ship")))
    sort = WordSort("ch-sh", "ch or sh", columns, ("shop", "chin", "ship", "chop"))
    ready("sort", "mastered", "K4", "--add", "ch-sh")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, make_item(1, "sort", text=sort.text, sort=sort.to_dict()))
        bank.days.draw(MONDAY)
        bank.morning.sorts_of(MONDAY)
    said = ready("unused", DAY).out
    assert "its word sort does not count: K4 has the same one on 2026-09-15" in said
    assert "turns stay as they are" in said


def test_learners_are_listed_with_their_settings(ready: Run) -> None:
    ready(
        "learner", "change", "K4", "--goal", "why=2", "--skill", "spelling=in-work", "--group", "A"
    )
    (one,) = ready("learner", "list", "--json").json["learners"]
    assert one["support"] == {"goals": {"why": 2.0}}
    assert one["skills"] == {"spelling": "in-work"}
    assert one["band"] == [0.0, 1.5]
    assert ready("learner", "away", "K4", DAY).code == 0
    drawn = ready("draw", DAY, "--json").json
    assert drawn == {"day": DAY, "away": ["K4"], "not_in_class": [], "sets": []}


def test_a_new_bank_is_not_made_over_an_old_one(ready: Run) -> None:
    assert ready("new").code == 2
    assert ready("learner", "list").code == 0


def test_a_day_without_school_says_which_is_the_next(ready: Run) -> None:
    saturday = ready("draw", "2026-09-19")
    assert saturday.code == 2 and "the next is 2026-09-21" in saturday.err


@pytest.mark.parametrize("said", ["2026-09-14", "9/14/2026", "09/14/26"])
def test_a_date_may_be_written_as_in_a_letter(ready: Run, said: str) -> None:
    assert ready("draw", said, "--json").json["day"] == DAY


def test_a_weekday_may_be_short(ready: Run) -> None:
    assert (
        ready("draw", "Mon", "--json").json["day"] == ready("draw", "monday", "--json").json["day"]
    )


def test_a_theme_to_avoid_that_no_item_has_is_said(ready: Run) -> None:
    wrong = ready("learner", "change", "K4", "--avoid", "Theme 1")
    assert wrong.code == 0
    assert "no item has the theme 'theme 1' yet, so it keeps nothing away" in wrong.err
    assert "theme1" in wrong.err
    assert ready("learner", "change", "K4", "--avoid", "Theme2").err == ""


def test_the_list_of_learners_says_how_they_answer_and_when_they_are_away(ready: Run) -> None:
    ready("learner", "change", "K4", "--mode", "circles")
    ready("learner", "away", "K4", "2099-12-01", "2099-12-03")
    ready("learner", "away", "K4", "2020-12-01")
    shown = ready("learner", "list").out
    assert "circles" in shown
    assert "K4 is away: 2099-12-01 to 2099-12-03\n" in shown


def test_a_new_bank_can_start_with_the_items_that_come_along(run: Run, tmp_path: Path) -> None:
    shown = run("new", "class.sqlite3", "--with-items").out
    assert "questions" in shown and "learner add" in shown
    with open_bank(tmp_path / "class.sqlite3") as bank:
        assert bank.items.counts()["question"] >= 1500
        assert len(bank.learners) == 0


def test_a_short_morning_that_is_heard_of_late_makes_the_proposed_sets_short(ready: Run) -> None:
    whole = ready("draw", DAY, "--json").json["sets"][0]["items"]
    short = ready("draw", DAY, "--short", "--json").json["sets"][0]["items"]
    assert [item["kind"] for item in short] == ["question"] * 3 + ["sentence"]
    assert [item["item"] for item in short[:3]] == [item["item"] for item in whole[:3]]
    ready("draw", DAY, "--undo")
    ready("draw", DAY)
    ready("pages", DAY)
    with open_bank() as bank:
        bank.days.printed(MONDAY)
    printed = ready("draw", DAY, "--short")
    assert "not short, since they are printed already: K4" in printed.err
    assert "      5  " in printed.out


def test_a_bank_that_can_only_be_read_says_that_nothing_is_drawn(
    ready: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    ready("draw", DAY)
    monkeypatch.setattr("bank.store.os.access", lambda path, mode: mode != os.W_OK)
    assert "K4" in ready("draw", DAY).out
    refused = ready("draw", "2026-09-15")
    assert (refused.code, refused.out) == (2, "") and "read-only" in refused.err


def test_a_sheet_of_what_to_write_is_filled_imported_and_never_written_over(
    ready: Run, tmp_path: Path
) -> None:
    assert ready("stock", "--frames", "write.csv", "--days", "30").code == 0
    path = tmp_path / "write.csv"
    first, frame, *rest = path.read_text("utf-8").splitlines()
    assert first.split(",")[:2] == ["kind", "text"] and frame.startswith("question,,")
    filled = frame.replace("question,,", "question,Who feeds the class fish?,")
    path.write_text("\n".join([first, filled, *rest]), "utf-8")
    refused = ready("stock", "--frames", "write.csv")
    assert refused.code == 2 and "write.csv is there already" in refused.err
    assert "1 added" in ready("import", "write.csv").out
    found = ready("find", "feeds", "--json").json["items"][0]
    assert found["text"] == "Who feeds the class fish?" and found["notes"][0].startswith("frame:")


def test_a_contraction_is_no_word_to_begin_with(bank: Bank) -> None:
    from bank.choose.frames import _words

    texts = (
        "Why don't ants sleep?",
        "Don\u2019t ants swim?",
        "Isn't an ant small?",
        "Do ants dig?",
    )
    put(bank, *(make_item(n, text=one, themes=("ants",)) for n, one in enumerate(texts)))
    words = _words(bank.store, "ants", 1)
    assert "ants" in words and not {"don", "isn"} & set(words)


def test_a_swap_before_the_draw_is_answered_with_the_command(ready: Run) -> None:
    refused = ready("swap", "K4", "topic", "--on", DAY)
    assert refused.code == 2 and f"draw it first: binderbank draw {DAY}" in refused.err
