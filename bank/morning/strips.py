"""Sentence-building strips: a correct sentence cut into words or phrases, to be put in order.

The key is the sentence itself. Cutting into phrases needs the parser, so it is done when the strips
are made; they are stored as plain values.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

FEWEST_STRIPS = 3
_STARTERS = frozenset(("ADP", "SCONJ", "CCONJ", "VERB", "AUX"))


class NoStrips(ValueError):
    """A sentence that cannot be cut; the message says why."""


@dataclass(frozen=True, slots=True)
class Strips:
    """`parts` in the order of the sentence, and the same parts `mixed` as they are cut."""

    sentence: str
    parts: tuple[str, ...]
    mixed: tuple[str, ...]

    def to_dict(self) -> dict[str, Any]:
        return {"sentence": self.sentence, "parts": list(self.parts), "mixed": list(self.mixed)}

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> Strips:
        return cls(plain["sentence"], tuple(plain["parts"]), tuple(plain["mixed"]))


def word_strips(sentence: str, number: int = 0) -> Strips:
    """One strip for each word, with the mark that follows it.

    >>> word_strips("The dog ran home.").parts
    ('The', 'dog', 'ran', 'home.')
    """
    return _mixed(sentence, tuple(sentence.split()), number)


def phrase_strips(sentence: str, number: int = 0) -> Strips:
    """One strip for each phrase: who, what they do, where and when.

    >>> phrase_strips("The small dog ran to the old barn.").parts
    ('The small dog', 'ran', 'to the old barn.')
    """
    from bank.language import parse

    doc = parse(sentence)
    inside = {token.i for chunk in doc.noun_chunks for token in chunk if token.i > chunk.start}
    after_preposition = {
        chunk.start
        for chunk in doc.noun_chunks
        if chunk.start and doc[chunk.start - 1].pos_ == "ADP"
    }
    parts: list[str] = []
    for token in doc:
        begins = token.i == 0 or (
            bool(doc[token.i - 1].whitespace_)
            and token.i not in inside
            and token.i not in after_preposition
            and (token.pos_ in _STARTERS or any(c.start == token.i for c in doc.noun_chunks))
            # "is running" and "did not go" stay together.
            and not (token.pos_ == "VERB" and doc[token.i - 1].dep_ in ("aux", "neg", "auxpass"))
        )
        if begins:
            parts.append("")
        parts[-1] += token.text_with_ws
    return _mixed(sentence, tuple(part.strip() for part in parts), number)


def _mixed(sentence: str, parts: tuple[str, ...], number: int) -> Strips:
    """The parts in another order than the sentence's; the same number gives the same order."""
    if len(parts) < FEWEST_STRIPS:
        raise NoStrips(f"{sentence!r} has only {len(parts)} strips; {FEWEST_STRIPS} are needed")
    if len(set(parts)) == 1:
        raise NoStrips(f"all strips of {sentence!r} are the same")
    mixer = random.Random(f"{number} {sentence}")
    mixed = list(parts)
    while tuple(mixed) == parts:
        mixer.shuffle(mixed)
    return Strips(sentence, parts, tuple(mixed))
