"""What is seen in a text: its words with what is known of each, its length, its build, what it
asks.

Names of people and places, days and months, numbers, short forms and contractions are no rare
words: a name counts as a word of grade 1 at most, and names and numbers as few letters.
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
# The same halves where the apostrophe is left out: spaCy cuts "cant" into "ca" and "nt".
_BARE_CLITICS = {"nt": "n't"} | {half: "'" + half for half in "s re ve ll m d".split()}
# The first halves of contractions that spaCy cuts: "ca" of "can't", "wo" of "won't".
_CUT = {"ca": "can", "wo": "will", "sha": "shall", "gon": "gonna", "wan": "wanna", "got": "got"}
_SENTENCE_END = frozenset(".!?")
# What comes after a colon may have a capital, as after an opening quote; it is no new sentence.
_OPENING = frozenset("\"'(`[:")


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

    `words` are its words with a letter; `running` counts them with the numbers; `letters` are the
    letters that they count as in all (`Word.letters`); `sentences` is at least 1; the markers'
    places are tokens.
    """

    words: tuple[Seen, ...]
    running: int
    letters: float
    sentences: int
    markers: tuple[Marker, ...]
    asked: str


def evidence(doc: Doc, kind: str) -> Evidence:
    """What is seen in a parsed text of this kind."""
    words: list[Seen] = []
    plain: list[str] = []
    places: list[int] = []
    letters = 0.0
    numbers = sentences = 0
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
        if lower in _BARE_CLITICS and _hangs_on_a_word(doc, at):
            sort, lower = _CLITIC, _BARE_CLITICS[lower]
        plain.append(lower)
        places.append(at)
        if sort == _CLITIC:
            continue
        if known is None:
            numbers += 1
            letters += NUMBER_LETTERS
        elif capital and _is_name(token, lower, starts or headline):
            letters += vocabulary.NAME_LETTERS
            words.append(Seen(text, at, vocabulary.name(text), True))
        else:
            letters += known.letters
            words.append(Seen(text, at, known, False))
        starts = False
    sentences += not starts
    running = max(1, len(words) + numbers)
    return Evidence(
        tuple(words),
        running,
        max(1.0, letters),
        max(1, sentences),
        tuple(Marker(found.what, places[found.at]) for found in markers(plain)),
        what_is_asked(plain) if kind == "question" else "",
    )


NUMBER_LETTERS = 2.0
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


def _hangs_on_a_word(doc: Doc, at: int) -> bool:
    return at > 0 and not doc[at - 1].whitespace_ and doc[at - 1].text.isalpha()


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


FULL_PROMPT, PASSAGE = 30, 60
"""From so many words on, that there are several sentences counts less, and then no more."""


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
    values = dict(_NOTHING)
    if kind == "sort":
        # A set of words is no text: the level of its words, however many they are.
        values["sort"] = 1.0
        values["sort late"] = late / seen.running
        values["sort odd"] = odd / seen.running
        return values
    share = 1.0 / (seen.running + PRIOR_WORDS)
    values["start"] = 1.0
    values["letters"] = log(seen.letters / seen.sentences)
    if seen.sentences > 1:
        counts = min(1.0, max(0.0, (PASSAGE - seen.running) / (PASSAGE - FULL_PROMPT)))
        values["sentences"] = counts * log(min(3, seen.sentences))
    values["late"] = share * late
    values["late squared"] = share * squared
    values["rare"] = share * rare
    values["learner"] = share * learner
    values["odd"] = share * odd
    if kind == "topic":
        values["topic"] = 1.0
        values["topic late"] = share * late
    for found in seen.markers:
        values[found.what] += 1.0 / seen.sentences
    if seen.asked in ASKED:
        values[seen.asked] = 1.0
    return values


_NOTHING = dict.fromkeys(
    ("start", "letters", "sentences", "late", "late squared", "rare", "learner", "odd", "topic",
     "topic late", "sort", "sort late", "sort odd", *CLAUSE_KINDS, *ASKED),
    0.0,
)  # fmt: skip
