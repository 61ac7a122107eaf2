"""Capitals left out, or put where none belongs."""

from __future__ import annotations

from collections.abc import Iterator

from bank.edit.layers import capital_skill
from bank.edit.look import Sentence
from bank.edit.make.spot import Spot, one
from bank.edit.wordset import word_set


def small_letters(s: Sentence) -> Iterator[Spot]:
    """A small letter for the capital of a first word, of I, or of a name."""
    for j, token in enumerate(s.c):
        first = token.text[0]
        if not first.isupper() or len(token.text) > 1 and token.text.isupper():
            continue
        if token.text[1:] != token.text[1:].lower() and not token.text.startswith("I'"):
            continue
        skill = capital_skill(token.text.lower(), token.text, j, s)
        yield one(skill, token.start, token.start + 1, first.lower())


# With a capital these may be names, and right.
_ALSO_NAMES = word_set(
    "earth sun moon mom mommy mama dad daddy papa grandma grandpa nana aunt uncle north south east "
    "west spring summer fall winter rose hope will mark may june art grace joy faith river sky "
    "teacher coach doctor nurse mother father grandmother grandfather internet"
)


def big_letters(s: Sentence) -> Iterator[Spot]:
    """A capital on a thing, a describing or an action word inside the sentence."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or not token.text.isalpha() or not token.text.islower():
            continue
        if token.key in _ALSO_NAMES:
            continue
        if word.pos_ in ("NOUN", "ADJ", "VERB", "ADV") and len(token.text) > 2 and j:
            yield one("capital-extra", token.start, token.start + 1, token.text[0].upper())
