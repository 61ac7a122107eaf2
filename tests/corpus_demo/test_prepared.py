"""What travels with the demo items is what the present method computes from the present sheets."""

import pytest

from bank.assess import method
from corpus_demo.prepared import PREPARED, prepared_rows, sheets_digest


def test_the_prepared_items_are_made_from_the_present_sheets_and_method() -> None:
    assert prepared_rows(method()) is not None, "make it anew: python -m corpus_demo.prepared"


def test_prepared_items_of_another_method_are_not_used() -> None:
    assert prepared_rows("older/older/older") is None


def test_the_digest_does_not_hang_on_line_ends(monkeypatch: pytest.MonkeyPatch) -> None:
    assert len(sheets_digest()) == 64 and PREPARED.endswith(".gz")
