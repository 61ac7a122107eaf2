"""The sheet that an aide marks one learner on: rows, and what each key does. No terminal here.

All alone is one key. Another key picks a row; the next says how it went. What is not picked is
alone when the sheet is closed with "all alone".
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from bank.progress.marks import ALONE, DONE, FIXED, MISSED, NEW, NOT_ASKED, NOT_DONE, STEP, Mark

# Rows have keys without Shift, and none that means something else in the list: who wants a row must
# not close the sheet instead.
ROW_KEYS = "1234567890cdefghijklmnoprtuvwxyzCDEFGHIJKLMNOPRTUVWXYZ"
FIX_KEYS = "1234567890ABCDEFGHIJKLMNOPQRSTUVWXYZ"
ALL_ALONE, NONE_DONE, UNASKED, SKIP, BACK, STOP, TYPE, MORE = "a", "n", "x", "s", "b", "q", "t", "+"
KEEP = "\n"
# Letters that mean something else; a word for help gets another of its own.
_TAKEN = frozenset((ALL_ALONE, NONE_DONE, UNASKED, SKIP, BACK, STOP, TYPE))
# What a key press may ask of the terminal.
GO_ON, SAVED, SKIPPED, WENT_BACK, STOPPED, WANTS_TEXT = (
    "",
    "saved",
    "skipped",
    "back",
    "stop",
    "text",
)


@dataclass(frozen=True, slots=True)
class Slot:
    """One thing to mark: `fixes` (plain dicts, left to right) for a sentence, else none.

    `faulty` and `corrected` are there to mark what a learner wrote. `numbers` are the numbers that the
    fixes have on the key of the day, where a learner's version lacks some of the others'.
    """

    kind: str
    position: int
    text: str
    item: str | None = None
    part: str = ""
    fixes: tuple[Mapping[str, Any], ...] = ()
    faulty: str = ""
    corrected: str = ""
    numbers: tuple[int, ...] = ()

    @property
    def key_numbers(self) -> tuple[int, ...]:
        """The number of each fix as the key of the day has it."""
        own = tuple(range(1, len(self.fixes) + 1))
        return self.numbers if len(self.numbers) == len(own) else own


@dataclass(frozen=True, slots=True)
class State:
    """How one row stands: `said` is None, `done`, `not-done` or `not-asked`."""

    said: str | None = None
    help: str = ALONE
    missed: frozenset[int] = frozenset()
    new: tuple[str, ...] = ()
    amount: int | None = None
    attempt: str | None = None


def help_keys(prompts: Sequence[str]) -> dict[str, str]:
    """The key for each word of help: its first letter that is still free.

    >>> help_keys(("gesture", "verbal", "model", "physical"))
    {'g': 'gesture', 'v': 'verbal', 'm': 'model', 'p': 'physical'}
    >>> help_keys(("shown", "said"))
    {'h': 'shown', 'i': 'said'}
    """
    keys: dict[str, str] = {}
    for word in prompts:
        spare = (*word.lower(), *"cdefghijklmnopruvwyz")
        letter = next(c for c in spare if c.isalpha() and c not in _TAKEN and c not in keys)
        keys[letter] = word
    return keys


def fix_keys(slot: Slot) -> str:
    """The key of each fix of a sentence, in order: its number on the key of the day."""
    return "".join(FIX_KEYS[number - 1] for number in slot.key_numbers)


@dataclass
class Sheet:
    """One learner's day. `press` takes a key and says what the terminal has to do."""

    day: dt.date
    slots: Sequence[Slot]
    prompts: Sequence[str]
    states: list[State] = field(default_factory=list)
    at: int | None = None

    def __post_init__(self) -> None:
        self.states = self.states or [State() for _ in self.slots]
        self.keys = help_keys(self.prompts)

    @property
    def row_keys(self) -> str:
        return ROW_KEYS[: len(self.slots)]

    def press(self, key: str) -> str:
        """Take one key; returns one of the words above (empty: draw the sheet again)."""
        if key == "\x1b":
            key = STOP if self.at is None else KEEP
        key = KEEP if key == "\r" else key
        return self._list(key) if self.at is None else self._row(key, self.at)

    def _list(self, key: str) -> str:
        if key == ALL_ALONE:
            self.states = [
                replace(one, said=DONE, help=ALONE) if one.said is None else one
                for one in self.states
            ]
            return SAVED
        if key in self.row_keys:
            self.at = self.row_keys.index(key)
            return GO_ON
        ends = {KEEP: SAVED, SKIP: SKIPPED, " ": SKIPPED, BACK: WENT_BACK, STOP: STOPPED}
        return ends.get(key, GO_ON)

    def _row(self, key: str, at: int) -> str:
        slot, state = self.slots[at], self.states[at]
        if key == TYPE and slot.fixes:
            return WANTS_TEXT
        if key and key in fix_keys(slot):
            number = fix_keys(slot).index(key) + 1
            self._set(at, replace(state, said=DONE, missed=state.missed ^ {number}))
        elif slot.fixes and key == MORE:
            self._set(at, replace(state, said=DONE, new=(*state.new, "")))
        elif slot.kind == "topic" and key.isdigit():
            self._set(at, replace(state, said=DONE, amount=int(key)))
            self.at = None
        elif key in (ALL_ALONE, NONE_DONE, UNASKED) or key in self.keys:
            self._set(at, _said(state, key, self.keys))
            self.at = None
        elif key in (KEEP, BACK):
            self.at = None
        return GO_ON

    def _set(self, at: int, state: State) -> None:
        self.states[at] = state

    def typed(self, attempt: str, missed: Sequence[int], new: Sequence[str], keep: bool) -> None:
        """What the learner wrote was compared: these fixes are missed, and new errors have skills."""
        if self.at is not None:
            state = self.states[self.at]
            kept = attempt if keep else None
            state = replace(
                state, said=DONE, missed=frozenset(missed), new=tuple(new), attempt=kept
            )
            self._set(self.at, state)

    def marks(self) -> list[Mark]:
        """The marks of all rows that were marked."""
        pairs = zip(self.slots, self.states, strict=True)
        return [mark for slot, state in pairs for mark in marks_of(self.day, slot, state)]


def _said(state: State, key: str, keys: Mapping[str, str]) -> State:
    if key in (NONE_DONE, UNASKED):
        return State(NOT_DONE if key == NONE_DONE else NOT_ASKED)
    return replace(state, said=DONE, help=keys.get(key, ALONE))


def marks_of(day: dt.date, slot: Slot, state: State) -> list[Mark]:
    """One row as marks: the whole, and for a sentence each fix and each new error."""
    if state.said is None:
        return []
    base = Mark(day, slot.kind, slot.position, slot.part, slot.item, help=state.help)
    marks = [replace(base, outcome=state.said, amount=state.amount, attempt=state.attempt)]
    if state.said != DONE:
        return marks
    for number, fix in enumerate(slot.fixes, start=1):
        outcome = MISSED if number in state.missed else FIXED
        marks.append(replace(base, part=str(number), skill=fix["skill"], outcome=outcome))
    for number, skill in enumerate(state.new, start=1):
        marks.append(replace(base, part=f"new {number}", skill=skill, outcome=NEW))
    return marks


def state_of(slot: Slot, marks: Sequence[Mark]) -> State:
    """How a row stands by its marks: the other way round.

    Marks of another item, which was swapped away since, say nothing about this one.
    """
    mine = [
        mark
        for mark in marks
        if (mark.kind, mark.position, mark.item) == (slot.kind, slot.position, slot.item)
    ]
    base = next((mark for mark in mine if mark.kind == STEP or not mark.part), None)
    if base is None:
        return State()
    return State(
        base.outcome,
        base.help,
        frozenset(int(mark.part) for mark in mine if mark.outcome == MISSED),
        tuple(mark.skill for mark in mine if mark.outcome == NEW),
        base.amount,
        base.attempt,
    )
