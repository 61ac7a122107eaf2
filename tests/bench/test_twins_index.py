"""How long it takes to find the twins of one new item in a large bank, and how many are compared."""

from __future__ import annotations

import csv
import json
import os
import random
import sqlite3
import statistics
import time
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest

from bank.choose.ask.keys import keys_of
from bank.choose.ask.lexicon import lexicon
from bank.choose.twins import METHOD, ask_frame, same_ask_frames
from bank.language import parse_many

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


def sharing(bank: sqlite3.Connection, keys: list[str], most: int = 400) -> list[dict[str, Any]]:
    """The frames that share a key, the rarest keys first, at most `most` for each key."""
    count = "SELECT count(*) FROM (SELECT 1 FROM ask_key WHERE key = ? LIMIT ?)"
    rarest = sorted((bank.execute(count, (key, most)).fetchone()[0], key) for key in keys)
    found: dict[int, dict[str, Any]] = {}
    for _, key in rarest:
        rows = bank.execute(
            "SELECT ask.item, frame FROM ask_key JOIN ask USING (item) WHERE key = ? LIMIT ?",
            (key, most),
        )
        for item, frame in rows:
            if item not in found:
                found[item] = json.loads(frame)
    return list(found.values())


def test_the_twins_of_one_new_item_are_found_in_a_large_bank(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    rng = random.Random(9)
    built = some_frames(min(600, SIZE // 4))
    words = [[name] for name in lexicon().kinds]
    words += [names for frame in built for names, weight, *_ in frame["atoms"] if weight > 0.3]
    bank = sqlite3.connect(tmp_path / "asks.sqlite3")
    bank.execute("CREATE TABLE ask (item INTEGER PRIMARY KEY, frame TEXT)")
    bank.execute(
        "CREATE TABLE ask_key (key TEXT, item INTEGER, PRIMARY KEY (key, item)) WITHOUT ROWID"
    )
    for n in range(SIZE):
        frame = built[n] if n < len(built) else varied(rng.choice(built), words, rng)
        bank.execute("INSERT INTO ask VALUES (?, ?)", (n, json.dumps(frame)))
        bank.executemany("INSERT INTO ask_key VALUES (?, ?)", [(key, n) for key in keys_of(frame)])
    times: list[float] = []
    compared: list[int] = []
    same_ask_frames(built[0], built[1])  # the lists of words are read once
    for frame in rng.sample(built, 50):
        started = time.perf_counter()
        others = sharing(bank, keys_of(frame))
        found = [other for other in others if same_ask_frames(frame, other)]
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
