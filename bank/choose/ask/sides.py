"""Who stands over against whom, and whether it can, must, will or would be: read off the parse.

In *Tell about a time you helped someone* and *Tell about a time someone helped you* all the words are
the same; only the sides have changed.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from bank.choose.ask.lexicon import Lexicon
from bank.choose.ask.words import ANYONE, POS, WH, YOU, lemma_of

Frame = dict[str, Any]

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token

_DOERS = ("nsubj", "csubj")
_NAMED = ("NOUN", "PROPN", "PRON", "NUM")
_OTHERS = frozenset({"other", "others"}) | ANYONE
# Who sits next to whom: true both ways.
MUTUAL = frozenset("sit meet play talk live near_to next_to look_like".split())
_POINTING = frozenset("a an the this that your my our his her their".split())
_MODES = {
    "can": "can",
    "could": "can",
    "able": "can",
    "must": "must",
    "should": "must",
    "will": "will",
    "would": "wish",
    "want": "wish",
    "wish": "wish",
    "like": "like",
    "love": "like",
    "enjoy": "like",
}


def sides_of(doc: Doc, lex: Lexicon) -> list[list[Any]]:
    """Each pair of sides as `[names of the verb, names of the doer, names of the other]`."""
    found = []
    for verb in doc:
        if verb.pos_ not in ("VERB", "AUX") or verb.dep_ in ("aux", "auxpass"):
            continue
        doers = [t for t in verb.children if t.dep_ in _DOERS or t.dep_ == "agent"]
        doers = [_agent(t) for t in doers]
        names = _names(verb, lex)
        within = [t for t in verb.subtree if _is_named(t)]
        for doer in doers:
            own = {t.i for t in doer.subtree}
            found += [
                [names, _names(doer, lex), _names(other, lex)]
                for other in within
                if other.i not in own and not _in_condition(other, verb)
            ]
        for thing in (t for t in verb.children if t.dep_ == "dobj"):
            found += [
                [names, _names(thing, lex), _names(other, lex)]
                for prep in verb.children
                if prep.dep_ in ("prep", "dative")
                for other in prep.children
                if other.dep_ == "pobj" and _is_named(other)
            ]
    return found


def doer_of(doc: Doc, lex: Lexicon) -> list[str]:
    """The names of the subject of the main clause, [] where there is none."""
    root = next((t for t in doc if t.dep_ == "ROOT"), None)
    own = root.children if root is not None and root.pos_ in ("VERB", "AUX") else ()
    return next((_names(t, lex) for t in own if t.dep_ in _DOERS), [])


def modes_of(doc: Doc) -> list[str]:
    """Whether the main clause says that something can, must, will, would or likes to be."""
    found = set()
    for token in doc:
        if token.dep_ != "advcl" and not any(a.dep_ in ("advcl", "relcl") for a in token.ancestors):
            mode = _MODES.get(token.lower_)
            if mode and (mode != "like" or token.pos_ == "VERB"):
                found.add(mode)
            if token.lower_ in ("have", "need") and any(c.dep_ == "xcomp" for c in token.children):
                found.add("must")
            if token.lower_ == "going" and any(c.dep_ == "xcomp" for c in token.children):
                found.add("will")
    if "wish" in found:
        found -= {"like"}  # would like
    return sorted(found)


def exchanged_sides(a: Frame, b: Frame) -> bool:
    """Whether two that stand over against each other in one text have changed sides in the other."""
    if _two_words_changed_places(a["words"], b["words"]):
        return True
    turned = straight = False
    for verb_a, doer_a, other_a in a["sides"]:
        for verb_b, doer_b, other_b in b["sides"]:
            if set(verb_a) & set(verb_b) - MUTUAL:
                turned |= _meet(doer_a, other_b) and _meet(other_a, doer_b)
                straight |= _meet(doer_a, doer_b) and _meet(other_a, other_b)
    return turned and not straight


def _two_words_changed_places(a: list[str], b: list[str]) -> bool:
    """Why are cats better pets than dogs? / Why are dogs better pets than cats?

    Not two of a choice: apples or pears, pears or apples.
    """
    a, b = ([word for word in words if word not in _POINTING] for words in (a, b))
    apart = [at for at, (x, y) in enumerate(zip(a, b, strict=False)) if x != y]
    if len(a) != len(b) or len(apart) != 2 or {"or", "and"} & {*a[apart[0] : apart[1]]}:
        return False
    first, last = apart
    return a[first] == b[last] and a[last] == b[first]


def _meet(x: list[str], y: list[str]) -> bool:
    return not set(x).isdisjoint(y)


def _agent(token: Token) -> Token:
    if token.dep_ != "agent":
        return token
    return next((t for t in token.children if t.dep_ == "pobj"), token)


def _is_named(token: Token) -> bool:
    return token.pos_ in _NAMED and token.dep_ not in ("poss", "compound", "npadvmod")


def _in_condition(token: Token, verb: Token) -> bool:
    """Whether the token stands in a clause of its own below the verb: its sides are told there."""
    here = token
    while here.i != verb.i:
        if here.dep_ in ("advcl", "relcl"):
            return True
        here = here.head
    return False


def _names(token: Token, lex: Lexicon) -> list[str]:
    if token.lower_ in WH or any(c.lower_ in WH and c.dep_ == "det" for c in token.children):
        return ["?"]
    if token.lower_ in YOU:
        return ["you"]
    if token.lemma_.lower() in _OTHERS or token.lower_ in _OTHERS:
        return ["someone"]
    lemma = lemma_of(token)
    return list(dict.fromkeys([*lex.groups(lemma, POS.get(token.pos_, "")), lemma]))
