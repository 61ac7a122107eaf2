"""How items went: counts, and which went worse than their level says. No model is fitted to that.

Eight learners see an item once each. So each learner is their own measure: what they do alone on other
items of the same kind and about the same level says what was to be expected of this one.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

NEAR = 1.0  # grades within which another item is of about the same level
FEWEST_NEAR = 5  # with fewer of those, all items of the kind are the measure
FEWEST_LEARNERS = 3  # of fewer nothing is said
SHORT_BY = 1.0  # so many learners fewer than expected are worth a look


@dataclass(frozen=True, slots=True)
class Given:
    """One learner had one item once. `alone` and `done` are how it went; fixes only for sentences."""

    item: str
    learner: int
    kind: str
    grade: float
    done: bool
    alone: bool
    fixes: int = 0
    missed: int = 0


@dataclass(frozen=True, slots=True)
class Evidence:
    """One item's counts. `expected` is how many of those who had it would have done it alone."""

    item: str
    kind: str
    grade: float
    given: int
    alone: int
    helped: int
    not_done: int
    fixes: int
    missed: int
    swapped: int
    expected: float
    objection: str = ""
    text: str = ""

    @property
    def goes_worse(self) -> bool:
        """Whether fewer did it alone than expected, by a learner or more; or somebody objected."""
        enough = self.given >= FEWEST_LEARNERS
        return enough and self.expected - self.alone >= SHORT_BY

    @property
    def needs_a_look(self) -> bool:
        return self.goes_worse or bool(self.objection) or self.swapped > 1


def evidence(
    given: Sequence[Given],
    swapped: Iterable[str] = (),
    objections: Mapping[str, str] | None = None,
    forgotten: Mapping[str, Mapping[str, int]] | None = None,
) -> list[Evidence]:
    """One line for each item that was marked, swapped away or objected to; the furthest off first.

    `forgotten` are the counts that learners left who are no longer kept: they count in the counts,
    and as they went in what was to be expected.
    """
    away: dict[str, int] = defaultdict(int)
    for item in swapped:
        away[item] += 1
    objected = objections or {}
    mine: dict[tuple[int, str], list[Given]] = defaultdict(list)
    by_item: dict[str, list[Given]] = defaultdict(list)
    for one in given:
        mine[one.learner, one.kind].append(one)
        by_item[one.item].append(one)
    found = []
    left = forgotten or {}
    for item in dict.fromkeys([*by_item, *away, *objected, *left]):
        had = by_item.get(item, [])
        more = left.get(item, {})
        found.append(
            Evidence(
                item,
                had[0].kind if had else "",
                had[0].grade if had else 0.0,
                len(had) + more.get("given", 0),
                sum(one.alone for one in had) + more.get("alone", 0),
                sum(one.done and not one.alone for one in had) + more.get("helped", 0),
                sum(not one.done for one in had) + more.get("not_done", 0),
                sum(one.fixes for one in had) + more.get("fixes", 0),
                sum(one.missed for one in had) + more.get("missed", 0),
                away.get(item, 0),
                sum(_expected(one, mine[one.learner, one.kind]) for one in had)
                + more.get("alone", 0),
                objected.get(item, ""),
            )
        )
    return sorted(found, key=lambda one: (one.alone - one.expected, -one.swapped, one.item))


def _expected(one: Given, all_mine: Sequence[Given]) -> float:
    """The share of this learner's other items of the kind, near this level, that were done alone."""
    others = [other for other in all_mine if other.item != one.item]
    near = [other for other in others if abs(other.grade - one.grade) <= NEAR]
    measure = near if len(near) >= FEWEST_NEAR else others
    if not measure:
        return 1.0 if one.alone else 0.0
    return sum(other.alone for other in measure) / len(measure)
