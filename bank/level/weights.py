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
    "start": -1.70,
    "length": 1.67,
    "late": 0.90,
    "late squared": 0.03,
    "rare": 2.58,
    "learner": 0.75,
    "topic": 0.96,
    "that": 0.47,
    "conditional": 0.69,
    "negation": 0.24,
    "why": 1.06,
    "compare": 0.88,
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
