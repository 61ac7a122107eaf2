import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bank.item import BankError
from bank.progress.marks import FIXED, MISSED, NEW, STEP, Mark
from bank.progress.settings import PROMPTS, ProgressSettings
from bank.progress.sheet import (
    KEEP,
    SAVED,
    STOPPED,
    WANTS_TEXT,
    Sheet,
    Slot,
    help_keys,
    marks_of,
    state_of,
)

MONDAY = dt.date(2026, 9, 14)
FIXES = ({"skill": "tense", "wrong": "goed", "right": "went"}, {"skill": "end-mark"})


def a_sheet() -> Sheet:
    """A set of seven: five questions, a sentence with two errors, a topic."""
    slots = [Slot("question", n, f"question {n}", f"q{n}") for n in range(5)]
    slots.append(Slot("sentence", 0, "We goed home", "s1", fixes=FIXES))
    slots.append(Slot("topic", 0, "Snow", "t1"))
    return Sheet(MONDAY, slots, PROMPTS)


def press(sheet: Sheet, keys: str) -> str:
    said = ""
    for key in keys:
        said = sheet.press(key)
    return said


def test_a_learner_who_did_everything_alone_takes_one_key() -> None:
    sheet = a_sheet()
    assert press(sheet, "a") == SAVED
    marks = sheet.marks()
    assert len(marks) == 9 and all(mark.alone for mark in marks)


def test_no_rows_key_closes_or_leaves_the_sheet_whatever_shift_does() -> None:
    slots = [Slot("question", n, f"question {n}", f"q{n}") for n in range(20)]
    slots += [Slot(STEP, n, f"step {n}", None, f"step-{n}") for n in range(10)]
    rows = Sheet(MONDAY, slots, PROMPTS).row_keys
    assert len(set(rows)) == 30
    for key in {*rows.lower(), *rows.upper()}:
        assert press(Sheet(MONDAY, slots, PROMPTS), key) == ""


@pytest.mark.parametrize(
    ("keys", "not_alone"),
    [
        ("3n5va", {("question", 2, ""), ("question", 4, "")}),
        ("3n62aa", {("question", 2, ""), ("sentence", 0, "2")}),
        ("612aa", {("sentence", 0, "1"), ("sentence", 0, "2")}),
        ("3m7pa", {("question", 2, ""), ("topic", 0, "")}),
    ],
)
def test_a_set_of_seven_with_two_misses_takes_at_most_six_keys(
    keys: str, not_alone: set[tuple[str, int, str]]
) -> None:
    sheet = a_sheet()
    assert len(keys) <= 6 and press(sheet, keys) == SAVED
    found = {(m.kind, m.position, m.part) for m in sheet.marks() if not m.alone}
    assert found == not_alone
    assert len(sheet.marks()) == 9


def test_a_sentence_done_with_help_has_no_fix_done_alone() -> None:
    sheet = a_sheet()
    press(sheet, "61va")
    fixes = {mark.part: (mark.outcome, mark.help) for mark in sheet.marks() if mark.skill}
    assert fixes == {"1": (MISSED, "verbal"), "2": (FIXED, "verbal")}


def test_a_topic_takes_its_number_of_sentences_and_help() -> None:
    sheet = a_sheet()
    press(sheet, "7g74a")
    (topic,) = [mark for mark in sheet.marks() if mark.kind == "topic"]
    assert (topic.amount, topic.help) == (4, "gesture")


def test_pressing_a_fix_again_takes_the_miss_back() -> None:
    sheet = a_sheet()
    press(sheet, "611aa")
    assert all(mark.alone for mark in sheet.marks())


def test_what_was_not_asked_is_no_mark_against_anyone() -> None:
    sheet = a_sheet()
    press(sheet, "1xa")
    (asked,) = [mark for mark in sheet.marks() if not mark.counts]
    assert (asked.kind, asked.position) == ("question", 0)


def test_only_what_was_picked_is_kept_where_the_rest_is_not_said() -> None:
    sheet = a_sheet()
    assert press(sheet, "2g" + KEEP) == SAVED
    assert [(mark.position, mark.help) for mark in sheet.marks()] == [(1, "gesture")]


def test_new_errors_are_counted_and_a_typed_sentence_names_them() -> None:
    sheet = a_sheet()
    press(sheet, "6+")
    assert [m.part for m in sheet.marks() if m.outcome == NEW] == ["new 1"]
    assert sheet.press("t") == WANTS_TEXT
    sheet.typed("We went hom", [2], ["spelling"], keep=False)
    marks = sheet.marks()
    assert [m.skill for m in marks if m.outcome == NEW] == ["spelling"]
    assert [m.part for m in marks if m.outcome == MISSED] == ["2"]
    assert all(mark.attempt is None for mark in marks)
    sheet.typed("We went hom", [2], ["spelling"], keep=True)
    assert sheet.marks()[0].attempt == "We went hom"


def test_stopping_says_so() -> None:
    assert press(a_sheet(), "3vq") == STOPPED


def test_every_word_for_help_has_a_key_of_its_own_that_means_nothing_else() -> None:
    for words in (PROMPTS, ("alarm", "nod", "shadow", "x-ray"), ("part", "push", "pull", "point")):
        keys = help_keys(words)
        assert list(keys.values()) == list(words)
        assert not set(keys) & set("anxsbqt")


def test_words_for_help_that_could_be_taken_for_something_else_are_refused() -> None:
    for words in ((), ("alone",), ("say", "Say"), ("not done",)):
        with pytest.raises(BankError):
            ProgressSettings(prompts=words)


@given(st.text(alphabet="a1234567gvmpnx+\n", max_size=30))
def test_a_sheet_comes_back_from_its_marks_whatever_was_pressed(keys: str) -> None:
    sheet = a_sheet()
    for key in keys:
        sheet.press(key)
    marks = sheet.marks()
    again = [state_of(slot, marks) for slot in sheet.slots]
    pairs = zip(sheet.slots, again, strict=True)
    assert [mark for slot, state in pairs for mark in marks_of(MONDAY, slot, state)] == marks


def test_more_rows_than_digits_have_letters() -> None:
    slots = [Slot(STEP, n, f"step {n}", part=f"s{n}") for n in range(12)]
    sheet = Sheet(MONDAY, slots, PROMPTS)
    press(sheet, "0vdna")
    found = {m.part: (m.outcome, m.help) for m in sheet.marks() if not m.alone}
    assert found == {"s9": ("done", "verbal"), "s11": ("not-done", "")}
    assert isinstance(sheet.marks()[0], Mark)
