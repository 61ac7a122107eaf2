"""A learner's own faulty version: which errors of the fullest one stay, by what is known of skills.

The errors that stay are all errors of the fullest version, so the board, which shows that one, agrees
with every page. Plain string work on the fixes that were stored; nothing is parsed when a set is
drawn.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
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
        first = fixes[unit[0]]
        wrong_start, right_start = first["wrong_start"], first["right_start"]
        wrong_end = max(fixes[n]["wrong_end"] for n in unit)
        right_end = max(fixes[n]["right_end"] for n in unit)
        wrong, right = faulty[wrong_start:wrong_end], corrected[right_start:right_end]
        mine = [n for n in unit if n in keep]
        text = _text(wrong, right, unit, mine, fixes)
        if text is None:
            return None
        made += faulty[at:wrong_start]
        shift = len(made) - wrong_start
        for n in mine:
            start, end = fixes[n]["wrong_start"] + shift, fixes[n]["wrong_end"] + shift
            if len(mine) < len(unit):
                start, end = len(made), len(made) + len(text)
            kept.append(
                {
                    **fixes[n],
                    "wrong": (made + text)[start:end],
                    "wrong_start": start,
                    "wrong_end": end,
                }
            )
        made += text
        at = wrong_end
    return made + faulty[at:], kept


def atoms(faulty: str, corrected: str, fixes: Sequence[Fix]) -> list[Atom]:
    """The fixes in groups that stay or go together; empty where the places do not hold."""
    units = _units(faulty, corrected, fixes)
    if units is None:
        return []
    found: list[Atom] = []
    for unit in units:
        capital, rest = _capital_and_rest(unit, fixes)
        found += [capital, rest] if capital else [unit]
    return found


def _units(faulty: str, corrected: str, fixes: Sequence[Fix]) -> list[Atom] | None:
    """Fixes that share no letter of either text, left to right; None where the rest differs."""
    places = ("wrong_start", "wrong_end", "right_start", "right_end")
    if not fixes or any(place not in fix for fix in fixes for place in places):
        return None
    order = sorted(
        range(len(fixes)), key=lambda n: (fixes[n]["wrong_start"], fixes[n]["right_start"])
    )
    units: list[list[int]] = []
    ends = (0, 0)
    for n in order:
        fix = fixes[n]
        overlaps = fix["wrong_start"] < ends[0] or fix["right_start"] < ends[1]
        if units and overlaps:
            units[-1].append(n)
        else:
            units.append([n])
        ends = (max(ends[0], fix["wrong_end"]), max(ends[1], fix["right_end"]))
    at_wrong = at_right = 0
    for unit in units:
        wrong_start = min(fixes[n]["wrong_start"] for n in unit)
        right_start = min(fixes[n]["right_start"] for n in unit)
        same_start = fixes[unit[0]]["right_start"] == right_start
        if not same_start or faulty[at_wrong:wrong_start] != corrected[at_right:right_start]:
            return None
        at_wrong = max(fixes[n]["wrong_end"] for n in unit)
        at_right = max(fixes[n]["right_end"] for n in unit)
    return [tuple(unit) for unit in units] if faulty[at_wrong:] == corrected[at_right:] else None


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


def _text(
    wrong: str, right: str, unit: Atom, mine: Sequence[int], fixes: Sequence[Fix]
) -> str | None:
    """What stands at a unit when only `mine` of its errors stay."""
    if not mine:
        return right
    if len(mine) == len(unit):
        return wrong
    capital, rest = _capital_and_rest(unit, fixes)
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
