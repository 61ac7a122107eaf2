"""Marks that were made on paper, typed into a spreadsheet: one row for each thing marked.

Columns: `day`, `learner`, `what`, `mark`. `what` is `all`, `question 2`, `sentence`, `fix 3` (of a
second sentence `sentence 2 fix 3`), `topic` or `step NAME`. `mark` is `alone`, a word for help,
`not done` or `not asked`; for a fix `fixed` or `missed`; a topic may begin with how many sentences.
An empty mark says nothing.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from bank.item import BankError
from bank.progress.marks import ALONE, DONE, NOT_ASKED, NOT_DONE, STEP
from bank.progress.sheet import Sheet, Slot, State
from bank.spreadsheet import guarded, mark_as_utf8, read_text, separator

COLUMNS = ("day", "learner", "what", "mark")
SHOWN = "text"  # a column that says what a row is about; nothing is read from it
_WORDS = {"alone": DONE, "not done": NOT_DONE, "not asked": NOT_ASKED}


def name_of(slot: Slot) -> str:
    """What a row calls a slot.

    >>> name_of(Slot("question", 1, "Why?")), name_of(Slot("step", 0, "Game", part="game"))
    ('question 2', 'step Game')
    """
    if slot.kind == STEP:
        return f"step {slot.text}"
    if slot.kind == "question" or slot.position:
        return f"{slot.kind} {slot.position + 1}"
    return slot.kind


def blank_rows(sheet: Sheet, learner: str) -> list[dict[str, str]]:
    """The rows of a sheet, with its marks where it has some, to fill in."""
    made = []
    for slot, state in zip(sheet.slots, sheet.states, strict=True):
        mark = "" if state.said is None else _word(state)
        if slot.kind == "topic" and state.amount is not None and state.said == DONE:
            mark = f"{state.amount} {state.help or 'alone'}"
        made.append((name_of(slot), mark, "" if slot.kind == STEP else slot.text))
        for number, fix in enumerate(slot.fixes, start=1):
            fixed = "missed" if number in state.missed else "fixed"
            change = f"{fix.get('wrong') or '(nothing)'} -> {fix.get('right') or '(nothing)'}"
            made.append((_fix_name(slot, number), fixed if state.said == DONE else "", change))
    first = {"day": sheet.day.isoformat(), "learner": learner}
    return [{**first, "what": what, "mark": mark, SHOWN: text} for what, mark, text in made]


def _fix_name(slot: Slot, number: int) -> str:
    """A fix is named alone in the first sentence, and with its sentence in another."""
    shown = slot.key_numbers[number - 1]
    return f"{name_of(slot)} fix {shown}" if slot.position else f"fix {shown}"


def _word(state: State) -> str:
    if state.said == DONE:
        return state.help or "alone"
    return next(word for word, said in _WORDS.items() if said == state.said)


def fill(sheet: Sheet, cells: Sequence[tuple[str, str]]) -> None:
    """Write (what, mark) pairs into a sheet; `BankError` says which cannot be."""
    for what, mark in cells:
        what, mark = (" ".join(text.split()).lower() for text in (what, mark))
        if not mark:
            continue
        if what == "all":
            said = _read_state(State(), mark, sheet.prompts, False)
            sheet.states = [said if one.said is None else one for one in sheet.states]
        elif match := re.fullmatch(r"(?:sentence (\d+) )?fix (\d+)", what):
            _fill_fix(sheet, int(match[1] or 1) - 1, int(match[2]), mark)
        else:
            at = _slot_named(sheet, what)
            topic = sheet.slots[at].kind == "topic"
            sheet.states[at] = _read_state(sheet.states[at], mark, sheet.prompts, topic)


def _slot_named(sheet: Sheet, what: str) -> int:
    names = [name_of(slot).lower() for slot in sheet.slots]
    codes = [f"step {slot.part}".lower() for slot in sheet.slots]
    for named in (names, codes):
        if what in named:
            return named.index(what)
    raise BankError(f"what: there is no {what[:40]!r} in this set; it has: {', '.join(names)}")


def _fill_fix(sheet: Sheet, sentence: int, number: int, mark: str) -> None:
    at = next((n for n, s in enumerate(sheet.slots) if s.fixes and s.position == sentence), None)
    if at is None or number not in sheet.slots[at].key_numbers:
        raise BankError(f"what: the sentence has no fix {number}")
    if mark not in ("fixed", "missed"):
        raise BankError(f"mark: a fix is fixed or missed, not {mark[:40]!r}")
    state = sheet.states[at]
    number = sheet.slots[at].key_numbers.index(number) + 1
    missed = state.missed | {number} if mark == "missed" else state.missed - {number}
    sheet.states[at] = replace(state, said=state.said or DONE, missed=missed)


def _read_state(state: State, mark: str, prompts: Sequence[str], topic: bool) -> State:
    words: Mapping[str, str] = {word.lower(): word for word in prompts}
    amount, rest = state.amount, mark
    if topic and (match := re.match(r"(\d{1,2})\b ?", mark)):
        amount, rest = int(match[1]), mark[match.end() :] or "alone"
    if rest in _WORDS:
        said = _WORDS[rest]
        kept = replace(state, said=said, help=ALONE, amount=amount)
        return kept if said == DONE else State(said)
    if rest in words:
        return replace(state, said=DONE, help=words[rest], amount=amount)
    known = ", ".join(["alone", *prompts, "not done", "not asked"])
    raise BankError(f"mark: {mark[:40]!r} is none of: {known}")


def read(path: Path) -> list[tuple[int, dict[str, str]]]:
    """The rows of a CSV file with their numbers, as a spreadsheet wrote it: comma, semicolon or tab.

    `BankError` where the file is no such table.
    """
    text = read_text(path)
    delimiter = separator(text.split("\n", 1)[0])
    reader = csv.reader(io.StringIO(text), delimiter=delimiter, strict=True)
    try:
        header = [name.strip().lower() for name in next(reader, [])]
        missing = [name for name in COLUMNS if name not in header]
        if missing:
            raise BankError(
                f"{path.name} has no column {missing[0]}; it needs: {', '.join(COLUMNS)}"
            )
        return [
            (reader.line_num, dict(zip(header, (cell.strip() for cell in cells), strict=False)))
            for cells in reader
            if any(cell.strip() for cell in cells)
        ]
    except csv.Error as error:
        raise BankError(
            f"{path.name} cannot be read near line {reader.line_num}: {error}"
        ) from None


def write(path: Path, rows: Iterable[Mapping[str, str]]) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, (*COLUMNS, SHOWN), lineterminator="\n")
        writer.writeheader()
        # A sentence may begin like a formula; a spreadsheet is to show it as text.
        writer.writerows({name: guarded(cell) for name, cell in row.items()} for row in rows)
    mark_as_utf8(path)
