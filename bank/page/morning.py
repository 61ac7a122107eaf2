"""Paper for the rest of the morning: the week's turns, how-to cards, word sorts and sentence strips.

Plain values in, files and lines about problems out, like the other pages.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from bank.page.binder import sheet
from bank.page.content import FACES, Made, PageFile
from bank.page.typeset import Copy, typeset

CARD_POINTS, CARD_MM = 26.0, 24.0
BUILDING_POINTS = 24.0
# How-to cards are read from an arm's length and more; many steps are set smaller.
STEP_POINTS = ((5, 26.0), (8, 20.0), (99, 15.0))


@dataclass(frozen=True, slots=True)
class TurnRow:
    """A job of the week and who has it on each day."""

    job: str
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class JobCard:
    """A job and its steps in the teacher's words."""

    job: str
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class CardSet:
    """Cards of one sort or one sentence: a `title`, the `cards` as they are cut, and the key.

    A sort's key is its `columns` (heading and words); a sentence's is the `sentence`.
    """

    title: str
    cards: tuple[str, ...]
    columns: tuple[tuple[str, tuple[str, ...]], ...] = ()
    sentence: str = ""


def turn_sheet(
    days: Sequence[dt.date],
    rows: Sequence[TurnRow],
    cards: Sequence[JobCard],
    paper: str = "letter",
    face: str = FACES[0],
) -> Made:
    """The turns of a week for the wall, and a sheet for each job that has steps."""
    copy = Copy()
    first = days[0].isoformat()
    shared = {"iso": first, "sheet": sheet(paper), "face": face}
    table: dict[str, Any] = {
        **shared,
        "title": f"Turns, week of {days[0]:%B} {days[0].day}",
        "days": [f"{day:%A}" for day in days],
        "rows": [
            {
                "job": copy.text(row.job, face, "turns"),
                "cells": [copy.text(cell, face, "turns") for cell in row.cells],
            }
            for row in rows
        ],
        "cards": [],
    }
    how_to: dict[str, Any] = {
        **shared,
        "title": "How-to cards",
        "days": [],
        "rows": [],
        "cards": [
            {
                "job": copy.text(card.job, face, "how-to cards"),
                "steps": [copy.text(step, face, "how-to cards") for step in card.steps],
                "size": next(size for most, size in STEP_POINTS if len(card.steps) <= most),
            }
            for card in cards
            if card.steps
        ],
    }
    named = [(f"{first}-turns-{paper}.pdf", table)]
    if how_to["cards"]:
        named.append((f"{first}-job-cards-{paper}.pdf", how_to))
    return _made([(name, "turns", data) for name, data in named], copy)


def sort_cards(
    day: dt.date,
    sorts: Sequence[CardSet],
    keys: Sequence[CardSet] = (),
    paper: str = "letter",
    face: str = FACES[0],
) -> Made:
    """Word sorts as cards to cut, one set to a sheet, and their key on a sheet of its own.

    `keys` are the sorts of the key, where the same one is cut for several learners.
    """
    return _cards(day, sorts, keys or sorts, paper, face, "sort", "Word sorts", wide=False)


def building_strips(
    day: dt.date, sentences: Sequence[CardSet], paper: str = "letter", face: str = FACES[0]
) -> Made:
    """Sentences to build from their parts, one to a sheet, and their key."""
    return _cards(
        day, sentences, sentences, paper, face, "building", "Sentences to build", wide=True
    )


def _cards(
    day: dt.date,
    sets: Sequence[CardSet],
    keys: Sequence[CardSet],
    paper: str,
    face: str,
    kind: str,
    title: str,
    wide: bool,
) -> Made:
    copy = Copy()
    where = title.lower()
    shared = {"iso": day.isoformat(), "sheet": sheet(paper), "face": face}
    cards: dict[str, Any] = {
        **shared,
        "title": title,
        "wide": wide,
        "size": BUILDING_POINTS if wide else CARD_POINTS,
        "height": CARD_MM,
        "sets": [
            {
                "title": copy.text(one.title, face, where),
                "heads": [copy.text(heading, face, where) for heading, _ in one.columns],
                "cards": [copy.text(words, face, where) for words in one.cards],
            }
            for one in sets
        ],
    }
    key: dict[str, Any] = {
        **shared,
        "title": f"Key: {where}",
        "sets": [
            {
                "title": copy.text(one.title, face, where),
                "columns": [
                    {
                        "heading": copy.text(heading, face, where),
                        "words": copy.text(", ".join(words), face, where),
                    }
                    for heading, words in one.columns
                ],
                "sentence": copy.text(one.sentence, face, where),
            }
            for one in keys
        ],
    }
    stem = day.isoformat()
    return _made(
        [
            (f"{stem}-{kind}-cards-{paper}.pdf", "cards", cards),
            (f"{stem}-{kind}-key-{paper}.pdf", "cardskey", key),
        ],
        copy,
    )


def _made(wanted: Sequence[tuple[str, str, dict[str, Any]]], copy: Copy) -> Made:
    files: list[PageFile] = []
    for name, layout, data in wanted:
        try:
            files.append(PageFile(name, typeset(layout, data, copy)))
        except ValueError as wrong:
            copy.tell(f"{name}: {wrong}")
    return Made(tuple(files), copy.problems)
