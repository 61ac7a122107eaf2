"""Fit the numbers of the level: how early a word is learnt, and what each feature of a text weighs.

    python tests/bench/fit_level.py words [NORMS.csv]
    python tests/bench/fit_level.py texts GRADED_SENTENCES.tsv

`words` fits what stands in for a missing placement, and reports how the placements go with the
age-of-acquisition norms of Kuperman and others (2012; columns Word and AoA_Kup); `texts` needs the
encyclopedia part of CEFR-SP (Arase, Uchida and Kajiwara, EMNLP 2022) as sentence, first rater,
second rater, separated by tabs. Neither is part of the project. What is printed goes into
`bank/level/vocabulary.py` and `bank/level/weights.py`.
"""

from __future__ import annotations

import csv
import hashlib
import re
import sys
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from scipy.optimize import nnls

from bank import language
from bank.level import evidence, vocabulary
from bank.level.canonical import canonical
from bank.level.forms import compared_from, inflected_from
from bank.level.placements import placements
from bank.level.weights import JUDGED

GRADED = Path(__file__).parents[1] / "bank" / "level" / "graded.tsv"
PLACED = Path(__file__).parents[1] / "bank" / "level" / "placed.tsv"
# So that fifty placed prompts say where the scale lies, and the sentences its order.
PLACED_WEIGHT = 8.0
# Each group of our own sentences counts in all about a quarter as much as the encyclopedia's, which
# are many more and hold no everyday talk: so many times each of its sentences.
OWN_GROUPS = {"mixed": 2.0, "course": 10.0}
RIDGE = 4.0
WIDER, WIDEST_ABOUT = 1.08, 4.0


def first_byte(text: str) -> int:
    return hashlib.md5(text.encode()).digest()[0]


def held_out(sentence: str) -> bool:
    """A third of the graded sentences is never fitted on."""
    return first_byte(sentence) % 3 == 0


def joined_tokens(sentence: str) -> str:
    """The sentence as it is written, from tokens with spaces between ("do n't", "dog .")."""
    sentence = sentence.replace(" n't", "n't").replace("`` ", '"').replace(" ''", '"')
    sentence = sentence.replace("-LRB- ", "(").replace(" -RRB-", ")")
    sentence = re.sub(r" ('(?:s|re|ve|ll|d|m)\b)", r"\1", sentence)
    sentence = re.sub(r" ([.,;:!?)\]%])", r"\1", sentence)
    return re.sub(r"([(\[$]) ", r"\1", sentence)


def graded(path: Path) -> list[tuple[str, float]]:
    """The sentences of a graded file with the mean of the two raters."""
    rows = [line.split("\t") for line in path.read_text("utf-8").splitlines()[1:]]
    return [(joined_tokens(text), (float(a) + float(b)) / 2) for text, a, b in rows]


def placed(half: int | None = None, path: Path = PLACED) -> list[tuple[float, str, str]]:
    """The placed prompts (grade, kind, text); half 0 is tuned on, half 1 is reported."""
    rows = [line.split("\t") for line in path.read_text("utf-8").splitlines()[1:]]
    return [
        (float(grade), kind, text)
        for number, (grade, kind, text) in enumerate(rows)
        if half is None or number % 2 == half
    ]


def own_graded(group: str, half: int | None = None) -> list[tuple[str, float]]:
    """Our own sentences with the stage by judgement; half 0 is fitted on, half 1 is reported.

    Group "mixed" was written so that length alone tells little, "course" as sentences of a course
    come; each was graded for itself.
    """
    rows = [line.split("\t") for line in GRADED.read_text("utf-8").splitlines()[1:]]
    return [
        (text, float(stage))
        for stage, named, text in rows
        if named == group and (half is None or first_byte(text) % 2 == half)
    ]


def seen_in(texts: list[tuple[str, str]]) -> list[dict[str, float]]:
    """The features of pairs (text, kind)."""
    ready = [canonical(text, kind) for text, kind in texts]
    return [
        evidence.features(evidence.evidence(doc, kind), kind)
        for doc, (_, kind) in zip(language.parse_many(ready), texts, strict=True)
    ]


def fit_words(norms: Path | None) -> None:
    """The weights for a word without a placement, as if the placed ones had none."""
    known = placements()
    words = [
        word
        for word in known
        if len(word) > 2
        and not any(base in known for base, _ in inflected_from(word))
        and not any(base in known for base in compared_from(word))
    ]
    groups = np.array([vocabulary.group_of(word) for word in words])
    tuned = np.array([first_byte(word) % 2 == 0 for word in words])
    measured = np.array([vocabulary.measures(word) for word in words])
    grades = np.array([known[word].grade for word in words])
    # Only rare words have no placement, so those count most.
    met = np.where(measured[:, 1] > 2.5, 2.0, 1.0)
    print(f"{len(words)} words, {tuned.sum()} tuned on")
    for group in vocabulary.GROUPS:
        here = (groups == group) & tuned
        if not here.any():
            continue
        rows = np.c_[measured[here], -measured[here][:, :1]] * met[here][:, None]
        found, _ = nnls(rows, grades[here] * met[here])
        found[0] -= found[-1]
        weights = found[:-1]
        kept = (groups == group) & ~tuned
        agreement = np.corrcoef(measured[kept] @ weights, grades[kept])[0, 1]
        shown = ", ".join(f"{weight:.2f}" for weight in weights)
        print(f'    "{group}": ({shown}),  # r {agreement:.2f} on {kept.sum()} words kept aside')
    if norms is not None:
        of_norms(norms)


def of_norms(path: Path) -> None:
    """Outside check: how the placements go with the age-of-acquisition norms."""
    with path.open(encoding="latin-1", newline="") as file:
        ages = {}
        for row in csv.DictReader(file):
            try:
                ages[row["Word"].lower()] = float(row["AoA_Kup"])
            except ValueError:
                continue
    both = [word for word in placements() if word in ages]
    wanted = np.array([ages[word] for word in both])
    for name, found in (
        ("placements", [placements()[word].grade for word in both]),
        ("the grade in which a word is learnt", [vocabulary.word(word).learnt for word in both]),
        ("rarity", [vocabulary.rarity(word) for word in both]),
        ("levels for learners", [vocabulary.learner_level(word) for word in both]),
    ):
        agreement = np.corrcoef(found, wanted)[0, 1]
        print(f"{name}: r {agreement:.2f} with the age of acquisition of {len(both)} words")


SIGNED = ("start", "topic")


def fit_texts(path: Path) -> None:
    encyclopedia = [(text, grade) for text, grade in graded(path) if not held_out(text)]
    prompts = placed(half=0)
    names = [
        name
        for name in evidence.features(evidence.evidence(language.parse("A dog."), "topic"), "topic")
        if name not in JUDGED
    ]

    def judged(rows: list[dict[str, float]]) -> np.ndarray:
        return np.array([sum(JUDGED[name] * row[name] for name in JUDGED) for row in rows])

    def rated(texts: list[tuple[str, float]], weight: float) -> Rated:
        rows = seen_in(
            [(text, "question" if text.endswith("?") else "sentence") for text, _ in texts]
        )
        return Rated(
            np.array([[row[name] for name in names] for row in rows]),
            judged(rows),
            np.array([grade for _, grade in texts]),
            weight,
        )

    scale = seen_in([(text, kind) for _, kind, text in prompts])
    weights = fitted(
        [
            rated(encyclopedia, 1.0),
            *(rated(own_graded(group, half=0), many) for group, many in OWN_GROUPS.items()),
        ],
        np.array([[row[name] for name in names] for row in scale]),
        np.array([grade for grade, _, _ in prompts]) - judged(scale),
        [names.index(name) for name in SIGNED],
    )
    weights = widened(weights, names.index("start"))
    for name, weight in zip(names, weights, strict=True):
        print(f'    "{name}": {weight:.2f},')


def widened(weights: np.ndarray, start: int) -> np.ndarray:
    """The weights on a scale a little wider than the fit's, which least squares has drawn together.

    The factor is about half of what would undo it on the tuned half of the placed prompts.
    """
    wide = weights * WIDER
    wide[start] += WIDEST_ABOUT * (1 - WIDER)
    return wide


@dataclass
class Rated:
    """Sentences in the order of their raters: features, what `JUDGED` gives, ratings, and how much
    each counts."""

    rows: np.ndarray
    judged: np.ndarray
    ratings: np.ndarray
    weight: float


def fitted(
    orders: list[Rated], scale: np.ndarray, grades: np.ndarray, signed: list[int]
) -> np.ndarray:
    """The weights that put the placed prompts at their grades and the sentences in their order.

    Each raters' scale is taken for a straight line over the grades whose start and slope are
    found in turn with the weights; no weight is below zero but the ones in `signed`.
    """
    lines = [(1.0, 0.0)] * len(orders)
    spread = np.vstack([*(order.rows for order in orders), scale]).std(0)
    weights = np.zeros(scale.shape[1])
    for _ in range(30):
        rows, wanted = [scale * PLACED_WEIGHT], [grades * PLACED_WEIGHT]
        for order, (slope, start) in zip(orders, lines, strict=True):
            counts = np.sqrt(order.weight)
            rows.append(order.rows * slope * counts)
            wanted.append((order.ratings - start - slope * order.judged) * counts)
        many = sum(len(part) for part in wanted)
        held = np.sqrt(RIDGE * many / 100) * np.diag(spread)
        left, right = np.vstack([*rows, held]), np.r_[*wanted, np.zeros(len(held))]
        found, _ = nnls(np.c_[left, -left[:, signed]], right)
        weights = found[: scale.shape[1]].copy()
        weights[signed] -= found[scale.shape[1] :]
        lines = []
        for order in orders:
            slope, start = np.polyfit(order.rows @ weights + order.judged, order.ratings, 1)
            lines.append((max(slope, 0.05), start))
    return weights


if __name__ == "__main__":
    sys.path.insert(0, ".")
    if sys.argv[1] == "words":
        fit_words(Path(sys.argv[2]) if sys.argv[2:] else None)
    else:
        fit_texts(Path(sys.argv[2]))
