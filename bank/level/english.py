"""Whether a text is in English, so that a text of another language is refused and not levelled.

At least half of its words must be English; names are not counted. Where most of its words are on the
lists of everyday words nothing more is asked. Otherwise a word that is met far oftener in a
neighbour language is taken for a word of that language ("la" and "est" stand in English lists too).
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import TYPE_CHECKING

from bank.level import vocabulary

if TYPE_CHECKING:
    from bank.level.evidence import Evidence

# The languages that wordfreq has word lists of and whose little words look like English ones.
NEIGHBOURS = ("es", "fr", "de", "it", "pt", "nl")
FAR_OFTENER = 10.0


def refuse_other_languages(typed: str, seen: Evidence) -> None:
    """`ValueError` for a text without an English word, or of which too few words are English; it
    says the text as it was `typed`."""
    words = [word.known for word in seen.words if not word.is_name]
    everyday = sum(word.everyday for word in words)
    if words and 2 * everyday >= len(words):
        return
    if not any(vocabulary.is_english(word.text.lower()) for word in seen.words):
        raise ValueError(f"no English word in {typed!r}")
    english = everyday + sum(
        vocabulary.is_english(word.text) and not is_foreign(word.text)
        for word in words
        if not word.everyday
    )
    if 2 * english < len(words):
        raise ValueError(f"too few English words in {typed!r}")


def is_foreign(word: str) -> bool:
    """Whether a lower-case word is met far oftener in another language than in English.

    >>> is_foreign("gato"), is_foreign("la"), is_foreign("verdict")
    (True, True, False)
    """
    english = vocabulary.frequency(word)
    return any(
        _frequencies(language).get(word, 0.0) > FAR_OFTENER * english for language in NEIGHBOURS
    )


@cache
def _frequencies(language: str) -> Mapping[str, float]:
    from wordfreq import get_frequency_dict

    frequencies: dict[str, float] = get_frequency_dict(language, "small")
    return frequencies
