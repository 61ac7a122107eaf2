import datetime as dt
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bank.item import BankError, Season, clean_text, fold_text, new_id, question_word_of

month_days = st.dates(dt.date(2024, 1, 1), dt.date(2024, 12, 31)).map(lambda d: f"{d:%m-%d}")


@given(st.text(max_size=320))
def test_a_text_is_kept_as_one_clean_line_or_refused(text: str) -> None:
    try:
        kept = clean_text(text)
    except BankError:
        return
    assert 1 <= len(kept) <= 300
    assert kept == clean_text(kept)
    assert unicodedata.is_normalized("NFC", kept)
    assert kept == kept.strip()
    assert "\n" not in kept and "  " not in kept


def test_case_spacing_and_end_mark_do_not_make_another_text() -> None:
    assert fold_text("Do  you like Cats?") == fold_text("do you like cats.")
    assert fold_text("Do you like cats?") != fold_text("Do you like cows?")


def test_a_text_of_end_marks_alone_folds_to_itself() -> None:
    assert fold_text("?!") == "?!"


@pytest.mark.parametrize("text", ["", "   ", "two\nlines", "a\x00b", "x" * 301])
def test_what_is_no_line_is_refused(text: str) -> None:
    with pytest.raises(BankError):
        clean_text(text)


@given(month_days, month_days)
def test_a_season_comes_back_as_written_and_holds_both_its_ends(first: str, last: str) -> None:
    season = Season.parse(f"{first}..{last}")
    assert str(season) == f"{first}..{last}"
    for month_day in (first, last):
        assert season.includes(dt.date.fromisoformat(f"2024-{month_day}"))


def test_a_winter_season_wraps_the_new_year() -> None:
    winter = Season.parse("12-01..02-28")
    assert winter.includes(dt.date(2026, 12, 24))
    assert winter.includes(dt.date(2027, 2, 28))
    assert not winter.includes(dt.date(2026, 11, 30))


@pytest.mark.parametrize("text", ["", "winter", "13-01..01-01", "02-30..03-01", "12-01"])
def test_a_season_that_does_not_exist_is_refused(text: str) -> None:
    with pytest.raises(BankError, match="MM-DD"):
        Season.parse(text)


def test_ids_are_random() -> None:
    assert len({new_id() for _ in range(500)}) == 500


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("Who can help you?", "who"),
        ("At the pond, what do you see?", "what"),
        ("Is the soup hot or cold?", "choice"),
        ("Can a fish swim?", "yes-no"),
        ("Tell one thing that you can cook.", "tell"),
        ("Whose coat is blue?", "who"),
    ],
)
def test_the_question_word_is_read_off_the_wording(text: str, word: str) -> None:
    assert question_word_of(text) == word


def test_an_item_is_kept_as_it_is_seen():
    assert clean_text("twenty\u2011two straw\u00adberries\u200b\ufeff") == "twenty-two strawberries"
    assert clean_text("My \U0001f469\u200d\U0001f3eb") == "My \U0001f469\u200d\U0001f3eb"
    assert clean_text("cafe\u200b\u0301\u200d!") == "caf\u00e9!"
    with pytest.raises(BankError, match="is empty"):
        clean_text("\u200b\u00ad")
