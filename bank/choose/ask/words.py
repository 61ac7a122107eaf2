"""The words of a parsed text: their lemma, their role, verbs joined with their particles."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bank.choose.ask.forms import bases
from bank.choose.ask.lexicon import Lexicon

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token

POS = {"NOUN": "n", "PROPN": "n", "VERB": "v", "AUX": "v", "ADJ": "a", "ADV": "a"}
YOU = frozenset(
    "you your yours yourself i me my mine myself we us our ours ourselves yourselves".split()
)
ANYONE = frozenset("people person someone somebody everyone everybody anyone one they".split())
WH = frozenset("who what where when why how which whose".split())
AUXES = frozenset("do be can could will would should must may might have shall".split())


class Word:
    """A word, or a verb with its particle, that still has to find its concepts."""

    __slots__ = ("form", "lemma", "pos", "role", "stranded", "token")

    def __init__(self, token: Token) -> None:
        self.token = token
        self.form = token.lower_
        self.lemma = lemma_of(token)
        self.pos = POS.get(token.pos_, "")
        self.role = _role(token)
        self.stranded = token.pos_ == "ADP" and not any(
            child.dep_ in ("pobj", "pcomp") for child in token.children
        )


def lemma_of(token: Token) -> str:
    lemma = bases().get(token.lower_) or token.lemma_.lower()
    return {"n't": "not", "better": "good", "best": "best", "'s": "'s"}.get(token.lower_, lemma)


def _role(token: Token) -> str:
    """Where the word stands: s(ubject), v(erb), o(bject), c(ondition), m(odifier)."""
    here = token
    while here.dep_ not in ("ROOT", "advcl") and here.head is not here:
        if here.dep_ in ("nsubj", "nsubjpass"):
            return "s"
        if here.dep_ in ("dobj", "attr", "acomp", "dative", "oprd"):
            return "o"
        if here.dep_ in ("prep", "npadvmod"):
            return "m"
        here = here.head
    return "c" if here.dep_ == "advcl" else "v"


_PARTICLES = frozenset("on off up down away out over in back".split())


def _verb_of_particle(token: Token, by_index: dict[int, Word], lex: Lexicon) -> Word | None:
    """The verb of a particle that stands apart from it: *put* your socks *on*."""
    if token.lower_ not in _PARTICLES:
        return None
    if token.dep_ == "prt":
        verb = by_index.get(token.head.i)
        return verb if verb is not None and verb.pos == "v" else None
    if any(child.dep_ in ("pobj", "pcomp") for child in token.children):
        return None
    for back in range(token.i - 1, max(-1, token.i - 5), -1):
        verb = by_index.get(back)
        if verb is not None and f"{verb.lemma}_{token.lower_}" in lex.joined:
            return verb
    return None


def words_of(doc: Doc, lex: Lexicon) -> list[Word]:
    words: list[Word] = []
    by_index: dict[int, Word] = {}
    for token in doc:
        if token.is_punct or token.is_space:
            continue
        verb = _verb_of_particle(token, by_index, lex)
        if verb is not None:
            verb.lemma = f"{verb.lemma}_{token.lower_}"
            continue
        by_index[token.i] = word = Word(token)
        words.append(word)
    return words
