"""Figures of speech: sentences that children meet, and plain ones with the same words."""

from __future__ import annotations

from pathlib import Path

from bank.check import check_many, check_text
from bank.check.figures.inventory import idioms

HERE = Path(__file__).parent


def share(name: str) -> float:
    lines = (HERE / name).read_text(encoding="utf-8").splitlines()
    found = check_many((line, "sentence") for line in lines)
    return sum(any(f.code == "figurative" for f in one) for one in found) / len(lines)


def test_figures_that_children_meet_are_found() -> None:
    assert share("figurative_sentences.tsv") >= 0.85


def test_plain_sentences_with_the_same_words_pass() -> None:
    assert share("plain_sentences.tsv") <= 0.05


def test_a_figure_says_what_a_reader_may_picture_and_offers_plain_words_in_its_own_form() -> None:
    (finding,) = check_text("Dad was pulling my leg.", "sentence")
    assert "pulls a leg" in finding.message and finding.suggestion == "teasing me"


def test_a_question_about_a_saying_is_no_figure() -> None:
    assert check_text('What does the saying "a piece of cake" mean?') == []


def test_every_entry_has_a_plainer_wording() -> None:
    assert [one.pattern for one in idioms() if not one.plain] == []
