"""Where common words stand: the grade in which they are read, and the stage at which learners of
English meet them, word by word.

`lists/placed.tsv` was written for this project from judgement, word by word: 17,900 words. About
1,400 of the commonest were placed by two readings made apart and have their mean; the two agree
with a correlation of 0.98. Outside check: the grades go with the age-of-acquisition norms of
V. Kuperman, H. Stadthagen-Gonzalez and M. Brysbaert ("Age-of-acquisition ratings for 30,000 English
words", Behavior Research Methods 44, 2012) with a correlation of 0.90 over 14,000 words, where the
frequency of a word reaches 0.53 (`tests/bench/fit_level.py words NORMS.csv`). The norms are no part
of the project. A word that is not in the file may still be a regular form of one that is.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib import resources
from typing import NamedTuple

from bank.level import forms


class Placement(NamedTuple):
    """The grade (0 to 12) in which most children who grow up with English read the word and know
    it, and the stage (1 to 6, A1 to C2) at which learners of English as a second language do."""

    grade: float
    stage: float


FORM_OF = Placement(0.2, 0.1)
"""By how much a regular form is placed later than its base."""


def placement(text: str) -> Placement | None:
    """The placement of a lower-case word, or None where neither it nor a base has one.

    >>> placement("cupcakes").grade < 1.5 < placement("verdicts").grade
    True
    """
    placed = placements()
    if text in placed:
        return placed[text]
    bases = [base for base, _ in forms.inflected_from(text)] + list(forms.compared_from(text))
    found = min((placed[base] for base in bases if base in placed), default=None)
    if found is None:
        return None
    return Placement(min(12.0, found.grade + FORM_OF.grade), min(6.0, found.stage + FORM_OF.stage))


@cache
def placements() -> Mapping[str, Placement]:
    """Every placed word."""
    file = resources.files("bank.level").joinpath("lists", "placed.tsv")
    rows = (line.split("\t") for line in file.read_text("utf-8").splitlines() if line[0] != "#")
    return {word: Placement(float(grade), float(stage)) for word, grade, stage in rows}
