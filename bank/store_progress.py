"""What progress asks of the store: how items went, and what changed for a learner."""

from __future__ import annotations

import datetime as dt

from bank.progress.chart import Phase
from bank.progress.evidence import Given
from bank.store import Store


def given_marks(store: Store) -> list[Given]:
    """Each time that a learner's work on an item was marked."""
    rows = store.rows(
        "SELECT whole.item, whole.learner, whole.kind, coalesce(item.level_as, item.grade, 0) AS grade,"
        " whole.outcome, whole.help,"
        " (SELECT count(*) FROM mark AS part WHERE part.learner = whole.learner"
        "  AND part.day = whole.day AND part.kind = whole.kind AND part.position = whole.position"
        "  AND part.replaced = 0 AND part.outcome IN ('fixed', 'missed')) AS fixes,"
        " (SELECT count(*) FROM mark AS part WHERE part.learner = whole.learner"
        "  AND part.day = whole.day AND part.kind = whole.kind AND part.position = whole.position"
        "  AND part.replaced = 0 AND part.outcome = 'missed') AS missed"
        " FROM mark AS whole JOIN item ON item.id = whole.item"
        " WHERE whole.part = '' AND whole.replaced = 0 AND whole.outcome <> 'not-asked'"
        " ORDER BY whole.day, whole.id"
    )
    return [
        Given(
            row["item"],
            row["learner"],
            row["kind"],
            row["grade"],
            row["outcome"] == "done",
            row["outcome"] == "done" and row["help"] == "",
            row["fixes"],
            row["missed"],
        )
        for row in rows
    ]


def phases(store: Store, learner: int) -> list[Phase]:
    rows = store.rows("SELECT day, words FROM phase WHERE learner = ? ORDER BY day, id", (learner,))
    return [Phase(dt.date.fromisoformat(row["day"]), row["words"]) for row in rows]


def add_phase(store: Store, learner: int, phase: Phase) -> None:
    """Note that something changed; a second one of a day joins the first on the charts."""
    with store.writing():
        store.execute(
            "INSERT INTO phase (learner, day, words) VALUES (?, ?, ?)",
            (learner, phase.day.isoformat(), phase.words[:80]),
        )
