"""The published readability formulas, through textstat, as they are.

They were fitted on passages of about a hundred words and more; on a short prompt they go below
grade zero and take a long word for a hard one. They are shown beside the level, never used alone
on a short text. `AS_PUBLISHED` gives each with its equation and source; `of_text` computes them
all, and `LazyFormulas` only when someone looks: textstat loads CMUdict and is slower than a parse.

The words for the counts: W words, S sentences, L letters, Y syllables, H words of three syllables
and more, X words of more than six letters, U words that are not on the list of familiar words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, overload

from bank.level.scale import Published


@dataclass(frozen=True, slots=True)
class Formula:
    """A published formula: how to get its value from textstat, and the text it was meant for."""

    code: str
    name: str
    unit: str
    meant_from: int
    value: Callable[[Any, str], float]


def flesch_reading_ease(textstat: Any, text: str) -> float:
    """206.835 - 1.015 W/S - 84.6 Y/W; 100 is easiest.

    R. Flesch, "A new readability yardstick", Journal of Applied Psychology 32, 1948; samples of 100
    words.
    """
    return float(textstat.flesch_reading_ease(text))


def flesch_kincaid(textstat: Any, text: str) -> float:
    """0.39 W/S + 11.8 Y/W - 15.59, a grade.

    J. P. Kincaid and others, "Derivation of new readability formulas … for Navy enlisted
    personnel", Research Branch Report 8-75, 1975; passages of about 170 words.
    """
    return float(textstat.flesch_kincaid_grade(text))


def spache(textstat: Any, text: str) -> float:
    """0.141 W/S + 0.086 (100 U/W) + 0.839, a grade, as textstat has it (the constants of 1953).

    G. Spache, "A new readability formula for primary-grade reading materials", Elementary School
    Journal 53, 1953; samples of 100 words. textstat counts as unfamiliar the words of two syllables
    and more that are not on the Dale-Chall list, not Spache's own list.
    """
    return float(textstat.spache_readability(text))


def spache_revised(textstat: Any, text: str) -> float:
    """0.121 W/S + 0.082 (100 U/W) + 0.659, a grade; U/W and W/S by textstat.

    G. Spache, "Good reading for poor readers", revised edition, 1974 (constants from memory);
    samples of 100 words. The unfamiliar words are counted as in `spache`.
    """
    words = textstat.lexicon_count(text, removepunct=True)
    if not words:
        return 0.0
    unfamiliar = textstat.difficult_words(text)
    per_sentence = textstat.words_per_sentence(text)
    return float(0.121 * per_sentence + 0.082 * (100 * unfamiliar / words) + 0.659)


def new_dale_chall(textstat: Any, text: str) -> float:
    """0.1579 (100 U/W) + 0.0496 W/S, plus 3.6365 where U/W is above 0.05; a score near the grade.

    J. S. Chall and E. Dale, "Readability revisited: the new Dale-Chall readability formula", 1995,
    for the list of 3,000 familiar words; the equation is the one of E. Dale and J. S. Chall, "A
    formula for predicting readability", 1948; samples of 100 words. textstat counts inflected forms
    and names as unfamiliar, so that it lies above the published procedure.
    """
    return float(textstat.dale_chall_readability_score(text))


def coleman_liau(textstat: Any, text: str) -> float:
    """0.0588 (100 L/W) - 0.296 (100 S/W) - 15.8, a grade.

    M. Coleman and T. L. Liau, "A computer readability formula designed for machine scoring",
    Journal of Applied Psychology 60, 1975; samples of 100 words.
    """
    return float(textstat.coleman_liau_index(text))


def automated_readability(textstat: Any, text: str) -> float:
    """4.71 L/W + 0.5 W/S - 21.43, a grade.

    R. J. Senter and E. A. Smith, "Automated readability index", AMRL-TR-66-220, 1967; passages of
    several hundred words.
    """
    return float(textstat.automated_readability_index(text))


def gunning_fog(textstat: Any, text: str) -> float:
    """0.4 (W/S + 100 H/W), a grade.

    R. Gunning, "The technique of clear writing", 1952; samples of 100 words and more.
    """
    return float(textstat.gunning_fog(text))


def lix(textstat: Any, text: str) -> float:
    """W/S + 100 X/W, its own score: below 25 is a children's book, above 55 hard.

    C. H. Björnsson, "Läsbarhet", 1968; samples of about 200 words.
    """
    return float(textstat.lix(text))


def smog(textstat: Any, text: str) -> float:
    """1.043 sqrt(30 H/S) + 3.1291, a grade.

    G. H. McLaughlin, "SMOG grading: a new readability formula", Journal of Reading 12, 1969; three
    samples of ten sentences, here taken as 300 words.
    """
    return float(textstat.smog_index(text))


AS_PUBLISHED = (
    Formula("flesch_reading_ease", "Flesch Reading Ease", "ease", 100, flesch_reading_ease),
    Formula("flesch_kincaid", "Flesch–Kincaid", "grade", 170, flesch_kincaid),
    Formula("spache", "Spache", "grade", 100, spache),
    Formula("spache_revised", "Spache (revised)", "grade", 100, spache_revised),
    Formula("new_dale_chall", "new Dale–Chall", "grade", 100, new_dale_chall),
    Formula("coleman_liau", "Coleman–Liau", "grade", 100, coleman_liau),
    Formula("ari", "ARI", "grade", 300, automated_readability),
    Formula("gunning_fog", "Gunning Fog", "grade", 100, gunning_fog),
    Formula("lix", "LIX", "score", 200, lix),
    Formula("smog", "SMOG", "grade", 300, smog),
)


@lru_cache(maxsize=512)
def of_text(text: str) -> tuple[Published, ...]:
    """The values of all the formulas for `text`, in the order of `AS_PUBLISHED`."""
    import textstat

    words = len(text.split())
    return tuple(
        Published(
            formula.code,
            formula.name,
            round(formula.value(textstat, text), 2),
            formula.unit,
            formula.meant_from,
            words < formula.meant_from,
        )
        for formula in AS_PUBLISHED
    )


class LazyFormulas(Sequence[Published]):
    """The formulas of one text, computed when someone looks."""

    __slots__ = ("_text",)

    def __init__(self, text: str) -> None:
        self._text = text

    @overload
    def __getitem__(self, index: int) -> Published: ...
    @overload
    def __getitem__(self, index: slice) -> tuple[Published, ...]: ...
    def __getitem__(self, index: int | slice) -> Published | tuple[Published, ...]:
        return of_text(self._text)[index]

    def __len__(self) -> int:
        return len(AS_PUBLISHED)

    def __iter__(self) -> Iterator[Published]:
        return iter(of_text(self._text))

    def __eq__(self, other: object) -> bool:
        if isinstance(other, LazyFormulas) and other._text == self._text:
            return True
        return isinstance(other, Sequence) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        return hash(of_text(self._text))

    def __repr__(self) -> str:
        return f"LazyFormulas({self._text!r})"
