"""What each feature of a text weighs in its level, in grades.

`FITTED` is found by `tests/bench/fit_level.py texts` (least squares, no weight but the start and
the topic's below zero): to put half of the placed prompts of the tests at their grades and two
thirds of the encyclopedia sentences of CEFR-SP in their raters' order (Y. Arase, S. Uchida and T.
Kajiwara, "CEFR-based sentence-difficulty annotation and assessment", EMNLP 2022; CC BY-SA 3.0).
Neither the sentences nor their grades are part of the project. `JUDGED` is set by judgement,
where the sentences have no questions or say nothing against it.
"""

from __future__ import annotations

from collections.abc import Mapping

from bank.level.scale import HIGHEST, LOWEST

FITTED: Mapping[str, float] = {
    "start": -2.17,
    "length": 1.85,
    "late": 1.01,
    "late squared": 0.04,
    "rare": 2.31,
    "learner": 0.63,
    "topic": 0.88,
    "that": 0.51,
    "conditional": 0.69,
    "negation": 0.23,
    "why": 1.10,
}
JUDGED: Mapping[str, float] = {
    "sentences": 0.3,
    "clause": 0.15,
    "relative": 0.15,
    "passive": 0.1,
    "topic late": 0.4,
    "compare": 0.6,
    "odd": 0.3,
    "how": 0.4,
    "explain": 0.8,
}
# A short text of several hard words runs up faster than a person would place it; above grade 5 only
# this share of the rest counts. Set on the tuned half of the placed prompts.
EASED_FROM, EASED_TO = 5.0, 0.7
WEIGHTS: Mapping[str, float] = {**FITTED, **JUDGED}


def as_grade(total: float) -> float:
    """The reading grade of a prompt from the sum of what it weighs, between the scale's ends.

    >>> as_grade(3.2), as_grade(7.0), as_grade(-1.0)
    (3.2, 6.4, 0.0)
    """
    eased = EASED_FROM + EASED_TO * (total - EASED_FROM) if total > EASED_FROM else total
    return min(HIGHEST, max(LOWEST, eased))
