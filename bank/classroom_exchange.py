"""Exchange of items with a spreadsheet or another bank: bring in, send out, settle conflicts."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from bank.choose.search import find_twins, keep_twins
from bank.classroom_items import given_fields, needs_assessing
from bank.exchange import Row, cells_of, digest, read_cells, read_rows, write_refused, write_rows
from bank.item import BankError, Item, fold_text, new_id
from bank.store import now
from bank.store_items import (
    Query,
    add_twins,
    all_items,
    get_items,
    has_item,
    write_item,
)

if TYPE_CHECKING:
    from bank.classroom_items import Items

TWINS_AT_ONCE = 2_000  # items held in memory while their twins are looked for
MOST_VERSIONS_KEPT = 8  # digests of exchanged states that travel with an item
Progress = Callable[[int], None]


def no_progress(count: int) -> None:
    return None


@dataclass(slots=True)
class Brought:
    """What an import did. `conflicts` are ids that both sides changed; `refused` are rows."""

    added: int = 0
    updated: int = 0
    unchanged: int = 0
    drafts: int = 0
    conflicts: list[str] = field(default_factory=list)
    refused: list[Row] = field(default_factory=list)


class Exchange:
    """What comes into a bank and goes out of it."""

    def __init__(self, items: Items) -> None:
        self.items = items
        self.store = items.store

    def bring_in(
        self,
        path: Path,
        kind: str = "",
        keep_good: Path | None = None,
        progress: Progress = no_progress,
        skip_unknown: bool = False,
    ) -> Brought:
        """Import a CSV or JSON Lines file: rows with a known id update, others are added.

        All or nothing, unless `keep_good` names a file for the refused rows. `BankError` says how many
        rows are wrong and what is wrong with the first, or that there is none. `skip_unknown` leaves
        out the columns of a CSV that the bank has no place for.
        """
        brought, count = Brought(), 0
        with tempfile.TemporaryFile("w+", encoding="utf-8") as waiting:
            rows = self._rows(read_rows(path, skip_unknown), kind, brought)
            for item, base in self._assessed(rows, brought):
                waiting.write(json.dumps([cells_of(item), list(base)], ensure_ascii=False) + "\n")
                count += 1
                progress(1)
            if brought.refused and keep_good is None:
                raise BankError(f"{path.name}: {_said_of(brought.refused)}")
            if not (count or brought.refused):
                raise BankError(f"{path.name}: no row has a text; nothing was imported")
            waiting.seek(0)
            with self.store.writing():
                self._put(waiting, brought)
        if brought.refused and keep_good is not None:
            write_refused(keep_good, brought.refused)
        return brought

    def send_out(self, path: Path, query: Query | None = None, plain: bool = False) -> int:
        """Export to CSV or JSON Lines; `plain` leaves out what the program wrote for itself."""
        from bank.exchange import COLUMNS, PLAIN

        items = self.items.find(query) if query else all_items(self.store)
        seen: list[tuple[str, str]] = []

        def noted() -> Iterator[Item]:
            for item in items:
                history = _with_digest(item)
                seen.append((" ".join(history), item.id))
                yield replace(item, history=history)

        count = write_rows(path, noted(), PLAIN if plain else tuple(COLUMNS))
        if not plain and self.store.writable:
            with self.store.writing():
                self.store.execute_many("UPDATE item SET history = ? WHERE id = ?", seen)
        return count

    def conflicts(self) -> list[dict[str, Any]]:
        """Rows of the other side that wait, with the item as it stands here."""
        return [
            {"id": row["item"], "theirs": json.loads(row["theirs"]), "number": row["id"]}
            for row in self.store.rows("SELECT * FROM conflict ORDER BY id")
        ]

    def settle(self, number: int, take_theirs: bool) -> Item:
        """Settle one conflict: take the other side's row, or keep what stands here.

        What stands then comes after both, so that it is taken over there without a second conflict.
        """
        row = self.store.row("SELECT * FROM conflict WHERE id = ?", (number,))
        if row is None:
            raise BankError(f"there is no conflict {number}")
        fields = given_fields(read_cells(1, json.loads(row["theirs"])).fields)
        seen = fields.pop("history", ())
        with self.store.writing():
            ours = self.items.get(row["item"])
            if take_theirs:
                self.items.change(row["item"], **fields)
            history = dict.fromkeys([*ours.history, *seen, digest(ours), digest(Item(**fields))])
            self.store.execute(
                "UPDATE item SET history = ? WHERE id = ?",
                (" ".join([*history][-MOST_VERSIONS_KEPT:]), row["item"]),
            )
            self.store.execute("DELETE FROM conflict WHERE id = ?", (number,))
        return self.items.get(row["item"])

    def _rows(
        self, came: Iterable[Row], kind: str, brought: Brought
    ) -> Iterator[tuple[Item, Item | None, Row]]:
        """The items that the rows stand for, each with the bank's own where there is one."""
        met: dict[str, int] = {}
        for row in came:
            problem = row.wrong
            if problem is None:
                try:
                    item, old = self._from_row(row, kind, met)
                except BankError as error:
                    problem = ("text", str(error))
                else:
                    yield item, old, row
                    continue
            brought.refused.append(replace(row, wrong=problem))

    def _from_row(self, row: Row, kind: str, met: dict[str, int]) -> tuple[Item, Item | None]:
        fields = given_fields(row.fields)
        item_id = fields.get("id") or new_id()
        old = self.items.get(item_id) if has_item(self.store, item_id) else None
        for key in (f"text {fold_text(fields['text'])}", f"id {item_id}"):
            if key in met:
                what = key.split()[0]
                raise BankError(f"the same {what} stands in row {met[key]}")
            met[key] = row.number
        if old:
            if "versions" in fields and [v.faulty for v in old.versions] == [
                v.faulty for v in fields["versions"]
            ]:
                fields["versions"] = old.versions
            item = replace(
                old, **{name: value for name, value in fields.items() if name != "history"}
            )
            item = replace(item, history=tuple(row.fields.get("history", ())))
        else:
            if not (fields.get("kind") or kind):
                raise BankError("there is no kind; add a column kind, or say --kind")
            item = Item(**{"kind": kind, **fields, "id": item_id})
        self.items.refuse_same_text(item)
        return item, old

    def _assessed(
        self, rows: Iterable[tuple[Item, Item | None, Row]], brought: Brought
    ) -> Iterator[tuple[Item, tuple[str, ...]]]:
        """Items with what is computed: carried along where the method is the same, else made here."""
        from bank.assess import BATCH, method, state_of, try_assess_many

        current = method(self.items.ear)
        batch: list[tuple[Item, Item | None, Row, bool]] = []

        def flush() -> Iterator[tuple[Item, tuple[str, ...]]]:
            slow = [item for item, _, _, fast in batch if not fast]
            done = iter(list(try_assess_many(slow, self.items.ear)))
            for item, _, row, fast in batch:
                problem = None
                if not fast:
                    item, problem = next(done)
                if problem:
                    brought.refused.append(replace(row, wrong=("text", str(problem))))
                    continue
                yield replace(item, state=state_of(item)), tuple(row.fields.get("history", ()))
            batch.clear()

        for item, old, row in rows:
            computed = row.fields.get("computed")
            carried = bool(computed) and item.method == current and item.grade is not None
            if computed and carried:
                item = _with_computed(item, computed)
            fast = carried or (old is not None and not needs_assessing(old, item, current))
            batch.append((item, old, row, fast))
            if len(batch) >= BATCH:
                yield from flush()
        yield from flush()

    def _put(self, waiting: Iterable[str], brought: Brought) -> None:
        """Write what waits, in the open transaction; conflicts go to their own table."""
        was_empty = len(self.items) == 0
        fresh: list[str] = []
        travelled: list[tuple[str, str]] | None = []
        for line in waiting:
            cells, base = json.loads(line)
            row = read_cells(1, cells)
            item = _with_computed(
                Item(**given_fields(row.fields)), row.fields.get("computed") or {}
            )
            theirs = digest(item)
            old = self.items.get(item.id) if has_item(self.store, item.id) else None
            if old is None:
                brought.added += 1
            else:
                ours = digest(old)
                if ours == theirs:
                    brought.unchanged += 1
                    continue
                if base and theirs in old.history:
                    brought.unchanged += 1  # they have an older state of what stands here
                    continue
                if base and ours not in base:
                    self._conflict(item, old, brought)
                    continue
                brought.updated += 1
            history = tuple(dict.fromkeys([*(old.history if old else ()), *base, theirs]))
            write_item(self.store, replace(item, history=history[-MOST_VERSIONS_KEPT:]))
            brought.drafts += item.state == "draft"
            fresh.append(item.id)
            computed = row.fields.get("computed") or {}
            if travelled is not None and (item.ask is None or "twins" in computed):
                travelled += [(item.id, other) for other in computed.get("twins", ())]
            else:
                travelled = None
        self._settle_twins(fresh, travelled if was_empty else None)

    def _settle_twins(self, fresh: list[str], travelled: list[tuple[str, str]] | None) -> None:
        """Pairs that travelled are kept where the bank had nothing else; all others are looked for."""
        known = set(fresh)
        for part in range(0, len(fresh), TWINS_AT_ONCE):
            items = list(get_items(self.store, fresh[part : part + TWINS_AT_ONCE]).values())
            if travelled is None:
                find_twins(self.store, items)
            else:
                keep_twins(self.store, items)
        if travelled:
            add_twins(self.store, [pair for pair in travelled if pair[1] in known])

    def _conflict(self, item: Item, old: Item, brought: Brought) -> None:
        theirs = json.dumps(cells_of(item), ensure_ascii=False)
        known = self.store.row(
            "SELECT 1 FROM conflict WHERE item = ? AND theirs = ?", (old.id, theirs)
        )
        if not known:
            self.store.execute(
                "INSERT INTO conflict (item, theirs, made) VALUES (?, ?, ?)",
                (old.id, theirs, now()),
            )
        brought.conflicts.append(old.id)


def _said_of(refused: Sequence[Row]) -> str:
    """How many rows are wrong, and what is wrong with the first of them."""
    first = min(refused, key=lambda row: row.number)
    column, reason = first.wrong or ("", "")
    many = f"{len(refused)} rows cannot be taken; the first: " if len(refused) > 1 else ""
    where = f"row {first.number}" + (f", column {column}" if column else "")
    return f"{many}{where}: {reason}; nothing was imported (--keep-good imports the other rows)"


def _with_computed(item: Item, computed: dict[str, Any]) -> Item:
    fixes = computed.get("fixes", [])
    versions = tuple(
        replace(version, fixes=tuple(fixes[position])) if position < len(fixes) else version
        for position, version in enumerate(item.versions)
    )
    return replace(
        item,
        versions=versions,
        formulas=tuple(computed.get("formulas", ())),
        reasons=tuple(computed.get("reasons", ())),
        findings=tuple(computed.get("findings", ())),
        ask=computed.get("ask"),
    )


def _with_digest(item: Item) -> tuple[str, ...]:
    return tuple(dict.fromkeys([*item.history, digest(item)]))[-MOST_VERSIONS_KEPT:]
