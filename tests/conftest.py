"""Banks for the tests."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from bank.classroom import Bank
from bank.store import create_store
from making import make_item, put

settings.register_profile(
    "binderbank", deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
settings.load_profile("binderbank")


@pytest.fixture
def bank(tmp_path: Path) -> Iterator[Bank]:
    """An empty bank."""
    with Bank(create_store(tmp_path / "bank.sqlite3")) as made:
        yield made


@pytest.fixture
def stocked(bank: Bank) -> Bank:
    """A bank with 60 questions, 20 sentences and 20 topics from K to grade 4, and two learners."""
    put(bank, *(make_item(n, "question", (n % 40) / 10) for n in range(60)))
    put(bank, *(make_item(n, "sentence", (n % 20) / 5) for n in range(20)))
    put(bank, *(make_item(n, "topic", (n % 20) / 5) for n in range(20)))
    bank.learners.add("K4", 2.0)
    bank.learners.add("M7", 4.0)
    return bank
