"""How much two asks share, as numbers, and what they weigh in the decision.

The weights were fitted by logistic regression to the pairs of twins and near misses beside the
tests, with pairs drawn from the demo bank as further pairs that are no twins.
"""

from __future__ import annotations

from math import exp, log

from bank.choose.ask.align import LIGHT, Alignment, Frame, Idea, brought
from bank.choose.ask.relations import is_of

# Leaving one of these unsaid asks something else, unless another word brings it along.
_NARROWING = frozenset(
    "animal relative helper someone meal weekday month season holiday daypart timeword place room "
    "number planet".split()
)
SOMEONE = frozenset({"relative", "helper", "someone"})
# Wants that may stand for each other.
TOLD_ALIKE = frozenset(
    frozenset(pair)
    for pair in (
        ("what", "how"),
        ("what", "tell"),
        ("how", "tell"),
        ("feel", "tell"),
        ("who", "tell"),
        ("who", "name"),
        ("choice", "what"),
        ("choice", "who"),
        ("choice", "where"),
        ("choice", "yesno"),
    )
)


def probability(found: Alignment, a: Frame, b: Frame) -> float:
    """How surely the aligned frames ask the same, from 0 to 1."""
    values = features(found, a, b)
    total = WEIGHTS["constant"] + sum(WEIGHTS[name] * value for name, value in values.items())
    return 1 / (1 + exp(-total))


def features(found: Alignment, a: Frame, b: Frame) -> dict[str, float]:
    """What the decision weighs, under the names of `WEIGHTS`.

    `share` is what is common of all that is told; `evidence` how much is common; `worse_side` the
    share of the text of which less is common; `both` and `one` what is left over on both sides and
    on the fuller one; `general` what matches by a general word only; the others are 1 where they
    hold.
    """
    left, right = costs(found, a, b)
    wants = frozenset({a["wants"], b["wants"]})
    return {
        "share": found.common / (found.common + left + right) if found.common else 0.0,
        "evidence": log(1 + found.common),
        "worse_side": min(
            _covered(found.left_all, found.left), _covered(found.right_all, found.right)
        ),
        "both": min(left, right),
        "one": max(left, right),
        "general": found.general,
        "other_want": float(wants not in TOLD_ALIKE and len(wants) == 2),
        "like_want": float(wants in TOLD_ALIKE),
        "other_liking": float(a["liking"] != b["liking"]),
        "topic": float("tell" in wants),
        "other_verb": float(_other_verb(a, b)),
    }


def costs(found: Alignment, a: Frame, b: Frame) -> tuple[float, float]:
    """What the ideas left over on each side weigh."""
    left = sum(_cost(x, b, found.right_all) for x in found.left)
    right = sum(_cost(y, a, found.left_all) for y in found.right)
    return left, right


def _cost(x: Idea, other: Frame, others: tuple[Idea, ...]) -> float:
    weight = x.weight
    unnamed = x.role == "h" and other["wants"] in ("what", "who", "where") and not other["head"]
    if weight <= LIGHT or unnamed:
        weight = LIGHT / 2
    left = brought(x, others)
    if left == 1.0 and weight > LIGHT and is_of(x.names, _NARROWING):
        return weight * 1.5
    return weight * left


def told(rest: tuple[Idea, ...]) -> list[Idea]:
    """The ideas left over that are more than "you"."""
    return [x for x in rest if x.names[0] != "you"]


def _covered(everything: tuple[Idea, ...], rest: tuple[Idea, ...]) -> float:
    whole = sum(x.weight for x in everything)
    return 1 - sum(x.weight for x in rest) / whole if whole else 0.0


def _other_verb(a: Frame, b: Frame) -> bool:
    if not (a["verbs"] and b["verbs"]):
        return False
    ideas_a = {name for names, *_ in a["atoms"] for name in names}
    ideas_b = {name for names, *_ in b["atoms"] for name in names}
    return ideas_b.isdisjoint(a["verbs"]) and ideas_a.isdisjoint(b["verbs"])


WEIGHTS = {
    "constant": 0.84,
    "share": 4.67,
    "evidence": 0.84,
    "worse_side": -0.76,
    "both": -0.66,
    "one": -1.51,
    "general": -1.82,
    "other_want": -3.19,
    "like_want": -1.86,
    "other_liking": -1.25,
    "topic": -1.97,
    "other_verb": 0.32,
}
