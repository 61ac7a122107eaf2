"""The level of a text: what is seen in it, weighed, with its range and its reasons."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import islice
from math import sqrt
from typing import TYPE_CHECKING

from bank import language
from bank.level import passage
from bank.level.canonical import canonical
from bank.level.english import refuse_other_languages
from bank.level.evidence import Evidence, evidence, features
from bank.level.formulas import LazyFormulas
from bank.level.reasons import reasons_for
from bank.level.scale import HIGHEST, KINDS, LOWEST, Level
from bank.level.weights import WEIGHTS

if TYPE_CHECKING:
    from spacy.tokens import Doc

METHOD = "7"
"""The version of the method: it changes when the levels do, so that stored ones can be redone."""

BATCH = 1024
# How far a placement by a person lies from the level at most, in 85 of 100 cases: what stays
# however long the text is, and what each single word brings. Set on the tuned half of the placed
# prompts.
_SPREAD_LEFT = 0.45
_SPREAD_OF_A_WORD = 1.9


def level_text(text: str, kind: str = "question") -> Level:
    """How hard `text` is to read, as a reading grade from 0 to 12 with its range.

    An estimate to help choose, not an assessment of a learner. `kind` is one of `KINDS`.
    `ValueError` for another kind, and for a text that is not in English.

    >>> level_text("Do you like cats?").grade < level_text("Do you crave clout?").grade
    True
    """
    ready = _ready(text, kind)
    return _level(ready, kind, language.parse(ready), text)


def level_many(texts: Iterable[tuple[str, str]]) -> Iterator[Level]:
    """The levels of pairs (text, kind), in order, parsed in batches; errors as in `level_text`.

    A text that stands more than once in a batch is parsed and levelled once.
    """
    waiting = iter(texts)
    while batch := [(_ready(text, kind), kind, text) for text, kind in islice(waiting, BATCH)]:
        typed = {(ready, kind): text for ready, kind, text in batch}
        docs = language.parse_many(ready for ready, _ in typed)
        levels = {
            pair: _level(*pair, doc, typed[pair]) for pair, doc in zip(typed, docs, strict=True)
        }
        yield from (levels[ready, kind] for ready, kind, _ in batch)


INGREDIENTS = {
    "words": ("late", "late squared", "rare", "learner", "odd", "sort late", "sort odd"),
    "length": ("letters", "sentences"),
    "build": ("clause", "relative", "that", "conditional", "negation", "passive"),
    "ask": ("why", "compare", "explain", "how"),
}


def parts_of(text: str, kind: str = "question") -> dict[str, float]:
    """The grades that each of `INGREDIENTS` brings to a text; errors as in `level_text`."""
    ready = _ready(text, kind)
    values = features(evidence(language.parse(ready), kind), kind)
    return {
        ingredient: round(sum(WEIGHTS[name] * values[name] for name in names), 3)
        for ingredient, names in INGREDIENTS.items()
    }


def _ready(text: str, kind: str) -> str:
    if kind not in KINDS:
        raise ValueError(f"{kind!r} is not a kind of text; the kinds are {', '.join(KINDS)}")
    return canonical(text, kind)


def _level(text: str, kind: str, doc: Doc, typed: str) -> Level:
    seen = evidence(doc, kind)
    refuse_other_languages(" ".join(typed.split()), seen)
    total = weighed(seen, kind)
    grade = passage.on_the_trade_scale(total, text, seen.running)
    spread = _SPREAD_LEFT + _SPREAD_OF_A_WORD / sqrt(seen.running + 3)
    return Level(
        round(grade, 2),
        round(max(LOWEST, grade - spread), 2),
        round(min(HIGHEST, grade + spread), 2),
        LazyFormulas(text),
        reasons_for(doc, seen, kind, total, grade),
    )


def weighed(seen: Evidence, kind: str) -> float:
    """The level that the evidence gives, before it is held between the ends of the scale."""
    return sum(WEIGHTS[name] * value for name, value in features(seen, kind).items())
