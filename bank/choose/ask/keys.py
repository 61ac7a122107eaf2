"""The keys under which twins are looked for."""

from __future__ import annotations

from typing import Any


def keys_of(frame: dict[str, Any]) -> list[str]:
    """The keys of a frame: its content words."""
    return sorted(
        {name for names, weight, *_ in frame["atoms"] if weight > 0.3 for name in names[:1]}
    )
