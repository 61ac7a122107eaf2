"""Use cases of the page: a day's sets as pages, strips, key, board and proof sheet.

Nothing here loads the typesetter before something is printed.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from itertools import count
from pathlib import Path
from typing import Any

from bank.classroom_days import Days, GivenView, SetView, with_all_errors
from bank.classroom_morning import Morning
from bank.classroom_morning_paper import with_lines, with_morning
from bank.classroom_proof import proof_items
from bank.item import BankError
from bank.learner import Learner
from bank.page.content import (
    FACES,
    LARGEST,
    LINE_STYLES,
    PROMPTS,
    SMALLEST,
    STUCK,
    DayContent,
    LearnerPage,
    Made,
    PageFile,
    PageFix,
    PageQuestion,
    PageSentence,
    PageTopic,
    Picture,
    RuledLines,
)
from bank.store import Store

PAPER = "paper"  # the setting's name in the store
# A learner whose band ends below this grade gets larger type, lines with a dotted middle, sentence
# starters and word boxes, until somebody says otherwise (common practice).
YOUNG = 2.0
SIZES = ((1.0, 24.0), (2.0, 20.0), (13.0, 18.0))
_PICTOGRAM = re.compile(r"[0-9A-F]{4,5}")
_PICTURE_FILE = re.compile(r".+\.(jpe?g|png)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class PaperSettings:
    """What the teacher says once about all paper: sizes, her words for when stuck, lunch, specials."""

    size: str = "letter"
    both_sides: bool = False
    stuck: str = STUCK
    lunch: str = ""
    specials: dict[str, str] = field(default_factory=dict)

    def to_dict(self) -> dict[str, Any]:
        return {name: getattr(self, name) for name in self.__slots__}

    @classmethod
    def from_dict(cls, plain: dict[str, Any]) -> PaperSettings:
        return cls(**{name: plain[name] for name in cls.__slots__ if name in plain})


def page_settings(learner: Learner) -> dict[str, Any]:
    """How a learner's page looks: what was said, and else what follows from the band."""
    young = learner.band.high < YOUNG
    plain = {
        "face": FACES[0],
        "size": next(size for grade, size in SIZES if learner.band.high < grade),
        "lines": "dotted" if young else "plain",
        "line_count": 2,
        "line_height": 0.0,
        "starters": young,
        "word_boxes": young,
    }
    return {**plain, **learner.support.get("page", {})}


def checked_page_settings(learner: Learner, changes: dict[str, Any]) -> Learner:
    """The learner with changed page settings; `BankError` says which cannot be."""
    kept = {**learner.support.get("page", {}), **changes}
    changed = replace(learner, support={**learner.support, "page": kept})
    try:
        _blank_page(changed)
    except ValueError as error:
        raise BankError(str(error)) from None
    return changed


def _blank_page(learner: Learner) -> LearnerPage:
    said = page_settings(learner)
    lines = RuledLines(said["lines"], said["line_count"], said["line_height"])
    return LearnerPage(learner.code, learner.sign, learner.mode, lines, said["face"], said["size"])


class Paper:
    """What is printed and shown of a bank's days."""

    def __init__(self, store: Store, days: Days) -> None:
        self.store = store
        self.days = days
        self.rest = Morning(store, days)

    @property
    def settings(self) -> PaperSettings:
        return PaperSettings.from_dict(self.store.setting(PAPER, {}))

    def change_settings(self, **changes: Any) -> PaperSettings:
        """Change what is said about all paper."""
        made = replace(self.settings, **changes)
        self.store.set_setting(PAPER, made.to_dict())
        return made

    @property
    def pictures(self) -> Path:
        """The folder beside the bank with copies of the items' pictures."""
        return self.store.path.with_name(self.store.path.stem + "-pictures")

    @property
    def prints(self) -> Path:
        """The folder beside the bank where printed files go until they are forgotten."""
        return self.store.path.with_name(self.store.path.stem + "-prints")

    def day(self, day: dt.date) -> DayContent:
        said = self.settings
        special = said.specials.get(day.isoformat(), said.specials.get(f"{day:%A}".lower(), ""))
        content = DayContent(
            day,
            lunch=said.lunch,
            specials=(special,) if special else (),
            stuck=said.stuck,
            prompts=tuple(self.store.setting("progress", {}).get("prompts", PROMPTS)),
        )
        return with_morning(content, self.rest)

    def pages(
        self, day: dt.date, codes: Sequence[str] = (), group: str = ""
    ) -> tuple[list[LearnerPage], list[str]]:
        """The pages of the sets that are drawn, and a line for each picture that cannot be shown."""
        problems: list[str] = []
        sets = [one for one in self.days.sets(day, codes) if group in ("", one.learner.group)]
        if not sets and group and self.days.sets(day, codes):
            groups = sorted({one.group for one in self.days.learners() if one.group})
            named = f"the groups are {', '.join(groups)}" if groups else "no learner has a group"
            raise BankError(f"nobody in group {group!r} has a set on {day}; {named}")
        if not sets:
            raise BankError(f"nothing is drawn for {day}; draw it first: binderbank draw {day}")
        made = _with_boards([self._page(one, problems) for one in sets], sets)
        return with_lines(made, self.rest, day), problems

    def _page(self, one: SetView, problems: list[str]) -> LearnerPage:
        said = page_settings(one.learner)
        sentence = next(iter(one.of("sentence")), None)
        topic = next(iter(one.of("topic")), None)
        return replace(
            _blank_page(one.learner),
            questions=tuple(_question(part, said) for part in one.of("question")),
            sentence=_sentence(sentence) if sentence else None,
            topic=self._topic(topic, said, problems) if topic else None,
        )

    def _topic(self, part: GivenView, said: dict[str, Any], problems: list[str]) -> PageTopic:
        picture = None
        try:
            picture = self.picture(part.picture)
        except ValueError as wrong:
            line = f"{part.item}: {wrong}; its frame is empty"
            if line not in problems:
                problems.append(line)
        starter = part.starter if said["starters"] else ""
        return PageTopic(part.text, picture, starter, part.words if said["word_boxes"] else ())

    def is_settled(self, word: str) -> bool:
        """Whether an item's picture is a pictogram or a file, not just a word."""
        return bool(_PICTOGRAM.fullmatch(word) or _PICTURE_FILE.fullmatch(word))

    def picture(self, word: str) -> Picture | None:
        """The picture that an item names: a pictogram's number or a picture file.

        A plain word is a wish that nobody has confirmed yet, and shows nothing. `ValueError` says
        what is wrong with a picture that is named.
        """
        from bank.page.pictures import load_picture, pictogram

        if _PICTOGRAM.fullmatch(word):
            return pictogram(word)
        if not _PICTURE_FILE.fullmatch(word):
            return None
        places = (self.pictures / word, self.store.path.parent / word)
        path = next((place for place in places if place.is_file()), places[0])
        words = re.sub(r"-\d+$", "", Path(word).stem)
        return load_picture(path, words.replace("-", " "))

    def keep_picture(self, item: str, path: Path, words: str) -> str:
        """A clean copy of a picture file beside the bank; returns the name that the item keeps."""
        from bank.page.pictures import load_picture

        made = load_picture(path, words)
        said = ("-".join(re.findall(r"[^\W_]+", words)) or item)[:60]
        ending = "jpg" if made.kind == "jpeg" else "png"
        self.pictures.mkdir(exist_ok=True)
        for number in count(1):
            place = self.pictures / f"{said}{f'-{number}' if number > 1 else ''}.{ending}"
            if not place.exists() or place.read_bytes() == made.data:
                break
        place.write_bytes(made.data)
        return place.name

    def morning(
        self, day: dt.date, codes: Sequence[str] = (), wall: bool = False
    ) -> tuple[list[PageFile], list[str]]:
        """All paper of a day: pages, strips, key and proof sheet."""
        from bank.page import binder_pages, key_pdf, proof_sheet, strips

        said = self.settings
        content = self.day(day)
        pages, problems = self.pages(day, codes)
        made: list[Made] = [
            binder_pages(content, pages, said.size, said.both_sides),
            strips(content, pages, said.size),
            key_pdf(content, pages, said.size),
            proof_sheet(content, proof_items(self.days.sets(day, codes)), said.size),
        ]
        if wall:
            made.append(strips(content, pages, said.size, wall=True))
        return joined(made, problems)


def joined(made: Iterable[Made], problems: Sequence[str] = ()) -> tuple[list[PageFile], list[str]]:
    """All files, and every line about a problem once."""
    each = list(made)
    files = [file for one in each for file in one.files]
    return files, list(dict.fromkeys([*problems, *(line for one in each for line in one.problems)]))


def _question(part: GivenView, said: dict[str, Any]) -> PageQuestion:
    yes_no = ("yes", "no") if part.question_word == "yes-no" else ()
    return PageQuestion(
        part.text,
        part.choices or yes_no,
        part.starter if said["starters"] else "",
        part.words if said["word_boxes"] else (),
        part.answer,
    )


def _sentence(part: GivenView) -> PageSentence:
    return _page_sentence(part.faulty or part.text, part.text, part.fixes)


def _page_sentence(faulty: str, corrected: str, stored: Iterable[dict[str, Any]]) -> PageSentence:
    listed = list(stored)
    fixes = tuple(PageFix.from_dict(number, fix) for number, fix in enumerate(listed, 1))
    others = (note for fix in listed for note in fix.get("also_right", ()))
    return PageSentence(faulty, corrected, fixes, tuple(dict.fromkeys(others)))


def _with_boards(pages: list[LearnerPage], sets: Sequence[SetView]) -> list[LearnerPage]:
    """The pages, whose sentences know what the board shows where no version has all errors."""
    parts: dict[str, list[GivenView]] = {}
    for one in sets:
        for part in one.of("sentence")[:1]:
            parts.setdefault(part.text, []).append(part)
    boards: dict[str, PageSentence] = {}
    for text, versions in parts.items():
        faulty, fixes = with_all_errors(versions)
        if faulty not in {part.faulty or part.text for part in versions}:
            boards[text] = _page_sentence(faulty, text, fixes)
    return [
        replace(page, sentence=replace(page.sentence, board=boards[page.sentence.corrected]))
        if page.sentence and page.sentence.corrected in boards
        else page
        for page in pages
    ]


__all__ = [
    "FACES",
    "LARGEST",
    "LINE_STYLES",
    "SMALLEST",
    "Paper",
    "PaperSettings",
    "checked_page_settings",
    "joined",
    "page_settings",
]
