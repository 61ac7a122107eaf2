"""The scale of levels: a reading grade, the range that the evidence supports, and their words.

A grade is a point on the line from 0 to 12: 0 to 1 is kindergarten (K), 1 to 2 is grade 1, and so
on. The middle of a grade is its half (grade 2 = 2.5).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

LOWEST, HIGHEST = 0.0, 12.0
KINDS = ("question", "sentence", "topic", "sort", "passage")


def grade_name(grade: float) -> str:
    """The name of the grade in which this point lies.

    >>> grade_name(0.4), grade_name(2.9), grade_name(12)
    ('K', '2', '12')
    """
    whole = int(grade)
    return "K" if whole <= 0 else str(whole)


def in_words(grade: float, low: float, high: float) -> str:
    """The level as a teacher says it.

    >>> in_words(2.2, 1.4, 3.1)
    'early grade 2 (could be 1 to 3)'
    >>> in_words(0.5, 0.1, 0.9)
    'middle of kindergarten'
    """
    part = grade - int(grade)
    third = "early" if part < 1 / 3 else "middle of" if part < 2 / 3 else "late"
    name = grade_name(grade)
    said = f"{third} kindergarten" if name == "K" else f"{third} grade {name}"
    lowest, highest = grade_name(low), grade_name(high)
    return said if lowest == highest else f"{said} (could be {lowest} to {highest})"


@dataclass(frozen=True, slots=True)
class Published:
    """The value that one published formula gives.

    `unit` is "grade" (a school grade), "ease" (100 is easiest) or "score" (the formula's own
    scale); `meant_from` is the length in words (or, for SMOG, the words of about 30 sentences) from
    which its authors meant it, and `shorter_than_meant` says that this text has fewer.
    """

    code: str
    name: str
    value: float
    unit: str
    meant_from: int
    shorter_than_meant: bool

    def to_dict(self) -> dict[str, Any]:
        return {
            "code": self.code,
            "name": self.name,
            "value": self.value,
            "unit": self.unit,
            "meant_from": self.meant_from,
            "shorter_than_meant": self.shorter_than_meant,
        }


@dataclass(frozen=True, slots=True)
class Reason:
    """One thing that raises (or lowers) the level, and what a specialist can do about it.

    `what` is "word", "length", "clause", "passive", "negation" or "ask"; `text` is the piece of the
    text that does it; `cost` is in grades; `without` is what the level would be without it.
    """

    what: str
    text: str
    cost: float
    without: float
    said: str

    def to_dict(self) -> dict[str, Any]:
        return {
            "what": self.what,
            "text": self.text,
            "cost": self.cost,
            "without": self.without,
            "said": self.said,
        }


@dataclass(frozen=True, slots=True)
class Level:
    """How hard a text is to read: an estimate to help choose, not an assessment of a learner.

    `grade`, `low` and `high` are reading grades from 0 to 12, and `low <= grade <= high`.
    `formulas` are the published formulas' values as they are; `reasons` come dearest first.
    """

    grade: float
    low: float
    high: float
    formulas: Sequence[Published] = ()
    reasons: tuple[Reason, ...] = ()

    def __post_init__(self) -> None:
        if not LOWEST <= self.low <= self.grade <= self.high <= HIGHEST:
            raise ValueError(
                f"a level needs {LOWEST:g} <= low <= grade <= high <= {HIGHEST:g}, "
                f"not low {self.low}, grade {self.grade}, high {self.high}"
            )

    @property
    def words(self) -> str:
        """The level as a teacher says it: "early grade 2 (could be 1 to 3)"."""
        return in_words(self.grade, self.low, self.high)

    def to_dict(self) -> dict[str, Any]:
        """The level as plain values that JSON can hold; computes the formulas."""
        return {
            "grade": self.grade,
            "low": self.low,
            "high": self.high,
            "formulas": [value.to_dict() for value in self.formulas],
            "reasons": [reason.to_dict() for reason in self.reasons],
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> Level:
        """The level that `to_dict` turned into plain values."""
        return cls(
            plain["grade"],
            plain["low"],
            plain["high"],
            tuple(Published(**value) for value in plain.get("formulas", ())),
            tuple(Reason(**reason) for reason in plain.get("reasons", ())),
        )
