"""Records: take a learner's along, forget a learner, and copies of the bank."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import typer

from bank.item import BankError
from cli.common import (
    DONE,
    IN_PART,
    JSON,
    REFUSED,
    TEACHER,
    add_commands,
    ask_yes,
    counted,
    print_json,
    say,
    say_next,
    use_bank,
)
from cli.learners import learner_app


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, TEACHER, {"backup": backup, "restore": restore}, only)


@learner_app.command("export")
def learner_export(
    code: str = typer.Argument(..., metavar="CODE", help="The learner's code."),
    to: Path = typer.Option(None, "--to", metavar="FOLDER", help="Where; else beside the bank."),
    as_json: bool = typer.Option(False, "--json", help="Print it all as JSON and write no file."),
) -> int:
    """Write all that is kept of a learner: CSV files for a spreadsheet, and one JSON file.

    Example: binderbank learner export K4
    """
    with use_bank() as bank:
        if as_json:
            learner = bank.learners.get(code)
            print_json({"learner": learner.code, **bank.records.kept_of(code)})
            return DONE
        written = bank.records.export(code, to)
        path = bank.path
    say(f"{len(written)} files in {written[0].parent}:")
    say("  " + ", ".join(one.name for one in written))
    say(f"they hold the code; delete the folder when it has been handed on ({path.name} keeps all)")
    return DONE


@learner_app.command("forget")
def learner_forget(
    code: str = typer.Argument(..., metavar="CODE", help="The learner's code."),
    yes: bool = typer.Option(False, "--yes", help="Do not ask."),
    as_json: bool = JSON,
) -> int:
    """Forget a learner: every row, in the bank and in the copies of it that the tool made.

    Counts by item stay, without code, day or number. Printed and exported files are listed, not
    deleted; copies that were carried elsewhere cannot be reached.

    Example: binderbank learner forget K4
    """
    with use_bank() as bank:
        known = any(one.code.lower() == code.lower() for one in bank.learners)
        copies = bank.records.copies()
        where = f"the bank and {len(copies)} of its copies" if copies else "the bank"
        question = (
            f"Forget {code} in {where}? This cannot be undone."
            if known
            else f"There is no learner {code} now. Look for traces of the code in {where}?"
        )
        if not ask_yes(question, yes):
            say("nothing was changed")
            return REFUSED
        done = bank.records.forget(code)
        path, prints = bank.path, bank.paper.prints.absolute()
    if as_json:
        print_json(
            {
                "copies": [str(one) for one in done.copies],
                "files": [{"path": str(one), "what": what} for one, what in done.files],
                "items": list(done.mentions),
                "problems": list(done.problems),
            }
        )
        return IN_PART if done.problems else DONE
    say(
        f"{code} is forgotten in the bank"
        + (f" and in {counted(len(done.copies), 'copy', 'copies')}" if done.copies else "")
    )
    _say_files(done.files, prints, path)
    if done.mentions:
        say("these items mention the code in their text; change them: " + ", ".join(done.mentions))
    say("a copy that you carried elsewhere, and paper, you have to see to yourself")
    for line in done.problems:
        say(line, to_errors=True)
    return IN_PART if done.problems else DONE


def _say_files(files: Sequence[tuple[Path, str]], prints: Path, bank_path: Path) -> None:
    """What may still hold the code; the folders of printed files beside the bank in one line."""
    if not files:
        return
    beside = [one for one, what in files if what == "prints" and prints in (one, one.parent)]
    days = [one for one in beside if one != prints]
    say("these may still hold the code; delete them yourself:")
    if beside:
        say(f"  {prints} (printed, {counted(len(days) or 1, 'folder')})")
    elsewhere = [(one, what) for one, what in files if one not in beside]
    for one, what in elsewhere:
        word = {"prints": "printed", "export": "exported", "report": "report"}.get(what, what)
        say(f"  {one} ({word})")
    if beside:
        say_next("the printed ones go with: ", bank_path, "forget-prints")
    if any(what == "prints" for _, what in elsewhere):
        say_next("printed ones elsewhere go with: ", bank_path, "forget-prints FOLDER")


def backup(
    path: Path = typer.Argument(None, metavar="[FILE]", help="Where; else beside the bank."),
) -> int:
    """Make a copy of the bank with its checksum; others may go on working meanwhile.

    Example: binderbank backup
    """
    with use_bank() as bank:
        made = bank.records.backup(path)
    say(f"a copy: {made}")
    say(f"its checksum: {made.name}.sha256")
    say_next("to put it back: ", bank.path, f"restore {made}")
    return DONE


def restore(
    path: Path = typer.Argument(..., metavar="FILE", help="The copy."),
    yes: bool = typer.Option(False, "--yes", help="Do not ask."),
) -> int:
    """Put a copy in the place of the bank. A damaged copy is refused; the bank is copied first.

    Example: binderbank restore bank-backups/bank-2026-09-14-153000.sqlite3
    """
    from bank.classroom_records import has_checksum, unsound

    problem = unsound(path)
    if problem:
        raise BankError(f"{path} is not restored: {problem}; the bank is as it was")
    with use_bank(create=True) as bank:
        question = f"Put {path.name} in the place of {bank.path}? All since then is lost from it."
        if not ask_yes(question, yes):
            say("nothing was changed")
            return REFUSED
        before = {one.number for one in bank.learners}
        kept = bank.records.restore(path)
        learners = len(bank.learners)
        came = [one.code for one in bank.learners if one.number not in before]
    say(f"restored: {path}, with {learners} learner{'' if learners == 1 else 's'}")
    say(f"the bank as it was before: {kept}")
    if not has_checksum(path):
        say("the copy had no checksum beside it; only SQLite's own check was made")
    if came and before:
        say(f"not in the bank before: {', '.join(came)}")
    if came:
        say("whoever of them was forgotten since then is back: binderbank learner forget CODE")
    return DONE
