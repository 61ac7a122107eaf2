"""Proofreading marks on a sentence to fix."""

import doctest

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bank.page.marks
from bank.page import PageFix
from bank.page.marks import marked, spots, strokes


def test_the_examples_in_the_text_hold():
    assert doctest.testmod(bank.page.marks).failed == 0


@pytest.mark.parametrize(
    "wrong, right, marks",
    [
        ("the", "The", ["capital"]),
        ("Dog", "dog", ["small"]),
        ("", ".", ["stop"]),
        ("", "?", ["insert"]),
        ("", ",", ["insert"]),
        ("", " to", ["insert"]),
        ("", '"', ["high"]),
        ("dont", "don't", ["high"]),
        ("the the", "the", ["replace"]),
        ("very", "", ["delete"]),
        ("alot", "a lot", ["split"]),
        ("grand mother", "grandmother", ["close"]),
        ("runned", "ran", ["replace"]),
        ("went I", "I went", ["swap"]),
        ("park the", "park. The", ["stop", "capital"]),
        ("its", "it's", ["high"]),
        ("cat's", "cats", ["delete"]),
    ],
)
def test_each_repair_has_the_mark_that_proofreaders_use(wrong, right, marks):
    """The marks of printers' proofs, as dictionaries show them under "proofreaders' marks"."""
    assert [stroke.mark for stroke in strokes(wrong, right) if stroke.mark] == marks


def applied(row):
    """What is left on the line when every mark is obeyed."""
    done = {
        "": lambda stroke: stroke.text,
        "capital": lambda stroke: stroke.text.upper(),
        "small": lambda stroke: stroke.text.lower(),
        "delete": lambda stroke: "",
        "close": lambda stroke: "",
    }
    return "".join(done.get(stroke.mark, lambda stroke: stroke.note)(stroke) for stroke in row)


@given(
    wrong=st.text("abAB '.,-xé", max_size=12),
    right=st.text("abAB '.,-xé", max_size=12),
)
def test_obeying_the_marks_gives_the_right_text(wrong, right):
    row = strokes(wrong, right)
    assert "".join(stroke.text for stroke in row) == wrong
    assert applied(row) == right


def test_obeying_all_marks_of_a_sentence_gives_the_corrected_one(sentences):
    for sentence in (sentences.full, sentences.less, sentences.other):
        row, lost = marked(sentence.faulty, sentence.corrected, sentence.fixes)
        assert lost == []
        assert "".join(stroke.text for stroke in row) == sentence.faulty
        assert applied(row) == sentence.corrected


def test_a_fix_inside_another_shares_its_place_and_keeps_its_number(sentences):
    found, _ = spots(sentences.other.faulty, sentences.other.corrected, sentences.other.fixes)
    assert (found[0].wrong, found[0].right, found[0].numbers) == (
        "me and ben",
        "Ben and I",
        (1, 2),
    )


def test_a_fix_that_stands_elsewhere_is_told_and_draws_nothing():
    row, lost = marked("the dog", "The dog", [PageFix(1, "capital-first", "cat", "Cat", 0, 3)])
    assert lost == [1]
    assert [stroke.text for stroke in row] == ["the dog"]
