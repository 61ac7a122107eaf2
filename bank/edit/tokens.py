"""Words, numbers and marks of a sentence, as a proofreader sees them.

spaCy splits "doesn't" in two and its splits depend on what stands around a word; a faulty sentence
needs tokens that do not change with its errors, so these are cut by pattern alone.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from bank.edit.wordset import word_set

# Short titles and places whose dot belongs to the word.
ABBREVIATIONS = word_set("dr mr mrs ms prof capt jr sr st ave rd mt etc vs")
END_MARKS = word_set(". ? ! ... … ?! !? !! ?? !!! ???")
QUOTES = word_set('" “ ” „ « »')

_LETTER = r"[^\W\d_]"
_PATTERN = re.compile(
    rf"""
    (?P<word>(?:{_LETTER}\.){{2,}}                                  # p.m.
      | \b(?i:{"|".join(sorted(ABBREVIATIONS))})\.(?!\.)             # Dr.
      | \b(?i:jan|feb|aug|sept|oct|nov|dec)\.(?=\s*\d)              # Oct. 5
      | \d+(?:[.,:/]\d+)*(?:(?:st|nd|rd|th|s|am|pm)\b)?                 # 4th, 3:30, 1,000
      | {_LETTER}[^\W_]*(?:['’\-][^\W_]+)*['’]?)                    # don't, girls', ice-cream
    | (?P<mark>\.{{2,}}|[?!]{{2,}}|--+|[^\w\s]|_)
    """,
    re.VERBOSE,
)


@dataclass(frozen=True, slots=True)
class Token:
    """One word or mark: its text, where it stands, and whether a space comes before it.

    `text` has straight quotes, as no learner is marked for the other kind; `key` is it in small
    letters: what the eye takes for the same word;
    `letters` is the key without apostrophes, dots and hyphens: `dont` for `don't`.
    """

    text: str
    start: int
    end: int
    space: bool
    is_word: bool
    key: str
    letters: str


def straight(text: str) -> str:
    """The text with curly quotes made straight; the length stays.

    >>> straight("It’s “fun”")
    'It\\'s "fun"'
    """
    return text.translate(_STRAIGHT)


_STRAIGHT = str.maketrans({"’": "'", "‘": "'", "“": '"', "”": '"'})


@lru_cache(maxsize=8192)
def tokens(text: str) -> tuple[Token, ...]:
    """The tokens of `text` from left to right.

    >>> [token.text for token in tokens("Dr. Lee's dog doesn't bark, Ben.")]
    ['Dr.', "Lee's", 'dog', "doesn't", 'bark', ',', 'Ben', '.']
    """
    found: list[Token] = []
    open_single = False
    end = 0
    for match in _PATTERN.finditer(text):
        piece, start = match.group(), match.start()
        is_word = match.group("word") is not None
        if piece in "'’‘" and not is_word:
            open_single = not open_single
        if is_word and open_single and piece[-1] in "'’":
            found.append(_token(piece[:-1], start, start > end, True))
            start += len(piece) - 1
            piece, is_word, open_single, end = piece[-1], False, False, start
        found.append(_token(piece, start, start > end, is_word))
        end = start + len(piece)
    return tuple(found)


def _token(text: str, start: int, space: bool, is_word: bool) -> Token:
    text = straight(text)
    key = text.casefold()
    letters = key.replace("'", "").replace(".", "").replace("-", "")
    return Token(text, start, start + len(text), space, is_word, key, letters)
