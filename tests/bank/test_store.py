import os
import sqlite3
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from making import make_item, put

from bank.classroom import Bank, open_bank
from bank.item import BankError
from bank.schema import migrations
from bank.store import SCHEMA, create_store, find_path, migrate, open_store
from bank.store_items import Query, find_items, place_of

ROOT = bool(hasattr(os, "geteuid") and os.geteuid() == 0)


def test_the_program_knows_how_many_migrations_there_are() -> None:
    assert len(migrations._migrations) == SCHEMA


def test_a_bank_is_readable_by_its_owner_alone_unless_said_otherwise(tmp_path: Path) -> None:
    if os.name == "nt":
        pytest.skip("Windows has no such permissions")
    create_store(tmp_path / "own.sqlite3").close()
    create_store(tmp_path / "shared.sqlite3", for_others=True).close()
    assert (tmp_path / "own.sqlite3").stat().st_mode & 0o077 == 0
    assert (tmp_path / "shared.sqlite3").stat().st_mode & 0o007 == 0


def test_the_bank_is_looked_for_by_name_then_environment_then_in_the_data_folder(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("BINDERBANK", str(tmp_path / "env.sqlite3"))
    assert find_path("x.sqlite3") == Path("x.sqlite3")
    assert find_path() == tmp_path / "env.sqlite3"
    monkeypatch.delenv("BINDERBANK")
    assert find_path().name == "bank.sqlite3"


def test_write_ahead_logging_is_used(bank: Bank) -> None:
    assert bank.store.value("PRAGMA journal_mode") == "wal"


@pytest.mark.parametrize("content", [b"", b"hello, this is no bank at all" * 100])
def test_a_file_that_is_no_bank_is_refused_and_stays_as_it_was(
    tmp_path: Path, content: bytes
) -> None:
    path = tmp_path / "x.sqlite3"
    path.write_bytes(content)
    with pytest.raises(BankError):
        open_store(path)
    assert path.read_bytes() == content


def test_a_missing_bank_is_not_made_by_looking(tmp_path: Path) -> None:
    with pytest.raises(BankError, match="binderbank new"):
        open_bank(tmp_path / "none.sqlite3")
    assert list(tmp_path.iterdir()) == []


def test_another_sqlite_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "other.sqlite3"
    with sqlite3.connect(path) as other:
        other.execute("CREATE TABLE item (id)")
    other.close()
    with pytest.raises(BankError, match="no bank"):
        open_store(path)


def test_a_bank_of_a_newer_program_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "new.sqlite3"
    store = create_store(path)
    store.connection.execute(f"PRAGMA user_version = {SCHEMA + 1}")
    store.close()
    with pytest.raises(BankError, match="newer"):
        open_store(path)


def test_a_bank_that_is_there_is_not_made_again(tmp_path: Path) -> None:
    create_store(tmp_path / "x.sqlite3").close()
    with pytest.raises(BankError, match="there already"):
        create_store(tmp_path / "x.sqlite3")


def test_a_locked_bank_is_said_in_one_line(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bank.store.WAIT_SECONDS", 0.05)
    path = tmp_path / "x.sqlite3"
    create_store(path).close()
    holder = sqlite3.connect(path, isolation_level=None)
    holder.execute("BEGIN IMMEDIATE")
    store = open_store(path)
    with pytest.raises(BankError, match="in use by another program"):
        store.set_setting("a", 1)
    holder.execute("ROLLBACK")
    store.set_setting("a", 1)
    assert store.setting("a") == 1
    holder.close()
    store.close()


@pytest.mark.skipif(ROOT, reason="root may write everything")
def test_a_read_only_bank_can_be_read_and_refuses_to_be_written(tmp_path: Path) -> None:
    path = tmp_path / "x.sqlite3"
    with Bank(create_store(path)) as bank:
        put(bank, make_item(1))
        bank.store.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    path.chmod(0o400)
    tmp_path.chmod(0o500)
    try:
        with open_bank(path) as bank:
            assert len(bank.items) == 1
            with pytest.raises(BankError, match="read-only"):
                put(bank, make_item(2))
    finally:
        tmp_path.chmod(0o700)


def test_a_bank_opened_for_reading_refuses_to_be_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "x.sqlite3"
    create_store(path).close()
    monkeypatch.setattr("bank.store.os.access", lambda path, how: how != os.W_OK)
    with open_bank(path) as bank, pytest.raises(BankError, match="read-only"):
        put(bank, make_item(2))


def test_a_full_disk_is_said_in_one_line_and_the_bank_stays_whole(bank: Bank) -> None:
    put(bank, make_item(1))
    pages = bank.store.value("PRAGMA page_count")
    bank.store.connection.execute(f"PRAGMA max_page_count = {pages + 1}")
    with pytest.raises(BankError, match="full"):
        put(bank, *(make_item(n, text=f"{n} " + "word " * 50) for n in range(2, 600)))
    assert [item.id for item in bank.items] == ["q00001"]
    assert bank.store.value("PRAGMA integrity_check") == "ok"


def test_a_network_folder_gets_a_plain_journal_and_one_warning(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import bank.store as module

    path = tmp_path / "x.sqlite3"
    store = create_store(path)
    store.connection.execute("PRAGMA journal_mode = DELETE")
    store.close()
    monkeypatch.setattr(module, "_can_read", lambda connection: False)
    store = open_store(path)
    assert store.value("PRAGMA journal_mode") == "delete"
    assert len(store.warnings) == 1
    store.set_setting("a", 1)
    store.close()
    assert open_store(path).warnings == []


def test_half_a_change_is_never_kept(bank: Bank) -> None:
    with pytest.raises(RuntimeError), bank.store.writing():
        put(bank, make_item(1))
        raise RuntimeError
    assert len(bank.items) == 0


def test_two_writers_wait_for_each_other(tmp_path: Path) -> None:
    path = tmp_path / "x.sqlite3"
    create_store(path).close()

    def write(start: int) -> None:
        with open_bank(path) as bank:
            for number in range(start, start + 20):
                put(bank, make_item(number))

    threads = [threading.Thread(target=write, args=(start,)) for start in (0, 100)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    with open_bank(path) as bank:
        assert len(bank.items) == 40


def test_a_migration_keeps_a_copy_of_the_file_before(bank: Bank) -> None:
    put(bank, make_item(1))
    copy = migrate(bank.store)
    assert copy is not None
    with sqlite3.connect(copy) as kept:
        assert kept.execute("SELECT count(*) FROM item").fetchone()[0] == 1
    kept.close()


def test_columns_refuse_what_cannot_be(bank: Bank) -> None:
    put(bank, make_item(1))
    for statement in (
        "UPDATE item SET state = 'lost'",
        "UPDATE item SET kind = 'joke'",
        "UPDATE item SET level_as = 13",
        "UPDATE item SET choices = 'no json'",
        "INSERT INTO tag VALUES ('nobody', 'theme', 'x', 0)",
    ):
        with pytest.raises(sqlite3.IntegrityError):
            bank.store.execute(statement)


def test_the_search_follows_changes_and_deletes(bank: Bank) -> None:
    put(bank, make_item(1, text="Can a fish swim?"))
    assert [one.id for one in find_items(bank.store, Query("fish"))] == ["q00001"]
    assert [one.id for one in find_items(bank.store, Query("swimming"))] == ["q00001"]
    put(bank, make_item(1, text="Can a bird fly?"))
    assert find_items(bank.store, Query("fish")) == []
    assert find_items(bank.store, Query('"*^(')) == []


def test_the_shuffle_of_a_bank_does_not_hang_on_hash_order() -> None:
    code = "from bank.store_items import place_of; print(place_of('seed', 'q1'))"
    said = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("0", "1")
    }
    assert said == {f"{place_of('seed', 'q1')}{os.linesep}".encode()}
