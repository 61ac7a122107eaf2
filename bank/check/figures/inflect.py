"""A plainer verb in the form of the verb that it replaces."""

from __future__ import annotations

from bank.check.figures.match import Match
from bank.check.reading import Reading
from bank.language import inflections

_BE = {"am", "is", "are", "was", "were", "be", "been", "being"}


def in_form_of(r: Reading, match: Match, lemma: str) -> str | None:
    """`lemma` in the form in which the idiom's own verb stands; as it is where there is none."""
    if match.verb is None:
        return lemma
    own, i = match.verb
    word = r.lower[i]
    if lemma == own:
        return r.words[i]
    if own == "be":
        return _instead_of_be(word, lemma)
    tag = _tag(r, i, own)
    if lemma == "be":
        return {"VB": "be", "VBZ": "is", "VBD": "was", "VBN": "been", "VBG": "being"}.get(
            tag, "are"
        )
    forms = inflections(lemma, tag)
    return forms[0] if forms else None


def _tag(r: Reading, i: int, own: str) -> str:
    word = r.lower[i]
    tags = [tag for tag in ("VB", "VBZ", "VBG", "VBD", "VBN") if word in inflections(own, tag)]
    if r.tag[i] in tags:
        return r.tag[i]
    return tags[0] if tags else "VB"


def _instead_of_be(word: str, lemma: str) -> str | None:
    if word in ("is", "was", "am", "are", "were"):
        tag = "VBZ" if word == "is" else "VBD" if word in ("was", "were") else "VBP"
        forms = inflections(lemma, tag)
        return forms[0] if forms else None
    return None
