"""Fit what each feature of two asks weighs, by logistic regression, and report how well it does.

    PYTHONPATH=. python tests/bench/fit_twins.py

Twins and near misses are the pairs beside the tests of twins, without the third of the first file
that is held aside. Further pairs are all that share a key within half of a bank of 3,074 texts (the
demo bank, before those that an earlier comparison took for twins were left out of it); among them
those in `BANK_TWINS` are twins. Each file is also told apart with weights fitted on the others, and
the pairs called twins in the other half of the bank are counted; `--show` prints them. What is
printed goes into `bank/choose/ask/weigh.py`.
"""

from __future__ import annotations

import hashlib
import sys
from collections import defaultdict
from itertools import combinations
from pathlib import Path
from typing import Any

import numpy as np
from scipy.optimize import minimize

from bank.choose.ask import compare, weigh
from bank.choose.ask.keys import keys_of
from bank.choose.twins import ask_frames

PAIRS = Path(__file__).parents[1] / "bank" / "choose"
FILES = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
# What each pair of the bank weighs beside a pair of the files.
BANK_WEIGHT, RIDGE = 2.0, 1.0
LIMITS = (compare.ENOUGH, 0.1, 0.2, 0.3, 0.5, 0.7)
# Twins by reading, in the half of the bank that is fitted on.
BANK_TWINS = {
    frozenset(pair)
    for pair in (
        (
            "Why do leaves fall from some trees?",
            "Why do some trees lose their leaves and others keep them?",
        ),
        ("The things in my pocket", "What is in your pocket?"),
        (
            "Explain how a seed can travel far from the plant that made it.",
            "How seeds travel to new places",
        ),
        ("What ants carry home", "What do ants carry?"),
        ("A food that is cold", "What is cold to eat?"),
        ("A dream I remember", "What did you dream?"),
    )
}
Row = tuple[list[float] | None, bool]


def pairs(name: str) -> list[tuple[str, str, str]]:
    lines = (PAIRS / f"twin_pairs_{name}.tsv").read_text("utf-8").splitlines()[1:]
    return [(sort, a, b) for sort, a, b in (line.split("\t") for line in lines)]


def values(a: dict[str, Any], b: dict[str, Any]) -> list[float] | None:
    """The features of a pair, or None where a rule tells it apart."""
    found = compare.laid_side_by_side(a, b)
    return None if isinstance(found, str) else list(weigh.features(found, a, b).values())


def fitted(rows: list[Row], others: list[tuple[list[float], bool]]) -> np.ndarray:
    known = [(x, twin, 1.0) for x, twin in rows if x is not None]
    known += [(x, twin, BANK_WEIGHT) for x, twin in others]
    x = np.array([row[0] for row in known])
    sign = np.where([row[1] for row in known], 1.0, -1.0)
    weight = np.array([row[2] for row in known])
    middle, spread = x.mean(0), x.std(0) + 1e-9
    z = np.c_[np.ones(len(x)), (x - middle) / spread]

    def loss(beta: np.ndarray) -> tuple[float, np.ndarray]:
        margin = sign * (z @ beta)
        wrong = weight * sign / (1 + np.exp(np.clip(margin, -500, 500)))
        ridge = RIDGE * np.r_[0.0, beta[1:]]
        return (weight * np.logaddexp(0, -margin)).sum() + ridge @ beta / 2, ridge - z.T @ wrong

    beta = minimize(loss, np.zeros(z.shape[1]), jac=True).x
    slopes = beta[1:] / spread
    return np.r_[beta[0] - slopes @ middle, slopes]


def surely(x: list[float] | None, weights: np.ndarray) -> float:
    return 0.0 if x is None else float(1 / (1 + np.exp(-(weights[0] + weights[1:] @ np.array(x)))))


def f1(rows: list[tuple[float, bool]], limit: float) -> float:
    said = [score >= limit for score, _ in rows]
    right = sum(s and twin for s, (_, twin) in zip(said, rows, strict=True))
    return 2 * right / max(1, sum(said) + sum(twin for _, twin in rows))


def bank_pairs(half: int) -> tuple[int, list[tuple[frozenset[str], list[float]]]]:
    """How many texts half of the bank has, and its pairs that share a key and no rule tells apart."""
    lines = (PAIRS / "twin_pairs_bank.tsv").read_text("utf-8").splitlines()[1:]
    texts = [t for t in lines if int(hashlib.md5(t.encode()).hexdigest(), 16) % 2 == half]
    frames = list(ask_frames(texts))
    by_key = defaultdict(list)
    for number, frame in enumerate(frames):
        for key in keys_of(frame):
            by_key[key].append(number)
    sharing = {pair for some in by_key.values() for pair in combinations(some, 2)}
    found = (
        (frozenset((texts[i], texts[j])), values(frames[i], frames[j])) for i, j in sorted(sharing)
    )
    return len(texts), [(pair, x) for pair, x in found if x is not None]


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
    others = [(x, pair in BANK_TWINS) for pair, x in bank_pairs(0)[1]]
    size, held = bank_pairs(1)
    unseen = []
    for name in FILES:
        rest = [row for other in FILES if other != name for row in seen[other]]
        weights = fitted(rest, others)
        unseen.append([(surely(x, weights), twin) for x, twin in seen[name]])
    weights = fitted([row for name in FILES for row in seen[name]], others)
    called = sorted(((surely(x, weights), pair) for pair, x in held), key=lambda row: -row[0])
    for limit in LIMITS:
        print(
            f"from {limit}: F1 {f1([row for rows in unseen for row in rows], limit):.3f} with weights"
            f" of the other files ({', '.join(f'{f1(rows, limit):.2f}' for rows in unseen)}), held"
            f" aside {f1([(surely(x, weights), twin) for x, twin in aside], limit):.3f}; in the other"
            f" half of the bank {sum(s >= limit for s, _ in called)} pairs of {size} texts"
        )
    if "--show" in sys.argv:
        for score, pair in called[:60]:
            print(f"{score:.2f}", *sorted(pair), sep="\t")
    print(f'    "constant": {weights[0]:.2f},')
    names = list(
        weigh.features(
            compare.align(frames[texts[0]], frames[texts[1]]), frames[texts[0]], frames[texts[1]]
        )
    )
    for name, value in zip(names, weights[1:], strict=True):
        print(f'    "{name}": {value:.2f},')


if __name__ == "__main__":
    main()
