import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from making import Ran, make_item, put

from bank.classroom import open_bank
from bank.progress import CAUTION

Run = Callable[..., Ran]
TODAY = dt.date.today()


@pytest.fixture
def marked(run: Run, tmp_path: Path) -> Run:
    """A learner with twelve marked days up to yesterday, the last two of them with much help."""
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, *(make_item(n, grade=1.0) for n in range(120)))
        put(bank, *(make_item(n, "sentence", 1.0) for n in range(20)))
        put(bank, *(make_item(n, "topic", 1.0) for n in range(20)))
        bank.learners.add("K4", 2.0, skills={"capital-first": "in-work"})
        for n in range(12, 0, -1):
            day = TODAY - dt.timedelta(days=n)
            bank.days.draw(day, anyway=True)
            ((learner, sheet),) = bank.marks.sheets(day)
            for key in "1v2v3v4v5va" if n <= 2 else "a":
                sheet.press(key)
            bank.marks.save(learner, sheet)
    return run


def test_today_says_in_one_line_who_is_stuck(marked: Run) -> None:
    shown = marked("today", "--anyway").out
    (line,) = [line for line in shown.splitlines() if "stuck" in line]
    assert line.startswith("K4 is stuck: ") and "of" in line
    assert marked("today", "--anyway", "--json").json["stuck"][0]["learner"] == "K4"
    marked("mark", "K4", said="a")
    assert "stuck" not in marked("today", "--anyway").out


def test_a_learners_progress_has_rows_with_share_range_and_sparkline(marked: Run) -> None:
    shown = marked("progress", "K4").out
    assert CAUTION in shown and "is stuck" in shown
    (row,) = [line for line in shown.splitlines() if line.startswith("all steps")]
    assert "%" in row and "█" in row
    assert all(len(line) <= 80 for line in shown.splitlines())
    plain = marked("progress", "K4", "--json").json
    assert plain["caution"] == CAUTION and len(plain["independence"]) == 12
    assert plain["skills"][0]["skill"] == "capital-first"


def test_what_a_skill_says_and_its_goal_stand_apart(marked: Run) -> None:
    from cli.progress_screen import _skill_columns

    row = _skill_columns(
        "s" * 23, "100% of 10", "56%-100%", "x" * 9, "too few to tell", "was 12-09"
    )
    assert len(row) <= 80 and row.endswith("too few to tell  was 12-09")


def test_the_class_is_shown_in_a_line_each(marked: Run) -> None:
    marked("learner", "add", "M7", "--reads", "2")
    shown = marked("progress").out
    assert "no marks yet" in shown and CAUTION in shown


def test_goals_and_changes_are_said_and_stand_in_the_report(marked: Run) -> None:
    marked("progress", "K4", "--goal", "capital-first", "--aim", "90", "--by", "2030-06-01")
    marked("progress", "K4", "--phase", "new seat", "--on", str(TODAY - dt.timedelta(days=4)))
    plain = marked("progress", "K4", "--json").json
    assert plain["goals"][0] == {
        "name": "capital-first",
        "aim": 0.9,
        "by": "2030-06-01",
        "words": "",
    }
    assert plain["phases"][0]["words"] == "new seat"
    assert marked("progress", "K4", "--goal", "running").code == 2
    assert marked("progress", "--pdf").code == 2


def test_the_page_for_a_meeting_is_a_file_that_the_bank_knows_of(
    marked: Run, tmp_path: Path
) -> None:
    done = marked("progress", "K4", "--pdf")
    assert done.code == 0
    (path,) = tmp_path.glob("bank-reports/*.pdf")
    assert path.read_bytes().startswith(b"%PDF")
    forgotten = marked("learner", "forget", "K4", "--yes", "--json").json
    assert [one["what"] for one in forgotten["files"]] == ["report"]


def test_the_specialist_sees_counts_of_items(marked: Run) -> None:
    every = marked("evidence", "--all", "--json").json["items"]
    assert len(every) > 40 and {"given", "alone", "helped", "expected"} <= set(every[0])
    assert marked("evidence").code == 0


def test_evidence_of_a_kind_that_is_none_is_refused_and_no_evidence_is_no_mistake(run: Run) -> None:
    run("new")
    refused = run("evidence", "--kind", "sort")
    assert (refused.code, refused.out) == (2, "")
    assert "question, sentence, topic" in refused.err
    empty = run("evidence")
    assert (empty.code, empty.err) == (0, "") and "no item has been marked yet" in empty.out
