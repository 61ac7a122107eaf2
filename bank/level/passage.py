"""The level of a longer text: on the scale of the published grade formulas, ordered by its words.

A prompt's level is a grade by judgement; a passage's is on the trade's scale, the one that the
published formulas share. So the level of a text of `PROMPT_LENGTH` words and more is drawn to that
scale, and held near the median of the published grade formulas: within `NEAREST` grades from
`FULL_LENGTH` words on, and farther the shorter it is.
"""

from __future__ import annotations

from math import tanh
from statistics import median

from bank.level import formulas
from bank.level.scale import HIGHEST, LOWEST
from bank.level.weights import as_grade

PROMPT_LENGTH, FULL_LENGTH = 30, 150
NEAREST = 0.8
"""How far from the formulas' median a passage of full length may lie, in grades."""
PER_MISSING_WORD = 1 / 25
"""How much farther for each word that is missing to the full length."""
PULL = 0.7
"""How much of the way from the median to the words' own level is gone, where there is room."""
# Two straight lines (start, slope) from the level as a prompt to the median of the grade formulas;
# the lower one holds. Set by hand: the first on passages made of our own placed prompts, grade by
# grade, the second on passages made of encyclopedia sentences of CEFR-SP that are fitted on
# (`tests/bench/report_level.py` makes such passages of the others).
TO_THE_TRADE = ((-0.8, 1.95), (2.4, 1.4))
# The grade formulas; of the two Spache equations the one that textstat computes.
GRADE_FORMULAS = (
    "flesch_kincaid",
    "spache",
    "new_dale_chall",
    "coleman_liau",
    "ari",
    "gunning_fog",
    "smog",
)


def on_the_trade_scale(total: float, text: str, running: int) -> float:
    """The level of a text of `running` words whose words and build weigh `total` in all."""
    plain = as_grade(total)
    if running <= PROMPT_LENGTH:
        return plain
    long = min(1.0, (running - PROMPT_LENGTH) / (FULL_LENGTH - PROMPT_LENGTH))
    traded = min(start + slope * total for start, slope in TO_THE_TRADE)
    wanted = plain + long * (traded - plain)
    middle = middle_of_formulas(text)
    reach = NEAREST + max(0, FULL_LENGTH - running) * PER_MISSING_WORD
    grade = middle + reach * tanh(PULL * (wanted - middle) / reach)
    return min(HIGHEST, max(LOWEST, grade))


def middle_of_formulas(text: str) -> float:
    """The median of the published grade formulas."""
    return median(found.value for found in formulas.of_text(text) if found.code in GRADE_FORMULAS)
