"""How long a day's paper takes, start-up included, beside the typesetter on one bare page.

Prints what it measures; nothing here fails because a machine is slow.
"""

import subprocess
import sys
import time
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LEARNERS = 10
DAY = f"""
import datetime as dt, resource, sys
from bank.page import *
day = DayContent(dt.date(2026, 11, 25), steps=("Homework", "Binder page", "Sort", "Read", "Game"))
faulty = "the dog runned to the park with mrs lopez"
sentence = PageSentence(faulty, "The dog ran to the park with Mrs. Lopez.", (
    PageFix(1, "capital-first", "the", "The", 0, 3), PageFix(2, "tense", "runned", "ran", 8, 14)))
shapes = list(SHAPES)
learners = [LearnerPage(
    f"L{{n}}", shapes[n % len(shapes)], MODES[n % len(MODES)], RuledLines(LINE_STYLES[n % 3]),
    FACES[n % 2], 16 + n,
    tuple(PageQuestion(f"What is thing {{q}} of learner {{n // 2}} for on a rainy day?",
        ("one", "two", "three"), "It is for", ("wet", "dry"), "one") for q in range(5)),
    sentence, PageTopic(f"Tell about rainy day {{n}}.")) for n in range({LEARNERS})]
made = [binder_pages(day, learners), strips(day, learners), key_pdf(day, learners)]
if "wall" in sys.argv:
    made += [strips(day, learners, wall=True), board_html(day, learners)]
problems = [line for each in made for line in each.problems if "choices" not in line]
files = [file for each in made for file in each.files]
assert len(files) == len(made), problems
def peak():
    # The high-water mark of this program alone: getrusage would count the one that started it.
    try:
        lines = open("/proc/self/status").read().splitlines()
    except OSError:
        return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return next(int(line.split()[1]) for line in lines if line.startswith("VmHWM"))
print(max(len(file.data) for file in files), peak())
"""
BARE = """
import typst
typst.compile(b"One line on one page.", format="pdf")
"""


def run(script, *words):
    started = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-c", script, *words],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    return time.perf_counter() - started, done.stdout.split()


@pytest.mark.bench
def test_a_days_paper_beside_one_bare_page():
    bare = min(run(BARE)[0] for _ in range(3))
    times = []
    for _ in range(3):
        seconds, (largest, kilobytes) = run(DAY)
        times.append(seconds)
    best = min(times)
    print(
        f"\npages, strips and key for {LEARNERS} learners: {best:.2f} s, start-up included"
        f" (to reach: under 3 s); one bare page: {bare:.2f} s; ratio {best / bare:.1f};"
        f" largest file {int(largest) / 1e6:.2f} MB (under 2);"
        f" memory {int(kilobytes) / 1024:.0f} MB (under 300)"
    )
    assert int(largest) < 2_000_000
    assert int(kilobytes) < 300 * 1024
