"""The demo: a bank of demo items and the invented class, drawn for today."""

from __future__ import annotations

import csv
import datetime as dt
from importlib import resources
from pathlib import Path

from bank.item import BankError
from bank.store import create_store
from cli.common import command_line, console, day_title, progress

FILES = ("questions.csv", "sentences.csv", "topics.csv")
FOLDER = "binderbank-demo"


def run(folder: Path | None) -> int:
    """Make the demo bank, draw today, show the sets and the key, and say what to type next."""
    from bank.classroom import Bank
    from cli.show import show_key, show_set

    path = (folder or _free_folder()) / "bank.sqlite3"
    if path.exists():
        raise BankError(f"{path} is there already; name another folder")
    with Bank(create_store(path)) as bank:
        counts = _fill(bank)
        today = dt.date.today()
        sets = bank.days.draw(today, anyway=True)
        key = bank.days.key(today)
    screen = console()
    screen.print(f"A demo bank: {path}")
    screen.print(", ".join(counts))
    screen.print()
    screen.print(f"Sets of {day_title(today)}", style="bold")
    screen.print()
    for one in sets:
        show_set(screen, one)
    screen.print("Answer key", style="bold")
    screen.print()
    show_key(screen, key)
    screen.print()
    screen.print("Type next:")
    for words in ("today", "draw tomorrow --why", "key --with-learners", "find snow"):
        screen.print(f"  {command_line(path, words)}")
    return 0


def _free_folder() -> Path:
    number = 1
    while True:
        folder = Path(FOLDER if number == 1 else f"{FOLDER}-{number}")
        if not (folder / "bank.sqlite3").exists():
            return folder
        number += 1


def _fill(bank) -> list[str]:  # type: ignore[no-untyped-def]
    """Import the demo items and the class; returns what came in, in words."""
    home = resources.files("corpus_demo")
    total = sum(home.joinpath(name).read_bytes().count(b"\n") for name in FILES)
    said = []
    with progress("levelling and checking", total) as step:
        for name in FILES:
            with resources.as_file(home.joinpath(name)) as path:
                done = bank.items.bring_in(path, progress=step)
            drafts = f" ({done.drafts} drafts)" if done.drafts else ""
            said.append(f"{done.added} {name.removesuffix('.csv')}{drafts}")
    rows = list(csv.DictReader(home.joinpath("learners.csv").read_text("utf-8").splitlines()))
    for row in rows:
        skills = dict.fromkeys(row["in_work"].split(), "in-work")
        bank.learners.add(
            row["code"],
            float(row["reads"]),
            sign=row["sign"],
            group=row["group"],
            mode=row["mode"],
            avoid=tuple(row["avoid"].split()),
            skills={**dict.fromkeys(row["taught"].split(), "taught"), **skills},
        )
    said.append(f"{len(rows)} learners")
    return said
