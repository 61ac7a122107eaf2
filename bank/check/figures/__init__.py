"""Figures of speech: words that do not mean what they say, and what could be said instead."""

from __future__ import annotations
