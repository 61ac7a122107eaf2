"""Items in the store: reading, writing, finding, and the shelf that the draw walks along."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from bank.item import BankError, Item, Season, Version, fold_text
from bank.store import Store, now

# Kinds of tag by the field of an item that holds them.
_TAG_FIELDS = (("theme", "themes"), ("season", "seasons"), ("note", "notes"), ("skill", "skills"))
_COLUMNS = (
    "id kind text folded state answer choices starter words picture source author grade low high"
    " level_as formulas reasons findings ask method as_is objection sort history made changed"
).split()


def tenth_of(grade: float) -> int:
    """The tenth of a grade in which `grade` stands on the shelf."""
    return int(grade * 10 + 1e-9)


def place_of(seed: str, item_id: str) -> int:
    """The fixed place of an item in the bank's own shuffle, 0 to 2**62."""
    import hashlib

    return (
        int.from_bytes(hashlib.blake2b(f"{seed}/{item_id}".encode(), digest_size=8).digest()) >> 2
    )


def get_item(store: Store, item_id: str) -> Item:
    """The item with this id; `BankError` where there is none."""
    row = store.row("SELECT * FROM item WHERE id = ?", (item_id,))
    if row is None:
        raise BankError(f"the bank has no item {item_id!r}; find it with: binderbank find WORDS")
    return _from_rows(store, [row])[0]


def has_item(store: Store, item_id: str) -> bool:
    return store.row("SELECT 1 FROM item WHERE id = ?", (item_id,)) is not None


def get_items(store: Store, ids: Sequence[str]) -> dict[str, Item]:
    """The items with these ids, by id; ids that the bank does not have are left out."""
    rows: list[sqlite3.Row] = []
    for part in range(0, len(ids), 500):
        some = ids[part : part + 500]
        marks = ",".join("?" * len(some))
        rows += store.rows(f"SELECT * FROM item WHERE id IN ({marks})", some)
    return {item.id: item for item in _from_rows(store, rows)}


def all_items(store: Store, where: str = "1", values: Sequence[Any] = ()) -> Iterable[Item]:
    """Items in the order of their ids, read in parts so that a large bank does not fill the memory."""
    last = ""
    while True:
        rows = store.rows(
            f"SELECT * FROM item WHERE id > ? AND ({where}) ORDER BY id LIMIT 500", (last, *values)
        )
        if not rows:
            return
        last = rows[-1]["id"]
        yield from _from_rows(store, rows)


def same_text(store: Store, text: str) -> str | None:
    """The id of the item with the same text (case, spacing and end mark aside)."""
    found: str | None = store.value("SELECT id FROM item WHERE folded = ?", (fold_text(text),))
    return found


def write_item(store: Store, item: Item, keep_changed: bool = False) -> None:
    """Add or replace one item with its versions, tags and place on the shelf.

    Raises `BankError` naming the other item where the text is there already.
    """
    other = same_text(store, item.text)
    if other not in (None, item.id):
        raise BankError(f"the bank has this text already: item {other}")
    moment = item.changed if keep_changed and item.changed else now()
    values = _to_row(item, moment)
    with store.writing():
        names = ", ".join(_COLUMNS)
        updates = ", ".join(
            f"{name} = excluded.{name}" for name in _COLUMNS if name not in ("id", "made")
        )
        store.execute(
            f"INSERT INTO item ({names}) VALUES ({', '.join('?' * len(_COLUMNS))})"
            f" ON CONFLICT (id) DO UPDATE SET {updates}",
            [values[name] for name in _COLUMNS],
        )
        store.execute("DELETE FROM version WHERE item = ?", (item.id,))
        store.execute_many(
            "INSERT INTO version VALUES (?, ?, ?, ?)",
            [
                (item.id, position, version.faulty, json.dumps(version.fixes))
                for position, version in enumerate(item.versions)
            ],
        )
        store.execute("DELETE FROM tag WHERE item = ?", (item.id,))
        store.execute_many("INSERT INTO tag VALUES (?, ?, ?, ?)", list(_tags(item)))
        shelve(store, item)


def shelve(store: Store, item: Item) -> None:
    """Put a ready item where the draw finds it; take any other off the shelf."""
    store.execute("DELETE FROM shelf WHERE item = ?", (item.id,))
    grade = item.reading_grade
    if item.state != "ready" or grade is None:
        return
    place = place_of(store.setting("seed", ""), item.id)
    rows = [
        (
            item.kind,
            tenth_of(grade),
            season.last if season else 0,
            place,
            item.id,
            season.first if season else 0,
            grade,
            item.question_word,
            item.themes[0] if item.themes else "",
        )
        for season in item.seasons or (None,)
    ]
    store.execute_many("INSERT OR IGNORE INTO shelf VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", rows)


def set_ask_keys(store: Store, item_id: str, keys: Iterable[str]) -> None:
    store.execute("DELETE FROM ask_key WHERE item = ?", (item_id,))
    store.execute_many("INSERT INTO ask_key VALUES (?, ?)", [(key, item_id) for key in set(keys)])


def sharing_keys(store: Store, keys: Sequence[str], but_not: str, most: int = 400) -> list[str]:
    """The ids of other items that share a key, at most `most` for each key, the rarest keys first."""
    count = "SELECT count(*) FROM (SELECT 1 FROM ask_key WHERE key = ? LIMIT ?)"
    rarest = sorted((store.value(count, (key, most)), key) for key in set(keys))
    found: dict[str, None] = {}
    for _, key in rarest:
        rows = store.rows(
            "SELECT item FROM ask_key WHERE key = ? AND item <> ? LIMIT ?", (key, but_not, most)
        )
        found.update(dict.fromkeys(row[0] for row in rows))
    return list(found)


def forget_twins(store: Store, item_id: str) -> None:
    store.execute("DELETE FROM twin WHERE item = ?", (item_id,))
    store.execute("DELETE FROM twin WHERE other = ?", (item_id,))


def add_twins(store: Store, pairs: Iterable[tuple[str, str]]) -> None:
    """Keep pairs that ask the same, both ways round."""
    both = [pair for one, other in pairs for pair in ((one, other), (other, one))]
    store.execute_many("INSERT OR IGNORE INTO twin VALUES (?, ?)", both)


def set_twins(store: Store, item_id: str, others: Iterable[str]) -> None:
    """Keep what an item asks the same as, in place of what was kept before."""
    forget_twins(store, item_id)
    add_twins(store, [(item_id, other) for other in others])


def twins_of(store: Store, item_id: str) -> list[str]:
    return [
        row[0] for row in store.rows("SELECT other FROM twin WHERE item = ? ORDER BY 1", (item_id,))
    ]


@dataclass(slots=True, eq=False)
class Query:
    """What to find: any of the parts may be left out."""

    words: str = ""
    kind: str = ""
    state: str = ""
    tags: tuple[tuple[str, str], ...] = ()
    low: float | None = None
    high: float | None = None
    never_used: bool = False
    limit: int = 0


def find_items(store: Store, query: Query) -> list[Item]:
    """The items that meet every part of the query, easiest first."""
    where, values = ["1"], list[Any]()
    if query.words.strip():
        where.append("rowid IN (SELECT rowid FROM item_fts WHERE item_fts MATCH ?)")
        values.append(" ".join('"' + w.replace('"', '""') + '"' for w in query.words.split()))
    for column, wanted in (("kind", query.kind), ("state", query.state)):
        if wanted:
            where.append(f"{column} = ?")
            values.append(wanted)
    for family, value in query.tags:
        where.append(
            "EXISTS (SELECT 1 FROM tag WHERE tag.item = item.id AND family = ? AND value = ?)"
        )
        values += [family, value]
    for sign, bound in ((">=", query.low), ("<=", query.high)):
        if bound is not None:
            where.append(f"coalesce(level_as, grade) {sign} ?")
            values.append(bound)
    if query.never_used:
        where.append("NOT EXISTS (SELECT 1 FROM given WHERE given.item = item.id AND counts = 1)")
    limit = f" LIMIT {int(query.limit)}" if query.limit else ""
    rows = store.rows(
        f"SELECT * FROM item WHERE {' AND '.join(where)} ORDER BY coalesce(level_as, grade), id{limit}",
        values,
    )
    return _from_rows(store, rows)


def _tags(item: Item) -> Iterable[tuple[str, str, str, int]]:
    for family, name in _TAG_FIELDS:
        for position, value in enumerate(dict.fromkeys(map(str, getattr(item, name)))):
            yield item.id, family, value, position
    if item.question_word:
        yield item.id, "question-word", item.question_word, 0


def _to_row(item: Item, moment: str) -> dict[str, Any]:
    return {
        **{name: getattr(item, name) for name in _COLUMNS if hasattr(item, name)},
        "folded": fold_text(item.text),
        "choices": json.dumps(item.choices, ensure_ascii=False),
        "words": json.dumps(item.words, ensure_ascii=False),
        "formulas": json.dumps(item.formulas),
        "reasons": json.dumps(item.reasons, ensure_ascii=False),
        "findings": json.dumps(item.findings, ensure_ascii=False),
        "ask": None if item.ask is None else json.dumps(item.ask, ensure_ascii=False),
        "sort": json.dumps(item.sort, ensure_ascii=False),
        "history": " ".join(item.history),
        "made": moment,
        "changed": moment,
    }


def _from_rows(store: Store, rows: Sequence[sqlite3.Row]) -> list[Item]:
    tags: dict[str, dict[str, list[str]]] = {}
    versions: dict[str, list[Version]] = {}
    twins: dict[str, list[str]] = {}
    ids = [row["id"] for row in rows]
    for part in range(0, len(ids), 500):
        some = ids[part : part + 500]
        marks = ",".join("?" * len(some))
        for row in store.rows(
            f"SELECT item, family, value FROM tag WHERE item IN ({marks}) ORDER BY item, family, position",
            some,
        ):
            tags.setdefault(row[0], {}).setdefault(row[1], []).append(row[2])
        for row in store.rows(f"SELECT * FROM version WHERE item IN ({marks}) ORDER BY 1, 2", some):
            fixes = tuple(json.loads(row["fixes"]))
            versions.setdefault(row["item"], []).append(Version(row["faulty"], fixes))
        for row in store.rows(f"SELECT item, other FROM twin WHERE item IN ({marks})", some):
            twins.setdefault(row[0], []).append(row[1])
    return [
        replace(
            _from_row(row, tags.get(row["id"], {}), versions.get(row["id"], [])),
            twins=tuple(twins.get(row["id"], ())),
        )
        for row in rows
    ]


def _from_row(row: sqlite3.Row, tags: dict[str, list[str]], versions: list[Version]) -> Item:
    plain = "id kind text state answer starter picture source author method as_is objection changed".split()
    plain += ["grade", "low", "high", "level_as"]
    return Item(
        **{name: row[name] for name in plain},
        choices=tuple(json.loads(row["choices"])),
        words=tuple(json.loads(row["words"])),
        formulas=tuple(json.loads(row["formulas"])),
        reasons=tuple(json.loads(row["reasons"])),
        findings=tuple(json.loads(row["findings"])),
        ask=json.loads(row["ask"]) if row["ask"] else None,
        sort=json.loads(row["sort"]),
        history=tuple(row["history"].split()),
        versions=tuple(versions),
        themes=tuple(tags.get("theme", ())),
        seasons=tuple(Season.parse(season) for season in tags.get("season", ())),
        question_word=tags.get("question-word", [""])[0],
        notes=tuple(tags.get("note", ())),
    )
