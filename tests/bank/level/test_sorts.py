"""The level of a set of words to sort, and what letters count for."""

import pytest

from bank.level import level_text
from bank.level.vocabulary import word


@pytest.mark.parametrize(
    "words", ["dog, cat, car, bus", "chop, chin, ship, shop, chick", "kite, ride, hike, line, bike"]
)
def test_a_set_of_easy_words_is_easy(words):
    assert level_text(words, "sort").grade < 2


def test_a_set_of_late_words_is_hard_and_its_words_are_the_reasons():
    level = level_text("verdict, debt, treaty", "sort")
    assert level.grade > level_text("apple, cake, milk", "sort").grade + 2
    first, *others = (reason.text.lower() for reason in level.reasons)
    assert first == "verdict" and sorted(others) == ["debt", "treaty"]


def test_more_words_of_the_same_make_no_harder_set():
    assert level_text("cat, dog", "sort").grade == pytest.approx(
        level_text("cat, dog, cat, dog, cat, dog", "sort").grade
    )


def test_a_word_known_early_counts_as_few_letters_however_long_it_is():
    assert word("grandmother").letters < len("grandmother") - 3
    assert word("responsibilities").letters > word("grandmother").letters
    assert word("woe").letters > len("woe")


def test_a_colon_ends_no_sentence():
    listed = level_text("There are three pets here: a cat, a dog and a fish.", "sentence")
    joined = level_text("There are three pets here and a cat, a dog and a fish.", "sentence")
    assert listed.grade == pytest.approx(joined.grade, abs=0.5)
