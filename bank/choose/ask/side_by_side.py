"""Whether two asks that someone holds side by side are the same: there a twin is as likely as not.

In a bank nearly no pair is a twin, so there one rule that tells two asks apart is enough (`compare`).
Two texts that someone holds side by side were chosen to be alike: there each rule is one more thing
to weigh, beside what is matched and what is left over. Before Monday and after Sunday are opposites,
and still the same day.
"""

from __future__ import annotations

from math import exp

from bank.choose.ask.align import LIGHT, Alignment, Frame, Idea, align, brought
from bank.choose.ask.apart import APART
from bank.choose.ask.bound import little_in_common
from bank.choose.ask.compare import LEFT_APART, same_words
from bank.choose.ask.relations import alike, opposite
from bank.choose.ask.sides import exchanged_sides
from bank.choose.ask.weigh import features, told

ENOUGH = 0.5


def same_frames(a: Frame, b: Frame) -> bool:
    """Whether two frames ask the same."""
    return likely(a, b) >= ENOUGH


def likely(a: Frame, b: Frame) -> float:
    """How likely two frames ask the same, from 0 to 1, where half of the pairs do."""
    if same_words(a, b):
        return 1.0
    values = weighed(a, b)
    if _other_unknown(values, a, b):
        return 0.0
    total = WEIGHTS["constant"]
    total += sum(WEIGHTS.get(name, 0.0) * value for name, value in values.items())
    return 1 / (1 + exp(-max(-500.0, min(500.0, total))))


def weighed(a: Frame, b: Frame) -> dict[str, float]:
    """All that is weighed: the features of `weigh`, what is left over in each role, and what differs.

    Each rule that tells two asks of a bank apart is one more feature here, 1 where it would.
    """
    found = align(a, b)
    values = features(found, a, b)
    for role, name in ROLES.items():
        left = _left_over(found.left, role, found.right_all)
        right = _left_over(found.right, role, found.left_all)
        values[f"{name} on both sides"] = min(left, right)
        values[f"{name} on one side"] = max(left, right) - min(left, right)
        values[f"{name} matched"] = _matched(found, role)
    wants = frozenset({a["wants"], b["wants"]})
    telling = [(x, y) for x, y, _ in found.matched if min(x.weight, y.weight) > LIGHT]
    given = float(sum((x.role == "h") != (y.role == "h") for x, y in telling))
    values["asked in one, given in the other, of one want"] = given if len(wants) == 1 else 0.0
    values["asked in one, given in the other"] = given if len(wants) == 2 else 0.0
    values["no telling idea in common"] = float(not telling)
    turned = exchanged_sides(a, b)
    opposites = any(opposite(x.names, y.names) for x in found.left for y in found.right)
    modes = {*a["modes"]} ^ {*b["modes"]}
    both_have = bool(a["modes"] and b["modes"])
    for name, holds in (
        ("other doer", _other_doer(a, b)),
        ("sides exchanged", turned and not opposites),
        ("an opposite", opposites and not turned),
        ("other mode", modes and both_have),
        ("mode on one side", modes and not both_have),
        ("mode of a yes or no", modes and a["wants"] == b["wants"] == "yesno"),
        *((f"{one} or {other}", wants == {one, other}) for one, other in WANTS),
        ("two definite wants", len(wants) == 2 and wants <= DEFINITE),
        ("little in common", little_in_common(a, b)),
        *((name, apart(a, b)) for name, apart in APART),
        ("nothing in common", not found.common),
        *((name, apart(found, a, b)) for name, apart in LEFT_APART),
    ):
        values[name] = float(bool(holds))
    return values


# Wants of which the one is at times put for the other, and wants that never are.
WANTS = (
    ("what", "how"),
    ("what", "why"),
    ("what", "who"),
    ("what", "where"),
    ("what", "amount"),
    ("what", "yesno"),
    ("what", "tell"),
)
DEFINITE = frozenset({"who", "when", "where", "why", "amount", "yesno", "how"})
# The roles of an idea (see `frame`) under the names of what is weighed.
ROLES = {
    "h": "asked thing",
    "v": "deed",
    "s": "doer",
    "o": "done",
    "m": "how or where",
    "c": "condition",
}


def _other_unknown(values: dict[str, float], a: Frame, b: Frame) -> bool:
    """What is a map? / Where is the map? And: How big are the cups? / How many cups are there?

    The one thing that no other wording makes up for.
    """
    wants = {a["wants"], b["wants"]}
    other_amount = wants == {"amount"} and a["head"] != b["head"]
    return other_amount or bool(values["other want, same ideas"] and wants & DEFINITE)


def _left_over(rest: tuple[Idea, ...], role: str, others: tuple[Idea, ...]) -> float:
    return sum(
        x.weight * brought(x, others) for x in told(rest) if x.role == role and x.weight > LIGHT
    )


def _matched(found: Alignment, role: str) -> float:
    return sum(
        how_far
        for x, y, how_far in found.matched
        if x.role == y.role == role and min(x.weight, y.weight) > LIGHT
    )


def _other_doer(a: Frame, b: Frame) -> bool:
    one, other = tuple(a["doer"]), tuple(b["doer"])
    return bool(one and other and "?" not in (one[0], other[0]) and not alike(one, other))


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
