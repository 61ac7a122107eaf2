"""Fit what each feature of two asks weighs, by logistic regression.

    python tests/bench/fit_twins.py

Twins and near misses are the pairs beside the tests of twins, without the third of the first file
that is held aside; further pairs that are no twins are drawn from the demo bank, where nearly no
two items are. Each file is also told apart with weights fitted on the others. What is printed goes
into `bank/choose/ask/weigh.py`.
"""

from __future__ import annotations

import csv
import random
from importlib.resources import files
from itertools import combinations
from pathlib import Path
from typing import Any

import numpy as np
from scipy.optimize import minimize

from bank.choose.ask import compare, weigh
from bank.choose.ask.align import align
from bank.choose.ask.apart import APART
from bank.choose.twins import ask_frames, ask_keys

PAIRS = Path(__file__).parents[1] / "bank" / "choose"
FILES = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
# The pairs of the demo bank weigh together as much as this many pairs of the files.
FROM_THE_BANK, RIDGE, ITEMS = 2000.0, 1.0, 700
Row = tuple[list[float] | None, bool]


def pairs(name: str) -> list[tuple[str, str, str]]:
    lines = (PAIRS / f"twin_pairs_{name}.tsv").read_text("utf-8").splitlines()[1:]
    return [(sort, a, b) for sort, a, b in (line.split("\t") for line in lines)]


def values(a: dict[str, Any], b: dict[str, Any]) -> list[float] | None:
    """The features of a pair, or None where a rule tells it apart."""
    if any(apart(a, b) for _, apart in APART):
        return None
    found = align(a, b)
    if not found.common or any(apart(found, a, b) for _, apart in compare.LEFT_APART):
        return None
    return list(weigh.features(found, a, b).values())


def fitted(rows: list[Row], others: list[list[float]]) -> np.ndarray:
    known = [(x, twin, 1.0) for x, twin in rows if x is not None]
    known += [(x, False, FROM_THE_BANK / len(others)) for x in others]
    x = np.array([row[0] for row in known])
    sign = np.where([row[1] for row in known], 1.0, -1.0)
    weight = np.array([row[2] for row in known])
    middle, spread = x.mean(0), x.std(0) + 1e-9
    z = np.c_[np.ones(len(x)), (x - middle) / spread]

    def loss(beta: np.ndarray) -> float:
        return float(
            (weight * np.logaddexp(0, -sign * (z @ beta))).sum() + RIDGE * beta[1:] @ beta[1:] / 2
        )

    beta = minimize(loss, np.zeros(z.shape[1])).x
    slopes = beta[1:] / spread
    return np.r_[beta[0] - slopes @ middle, slopes]


def f1(rows: list[Row], weights: np.ndarray) -> float:
    limit = np.log(compare.ENOUGH / (1 - compare.ENOUGH))
    said = [x is not None and weights[0] + weights[1:] @ x >= limit for x, _ in rows]
    right = sum(s and twin for s, (_, twin) in zip(said, rows, strict=True))
    return 2 * right / (sum(said) + sum(twin for _, twin in rows))


def bank_pairs() -> list[list[float]]:
    """The features of pairs of the demo bank that share a key and that no rule tells apart."""
    texts: list[str] = []
    for kind in ("questions", "topics"):
        with files("corpus_demo").joinpath(f"{kind}.csv").open(encoding="utf-8") as rows:
            texts += [row["text"] for row in csv.DictReader(rows)]
    chosen = random.Random(11).sample(texts, ITEMS)
    kept = [
        (frame, {*ask_keys(text)}) for text, frame in zip(chosen, ask_frames(chosen), strict=True)
    ]
    found = (values(a, b) for (a, keys_a), (b, keys_b) in combinations(kept, 2) if keys_a & keys_b)
    return [x for x in found if x is not None]


def main() -> None:
    rows = {name: pairs(name) for name in FILES}
    texts = [text for name in FILES for _, *both in rows[name] for text in both]
    frames = dict(zip(texts, ask_frames(texts), strict=True))
    seen = {
        name: [(values(frames[a], frames[b]), sort == "twin") for sort, a, b in rows[name]]
        for name in FILES
    }
    aside = seen["first"][2::3]
    seen["first"] = [row for n, row in enumerate(seen["first"]) if n % 3 != 2]
    others = bank_pairs()
    for name in FILES:
        rest = [row for other in FILES if other != name for row in seen[other]]
        print(f"{name}: F1 {f1(seen[name], fitted(rest, others)):.3f} with weights of the others")
    weights = fitted([row for name in FILES for row in seen[name]], others)
    print(f"held aside: F1 {f1(aside, weights):.3f}")
    for name, value in zip(weigh.WEIGHTS, weights, strict=True):
        print(f'    "{name}": {value:.2f},')


if __name__ == "__main__":
    main()
