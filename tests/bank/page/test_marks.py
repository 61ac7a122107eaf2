"""Proofreading marks on a sentence to fix."""

import doctest

import pytest
from hypothesis import given
from hypothesis import strategies as st

import bank.page.marks
from bank.page import PageFix
from bank.page.marks import marked, strokes
from bank.page.spots import places, spots


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
        ("the the", "the", ["delete"]),
        ("", '."', ["stop", "high"]),
        ("get you're coat", "Get your coat", ["capital", "replace"]),
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
    other = sentences.other
    first = spots(other.faulty, other.corrected, other.fixes)[0][0]
    assert other.faulty[first.start : first.end] == "me and ben"
    assert other.corrected[first.right_start : first.right_end] == "Ben and I"
    assert first.numbers == (1, 2)


# As `bank.edit.compare` gives them: skill, wrong, right, and where each stands.
COMPARED = [
    (
        "me and ben like mrs lopez",
        "Ben and I like Mrs. Lopez.",
        [
            ("pronoun", "me and ben", "Ben and I", 0, 10, 0, 9),
            ("capital-name", "ben", "Ben", 7, 10, 0, 3),
            ("capital-name", "mrs", "Mrs.", 16, 19, 15, 19),
            ("abbreviation", "mrs", "Mrs.", 16, 19, 15, 19),
            ("capital-name", "lopez", "Lopez", 20, 25, 20, 25),
            ("end-mark", "", ".", 25, 25, 25, 26),
        ],
        [(1, 2), (3, 4), (5,), (6,)],
    ),
    (
        "we ran home we ate",
        "We ran home. We ate.",
        [
            ("capital-first", "we", "We", 0, 2, 0, 2),
            ("run-on", "we", ". We", 12, 14, 11, 15),
            ("end-mark", "", ".", 18, 18, 19, 20),
        ],
        [(1,), (2,), (3,)],
    ),
    (
        "she said i ran",
        'She said, "I ran."',
        [
            ("capital-first", "she", "She", 0, 3, 0, 3),
            ("quotation-marks", "", ",", 8, 8, 8, 9),
            ("quotation-marks", "", '"', 9, 9, 10, 11),
            ("capital-i", "i", "I", 9, 10, 11, 12),
            ("end-mark", "", ".", 14, 14, 16, 17),
            ("quotation-marks", "", '"', 14, 14, 17, 18),
        ],
        [(1,), (2,), (3,), (4,), (5,), (6,)],
    ),
    (
        "I went the park.",
        "I went to the park.",
        [("missing-word", "", "to", 7, 7, 7, 9)],
        [(1,)],
    ),
    (
        "I saw saw a cat",
        "I saw a cat.",
        [
            ("extra-word", "saw", "", 6, 9, 6, 6),
            ("end-mark", "", ".", 15, 15, 11, 12),
        ],
        [(1,), (2,)],
    ),
]


@pytest.mark.parametrize("faulty, corrected, fixes, shared", COMPARED)
def test_fixes_of_any_sort_are_drawn_so_that_obeying_them_gives_the_corrected_text(
    faulty, corrected, fixes, shared
):
    names = ("skill", "wrong", "right", "wrong_start", "wrong_end", "right_start", "right_end")
    numbered = [
        PageFix.from_dict(number, dict(zip(names, fix, strict=True)))
        for number, fix in enumerate(fixes, 1)
    ]
    row, lost = marked(faulty, corrected, numbered)
    assert lost == []
    assert "".join(stroke.text for stroke in row) == faulty
    assert applied(row) == corrected
    assert [spot.numbers for spot in spots(faulty, corrected, numbered)[0]] == shared
    assert places(faulty, corrected, numbered) == [fix[5] for fix in fixes]


TEXT = st.text("ab .,", max_size=10)


@given(st.lists(st.tuples(TEXT, TEXT, TEXT), min_size=1, max_size=5), TEXT, st.booleans())
def test_the_marks_of_any_fixes_give_the_corrected_text(parts, end, known):
    """Laws on made-up fixes: a text of gaps that stay and pieces that change."""
    faulty, corrected, fixes = "", "", []
    for number, (gap, wrong, right) in enumerate(parts, 1):
        faulty, corrected = faulty + gap, corrected + gap
        where = (len(corrected), len(corrected) + len(right)) if known else (-1, -1)
        fixes.append(
            PageFix(
                number,
                "spelling",
                wrong,
                right,
                len(faulty),
                len(faulty) + len(wrong),
                "",
                "",
                *where,
            )
        )
        faulty, corrected = faulty + wrong, corrected + right
    faulty, corrected = faulty + end, corrected + end
    row, lost = marked(faulty, corrected, fixes)
    assert lost == []
    assert "".join(stroke.text for stroke in row) == faulty
    assert applied(row) == corrected


def test_a_fix_that_stands_elsewhere_is_told_and_draws_nothing():
    row, lost = marked("the dog", "The dog", [PageFix(1, "capital-first", "cat", "Cat", 0, 3)])
    assert lost == [1]
    assert [stroke.text for stroke in row] == ["the dog"]
