"""What the morning asks of the marks: the last days of each learner, and when skills came up.

Small and by itself, since `today` reads it before the bell.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable

from bank.store import Store

# Two days below 80 % alone (common practice); both are settings.
ALONE_SHARE, STUCK_DAYS = 0.8, 2


def recent_days(store: Store, until: dt.date, count: int) -> dict[int, list[tuple[str, int, int]]]:
    """For each learner the last `count` days with marks up to `until`: (day, alone, of), in order."""
    found: dict[int, list[tuple[str, int, int]]] = {}
    numbers = [row[0] for row in store.rows("SELECT number FROM learner")]
    for number in numbers:
        rows = store.rows(
            "SELECT day, sum(outcome = 'done' AND help = ''), count(*) FROM mark"
            " WHERE learner = ? AND day <= ? AND replaced = 0 AND (part = '' OR kind = 'step')"
            " AND outcome <> 'not-asked' GROUP BY day ORDER BY day DESC LIMIT ?",
            (number, until.isoformat(), count),
        )
        if rows:
            found[number] = [(row[0], row[1], row[2]) for row in reversed(rows)]
    return found


def skill_days(
    store: Store, learner: int, skills: Iterable[str], until: dt.date
) -> dict[str, list[tuple[dt.date, bool]]]:
    """For each of these skills its data days before `until`: whether all of the day was fixed alone."""
    found: dict[str, list[tuple[dt.date, bool]]] = {}
    for skill in skills:
        rows = store.rows(
            "SELECT day, min(outcome = 'fixed' AND help = '') FROM mark INDEXED BY mark_skill"
            " WHERE learner = ? AND skill = ? AND skill <> '' AND day < ? AND replaced = 0"
            " AND outcome IN ('fixed', 'missed') GROUP BY day ORDER BY day",
            (learner, skill, until.isoformat()),
        )
        found[skill] = [(dt.date.fromisoformat(row[0]), bool(row[1])) for row in rows]
    return found


def stuck(store: Store, today: dt.date) -> list[tuple[str, str]]:
    """The codes of learners whose last days with marks all lie below the share, and those days.

    Days after `today` do not count.
    """
    said = store.setting("progress", {})
    share, count = said.get("alone_share", ALONE_SHARE), said.get("stuck_days", STUCK_DAYS)
    found = []
    recent = recent_days(store, today, count)
    for row in store.rows("SELECT number, code FROM learner ORDER BY code COLLATE NOCASE"):
        days = recent.get(row["number"], [])
        if len(days) == count and all(alone < share * of for _, alone, of in days):
            words = " and ".join(f"{alone} of {of}" for _, alone, of in days)
            found.append((row["code"], f"{words} alone on the last {count} days with marks"))
    return found
