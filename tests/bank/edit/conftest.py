"""The pairs that the rules are held to: faulty | corrected | the skills of the fixes.

`pairs.psv` was written before any rule; every third pair was held aside until the rules were done.
`wide.psv` was written afterwards, to think of what else a child may write.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

import pytest

HERE = Path(__file__).parent


@dataclass(frozen=True, slots=True)
class Pair:
    faulty: str
    corrected: str
    skills: tuple[str, ...]


def read_pairs(name: str) -> list[Pair]:
    rows = [line.split(" | ") for line in (HERE / name).read_text("utf-8").splitlines()]
    return [Pair(faulty, right, tuple(skills.split(","))) for faulty, right, skills in rows]


@pytest.fixture(scope="session")
def tuned_on() -> list[Pair]:
    """Two thirds of the first pairs: the rules were written with them in view."""
    return [pair for at, pair in enumerate(read_pairs("pairs.psv")) if at % 3 != 2]


@pytest.fixture(scope="session")
def held_aside() -> list[Pair]:
    """The other third."""
    return read_pairs("pairs.psv")[2::3]


@pytest.fixture(scope="session")
def wide() -> list[Pair]:
    """The second set."""
    return read_pairs("wide.psv")


@pytest.fixture(scope="session")
def demo_pairs() -> list[Pair]:
    """The fullest version of each demo sentence; its errors were named by whoever wrote it."""
    found = []
    with (files("corpus_demo") / "sentences.csv").open(encoding="utf-8", newline="") as rows:
        for row in csv.DictReader(rows):
            _, marked, codes = row["note"].partition("fixes")
            if marked:
                skills = tuple(codes.split(";")[0].split())
                found.append(Pair(row["faulty"].split(" | ")[-1], row["text"], skills))
    return found


@pytest.fixture(scope="session")
def every_pair(
    tuned_on: list[Pair], held_aside: list[Pair], wide: list[Pair], demo_pairs: list[Pair]
) -> list[Pair]:
    """All pairs there are."""
    return [*tuned_on, *held_aside, *wide, *demo_pairs]
