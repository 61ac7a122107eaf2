"""Use cases of marking: sheets for a day, keeping them, and marks from a spreadsheet.

Starts with the standard library alone and without what only judges the marks; a typed attempt loads
the parser.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from bank.calendar import read_date
from bank.classroom_days import Days, GivenView
from bank.item import BankError
from bank.learner import Learner
from bank.progress.marks import STEP
from bank.progress.settings import ProgressSettings
from bank.progress.sheet import Sheet, Slot, state_of
from bank.store import Store
from bank.store_marks import day_marks, last_set_day, write_marks

SETTINGS = "progress"  # the setting's name in the store


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
        with_sort = self._with_sort(day, [one.learner.code for one in sets])
        numbers = self._key_numbers(day)
        made = []
        for one in sets:
            kept = day_marks(self.store, day, one.learner.number)
            held = [] if blank else kept
            slots = [_slot(part, numbers) for part in one.given]
            # A step that was marked is still there to be marked otherwise.
            marked = {mark.part for mark in kept if mark.kind == STEP}
            slots += [
                slot
                for slot, needs_sort in steps
                if not needs_sort or one.learner.code in with_sort or slot.part in marked
            ]
            states = [state_of(slot, held) for slot in slots]
            made.append((one.learner, Sheet(day, slots, prompts, states)))
        return made

    def _key_numbers(self, day: dt.date) -> dict[tuple[str, str], tuple[int, ...]]:
        """For each sentence and faulty version of the day the numbers of its fixes on the key."""
        return {
            (sentence.item, faulty): numbers
            for sentence in self.days.key(day).sentences
            for faulty, numbers, _ in sentence.versions
        }

    def _with_sort(self, day: dt.date, codes: Sequence[str]) -> set[str]:
        from bank.classroom_morning import Morning

        return Morning(self.store, self.days).with_sort(day, codes)

    def _steps(self, day: dt.date) -> list[tuple[Slot, bool]]:
        """The steps of the day's routine, and whether only those with a word sort have it.

        One that was marked before it was renamed keeps its code.
        """
        from bank.morning.routine import DEFAULT_ROUTINE, Routine

        plain = self.store.setting("routine")
        routine = Routine.from_dict(plain) if plain else DEFAULT_ROUTINE
        steps = [timed.step for timed in routine.of_day(day, self.days.calendar())]
        places = {step.code: number for number, step in enumerate(routine.steps)}
        return [
            (Slot(STEP, places[step.code], step.name, None, step.code), step.needs_sort)
            for step in steps
        ]

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
        return read_date(said)
    except ValueError:
        raise BankError(f"day: {said[:20]!r} is no date; write YYYY-MM-DD") from None


def _slot(part: GivenView, numbers: Mapping[tuple[str, str], tuple[int, ...]]) -> Slot:
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
        numbers.get((part.item, part.faulty), ()),
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
