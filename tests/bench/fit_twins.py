"""Fit what each feature of two asks weighs, by logistic regression, and report how well it does.

    PYTHONPATH=. python tests/bench/fit_twins.py [bank [--show]]

*Side by side*, a twin is as likely as not: fitted on the pairs of twins and near misses beside the
tests, without the third of the first file that is held aside and without the last file, which was
never fitted on; the files that came first weigh less, for the rules were made after them. A tenth
as much again are pairs of texts that share a key and were never put side by side: no twins. No weight
has the sign that it cannot have by its name. Each file is told apart with weights of the others.

*In a bank*, nearly no pair is a twin: further pairs are all that share a key within half of a bank of
3,074 texts (the demo bank, before those that an earlier comparison took for twins were left out of
it); among them those in `BANK_TWINS` are twins. The pairs called twins in the other half of the bank
are counted; `--show` prints them.

What is printed goes into `bank/choose/ask/side_by_side.py` and `bank/choose/ask/weigh.py`.
"""

from __future__ import annotations

import hashlib
import sys
from collections import defaultdict
from collections.abc import Iterator
from itertools import combinations
from pathlib import Path
from typing import Any

import numpy as np
from scipy.optimize import minimize

from bank.choose.ask import compare, side_by_side, weigh
from bank.choose.ask.keys import keys_of
from bank.choose.twins import ask_frames

PAIRS = Path(__file__).parents[1] / "bank" / "choose"
FILES = tuple(
    "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth"
    " fourteenth fifteenth sixteenth seventeenth eighteenth".split()
)
LAST = "nineteenth"
# The files that the rules were made after, and what a pair of the later ones weighs beside them.
EARLY, LATE_WEIGHT = frozenset(FILES[:10]), 2.0
NEVER_PUT, NEVER_PUT_MOST, SIDE_RIDGE = 0.1, 700, 3.0
# What each pair of the bank weighs beside a pair of the files.
BANK_WEIGHT, RIDGE = 2.0, 1.0
LIMITS = (0.1, 0.2, 0.3, 0.5, 0.7)
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
Frame = dict[str, Any]
Pair = tuple[str, str, str]
# What may weigh for either answer; what is common weighs for a twin, all else against.
FOR_A_TWIN = frozenset("full covered_worse covered_better covered_product shorter".split())
FOR_EITHER = frozenset(
    "light near near_by_one_idea one_idea one_definite_want both_what topic choice_and_other"
    " in_condition_on_one_side other_part_of_speech asked_by_another_side supposed_on_one_side".split()
)


def pairs(name: str) -> list[Pair]:
    """The rows of a file; of the first without the third that is held aside."""
    lines = (PAIRS / f"twin_pairs_{name}.tsv").read_text("utf-8").splitlines()[1:]
    rows = [(sort, a, b) for sort, a, b in (line.split("\t") for line in lines)]
    return [row for n, row in enumerate(rows) if n % 3 != 2] if name == "first" else rows


def fitted(
    x: np.ndarray,
    twin: np.ndarray,
    weight: np.ndarray,
    ridge: float,
    bounds: list[tuple[float | None, float | None]] | None = None,
) -> np.ndarray:
    """The constant and what each column weighs, where each row weighs `weight`."""
    sign = np.where(twin, 1.0, -1.0)
    middle, spread = x.mean(0), x.std(0) + 1e-9
    z = np.c_[np.ones(len(x)), (x - middle) / spread]

    def loss(beta: np.ndarray) -> tuple[float, np.ndarray]:
        margin = sign * (z @ beta)
        wrong = weight * sign / (1 + np.exp(np.clip(margin, -500, 500)))
        held = ridge * np.r_[0.0, beta[1:]]
        return (weight * np.logaddexp(0, -margin)).sum() + held @ beta / 2, held - z.T @ wrong

    beta = minimize(loss, np.zeros(z.shape[1]), jac=True, method="L-BFGS-B", bounds=bounds).x
    slopes = beta[1:] / spread
    return np.r_[beta[0] - slopes @ middle, slopes]


def surely(x: np.ndarray, weights: np.ndarray) -> np.ndarray:
    return 1 / (1 + np.exp(-np.clip(weights[0] + x @ weights[1:], -500, 500)))


def f1(score: np.ndarray, twin: np.ndarray, limit: float) -> float:
    said = score >= limit
    return float(2 * (said & twin).sum() / max(1, said.sum() + twin.sum()))


def sharing(frames: list[Frame], most: int = 10**9) -> list[tuple[int, int]]:
    """The pairs of frames that share a key which at most `most` of them have, in order."""
    by_key = defaultdict(list)
    for number, frame in enumerate(frames):
        for key in keys_of(frame):
            by_key[key].append(number)
    few = (some for some in by_key.values() if len(some) <= most)
    return sorted({pair for some in few for pair in combinations(some, 2)})


def shown(names: list[str], weights: np.ndarray) -> None:
    for name, value in zip(["constant", *names], weights, strict=True):
        print(f'    "{name}": {value + 0.0:.2f},')


def fit_side_by_side(rows: dict[str, list[Pair]]) -> None:
    every = [(name, *row) for name in FILES for row in rows[name]]
    frames = list(ask_frames([text for _, _, *both in every for text in both]))
    seen = [side_by_side.weighed(a, b) for a, b in zip(frames[::2], frames[1::2], strict=True)]
    names = list(seen[0])
    x = np.array([list(row.values()) for row in seen])
    twin = np.array([sort == "twin" for _, sort, *_ in every])
    of = np.array([name for name, *_ in every])
    same = np.array(
        [compare.same_words(a, b) for a, b in zip(frames[::2], frames[1::2], strict=True)]
    )
    never = np.array(list(never_put_together(every, frames)))
    bounds = [(None, None), *map(_bounds, names)]

    def weights_of(here: np.ndarray) -> np.ndarray:
        weight = np.where(np.isin(of[here], list(EARLY)), 1.0, LATE_WEIGHT)
        no_twins = np.full(len(never), NEVER_PUT * weight.sum() / len(never))
        return fitted(
            np.r_[x[here], never],
            np.r_[twin[here], np.zeros(len(never), bool)],
            np.r_[weight, no_twins],
            SIDE_RIDGE,
            bounds,
        )

    score = np.zeros(len(every))
    for name in FILES:
        here = of == name
        score[here] = surely(x[here], weights_of(~here))
    score[same] = 1.0
    late = ~np.isin(of, list(EARLY))
    for name in FILES:
        print(f"{name}: F1 {f1(score[of == name], twin[of == name], side_by_side.ENOUGH):.3f}")
    for what, here in (("early files", ~late), ("late files", late)):
        print(f"{what}: F1 {f1(score[here], twin[here], side_by_side.ENOUGH):.3f}")
    shown(names, weights_of(np.ones(len(every), bool)))


def _bounds(name: str) -> tuple[float | None, float | None]:
    if name in FOR_EITHER or name.endswith(" matched") or name.startswith("what or "):
        return None, None
    return (0.0, None) if name in FOR_A_TWIN else (None, 0.0)


def never_put_together(
    every: list[tuple[str, str, str, str]], frames: list[Frame]
) -> Iterator[list[float]]:
    """The features of pairs of texts that share a key, from different rows, and are no twins."""
    texts = [text for _, _, *both in every for text in both]
    twins = {frozenset(both) for _, sort, *both in every if sort == "twin"}
    found = [
        (i, j)
        for i, j in sharing(frames, most=60)
        if texts[i] != texts[j]
        and frozenset((texts[i], texts[j])) not in twins
        and i // 2 != j // 2
    ]
    np.random.default_rng(0).shuffle(found)
    for i, j in found[:NEVER_PUT_MOST]:
        yield list(side_by_side.weighed(frames[i], frames[j]).values())


def fit_in_a_bank(rows: dict[str, list[Pair]]) -> None:
    every = [(name, *row) for name in FILES for row in rows[name]]
    frames = list(ask_frames([text for _, _, *both in every for text in both]))
    features = [values(a, b) for a, b in zip(frames[::2], frames[1::2], strict=True)]
    told = [n for n, row in enumerate(features) if row is not None]
    twin = np.array([sort == "twin" for _, sort, *_ in every])
    of = np.array([name for name, *_ in every])
    x = np.array([features[n] for n in told])
    _, fitted_on = bank_pairs(0)
    size, held = bank_pairs(1)
    bank = np.array([row for _, row in fitted_on])
    bank_twin = np.array([pair in BANK_TWINS for pair, _ in fitted_on])

    def weights_of(here: np.ndarray) -> np.ndarray:
        return fitted(
            np.r_[x[here[told]], bank],
            np.r_[twin[told][here[told]], bank_twin],
            np.r_[np.ones(here[told].sum()), np.full(len(bank), BANK_WEIGHT)],
            RIDGE,
        )

    score = np.zeros(len(every))
    for name in FILES:
        here = of == name
        if here[told].any():
            score[np.array(told)[here[told]]] = surely(x[here[told]], weights_of(~here))
    weights = weights_of(np.ones(len(every), bool))
    called = surely(np.array([row for _, row in held]), weights)
    for limit in LIMITS:
        print(
            f"from {limit}: F1 {f1(score, twin, limit):.3f} with weights of the other files; in the "
            f"other half of the bank {(called >= limit).sum()} pairs of {size} texts"
        )
    if "--show" in sys.argv:
        for number in np.argsort(-called)[:60]:
            print(f"{called[number]:.2f}", *sorted(held[number][0]), sep="\t")
    shown(list(weigh.features(compare.align(frames[0], frames[1]), frames[0], frames[1])), weights)


def values(a: Frame, b: Frame) -> list[float] | None:
    """The features of a pair of a bank, or None where a rule tells it apart."""
    found = compare.laid_side_by_side(a, b)
    return None if isinstance(found, str) else list(weigh.features(found, a, b).values())


def bank_pairs(half: int) -> tuple[int, list[tuple[frozenset[str], list[float]]]]:
    """How many texts half of the bank has, and its pairs that share a key and no rule tells apart."""
    lines = (PAIRS / "twin_pairs_bank.tsv").read_text("utf-8").splitlines()[1:]
    texts = [t for t in lines if int(hashlib.md5(t.encode()).hexdigest(), 16) % 2 == half]
    frames = list(ask_frames(texts))
    found = (
        (frozenset((texts[i], texts[j])), values(frames[i], frames[j])) for i, j in sharing(frames)
    )
    return len(texts), [(pair, x) for pair, x in found if x is not None]


if __name__ == "__main__":
    of_all = {name: pairs(name) for name in FILES}
    if "bank" in sys.argv:
        fit_in_a_bank(of_all)
    else:
        fit_side_by_side(of_all)
