"""Our own placements of common words, and how they go with lists made elsewhere."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import spearmanr

from bank.level import vocabulary
from bank.level.forms import joined, plural
from bank.level.placements import placement, placements

words = st.sampled_from(sorted(placements()))


def test_every_placement_lies_on_its_scale():
    assert len(placements()) > 12000
    for word, placed in placements().items():
        assert word.isalpha() and word == word.lower()
        assert 0 <= placed.grade <= 12 and 1 <= placed.stage <= 6, word


@given(words)
def test_a_regular_form_is_placed_at_most_a_little_later_than_its_base(word):
    base = placement(word)
    for form in (plural(word), *joined(word, "ed"), *joined(word, "ing")):
        if form not in placements() and len(word) > 2:
            assert placement(form).grade <= base.grade + 0.2 + 1e-9, form


def test_a_word_that_is_not_common_has_none():
    assert placement("expostulate") is None and placement("zxqv") is None


@pytest.mark.parametrize(
    "easier_harder",
    ["cupcake tax", "crayon levy", "ladybug debt", "babysitter fraud", "dinosaur equity"],
)
def test_a_childs_word_stands_before_a_short_word_of_grown_ups(easier_harder):
    easier, harder = (vocabulary.word(word).learnt for word in easier_harder.split())
    assert easier + 1 < harder


def test_the_stages_go_with_the_word_levels_of_cefrpy():
    # Outside check: cefrpy's levels for second-language learners, of common words (Zipf frequency
    # of 4 and more) that it does not give its hardest level.
    known = np.array(
        [
            (placed.stage, vocabulary.learner_level(word))
            for word, placed in placements().items()
            if vocabulary.rarity(word) < 2.5 and vocabulary.learner_level(word) < 5.5
        ]
    )
    assert len(known) > 2000
    assert spearmanr(known[:, 0], known[:, 1])[0] > 0.6


def test_words_of_the_familiar_word_list_are_placed_earlier():
    # Outside check: the familiar-word list that textstat carries holds what 80 in 100 fourth
    # graders know (E. Dale and J. S. Chall, Educational Research Bulletin 27, 1948).
    listed, others = [], []
    for word, placed in placements().items():
        (listed if vocabulary.is_listed(word) else others).append(placed.grade)
    assert np.mean(np.array(listed) <= 4.5) > 0.9
    assert np.mean(np.array(others) > 3.0) > 0.8


def test_rarer_words_are_placed_later():
    # Outside check: wordfreq's frequencies.
    found = [(placed.grade, vocabulary.rarity(word)) for word, placed in placements().items()]
    assert spearmanr(*np.array(found).T)[0] > 0.4
