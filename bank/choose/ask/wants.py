"""What a text asks for: a person, a place, a reason, a number, a yes or no … or just to tell."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bank.choose.ask.lexicon import lexicon
from bank.choose.ask.words import AUXES, WH

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token


def want_of(doc: Doc, text: str) -> tuple[str, int]:
    """What is asked for, and the token of the thing asked for (-1: none is named)."""
    tokens = [token for token in doc if not token.is_punct]
    if not tokens:
        return "tell", -1
    wh = _main_wh(tokens)
    options = any(t.lower_ == "or" and not _inside_a_name(t) for t in tokens)
    if tokens[0].lower_ == "tell" or ("?" not in text and not _asks(tokens, wh)):
        return "tell", -1
    if wh is None:
        return ("choice" if options else "yesno"), -1
    if wh.lower_ == "what" and _makes_happen(wh):
        return "why", -1
    listed = (
        any(t.lower_ == "," for t in doc[wh.i : next(t.i for t in doc if t.lower_ == "or")])
        if (options and wh.i < next(t.i for t in doc if t.lower_ == "or"))
        else False
    )
    if options and (listed or wh.lower_ in ("which", "what", "who")):
        return "choice", -1
    return _wh_wants(wh)


def _inside_a_name(token: Token) -> bool:
    """Whether an "or" leaves no choice: *your mom's or dad's mother*, *any brothers or sisters*."""
    before = token.nbor(-1) if token.i else token
    return before.lower_ in ("'s", "'") or any(
        t.lower_ in ("any", "something", "anything")
        for t in token.doc[max(0, token.i - 2) : token.i]
    )


def _makes_happen(wh: Token) -> bool:
    """Whether a cause is asked for: *what makes the leaves fall* is *why do the leaves fall*."""
    verb = wh.head
    if wh.dep_ != "nsubj" or verb.lemma_ not in ("make", "cause"):
        return False
    done = [t for t in verb.children if t.dep_ in ("ccomp", "xcomp") and t.i > verb.i]
    doers = [t for clause in done for t in clause.children if t.dep_ == "nsubj"]
    return any(t.pos_ == "VERB" for t in done) and not any(t.lower_ == "you" for t in doers)


def _asks(tokens: list[Token], wh: Token | None) -> bool:
    """Whether a text without a question mark asks all the same: *What I like* only names a topic."""
    if wh is None or wh.i > 0:
        return False
    if [t.lower_ for t in tokens[:2]] == ["what", "thing"]:
        return True  # *Name one thing you do with a friend.*
    return any(t.lemma_ in AUXES or t.pos_ == "VERB" for t in tokens[1:2]) or (
        len(tokens) > 2 and tokens[1].pos_ == "NOUN" and tokens[2].lemma_ in AUXES
    )


def _main_wh(tokens: list[Token]) -> Token | None:
    """The question word of the main clause: "what" in *When the phone rings, what do you say?*"""
    found = [t for t in tokens if t.lower_ in WH and not _inside_condition(t)]
    if len(found) > 1 and found[0].i == 0 and found[0].lower_ in ("when", "where"):
        comma = next((t.i for t in found[0].doc if t.lower_ == ","), None)
        later = [t for t in found if comma is not None and t.i > comma]
        return later[0] if later else found[0]
    return found[0] if found else None


def _inside_condition(token: Token) -> bool:
    return any(a.dep_ == "advcl" for a in (token.head, token.head.head)) and token.lower_ in (
        "when",
        "where",
    )


_AMOUNTS = frozenset(
    "many much long old far often tall big heavy fast deep high wide hot cold loud strong late "
    "early soon hard little".split()
)


def _wh_wants(wh: Token) -> tuple[str, int]:
    word = wh.lower_
    after = wh.nbor() if wh.i + 1 < len(wh.doc) else None
    if word == "how" and after is not None and after.lemma_ in _AMOUNTS:
        return "amount", after.i
    if word in ("what", "which") and after is not None and after.lower_ == "name":
        return ("who" if _of_a_grownup(after) else "name"), -1
    if word in ("what", "which"):
        noun = wh.head if wh.dep_ == "det" and wh.head.i > wh.i else None
        if noun is None and after is not None and after.pos_ == "NOUN":
            noun = after
        if noun is None and after is not None and after.lemma_ == "be":
            noun = next((t for t in wh.doc if t.lower_ == "favorite"), None)
            noun = noun.head if noun is not None and noun.head.pos_ in ("NOUN", "PROPN") else None
        if noun is None:
            return "what", -1
        if noun.lemma_ in ("kind", "sort", "type", "part"):
            inner = [p for prep in noun.children for p in prep.children if p.dep_ == "pobj"]
            noun = inner[0] if inner else noun
        return _wanted_thing(noun.lemma_.lower()), noun.i
    if word == "how" and any(t.lower_ == "know" and t.i <= wh.i + 3 for t in wh.doc):
        return "know", -1
    better = {t.lower_ for t in wh.doc} & {"better", "calm", "calmer"}
    if (
        word == "how"
        and not better
        and any(t.lemma_ == "feel" and t.head.i in (t.i, wh.i) for t in wh.doc)
    ):
        return "feel", -1
    return ("who" if word == "whose" else word), -1


_PLACES = frozenset("place room building store shop spot town city country location street".split())


def _wanted_thing(noun: str) -> str:
    if _is_someone(noun):
        return "who"
    return "where" if noun in _PLACES else "what"


def _of_a_grownup(name: Token) -> bool:
    """Whether a name is that of a teacher or a helper: it says who that is."""
    named = next((t for t in name.doc[name.i + 1 :] if t.pos_ in ("NOUN", "PROPN")), None)
    if named is None:
        return False
    while named.i + 1 < len(named.doc) and named.nbor().pos_ == "NOUN":
        named = named.nbor()
    kinds = lexicon().kinds
    lemma = named.lemma_.lower()
    concepts = [*lexicon().groups(lemma, "n"), lemma]
    return any(kinds.get(c, frozenset()) & {"helper", "grownup"} for c in concepts)


def _is_someone(noun: str) -> bool:
    lex = lexicon()
    concepts = [*lex.groups(noun, "n"), noun]
    return any(
        lex.kinds.get(c, frozenset()) & {"relative", "helper", "someone"} for c in concepts
    ) and not {"animal", "pet"} & set(concepts)
