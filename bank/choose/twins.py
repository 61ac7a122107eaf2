"""Twins: items that ask the same in other words, and the keys by which they are found.

A text is parsed once, when its item is added. What it asks is kept as a *frame* (a small dict that
JSON can hold), and where twins of it can be looked for as a few *keys*. Two frames are compared
without a parse, so that a new item is compared only with those that share a key with it.

>>> from bank.choose.twins import ask_frame, ask_keys, same_ask_frames  # doctest: +SKIP
>>> frame = ask_frame("Which game do you like most at the fair?")  # doctest: +SKIP
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from bank.choose.ask.frame import METHOD, frame_of, frames_of
from bank.choose.ask.in_a_bank import how_surely
from bank.choose.ask.keys import keys_of
from bank.choose.ask.side_by_side import same_frames

__all__ = [
    "METHOD",
    "ask_frame",
    "ask_frames",
    "ask_keys",
    "how_surely",
    "same_ask",
    "same_ask_frames",
]

Frame = dict[str, Any]


def same_ask(a: str, b: str) -> bool:
    """Whether two questions, topics or tell-prompts ask the same in other words.

    A relation between pairs: it is symmetric, and not transitive.
    """
    return same_frames(frame_of(a), frame_of(b))


def ask_frame(text: str) -> Frame:
    """What `text` asks, as a dict that JSON can hold; made by the method named in `METHOD`.

    A frame of another method must be made anew before it is compared.
    """
    return frame_of(text)


def ask_frames(texts: Sequence[str]) -> Iterator[Frame]:
    """The frames of many texts in order, parsed in batches: for an import.

    The first text is parsed only when the first frame is asked for; no more than one batch is held.
    """
    return frames_of(texts)


def ask_keys(text: str) -> list[str]:
    """The keys under which twins of `text` are looked for: two twins share at least one."""
    return keys_of(frame_of(text))


def same_ask_frames(a: Frame, b: Frame) -> bool:
    """`same_ask` on two frames of `ask_frame`, without a parse.

    To look for twins among many items, ask `how_surely` and take those that are sure enough (`search`).
    """
    return same_frames(a, b)
