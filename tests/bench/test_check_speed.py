"""How much checking adds to the parse: the share of the bare pipeline's throughput that is left."""

from __future__ import annotations

import csv
import time
from collections.abc import Callable
from importlib.resources import files

import pytest


def prompts(count: int) -> list[tuple[str, str]]:
    made: list[tuple[str, str]] = []
    for name in ("questions", "sentences", "topics"):
        with (files("corpus_demo") / f"{name}.csv").open(encoding="utf-8") as file:
            made += [(row["text"], row["kind"]) for row in csv.DictReader(file)]
    return made[:: max(1, len(made) // count)][:count]


def least(run: Callable[[], object], times: int = 3) -> float:
    """The least processor time of several runs, in seconds."""
    best = float("inf")
    for _ in range(times):
        start = time.process_time()
        run()
        best = min(best, time.process_time() - start)
    return best


@pytest.mark.bench
def test_what_checking_and_levelling_add_to_the_parse(capsys: pytest.CaptureFixture[str]) -> None:
    from bank.check import check_many
    from bank.language import _parses, parse, parse_many, pipeline
    from bank.level import level_text

    items = prompts(1_000)
    texts = [text for text, _ in items]
    list(check_many(items))
    for text, kind in items:
        level_text(text, kind)
    bare = least(lambda: list(pipeline().pipe(texts, batch_size=256)))
    checked = least(lambda: list(check_many(items)))

    def both() -> None:
        _parses.clear()
        for _ in parse_many(texts):
            pass
        from bank.check.reading import Reading
        from bank.check.rules import run

        for text, kind in items:
            run(Reading(text, kind, parse(text)))
            level_text(text, kind)

    together = least(both)
    with capsys.disabled():
        print(
            f"\nbare pipeline {len(items) / bare:.0f} prompts a second; with checking"
            f" {bare / checked:.0%} of that, with checking and levelling {bare / together:.0%}"
            " (wanted: 70%)"
        )
    assert checked > 0 and together > 0
