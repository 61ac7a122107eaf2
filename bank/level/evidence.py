"""What is seen in a text: its words with what is known of each, its length, its build, what it
asks.

Names of people and places, days and months, numbers, short forms and contractions are no rare
words: a name counts as a word of grade 1 at most, and names and numbers as half a word of length.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import log
from typing import TYPE_CHECKING

from bank.level import vocabulary
from bank.level.markers import Marker, markers, what_is_asked
from bank.level.vocabulary import Word

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token

_CLITICS = frozenset("n't 's 're 've 'll 'm 'd ' s' 'em".split())
# The first halves of contractions that spaCy cuts: "ca" of "can't", "wo" of "won't".
_CUT = {"ca": "can", "wo": "will", "sha": "shall", "gon": "gonna", "wan": "wanna", "got": "got"}
_SENTENCE_END = frozenset(".!?:")
_OPENING = frozenset("\"'(`[")


@dataclass(frozen=True, slots=True)
class Seen:
    """One word of a text: as it stands there, its token, what is known of it."""

    text: str
    at: int
    known: Word
    is_name: bool


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
    names = numbers = sentences = 0
    starts = True
    headline = _is_headline(doc)
    for at, token in enumerate(doc):
        token_text = token.text
        sort, text, lower, known, capital = _looked_up(token_text)
        if sort == _MARK:
            if lower == _END:
                sentences += not starts
                starts = True
            elif lower == _OPEN:
                starts = True
            continue
        plain.append(lower)
        places.append(at)
        if sort == _CLITIC:
            continue
        if known is None:
            numbers += 1
        elif capital and _is_name(token, lower, starts or headline):
            names += 1
            words.append(Seen(text, at, vocabulary.name(text), True))
        else:
            words.append(Seen(text, at, known, False))
        starts = False
    sentences += not starts
    running = max(1, len(words) + numbers)
    return Evidence(
        tuple(words),
        running,
        max(1.0, running - 0.5 * (names + numbers)),
        max(1, sentences),
        tuple(Marker(found.what, places[found.at]) for found in markers(plain)),
        what_is_asked(plain) if kind == "question" else "",
    )


_MARK, _CLITIC, _WORD = "mark", "clitic", "word"
_END, _OPEN = "end", "open"


@lru_cache(maxsize=65536)
def _looked_up(token: str) -> tuple[str, str, str, Word | None, bool]:
    """What one token is: its sort, its text, lower case (of a mark: what it does), what is known of
    it as a word (None for a number), and whether it has a capital."""
    # A one-letter word or a title at the end of a text keeps the full stop in its token.
    text = token.rstrip(".") or token
    lower = text.lower()
    if not (text[0].isalnum() or text[0] == "'"):
        does = _END if text[-1] in _SENTENCE_END else _OPEN if text[0] in _OPENING else ""
        return _MARK, text, does, None, False
    if lower in _CLITICS:
        return _CLITIC, text, lower, None, False
    if any(letter.isdigit() for letter in text):
        return _WORD, text, lower, None, False
    return _WORD, text, lower, vocabulary.word(_CUT.get(lower, lower)), text[0].isupper()


def _is_headline(doc: Doc) -> bool:
    """Whether all the longer words begin with a capital, as in a title, so that it tells nothing."""
    text = doc.text
    if text[1:].islower():
        return False
    stripped = (word.strip(".,;:!?\"'()") for word in text.split()[1:])
    rest = [word for word in stripped if len(word) > 3 and word.isalpha()]
    return len(rest) > 1 and all(word[0].isupper() for word in rest)


def _is_name(token: Token, lower: str, starts: bool) -> bool:
    """A capital inside a sentence makes a name; at its start only where no ordinary word is known,
    so that a rare word at the start is not taken for a name."""
    if not starts:
        return lower != "i"
    if vocabulary.is_first_name(lower):
        return True
    return token.tag_ in ("NNP", "NNPS") and not vocabulary.is_known(lower)


CLAUSE_KINDS = ("clause", "relative", "that", "conditional", "negation", "passive")
ASKED = ("why", "compare", "explain", "how")
PRIOR_WORDS = 2
"""So many easiest words are counted with every text, so that one hard word of three is not all."""


def features(seen: Evidence, kind: str) -> dict[str, float]:
    """The numbers that the level weighs, by name (see `bank.level.weights`)."""
    late = squared = rare = learner = odd = 0.0
    for word in seen.words:
        known = word.known
        late += known.late
        squared += known.late * known.late
        rare += known.rare
        learner += known.learner
        odd += known.odd
    share = 1.0 / (seen.running + PRIOR_WORDS)
    per_sentence = seen.length / seen.sentences
    is_phrase = kind in ("topic", "sort")
    values = {
        "start": 1.0,
        "length": log(max(1.0, min(per_sentence, 3.0) if kind == "sort" else per_sentence)),
        "sentences": log(min(3, seen.sentences)) if seen.running <= 30 else 0.0,
        "late": share * late,
        "late squared": share * squared,
        "rare": share * rare,
        "learner": share * learner,
        "odd": share * odd,
        "topic": float(is_phrase),
        "topic late": share * late if is_phrase else 0.0,
        **dict.fromkeys(CLAUSE_KINDS, 0.0),
        **dict.fromkeys(ASKED, 0.0),
    }
    for found in seen.markers:
        values[found.what] += 1.0 / seen.sentences
    if seen.asked in ASKED:
        values[seen.asked] = 1.0
    return values
