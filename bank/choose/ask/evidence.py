"""All that is weighed of two asks, and the judgement by what each piece of it weighs."""

from __future__ import annotations

from collections.abc import Mapping
from math import exp

from bank.choose.ask.align import LIGHT, Alignment, Frame, Idea, align, brought
from bank.choose.ask.apart import APART
from bank.choose.ask.bound import little_in_common
from bank.choose.ask.left_apart import LEFT_APART
from bank.choose.ask.relations import alike, opposite
from bank.choose.ask.sides import exchanged_sides
from bank.choose.ask.weigh import features, told


def judged(a: Frame, b: Frame, weights: Mapping[str, float]) -> float:
    """How likely two frames ask the same, from 0 to 1; what `weights` does not name weighs nothing."""
    if same_words(a, b):
        return 1.0
    values = weighed(a, b)
    if _other_unknown(values, a, b):
        return 0.0
    total = weights["constant"]
    total += sum(weights.get(name, 0.0) * value for name, value in values.items())
    return 1 / (1 + exp(-max(-500.0, min(500.0, total))))


def same_words(a: Frame, b: Frame) -> bool:
    """Whether two frames are of texts that become the same words when each is put plainly."""
    return bool(a["words"] == b["words"] and a["liking"] == b["liking"])


def weighed(a: Frame, b: Frame) -> dict[str, float]:
    """All that is weighed: the features of `weigh`, what is left over in each role, and what differs.

    Each rule that tells two asks apart is one more feature, 1 where it would.
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
