"""The command `binderbank`: one file for each person, joined here."""

from __future__ import annotations

import importlib
import os
import sys
from collections.abc import Sequence

import typer

from bank import __version__
from bank.item import BankError
from cli.common import REFUSED, named_bank, say

# Which file has which commands; only the file of the command that is asked for is loaded.
PEOPLE = {
    "teacher": ("today", "draw", "swap", "unused", "new", "demo"),
    "learners": ("learner",),
    "turns": ("turns", "job"),
    "school_days": ("calendar", "routine"),
    "words": ("sort", "shelf", "basket"),
    "specialist": (
        "add",
        "find",
        "show",
        "tag",
        "change",
        "retire",
        "level-as",
        "relevel",
    ),
    "exchange": ("import", "export", "conflicts"),
    "checking": ("check", "object"),
    "ahead": ("plan", "share", "stock"),
    "making": ("make-errors",),
    "level": ("level",),
    "aide": ("key",),
    "marks": ("mark", "marking"),
    "progress": ("progress", "evidence"),
    "records": ("backup", "restore", "learner"),
    "paper": ("pages", "strips", "board", "paper", "forget-prints"),
    "pictures": ("picture",),
}

STOPPED = 130  # the exit code of a command that Control-C stopped, as shells know it
# An environment variable for developers: a mistake of the program is raised, not only said.
TRACE = "BINDERBANK_TRACE"

ABOUT = (
    "Fresh, levelled morning work for each learner, each school day, without repeats.\n\n"
    "Levels are estimates that help choose; they do not replace assessment by qualified staff, and"
    " a specialist's own placement always wins. Follow your school's rules for learner records:"
    " use codes, not names."
)


def build(command: str = "") -> typer.Typer:
    """The application with this one command, or with all of them where it is none of ours."""
    app = typer.Typer(
        name="binderbank",
        help=ABOUT,
        no_args_is_help=True,
        add_completion=False,
        pretty_exceptions_enable=False,
        context_settings={"help_option_names": ["--help", "-h"]},
    )
    app.callback()(_main)
    owners = [person for person, commands in PEOPLE.items() if command in commands]
    for person in owners or PEOPLE:
        importlib.import_module(f"cli.{person}").register(app, command if owners else "")
    _flow_help(app)
    return app


def _flow_help(app: typer.Typer) -> None:
    """Each paragraph of a command's help on one line, so that it is wrapped at the screen's width."""
    for command in app.registered_commands:
        said = command.help or (command.callback.__doc__ if command.callback else "") or ""
        command.help = "\n\n".join(" ".join(part.split()) for part in said.split("\n\n"))
    for group in app.registered_groups:
        if group.typer_instance:
            _flow_help(group.typer_instance)


def _main(
    bank: str = typer.Option(
        None, "--bank", metavar="FILE", help="The bank; else BINDERBANK, else the usual place."
    ),
    version: bool = typer.Option(False, "--version", help="Print the version and stop."),
) -> None:
    if bank:
        named_bank[0] = bank


def main(arguments: Sequence[str] | None = None) -> None:
    """Run the command; bad input is one line on the error stream and exit code 2."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(encoding="utf-8", errors="replace")
    if "--version" in words[:1]:
        print(f"binderbank {__version__}")
        return
    if words[:1] == ["help"]:
        words = [*words[1:], "--help"]
    sys.exit(_run(_bank_first(words)))


def _run(words: list[str]) -> int:
    # typer carries its own copy of click; its errors are caught by the names that it gives them.
    named_bank[0] = None
    try:
        result = build(_command_of(words))(words, standalone_mode=False, prog_name="binderbank")
        if result == STOPPED:  # typer turns Control-C into this code
            _say_stopped()
        return result if isinstance(result, int) else 0
    except BankError as error:
        say(f"binderbank: {error}", to_errors=True)
    except KeyboardInterrupt:
        _say_stopped()
        return STOPPED
    except BrokenPipeError:
        sys.stderr.close()
        return 0
    except OSError as error:
        where = f"{error.filename}: " if error.filename else ""
        say(f"binderbank: {where}{error.strerror or error}", to_errors=True)
    except Exception as error:
        if type(error).__name__ == "Abort":
            say("binderbank: stopped; nothing was changed", to_errors=True)
        elif hasattr(error, "format_message"):
            _say_usage(error)
        elif os.environ.get(TRACE):
            raise
        else:
            _say_unforeseen(error)
    return REFUSED


def _say_stopped() -> None:
    if sys.stdout.isatty():
        sys.stdout.write("\n")  # a screen of marks or a question may stand there, unfinished
        sys.stdout.flush()
    say("binderbank: stopped; the bank is as it was after the last finished step", to_errors=True)


def _say_unforeseen(error: Exception) -> None:
    """A mistake of the program in one line; whoever looks for it sees the whole of it."""
    said = " ".join(f"{type(error).__name__}: {error}".split())
    say(
        f"binderbank: a mistake of the program ({said[:200]}); the bank is as it was after the last"
        f" finished step. {TRACE}=1 before the command shows where",
        to_errors=True,
    )


def _command_of(words: Sequence[str]) -> str:
    """The command that is asked for: the first word that is neither an option nor the bank."""
    skip = False
    for word in words:
        if skip:
            skip = False
        elif word == "--bank":
            skip = True
        elif not word.startswith("-"):
            return word
    return ""


def _say_usage(error: Exception) -> None:
    context = getattr(error, "ctx", None)
    path = context.command_path if context else "binderbank"
    message = " ".join(error.format_message().split()).rstrip(".")  # type: ignore[attr-defined]
    if message:
        message = message[0].lower() + message[1:]
        joint = "" if message.endswith("?") else ";"
        say(f"{path}: {message}{joint} see: {path} --help", to_errors=True)


def _bank_first(words: list[str]) -> list[str]:
    """`--bank FILE` may stand anywhere; it is moved to the front."""
    front: list[str] = []
    rest: list[str] = []
    waiting = iter(words)
    for word in waiting:
        if word == "--":
            rest += [word, *waiting]
        elif word == "--bank":
            front = [word, *[value for value in [next(waiting, None)] if value is not None]]
        elif word.startswith("--bank="):
            front = [word]
        else:
            rest.append(word)
    return front + rest
