"""How long it takes to find the twins of one new item in a large bank, and how many are compared."""

from __future__ import annotations

import csv
import json
import os
import random
import statistics
import time
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from making import make_item

from bank.choose.ask.keys import keys_of
from bank.choose.ask.lexicon import lexicon
from bank.choose.twins import METHOD, ask_frame, same_ask_frames
from bank.language import parse_many
from bank.store import create_store
from bank.store_items import set_ask_keys, sharing_keys, write_item

pytestmark = pytest.mark.bench

# 100000 by hand; small in the smoke run.
SIZE = int(os.environ.get("BINDERBANK_TWINS", "3000"))
MOST_COMPARED = 2500


def some_frames(count: int, seed: int = 4) -> list[dict[str, Any]]:
    """The frames of `count` questions and topics of the demo bank."""
    texts: list[str] = []
    for kind in ("questions", "topics"):
        with files("corpus_demo").joinpath(f"{kind}.csv").open(encoding="utf-8") as rows:
            texts += [row["text"] for row in csv.DictReader(rows)]
    chosen = random.Random(seed).sample(texts, count)
    for _ in parse_many(chosen):
        pass
    return [ask_frame(text) for text in chosen]


def varied(frame: dict[str, Any], words: list[list[str]], rng: random.Random) -> dict[str, Any]:
    """The frame of another question of the same build: each telling idea may be another one."""
    atoms = [
        [rng.choice(words) if weight > 0.3 and rng.random() < 0.7 else names, weight, role, []]
        for names, weight, role, _ in frame["atoms"]
    ]
    return {**frame, "atoms": atoms, "words": [*frame["words"], str(rng.random())]}


def test_the_twins_of_one_new_item_are_found_in_a_large_bank(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    rng = random.Random(9)
    built = some_frames(min(600, SIZE // 4))
    words = [[name] for name in lexicon().kinds]
    words += [names for frame in built for names, weight, *_ in frame["atoms"] if weight > 0.3]
    store = create_store(tmp_path / "bank.sqlite3")
    with store.writing():
        for n in range(SIZE):
            frame = built[n] if n < len(built) else varied(rng.choice(built), words, rng)
            keys = keys_of(frame)
            write_item(store, make_item(n, "question", 1.5, ask={"frame": frame, "keys": keys}))
            set_ask_keys(store, f"q{n:05}", keys)
    times: list[float] = []
    compared: list[int] = []
    same_ask_frames(built[0], built[1])  # the lists of words are read once
    for frame in rng.sample(built, 50):
        mine = json.loads(json.dumps(frame))
        started = time.perf_counter()
        others = sharing_keys(store, keys_of(mine), "new")
        found = [item for item, other in others.items() if same_ask_frames(mine, other)]
        times.append(time.perf_counter() - started)
        compared.append(len(others))
        assert found, "the item itself is in the bank"
    with capsys.disabled():
        print(
            f"\n{METHOD}: {SIZE} items; for one new item {statistics.median(compared):.0f} compared "
            f"(at most {max(compared)}), {statistics.median(times):.3f} s, "
            f"95 of 100 within {sorted(times)[int(0.95 * len(times))]:.3f} s"
        )
    assert max(compared) <= max(MOST_COMPARED, SIZE // 20)
