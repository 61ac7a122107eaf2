"""Apostrophes and dots in the wrong place: they'are, the boys's, 5 p.m on Friday."""

from __future__ import annotations

import re

from bank.check.engine import Found, at, on_text
from bank.check.finding import Finding
from bank.check.grammar import singular_of
from bank.check.reading import Reading

_SHORT = {
    **{f"{who}'are": f"{who}'re" for who in ("they", "we", "you")},
    **{f"{who}'is": f"{who}'s" for who in ("he", "she", "it", "that", "what", "there")},
    **{f"{who}'will": f"{who}'ll" for who in ("they", "we", "you", "he", "she", "it")},
    "i'am": "I'm", "i'will": "I'll", "i'have": "I've", "let'us": "let's",
    **{f"{stem}'nt": f"{stem}n't" for stem in (
        "do", "did", "does", "is", "are", "was", "were", "has", "have", "had", "could", "would", "should",
    )},
    "ca'nt": "can't", "wo'nt": "won't", "cann't": "can't", "it's'": "it's",
}  # fmt: skip
_MANY_OWN = {
    "childrens'": "children's",
    "mens'": "men's",
    "womens'": "women's",
    "peoples'": "people's",
}


@on_text()
def short_form_with_a_letter_too_many(r: Reading) -> Found:
    """they'are, do'nt.

    >>> show("They'are here. I do'nt know.")
    ["apostrophe-contraction: They'are -> They're", "apostrophe-contraction: do'nt -> don't"]
    >>> show("They're here. I don't know.")
    []
    """
    if "'" not in r.text and "’" not in r.text:
        return None
    return [
        at(r, i, "apostrophe-contraction", f"The short form is “{_SHORT[word]}”.", _SHORT[word])
        for i, word in enumerate(r.lower)
        if word in _SHORT
    ]


@on_text()
def owners_with_an_s_too_many(r: Reading) -> Found:
    """the boys's bikes, the childrens' coats.

    >>> show("The two boys's bikes are here. The childrens' coats hang there.")
    ["apostrophe-possessive: boys's -> boys'", "apostrophe-possessive: childrens' -> children's"]
    >>> show("James's bike and the bus's door are red. The boys' bikes are here.")
    []
    """
    if "'" not in r.text and "’" not in r.text:
        return None
    return [found for i in range(r.n) if (found := _owner(r, i)) is not None]


def _owner(r: Reading, i: int) -> Finding | None:
    word = r.lower[i]
    if word.endswith("s's") and singular_of(word[:-2]) and not r.words[i][0].isupper():
        return at(r, i, "apostrophe-possessive", f"Many own it: “{word[:-1]}”.", word[:-1])
    right = _MANY_OWN.get(word + r.gap[i][:1].replace("’", "'"))
    if right is None:
        return None
    return Finding("apostrophe-possessive", r.starts[i], r.ends[i] + 1, f"Many own it: “{right}”.",
                   right if r.words[i][0].islower() else right.capitalize(), True)  # fmt: skip


_HALF_DOTTED = re.compile(r"\b([ap])(?:\.m(?![.\w])|m\.(?=[ ,?!]))")


@on_text()
def half_of_the_dots(r: Reading) -> Found:
    """5:00 p.m on Fridays.

    >>> show("Does it close at 5:00 p.m on Fridays?")
    ['abbreviation: p.m -> p.m.']
    >>> show("It opens at 9 a.m. and closes at 5 p.m.")
    []
    """
    if not any(c.isdigit() for c in r.text):
        return None
    return [
        Finding(
            "abbreviation", m.start(), m.end(), "Both letters have a dot.", f"{m.group(1)}.m.", True
        )
        for m in _HALF_DOTTED.finditer(r.text)
    ]
