"""Use cases of marks and progress: mark a day, see who is stuck, what a learner can do, and why.

Starts with the standard library alone; only a typed attempt loads the parser.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from bank.classroom_days import Days, GivenView
from bank.item import BankError
from bank.learner import Learner
from bank.progress.chart import INDEPENDENCE, Chart, Goal, Phase
from bank.progress.evidence import Evidence
from bank.progress.independence import Day, StepShare
from bank.progress.marks import STEP
from bank.progress.mastery import Mastery
from bank.progress.proposals import Proposal
from bank.progress.settings import ProgressSettings
from bank.progress.sheet import Sheet, Slot, state_of
from bank.store import Store
from bank.store_marks import (
    add_phase,
    day_marks,
    given_marks,
    last_set_day,
    learner_marks,
    phases,
    write_marks,
)

SETTINGS = "progress"  # the setting's name in the store
AIMS = "aims"  # the place in a learner's support


def progress_settings(store: Store) -> ProgressSettings:
    return ProgressSettings.from_dict(store.setting(SETTINGS, {}))


class Marks:
    """What learners did with their sets."""

    def __init__(self, store: Store, days: Days) -> None:
        self.store = store
        self.days = days

    @property
    def settings(self) -> ProgressSettings:
        return progress_settings(self.store)

    def change_settings(self, **changes: Any) -> ProgressSettings:
        """Change how marks are kept and judged; `BankError` says what cannot be."""
        made = replace(self.settings, **changes)
        self.store.set_setting(SETTINGS, made.to_dict())
        return made

    def day_to_mark(self, today: dt.date) -> dt.date:
        """Today where it has sets, else the last day that has; `BankError` where there is none."""
        day = last_set_day(self.store, today)
        if day is None:
            raise BankError("no set is drawn yet, so there is nothing to mark: binderbank today")
        return day

    def sheets(
        self, day: dt.date, codes: Sequence[str] = (), blank: bool = False
    ) -> list[tuple[Learner, Sheet]]:
        """A sheet for each learner who has a set on that day, with the marks that it has already."""
        sets = [one for one in self.days.sets(day, codes) if one.state != "unused"]
        if not sets:
            who = f" for {', '.join(codes)}" if codes else ""
            raise BankError(f"there is no set{who} on {day}; nothing can be marked")
        prompts = self.settings.prompts
        steps = self._steps(day)
        made = []
        for one in sets:
            slots = [_slot(part) for part in one.given] + steps
            held = [] if blank else day_marks(self.store, day, one.learner.number)
            states = [state_of(slot, held) for slot in slots]
            made.append((one.learner, Sheet(day, slots, prompts, states)))
        return made

    def _steps(self, day: dt.date) -> list[Slot]:
        """The steps of the day's routine; one that was marked before it was renamed keeps its code."""
        from bank.morning.routine import DEFAULT_ROUTINE, Routine

        plain = self.store.setting("routine")
        routine = Routine.from_dict(plain) if plain else DEFAULT_ROUTINE
        steps = [timed.step for timed in routine.of_day(day, self.days.calendar())]
        places = {step.code: number for number, step in enumerate(routine.steps)}
        return [Slot(STEP, places[step.code], step.name, None, step.code) for step in steps]

    def save(self, learner: Learner, sheet: Sheet) -> bool:
        """Keep the sheet's marks; the set is then a used one. False where nothing is new."""
        marks = sheet.marks()
        if not marks:
            return False
        with self.store.writing():
            self.days.printed(sheet.day, [learner.code])
            changed = write_marks(self.store, learner.number, marks)
            self.days.set_state(sheet.day, "used", [learner.code])
        return changed

    def typed(self, sheet: Sheet, attempt: str) -> list[str]:
        """Compare what a learner wrote with the sentence that is picked; returns lines that say it.

        The attempt itself is kept only where the teacher said so.
        """
        from bank.edit import mark_attempt

        assert sheet.at is not None
        slot = sheet.slots[sheet.at]
        found = mark_attempt(slot.faulty, slot.corrected, attempt)
        missed = _numbers(slot, [fix.to_dict() for fix in found.missed])
        new = [fix.skill for fix in found.introduced]
        sheet.typed(attempt, missed, new, self.settings.attempts)
        lines = [
            f"{len(slot.fixes) - len(missed)} of {len(slot.fixes)} fixed",
            *(f"missed: {slot.fixes[n - 1]['skill']}" for n in missed),
        ]
        return lines + [
            f"new error: {fix.skill} ({fix.wrong or 'nothing'} -> {fix.right or 'nothing'})"
            for fix in found.introduced
        ]

    def blank_rows(self, day: dt.date, codes: Sequence[str] = ()) -> list[dict[str, str]]:
        """Rows of a spreadsheet to fill in for those who mark on paper."""
        from bank.progress.on_paper import blank_rows

        return [
            row
            for learner, sheet in self.sheets(day, codes)
            for row in blank_rows(sheet, learner.code)
        ]

    def take(self, path: Path) -> tuple[list[tuple[str, dt.date]], list[str]]:
        """Marks from a CSV file: whose day was marked, and a line for each row that was refused.

        A learner's day with a row that is refused is left as it was, whole.
        """
        from bank.progress.on_paper import fill, read

        groups: dict[tuple[str, str], list[tuple[int, dict[str, str]]]] = {}
        for number, cells in read(path):
            if cells.get("mark", ""):
                key = (cells.get("learner", ""), cells.get("day", ""))
                groups.setdefault(key, []).append((number, cells))
        done: list[tuple[str, dt.date]] = []
        refused: list[str] = []
        for (code, said), rows in groups.items():
            wrong: list[str] = []
            sheet, learner = None, None
            try:
                day = _read_date(said)
                if not code:
                    raise BankError("learner: the cell is empty; write the learner's code")
                ((learner, sheet),) = self.sheets(day, [code], blank=True)
            except BankError as error:
                refused.append(f"row {rows[0][0]}: {error}")
                continue
            for number, cells in rows:
                try:
                    fill(sheet, [(cells["what"], cells["mark"])])
                except BankError as error:
                    wrong.append(f"row {number}, {error}")
            if wrong:
                refused += wrong
                continue
            self.save(learner, sheet)
            done.append((learner.code, day))
        return done, refused


def _read_date(said: str) -> dt.date:
    try:
        return dt.date.fromisoformat(said)
    except ValueError:
        raise BankError(f"day: {said[:20]!r} is no date; write YYYY-MM-DD") from None


def _slot(part: GivenView) -> Slot:
    faulty = part.faulty if part.kind == "sentence" else ""
    return Slot(
        part.kind,
        part.position,
        faulty or part.text,
        part.item,
        "",
        part.fixes if part.kind == "sentence" else (),
        faulty,
        part.text,
    )


def _numbers(slot: Slot, fixes: Sequence[dict[str, Any]]) -> list[int]:
    """The numbers (from 1) of a sentence's own fixes that these stand for."""
    free = dict(enumerate(slot.fixes, start=1))
    found = []
    for fix in fixes:
        ways = (("skill", "right_start", "right"), ("skill", "right"), ("right_start",), ("skill",))
        for way in ways:
            same = [
                n for n, mine in free.items() if all(mine.get(key) == fix.get(key) for key in way)
            ]
            if same:
                found.append(same[0])
                del free[same[0]]
                break
    return sorted(found)


@dataclass(frozen=True, slots=True)
class Report:
    """All that is shown of one learner's progress."""

    learner: Learner
    days: tuple[Day, ...]
    steps: tuple[StepShare, ...]
    help_trend: str
    skills: tuple[Mastery, ...]
    goals: tuple[Goal, ...]
    charts: tuple[Chart, ...]
    phases: tuple[Phase, ...]
    topics: tuple[tuple[dt.date, int], ...]
    proposals: tuple[Proposal, ...]
    settings: ProgressSettings
    step_names: dict[str, str]


class Progress:
    """What the marks say: evidence from a classroom, not an evaluation. It changes nothing."""

    def __init__(self, store: Store, days: Days) -> None:
        self.store = store
        self.days = days

    def stuck(self, today: dt.date) -> list[tuple[str, str]]:
        """Who is stuck: the code and the last days in words."""
        return self.days.stuck(today)

    def report(self, code: str, since: dt.date | None = None) -> Report:
        """One learner's independence, skills, goals and what a teacher may look at."""
        from bank.progress.independence import by_day, by_step, trend
        from bank.progress.mastery import by_skill
        from bank.progress.proposals import proposals

        learner = self.days.learners([code])[0]
        settings = progress_settings(self.store)
        marks = learner_marks(self.store, learner.number, since)
        days = by_day(marks, settings.prompts)
        skills = by_skill(marks, settings)
        goals = self.goals(learner)
        noted = phases(self.store, learner.number)
        band = (learner.band.low, learner.band.high)
        return Report(
            learner,
            tuple(days),
            tuple(by_step(marks, settings.prompts)),
            trend(days),
            tuple(skills),
            tuple(goals),
            tuple(_charts(goals, days, skills, noted)),
            tuple(noted),
            tuple((m.day, m.amount) for m in marks if m.kind == "topic" and m.amount is not None),
            tuple(proposals(learner.code, band, learner.skills, days, skills, settings)),
            settings,
            self._step_names(),
        )

    def _step_names(self) -> dict[str, str]:
        from bank.morning.routine import DEFAULT_ROUTINE, Routine

        plain = self.store.setting("routine")
        routine = Routine.from_dict(plain) if plain else DEFAULT_ROUTINE
        return {step.code: step.name for step in routine.steps}

    def goals(self, learner: Learner) -> list[Goal]:
        """The learner's goals: those that were said, else independence and each skill in work."""
        settings = progress_settings(self.store)
        said = [Goal.from_dict(plain) for plain in learner.support.get(AIMS, [])]
        names = {goal.name for goal in said}
        usual = [Goal(INDEPENDENCE, settings.alone_share)]
        usual += [
            Goal(code, settings.goal_share)
            for code, state in sorted(learner.skills.items())
            if state == "in-work"
        ]
        return said + [goal for goal in usual if goal.name not in names]

    def set_goal(self, code: str, goal: Goal) -> None:
        """Say what a learner works towards, in place of what was said about the same."""
        from bank.skill import skill
        from bank.store_sets import write_learner

        if goal.name != INDEPENDENCE:
            try:
                skill(goal.name)
            except ValueError as error:
                raise BankError(f"a goal is {INDEPENDENCE} or a skill: {error}") from None
        learner = self.days.learners([code])[0]
        kept = [plain for plain in learner.support.get(AIMS, []) if plain["name"] != goal.name]
        support = {**learner.support, AIMS: [*kept, goal.to_dict()]}
        write_learner(self.store, replace(learner, support=support))

    def add_phase(self, code: str, day: dt.date, words: str) -> None:
        """Note something that changed; it becomes a line on the learner's charts."""
        from bank.item import clean_text

        learner = self.days.learners([code])[0]
        add_phase(self.store, learner.number, Phase(day, clean_text(words, "the words", 80)))

    def evidence(self, kind: str = "") -> list[Evidence]:
        """How items went, the furthest from what their level says first."""
        from bank.progress.evidence import evidence
        from bank.store_items import get_items

        swapped = [row[0] for row in self.store.rows("SELECT was FROM swap")]
        objections = {
            row[0]: row[1]
            for row in self.store.rows("SELECT id, objection FROM item WHERE objection <> ''")
        }
        found = evidence(given_marks(self.store), swapped, objections, self._forgotten_counts())
        items = get_items(self.store, [one.item for one in found])
        named = []
        for one in found:
            if one.item in items and kind in ("", items[one.item].kind):
                item = items[one.item]
                grade = item.reading_grade or 0.0
                named.append(replace(one, kind=item.kind, grade=grade, text=item.text))
        return named

    def _forgotten_counts(self) -> dict[str, dict[str, int]]:
        return {
            row["item"]: {name: row[name] for name in row.keys() if name != "item"}  # noqa: SIM118
            for row in self.store.rows("SELECT * FROM item_count")
        }

    def class_proposals(self) -> list[tuple[Learner, Report]]:
        """The report of each learner."""
        return [(one, self.report(one.code)) for one in self.days.learners()]


def _charts(
    goals: Sequence[Goal], days: Sequence[Day], skills: Sequence[Mastery], noted: Sequence[Phase]
) -> list[Chart]:
    from bank.progress.chart import chart, daily, weekly

    found = {one.skill: one.days for one in skills}
    made = []
    for goal in goals:
        if goal.name == INDEPENDENCE:
            points = daily([(day.day, day.alone, day.count) for day in days])
        else:
            points = weekly(found.get(goal.name, ()))
        if drawn := chart(goal, points, noted):
            made.append(drawn)
    return made


def note_change(store: Store, old: Learner, new: Learner) -> None:
    """Keep what changed for a learner who has marks: a line on the charts from that day on."""
    from bank.progress.changes import change_words

    words = change_words(old, new)
    if words and store.row("SELECT 1 FROM mark WHERE learner = ? LIMIT 1", (new.number,)):
        add_phase(store, new.number, Phase(dt.date.today(), ", ".join(words)[:80]))
