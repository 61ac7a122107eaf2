"""The proof sheet: what was made sure of, and what deserves a look."""

import pytest

from bank.page import ProofItem, proof_lines, proof_sheet
from bank.page.proof import SURE, merged, worth_a_glance

FINE = ProofItem("question", "Which animal gives us milk?", ("K4",), low=1, high=2)
WIDE = ProofItem("question", "Why do we wear a coat?", ("K4", "B2"), low=0, high=4)
LOOK = ProofItem(
    "topic", "Tell about your day.", ("K4",), low=1, high=2, please_look=("two questions in one?",)
)
UNSURE = ProofItem(
    "sentence", "The dog ran.", ("B2",), frozenset(SURE) - {"not-too-hard"}, low=1, high=2
)
SEEN = ProofItem("question", "Where is the sun?", ("T7",), low=1, high=2, seen="in May by T7")


def test_an_item_without_doubt_says_nothing():
    assert FINE.doubts == ()


def test_doubts_are_in_words():
    assert WIDE.doubts == ("level could be K to 4",)
    assert LOOK.doubts == ("two questions in one?",)
    assert UNSURE.doubts == ("may be too hard",)
    assert SEEN.doubts == ("seen before: in May by T7",)
    assert ProofItem("topic", "Go.", ("K4",)).doubts == ("no level yet",)


def test_the_two_most_doubtful_items_are_worth_a_glance():
    assert worth_a_glance([FINE, WIDE, LOOK, SEEN, UNSURE]) == [UNSURE, LOOK]


def test_an_item_that_several_learners_have_is_there_once_and_sure_only_for_all():
    one = ProofItem("question", "Where?", ("K4",), low=1, high=2)
    two = ProofItem("question", "Where?", ("B2",), frozenset({"new"}), low=1, high=2)
    (both,) = merged([one, two])
    assert both.codes == ("K4", "B2")
    assert both.sure == {"new"}


def test_the_terminal_names_every_doubt_and_the_two_to_look_at():
    lines = "\n".join(proof_lines([FINE, WIDE, LOOK, SEEN, UNSURE]))
    assert "5 items today" in lines
    assert "Why do we wear a coat? (K4, B2): level could be K to 4" in lines
    assert lines.index("Most worth a glance") < lines.rindex("sentence: The dog ran.")


def test_the_sheet_has_every_item_once_and_fits_on_half_a_page(day, read):
    items = [
        ProofItem("question", f"What is number {number} on the wall?", ("K4", "B2"), low=1, high=2)
        for number in range(16)
    ]
    made = proof_sheet(day, [*items, WIDE, LOOK, UNSURE])
    sheets = read(made)
    assert len(sheets.pages) == 1
    for item in items:
        assert sheets.text.count("".join(item.text.split())) in (1, 2)
    assert all(words in sheets for words in SURE.values())
    assert "may be too hard" in sheets
    assert sheets.title.startswith("Proof sheet")
    heights = []
    sheets.reader.pages[0].extract_text(
        visitor_text=lambda text, cm, tm, font, size: heights.append(
            cm[5] + cm[3] * tm[5] if text.strip() else 792
        )
    )
    assert min(heights) > 792 / 2


def test_what_nobody_can_be_sure_of_is_refused():
    with pytest.raises(ValueError, match="'funny'"):
        ProofItem("topic", "Go.", ("K4",), frozenset({"funny"}))
