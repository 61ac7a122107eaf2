"""The proof sheet on paper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from bank.page.binder import sheet
from bank.page.content import DayContent, Made, PageFile
from bank.page.proof import HEADINGS, SURE, ProofItem, merged, worth_a_glance
from bank.page.typeset import Copy, typeset

FACE = "Atkinson Hyperlegible"


def proof_sheet(day: DayContent, items: Sequence[ProofItem], paper: str = "letter") -> Made:
    """The proof sheet as a PDF, with a line for each thing that went wrong."""
    each = merged(items)
    copy = Copy()

    def row(item: ProofItem) -> dict[str, Any]:
        return {
            "kind": item.kind,
            "text": copy.text(item.text, FACE, "proof sheet"),
            "codes": ", ".join(item.codes),
            "sure": [code in item.sure for code in SURE],
            "doubts": [copy.text(line, FACE, "proof sheet") for line in item.doubts],
        }

    data = {
        "iso": day.date.isoformat(),
        "title": f"Proof sheet, {day.long_date}",
        "sheet": sheet(paper),
        "face": FACE,
        "sure": list(SURE.values()),
        "headings": list(HEADINGS),
        "items": [row(item) for item in each],
        "glance": [row(item) for item in worth_a_glance(each)],
    }
    name = f"{day.date.isoformat()}-proof-{paper}.pdf"
    try:
        made = (PageFile(name, typeset("proof", data, copy)),)
    except ValueError as wrong:
        return Made((), (*copy.problems, f"proof sheet: {wrong}"))
    return Made(made, copy.problems)
