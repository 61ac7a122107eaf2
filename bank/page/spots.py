"""Where the fixes of a sentence stand, in the faulty text and in the corrected one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from os.path import commonprefix

from bank.page.content import PageFix


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
    for fix in sorted(fixes, key=_left_to_right):
        if not 0 <= fix.start <= fix.end or faulty[fix.start : fix.end] != fix.wrong:
            lost.append(fix.number)
            continue
        new = _spot(fix, corrected, found)
        if found and _overlap(found[-1], new):
            found[-1] = _joined(found[-1], new)
        else:
            found.append(new)
    return _closed_up(found, faulty, corrected), lost


def _left_to_right(fix: PageFix) -> tuple[int, int, bool, int, int]:
    """By where a fix stands: what is put in before a word comes first, then the longer of two."""
    right = fix.right_start if fix.right_start >= 0 else fix.start
    return fix.start, right, fix.start != fix.end, -fix.end, fix.number


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
        tuple(sorted((*one.numbers, *other.numbers))),
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
        if (
            gap != right_gap
            and row
            and not _belongs_to_next(spot, gap, right_gap, faulty, corrected)
        ):
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


def _belongs_to_next(spot: Spot, gap: str, right_gap: str, faulty: str, corrected: str) -> bool:
    """Whether what one text has more in the gap is part of the spot behind it, not before it."""
    if not (gap.endswith(right_gap) or right_gap.endswith(gap)):
        return True
    if not (gap.startswith(right_gap) or right_gap.startswith(gap)):
        return False
    more = max(gap, right_gap, key=len)[min(len(gap), len(right_gap)) :]
    wrong, right = faulty[spot.start : spot.end], corrected[spot.right_start : spot.right_end]
    return more in (right if len(gap) > len(right_gap) else wrong)


def places(faulty: str, corrected: str, fixes: Sequence[PageFix]) -> list[int]:
    """Where each fix stands in the corrected text, which all faulty versions share."""
    found: list[Spot] = []
    where: dict[int, int] = {}
    for at, fix in sorted(enumerate(fixes), key=lambda pair: _left_to_right(pair[1])):
        new = _spot(fix, corrected, found)
        where[at] = new.right_start
        if found and _overlap(found[-1], new):
            found[-1] = _joined(found[-1], new)
        else:
            found.append(new)
    return [where[at] for at in range(len(fixes))]
