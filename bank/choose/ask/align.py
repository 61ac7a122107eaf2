"""Lays the ideas of two asks side by side: which are the same, and which are left over."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from bank.choose.ask.lexicon import lexicon
from bank.choose.ask.relations import GENERAL, alike, common_kind, left_of_cost, opposite

Frame = dict[str, Any]
LIGHT = 0.3


@dataclass(frozen=True, slots=True)
class Idea:
    """One idea of a text: its names, its weight, and its role (see `frame`)."""

    names: tuple[str, ...]
    weight: float
    role: str


@dataclass(frozen=True, slots=True)
class Alignment:
    """What two frames share, and what is left over of each.

    `common` and `general` are weights of ideas, `general` of those that match by a general word;
    `left_all` and `right_all` are all the ideas; `matched` the pairs laid side by side and how far
    they are the same; `near` is how near the wordings are (Dice over neighbouring words).
    """

    common: float
    general: float
    left: tuple[Idea, ...]
    right: tuple[Idea, ...]
    left_all: tuple[Idea, ...]
    right_all: tuple[Idea, ...]
    matched: tuple[tuple[Idea, Idea, float], ...]
    near: float


def align(a: Frame, b: Frame) -> Alignment:
    """Pairs the ideas of two frames greedily, the likest and nearest in place first."""
    left, right = ideas(a, b), ideas(b, a)
    pairs = []
    for i, x in enumerate(left):
        for j, y in enumerate(right):
            like = alike(x.names, y.names)
            if like:
                pairs.append((-like, abs(i - j), i, j))
    pairs.sort()
    used_left: set[int] = set()
    used_right: set[int] = set()
    matched: list[tuple[Idea, Idea, float]] = []
    common = general = 0.0
    for minus, _, i, j in pairs:
        if i in used_left or j in used_right:
            continue
        used_left.add(i)
        used_right.add(j)
        if left[i].role == "n":
            continue
        weight = (left[i].weight + right[j].weight) / 2
        matched.append((left[i], right[j], -minus))
        common -= minus * weight
        general += weight if -minus == GENERAL else 0.0
    return Alignment(
        common,
        general,
        tuple(x for i, x in enumerate(left) if i not in used_left and not _measured(x, a, b)),
        tuple(y for j, y in enumerate(right) if j not in used_right and not _measured(y, b, a)),
        tuple(left),
        tuple(right),
        tuple(matched),
        nearness(a["said"], b["said"]),
    )


def _measured(x: Idea, own: Frame, other: Frame) -> bool:
    """Whether `x` is the measure of a comparison that both have: `apart` has looked at that."""
    return bool(own["compares"] and other["compares"] and set(x.names) & set(own["compares"][0]))


def nearness(a: list[str], b: list[str]) -> float:
    """The share of neighbouring words that two wordings have in common (Dice)."""
    pairs_a = {*zip(a, a[1:], strict=False)}
    pairs_b = {*zip(b, b[1:], strict=False)}
    return 2 * len(pairs_a & pairs_b) / max(1, len(pairs_a) + len(pairs_b))


def ideas(own: Frame, other: Frame) -> list[Idea]:
    """The ideas of `own`; a phrase that `other` neither has nor explains is taken apart.

    *Mail carrier* stays whole beside "who delivers letters", which says what a mail carrier does.
    """
    known = frozenset(
        name for atom in other["atoms"] for names, *_ in (atom, *atom[3]) for name in names
    )
    opened: list[Idea] = []
    for names, weight, role, parts in own["atoms"]:
        if parts and not _meets(tuple(names), known):
            opened += [Idea(tuple(n), w, r) for n, w, r, _ in parts]
        else:
            opened.append(Idea(tuple(names), weight, role))
    return opened


def _meets(names: tuple[str, ...], known: frozenset[str]) -> bool:
    """Whether a phrase is known, is the opposite of what is known, or brings some of it along."""
    brings = lexicon().related.get(names[0], frozenset())
    return (
        not known.isdisjoint(names)
        or not known.isdisjoint(brings)
        or opposite(names, tuple(sorted(known)))
    )


def brought(x: Idea, others: tuple[Idea, ...]) -> float:
    """What is left of the cost of leaving `x` unsaid beside the other text (1: all of it)."""
    return min((left_of_cost(x.names, other.names) for other in others), default=1.0)


def clash(x: Idea, y: Idea) -> str:
    """Why two ideas left over tell the asks apart ("" where they need not)."""
    if opposite(x.names, y.names):
        return "opposite"
    return common_kind(x.names, y.names) if min(x.weight, y.weight) > LIGHT else ""
