"""Align, name, explain, make and mark the errors of a sentence.

Nothing here loads spaCy until a sentence is compared, so that printing a stored key stays quick.
"""

from bank.edit.alternatives import Alternative, alternatives
from bank.edit.attempt import mark_attempt
from bank.edit.doors import Door, Version, doors, nested, offers
from bank.edit.fix import Fix, Marks
from bank.edit.planting import places, plant, plant_fixes
from bank.edit.proof import proof_lines
from bank.edit.versions import compare, compare_many

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
