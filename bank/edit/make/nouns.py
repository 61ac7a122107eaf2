"""Things: childs, two cat, a apple, no article."""

from __future__ import annotations

from collections.abc import Iterator

from bank.edit import lexicon
from bank.edit.look import Sentence
from bank.edit.make.rude import is_rude
from bank.edit.make.spot import Spot, one
from bank.edit.make.write import cased
from bank.edit.sets import NUMBER_WORDS
from bank.edit.wordset import word_set
from bank.language import starts_with_vowel_sound

_MANY = word_set("many few several both these those some two") | (
    frozenset(NUMBER_WORDS) - {"one", "zero"}
)


def _said(lemma: str, plural: str) -> list[str]:
    """Plurals that children say or write: an s on any thing, and on a plural that has none.

    >>> _said("child", "children"), _said("fox", "foxes"), _said("dog", "dogs")
    (['childs', 'childrens'], ['foxs'], [])
    """
    said = [lemma + "s"] if plural != lemma + "s" else []
    if not plural.endswith("s"):
        said.append(plural + "s")
    return said


def wrong_plurals(s: Sentence) -> Iterator[Spot]:
    """A child's plural, or the form for one thing after a word for many."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or word.tag_ != "NNS" or not token.text.isalpha():
            continue
        lemma = word.lemma_.lower()
        if token.key not in lexicon.plurals(lemma) or lemma == token.key:
            continue
        for form in _said(lemma, token.key):
            if not lexicon.is_word(form) and not is_rude(form):
                yield one("plural", token.start, token.end, cased(form, token.text))
        before = s.key(j - 1)
        is_many = before in _MANY or before.isdigit() and before != "1"
        if not is_many and s.word(j - 1) is not None and s.word(j - 1).pos_ == "ADJ":  # type: ignore[union-attr]
            before = s.key(j - 2)
            is_many = before in _MANY or before.isdigit() and before != "1"
        if is_many and before != "some":
            yield one("plural", token.start, token.end, cased(lemma, token.text))


# Things that are always counted: "I ate cake" is right, "I saw dog" is not.
_COUNTED = word_set(
    "dog cat bird frog bug spider ant bee horse cow goat pig duck rabbit turtle whale bear boy girl "
    "man woman friend brother sister teacher baby ball book hat cap bike car truck boat bus kite "
    "tree flower pencil pen chair table lamp cup spoon bowl box bag shoe coat shirt sock tent kite "
    "robot puzzle drum letter map card clock key door window house barn farm store bridge hill lake "
    "pond river nest egg pillow blanket hood whistle helmet puppy kitten farmer nurse doctor song "
    "story picture poster plan rule turn question"
)


def wrong_articles(s: Sentence) -> Iterator[Spot]:
    """a for an and an for a, or no article before one countable thing."""
    for j, token in enumerate(s.c):
        if token.key not in ("a", "an", "the") or j + 1 >= len(s.c) or not s.c[j + 1].is_word:
            continue
        vowel = starts_with_vowel_sound(s.key(j + 1))
        if token.key in ("a", "an") and vowel is not None and vowel == (token.key == "an"):
            other = "a" if token.key == "an" else "an"
            yield one("article", token.start, token.end, cased(other, token.text))
        word = s.word(j)
        head = word.head if word is not None else None
        if j and token.key in ("a", "an") and head is not None and head.text.lower() in _COUNTED:
            yield one("article", token.start, s.c[j + 1].start, "")
