"""Longer texts lie on the scale of the published grade formulas."""

from __future__ import annotations

import pytest

from bank.level import level_text
from bank.level.passage import FULL_LENGTH, middle_of_formulas

EASY = (
    "A small fox lives in the woods. She has a red coat and a long tail. In the day she sleeps in a "
    "hole under a tree. At night she goes out to look for food. She eats mice and eggs and berries. "
    "One night she hears a noise. It is a little fox that is lost. She takes him home with her. "
    "Now the two foxes play in the grass every night. "
)
MIDDLE = (
    "The library in our town was built a hundred years ago by a family of weavers. They had noticed "
    "that their workers told each other stories while the looms were running, and they wondered what "
    "would happen if there were books as well. At first only a few people came. Then a teacher began "
    "to read aloud on Saturdays, and soon there were not enough chairs. "
)
HARD = (
    "The commission's report attributes the decline of the fishery to several independent factors. "
    "Industrial effluent had altered the composition of the estuary, while inadequate enforcement "
    "permitted the systematic exploitation of juvenile stocks. Although subsequent legislation "
    "addressed the former, successive administrations proved reluctant to confront the latter. "
)


@pytest.mark.parametrize("text", [EASY * 3, MIDDLE * 3, EASY + MIDDLE * 2, MIDDLE * 2 + EASY])
def test_a_passage_of_full_length_lands_within_one_grade_of_the_formulas_median(text):
    assert len(text.split()) >= FULL_LENGTH
    level = level_text(text, "passage")
    assert abs(level.grade - middle_of_formulas(text.strip())) <= 1.0


def test_passages_are_ordered_by_their_words_and_clauses():
    grades = [level_text(text * 2, "passage").grade for text in (EASY, MIDDLE, HARD)]
    assert grades == sorted(grades) and grades[2] - grades[0] > 3


def test_rare_words_raise_a_passage_of_the_same_lengths():
    plain = MIDDLE * 2
    rare = plain.replace("noticed", "discerned").replace("wondered", "pondered")
    rare = rare.replace("a few people", "a scant laity").replace("stories", "parables")
    assert level_text(rare, "passage").grade > level_text(plain, "passage").grade


def test_one_more_word_never_makes_the_level_leap():
    words = (EASY + MIDDLE).split()
    grades = [level_text(" ".join(words[:count]), "passage").grade for count in range(20, 70)]
    assert max(abs(a - b) for a, b in zip(grades, grades[1:], strict=False)) < 1.2
