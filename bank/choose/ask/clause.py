"""When, who does what to whom, and what is compared with what."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from bank.choose.ask.forms import bases
from bank.choose.ask.lexicon import Lexicon
from bank.choose.ask.words import ANYONE, AUXES, POS, WH, YOU, lemma_of

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token


def tense_of(doc: Doc, wants: str) -> str:
    if any(t.lower_ in ("born", "if") for t in doc):
        return "would" if doc[0].lower_ == "if" and wants != "tell" else ""
    if wants == "tell":
        return "past" if any(t.tag_ == "VBD" for t in doc) else ""
    root = next((t for t in doc if t.dep_ == "ROOT"), None)
    if root is None:
        return ""
    own = [root, *(c for c in root.children if c.dep_ in ("aux", "auxpass", "cop"))]
    forms = {t.lower_ for t in own}
    if forms & {"will", "shall"} or ({"going"} & forms and any(t.dep_ == "xcomp" for t in doc)):
        return "will"
    if forms & {"would", "could", "might"}:
        return "would"
    passive = forms & {"is", "are", "am"}  # the tagger takes "are turned" for "turned"
    if forms & {"did", "was", "were"} or (not passive and any(t.tag_ == "VBD" for t in own)):
        return "past"
    if root.lemma_ == "be" and any(t.dep_ == "relcl" and t.tag_ in ("VBD", "VBN") for t in doc):
        return "past"
    if any(t.tag_ in ("VBP", "VBZ", "VB", "MD") for t in own):
        return "now"
    return ""


def _names(token: Token, lex: Lexicon) -> list[str]:
    if token.lower_ in YOU or token.lemma_ in ANYONE:
        return ["you"]
    if token.lower_ in WH:
        return ["?"]
    if any(c.lower_ in WH and c.dep_ == "det" for c in token.children):
        return ["?"]
    lemma = lemma_of(token)
    return list(dict.fromkeys([*lex.groups(lemma, POS.get(token.pos_, "")), lemma]))


def verbs_of(atoms: list[list[Any]], doc: Doc, lex: Lexicon) -> list[str]:
    """The names of what is done in the main clause (nothing for *be* and *do*)."""
    found: list[str] = []
    for token in doc:
        verb = token.pos_ == "VERB" and token.lemma_ not in ("be", "do", "have", "get")
        if verb and not any(a.dep_ in ("advcl", "relcl") for a in (token, *token.ancestors)):
            found += _names(token, lex)
    known = {name for names, *_ in atoms for name in names}
    return [name for name in dict.fromkeys(found) if name in known]


def acts_of(doc: Doc, lex: Lexicon) -> list[list[Any]]:
    acts: list[list[Any]] = []
    for verb in doc:
        if verb.pos_ not in ("VERB", "AUX") or verb.dep_ in ("aux", "auxpass"):
            continue
        doers: list[str] = []
        done_to: list[str] = []
        for child in verb.children:
            if child.dep_ == "nsubj":
                doers += _names(child, lex)
            elif child.dep_ in ("dobj", "nsubjpass") or (
                child.dep_ == "dative" and child.pos_ != "ADP"
            ):
                done_to += _names(child, lex)
            elif child.dep_ in ("prep", "agent", "dative"):
                for inner in child.children:
                    if inner.dep_ == "pobj":
                        (doers if child.dep_ == "agent" else done_to).extend(_names(inner, lex))
        if doers and done_to:
            acts.append([_names(verb, lex), doers, done_to])
    return acts


def compared_in(doc: Doc, lex: Lexicon, wants: str) -> list[list[str]]:
    """The two sides of a comparison, and what is compared, for a question that yes or no answers."""
    if wants not in ("yesno", "choice"):
        return []
    pivot = next((t for t in doc if t.lower_ in _PIVOTS and not _fronted(t)), None)
    if pivot is None:
        return []
    measure: list[str] = []
    sides: tuple[list[str], list[str]] = ([], [])
    place = pivot.lower_ not in ("than", "before", "after")
    for token in doc:
        if token.i == pivot.i and pivot.lower_ == "front":
            measure.append("in_front_of")
        elif (
            token.tag_ in ("JJR", "RBR")
            or token.lower_ in bases()
            and pivot.lower_ == "than"
            or token.i == pivot.i
            and pivot.lower_ != "than"
        ):
            measure += _names(token, lex)
        elif (
            token.pos_ not in ("DET", "ADP", "PUNCT", "PART")
            and token.lemma_ not in AUXES
            and token.lower_ not in WH
            and token.dep_ != "poss"
        ):
            sides[token.i > pivot.i].extend(_names(token, lex))
    if place and not (wants == "yesno" and len(doc) < 14):
        return []
    return [measure, *sides] if measure and all(sides) else []


_PIVOTS = frozenset(
    "than before after front behind above below over under underneath beneath north south east west "
    "ahead".split()
)


def _fronted(pivot: Token) -> bool:
    """Whether what stands here is no "in front of": *the front of the bus*."""
    return pivot.lower_ == "front" and not (pivot.i and pivot.nbor(-1).lower_ == "in")
