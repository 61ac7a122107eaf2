"""Her ear: the scale re-anchored to a specialist's judgement of which of two prompts is harder.

The model of R. A. Bradley and M. E. Terry, "Rank analysis of incomplete block designs: the method of
paired comparisons", Biometrika 39, 1952: the chance that one prompt is called harder than another is
the logistic function of the difference of their strengths. Here a strength is a grade: the computed
level is its prior, and her answers move it in two ways, both held near nothing by a normal prior:

- by ingredient: what long words, length, build or the ask weigh for her beside what they weigh in the
  computed level, so that her answers reach every prompt of the bank;
- by prompt: what is left over for the prompts she has judged.

Comparisons say nothing about where the scale starts, so the mean of the compared prompts stays.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations
from math import exp, sqrt
from random import Random
from typing import TYPE_CHECKING, Any

from bank.level.scale import HIGHEST, LOWEST, Level

if TYPE_CHECKING:
    from numpy.typing import NDArray

STEP = 0.6
"""The grades between two prompts of which the harder is told right in about 73 of 100 cases."""
SPREAD_OF_WEIGHTS = 0.4
SPREAD_OF_PROMPTS = 0.5
ENOUGH_ANSWERS = 30
_PAIRS_WEIGHED = 400
_MOST_TURNS = 4


@dataclass(frozen=True, slots=True)
class Heard:
    """A prompt that can be compared: its key, its computed grade, and the grades that each
    ingredient brings to it (`bank.level.parts_of`)."""

    key: str
    grade: float
    parts: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Answer:
    """One judgement: the key of the prompt that is harder to read, and of the other."""

    harder: str
    easier: str


@dataclass(frozen=True, slots=True)
class Ear:
    """A scale re-anchored: what each ingredient weighs more or less, and single prompts' shifts.

    `weights` are shares of what the ingredient brings (0.2: a fifth more), `means` its mean over
    the compared prompts, `shifts` are grades by key, `answers` how many judgements are in it.
    """

    weights: Mapping[str, float]
    means: Mapping[str, float]
    shifts: Mapping[str, float]
    answers: int

    def grade(self, heard: Heard) -> float:
        """The grade of a prompt on her scale, from 0 to 12."""
        moved = sum(
            weight * (heard.parts.get(name, 0.0) - self.means.get(name, 0.0))
            for name, weight in self.weights.items()
        )
        return min(HIGHEST, max(LOWEST, heard.grade + moved + self.shifts.get(heard.key, 0.0)))

    @property
    def code(self) -> str:
        """A short name of this scale, that changes with it."""
        plain = json.dumps(self.to_dict(), sort_keys=True)
        return "ear-" + hashlib.sha256(plain.encode()).hexdigest()[:8]

    def to_dict(self) -> dict[str, Any]:
        return {
            "weights": dict(self.weights),
            "means": dict(self.means),
            "shifts": dict(self.shifts),
            "answers": self.answers,
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> Ear:
        return cls(plain["weights"], plain["means"], plain["shifts"], plain["answers"])


def chance_harder(first: float, second: float, step: float = STEP) -> float:
    """How likely a prompt of strength `first` is called harder than one of strength `second`.

    >>> chance_harder(2.0, 2.0)
    0.5
    """
    return 1.0 / (1.0 + exp((second - first) / step))


def strengths(
    priors: Mapping[str, float],
    answers: Iterable[Answer],
    spread: float = SPREAD_OF_PROMPTS,
    step: float = STEP,
) -> dict[str, float]:
    """The likeliest strength of each prompt by Bradley and Terry, with a normal prior around each.

    `priors` are the computed grades by key; `KeyError` for an answer about another key.
    """
    import numpy as np

    keys = list(priors)
    place = {key: number for number, key in enumerate(keys)}
    design = np.zeros((0, len(keys)))
    for answer in answers:
        row = np.zeros(len(keys))
        row[place[answer.harder]] += 1.0
        row[place[answer.easier]] -= 1.0
        design = np.vstack([design, row])
    start = np.array([priors[key] for key in keys])
    moved, _ = _likeliest(design, design @ start, np.full(len(keys), spread), step)
    return {key: float(start[number] + moved[number]) for key, number in place.items()}


def fit(heard: Sequence[Heard], answers: Sequence[Answer]) -> Ear:
    """The scale re-anchored to the answers; without answers it is the computed one."""
    by_key = {one.key: one for one in heard}
    compared = [by_key[key] for key in _keys(answers)]
    names = _ingredients(compared)
    means = {name: _mean([one.parts.get(name, 0.0) for one in compared]) for name in names}
    moved, _ = _posterior(compared, names, answers)
    keys = [one.key for one in compared]
    return Ear(
        {name: round(float(moved[at]), 4) for at, name in enumerate(names)},
        {name: round(mean, 4) for name, mean in means.items()},
        {key: round(float(moved[len(names) + at]), 4) for at, key in enumerate(keys)},
        len(answers),
    )


def re_anchored(level: Level, heard: Heard, ear: Ear) -> Level:
    """The level on her scale: the grade and its range moved together, the reasons as they are."""
    grade = ear.grade(heard)
    moved = grade - heard.grade

    def held(end: float) -> float:
        return round(min(HIGHEST, max(LOWEST, end + moved)), 2)

    grade = round(grade, 2)
    return replace(
        level, grade=grade, low=min(grade, held(level.low)), high=max(grade, held(level.high))
    )


def next_pair(
    heard: Sequence[Heard],
    answers: Sequence[Answer],
    skipped: Iterable[Answer] = (),
    seed: int = 0,
) -> tuple[str, str] | None:
    """The pair of keys whose answer would tell most; None when every pair has been asked.

    What a pair tells is how much its answer is expected to narrow the posterior: the variance of
    the answer times how uncertain the difference still is. Of a large bank, pairs of near grades
    are drawn by `seed` and weighed. A `skipped` pair tells nothing and is not asked again. A
    prompt comes in four pairs at most while others are left.
    """
    asked = {frozenset((answer.harder, answer.easier)) for answer in (*answers, *skipped)}
    turns: dict[str, int] = {}
    for answer in answers:
        for key in (answer.harder, answer.easier):
            turns[key] = turns.get(key, 0) + 1
    pairs = _pairs_to_weigh(heard, asked, turns, seed)
    if not pairs:
        return None
    ear = fit(heard, answers)
    shown = {one.key: one for pair in pairs for one in pair}
    by_key = {one.key: one for one in heard}
    judged = [by_key[key] for key in _keys(answers)]
    everything = list({one.key: one for one in [*judged, *shown.values()]}.values())
    names = _ingredients(everything)
    _, spread = _posterior(everything, names, answers)

    def told(pair: tuple[Heard, Heard]) -> float:
        row = _row(pair[0], pair[1], everything, names)
        chance = chance_harder(ear.grade(pair[0]), ear.grade(pair[1]))
        return chance * (1 - chance) * float(row @ spread @ row)

    first, second = max(pairs, key=told)
    return first.key, second.key


def held_aside(answers: Sequence[Answer]) -> tuple[list[Answer], list[Answer]]:
    """The answers to learn from and the ones kept aside to check by: every third one is kept."""
    kept = [answer for number, answer in enumerate(answers) if number % 3 == 2]
    return [answer for number, answer in enumerate(answers) if number % 3 != 2], kept


def agreement(heard: Sequence[Heard], answers: Sequence[Answer], ear: Ear | None = None) -> float:
    """The share of answers that the levels order as she does, a tie for half; 0.5 without answers.

    With `ear` by her scale, else by the computed levels.
    """
    if not answers:
        return 0.5
    grade = {one.key: ear.grade(one) if ear else one.grade for one in heard}
    gaps = [grade[answer.harder] - grade[answer.easier] for answer in answers]
    return sum(1.0 if gap > 0 else 0.5 if gap == 0 else 0.0 for gap in gaps) / len(gaps)


def _pairs_to_weigh(
    heard: Sequence[Heard], asked: set[frozenset[str]], turns: Mapping[str, int], seed: int
) -> list[tuple[Heard, Heard]]:
    rested = [one for one in heard if turns.get(one.key, 0) < _MOST_TURNS]
    chosen = rested if len(rested) > 1 else list(heard)
    if len(chosen) <= sqrt(2 * _PAIRS_WEIGHED):
        pairs = list(combinations(chosen, 2))
    else:
        random = Random(f"{seed}/{len(asked)}")
        by_grade = sorted(chosen, key=lambda one: one.grade)
        reach = max(2, len(by_grade) // 8)
        pairs = []
        for _ in range(_PAIRS_WEIGHED):
            at = random.randrange(len(by_grade) - 1)
            other = random.randrange(at + 1, min(len(by_grade), at + reach + 1))
            pairs.append((by_grade[at], by_grade[other]))
    return [
        (first, second)
        for first, second in pairs
        if frozenset((first.key, second.key)) not in asked
    ]


def _keys(answers: Iterable[Answer]) -> list[str]:
    return list(dict.fromkeys(key for one in answers for key in (one.harder, one.easier)))


def _ingredients(heard: Iterable[Heard]) -> list[str]:
    return sorted({name for one in heard for name in one.parts})


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values) if values else 0.0


def _row(
    harder: Heard, easier: Heard, everything: Sequence[Heard], names: Sequence[str]
) -> NDArray[Any]:
    """What one comparison looks at: the ingredients' differences, and the two prompts."""
    import numpy as np

    by_prompt = [(one.key == harder.key) - (one.key == easier.key) for one in everything]
    by_part = [harder.parts.get(name, 0.0) - easier.parts.get(name, 0.0) for name in names]
    return np.array([*by_part, *by_prompt], dtype=float)


def _posterior(
    everything: Sequence[Heard], names: Sequence[str], answers: Sequence[Answer]
) -> tuple[NDArray[Any], NDArray[Any]]:
    import numpy as np

    by_key = {one.key: one for one in everything}
    pairs = [(by_key[answer.harder], by_key[answer.easier]) for answer in answers]
    rows = [_row(harder, easier, everything, names) for harder, easier in pairs]
    width = len(names) + len(everything)
    spread = np.r_[
        np.full(len(names), SPREAD_OF_WEIGHTS), np.full(len(everything), SPREAD_OF_PROMPTS)
    ]
    gaps = np.array([harder.grade - easier.grade for harder, easier in pairs], dtype=float)
    return _likeliest(np.array(rows).reshape(len(rows), width), gaps, spread, STEP)


def _likeliest(
    design: NDArray[Any], gaps: NDArray[Any], spread: NDArray[Any], step: float
) -> tuple[NDArray[Any], NDArray[Any]]:
    """The posterior's mode and its variance (Newton's method; the posterior has one summit).

    `design` has one row for each answer, `gaps` the prior difference, harder less easier; `spread`
    is the prior's standard deviation of each column.
    """
    import numpy as np

    held = np.diag(1.0 / spread**2)
    moved = np.zeros(len(spread))
    for _ in range(50):
        right = 1.0 / (1.0 + np.exp(-(gaps + design @ moved) / step))
        slope = design.T @ (1.0 - right) / step - held @ moved
        bend = design.T @ (design * (right * (1.0 - right))[:, None]) / step**2 + held
        change = np.linalg.solve(bend, slope)
        moved = moved + change
        if float(np.abs(change).max(initial=0.0)) < 1e-9:
            break
    right = 1.0 / (1.0 + np.exp(-(gaps + design @ moved) / step))
    bend = design.T @ (design * (right * (1.0 - right))[:, None]) / step**2 + held
    return moved, np.linalg.inv(bend)
