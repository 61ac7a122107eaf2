"""The specialist's lists: items from a spreadsheet or another bank, and back."""

from __future__ import annotations

from pathlib import Path

import typer

from bank.item import KINDS, BankError
from cli.common import (
    DONE,
    IN_PART,
    JSON,
    REFUSED,
    SPECIALIST,
    add_commands,
    counted,
    print_json,
    progress,
    say,
    use_bank,
)


def register(app: typer.Typer, only: str = "") -> None:
    commands = {"import": bring_in, "export": send_out, "conflicts": conflicts}
    add_commands(app, SPECIALIST, commands, only)


def bring_in(
    path: Path = typer.Argument(..., metavar="FILE", help="A .csv or .jsonl file."),
    kind: str = typer.Option("", "--kind", help="The kind of rows that do not say it."),
    keep_good: bool = typer.Option(
        False, "--keep-good", help="Import the good rows; write the others to FILE.refused.csv."
    ),
    skip_unknown: bool = typer.Option(
        False, "--skip-unknown", help="Leave out columns that the bank has no place for."
    ),
    as_json: bool = JSON,
) -> int:
    """Import items: rows with an id that the bank has update it, others are added.

    All or nothing, unless --keep-good. Columns: kind, text, theme, question_word, answer, choices,
    starter, words, season, picture, faulty, note, source, author, level_as, state, id.

    Example: binderbank import questions.csv --kind question
    """
    if kind and kind not in KINDS:
        raise BankError(f"{kind!r} is no kind; it is one of {', '.join(KINDS)}")
    refused = path.with_name(path.name + ".refused.csv") if keep_good else None
    with use_bank() as bank, progress("levelling and checking", _lines(path)) as step:
        done = bank.items.bring_in(path, kind, refused, step, skip_unknown)
    if as_json:
        print_json(
            {
                "added": done.added,
                "updated": done.updated,
                "unchanged": done.unchanged,
                "drafts": done.drafts,
                "conflicts": done.conflicts,
                "refused": [
                    {"row": row.number, "column": row.wrong[0], "reason": row.wrong[1]}
                    for row in done.refused
                    if row.wrong
                ],
            }
        )
    else:
        say(f"{done.added} added, {done.updated} updated, {done.unchanged} unchanged")
        if done.drafts:
            are = "is a draft" if done.drafts == 1 else "are drafts"
            say(f"{done.drafts} of them {are}; what must be fixed: binderbank check --must-fix")
        for item_id in done.conflicts:
            say(f"both sides changed {item_id}; see: binderbank conflicts")
        if done.refused:
            say(f"{counted(len(done.refused), 'row')} refused, with the reasons in {refused}")
            say("mend them there, then import that file; the good rows are in the bank")
    if done.refused and not (done.added or done.updated or done.unchanged):
        return REFUSED
    return IN_PART if done.refused or done.conflicts else DONE


def _lines(path: Path) -> int | None:
    try:
        with path.open("rb") as file:
            return sum(chunk.count(b"\n") for chunk in iter(lambda: file.read(1 << 20), b""))
    except OSError:
        return None


def send_out(
    path: Path = typer.Argument(..., metavar="FILE", help="A .csv or .jsonl file."),
    kind: str = typer.Option("", "--kind", help="Only this kind."),
    plain: bool = typer.Option(
        False, "--plain", help="Leave out what the program wrote for itself."
    ),
) -> int:
    """Export items to CSV or JSON Lines: what `import` takes back.

    Example: binderbank export bank.csv
    """
    from bank.store_items import Query

    with use_bank() as bank:
        count = bank.items.send_out(path, Query(kind=kind) if kind else None, plain)
    say(f"{counted(count, 'item')} written to {path}")
    return 0


def conflicts(
    number: int = typer.Argument(None, metavar="[NUMBER]", help="The conflict to settle."),
    take: str = typer.Option("", "--take", help="`theirs` or `ours`."),
    as_json: bool = JSON,
) -> int:
    """List items that both sides of an exchange changed, and settle them one by one.

    Example: binderbank conflicts 1 --take theirs
    """
    with use_bank() as bank:
        if number is not None:
            if take not in ("theirs", "ours"):
                raise BankError("say which to keep: --take theirs or --take ours")
            item = bank.items.settle(number, take == "theirs")
            say(f"{item.id} settled: {item.text}")
            return 0
        waiting = bank.items.conflicts()
        ours = {one["id"]: bank.items.get(one["id"]).text for one in waiting}
    if as_json:
        print_json({"conflicts": [{**one, "ours": ours[one["id"]]} for one in waiting]})
        return 0
    if not waiting:
        say("no conflicts")
    for one in waiting:
        say(f"{one['number']}  {one['id']}")
        say(f"   ours:   {ours[one['id']]}")
        say(f"   theirs: {one['theirs'].get('text', '')}")
    return 0
