"""The aide's commands: the answer key now; marking comes beside it."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import typer

from bank.item import BankError
from cli.common import (
    AIDE,
    DAY,
    JSON,
    add_commands,
    console,
    day_title,
    print_json,
    read_day,
    use_bank,
)


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, AIDE, {"key": key}, only)


def key(
    day: str = DAY,
    with_learners: bool = typer.Option(
        False, "--with-learners", help="Say which learner has what."
    ),
    pdf: bool = typer.Option(False, "--pdf", help="Make it as a PDF with a grid to tick."),
    to: Path = typer.Option(None, "--to", metavar="FOLDER", help="Where the PDF goes."),
    as_json: bool = JSON,
) -> int:
    """The answer key of a day: each sentence with its fixes in order, and expected answers.

    Example: binderbank key
    """
    from cli.show import show_key

    when = read_day(day)
    if pdf:
        return _key_pdf(when, to, as_json)
    with use_bank() as bank:
        found = bank.days.key(when)
        empty = not bank.days.sets(when)
    if empty:
        raise BankError(f"nothing is drawn for {when}; draw it first: binderbank draw {when}")
    if as_json:
        print_json(key_dict(found, with_learners))
        return 0
    screen = console()
    screen.print(f"Answer key, {day_title(when)}", style="bold")
    screen.print()
    show_key(screen, found, with_learners)
    return 0


def _key_pdf(day: dt.date, to: Path | None, as_json: bool) -> int:
    from bank.page import key_pdf
    from cli.paper import save_prints

    with use_bank() as bank:
        pages, problems = bank.paper.pages(day)
        made = key_pdf(bank.paper.day(day), pages, bank.paper.settings.size)
        return save_prints(bank, day, made.files, [*problems, *made.problems], to, as_json)


def key_dict(found, with_learners: bool) -> dict[str, object]:  # type: ignore[no-untyped-def]
    """The key as plain values; learner codes only where asked for."""
    return {
        "day": found.day,
        "sentences": [
            {
                "item": one.item,
                "corrected": one.corrected,
                "fixes": [{"number": n, **fix} for n, fix in enumerate(one.fixes, start=1)],
                "versions": [
                    {
                        "faulty": faulty,
                        "fixes": list(numbers),
                        **({"learners": list(codes)} if with_learners else {}),
                    }
                    for faulty, numbers, codes in one.versions
                ],
            }
            for one in found.sentences
        ],
        "answers": [
            {
                "item": one.item,
                "text": one.text,
                "answer": one.answer,
                "choices": list(one.choices),
                **({"learners": list(one.learners)} if with_learners else {}),
            }
            for one in found.answers
        ],
    }
