"""Strips to cut, for the binder and for the wall."""

import dataclasses

import pytest
from fontTools.ttLib import TTFont

from bank.page import FACES, PAPERS, LearnerPage, PageQuestion, strips
from bank.page.strip import CAPITALS, wall_points
from bank.page.typeset import _font_files


@pytest.mark.parametrize("paper", PAPERS)
def test_every_prompt_of_the_day_is_on_one_strip(day, learners, read, paper):
    made = strips(day, learners, paper)
    sheets = read(made)
    assert made.problems == ()
    assert made.files[0].name == f"2026-11-25-strips-{paper}.pdf"
    for page in learners:
        for question in page.questions:
            assert sheets.text.count("".join(question.text.split())) == 1
        if page.sentence:
            assert page.sentence.faulty in sheets
        if page.topic:
            assert page.topic.text in sheets
    assert sheets.title == "Strips, Wednesday, November 25, 2026"
    assert sheets.language.startswith("en")
    assert all(sheets.faces().values())


def test_a_strip_for_the_binder_has_the_choices_and_one_for_the_wall_the_question_alone(day, read):
    asked = PageQuestion("Which is soft?", ("a pillow", "a rock"))
    nap = PageQuestion("Do bears nap?", ("yes", "no"))
    pages = [LearnerPage("T7", mode="says", questions=(asked, nap))]
    assert "Which is soft? a pillow a rock Question T7" in read(strips(day, pages))
    assert "Do bears nap? Question T7" in read(strips(day, pages))
    assert "a pillow" not in read(strips(day, pages, wall=True))


def test_a_strip_says_whose_it_is(day, learners, read):
    sheets = read(strips(day, learners))
    assert "Draw a map.Journal topic M9" in sheets


@pytest.mark.parametrize("face", FACES)
def test_capitals_on_the_wall_are_20_millimetres_high(day, read, face):
    """Against the face's own table of measures, and the size that is in the file."""
    table = TTFont(_font_files()[face])
    assert CAPITALS[face] == pytest.approx(table["OS/2"].sCapHeight / table["head"].unitsPerEm)
    page = LearnerPage("K4", questions=(PageQuestion("Where is it?"),))
    sizes = read(strips(day, [page], wall=True, face=face)).sizes()
    largest = max(size for size, words in sizes)
    assert largest * CAPITALS[face] / 72 * 25.4 == pytest.approx(20, abs=0.1)
    assert wall_points(face) == pytest.approx(largest, abs=0.1)


def test_a_prompt_too_long_for_the_wall_is_named_and_the_others_are_made(day, learners, read):
    long = "Tell about a time when you helped somebody at school and what they said to you after."
    page = dataclasses.replace(learners[0], questions=(PageQuestion(long),))
    made = strips(day, [page, learners[4]], wall=True)
    sheets = read(made)
    assert made.problems == (f"too long for the wall: {long}",)
    assert long not in sheets
    assert "Which animal gives us milk?" in sheets


def test_a_long_prompt_is_whole_on_a_binder_strip(day, read):
    long = ("The big dog ran to the park and sat in the sun. " * 7)[:300]
    wide = "W" * 40
    page = LearnerPage("K4", questions=(PageQuestion(long), PageQuestion(wide)))
    sheets = read(strips(day, [page]))
    assert long in sheets and wide in sheets


def test_a_day_without_prompts_has_no_strips(day):
    assert strips(day, [LearnerPage("K4")]).files == ()
