"""A basket holds books that a learner can read alone and has not had."""

from __future__ import annotations

import json
from collections import Counter
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from bank.morning.reading import Basket, Book, weekly_baskets

MONDAY = date(2026, 9, 7)
SHELF = [Book(f"b{n:02}", f"Book {n}", grade=n / 4) for n in range(24)]


def weeks(lows: dict[str, float], count: int, size: int = 3) -> list[list[Basket]]:
    earlier: list[Basket] = []
    out = []
    for n in range(count):
        found = weekly_baskets(SHELF, lows, earlier, MONDAY + timedelta(days=7 * n), size)
        earlier += found.baskets
        out.append(list(found.baskets))
    return out


def test_every_book_is_at_or_below_the_low_end_of_the_band() -> None:
    lows = {"K1": 1.0, "K2": 2.5}
    grade = {book.code: book.grade for book in SHELF}
    for week in weeks(lows, 3, size=1):
        for basket in week:
            assert all(grade[code] <= lows[basket.learner] for code in basket.books)


def test_no_book_comes_twice_to_the_same_learner() -> None:
    had: dict[str, list[str]] = {"K1": [], "K2": []}
    for week in weeks({"K1": 5.0, "K2": 5.0}, 4):
        for basket in week:
            had[basket.learner] += basket.books
    assert all(len(codes) == 12 == len(set(codes)) for codes in had.values())


def test_the_hardest_of_the_easy_books_come_first() -> None:
    (basket,) = weekly_baskets(SHELF, {"K1": 2.1}, [], MONDAY, size=2).baskets
    assert basket.books == ("b08", "b07")


def test_one_copy_lies_in_one_basket_a_week() -> None:
    for week in weeks({f"K{n}": 3.0 for n in range(4)}, 2):
        lying = Counter(code for basket in week for code in basket.books)
        assert max(lying.values()) == 1


def test_the_learner_with_the_fewest_books_to_choose_from_chooses_first() -> None:
    shelf = [Book("easy", "Easy", 0.5), Book("hard", "Hard", 2.0)]
    baskets = weekly_baskets(shelf, {"K2": 2.0, "K1": 0.5}, [], MONDAY, size=1).baskets
    assert {basket.learner: basket.books for basket in baskets} == {
        "K1": ("easy",),
        "K2": ("hard",),
    }


def test_a_shelf_that_is_too_small_says_for_whom() -> None:
    found = weekly_baskets(SHELF, {"K1": 0.3}, [], MONDAY, size=3)
    assert found.baskets[0].books == ("b01", "b00")
    assert found.short == ("K1: 2 of 3 books; add one: binderbank shelf add TITLE --level 0.3",)


def test_what_is_short_fits_a_screen_and_names_a_level_that_the_learner_can_have() -> None:
    (line,) = weekly_baskets([], {"ABCDEFGHIJKL": 10.57}, [], MONDAY, size=12).short
    assert len(line) <= 80 and line.endswith("shelf add TITLE --level 10.5")


def test_easy_books_stay_for_those_who_can_read_nothing_else() -> None:
    easy = [Book(f"e{n}", f"Easy {n}", 0.0) for n in range(4)]
    shelf = [*easy, Book("three", "Three", 3.0)]
    older, young = weekly_baskets(shelf, {"A1": 3.5, "Z9": 0.0}, [], MONDAY).baskets
    assert older.books == ("three",)
    assert sorted(young.books) == [book.code for book in easy]


def test_an_older_reader_who_has_read_the_rest_comes_after_the_young_ones() -> None:
    shelf = [Book(f"e{n}", f"Easy {n}", 0.0) for n in range(2)] + [Book("hard", "Hard", 4.0)]
    earlier = [Basket("A1", MONDAY - timedelta(days=7), ("hard", "e0"))]
    found = weekly_baskets(shelf, {"A1": 4.0, "Y8": 0.0, "Z9": 0.0}, earlier, MONDAY, size=1)
    assert [len(basket.books) for basket in found.baskets] == [0, 1, 1]


def test_nobody_takes_the_book_without_which_another_is_short() -> None:
    shelf = [Book(f"b{n}", f"Book {n}", n / 10) for n in range(1, 9)]
    had = Basket("X", MONDAY - timedelta(days=7), ("b1", "b2", "b3", "b4"))
    baskets = weekly_baskets(shelf, {"X": 1.0, "Y": 1.0}, [had], MONDAY).baskets
    assert [len(basket.books) for basket in baskets] == [4, 4]


def test_those_who_may_read_the_same_books_share_them_alike() -> None:
    shelf = [Book(f"b{n}", f"Book {n}", 0.0) for n in range(6)]
    baskets = weekly_baskets(shelf, {"Y": 0.0, "Z": 0.0}, [], MONDAY).baskets
    assert [len(basket.books) for basket in baskets] == [3, 3]


def test_the_basket_of_this_week_stays_as_it_is() -> None:
    standing = Basket("K1", MONDAY, ("b01",))
    found = weekly_baskets(SHELF, {"K1": 5.0}, [standing], MONDAY + timedelta(days=3))
    assert found.baskets == (standing,) and found.short == ()


@given(st.dictionaries(st.sampled_from("ABCDEF"), st.floats(0, 6), min_size=1), st.integers(1, 5))
def test_baskets_and_books_survive_storing(lows: dict[str, float], size: int) -> None:
    for basket in weekly_baskets(SHELF, lows, [], MONDAY, size).baskets:
        assert Basket.from_dict(json.loads(json.dumps(basket.to_dict()))) == basket
    assert Book.from_dict(json.loads(json.dumps(SHELF[3].to_dict()))) == SHELF[3]
