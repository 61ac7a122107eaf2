"""Marking: today learner by learner, one learner, the class in a grid, or from a spreadsheet."""

from __future__ import annotations

import datetime as dt
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

from bank.item import BankError
from cli.common import (
    AIDE,
    DONE,
    IN_PART,
    JSON,
    NARROWEST,
    TEACHER,
    add_commands,
    counted,
    print_json,
    read_day,
    say,
    say_next,
    table,
    use_bank,
)

if TYPE_CHECKING:
    from bank.classroom import Bank
    from bank.learner import Learner
    from bank.progress.sheet import Sheet

People = list[tuple["Learner", "Sheet"]]


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, AIDE, {"mark": mark}, only)
    add_commands(app, TEACHER, {"marking": marking}, only)


def mark(
    code: str = typer.Argument("", metavar="[CODE]", help="One learner; left out, one by one."),
    day: str = typer.Argument(
        "", metavar="[DATE]", help="YYYY-MM-DD, today or yesterday; left out, the last set."
    ),
    on: str = typer.Option("", "--on", metavar="DATE", help="The day, without a learner's code."),
    grid: bool = typer.Option(False, "--grid", help="The whole class on one screen."),
    blank: Path = typer.Option(
        None, "--blank", metavar="FILE", help="Write a spreadsheet to fill in (CSV)."
    ),
    take: Path = typer.Option(
        None, "--import", metavar="FILE", help="Take marks from a spreadsheet (CSV)."
    ),
    as_json: bool = JSON,
) -> int:
    """Mark what each learner did: one key where all was done alone. Marking again corrects.

    Example: binderbank mark
    """
    with use_bank() as bank:
        if take:
            return _take(bank, take, as_json)
        when = _day_of(bank, day or on)
        codes = [code] if code else []
        if blank:
            return _blank(bank, when, codes, blank)
        people = bank.marks.sheets(when, codes)
        if as_json:
            print_json({"day": when, "learners": [_sheet_dict(*pair) for pair in people]})
            return DONE
        if grid:
            return _grid(bank, people)
        return _one_by_one(bank, people)


def _day_of(bank: Bank, said: str) -> dt.date:
    return read_day(said) if said else bank.marks.day_to_mark(dt.date.today())


def _take(bank: Bank, path: Path, as_json: bool) -> int:
    done, refused = bank.marks.take(path)
    if as_json:
        print_json({"marked": [{"learner": c, "day": d} for c, d in done], "refused": refused})
    else:
        days = len(done)
        say(f"{days} learner{'' if days == 1 else 's'} marked from {path}")
        for line in refused:
            say(line, to_errors=True)
    return IN_PART if refused else DONE


def _blank(bank: Bank, day: dt.date, codes: Sequence[str], path: Path) -> int:
    from bank.progress.on_paper import write

    if path.exists():
        raise BankError(f"{path} is there already; name another file")
    rows = bank.marks.blank_rows(day, codes)
    write(path, rows)
    prompts = ", ".join(bank.marks.settings.prompts)
    say(f"{counted(len(rows), 'row')} for {day} in {path}")
    say(f"in the column mark: alone, {prompts}, not done, not asked; a fix: fixed or missed")
    say_next("then: ", bank.path, f"mark --import {path}")
    return DONE


def _sheet_dict(learner: Learner, sheet: Sheet) -> dict[str, Any]:
    return {"learner": learner.code, "marks": [mark.to_dict() for mark in sheet.marks()]}


# One learner after the other


def _one_by_one(bank: Bank, people: People) -> int:
    from cli.keyboard import keys

    kept: dict[str, str] = {}
    at = 0
    with keys() as read:
        while at < len(people):
            step = _mark_one(bank, people, at, read, kept)
            if step == 0:
                break
            at = max(0, at + step)
    clear()
    for line in kept.values():
        say(line)
    left = [learner.code for learner, _ in people if learner.code not in kept]
    if left:
        say(f"not marked now: {', '.join(left)}")
    return DONE


def _mark_one(bank: Bank, people: People, at: int, read: Any, kept: dict[str, str]) -> int:
    """Mark one learner; returns 1 to go on, -1 to go back, 0 to stop."""
    from bank.progress import sheet as keys
    from cli.keyboard import END
    from cli.mark_screen import sheet_lines

    learner, sheet = people[at]
    while True:
        show(sheet_lines(learner, sheet, at + 1, len(people), *screen_size()))
        key = read()
        if key == END:
            return 0
        said = sheet.press(key)
        if said == keys.WANTS_TEXT:
            _type_attempt(bank, sheet, read)
        elif said == keys.SAVED:
            _keep(bank, learner, sheet, kept)
            return 1
        elif said in (keys.SKIPPED, keys.WENT_BACK):
            return 1 if said == keys.SKIPPED else -1
        elif said == keys.STOPPED:
            _keep(bank, learner, sheet, kept)
            return 0


def _keep(bank: Bank, learner: Learner, sheet: Sheet, kept: dict[str, str]) -> None:
    """Keep what was marked, also where one stops in the middle of a learner."""
    from cli.mark_screen import summary

    if sheet.marks():
        bank.marks.save(learner, sheet)
        kept[learner.code] = summary(learner, sheet)


def _type_attempt(bank: Bank, sheet: Sheet, read: Any) -> None:
    from cli.keyboard import END, read_line

    assert sheet.at is not None
    head = [
        "Type what the learner wrote, then Enter (Escape: leave it).",
        "",
        f"  given: {sheet.slots[sheet.at].text}",
        f"  right: {sheet.slots[sheet.at].corrected}",
        "",
    ]
    show([*head, "  wrote: "])
    typed = read_line(read, lambda so_far: show([*head, f"  wrote: {so_far}"]))
    if not typed:
        return
    show([*head, f"  wrote: {typed}", "", "  comparing ..."])
    found = bank.marks.typed(sheet, typed)
    kept = "it is kept" if bank.marks.settings.attempts else "what was typed is not kept"
    show(
        [
            *head,
            f"  wrote: {typed}",
            "",
            *(f"  {line}" for line in found),
            "",
            f"  ({kept}; any key goes on)",
        ]
    )
    if sys.stdin.isatty() and read() == END:
        return


# The class in a grid


def _grid(bank: Bank, people: People) -> int:
    from cli.keyboard import keys
    from cli.mark_screen import grid_lines, summary

    if not sys.stdin.isatty():
        for line in grid_lines(people, 0, 0, screen_width(), editing=False):
            print(line)
        return DONE
    with keys() as read:
        is_kept = drive_grid(people, read)
    clear()
    if not is_kept:
        say("nothing was changed")
        return DONE
    for learner, sheet in people:
        if sheet.marks():
            bank.marks.save(learner, sheet)
            say(summary(learner, sheet))
    return DONE


def drive_grid(people: People, read: Any) -> bool:
    """Let keys fill the grid; True where it is to be kept."""
    from bank.progress.sheet import ALL_ALONE, STOP
    from cli.keyboard import DOWN, END, ENTER, ESCAPE, LEFT, RIGHT, UP
    from cli.mark_screen import grid_lines

    row = column = 0
    moves = {UP: (-1, 0), DOWN: (1, 0), LEFT: (0, -1), RIGHT: (0, 1), " ": (0, 1), "\t": (0, 1)}
    while True:
        learner, sheet = people[row]
        column = min(column, len(sheet.slots) - 1)
        show(grid_lines(people, row, column, screen_width()) + _grid_keys(sheet, column))
        key = read()
        if key in (STOP, ESCAPE, END):
            return False
        if key == ENTER:
            return True
        if key in moves:
            place = (sheet.slots[column].kind, sheet.slots[column].position)
            row = min(len(people) - 1, max(0, row + moves[key][0]))
            slots = people[row][1].slots
            # Not everybody has the same rows: up and down stay with the same thing where it is.
            places = [(slot.kind, slot.position) for slot in slots]
            column = places.index(place) if place in places else column
            column = min(len(slots) - 1, max(0, column + moves[key][1]))
        elif key in ("A", "*"):
            for _, one in [people[row]] if key == "A" else people:
                one.at = None
                one.press(ALL_ALONE)
            row = min(len(people) - 1, row + 1)
            column = 0
        else:
            sheet.at = column
            sheet.press(key)
            if sheet.at is None and column < len(sheet.slots) - 1:
                column += 1
            sheet.at = None


def _grid_keys(sheet: Sheet, column: int) -> list[str]:
    import textwrap

    from bank.progress.sheet import fix_keys

    slot = sheet.slots[column]
    width = screen_width()
    lines = ["", *textwrap.wrap(f"{slot.text}", width, initial_indent="  ", subsequent_indent="  ")]
    for key, fix in zip(fix_keys(slot), slot.fixes, strict=True):
        change = f"{fix['wrong'] or '(nothing)'} -> {fix['right'] or '(nothing)'}"
        lines.append(f"  {key} missed: {change}"[:width])
    if slot.kind == "topic":
        lines.append("  0 to 9 sentences")
    helps = "  ".join(f"{key} {word}" for key, word in sheet.keys.items())
    lines += [
        "",
        f"  a alone  {helps}  n not done  x not asked",
        "  A the rest of this row alone   * the rest of the class alone",
        "  arrows move   Enter keep all   q leave without keeping",
    ]
    return lines


# The screen


def screen_size() -> tuple[int, int]:
    """Columns, at most 100, and rows."""
    import shutil

    size = shutil.get_terminal_size((80, 24))
    return max(NARROWEST, min(100, size.columns)), max(12, size.lines)


def screen_width() -> int:
    return screen_size()[0]


def clear() -> None:
    if sys.stdout.isatty():
        sys.stdout.write("\x1b[2J\x1b[H")
        sys.stdout.flush()


def show(lines: Sequence[str]) -> None:
    """Draw a whole screen in a terminal; nothing where the output is piped."""
    if sys.stdout.isatty():
        sys.stdout.write("\x1b[2J\x1b[H" + "\n".join(lines))
        sys.stdout.flush()


def marking(
    prompt: list[str] = typer.Option(
        [], "--prompt", help="A word for help; say each, the least help first."
    ),
    attempts: bool = typer.Option(
        None, "--keep-attempts/--drop-attempts", help="Whether what a learner wrote is kept."
    ),
    mix: bool = typer.Option(
        None, "--mix/--no-mix", help="Sentences of mastered skills and one in work."
    ),
    alone: int = typer.Option(0, "--alone", help="Percent alone below which one is stuck."),
    stuck_days: int = typer.Option(0, "--stuck-days", help="Days in a row below it."),
    goal: int = typer.Option(0, "--goal", help="Percent of the rule in written goals."),
    goal_days: int = typer.Option(0, "--goal-days", help="Data days in a row of that rule."),
    sure: int = typer.Option(0, "--sure", help="Percent certainty to call a skill mastered."),
    window: int = typer.Option(0, "--window", help="How many last opportunities are looked at."),
    fewest: int = typer.Option(0, "--fewest", help="With fewer it is too few to tell."),
    as_json: bool = JSON,
) -> int:
    """Show or change how marks are kept and judged: words for help, rules, what is kept.

    Example: binderbank marking --prompt point --prompt say --prompt show --prompt "hand over hand"
    """
    said: dict[str, Any] = {
        "prompts": tuple(prompt) or None,
        "attempts": attempts,
        "mix": mix,
        "stuck_days": stuck_days or None,
        "goal_days": goal_days or None,
        "window": window or None,
        "fewest": fewest or None,
        "alone_share": alone / 100 or None,
        "goal_share": goal / 100 or None,
        "certainty": sure / 100 or None,
    }
    changes = {name: value for name, value in said.items() if value is not None}
    with use_bank() as bank:
        now = bank.marks.change_settings(**changes) if changes else bank.marks.settings
    if as_json:
        print_json(now.to_dict())
        return DONE
    from cli.common import console

    rows = table("setting", "is")
    rows.add_row("help, least first", ", ".join(now.prompts))
    rows.add_row("stuck", f"{now.stuck_days} days in a row below {now.alone_share:.0%} alone")
    rows.add_row("rule of goals", f"{now.goal_share:.0%} on {now.goal_days} data days in a row")
    rows.add_row(
        "mastered",
        f"{now.certainty:.0%} sure that the rate is above {now.goal_share:.0%},"
        f" over the last {now.window} opportunities",
    )
    rows.add_row("too few to tell", f"fewer than {now.fewest} opportunities")
    rows.add_row("comes back after", f"{', '.join(map(str, now.review))} school days")
    rows.add_row("what learners wrote", "is kept" if now.attempts else "is not kept")
    rows.add_row("sentences", "mastered skills and one in work" if now.mix else "any skills")
    console().print(rows)
    return DONE
