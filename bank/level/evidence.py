"""What is seen in a text: its words with what is known of each, its length, its build, what it
asks.

Names of people and places, days and months, numbers, short forms and contractions are no rare
words: a name counts as a word of grade 1 at most, and names and numbers as half a word of length.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import log
from typing import TYPE_CHECKING

from bank.level import vocabulary
from bank.level.markers import Marker, markers, what_is_asked

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token

NAME_LEARNT = 1.0
_CLITICS = frozenset("n't 's 're 've 'll 'm 'd ' s' 'em".split())
# The first halves of contractions that spaCy cuts: "ca" of "can't", "wo" of "won't".
_CUT = {"ca": "can", "wo": "will", "sha": "shall", "gon": "gonna", "wan": "wanna", "got": "got"}
_SENTENCE_END = frozenset(".!?:")
_OPENING = frozenset("\"'(`[")


@dataclass(frozen=True, slots=True)
class Seen:
    """One word of a text; `at` is its token, the measures are those of `vocabulary.Word`."""

    text: str
    at: int
    learnt: float
    rarity: float
    learner: float
    name: bool


@dataclass(frozen=True, slots=True)
class Evidence:
    """What is seen in one text.

    `words` are its words with a letter; `length` counts them with names and numbers as half, and
    `running` each as one; `sentences` is at least 1; the markers' places are tokens.
    """

    words: tuple[Seen, ...]
    running: int
    length: float
    sentences: int
    markers: tuple[Marker, ...]
    asked: str


def evidence(doc: Doc, kind: str) -> Evidence:
    """What is seen in a parsed text of this kind."""
    words: list[Seen] = []
    plain: list[str] = []
    places: list[int] = []
    numbers = sentences = 0
    starts = True
    for token in doc:
        text, lower = token.text, token.lower_
        if not (text[0].isalnum() or text[0] == "'"):
            if text[-1] in _SENTENCE_END:
                sentences += not starts
                starts = True
            elif text[0] in _OPENING:
                starts = True
            continue
        plain.append(lower)
        places.append(token.i)
        if lower in _CLITICS:
            continue
        if not any(letter.isalpha() for letter in text):
            numbers += 1
        else:
            words.append(_seen(token, text, lower, starts))
        starts = False
    sentences += not starts
    names = sum(word.name for word in words)
    running = max(1, len(words) + numbers)
    return Evidence(
        tuple(words),
        running,
        max(1.0, running - 0.5 * (names + numbers)),
        max(1, sentences),
        tuple(Marker(found.what, places[found.at]) for found in markers(plain)),
        what_is_asked(plain) if kind == "question" else "",
    )


def _seen(token: Token, text: str, lower: str, starts: bool) -> Seen:
    plain = _CUT.get(lower, lower)
    known = vocabulary.word(plain)
    if _is_name(token, text, plain, starts):
        return Seen(text, token.i, min(known.learnt, NAME_LEARNT), 0.0, 0.0, True)
    rarity = 0.0 if known.little else known.rarity
    return Seen(text, token.i, known.learnt, rarity, known.learner, False)


def _is_name(token: Token, text: str, lower: str, starts: bool) -> bool:
    """A capital inside a sentence makes a name; at its start only where no ordinary word is known,
    so that a rare word at the start is not taken for a name."""
    if not text[0].isupper() or lower == "i":
        return False
    return not starts or (token.tag_ in ("NNP", "NNPS") and not vocabulary.is_known(lower))


CLAUSE_KINDS = ("clause", "relative", "that", "conditional", "negation", "passive")
ASKED = ("why", "compare", "explain", "how")
PRIOR_WORDS = 2
"""So many easiest words are counted with every text, so that one hard word of three is not all."""


def features(seen: Evidence, kind: str) -> dict[str, float]:
    """The numbers that the level weighs, by name (see `bank.level.weights`)."""
    share = 1.0 / (seen.running + PRIOR_WORDS)
    per_sentence = seen.length / seen.sentences
    values = {
        "start": 1.0,
        "length": log(max(1.0, min(per_sentence, 3.0) if kind == "sort" else per_sentence)),
        "sentences": log(seen.sentences),
        "learnt": share * sum(lateness(word.learnt) for word in seen.words),
        "learnt late": share * sum(lateness(word.learnt) ** 2 for word in seen.words),
        "rarity": share * sum(unfamiliar(word.rarity) for word in seen.words),
        "learner level": share * sum(word.learner for word in seen.words),
        "topic": float(kind in ("topic", "sort")),
    }
    for what in CLAUSE_KINDS:
        values[what] = sum(found.what == what for found in seen.markers) / seen.sentences
    for asked in ASKED:
        values[asked] = float(seen.asked == asked)
    return values


def lateness(learnt: float) -> float:
    """How much later a word is learnt than the first words, in grades."""
    return max(0.0, learnt + 0.5)


def unfamiliar(rarity: float) -> float:
    """How much rarer a word is than the words that are met on every page, in Zipf steps."""
    return max(0.0, rarity - 1.5)


Weights = Mapping[str, float]
