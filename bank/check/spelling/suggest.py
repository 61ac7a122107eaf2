"""Which word was meant: suggestions in the order of their likelihood."""

from __future__ import annotations

from functools import cache

from bank.check.lexicon import listed_words, zipf


@cache
def suggest(word: str, count: int = 5) -> tuple[str, ...]:
    """The likeliest words for the misspelled `word`, the best first.

    >>> suggest("recieve")[0]
    'receive'
    """
    from bank.check.spelling.words import is_word

    letters = "abcdefghijklmnopqrstuvwxyz'"
    splits = [(word[:i], word[i:]) for i in range(len(word) + 1)]
    near = {a + b[1:] for a, b in splits if b}
    near |= {a + b[1] + b[0] + b[2:] for a, b in splits if len(b) > 1}
    near |= {a + c + b[1:] for a, b in splits if b for c in letters}
    near |= {a + c + b for a, b in splits for c in letters}
    real = [w for w in near if w in listed_words() or (zipf(w) > 3 and is_word(w))]
    return tuple(sorted(real, key=zipf, reverse=True)[:count])
