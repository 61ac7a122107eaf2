"""What to take among items that may be taken: the rules of a good set, written once.

The season that ends first goes first (earliest deadline first fills the most slots when seasons are
windows: F. Glover, "Maximum matching in a convex bipartite graph", Naval Research Logistics
Quarterly 14, 1967), but no season brings a sentence whose errors a learner was not taught to mend,
where there is one that can be done. Among equals, question words and themes are mixed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from heapq import nsmallest

from bank.store_sets import Candidate

# How many of those who share can do something with a candidate, and how much it serves them in all.
Service = Callable[[Candidate], tuple[int, float]]
MOST_OF_A_THEME = 2  # in one set
NO_SEASON = 10_000  # days: later than any season's end


@dataclass(slots=True)
class Mixture:
    """What a set holds so far, and what it should hold more of.

    `tired` are themes of the last two school days: a third day running is too many. `goals` are
    weights by question word (2.0: twice as often), `had` the question words of the week so far.
    """

    tired: frozenset[str] = frozenset()
    goals: Mapping[str, float] = field(default_factory=dict)
    had: Counter[str] = field(default_factory=Counter)
    words: Counter[str] = field(default_factory=Counter)
    themes: Counter[str] = field(default_factory=Counter)

    def take(self, candidate: Candidate) -> None:
        self.words[candidate.question_word] += 1
        self.themes[candidate.theme] += 1

    def too_much(self, candidate: Candidate) -> bool:
        """Whether the theme was there twice in this set or on the last two school days."""
        theme = candidate.theme
        return bool(theme) and (self.themes[theme] >= MOST_OF_A_THEME or theme in self.tired)

    def crowding(self, candidate: Candidate) -> tuple[float, int, int]:
        """How often the candidate's question word and theme are there already.

        Goals are for the week. Without them each set is mixed first, and what the week had more of
        only decides which word a set does without.
        """
        word, themes = candidate.question_word, self.themes[candidate.theme]
        if self.goals:
            return (self.words[word] + self.had[word] + 1) / self.goals.get(word, 1.0), themes, 0
        return self.words[word], themes, self.had[word]


def serves_all_alike(candidate: Candidate) -> tuple[int, float]:
    return 0, 0.0


def best_two(
    candidates: Iterable[Candidate],
    mixture: Mixture,
    start: int,
    service: Service = serves_all_alike,
) -> list[Candidate]:
    """The one to take and the one it is chosen over, as far as there are any.

    What was seen longest ago, then what more of them can do, then season, then what serves most, then
    what mixes, then the shuffle.
    """

    def order(candidate: Candidate) -> tuple[object, ...]:
        ends_in = NO_SEASON if candidate.ends_in is None else candidate.ends_in
        can, serves = service(candidate)
        return (
            candidate.last_seen or "",
            -can,
            ends_in,
            -serves,
            *mixture.crowding(candidate),
            (candidate.place - start) % 2**62,
            candidate.item,
        )

    return nsmallest(2, candidates, key=order)
