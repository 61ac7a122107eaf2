"""Why a text has its level: what raises it, how much each costs, and what it would be without.

A word's cost is how much the level would fall if one of the first words with as many letters stood
in its place; the letters are one reason for the whole sentence. The costs add up, as the level does.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import log
from typing import TYPE_CHECKING

from bank.level.evidence import PRIOR_WORDS, Evidence
from bank.level.scale import Reason
from bank.level.vocabulary import Word
from bank.level.weights import WEIGHTS, as_grade

if TYPE_CHECKING:
    from spacy.tokens import Doc

LEAST_COST = 0.15
MOST_WORDS = 6
SHORT_SENTENCE = 21.0
"""The letters in a sentence of six short words."""
_SAID_OF_MARKER = {
    "clause": "a clause that depends on another",
    "relative": "a clause about a word before it",
    "that": "a clause with that",
    "conditional": "an if that asks to imagine",
    "negation": "a no or not",
    "passive": "a passive: it does not say first who does it",
}
_SAID_OF_ASK = {
    "why": "asks for a reason",
    "compare": "asks to compare",
    "explain": "asks to explain",
    "how": "asks how it is done",
}


def reasons_for(
    doc: Doc, seen: Evidence, kind: str, total: float, grade: float
) -> tuple[Reason, ...]:
    """The reasons for a level `grade` of a text that weighs `total` in all; the dearest comes first."""
    found = [
        *_of_words(seen, kind),
        *_of_markers(doc, seen, kind),
        *_of_length(seen, kind),
        *_of_ask(doc, seen),
    ]
    plain = as_grade(total)
    priced = [
        (what, text, min(grade, plain - as_grade(total - cost)), said)
        for what, text, cost, said in sorted(found, key=lambda reason: -reason[2])
        if cost >= LEAST_COST
    ]
    return tuple(
        Reason(what, text, round(cost, 2), round(grade - cost, 2), said)
        for what, text, cost, said in priced
    )


@lru_cache(maxsize=65536)
def weight(word: Word, kind: str) -> float:
    """What one word would add to the level if it stood alone for the whole text, in grades."""
    if kind == "sort":
        return WEIGHTS["sort late"] * word.late + WEIGHTS["sort odd"] * word.odd
    return (
        (WEIGHTS["late"] + WEIGHTS["topic late"] * (kind == "topic")) * word.late
        + WEIGHTS["late squared"] * word.late**2
        + WEIGHTS["rare"] * word.rare
        + WEIGHTS["learner"] * word.learner
        + WEIGHTS["odd"] * word.odd
    )


_Found = tuple[str, str, float, str]


def _of_words(seen: Evidence, kind: str) -> Iterator[_Found]:
    share = 1.0 / (seen.running + PRIOR_WORDS * (kind != "sort"))
    costs: dict[str, float] = {}
    grades: dict[str, float] = {}
    for word in seen.words:
        cost = share * weight(word.known, kind)
        if cost * 3 >= LEAST_COST and not word.is_name:
            costs[word.text] = costs.get(word.text, 0.0) + cost
            grades[word.text] = word.known.learnt
    for text in sorted(costs, key=lambda text: -costs[text])[:MOST_WORDS]:
        grade = int(max(0.0, grades[text]))
        known = "known to small children" if grade < 1 else f"mostly learnt about grade {grade}"
        yield "word", text, costs[text], f'"{text}": {known}'


def _of_markers(doc: Doc, seen: Evidence, kind: str) -> Iterator[_Found]:
    if kind == "sort":
        return
    for marker in seen.markers:
        cost = WEIGHTS[marker.what] / seen.sentences
        text = (
            _negated(doc, marker.at) if marker.what == "negation" else _clause_from(doc, marker.at)
        )
        what = marker.what if marker.what in ("negation", "passive") else "clause"
        yield what, text, cost, f'"{text}": {_SAID_OF_MARKER[marker.what]}'


def _negated(doc: Doc, at: int) -> str:
    """The word of negation, and of a contraction the whole."""
    cut = at and doc[at].lower_ in ("n't", "nt")
    return doc[at - 1].text + doc[at].text if cut else doc[at].text


def _clause_from(doc: Doc, at: int) -> str:
    """From the word that opens a clause to where the parse ends that clause."""
    head = doc[at].head
    while head.dep_ in ("aux", "auxpass"):
        head = head.head
    if head.i < at:
        head = doc[at]
    end = head.right_edge.i
    while end > at and not doc[end].text[0].isalnum():
        end -= 1
    return doc[at : max(end, at) + 1].text


def _of_length(seen: Evidence, kind: str) -> Iterator[_Found]:
    """What the length costs beside a sentence of six short words."""
    if kind == "sort":
        return
    per_sentence = seen.letters / seen.sentences
    cost = WEIGHTS["letters"] * log(per_sentence / SHORT_SENTENCE)
    said = (
        f"about {per_sentence:.0f} letters in a sentence;"
        f" one of six short words has {SHORT_SENTENCE:.0f}"
    )
    yield "length", f"{seen.running} words", cost, said


def _of_ask(doc: Doc, seen: Evidence) -> Iterator[_Found]:
    if seen.asked in _SAID_OF_ASK:
        yield "ask", seen.asked, WEIGHTS[seen.asked], _SAID_OF_ASK[seen.asked]
