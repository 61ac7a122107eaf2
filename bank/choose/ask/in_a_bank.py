"""How surely two asks of a bank are the same: there nearly no pair is a twin.

The same things are weighed as of two asks held side by side, but weigh otherwise: the pairs of a bank
that share a key are the rule, and each pair that is kept as twins takes items out of the draw.
"""

from __future__ import annotations

from bank.choose.ask.align import Frame
from bank.choose.ask.evidence import judged


def how_surely(a: Frame, b: Frame) -> float:
    """How surely two frames of a bank ask the same, from 0 to 1."""
    return judged(a, b, WEIGHTS)


# Fitted by `tests/bench/fit_twins.py bank`; what is not named weighs nothing.
WEIGHTS = {
    "constant": -1.99,
    "light": 0.71,
    "general": -2.63,
    "one_idea": -1.31,
    "plain_both": -0.19,
    "plain_one": -0.59,
    "cost_both": -0.40,
    "cost_one": -0.35,
    "covered_worse": 3.35,
    "covered_product": 2.72,
    "narrowing": -0.67,
    "you_on_one_side": -0.73,
    "likes_on_one_side": -0.52,
    "shorter": 0.36,
    "near": -1.65,
    "near_by_one_idea": 1.14,
    "other_want": -1.76,
    "like_want": -0.42,
    "other_want_by_one_idea": -0.83,
    "choice_and_other": -0.43,
    "both_what": 0.91,
    "one_definite_want": 1.68,
    "topic": -0.20,
    "supposed_on_one_side": -0.63,
    "asked_by_another_side": -0.43,
    "other_part_of_speech": -0.71,
    "in_condition_on_one_side": 0.49,
    "asked thing on both sides": -0.82,
    "asked thing on one side": -0.08,
    "asked thing matched": -0.17,
    "deed on both sides": -0.51,
    "deed on one side": -0.04,
    "deed matched": -0.68,
    "doer on both sides": -0.88,
    "doer on one side": -0.69,
    "doer matched": 0.26,
    "done on both sides": -0.94,
    "done on one side": -0.08,
    "done matched": -0.02,
    "how or where on both sides": -0.61,
    "how or where on one side": -0.33,
    "how or where matched": -0.15,
    "condition matched": 0.38,
    "asked in one, given in the other, of one want": -0.72,
    "asked in one, given in the other": -0.53,
    "other doer": -0.69,
    "sides exchanged": -5.31,
    "an opposite": -0.62,
    "other mode": -1.01,
    "mode on one side": -0.14,
    "mode of a yes or no": -1.60,
    "what or how": 0.67,
    "what or why": -0.12,
    "what or who": 0.14,
    "what or where": -0.12,
    "what or amount": 1.42,
    "what or yesno": -0.90,
    "what or tell": 0.77,
    "two definite wants": -1.14,
    "other liking": -8.12,
    "other time": -2.41,
    "other want": -0.87,
    "other thing asked for": -0.79,
    "other way round": -8.40,
    "exchanged": -2.75,
    "changed places": -5.67,
    "asked of the other side": -8.01,
    "a not": -2.00,
    "one word is another": -3.72,
    "said nearly alike of another idea": -1.07,
    "someone else": -1.87,
    "unrelated things": -0.66,
    "opposite of a small word": -3.11,
    "opposites, or two of a kind": -0.51,
    "other want, same ideas": -1.92,
}
