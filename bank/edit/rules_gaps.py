"""Which skill repairs a word that was left out or is too many."""

from __future__ import annotations

from collections.abc import Callable

from bank.edit import lexicon
from bank.edit.look import Change, Verdict
from bank.edit.sets import ARTICLES, AUXILIARIES, NEGATIVES


def article_left_out(change: Change) -> Verdict | None:
    """No article where one belongs.

    >>> skills("We went to park.", "We went to the park.")
    ['article']
    """
    return Verdict("article") if change.right in ARTICLES else None


def more_left_out(change: Change) -> Verdict | None:
    """No more or most before a long word.

    >>> skills("It is beautiful than mine.", "It is more beautiful than mine.")
    ['comparison']
    """
    if change.right not in ("more", "most"):
        return None
    after = change.sentence.word(change.j + 1)
    is_compared = after is not None and after.pos_ in ("ADJ", "ADV")
    return Verdict("comparison") if is_compared else None


def word_left_out(change: Change) -> Verdict | None:
    """Any other word that is not there.

    >>> skills("The soup hot.", "The soup is hot.")
    ['missing-word']
    """
    return Verdict("missing-word")


def word_twice(change: Change) -> Verdict | None:
    """The same word twice in a row.

    >>> skills("I saw the the dog.", "I saw the dog.")
    ['extra-word']
    """
    beside = (change.sentence.f_key(change.i - 1), change.sentence.f_key(change.i + 1))
    return Verdict("extra-word") if change.wrong in beside else None


def article_too_many(change: Change) -> Verdict | None:
    """An article where none belongs.

    >>> skills("I like the Ben.", "I like Ben.")
    ['article']
    """
    return Verdict("article") if change.wrong in ARTICLES else None


def more_too_many(change: Change) -> Verdict | None:
    """More or most beside an ending that says it already.

    >>> skills("My dog is more bigger.", "My dog is bigger.")
    ['comparison']
    """
    if change.wrong not in ("more", "most"):
        return None
    following = change.sentence.f_key(change.i + 1)
    return Verdict("comparison") if lexicon.comparison_stem(following) else None


def no_word_dropped(change: Change) -> Verdict | None:
    """A no word that goes because another is enough.

    >>> skills("We don't have no milk.", "We have no milk.")
    ['double-negative']
    """
    is_no = change.wrong in NEGATIVES or change.wrong.endswith(("n't", "nt"))
    has_other = change.sentence.has_negative(-1)
    return Verdict("double-negative") if is_no and has_other else None


def helper_verb_too_many(change: Change) -> Verdict | None:
    """A helping verb beside a form that does not take one.

    >>> [(f.skill, f.sure) for f in fixes("I did went home.", "I went home.")]
    [('tense', False)]
    """
    if change.wrong not in AUXILIARIES:
        return None
    following = change.sentence.word(change.j)
    is_verb = following is not None and following.tag_ in ("VBD", "VBZ", "VBP")
    return Verdict("tense", sure=False) if is_verb else None


def word_too_many(change: Change) -> Verdict | None:
    """Any other word that should go.

    >>> skills("I can to swim.", "I can swim.")
    ['extra-word']
    """
    return Verdict("extra-word")


LEFT_OUT: tuple[Callable[[Change], Verdict | None], ...] = (
    article_left_out,
    more_left_out,
    word_left_out,
)
TOO_MANY: tuple[Callable[[Change], Verdict | None], ...] = (
    word_twice,
    article_too_many,
    more_too_many,
    no_word_dropped,
    helper_verb_too_many,
    word_too_many,
)
