"""Figures of speech: idioms, stock comparisons and things that act like people."""

from __future__ import annotations

import re

from bank.check.engine import Found, on_text
from bank.check.figures.inflect import in_form_of
from bank.check.figures.match import Match, find_idioms
from bank.check.finding import Finding
from bank.check.reading import Reading


@on_text()
def idiom(r: Reading) -> Found:
    """Words that do not mean what they say.

    >>> show("It rained cats and dogs.")
    ['figurative: rained cats and dogs -> rained very hard']
    >>> show("We have cats and dogs.")
    []
    """
    return [_idiom_finding(r, match) for match in find_idioms(r)]


def _idiom_finding(r: Reading, match: Match) -> Finding:
    start, end = r.starts[match.first], r.ends[match.last]
    said, plain = r.text[start:end], _plain_wording(r, match)
    picture = match.idiom.picture
    message = f"“{said}” does not mean what it says"
    message += f"; a literal reader may think that {picture}." if picture else "."
    if plain is None:
        message += f" It means: {_as_reading(match.idiom.plain)}."
    return Finding("figurative", start, end, message, plain, False)


def _plain_wording(r: Reading, match: Match) -> str | None:
    """The plainer wording, fitted into the sentence; None where a slot stays open."""
    words = []
    for word in match.idiom.plain.split():
        if word.endswith("*"):
            form = in_form_of(r, match, word[:-1])
            if form is None:
                return None
            words.append(form)
        elif word == "MY" and "MY" in match.slots:
            words.append(match.slots["MY"])
        elif word == "ME" and match.slots:
            words.append(match.slots.get("ME") or _owner(match.slots["MY"]))
        elif word in ("ME", "MY", "MYself"):
            return None
        else:
            words.append(word)
    plain = " ".join(words)
    if r.words[match.first][0].isupper() and r.first[match.first]:
        plain = plain[0].upper() + plain[1:]
    return plain


def _owner(possessive: str) -> str:
    """Who owns it: "your" is you, "Sam's" is Sam."""
    owners = {"my": "me", "your": "you", "his": "him", "our": "us", "its": "it", "their": "them"}
    word = possessive.lower()
    return owners.get(word) or re.sub(r"['’]s?$", "", possessive)


def _as_reading(plain: str) -> str:
    plain = re.sub(r"\bMYself\b", "themselves", plain.replace("*", ""))
    return re.sub(r"\bMY\b", "their", re.sub(r"\bME\b", "someone", plain))
