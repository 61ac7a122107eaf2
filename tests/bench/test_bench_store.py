"""How the draw grows with the bank and its history, and what an import holds in memory."""

import datetime as dt
import gc
import json
import subprocess
import sys
import time
from pathlib import Path

import pytest
from making import FULL, make_item

from bank.assess import method
from bank.choose.twins import ask_frame
from bank.classroom import Bank
from bank.exchange import cells_of
from bank.item import QUESTION_WORDS
from bank.store import create_store
from bank.store_items import write_item

pytestmark = pytest.mark.bench

SEEN = 900
LARGE = 100_000 if FULL else 20_000
ROWS = 100_000 if FULL else 10_000
ALLOWED_GROWTH = 3.0
ALLOWED_MEMORY = 300  # MB above the empty process
DAY = dt.date(2026, 9, 14)


def big_bank(path: Path, size: int, seen: int = SEEN) -> Bank:
    """A bank of synthetic items and one learner who has seen `seen` of them."""
    bank = Bank(create_store(path))
    with bank.store.writing():
        for n in range(size):
            kind = ("question", "question", "question", "sentence", "topic")[n % 5]
            season = ("09-01..11-30",) if n % 9 == 0 else ()
            word = QUESTION_WORDS[n % 10] if kind == "question" else ""
            item = make_item(n, kind, (n * 7 % 400) / 100, seasons=season, question_word=word)
            write_item(bank.store, item)
        bank.learners.add("K4", 3.0)
        number = bank.learners.get("K4").number
        ids = [
            row[0] for row in bank.store.rows("SELECT id FROM item ORDER BY id LIMIT ?", (seen,))
        ]
        for part in range(0, len(ids), 7):
            day = (DAY - dt.timedelta(days=1 + part)).isoformat()
            bank.store.execute("INSERT INTO day_set VALUES (?, ?, 'used', 0, '[]')", (number, day))
            bank.store.execute_many(
                "INSERT INTO given (learner, day, kind, position, item, rung) VALUES (?, ?, 'question', ?, ?, 1)",
                [(number, day, n, item) for n, item in enumerate(ids[part : part + 7])],
            )
        bank.store.execute("ANALYZE")
    return bank


def draw_time(bank: Bank, days: int = 12) -> float:
    """Seconds for one learner's draw: the best of several days, each taken back."""
    best = 9.0
    for number in range(days):
        day = DAY + dt.timedelta(days=number)
        gc.collect()
        start = time.perf_counter()
        bank.days.draw(day, anyway=True)
        best = min(best, time.perf_counter() - start)
        bank.days.undo(day)
    return best


def test_a_draw_answers_from_indexes(tmp_path: Path) -> None:
    with big_bank(tmp_path / "small.sqlite3", 1_000) as small:
        short = draw_time(small)
    with big_bank(tmp_path / "large.sqlite3", LARGE) as large:
        long = draw_time(large)
    print(
        f"one draw: {short * 1000:.1f} ms of 1,000 items, {long * 1000:.1f} ms of {LARGE:,}: {long / short:.2f} times"
    )
    print(
        f"at most {ALLOWED_GROWTH} times is wanted: {'reached' if long / short <= ALLOWED_GROWTH else 'missed'}"
    )


MEASURE = """
import sys
from pathlib import Path
def peak():
    # The high-water mark of this program alone: getrusage would count the one that started it.
    for line in Path('/proc/self/status').read_text().splitlines():
        if line.startswith('VmHWM'):
            return int(line.split()[1]) / 1024
import cli.app
empty = peak()
from bank.classroom import open_bank
with open_bank(sys.argv[1]) as bank:
    done = bank.items.bring_in(Path(sys.argv[2]))
print(done.added, round(empty), round(peak() - empty))
"""


def test_an_import_with_levels_holds_little_in_memory(tmp_path: Path) -> None:
    if not Path("/proc/self/status").exists():
        pytest.skip("the peak of a process is read from /proc")
    rows = tmp_path / "rows.jsonl"
    current = method()
    frame = ask_frame("What do bees make?")
    with rows.open("w", encoding="utf-8") as file:
        for n in range(ROWS):
            kind = ("question", "question", "topic")[n % 3]
            keys = [f"key{n}", f"key{n // 2}b"]
            item = make_item(
                n, kind, (n % 400) / 100, method=current, ask={"frame": frame, "keys": keys}
            )
            file.write(json.dumps(cells_of(item)) + "\n")
    create_store(tmp_path / "bank.sqlite3").close()
    start = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-c", MEASURE, str(tmp_path / "bank.sqlite3"), str(rows)],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    added, empty, above = map(int, done.stdout.split())
    print(
        f"import of {added} rows: {time.perf_counter() - start:.0f} s, {above} MB above {empty} MB"
    )
    assert added == ROWS
    assert above <= ALLOWED_MEMORY
