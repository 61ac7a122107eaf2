"""What the rules know about words, from the packages that carry it.

Word forms come from lemminflect (the NIH SPECIALIST lexicon), the list of English words and the
counts of word pairs from the dictionaries that come with symspellpy (from the Google Books n-grams
and SCOWL, as its authors state), frequencies from wordfreq. Each loads when it is first asked.
"""

from __future__ import annotations

from functools import cache, lru_cache
from importlib.resources import files

from bank.language import zipf as _zipf

_WORDS = "frequency_dictionary_en_82_765.txt"
_PAIRS = "frequency_bigramdictionary_en_243_342.txt"
PAIR_FLOOR = 6_000_000
"""The smallest count in the dictionary of word pairs; a pair that is missing is rarer than this."""


@cache
def word_set(words: str) -> frozenset[str]:
    """The words that stand apart by spaces in `words`; made once, so a rule can write them in place.

    >>> sorted(word_set("red blue"))
    ['blue', 'red']
    """
    return frozenset(words.split())


def _lines(name: str) -> list[str]:
    text = (files("symspellpy") / name).read_text(encoding="utf-8-sig")
    return text.splitlines()


@lru_cache(maxsize=1)
def listed_words() -> frozenset[str]:
    """The English words of symspellpy's dictionary, in small letters."""
    return frozenset(line.split(" ", 1)[0] for line in _lines(_WORDS))


@lru_cache(maxsize=1)
def _pairs() -> dict[str, int]:
    counts = {}
    for line in _lines(_PAIRS):
        pair, _, count = line.rpartition(" ")
        counts[pair] = int(count)
    return counts


def pair(first: str, second: str) -> int:
    """How often `first second` was counted; 0 where the dictionary of pairs does not have it."""
    return _pairs().get(f"{first} {second}", 0)


@cache
def zipf(word: str) -> float:
    """`bank.language.zipf`, kept."""
    return _zipf(word)


@cache
def lemmas(word: str) -> dict[str, tuple[str, ...]]:
    """The lemmas of `word` for each part of speech (NOUN, VERB, ADJ, ADV, AUX), by lemminflect.

    >>> lemmas("children")
    {'NOUN': ('child',)}
    """
    import lemminflect

    found: dict[str, tuple[str, ...]] = lemminflect.getAllLemmas(word)
    if not found and word.isalpha():
        return _compound(word)
    if not found and "-" in word:
        # "great-grandmother" is what its last part is.
        last = lemmas(word.rsplit("-", 1)[1])
        return {
            kind: (word,) for kind, own in last.items() if kind != "VERB" and word.endswith(own[0])
        }
    return found


def _compound(word: str) -> dict[str, tuple[str, ...]]:
    """A listed word that no lexicon has, made of two that it has: what its last part is.

    >>> lemmas("lunchbox")
    {'NOUN': ('lunchbox',)}
    """
    import lemminflect

    if word not in listed_words():
        return {}
    for cut in range(3, len(word) - 2):
        first, last = word[:cut], word[cut:]
        own = lemminflect.getAllLemmas(last).get("NOUN", ())
        if own and first in listed_words() and last in listed_words():
            return {"NOUN": (first + own[0],)}
    return {}
