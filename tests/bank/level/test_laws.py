"""What must hold for the level of any prompt, with hypothesis."""

import string

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bank.level import KINDS, level_many, level_text

# Words of one form in steps from met early to rare and learnt late, made for these tests.
LADDERS = {
    "thing": ["dog", "garden", "debt", "verdict", "usurpation"],
    "person": ["baby", "neighbor", "lawyer", "magistrate", "plenipotentiary"],
    "quality": ["big", "lively", "prudent", "fastidious", "pusillanimous"],
    "doing": ["see", "borrow", "summon", "repudiate", "expostulate"],
    "did": ["saw", "borrowed", "summoned", "repudiated", "expostulated"],
}
FRAMES = [
    ("sentence", "The {person} {did} the {quality} {thing}."),
    ("sentence", "My {quality} {person} and I {did} a {thing} because we were late."),
    ("question", "Do you {doing} the {person}?"),
    ("question", "Why did the {quality} {person} {doing} it?"),
    ("question", "If you had a {quality} {thing}, who would {doing} it?"),
    ("topic", "A {quality} {thing}"),
    ("topic", "The {person} with the {thing}"),
    ("sort", "{quality} {thing} {person}"),
]
frames = st.sampled_from(FRAMES)
steps = st.integers(0, 4)


def filled(frame: str, at: dict[str, int]) -> str:
    return frame.format(**{slot: words[at[slot]] for slot, words in LADDERS.items()})


@settings(max_examples=150, deadline=None)
@given(frames, st.fixed_dictionaries(dict.fromkeys(LADDERS, steps)), st.sampled_from([*LADDERS]))
def test_a_rarer_word_of_the_same_form_never_lowers_the_level(frame, at, slot):
    kind, pattern = frame
    levels = [level_text(filled(pattern, {**at, slot: step}), kind).grade for step in range(5)]
    assert levels == sorted(levels), [filled(pattern, {**at, slot: step}) for step in range(5)]


words = st.sampled_from(
    "the a my dog ran to school and Ben saw Anna's red verdict because it is not 7 o'clock, we "
    "don't like rain but they were eaten by who can explain why twenty-two St. strange".split()
)
prompts = st.lists(words, min_size=1, max_size=25).map(" ".join)
kinds = st.sampled_from(KINDS)


@settings(max_examples=80, deadline=None)
@given(prompts, kinds)
def test_the_range_always_holds_the_grade(text, kind):
    try:
        level = level_text(text, kind)
    except ValueError:
        assert not any(letter in string.ascii_letters for letter in text)
        return
    assert 0 <= level.low <= level.grade <= level.high <= 12


@settings(max_examples=80, deadline=None)
@given(prompts, kinds, st.sampled_from(["'", "\u2019", "\u2018", "`"]))
def test_first_letter_spaces_quotes_and_a_missing_end_mark_change_nothing(text, kind, quote):
    if not any(letter.isalpha() for letter in text):
        return
    level = level_text(text, kind)
    for variant in (
        text[0].upper() + text[1:],
        text[0].lower() + text[1:],
        f"  {text}\n",
        text.replace("'", quote),
        text.rstrip(".?!") + ".",
        text.rstrip(".?!") + "?",
        text.rstrip(".?!"),
    ):
        assert level_text(variant, kind).grade == level.grade, variant
        assert level_text(variant, kind).reasons == level.reasons, variant


@pytest.mark.parametrize("quotes", ["\u201c\u201d", "\u2018\u2019", "''", "\u00ab\u00bb"])
def test_the_style_of_quotes_changes_nothing(quotes):
    plain = 'The teacher said, "We don\'t have school today," and we cheered.'
    first, second = plain.split('"')[0::2][0], plain.split('"')[1:]
    styled = f"{first}{quotes[0]}{second[0]}{quotes[1]}{second[1]}"
    assert level_text(styled, "sentence") == level_text(plain, "sentence")


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(prompts, kinds), min_size=1, max_size=12), st.randoms())
def test_the_same_text_has_the_same_level_in_any_batch(pairs, random):
    pairs = [pair for pair in pairs if any(letter.isalpha() for letter in pair[0])]
    alone = {pair: level_text(*pair) for pair in pairs}
    random.shuffle(pairs)
    assert list(level_many(pairs)) == [alone[pair] for pair in pairs]


UNSEEN = ["\u00ad", "\u200b", "\u2060", "\ufeff", "\u200c", "\u200d", "\u200e"]


@settings(max_examples=60, deadline=None)
@given(prompts, kinds, st.sampled_from(UNSEEN), st.integers(0, 100))
def test_what_a_word_processor_puts_in_unseen_changes_nothing(text, kind, unseen, at):
    if not any(letter.isalpha() for letter in text):
        return
    at %= len(text) + 1
    assert level_text(text[:at] + unseen + text[at:], kind) == level_text(text, kind)


@pytest.mark.parametrize("hyphen", ["\u2010", "\u2011"])
def test_a_hyphen_that_does_not_break_changes_nothing(hyphen):
    plain = "Our class has twenty-two students this year."
    assert level_text(plain.replace("-", hyphen), "sentence") == level_text(plain, "sentence")


@settings(max_examples=60, deadline=None)
@given(prompts, kinds)
def test_a_text_all_in_capitals_is_as_hard_as_in_small_letters(text, kind):
    if len(text.split()) > 1 and any(letter.isalpha() for letter in text):
        assert level_text(text.upper(), kind) == level_text(text.lower(), kind)


def test_a_short_form_in_capitals_is_not_taken_for_shouting():
    assert level_text("TV") == level_text("TV?")
    assert level_text("We see the USA on TV.", "sentence") != level_text(
        "We see the usa on tv.", "sentence"
    )


@pytest.mark.parametrize(
    ("without", "with_it"),
    [
        ("Ben cant find his shoe.", "Ben can't find his shoe."),
        ("We wont be late.", "We won't be late."),
        ("Theyre in my bag.", "They're in my bag."),
        ("Youll see, it doesnt hurt.", "You'll see, it doesn't hurt."),
    ],
)
def test_a_forgotten_apostrophe_makes_no_contraction_harder(without, with_it):
    assert level_text(without, "sentence").grade == level_text(with_it, "sentence").grade
    said = {reason.text for reason in level_text(without, "sentence").reasons}
    assert not {"nt", "re", "ll"} & said


@pytest.mark.parametrize(
    ("run_on", "apart"),
    [
        ("What do bees make?What do ants eat?", "What do bees make? What do ants eat?"),
        ("It is late.I go home!A bus comes.", "It is late. I go home! A bus comes."),
    ],
)
def test_a_forgotten_space_between_two_sentences_changes_nothing(run_on, apart):
    assert level_text(run_on) == level_text(apart)
