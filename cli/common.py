"""What the three people's commands share: the open bank, days, tables, and one line for what is wrong."""

from __future__ import annotations

import contextlib
import datetime as dt
import json
import sys
import textwrap
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer
from rich.console import Console
from rich.text import Text

from bank.calendar import read_date
from bank.classroom import Bank, open_bank
from bank.item import BankError
from bank.store import find_path

if TYPE_CHECKING:
    from rich.table import Table

DONE, IN_PART, REFUSED = 0, 1, 2
TEACHER, SPECIALIST, AIDE = "Teacher", "Specialist", "Aide"
NARROWEST = 40
WIDEST_PIPED = 80
FIRST_YEAR, LAST_YEAR = 2000, 2100
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")

named_bank: list[str | None] = [None]

JSON = typer.Option(False, "--json", help="Print JSON with stable keys instead of text.")
DAY = typer.Argument(
    "today", metavar="[DATE]", help="YYYY-MM-DD, today, tomorrow or a weekday.", show_default=False
)
CODES = typer.Option([], "--for", metavar="CODE", help="Only for this learner; may be said again.")


def add_commands(app: typer.Typer, panel: str, commands: dict[str, Any], only: str = "") -> None:
    """Add commands by name (a typer application as a command with commands of its own), or one."""
    for name, command in commands.items():
        if only in ("", name):
            if isinstance(command, typer.Typer):
                app.add_typer(command, name=name, rich_help_panel=panel)
            else:
                app.command(name, rich_help_panel=panel)(command)


def console(to_errors: bool = False) -> Console:
    """A console as wide as the terminal, or 80 columns of plain text when piped."""
    stream = sys.stderr if to_errors else sys.stdout
    width = None if stream.isatty() else WIDEST_PIPED
    return Console(file=stream, width=width, highlight=False, soft_wrap=False, emoji=False)


def use_bank(create: bool = False) -> Bank:
    """The bank that the command works on; its warnings go to the error stream."""
    bank = open_bank(named_bank[0], create=create)
    for line in bank.store.warnings:
        say(line, to_errors=True)
    return bank


def say(line: str, style: str = "", to_errors: bool = False) -> None:
    """One line; a long one hangs below its start. What is wrong stays one line, however long."""
    screen = console(to_errors)
    line = line.replace("\n", " ") if to_errors else line
    if not to_errors:
        indent = " " * (len(line) - len(line.lstrip()) + 4)
        line = "\n".join(
            textwrap.wrap(
                line,
                screen.width,
                subsequent_indent=indent,
                break_long_words=False,
                break_on_hyphens=False,
            )
        )
    screen.print(Text(line, style=style), soft_wrap=True)


def print_json(value: Any) -> None:
    sys.stdout.write(json.dumps(value, ensure_ascii=False, indent=2, default=_plain) + "\n")


def _plain(value: Any) -> Any:
    if isinstance(value, dt.date):
        return value.isoformat()
    if isinstance(value, tuple | set | frozenset):
        return list(value)
    if hasattr(value, "to_dict"):
        return value.to_dict()
    return str(value)


def counted(count: int, one: str, more: str = "") -> str:
    """How many of something there are, in words.

    >>> counted(1, "item"), counted(2, "item"), counted(0, "copy", "copies")
    ('1 item', '2 items', '0 copies')
    """
    return f"{count} {one if count == 1 else more or one + 's'}"


def read_day(text: str) -> dt.date:
    """The day that `text` says: YYYY-MM-DD, today, tomorrow, or the next such weekday (also short)."""
    said = text.strip().lower()
    today = dt.date.today()
    if said in ("today", "tomorrow", "yesterday"):
        return today + dt.timedelta(days=("yesterday", "today", "tomorrow").index(said) - 1)
    for number, weekday in enumerate(_WEEKDAYS):
        if len(said) > 1 and weekday.startswith(said):
            return today + dt.timedelta(days=(number - today.weekday()) % 7)
    try:
        day = read_date(said)
    except ValueError:
        raise BankError(f"{text[:40]!r} is no date; write YYYY-MM-DD, such as {today}") from None
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise BankError(f"{day} is too far away; dates lie between {FIRST_YEAR} and {LAST_YEAR}")
    return day


def day_title(day: dt.date) -> str:
    return f"{day:%A} {day.day} {day:%B %Y}"


def read_span(text: str) -> tuple[float, float]:
    """A span of grades written LOW-HIGH, with K for 0.

    >>> read_span("K-1.5")
    (0.0, 1.5)
    """
    low, dash, high = text.replace("..", "-").partition("-")
    try:
        first, second = (
            0.0 if part.strip().upper() == "K" else float(part) for part in (low, high)
        )
    except ValueError:
        raise BankError(f"{text[:20]!r} is no span of grades; write it like K-1.5 or 1-2") from None
    if not dash or not 0 <= first < second <= 12:
        raise BankError(f"{text[:20]!r} is no span of grades; the first is lower, between K and 12")
    return first, second


def table(*columns: str, keep: Sequence[int] = (0,)) -> Table:
    """A plain table; the columns numbered in `keep` are never wrapped."""
    from rich.table import Table

    made = Table(
        box=None, pad_edge=False, show_edge=False, header_style="bold", padding=(0, 2, 0, 0)
    )
    for number, name in enumerate(columns):
        made.add_column(name, no_wrap=number in keep, overflow="fold")
    return made


@contextlib.contextmanager
def progress(what: str, total: int | None = None) -> Iterator[Callable[..., None]]:
    """A progress bar on a terminal, nothing when piped; yields the function that advances it.

    A second word given to it says what is being done from then on.
    """
    if not sys.stderr.isatty():
        yield lambda count, doing=None: None
        return
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn, TimeElapsedColumn

    columns = (
        TextColumn("{task.description}"),
        BarColumn(30),
        MofNCompleteColumn(),
        TimeElapsedColumn(),
    )
    with Progress(*columns, console=console(to_errors=True), transient=True) as bar:
        task = bar.add_task(what, total=total)
        yield lambda count, doing=None: bar.update(task, advance=count, description=doing)


def ask_yes(question: str, yes: bool) -> bool:
    """Whether the person says yes; without a terminal only `--yes` does."""
    if yes:
        return True
    if not sys.stdin.isatty():
        raise BankError(f"{question} Say --yes to go on without being asked")
    return typer.confirm(question)


def program() -> str:
    """How the program is called here: by its name, or by its path where the shell does not find it."""
    import shutil

    called = Path(sys.argv[0])
    if shutil.which("binderbank"):
        return "binderbank"
    if called.stem.lower() == "binderbank":
        return sys.argv[0]
    return "python -m cli" if called.parent.name == "cli" else "binderbank"


def command_line(bank_path: Path, words: str) -> str:
    """A command to type next, with the bank where it is not the usual one."""
    if str(find_path()) == str(bank_path):
        return f"{program()} {words}"
    named = f'"{bank_path}"' if " " in str(bank_path) else str(bank_path)
    return f"{program()} --bank {named} {words}"


def say_next(label: str, bank_path: Path, words: str) -> None:
    """A command to type next, in one line however long, so that it can be copied."""
    console().print(Text(f"{label}{command_line(bank_path, words)}"), soft_wrap=True)
