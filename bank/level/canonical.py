"""One form of a text for all its variants, so that a variant cannot change the level.

The case of the first letter, outer spaces, characters that nobody sees, the style of quotes and
hyphens, a missing end mark, a forgotten space between two sentences, and writing all of a text in
capitals say nothing about how hard it is to read. A well-formed item is its own canonical form, so
that levelling and checking it share one parse.
"""

from __future__ import annotations

import re

from bank.item import as_seen

_QUOTES = str.maketrans({"‘": "'", "’": "'", "‛": "'", "`": "'", "´": "'", "“": '"', "”": '"',
                         "„": '"', "«": '"', "»": '"'})  # fmt: skip
_SINGLE_QUOTED = re.compile(r"(?:(?<=[\s(])|^)'(?=\w)([^']*(?:'\w+[^']*)*)'(?=[\s.,;:!?)]|$)")
# "make?What": the end of one sentence and the first word of the next.
_FORGOTTEN_SPACE = re.compile(r"(?<=[a-zà-öø-ÿ])([.!?]+)(?=[A-Z][a-z]|[AI](?![\w.]))")
_OPENERS = frozenset("who whom whose what which when where why how".split())
_ASKING = frozenset(
    "am is are was were do does did has have had can could will would shall should may might must "
    "isn't aren't wasn't weren't don't doesn't didn't hasn't haven't hadn't can't couldn't won't "
    "wouldn't shouldn't".split()
)
_TELLING = frozenset(
    "tell name describe explain write list draw think compare show pick choose share finish use "
    "give make find say talk imagine pretend put read look add count circle act let guess "
    "plan".split()
)


def canonical(text: str, kind: str = "question") -> str:
    """`text` with one form of spaces, quotes, capitals and end mark.

    >>> canonical("  do you like cats", "question")
    'Do you like cats?'
    >>> canonical("a red ball.", "topic")
    'A red ball'
    >>> canonical("It is Ben\u2019s dog", "sentence")
    "It is Ben's dog."
    >>> canonical("A TRIP TO THE ZOO", "topic"), canonical("Go home.It is late.", "sentence")
    ('A trip to the zoo', 'Go home. It is late.')
    """
    text = _FORGOTTEN_SPACE.sub(r"\1 ", as_seen(text))
    if text.isupper() and len(text.split()) > 1:
        text = text.lower()
    text = " ".join(text.translate(_QUOTES).replace("''", '"').split())
    text = _SINGLE_QUOTED.sub(r'"\1"', text)
    body = text.rstrip(".!?… ")
    if not body:
        return text
    start = next((i for i, letter in enumerate(body) if letter.isalnum()), None)
    if start is not None:
        body = body[:start] + body[start].upper() + body[start + 1 :]
    return body + _end_mark(body, kind)


def _end_mark(body: str, kind: str) -> str:
    if body[-1] in "\"')" and len(body) > 1 and body[-2] in ".!?":
        return ""
    if kind == "passage":
        return "."
    first, _ = _first_words(body)
    if kind == "question":
        return "." if first in _TELLING else "?"
    return "?" if asks(body) else "" if kind in ("topic", "sort") else "."


def asks(text: str) -> bool:
    """Whether the last sentence of a text begins as a question does.

    >>> asks("do you like cats"), asks("what I like"), asks("Who is that")
    (True, False, True)
    """
    first, second = _first_words(text)
    return first in _ASKING or (first in _OPENERS and second in _ASKING)


def _first_words(text: str) -> tuple[str, str]:
    last = re.split(r"[.!?]+\s+", text)[-1].lower().split() or [""]
    return last[0].strip("\"'(,"), (last[1] if len(last) > 1 else "")
