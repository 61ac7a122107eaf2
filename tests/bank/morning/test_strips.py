"""Strips put together again make the sentence that they were cut from."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bank.morning.strips import NoStrips, Strips, phrase_strips, word_strips


@given(st.lists(st.from_regex(r"[A-Za-z]{1,8}", fullmatch=True), min_size=3, max_size=9))
def test_the_strips_are_the_sentence_in_another_order(words: list[str]) -> None:
    if len(set(words)) < 2:
        return
    strips = word_strips(" ".join(words) + ".")
    assert " ".join(strips.parts) == strips.sentence
    assert sorted(strips.mixed) == sorted(strips.parts) and strips.mixed != strips.parts
    assert Strips.from_dict(strips.to_dict()) == strips


@pytest.mark.parametrize(
    ("sentence", "parts"),
    [
        ("The small dog ran to the old barn.", ("The small dog", "ran", "to the old barn.")),
        ("My sister is painting a red boat.", ("My sister", "is painting", "a red boat.")),
        ("We did not see the bus in the rain.", ("We", "did not see", "the bus", "in the rain.")),
    ],
)
def test_phrases_stay_together(sentence: str, parts: tuple[str, ...]) -> None:
    assert phrase_strips(sentence).parts == parts


def test_a_sentence_too_short_to_build_is_refused() -> None:
    with pytest.raises(NoStrips, match="2 strips"):
        word_strips("Go home.")
    with pytest.raises(NoStrips, match="the same"):
        word_strips("no no no")
