"""One place in a correct sentence where an error of a skill can be made."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise


@dataclass(frozen=True, slots=True)
class Spot:
    """An error that can be made: its skill and the changes to the corrected text.

    Each edit replaces the characters `start:end` of the corrected text by `text`.
    """

    skill: str
    edits: tuple[tuple[int, int, str], ...]


def one(skill: str, start: int, end: int, text: str) -> Spot:
    """A spot with a single edit."""
    return Spot(skill, ((start, end, text),))


def meet(spots: Iterable[Spot]) -> bool:
    """Whether two edits of the spots change the same characters, or touch as insertions."""
    spans = sorted((a, b) for spot in spots for a, b, _ in spot.edits)
    return any(after[0] < before[1] or after == before for before, after in pairwise(spans))


def carry_out(corrected: str, spots: Iterable[Spot]) -> str:
    """The corrected text with the errors made."""
    text = corrected
    edits = sorted((edit for spot in spots for edit in spot.edits), reverse=True)
    for start, end, new in edits:
        text = text[:start] + new + text[end:]
    return " ".join(text.split())
