"""What a learner wrote: which fixes were made, which were missed, what is newly wrong."""

from __future__ import annotations

import random
from typing import Any

import pytest

from bank.edit import mark_attempt
from bank.edit.versions import comparison

FAULTY = "me and ben goed to the store and we dont buyed too apples"
CORRECTED = "Ben and I went to the store, and we didn't buy two apples."


def some_pairs(every_pair: list[Any], count: int) -> list[Any]:
    return random.Random(5).sample(every_pair, count)


def test_an_attempt_with_some_fixes_made_returns_just_those(every_pair: list[Any]) -> None:
    """Every subset where there are few fixes, and a sample where there are many."""
    rng = random.Random(7)
    for pair in some_pairs(every_pair, 50):
        known = comparison(pair.faulty, pair.corrected)
        count = len(known.fixes)
        subsets = range(1 << count)
        for bits in subsets if count <= 3 else rng.sample(subsets, 8):
            chosen = [k for k in range(count) if bits >> k & 1]
            marks = mark_attempt(pair.faulty, pair.corrected, known.with_fixed(chosen))
            assert marks.fixed == [known.fixes[k] for k in chosen]
            assert marks.missed == [known.fixes[k] for k in range(count) if k not in chosen]
            assert marks.introduced == []


@pytest.mark.parametrize("how", ["exchange", "drop", "add"])
def test_one_more_change_of_a_word_is_one_new_error(how: str, every_pair: list[Any]) -> None:
    """The word is one that no fix touches, as a dropped `the` may be the very error of a fix."""
    rng = random.Random(9)
    for pair in some_pairs(every_pair, 80):
        known = comparison(pair.faulty, pair.corrected)
        untouched = [p for p in known.pieces.row if not p.layers and p.i1 > p.i0]
        free = [p for p in untouched if known.pieces.faulty[p.i0].is_word]
        if not free or known.pieces.loose:
            continue
        piece = rng.choice(free)
        token = known.pieces.corrected[piece.j0]
        new = {"exchange": "zebra", "drop": "", "add": f"{token.text} zebra"}[how]
        attempt = pair.corrected[: token.start] + new + pair.corrected[token.end :]
        marks = mark_attempt(pair.faulty, pair.corrected, " ".join(attempt.split()))
        assert len(marks.introduced) == 1, attempt
        if how == "add":
            assert marks.missed == []


def test_an_empty_attempt_misses_everything() -> None:
    marks = mark_attempt(FAULTY, CORRECTED, "  ")
    assert marks.fixed == [] and marks.introduced == []
    assert len(marks.missed) == len(comparison(FAULTY, CORRECTED).fixes)


def test_the_corrected_sentence_fixes_everything_and_the_faulty_nothing() -> None:
    assert mark_attempt(FAULTY, CORRECTED, CORRECTED).missed == []
    assert mark_attempt(FAULTY, CORRECTED, FAULTY).fixed == []


@pytest.mark.parametrize(
    ("faulty", "corrected", "attempt"),
    [
        (
            "we ate rice beans and corn",
            "We ate rice, beans and corn.",
            "We ate rice, beans, and corn.",
        ),
        (
            "we ate rice beans and corn",
            "We ate rice, beans, and corn.",
            "We ate rice, beans and corn.",
        ),
        ("we won", "We won.", "We won!"),
        ("he dont sing", "He doesn't sing.", "He does not sing."),
        ("its hot", "It's hot.", "It is hot."),
        ("I have too cats", "I have two cats.", "I have 2 cats."),
        ("I saw the dog it ran.", "I saw the dog. It ran.", "I saw the dog, and it ran."),
        ("I saw the dog it ran.", "I saw the dog. It ran.", "I saw the dog; it ran."),
        ("We don't have no milk.", "We don't have any milk.", "We have no milk."),
        ("dr Lee ran.", "Dr. Lee ran.", "Doctor Lee ran."),
    ],
)
def test_another_right_way_counts_as_fixed(faulty: str, corrected: str, attempt: str) -> None:
    marks = mark_attempt(faulty, corrected, attempt)
    assert marks.missed == [] and marks.introduced == []


def test_a_statement_does_not_become_a_question() -> None:
    marks = mark_attempt("we won", "We won.", "We won?")
    assert [fix.skill for fix in marks.missed] == ["end-mark"]


def test_a_wrong_try_is_a_miss_and_not_a_new_error() -> None:
    marks = mark_attempt("We goed home.", "We went home.", "We gone home.")
    assert [fix.skill for fix in marks.missed] == ["tense"]
    assert marks.introduced == []


def test_a_new_misspelling_is_named() -> None:
    marks = mark_attempt("we went home", "We went home.", "We whent home.")
    assert [(f.skill, f.wrong, f.right) for f in marks.introduced] == [
        ("spelling", "whent", "went")
    ]
    assert len(marks.fixed) == 2


def test_half_a_copy_is_one_new_error_and_the_rest_is_missed() -> None:
    marks = mark_attempt(FAULTY, CORRECTED, "Ben and I went to the")
    assert [fix.skill for fix in marks.fixed] == ["pronoun", "capital-name", "tense"]
    assert len(marks.introduced) <= 2


def test_something_else_altogether_misses_everything() -> None:
    marks = mark_attempt(FAULTY, CORRECTED, "My uncle has a green boat.")
    assert marks.fixed == []
    assert len(marks.introduced) == 1


@pytest.mark.parametrize("attempt", ["?!", "a " * 60, "Ben Ben Ben", "\n\n", "“", "Ben and I " * 9])
def test_a_rambling_attempt_still_gets_an_answer(attempt: str) -> None:
    marks = mark_attempt(FAULTY, CORRECTED, attempt)
    assert len(marks.fixed) + len(marks.missed) == len(comparison(FAULTY, CORRECTED).fixes)
