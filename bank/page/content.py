"""What a page is made of: plain values that `classroom.py` fills in and every layout reads."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from bank.skill import SKILLS

PAPERS = ("letter", "a4")
MODES = ("writes", "circles", "types", "says", "signs")
LINE_STYLES = ("plain", "dotted", "wide")
FACES = ("ABeeZee", "Atkinson Hyperlegible")
# Below 14 points nothing that a learner reads is ever set; above 36 a page holds one prompt.
SMALLEST, LARGEST = 14.0, 36.0
COPY_LINES = ("Date", "Weather", "Temperature", "Lunch", "Specials")
# Words for the help that a learner got, the least first (common practice: a prompt hierarchy).
PROMPTS = ("gesture", "verbal", "model", "physical")
STUCK = "Stuck? Read it again. Skip it. Then show an adult your card."
# From memory, common practice: young writers need about 14 mm from line to line, older ones 9.
LINE_HEIGHTS = {"plain": 9.0, "dotted": 14.0, "wide": 14.0}


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture ready for the page: `kind` is svg, png or jpeg; `words` say what it shows."""

    data: bytes
    kind: str
    words: str
    credit: str = ""


@dataclass(frozen=True, slots=True)
class RuledLines:
    """The lines that a learner writes on.

    `style` is plain, dotted (with a dotted midline) or wide; `count` is how many lines an answer
    has; `height` is the room for one line of writing in mm, 0 for the usual one of the style.
    """

    style: str = "plain"
    count: int = 2
    height: float = 0.0

    def __post_init__(self) -> None:
        if self.style not in LINE_STYLES:
            raise ValueError(f"{self.style!r} is no line style: choose {', '.join(LINE_STYLES)}")
        if not 1 <= self.count <= 12:
            raise ValueError(f"an answer has 1 to 12 lines, not {self.count}")
        if self.height and not 5 <= self.height <= 30:
            raise ValueError(f"a line is 5 to 30 mm high, not {self.height:g}")

    @property
    def millimetres(self) -> float:
        return self.height or LINE_HEIGHTS[self.style]


@dataclass(frozen=True, slots=True)
class PageQuestion:
    """One question with what the learner may have beside it; `others` are other right answers."""

    text: str
    choices: tuple[str, ...] = ()
    starter: str = ""
    word_box: tuple[str, ...] = ()
    answer: str = ""
    others: tuple[str, ...] = ()

    @property
    def is_yes_no(self) -> bool:
        return {choice.strip().lower() for choice in self.choices} == {"yes", "no"}


@dataclass(frozen=True, slots=True)
class PageFix:
    """One fix: characters `start` to `end` of the faulty text are `wrong` and should be `right`.

    `right_start` and `right_end` say where `right` stands in the corrected text, -1 where that is
    not known. `number` counts from 1. `name` and `rule` are the skill's own where they are empty.
    """

    number: int
    skill: str
    wrong: str
    right: str
    start: int
    end: int
    name: str = ""
    rule: str = ""
    right_start: int = -1
    right_end: int = -1

    @classmethod
    def from_dict(cls, number: int, fix: Mapping[str, Any]) -> PageFix:
        """The fix that `bank.edit` gives as a plain dict."""
        return cls(
            number,
            fix["skill"],
            fix["wrong"],
            fix["right"],
            fix.get("wrong_start", -1),
            fix.get("wrong_end", -1),
            rule=fix.get("explanation", ""),
            right_start=fix.get("right_start", -1),
            right_end=fix.get("right_end", -1),
        )

    @property
    def label(self) -> str:
        return self.name or (SKILLS[self.skill].name if self.skill in SKILLS else self.skill)

    @property
    def why(self) -> str:
        return self.rule or (SKILLS[self.skill].rule if self.skill in SKILLS else "")


@dataclass(frozen=True, slots=True)
class PageSentence:
    """A sentence to fix; `others` say in words what else is right.

    `board` has the errors of all learners' versions, where no one version has them all.
    """

    faulty: str
    corrected: str
    fixes: tuple[PageFix, ...] = ()
    others: tuple[str, ...] = ()
    board: PageSentence | None = None


@dataclass(frozen=True, slots=True)
class PageTopic:
    """A journal topic, with its picture where one is confirmed, and what may stand beside it."""

    text: str
    picture: Picture | None = None
    starter: str = ""
    word_box: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LearnerPage:
    """All that one learner's pages of one day need; codes and signs, never a name.

    `sign` is one of the shapes of `bank.page.signs`, or the name or number of a pictogram. `face`
    is one of `FACES`; `size` is in points, 14 to 36. `sort` and `basket` are the lines that the
    page says about the word sort and the book basket, `job` the one about the learner's turn.
    `without` are the steps of the morning that this learner does not have today.
    """

    code: str
    sign: str = "circle"
    mode: str = "writes"
    lines: RuledLines = field(default_factory=RuledLines)
    face: str = FACES[0]
    size: float = 18.0
    questions: tuple[PageQuestion, ...] = ()
    sentence: PageSentence | None = None
    topic: PageTopic | None = None
    job: str = ""
    sort: str = ""
    basket: str = ""
    without: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if self.mode not in MODES:
            raise ValueError(f"{self.mode!r} is no response mode: choose {', '.join(MODES)}")
        if self.face not in FACES:
            raise ValueError(f"{self.face!r} is no face of the pages: choose {' or '.join(FACES)}")
        if not SMALLEST <= self.size <= LARGEST:
            raise ValueError(
                f"pages are set in {SMALLEST:g} to {LARGEST:g} points, not {self.size:g}"
            )


@dataclass(frozen=True, slots=True)
class PageTurn:
    """Who has which job today."""

    job: str
    code: str
    sign: str


@dataclass(frozen=True, slots=True)
class DayContent:
    """What all pages of a day share; everything a person reads is in the teacher's words.

    `copy_lines` are the lines that a learner copies from the board; `weather`, `temperature`,
    `lunch` and `specials` fill the board's own where they are known beforehand. `prompts` are the
    words for help on the key, the least help first.
    """

    date: dt.date
    weather: str = ""
    temperature: str = ""
    lunch: str = ""
    specials: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()
    stuck: str = STUCK
    turns: tuple[PageTurn, ...] = ()
    copy_lines: tuple[str, ...] = COPY_LINES
    prompts: tuple[str, ...] = PROMPTS

    @property
    def long_date(self) -> str:
        """The date as the board says it.

        >>> DayContent(dt.date(2026, 3, 2)).long_date
        'Monday, March 2, 2026'
        """
        return f"{self.date:%A}, {self.date:%B} {self.date.day}, {self.date.year}"


@dataclass(frozen=True, slots=True)
class PageFile:
    """One file to save: its name without a folder, and its bytes."""

    name: str
    data: bytes


@dataclass(frozen=True, slots=True)
class Made:
    """What was made, and one clear line for each thing that went wrong on the way."""

    files: tuple[PageFile, ...] = ()
    problems: tuple[str, ...] = ()
