"""Taking one learner out of a bank file, of this or an older schema, down to the bytes.

Rows go by their references to the learner; then every table that is not about items is searched for
the code, since others' rows mention it (who shared an item, a note, a setting).
"""

from __future__ import annotations

import json
import re
import sqlite3
from typing import Any

from bank.item import BankError
from bank.store import said_plainly
from bank.store_sets import LAST_NUMBER

# Tables about items: a code such as "A" is a word there, so only a code that cannot be one is taken out.
_ITEM_TABLES = re.compile(
    r"item|version|tag|shelf|ask_key|twin|conflict|book|item_count|_?sqlite.*|item_fts.*"
)
_COUNTS = """
INSERT INTO item_count (item, given, alone, helped, not_done, fixes, missed)
SELECT item, count(*), sum(outcome = 'done' AND help = ''), sum(outcome = 'done' AND help <> ''),
    sum(outcome = 'not-done'), 0, 0
FROM mark WHERE learner = :number AND replaced = 0 AND part = '' AND outcome <> 'not-asked'
    AND item IN (SELECT id FROM item) GROUP BY item
ON CONFLICT (item) DO UPDATE SET given = given + excluded.given, alone = alone + excluded.alone,
    helped = helped + excluded.helped, not_done = not_done + excluded.not_done
"""
_FIX_COUNTS = """
UPDATE item_count SET
    fixes = fixes + (SELECT count(*) FROM mark WHERE mark.item = item_count.item
        AND learner = :number AND replaced = 0 AND outcome IN ('fixed', 'missed')),
    missed = missed + (SELECT count(*) FROM mark WHERE mark.item = item_count.item
        AND learner = :number AND replaced = 0 AND outcome = 'missed')
"""
_LAST_NUMBER = """
INSERT INTO setting VALUES (:key, :number) ON CONFLICT (key) DO UPDATE SET
    value = max(CAST(value AS INTEGER), CAST(excluded.value AS INTEGER))
"""


def scrub(connection: sqlite3.Connection, code: str, keep_counts: bool) -> tuple[int, list[str]]:
    """Take the learner out; returns how many rows went, and the items that still mention the code.

    One transaction; then the file is written anew without what was deleted. Raises `BankError`
    where another program is using the bank: it is then as it was, or, after the rows are gone,
    says that the file still has to be written anew.
    """
    execute = connection.execute
    with said_plainly_here(connection):
        execute("PRAGMA foreign_keys = ON")
        execute("PRAGMA secure_delete = ON")
        execute("PRAGMA temp_store = MEMORY")
        before = connection.total_changes
        execute("BEGIN IMMEDIATE")
        try:
            found = execute("SELECT number FROM learner WHERE code = ?", (code,)).fetchone()
            if found:
                if keep_counts:
                    execute(_COUNTS, {"number": found[0]})
                    execute(_FIX_COUNTS, {"number": found[0]})
                    execute(_LAST_NUMBER, {"number": str(found[0]), "key": LAST_NUMBER})
                execute("DELETE FROM learner WHERE number = ?", (found[0],))
            mentions = _scrub_mentions(connection, code)
            execute("COMMIT")
        except BaseException:
            execute("ROLLBACK")
            raise
        rows = connection.total_changes - before
    try:
        execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()
        execute("VACUUM")
        busy = execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    except sqlite3.OperationalError as error:
        raise BankError(
            "the rows are gone, but another program has the bank open, so its file still holds"
            " traces; close the other program and say it again"
        ) from error
    if busy and busy[0] not in (0, None):
        raise BankError(
            "the rows are gone, but another program has the bank open, so the file beside it still"
            " holds traces; close the other program and say it again"
        )
    return rows, mentions


def said_plainly_here(connection: sqlite3.Connection) -> Any:
    from pathlib import Path

    name = connection.execute("PRAGMA database_list").fetchone()[2]
    return said_plainly(Path(name))


def _scrub_mentions(connection: sqlite3.Connection, code: str) -> list[str]:
    """Take the code out of all texts of tables that are not about items; items are only listed."""
    mentions: list[str] = []
    tables = connection.execute(
        "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name"
    ).fetchall()
    for (table,) in [tuple(row) for row in tables]:
        if table.startswith(("item_fts", "sqlite_")):
            continue
        about_items = bool(_ITEM_TABLES.fullmatch(table))
        if about_items and not _is_no_word(code):
            continue
        columns = connection.execute(f'PRAGMA table_info("{table}")').fetchall()
        keys = [row[1] for row in columns if row[5]]
        for column in [row[1] for row in columns]:
            mentions += _scrub_column(connection, table, column, keys, code, about_items)
    return sorted(set(mentions))


def _is_no_word(code: str) -> bool:
    """Whether a code can be told from a word: it has a digit or a hyphen, or is long and odd."""
    return bool(re.search(r"[\d-]", code)) and len(code) > 1


def _scrub_column(
    connection: sqlite3.Connection,
    table: str,
    column: str,
    keys: list[str],
    code: str,
    about_items: bool,
) -> list[str]:
    names = ", ".join(f'"{key}"' for key in (keys or ["rowid"]))
    rows = connection.execute(
        f'SELECT "{column}", {names} FROM "{table}"'
        f' WHERE typeof("{column}") = \'text\' AND instr(lower("{column}"), lower(?))',
        (code,),
    ).fetchall()
    mentions = []
    for value, *key in [tuple(row) for row in rows]:
        without = without_code(value, code)
        if without == value:
            continue
        if about_items and (column in keys or column in ("text", "folded", "faulty")):
            mentions.append(str(key[0]))
            continue
        where = " AND ".join(f'"{name}" = ?' for name in (keys or ["rowid"]))
        connection.execute(
            f'UPDATE OR REPLACE "{table}" SET "{column}" = ? WHERE {where}', (without, *key)
        )
    return mentions


def without_code(value: str, code: str) -> str:
    """A text, or plain values in JSON, without the code.

    >>> without_code('{"shared_with": ["K4", "M7"], "K4": 1}', "K4")
    '{"shared_with": ["M7"]}'
    >>> without_code("sits beside K4 now", "k4"), without_code("K41 stays", "K4")
    ('sits beside - now', 'K41 stays')
    """
    if value[:1] in "[{":
        try:
            plain = json.loads(value)
        except ValueError:
            plain = None
        if plain is not None:
            cleaned = _without(plain, code)
            return value if cleaned == plain else json.dumps(cleaned, ensure_ascii=False)
    whole = rf"(?<![A-Za-z0-9-]){re.escape(code)}(?![A-Za-z0-9-])"
    return re.sub(whole, "-", value, flags=re.IGNORECASE)


def _without(plain: Any, code: str) -> Any:
    def is_code(one: Any) -> bool:
        return isinstance(one, str) and one.lower() == code.lower()

    if isinstance(plain, dict):
        return {key: _without(one, code) for key, one in plain.items() if not is_code(key)}
    if isinstance(plain, list):
        return [_without(one, code) for one in plain if not is_code(one)]
    if is_code(plain):
        return ""
    return without_code(plain, code) if isinstance(plain, str) else plain
