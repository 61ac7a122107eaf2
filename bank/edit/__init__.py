"""Align, name, explain, make and mark the errors of a sentence.

Nothing here loads spaCy until a sentence is compared, so that printing a stored key stays quick.
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from bank.edit.attempt import mark_attempt
    from bank.edit.fix import Fix, Marks
    from bank.edit.nesting import Door, Version, doors, nested, offers
    from bank.edit.other_ways import Alternative, alternatives
    from bank.edit.planting import places, plant, plant_fixes
    from bank.edit.proof import proof_lines
    from bank.edit.versions import compare, compare_many

# Each name is loaded when it is first used: the key draws stored fixes with none of the rules.
_HOMES = {
    "Alternative": "bank.edit.other_ways",
    "Door": "bank.edit.nesting",
    "Fix": "bank.edit.fix",
    "Marks": "bank.edit.fix",
    "Version": "bank.edit.nesting",
    "alternatives": "bank.edit.other_ways",
    "compare": "bank.edit.versions",
    "compare_many": "bank.edit.versions",
    "doors": "bank.edit.nesting",
    "mark_attempt": "bank.edit.attempt",
    "nested": "bank.edit.nesting",
    "offers": "bank.edit.nesting",
    "places": "bank.edit.planting",
    "plant": "bank.edit.planting",
    "plant_fixes": "bank.edit.planting",
    "proof_lines": "bank.edit.proof",
}

__all__ = [
    "Alternative",
    "Door",
    "Fix",
    "Marks",
    "Version",
    "alternatives",
    "compare",
    "compare_many",
    "doors",
    "mark_attempt",
    "nested",
    "offers",
    "places",
    "plant",
    "plant_fixes",
    "proof_lines",
]


def __getattr__(name: str) -> Any:
    if name in _HOMES:
        return getattr(importlib.import_module(_HOMES[name]), name)
    raise AttributeError(f"module 'bank.edit' has no attribute {name!r}")
