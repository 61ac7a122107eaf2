"""The settings of the draw: what a set holds, who shares it, and how long a twin counts as a repeat."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from bank.calendar import SchoolCalendar
from bank.learner import Learner

SCOPES = ("class", "group", "own")
# Defaults of the slots: the sentence and the topic hang on the board, the questions are the group's.
DEFAULT_SCOPES = {"question": "group", "sentence": "class", "topic": "class"}
SLOTS = ("question", "sentence", "topic")
PLURALS = {"question": "questions", "sentence": "sentences to fix", "topic": "topics"}
SINGULARS = {"question": "question", "sentence": "sentence to fix", "topic": "topic"}
TWIN_DAYS = 30  # school days during which a twin counts as a repeat
REVIEW = (
    2,
    4,
    8,
    16,
    32,
)  # school days until a mastered skill comes back, growing (common practice)
DEFAULT_SHORT = {"question": 3, "sentence": 1, "topic": 0}


@dataclass(frozen=True, slots=True)
class Rules:
    """The settings of the draw."""

    calendar: SchoolCalendar = field(default_factory=SchoolCalendar)
    scopes: Mapping[str, str] = field(default_factory=lambda: dict(DEFAULT_SCOPES))
    twin_days: int = TWIN_DAYS
    sentences: int = 1
    topics: int = 1
    short: Mapping[str, int] = field(default_factory=lambda: dict(DEFAULT_SHORT))

    def counts(self, learner: Learner, short: bool) -> dict[str, int]:
        """How many of each kind the learner gets; a short morning never has more than a full one."""
        full = {"question": learner.questions, "sentence": self.sentences, "topic": self.topics}
        return {kind: min(n, self.short.get(kind, n)) if short else n for kind, n in full.items()}
