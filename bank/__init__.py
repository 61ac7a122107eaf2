"""binderbank: a bank of levelled, checked items and the morning sets drawn from it.

Everything public is named here and loaded when it is first used, so that the morning's commands
never pay for the parts that only levelling, checking and editing need.
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from bank.check import Finding, check_text
    from bank.choose.twins import same_ask
    from bank.classroom import Bank, open_bank
    from bank.edit import Fix, Marks, compare, mark_attempt, plant
    from bank.level import Level, level_text
    from bank.skill import SKILLS, Skill

_HOMES = {
    "Bank": "bank.classroom",
    "Finding": "bank.check",
    "Fix": "bank.edit",
    "Level": "bank.level",
    "Marks": "bank.edit",
    "SKILLS": "bank.skill",
    "Skill": "bank.skill",
    "check_text": "bank.check",
    "compare": "bank.edit",
    "level_text": "bank.level",
    "mark_attempt": "bank.edit",
    "open_bank": "bank.classroom",
    "plant": "bank.edit",
    "same_ask": "bank.choose.twins",
}

__all__ = [
    "SKILLS",
    "Bank",
    "Finding",
    "Fix",
    "Level",
    "Marks",
    "Skill",
    "check_text",
    "compare",
    "level_text",
    "mark_attempt",
    "open_bank",
    "plant",
    "same_ask",
]
__version__ = "0.1.0"


def __getattr__(name: str) -> Any:
    if name in _HOMES:
        return getattr(importlib.import_module(_HOMES[name]), name)
    raise AttributeError(f"module 'bank' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted([*globals(), *_HOMES])
