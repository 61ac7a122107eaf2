"""Items and banks for the tests, filled straight through the store, without a parse."""

from __future__ import annotations

import datetime as dt
import json
import os
from dataclasses import dataclass
from typing import Any

from bank.classroom import Bank
from bank.item import Item, Season, Version
from bank.store_items import write_item


@dataclass(frozen=True)
class Ran:
    """What a command did: its exit code, what it printed, and its error line."""

    code: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        return json.loads(self.out)


# Benchmarks run at full size by hand (BENCH=full), and small as a smoke run.
FULL = os.environ.get("BENCH") == "full"
MONDAY = dt.date(2026, 9, 14)
FIXES = [
    {
        "skill": "capital-first",
        "wrong": "the",
        "right": "The",
        "right_start": 0,
        "right_end": 3,
        "explanation": "A sentence starts with a capital letter.",
    },
    {"skill": "end-mark", "wrong": "", "right": ".", "right_start": 12, "right_end": 13},
    {"skill": "tense", "wrong": "runned", "right": "ran", "right_start": 8, "right_end": 11},
]


def make_item(number: int, kind: str = "question", grade: float = 1.5, **fields: Any) -> Item:
    """An item that is ready, as if it had been levelled and checked."""
    values: dict[str, Any] = {
        "id": f"{kind[0]}{number:05}",
        "kind": kind,
        "text": f"{kind} number {number}",
        "state": "ready",
        "grade": grade,
        "low": max(0.0, grade - 1),
        "high": min(12.0, grade + 1),
        "question_word": "what" if kind == "question" else "",
        "themes": (f"theme{number % 7}",),
        "method": "test",
    }
    if kind == "sentence":
        values["versions"] = tuple(
            Version(f"faulty {number} with {count}", tuple(FIXES[:count])) for count in (1, 2, 3)
        )
    values.update(fields)
    values["seasons"] = tuple(
        Season.parse(one) if isinstance(one, str) else one for one in values.get("seasons", ())
    )
    return Item(**values)


def put(bank: Bank, *items: Item) -> None:
    with bank.store.writing():
        for item in items:
            write_item(bank.store, item)
