import csv
from collections.abc import Callable
from pathlib import Path

import pytest
from making import MONDAY, Ran, make_item, put

from bank.classroom import open_bank
from bank.morning.sorts import SortColumn, WordSort
from cli.keyboard import DOWN, ENTER, RIGHT
from cli.mark_screen import grid_lines, sheet_lines
from cli.marks import drive_grid

Run = Callable[..., Ran]
DAY = str(MONDAY)


@pytest.fixture
def drawn(run: Run, tmp_path: Path) -> Run:
    """A bank with two learners and a set each on Monday."""
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, *(make_item(n, grade=1.0) for n in range(40)))
        put(bank, *(make_item(n, "sentence", 1.0) for n in range(9)))
        put(bank, *(make_item(n, "topic", 1.0) for n in range(9)))
        bank.learners.add("K4", 2.0)
        bank.learners.add("M7", 2.0)
        bank.days.draw(MONDAY)
    return run


def marks(run: Run, code: str) -> dict[str, str]:
    """What stands for a learner: (kind and place) and the outcome with its help."""
    (one,) = run("mark", code, DAY, "--json").json["learners"]
    return {
        f"{m['kind']} {m['position']} {m['part']}".strip(): f"{m['outcome']} {m['help']}".strip()
        for m in one["marks"]
    }


def test_one_key_marks_a_learner_who_did_everything_alone(drawn: Run) -> None:
    done = drawn("mark", "K4", DAY, said="a")
    assert done.code == 0
    assert "K4: 12 of 12 alone, 2 of 2 errors fixed" in done.out
    assert set(marks(drawn, "K4").values()) == {"done", "fixed"}
    assert marks(drawn, "M7") == {}


def test_without_arguments_the_last_set_is_marked_learner_by_learner(drawn: Run) -> None:
    done = drawn("mark", said="a3n61\na")
    assert "K4: 12 of 12" in done.out and "M7: 11 of 12 alone, 1 of 2 errors" in done.out
    assert marks(drawn, "M7")["question 2"] == "not-done"


def test_who_was_not_marked_is_named_and_what_was_marked_is_kept(drawn: Run) -> None:
    done = drawn("mark", said="aq")
    assert "not marked now: M7" in done.out
    assert marks(drawn, "K4") and not marks(drawn, "M7")
    assert "not marked now: K4, M7" in drawn("mark", said="").out
    assert "M7: 1 of 2 alone" in drawn("mark", "M7", DAY, said="1v2aq").out
    assert marks(drawn, "M7") == {"question 0": "done verbal", "question 1": "done"}


def test_one_can_go_back_and_correct(drawn: Run) -> None:
    drawn("mark", said="ab2v\na")
    assert marks(drawn, "K4")["question 1"] == "done verbal"
    assert marks(drawn, "M7")["question 1"] == "done"


def test_the_words_for_help_are_the_teachers(drawn: Run) -> None:
    said = drawn("marking", "--prompt", "point", "--prompt", "show me", "--json").json
    assert said["prompts"] == ["point", "show me"]
    drawn("mark", "K4", DAY, said="1p2ha")
    assert marks(drawn, "K4")["question 0"] == "done point"
    assert marks(drawn, "K4")["question 1"] == "done show me"
    assert drawn("marking", "--prompt", "alone").code == 2
    assert drawn("marking", "--alone", "300").code == 2


def test_the_screen_fits_a_terminal_of_eighty_columns_and_24_rows(
    drawn: Run, tmp_path: Path
) -> None:
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        bank.learners.change("K4", questions=20)
        bank.days.undo(MONDAY)
        bank.days.draw(MONDAY)
        people = bank.marks.sheets(MONDAY)
    for learner, sheet in people:
        for key in ["", *sheet.row_keys, "\n"]:
            if key:
                sheet.at = None
                sheet.press(key)
            lines = sheet_lines(learner, sheet, 1, 2, 80, 24)
            assert len(lines) <= 24 and max(map(len, lines)) <= 80
            sheet.at = None


def test_the_grid_is_shown_without_a_terminal_and_filled_with_keys_in_one(
    drawn: Run, tmp_path: Path
) -> None:
    drawn("mark", "K4", DAY, said="2va")
    shown = drawn("mark", "--grid", said="").out
    assert any(line.split()[:4] == ["K4", "a", "v", "a"] for line in shown.splitlines())
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        people = bank.marks.sheets(MONDAY)
    keys = iter([DOWN, "g", RIGHT, "n", "A", ENTER])
    assert drive_grid(people, lambda: next(keys))
    states = [(state.said, state.help) for state in people[1][1].states[:4]]
    assert states == [("done", "gesture"), ("done", ""), ("not-done", ""), ("done", "")]
    assert not drive_grid(people, lambda: "q")


def test_the_grid_has_a_column_for_what_only_some_had(drawn: Run, tmp_path: Path) -> None:
    columns = (SortColumn("ch-", ("chin", "chop")), SortColumn("sh-", ("shop", "ship")))
    sort = WordSort("ch-sh", "ch or sh", columns, ("shop", "chin", "ship", "chop"))
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, make_item(1, "sort", text=sort.text, sort=sort.to_dict()))
        bank.morning.keep_mastered("K4", ["ch-sh"])
        bank.morning.sorts_of(MONDAY)
        people = bank.marks.sheets(MONDAY)
    head, k4, m7 = grid_lines(people, 1, 9, 120)[2:5]
    assert head.split()[9:11] == ["Word", "Quiet"]
    # M7 has no word sort; the tenth thing that M7 had is the reading after it.
    assert k4.split()[10] == "." and m7[head.index("Word") : head.index("Quiet") - 1].strip() == ""
    assert m7[head.index("Quiet") - 1 :].startswith("[.]")
    keys = iter([RIGHT] * 10 + [DOWN, "n", ENTER])
    assert drive_grid(people, lambda: next(keys))
    said = {
        slot.text: state.said
        for slot, state in zip(people[1][1].slots, people[1][1].states, strict=True)
    }
    assert said["Quiet reading"] == "not-done"


def test_a_spreadsheet_goes_out_blank_and_comes_back_filled(drawn: Run, tmp_path: Path) -> None:
    assert drawn("mark", "--blank", "monday.csv").code == 0
    assert drawn("mark", "--blank", "monday.csv").code == 2
    path = tmp_path / "monday.csv"
    text = path.read_text("utf-8")
    with path.open(encoding="utf-8", newline="") as file:
        shown = {row["what"]: row["text"] for row in csv.DictReader(file) if row["learner"] == "K4"}
    assert shown["question 1"].startswith("question number") and " -> " in shown["fix 1"]
    path.write_text(text.replace("K4,question 1,", "K4,question 1,model"), "utf-8")
    assert "1 learner marked" in drawn("mark", "--import", "monday.csv").out
    assert marks(drawn, "K4") == {"question 0": "done model"}
    path.write_text(text.replace("K4,question 1,", "K4,question 1,shouted"), "utf-8")
    refused = drawn("mark", "--import", "monday.csv")
    assert refused.code == 1 and "row 2, mark: 'shouted'" in refused.err


def test_a_spreadsheet_that_rewrote_the_dates_is_taken_all_the_same(
    drawn: Run, tmp_path: Path
) -> None:
    drawn("mark", "--blank", "monday.csv")
    path = tmp_path / "monday.csv"
    text = path.read_text("utf-8").replace("2026-09-14", "9/14/2026").replace(",", ";")
    path.write_text(text.replace("K4;question 1;", "K4;question 1;model"), "utf-8")
    assert "1 learner marked" in drawn("mark", "--import", "monday.csv").out
    assert marks(drawn, "K4") == {"question 0": "done model"}


def test_a_day_without_a_set_cannot_be_marked(drawn: Run) -> None:
    refused = drawn("mark", "K4", "2026-09-15")
    assert refused.code == 2 and "there is no set for K4 on 2026-09-15" in refused.err
    assert drawn("mark", "Q1", DAY).code == 2
