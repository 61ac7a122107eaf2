"""A text of another language is refused, and a rare English one is not."""

import pytest

from bank.level import level_text


@pytest.mark.parametrize(
    "foreign",
    [
        "El gato come la comida.",
        "Me gusta la playa",
        "Mi madre no tiene pan",
        "Le chien est grand",
        "Der Hund ist gross",
        "la",
    ],
)
def test_a_text_of_another_language_is_refused_though_some_of_its_words_stand_in_english_lists(
    foreign,
):
    with pytest.raises(ValueError, match="English words? in"):
        level_text(foreign, "sentence")


@pytest.mark.parametrize(
    "english",
    [
        "Envoys quelled dissent.",
        "Pusillanimous plenipotentiary",
        "Ben and Anna",
        "Oluwaseun eats sushi.",
        "Is pizza hot?",
        "We ate tacos with Mr. Nguyen in Guadalajara.",
        "My amigo said hola.",
    ],
)
def test_names_loan_words_and_rare_words_are_no_other_language(english):
    assert level_text(english, "sentence").grade >= 0
