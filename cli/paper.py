"""What is printed and shown: pages, strips, board, and forgetting them again."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

import typer

from bank.item import BankError
from bank.learner import somebody_in_class
from cli.common import (
    CODES,
    DAY,
    DONE,
    IN_PART,
    JSON,
    REFUSED,
    TEACHER,
    add_commands,
    ask_yes,
    console,
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
    from bank.page.content import LearnerPage, PageFile

TO = typer.Option(None, "--to", metavar="FOLDER", help="Where; else beside the bank.")
ANYWAY = typer.Option(False, "--anyway", help="Also on a day without school.")
MOST_NAMED = 8  # codes in the name of a file
GROUP = typer.Option("", "--group", help="Only for this group.")
# What goes on which paper, by the word in a file's name (common practice).
PAPERS = {
    "pages": "plain paper, one set for each learner, into the binders",
    "strips": "card, to cut along the lines",
    "wall-strips": "card, to cut along the lines, for the wall",
    "key": "colored paper, for the adults",
    "proof": "plain paper, for you, before the bell",
    "turns": "card, for the wall",
    "job-cards": "card, one for each job",
    "sort-cards": "card, to cut along the lines",
    "sort-key": "colored paper, for the adults",
    "building-cards": "card, to cut along the lines",
    "building-key": "colored paper, for the adults",
}


def register(app: typer.Typer, only: str = "") -> None:
    teacher = {
        "pages": pages,
        "strips": strips,
        "board": board,
        "paper": paper,
        "forget-prints": forget_prints,
    }
    add_commands(app, TEACHER, teacher, only)


def pages(
    day: str = DAY,
    codes: list[str] = CODES,
    to: Path = TO,
    anyway: bool = ANYWAY,
    as_json: bool = JSON,
) -> int:
    """Make the binder pages of a day as a PDF, in each learner's face, size and way to answer.

    Printed files hold no name. Delete the folder when the day is done: binderbank forget-prints

    Example: binderbank pages tomorrow
    """
    from bank.page import binder_pages

    when = read_day(day)
    with use_bank() as bank:
        drawn(bank, when, codes, anyway)
        made, problems = bank.paper.pages(when, codes)
        said = bank.paper.settings
        done = binder_pages(bank.paper.day(when), made, said.size, said.both_sides)
        notes = _notes(bank, [when], codes)
        wrong = [*problems, *done.problems]
        files = _own_names(bank, when, done.files, made)
        return save_prints(bank, when, files, wrong, to, as_json, notes)


def strips(
    day: str = DAY,
    codes: list[str] = CODES,
    wall: bool = typer.Option(False, "--wall", help="Capitals 20 mm high, to read from 4 metres."),
    to: Path = TO,
    anyway: bool = ANYWAY,
    as_json: bool = JSON,
) -> int:
    """Make strips to cut: each question, sentence and topic of a day once.

    Example: binderbank strips --wall
    """
    from bank.page import strips as make

    when = read_day(day)
    with use_bank() as bank:
        drawn(bank, when, codes, anyway)
        made, problems = bank.paper.pages(when, codes)
        done = make(bank.paper.day(when), made, bank.paper.settings.size, wall)
        files = _own_names(bank, when, done.files, made)
        return save_prints(bank, when, files, [*problems, *done.problems], to, as_json)


def board(
    day: str = DAY,
    codes: list[str] = CODES,
    group: str = GROUP,
    to: Path = TO,
    anyway: bool = ANYWAY,
    as_json: bool = JSON,
) -> int:
    """Make the board: one file for a projector or screen, which works without a network.

    Arrow keys show one thing after another; Enter opens the fixes one by one. What is typed into
    its lines stays on the screen and is gone when it is closed.

    Example: binderbank board --group A
    """
    from bank.page import board_html

    when = read_day(day)
    with use_bank() as bank:
        drawn(bank, when, codes, anyway)
        made, problems = bank.paper.pages(when, codes, group)
        done = board_html(bank.paper.day(when), made)
        files = _own_names(bank, when, done.files, made, group)
        return save_prints(bank, when, files, [*problems, *done.problems], to, as_json)


def drawn(bank: Bank, day: dt.date, codes: Sequence[str], anyway: bool) -> None:
    """Draws what is not drawn yet, so that whoever asks first is served."""
    asked = somebody_in_class(bank.days.learners(codes), day)
    wanted = {one.code for one in asked if not one.is_away(day)}
    if wanted - {one.learner.code for one in bank.days.sets(day, codes)}:
        bank.days.draw(day, codes, None, anyway)


def save_prints(
    bank: Bank,
    day: dt.date | None,
    files: Sequence[PageFile],
    problems: Sequence[str],
    to: Path | None,
    as_json: bool,
    notes: Sequence[str] = (),
    more: Mapping[str, Any] = MappingProxyType({}),
) -> int:
    """Saves what was made and says where it is, what to print it on, and what went wrong.

    `notes` are worth knowing, and nothing is missing on the paper for them. `more` are further
    keys of what `as_json` prints.
    """
    from bank.page import save

    folder = to or bank.paper.prints / (day.isoformat() if day else "")
    written, unwritten = save(files, folder)
    if written and bank.store.writable:
        # Whoever forgets a learner is told where printed pages with the code may lie.
        from bank.store_marks import note_written

        note_written(bank.store, str(folder.absolute()), "prints")
    wrong = [*problems, *unwritten]
    if as_json:
        printed = {"folder": str(folder), "files": written, "problems": wrong, "notes": notes}
        print_json({**printed, **more})
    else:
        if written:
            say(f"in {folder}:")
            rows = table("file", "print it on", keep=())
            for path in written:
                rows.add_row(path.name, _on_paper(path.name))
            console().print(rows)
            for line in notes:
                say(line)
        for line in wrong:
            say(line, to_errors=True)
    if not written:
        return REFUSED
    return IN_PART if wrong else DONE


def _own_names(
    bank: Bank,
    day: dt.date,
    files: Sequence[PageFile],
    made: Sequence[LearnerPage],
    group: str = "",
) -> list[PageFile]:
    """Files that are not for the whole class under names of their own, so that its files stay."""
    if len(made) == len(bank.days.sets(day)):
        return list(files)
    who = f"group-{group}"
    if not group or not re.fullmatch("[A-Za-z0-9-]+", group):
        codes = [page.code for page in made]
        more = [f"and-{len(codes) - MOST_NAMED}-more"] if len(codes) > MOST_NAMED else []
        who = "-".join([*codes[:MOST_NAMED], *more])
    kind = re.compile(rf"({day}-(?:{'|'.join(PAPERS)}|board))")
    return [replace(file, name=kind.sub(rf"\1-{who}", file.name, count=1)) for file in files]


def print_again(bank: Bank, day: dt.date, code: str) -> list[str]:
    """What to type after a swap where the day is on paper already; empty where nothing is."""
    (state,) = [one.state for one in bank.days.sets(day, [code])]
    names = [path.name[len(f"{day}-") :] for path in bank.paper.prints.glob(f"*/{day}-*")]
    when = "" if day == dt.date.today() else f" {day}"
    commands = {
        "pages": f"pages{when} --for {code}",
        "strips": f"strips{when} --for {code}",
        "key": f"key{when} --pdf",
        "wall-strips": f"strips{when} --for {code} --wall",
        "board": f"board{when}",
    }
    made = {kind for kind in commands for name in names if name.startswith(kind)}
    if state == "printed":
        made |= {"pages", "strips", "key"}
    return [words for kind, words in commands.items() if kind in made]


def _notes(bank: Bank, days: Sequence[dt.date], codes: Sequence[str] = ()) -> list[str]:
    """A line for each day on which one who circles has something to say instead."""
    from cli.show import to_be_said_line

    lines = [(day, to_be_said_line(bank.days.sets(day, codes))) for day in days]
    return [f"{day}: {line}" if len(days) > 1 else line for day, line in lines if line]


def _on_paper(name: str) -> str:
    kinds = [kind for kind in PAPERS if name[len("2026-09-14") :].startswith(f"-{kind}-")]
    return PAPERS[max(kinds, key=len)] if kinds else "nothing: open it in a browser"


def print_mornings(
    bank: Bank, days: Sequence[dt.date], to: Path | None, anyway: bool, as_json: bool
) -> int:
    """Pages, strips, key and proof sheet of these days in one folder; their sets become printed."""
    files: list[PageFile] = []
    problems: list[str] = []
    for day in days:
        drawn(bank, day, (), anyway)
        made, wrong = bank.paper.morning(day)
        files += made
        problems += wrong
    first = days[0].isoformat()
    folder = to or bank.paper.prints / (first if len(days) == 1 else f"{first}-week")
    notes = _notes(bank, days)
    done = save_prints(bank, None, files, problems, folder, as_json, notes)
    if done != REFUSED:
        for day in days:
            bank.days.printed(day)
        if not as_json:
            say_next("when the day is done: ", bank.path, "forget-prints")
    return done


def paper(
    size: str = typer.Option("", "--size", help="letter or a4."),
    both_sides: bool = typer.Option(
        None, "--both-sides/--one-side", help="Whether the printer turns the sheet."
    ),
    stuck: str = typer.Option("", "--stuck", help="What to do when stuck, in your words."),
    lunch: str = typer.Option(None, "--lunch", help="What the board says for lunch."),
    special: list[str] = typer.Option(
        [], "--special", help="WEEKDAY=WORDS or DATE=WORDS; no words take it away."
    ),
    as_json: bool = JSON,
) -> int:
    """Show or change what all paper has in common: sheet, words for stuck, lunch, specials.

    The steps of the morning are those of the routine: binderbank routine

    Example: binderbank paper --size a4 --special monday=Music
    """
    from bank.page import PAPERS as SIZES

    changes: dict[str, object] = {}
    if size:
        if size not in SIZES:
            raise BankError(f"{size!r} is no size of paper here; say {' or '.join(SIZES)}")
        changes["size"] = size
    if both_sides is not None:
        changes["both_sides"] = both_sides
    if stuck:
        changes["stuck"] = stuck
    if lunch is not None:
        changes["lunch"] = lunch
    with use_bank() as bank:
        if special:
            changes["specials"] = _specials(bank.paper.settings.specials, special)
        said = bank.paper.change_settings(**changes) if changes else bank.paper.settings
        steps = [step.name for step in bank.morning.routine().steps]
    if as_json:
        print_json({**said.to_dict(), "steps": steps})
        return DONE
    rows = table("setting", "is")
    rows.add_row("paper", f"{said.size}, {'both sides' if said.both_sides else 'one side'}")
    rows.add_row("steps", ", ".join(steps) or "-")
    rows.add_row("when stuck", said.stuck)
    rows.add_row("lunch", said.lunch or "-")
    rows.add_row(
        "specials", ", ".join(f"{on}: {what}" for on, what in said.specials.items()) or "-"
    )
    console().print(rows)
    return DONE


def _specials(kept: dict[str, str], said: Sequence[str]) -> dict[str, str]:
    """The specials with changes; a weekday is kept by name, another day by date."""
    from cli.common import _WEEKDAYS

    changed = dict(kept)
    for text in said:
        on, given, words = (part.strip() for part in text.partition("="))
        on = on.lower()
        if not given:
            raise BankError(
                f"a special is written WEEKDAY=WORDS or DATE=WORDS, such as monday=Music, "
                f"not {text[:40]!r}"
            )
        if on not in _WEEKDAYS:
            on = read_day(on).isoformat()
        changed.pop(on, None)
        if words:
            changed[on] = words
    return changed


def forget_prints(
    folder: Path = typer.Argument(
        None, metavar="[FOLDER]", help="Only this folder; else all beside the bank."
    ),
    yes: bool = typer.Option(False, "--yes", help="Do not ask."),
) -> int:
    """Delete printed files: pages, strips, keys, proof sheets and boards. The bank stays.

    Example: binderbank forget-prints --yes
    """
    from bank.page import forget

    with use_bank() as bank:
        prints = bank.paper.prints
    folders = [folder] if folder else [prints, *sorted(prints.glob("*/"))][::-1]
    folders = [one for one in folders if one.is_dir()]
    if folder and not folders:
        raise BankError(f"there is no folder {folder}; nothing was deleted")
    if not folders:
        say("nothing is printed that could be forgotten")
        return DONE
    if not ask_yes(f"Delete the printed files in {folder or prints}?", yes):
        return REFUSED
    deleted, problems = 0, []
    for one in folders:
        gone, wrong = forget(one)
        deleted += len(gone)
        problems += [line for line in wrong if not (one / line.split(" ")[0]).is_dir()]
    say(f"{counted(deleted, 'printed file')} deleted")
    for line in problems:
        say(line, to_errors=True)
    return IN_PART if problems else DONE
