"""Proofreading marks: what is drawn over and under a sentence to fix.

A fix becomes a row of *strokes*: pieces of the faulty text, each with the mark that belongs to it.
The marks are those of printers' proofs (three lines under a letter: make it a capital; a slash:
make it small; a caret: put this in), drawn by `layout/key.typ`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher

from bank.page.content import PageFix

STOPS = "."
HIGH = "'\"’‘“”"


@dataclass(frozen=True, slots=True)
class Stroke:
    """A piece of the faulty text under one mark.

    `mark` is empty, or capital, small, insert, high (an insertion at the top of the line), stop (a
    full stop), delete, replace, swap, split or close; `note` is what the mark writes; `numbers` are
    the fixes that it belongs to, on the first stroke of a fix only.
    """

    text: str
    mark: str = ""
    note: str = ""
    numbers: tuple[int, ...] = ()


def strokes(wrong: str, right: str) -> list[Stroke]:
    """The marks that turn `wrong` into `right`.

    >>> [(each.text, each.mark, each.note) for each in strokes("dont", "don't")]
    [('don', '', ''), ('', 'high', "'"), ('t', '', '')]
    >>> [(each.text, each.mark, each.note) for each in strokes("runned", "ran")]
    [('runned', 'replace', 'ran')]
    >>> [(each.text, each.mark) for each in strokes("ben", "Ben")]
    [('b', 'capital'), ('en', '')]
    """
    if not wrong:
        return _inserted(right)
    if not right:
        return [Stroke(wrong, "delete")]
    was, becomes = wrong.lower().split(), right.lower().split()
    if was != becomes and sorted(was) == sorted(becomes):
        return [Stroke(wrong, "swap", right)]
    return _small_marks(wrong, right) or [Stroke(wrong, "replace", right)]


def _inserted(text: str) -> list[Stroke]:
    """An insertion by its place on the line: at the foot, at the top, or written above a caret."""
    if text == " ":
        return [Stroke("", "split", " ")]
    if text in STOPS:
        return [Stroke("", "stop", text)]
    return [Stroke("", "high" if all(letter in HIGH for letter in text) else "insert", text)]


def _small_marks(wrong: str, right: str) -> list[Stroke]:
    """Letter by letter where only capitals, spaces and punctuation differ, else nothing."""
    row: list[Stroke] = []
    folded = SequenceMatcher(None, wrong.lower(), right.lower(), autojunk=False)
    if len(wrong.lower()) != len(wrong) or len(right.lower()) != len(right):
        return []
    for how, start, end, to, until in folded.get_opcodes():
        old, new = wrong[start:end], right[to:until]
        if how == "equal":
            row.extend(_case_marks(old, new))
        elif any(letter.isalnum() for letter in old + new):
            return []
        else:
            row.extend(_punctuation_marks(old, new))
    return row


def _case_marks(old: str, new: str) -> list[Stroke]:
    row: list[Stroke] = []
    for was, becomes in zip(old, new, strict=True):
        mark = "" if was == becomes else "capital" if becomes.isupper() else "small"
        if row and row[-1].mark == mark == "":
            row[-1] = Stroke(row[-1].text + was)
        else:
            row.append(Stroke(was, mark))
    return row


def _punctuation_marks(old: str, new: str) -> list[Stroke]:
    if old.isspace() and not new:
        return [Stroke(old, "close")]
    row = [Stroke(old, "delete")] if old else []
    return row + [stroke for letter in new for stroke in _inserted(letter)]


@dataclass(frozen=True, slots=True)
class Spot:
    """A place in the faulty text where one fix stands, or several of which one holds the others."""

    start: int
    end: int
    wrong: str
    right: str
    numbers: tuple[int, ...]


def spots(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> tuple[list[Spot], list[int]]:
    """Where something is to be mended, left to right, and the fixes that stand elsewhere.

    Those others are given by number: `wrong` is not what the text has from `start` to `end`.

    Where one fix lies inside another (a name that lacks its capital inside a wrong pronoun phrase)
    the outer one is the spot, and what is right there is read off the corrected text.
    """
    found: list[Spot] = []
    lost: list[int] = []
    for fix in sorted(fixes, key=lambda each: (each.start, -each.end, each.number)):
        if not 0 <= fix.start <= fix.end or faulty[fix.start : fix.end] != fix.wrong:
            lost.append(fix.number)
        elif found and fix.start < found[-1].end:
            outer = found[-1]
            found[-1] = replace(outer, numbers=(*outer.numbers, fix.number))
        else:
            found.append(Spot(fix.start, fix.end, fix.wrong, fix.right, (fix.number,)))
    return [_as_corrected(spot, found, faulty, corrected) for spot in found], lost


def _as_corrected(spot: Spot, found: Sequence[Spot], faulty: str, corrected: str) -> Spot:
    if len(spot.numbers) == 1:
        return spot
    before = _mended(faulty, 0, spot.start, [each for each in found if each.end <= spot.start])
    after = _mended(
        faulty, spot.end, len(faulty), [each for each in found if each.start >= spot.end]
    )
    if not (corrected.startswith(before) and corrected.endswith(after)):
        return spot
    right = corrected[len(before) : len(corrected) - len(after)]
    return replace(spot, right=right) if right else spot


def _mended(faulty: str, start: int, end: int, found: Sequence[Spot]) -> str:
    row = []
    for spot in found:
        row += [faulty[start : spot.start], spot.right]
        start = spot.end
    return "".join([*row, faulty[start:end]])


def places(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> list[int]:
    """Where each fix stands in the corrected text, which all faulty versions share."""
    found, _ = spots(faulty, corrected, fixes)
    where = []
    for fix in fixes:
        before = [spot for spot in found if spot.end <= fix.start]
        start = min(
            (spot.start for spot in found if spot.start < fix.start < spot.end), default=fix.start
        )
        where.append(len(_mended(faulty, 0, start, before)) + fix.start - start)
    return where


def marked(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> tuple[list[Stroke], list[int]]:
    """The whole faulty text in strokes, and the fixes that do not stand where they say."""
    found, lost = spots(faulty, corrected, fixes)
    row: list[Stroke] = []
    done = 0
    for spot in found:
        row.append(Stroke(faulty[done : spot.start]))
        row.extend(_numbered(strokes(spot.wrong, spot.right), spot.numbers))
        done = spot.end
    row.append(Stroke(faulty[done:]))
    return [stroke for stroke in row if stroke.text or stroke.mark], lost


def _numbered(row: list[Stroke], numbers: tuple[int, ...]) -> list[Stroke]:
    """The numbers go with the first stroke that marks something."""
    at = next((index for index, stroke in enumerate(row) if stroke.mark), 0)
    row[at] = replace(row[at], numbers=numbers)
    return row
