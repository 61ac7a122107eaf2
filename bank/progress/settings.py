"""What a teacher may set about marking and about what marks are taken to mean."""

from __future__ import annotations

from dataclasses import dataclass, fields
from typing import Any

from bank.choose.rules import REVIEW
from bank.item import BankError
from bank.store_recent import ALONE_SHARE, STUCK_DAYS

# From the least help to the most (common practice: a prompt hierarchy). The words and their order
# are a setting.
PROMPTS = ("gesture", "verbal", "model", "physical")


@dataclass(frozen=True, slots=True)
class ProgressSettings:
    """Numbers and words that a school may have otherwise.

    `prompts` are the words for help, the least first. A learner is *stuck* after `stuck_days` data
    days in a row below `alone_share`; `easier_days` school days below it (two weeks) are a reason to
    propose an easier band; `steady_share` over as many is steady work. A skill's rule of the goal is
    `goal_share` on `goal_days` data days in a row (common practice: 80 % on 3). The posterior calls
    it mastered where the rate is above `goal_share` with a probability of `certainty`, over the last
    `window` opportunities, at least `fewest`. A mastered skill comes back after the school days in
    `review`, one after the other. `attempts` keeps what a learner wrote; `mix` makes sentences
    of mastered skills and one in work.
    """

    prompts: tuple[str, ...] = PROMPTS
    alone_share: float = ALONE_SHARE
    stuck_days: int = STUCK_DAYS
    easier_days: int = 10
    steady_share: float = 0.95
    goal_share: float = 0.8
    goal_days: int = 3
    certainty: float = 0.9
    window: int = 20
    fewest: int = 8
    review: tuple[int, ...] = REVIEW
    attempts: bool = False
    mix: bool = True

    def __post_init__(self) -> None:
        words = [word.lower() for word in self.prompts]
        if not 1 <= len(words) <= 8 or len(set(words)) < len(words) or not all(words):
            raise BankError("the words for help are one to eight different words, the least first")
        reserved = sorted({"alone", "not done", "not asked", ""} & set(words))
        if reserved or any(not word.replace(" ", "").isalpha() for word in words):
            raise BankError("a word for help is a word of letters, and not: alone, not done")
        for name in ("alone_share", "steady_share", "goal_share", "certainty"):
            if not 0 < getattr(self, name) < 1:
                raise BankError(f"{name.replace('_', ' ')} is a share between 0 and 1, such as 0.8")
        for name in ("stuck_days", "easier_days", "goal_days", "window", "fewest"):
            if not 1 <= getattr(self, name) <= 400:
                raise BankError(f"{name.replace('_', ' ')} is a count between 1 and 400")
        if self.fewest > self.window:
            raise BankError("fewest opportunities cannot be more than the window looks at")
        if not self.review or any(
            later <= early for early, later in zip(self.review, self.review[1:], strict=False)
        ):
            raise BankError("the school days until a skill comes back grow, such as 2 4 8 16")

    def to_dict(self) -> dict[str, Any]:
        return {one.name: getattr(self, one.name) for one in fields(self)}

    @classmethod
    def from_dict(cls, plain: dict[str, Any]) -> ProgressSettings:
        known = {one.name: plain[one.name] for one in fields(cls) if one.name in plain}
        for name in ("prompts", "review"):
            if name in known:
                known[name] = tuple(known[name])
        return cls(**known)
