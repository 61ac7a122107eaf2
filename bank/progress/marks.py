"""One mark, and what it says: done alone, with how much help, or not done."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

DONE, NOT_DONE, NOT_ASKED = "done", "not-done", "not-asked"
FIXED, MISSED, NEW = "fixed", "missed", "new"
STEP = "step"
ALONE = ""  # the help of what was done alone


@dataclass(frozen=True, slots=True)
class Mark:
    """What a learner did with one thing on one day.

    `kind` is an item's kind or `step`; `position` counts from 0 within it. `part` is empty for the
    thing as a whole, the number of a fix in the sentence, `new 1` for a new error, or the code of a
    step. `outcome` is `done`, `not-done` or `not-asked` for the whole; `fixed`, `missed` or `new` for
    a part. `help` is the most help it took, empty for none. `amount` is the number of sentences that a
    topic got.
    """

    day: dt.date
    kind: str
    position: int = 0
    part: str = ""
    item: str | None = None
    skill: str = ""
    outcome: str = DONE
    help: str = ALONE
    amount: int | None = None
    attempt: str | None = None

    @property
    def slot(self) -> tuple[str, int]:
        """What a new mark of the same thing takes the place of."""
        return self.kind, self.position

    @property
    def is_whole(self) -> bool:
        """Whether this is about a thing as a whole: a step of the morning in the wide sense."""
        return self.part == "" or self.kind == STEP

    @property
    def counts(self) -> bool:
        return self.outcome != NOT_ASKED

    @property
    def alone(self) -> bool:
        return self.outcome in (DONE, FIXED) and self.help == ALONE

    def to_dict(self) -> dict[str, Any]:
        plain = {name: getattr(self, name) for name in self.__slots__}
        return {**plain, "day": self.day.isoformat()}


def whole(marks: Sequence[Mark]) -> list[Mark]:
    """The marks of steps, questions, sentences and topics as wholes that count."""
    return [mark for mark in marks if mark.is_whole and mark.counts]


def opportunities(marks: Sequence[Mark]) -> list[Mark]:
    """The marks of fixes: each is one opportunity for its skill. In order of day, then place."""
    found = [mark for mark in marks if mark.outcome in (FIXED, MISSED) and mark.skill]
    return sorted(found, key=lambda mark: (mark.day, mark.position, int(mark.part or 0)))


def in_words(mark: Mark) -> str:
    """A mark of a whole as a screen says it.

    >>> in_words(Mark(dt.date(2026, 1, 5), "question", help="verbal"))
    'verbal'
    """
    if mark.outcome == NOT_ASKED:
        return "not asked"
    if mark.outcome == NOT_DONE:
        return "not done"
    return mark.help or "alone"
