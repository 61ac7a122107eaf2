"""Proofreading marks as lines of text, for a key on a screen.

The marks are those of printers' proofs: a caret where something is missing, three lines under a
letter that wants a capital, a slash for a small letter, a circle around a misspelled word, a line
through what goes. A number over the sentence leads to the list below it.
"""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from bank.edit.fix import Fix
from bank.skill import skill

CARET, CAPITAL, SMALL, THROUGH, TURN, CLOSE, SPACE = "^", "≡", "/", "-", "~", "‿", "#"
_CIRCLED = ("spelling", "homophone")


@dataclass(frozen=True, slots=True)
class Mark:
    """The signs of one fix under the faulty text, from character `start`."""

    number: int
    start: int
    signs: str


def proof_lines(
    faulty: str, fixes: Sequence[Fix], width: int = 80, legend: bool = True
) -> list[str]:
    """The faulty sentence with numbers above and marks below, then what each number stands for.

    Lines are at most `width` characters wide (at least 20).

    >>> from bank.edit.fix import Fix
    >>> fixes = [Fix("capital-first", "we", "We", 0, 2, 0, 2), Fix("end-mark", "", ".", 7, 7, 7, 7)]
    >>> print("\\n".join(proof_lines("we went", fixes)))
    1      2
    we went
    ≡      ^
    <BLANKLINE>
    1  we → We   first capital: A sentence starts with a capital letter.
    2  put in .  end mark: A sentence ends with . or ? or !
    """
    width = max(20, width)
    marks = [_mark(number, fix) for number, fix in enumerate(fixes, start=1)]
    lines: list[str] = []
    for start, end in _rows(faulty, width - 1):
        inside = [mark for mark in marks if start <= mark.start < end or mark.start == end]
        inside = [mark for mark in inside if mark.start < end or end == len(faulty)]
        lines += [*_numbers(inside, start), faulty[start:end].rstrip(), _under(marks, start, end)]
        lines.append("")
    lines = [line.rstrip() for line in lines]
    if legend:
        lines += _legend(fixes, width)
    return lines


def _mark(number: int, fix: Fix) -> Mark:
    wrong, right = fix.wrong, fix.right
    if not wrong.strip():
        return Mark(number, fix.wrong_start, CARET)
    if fix.skill == "capital-extra":
        return Mark(number, fix.wrong_start, SMALL)
    if fix.skill.startswith("capital"):
        return Mark(number, fix.wrong_start, CAPITAL)
    if fix.skill in _CIRCLED:
        inner = "_" * max(0, len(wrong) - 2)
        return Mark(number, fix.wrong_start, f"({inner})" if len(wrong) > 1 else "o")
    if fix.skill == "word-order":
        return Mark(number, fix.wrong_start, TURN * len(wrong))
    if fix.skill == "spacing":
        at = _first_difference(wrong, right)
        sign = CLOSE if len(right) < len(wrong) else SPACE
        return Mark(number, fix.wrong_start + at, sign)
    if _only_put_in(wrong, right):
        at = _first_difference(wrong, right)
        return Mark(number, fix.wrong_start + at, CARET)
    return Mark(number, fix.wrong_start, THROUGH * len(wrong))


def _first_difference(one: str, other: str) -> int:
    for at, (a, b) in enumerate(zip(one, other, strict=False)):
        if a.lower() != b.lower():
            return at
    return min(len(one), len(other))


def _only_put_in(wrong: str, right: str) -> bool:
    """Whether only marks, no letters, have to be put in."""

    def letters(text: str) -> str:
        return "".join(c for c in text if c.isalnum() or c.isspace()).strip().lower()

    return letters(wrong) == letters(right) and len(right) > len(wrong)


def _rows(text: str, width: int) -> list[tuple[int, int]]:
    """Where the text is broken so that no row is wider than `width`."""
    rows: list[tuple[int, int]] = []
    start = 0
    while len(text) - start > width:
        at = text.rfind(" ", start, start + width + 1)
        end = at + 1 if at > start else start + width
        rows.append((start, end))
        start = end
    rows.append((start, len(text)))
    return rows


def _numbers(marks: Sequence[Mark], start: int) -> list[str]:
    """The numbers over a row; where two would touch, one stands on a line above."""
    lines: list[str] = []
    for mark in sorted(marks, key=lambda m: (m.start, m.number)):
        column, text = mark.start - start, str(mark.number)
        for level in range(len(lines) + 1):
            if level == len(lines):
                lines.append("")
            if len(lines[level]) < column or not lines[level] and column == 0:
                lines[level] = lines[level].ljust(column) + text
                break
    return lines[::-1] or [""]


def _under(marks: Sequence[Mark], start: int, end: int) -> str:
    row = [" "] * (end - start + 1)
    # A short sign is written over a long one: the capital of a circled word stays visible.
    for mark in sorted(marks, key=lambda m: -len(m.signs)):
        for at, sign in enumerate(mark.signs, start=mark.start):
            if start <= at < end or at == end == start + len(row) - 1 and len(mark.signs) == 1:
                row[at - start] = sign
    return "".join(row)


def _legend(fixes: Sequence[Fix], width: int) -> list[str]:
    changes = [_change(fix) for fix in fixes]
    column = min(max(map(len, changes), default=0), width // 3)
    lines: list[str] = []
    for number, (fix, change) in enumerate(zip(fixes, changes, strict=True), start=1):
        known = skill(fix.skill)
        doubt = "" if fix.sure else " (please check)"
        text = f"{number:<2} {change.ljust(column)}  {known.name}: {known.rule}{doubt}"
        lines += textwrap.wrap(text, width, subsequent_indent=" " * 3, drop_whitespace=True)
    return lines


def _change(fix: Fix) -> str:
    if not fix.wrong.strip():
        return f"put in {fix.right.strip()}"
    if not fix.right.strip():
        return f"take out {fix.wrong.strip()}"
    return f"{fix.wrong} → {fix.right}"
