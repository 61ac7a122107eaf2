"""The keyboard once a week for everybody who can: a matching of learners to the days of a week.

Learners are taken in the order in which they have had it least, and places are moved about by
augmenting paths, so that as many as possible have a place and the ones left out had it most
(the matched sets of a bipartite graph form a matroid, so this greedy order is the best there is).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date


def match_places(
    learners: Sequence[str], days: Mapping[str, Sequence[date]], places: Mapping[date, int]
) -> dict[str, date]:
    """A day for each learner who can have one.

    `learners` stand in order of right; `days` are those on which each can, best liked first;
    `places` are free on each day.

    >>> monday, tuesday = date(2026, 9, 7), date(2026, 9, 8)
    >>> can = {"K1": [monday, tuesday], "K2": [monday]}
    >>> match_places(["K1", "K2"], can, {monday: 1, tuesday: 1})
    {'K1': datetime.date(2026, 9, 8), 'K2': datetime.date(2026, 9, 7)}
    """
    on: dict[date, list[str]] = defaultdict(list)

    def place(learner: str, tried: set[date]) -> bool:
        wanted = [day for day in days[learner] if day not in tried]
        for day in wanted:
            if len(on[day]) < places.get(day, 0):
                on[day].append(learner)
                return True
        for day in wanted:
            if day in tried:
                continue
            tried.add(day)
            for other in list(on[day]):
                on[day].remove(other)
                if place(other, tried):
                    on[day].append(learner)
                    return True
                on[day].append(other)
        return False

    for learner in learners:
        place(learner, set())
    found = {learner: day for day, those in on.items() for learner in those}
    return {learner: found[learner] for learner in learners if learner in found}
