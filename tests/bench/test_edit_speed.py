"""Pairs compared in a second, beside bare parsing of the same corrected sentences."""

from __future__ import annotations

import csv
import time
from importlib.resources import files

import pytest

from bank import language
from bank.edit import compare, compare_many, mark_attempt, plant


def demo_pairs() -> list[tuple[str, str]]:
    """The fullest faulty version of each demo sentence, so that no text is parsed twice."""
    with (files("corpus_demo") / "sentences.csv").open(encoding="utf-8", newline="") as rows:
        return [(row["faulty"].split(" | ")[-1], row["text"]) for row in csv.DictReader(rows)]


@pytest.mark.bench
def test_pairs_a_second(capsys: pytest.CaptureFixture[str]) -> None:
    pairs = demo_pairs()
    compare("I no him and her goed.", "I know he and she went.")
    bare, found = [], []
    for _ in range(3):
        start = time.perf_counter()
        docs = list(language.pipeline().pipe([right for _, right in pairs], batch_size=256))
        bare.append(len(docs) / (time.perf_counter() - start))
        start = time.perf_counter()
        fixes = compare_many(pairs)
        found.append(len(fixes) / (time.perf_counter() - start))
    faulty, right = pairs[-1]
    start = time.perf_counter()
    for _ in range(20):
        mark_attempt(faulty, right, right)
    marked = 20 / (time.perf_counter() - start)
    start = time.perf_counter()
    for seed in range(20):
        plant(right, ["spelling", "end-mark"], seed=seed)
    made = 20 / (time.perf_counter() - start)
    with capsys.disabled():
        print(f"\nbare parsing {max(bare):.0f}/s, first compare {found[0]:.0f}/s,", end=" ")
        print(f"again {max(found):.0f}/s, ratio {max(found) / max(bare):.2f}")
        print(f"mark_attempt {marked:.0f}/s, plant {made:.0f}/s")
    assert len(fixes) == len(pairs)
