"""How hard a short text is to read, as a reading grade with a range.

An estimate to help choose, not an assessment of a learner; the specialist's own placement always
wins.
"""

from __future__ import annotations

from bank.level.estimate import METHOD, level_many, level_text, parts_of
from bank.level.scale import KINDS, Level, Published, Reason

__all__ = [
    "KINDS",
    "METHOD",
    "Level",
    "Published",
    "Reason",
    "level_many",
    "level_text",
    "parts_of",
]
