"""Whether two asks that someone holds side by side are the same: there a twin is as likely as not.

Two texts that someone holds side by side were chosen to be alike: there each rule that tells asks
apart is one more thing to weigh, beside what is matched and what is left over. Before Monday and
after Sunday are opposites, and still the same day. In a bank the same things weigh otherwise
(`in_a_bank`).
"""

from __future__ import annotations

from bank.choose.ask.align import Frame
from bank.choose.ask.evidence import judged

ENOUGH = 0.5


def same_frames(a: Frame, b: Frame) -> bool:
    """Whether two frames ask the same."""
    return judged(a, b, WEIGHTS) >= ENOUGH


# Fitted by `tests/bench/fit_twins.py`; what is not named weighs nothing.
WEIGHTS = {
    "constant": 1.95,
    "light": 0.31,
    "general": -0.40,
    "one_idea": -0.38,
    "plain_both": -0.17,
    "cost_both": -0.18,
    "covered_product": 1.45,
    "narrowing": -1.29,
    "you_on_one_side": -0.10,
    "likes_on_one_side": -0.93,
    "shorter": 0.32,
    "near": -2.69,
    "near_by_one_idea": -0.53,
    "other_want": -1.38,
    "like_want": -1.92,
    "choice_and_other": 1.12,
    "both_what": 0.04,
    "one_definite_want": 0.87,
    "topic": -0.01,
    "other_liking": -1.59,
    "supposed_on_one_side": -0.21,
    "asked_by_another_side": 0.21,
    "other_part_of_speech": 0.10,
    "in_condition_on_one_side": -0.23,
    "asked thing on both sides": -2.95,
    "asked thing on one side": -0.81,
    "asked thing matched": -0.26,
    "deed on both sides": -0.34,
    "deed on one side": -0.36,
    "deed matched": -0.13,
    "doer on one side": -0.61,
    "doer matched": -0.24,
    "done on both sides": -1.10,
    "done on one side": -0.17,
    "done matched": -0.49,
    "how or where on both sides": -0.28,
    "how or where on one side": -0.09,
    "how or where matched": -0.21,
    "condition matched": -0.03,
    "asked in one, given in the other": -1.06,
    "other doer": -0.35,
    "sides exchanged": -4.01,
    "an opposite": -2.08,
    "other mode": -1.13,
    "mode on one side": -0.54,
    "mode of a yes or no": -1.57,
    "what or how": 1.31,
    "what or why": -0.82,
    "what or who": 0.02,
    "what or where": -0.54,
    "what or amount": 0.43,
    "what or yesno": -2.86,
    "what or tell": 1.80,
    "two definite wants": -1.65,
    "other liking": -5.87,
    "other time": -2.13,
    "other want": -1.45,
    "other thing asked for": -1.13,
    "other way round": -6.96,
    "exchanged": -2.72,
    "changed places": -5.59,
    "asked of the other side": -7.75,
    "a not": -3.57,
    "one word is another": -3.30,
    "said nearly alike of another idea": -1.07,
    "someone else": -2.32,
    "unrelated things": -1.60,
    "opposite of a small word": -5.09,
    "opposites, or two of a kind": -0.68,
    "other want, same ideas": -0.39,
}
