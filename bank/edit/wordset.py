"""A set of words written as one line of text."""

from __future__ import annotations


def word_set(text: str) -> frozenset[str]:
    """The words of `text`.

    >>> sorted(word_set("a the an"))
    ['a', 'an', 'the']
    """
    return frozenset(text.split())
