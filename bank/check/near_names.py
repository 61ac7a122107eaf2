"""Days, months and holidays that are spelled wrong: a capital makes them look like a name."""

from __future__ import annotations

import difflib
from functools import cache

from bank.check import names
from bank.check.engine import Found, at, on_text
from bank.check.lexicon import listed_words
from bank.check.reading import Reading

_ALIKE, _ALIKE_LONG = 0.85, 0.8  # of the letters; Sundar and Sunday have less in common
_KNOWN = tuple(sorted(names.DAYS | names.MONTHS | names.HOLIDAYS))


@on_text()
def day_or_month_spelled_wrong(r: Reading) -> Found:
    """Wednsday, Febuary.

    >>> show("We swim on Wednsday in Febuary.")
    ['spelling: Wednsday -> Wednesday', 'spelling: Febuary -> February']
    >>> show("We and Mona swim on Sunday.")
    []
    """
    found = []
    for i, word in enumerate(r.lower):
        if not r.words[i][0].isupper() or not word.isalpha() or len(word) < 5:
            continue
        right = _meant(word)
        if right is not None:
            right = right.capitalize()
            found.append(at(r, i, "spelling", f"“{r.words[i]}” is spelled “{right}”.", right))
    return found


@cache
def _meant(word: str) -> str | None:
    """The day, month or holiday that `word` misses by a letter or two; None for a word or a name.

    >>> _meant("tuseday"), _meant("eastern"), _meant("monday")
    ('tuesday', None, None)
    """
    if names.is_name(word) or word.removesuffix("s") in names.KNOWN or word in listed_words():
        return None
    alike = _ALIKE if len(word) < 8 else _ALIKE_LONG
    near = difflib.get_close_matches(word, _KNOWN, n=1, cutoff=alike)
    return near[0] if near and near[0][0] == word[0] else None
