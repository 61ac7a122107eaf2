"""What marks cost the morning: `today` with half a year of marks, and `mark`, beside the smallest program."""

import datetime as dt
import importlib.util
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

_HOME = Path(__file__).parent / "test_bench_morning.py"
_SPEC = importlib.util.spec_from_file_location("bench_morning", _HOME)
assert _SPEC is not None and _SPEC.loader is not None
_MORNING = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(_MORNING)
RUNS = 15


def spent() -> float:
    """Processor seconds of the programs that were run: a busy machine changes them little."""
    try:
        import resource
    except ImportError:
        return time.perf_counter()
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def test_today_and_mark_keep_the_mornings_start_up_time(tmp_path: Path) -> None:
    path = tmp_path / "bank.sqlite3"
    skills = {"tense": "in-work", "capital-first": "mastered", "end-mark": "mastered"}
    with Bank(create_store(path)) as bank:
        put(bank, *(make_item(n, grade=n % 40 / 10) for n in range(600)))
        put(bank, *(make_item(n, "sentence", n % 40 / 10) for n in range(120)))
        put(bank, *(make_item(n, "topic", n % 40 / 10) for n in range(120)))
        for number, grade in enumerate((1.0, 1.5, 2.2, 2.8, 3.6, 4.5)):
            bank.learners.add(f"L{number}", grade, group="ABC"[number // 2], skills=skills)
        day = dt.date.today()
        marked = 0
        while marked < 90:
            day -= dt.timedelta(days=1)
            bank.days.draw(day, anyway=True)
            for learner, sheet in bank.marks.sheets(day):
                sheet.press("a")
                bank.marks.save(learner, sheet)
            marked += 1
        rows = bank.store.value("SELECT count(*) FROM mark")
    smallest = tmp_path / "smallest.py"
    smallest.write_text(textwrap.dedent(_MORNING.SMALLEST))
    command = [sys.executable, "-m", "cli", "--bank", str(path)]
    programs = {
        "smallest": [sys.executable, str(smallest), str(path)],
        "today": [*command, "today", "--anyway"],
        "mark": [*command, "mark"],
    }
    # An installed program is compiled once; a checkout may be set to write no bytecode beside itself.
    environment = {**os.environ, "PYTHONPYCACHEPREFIX": str(tmp_path / "compiled")}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    for words in programs.values():
        subprocess.run(
            words, capture_output=True, check=True, stdin=subprocess.DEVNULL, env=environment
        )
    times: dict[str, list[float]] = {name: [] for name in programs}
    for _ in range(RUNS):
        for name, words in programs.items():
            start = spent()
            subprocess.run(
                words, capture_output=True, check=True, stdin=subprocess.DEVNULL, env=environment
            )
            times[name].append(spent() - start)
    base = min(times["smallest"])
    print(f"\nprocessor time; 6 learners, {marked} days, {rows} marks")
    for name in programs:
        best, middle = min(times[name]), statistics.median(times[name])
        print(
            f"{name:9} best {best * 1000:4.0f} ms, median {middle * 1000:4.0f} ms, {best / base:.2f} times"
        )
    worst = max(min(times[name]) for name in ("today", "mark")) / base
    print(
        f"at most {_MORNING.ALLOWED} times is wanted: {'reached' if worst <= _MORNING.ALLOWED else 'missed'}"
    )
