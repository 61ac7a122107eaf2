"""All families of rules, in the order in which they win where two find the same place."""

from __future__ import annotations

from bank.check import capitals, extra, figurative, marks, spelled
from bank.check.engine import RULES, run

__all__ = ["RULES", "capitals", "extra", "figurative", "marks", "run", "spelled"]
