import pytest
from hypothesis import given
from hypothesis import strategies as st

from bank.classroom import Bank
from bank.item import BankError
from bank.learner import Band, check_code, default_band, default_errors, grade_word


@given(st.floats(0, 12))
def test_the_band_for_working_alone_lies_below_the_grade_as_taught(taught: float) -> None:
    band = default_band(taught)
    assert band.high - band.low >= 1 - 1e-9
    assert band.low >= 0
    assert band.high <= max(1.0, taught - 0.5) + 1e-9 or band.high == band.low + 1


def test_the_default_band_of_a_learner_taught_at_grade_three() -> None:
    assert default_band(3.0) == Band(1.0, 2.5)


def test_an_early_band_has_two_errors_in_the_sentence_and_a_later_one_three() -> None:
    assert default_errors(Band(0, 1.9)) == 2
    assert default_errors(Band(1, 2)) == 3


def test_grade_zero_is_said_as_k() -> None:
    assert grade_word(0) == "K"
    assert str(Band(0, 1.5)) == "K to 1.5"


@pytest.mark.parametrize("code", ["", "a b", "too-long-for-a-code", "né", "-a"])
def test_what_cannot_be_a_code_is_refused(code: str) -> None:
    with pytest.raises(BankError):
        check_code(code)


def test_a_code_that_is_taken_is_refused_in_any_case(bank: Bank) -> None:
    bank.learners.add("K4", 2)
    with pytest.raises(BankError, match="taken"):
        bank.learners.add("k4", 3)
    assert len(bank.learners) == 1


def test_a_new_reading_grade_moves_the_band(bank: Bank) -> None:
    bank.learners.add("K4", 2)
    assert bank.learners.change("K4", taught=4.0).band == Band(2.0, 3.5)


def test_settings_come_back_as_they_were_given(bank: Bank) -> None:
    given_settings = {
        "avoid": ("family", "food"),
        "skills": {"spelling": "in-work", "end-mark": "taught"},
        "group": "A",
        "mode": "signs",
        "support": {"goals": {"why": 2.0}},
    }
    made = bank.learners.add("K4", 2, **given_settings)
    for name, value in given_settings.items():
        assert getattr(made, name) == value


@pytest.mark.parametrize(
    "settings",
    [{"mode": "sings"}, {"questions": 21}, {"errors": 0}, {"skills": {"speling": "taught"}}],
)
def test_a_setting_that_cannot_be_is_refused_and_nothing_is_kept(
    bank: Bank, settings: dict[str, object]
) -> None:
    with pytest.raises(BankError):
        bank.learners.add("K4", 2, **settings)
    assert len(bank.learners) == 0
