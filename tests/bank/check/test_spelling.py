"""Spelling against outside lists: codespell's dictionary (GPL-2.0-only; it is read here for the
measure, nothing of it is in the project) and the most frequent words of wordfreq."""

from __future__ import annotations

import random
from importlib.resources import files

import pytest

from bank.check import check_text
from bank.check.spelling import is_word, suggest

codespell = pytest.importorskip("codespell_lib")


def misspellings() -> list[tuple[str, set[str]]]:
    """Entries in letters alone whose correction is among the 20,000 most frequent words."""
    from wordfreq import top_n_list

    frequent = set(top_n_list("en", 20_000))
    text = (files("codespell_lib") / "data" / "dictionary.txt").read_text(encoding="utf-8")
    entries = []
    for line in text.splitlines():
        wrong, _, rest = line.partition("->")
        right = {word.strip() for word in rest.split(",") if word.strip()}
        if wrong.isalpha() and wrong.isascii() and right & frequent:
            entries.append((wrong, right))
    return entries


def flagged(word: str) -> bool:
    findings = check_text(f"This is the word {word} here.", "sentence")
    return any(f.start <= 17 < f.end for f in findings)


def test_common_misspellings_are_flagged() -> None:
    sample = random.Random(5).sample(misspellings(), 400)
    assert sum(flagged(wrong) for wrong, _ in sample) / len(sample) >= 0.97


def test_no_more_than_one_in_thirty_misspellings_is_taken_for_a_word() -> None:
    entries = misspellings()
    assert sum(is_word(wrong) for wrong, _ in entries) / len(entries) <= 0.03


def test_the_right_word_is_offered_first() -> None:
    sample = random.Random(6).sample(misspellings(), 120)
    firsts = [(suggest(wrong) or ("",))[0] in right for wrong, right in sample]
    assert sum(firsts) / len(firsts) >= 0.8


def test_frequent_words_are_words() -> None:
    from wordfreq import top_n_list

    words = [word for word in top_n_list("en", 10_000) if word.isalpha()]
    assert sum(not is_word(word) for word in words) / len(words) <= 0.005


@pytest.mark.parametrize(
    "word", ["playdate", "cupcakes", "favorite", "pajamas", "traveled", "donut", "treehouse"]
)
def test_words_of_an_american_classroom_are_words(word: str) -> None:
    assert is_word(word)


def test_a_name_inside_a_sentence_is_not_misspelled() -> None:
    assert check_text("My friend Zayden waved to Ms. Okonkwo.", "sentence") == []
