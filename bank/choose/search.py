"""Finding the twins of items: by what is asked, through an index of keys, not by all pairs."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from bank.item import Item
from bank.store import Store
from bank.store_items import add_twins, forget_twins, set_ask_keys, sharing_keys

MOST_KEPT = 50_000  # frames held in memory while many items come in
# `same_ask` answers for two texts that someone holds side by side. In a bank nearly all pairs are no
# twins, and each pair that is kept takes items out of the draw: it has to be likelier than not.
SURE_ENOUGH = 0.85


def find_twins(store: Store, items: Sequence[Item]) -> None:
    """Keep which items of the bank ask the same as `items`, inside a write; each pair is compared once."""
    from bank.choose.ask.keys import keys_of
    from bank.choose.twins import METHOD, how_surely

    asking = [item for item in items if item.ask]
    for item in items:
        forget_twins(store, item.id)
        set_ask_keys(store, item.id, item.ask["keys"] if item.ask else ())
    later = {item.id for item in asking}
    frames: dict[str, Any] = {}
    for item in asking:
        later.discard(item.id)
        mine = item.ask["frame"]
        keys = item.ask.get("keys") or keys_of(mine)
        found = []
        for other in sharing_keys(store, keys, item.id):
            if other in later:
                continue
            if other not in frames:
                if len(frames) >= MOST_KEPT:
                    frames.clear()
                frames[other] = _frame(store, other)
            frame = frames[other]
            if frame and frame.get("method") == METHOD and how_surely(mine, frame) >= SURE_ENOUGH:
                found.append((item.id, other))
        add_twins(store, found)


def keep_twins(store: Store, items: Sequence[Item]) -> None:
    """Keep the keys of items whose twins travelled with them, so that later items find them."""
    for item in items:
        set_ask_keys(store, item.id, item.ask["keys"] if item.ask else ())


def _frame(store: Store, item_id: str) -> Any:
    ask = store.value("SELECT ask FROM item WHERE id = ?", (item_id,))
    return json.loads(ask)["frame"] if ask else None
