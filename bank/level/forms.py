"""From an inflected, derived or compound word to the word that a child learned first.

By spelling alone, so that a word counts the same wherever it stands. A base is accepted only where
its regular form gives the word back: "rating" comes from "rate" and never from "rat".
"""

from __future__ import annotations

from collections.abc import Iterator

_VOWELS = frozenset("aeiou")


def plural(base: str) -> str:
    """The regular -s form.

    >>> plural("fox"), plural("berry"), plural("day")
    ('foxes', 'berries', 'days')
    """
    if base.endswith(("s", "x", "z", "ch", "sh")):
        return base + "es"
    if base.endswith("y") and base[-2:-1] not in _VOWELS:
        return base[:-1] + "ies"
    return base + "s"


def joined(base: str, ending: str) -> tuple[str, ...]:
    """The regular forms of `base` with an ending that begins with a vowel (-ed, -ing, -er, -est).

    Two where a longer base may double its last letter or not.

    >>> joined("hop", "ing"), joined("hope", "ing"), joined("carry", "ed"), joined("visit", "ed")
    (('hopping',), ('hoping',), ('carried',), ('visited', 'visitted'))
    """
    if base.endswith("ie") and ending == "ing":
        return (base[:-2] + "ying",)
    if base.endswith("e") and not (base.endswith("ee") and ending == "ing"):
        return (base[:-1] + ending,) if not base.endswith("ye") else (base + ending,)
    if base.endswith("y") and base[-2:-1] not in _VOWELS and ending != "ing":
        return (base[:-1] + "i" + ending,)
    ends_short = (
        len(base) > 2
        and base[-1] not in "aeiouwxy"
        and base[-2] in _VOWELS
        and (base[-3] not in _VOWELS or base[-3:-1] == "ui")
    )
    if not ends_short:
        return (base + ending,)
    one_beat = sum(letter in _VOWELS for letter in base) - (base[:2] == "qu") == 1
    doubled = base + base[-1] + ending
    return (doubled,) if one_beat else (base + ending, doubled)


def _stems(word: str, ending: str) -> Iterator[str]:
    """The spellings that a base with this ending could have had."""
    stem = word.removesuffix(ending)
    if stem == word or len(stem) < 2:
        return
    yield stem
    yield stem + "e"
    if stem.endswith("i"):
        yield stem[:-1] + "y"
    if ending == "ing" and stem.endswith("y"):
        yield stem[:-1] + "ie"
    if len(stem) > 3 and stem[-1] == stem[-2]:
        yield stem[:-1]


def inflected_from(word: str) -> Iterator[tuple[str, str]]:
    """The bases of which `word` may be a regular -s, -ed or -ing form, each with its ending.

    >>> list(inflected_from("cats")), list(inflected_from("rating"))
    ([('cat', 's')], [('rate', 'ing')])
    """
    if word.endswith("s") and not word.endswith("ss"):
        for base in (word[:-1], word[:-2], word[:-3] + "y"):
            if len(base) > 1 and plural(base) == word:
                yield base, "s"
    if word.endswith("men") and len(word) > 5:
        yield word[:-3] + "man", "s"
    for ending in ("ed", "ing"):
        for base in _stems(word, ending):
            if len(base) > 2 and word in joined(base, ending):
                yield base, ending


def compared_from(word: str) -> Iterator[str]:
    """The spellings of which `word` may be the -er or -est form.

    >>> "big" in compared_from("biggest"), "happy" in compared_from("happier")
    (True, True)
    """
    for ending in ("er", "est"):
        for base in _stems(word, ending):
            if len(base) > 2 and word in joined(base, ending):
                yield base


def derived_from(word: str) -> Iterator[tuple[str, str]]:
    """The spellings from which `word` may be made with a plain ending or un-, each with that part.

    >>> ("sad", "ly") in derived_from("sadly"), ("happy", "un") in derived_from("unhappy")
    (True, True)
    """
    for ending in ("er", "y"):
        for base in _stems(word, ending):
            if len(base) > 2 and word in joined(base, ending):
                yield base, ending
    for ending in ("ly", "ful", "less", "ness"):
        stem = word.removesuffix(ending)
        if stem != word and len(stem) > 2:
            yield (stem[:-1] + "y" if stem.endswith("i") else stem), ending
            if ending == "ly" and word.endswith("ly") and stem[-1] in "bpt":
                yield stem + "le", ending
    if word.startswith("un") and len(word) > 5:
        yield word[2:], "un"


def compound_parts(word: str) -> Iterator[tuple[str, str]]:
    """The ways of cutting `word` into two parts of three letters and more.

    >>> list(compound_parts("snowman"))
    [('sno', 'wman'), ('snow', 'man')]
    """
    for cut in range(3, len(word) - 2):
        yield word[:cut], word[cut:]
