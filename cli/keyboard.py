"""Single keys from the terminal, or the letters of what is piped in."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Callable, Iterator

UP, DOWN, RIGHT, LEFT = "up", "down", "right", "left"
ESCAPE, ENTER, ERASE, END = "\x1b", "\n", "\x7f", ""
_ARROWS = {"A": UP, "B": DOWN, "C": RIGHT, "D": LEFT}
_WINDOWS_ARROWS = {"H": UP, "P": DOWN, "M": RIGHT, "K": LEFT}

ReadKey = Callable[[], str]


@contextlib.contextmanager
def keys() -> Iterator[ReadKey]:
    """A function that waits for one key: a letter, an arrow's name, or END where nothing comes."""
    if not sys.stdin.isatty():
        yield _piped_key
        return
    try:
        import termios
        import tty
    except ImportError:
        yield _windows_key
        return
    here = sys.stdin.fileno()
    before = termios.tcgetattr(here)
    try:
        tty.setcbreak(here)
        yield lambda: _terminal_key(here)
    finally:
        termios.tcsetattr(here, termios.TCSADRAIN, before)


def _piped_key() -> str:
    return sys.stdin.read(1)


def _terminal_key(here: int) -> str:
    import select

    first = os.read(here, 1)
    if not first:
        return END
    if first == b"\x1b":
        # An arrow comes as three bytes at once; Escape comes alone.
        if not select.select([here], [], [], 0.05)[0]:
            return ESCAPE
        rest = os.read(here, 8).decode("ascii", "replace")
        return _ARROWS.get(rest[1:2], "other") if rest[:1] in "[O" else "other"
    more = {0xC0: 1, 0xE0: 2, 0xF0: 3}.get(
        first[0] & 0xF0 if first[0] >= 0xE0 else first[0] & 0xE0, 0
    )
    letter = (first + (os.read(here, more) if more else b"")).decode("utf-8", "replace")
    return ENTER if letter == "\r" else letter


def _windows_key() -> str:
    import msvcrt

    letter: str = msvcrt.getwch()  # type: ignore[attr-defined]
    if letter in ("\x00", "\xe0"):
        return _WINDOWS_ARROWS.get(msvcrt.getwch(), "other")  # type: ignore[attr-defined]
    if letter == "\x03":
        raise KeyboardInterrupt
    return {"\r": ENTER, "\x08": ERASE}.get(letter, letter)


def read_line(read: ReadKey, show: Callable[[str], None]) -> str | None:
    """A line typed key by key; None where it was left with Escape. Arrows do nothing."""
    typed = ""
    while True:
        key = read()
        if key in (ENTER, END):
            return typed
        if key == ESCAPE:
            return None
        if key in (ERASE, "\x08"):
            typed = typed[:-1]
        elif len(key) == 1 and key.isprintable():
            typed += key
        show(typed)
