"""The key on paper: the sentence with its proofreading marks, the fixes, the answers, the grid."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import asdict, dataclass, replace
from typing import Any

from bank.page.binder import sheet
from bank.page.content import (
    DayContent,
    LearnerPage,
    Made,
    PageFile,
    PageFix,
    PageQuestion,
    PageSentence,
)
from bank.page.marks import Stroke, marked
from bank.page.signs import sign_picture
from bank.page.spots import places
from bank.page.typeset import Copy, Pictures, typeset

FACE = "Atkinson Hyperlegible"
LEGEND = (
    (Stroke("a", "capital"), "make it a capital"),
    (Stroke("A", "small"), "make it small"),
    (Stroke("", "insert", ","), "put this in"),
    (Stroke("", "high", "'"), "put this in at the top"),
    (Stroke("", "stop", "."), "put a period in"),
    (Stroke("too", "delete"), "take it out"),
    (Stroke("cat", "replace", "cats"), "write this instead"),
    (Stroke("to go", "swap", "go to"), "put the words so"),
    (Stroke(" ", "close"), "make it one word"),
    (Stroke("", "split", " "), "make it two words"),
)


@dataclass(frozen=True, slots=True)
class SharedSentence:
    """One corrected sentence and all who have a faulty version of it today.

    `fixes` are those of the fullest version, numbered from 1; `theirs[code]` says for each of them
    whether that learner's version has it.
    """

    fullest: PageSentence
    fixes: tuple[PageFix, ...]
    owners: tuple[LearnerPage, ...]
    theirs: dict[str, tuple[bool, ...]]


def shared_sentences(learners: Sequence[LearnerPage]) -> list[SharedSentence]:
    """The day's sentences, each corrected text once, in the order in which learners have them."""
    groups: dict[str, list[LearnerPage]] = {}
    for page in learners:
        if page.sentence:
            groups.setdefault(page.sentence.corrected, []).append(page)
    return [_shared(owners) for owners in groups.values()]


def _shared(owners: list[LearnerPage]) -> SharedSentence:
    versions = [page.sentence for page in owners if page.sentence]
    boards = [version.board for version in versions if version.board]
    fullest = max(boards or versions, key=lambda version: len(version.fixes))
    fixes = [
        replace(fix, number=number)
        for number, fix in enumerate(sorted(fullest.fixes, key=lambda each: each.start), 1)
    ]
    at = places(fullest.faulty, fullest.corrected, fixes)
    theirs: dict[str, set[int]] = {}
    for page, version in zip(owners, versions, strict=True):
        left = list(range(len(fixes)))
        has = theirs.setdefault(page.code, set())
        own = places(version.faulty, version.corrected, version.fixes)
        for fix, place in zip(version.fixes, own, strict=True):
            index = _same_fix(fix, place, fixes, at, left)
            if index is None:
                # A version may have an error that the fullest has not: it gets a row of its own.
                index = len(fixes)
                fixes.append(replace(fix, number=index + 1, start=-1, end=-1))
                at.append(place)
            else:
                left.remove(index)
            has.add(index)
    columns = {
        code: tuple(index in has for index in range(len(fixes))) for code, has in theirs.items()
    }
    others = tuple(dict.fromkeys(other for version in versions for other in version.others))
    return SharedSentence(
        replace(fullest, others=others, board=None), tuple(fixes), tuple(owners), columns
    )


def _same_fix(
    fix: PageFix, place: int, fixes: Sequence[PageFix], at: Sequence[int], left: Sequence[int]
) -> int | None:
    """Which of `fixes` is `fix`: the same skill at the same place of the corrected text, else the
    same words, else the same repair.
    """
    tests: tuple[Callable[[int], bool], ...] = (
        lambda index: (fixes[index].skill, at[index]) == (fix.skill, place),
        lambda index: (fixes[index].wrong, fixes[index].right) == (fix.wrong, fix.right),
        lambda index: (fixes[index].skill, fixes[index].right) == (fix.skill, fix.right),
    )
    return next((index for same in tests for index in left if same(index)), None)


def shared_questions(
    learners: Sequence[LearnerPage],
) -> list[tuple[PageQuestion, list[LearnerPage]]]:
    """Every question of the day once, with those who have it."""
    groups: dict[str, tuple[PageQuestion, list[LearnerPage]]] = {}
    for page in learners:
        for question in page.questions:
            groups.setdefault(question.text, (question, []))[1].append(page)
    return list(groups.values())


def shared_topics(learners: Sequence[LearnerPage]) -> dict[str, list[LearnerPage]]:
    """Every topic of the day once, with those who have it."""
    groups: dict[str, list[LearnerPage]] = {}
    for page in learners:
        if page.topic:
            groups.setdefault(page.topic.text, []).append(page)
    return groups


def key_pdf(day: DayContent, learners: Sequence[LearnerPage], paper: str = "letter") -> Made:
    """One key for all learners of the day, with a line for each thing that went wrong."""
    maker = _KeyMaker()
    data = {
        "iso": day.date.isoformat(),
        "title": f"Key, {day.long_date}",
        "sheet": sheet(paper),
        "face": FACE,
        "owners": maker.owners(learners),
        "sentences": [maker.sentence(shared) for shared in shared_sentences(learners)],
        "questions": [maker.question(*shared) for shared in shared_questions(learners)],
        "topics": [
            {"text": maker.text(text), "owners": maker.owners(owners)}
            for text, owners in shared_topics(learners).items()
        ],
        "help": ", ".join(["alone", *map(maker.text, day.prompts), "not done"]),
        "legend": [[asdict(stroke), words] for stroke, words in LEGEND],
    }
    name = f"{day.date.isoformat()}-key-{paper}.pdf"
    try:
        made = (PageFile(name, typeset("key", data, maker.copy, maker.pictures)),)
    except ValueError as wrong:
        return Made((), (*maker.copy.problems, f"key: {wrong}"))
    return Made(made, maker.copy.problems)


class _KeyMaker:
    def __init__(self) -> None:
        self.copy = Copy()
        self.pictures = Pictures()

    def text(self, text: str) -> str:
        return self.copy.text(text, FACE, "key")

    def owners(self, learners: Sequence[LearnerPage]) -> list[dict[str, Any]]:
        return [
            {"code": page.code, "sign": self.pictures.add(sign_picture(page.sign)[0])}
            for page in learners
        ]

    def sentence(self, shared: SharedSentence) -> dict[str, Any]:
        faulty = shared.fullest.faulty
        own = [fix for fix in shared.fixes if fix.start >= 0]
        row, lost = marked(faulty, shared.fullest.corrected, own)
        for number in lost:
            self.copy.tell(
                f"key: fix {number} of {faulty[:50]!r} does not stand where it says: it has no mark"
            )
        versions: dict[str, list[LearnerPage]] = {}
        for page in shared.owners:
            if page.sentence:
                versions.setdefault(page.sentence.faulty, []).append(page)
        return {
            "row": [
                {**asdict(stroke), "text": self.text(stroke.text), "note": self.text(stroke.note)}
                for stroke in row
            ],
            "corrected": self.text(shared.fullest.corrected),
            "others": [self.text(other) for other in shared.fullest.others],
            "versions": [
                {"faulty": self.text(text), "owners": self.owners(owners)}
                for text, owners in versions.items()
            ],
            "owners": self.owners(shared.owners),
            "fixes": [
                self._fix(fix, [shared.theirs[page.code][index] for page in shared.owners])
                for index, fix in enumerate(shared.fixes)
            ],
        }

    def _fix(self, fix: PageFix, theirs: list[bool]) -> dict[str, Any]:
        return {
            "number": fix.number,
            "wrong": self.text(fix.wrong),
            "right": self.text(fix.right),
            "name": self.text(fix.label),
            "rule": self.text(fix.why),
            "theirs": theirs,
        }

    def question(self, question: PageQuestion, owners: list[LearnerPage]) -> dict[str, Any]:
        return {
            "text": self.text(question.text),
            "answer": self.text(question.answer),
            "others": [self.text(other) for other in question.others],
            "choices": [] if question.is_yes_no else [self.text(one) for one in question.choices],
            "owners": self.owners(owners),
        }
