"""The keys under which twins are looked for."""

from __future__ import annotations

from typing import Any


def keys_of(frame: dict[str, Any]) -> list[str]:
    """The keys of a frame: its content words."""
    return list(frame["content"])
