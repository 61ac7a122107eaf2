"""Learners and their sets in the store, and the walk along the shelf that the draw asks for."""

from __future__ import annotations

import datetime as dt
import json
import sqlite3
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from bank.item import BankError, month_day
from bank.learner import Away, Band, Learner
from bank.store import Store
from bank.store_items import tenth_of

LAST_NUMBER = "last-number"  # the setting with the highest number that was ever forgotten


def learners(store: Store) -> list[Learner]:
    """All learners, in the order of their codes."""
    rows = store.rows("SELECT * FROM learner ORDER BY code COLLATE NOCASE")
    avoid = _grouped(store.rows("SELECT learner, theme FROM learner_avoid ORDER BY 1, 2"))
    skills = _grouped(store.rows("SELECT learner, skill, state FROM learner_skill ORDER BY 1, 2"))
    away = _grouped(store.rows("SELECT learner, first, last FROM learner_away ORDER BY 1, 2"))
    stays = _stays(store)
    return [
        Learner(
            number=row["number"],
            code=row["code"],
            sign=row["sign"],
            taught=row["taught"],
            band=Band(row["band_low"], row["band_high"]),
            questions=row["questions"],
            errors=row["errors"],
            avoid=tuple(found[1] for found in avoid.get(row["number"], ())),
            group=row["group"],
            mode=row["mode"],
            away=tuple(
                Away(dt.date.fromisoformat(found[1]), dt.date.fromisoformat(found[2]))
                for found in away.get(row["number"], ())
            ),
            skills={found[1]: found[2] for found in skills.get(row["number"], ())},
            support=json.loads(row["support"]),
            first=stays.get(row["number"], (None, None))[0],
            last=stays.get(row["number"], (None, None))[1],
        )
        for row in rows
    ]


def _stays(store: Store) -> dict[int, tuple[dt.date | None, dt.date | None]]:
    """The first and the last day in the class, by number, where the teacher said them.

    A first day that the turns noted by themselves (`said` is missing) is no day of joining.
    """
    members: dict[str, dict[str, Any]] = store.setting("turns", {}).get("members", {})
    return {
        int(number): (_day(stay.get("first")) if stay.get("said") else None, _day(stay.get("last")))
        for number, stay in members.items()
    }


def _day(text: str | None) -> dt.date | None:
    return dt.date.fromisoformat(text) if text else None


def _grouped(rows: Iterable[sqlite3.Row]) -> dict[int, list[sqlite3.Row]]:
    grouped: dict[int, list[sqlite3.Row]] = {}
    for row in rows:
        grouped.setdefault(row[0], []).append(row)
    return grouped


def write_learner(store: Store, learner: Learner) -> int:
    """Add a learner (`number` 0) or change one; returns the number. A taken code is refused."""
    with store.writing():
        taken = store.value("SELECT number FROM learner WHERE code = ?", (learner.code,))
        if taken not in (None, learner.number):
            raise BankError(f"the code {learner.code} is taken; choose another")
        values = (
            learner.code,
            learner.sign,
            learner.taught,
            learner.band.low,
            learner.band.high,
            learner.questions,
            learner.errors,
            learner.group,
            learner.mode,
            json.dumps(learner.support, sort_keys=True),
        )
        names = 'code, sign, taught, band_low, band_high, questions, errors, "group", mode, support'
        if learner.number:
            pairs = ", ".join(f"{name.strip()} = ?" for name in names.split(","))
            store.execute(f"UPDATE learner SET {pairs} WHERE number = ?", (*values, learner.number))
            number = learner.number
        else:
            # The number of a learner who was forgotten is never given again: settings may hold it.
            last = store.value("SELECT coalesce(max(number), 0) FROM learner")
            number = max(last, store.setting(LAST_NUMBER, 0)) + 1
            store.execute(
                f"INSERT INTO learner (number, {names}) VALUES ({', '.join('?' * 11)})",
                (number, *values),
            )
        for table in ("learner_avoid", "learner_skill", "learner_away"):
            store.execute(f"DELETE FROM {table} WHERE learner = ?", (number,))
        store.execute_many(
            "INSERT INTO learner_avoid VALUES (?, ?)", [(number, theme) for theme in learner.avoid]
        )
        store.execute_many(
            "INSERT INTO learner_skill VALUES (?, ?, ?)",
            [(number, skill, state) for skill, state in learner.skills.items()],
        )
        store.execute_many(
            "INSERT OR REPLACE INTO learner_away VALUES (?, ?, ?)",
            [(number, away.first.isoformat(), away.last.isoformat()) for away in learner.away],
        )
    return number


def remove_learner(store: Store, number: int) -> None:
    with store.writing():
        store.execute("DELETE FROM learner WHERE number = ?", (number,))


@dataclass(slots=True, eq=False)
class Given:
    """One item of a set: which, in which faulty version, from which rung of the ladder, and why."""

    kind: str
    position: int
    item: str
    rung: int
    version: int | None = None
    keep: tuple[int, ...] | None = None
    why: dict[str, Any] = field(default_factory=dict)
    printed: dict[str, Any] | None = None


@dataclass(slots=True, eq=False)
class DaySet:
    """What one learner is given on one day, with the lines that say what is less than wished."""

    learner: int
    day: dt.date
    state: str
    short: bool
    notes: tuple[str, ...]
    given: tuple[Given, ...]


def day_sets(store: Store, day: dt.date) -> dict[int, DaySet]:
    """The sets of one day by learner."""
    return {found.learner: found for found in _read_sets(store, "day = ?", (day.isoformat(),))}


def learner_sets(store: Store, learner: int) -> list[DaySet]:
    """All sets of one learner, by day."""
    return _read_sets(store, "learner = ?", (learner,))


def _read_sets(store: Store, where: str, values: Sequence[Any]) -> list[DaySet]:
    parts: dict[tuple[int, str], list[Given]] = {}
    for row in store.rows(f"SELECT * FROM given WHERE {where} ORDER BY kind, position", values):
        parts.setdefault((row["learner"], row["day"]), []).append(_given(row))
    return [
        DaySet(
            row["learner"],
            dt.date.fromisoformat(row["day"]),
            row["state"],
            bool(row["short"]),
            tuple(json.loads(row["notes"])),
            tuple(parts.get((row["learner"], row["day"]), ())),
        )
        for row in store.rows(f"SELECT * FROM day_set WHERE {where} ORDER BY day, learner", values)
    ]


def _given(row: sqlite3.Row) -> Given:
    return Given(
        row["kind"],
        row["position"],
        row["item"],
        row["rung"],
        row["version"],
        tuple(json.loads(row["keep"])) if row["keep"] else None,
        json.loads(row["why"]),
        json.loads(row["printed"]) if row["printed"] else None,
    )


def write_set(store: Store, day_set: DaySet) -> None:
    """Write one set whole, in place of what the learner had on that day."""
    key = (day_set.learner, day_set.day.isoformat())
    counts = int(day_set.state != "unused")
    with store.writing():
        store.execute("DELETE FROM given WHERE learner = ? AND day = ?", key)
        store.execute(
            "INSERT INTO day_set VALUES (?, ?, ?, ?, ?) ON CONFLICT (learner, day) DO UPDATE SET"
            " state = excluded.state, short = excluded.short, notes = excluded.notes",
            (*key, day_set.state, int(day_set.short), json.dumps(day_set.notes)),
        )
        store.execute_many(
            "INSERT INTO given (learner, day, kind, position, item, version, keep, rung, why, printed,"
            " counts) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            [
                (
                    *key,
                    part.kind,
                    part.position,
                    part.item,
                    part.version,
                    None if part.keep is None else json.dumps(part.keep),
                    part.rung,
                    json.dumps(part.why, ensure_ascii=False),
                    None if part.printed is None else json.dumps(part.printed, ensure_ascii=False),
                    counts,
                )
                for part in day_set.given
            ],
        )


def remove_set(store: Store, learner: int, day: dt.date) -> None:
    with store.writing():
        store.execute(
            "DELETE FROM day_set WHERE learner = ? AND day = ?", (learner, day.isoformat())
        )


@dataclass(slots=True, eq=False)
class Candidate:
    """An item that may be chosen. `ends_in` are the days to the end of its season, None without one."""

    item: str
    grade: float
    question_word: str
    theme: str
    ends_in: int | None
    place: int
    last_seen: str | None = None


@dataclass(slots=True, eq=False)
class Want:
    """What is looked for: a kind within levels, new to these learners, on this day."""

    kind: str
    low: float
    high: float
    learners: tuple[int, ...]
    avoid: tuple[str, ...]
    day: dt.date
    twins_since: str
    start: int
    but_not: frozenset[str] = frozenset()
    # Only questions that are answered with a ring around a choice; `unseen` alone asks for it.
    to_circle: bool = False


# CROSS JOIN keeps SQLite from walking the whole history of a learner to find a twin in it.
_NO_TWIN = """
    NOT EXISTS (SELECT 1 FROM twin CROSS JOIN given INDEXED BY given_item
                ON given.learner IN ({learners}) AND given.item = twin.other
                AND given.counts = 1 AND given.day >= :twins_since AND given.day <> :day
                WHERE twin.item = shelf.item)"""
_NO_AVOIDED_THEME = """
    AND NOT EXISTS (SELECT 1 FROM tag WHERE tag.item = shelf.item AND tag.family = 'theme'
                    AND tag.value IN ({avoid}))"""
_TO_CIRCLE = """
    (shelf.question_word = 'yes-no'
     OR EXISTS (SELECT 1 FROM item WHERE item.id = shelf.item AND item.choices <> '[]')) AND """
_UNSEEN = """
    AND NOT EXISTS (SELECT 1 FROM given INDEXED BY given_item WHERE given.learner IN ({learners})
                    AND given.item = shelf.item AND given.counts = 1 AND given.day <> :day)"""
_IN_SEASON = """
    (ends = 0 OR (starts <= ends AND :today BETWEEN starts AND ends)
     OR (starts > ends AND (:today >= starts OR :today <= ends)))"""


def unseen(store: Store, want: Want, each: int) -> Iterable[list[Candidate]]:
    """Items that none of the learners has had, hardest tenth of a grade first.

    Each step gives at most `each` year-round and `each` seasonal items of one tenth of a grade, the
    seasonal ones whose season ends first, the others from a start that the day sets.
    """
    values = _values(want)
    where = f"kind = :kind AND tenth = :tenth AND grade BETWEEN :low AND :high AND {_allowed(want)}{_UNSEEN}"
    where = _filled((_TO_CIRCLE if want.to_circle else "") + where, want)
    season = f"AND {_IN_SEASON}"
    walks = (
        ("ends = 0 AND place >= :start", ""),
        ("ends = 0 AND place < :start", ""),
        ("ends >= :today", season),
        ("ends BETWEEN 1 AND :today - 1", season),
    )
    for tenth in range(tenth_of(want.high), tenth_of(want.low) - 1, -1):
        values["tenth"] = tenth
        found: list[Candidate] = []
        for year_round in (True, False):
            some: list[Candidate] = []
            for walk, more in walks[:2] if year_round else walks[2:]:
                if len(some) < each:
                    rows = store.rows(
                        f"SELECT * FROM shelf WHERE {walk} AND {where} {more}"
                        " ORDER BY ends, place LIMIT :most",
                        {**values, "most": each - len(some)},
                    )
                    some += [_candidate(row, want.day) for row in rows]
            found += some
        if found:
            yield found


def unseen_item(store: Store, want: Want, item: str) -> Candidate | None:
    """This very item as a candidate, where it is in season, allowed, new and not too hard."""
    where = _filled(
        f"kind = :kind AND grade <= :high AND {_allowed(want)}{_UNSEEN} AND {_IN_SEASON}", want
    )
    row = store.row(
        f"SELECT * FROM shelf WHERE shelf.item = :item AND {where}", {**_values(want), "item": item}
    )
    return _candidate(row, want.day) if row else None


def seen_before(store: Store, want: Want, most: int) -> list[Candidate]:
    """Items at or below the band's top that the learners have had, the longest ago first."""
    where = _filled(f"kind = :kind AND grade <= :high AND {_allowed(want)} AND {_IN_SEASON}", want)
    rows = store.rows(
        f"""SELECT shelf.*, had.last_seen FROM
            (SELECT item, max(day) AS last_seen FROM given
             WHERE learner IN ({_numbers(want)}) AND counts = 1 AND day <> :day GROUP BY item) AS had
            CROSS JOIN shelf ON shelf.item = had.item WHERE {where}
            ORDER BY had.last_seen, shelf.place LIMIT :most""",
        {**_values(want), "most": most},
    )
    return [_candidate(row, want.day, row["last_seen"]) for row in rows]


def _values(want: Want) -> dict[str, Any]:
    values: dict[str, Any] = {
        "kind": want.kind,
        "low": want.low - 1e-9,
        "high": want.high + 1e-9,
        "day": want.day.isoformat(),
        "today": month_day(want.day),
        "twins_since": want.twins_since,
        "start": want.start,
    }
    values.update({f"avoid{n}": theme for n, theme in enumerate(want.avoid)})
    values.update({f"learner{n}": number for n, number in enumerate(want.learners)})
    return values


def _allowed(want: Want) -> str:
    # An empty list of themes would make SQLite read every tag for every row.
    return _NO_TWIN + (_NO_AVOIDED_THEME if want.avoid else "")


def _filled(sql: str, want: Want) -> str:
    avoid = ", ".join(f":avoid{n}" for n in range(len(want.avoid)))
    return sql.format(avoid=avoid, learners=_numbers(want))


def _numbers(want: Want) -> str:
    """Names of parameters rather than numbers, so that SQLite prepares each statement once."""
    return ", ".join(f":learner{n}" for n in range(len(want.learners)))


def _candidate(row: sqlite3.Row, day: dt.date, last_seen: str | None = None) -> Candidate:
    return Candidate(
        row["item"],
        row["grade"],
        row["question_word"],
        row["theme"],
        _days_left(row["ends"], day) if row["ends"] else None,
        row["place"],
        last_seen,
    )


def _days_left(ends: int, day: dt.date) -> int:
    """Days from `day` to the next month-day `ends` (29 February counts as 1 March outside leap years)."""
    for year in (day.year, day.year + 1):
        try:
            last = dt.date(year, ends // 100, ends % 100)
        except ValueError:
            last = dt.date(year, 3, 1)
        if last >= day:
            return (last - day).days
    return 366
