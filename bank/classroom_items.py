"""Use cases of the specialist: add, change, find, bring in and send out items."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from bank.choose.search import find_twins
from bank.exchange import read_cells
from bank.item import FAMILIES, QUESTION_WORDS, BankError, Item, Season, Version, clean_text, new_id
from bank.store import Store
from bank.store_items import (
    Query,
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
    from bank.classroom_exchange import Brought, Exchange
    from bank.level.ear import Ear

EAR = "ear"  # the setting's name in the store
TWINS_AT_ONCE = 2_000  # items held in memory while their twins are looked for
MOST_VERSIONS_KEPT = 8  # digests of exchanged states that travel with an item
Progress = Callable[[int], None]


def no_progress(count: int) -> None:
    return None


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

    def tags(self) -> list[tuple[str, str, int]]:
        """Each tag that is in use, as family, value and how many items have it; retired ones aside."""
        rows = self.store.rows(
            "SELECT family, value, count(*) FROM tag JOIN item ON item.id = tag.item"
            " WHERE item.state != 'retired' GROUP BY 1, 2 ORDER BY 1, 3 DESC, 2"
        )
        return [(row[0], row[1], row[2]) for row in rows]

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
        item = Item(**{"id": new_id(), "kind": "question", **given_fields(row.fields)})
        if has_item(self.store, item.id):
            raise BankError(f"the id {item.id} is taken")
        self.refuse_same_text(item)
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
        if changed.text != item.text and "versions" not in fields:
            # The fixes of another text are found anew.
            bare = tuple(Version(version.faulty) for version in changed.versions)
            changed = replace(changed, versions=bare)
        if needs_assessing(item, changed):
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
        """Add and take away tags written `family:value`; all the items or none.

        Returns how many items it changed.
        """
        changed = 0
        with self.store.writing():
            for item_id in dict.fromkeys(item_ids):
                was = item = self.get(item_id)
                for text, keep in [(t, True) for t in add] + [(t, False) for t in remove]:
                    item = _tagged(item, *_family_and_value(text), keep)
                if item != was:
                    write_item(self.store, item)
                    changed += 1
        return changed

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

    def relevel(self, everything: bool = False, progress: Progress = no_progress) -> int:
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
        progress: Progress = no_progress,
        skip_unknown: bool = False,
    ) -> Brought:
        """Import a CSV or JSON Lines file; see `Exchange.bring_in`."""
        return self.exchange.bring_in(path, kind, keep_good, progress, skip_unknown)

    def send_out(self, path: Path, query: Query | None = None, plain: bool = False) -> int:
        """Export to CSV or JSON Lines; see `Exchange.send_out`."""
        return self.exchange.send_out(path, query, plain)

    def conflicts(self) -> list[dict[str, Any]]:
        """Rows of the other side that wait, with the item as it stands here."""
        return self.exchange.conflicts()

    def settle(self, number: int, take_theirs: bool) -> Item:
        """Settle one conflict: take the other side's row, or keep what stands here."""
        return self.exchange.settle(number, take_theirs)

    @property
    def exchange(self) -> Exchange:
        from bank.classroom_exchange import Exchange

        return Exchange(self)

    def refuse_same_text(self, item: Item) -> None:
        other = same_text(self.store, item.text)
        if other not in (None, item.id):
            raise BankError(f"the bank has this text already: item {other}")


def given_fields(fields: Any) -> dict[str, Any]:
    """The fields that a row gives: empty ones of a new item fall back to their defaults."""
    kept = {name: value for name, value in fields.items() if name != "computed"}
    return {
        name: value
        for name, value in kept.items()
        if value != "" or name not in ("id", "kind", "state")
    }


def needs_assessing(old: Item, new: Item, current: str | None = None) -> bool:
    same = (old.kind, old.text) == (new.kind, new.text) and old.versions == new.versions
    return not same or (current is not None and old.method != current)


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
