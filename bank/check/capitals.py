"""Capital letters."""

from __future__ import annotations

from bank.check.engine import ALL_KINDS, Found, at, on_text, on_words
from bank.check.lexicon import word_set
from bank.check.reading import Reading


@on_words("i i'm i'll i've i'd im ive")
def small_i(r: Reading, i: int) -> Found:
    """The pronoun I written small.

    >>> show("Ben and i ran.")
    ['capital-i: i -> I']
    """
    word = r.words[i]
    if word[0] != "i" or r.gap[i][:1] == "." and r.gap[i] != "." and len(word) == 1:
        return None
    return at(r, i, "capital-i", "The word I is always a capital letter.", "I" + word[1:])


# What is said may end in ? or !, and the sentence goes on: "Where?" asked Ben.
_SPEAKS = word_set(
    "said says asked yelled shouted cried whispered replied answered called exclaimed"
)


@on_text(ALL_KINDS - {"sort"})
def small_first_letter(r: Reading) -> Found:
    """A sentence that starts with a small letter.

    >>> show("the dog ran. it was fast.")
    ['capital-first: the -> The', 'capital-first: it -> It']
    """
    found = []
    for i, is_first in enumerate(r.first):
        word = r.words[i]
        if not is_first or not word[0].islower() or word in ("i", "i'm", "i'll", "i've", "i'd"):
            continue
        if i and word in _SPEAKS:
            continue
        found.append(
            at(
                r,
                i,
                "capital-first",
                "A sentence starts with a capital letter.",
                word[0].upper() + word[1:],
            )  # fmt: skip
        )
    return found
