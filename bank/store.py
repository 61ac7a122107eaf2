"""The SQLite file of a bank: finding it, opening it, migrating it, and writing in turn.

Reading and writing go through the standard library's `sqlite3`; sqlite-utils is loaded only to make
or migrate a bank. Every write begins with `BEGIN IMMEDIATE` and waits its turn, so that nobody sees
half a change and a killed process leaves the bank as it was.
"""

from __future__ import annotations

import contextlib
import datetime as dt
import json
import os
import sqlite3
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from bank.item import BankError

SCHEMA = 3  # the number of migrations in bank/schema.py; a test holds the two together
APPLICATION_ID = 0x62626E6B  # "bbnk": marks the file as a bank, see SQLite's `application_id`
WAIT_SECONDS = 10.0
ENVIRONMENT = "BINDERBANK"
FILE_NAME = "bank.sqlite3"


def find_path(named: str | Path | None = None) -> Path:
    """Where the bank is: the named path, then `BINDERBANK`, then the user's data folder."""
    if named:
        return Path(named).expanduser()
    if os.environ.get(ENVIRONMENT):
        return Path(os.environ[ENVIRONMENT]).expanduser()
    import platformdirs

    return Path(platformdirs.user_data_dir("binderbank", appauthor=False)) / FILE_NAME


def now() -> str:
    """The present moment in UTC, to the second, as the bank keeps it."""
    return dt.datetime.now(dt.UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


class Store:
    """An open bank. `warnings` are lines that the user should see once."""

    def __init__(self, path: Path, connection: sqlite3.Connection, writable: bool) -> None:
        self.path = path
        self.connection = connection
        self.writable = writable
        self.warnings: list[str] = []

    def rows(self, sql: str, values: Sequence[Any] | dict[str, Any] = ()) -> list[sqlite3.Row]:
        with said_plainly(self.path):
            return self.connection.execute(sql, values).fetchall()

    def row(self, sql: str, values: Sequence[Any] | dict[str, Any] = ()) -> sqlite3.Row | None:
        with said_plainly(self.path):
            found: sqlite3.Row | None = self.connection.execute(sql, values).fetchone()
            return found

    def value(self, sql: str, values: Sequence[Any] | dict[str, Any] = ()) -> Any:
        """The first column of the first row, or None where there is no row."""
        found = self.row(sql, values)
        return found[0] if found else None

    def execute(self, sql: str, values: Sequence[Any] | dict[str, Any] = ()) -> int:
        """Run one statement inside `writing`; returns how many rows it touched."""
        return self.connection.execute(sql, values).rowcount

    def execute_many(self, sql: str, rows: Sequence[Sequence[Any]]) -> None:
        self.connection.executemany(sql, rows)

    @contextlib.contextmanager
    def writing(self) -> Iterator[None]:
        """One transaction: all of it or nothing. Inside another it joins that one."""
        if self.connection.in_transaction:
            yield
            return
        if not self.writable:
            raise BankError(f"the bank {self.path} is read-only; nothing was changed")
        with said_plainly(self.path):
            self.connection.execute("BEGIN IMMEDIATE")
        try:
            with said_plainly(self.path):
                yield
                self.connection.execute("COMMIT")
        except BaseException:
            if self.connection.in_transaction:
                self.connection.execute("ROLLBACK")
            raise

    def setting(self, key: str, default: Any = None) -> Any:
        found = self.value("SELECT value FROM setting WHERE key = ?", (key,))
        return default if found is None else json.loads(found)

    def set_setting(self, key: str, value: Any) -> None:
        with self.writing():
            self.execute(
                "INSERT INTO setting VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value",
                (key, json.dumps(value, sort_keys=True)),
            )

    def close(self) -> None:
        self.connection.close()


@contextlib.contextmanager
def said_plainly(path: Path) -> Iterator[None]:
    """SQLite's errors as one line that says what to do; constraint errors pass as they are."""
    try:
        yield
    except sqlite3.IntegrityError:
        raise
    except sqlite3.DatabaseError as error:
        said = str(error)
        if "locked" in said or "busy" in said:
            raise BankError(
                f"the bank {path} is in use by another program; try again in a moment"
            ) from error
        if "disk is full" in said or "disk I/O" in said:
            raise BankError(
                f"the disk with {path} is full or cannot be written; make room and try again;"
                " the bank is as it was"
            ) from error
        if "readonly" in said or "read-only" in said:
            raise BankError(f"the bank {path} is read-only; nothing was changed") from error
        if "not a database" in said or "malformed" in said:
            raise BankError(
                f"{path} is no bank (not an SQLite file, or damaged); name another file or restore"
                " a copy"
            ) from error
        raise BankError(f"the bank {path} could not be used: {said}") from error


def open_store(path: Path) -> Store:
    """The bank at `path`, migrated where its schema is older than the program.

    Raises `BankError` for a file that is missing, empty, locked, no bank, or of a newer program.
    """
    if not path.exists():
        where = "" if path == find_path() else f" {path}"
        raise BankError(f"there is no bank at {path}; make one with: binderbank new{where}")
    if path.is_dir():
        raise BankError(f"{path} is a folder; name the bank file in it")
    if not os.access(path, os.R_OK):
        raise BankError(f"the bank {path} cannot be read; ask its owner to allow it")
    if path.stat().st_size == 0:
        raise BankError(f"{path} is an empty file, no bank; delete it, then: binderbank new")
    writable = os.access(path, os.W_OK)
    store = Store(path, _connect(path, writable), writable)
    try:
        with said_plainly(path):
            _refuse_other_files(store)
            version = store.value("PRAGMA user_version")
        if version < SCHEMA:
            if not writable:
                raise BankError(f"the bank {path} is read-only and needs to be brought up to date")
            migrate(store)
        if writable:
            _use_wal(store)
    except BaseException:
        store.close()
        raise
    return store


def create_store(path: Path, for_others: bool = False) -> Store:
    """A new, empty bank at `path`, readable by its owner alone unless `for_others`."""
    if path.exists():
        raise BankError(f"{path} is there already; name another file, or use it as it is")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        descriptor = os.open(
            path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o660 if for_others else 0o600
        )
        os.close(descriptor)
    except OSError as error:
        raise BankError(f"cannot make a bank at {path}: {error.strerror or error}") from error
    store = None
    try:
        store = Store(path, _connect(path, True), True)
        with said_plainly(path):
            store.connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        migrate(store, keep_copy=False)
        _use_wal(store)
        import secrets

        store.set_setting("seed", secrets.token_hex(8))
    except BaseException:
        if store:
            store.close()
        path.unlink(missing_ok=True)
        raise
    return store


def migrate(store: Store, keep_copy: bool = True) -> Path | None:
    """Bring an older bank up to date in one transaction; returns the copy kept of the file before."""
    from sqlite_utils import Database

    from bank.schema import migrations

    copy = None
    if keep_copy:
        version = store.value("PRAGMA user_version")
        copy = store.path.with_name(f"{store.path.name}.before-{version + 1}")
        copy_bank(store, copy)
    with store.writing():
        migrations.apply(Database(store.connection, recursive_triggers=False))
        store.connection.execute(f"PRAGMA user_version = {SCHEMA}")
    return copy


def copy_bank(store: Store, target: Path) -> None:
    """A copy of the bank as it stands now (SQLite's online backup), readable by the owner alone."""
    target.unlink(missing_ok=True)
    os.close(os.open(target, os.O_CREAT | os.O_RDWR, 0o600))
    with contextlib.closing(sqlite3.connect(target)) as copy, said_plainly(target):
        store.connection.backup(copy)


def _connect(path: Path, writable: bool) -> sqlite3.Connection:
    uri = path.absolute().as_uri() + ("?mode=rw" if writable else "?mode=ro")
    with said_plainly(path):
        connection = sqlite3.connect(
            uri, uri=True, timeout=WAIT_SECONDS, isolation_level=None, cached_statements=512
        )
        connection.row_factory = sqlite3.Row
        if not writable and not _can_read(connection):
            # A read-only folder has no room for the files that WAL needs beside the bank.
            connection.close()
            connection = sqlite3.connect(uri + "&immutable=1", uri=True, isolation_level=None)
            connection.row_factory = sqlite3.Row
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA synchronous = NORMAL")
    return connection


def _can_read(connection: sqlite3.Connection) -> bool:
    try:
        connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
    except sqlite3.OperationalError:
        return False
    return True


def _refuse_other_files(store: Store) -> None:
    if store.value("PRAGMA application_id") != APPLICATION_ID:
        raise BankError(f"{store.path} is an SQLite file, but no bank; name another file")
    version = store.value("PRAGMA user_version")
    if version > SCHEMA:
        raise BankError(
            f"the bank {store.path} was written by a newer binderbank (tables {version}, this program"
            f" knows {SCHEMA}); update the program"
        )


def _use_wal(store: Store) -> None:
    """Write-ahead logging where the file system allows it, else a plain journal and one warning."""
    if store.value("PRAGMA journal_mode") == "wal":
        return
    try:
        mode = store.connection.execute("PRAGMA journal_mode = WAL").fetchone()[0]
        readable = mode == "wal" and _can_read(store.connection)
    except sqlite3.OperationalError:
        readable = False
    if readable:
        return
    with contextlib.suppress(sqlite3.OperationalError):
        store.connection.execute("PRAGMA journal_mode = DELETE")
    if not store.setting("journal-warned"):
        store.warnings.append(
            f"the folder of {store.path} does not allow shared logging (a network folder?): the bank"
            " works, but let only one person write at a time"
        )
        with contextlib.suppress(BankError):
            store.set_setting("journal-warned", True)
