"""Spelling: whether a word is one, and which was meant."""

from __future__ import annotations

from bank.check.spelling.suggest import suggest
from bank.check.spelling.words import is_word

__all__ = ["is_word", "suggest"]
