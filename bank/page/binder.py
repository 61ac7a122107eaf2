"""The binder page: what one learner does on one day, on paper."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from bank.page.content import (
    DayContent,
    LearnerPage,
    Made,
    PageFile,
    PageQuestion,
    PageSentence,
    PageTopic,
    RuledLines,
)
from bank.page.signs import sign_picture
from bank.page.typeset import Copy, Pictures, typeset

# Width and height in mm; the left margin keeps clear of the holes of a binder.
SHEETS = {
    "letter": {"width": 215.9, "height": 279.4, "left": 25, "right": 16},
    "a4": {"width": 210.0, "height": 297.0, "left": 25, "right": 16},
}
TOPIC_LINES = 3
HOMEWORK = ("done", "turned in", "new one taken")
SPOKEN = {
    "writes": "",
    "circles": "",
    "types": "I typed it.",
    "says": "I said it.",
    "signs": "I signed it.",
}
CHOOSE = {"writes": "Write one:", "types": "Type one:", "says": "Say one:", "signs": "Sign one:"}
# Handwriting on a line of 9 mm takes about 4.5 mm a letter, spaces included (from memory, common
# practice: half as wide as the line is high).
LETTER_WIDTH_PER_HEIGHT = 0.5

# Words do not break, and a young writer starts over now and then.
SPARE = 1.2


def sheet(paper: str) -> dict[str, float]:
    """The measures of a paper size, in mm."""
    try:
        return dict(SHEETS[paper])
    except KeyError:
        raise ValueError(f"{paper!r} is no paper here: choose {' or '.join(SHEETS)}") from None


def lines_to_write(text: str, lines: RuledLines, width: float) -> int:
    """How many lines of `width` mm `text` fills when it is written by hand, at least two."""
    letters = max(1.0, width / (lines.millimetres * LETTER_WIDTH_PER_HEIGHT))
    return max(2, math.ceil(len(text) / letters * SPARE))


def begin(starter: str) -> str:
    """A sentence starter without the blank at its end, which the ruled line is.

    >>> begin("The dog is ___."), begin("My ___ is red.")
    ('The dog is', 'My ___ is red.')
    """
    head, _, tail = starter.partition("__")
    return starter if tail.strip("_ .!?…") else head.strip()


def binder_pages(
    day: DayContent, learners: Sequence[LearnerPage], paper: str = "letter", duplex: bool = False
) -> Made:
    """All learners' pages of `day` in one PDF, with a line for each thing that went wrong.

    `duplex` moves the margin for the holes to the right side on the back of a sheet.
    """
    measures = sheet(paper)
    copy, pictures = Copy(), Pictures()
    data = {
        "iso": day.date.isoformat(),
        "title": f"Binder pages, {day.long_date}",
        "sheet": measures,
        "duplex": duplex,
        "day": _day(day, learners, copy),
        "learners": [
            {
                **_learner(page, measures, copy, pictures),
                "steps": [
                    copy.text(step, page.face, "the steps")
                    for step in day.steps
                    if step not in page.without
                ],
            }
            for page in learners
        ],
    }
    name = f"{day.date.isoformat()}-pages-{paper}.pdf"
    try:
        return Made((PageFile(name, typeset("binder", data, copy, pictures)),), copy.problems)
    except ValueError as wrong:
        return _one_by_one(data, copy, pictures, name, wrong)


def _one_by_one(
    data: dict[str, Any], copy: Copy, pictures: Pictures, name: str, wrong: ValueError
) -> Made:
    """The pages of those learners whose pages can be made, a file each, and a line for the rest."""
    made = []
    lines = list(copy.problems)
    for learner in data["learners"]:
        try:
            pdf = typeset("binder", {**data, "learners": [learner]}, copy, pictures)
            made.append(PageFile(name.replace("-pages-", f"-pages-{learner['code']}-"), pdf))
        except ValueError as own:
            lines.append(f"{learner['code']}: no page could be made ({own})")
    return Made(tuple(made), tuple(lines or [str(wrong)]))


def _day(day: DayContent, learners: Sequence[LearnerPage], copy: Copy) -> dict[str, Any]:
    face = learners[0].face if learners else "ABeeZee"
    return {
        "stuck": copy.text(day.stuck, face, "the line for when stuck"),
        "copy_lines": [copy.text(label, face, "the lines to copy") for label in day.copy_lines],
        "homework": list(HOMEWORK),
    }


def _learner(
    page: LearnerPage, measures: dict[str, float], copy: Copy, pictures: Pictures
) -> dict[str, Any]:
    sign, wrong = sign_picture(page.sign)
    if wrong:
        copy.tell(f"{page.code}: {wrong}")
    notes = (("My job", page.job), ("Word sort", page.sort), ("Book basket", page.basket))
    return {
        "code": page.code,
        "sign": pictures.add(sign),
        "face": page.face,
        "size": page.size,
        "spoken": SPOKEN[page.mode],
        "lines": {
            "style": page.lines.style,
            "height": page.lines.millimetres,
            "count": page.lines.count,
        },
        "notes": [
            [label, copy.text(words, page.face, page.code)] for label, words in notes if words
        ],
        "questions": [_question(question, page, copy) for question in page.questions],
        "sentence": _sentence(page.sentence, page, measures, copy) if page.sentence else None,
        "topic": _topic(page.topic, page, copy, pictures) if page.topic else None,
    }


def _question(question: PageQuestion, page: LearnerPage, copy: Copy) -> dict[str, Any]:
    where = page.code
    circled = page.mode == "circles"
    # A learner who says or writes yes or no needs no list of the two.
    listed = circled or not question.is_yes_no
    return {
        "text": copy.text(question.text, page.face, where),
        "choices": [copy.text(c, page.face, where) for c in question.choices] if listed else [],
        # Empty where the choices are to be circled where they stand.
        "choose": CHOOSE.get(page.mode, ""),
        "starter": copy.text(begin(question.starter), page.face, where),
        "words": [copy.text(word, page.face, where) for word in question.word_box],
        # A learner who circles may not write: without choices the answer is said.
        "spoken": SPOKEN["says"] if circled else SPOKEN[page.mode],
    }


def _sentence(
    sentence: PageSentence, page: LearnerPage, measures: dict[str, float], copy: Copy
) -> dict[str, Any]:
    width = measures["width"] - measures["left"] - measures["right"]
    circles = page.mode == "circles"
    spoken = SPOKEN[page.mode]
    count = len(sentence.fixes)
    return {
        "title": "Find and circle what is wrong." if circles else "Make this sentence right.",
        "faulty": copy.text(sentence.faulty, page.face, page.code),
        "count": count,
        "found": "1 thing to fix" if count == 1 else f"{count} things to fix",
        # A sentence that is marked where it stands needs room between its lines.
        "leading": 1.5 if circles else 0.8,
        "done": spoken,
        "lines": 0 if circles or spoken else lines_to_write(sentence.corrected, page.lines, width),
    }


def _topic(topic: PageTopic, page: LearnerPage, copy: Copy, pictures: Pictures) -> dict[str, Any]:
    return {
        "text": copy.text(topic.text, page.face, page.code),
        "picture": pictures.add(topic.picture) if topic.picture else None,
        "lines": 0 if SPOKEN[page.mode] else TOPIC_LINES,
        "starter": copy.text(begin(topic.starter), page.face, page.code),
        "words": [copy.text(word, page.face, page.code) for word in topic.word_box],
    }
