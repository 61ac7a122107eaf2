"""Looking ahead: the plan, how long the bank lasts, and who shares what."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from bank.choose.rules import DEFAULT_SCOPES, SCOPES
from bank.item import BankError
from bank.learner import grade_word
from cli.common import (
    IN_PART,
    JSON,
    SPECIALIST,
    TEACHER,
    add_commands,
    console,
    counted,
    day_title,
    print_json,
    progress,
    read_day,
    say,
    use_bank,
)

if TYPE_CHECKING:
    from bank.choose.stock import Cell, Lasting

SLOT_WORDS = {"question": "questions", "sentence": "sentences to fix", "topic": "topics"}
TOP_GRADE = 5
SHADES = " ░▒▓█"


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, TEACHER, {"plan": plan, "share": share}, only)
    add_commands(app, SPECIALIST, {"stock": stock}, only)


def plan(
    start: str = typer.Option("today", "--from", metavar="DATE", help="The first day."),
    end: str = typer.Option("", "--to", metavar="DATE", help="The last day."),
    weeks: int = typer.Option(4, "--weeks", help="How many weeks, where --to is not said."),
    skip: str = typer.Option("", "--skip", metavar="DATE", help="A lost day: move the rest on."),
    as_json: bool = JSON,
) -> int:
    """Fix the sets of the school days ahead; `draw` then takes the planned sets.

    Example: binderbank plan --weeks 2
    """
    from bank.classroom_plan import Plans

    with use_bank() as bank:
        plans = Plans(bank.days)
        if skip:
            moved = plans.skip(read_day(skip))
            if as_json:
                print_json({"skipped": read_day(skip), "moved_to": moved})
            elif moved:
                say(
                    f"{skip} is a day off now; its sets and those after it moved on, to {moved[-1]}"
                )
            else:
                say(f"{skip} is a day off now; there was no set to move")
            return 0
        first = read_day(start)
        if not end and weeks < 1:
            raise BankError(f"a plan is at least one week long, not {weeks}")
        last = read_day(end) if end else first + dt.timedelta(days=7 * weeks - 1)
        days = (last - first).days + 1
        with progress("planning", max(1, days * 5 // 7)) as step:
            planned = plans.make(first, last, step)
    if as_json:
        print_json(
            {"days": [{"day": one.day, "sets": one.sets, "notes": one.notes} for one in planned]}
        )
        return IN_PART if any(one.notes for one in planned) else 0
    whole = sum(not one.notes for one in planned)
    say(f"{len(planned)} school days planned, {whole} of them with nothing less than wished")
    for one in planned:
        for line in one.notes[:3]:
            say(f"  {one.day}  {line}")
        if len(one.notes) > 3:
            say(f"  {one.day}  and {len(one.notes) - 3} more; see: binderbank draw {one.day}")
    return IN_PART if whole < len(planned) else 0


def share(
    slot: str = typer.Argument("", metavar="[SLOT]", help="questions, sentence or topic."),
    scope: str = typer.Argument("", metavar="[SCOPE]", help="class, group or own."),
    as_json: bool = JSON,
) -> int:
    """Say who shares a slot: the class, a group, or each their own. Without words, show it.

    Example: binderbank share questions group
    """
    with use_bank() as bank:
        kept = bank.store.setting("draw", {})
        scopes = {**DEFAULT_SCOPES, **kept.get("scopes", {})}
        if slot:
            kind = slot.lower().rstrip("s")
            if kind not in DEFAULT_SCOPES:
                raise BankError(f"{slot!r} is no slot; it is questions, sentence or topic")
            if scope not in SCOPES:
                raise BankError(f"{scope!r} is no way to share; it is one of {', '.join(SCOPES)}")
            scopes[kind] = scope
            bank.store.set_setting("draw", {**kept, "scopes": scopes})
        lines = [line for kind in DEFAULT_SCOPES for line in _circles(bank, kind, scopes[kind])]
    if as_json:
        print_json({"scopes": scopes})
        return 0
    for line in lines:
        say(line)
    return 0


def _circles(bank, kind: str, scope: str) -> list[str]:  # type: ignore[no-untyped-def]
    """One line for each slot: who shares it now, and whose band stands apart."""
    from bank.choose.draw import between
    from bank.choose.share import circles

    today = dt.date.today()
    found = circles([one for one in bank.days.learners() if one.in_class(today)], scope)
    together = [one for one in found if len(one.learners) > 1]
    alone = [one.codes[0] for one in found if len(one.learners) == 1]
    said = [f"{', '.join(one.codes)} share ({between(one.low, one.high)})" for one in together]
    if alone:
        said.append(f"{', '.join(alone)} {'has' if len(alone) == 1 else 'have'} their own")
    return [f"{SLOT_WORDS[kind]} by {scope}: {'; '.join(said) or 'no learners yet'}"]


def stock(
    start: str = typer.Option(
        "tomorrow", "--from", metavar="DATE", help="The first day looked at."
    ),
    days: int = typer.Option(60, "--days", help="How many school days to look ahead."),
    frames: Path = typer.Option(
        None, "--frames", metavar="FILE", help="Write a sheet of what to write."
    ),
    as_json: bool = JSON,
) -> int:
    """What the bank has, on which school day each slot first steps down, and what would help.

    Example: binderbank stock --days 120
    """
    from bank.choose.stock import cells, lasting

    if days < 1:
        raise BankError(f"look at least one school day ahead, not {days}")
    with use_bank() as bank:
        have = cells(bank.store)
        ahead: list[Lasting] = []
        if len(bank.learners):
            with progress("drawing ahead", None) as step:
                ahead = lasting(bank.store, bank.days.rules(), read_day(start), days, step)
        if frames:
            from bank.choose.frames import frame_rows, write_frames

            count = write_frames(frames, frame_rows(bank.store, ahead))
            if as_json:
                print_json({"file": str(frames), "frames": count})
                return 0
            say(
                f"{counted(count, 'frame')} written to {frames}; fill the column text, then import it"
            )
            return 0
    if as_json:
        print_json(
            {
                "cells": [_plain(one) for one in have],
                "lasts": [_plain(one) for one in ahead],
                "looked_ahead": days,
            }
        )
        return 0
    for kind in SLOT_WORDS:
        _show_heat([one for one in have if one.kind == kind], kind)
    for one in ahead:
        say(lasting_line(one, days))
    if not ahead:
        say("there is no learner yet, so nothing runs out")
    return 0


def _plain(one: Cell | Lasting) -> dict[str, object]:
    return {name: getattr(one, name) for name in one.__slots__}


def lasting_line(one: Lasting, looked: int) -> str:
    """How long a slot lasts, and what would help, in one line."""
    who = ", ".join(one.learners)
    what = SLOT_WORDS[one.kind]
    if one.steps_down is None:
        return f"{who}: {what} last longer than {looked} school days"
    word = f"{one.short_of}-" if one.short_of else ""
    level = "K" if one.grade == 0 else f"grade {one.grade}"
    more = f"10 more give {one.more_days} more day{'s' if one.more_days != 1 else ''}"
    return (
        f"{who}: {what} last until {day_title(one.steps_down)} ({one.days} school days)."
        f" Short of: {word}{what} in {level} ({more})"
    )


def _show_heat(have: Sequence[Cell], kind: str) -> None:
    """Counts by grade: a row for each question word and the largest themes, shaded by how many."""
    by_word: Counter[tuple[str, int]] = Counter()
    by_theme: Counter[tuple[str, int]] = Counter()
    for one in have:
        grade = min(one.grade, TOP_GRADE)
        by_word[one.question_word, grade] += one.count
        by_theme[one.theme or "(no theme)", grade] += one.count
    total = sum(by_word.values())
    screen = console()
    screen.print(f"{SLOT_WORDS[kind].capitalize()}: {total}", style="bold")
    if not total:
        return
    heads = [grade_word(grade) for grade in range(TOP_GRADE)] + [f"{TOP_GRADE}+"]
    screen.print(f"{'':16}" + "".join(f"{head:>8}" for head in heads))
    if kind == "question":
        _rows(screen, by_word)
    _rows(screen, by_theme, most=12)
    screen.print()


def _rows(screen, counts: Counter[tuple[str, int]], most: int = 20) -> None:  # type: ignore[no-untyped-def]
    totals = Counter[str]()
    for (name, _), count in counts.items():
        totals[name] += count
    peak = max(counts.values())
    for name, _ in totals.most_common(most):
        line = f"{name or '-':16.16}"
        for grade in range(TOP_GRADE + 1):
            count = counts[name, grade]
            shade = SHADES[0 if not count else 1 + min(3, 4 * count // (peak + 1))]
            line += f"{shade + shade:>3}{count:>5}"
        screen.print(line)
    if len(totals) > most:
        screen.print(f"and {len(totals) - most} more themes")
