"""Random classes and the rules of choosing written once more, for the tests and the benchmark."""

from __future__ import annotations

import datetime as dt
import random
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from making import make_item, put

from bank.classroom import Bank
from bank.item import QUESTION_WORDS, Item
from bank.learner import Band, Learner
from bank.store import create_store
from bank.store_items import set_twins

THEMES = tuple(f"theme{n}" for n in range(9))
SEASONS = (
    (),
    (),
    (),
    ("09-01..11-30",),
    ("12-01..02-28",),
    ("10-05..10-09",),
    ("09-14..09-18", "03-01..05-31"),
)
TWIN_DAYS = 30


@contextmanager
def a_class(chance: random.Random, path: Path) -> Iterator[Bank]:
    """A bank of 100 to 600 items with twins and seasons, and a class of 2 to 7 learners in groups."""
    with Bank(create_store(path)) as bank:
        bank.store.connection.execute("PRAGMA synchronous = OFF")
        bank.store.set_setting("seed", str(chance.random()))
        items = []
        for number in range(chance.randrange(100, 600)):
            kind = chance.choice(("question", "question", "question", "sentence", "topic"))
            items.append(
                make_item(
                    number,
                    kind,
                    chance.randrange(0, 45) / 10,
                    seasons=chance.choice(SEASONS),
                    themes=tuple(chance.sample(THEMES, chance.randrange(0, 3))),
                    question_word=chance.choice(QUESTION_WORDS) if kind == "question" else "",
                )
            )
        put(bank, *items)
        pairs: dict[str, set[str]] = {}
        for _ in range(len(items) // 10):
            one, other = (item.id for item in chance.sample(items, 2))
            pairs.setdefault(one, set()).add(other)
            pairs.setdefault(other, set()).add(one)
        with bank.store.writing():
            for item, others in pairs.items():
                set_twins(bank.store, item, others)
        for number in range(chance.randrange(2, 8)):
            low = chance.randrange(0, 30) / 10
            bank.learners.add(
                f"L{number}",
                low + 2,
                band=Band(low, low + chance.choice((1.0, 1.5, 2.0))),
                avoid=tuple(chance.sample(THEMES, chance.randrange(0, 2))),
                group=chance.choice(("", "A", "B")),
                questions=chance.randrange(2, 6),
            )
        yield bank


def may_have(item: Item, learner: Learner, kind: str, day: dt.date) -> bool:
    """Whether the learner may have the item on that day at all."""
    return (
        item.kind == kind
        and item.state == "ready"
        and (item.reading_grade or 0) <= learner.band.high
        and not set(item.themes) & set(learner.avoid)
        and item.in_season(day)
    )


def a_year_without_violations(bank: Bank, first: dt.date, days: int) -> list[str]:
    """Draw day after day; every rule that was broken, in words."""
    items = {item.id: item for item in bank.items}
    twins = {item: set(bank.items.twins(item)) for item in items}
    calendar = bank.days.calendar()
    last_seen: dict[str, dict[str, int]] = {one.code: {} for one in bank.learners}
    broken: list[str] = []
    day: dt.date | None = first
    for number in range(days):
        assert day is not None
        for one in bank.days.draw(day):
            learner, seen = one.learner, last_seen[one.learner.code]
            here = [part.item for part in one.given]
            lately = {item for item, when in seen.items() if number - when <= TWIN_DAYS}
            if len(set(here)) < len(here):
                broken.append(f"{day} {learner.code}: the same item twice")
            for part in one.given:
                item = items[part.item]
                if not may_have(item, learner, part.kind, day):
                    broken.append(
                        f"{day} {learner.code}: {item.id} too hard, avoided or out of season"
                    )
                if twins[item.id] & (lately | set(here)):
                    broken.append(
                        f"{day} {learner.code}: {item.id} is a twin of something lately seen"
                    )
                if item.id in seen and not part.why["shared_with"]:
                    free = [
                        other.id
                        for other in items.values()
                        if may_have(other, learner, part.kind, day)
                        and other.id not in seen
                        and other.id not in here
                        and not twins[other.id] & (lately | set(here))
                    ]
                    if free:
                        broken.append(f"{day} {learner.code}: {item.id} again, {free[0]} was new")
            for item_id in here:
                seen[item_id] = number
        day = calendar.next_school_day(day)
    return broken
