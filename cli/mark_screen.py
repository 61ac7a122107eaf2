"""How a sheet of marks looks in a terminal of 80 columns: rows, the row that is picked, the keys."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from bank.learner import Learner
from bank.progress.marks import DONE, NOT_ASKED, NOT_DONE, STEP
from bank.progress.sheet import ROW_KEYS, Sheet, Slot, State, fix_keys
from bank.skill import SKILLS

MARK_ROOM = 26
_KINDS = {"question": "", "sentence": "Fix: ", "topic": "Topic: ", STEP: "Step: "}


def sheet_lines(
    learner: Learner, sheet: Sheet, number: int, count: int, width: int, height: int = 24
) -> list[str]:
    """The whole screen for one learner: the list, or one row with what it can be."""
    day = f"{sheet.day:%A} {sheet.day.day} {sheet.day:%B}"
    left = f"{learner.code}  {learner.sign}   {day}"
    right = f"learner {number} of {count}"
    head = [f"{left:<{width - len(right)}}{right}", ""]
    foot = ["", *(_list_keys(sheet) if sheet.at is None else _picked(sheet, sheet.at, width))]
    if sheet.at is not None and sheet.slots[sheet.at].fixes:
        shown = [sheet.at]
    else:
        shown = _window(len(sheet.slots), sheet.at or 0, height - len(head) - len(foot) - 1)
    rows = [_row(sheet, at, sheet.slots[at], sheet.states[at], width) for at in shown]
    first_step = next((n for n, at in enumerate(shown) if sheet.slots[at].kind == STEP), 0)
    if first_step > 0 and len(head) + len(rows) + len(foot) < height:
        rows.insert(first_step, "")
    if len(shown) not in (1, len(sheet.slots)):
        head[1] = f"  {len(sheet.slots) - len(shown)} rows do not fit; their keys work all the same"
    return head + rows + foot


def _window(count: int, at: int, room: int) -> list[int]:
    """The rows that fit, with row `at` among them."""
    room = max(3, room)
    first = min(max(0, at - room // 2), max(0, count - room))
    return list(range(first, min(count, first + room)))


def _row(sheet: Sheet, at: int, slot: Slot, state: State, width: int) -> str:
    room = width - 7 - (MARK_ROOM if width >= 72 else MARK_ROOM // 2)
    text = textwrap.shorten(_KINDS[slot.kind] + slot.text, room, placeholder=" ...")
    pointer = ">" if sheet.at == at else " "
    return f"{pointer} {ROW_KEYS[at]}  {text:<{room}}  {state_words(slot, state)}".rstrip()


def state_words(slot: Slot, state: State) -> str:
    """A row's mark in words; nothing where it has none yet.

    >>> state_words(Slot("topic", 0, "Snow"), State(DONE, "verbal", amount=4))
    'verbal, 4 sentences'
    """
    if state.said is None:
        return "."
    if state.said != DONE:
        return {NOT_DONE: "not done", NOT_ASKED: "not asked"}[state.said]
    words = [state.help or "alone"]
    if slot.fixes:
        words.append(f"{len(slot.fixes) - len(state.missed)} of {len(slot.fixes)} fixed")
    if state.new:
        words.append(f"{len(state.new)} new")
    if state.amount is not None:
        words.append(f"{state.amount} sentence{'' if state.amount == 1 else 's'}")
    return ", ".join(words)


def _list_keys(sheet: Sheet) -> list[str]:
    rows = sheet.row_keys
    span = rows if len(rows) < 3 else f"{rows[0]} to {rows[-1]}"
    started = any(state.said is not None for state in sheet.states)
    every = (
        "all the rest alone, and on to the next"
        if started
        else "everything done alone, and on to the next"
    )
    pairs = [("a", every), (span, "pick the one that went otherwise")]
    if started:
        pairs.append(("Enter", "keep what is marked, and on to the next"))
    lines = [f"  {key:<7} {words}" for key, words in pairs]
    lines.append("  s skip this learner    b back to the one before    q stop here")
    return lines


def _picked(sheet: Sheet, at: int, width: int) -> list[str]:
    slot, state = sheet.slots[at], sheet.states[at]
    lines = _wrapped(slot.text, width)
    if slot.fixes:
        lines += _wrapped(slot.corrected, width, "right: ")
        for number, (key, fix) in enumerate(zip(fix_keys(slot), slot.fixes, strict=True), start=1):
            change = f"{fix['wrong'] or '(nothing)'} -> {fix['right'] or '(nothing)'}"
            mark = "MISSED" if number in state.missed else ""
            name = SKILLS[fix["skill"]].name
            lines.append(f"  {key}  {mark:<7} {name:<22} {change}"[:width])
        if state.new:
            found = ", ".join(code or "not named" for code in state.new)
            lines.append(f"     new errors: {found}"[:width])
        lines.append("")
        keys = " ".join(fix_keys(slot)) if len(slot.fixes) < 4 else f"{fix_keys(slot)[0]} ..."
        lines.append(f"  {keys:<7} missed (again: fixed)   + a new error   t type what was written")
    if slot.kind == "topic":
        lines.append("  0 to 9  how many sentences (9: nine or more)")
    lines += textwrap.wrap(
        "  ".join(
            [
                "a alone",
                *(f"{k} {word}" for k, word in sheet.keys.items()),
                "n not done",
                "x not asked",
            ]
        ),
        width - 2,
        initial_indent="  ",
        subsequent_indent="  ",
        break_on_hyphens=False,
    )
    lines.append("  Enter   back to the list")
    return lines


def _wrapped(text: str, width: int, label: str = "") -> list[str]:
    indent = " " * 5
    return textwrap.wrap(
        label + text, width, initial_indent=indent, subsequent_indent=indent, break_on_hyphens=False
    )


def summary(learner: Learner, sheet: Sheet) -> str:
    """One line for a learner whose sheet was kept.

    `alone` counts questions, sentence, topic and steps; fixes are said beside it.
    """
    marked = [state for state in sheet.states if state.said not in (None, NOT_ASKED)]
    alone = sum(state.said == DONE and not state.help for state in marked)
    line = f"{learner.code}: {alone} of {len(marked)} alone"
    fixes = [
        (len(slot.fixes), len(state.missed))
        for slot, state in zip(sheet.slots, sheet.states, strict=True)
        if slot.fixes and state.said == DONE
    ]
    if fixes:
        count, missed = sum(n for n, _ in fixes), sum(m for _, m in fixes)
        line += f", {count - missed} of {count} errors fixed"
    return line


def cell(slot: Slot, state: State, sheet: Sheet) -> str:
    """A row's mark in two or three letters, for the grid."""
    if state.said is None:
        return "."
    if state.said != DONE:
        return {NOT_DONE: "n", NOT_ASKED: "x"}[state.said]
    by_word = {word: key for key, word in sheet.keys.items()}
    letter = by_word.get(state.help, "?") if state.help else "a"
    if state.missed:
        letter += f"-{len(state.missed)}"
    if state.amount is not None:
        letter += str(state.amount)
    return letter


def column_name(slot: Slot) -> str:
    if slot.kind == STEP:
        return slot.text
    if slot.kind == "question":
        return str(slot.position + 1)
    return {"sentence": "fix", "topic": "topic"}.get(slot.kind, slot.kind)


def grid_lines(
    people: Sequence[tuple[Learner, Sheet]], row: int, column: int, width: int, editing: bool = True
) -> list[str]:
    """The class in rows, what they had in columns; the cell that is picked stands in brackets."""
    columns = _columns(people)
    day = people[0][1].day
    names = [_short(column_name(slot)) for slot in columns]
    code_room = max(4, *(len(learner.code) for learner, _ in people)) + 1
    each = max(5, min(8, (width - code_room) // max(1, len(columns))))
    lines = [f"{day:%A} {day.day} {day:%B}", ""]
    head = "".join(f" {name[: each - 2]:<{each - 1}}" for name in names)
    lines.append(f"{'':<{code_room}}{head}".rstrip())
    for r, (learner, sheet) in enumerate(people):
        by_name = {column_name(slot): n for n, slot in enumerate(sheet.slots)}
        cells = []
        for slot in columns:
            at = by_name.get(column_name(slot))
            text = "" if at is None else cell(sheet.slots[at], sheet.states[at], sheet)
            picked = editing and (r, at) == (row, column)
            cells.append(f"[{text}]".ljust(each) if picked else f" {text}".ljust(each))
        lines.append(f"{learner.code:<{code_room}}{''.join(cells)}".rstrip())
    return lines


def _columns(people: Sequence[tuple[Learner, Sheet]]) -> list[Slot]:
    """Everything that somebody had, once and in order: not all have as many questions or a sort."""
    by_place = {(slot.kind, slot.position): slot for _, sheet in people for slot in sheet.slots}
    kinds = list(_KINDS)
    return sorted(by_place.values(), key=lambda slot: (kinds.index(slot.kind), slot.position))


def _short(name: str) -> str:
    return name.split()[0].strip(",")
