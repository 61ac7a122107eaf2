"""One sentence, several doors: versions for learners who are not in one place.

The versions nest: the errors of an easier one are also in every fuller one, so that the board can
show the fullest and every page agrees with it.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field

from bank.edit.fix import Fix
from bank.edit.make.spot import Spot, meet
from bank.edit.planting import held, spots
from bank.edit.tokens import straight
from bank.edit.versions import Comparison, comparison

# So many chains are drawn before the best is taken.
_TRIES = 40


@dataclass(frozen=True, slots=True)
class Door:
    """What one learner needs: how many errors, of which skills.

    `taught` holds all skills that may come up; `mastered` and `in_work` are among them.
    """

    errors: int
    taught: Collection[str]
    mastered: Collection[str] = ()
    in_work: Collection[str] = ()


@dataclass(frozen=True, slots=True)
class Version:
    """A faulty version for one door, its fixes, and what the door asked for that it lacks."""

    faulty: str
    fixes: list[Fix]
    lacks: list[str] = field(default_factory=list)


def doors(corrected: str, wanted: Sequence[Door], seed: int = 0) -> list[Version]:
    """A faulty version of `corrected` for each door, in the order of `wanted`; the versions nest.

    Each has only errors of skills that its learner has been taught, as many as the door says, all
    but one of mastered skills and one of a skill in work, as far as the sentence and the nesting
    allow; what it could not have is said in `lacks`. A sentence without a place for any taught
    skill gives the corrected text itself, with no fixes.
    """
    order = sorted(range(len(wanted)), key=lambda k: (wanted[k].errors, len(wanted[k].taught)))
    lined = [wanted[k] for k in order]
    possible = {
        code: spots(corrected, code) for code in sorted({c for door in wanted for c in door.taught})
    }
    rng = random.Random(f"{seed}|{corrected}")
    drawn = [_chain(lined, possible, rng) for _ in range(_TRIES)]
    drawn.sort(key=lambda chain: -sum(map(_worth, lined, chain)))
    for chain in drawn:
        made = _versions(corrected, lined, chain)
        if made is not None:
            found = dict(zip(order, made, strict=True))
            return [found[k] for k in range(len(wanted))]
    return [Version(corrected, [], _lacks(door, ())) for door in wanted]


def _chain(
    lined: Sequence[Door], possible: dict[str, tuple[Spot, ...]], rng: random.Random
) -> list[tuple[Spot, ...]]:
    """The errors of each door, each holding those of the door before."""
    chosen: list[Spot] = []
    chain: list[tuple[Spot, ...]] = []
    for number, door in enumerate(lined):
        later = lined[number:]
        while len(chosen) < door.errors:
            free = [
                spot
                for code, some in possible.items()
                if all(code in other.taught for other in later)
                for spot in some
                if not meet([*chosen, spot])
            ]
            if not free:
                break
            has_work = any(spot.skill in door.in_work for spot in chosen)
            used = Counter(spot.skill for spot in chosen)
            firsts = [s for s in free if s.skill in door.in_work and not has_work]
            known = [s for s in free if s.skill in door.mastered and s.skill not in door.in_work]
            others = firsts or known or free
            fresh = [s for s in others if not used[s.skill]] or others
            skills = sorted({s.skill for s in fresh})
            pick = rng.choice(skills)
            chosen.append(rng.choice([s for s in fresh if s.skill == pick]))
        chain.append(tuple(chosen))
    return chain


def _worth(door: Door, chosen: Sequence[Spot]) -> float:
    """How well a choice of errors suits a door."""
    work = sum(spot.skill in door.in_work for spot in chosen)
    known = sum(spot.skill in door.mastered and spot.skill not in door.in_work for spot in chosen)
    repeats = len(chosen) - len({spot.skill for spot in chosen})
    return len(chosen) + 2.0 * (work == 1) + known - 0.5 * max(0, work - 1) - 0.25 * repeats


def _versions(
    corrected: str, lined: Sequence[Door], chain: Sequence[tuple[Spot, ...]]
) -> list[Version] | None:
    if not chain or not chain[-1]:
        return None
    fullest = held(corrected, chain[-1])
    if fullest is None:
        return None
    made: list[Version] = []
    for door, chosen in zip(lined, chain, strict=True):
        known = _with_only(fullest, chosen, corrected)
        if known is None:
            return None
        skills = [fix.skill for fix in known.fixes]
        made.append(Version(known.faulty, list(known.fixes), _lacks(door, skills)))
    return made


def _with_only(fullest: Comparison, chosen: Sequence[Spot], corrected: str) -> Comparison | None:
    """The fullest version with all errors mended but those chosen."""
    if not chosen:
        return Comparison(corrected, corrected, (), (), fullest.pieces)
    known = held(corrected, chosen)
    if known is None:
        return None
    wanted = Counter(fix.skill for fix in known.fixes)
    # The board agrees with the page only if mending the rest of the fullest gives this very text.
    rest = Counter(fix.skill for fix in fullest.fixes) - wanted
    mended = []
    for number, fix in enumerate(fullest.fixes):
        same = any((f.right_start, f.skill) == (fix.right_start, fix.skill) for f in known.fixes)
        if not same and rest[fix.skill] > 0:
            mended.append(number)
            rest[fix.skill] -= 1
    return known if fullest.with_fixed(mended) == straight(known.faulty) else None


def _lacks(door: Door, skills: Sequence[str]) -> list[str]:
    lacks = []
    if len(skills) < door.errors:
        lacks.append(f"{len(skills)} of {door.errors} errors")
    if door.in_work and sum(code in door.in_work for code in skills) != 1:
        lacks.append("one error of a skill in work")
    if door.mastered and any(c not in door.mastered and c not in door.in_work for c in skills):
        lacks.append("the others of mastered skills")
    return lacks


def nested(corrected: str, skills: Collection[str], errors: int, seed: int = 0) -> list[Comparison]:
    """Faulty versions with one error, two, … up to `errors`, of `skills` only; each holds the last.

    Raises `ValueError` where the sentence has no place for that many; a skill comes up twice only
    where there are fewer skills than errors.
    """
    found = doors(corrected, [Door(count, skills) for count in range(1, errors + 1)], seed)
    if len(found[-1].fixes) < errors:
        possible = [code for code in sorted(skills) if spots(corrected, code)]
        if possible:
            raise ValueError(f"this sentence has a place only for: {', '.join(possible)}")
        raise ValueError(f"this sentence has no place for: {', '.join(sorted(skills))}")
    return [comparison(version.faulty, corrected) for version in found]


def offers(corrected: str, count: int = 3, seed: int = 0) -> list[Comparison]:
    """Faulty versions to choose from, with one, two, three … errors; each holds the one before.

    Raises `ValueError` where the sentence has no place for any error.
    """
    from bank.skill import SKILLS

    found = doors(corrected, [Door(number, SKILLS) for number in range(1, count + 1)], seed)
    texts = dict.fromkeys(version.faulty for version in found if version.fixes)
    if not texts:
        raise ValueError("this sentence has no place for any error")
    return [comparison(faulty, corrected) for faulty in texts]


__all__ = ["Door", "Version", "doors", "nested", "offers"]
