"""How long the morning's commands take beside the smallest program of the same parts, in one run."""

import os
import statistics
import subprocess
import sys
import textwrap
import time
from pathlib import Path

import pytest
from making import make_item, put

from bank.classroom import Bank
from bank.store import create_store

pytestmark = pytest.mark.bench

SMALLEST = """
    import sqlite3
    import typer
    from rich.console import Console
    from rich.table import Table

    app = typer.Typer()

    @app.command()
    def main(path: str) -> None:
        rows = sqlite3.connect(path).execute("SELECT count(*) FROM item").fetchall()
        table = Table("items")
        table.add_row(str(rows[0][0]))
        Console().print(table)

    app()
"""
RUNS = 15
ALLOWED = 1.6


def test_the_morning_starts_in_the_time_of_python_typer_and_rich(tmp_path: Path) -> None:
    path = tmp_path / "bank.sqlite3"
    with Bank(create_store(path)) as bank:
        put(bank, *(make_item(n, grade=n % 40 / 10) for n in range(600)))
        put(bank, *(make_item(n, "sentence", n % 40 / 10) for n in range(120)))
        put(bank, *(make_item(n, "topic", n % 40 / 10) for n in range(120)))
        for number, grade in enumerate((1.0, 1.5, 2.2, 2.8, 3.6, 4.5)):
            bank.learners.add(f"L{number}", grade, group="ABC"[number // 2])
    smallest = tmp_path / "smallest.py"
    smallest.write_text(textwrap.dedent(SMALLEST))
    command = [sys.executable, "-m", "cli", "--bank", str(path)]
    programs = {
        "smallest": [sys.executable, str(smallest), str(path)],
        "today": [*command, "today", "--anyway"],
        "draw": [*command, "draw", "--anyway"],
        "key": [*command, "key"],
    }
    # As on a teacher's laptop, where Python keeps what it has compiled.
    environment = {**os.environ}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    for words in programs.values():
        subprocess.run(words, capture_output=True, check=True, env=environment)
    # One round after the other, so that a busy machine slows all of them alike.
    times: dict[str, list[float]] = {name: [] for name in programs}
    for _ in range(RUNS):
        for name, words in programs.items():
            start = time.perf_counter()
            subprocess.run(words, capture_output=True, check=True, env=environment)
            times[name].append(time.perf_counter() - start)
    base = min(times["smallest"])
    for name in programs:
        best, middle = min(times[name]), statistics.median(times[name])
        print(
            f"{name:9} best {best * 1000:4.0f} ms, median {middle * 1000:4.0f} ms, {best / base:.2f} times"
        )
    worst = max(min(times[name]) for name in ("today", "draw", "key")) / base
    print(f"at most {ALLOWED} times is wanted: {'reached' if worst <= ALLOWED else 'missed'}")
