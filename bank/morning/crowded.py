"""The most even turns where a class is too crowded for perfectly even ones: a beam search.

Where jobs that clash need nearly everybody at once, somebody has a job again before all others
whatever is done, and to give each turn to whoever had it least can let the counts drift further
apart than they need. Here all jobs that clash with one another are gone through, those of a longer
rhythm first, then in the order of time. After each step only the plans are kept that look best (a
beam search, Lowerre 1976): nobody left out, then counts close together, now and as they will be at
the end of each coming week if each turn is shared by all who are free for it. Far apart costs more
than in proportion (the hyperbolic cosine, as in balancing by an exponential potential).
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from math import cosh

from bank.calendar import SchoolCalendar, monday_of
from bank.morning.jobs import DAILY, RHYTHMS, Job
from bank.morning.rota import Facts, Rota
from bank.morning.steps import steps_from, tallies_of, that_clash
from bank.morning.tally import Record, Tally

# So many plans are kept after a step, and of each way to give out the longer jobs so many.
_WIDTH = 60
_OF_A_KIND = 12
# So many ways to give out the jobs of one step are looked at.
_WAYS = 150
_STEEP = 0.7
_MEMBERS, _PLACES = 7, 6


Fixed = dict[tuple[str, date], list[str]]


def evened(
    record: Record, week: list[date], calendar: SchoolCalendar, ahead: Mapping[str, int]
) -> Fixed:
    """More even turns in `week` where the best plan so far is uneven, by job and first day.

    `record` holds what is posted and goes on, `ahead` for each job how many more turns one has than
    another in that plan. Only small groups of clashing jobs are tried, for which a search among
    many plans is quick.
    """
    fixed: Fixed = {}
    for cluster in that_clash(record.settings.jobs):
        uneven = max(ahead.get(job.code, 0) for job in cluster)
        places = sum(job.places for job in cluster)
        if uneven > 1 and len(record.settings.members) <= _MEMBERS and places <= _PLACES:
            fixed |= most_even(*_slots(record, cluster, week, calendar), uneven)
    return fixed


@dataclass(frozen=True, slots=True, eq=False)
class Slot:
    """One turn of one job that has free places: on which days, and what the record says of it."""

    job: Job
    first: date
    days: frozenset[date]
    facts: Facts


Held = tuple[Job, str, frozenset[date]]
Taken = Sequence[tuple[Slot, str | None]]


@dataclass(frozen=True, slots=True)
class _Plan:
    """A plan up to some step: what went wrong in it, and the counts that it leaves."""

    tallies: Mapping[str, Tally]
    nobody: int = 0
    worst: int = 0
    again: int = 0
    drift: float = 0.0
    held: tuple[Held, ...] = ()
    kind: tuple[tuple[str, ...], ...] = ()
    given: tuple[tuple[str, date, str], ...] = ()

    def worth(self) -> tuple[float, ...]:
        return self.nobody, self.drift, self.again

    def end(self) -> tuple[float, ...]:
        return self.nobody, self.worst, self.again, self.drift

    def sign(self) -> object:
        """What counts of a plan for all that comes later."""
        levels = []
        for job, tally in self.tallies.items():
            least = min(tally.levels.values(), default=0)
            levels.append((job, tuple(level - least for level in tally.levels.values())))
        return tuple(levels), tuple((job.code, who, days) for job, who, days in self.held)


def most_even(slots: Sequence[Slot], tallies: Mapping[str, Tally], worst: int) -> Fixed:
    """Who has which turn of `slots`, by job and first day, with a difference below `worst`.

    Empty where no such plan is found. `slots` are turns of jobs that clash with one another.
    """
    best: _Plan | None = None
    while worst > 1:
        found = _Search(slots, worst - 1).best(tallies)
        if found is None or (best is not None and found.end() >= best.end()):
            break
        best, worst = found, found.worst
    chosen: Fixed = defaultdict(list)
    for job, first, learner in best.given if best else ():
        chosen[job, first].append(learner)
    return dict(chosen)


def _slots(
    record: Record, cluster: Sequence[Job], week: list[date], calendar: SchoolCalendar
) -> tuple[list[Slot], dict[str, Tally]]:
    """The turns of clashing jobs that begin in `week`, with who could take them, and the tallies."""
    slots: list[Slot] = []
    tallies: dict[str, Tally] = {}
    for rhythm in RHYTHMS:
        together = [job for job in cluster if job.turn_length == rhythm]
        if not together:
            continue
        tallies |= tallies_of(record, together, week)
        rota = Rota(record, together, tallies)
        rota.steps = steps_from(together, week, calendar, look_ahead=False)
        for step in rota.steps:
            for job in together:
                facts = rota.facts(job, step)
                if facts is not None:
                    # The first days of a long turn may have been given out: only the rest binds.
                    days = frozenset(day for day in step.days if rota.is_free(job, day))
                    slots.append(Slot(job, step.first, days, facts))
    return slots, tallies


class _Search:
    """A search for plans of `slots` in which no count is more than `limit` ahead."""

    def __init__(self, slots: Sequence[Slot], limit: int) -> None:
        self.slots = slots
        self.limit = limit

    def best(self, tallies: Mapping[str, Tally]) -> _Plan | None:
        plans = [_Plan({job: tally.copy() for job, tally in tallies.items()})]
        for layer in self._layers:
            plans = _fittest(child for plan in plans for child in self._carry_on(plan, layer))
            if not plans:
                return None
        return min(plans, key=_Plan.end)

    @cached_property
    def _layers(self) -> list[list[Slot]]:
        """The slots that begin together: those of longer jobs first, then in order of time."""
        layers: dict[tuple[int, date], list[Slot]] = defaultdict(list)
        for slot in self.slots:
            layers[_order(slot)].append(slot)
        return [layers[key] for key in sorted(layers)]

    @cached_property
    def _of_job(self) -> dict[str, list[Slot]]:
        """The slots of each job, in order of time."""
        of_job: dict[str, list[Slot]] = defaultdict(list)
        for slot in sorted(self.slots, key=lambda slot: slot.first):
            of_job[slot.job.code].append(slot)
        return of_job

    def _carry_on(self, plan: _Plan, layer: Sequence[Slot]) -> Iterator[_Plan]:
        """The plans that give out `layer` after `plan`."""
        tallies = dict(plan.tallies)
        for slot in layer:
            tallies[slot.job.code] = tally = tallies[slot.job.code].copy()
            tally.open(slot.facts.in_class)
        places = [slot for slot in layer for _ in range(slot.facts.free)]
        open_to = [_open_to(plan, slot, tallies[slot.job.code]) for slot in places]
        for taken in _ways(places, open_to):
            child = self._child(plan, tallies, list(zip(places, taken, strict=True)), open_to)
            if child is not None:
                yield child

    def _child(
        self,
        plan: _Plan,
        tallies: Mapping[str, Tally],
        taken: Taken,
        open_to: Sequence[Sequence[str]],
    ) -> _Plan | None:
        """`plan` with the turns of one layer, or None where a rule is broken without need."""
        nobody, worst, again = plan.nobody, plan.worst, plan.again
        for (slot, learner), free in zip(taken, open_to, strict=True):
            if learner is None:
                nobody += 1
                continue
            levels = tallies[slot.job.code].levels
            fewer = [code for code in slot.facts.here if levels[code] < levels[learner]]
            if not fewer:
                continue
            ahead = levels[learner] + 1 - min(levels[code] for code in fewer)
            elsewhere = {who for other, who in taken if other.job.clashes(slot.job)}
            if ahead > self.limit or any(c in free and c not in elsewhere for c in fewer):
                return None
            worst, again = max(worst, ahead), again + 1
        after = dict(tallies)
        for slot in dict.fromkeys(slot for slot, _ in taken):
            after[slot.job.code] = tally = after[slot.job.code].copy()
            for other, learner in taken:
                if other is slot and learner is not None and slot.facts.is_a_turn:
                    tally.give(learner, slot.first)
            tally.forgive(slot.facts.here)
        held, kind = _held(plan, taken)
        given = plan.given + tuple(
            (s.job.code, s.first, who) for s, who in taken if who is not None
        )
        drift = self._drift(after, held, taken[0][0])
        return _Plan(after, nobody, worst, again, drift, held, kind, given)

    def _drift(self, tallies: Mapping[str, Tally], held: Sequence[Held], at: Slot) -> float:
        """How far the counts are apart now, and will be at the end of each week to come."""
        total = 0.0
        for code, tally in tallies.items():
            levels = {who: float(level) for who, level in tally.levels.items()}
            total += _apart(levels)
            coming = [slot for slot in self._of_job.get(code, ()) if _order(slot) > _order(at)]
            for number, slot in enumerate(coming, start=1):
                busy = _busy(held, slot)
                free = [who for who in slot.facts.prices if who not in busy and who in levels]
                for who in free:
                    levels[who] += min(1.0, slot.facts.free / len(free))
                after = coming[number].first if number < len(coming) else None
                if after is None or monday_of(after) != monday_of(slot.first):
                    total += _apart(levels)
        return total


def _order(slot: Slot) -> tuple[int, date]:
    return -RHYTHMS.index(slot.job.turn_length), slot.first


def _fittest(plans: Iterable[_Plan]) -> list[_Plan]:
    """The best of the plans, but not too many that give the longer jobs alike."""
    kept: list[_Plan] = []
    kinds: dict[object, int] = defaultdict(int)
    known: set[object] = set()
    for plan in sorted(plans, key=_Plan.worth):
        sign = plan.sign()
        if kinds[plan.kind] >= _OF_A_KIND or sign in known:
            continue
        known.add(sign)
        kinds[plan.kind] += 1
        kept.append(plan)
        if len(kept) == _WIDTH:
            break
    return kept


def _open_to(plan: _Plan, slot: Slot, tally: Tally) -> list[str]:
    """Those who can take `slot`, whoever had it least first."""
    busy = _busy(plan.held, slot)
    free = [code for code in slot.facts.prices if code not in busy]
    if slot.job.in_charge:
        beside = {*slot.facts.beside, *(who for job, who, _ in plan.held if job is slot.job)}
        free = [code for code in free if code not in beside] or free
    return sorted(free, key=tally.levels.__getitem__)


def _busy(held: Iterable[Held], slot: Slot) -> set[str]:
    """Those who have a clashing job on the days of `slot`."""
    return {
        who
        for job, who, days in held
        if job is not slot.job and job.clashes(slot.job) and not days.isdisjoint(slot.days)
    }


def _held(plan: _Plan, taken: Taken) -> tuple[tuple[Held, ...], tuple[tuple[str, ...], ...]]:
    """Who is busy after a layer, and how the longer jobs are given out so far."""
    new = tuple((slot.job, who, slot.days) for slot, who in taken if who is not None)
    if any(slot.job.turn_length != DAILY for slot, _ in taken):
        return plan.held + new, (*plan.kind, tuple(who or "" for _, who in taken))
    day = taken[0][0].first
    return tuple(one for one in plan.held if max(one[2]) > day) + new, plan.kind


def _ways(
    places: Sequence[Slot], open_to: Sequence[Sequence[str]]
) -> Sequence[Sequence[str | None]]:
    """The ways to fill `places` with different learners where they clash, as full as can be."""
    order = sorted(range(len(places)), key=lambda n: len(open_to[n]))
    found: list[Sequence[str | None]] = []
    taken: dict[int, str | None] = {}

    def fill(at: int, empty: int) -> None:
        if len(found) >= _WAYS:
            return
        if at == len(order):
            found.append([taken[n] for n in range(len(places))])
            return
        here = order[at]
        others = [n for n in order[:at] if places[n].job.clashes(places[here].job)]
        for code in open_to[here]:
            if any(taken[n] == code for n in others):
                continue
            taken[here] = code
            fill(at + 1, empty)
        if empty:
            taken[here] = None
            fill(at + 1, empty - 1)

    for empty in range(len(places) + 1):
        fill(0, empty)
        if found:
            break
    return found


def _apart(levels: Mapping[str, float]) -> float:
    """How far the counts of one job are apart."""
    mean = sum(levels.values()) / max(1, len(levels))
    return sum(cosh(_STEEP * (level - mean)) - 1 for level in levels.values())
