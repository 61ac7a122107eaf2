"""Small pictures of numbers in a line of text."""

from __future__ import annotations

from collections.abc import Sequence

BLOCKS = "▁▂▃▄▅▆▇█"


def sparkline(shares: Sequence[float | None], width: int = 20) -> str:
    """The last `width` shares (0 to 1) as blocks; None leaves a gap.

    >>> sparkline([0, 0.5, 1, None, 0.9])
    '▁▄█ ▇'
    """
    top = len(BLOCKS) - 1
    return "".join(
        " " if share is None else BLOCKS[int(min(1.0, max(0.0, share)) * top)]
        for share in shares[-width:]
    )
