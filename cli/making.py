"""The specialist's command that makes errors on purpose and fills the bank with sentences to fix."""

from __future__ import annotations

import csv
import json
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import typer

from bank.item import BankError
from bank.skill import SKILLS, skill
from cli.common import (
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

MOST_ERRORS = 8
MOST_LEFT_OUT_SHOWN = 3  # for each reason


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, SPECIALIST, {"make-errors": make_errors}, only)


def make_errors(
    path: Path = typer.Argument(
        None,
        metavar="[FILE]",
        help="Correct sentences: a .txt with one in a line, or a .csv or .jsonl with a column text."
        " Left out, they are the bank's sentences without a faulty version.",
    ),
    skills: str = typer.Option("", "--skills", help="Codes with commas between; else any skill."),
    errors: int = typer.Option(3, "--errors", help="How many errors the fullest version has."),
    theme: list[str] = typer.Option([], "--theme", help="A theme for the new items."),
    seed: int = typer.Option(0, "--seed", help="Another number makes other errors."),
    dry_run: bool = typer.Option(
        False, "--dry-run", help="Show what would be made; store nothing."
    ),
    as_json: bool = JSON,
) -> int:
    """Make faulty versions of correct sentences: one error, two, three, each within the next.

    Example: binderbank make-errors sentences.txt --skills capital-first,end-mark,tense --errors 3
    """
    codes = _codes(skills)
    if not 1 <= errors <= MOST_ERRORS:
        raise BankError(f"--errors is a number from 1 to {MOST_ERRORS}")
    made: list[dict[str, Any]] = []
    refused: list[str] = []
    with use_bank() as bank:
        bare = [item for item in bank.items if not path and _is_bare(item)]
        waiting = _from_file(path) if path else [(item.text, item.id) for item in bare]
        accepted = {item.id for item in bare if item.as_is}
        with progress("making errors", len(waiting)) as step:
            for text, item_id in waiting:
                try:
                    if item_id not in accepted:
                        _refuse_faulty(text)
                    made.append(_made(bank, text, item_id, codes, errors, seed, theme, dry_run))
                except (BankError, ValueError) as problem:
                    refused.append(f"{problem}: {text[:60]}")
                step(1)
    if as_json:
        print_json({"made": made, "refused": refused})
    else:
        _report(made, refused, dry_run)
    if refused:
        return IN_PART if made else REFUSED
    return 0


def _codes(skills: str) -> list[str]:
    codes = [code.strip() for code in skills.split(",") if code.strip()]
    for code in codes:
        try:
            skill(code)
        except ValueError as error:
            raise BankError(str(error)) from error
    return codes or list(SKILLS)


def _is_bare(item: Any) -> bool:
    return item.kind == "sentence" and item.state != "retired" and not item.versions


def _from_file(path: Path) -> list[tuple[str, str]]:
    """The sentences of a file, each once."""
    from bank.spreadsheet import read_text

    found = [" ".join(sentence.split()) for sentence in _sentences(path, read_text(path))]
    return [(sentence, "") for sentence in dict.fromkeys(found) if sentence]


def _sentences(path: Path, text: str) -> Iterator[str]:
    if path.suffix == ".csv":
        from bank.spreadsheet import separator

        lines = text.splitlines(keepends=True)
        rows = csv.reader(lines, delimiter=separator(lines[0] if lines else ""))
        header = [name.strip().lower() for name in next(rows, [])]
        if "text" not in header:
            raise BankError(f"{path.name} has no column text")
        at = header.index("text")
        yield from (row[at] for row in rows if len(row) > at)
    elif path.suffix == ".jsonl":
        for number, line in enumerate(text.splitlines(), start=1):
            try:
                yield str(json.loads(line)["text"])
            except (ValueError, KeyError, TypeError):
                raise BankError(f"{path.name}: row {number}: there is no text") from None
    else:
        yield from text.splitlines()


def _refuse_faulty(text: str) -> None:
    """`BankError` for a sentence that has an error itself: nobody could correct its versions to it."""
    from bank.check import check_text

    for found in check_text(text, "sentence"):
        if found.certain:
            place = f' at "{text[found.start : found.end]}"' if found.end > found.start else ""
            said = found.message.rstrip(".")
            raise BankError(f"this sentence must be fixed first ({found.code}{place}): {said}")


def _made(
    bank: Any,
    text: str,
    item_id: str,
    codes: Sequence[str],
    errors: int,
    seed: int,
    theme: list[str],
    dry_run: bool,
) -> dict[str, Any]:
    from bank.edit import nested
    from bank.item import Version

    versions = [one.faulty for one in nested(text, codes, errors, seed)]
    if not dry_run:
        if item_id:
            bank.items.change(item_id, versions=tuple(Version(faulty, ()) for faulty in versions))
        else:
            cells: dict[str, Any] = {"kind": "sentence", "text": text, "faulty": versions}
            item_id = bank.items.add(**cells, **({"theme": theme} if theme else {})).id
    return {"id": item_id, "corrected": text, "versions": versions}


def offered(text: str, choose: str) -> tuple[list[str], list[str]]:
    """Three faulty versions of a correct sentence, and those of them that the person chooses.

    `choose` is numbers with commas between, `all` or `none`; where it is empty, a person at a
    terminal is asked, and without one nothing is chosen.
    """
    from bank.edit import offers

    try:
        versions = [one.faulty for one in offers(text)]
    except ValueError:
        return [], []
    if not choose and sys.stdin.isatty():
        say("Three faulty versions to choose from:")
        show_offers(versions)
        choose = typer.prompt("Which? Numbers, all or none", default="all")
    return versions, [versions[number - 1] for number in _numbers(choose, len(versions))]


def show_offers(versions: Sequence[str]) -> None:
    for number, faulty in enumerate(versions, start=1):
        say(f"{number:>3}  {faulty}")


def _numbers(choose: str, count: int) -> list[int]:
    said = choose.replace(",", " ").split()
    if said in ([], ["none"]):
        return []
    if said == ["all"]:
        return list(range(1, count + 1))
    if not all(word.isdigit() and 1 <= int(word) <= count for word in said):
        raise BankError(f"{choose[:20]!r} is no choice; say numbers from 1 to {count}, all or none")
    return [int(word) for word in said]


def _say_left_out(refused: Sequence[str]) -> None:
    """The first few of each reason, and how many more there are."""
    shown = Counter[str]()
    for line in refused:
        reason = line.partition(":")[0].partition("(")[0]
        shown[reason] += 1
        if shown[reason] <= MOST_LEFT_OUT_SHOWN:
            say(f"left out: {line}", to_errors=True)
    more = sum(max(0, count - MOST_LEFT_OUT_SHOWN) for count in shown.values())
    if more:
        say(f"left out: {more} more for such reasons; --json names each", to_errors=True)


def _report(made: Sequence[dict[str, Any]], refused: Sequence[str], dry_run: bool) -> None:
    if dry_run:
        for one in made:
            say(one["corrected"], style="bold")
            for faulty in one["versions"]:
                say(f"    {faulty}")
    _say_left_out(refused)
    if not made and not refused:
        say("no sentence waits for faulty versions")
        return
    versions = sum(len(one["versions"]) for one in made)
    done = "would be made" if dry_run else "in the bank"
    say(f"{counted(len(made), 'sentence')} with {counted(versions, 'faulty version')} {done}")
