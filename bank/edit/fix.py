"""What comes back: one fix for each error, and the marks of an attempt."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from typing import Any

from bank.skill import skill


@dataclass(frozen=True, slots=True)
class Fix:
    """One error and its repair.

    `wrong` and `right` are the text in the faulty and the corrected version; either may be empty,
    where something was left out or is too many. The offsets count characters, so that
    `faulty[wrong_start:wrong_end] == wrong`. Two errors in one word are two fixes with the same
    place. `sure` is False where the specialist should confirm the skill.
    """

    skill: str
    wrong: str
    right: str
    wrong_start: int
    wrong_end: int
    right_start: int
    right_end: int
    sure: bool = True

    @property
    def explanation(self) -> str:
        """What to do and why, in words for a grade 2 reader."""
        from bank.edit.explain import explain

        return explain(self)

    @property
    def standards(self) -> tuple[str, ...]:
        """The places in the language standards that teach this (from memory), for the adults."""
        return skill(self.skill).standards

    def to_dict(self) -> dict[str, Any]:
        """A plain dict for JSON."""
        return asdict(self)

    @classmethod
    def from_dict(cls, stored: Mapping[str, Any]) -> Fix:
        """The fix that `to_dict` wrote; what else is stored beside it is passed over."""
        return cls(**{name: stored[name] for name in cls.__slots__ if name in stored})


@dataclass(frozen=True, slots=True)
class Marks:
    """What a learner did with a faulty sentence.

    `fixed` and `missed` hold the fixes of the sentence; `introduced` holds new errors, with the
    learner's text as `wrong` and its offsets in the attempt.
    """

    fixed: list[Fix] = field(default_factory=list)
    missed: list[Fix] = field(default_factory=list)
    introduced: list[Fix] = field(default_factory=list)

    def to_dict(self) -> dict[str, Any]:
        """A plain dict for JSON."""
        return asdict(self)
