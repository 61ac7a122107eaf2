"""How fast prompts are levelled beside the bare parse, and how much memory it takes.

    python -m pytest tests/bench/test_level_speed.py -s

Two thousand prompts, made of the placed prompts and pairs of the tests; the shares are printed, and
no time is asserted.
"""

from __future__ import annotations

import gc
import resource
import time
from pathlib import Path

import pytest

from bank import language
from bank.level import level_many

HERE = Path(__file__).parents[1] / "bank" / "level"


def prompts(count: int) -> list[tuple[str, str]]:
    """Different prompts of 2 to 20 words: the tests' own, and each with another's first words."""
    own = []
    for line in (HERE / "placed.tsv").read_text("utf-8").splitlines()[1:]:
        _, kind, text = line.split("\t")
        own.append((text, kind))
    for line in (HERE / "ordered_pairs.tsv").read_text("utf-8").splitlines()[1:]:
        _, kind, easier, harder = line.split("\t")
        own += [(easier, kind), (harder, kind)]
    made = list(own)
    for step in range(1, len(own)):
        for number, (text, kind) in enumerate(own):
            if len(made) == count:
                return made
            start = own[(number + step) % len(own)][0].split()[: 2 + step % 4]
            made.append((" ".join([*start, *text.split()[1:]]), kind))
    return made


@pytest.mark.bench
def test_levelling_keeps_most_of_the_speed_of_the_bare_parse():
    pairs = prompts(2000)
    texts = [text for text, _ in pairs]
    nlp = language.pipeline()
    start = time.perf_counter()
    list(level_many(pairs[:200]))
    warm = time.perf_counter() - start
    bare, levelled = [], []
    for _ in range(3):
        gc.collect()
        start = time.perf_counter()
        for _ in nlp.pipe(texts, batch_size=256):
            pass
        bare.append(time.perf_counter() - start)
        gc.collect()
        start = time.perf_counter()
        levels = list(level_many(pairs))
        levelled.append(time.perf_counter() - start)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    share = min(bare) / min(levelled)
    print(
        f"\n{len(pairs)} prompts: bare parse {len(pairs) / min(bare):.0f} a second, levelled "
        f"{len(pairs) / min(levelled):.0f} a second: {share:.0%} of the bare parse; "
        f"first 200 with loading {warm:.2f} s; peak memory {peak:.0f} MB"
    )
    print("parts loaded:", ", ".join(nlp.pipe_names))
    assert len(levels) == len(pairs)
    assert "ner" not in nlp.pipe_names
