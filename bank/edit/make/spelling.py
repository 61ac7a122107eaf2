"""Misspellings that children make, from the sounds of the word."""

from __future__ import annotations

import re
from collections.abc import Iterator

from bank.edit import lexicon
from bank.edit.look import Sentence
from bank.edit.make.rude import is_rude
from bank.edit.make.spot import Spot, one
from bank.language import sounds, zipf

# Letters, the sound that must be in the word (ARPAbet, "" for none), and how a child writes it.
# Common practice: vowel teams for one another, silent letters dropped, doubles made single.
_PATTERNS: tuple[tuple[str, str, str], ...] = (
    (r"ie", "", "ei"),
    (r"ei", "", "ie"),
    (r"ea", "IY", "ee"),
    (r"ee", "IY", "ea"),
    (r"ea", "EH", "e"),
    (r"ai", "EY", "ay"),
    (r"ay", "EY", "ai"),
    (r"a([bcdfgkmnptv])e$", "EY", r"ai\1"),
    (r"igh", "AY", "ie"),
    (r"i([dkmnptv])e$", "AY", r"ie\1"),
    (r"oa", "OW", "o"),
    (r"o([klmnpst])e$", "OW", r"oa\1"),
    (r"oa([lt])$", "OW", r"o\1e"),
    (r"oo([lnt])$", "UW", r"u\1e"),
    (r"oo", "UW", "u"),
    (r"oo", "UH", "u"),
    (r"ou", "AW", "ow"),
    (r"ow", "AW", "ou"),
    (r"oi", "OY", "oy"),
    (r"oy", "OY", "oi"),
    (r"au", "AO", "aw"),
    (r"aw", "AO", "au"),
    (r"er$", "ER", "ur"),
    (r"ir", "ER", "er"),
    (r"ur", "ER", "er"),
    (r"ph", "F", "f"),
    (r"ck", "K", "k"),
    (r"^c(?=[aou])", "K", "k"),
    (r"ch", "K", "k"),
    (r"tch", "CH", "ch"),
    (r"^kn", "N", "n"),
    (r"^wr", "R", "r"),
    (r"^wh", "W", "w"),
    (r"mb$", "M", "m"),
    (r"ght", "T", "t"),
    (r"dge", "JH", "ge"),
    (r"ce$", "S", "s"),
    (r"le$", "L", "el"),
    (r"tion$", "SH", "shun"),
    (r"y$", "IY", "ee"),
    (r"([bdfglmnprst])\1", "", r"\1"),
    (r"(?<=[aeiou])([bdlmnpt])(?=[aeiouy])", "", r"\1\1"),
    (r"qu", "K", "kw"),
    (r"x", "K", "ks"),
    (r"(?<=[a-z])e(?=[rn][a-z])", "AH", "a"),
    (r"(?<=[a-z])o(?=[rn]$)", "ER", "e"),
    (r"a(?=[nl]$)", "AH", "e"),
    (r"(?<=[aeiou])r([a-z])", "", ""),
)


def misspellings(word: str) -> list[str]:
    """How a child may misspell `word` (small letters); never a word, never rude.

    >>> misspellings("friend")[:2]
    ['freind']
    """
    heard = {phone.rstrip("012") for phones in sounds(word) for phone in phones}
    if not heard:
        return []
    found: list[str] = []
    for pattern, sound, text in _PATTERNS:
        if (sound and sound not in heard) or not text:
            continue
        for match in re.finditer(pattern, word):
            made = word[: match.start()] + match.expand(text) + word[match.end() :]
            if made != word and made not in found and _is_usable(made, word):
                found.append(made)
    return found


def _is_usable(made: str, word: str) -> bool:
    return (
        len(made) >= 3
        and not lexicon.is_word(made)
        and not lexicon.lemmas(made)
        # CMUdict has rare family names that look like misspellings.
        and zipf(made) < (2.5 if sounds(made) else 3.0)
        and not is_rude(made)
        and lexicon.closeness(made, word) >= 0.5
    )


def wrong_letters(s: Sentence) -> Iterator[Spot]:
    """A word in the letters that a child hears or mixes up."""
    for j, token in enumerate(s.c):
        if not token.text.isalpha() or len(token.key) < 3 or s.is_name(j):
            continue
        for made in misspellings(token.key):
            # Without the first letter where it stays, so that a capital can go as well.
            if made[0] == token.key[0]:
                yield one("spelling", token.start + 1, token.end, made[1:])
            elif token.text.islower():
                yield one("spelling", token.start, token.end, made)
