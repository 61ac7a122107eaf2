"""The level of a text, from its words, its length and how it is built."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from bank import language
from bank.level.canonical import canonical
from bank.level.formulas import LazyFormulas
from bank.level.scale import HIGHEST, KINDS, LOWEST, Level, Reason

if TYPE_CHECKING:
    from spacy.tokens import Doc

METHOD = "0"
"""The version of the method: it changes when the levels do, so that stored ones can be redone."""


def level_text(text: str, kind: str = "question") -> Level:
    """How hard `text` is to read, as a reading grade from 0 to 12 with its range.

    `kind` is one of `KINDS`. `ValueError` for another kind, and for a text without an English word.
    """
    ready = _ready(text, kind)
    return _level(ready, kind, language.parse(ready))


def level_many(texts: Iterable[tuple[str, str]]) -> Iterator[Level]:
    """The levels of pairs (text, kind), in order, parsed in batches; errors as in `level_text`."""
    pairs = [(_ready(text, kind), kind) for text, kind in texts]
    docs = language.parse_many(text for text, _ in pairs)
    for (text, kind), doc in zip(pairs, docs, strict=True):
        yield _level(text, kind, doc)


def _ready(text: str, kind: str) -> str:
    if kind not in KINDS:
        raise ValueError(f"{kind!r} is not a kind of text; the kinds are {', '.join(KINDS)}")
    if not any(letter.isascii() and letter.isalpha() for letter in text):
        raise ValueError(f"no English word in {text!r}")
    return canonical(text, kind)


def _level(text: str, kind: str, doc: Doc) -> Level:
    words = [token for token in doc if token.is_alpha]
    rarity = sorted(
        (
            (max(0.0, 6.2 - language.zipf(token.lower_)), token.text)
            for token in words
            if not token.is_stop and token.pos_ != "PROPN"
        ),
        reverse=True,
    ) or [(0.0, "")]
    hardest = rarity[0][0]
    mean = sum(cost for cost, _ in rarity) / len(rarity)
    length = 0.9 * math.log2(max(2, len(words))) - 1.2
    grade = min(HIGHEST, max(LOWEST, length + 0.5 * hardest + 0.7 * mean))
    spread = 0.5 + 1.5 / math.sqrt(max(1, len(words)))
    reasons = tuple(
        Reason("word", word, round(cost / 2, 1), round(max(0, grade - cost / 2), 1), f'"{word}"')
        for cost, word in rarity[:3]
        if cost > 2
    )
    return Level(
        round(grade, 2),
        round(max(LOWEST, grade - spread), 2),
        round(min(HIGHEST, grade + spread), 2),
        LazyFormulas(text),
        reasons,
    )
