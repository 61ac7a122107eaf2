"""All the numbers of the level: graded sentences, placed prompts, pairs, passages.

    python tests/bench/report_level.py [ENCYCLOPEDIA.tsv] [LEARNER.tsv] [PLACED.tsv]

The graded sentences are the two parts of CEFR-SP (Arase, Uchida and Kajiwara, EMNLP 2022) as
sentence, first rater, second rater; they are no part of the project. Of the encyclopedia file
only the third that is never fitted on is used; the learner file is never fitted on. Without
files, the placed prompts and the pairs of the tests are reported, each half for itself.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import numpy as np
from scipy.stats import spearmanr

sys.path[:0] = [".", str(Path(__file__).parent)]

import fit_level  # noqa: E402

from bank.level.weights import WEIGHTS, as_grade  # noqa: E402

PAIRS = fit_level.PLACED.with_name("ordered_pairs.tsv")
# Each ingredient with the features that go when it is left out.
INGREDIENTS = {
    "early and late words": ("late", "late squared"),
    "word frequency": ("rare",),
    "levels for learners": ("learner",),
    "spelling": ("odd",),
    "length": ("letters", "sentences"),
    "clauses": ("clause", "relative", "that", "conditional"),
    "passives": ("passive",),
    "negation": ("negation",),
    "what is asked": ("why", "compare", "explain", "how"),
    "kind": ("topic", "topic late", "sort", "sort late", "sort odd"),
}


def totals(rows: list[dict[str, float]], weights: Mapping[str, float]) -> np.ndarray:
    sums = [sum(weights.get(name, 0.0) * value for name, value in row.items()) for row in rows]
    return np.array(sums)


def levels(rows: list[dict[str, float]]) -> np.ndarray:
    return np.array([as_grade(total) for total in totals(rows, WEIGHTS)])


def order(name: str, texts: list[tuple[str, float]]) -> None:
    kinds = ["question" if text.endswith("?") else "sentence" for text, _ in texts]
    rows = fit_level.seen_in([(text, kind) for (text, _), kind in zip(texts, kinds, strict=True)])
    ratings = np.array([grade for _, grade in texts])
    easy = ratings <= 2

    def agreement(weights: Mapping[str, float]) -> str:
        # Before it is held between the ends of the scale, where all would be alike.
        found = totals(rows, weights)
        whole = spearmanr(found, ratings)[0]
        half = spearmanr(found[easy], ratings[easy])[0]
        return f"{whole:.3f} (easy half {half:.3f})"

    print(f"{name}: {len(texts)} sentences, Spearman {agreement(WEIGHTS)}")
    for ingredient, left_out in INGREDIENTS.items():
        rest = {key: value for key, value in WEIGHTS.items() if key not in left_out}
        print(f"    without {ingredient}: {agreement(rest)}")


def distance(name: str, prompts: list[tuple[float, str, str]]) -> None:
    found = levels(fit_level.seen_in([(text, kind) for _, kind, text in prompts]))
    grades = np.array([grade for grade, _, _ in prompts])
    away = np.abs(found - grades)
    worst = np.argsort(-away)[:4]
    print(
        f"{name}: {len(prompts)} prompts, mean distance {away.mean():.2f}, "
        f"within one grade {(away <= 1).mean():.0%}, bias {(found - grades).mean():+.2f}"
    )
    for grade in np.unique(grades):
        print(f"    grade {grade}: mean level {found[grades == grade].mean():.2f}")
    for number in worst:
        print(f"    {grades[number]} got {found[number]:.1f}: {prompts[number][2]}")


def pairs(path: Path) -> None:
    rows = [line.split("\t") for line in path.read_text("utf-8").splitlines()[1:]]
    for half in (0, 1):
        chosen = [row for number, row in enumerate(rows) if number % 2 == half]
        easier = levels(fit_level.seen_in([(row[2], row[1]) for row in chosen]))
        harder = levels(fit_level.seen_in([(row[3], row[1]) for row in chosen]))
        print(
            f"pairs, {'reported' if half else 'tuned'} half: {len(chosen)}, ordered right "
            f"{(harder > easier).mean():.1%}, least gap {(harder - easier).min():.2f}"
        )


def passages(texts: list[tuple[str, float]]) -> None:
    """Passages of 100 to 200 words, made of graded sentences of near grade."""
    from bank.level import formulas, level_text

    made = made_passages(texts)
    graded = [grade for _, grade in made]
    found = [level_text(text, "passage").grade for text, _ in made]
    print(f"made passages: {len(made)}, Spearman {spearmanr(found, graded)[0]:.3f}")
    values: dict[str, list[float]] = {}
    for text, _ in made:
        for published in formulas.of_text(text):
            values.setdefault(published.code, []).append(published.value)
    for code, of_all in values.items():
        print(f"    {code}: {abs(spearmanr(of_all, graded)[0]):.3f}")


def made_passages(
    texts: list[tuple[str, float]], words: Callable[[Any], int] | None = None
) -> list[tuple[str, float]]:
    random = np.random.default_rng(1)
    noisy = [grade + random.normal(0, 0.8) for _, grade in texts]
    in_order = [texts[number] for number in np.argsort(noisy)]
    made: list[tuple[str, float]] = []
    held: list[tuple[str, float]] = []
    wanted = 100
    for pair in in_order:
        held.append(pair)
        if sum(len(text.split()) for text, _ in held) >= wanted:
            made.append((" ".join(text for text, _ in held), float(np.mean([g for _, g in held]))))
            held, wanted = [], int(random.integers(100, 190))
    return made


def main(files: list[Path]) -> None:
    kept: list[tuple[str, float]] = []
    if files:
        kept = [pair for pair in fit_level.graded(files[0]) if fit_level.held_out(pair[0])]
        order("encyclopedia, kept aside", kept)
    if len(files) > 1:
        order("learner", fit_level.graded(files[1]))
    if len(files) > 2:
        distance("placed prompts of the file", fit_level.placed(None, files[2]))
    for group in fit_level.OWN_GROUPS:
        for half, name in ((0, "tuned"), (1, "reported")):
            order(f"own {group} sentences, {name} half", fit_level.own_graded(group, half))
    distance("own placed prompts, tuned half", fit_level.placed(0))
    distance("own placed prompts, reported half", fit_level.placed(1))
    pairs(PAIRS)
    if kept:
        passages(kept)


if __name__ == "__main__":
    main([Path(name) for name in sys.argv[1:]])
