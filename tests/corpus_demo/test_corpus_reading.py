"""The demo bank as the tool reads it: levels, checks, fixes and twins of the whole corpus.

Every item goes once through the same assessment as an import, in batches with one parse each.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from importlib import resources
from itertools import combinations
from pathlib import Path

import pytest

from bank.item import Item

HOME = Path(str(resources.files("corpus_demo")))
FILES = ("questions", "sentences", "topics")
# The bands that a learner may read alone in, one grade wide, from kindergarten to grade 4.5.
BANDS = ((0, 1), (0.5, 1.5), (1, 2), (1.5, 2.5), (2, 3), (2.5, 3.5), (3.5, 4.5))
# Sixty school days of 5 questions, 1 sentence and 1 topic.
DAYS, A_DAY = 60, {"questions": 5, "sentences": 1, "topics": 1}


@pytest.fixture(scope="module")
def read() -> dict[str, list[Item]]:
    """The items of each file, assessed."""
    from bank.assess import assess_many
    from bank.exchange import read_rows

    return {
        name: list(
            assess_many(
                Item(**{**row.fields, "state": "draft"}) for row in read_rows(HOME / f"{name}.csv")
            )
        )
        for name in FILES
    }


@pytest.mark.parametrize("name", FILES)
def test_the_check_has_nothing_certain_to_say(name: str, read: dict[str, list[Item]]) -> None:
    certain = [
        (item.id, item.text, finding["code"])
        for item in read[name]
        for finding in item.findings
        if finding["certain"]
    ]
    assert certain == []


@pytest.mark.parametrize("name", FILES)
def test_every_level_is_on_the_scale(name: str, read: dict[str, list[Item]]) -> None:
    off = [(item.id, item.text, item.grade) for item in read[name] if not 0 <= item.grade <= 5]
    assert off == []


@pytest.mark.parametrize("band", BANDS)
@pytest.mark.parametrize("name", FILES)
def test_a_learner_with_any_band_has_sixty_days(
    name: str, band: tuple[float, float], read: dict[str, list[Item]]
) -> None:
    """Counted on the days of the year when the fewest items are in season, not over the year."""
    import datetime as dt

    low, high = band
    inside = [item for item in read[name] if low <= item.grade <= high]
    months = [dt.date(2026, month, 15) for month in range(1, 13)]
    worst = min(sum(item.in_season(day) for item in inside) for day in months)
    assert worst >= DAYS * A_DAY[name], f"{worst} for {low}-{high}"


def test_the_fixes_of_every_sentence_match_its_tags(read: dict[str, list[Item]]) -> None:
    differ = []
    for item in read["sentences"]:
        tagged = item.notes[0].partition("; fixes ")[2].split()
        found = [fix["skill"] for fix in item.versions[-1].fixes]
        if found != tagged:
            differ.append((item.id, item.versions[-1].faulty, tagged, found))
    assert differ == []


def test_the_versions_of_a_sentence_nest(read: dict[str, list[Item]]) -> None:
    """1-2, 2-4 and 3-6 fixes, and each version has the fixes of the one before it and more."""
    astray = []
    for item in read["sentences"]:
        fixes = [[(fix["skill"], fix["right"]) for fix in one.fixes] for one in item.versions]
        counts = [len(some) for some in fixes]
        fits = all(
            low <= n <= high
            for n, (low, high) in zip(counts, ((1, 2), (2, 4), (3, 6)), strict=True)
        )
        nested = all(_within(easy, full) for easy, full in zip(fixes, fixes[1:], strict=False))
        if not (fits and nested and counts[0] < counts[1] < counts[2]):
            astray.append((item.id, counts))
    assert astray == []


def _within(easy: list[tuple[str, str]], full: list[tuple[str, str]]) -> bool:
    rest = iter(full)
    return all(fix in rest for fix in easy)


def _sharing_a_key(items: list[Item]) -> Iterator[tuple[Item, Item]]:
    by_key = defaultdict(list)
    for number, item in enumerate(items):
        for key in item.ask["keys"]:
            by_key[key].append(number)
    pairs = {pair for some in by_key.values() for pair in combinations(some, 2)}
    return ((items[a], items[b]) for a, b in sorted(pairs))


@pytest.mark.parametrize("name", ["questions", "topics"])
def test_no_two_items_ask_the_same(name: str, read: dict[str, list[Item]]) -> None:
    from bank.choose.search import SURE_ENOUGH
    from bank.choose.twins import how_surely

    twins = [
        (a.text, b.text)
        for a, b in _sharing_a_key(read[name])
        if how_surely(a.ask["frame"], b.ask["frame"]) >= SURE_ENOUGH
    ]
    assert twins == []
