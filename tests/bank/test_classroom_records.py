"""Records: taking along, forgetting down to the bytes, copies and putting them back."""

import contextlib
import csv
import json
import os
import sqlite3
import threading
from pathlib import Path

import pytest
from making import MONDAY

from bank.classroom import Bank, open_bank
from bank.classroom_records import damage, unsound
from bank.item import BankError
from bank.progress.chart import Goal

CODE = "ZQX7-WV93-J8"  # long and unusual, so that it cannot be there by chance


@pytest.fixture
def kept(stocked: Bank) -> Bank:
    """A bank in which one learner's code stands in every place that could hold it."""
    stocked.learners.add(CODE, 2.0, group="A", avoid=("dogs",))
    stocked.learners.change("K4", group="A")
    stocked.learners.change(CODE, skills={"tense": "in-work"})
    stocked.days.draw(MONDAY)
    for learner, sheet in stocked.marks.sheets(MONDAY):
        for key in "1v7461\na":
            sheet.press(key)
        stocked.marks.save(learner, sheet)
    stocked.days.swap("K4", MONDAY, "question 2", f"had by {CODE} yesterday")
    stocked.progress.set_goal(CODE, Goal("tense"))
    stocked.progress.add_phase(CODE, MONDAY, "new seat")
    stocked.progress.add_phase("K4", MONDAY, f"sits beside {CODE}")
    stocked.store.set_setting("turns", {"not_for": [CODE, "K4"], CODE: {"jobs": 2}})
    with stocked.store.writing():
        stocked.store.execute(
            "UPDATE item SET objection = ? WHERE id = 't00001'", (f"{CODE} did not like it",)
        )
    return stocked


def every_text(path: Path) -> list[str]:
    """Every text in every row of every table."""
    found = []
    with contextlib.closing(sqlite3.connect(path)) as file:
        names = [
            row[0] for row in file.execute("SELECT name FROM sqlite_master WHERE type = 'table'")
        ]
        for name in names:
            for row in file.execute(f'SELECT * FROM "{name}"'):
                found += [value for value in row if isinstance(value, str)]
    return found


def holds(path: Path, code: str = CODE) -> bool:
    return any(code.encode() in part.read_bytes() for part in _files(path))


def _files(path: Path) -> list[Path]:
    """The file and what SQLite keeps beside it."""
    return [one for one in path.parent.iterdir() if one.name.startswith(path.name)]


def test_the_test_finds_the_code_where_it_is(kept: Bank) -> None:
    assert holds(kept.path)
    texts = every_text(kept.path)
    assert sum(CODE in text for text in texts) >= 5


def test_forgetting_leaves_no_row_and_no_byte_in_the_bank_and_its_copies(kept: Bank) -> None:
    copy = kept.records.backup()
    elsewhere = kept.records.backup(kept.path.parent / "stick.sqlite3")
    before = kept.path.with_name(kept.path.name + ".before-1")
    before.write_bytes(copy.read_bytes())
    assert holds(copy) and holds(elsewhere) and holds(before)
    done = kept.records.forget(CODE)
    assert not done.problems and len(done.copies) == 3
    for path in (kept.path, copy, elsewhere, before):
        assert not any(CODE.lower() in text.lower() for text in every_text(path)), path
        assert not holds(path), path
        assert damage(path) == ""
    assert unsound(copy) == "", "its checksum is made anew"
    assert not holds(kept.path.parent / "nothing")
    for path in kept.path.parent.rglob("*"):
        assert not path.is_file() or CODE.encode() not in path.read_bytes(), path


def test_forgetting_leaves_the_others_as_they_were(kept: Bank) -> None:
    marks = kept.store.value("SELECT count(*) FROM mark WHERE learner = 1")
    kept.records.forget(CODE.lower())
    assert [one.code for one in kept.learners] == ["K4", "M7"]
    assert kept.store.value("SELECT count(*) FROM mark WHERE learner = 1") == marks
    assert kept.store.setting("turns") == {"not_for": ["K4"]}
    reason = kept.store.value("SELECT reason FROM swap")
    assert reason == "had by - yesterday"
    assert len(kept.days.sets(MONDAY)) == 2


def test_a_new_learner_never_gets_the_number_of_one_who_was_forgotten(kept: Bank) -> None:
    number = kept.learners.get(CODE).number
    kept.records.forget(CODE)
    assert kept.learners.add("N1", 2.0).number > number
    kept.records.forget("N1")
    kept.records.forget("K4")
    assert kept.learners.add("N2", 2.0).number > number + 1


def test_forgetting_leaves_counts_by_item_without_a_code(kept: Bank) -> None:
    before = {one.item: (one.given, one.alone) for one in kept.progress.evidence()}
    kept.records.forget(CODE)
    after = {one.item: (one.given, one.alone) for one in kept.progress.evidence()}
    assert after == before
    columns = [row["name"] for row in kept.store.rows("PRAGMA table_info(item_count)")]
    assert columns == ["item", "given", "alone", "helped", "not_done", "fixes", "missed"]


def test_forgetting_lists_printed_and_exported_files_that_may_hold_the_code(
    kept: Bank, tmp_path: Path
) -> None:
    written = kept.records.export(CODE)
    prints = kept.paper.prints / "2026-09-14"
    prints.mkdir(parents=True)
    done = kept.records.forget(CODE)
    assert {path for path, _ in done.files} == {written[0].parent.absolute(), kept.paper.prints}
    assert written[0].exists(), "they are listed, not deleted"


def test_while_another_program_reads_nothing_is_called_forgotten_that_is_not(kept: Bank) -> None:
    with contextlib.closing(sqlite3.connect(kept.path, isolation_level=None)) as other:
        other.execute("BEGIN")
        other.execute("SELECT count(*) FROM learner").fetchone()
        kept.store.connection.execute("PRAGMA busy_timeout = 50")
        with pytest.raises(BankError, match="another program"):
            kept.records.forget(CODE)
        other.execute("ROLLBACK")
    kept.records.forget(CODE)
    assert not holds(kept.path)


def test_a_code_that_is_a_word_is_not_torn_out_of_items(stocked: Bank) -> None:
    stocked.learners.add("what", 2.0)
    words = stocked.store.value("SELECT count(*) FROM tag WHERE value = 'what'")
    assert words > 0
    stocked.records.forget("what")
    assert stocked.store.value("SELECT count(*) FROM tag WHERE value = 'what'") == words


def test_an_export_holds_all_that_is_kept_as_tables_and_as_json(kept: Bank) -> None:
    written = kept.records.export(CODE)
    folder = written[0].parent
    whole = json.loads((folder / "all.json").read_text("utf-8"))
    number = kept.learners.get(CODE).number
    for table, name in (("mark", "marks"), ("given", "items"), ("phase", "phases")):
        count = kept.store.value(f"SELECT count(*) FROM {table} WHERE learner = ?", (number,))
        assert len(whole[name]) == count > 0
        with (folder / f"{name}.csv").open(encoding="utf-8", newline="") as file:
            assert len(list(csv.DictReader(file))) == count
    assert whole["settings"][0]["code"] == CODE
    if os.name != "nt":
        assert all(path.stat().st_mode & 0o077 == 0 for path in written)


def test_every_table_that_refers_to_a_learner_is_exported(kept: Bank) -> None:
    """A table that a later schema adds cannot be left out of an export."""
    tables = [
        row["name"]
        for row in kept.store.rows("SELECT name FROM sqlite_master WHERE type = 'table'")
    ]
    referring = {
        name
        for name in tables
        for row in kept.store.rows(f'PRAGMA foreign_key_list("{name}")')
        if row["table"] in ("learner", "day_set")
    }
    assert len(referring) > 8
    exported = kept.records.kept_of(CODE)
    named = {"mark": "marks", "day_set": "sets", "given": "items", "swap": "swaps"}
    named |= {"learner_skill": "skills", "learner_avoid": "avoided", "learner_away": "away"}
    named |= {"phase": "phases"}
    assert {named.get(name, name) for name in referring} <= set(exported)


def test_a_backup_is_sound_and_is_put_back(kept: Bank) -> None:
    copy = kept.records.backup()
    assert unsound(copy) == ""
    assert (copy.with_name(copy.name + ".sha256")).read_text().endswith(f"  {copy.name}\n")
    kept.learners.change("K4", group="B")
    safe = kept.records.restore(copy)
    assert kept.learners.get("K4").group == "A"
    kept.records.restore(safe)
    assert kept.learners.get("K4").group == "B"
    assert safe in kept.records.copies()


def test_a_backup_can_be_made_while_another_writes(kept: Bank) -> None:
    stop = threading.Event()

    def write() -> None:
        with open_bank(kept.path) as other:
            n = 0
            while not stop.is_set():
                other.store.set_setting("n", n)
                n += 1

    writer = threading.Thread(target=write)
    writer.start()
    try:
        assert all(unsound(kept.records.backup()) == "" for _ in range(3))
    finally:
        stop.set()
        writer.join()


@pytest.mark.parametrize("place", [100, 5000, -3000])
def test_a_damaged_copy_is_refused_and_the_bank_is_as_it_was(kept: Bank, place: int) -> None:
    copy = kept.records.backup()
    damaged = bytearray(copy.read_bytes())
    at = place % len(damaged)
    damaged[at : at + 64] = bytes(64) if any(damaged[at : at + 64]) else b"\xff" * 64
    copy.write_bytes(damaged)
    groups = [one.group for one in kept.learners]
    with pytest.raises(BankError, match="is not restored"):
        kept.records.restore(copy)
    assert [one.group for one in kept.learners] == groups


def test_half_a_copy_is_refused_even_without_its_checksum(kept: Bank) -> None:
    copy = kept.records.backup()
    copy.with_name(copy.name + ".sha256").unlink()
    whole = copy.read_bytes()
    copy.write_bytes(whole[: len(whole) // 2])
    assert "damaged" in unsound(copy)
    copy.write_bytes(b"no bank at all" * 500)
    assert "no bank" in unsound(copy)
    assert unsound(copy.with_name("none.sqlite3")) == "there is no such file"


def test_a_copy_is_not_written_over_another_file(kept: Bank, tmp_path: Path) -> None:
    (tmp_path / "mine.txt").write_text("mine")
    with pytest.raises(BankError, match="there already"):
        kept.records.backup(tmp_path / "mine.txt")
    assert (tmp_path / "mine.txt").read_text() == "mine"
