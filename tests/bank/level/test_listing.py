"""Levelling a file: a list of prompts, or one text."""

from __future__ import annotations

import pytest

from bank.level.listing import texts_in

LIST = "1. Do you like cats?\n\n2) A red ball\n- I see a dog.\nwho is that\n"
TEXT = "Once there was a fox that\nlived in a den. It had a\nbushy tail and it ran\nfast.\n"


def texts(content, **said):
    return [(text, kind) for _, text, kind in texts_in(content, **said)]


def test_each_prompt_knows_its_line():
    assert [line for line, *_ in texts_in(LIST)] == [1, 3, 4, 5]


def test_a_list_has_one_prompt_a_line_without_its_numbers_and_bullets():
    assert texts(LIST) == [
        ("Do you like cats?", "question"),
        ("A red ball", "topic"),
        ("I see a dog.", "sentence"),
        ("who is that", "question"),
    ]


def test_a_text_that_reads_on_is_one_passage():
    assert texts(TEXT) == [(" ".join(TEXT.split()), "passage")]


def test_a_paragraph_on_one_line_is_a_passage_and_one_sentence_is_not():
    assert texts("I ran. He ran. We fell. It hurt. ")[0][1] == "passage"
    assert texts("We ran home.") == [("We ran home.", "sentence")]


def test_the_kind_and_the_shape_can_be_said():
    assert texts("A dog\nA cat", kind="sort") == [("A dog", "sort"), ("A cat", "sort")]
    assert texts(TEXT, whole=False)[0] == ("Once there was a fox that", "topic")
    assert texts("A dog\nA cat", whole=True) == [("A dog A cat", "passage")]


@pytest.mark.parametrize("nothing", ["", "\n\n  \n"])
def test_an_empty_file_has_no_texts(nothing):
    assert texts(nothing) == []
