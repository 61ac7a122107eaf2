"""What each feature of a text weighs in its level, in grades.

`FITTED` is found by `tests/bench/fit_level.py texts` (least squares, no weight but the start and
the topic's below zero): to put half of the placed prompts of the tests at their grades, and in
their raters' order half of our own graded sentences (`graded.tsv` of the tests) and two thirds of
the encyclopedia sentences of CEFR-SP (Y. Arase, S. Uchida and T. Kajiwara, "CEFR-based
sentence-difficulty annotation and assessment", EMNLP 2022; CC BY-SA 3.0). Neither CEFR-SP's
sentences nor their grades are part of the project. `JUDGED` is set by judgement, where the
sentences have no questions or say nothing against it.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from bank.level.scale import HIGHEST, LOWEST

FITTED: Mapping[str, float] = {
    "start": -3.13,
    "letters": 1.38,
    "late": 0.51,
    "late squared": 0.02,
    "rare": 1.72,
    "learner": 1.21,
    "topic": 0.64,
}
JUDGED: Mapping[str, float] = {
    "sentences": 0.6,
    "clause": 0.15,
    "relative": 0.15,
    "that": 0.2,
    "conditional": 0.4,
    "passive": 0.15,
    "negation": 0.15,
    "why": 0.8,
    "topic late": 0.4,
    "compare": 0.6,
    "odd": 0.3,
    "how": 0.4,
    "explain": 0.8,
    "sort": 0.5,
    "sort late": 0.8,
    "sort odd": 0.3,
}
# Prompts of the first grades come out too high, by the placed prompts of both halves and by the grade
# that each prompt of the demo bank was written for. Set by judgement on both, at about half of what
# would undo it for the demo bank's: so the reported half is no test of this line.
BENT = ((-0.5, 0.0), (1.0, 0.75), (1.9, 1.5), (2.7, 2.5), (3.5, 3.5))
# A short text of several hard words runs up faster than a person would place it; above grade 4.5
# only this share of the rest counts. Set on the placed prompts.
EASED_FROM, EASED_TO = 4.5, 0.7
WEIGHTS: Mapping[str, float] = {**FITTED, **JUDGED}


def as_grade(total: float) -> float:
    """The reading grade of a prompt from the sum of what it weighs, between the scale's ends.

    >>> as_grade(1.9), as_grade(7.0), as_grade(-1.0)
    (1.5, 6.25, 0.0)
    """
    bent = _bent(total)
    eased = EASED_FROM + EASED_TO * (bent - EASED_FROM) if bent > EASED_FROM else bent
    return round(min(HIGHEST, max(LOWEST, eased)), 9)


def _bent(total: float) -> float:
    """`total` on the line through the points of `BENT`, and one for one outside them."""
    if total <= BENT[0][0]:
        return total - BENT[0][0] + BENT[0][1]
    for (start, low), (end, high) in pairwise(BENT):
        if total <= end:
            return low + (high - low) * (total - start) / (end - start)
    return total - BENT[-1][0] + BENT[-1][1]
