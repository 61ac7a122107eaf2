"""Proofreading marks: what is drawn over and under a sentence to fix.

A fix becomes a row of *strokes*: pieces of the faulty text, each with the mark that belongs to it.
The marks are those of printers' proofs (three lines under a letter: make it a capital; a slash:
make it small; a caret: put this in), drawn by `layout/key.typ`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher

from bank.page.content import PageFix
from bank.page.spots import spots

_PIECES = re.compile(r"\w+(?:['’]\w+)*|\s+|[^\w\s]|_")
STOPS = "."
HIGH = "'\"’‘“”"


@dataclass(frozen=True, slots=True)
class Stroke:
    """A piece of the faulty text under one mark.

    `mark` is empty, or capital, small, insert, high (an insertion at the top of the line), stop (a
    full stop), delete, replace, swap, split or close; `note` is what the mark writes; `numbers` are
    the fixes that it belongs to, on one stroke of each fix only.
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
    return _small_marks(wrong, right) or _word_marks(wrong, right)


def _word_marks(wrong: str, right: str) -> list[Stroke]:
    """Word by word: words that stay are not marked, so that a long fix shows what changes in it."""
    old, new = _PIECES.findall(wrong), _PIECES.findall(right)
    alike = SequenceMatcher(
        None, [piece.lower() for piece in old], [piece.lower() for piece in new], autojunk=False
    )
    row: list[Stroke] = []
    for how, start, end, to, until in alike.get_opcodes():
        was, becomes = "".join(old[start:end]), "".join(new[to:until])
        if how == "equal":
            row.extend(_case_marks(was, becomes))
        elif was and becomes:
            row.extend(_small_marks(was, becomes) or [Stroke(was, "replace", becomes)])
        else:
            row.extend(strokes(was, becomes))
    return row


def _inserted(text: str) -> list[Stroke]:
    """An insertion by its place on the line: at the foot, at the top, or written above a caret."""
    if text == " ":
        return [Stroke("", "split", " ")]
    if len(text) > 1 and not any(letter.isalnum() or letter.isspace() for letter in text):
        return [stroke for letter in text for stroke in _inserted(letter)]
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


def marked(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> tuple[list[Stroke], list[int]]:
    """The whole faulty text in strokes, and the fixes that do not stand where they say."""
    found, lost = spots(faulty, corrected, fixes)
    row: list[Stroke] = []
    done = 0
    for spot in found:
        row.append(Stroke(faulty[done : spot.start]))
        wrong = faulty[spot.start : spot.end]
        right = corrected[spot.right_start : spot.right_end]
        own = [fix for fix in fixes if fix.number in spot.numbers]
        row.extend(_numbered(strokes(wrong, right), spot.start, own))
        done = spot.end
    row.append(Stroke(faulty[done:]))
    return [stroke for stroke in row if stroke.text or stroke.mark], lost


def _numbered(row: list[Stroke], start: int, fixes: Sequence[PageFix]) -> list[Stroke]:
    """Each fix's number under a mark at its place that has none yet, the narrowest fix first."""
    starts = [start + sum(len(stroke.text) for stroke in row[:at]) for at in range(len(row))]
    drawn = [at for at, stroke in enumerate(row) if stroke.mark] or [0]
    numbers: dict[int, list[int]] = {at: [] for at in drawn}
    for fix in sorted(fixes, key=lambda each: (each.end - each.start, each.start, each.number)):
        inside = [at for at in drawn if fix.start - 1 <= starts[at] <= fix.end]
        free = [at for at in inside if not numbers[at]]
        numbers[(free or inside or drawn)[0]].append(fix.number)
    return [
        replace(stroke, numbers=tuple(sorted(numbers.get(at, ())))) for at, stroke in enumerate(row)
    ]
