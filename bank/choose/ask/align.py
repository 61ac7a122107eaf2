"""Lays the ideas of two asks side by side: which are the same, and which are left over."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from bank.choose.ask.lexicon import Lexicon

Frame = dict[str, Any]
Atom = list[Any]
LIGHT = 0.3
# Kinds too wide for their members to exclude each other.
_LOOSE = frozenset({"workkind", "action"})
# A general word for the other's ("food" for "apple") is half the same and half left unsaid.
_GENERAL = 0.5


@dataclass(frozen=True, slots=True)
class Alignment:
    """What two frames share (`common`, in weights of ideas) and what is left over of each."""

    common: float
    left: tuple[Atom, ...]
    right: tuple[Atom, ...]
    general: float


def align(a: Frame, b: Frame, lex: Lexicon) -> Alignment:
    """Pairs the ideas of two frames greedily, the likest and nearest in place first."""
    left, right = _opened(a["atoms"], b["atoms"], lex), _opened(b["atoms"], a["atoms"], lex)
    pairs = []
    for i, x in enumerate(left):
        for j, y in enumerate(right):
            like = likeness(x, y, lex)
            if like:
                pairs.append((-like, abs(i - j), i, j))
    pairs.sort()
    used_left: set[int] = set()
    used_right: set[int] = set()
    common = general = 0.0
    for minus, _, i, j in pairs:
        if i in used_left or j in used_right:
            continue
        used_left.add(i)
        used_right.add(j)
        if left[i][2] == "n":
            continue
        weight = (left[i][1] + right[j][1]) / 2
        common -= minus * weight
        general += weight if -minus == _GENERAL else 0.0
    return Alignment(
        common,
        tuple(x for i, x in enumerate(left) if i not in used_left),
        tuple(y for j, y in enumerate(right) if j not in used_right),
        general,
    )


def _opened(atoms: list[Atom], others: list[Atom], lex: Lexicon) -> list[Atom]:
    """The ideas, with each phrase that the other text does not have taken apart into its words."""
    known = {name for other in others for name in other[0]}
    opened: list[Atom] = []
    for atom in atoms:
        names = {*atom[0]}
        if atom[3] and not known & names and not opposite(names, known, lex):
            opened += atom[3]
        else:
            opened.append(atom)
    return opened


def opposite(x: set[str], y: set[str], lex: Lexicon) -> bool:
    """Whether one of these names is the opposite of one of those."""
    return any(lex.opposites.get(name, frozenset()) & y for name in x)


def stem(name: str) -> str:
    """The name without its ending, so that "teacher" and "teach" meet."""
    for end in ("fulness", "iness", "ness", "ful", "ing", "ers", "er", "or", "ly", "y", "e", "s"):
        if name.endswith(end) and len(name) - len(end) >= 4:
            return name[: -len(end)]
    return name


def likeness(x: Atom, y: Atom, lex: Lexicon) -> float:
    names_x, names_y = set(x[0]), set(y[0])
    if names_x & names_y:
        return 1.0
    if any(lex.kinds.get(n, frozenset()) & names_y for n in names_x):
        return _GENERAL
    if any(lex.kinds.get(n, frozenset()) & names_x for n in names_y):
        return _GENERAL
    if {stem(n) for n in names_x} & {stem(n) for n in names_y}:
        return 0.9
    return 0.0


def brought(x: Atom, others: list[Atom], lex: Lexicon) -> float:
    """What is left of the cost of an idea that the other text brings along (0: it does not)."""
    names = set(x[0])
    near = 0.0
    for other in others:
        for name in other[0]:
            if lex.related.get(name, frozenset()) & names:
                return 0.2
        if any(lex.related.get(name, frozenset()) & set(other[0]) for name in names):
            near = 0.5
    return near


def clash(x: Atom, y: Atom, lex: Lexicon) -> str:
    """Why two ideas left over tell the asks apart ("" where they need not)."""
    if opposite(set(x[0]), set(y[0]), lex):
        return "opposite"
    kinds = _common_kinds(x, y, lex) - _LOOSE
    return sorted(kinds)[0] if kinds else ""


def kind_clash(x: Atom, y: Atom, lex: Lexicon) -> bool:
    """Whether two ideas left over are different actions or of another wide kind."""
    return bool(_common_kinds(x, y, lex) & _LOOSE)


def _common_kinds(x: Atom, y: Atom, lex: Lexicon) -> set[str]:
    if min(x[1], y[1]) <= LIGHT:
        return set()
    found: set[str] = set()
    for n in x[0]:
        for m in y[0]:
            kinds_n = lex.kinds.get(n, frozenset())
            kinds_m = lex.kinds.get(m, frozenset())
            if m not in kinds_n and n not in kinds_m:
                found |= kinds_n & kinds_m
    return found
