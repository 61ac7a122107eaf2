"""Use cases of the specialist: add, change, find, bring in and send out items."""

from __future__ import annotations

import json
import tempfile
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from bank.choose.search import find_twins, keep_twins
from bank.exchange import Row, cells_of, digest, read_cells, read_rows, write_refused, write_rows
from bank.item import FAMILIES, QUESTION_WORDS, BankError, Item, Season, clean_text, new_id
from bank.store import Store, now
from bank.store_items import (
    Query,
    add_twins,
    all_items,
    find_items,
    get_item,
    get_items,
    has_item,
    same_text,
    twins_of,
    write_item,
)

if TYPE_CHECKING:
    from bank.level.ear import Ear

EAR = "ear"  # the setting's name in the store
TWINS_AT_ONCE = 2_000  # items held in memory while their twins are looked for
MOST_VERSIONS_KEPT = 8  # digests of exchanged states that travel with an item
Progress = Callable[[int], None]


def _no_progress(count: int) -> None:
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


class Items:
    """The items of a bank."""

    def __init__(self, store: Store) -> None:
        self.store = store

    def __len__(self) -> int:
        return int(self.store.value("SELECT count(*) FROM item"))

    def __iter__(self) -> Iterator[Item]:
        return iter(all_items(self.store))

    def counts(self) -> dict[str, int]:
        """How many items there are of each kind and in each state."""
        rows = self.store.rows(
            "SELECT kind, count(*) FROM item GROUP BY 1 UNION SELECT state, count(*) FROM item GROUP BY 1"
        )
        return {row[0]: row[1] for row in rows}

    def get(self, item_id: str) -> Item:
        return get_item(self.store, item_id)

    @property
    def ear(self) -> Ear | None:
        """The scale re-anchored to the specialist's judgement; None while it is the computed one."""
        fitted = self.store.setting(EAR, {}).get("fitted")
        if not fitted:
            return None
        from bank.level.ear import Ear

        return Ear.from_dict(fitted)

    @property
    def ear_answers(self) -> list[tuple[str, str]]:
        """The specialist's judgements so far: the ids of the harder and the easier item."""
        return [
            (harder, easier) for harder, easier in self.store.setting(EAR, {}).get("answers", [])
        ]

    def hear(self, answers: Sequence[tuple[str, str]], ear: Ear | None) -> None:
        """Keep judgements and the scale they make; `relevel` then brings the items to it."""
        kept = {"answers": [list(pair) for pair in answers], "fitted": ear and ear.to_dict()}
        self.store.set_setting(EAR, kept)

    def find(self, query: Query) -> list[Item]:
        return find_items(self.store, query)

    def twins(self, item_id: str) -> list[str]:
        """The ids of the items that ask the same."""
        return twins_of(self.store, item_id)

    def add(self, **cells: Any) -> Item:
        """Add one item from the cells of a row (`kind`, `text`, `theme`, `faulty`, …).

        The item comes back levelled and checked. `BankError` where a cell is wrong or the text is
        there already; nothing is stored then.
        """
        row = read_cells(1, cells)
        if row.wrong:
            raise BankError(": ".join(filter(None, row.wrong)) if row.wrong[0] else row.wrong[1])
        item = Item(**{"id": new_id(), "kind": "question", **_given(row.fields)})
        if has_item(self.store, item.id):
            raise BankError(f"the id {item.id} is taken")
        self._refuse_same_text(item)
        from bank.assess import assess

        item = assess(item, self.ear)
        with self.store.writing():
            write_item(self.store, item)
            find_twins(self.store, [item])
        return self.get(item.id)

    def change(self, item_id: str, **fields: Any) -> Item:
        """Change fields of an item; levelled and checked again where its text changed."""
        item = self.get(item_id)
        changed = replace(item, **fields)
        if _needs_assessing(item, changed):
            from bank.assess import assess

            changed = assess(changed, self.ear)
        else:
            from bank.assess import state_of

            changed = replace(changed, state=state_of(changed))
        with self.store.writing():
            write_item(self.store, changed)
            if changed.text != item.text:
                find_twins(self.store, [changed])
        return self.get(item_id)

    def tag(
        self, item_ids: Sequence[str], add: Sequence[str] = (), remove: Sequence[str] = ()
    ) -> int:
        """Add and take away tags written `family:value`; all the items or none. Returns how many."""
        with self.store.writing():
            for item_id in item_ids:
                item = self.get(item_id)
                for text, keep in [(t, True) for t in add] + [(t, False) for t in remove]:
                    item = _tagged(item, *_family_and_value(text), keep)
                write_item(self.store, item)
        return len(item_ids)

    def retire(self, item_ids: Sequence[str], back: bool = False) -> int:
        """Retire items: they are drawn no more, and what was given stays known. `back` undoes it."""
        from bank.assess import state_of

        with self.store.writing():
            for item_id in item_ids:
                item = replace(self.get(item_id), state="ready" if back else "retired")
                write_item(self.store, replace(item, state=state_of(item)))
        return len(item_ids)

    def level_as(self, item_id: str, grade: float | None) -> Item:
        """Keep a specialist's own placement; None takes it away."""
        return self.change(item_id, level_as=grade)

    def accept(self, item_id: str, reason: str) -> Item:
        """Make an item ready in spite of what the check found."""
        return self.change(item_id, as_is=clean_text(reason, "the reason"))

    def set_aside(self, item_id: str, reason: str) -> Item:
        """Set an item aside on the spot: it goes back to draft with the reason."""
        return self.change(item_id, objection=clean_text(reason, "the reason"))

    def stale(self) -> int:
        """How many items were computed by an older method."""
        from bank.assess import method

        return int(
            self.store.value("SELECT count(*) FROM item WHERE method <> ?", (method(self.ear),))
        )

    def relevel(self, everything: bool = False, progress: Progress = _no_progress) -> int:
        """Bring levels, findings and asks up to date; a specialist's placement stays. Returns how many."""
        from bank.assess import BATCH, assess_many, method

        where, values = ("1", ()) if everything else ("method <> ?", (method(self.ear),))
        ids = [
            row[0]
            for row in self.store.rows(f"SELECT id FROM item WHERE {where} ORDER BY id", values)
        ]
        for part in range(0, len(ids), BATCH):
            old = [self.get(item_id) for item_id in ids[part : part + BATCH]]
            done = list(assess_many(old, self.ear))
            with self.store.writing():
                for item in done:
                    write_item(self.store, item, keep_changed=True)
            progress(len(done))
        with self.store.writing():
            find_twins(self.store, list(get_items(self.store, ids).values()))
        return len(ids)

    def bring_in(
        self,
        path: Path,
        kind: str = "",
        keep_good: Path | None = None,
        progress: Progress = _no_progress,
    ) -> Brought:
        """Import a CSV or JSON Lines file: rows with a known id update, others are added.

        All or nothing, unless `keep_good` names a file for the refused rows. `BankError` says how
        many rows are wrong and what is wrong with the first.
        """
        brought = Brought()
        with tempfile.TemporaryFile("w+", encoding="utf-8") as waiting:
            for item, base in self._assessed(self._rows(path, kind, brought), brought):
                waiting.write(json.dumps([cells_of(item), list(base)], ensure_ascii=False) + "\n")
                progress(1)
                if brought.refused and keep_good is None:
                    break
            if brought.refused and keep_good is None:
                first = brought.refused[0]
                column, reason = first.wrong or ("", "")
                where = f"row {first.number}" + (f", column {column}" if column else "")
                raise BankError(
                    f"{path.name}: {where}: {reason}; nothing was imported"
                    " (--keep-good imports the other rows)"
                )
            waiting.seek(0)
            with self.store.writing():
                self._put(waiting, brought)
        if brought.refused and keep_good is not None:
            write_refused(keep_good, brought.refused)
        return brought

    def send_out(self, path: Path, query: Query | None = None, plain: bool = False) -> int:
        """Export to CSV or JSON Lines; `plain` leaves out what the program wrote for itself."""
        from bank.exchange import COLUMNS, PLAIN

        items = self.find(query) if query else all_items(self.store)
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
        """Settle one conflict: take the other side's row, or keep what stands here."""
        row = self.store.row("SELECT * FROM conflict WHERE id = ?", (number,))
        if row is None:
            raise BankError(f"there is no conflict {number}")
        with self.store.writing():
            if take_theirs:
                fields = _given(read_cells(1, json.loads(row["theirs"])).fields)
                fields.pop("history", None)
                self.change(row["item"], **fields)
            self.store.execute("DELETE FROM conflict WHERE id = ?", (number,))
        return self.get(row["item"])

    def _rows(
        self, path: Path, kind: str, brought: Brought
    ) -> Iterator[tuple[Item, Item | None, Row]]:
        """The items that the rows stand for, each with the bank's own where there is one."""
        met: dict[str, int] = {}
        for row in read_rows(path):
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
        from bank.item import fold_text

        fields = _given(row.fields)
        item_id = fields.get("id") or new_id()
        old = self.get(item_id) if has_item(self.store, item_id) else None
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
        self._refuse_same_text(item)
        return item, old

    def _assessed(
        self, rows: Iterable[tuple[Item, Item | None, Row]], brought: Brought
    ) -> Iterator[tuple[Item, tuple[str, ...]]]:
        """Items with what is computed: carried along where the method is the same, else made here."""
        from bank.assess import BATCH, method, state_of, try_assess_many

        current = method(self.ear)
        batch: list[tuple[Item, Item | None, Row, bool]] = []

        def flush() -> Iterator[tuple[Item, tuple[str, ...]]]:
            slow = [item for item, _, _, fast in batch if not fast]
            done = iter(list(try_assess_many(slow, self.ear)))
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
            fast = carried or (old is not None and not _needs_assessing(old, item, current))
            batch.append((item, old, row, fast))
            if len(batch) >= BATCH:
                yield from flush()
        yield from flush()

    def _put(self, waiting: Iterable[str], brought: Brought) -> None:
        """Write what waits, in the open transaction; conflicts go to their own table."""
        was_empty = len(self) == 0
        fresh: list[str] = []
        travelled: list[tuple[str, str]] | None = []
        for line in waiting:
            cells, base = json.loads(line)
            row = read_cells(1, cells)
            item = _with_computed(Item(**_given(row.fields)), row.fields.get("computed") or {})
            theirs = digest(item)
            old = self.get(item.id) if has_item(self.store, item.id) else None
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

    def _refuse_same_text(self, item: Item) -> None:
        other = same_text(self.store, item.text)
        if other not in (None, item.id):
            raise BankError(f"the bank has this text already: item {other}")


def _given(fields: Any) -> dict[str, Any]:
    """The fields that a row gives: empty ones of a new item fall back to their defaults."""
    kept = {name: value for name, value in fields.items() if name != "computed"}
    return {
        name: value
        for name, value in kept.items()
        if value != "" or name not in ("id", "kind", "state")
    }


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


def _needs_assessing(old: Item, new: Item, current: str | None = None) -> bool:
    same = (old.kind, old.text) == (new.kind, new.text) and old.versions == new.versions
    return not same or (current is not None and old.method != current)


def _with_digest(item: Item) -> tuple[str, ...]:
    return tuple(dict.fromkeys([*item.history, digest(item)]))[-MOST_VERSIONS_KEPT:]


def _family_and_value(text: str) -> tuple[str, str]:
    family, colon, value = text.partition(":")
    family = family.strip().lower()
    if not colon or family not in FAMILIES:
        raise BankError(
            f"{text[:40]!r} is no tag; write FAMILY:VALUE, the families are {', '.join(FAMILIES)}"
        )
    if family == "skill":
        raise BankError("the skills of a sentence follow from its faulty versions; change those")
    return family, clean_text(value, "the tag")


def _tagged(item: Item, family: str, value: str, keep: bool) -> Item:
    if family == "question-word":
        if value not in QUESTION_WORDS:
            raise BankError(
                f"{value!r} is no question word; it is one of {', '.join(QUESTION_WORDS)}"
            )
        return replace(item, question_word=value if keep else "")
    name = {"theme": "themes", "season": "seasons", "note": "notes"}[family]
    new: Any = Season.parse(value) if family == "season" else value
    if family == "theme":
        new = value.lower()
    held = [one for one in getattr(item, name) if one != new]
    changed: dict[str, Any] = {name: tuple([*held, new] if keep else held)}
    return replace(item, **changed)
