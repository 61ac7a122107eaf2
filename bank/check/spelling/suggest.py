"""Which word was meant: suggestions in the order of their likelihood.

The likelihood is that of a noisy channel: how often the word is written (wordfreq) times how easily
a writer comes from the word to what stands there. The costs of an edit are our own judgement of
what people do: letters changed round, doubled or single, a vowel for another, letters that sound
alike, a silent letter left out, a neighbouring key; they were weighed on one half of an outside
list and measured on the other.
"""

from __future__ import annotations

import math
from functools import cache, lru_cache

from bank.check.lexicon import lemmas, listed_words

_LETTERS = "abcdefghijklmnopqrstuvwxyz"
_VOWELS = frozenset("aeiouy")
_ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
_SOUND_ALIKE = frozenset(
    [
        "ck",
        "kc",
        "cs",
        "sc",
        "sz",
        "zs",
        "gj",
        "jg",
        "kq",
        "qk",
        "cq",
        "dt",
        "td",
        "mn",
        "nm",
        "fv",
        "vf",
        "bp",
        "pb",
        "iy",
        "yi",
        "ao",
        "ae",
        "ea",
        "ie",
        "ei",
        "ou",
        "uo",
    ]
)
# What a reader hears alike, in letters: (written, meant), both ways.
_SPELLED_ALIKE = (
    ("f", "ph"),
    ("k", "ch"),
    ("k", "ck"),
    ("sh", "ti"),
    ("sh", "ci"),
    ("shun", "tion"),
    ("cher", "ture"),
    ("er", "or"),
    ("er", "ar"),
    ("el", "le"),
    ("al", "le"),
    ("il", "le"),
    ("ol", "le"),
    ("n", "kn"),
    ("r", "wr"),
    ("w", "wh"),
    ("g", "gh"),
    ("j", "dge"),
    ("ch", "tch"),
    ("s", "sc"),
    ("s", "ps"),
    ("ee", "ea"),
    ("ai", "ay"),
    ("ay", "ai"),
    ("oa", "ow"),
    ("aw", "au"),
    ("u", "oo"),
    ("ie", "igh"),
    ("ite", "ight"),
    ("f", "gh"),
    ("x", "cks"),
    ("qu", "kw"),
    ("ous", "us"),
    ("z", "s"),
    ("uf", "ough"),
    ("m", "mb"),
    ("k", "que"),
    ("y", "ie"),
    ("y", "ey"),
    ("i", "y"),
    ("a", "eigh"),
    ("e", "ea"),
    ("u", "ou"),
    ("shus", "cious"),
    ("shus", "tious"),
    ("shul", "cial"),
    ("shul", "tial"),
    ("ence", "ance"),
    ("ent", "ant"),
    ("able", "ible"),
    ("sion", "tion"),
    ("cion", "tion"),
    ("full", "ful"),
    ("ly", "lly"),
    ("ally", "ly"),
    ("ery", "ary"),
    ("cede", "ceed"),
    ("sede", "cede"),
)
_SCAN_FLOOR = 2.2
_MOST_COST = 2.4
_WEIGHT = 2.2
# A name is seldom what a small letter was meant for.
_NAME_COST = 0.8


@lru_cache(maxsize=1)
def _near_keys() -> frozenset[str]:
    near = set()
    for y, row in enumerate(_ROWS):
        for x, key in enumerate(row):
            for yy in (y - 1, y, y + 1):
                if 0 <= yy < 3:
                    for xx in (x - 1, x, x + 1):
                        if 0 <= xx < len(_ROWS[yy]) and (xx, yy) != (x, y):
                            near.add(key + _ROWS[yy][xx])
    return frozenset(near)


@lru_cache(maxsize=1)
def _frequency() -> dict[str, float]:
    from wordfreq import get_frequency_dict

    frequency: dict[str, float] = get_frequency_dict("en")
    return frequency


@cache
def _zipf(word: str) -> float:
    frequency = _frequency().get(word, 0.0)
    return math.log10(frequency) + 9 if frequency > 0 else 1.0


@lru_cache(maxsize=1)
def _scanned() -> dict[int, list[tuple[str, int]]]:
    """Words that are met, by length, each with the set of its letters as bits."""
    by_length: dict[int, list[tuple[str, int]]] = {}
    for word in _frequency():
        if word.isascii() and word.isalpha() and len(word) > 2 and _is_offered(word):
            by_length.setdefault(len(word), []).append((word, _bits(word)))
    return by_length


def _is_offered(word: str) -> bool:
    """Whether a word may be a suggestion: listed, and met often enough."""
    floor = _SCAN_FLOOR if word in listed_words() else 3.6
    if _zipf(word) < floor:
        return False
    if word in listed_words():
        return True
    from bank.check.spelling.words import is_word

    return is_word(word)


def _bits(word: str) -> int:
    bits = 0
    for letter in word:
        bits |= 1 << (ord(letter) & 31)
    return bits


@cache
def suggest(word: str, count: int = 5) -> tuple[str, ...]:
    """The likeliest words for the misspelled `word` (small letters), the best first.

    >>> suggest("recieve")[0], suggest("elefant")[0], suggest("freind")[0], suggest("becuase")[0]
    ('receive', 'elephant', 'friend', 'because')
    """
    if not word.isascii() or not word.isalpha():
        return ()
    scored = []
    for candidate in _candidates(word):
        cost = _cost(word, candidate)
        if cost <= _MOST_COST + 0.15 * len(word):
            scored.append((_zipf(candidate) - _WEIGHT * cost, candidate))
    scored.sort(reverse=True)
    scored = sorted(
        (
            (score - _NAME_COST * (not _is_plain(candidate)), candidate)
            for score, candidate in scored[: 2 * count]
        ),
        reverse=True,
    )
    return tuple(candidate for _, candidate in scored[:count])


def _is_plain(word: str) -> bool:
    from bank.check.grammar import FUNCTION

    return bool(lemmas(word)) or word in FUNCTION or _zipf(word) > 5


def _candidates(word: str) -> set[str]:
    found = {
        w for w in _one_edit(word) if w in listed_words() or w in _frequency() and _is_offered(w)
    }
    found |= {w for w in _spelled_alike(word) if w in listed_words()}
    bits, size = _bits(word), len(word)
    reach = 1 if size < 4 else 2
    for length in range(max(3, size - reach), size + reach + 1):
        for other, letters in _scanned().get(length, ()):
            # Two slips change four letters at most; a writer seldom misses the first letter too.
            if (bits ^ letters).bit_count() <= (3 if other[0] == word[0] else 1):
                found.add(other)
    if size > 6:
        for length in (size - 3, size + 3):
            for other, letters in _scanned().get(length, ()):
                if other[0] == word[0] and (bits ^ letters).bit_count() <= 2:
                    found.add(other)
    return found


def _one_edit(word: str) -> set[str]:
    splits = [(word[:i], word[i:]) for i in range(len(word) + 1)]
    near = {a + b[1:] for a, b in splits if b}
    near |= {a + b[1] + b[0] + b[2:] for a, b in splits if len(b) > 1}
    near |= {a + c + b[1:] for a, b in splits if b for c in _LETTERS}
    near |= {a + c + b for a, b in splits for c in _LETTERS}
    return near


def _spelled_alike(word: str) -> set[str]:
    found = set()
    for one, other in _SPELLED_ALIKE:
        for written, meant in ((one, other), (other, one)):
            at = word.find(written)
            while at >= 0:
                found.add(word[:at] + meant + word[at + len(written) :])
                at = word.find(written, at + 1)
    return found | {near for first in found for near in _silent(first)}


def _silent(word: str) -> set[str]:
    """The word with a last e more or less, and a double letter more."""
    more = {word + "e"}
    if word.endswith("e"):
        more.add(word[:-1])
    more |= {word[: i + 1] + word[i] + word[i + 1 :] for i in range(1, len(word))}
    return more


def _cost(written: str, meant: str) -> float:
    """How far a writer went from `meant` to `written`: about 1 for one slip."""
    cost = _edit_cost(written, meant)
    if written[0] != meant[0]:
        cost += 0.45
    return min(cost, _alike_cost(written, meant))


def _alike_cost(written: str, meant: str) -> float:
    for one, other in _SPELLED_ALIKE:
        for a, b in ((one, other), (other, one)):
            at = written.find(a)
            while at >= 0:
                changed = written[:at] + b + written[at + len(a) :]
                if changed == meant:
                    return 0.75
                if changed + "e" == meant or changed == meant + "e":
                    return 1.3
                at = written.find(a, at + 1)
    return 9.0


def _edit_cost(a: str, b: str) -> float:
    """The cheapest way from `a` (written) to `b` (meant) by changing, swapping and dropping letters."""
    n, m = len(a), len(b)
    before: list[float] = []
    last = [0.0] * (m + 1)
    for j in range(1, m + 1):
        last[j] = last[j - 1] + _insert_cost(b, j - 1)
    for i in range(1, n + 1):
        row = [last[0] + _delete_cost(a, i - 1)]
        x = a[i - 1]
        for j in range(1, m + 1):
            y = b[j - 1]
            if x == y:
                best = last[j - 1]
            else:
                best = last[j - 1] + _change_cost(x, y)
                option = last[j] + _delete_cost(a, i - 1)
                if option < best:
                    best = option
                option = row[j - 1] + _insert_cost(b, j - 1)
                if option < best:
                    best = option
                if i > 1 and j > 1 and x == b[j - 2] and a[i - 2] == y:
                    option = before[j - 2] + 0.7
                    if option < best:
                        best = option
            row.append(best)
        before, last = last, row
    return last[m]


def _change_cost(x: str, y: str) -> float:
    pair = x + y
    if x in _VOWELS and y in _VOWELS:
        return 0.75
    if pair in _SOUND_ALIKE:
        return 0.8
    if pair in _near_keys():
        return 1.0
    return 1.25


def _insert_cost(meant: str, j: int) -> float:
    """A letter of the word that was left out."""
    letter = meant[j]
    if j and meant[j - 1] == letter or j + 1 < len(meant) and meant[j + 1] == letter:
        return 0.55
    if letter == "e" and j == len(meant) - 1:
        return 0.7
    if letter in _VOWELS or letter in "hu":
        return 0.8
    if j == len(meant) - 1 and letter in "sd":
        return 1.15
    return 0.95


def _delete_cost(written: str, i: int) -> float:
    """A letter that is too many."""
    letter = written[i]
    if i and written[i - 1] == letter or i + 1 < len(written) and written[i + 1] == letter:
        return 0.55
    if letter == "e":
        return 0.75
    if letter in _VOWELS:
        return 0.85
    return 1.05
