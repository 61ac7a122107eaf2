"""How early a word is learnt, from our own lists, its frequency and the lists that packages carry."""

from __future__ import annotations

import pytest

from bank.level import spelling, vocabulary
from bank.level.vocabulary import word

EARLY_AND_LONG = (
    "babysitter strawberry cupcake crayon ladybug grandmother butterfly playground snowman".split()
)
SHORT_AND_HARD = "vile ruse foil guile plea woe tax debt moot scant feud heir dire levy".split()


@pytest.mark.parametrize("hard", SHORT_AND_HARD)
def test_a_short_abstract_word_is_harder_than_every_long_word_that_small_children_know(hard):
    assert all(word(hard).learnt > word(easy).learnt for easy in EARLY_AND_LONG)


def test_the_levels_for_second_language_learners_are_corrected_by_our_own_lists():
    assert vocabulary.learner_level("cupcake") > vocabulary.learner_level("tax")
    assert word("cupcake").learner < word("debt").learner
    assert word("cupcake").late < word("tax").late


@pytest.mark.parametrize(
    ("base", "form"),
    [("cupcake", "cupcakes"), ("hop", "hopping"), ("carry", "carried"), ("big", "biggest")],
)
def test_inflected_forms_count_with_their_base(base, form):
    assert abs(word(base).learnt - word(form).learnt) < 0.6


@pytest.mark.parametrize(("word_", "base"), [("shed", "she"), ("thing", "the"), ("rating", "rat")])
def test_a_word_is_not_taken_for_a_form_of_what_it_only_looks_like(word_, base):
    assert base not in vocabulary._with_bases(word_)


def test_a_compound_of_first_words_is_easier_than_another_word_as_rare():
    assert word("birdcage").learnt < word("dissent").learnt


def test_our_own_lists_have_no_word_twice_over_and_are_large():
    early, later = vocabulary.own_list("early"), vocabulary.own_list("next")
    assert len(early) > 1700 and len(later) > 1500
    assert all(entry == entry.lower() for entry in (*early, *later))


def test_spelling_patterns_agree_with_how_many_letters_a_sound_takes():
    # Outside check: CMUdict. A word with fewer sounds than letters, beside double letters and the
    # usual pairs, is spelled less as it sounds.
    from bank.language import sounds

    usual = (
        "sh",
        "ch",
        "th",
        "ck",
        "ng",
        "ee",
        "oo",
        "ea",
        "ai",
        "ay",
        "oa",
        "ow",
        "ou",
        "er",
        "ar",
    )
    odd, regular = [], []
    for entry in vocabulary.own_list("early"):
        known = sounds(entry)
        if not known or not 3 <= len(entry) <= 8 or not entry.isalpha():
            continue
        letters = len(entry) - sum(entry.count(pair) for pair in usual)
        letters -= sum(a == b for a, b in zip(entry, entry[1:], strict=False))
        letters -= entry.endswith("e") + 0
        extra = letters - len(known[0])
        (odd if spelling.oddness(entry) else regular).append(extra)
    assert len(odd) > 150
    assert sum(odd) / len(odd) > sum(regular) / len(regular) + 0.25
