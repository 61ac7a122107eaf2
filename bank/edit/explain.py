"""Why a fix is made, in words that a grade 2 reader can follow."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bank.skill import skill

if TYPE_CHECKING:
    from bank.edit.fix import Fix


def explain(fix: Fix) -> str:
    """One or two short sentences on what to do and why."""
    return skill(fix.skill).rule
