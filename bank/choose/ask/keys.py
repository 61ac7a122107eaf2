"""The keys under which twins are looked for.

A key is one idea of a text. Two twins share at least one of them nearly always; of the other items
of a bank, about two in a hundred do. Each idea gives its group of synonyms, the word itself and its
stem; a phrase also gives the ideas of its words. Ideas that stand in many texts ("first", "two")
are keys only of a text that has little else.
"""

from __future__ import annotations

from typing import Any

from bank.choose.ask.align import LIGHT
from bank.choose.ask.relations import stem

Frame = dict[str, Any]
Atom = list[Any]

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
    return sorted({key for atom in telling or ideas for key in _keys_of_idea(atom)})


def _keys_of_idea(atom: Atom) -> set[str]:
    return {form for name in atom[0] for form in (name, stem(name))}
