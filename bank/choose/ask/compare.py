"""Whether two frames ask the same."""

from __future__ import annotations

from typing import Any


def same_frames(a: dict[str, Any], b: dict[str, Any]) -> bool:
    """Whether two frames ask the same."""
    left, right = set(a["content"]), set(b["content"])
    if a["not"] != b["not"] or not left | right:
        return False
    return len(left & right) / len(left | right) >= 0.6
