"""A faulty version with exactly the errors that were asked for."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache

from bank.edit.fix import Fix
from bank.edit.look import Sentence
from bank.edit.make import (
    capitals,
    homophones,
    marks,
    nouns,
    order,
    small_words,
    spelling,
    verbs,
)
from bank.edit.make.rude import is_rude
from bank.edit.make.spot import Spot, carry_out, meet
from bank.edit.tokens import straight, tokens
from bank.edit.versions import Comparison, comparison
from bank.skill import skill

_MAKERS: tuple[Callable[[Sentence], Iterator[Spot]], ...] = (
    capitals.small_letters,
    capitals.big_letters,
    marks.end_marks,
    marks.commas,
    marks.talking_marks,
    marks.dots,
    marks.apostrophes,
    verbs.other_number,
    verbs.child_forms,
    verbs.wrong_part,
    verbs.form_after_helper,
    nouns.wrong_plurals,
    nouns.wrong_articles,
    small_words.wrong_pronouns,
    small_words.wrong_comparisons,
    small_words.second_no,
    order.words_left_out,
    order.words_doubled,
    order.words_exchanged,
    order.sentences_joined,
    order.spaces,
    spelling.wrong_letters,
    homophones.same_sound,
)
# So many ways to combine are tried before a wish is refused.
_TRIES = 60


@lru_cache(maxsize=512)
def _candidates(corrected: str) -> dict[str, tuple[Spot, ...]]:
    """Every error that a maker proposes for `corrected`, by skill; none is tried out yet."""
    sentence = Sentence((), tokens(corrected), corrected)
    found: dict[str, dict[Spot, None]] = {}
    for maker in _MAKERS:
        for spot in maker(sentence):
            found.setdefault(spot.skill, {})[spot] = None
    return {code: tuple(some) for code, some in found.items()}


@lru_cache(maxsize=4096)
def spots(corrected: str, code: str) -> tuple[Spot, ...]:
    """The errors of one skill that can be made in `corrected`; each is tried out by itself."""
    proposed = _candidates(corrected).get(code, ())
    return tuple(spot for spot in proposed if held(corrected, (spot,)))


def held(corrected: str, chosen: Sequence[Spot]) -> Comparison | None:
    """The comparison, where it finds exactly the errors made and can undo each of them."""
    if meet(chosen):
        return None
    faulty = carry_out(corrected, chosen)
    known = {token.key for token in tokens(corrected)}
    if any(token.key not in known and is_rude(token.key) for token in tokens(faulty)):
        return None
    try:
        found = comparison(faulty, corrected)
    except ValueError:
        return None
    wanted = Counter(spot.skill for spot in chosen)
    if Counter(fix.skill for fix in found.fixes) != wanted:
        return None
    if not all(_is_found(spot, found) for spot in chosen):
        return None
    everything = range(len(found.fixes))
    if found.with_fixed(everything) != straight(corrected):
        return None
    if found.with_fixed(()) != straight(faulty):
        return None
    return found


def _is_found(spot: Spot, found: Comparison) -> bool:
    """Whether a fix of the skill stands where the error was made."""
    start = min(edit[0] for edit in spot.edits)
    end = max(edit[1] for edit in spot.edits)
    return any(
        fix.skill == spot.skill and fix.right_start <= end + 1 and fix.right_end >= start - 1
        for fix in found.fixes
    )


def places(corrected: str) -> list[str]:
    """The skills whose errors `corrected` has a place for, in the order of the table.

    >>> "tense" in places("We went home."), "comma-date" in places("We went home.")
    (True, False)
    """
    from bank.skill import SKILLS

    return [code for code in SKILLS if spots(corrected, code)]


def plant(corrected: str, skills: Sequence[str], seed: int = 0) -> str:
    """A faulty version of `corrected` with exactly one error for each of `skills`.

    The same seed gives the same text. Raises `ValueError` where the sentence has no place for a
    skill, or not for all of them together.

    >>> plant("I saw you.", ["capital-i"])
    'i saw you.'
    """
    return plant_fixes(corrected, skills, seed)[0]


def plant_fixes(corrected: str, skills: Sequence[str], seed: int = 0) -> tuple[str, list[Fix]]:
    """As `plant`, with the fixes that belong to the errors made."""
    made = planted(corrected, skills, seed)
    return made.faulty, list(made.fixes)


def planted(corrected: str, skills: Sequence[str], seed: int = 0) -> Comparison:
    """As `plant`, with all that is known of the pair."""
    for code in skills:
        skill(code)
    possible = {code: spots(corrected, code) for code in skills}
    lacking = [code for code, count in Counter(skills).items() if len(possible[code]) < count]
    if lacking:
        raise ValueError(f"this sentence has no place for: {', '.join(lacking)}")
    rng = random.Random(f"{seed}|{corrected}|{','.join(skills)}")
    for _ in range(_TRIES):
        chosen = _choose(possible, skills, rng)
        if chosen is not None and (made := held(corrected, chosen)) is not None:
            return made
    raise ValueError(f"this sentence has no place for: {', '.join(skills)} together")


def _choose(
    possible: dict[str, tuple[Spot, ...]], skills: Sequence[str], rng: random.Random
) -> list[Spot] | None:
    """One spot for each skill that do not meet; the skill with the fewest spots chooses first."""
    chosen: list[Spot] = []
    for code in sorted(skills, key=lambda code: len(possible[code])):
        free = [spot for spot in possible[code] if not meet([*chosen, spot])]
        if not free:
            return None
        chosen.append(rng.choice(free))
    return chosen
