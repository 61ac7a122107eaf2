import json
from collections.abc import Callable
from pathlib import Path

import pytest
from making import MONDAY, Ran, make_item, put

from bank.classroom import open_bank

Run = Callable[..., Ran]


@pytest.fixture
def ready(run: Run, tmp_path: Path) -> Run:
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, *(make_item(n, grade=1.0) for n in range(20)))
        put(bank, *(make_item(n, "sentence", 1.0) for n in range(4)))
        put(bank, *(make_item(n, "topic", 1.0) for n in range(4)))
        bank.learners.add("ZQX7-WV93", 2.0)
        bank.learners.add("K4", 2.0)
        bank.days.draw(MONDAY)
    run("mark", "--on", str(MONDAY), said="aa")
    return run


def test_a_learner_is_exported_and_the_export_is_known(ready: Run, tmp_path: Path) -> None:
    assert ready("learner", "export", "K4", "--to", "k4").code == 0
    whole = json.loads((tmp_path / "k4" / "all.json").read_text("utf-8"))
    assert whole["learner"] == "K4" and whole["marks"]
    assert ready("learner", "export", "K4", "--json").json["marks"] == whole["marks"]
    done = ready("learner", "forget", "K4", "--yes")
    assert "exported" in done.out and str(tmp_path / "k4") in "".join(done.out.split("\n"))


def test_forgetting_asks_first_and_then_leaves_no_trace(ready: Run, tmp_path: Path) -> None:
    ready("backup")
    refused = ready("learner", "forget", "ZQX7-WV93", said="")
    assert refused.code == 2 and "--yes" in refused.err
    done = ready("learner", "forget", "ZQX7-WV93", "--yes")
    assert done.code == 0 and "and in 1 copy\n" in done.out
    for path in tmp_path.rglob("*"):
        assert not path.is_file() or b"ZQX7-WV93" not in path.read_bytes(), path
    assert [one["code"] for one in ready("learner", "list", "--json").json["learners"]] == ["K4"]


def test_a_copy_is_put_back_and_a_damaged_one_is_refused(ready: Run, tmp_path: Path) -> None:
    ready("backup", "copy.sqlite3")
    ready("learner", "add", "M7", "--reads", "2")
    done = ready("restore", "copy.sqlite3", "--yes")
    assert done.code == 0 and "with 2 learners" in done.out
    copy = tmp_path / "copy.sqlite3"
    copy.write_bytes(copy.read_bytes()[:-100] + bytes(100))
    refused = ready("restore", "copy.sqlite3", "--yes")
    assert refused.code == 2 and "the bank is as it was" in refused.err
    assert len(ready("learner", "list", "--json").json["learners"]) == 2


def test_who_is_back_with_a_copy_is_named_and_nobody_else(ready: Run, tmp_path: Path) -> None:
    ready("backup", "copy.sqlite3")
    elsewhere = tmp_path / "stick"
    elsewhere.mkdir()
    (elsewhere / "copy.sqlite3").write_bytes((tmp_path / "copy.sqlite3").read_bytes())
    ready("learner", "forget", "K4", "--yes")
    cleaned = ready("restore", "copy.sqlite3", "--yes").out
    assert "with 1 learner" in cleaned and "is back" not in cleaned
    carried = ready("restore", "stick/copy.sqlite3", "--yes").out
    assert "not in the bank before: K4\n" in carried and "is back" in carried


def test_many_days_of_printed_pages_are_one_line_and_one_command(
    ready: Run, tmp_path: Path
) -> None:
    from bank.store_marks import note_written

    with open_bank(tmp_path / "bank.sqlite3") as bank:
        for day in range(10, 30):
            folder = bank.paper.prints / f"2026-09-{day}"
            folder.mkdir(parents=True)
            note_written(bank.store, str(folder.absolute()), "prints")
    done = ready("learner", "forget", "K4", "--yes")
    said = " ".join(done.out.split())
    assert "bank-prints (printed, 20 folders)" in said
    assert "the printed ones go with: binderbank forget-prints a copy that you carried" in said
    assert len(done.out.splitlines()) < 8
    assert len(ready("learner", "forget", "K4", "--yes", "--json").json["files"]) == 21


def test_a_bank_that_was_lost_is_made_from_a_copy(ready: Run, tmp_path: Path) -> None:
    ready("backup", "copy.sqlite3")
    for path in tmp_path.glob("bank.sqlite3*"):
        path.unlink()
    assert ready("restore", "copy.sqlite3", "--yes").code == 0
    assert len(ready("learner", "list", "--json").json["learners"]) == 2
