"""Proofreading marks: what is drawn over and under a sentence to fix.

A fix becomes a row of *strokes*: pieces of the faulty text, each with the mark that belongs to it.
The marks are those of printers' proofs (three lines under a letter: make it a capital; a slash:
make it small; a caret: put this in), drawn by `layout/key.typ`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher
from os.path import commonprefix

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
    """A place where one fix stands, or several that share it.

    Characters `start` to `end` of the faulty text become characters `right_start` to `right_end` of
    the corrected one; between two spots both texts read the same.
    """

    start: int
    end: int
    right_start: int
    right_end: int
    numbers: tuple[int, ...]


def spots(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> tuple[list[Spot], list[int]]:
    """Where something is to be mended, left to right, and the fixes that stand elsewhere.

    Those others are given by number: `wrong` is not what the text has from `start` to `end`. Fixes
    that overlap (a name that lacks its capital inside a wrong pronoun phrase, a title that lacks
    its capital and its dot) share a spot.
    """
    found: list[Spot] = []
    lost: list[int] = []
    for fix in sorted(fixes, key=lambda each: (each.start, -each.end, each.number)):
        if not 0 <= fix.start <= fix.end or faulty[fix.start : fix.end] != fix.wrong:
            lost.append(fix.number)
            continue
        new = _spot(fix, corrected, found)
        if found and _overlap(found[-1], new):
            found[-1] = _joined(found[-1], new)
        else:
            found.append(new)
    return _closed_up(found, faulty, corrected), lost


def _spot(fix: PageFix, corrected: str, before: Sequence[Spot]) -> Spot:
    """Where a fix stands in both texts; where it does not say, as far along as in the faulty one."""
    start, end = fix.right_start, fix.right_end
    if not (0 <= start <= end and corrected[start:end] == fix.right):
        start = fix.start + (before[-1].right_end - before[-1].end if before else 0)
        if before and fix.start < before[-1].end:
            start = before[-1].right_start + fix.start - before[-1].start
        end = start + len(fix.right)
    return Spot(fix.start, fix.end, start, end, (fix.number,))


def _overlap(one: Spot, other: Spot) -> bool:
    return other.start < one.end or other.right_start < one.right_end


def _joined(one: Spot, other: Spot) -> Spot:
    inside = other.end <= one.end
    return Spot(
        min(one.start, other.start),
        max(one.end, other.end),
        min(one.right_start, other.right_start),
        one.right_end if inside else max(one.right_end, other.right_end),
        (*one.numbers, *other.numbers),
    )


def _closed_up(found: Sequence[Spot], faulty: str, corrected: str) -> list[Spot]:
    """The spots grown until both texts read the same between them.

    A fix may leave a space to its neighbours: the end of a run-on stands before the space that the
    next word had.
    """
    row: list[Spot] = []
    was, is_now = 0, 0
    for spot in found:
        gap, right_gap = faulty[was : spot.start], corrected[is_now : spot.right_start]
        if gap != right_gap and row and _ends_alike(gap, right_gap):
            same = min(len(gap), len(right_gap))
            row[-1] = replace(row[-1], end=spot.start - same, right_end=spot.right_start - same)
        elif gap != right_gap:
            same = len(commonprefix([gap, right_gap]))
            start = is_now + same
            spot = replace(
                spot, start=was + same, right_start=start, right_end=max(start, spot.right_end)
            )
        row.append(spot)
        was, is_now = spot.end, spot.right_end
    if row and faulty[was:] != corrected[is_now:]:
        same = len(commonprefix([faulty[was:][::-1], corrected[is_now:][::-1]]))
        row[-1] = replace(row[-1], end=len(faulty) - same, right_end=len(corrected) - same)
    return row


def _ends_alike(gap: str, right_gap: str) -> bool:
    return gap.endswith(right_gap) or right_gap.endswith(gap)


def places(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> list[int]:
    """Where each fix stands in the corrected text, which all faulty versions share."""
    found: list[Spot] = []
    where: dict[int, int] = {}
    for at, fix in sorted(enumerate(fixes), key=lambda pair: (pair[1].start, -pair[1].end)):
        new = _spot(fix, corrected, found)
        where[at] = new.right_start
        if found and _overlap(found[-1], new):
            found[-1] = _joined(found[-1], new)
        else:
            found.append(new)
    return [where[at] for at in range(len(fixes))]


def marked(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> tuple[list[Stroke], list[int]]:
    """The whole faulty text in strokes, and the fixes that do not stand where they say."""
    found, lost = spots(faulty, corrected, fixes)
    row: list[Stroke] = []
    done = 0
    for spot in found:
        row.append(Stroke(faulty[done : spot.start]))
        wrong = faulty[spot.start : spot.end]
        right = corrected[spot.right_start : spot.right_end]
        row.extend(_numbered(strokes(wrong, right), spot.numbers))
        done = spot.end
    row.append(Stroke(faulty[done:]))
    return [stroke for stroke in row if stroke.text or stroke.mark], lost


def _numbered(row: list[Stroke], numbers: tuple[int, ...]) -> list[Stroke]:
    """The numbers go with the first stroke that marks something."""
    at = next((index for index, stroke in enumerate(row) if stroke.mark), 0)
    row[at] = replace(row[at], numbers=numbers)
    return row
