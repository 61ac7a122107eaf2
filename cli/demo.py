"""The demo: a bank of demo items and the invented class, drawn for today."""

from __future__ import annotations

import csv
import datetime as dt
import tempfile
from importlib import resources
from pathlib import Path

from bank.item import BankError
from bank.store import create_store
from cli.common import console, day_title, progress, say_next

KINDS = {"question": "questions", "sentence": "sentences to fix", "topic": "topics"}
FOLDER = "binderbank-demo"


def run(folder: Path | None) -> int:
    """Make the demo bank, draw today, show the sets and the key, and say what to type next."""
    from bank.classroom import Bank
    from cli.show import show_key, show_set

    path = (folder or _free_folder()) / "bank.sqlite3"
    if path.exists():
        raise BankError(f"{path} is there already; name another folder")
    with Bank(create_store(path)) as bank:
        counts = [*fill_items(bank), _fill_class(bank)]
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
        say_next("  ", path, words)
    return 0


def _free_folder() -> Path:
    number = 1
    while True:
        folder = Path(FOLDER if number == 1 else f"{FOLDER}-{number}")
        if not (folder / "bank.sqlite3").exists():
            return folder
        number += 1


def fill_items(bank) -> list[str]:  # type: ignore[no-untyped-def]
    """Import the demo items; returns what came in, in words."""
    from bank.assess import method
    from corpus_demo.prepared import SHEETS, prepared_rows

    home = resources.files("corpus_demo")
    ready = prepared_rows(method())
    with tempfile.TemporaryDirectory() as folder:
        files = [Path(folder) / "prepared.jsonl"] if ready else []
        if ready:
            files[0].write_bytes(ready)
        for name in () if ready else SHEETS:
            files.append(Path(folder) / name)
            files[-1].write_bytes(home.joinpath(name).read_bytes())
        total = sum(path.read_bytes().count(b"\n") for path in files)
        with progress(
            "reading the demo items" if ready else "levelling and checking", total
        ) as step:
            for path in files:
                bank.items.bring_in(path, progress=step)
    counts = bank.items.counts()
    said = [f"{counts.get(kind, 0)} {word}" for kind, word in KINDS.items()]
    if drafts := counts.get("draft", 0):
        said.append(f"{drafts} drafts")
    return said


def _fill_class(bank) -> str:  # type: ignore[no-untyped-def]
    """Add the invented class; returns how many learners came in, in words."""
    text = resources.files("corpus_demo").joinpath("learners.csv").read_text("utf-8")
    rows = list(csv.DictReader(text.splitlines()))
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
    return f"{len(rows)} learners"
