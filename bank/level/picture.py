"""One level as a compact picture in plain text: a line from K to 8, and the reasons below it."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from bank.level.scale import Level, Published

GRADES = "K12345678"
LEVEL, RANGE, REST, ONE, MORE = "●", "━", "─", "·", ":"
NARROWEST = 40


def picture(level: Level, text: str, width: int = 72) -> list[str]:
    """The lines that show a level: text, words, the line with the formulas as dots, the reasons.

    On the line `●` is the level, `━` its range, `·` one published formula and `:` more than one;
    `‹2` and `3›` count the formulas that lie below K and above 8. No line is wider than `width`
    columns (at least 40).
    """
    width = max(NARROWEST, width)
    grades = [value for value in level.formulas if value.unit == "grade"]
    lines = textwrap.wrap(text, width)
    lines += textwrap.wrap(f"{level.words}, {level.grade:.1f}", width, initial_indent="  ")
    lines += ["", *scale_lines(level, grades, width), ""]
    lines += _formula_lines(level.formulas, width)
    lines += ["", *_reason_lines(level, width)] if level.reasons else []
    return lines


def scale_lines(level: Level, formulas: Sequence[Published], width: int = 72) -> list[str]:
    """The line of grades and the line with the level, its range and the formulas as dots."""
    cell = (width - 8) // len(GRADES)
    ends = cell * len(GRADES)

    def at(grade: float) -> int:
        return min(ends - 1, max(0, int(grade * cell)))

    line = [REST] * ends
    for place in range(at(level.low), at(level.high) + 1):
        line[place] = RANGE
    below = sum(value.value < 0 for value in formulas)
    above = sum(value.value >= len(GRADES) for value in formulas)
    for value in formulas:
        if 0 <= value.value < len(GRADES):
            place = at(value.value)
            line[place] = MORE if line[place] in (ONE, MORE) else ONE
    line[at(level.grade)] = LEVEL
    left = f"‹{below}" if below else ""
    right = f"{above}›" if above else ""
    names = "".join(name.ljust(cell) for name in GRADES).rstrip()
    return ["    " + names, f"{left:>3} {''.join(line)} {right}".rstrip()]


def _formula_lines(formulas: Sequence[Published], width: int) -> list[str]:
    if not formulas:
        return []
    shorter = [value for value in formulas if value.shorter_than_meant]
    values = "; ".join(
        f"{value.name} {value.value:.1f}{'*' if value.shorter_than_meant else ''}"
        for value in formulas
    )
    lines = textwrap.wrap(f"formulas: {values}", width, subsequent_indent="  ")
    if shorter:
        least = min(value.meant_from for value in shorter)
        note = f"* meant for texts of {least} words and more; this one is shorter"
        lines += textwrap.wrap(note, width, initial_indent="  ", subsequent_indent="    ")
    return lines


def _reason_lines(level: Level, width: int) -> list[str]:
    lines = ["  costs  without"]
    for reason in level.reasons:
        start = f"  {reason.cost:+5.1f}  {reason.without:7.1f}  "
        lines += textwrap.wrap(
            reason.said, width, initial_indent=start, subsequent_indent=" " * len(start)
        )
    return lines
