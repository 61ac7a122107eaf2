"""Small helpers to write an error the way the right word was written."""

from __future__ import annotations


def cased(text: str, like: str) -> str:
    """`text` with a capital where `like` has one.

    >>> cased("goed", "Went"), cased("i", "I")
    ('Goed', 'I')
    """
    return text[:1].upper() + text[1:] if like[:1].isupper() else text
