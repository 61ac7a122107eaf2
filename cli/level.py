"""The specialist's command `level`: how hard a text, a list or a file is to read, and her ear."""

from __future__ import annotations

import csv
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

from bank.item import BankError
from cli.common import DONE, IN_PART, JSON, SPECIALIST, add_commands, console, print_json, say

if TYPE_CHECKING:
    from bank.level import Level

MOST_WORDS_SHOWN = 3
_COLUMNS = ("text", "kind", "grade", "low", "high", "level", "hardest", "problem")


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, SPECIALIST, {"level": level}, only)


def level(
    text: str = typer.Argument(
        None, metavar="[TEXT|FILE]", help="A text, a file, or - for standard input."
    ),
    kind: str = typer.Option("", "--kind", help="question, sentence, topic, sort or passage."),
    whole: bool = typer.Option(
        None, "--whole/--lines", help="Take a file as one text, or as one prompt a line."
    ),
    as_json: bool = JSON,
    as_csv: bool = typer.Option(False, "--csv", help="Print CSV instead of text."),
    calibrate: bool = typer.Option(
        False, "--calibrate", help="Re-anchor the scale to your own ear, by pairs of prompts."
    ),
) -> int:
    """Show how hard a text is to read, and why; or level a file or a list of prompts.

    An estimate to help choose, not an assessment of a learner; the specialist's own placement
    always wins. The published formulas are shown as dots beside it; they were made for passages.

    With --calibrate it shows pairs of the bank's own prompts and asks which is harder to read;
    after about 30 answers the bank's levels follow your judgement.

    Example: binderbank level "What do bees make?"
    """
    if calibrate:
        from cli.ear import calibrate as ask_pairs

        return ask_pairs(as_json)
    places, texts, one = _texts(text, kind, whole)
    rows = list(_levelled(texts))
    refused = [(place, row[3]) for place, row in zip(places, rows, strict=True) if row[3]]
    if len(refused) == len(rows):
        raise BankError(refused[0][1])
    if as_json:
        print_json({"levels": [_plain(*row) for row in rows]})
    elif as_csv:
        _print_csv(rows)
    elif one and rows[0][2] is not None:
        _show_one(rows[0][0], rows[0][2])
    else:
        _show_list(rows)
    for place, problem in refused:
        say(f"binderbank: {place}: {problem}", to_errors=True)
    return IN_PART if refused else DONE


Row = tuple[str, str, "Level | None", str]


Texts = tuple[list[str], list[tuple[str, str]], bool]


def _texts(text: str | None, kind: str, whole: bool | None) -> Texts:
    """Where each text stands, the texts to level with their kinds, and whether it is only one."""
    from bank.level import KINDS
    from bank.level.listing import guess_kind, texts_in
    from bank.spreadsheet import read_text

    if kind and kind not in KINDS:
        raise BankError(f"{kind[:20]!r} is no kind; the kinds are {', '.join(KINDS)}")
    path = Path(text) if text and text != "-" and len(text) < 256 else None
    if path is not None and path.suffix.lower() in (".csv", ".jsonl") and path.is_file():
        listed = _in_a_sheet(path, kind, guess_kind)
        if not listed:
            raise BankError("there is no text to level")
        return [place for place, *_ in listed], [(text, kind) for _, text, kind in listed], False
    if path is not None and path.is_dir():
        raise BankError(f"{path} is a folder; name a file in it")
    if path is not None and path.is_file():
        content = read_text(path)
    elif text and text != "-":
        if text.endswith((".txt", ".md", ".csv")) and " " not in text:
            raise BankError(f"there is no file {text}")
        return ["the text"], [(text, kind or _kind_of(text, guess_kind))], True
    elif text == "-" or not sys.stdin.isatty():
        content = sys.stdin.read()
    else:
        raise BankError('say what to level: binderbank level "A red ball", or a file, or -')
    found = texts_in(content, kind, whole)
    if not found:
        raise BankError("there is no text to level")
    places = [f"line {number}" for number, *_ in found]
    return places, [(text, kind) for _, text, kind in found], len(found) == 1


def _kind_of(text: str, guess_kind: Any) -> str:
    from bank.level.listing import is_passage

    return "passage" if is_passage(text) else str(guess_kind(text))


def _in_a_sheet(path: Path, kind: str, guess_kind: Any) -> list[tuple[str, str, str]]:
    """The column `text` of a sheet: its row, the text, and its own kind where the sheet says it."""
    from bank.exchange import read_rows

    rows = list(read_rows(path, skip_unknown=True))
    texts = [(str(row.cells.get("text") or "").strip(), row) for row in rows]
    return [
        (f"row {row.number}", text, kind or row.fields.get("kind") or str(guess_kind(text)))
        for text, row in texts
        if text
    ]


def _levelled(texts: list[tuple[str, str]]) -> Iterator[Row]:
    """Each text with its level, or with the reason why it has none; parsed in batches."""
    from bank.language import parse_many
    from bank.level import level_text
    from bank.level.canonical import canonical

    for start in range(0, len(texts), 512):
        batch = texts[start : start + 512]
        for _ in parse_many([canonical(*pair) for pair in batch]):
            pass
        for text, kind in batch:
            try:
                yield text, kind, level_text(text, kind), ""
            except ValueError as error:
                yield text, kind, None, str(error)


def _plain(text: str, kind: str, found: Level | None, problem: str) -> dict[str, Any]:
    if found is None:
        return {"text": text, "kind": kind, "problem": problem}
    return {"text": text, "kind": kind, "level": found.words, **found.to_dict()}


def _hardest(found: Level) -> list[str]:
    words = [reason.text for reason in found.reasons if reason.what == "word"]
    return words[:MOST_WORDS_SHOWN]


def _print_csv(rows: list[Row]) -> None:
    from bank.level.formulas import AS_PUBLISHED

    writer = csv.writer(sys.stdout)
    writer.writerow([*_COLUMNS, *(formula.code for formula in AS_PUBLISHED)])
    for text, kind, found, problem in rows:
        if found is None:
            writer.writerow([text, kind, "", "", "", "", "", problem])
            continue
        cells = [found.grade, found.low, found.high, found.words, " ".join(_hardest(found)), ""]
        writer.writerow([text, kind, *cells, *(value.value for value in found.formulas)])


def _show_one(text: str, found: Level) -> None:
    from bank.level.picture import picture

    screen = console()
    for line in picture(found, text, min(screen.width, 100)):
        screen.print(line, markup=False, soft_wrap=True)


def _show_list(rows: list[Row]) -> None:
    from rich.text import Text

    from cli.common import table

    shown = table("grade", "range", "kind", "text", "hardest", keep=(0, 1, 2))
    for text, kind, found, problem in rows:
        if found is None:
            shown.add_row("-", "-", kind, Text(text), Text(problem))
        else:
            spread = f"{found.low:.1f}-{found.high:.1f}"
            words = Text(", ".join(_hardest(found)))
            shown.add_row(f"{found.grade:.1f}", spread, kind, Text(text), words)
    screen = console()
    screen.print(shown)
    grades = sorted(found.grade for _, _, found, _ in rows if found)
    if len(grades) > 1:
        middle = grades[len(grades) // 2]
        ends = f"from {grades[0]:.1f} to {grades[-1]:.1f}"
        screen.print(f"{len(grades)} texts {ends}, half of them up to {middle:.1f}")
