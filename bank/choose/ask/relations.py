"""How two ideas stand to each other: the same, opposite, of one kind, or one brings the other along.

An idea is given as the tuple of its names. The answers are kept, for a bank asks the same few
thousand of them over and over.
"""

from __future__ import annotations

from functools import lru_cache

from bank.choose.ask.lexicon import lexicon

Names = tuple[str, ...]

# A general word for the other's ("food" for "apple") is half the same and half left unsaid.
GENERAL = 0.5
SAME_STEM = 0.9
# What is left of the cost of an idea that the other text brings along, or that brings it along.
BROUGHT, BRINGING = 0.2, 0.5
# Kinds too wide for their members to exclude each other.
_LOOSE = frozenset({"workkind", "action"})
_ENDINGS = ("fulness", "iness", "ness", "ful", "ing", "ers", "er", "or", "ly", "y", "e", "s")
_NONE: frozenset[str] = frozenset()
_PARTICLES = {
    "up": frozenset({"down"}),
    "down": frozenset({"up"}),
    "on": frozenset({"off"}),
    "off": frozenset({"on"}),
    "in": frozenset({"out"}),
    "out": frozenset({"in"}),
}
_KEPT = 1 << 17


@lru_cache(maxsize=_KEPT)
def stem(name: str) -> str:
    """The name without its ending, so that "teacher" and "teach" meet.

    >>> stem("teacher"), stem("bus")
    ('teach', 'bus')
    """
    for end in _ENDINGS:
        if name.endswith(end) and len(name) - len(end) >= 4:
            return name[: -len(end)]
    return name


@lru_cache(maxsize=_KEPT)
def alike(x: Names, y: Names) -> float:
    """How far two ideas are the same, from 0 (not at all) to 1."""
    names_x, names_y = set(x), set(y)
    if names_x & names_y:
        return 1.0
    kinds = lexicon().kinds
    if any(kinds.get(n, _NONE) & names_y for n in x) or any(
        kinds.get(n, _NONE) & names_x for n in y
    ):
        return GENERAL
    return SAME_STEM if {stem(n) for n in x} & {stem(n) for n in y} else 0.0


@lru_cache(maxsize=_KEPT)
def opposite(x: Names, y: Names) -> bool:
    """Whether one of these names is the opposite of one of those."""
    opposites = lexicon().opposites
    if any(not opposites.get(name, _NONE).isdisjoint(y) for name in x):
        return True
    return any(_turned_particle(n, m) for n in x if "_" in n for m in y if "_" in m)


def _turned_particle(x: str, y: str) -> bool:
    """Whether two verbs end in opposite particles: come *up*, go *down*."""
    last_x, last_y = x.rpartition("_")[2], y.rpartition("_")[2]
    return last_y in _PARTICLES.get(last_x, _NONE)


@lru_cache(maxsize=_KEPT)
def contradict(x: Names, y: Names) -> bool:
    """Whether of one of these and one of those always one holds (like and dislike)."""
    contradictory = lexicon().contradictory
    return any(not contradictory.get(name, _NONE).isdisjoint(y) for name in x)


@lru_cache(maxsize=_KEPT)
def common_kind(x: Names, y: Names) -> str:
    """The kind of which both are ("animal" for a cow and a cat), or ""."""
    kinds = lexicon().kinds
    found: set[str] = set()
    for n in x:
        for m in y:
            if m not in kinds.get(n, _NONE) and n not in kinds.get(m, _NONE):
                found |= kinds.get(n, _NONE) & kinds.get(m, _NONE)
    return min(found - _LOOSE, default="")


@lru_cache(maxsize=_KEPT)
def left_of_cost(x: Names, other: Names) -> float:
    """What is left of the cost of leaving `x` unsaid beside `other`: 1 where they are unrelated."""
    related = lexicon().related
    if any(not related.get(name, _NONE).isdisjoint(x) for name in other):
        return BROUGHT
    if any(not related.get(name, _NONE).isdisjoint(other) for name in x):
        return BRINGING
    return 1.0


@lru_cache(maxsize=_KEPT)
def is_of(x: Names, kinds: frozenset[str]) -> bool:
    """Whether one of the names is of one of these kinds."""
    return any(lexicon().kinds.get(name, _NONE) & kinds for name in x)
