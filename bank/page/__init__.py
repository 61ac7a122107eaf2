"""What is printed and shown: pages, strips, board, key and proof sheet.

Plain values in (`DayContent`, `LearnerPage` …), files and lines about problems out (`Made`). Each
name is loaded when it is first used, and the typesetter when a page is made.
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from bank.page.binder import binder_pages
    from bank.page.board import board_html
    from bank.page.content import (
        FACES,
        LINE_STYLES,
        MODES,
        PAPERS,
        DayContent,
        LearnerPage,
        Made,
        PageFile,
        PageFix,
        PageQuestion,
        PageSentence,
        PageTopic,
        PageTurn,
        Picture,
        RuledLines,
    )
    from bank.page.files import forget, save
    from bank.page.key import key_pdf
    from bank.page.morning import (
        CardSet,
        JobCard,
        TurnRow,
        building_strips,
        sort_cards,
        turn_sheet,
    )
    from bank.page.pictures import (
        Pictogram,
        clean_picture,
        find_pictograms,
        load_picture,
        pictogram,
    )
    from bank.page.proof import ProofItem, proof_lines
    from bank.page.proof_pdf import proof_sheet
    from bank.page.signs import SHAPES
    from bank.page.strip import strips

_HOMES = {
    "binder": ("binder_pages",),
    "board": ("board_html",),
    "content": (
        *("FACES", "LINE_STYLES", "MODES", "PAPERS", "DayContent", "LearnerPage", "Made"),
        *("PageFile", "PageFix", "PageQuestion", "PageSentence", "PageTopic", "PageTurn"),
        *("Picture", "RuledLines"),
    ),
    "files": ("forget", "save"),
    "key": ("key_pdf",),
    "morning": (
        *("CardSet", "JobCard", "TurnRow"),
        *("building_strips", "sort_cards", "turn_sheet"),
    ),
    "pictures": (*("Pictogram", "clean_picture", "find_pictograms", "load_picture", "pictogram"),),
    "proof": ("ProofItem", "proof_lines"),
    "proof_pdf": ("proof_sheet",),
    "signs": ("SHAPES",),
    "strip": ("strips",),
}

__all__ = [
    "FACES",
    "LINE_STYLES",
    "MODES",
    "PAPERS",
    "SHAPES",
    "CardSet",
    "DayContent",
    "JobCard",
    "LearnerPage",
    "Made",
    "PageFile",
    "PageFix",
    "PageQuestion",
    "PageSentence",
    "PageTopic",
    "PageTurn",
    "Pictogram",
    "Picture",
    "ProofItem",
    "RuledLines",
    "TurnRow",
    "binder_pages",
    "board_html",
    "building_strips",
    "clean_picture",
    "find_pictograms",
    "forget",
    "key_pdf",
    "load_picture",
    "pictogram",
    "proof_lines",
    "proof_sheet",
    "save",
    "sort_cards",
    "strips",
    "turn_sheet",
]


def __getattr__(name: str) -> Any:
    for home, names in _HOMES.items():
        if name in names:
            return getattr(importlib.import_module(f"bank.page.{home}"), name)
    raise AttributeError(f"module 'bank.page' has no attribute {name!r}")
