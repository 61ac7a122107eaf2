"""What a bank has, how long it lasts for each learner, and what would help most.

How long is found by drawing ahead on a copy in memory, with the rules of the draw itself; nothing of
the bank is changed or spent.
"""

from __future__ import annotations

import datetime as dt
import sqlite3
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from bank.choose.draw import Draw
from bank.choose.rules import SLOTS, Rules
from bank.item import QUESTION_WORDS, Item
from bank.learner import Learner
from bank.store import Store
from bank.store_items import write_item
from bank.store_sets import learners, write_set

MORE = 10  # items that a suggestion adds
Progress = Callable[[int], None]


@dataclass(frozen=True, slots=True)
class Cell:
    """How many ready items there are of a kind, whole grade, theme and question word."""

    kind: str
    grade: int
    theme: str
    question_word: str
    count: int


@dataclass(frozen=True, slots=True)
class Lasting:
    """How long a slot lasts for learners who draw it alike.

    `steps_down` is the first school day with an item from a lower rung or an open slot, None where
    the bank lasts to the end of what was looked at; `days` are the school days before it.
    """

    learners: tuple[str, ...]
    kind: str
    days: int
    steps_down: dt.date | None
    short_of: str = ""
    grade: int = 0
    more_days: int = 0


def cells(store: Store) -> list[Cell]:
    """What can be drawn, counted."""
    rows = store.rows(
        "SELECT kind, CAST(grade AS INTEGER) AS grade, theme, question_word, count(DISTINCT item) AS n"
        " FROM shelf GROUP BY 1, 2, 3, 4 ORDER BY 1, 2, 3, 4"
    )
    return [
        Cell(row["kind"], row["grade"], row["theme"], row["question_word"], row["n"])
        for row in rows
    ]


def in_memory(store: Store) -> Store:
    """A copy of the bank in memory: drawing on it spends nothing."""
    copy = sqlite3.connect(":memory:", isolation_level=None, cached_statements=512)
    copy.row_factory = sqlite3.Row
    store.connection.backup(copy)
    copy.execute("PRAGMA foreign_keys = ON")
    return Store(store.path, copy, True)


def lasting(
    store: Store,
    rules: Rules,
    first: dt.date,
    days: int,
    progress: Progress = lambda count: None,
    suggest: bool = True,
) -> list[Lasting]:
    """For each slot and for learners who share it to the same day: when it first steps down."""
    school_days = _school_days(rules, first, days)
    downs = _first_downs(in_memory(store), rules, school_days, progress)
    found: dict[tuple[str, dt.date | None], list[str]] = {}
    for one in _staying(store, first):
        for kind in SLOTS:
            if rules.counts(one, False)[kind]:
                found.setdefault((kind, downs.get((one.code, kind))), []).append(one.code)
    by_code = {one.code: one for one in learners(store)}
    made = []
    for (kind, down), codes in sorted(found.items(), key=_slot_then_day):
        before = len(school_days) if down is None else school_days.index(down)
        lasts = Lasting(tuple(codes), kind, before, down)
        if down is not None and suggest:
            lasts = _with_help(store, rules, school_days, lasts, by_code[codes[0]], progress)
        made.append(lasts)
    return made


def _staying(store: Store, day: dt.date) -> list[Learner]:
    """The learners who have not left by `day`."""
    return [one for one in learners(store) if one.last is None or one.last >= day]


def _slot_then_day(pair: tuple[tuple[str, dt.date | None], list[str]]) -> tuple[int, dt.date]:
    (kind, down), _ = pair
    return SLOTS.index(kind), down or dt.date.max


def _school_days(rules: Rules, first: dt.date, count: int) -> list[dt.date]:
    found: list[dt.date] = []
    day: dt.date | None = first if rules.calendar.is_school_day(first) else None
    day = day or rules.calendar.next_school_day(first)
    while day is not None and len(found) < count:
        found.append(day)
        day = rules.calendar.next_school_day(day)
    return found


def _first_downs(
    store: Store, rules: Rules, school_days: Sequence[dt.date], progress: Progress
) -> dict[tuple[str, str], dt.date]:
    """By code and slot: the first day on which the draw steps down the ladder or leaves a slot open."""
    everyone = _staying(store, school_days[0]) if school_days else []
    downs: dict[tuple[str, str], dt.date] = {}
    wanted = {
        (one.code, kind) for one in everyone for kind, n in rules.counts(one, False).items() if n
    }
    codes = {one.number: one for one in everyone}
    for day in school_days:
        for made in Draw(store, day, rules).sets(everyone):
            learner = codes[made.learner]
            for kind, count in rules.counts(learner, False).items():
                mine = [part for part in made.given if part.kind == kind]
                if len(mine) < count or any(part.rung > 1 for part in mine):
                    downs.setdefault((learner.code, kind), day)
            write_set(store, made)
        progress(1)
        if wanted <= set(downs):
            break
    return downs


def _with_help(
    store: Store,
    rules: Rules,
    school_days: Sequence[dt.date],
    one: Lasting,
    learner: Learner,
    progress: Progress,
) -> Lasting:
    """What is scarcest for the learner, and how many days more of it would give."""
    grade, word = scarcest(store, one.kind, learner)
    copy = in_memory(store)
    with copy.writing():
        for number in range(MORE):
            middle = min(learner.band.high, max(learner.band.low, grade + 0.5))
            write_item(copy, _made_up(number, one.kind, middle, word))
    horizon = school_days[: one.days + 3 * MORE]
    down = _first_downs(copy, rules, horizon, progress).get((one.learners[0], one.kind))
    lasts = len(horizon) if down is None else list(horizon).index(down)
    return replace(one, short_of=word, grade=grade, more_days=max(0, lasts - one.days))


def scarcest(store: Store, kind: str, learner: Learner) -> tuple[int, str]:
    """The whole grade in the band, and for questions the question word, of which there is least."""
    inside = [
        cell
        for cell in cells(store)
        if cell.kind == kind and learner.band.low - 1 < cell.grade <= learner.band.high
    ]
    grades = range(int(learner.band.low), max(int(learner.band.low), _last_grade(learner)) + 1)
    by_grade = Counter(dict.fromkeys(grades, 0))
    for cell in inside:
        if cell.grade in by_grade:
            by_grade[cell.grade] += cell.count
    grade = min(by_grade, key=lambda one: (by_grade[one], one))
    if kind != "question":
        return grade, ""
    words = Counter(dict.fromkeys(QUESTION_WORDS, 0))
    for cell in inside:
        if cell.grade == grade and cell.question_word in words:
            words[cell.question_word] += cell.count
    return grade, min(QUESTION_WORDS, key=lambda word: (words[word], QUESTION_WORDS.index(word)))


def _last_grade(learner: Learner) -> int:
    """The last whole grade of which the band holds more than its first moment."""
    high = learner.band.high
    return int(high) - 1 if high == int(high) else int(high)


def _made_up(number: int, kind: str, grade: float, word: str) -> Item:
    return Item(
        id=f"made-up-{number}",
        kind=kind,
        text=f"made up {number}",
        state="ready",
        grade=grade,
        question_word=word,
    )
