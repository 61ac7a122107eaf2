"""Records: what is kept of a learner, taking it along, forgetting it, and copies of the bank.

Forgetting reaches the bank and the copies that the tool made. It cannot reach a copy that somebody
carried elsewhere, nor what a disk keeps of files that were overwritten.
"""

from __future__ import annotations

import contextlib
import csv
import datetime as dt
import hashlib
import json
import os
import re
import sqlite3
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from bank.classroom_days import Days
from bank.classroom_scrub import scrub
from bank.item import BankError
from bank.store import APPLICATION_ID, SCHEMA, Store, copy_bank, now, said_plainly
from bank.store_marks import note_written

# What is kept of one learner: the name of a file, and the rows that go into it.
_KEPT = (
    ("marks", "SELECT * FROM mark WHERE learner = ? ORDER BY day, id"),
    ("sets", "SELECT * FROM day_set WHERE learner = ? ORDER BY day"),
    ("items", "SELECT * FROM given WHERE learner = ? ORDER BY day, kind, position"),
    ("swaps", "SELECT * FROM swap WHERE learner = ? ORDER BY id"),
    ("skills", "SELECT * FROM learner_skill WHERE learner = ? ORDER BY skill"),
    ("avoided", "SELECT * FROM learner_avoid WHERE learner = ? ORDER BY theme"),
    ("away", "SELECT * FROM learner_away WHERE learner = ? ORDER BY first"),
    ("phases", "SELECT * FROM phase WHERE learner = ? ORDER BY day, id"),
    ("settings", "SELECT * FROM learner WHERE number = ?"),
)
_OWN = {
    "mark",
    "day_set",
    "given",
    "swap",
    "learner_skill",
    "learner_avoid",
    "learner_away",
    "phase",
}


@dataclass(frozen=True, slots=True)
class Forgotten:
    """What forgetting did: rows and copies gone, files that still hold the code, and what failed."""

    rows: int
    copies: tuple[Path, ...]
    files: tuple[tuple[Path, str], ...]
    mentions: tuple[str, ...]
    problems: tuple[str, ...]


class Records:
    """Taking along, forgetting, and copies."""

    def __init__(self, store: Store, days: Days) -> None:
        self.store = store
        self.days = days

    @property
    def backups(self) -> Path:
        """The folder beside the bank where copies go."""
        return self.store.path.with_name(self.store.path.stem + "-backups")

    # One learner's records

    def kept_of(self, code: str) -> dict[str, list[dict[str, Any]]]:
        """All that is kept of a learner, by what it is."""
        learner = self.days.learners([code])[0]
        return {
            name: [dict(row) for row in self.store.rows(sql, (learner.number,))]
            for name, sql in (*_KEPT, *self._other_tables())
        }

    def _other_tables(self) -> Iterator[tuple[str, str]]:
        """Tables of other rooms that hold a learner's number, found by their reference to it."""
        known = {*_OWN, "learner"}
        for row in self.store.rows(
            "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY 1"
        ):
            name = row["name"]
            refers = self.store.rows(f'PRAGMA foreign_key_list("{name}")')
            columns = [one["from"] for one in refers if one["table"] == "learner"]
            if columns and name not in known:
                yield name, f'SELECT * FROM "{name}" WHERE "{columns[0]}" = ?'

    def export(self, code: str, folder: Path | None = None) -> list[Path]:
        """Write all that is kept of a learner: a CSV file for each table and one JSON file."""
        learner = self.days.learners([code])[0]
        kept = self.kept_of(code)
        to = folder or self.store.path.with_name(
            f"{self.store.path.stem}-export-{learner.code}-{dt.date.today()}"
        )
        to.mkdir(parents=True, exist_ok=True)
        written = []
        for name, rows in kept.items():
            path = to / f"{name}.csv"
            with _private(path) as file:
                columns = self._columns(name, rows)
                writer = csv.DictWriter(file, columns, lineterminator="\n")
                writer.writeheader()
                writer.writerows({key: _cell(value) for key, value in row.items()} for row in rows)
            written.append(path)
        path = to / "all.json"
        whole = {"learner": learner.code, "made": now(), **kept}
        with _private(path) as file:
            json.dump(whole, file, ensure_ascii=False, indent=2)
        written.append(path)
        note_written(self.store, str(to.absolute()), "export", learner.number)
        return written

    def _columns(self, name: str, rows: Sequence[dict[str, Any]]) -> list[str]:
        if rows:
            return list(rows[0])
        sql = dict((*_KEPT, *self._other_tables()))[name]
        found = self.store.connection.execute(sql, (0,)).description
        return [column[0] for column in found]

    # Forgetting

    def written(self) -> list[tuple[Path, str, int | None]]:
        """Files and folders that the tool knows it wrote and that are still there."""
        known = {
            Path(row["path"]): (row["what"], row["learner"])
            for row in self.store.rows("SELECT * FROM written ORDER BY path")
        }
        prints = self.store.path.with_name(self.store.path.stem + "-prints")
        known.setdefault(prints, ("prints", None))
        return [(path, what, who) for path, (what, who) in known.items() if path.exists()]

    def copies(self) -> list[Path]:
        """Copies of the bank that the tool made and that are still there."""
        beside = self.store.path.parent.glob(f"{self.store.path.name}.before-*")
        inside = self.backups.glob("*.sqlite3") if self.backups.is_dir() else ()
        noted = (path for path, what, _ in self.written() if what == "backup")
        return sorted({path.absolute() for path in (*beside, *inside, *noted) if path.is_file()})

    def forget(self, code: str) -> Forgotten:
        """Remove every row of a learner from the bank and from the copies that the tool made.

        Counts by item stay, without code, day or number. Where a copy cannot be reached that is
        said in `problems`; the bank itself is done first, and all of it or nothing. A code that
        nobody has any more is looked for all the same: it may stand in a copy.
        """
        known = [one for one in self.days.learners() if one.code.lower() == code.lower()]
        number = known[0].number if known else None
        if not self.store.writable:
            raise BankError(f"the bank {self.store.path} is read-only; nothing was changed")
        files = [
            (path, what)
            for path, what, who in self.written()
            if what != "backup" and who in (None, number)
        ]
        copies = self.copies()
        rows, mentions = scrub(self.store.connection, code, keep_counts=True)
        done, problems = [], []
        for copy in copies:
            try:
                _scrub_copy(copy, code)
                done.append(copy)
            except (sqlite3.Error, OSError, BankError) as error:
                problems.append(f"{copy} could not be cleaned ({error}); delete it by hand")
        return Forgotten(rows, tuple(done), tuple(files), tuple(mentions), tuple(problems))

    # Copies of the bank

    def backup(self, target: Path | None = None) -> Path:
        """A copy of the bank with its checksum beside it (SQLite's online backup, checked).

        Raises `BankError` where the file is there already.
        """
        if target is None:
            self.backups.mkdir(mode=0o700, exist_ok=True)
            stamp = dt.datetime.now().strftime("%Y-%m-%d-%H%M%S")
            target = _free(self.backups / f"{self.store.path.stem}-{stamp}.sqlite3")
        if target.exists():
            raise BankError(f"{target} is there already; name another file")
        if not target.parent.is_dir():
            raise BankError(f"there is no folder {target.parent}; make it first")
        if self.store.writable:
            note_written(self.store, str(target.absolute()), "backup")
        try:
            copy_bank(self.store, target)
            wrong = damage(target)
            if wrong:
                raise BankError(f"the copy {target} is not sound ({wrong}); it was deleted")
            write_checksum(target)
        except BaseException:
            target.unlink(missing_ok=True)
            raise
        return target

    def restore(self, source: Path) -> Path:
        """Put a copy in the place of the bank; returns the copy made of the bank as it was.

        Raises `BankError` for a copy that is damaged, of another program or of a newer one; the
        bank is then as it was.
        """
        problem = unsound(source)
        if problem:
            raise BankError(f"{source} is not restored: {problem}; the bank is as it was")
        kept = self.backup()
        noted = self.store.rows("SELECT path, what, made FROM written WHERE learner IS NULL")
        with contextlib.closing(_read_only(source)) as copy, said_plainly(self.store.path):
            copy.backup(self.store.connection)
        version = self.store.value("PRAGMA user_version")
        if version < SCHEMA:
            from bank.store import migrate

            migrate(self.store, keep_copy=False)
        with self.store.writing():
            self.store.execute_many(
                "INSERT OR IGNORE INTO written VALUES (?, ?, NULL, ?)",
                [tuple(row) for row in noted],
            )
        return kept


def checksum_path(path: Path) -> Path:
    return path.with_name(path.name + ".sha256")


def digest_of(path: Path) -> str:
    found = hashlib.sha256()
    with path.open("rb") as file:
        while part := file.read(1 << 20):
            found.update(part)
    return found.hexdigest()


def write_checksum(path: Path) -> None:
    """The SHA-256 of a file beside it, as `sha256sum` writes and checks it."""
    with _private(checksum_path(path)) as file:
        file.write(f"{digest_of(path)}  {path.name}\n")


def damage(path: Path) -> str:
    """What SQLite's own check finds wrong with a copy; empty where it is sound."""
    try:
        with contextlib.closing(_read_only(path)) as copy:
            said = [row[0] for row in copy.execute("PRAGMA integrity_check(3)")]
            broken = copy.execute("PRAGMA foreign_key_check").fetchone()
    except sqlite3.Error as error:
        return str(error)
    if said != ["ok"]:
        return str(said[0])
    return "rows refer to others that are gone" if broken else ""


def unsound(path: Path) -> str:
    """Why a copy must not take the bank's place; empty where it may."""
    if not path.is_file():
        return "there is no such file"
    beside = checksum_path(path)
    if beside.is_file():
        said = re.match(r"[0-9a-f]{64}", beside.read_text("utf-8", "replace"))
        if not said or said[0] != digest_of(path):
            return "its checksum does not fit: the file was changed or is damaged"
    try:
        with contextlib.closing(_read_only(path)) as copy:
            application = copy.execute("PRAGMA application_id").fetchone()[0]
            version = copy.execute("PRAGMA user_version").fetchone()[0]
    except sqlite3.Error as error:
        return f"it is no bank, or damaged ({error})"
    if application != APPLICATION_ID:
        return "it is no bank"
    if version > SCHEMA:
        return "a newer program wrote it; update this one"
    found = damage(path)
    return f"it is damaged ({found})" if found else ""


def has_checksum(path: Path) -> bool:
    return checksum_path(path).is_file()


def _read_only(path: Path) -> sqlite3.Connection:
    # `immutable`: no lock files beside a copy, which may lie on a stick.
    return sqlite3.connect(path.absolute().as_uri() + "?mode=ro&immutable=1", uri=True)


def _scrub_copy(path: Path, code: str) -> None:
    summed = has_checksum(path)
    with contextlib.closing(sqlite3.connect(path, isolation_level=None)) as copy:
        copy.row_factory = sqlite3.Row
        if copy.execute("PRAGMA application_id").fetchone()[0] != APPLICATION_ID:
            raise BankError("it is no bank")
        scrub(copy, code, keep_counts=False)
        copy.execute("PRAGMA journal_mode = DELETE")
    if summed:
        write_checksum(path)


@contextlib.contextmanager
def _private(path: Path) -> Iterator[Any]:
    """A new text file that its owner alone can read."""
    path.unlink(missing_ok=True)
    descriptor = os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
    with os.fdopen(descriptor, "w", encoding="utf-8", newline="") as file:
        yield file


def _cell(value: Any) -> Any:
    """A cell that a spreadsheet takes as text, never as a formula."""
    risky = isinstance(value, str) and value[:1] in ("=", "+", "-", "@", "\t")
    return f"'{value}" if risky else value


def _free(path: Path) -> Path:
    number = 2
    free = path
    while free.exists():
        free = path.with_name(f"{path.stem}-{number}{path.suffix}")
        number += 1
    return free


__all__ = ["Forgotten", "Records", "damage", "digest_of", "has_checksum", "unsound"]
