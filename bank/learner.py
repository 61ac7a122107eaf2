"""Learners: a code, a picture sign, a band, and the settings that the draw looks at. No names."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from bank.item import BankError

# Common practice: the level for working alone lies below the level at which a learner is taught.
BAND_BELOW = (2.0, 0.5)
NARROWEST_BAND = 1.0
HIGHEST_GRADE = 12.0
DEFAULT_QUESTIONS = 5
MOST_QUESTIONS = 20
RESPONSE_MODES = ("writes", "circles", "types", "says", "signs")
SIGNS = (
    "circle",
    "square",
    "triangle",
    "star",
    "heart",
    "moon",
    "diamond",
    "cross",
    "drop",
    "leaf",
)
SKILL_STATES = ("taught", "in-work", "mastered")
_CODE = re.compile(r"[A-Za-z0-9][A-Za-z0-9-]{0,11}")


def check_code(code: str) -> str:
    """`code` if it can be a learner's code: 1 to 12 letters, digits and hyphens."""
    code = code.strip()
    if not _CODE.fullmatch(code):
        raise BankError(
            f"{code[:20]!r} cannot be a code: 1 to 12 letters, digits and hyphens, such as K4"
        )
    return code


@dataclass(frozen=True, slots=True)
class Band:
    """The range of levels, in reading grades, in which a learner works alone."""

    low: float
    high: float

    def __post_init__(self) -> None:
        if not 0 <= self.low < self.high <= HIGHEST_GRADE:
            raise BankError(
                f"a band runs from a lower to a higher grade between 0 and 12, not {self.low:g} to"
                f" {self.high:g}"
            )

    def includes(self, grade: float) -> bool:
        return self.low <= grade <= self.high

    def __str__(self) -> str:
        return f"{grade_word(self.low)} to {grade_word(self.high)}"


def grade_word(grade: float) -> str:
    """A reading grade as screens say it: K for 0, else the number.

    >>> grade_word(0), grade_word(1.5), grade_word(2)
    ('K', '1.5', '2')
    """
    return "K" if grade < 0.05 else f"{grade:.1f}".removesuffix(".0")


def grade_name(grade: float) -> str:
    """A level inside a sentence: "K", "grade 1.5".

    >>> grade_name(0), grade_name(2.5)
    ('K', 'grade 2.5')
    """
    word = grade_word(grade)
    return word if word == "K" else f"grade {word}"


def default_band(taught: float) -> Band:
    """The band for working alone of a learner taught at this reading grade.

    From 2.0 below to 0.5 below, never below K, never narrower than one grade (common practice).

    >>> default_band(1.0), default_band(4.5)
    (Band(low=0.0, high=1.0), Band(low=2.5, high=4.0))
    """
    if not 0 <= taught <= HIGHEST_GRADE:
        raise BankError(f"a reading grade lies between 0 (K) and 12, not {taught:g}")
    low = max(0.0, taught - BAND_BELOW[0])
    return Band(low, max(low + NARROWEST_BAND, taught - BAND_BELOW[1]))


def default_errors(band: Band) -> int:
    """How many errors the sentence has: 2 for a band that ends below grade 2, else 3."""
    return 2 if band.high < 2 else 3


@dataclass(frozen=True, slots=True)
class Away:
    """Days on which a learner is not there, both included."""

    first: dt.date
    last: dt.date

    def includes(self, day: dt.date) -> bool:
        return self.first <= day <= self.last


@dataclass(frozen=True, slots=True)
class Learner:
    """One learner as the bank knows them; `number` is the row, which never changes.

    `first` and `last` are the days between which they are in the class, as far as that was said.
    """

    number: int
    code: str
    sign: str
    taught: float
    band: Band
    questions: int = DEFAULT_QUESTIONS
    errors: int = 2
    avoid: tuple[str, ...] = ()
    group: str = ""
    mode: str = "writes"
    away: tuple[Away, ...] = ()
    skills: dict[str, str] = field(default_factory=dict)
    support: dict[str, Any] = field(default_factory=dict)
    first: dt.date | None = None
    last: dt.date | None = None

    def in_class(self, day: dt.date) -> bool:
        """Whether the learner has joined by `day` and not left before it."""
        return (self.first is None or self.first <= day) and (self.last is None or day <= self.last)

    def is_away(self, day: dt.date) -> bool:
        """Whether the learner is not there on `day`, or not in the class at all."""
        return not self.in_class(day) or any(away.includes(day) for away in self.away)

    def not_in_class(self, day: dt.date) -> str:
        """Why the learner is not in the class on `day`, in words; empty where they are."""
        if self.last and self.last < day:
            return f"{self.code} left on {self.last}"
        return f"{self.code} joins on {self.first}" if not self.in_class(day) else ""


def somebody_in_class(learners: Sequence[Learner], day: dt.date) -> Sequence[Learner]:
    """The learners; `BankError` says why not where there are some and none is in the class then."""
    if learners and not any(one.in_class(day) for one in learners):
        why = "; ".join(one.not_in_class(day) for one in learners)
        raise BankError(f"there is no set on {day}: {why} (see: binderbank job stay --help)")
    return learners
