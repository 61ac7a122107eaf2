"""Strips to cut: the day's prompts one by one, for the binder or large for the wall."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from bank.page.binder import sheet
from bank.page.content import FACES, DayContent, LearnerPage, Made, PageFile, Picture
from bank.page.signs import sign_picture
from bank.page.typeset import Copy, Pictures, ask, typeset

BINDER_POINTS = 24.0
# Capitals 20 mm high can be read from 4 metres: about 200 times the letter height is the usual
# legibility distance (from memory, common practice of sign makers).
WALL_CAPITALS_MM = 20.0
POINTS_PER_MM = 72 / 25.4
# Capital height over type size, from the OS/2 table of each face (sCapHeight / unitsPerEm).
CAPITALS = {"ABeeZee": 0.7, "Atkinson Hyperlegible": 0.668}
KINDS = {"question": "Question", "sentence": "Sentence to fix", "topic": "Journal topic"}


@dataclass(frozen=True, slots=True)
class Strip:
    """One prompt and the learners who have it today."""

    kind: str
    text: str
    picture: Picture | None
    owners: tuple[LearnerPage, ...]
    choices: tuple[str, ...] = ()


def wall_points(face: str) -> float:
    """The type size at which the capitals of `face` are 20 mm high, in points.

    >>> round(wall_points("ABeeZee"))
    81
    """
    return WALL_CAPITALS_MM * POINTS_PER_MM / CAPITALS[face]


def _prompts(page: LearnerPage) -> Iterator[tuple[str, str, Picture | None]]:
    for question in page.questions:
        yield "question", question.text, None
    if page.sentence:
        yield "sentence", page.sentence.faulty, None
    if page.topic:
        yield "topic", page.topic.text, page.topic.picture


def day_strips(learners: Sequence[LearnerPage]) -> list[Strip]:
    """Every prompt of the day once: questions first, then sentences, then topics."""
    owners: dict[tuple[str, str], list[LearnerPage]] = {}
    pictures: dict[tuple[str, str], Picture | None] = {}
    for page in learners:
        for kind, text, picture in _prompts(page):
            owners.setdefault((kind, text), []).append(page)
            pictures[kind, text] = pictures.get((kind, text)) or picture
    kinds = list(KINDS)
    choices = {
        question.text: question.choices
        for page in learners
        for question in page.questions
        if not question.is_yes_no
    }
    ordered = sorted(owners, key=lambda key: kinds.index(key[0]))
    return [
        Strip(
            kind,
            text,
            pictures[kind, text],
            tuple(owners[kind, text]),
            choices.get(text, ()) if kind == "question" else (),
        )
        for kind, text in ordered
    ]


def strips(
    day: DayContent,
    learners: Sequence[LearnerPage],
    paper: str = "letter",
    wall: bool = False,
    face: str = FACES[0],
) -> Made:
    """The day's strips as one PDF; with `wall` large, and a line for each too long for it."""
    copy, pictures = Copy(), Pictures()
    prompts = day_strips(learners)
    measures = sheet(paper)
    if wall:
        measures["width"], measures["height"] = measures["height"], measures["width"]
    data: dict[str, Any] = {
        "iso": day.date.isoformat(),
        "title": f"{'Wall strips' if wall else 'Strips'}, {day.long_date}",
        "sheet": measures,
        "wall": wall,
        "face": face,
        "size": wall_points(face) if wall else BINDER_POINTS,
        "strips": [_strip(prompt, face, wall, copy, pictures) for prompt in prompts],
    }
    name = f"{day.date.isoformat()}-{'wall-strips' if wall else 'strips'}-{paper}.pdf"
    try:
        if wall:
            _leave_out_long(data, prompts, pictures, copy)
        made = (PageFile(name, typeset("strips", data, copy, pictures)),) if data["strips"] else ()
    except ValueError as wrong:
        return Made((), (*copy.problems, f"strips: {wrong}"))
    return Made(made, copy.problems)


def _strip(prompt: Strip, face: str, wall: bool, copy: Copy, pictures: Pictures) -> dict[str, Any]:
    signs = ((owner, sign_picture(owner.sign)[0]) for owner in prompt.owners)
    return {
        "kind": KINDS[prompt.kind],
        "text": copy.text(prompt.text, face, "strips"),
        # On the wall every millimetre goes to the letters.
        "picture": pictures.add(prompt.picture) if prompt.picture and not wall else None,
        "choices": [] if wall else [copy.text(one, face, "strips") for one in prompt.choices],
        "owners": [{"code": owner.code, "sign": pictures.add(sign)} for owner, sign in signs],
    }


def _leave_out_long(
    data: dict[str, Any], prompts: Sequence[Strip], pictures: Pictures, copy: Copy
) -> None:
    """Takes out the prompts that one sheet cannot hold at wall size, and says which they are."""
    fits = {each["index"]: each["fits"] for each in ask("strips", data, "fit", copy, pictures)}
    for index, prompt in enumerate(prompts):
        if not fits[index]:
            copy.tell(f"too long for the wall: {prompt.text}")
    data["strips"] = [strip for index, strip in enumerate(data["strips"]) if fits[index]]
