"""Who takes which job next: the turns of jobs with one rhythm, planned ahead.

Each step gives every job that begins a turn to a learner who had it least, so that nobody has a job
again before all others have had it; among those, to the one who waits longest. Jobs that clash are
given out together. So that no round ends with the last learner of two clashing jobs being the same,
the plan looks ahead to the end of the rounds, gives learners with little room first, and where it
runs into a dead end starts again with that learner earlier ("squeaky wheel", Joslin and Clements
1999), or in another order by chance. Only what no plan found could keep is broken, as little as can
be, and is named.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from bank.morning.jobs import RHYTHMS, Job
from bank.morning.tally import Record, Tally, mostly_here

# One more turn than another costs more than any wish about the order; the same learner in charge
# two days running costs more than that.
_AGAIN = 1_000_000
_RUNNING = 100_000_000
_NO_ROOM = 5_000
_WAITS = 100
_LATER = 2_000
_HAD = 15
_EMPTY = 10_000_000_000
# The plan is started again this often without getting further, first with those who were overlooked
# earlier, then by chance, before it is taken as it is.
_ATTEMPTS = 8
_BY_CHANCE = 2
_NODES = 1_500


@dataclass(frozen=True, slots=True)
class Step:
    """One turn's stretch of days, the same for all jobs of a rhythm."""

    first: date
    days: tuple[date, ...]


@dataclass(slots=True)
class Given:
    """What a step gives out: `learner` (or nobody) has `job`, past those `overlooked`."""

    step: Step
    job: Job
    learner: str | None
    overlooked: tuple[str, ...] = ()
    in_the_way: dict[str, Job] = field(default_factory=dict)
    ahead: int = 0
    """How many more turns the learner then has than whoever of those here has fewest."""

    @property
    def keeps_the_rules(self) -> bool:
        return self.learner is not None and not self.overlooked


@dataclass(slots=True)
class _Choice:
    """Those who could take one place of a job at a step, with what each would cost."""

    job: Job
    costs: dict[str, float]
    levels: dict[str, int]


@dataclass(frozen=True, slots=True)
class Facts:
    """Who is in class and here, and what those free of clashes have to do anyway."""

    in_class: list[str]
    here: list[str]
    prices: dict[str, float]
    free: int
    beside: list[str]
    is_a_turn: bool


class Rota:
    """The plan of jobs that clash with one another, all of one rhythm."""

    def __init__(
        self,
        record: Record,
        jobs: Sequence[Job],
        tallies: dict[str, Tally],
        later_with: Mapping[tuple[str, str], int] | None = None,
        fixed: Mapping[tuple[str, date], Sequence[str]] | None = None,
    ) -> None:
        self.record = record
        self.fixed = fixed
        self.jobs = list(jobs)
        self.tallies = tallies
        rhythms = [RHYTHMS.index(job.turn_length) for job in jobs]
        self.shorter = [
            job
            for job in record.settings.jobs
            if RHYTHMS.index(job.turn_length) < min(rhythms) and any(job.clashes(j) for j in jobs)
        ]
        self.later = {pair: -_LATER * times for pair, times in (later_with or {}).items()}
        self.urgent = dict(self.later)
        self.steps: list[Step] = []
        self._known: dict[tuple[str, date], Facts | None] = {}

    def plan(self, steps: Sequence[Step], until: date | None = None) -> list[Given]:
        """The turns of `steps`: a plan that keeps the rules, or the one that comes closest.

        What happens up to `until` counts before what happens later (default: all counts alike).
        """
        self.steps = list(steps)
        best: list[Given] = []
        best_worth: tuple[int, ...] = ()
        in_vain = 0
        chance = random.Random(len(steps))
        while in_vain < _ATTEMPTS + _BY_CHANCE:
            given = list(self._run(steps))
            broken = [one for one in given if not one.keeps_the_rules]
            if not broken or self.fixed is not None:
                return given
            worth = self._worth(broken, until or steps[-1].first)
            by_chance = in_vain >= _ATTEMPTS
            in_vain += 1
            if worth > best_worth:
                best, best_worth = given, worth
                in_vain = in_vain if by_chance else 0
            if in_vain < _ATTEMPTS:
                self._squeak(broken)
            else:
                self._shuffle(chance)
        return best

    def _worth(self, broken: Sequence[Given], until: date) -> tuple[int, ...]:
        """What makes one plan better than another: few left out, even counts, rules kept long."""
        soon = [one for one in broken if one.step.first <= until]
        first = min(broken, key=lambda one: one.step.first)
        return (
            -sum(one.learner is None for one in soon),
            -max((one.ahead for one in soon), default=0),
            -len(soon),
            self.steps.index(first.step),
            -max(one.ahead for one in broken),
            -len(broken),
        )

    def _squeak(self, broken: Iterable[Given]) -> None:
        """Let those who were overlooked come earlier."""
        for one in broken:
            for learner in one.overlooked:
                key = (one.job.code, learner)
                self.urgent[key] = self.urgent.get(key, 0) + _WAITS + _WAITS // 2

    def _shuffle(self, chance: random.Random) -> None:
        """Let chance say who comes earlier of those who had a job as often."""
        self.urgent = dict(self.later)
        for job in self.jobs:
            for member in self.record.settings.members:
                key = (job.code, member.code)
                self.urgent[key] = self.urgent.get(key, 0) + chance.randrange(4 * _WAITS)

    def _run(self, steps: Sequence[Step]) -> Iterator[Given]:
        tallies = {job.code: self.tallies[job.code].copy() for job in self.jobs}
        had: dict[tuple[str, date], list[str]] = defaultdict(list)
        for before, step in zip((None, *steps), steps, strict=False):
            choices = [
                choice
                for job in self.jobs
                for choice in self._choices(
                    job, step, tallies, had[job.code, before.first] if before else []
                )
            ]
            _make_room(choices)
            # Clashing jobs of a shorter rhythm come later; somebody has to be left for them.
            later = [choice for job in self.shorter for choice in self._kept_free(job, step)]
            as_wished = self.fixed is None
            found = _assign(choices + later) if as_wished else self._as_fixed(choices, step)
            taken = list(zip(choices, found, strict=False))
            for choice, learner in taken:
                in_the_way = {
                    code: other.job
                    for other, code in taken
                    if code is not None and other is not choice and other.job.clashes(choice.job)
                }
                yield self._given(step, choice, learner, in_the_way)
                if learner is not None and self._is_a_turn(choice.job, step):
                    tallies[choice.job.code].give(learner, step.first)
                    had[choice.job.code, step.first].append(learner)
            for job in self.jobs:
                facts = self.facts(job, step)
                if facts is not None:
                    tallies[job.code].forgive(facts.here)

    def _as_fixed(self, choices: Sequence[_Choice], step: Step) -> list[str | None]:
        """The learners who are fixed for this step, one for each choice of a job."""
        assert self.fixed is not None
        left = {code: iter(self.fixed.get((code, step.first), ())) for code in self.tallies}
        return [next(left[choice.job.code], None) for choice in choices]

    def _choices(
        self, job: Job, step: Step, tallies: Mapping[str, Tally], just_had: list[str]
    ) -> Iterator[_Choice]:
        """One choice for each place of `job` that nobody holds yet on the days of `step`."""
        facts = self.facts(job, step)
        if facts is None:
            return
        count = tallies[job.code]
        count.open(facts.in_class)
        had = {c: sum(one.levels.get(c, 0) for one in tallies.values()) for c in facts.here}
        fewest = min(had.values(), default=0)
        here = {code: count.levels[code] for code in facts.here}
        least = min(here.values(), default=0)
        running = just_had + facts.beside if job.in_charge else []
        waits = sorted({count.last.get(code, date.min) for code in here})
        costs = {
            code: (
                price
                + _AGAIN * (here[code] - least)
                + _RUNNING * (code in running)
                + _WAITS * waits.index(count.last.get(code, date.min))
                # Nobody has one after the other of the jobs at one time while others have none.
                + min(_HAD * (had[code] - fewest), _WAITS - 20)
                - self.urgent.get((job.code, code), 0)
            )
            for code, price in facts.prices.items()
        }
        for _ in range(facts.free):
            yield _Choice(job, dict(costs), here)

    def _kept_free(self, job: Job, step: Step) -> Iterator[_Choice]:
        """One choice without wishes for each place of a shorter job."""
        facts = self.facts(job, step)
        for _ in range(facts.free if facts and facts.prices else 0):
            yield _Choice(job, dict.fromkeys(facts.prices, 0.0) if facts else {}, {})

    def facts(self, job: Job, step: Step) -> Facts | None:
        """What does not change while planning; None where `job` has no free place at `step`."""
        key = (job.code, step.first)
        if key not in self._known:
            self._known[key] = self._find_facts(job, step)
        return self._known[key]

    def _find_facts(self, job: Job, step: Step) -> Facts | None:
        days = [day for day in step.days if self.is_free(job, day)]
        if not days:
            return None
        in_class = self.record.settings.who_can(job, days[0])
        holding = self.record.assigned(days[0], job.code)
        # Who joins in the middle of a turn waits for the next one.
        here = [c for c in in_class if c not in holding and mostly_here(self.record, c, days)]
        prices = {
            code: 12 * sum(len(self.record.jobs_of(code, day)) for day in days) // len(days)
            + self._wanted_elsewhere(job, code)
            + in_class.index(code) / 100
            for code in here
            if self.record.clashing(code, job, days) is None
        }
        beside = self._beside(job, step) if job.in_charge else []
        turn = job.turn_of(days[0])
        begun = [
            day
            for day in self.record.days()
            if turn <= day < days[0] and self.record.assigned(day, job.code)
        ]
        is_a_turn = len(days) >= len(begun)
        return Facts(in_class, here, prices, job.places - len(holding), beside, is_a_turn)

    def _beside(self, job: Job, step: Step) -> list[str]:
        """Those who were given `job` on the days before and after already, as far as is known."""
        at = self.steps.index(step)
        if at == 0:
            return self.record.neighbours(job, step.first)
        beside = self.steps[at - 1 : at] + self.steps[at + 1 : at + 2]
        return [code for one in beside for code in self.record.holders(one.first, job.code)]

    def _wanted_elsewhere(self, job: Job, learner: str) -> float:
        """How much clashing jobs of a shorter rhythm miss `learner`: the fewer can, the more."""
        members = self.record.settings.members
        return sum(
            12 / sum(other.can_take(member.code) for member in members)
            for other in self.shorter
            if other.clashes(job) and other.can_take(learner)
        )

    def _is_a_turn(self, job: Job, step: Step) -> bool:
        """Whether the days still free are not just the end of somebody else's turn."""
        facts = self.facts(job, step)
        return facts is not None and facts.is_a_turn

    def is_free(self, job: Job, day: date) -> bool:
        """Whether `job` is on `day` and has a place that nobody holds yet."""
        return job.is_on(day) and len(self.record.assigned(day, job.code)) < job.places

    def _given(
        self, step: Step, choice: _Choice, learner: str | None, in_the_way: dict[str, Job]
    ) -> Given:
        level = choice.levels[learner] if learner is not None else None
        overlooked = tuple(
            code
            for code, other in choice.levels.items()
            if (level is None or other < level)
            and not (choice.job.in_charge and choice.costs.get(code, 0) >= _RUNNING)
        )
        ahead = level + 1 - min(choice.levels.values()) if level is not None else 0
        return Given(step, choice.job, learner, overlooked, in_the_way, ahead)


def _make_room(choices: Sequence[_Choice]) -> None:
    """Put first those who must take a turn now to have all they are due before the rounds end.

    A learner who is due k clashing jobs by the end of the shortest rounds needs k steps; with no
    step to spare they have to take one of them now, that of the shortest round first (as in König's
    edge colouring, and earliest deadline first).
    """
    due: dict[str, list[tuple[int, int]]] = defaultdict(list)
    for number, choice in enumerate(choices):
        least = min(choice.levels.values(), default=0)
        left = [code for code, level in choice.levels.items() if level == least]
        together = sum(other.job.code == choice.job.code for other in choices)
        for code in set(left) & set(choice.costs):
            due[code].append((-(-len(left) // together), number))
    for code, ends in due.items():
        if len(ends) > 1 and min(e - n for n, (e, _) in enumerate(sorted(ends), start=1)) <= 0:
            for end, number in ends:
                choices[number].costs[code] -= _NO_ROOM // end


def _assign(choices: Sequence[_Choice]) -> list[str | None]:
    """A learner for each choice, at the least cost found; clashing jobs get different ones."""
    order = sorted(range(len(choices)), key=lambda n: len(choices[n].costs))
    ranked = [sorted(choices[n].costs.items(), key=lambda pair: pair[1]) for n in order]
    clash = [
        [k for k in range(at) if choices[order[k]].job.clashes(choices[order[at]].job)]
        for at in range(len(order))
    ]
    least_left = [0.0] * (len(order) + 1)
    for at in range(len(order) - 1, -1, -1):
        least_left[at] = least_left[at + 1] + (ranked[at][0][1] if ranked[at] else _EMPTY)
    best: list[str | None] = [None] * len(order)
    best_cost: float = _EMPTY * (len(order) + 1)
    taken: list[str | None] = []
    nodes = 0

    def search(cost: float) -> None:
        nonlocal best, best_cost, nodes
        at = len(taken)
        if cost + least_left[at] >= best_cost:
            return
        if at == len(order):
            best, best_cost = list(taken), cost
            return
        nodes += 1
        if nodes > _NODES:
            return
        for code, price in ranked[at]:
            if any(taken[k] == code for k in clash[at]):
                continue
            taken.append(code)
            search(cost + price)
            taken.pop()
        taken.append(None)
        search(cost + _EMPTY)
        taken.pop()

    search(0)
    found: list[str | None] = [None] * len(order)
    for at, number in enumerate(order):
        found[number] = best[at]
    return found
