"""A quick bound on what two asks can share, so that most pairs of a bank need not be laid side by side."""

from __future__ import annotations

from functools import lru_cache

from bank.choose.ask.align import LIGHT, Frame
from bank.choose.ask.lexicon import lexicon
from bank.choose.ask.relations import stem

# Less of one of the texts than this can be matched or explained: another ask.
LEAST_COVERED = 0.2
_KEPT = 1 << 15
Names = tuple[str, ...]


def little_in_common(a: Frame, b: Frame) -> bool:
    """Whether, at best, too little of one of the texts is said or brought along by the other.

    Never less than the full comparison finds: each idea that stands in any relation to the other
    text counts as matched.
    """
    ideas_a, ideas_b = _ideas(a), _ideas(b)
    return _covered(ideas_a, ideas_b) < LEAST_COVERED or _covered(ideas_b, ideas_a) < LEAST_COVERED


def _ideas(frame: Frame) -> tuple[tuple[Names, float], ...]:
    return tuple(
        (
            tuple(n for names in (atom[0], *(part[0] for part in atom[3])) for n in names),
            atom[1],
        )
        for atom in frame["atoms"]
        if atom[0][0] != "you"
    )


def _covered(own: tuple[tuple[Names, float], ...], other: tuple[tuple[Names, float], ...]) -> float:
    met, reached = _of_text(tuple(names for names, _ in other))
    whole = common = 0.0
    for names, weight in own:
        weight = max(weight, LIGHT / 2)
        whole += weight
        own_met, own_reached = _of_text((names,))
        if not (own_met.isdisjoint(reached) and met.isdisjoint(own_reached)):
            common += weight
    return common / whole if whole else 0.0


@lru_cache(maxsize=_KEPT)
def _of_text(ideas: tuple[Names, ...]) -> tuple[frozenset[str], frozenset[str]]:
    """What the ideas are called, and all that they may meet: stems, kinds, what they bring along."""
    lex = lexicon()
    called = {name for names in ideas for name in names}
    called |= {"~" + stem(name) for name in called}
    reached = set(called)
    for name in list(called):
        reached |= lex.kinds.get(name, frozenset()) | lex.related.get(name, frozenset())
    return frozenset(called), frozenset(reached)
