"""Whether two frames ask the same: first what tells them apart, then how much they share."""

from __future__ import annotations

from math import exp, log
from typing import Any

from bank.choose.ask.align import LIGHT, Alignment, Atom, align, brought, clash
from bank.choose.ask.apart import APART, differing
from bank.choose.ask.lexicon import Lexicon, lexicon

Frame = dict[str, Any]

ENOUGH = 0.45
# Leaving one of these unsaid asks something else, unless another word brings it along.
_NARROWING = frozenset(
    "animal relative helper someone meal weekday month season holiday daypart timeword place room "
    "number planet".split()
)
# Wants that may stand for each other where all ideas are the same.
_TOLD_ALIKE = {
    frozenset(pair)
    for pair in (
        ("what", "how"),
        ("what", "tell"),
        ("how", "tell"),
        ("who", "tell"),
        ("who", "name"),
        ("choice", "what"),
        ("choice", "who"),
        ("choice", "where"),
        ("choice", "yesno"),
    )
}


def same_frames(a: Frame, b: Frame) -> bool:
    """Whether two frames ask the same."""
    return decide(a, b)[0] >= ENOUGH


def decide(a: Frame, b: Frame) -> tuple[float, str]:
    """How surely two frames ask the same (0 where something tells them apart), and why."""
    lex = lexicon()
    if a["words"] == b["words"] and a["liking"] == b["liking"]:
        return 1.0, "the same words"
    for name, apart in APART:
        if apart(a, b, lex):
            return 0.0, name
    found = align(a, b, lex)
    name = _left_over_apart(found, a, b, lex)
    if name:
        return 0.0, name
    values = features(found, a, b, lex)
    if not found.common:
        return 0.0, "nothing in common"
    total = _WEIGHTS["constant"] + sum(_WEIGHTS[name] * value for name, value in values.items())
    rest = f"{[x[0][0] for x in found.left]} / {[y[0][0] for y in found.right]}"
    return 1 / (1 + exp(-total)), rest


def _left_over_apart(found: Alignment, a: Frame, b: Frame, lex: Lexicon) -> str:
    if any(x[2] == "n" for x in (*found.left, *found.right)):
        return "a not"
    if _one_word_apart(found, a, b):
        return "one word is another"
    if _turned_word(found.left, b, lex) or _turned_word(found.right, a, lex):
        return "opposite of a small word"
    for x in found.left:
        for y in found.right:
            if not (_measured(x, a, b) and _measured(y, b, a)):
                name = clash(x, y, lex)
                if name:
                    return f"{name}: {x[0][0]} / {y[0][0]}"
    wants = frozenset({a["wants"], b["wants"]})
    if len(wants) == 2 and wants not in _TOLD_ALIKE:
        cost = sum(costs(found, a, b, lex))
        if cost <= 0.1:
            return "other want, same ideas"
    return ""


def _one_word_apart(found: Alignment, a: Frame, b: Frame) -> bool:
    """What do you put on your bed? / What do you put under your bed?"""
    rest_a, rest_b = differing(a["said"], b["said"])
    return max(len(rest_a), len(rest_b)) <= 2 and bool(_told(found.left) or _told(found.right))


def _turned_word(rest: tuple[Atom, ...], other: Frame, lex: Lexicon) -> bool:
    """How do you get on the bus? / How do you get off the bus?"""
    small = {"on", "in", "up", "with"} & set(other["words"])
    return any(
        lex.opposites.get(n, frozenset()) & small for x in rest for n in x[0] if x[1] <= LIGHT + 0.2
    )


def _measured(x: Atom, own: Frame, other: Frame) -> bool:
    """Whether `x` is the measure of a comparison that the other text turns around."""
    return bool(own["compares"] and other["compares"] and set(x[0]) & set(own["compares"][0]))


def costs(found: Alignment, a: Frame, b: Frame, lex: Lexicon) -> tuple[float, float]:
    """What the ideas left over on each side weigh."""
    left = sum(_cost(x, b, lex) for x in found.left if not _measured(x, a, b))
    right = sum(_cost(y, a, lex) for y in found.right if not _measured(y, b, a))
    return left, right


def _cost(x: Atom, other: Frame, lex: Lexicon) -> float:
    weight: float = x[1]
    if (
        weight <= LIGHT
        or other["wants"] in ("what", "who", "where")
        and not other["head"]
        and x[2] == "h"
    ):
        weight = LIGHT * 0.5
    said = brought(x, other["atoms"], lex)
    if said:
        return weight * said
    if weight > LIGHT and any(lex.kinds.get(n, frozenset()) & _NARROWING for n in x[0]):
        return weight * 1.5
    return weight


def features(found: Alignment, a: Frame, b: Frame, lex: Lexicon) -> dict[str, float]:
    """What the decision weighs."""
    left, right = costs(found, a, b, lex)
    near = _nearness(a["said"], b["said"])
    wants = frozenset({a["wants"], b["wants"]})
    return {
        "share": found.common / (found.common + left + right) if found.common else 0.0,
        "evidence": log(1 + found.common),
        "worse_side": min(_covered(a, found.left), _covered(b, found.right)),
        "both": min(left, right),
        "one": max(left, right),
        "near_one": near * min(max(left, right), 1.0),
        "someone_else": float(_someone_else(found, a, b, lex)),
        "general": found.general,
        "other_want": float(wants not in _TOLD_ALIKE and len(wants) == 2),
        "like_want": float(wants in _TOLD_ALIKE),
        "other_liking": float(a["liking"] != b["liking"]),
        "topic": float("tell" in wants),
        "other_verb": float(_other_verb(a, b)),
    }


def _covered(frame: Frame, rest: tuple[Atom, ...]) -> float:
    """The share of a frame's ideas, by weight, that the other frame has as well."""
    left_over = sum(x[1] for x in rest)
    everything = sum(x[1] for x in frame["atoms"])
    return max(0.0, 1 - left_over / everything) if everything else 0.0


def _other_verb(a: Frame, b: Frame) -> bool:
    verbs_a, verbs_b = set(a["verbs"]), set(b["verbs"])
    ideas_a = {name for names, *_ in a["atoms"] for name in names}
    ideas_b = {name for names, *_ in b["atoms"] for name in names}
    return bool(verbs_a and not verbs_a & ideas_b and verbs_b and not verbs_b & ideas_a)


def _told(rest: tuple[Atom, ...]) -> list[Atom]:
    return [x for x in rest if x[0][0] != "you"]


def _someone_else(found: Alignment, a: Frame, b: Frame, lex: Lexicon) -> bool:
    """What makes you angry? / What makes your teacher angry?"""
    for rest, other in ((found.left, b), (found.right, a)):
        for x in rest:
            someone = any(
                lex.kinds.get(n, frozenset()) & {"relative", "helper", "someone"} for n in x[0]
            )
            if someone and x[2] != "h" and not brought(x, other["atoms"], lex):
                return True
    return False


def _nearness(a: list[str], b: list[str]) -> float:
    """The share of neighbouring words that two wordings have in common (Dice)."""
    pairs_a = {*zip(a, a[1:], strict=False)}
    pairs_b = {*zip(b, b[1:], strict=False)}
    return 2 * len(pairs_a & pairs_b) / max(1, len(pairs_a) + len(pairs_b))


_WEIGHTS = {
    "constant": 0.25,
    "share": 5.75,
    "evidence": 2.03,
    "worse_side": -2.12,
    "both": -0.67,
    "one": -1.68,
    "near_one": -0.26,
    "someone_else": -1.73,
    "general": -3.84,
    "other_want": -2.33,
    "like_want": -1.24,
    "other_liking": -3.11,
    "topic": -0.7,
    "other_verb": 0.56,
}
