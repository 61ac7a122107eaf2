"""Who shares what: one item on the board for as many as the bands allow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from bank.learner import Learner

# Bands that meet in less than this many grades share nothing worth the name.
NARROWEST_SHARE = 0.5
# A board hangs in one room: more learners than this are a school, and share by group or not at all.
MOST_IN_A_ROOM = 40


@dataclass(frozen=True, slots=True)
class Circle:
    """Learners who share a slot, and the levels that suit all of them."""

    learners: tuple[Learner, ...]
    low: float
    high: float

    @property
    def codes(self) -> tuple[str, ...]:
        return tuple(learner.code for learner in self.learners)


def circles(learners: Sequence[Learner], scope: str) -> list[Circle]:
    """The learners in circles that share: by class, else group, else own.

    The class shares where more than half of it has bands that meet; the others share in their
    groups; whoever's band stands apart there has their own. The order of `learners` does not matter.
    """
    learners = sorted(learners, key=lambda learner: learner.code)
    if scope == "own":
        return [own(learner) for learner in learners]
    if scope == "class" and len(learners) <= MOST_IN_A_ROOM:
        shared = widest(learners)
        if shared and len(shared.learners) * 2 > len(learners):
            inside = set(shared.codes)
            rest = [learner for learner in learners if learner.code not in inside]
            return [shared, *circles(rest, "group")]
    made = [own(learner) for learner in learners if not learner.group]
    for group in sorted({learner.group for learner in learners if learner.group}):
        members = [learner for learner in learners if learner.group == group]
        shared = widest(members) if len(members) <= MOST_IN_A_ROOM else None
        inside = set(shared.codes) if shared else set()
        made += [shared] if shared else []
        made += [own(learner) for learner in members if learner.code not in inside]
    return made


def own(learner: Learner) -> Circle:
    return Circle((learner,), learner.band.low, learner.band.high)


def widest(learners: Sequence[Learner]) -> Circle | None:
    """The largest circle of two or more whose bands meet; among equals the one that meets widest."""
    best: Circle | None = None
    for low in sorted({learner.band.low for learner in learners}):
        top = low + NARROWEST_SHARE
        inside = [one for one in learners if one.band.low <= low and one.band.high >= top]
        if len(inside) > 1:
            found = Circle(tuple(inside), low, min(one.band.high for one in inside))
            if best is None or _size(found) > _size(best):
                best = found
    return best


def _size(circle: Circle) -> tuple[int, float]:
    return len(circle.learners), circle.high - circle.low
