"""Use cases of planning: fix the sets ahead, move them past a lost day, and see how long the bank lasts.

The plan is the draw, day after day: what is chosen for a day is chosen by the same rules, the season
that ends first goes first, and a set once planned is what the draw of that day gives.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass, replace

from bank.calendar import DayOff
from bank.choose.draw import Draw
from bank.choose.mix import Mixture
from bank.choose.share import own
from bank.classroom_days import Days
from bank.item import BankError
from bank.learner import Learner
from bank.store_items import get_items, twins_of
from bank.store_sets import DaySet, Given, day_sets, remove_set, write_set

LONGEST_PLAN = 400  # days: more than a school year
Progress = Callable[[int], None]


def _no_progress(count: int) -> None:
    return None


@dataclass(frozen=True, slots=True)
class PlannedDay:
    """One day of a plan: how many sets, and the lines that say what is less than wished."""

    day: dt.date
    sets: int
    notes: tuple[str, ...]


class Plans:
    """The plan ahead of a bank."""

    def __init__(self, days: Days) -> None:
        self.days = days
        self.store = days.store

    def make(
        self, first: dt.date, last: dt.date, progress: Progress = _no_progress
    ) -> list[PlannedDay]:
        """Fix the sets of every school day from `first` to `last`; all of them or none.

        Days that have sets keep them. `BankError` for a span that is empty or longer than a year.
        """
        if last < first:
            raise BankError(f"the plan ends on {last}, before it starts on {first}")
        if (last - first).days > LONGEST_PLAN:
            raise BankError(f"a plan is at most {LONGEST_PLAN} days long; end it before {last}")
        planned = []
        with self.store.writing():
            for day in self.days.calendar().school_days(first, last):
                sets = self.days.draw(day)
                notes = tuple(line for one in sets for line in one.notes)
                planned.append(PlannedDay(day, len(sets), notes))
                progress(1)
        if not planned:
            raise BankError(f"there is no school day from {first} to {last}")
        return planned

    def skip(self, lost: dt.date) -> list[dt.date]:
        """Take a lost day (snow) out: its sets and those planned after it move on by a school day.

        The day becomes a day off. An item whose season is over on its new day is exchanged, and a
        learner who is away there has no set. Returns the days to which sets moved.
        """
        calendar = self.days.calendar()
        reason = calendar.why_off(lost)
        if reason:
            raise BankError(f"{lost} is no school day ({reason}); nothing was moved")
        with self.store.writing():
            moving = self._run_from(lost)
            off = DayOff(lost, lost, "skipped")
            after = replace(calendar, days_off=(*calendar.days_off, off))
            self.store.set_setting("calendar", after.to_dict())
            for sets in moving:
                for one in sets.values():
                    remove_set(self.store, one.learner, one.day)
            target = lost
            moved = []
            for sets in moving:
                following = after.next_school_day(target)
                if following is None:
                    raise BankError(f"there is no school day after {target} to move the sets to")
                target = following
                self._put(sets, target)
                moved.append(target)
            for day in moved:
                self.days.draw(day)  # for those who were away on the day before
        return moved

    def _run_from(self, lost: dt.date) -> list[dict[int, DaySet]]:
        """The sets of the lost day and of the planned days that follow it without a gap."""
        run, day = [], lost
        while sets := {n: s for n, s in day_sets(self.store, day).items() if s.state != "unused"}:
            run.append(sets)
            following = self.days.calendar().next_school_day(day)
            if following is None:
                break
            day = following
        return run

    def _put(self, sets: dict[int, DaySet], day: dt.date) -> None:
        learners = {one.number: one for one in self.days.learners()}
        for number, held in sets.items():
            learner = learners[number]
            if not learner.is_away(day):
                self._put_one(held, learner, day)

    def _put_one(self, held: DaySet, learner: Learner, day: dt.date) -> None:
        items = get_items(self.store, [part.item for part in held.given])
        late = {part.item for part in held.given if not items[part.item].in_season(day)}
        moved = replace(held, day=day, given=tuple(p for p in held.given if p.item not in late))
        write_set(self.store, moved)
        if late and held.state == "proposed":
            draw = Draw(self.store, day, self.days.rules(), held.short)
            barred = {p.item for p in held.given}
            barred |= {twin for item in barred for twin in twins_of(self.store, item)}
            given: list[Given] = list(moved.given)
            for part in held.given:
                if part.item in late:
                    circle = own(learner)
                    for choice in draw.choose(circle, part.kind, 1, Mixture(), frozenset(barred)):
                        given.append(draw.give(learner, circle, part.kind, part.position, choice))
                        barred.add(choice[0].item)
            write_set(self.store, replace(moved, given=tuple(given)))
        elif late:
            write_set(self.store, replace(held, day=day))  # what is on paper stays on paper
