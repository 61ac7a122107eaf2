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

FITTED: Mapping[str, float] = {
    "start": -1.71,
    "length": 1.67,
    "late": 0.93,
    "late squared": 0.02,
    "rare": 2.20,
    "learner": 0.84,
    "topic": 0.95,
    "that": 0.48,
    "conditional": 0.68,
    "negation": 0.25,
    "why": 1.04,
    "compare": 0.86,
}
JUDGED: Mapping[str, float] = {
    "sentences": 0.3,
    "clause": 0.15,
    "relative": 0.15,
    "passive": 0.1,
    "odd": 0.3,
    "how": 0.4,
    "explain": 0.8,
}
WEIGHTS: Mapping[str, float] = {**FITTED, **JUDGED}
