"""The draw's rules as laws over random banks, learners and histories."""

import datetime as dt
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from making import MONDAY, make_item, put

from bank.classroom import Bank
from bank.item import QUESTION_WORDS, Item, Season
from bank.learner import Band, Learner
from bank.store import create_store
from bank.store_items import set_twins

THEMES = ("food", "weather", "family", "animals")
SEASONS = ((), (), ("09-01..09-30",), ("12-01..02-28",), ("09-15..09-16", "03-01..03-31"))

item_facts = st.fixed_dictionaries(
    {
        "kind": st.sampled_from(["question", "question", "question", "sentence", "topic"]),
        "grade": st.integers(0, 40).map(lambda tenths: tenths / 10),
        "themes": st.lists(st.sampled_from(THEMES), max_size=2, unique=True).map(tuple),
        "seasons": st.sampled_from(SEASONS),
        "state": st.sampled_from(["ready"] * 6 + ["draft", "retired"]),
        "question_word": st.sampled_from(QUESTION_WORDS),
    }
)
learner_facts = st.fixed_dictionaries(
    {
        "low": st.integers(0, 30).map(lambda tenths: tenths / 10),
        "width": st.sampled_from([1.0, 1.5, 2.0]),
        "avoid": st.lists(st.sampled_from(THEMES), max_size=1).map(tuple),
        "group": st.sampled_from(["", "A", "B"]),
        "questions": st.integers(0, 5),
    }
)
banks = st.lists(item_facts, min_size=0, max_size=40)
classes = st.lists(learner_facts, min_size=1, max_size=4)
pairs = st.lists(st.tuples(st.integers(0, 39), st.integers(0, 39)), max_size=6)


@contextmanager
def a_bank(
    facts: list[dict[str, Any]],
    learners: list[dict[str, Any]],
    twins: list[tuple[int, int]] = [],  # noqa: B006
) -> Iterator[Bank]:
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder,
        Bank(create_store(Path(folder) / "b.sqlite3")) as bank,
    ):
        bank.store.set_setting("seed", "fixed")
        items = [make_item(n, **one) for n, one in enumerate(facts)]
        put(bank, *items)
        with bank.store.writing():
            for one, other in twins:
                if one != other and max(one, other) < len(items):
                    known = bank.items.twins(items[one].id)
                    set_twins(bank.store, items[one].id, {*known, items[other].id})
        for number, one in enumerate(learners):
            bank.learners.add(
                f"L{number}",
                one["low"] + 2,
                band=Band(one["low"], one["low"] + one["width"]),
                avoid=one["avoid"],
                group=one["group"],
                questions=one["questions"],
            )
        yield bank


def fits(item: Item, learner: Learner, day: dt.date, kind: str) -> bool:
    """The rules, written once more and plainly: what may be given at all."""
    return (
        item.kind == kind
        and item.state == "ready"
        and (item.reading_grade or 0) <= learner.band.high
        and not set(item.themes) & set(learner.avoid)
        and (not item.seasons or any(Season.includes(s, day) for s in item.seasons))
    )


@settings(max_examples=60)
@given(banks, classes, pairs, st.integers(1, 5))
def test_every_draw_keeps_every_rule(
    facts: list[dict[str, Any]],
    class_facts: list[dict[str, Any]],
    twins: list[tuple[int, int]],
    days: int,
) -> None:
    with a_bank(facts, class_facts, twins) as bank:
        items = {item.id: item for item in bank.items}
        seen: dict[str, list[str]] = {one.code: [] for one in bank.learners}
        for number in range(days):
            day = MONDAY + dt.timedelta(days=number)
            for one in bank.days.draw(day):
                learner, code = one.learner, one.learner.code
                given_ids = [part.item for part in one.given]
                assert len(set(given_ids)) == len(given_ids)
                for part in one.given:
                    item = items[part.item]
                    assert fits(item, learner, day, part.kind)
                    others = bank.items.twins(item.id)
                    assert not set(others) & set(given_ids)
                    assert not set(others) & set(seen[code])
                    free = [
                        other
                        for other in items.values()
                        if fits(other, learner, day, part.kind)
                        and other.id not in seen[code] + given_ids
                        and not set(bank.items.twins(other.id)) & {*seen[code], *given_ids}
                        and (other.reading_grade or 0) >= learner.band.low
                    ]
                    if item.id in seen[code] and not part.why["shared_with"]:
                        assert free == [], "seen again while something new in the band fitted"
                    if part.rung == 2 and not part.why["shared_with"]:
                        assert free == [], "easier while something new in the band fitted"
                wanted = {"question": learner.questions, "sentence": 1, "topic": 1}
                for kind, count in wanted.items():
                    got = len(one.of(kind))
                    said = [line for line in one.notes if "missing" in line and kind in line]
                    assert got == count or said
                seen[code] += given_ids


@settings(max_examples=25)
@given(banks, classes, st.randoms(use_true_random=False))
def test_the_order_of_learners_does_not_matter(
    facts: list[dict[str, Any]], class_facts: list[dict[str, Any]], random: Any
) -> None:
    drawn = []
    order = list(range(len(class_facts)))
    for _ in range(2):
        with a_bank(facts, []) as bank:
            for number in order:
                one = class_facts[number]
                bank.learners.add(
                    f"L{number}",
                    one["low"] + 2,
                    band=Band(one["low"], one["low"] + one["width"]),
                    avoid=one["avoid"],
                    group=one["group"],
                    questions=one["questions"],
                )
            sets = bank.days.draw(MONDAY)
            drawn.append({s.learner.code: [part.item for part in s.given] for s in sets})
        random.shuffle(order)
    assert drawn[0] == drawn[1]


@settings(max_examples=25)
@given(banks, classes)
def test_whoever_asks_gets_the_same_set(
    facts: list[dict[str, Any]], class_facts: list[dict[str, Any]]
) -> None:
    with a_bank(facts, class_facts) as bank:
        together = {s.learner.code: [p.item for p in s.given] for s in bank.days.draw(MONDAY)}
        bank.days.undo(MONDAY)
        for code in sorted(together, reverse=True):
            (alone,) = bank.days.draw(MONDAY, [code])
            assert [part.item for part in alone.given] == together[code]
