"""a and an by sound, held against CMUdict (Carnegie Mellon University)."""

from __future__ import annotations

from bank.check.articles import vowel_sound
from bank.language import starts_with_vowel_sound


def test_the_sound_of_frequent_words_agrees_with_cmudict() -> None:
    from wordfreq import top_n_list

    known = [
        (word, heard)
        for word in top_n_list("en", 8_000)
        if word.isalpha() and len(word) > 2 and (heard := starts_with_vowel_sound(word)) is not None
    ]
    # Short forms that are read letter by letter are not words to put a or an before.
    wrong = [word for word, heard in known if vowel_sound(word) != heard]
    assert len(wrong) / len(known) < 0.004, wrong
