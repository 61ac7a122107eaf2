"""The ladder: where an item is looked for, so that a page for a learner alone is full.

Unseen in the band; then unseen and easier; then in the band or easier, the one seen longest ago.
Never harder than the band, never an avoided theme, never out of season, never a draft, never a twin
of what was seen lately. For one who circles, on each of the first two rungs what has choices first.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from bank.choose.mix import Mixture, Service, best_two, serves_all_alike
from bank.store import Store
from bank.store_items import twins_of
from bank.store_sets import Candidate, Want, seen_before, unseen

IN_BAND, EASIER, SEEN = 1, 2, 3
# Candidates from each tenth of a grade: enough to mix, and bounded for a large bank.
ENOUGH, FEWEST_EACH = 160, 8
ALL = 10**6

# What was chosen, from which rung, and the ids of the next best that it was chosen over.
Choice = tuple[Candidate, int, tuple[str, ...]]


def climb_down(
    store: Store,
    want: Want,
    count: int,
    mixture: Mixture,
    service: Service = serves_all_alike,
) -> list[Choice]:
    """Up to `count` items, each with its rung and the ids of the next best that it was chosen over."""
    taken: list[Choice] = []
    barred = set(want.but_not)
    steps = [(rung, False) for rung in (IN_BAND, EASIER, SEEN)]
    if want.to_circle:
        steps = [(IN_BAND, True), (IN_BAND, False), (EASIER, True), (EASIER, False), (SEEN, False)]
    for rung, to_circle in steps:
        for each in (None, ALL):
            wanted = replace(want, but_not=frozenset(barred), to_circle=to_circle)
            for some in _step(store, wanted, rung, each):
                while len(taken) < count:
                    free = [found for found in some if found.item not in barred]
                    fresh = [found for found in free if not mixture.too_much(found)]
                    # Where the themes of all are too much, one of them: a full page first. Choices
                    # are no reason for that while others are left to look at.
                    offered = fresh if to_circle else fresh or free
                    first = best_two(offered, mixture, want.start, service)
                    if not first:
                        break
                    chosen, over = first[0], tuple(found.item for found in first[1:])
                    mixture.take(chosen)
                    barred.add(chosen.item)
                    barred.update(twins_of(store, chosen.item))
                    taken.append((chosen, rung, over))
                if len(taken) == count:
                    break
            if len(taken) == count:
                return taken
    return taken


def _step(store: Store, want: Want, rung: int, each: int | None) -> Iterator[list[Candidate]]:
    """The candidates of one rung in the order in which they may be taken; `each` None: enough to mix.

    In the band all tenths of a grade are offered together, to mix among them; below it one tenth
    after the other, so that what is easier is only as much easier as it must be.
    """
    if rung == IN_BAND:
        yield _in_band(store, want, each)
    elif rung == EASIER:
        yield from unseen(store, replace(want, low=0.0, high=want.low), each or ENOUGH)
    else:
        yield seen_before(store, want, each or ENOUGH)


def _in_band(store: Store, want: Want, each: int | None) -> list[Candidate]:
    if each:
        return [found for tenth in unseen(store, want, each) for found in tenth]
    few = max(FEWEST_EACH, int(ENOUGH / (10 * (want.high - want.low) + 1)))
    tenths = list(unseen(store, want, few))
    cut_short = any(len(tenth) >= few for tenth in tenths)
    if cut_short and sum(map(len, tenths)) < ENOUGH:
        tenths = list(unseen(store, want, ENOUGH))  # the items stand close together
    return [found for tenth in tenths for found in tenth]
