"""Banks for the tests."""

from __future__ import annotations

import io
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from making import Ran, make_item, put

from bank.classroom import Bank
from bank.store import create_store

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


@pytest.fixture
def run(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> Callable[..., Ran]:
    """Run a command as a person would, on a bank in a fresh folder; gives exit code and output."""
    from cli.app import main

    monkeypatch.setenv("BINDERBANK", str(tmp_path / "bank.sqlite3"))
    monkeypatch.setenv("BINDERBANK_TRACE", "1")
    monkeypatch.chdir(tmp_path)

    def one(*words: str, said: str | None = None) -> Ran:
        if said is not None:
            monkeypatch.setattr("sys.stdin", io.StringIO(said))
        capsys.readouterr()
        with pytest.raises(SystemExit) as stopped:
            main(list(words))
        shown = capsys.readouterr()
        return Ran(int(stopped.value.code or 0), shown.out, shown.err)

    return one
