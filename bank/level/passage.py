"""The level of a passage: on the scale of the published grade formulas, ordered by its words.

The published formulas say where a passage of 150 words and more lies on the trade's scale; within
one grade of their median, the words and the clauses say where it lies among its like. A shorter
passage is bound to them less, the shorter it is.
"""

from __future__ import annotations

from statistics import median
from typing import TYPE_CHECKING

from bank.level import formulas
from bank.level.evidence import Evidence

if TYPE_CHECKING:
    from spacy.tokens import Doc

FULL_LENGTH = 150
NEAREST = 0.75
"""How far from the formulas' median a passage of full length may lie, in grades."""
PER_WORD_SHORT = 1 / 25
"""How much farther for each word that is missing to the full length."""


def blended(plain: float, text: str, seen: Evidence, doc: Doc) -> float:
    """The level of a passage, from the level `plain` that its words and clauses give."""
    published = [value.value for value in formulas.of_text(text) if value.unit == "grade"]
    middle = median(published)
    reach = NEAREST + max(0, FULL_LENGTH - seen.running) * PER_WORD_SHORT
    return min(middle + reach, max(middle - reach, plain))
