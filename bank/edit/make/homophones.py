"""A word for another that sounds the same."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from bank.edit import lexicon
from bank.edit.look import Sentence
from bank.edit.make.rude import is_rude
from bank.edit.make.spot import Spot, one
from bank.edit.make.write import cased
from bank.language import _pronunciations, sounds, zipf

# Well known: as frequent as "knight" (wordfreq, Zipf scale).
_WELL_KNOWN = 3.9
_OTHERS = {
    "than": ("then",),
    "then": ("than",),
    "lose": ("loose",),
    "our": ("are",),
    "of": ("off",),
    "were": ("where",),
    "where": ("were",),
    "quiet": ("quite",),
    "its": ("it's",),
    "your": ("you're",),
    "you're": ("your",),
    "their": ("they're", "there"),
    "they're": ("their", "there"),
    "there": ("their", "they're"),
    "whose": ("who's",),
}


@lru_cache(maxsize=1)
def _by_sound() -> dict[tuple[str, ...], list[str]]:
    groups: dict[tuple[str, ...], list[str]] = {}
    for word, all_phones in _pronunciations().items():
        for phones in all_phones[:1]:
            key = tuple(phone.rstrip("012") for phone in phones)
            groups.setdefault(key, []).append(word)
    return {key: words for key, words in groups.items() if len(words) > 1}


@lru_cache(maxsize=2048)
def homophones(word: str) -> tuple[str, ...]:
    """Well-known words that sound like `word` in CMUdict or are often taken for it.

    >>> "eight" in homophones("ate"), "loose" in homophones("lose")
    (True, True)
    """
    found = list(_OTHERS.get(word, ()))
    for phones in sounds(word)[:1]:
        for other in _by_sound().get(tuple(p.rstrip("012") for p in phones), ()):
            if other != word and other.isalpha() and _is_well_known(other):
                found.append(other)
    return tuple(dict.fromkeys(found))


# Names that the word lists also have as words.
_NAMES = frozenset(["ann", "jean", "marc", "phil", "bill", "rob", "barry", "mary", "sue"])


def _is_well_known(word: str) -> bool:
    return (
        word not in _NAMES
        and lexicon.is_word(word)
        and zipf(word) >= _WELL_KNOWN
        and not is_rude(word)
    )


_KIND = {"NOUN": "NOUN", "VERB": "VERB", "ADJ": "ADJ", "ADV": "ADV", "AUX": "AUX", "PROPN": "PROPN"}


def same_sound(s: Sentence) -> Iterator[Spot]:
    """Another word that sounds the same and cannot stand here: it is another kind of word."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or not token.text[0].isalpha() or s.is_name(j):
            continue
        for other in homophones(token.key):
            if _could_stand_here(other, word.pos_, token.key):
                continue
            yield one("homophone", token.start, token.end, cased(other, token.text))


def _could_stand_here(other: str, pos: str, word: str) -> bool:
    if word in _OTHERS and other in _OTHERS[word]:
        return False
    kind = _KIND.get(pos)
    if kind is None:
        # A small word (to, for, by, I) against a word with content.
        return False
    return bool(lexicon.lemmas(other, kind))
