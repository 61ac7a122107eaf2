"""Fit what each feature of two asks weighs, by logistic regression, and report how well it does.

    PYTHONPATH=. python tests/bench/fit_twins.py [bank [--show]]

*Side by side*, a twin is as likely as not: fitted on the pairs of twins and near misses beside the
tests, without the third of the first file that is held aside and without the last file, which was
never fitted on; the files that came first weigh less, for the rules were made after them. A tenth
as much again are pairs of texts that share a key and were never put side by side: no twins. No weight
has the sign that it cannot have by its name. Each file is told apart with weights of the others.

*In a bank*, nearly no pair is a twin: all pairs that share a key within a bank of 3,074 texts (the
demo bank, before those that an earlier comparison took for twins were left out of it), beside half the
weight of the pairs of the files. Those that an earlier fit held for a tenth likely and more were read
one by one: the twins stand in `twins_by_reading.tsv`, beside those of which the reader was unsure, which
count for neither. Each fifth of the pairs and of the files is told apart with weights of the others;
`--show` prints what is called twins so.

What is printed goes into `bank/choose/ask/side_by_side.py` and `bank/choose/ask/in_a_bank.py`.
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

from bank.choose.ask import evidence, side_by_side
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
# What a twin of the bank and a pair of the files weigh beside a pair of the bank that is none.
BANK_TWIN_WEIGHT, FILE_WEIGHT, BANK_RIDGE, FOLDS = 20.0, 0.5, 30.0, 5
LIMITS = (0.7, 0.75, 0.8, 0.85, 0.9)
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
    seen = [evidence.weighed(a, b) for a, b in zip(frames[::2], frames[1::2], strict=True)]
    names = list(seen[0])
    x = np.array([list(row.values()) for row in seen])
    twin = np.array([sort == "twin" for _, sort, *_ in every])
    of = np.array([name for name, *_ in every])
    same = np.array(
        [evidence.same_words(a, b) for a, b in zip(frames[::2], frames[1::2], strict=True)]
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
        yield list(evidence.weighed(frames[i], frames[j]).values())


def fit_in_a_bank(rows: dict[str, list[Pair]]) -> None:
    every = [(name, *row) for name in FILES for row in rows[name]]
    frames = list(ask_frames([text for _, _, *both in every for text in both]))
    seen = [evidence.weighed(a, b) for a, b in zip(frames[::2], frames[1::2], strict=True)]
    names = list(seen[0])
    x = np.array([list(row.values()) for row in seen])
    twin = np.array([sort == "twin" for _, sort, *_ in every])
    fold = np.array([FILES.index(name) % FOLDS for name, *_ in every])
    lines = (PAIRS / "twin_pairs_bank.tsv").read_text("utf-8").splitlines()[1:]
    asks = list(ask_frames(lines))
    read = by_reading()
    found = [
        (i, j) for i, j in sharing(asks) if read.get(frozenset((lines[i], lines[j]))) != "unsure"
    ]
    bank = np.array([list(evidence.weighed(asks[i], asks[j]).values()) for i, j in found])
    bank_twin = np.array([frozenset((lines[i], lines[j])) in read for i, j in found])
    bank_fold = np.array([_number(lines[i] + lines[j]) % FOLDS for i, j in found])
    bounds = [(None, None), *map(_bounds, names)]

    def weights_of(here: np.ndarray, there: np.ndarray) -> np.ndarray:
        return fitted(
            np.r_[bank[here], x[there]],
            np.r_[bank_twin[here], twin[there]],
            np.r_[
                np.where(bank_twin[here], BANK_TWIN_WEIGHT, 1.0), np.full(there.sum(), FILE_WEIGHT)
            ],
            BANK_RIDGE,
            bounds,
        )

    score, called = np.zeros(len(every)), np.zeros(len(found))
    for number in range(FOLDS):
        weights = weights_of(bank_fold != number, fold != number)
        score[fold == number] = surely(x[fold == number], weights)
        called[bank_fold == number] = surely(bank[bank_fold == number], weights)
    print(
        f"{len(lines)} texts, {len(found)} pairs that share a key, {bank_twin.sum()} read as twins"
    )
    for limit in LIMITS:
        kept = called >= limit
        print(
            f"from {limit}: {kept.sum()} called in the bank, {(kept & bank_twin).sum()} of them twins "
            f"by reading; of the files' pairs {(score[twin] >= limit).mean():.2f} of the twins and "
            f"{(score[~twin] >= limit).mean():.3f} of the near misses"
        )
    if "--show" in sys.argv:
        for number in np.argsort(-called)[:60]:
            i, j = found[number]
            said = "twin" if bank_twin[number] else ""
            print(f"{called[number]:.2f}", said, lines[i], lines[j], sep="\t")
    shown(names, weights_of(np.ones(len(found), bool), np.ones(len(every), bool)))


def by_reading() -> dict[frozenset[str], str]:
    """The pairs of the bank that were read as twins, and those of which the reader was unsure."""
    rows = (PAIRS / "twins_by_reading.tsv").read_text("utf-8").splitlines()[1:]
    return {frozenset((a, b)): sort for sort, a, b in (row.split("\t") for row in rows)}


def _number(text: str) -> int:
    return int(hashlib.md5(text.encode()).hexdigest(), 16)


if __name__ == "__main__":
    of_all = {name: pairs(name) for name in FILES}
    if "bank" in sys.argv:
        fit_in_a_bank(of_all)
    else:
        fit_side_by_side(of_all)
