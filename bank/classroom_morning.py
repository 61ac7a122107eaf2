"""Use cases of the rest of the morning: school days, turns, word sorts, quiet reading, the routine.

Nothing here loads the parser or the pronunciations before a sort is made or a page is levelled.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from bank.calendar import SchoolCalendar, monday_of
from bank.classroom_days import Days
from bank.classroom_reading import QuietReading
from bank.item import BankError
from bank.learner import Learner
from bank.morning.jobs import Away, Job, Keyboard, Member, TurnSettings
from bank.morning.tally import Record, Turn
from bank.store import Store
from bank.store_morning import (
    codes_by_number,
    give_sorts,
    given_sorts,
    held_days,
    post_turns,
    posted_turns,
    take_back_turns,
)
from bank.store_sets import write_learner

if TYPE_CHECKING:
    from bank.item import Item
    from bank.morning.routine import Routine
    from bank.morning.sorts import WordSort
    from bank.morning.turns import TurnPlan

CALENDAR, TURNS, ROUTINE = "calendar", "turns", "routine"  # names of settings in the store
# Turns so far ahead follow from all turns until then; later weeks are planned by themselves.
_NEAR = dt.timedelta(weeks=6)
MASTERED_SORTS = "sorts"  # the place in a learner's support


class Morning(QuietReading):
    """The school days of a bank and what happens on them beside the sets."""

    def __init__(self, store: Store, days: Days) -> None:
        self.store = store
        self.days = days

    # School days

    @property
    def calendar(self) -> SchoolCalendar:
        return self.days.calendar()

    def keep_calendar(self, calendar: SchoolCalendar) -> SchoolCalendar:
        self.store.set_setting(CALENDAR, calendar.to_dict())
        return calendar

    # Turns

    @property
    def has_turns(self) -> bool:
        """Whether the teacher has set up jobs or the keyboard."""
        plain = self.store.setting(TURNS, {})
        return bool(plain.get("jobs") or plain.get("keyboard"))

    def settings(self) -> TurnSettings:
        """The jobs and the keyboard, and the learners with the days of joining and leaving."""
        return self._settings_of(self.store.setting(TURNS, {}))

    def _settings_of(self, plain: Mapping[str, Any]) -> TurnSettings:
        codes = codes_by_number(self.store)
        stays = {int(number): days for number, days in plain.get("members", {}).items()}
        members = [
            {"code": code, **stays.get(number, {})}
            for number, code in sorted(codes.items(), key=lambda pair: pair[1].lower())
        ]
        keyboard = plain.get("keyboard")
        return TurnSettings.from_dict(
            {
                "members": members,
                "jobs": [_with_codes(job, codes) for job in plain.get("jobs", [])],
                "keyboard": _with_codes(keyboard, codes) if keyboard else None,
            }
        )

    def keep_jobs(self, jobs: Sequence[Job], keyboard: Keyboard | None) -> TurnSettings:
        """Keep other jobs; turns that were given out stay as they are."""
        numbers = {code: number for number, code in codes_by_number(self.store).items()}
        checked = TurnSettings((), tuple(jobs), keyboard).to_dict()
        for settings in [*checked["jobs"], checked["keyboard"] or {}]:
            for name in ("only", "not_for"):
                for code in settings.get(name, ()):
                    if code not in numbers:
                        raise BankError(
                            f"there is no learner {code!r}; see: binderbank learner list"
                        )
        with self.store.writing():
            plain = self.store.setting(TURNS, {})
            plain["jobs"] = [_with_numbers(job, numbers) for job in checked["jobs"]]
            plain["keyboard"] = (
                _with_numbers(checked["keyboard"], numbers) if checked["keyboard"] else None
            )
            self.store.set_setting(TURNS, plain)
        return self.settings()

    def keep_stay(self, code: str, first: dt.date | None, last: dt.date | None) -> Member:
        """Keep the days between which a learner is in the class; no `first` leaves it as it was."""
        learner = self._learner(code)
        plain = self.store.setting(TURNS, {})
        stays = plain.setdefault("members", {}).setdefault(str(learner.number), {"first": None})
        if first:
            stays |= {"first": first.isoformat(), "said": True}
        stays["last"] = last.isoformat() if last else None
        joined = dt.date.fromisoformat(stays["first"]) if stays["first"] else None
        if joined and last and last < joined and stays.get("said"):
            raise BankError(f"{learner.code} joins on {joined}, so {last} cannot be the last day")
        self.store.set_setting(TURNS, plain)
        return Member(learner.code, joined, last)

    def turns(self, first: dt.date, last: dt.date | None = None) -> TurnPlan:
        """The turns of a day, or of the days up to `last`: those given out, and those to come.

        A day has the same turns whichever day is asked. Days before today stay as they were given
        out, or without turns.
        """
        last = last or first
        return self._of_days(self._plan(first, last), first, last)

    def _plan(self, first: dt.date, last: dt.date) -> TurnPlan:
        from bank.morning.weeks import plan_weeks

        start = self._start(first)
        settings = self._settings_of(self._with_new_learners(self._since(first)))
        if not settings.jobs and settings.keyboard is None:
            raise BankError("there is no job yet; add one: binderbank job add 'Line leader'")
        posted = posted_turns(self.store)
        return plan_weeks(settings, posted, self.calendar, self._away(), start, last)

    def _of_days(self, plan: TurnPlan, first: dt.date, last: dt.date) -> TurnPlan:
        """The part of a plan from `first` to `last`, with what was given out before it begins."""
        earlier = self.given_out(first, min(last, self._start(first) - dt.timedelta(days=1)))
        return replace(
            plan,
            turns=(*earlier, *(turn for turn in plan.turns if first <= turn.day <= last)),
            new=tuple(t for t in plan.new_until(last) if t.day >= first),
            problems=tuple(p for p in plan.problems if monday_of(first) <= p.day <= last),
        )

    def _start(self, first: dt.date) -> dt.date:
        """The day from which on is planned to know the turns of `first`: today, as a rule.

        A week that is over, or too far ahead, is planned by itself.
        """
        today, monday = self.today(), monday_of(first)
        is_near = monday_of(today) <= monday <= today + _NEAR
        return today if is_near else monday

    def _since(self, first: dt.date) -> dt.date:
        """The first day that is given out with `first`."""
        today = self.today()
        return today if self._start(first) == today else first

    def today(self) -> dt.date:
        return dt.date.today()

    def given_out(self, first: dt.date, last: dt.date) -> list[Turn]:
        """The turns that were given out for these days."""
        return [turn for turn in posted_turns(self.store, first) if turn.day <= last]

    def who(self, turns: Iterable[Turn], day: dt.date) -> list[tuple[Job, str, str]]:
        """Who really has which job on a day: the job, the learner, and for whom they stand in.

        Jobs stand in the teacher's order. Who is away is left out; so are jobs that are no more.
        """
        settings = self.settings()
        record = Record(settings, turns, self._away())
        jobs = [*settings.jobs, *([settings.keyboard.as_job()] if settings.keyboard else [])]
        found = []
        for job in jobs:
            for learner in record.assigned(day, job.code):
                holder = record.holder(day, job.code, learner)
                if holder is not None:
                    found.append((job, holder, learner if holder != learner else ""))
        return found

    def post(self, first: dt.date, last: dt.date | None = None) -> TurnPlan:
        """Give out the turns of these days: from now on they stand, and only stand-ins are added.

        The days between today and `first` are given out with them, or they would come out otherwise.
        """
        last = last or first
        since = self._since(first)
        with self.store.writing():
            self.store.set_setting(TURNS, self._with_new_learners(since))
            plan = self._plan(first, last)
            post_turns(self.store, [t for t in plan.new_until(last) if t.day >= since])
        return self._of_days(plan, first, last)

    def told(self, day: dt.date) -> TurnPlan:
        """The turns of a day as a page tells them: given out, unless later ones were already."""
        latest = self.store.value("SELECT max(day) FROM turn")
        ahead = latest is None or latest <= day.isoformat()
        return self.post(day) if ahead and self.store.writable else self.turns(day)

    def stand_in(self, day: dt.date, job: str, code: str) -> Turn:
        """Let `code` have today's turn of a job instead of whoever has it."""
        plan = self.turns(day)
        learner = self._learner(code)
        record = Record(self.settings(), plan.turns, self._away())
        held = record.settings.job(job)
        if held is None:
            raise BankError(f"there is no job {job!r}; see: binderbank job list")
        now = [turn for turn in plan.on(day) if turn.job == job]
        if not now:
            raise BankError(f"nobody has {held.name} on {day}")
        if learner.code in record.holders(day, job):
            raise BankError(f"{learner.code} has {held.name} on {day} already")
        can = [
            one
            for one in record.settings.who_can(held, day)
            if record.is_present(one, day)
            and one not in record.holders(day, job)
            and record.clashing(one, held, [day]) is None
        ]
        others = f"{', '.join(can) or 'nobody else'} can"
        if not held.can_take(learner.code):
            said = f"{learner.code} cannot take {held.name}, as its settings say"
            raise BankError(f"{said}; {others} (see: binderbank job list)")
        if not record.is_present(learner.code, day):
            raise BankError(f"{learner.code} is not there on {day}; {others}")
        busy = record.clashing(learner.code, held, [day])
        if busy is not None:
            raise BankError(f"{learner.code} has {busy.name} at the same time")
        turn = Turn(day, job, learner.code, instead_of=now[-1].learner)
        with self.store.writing():
            self.post(day)
            post_turns(self.store, [turn])
        return turn

    def take_back(self, first: dt.date) -> int:
        """Take back all turns from a day on, on the teacher's word; returns how many."""
        return take_back_turns(self.store, first)

    def _with_new_learners(self, day: dt.date) -> dict[str, Any]:
        """The settings, and for a learner who is here for the first time that turns before `day` were
        not theirs."""
        plain: dict[str, Any] = self.store.setting(TURNS, {})
        members: dict[str, Any] = plain.setdefault("members", {})
        known = self.store.value("SELECT 1 FROM turn LIMIT 1")
        for number in map(str, codes_by_number(self.store)):
            first = day.isoformat() if known else None
            members.setdefault(number, {"first": first, "last": None})
        return plain

    def _away(self) -> list[Away]:
        return [
            Away(learner.code, stretch.first, stretch.last)
            for learner in self.days.learners()
            for stretch in learner.away
        ]

    # Word sorts

    def make_sorts(
        self,
        pattern: str,
        count: int = 1,
        size: int = 12,
        odd: int = 0,
        grade: float = 4.0,
        progress: Callable[[int, str], None] = lambda made, doing: None,
    ) -> list[Item]:
        """Make so many new sorts of a pattern and keep them as items; words come back late.

        `progress` is told how many more are made, and what is being done now.
        """
        from bank.classroom_items import Items
        from bank.morning.sorts import NoSort, make_sort

        _known_pattern(pattern)
        items = Items(self.store)
        kept = {frozenset(sort.cards) for _, sort in self.sorts()}
        made: list[Item] = []
        progress(0, "reading how words sound")
        for number in range(60):
            if len(made) == count:
                break
            try:
                sort = make_sort(pattern, number, size, odd, grade)
            except NoSort as error:
                raise BankError(str(error)) from error
            if frozenset(sort.cards) not in kept:
                kept.add(frozenset(sort.cards))
                progress(0, "levelling and checking the cards")
                cells = {"text": sort.text, "note": sort.title, "sort": sort.to_dict()}
                made.append(items.add(kind="sort", **cells))
                progress(1, "making sorts")
        if not made:
            raise BankError(f"there are no other sorts of {pattern!r} with these words")
        return made

    def sorts(self) -> list[tuple[str, WordSort]]:
        """The sorts of the bank that are ready, with their ids, in order of making."""
        from bank.morning.sorts import WordSort

        rows = self.store.rows(
            "SELECT id, sort FROM item WHERE kind = 'sort' AND state = 'ready' ORDER BY made, rowid"
        )
        import json

        found = [(row["id"], json.loads(row["sort"])) for row in rows]
        return [(item, WordSort.from_dict(plain)) for item, plain in found if plain]

    def sort(self, item: str) -> WordSort:
        from bank.morning.sorts import WordSort
        from bank.store_items import get_item

        found = get_item(self.store, item)
        if not found.sort:
            raise BankError(f"{item} is no word sort that this program made")
        return WordSort.from_dict(found.sort)

    def mastered(self, code: str) -> list[str]:
        """The patterns whose sorts a learner works on alone."""
        kept: list[str] = self._learner(code).support.get(MASTERED_SORTS, [])
        return list(kept)

    def keep_mastered(self, code: str, patterns: Iterable[str]) -> list[str]:
        """Keep the patterns that a learner has mastered; a pattern that is none is refused."""
        kept = list(dict.fromkeys(patterns))
        for pattern in kept:
            _known_pattern(pattern)
        learner = self._learner(code)
        support = {**learner.support, MASTERED_SORTS: kept}
        write_learner(self.store, replace(learner, support=support))
        return kept

    def sorts_of(
        self, day: dt.date, codes: Sequence[str] = (), keep: bool = True
    ) -> dict[str, str]:
        """The sort that each learner has on `day`, as ids by code; `keep` gives them out.

        What was given out stays. A day ahead is counted from the last that was given, over the
        school days between.
        """
        from bank.morning.sorts import sort_of_the_day

        ready = self.sorts()
        found: dict[str, str] = {}
        numbers: dict[int, str] = {}
        for learner in self.days.learners(codes):
            if learner.is_away(day):
                continue
            patterns = learner.support.get(MASTERED_SORTS, [])
            mine = [item for item, sort in ready if sort.pattern in patterns]
            given = given_sorts(self.store, learner.number)
            counted = self._sort_days(learner, given, day)
            standing = {one: item for one, item in given.items() if one in counted or one == day}
            item = sort_of_the_day(standing, mine, day, also=counted)
            if item is not None:
                found[learner.code] = item
                numbers[learner.number] = item
        if keep and self.store.writable and numbers:
            give_sorts(self.store, day, numbers)
        return found

    def whose_sorts(self, day: dt.date, items: Sequence[str] = ()) -> dict[str, list[str]]:
        """Each sort of a day with the codes of those who have it; `items` alone are for nobody."""
        whose: dict[str, list[str]] = {item: [] for item in items}
        if not items:
            for code, item in self.sorts_of(day, keep=False).items():
                whose.setdefault(item, []).append(code)
        return whose

    def with_sort(self, day: dt.date, codes: Sequence[str] = ()) -> set[str]:
        """Who has a word sort on `day`, or had one where it is past."""
        found = self.sorts_of(day, codes, keep=False)
        if day >= dt.date.today():
            return set(found)
        return {
            one.code
            for one in self.days.learners(codes)
            if one.code in found
            and day in self._sort_days(one, given_sorts(self.store, one.number), day)
        }

    def _sort_days(
        self, learner: Learner, given: Mapping[dt.date, str], until: dt.date
    ) -> set[dt.date]:
        """The days up to `until` that count for a learner's sorts, from the first on.

        A school day counts unless the learner was away or the sets were not used. One that is past
        counts where there was a sort or a set on it: on another the bank was not used at all.
        """
        today = dt.date.today()
        held = held_days(self.store, learner.number)
        return {
            day
            for day in self.calendar.school_days(min([*given, today]), until)
            if held.get(day, day in given or day >= today) and not learner.is_away(day)
        }

    def sorts_after_unused(
        self, lost: dt.date, codes: Sequence[str] = ()
    ) -> tuple[dt.date | None, list[str], list[str]]:
        """The school day after one whose sets were not used, and whose sort of that day it has again.

        Who has another then, since that one was given out before, is named in the second list.
        """
        before = {
            one.code: given_sorts(self.store, one.number).get(lost)
            for one in self.days.learners(codes)
        }
        following = self.calendar.next_school_day(lost)
        then = self.sorts_of(following, codes, keep=False) if following else {}
        had = [code for code, item in before.items() if item]
        again = [code for code in had if then.get(code) == before[code]]
        return following, again, [code for code in had if code in then and code not in again]

    # The routine

    def routine(self) -> Routine:
        from bank.morning.routine import DEFAULT_ROUTINE, Routine

        plain = self.store.setting(ROUTINE)
        return Routine.from_dict(plain) if plain else DEFAULT_ROUTINE

    def keep_routine(self, routine: Routine) -> Routine:
        self.store.set_setting(ROUTINE, routine.to_dict())
        return routine

    def _learner(self, code: str) -> Learner:
        return self.days.learners([code])[0]


def _known_pattern(pattern: str) -> None:
    from bank.morning.sorts import pattern_codes

    if pattern not in pattern_codes():
        raise BankError(f"{pattern!r} is no pattern; see: binderbank sort patterns")


def _with_codes(plain: Mapping[str, Any], codes: Mapping[int, str]) -> dict[str, Any]:
    """A job's settings with learners' codes for their numbers; who is gone is left out."""
    named = {
        name: tuple(codes[number] for number in plain.get(name, ()) if number in codes)
        for name in ("only", "not_for")
    }
    # Were nobody left of those who may, an empty list would allow everybody.
    if plain.get("only") and not named["only"]:
        named["only"] = ("-",)
    return {**plain, **named}


def _with_numbers(plain: Mapping[str, Any], numbers: Mapping[str, int]) -> dict[str, Any]:
    named = {name: [numbers[code] for code in plain.get(name, ())] for name in ("only", "not_for")}
    return {**plain, **named}
