"""A learner's own faulty version: which errors of the fullest one stay, by what is known of skills.

The errors that stay are all errors of the fullest version, so the board, which shows that one, agrees
with every page. Plain string work on the fixes that were stored; nothing is parsed when a set is
drawn.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

Fix = Mapping[str, Any]
# Fixes that stay or go together: errors that share words cannot be told apart by place.
Atom = tuple[int, ...]

IN_WORK, MASTERED, TAUGHT = "in-work", "mastered", "taught"


def only(
    faulty: str, corrected: str, fixes: Sequence[Fix], keep: Collection[int]
) -> tuple[str, list[dict[str, Any]]] | None:
    """`faulty` with only the errors numbered in `keep` (from 0), and their fixes at their new places.

    None where the stored places do not lead from one text to the other, or where `keep` parts what
    cannot be parted.

    >>> fixes = [
    ...     {"skill": "capital-first", "wrong": "it", "right": "It", "wrong_start": 0,
    ...      "wrong_end": 2, "right_start": 0, "right_end": 2},
    ...     {"skill": "end-mark", "wrong": "", "right": ".", "wrong_start": 6,
    ...      "wrong_end": 6, "right_start": 6, "right_end": 7}]
    >>> only("it ran", "It ran.", fixes, {1})[0]
    'It ran'
    """
    units = _units(faulty, corrected, fixes)
    if units is None:
        return None
    made, kept = "", list[dict[str, Any]]()
    at = 0
    for unit in units:
        made += faulty[at : unit.wrong[0]]
        mine = [n for n in unit.fixes if n in keep]
        shift = len(made) - unit.wrong[0]
        if len(mine) == len(unit.fixes):
            text = faulty[slice(*unit.wrong)]
            kept += [_at(fixes[n], text, shift, len(made)) for n in mine]
        elif mine:
            part = _part(unit, mine, fixes)
            if part is None:
                return None
            before = corrected[unit.right[0] : fixes[unit.fixes[0]]["right_start"]]
            after = corrected[fixes[unit.fixes[0]]["right_end"] : unit.right[1]]
            start = len(made) + len(before)
            text = before + part + after
            place = {"wrong": part, "wrong_start": start, "wrong_end": start + len(part)}
            kept += [{**fixes[n], **place} for n in mine]
        else:
            text = corrected[slice(*unit.right)]
        made += text
        at = unit.wrong[1]
    return made + faulty[at:], kept


def _at(fix: Fix, text: str, shift: int, begins: int) -> dict[str, Any]:
    """A fix moved by `shift`; `text` begins at `begins` and holds it."""
    start, end = fix["wrong_start"] + shift, fix["wrong_end"] + shift
    wrong = text[start - begins : end - begins]
    return {**fix, "wrong": wrong, "wrong_start": start, "wrong_end": end}


def atoms(faulty: str, corrected: str, fixes: Sequence[Fix]) -> list[Atom]:
    """The fixes in groups that stay or go together; empty where the places do not hold."""
    units = _units(faulty, corrected, fixes)
    if units is None:
        return []
    found: list[Atom] = []
    for unit in units:
        capital, rest = _capital_and_rest(unit.fixes, fixes)
        found += [capital, rest] if capital else [unit.fixes]
    return found


@dataclass(frozen=True, slots=True)
class _Unit:
    """Fixes that share letters, and what they change: a span of each text, spaces included."""

    fixes: Atom
    wrong: tuple[int, int]
    right: tuple[int, int]


_PLACES = ("wrong_start", "wrong_end", "right_start", "right_end")


def _units(faulty: str, corrected: str, fixes: Sequence[Fix]) -> list[_Unit] | None:
    """Fixes that share no letter of either text, left to right; None where the rest differs.

    A word that is left out or too many takes a space with it, so spaces that differ go to a unit.
    """
    if not fixes or any(place not in fix for fix in fixes for place in _PLACES):
        return None
    order = sorted(
        range(len(fixes)), key=lambda n: (fixes[n]["wrong_start"], fixes[n]["right_start"])
    )
    groups: list[list[int]] = []
    ends = (0, 0)
    for n in order:
        fix = fixes[n]
        if groups and (fix["wrong_start"] < ends[0] or fix["right_start"] < ends[1]):
            groups[-1].append(n)
        else:
            groups.append([n])
        ends = (max(ends[0], fix["wrong_end"]), max(ends[1], fix["right_end"]))
    wrong = [_span(fixes, group, "wrong") for group in groups]
    right = [_span(fixes, group, "right") for group in groups]
    for number in range(len(groups) + 1):
        before = number - 1
        gap_wrong = faulty[wrong[before][1] if number else 0 :]
        gap_right = corrected[right[before][1] if number else 0 :]
        if number < len(groups):
            gap_wrong = gap_wrong[: max(0, wrong[number][0] - (wrong[before][1] if number else 0))]
            gap_right = gap_right[: max(0, right[number][0] - (right[before][1] if number else 0))]
        if gap_wrong.strip() != gap_right.strip():
            return None
        first, last = _spaces(gap_wrong), _spaces(gap_right)
        if first[0] != last[0]:
            if not number:
                return None
            wrong[before][1] += first[0]
            right[before][1] += last[0]
        if first[1] != last[1]:
            if number == len(groups):
                return None
            wrong[number][0] -= first[1]
            right[number][0] -= last[1]
    return [
        _Unit(tuple(group), (w[0], w[1]), (r[0], r[1]))
        for group, w, r in zip(groups, wrong, right, strict=True)
    ]


def _span(fixes: Sequence[Fix], group: Sequence[int], side: str) -> list[int]:
    starts = [fixes[n][f"{side}_start"] for n in group]
    return [min(starts), max(fixes[n][f"{side}_end"] for n in group)]


def _spaces(gap: str) -> tuple[int, int]:
    """How many spaces a gap begins and ends with; one of spaces alone only begins with them."""
    begins = len(gap) - len(gap.lstrip())
    return begins, (len(gap) - len(gap.rstrip())) if begins < len(gap) else 0


def _capital_and_rest(unit: Atom, fixes: Sequence[Fix]) -> tuple[Atom, Atom]:
    """A capital can be mended by itself in a word that has another error, too."""
    capitals = tuple(n for n in unit if fixes[n]["skill"].startswith("capital-"))
    rest = tuple(n for n in unit if n not in capitals)
    same = all(
        fixes[n][place] == fixes[unit[0]][place]
        for n in unit
        for place in ("wrong_start", "wrong_end", "right_start", "right_end")
    )
    wrong, right = fixes[unit[0]]["wrong"], fixes[unit[0]]["right"]
    turned = wrong[:1].isalpha() and right[:1].isalpha()
    turned = turned and wrong[:1].isupper() != right[:1].isupper()
    return (capitals, rest) if len(capitals) == 1 and rest and same and turned else ((), ())


def _part(unit: _Unit, mine: Sequence[int], fixes: Sequence[Fix]) -> str | None:
    """The word in which only some of its errors stay: the capital, or all but the capital."""
    capital, rest = _capital_and_rest(unit.fixes, fixes)
    wrong, right = fixes[unit.fixes[0]]["wrong"], fixes[unit.fixes[0]]["right"]
    if capital and tuple(mine) == rest:
        return _first_as(wrong, right)
    if capital and tuple(mine) == capital:
        return _first_as(right, wrong)
    return None


def _first_as(word: str, like: str) -> str:
    first = word[0].upper() if like[0].isupper() else word[0].lower()
    return first + word[1:]


def choose(
    groups: Sequence[Atom],
    fixes: Sequence[Fix],
    errors: int,
    states: Mapping[str, str],
    waited: Mapping[str, int],
) -> tuple[int, ...]:
    """Which errors stay: one of a skill in work, the others mastered, as many as `errors` allows.

    `states` are the learner's skills; `waited` says by how many days a mastered skill is overdue (more
    is more urgent, below 0 it is not due yet). Where too few are mastered, skills that were taught
    fill up, then more in work. A skill that was not taught never stays; where no skill is listed as
    taught or mastered, any that is not listed counts as taught. Empty where nothing can stay.
    """
    listed = any(state in (TAUGHT, MASTERED) for state in states.values())

    def state(group: Atom) -> str:
        mine = {states.get(fixes[n]["skill"], "" if listed else TAUGHT) for n in group}
        for worst in ("", IN_WORK, TAUGHT):
            if worst in mine:
                return worst
        return MASTERED

    def urgency(group: Atom) -> tuple[int, int]:
        return -max(waited.get(fixes[n]["skill"], 0) for n in group), group[0]

    by_state: dict[str, list[Atom]] = {}
    for group in groups:
        by_state.setdefault(state(group), []).append(group)
    work = sorted(by_state.get(IN_WORK, []), key=urgency)
    known = sorted(by_state.get(MASTERED, []), key=urgency)
    taught = sorted(by_state.get(TAUGHT, []), key=urgency)
    kept: list[int] = []
    skills: set[str] = set()
    later: list[Atom] = []
    for group in [*work[:1], *known, *taught, *work[1:]]:
        mine = {fixes[n]["skill"] for n in group}
        if len(kept) + len(group) > errors:
            continue
        # The same skill twice only where there is no other.
        if mine & skills:
            later.append(group)
            continue
        kept += group
        skills |= mine
    for group in later:
        if len(kept) + len(group) <= errors:
            kept += group
    return tuple(sorted(kept))
