"""The keys under which twins are looked for.

A key is one idea of a text, or two of them together. Two twins nearly always share at least one; of
the other items of a bank about two in a hundred share an idea, and few share two. Each idea gives
its group of synonyms, the word itself and its stem; a phrase also gives the ideas of its words.
Ideas that stand in many texts ("first", "two") are keys only of a text that has little else.

Where a bank is large, the keys with the fewest items are to be followed first: the pairs are there
for the twins that share only ideas which many items have.
"""

from __future__ import annotations

from itertools import combinations
from typing import Any

from bank.choose.ask.align import LIGHT
from bank.choose.ask.relations import stem

Frame = dict[str, Any]
Atom = list[Any]

MOST_PAIRED = 4
_IN_MANY_TEXTS = frozenset(
    "prefer not without two three see look need want help day time first last before after same "
    "different class year find think say tell ask work good say eat".split()
)
_NEVER = frozenset("you have get go make do be put come give keep use".split())


def keys_of(frame: Frame) -> list[str]:
    """The keys of a frame, sorted."""
    ideas = [x for atom in frame["atoms"] for x in (atom, *atom[3])]
    telling = [x for x in ideas if x[1] > LIGHT and not _IN_MANY_TEXTS & {*x[0]}]
    if len({x[0][0] for x in telling}) < 2:
        telling = [x for x in ideas if not _NEVER & {*x[0]}]
    telling = telling or ideas
    singles = {key for atom in telling for key in _keys_of_idea(atom)}
    return sorted(singles | _pairs(telling))


def _keys_of_idea(atom: Atom) -> set[str]:
    return {form for name in atom[0] for form in (name, stem(name))}


def _pairs(ideas: list[Atom]) -> set[str]:
    heaviest = sorted(ideas, key=lambda atom: (-atom[1], atom[0][0]))
    names = list(dict.fromkeys(atom[0][0] for atom in heaviest))[:MOST_PAIRED]
    return {"+".join(sorted(pair)) for pair in combinations(names, 2)}
