"""Marks in the store: writing them so that nothing is lost, and reading them back.

Marking again takes the place of the mark before, which stays with `replaced = 1`.
"""

from __future__ import annotations

import datetime as dt
import sqlite3
from collections.abc import Sequence

from bank.progress.marks import Mark
from bank.store import Store, now


def write_marks(store: Store, learner: int, marks: Sequence[Mark]) -> bool:
    """Write marks in place of those of the same slots; False where they say nothing new."""
    days = {mark.day for mark in marks}
    slots = {(mark.day, *mark.slot) for mark in marks}
    with store.writing():
        held = {
            mark
            for day in days
            for mark in day_marks(store, day, learner)
            if (mark.day, *mark.slot) in slots
        }
        if held == set(marks):
            return False
        for day, kind, position in sorted(slots):
            store.execute(
                "UPDATE mark SET replaced = 1 WHERE learner = ? AND day = ? AND kind = ?"
                " AND position = ? AND replaced = 0",
                (learner, day.isoformat(), kind, position),
            )
        moment = now()
        store.execute_many(
            "INSERT INTO mark (learner, day, kind, position, part, item, skill, outcome, help,"
            " amount, attempt, made) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            [
                (
                    learner,
                    mark.day.isoformat(),
                    mark.kind,
                    mark.position,
                    mark.part,
                    mark.item,
                    mark.skill,
                    mark.outcome,
                    mark.help,
                    mark.amount,
                    mark.attempt,
                    moment,
                )
                for mark in marks
            ],
        )
    return True


def day_marks(store: Store, day: dt.date, learner: int) -> list[Mark]:
    """A learner's marks of one day that stand."""
    return _read(
        store,
        "day = ? AND learner = ? AND replaced = 0",
        (day.isoformat(), learner),
    )


def learner_marks(store: Store, learner: int, since: dt.date | None = None) -> list[Mark]:
    """All marks of a learner that stand, by day."""
    first = since.isoformat() if since else ""
    return _read(store, "learner = ? AND day >= ? AND replaced = 0", (learner, first))


def _read(store: Store, where: str, values: Sequence[object]) -> list[Mark]:
    return [
        _mark(row)
        for row in store.rows(f"SELECT * FROM mark WHERE {where} ORDER BY day, id", values)
    ]


def _mark(row: sqlite3.Row) -> Mark:
    return Mark(
        dt.date.fromisoformat(row["day"]),
        row["kind"],
        row["position"],
        row["part"],
        row["item"],
        row["skill"],
        row["outcome"],
        row["help"],
        row["amount"],
        row["attempt"],
    )


def last_set_day(store: Store, until: dt.date) -> dt.date | None:
    """The last day up to `until` that has a set, given back ones aside."""
    day = store.value(
        "SELECT max(day) FROM day_set WHERE day <= ? AND state <> 'unused'", (until.isoformat(),)
    )
    return dt.date.fromisoformat(day) if day else None


def note_written(store: Store, path: str, what: str, learner: int | None = None) -> None:
    """Note that the tool wrote this file or folder, which may hold a learner's code."""
    with store.writing():
        store.execute(
            "INSERT INTO written VALUES (?, ?, ?, ?) ON CONFLICT (path) DO UPDATE SET"
            " what = excluded.what, learner = excluded.learner, made = excluded.made",
            (path, what, learner, now()),
        )
