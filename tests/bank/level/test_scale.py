"""What a level is and how it is said."""

import json

import pytest

from bank.level import Level, Reason, level_many, level_text


@pytest.mark.parametrize(
    ("grade", "low", "high", "said"),
    [
        (2.2, 1.4, 3.1, "early grade 2 (could be 1 to 3)"),
        (0.5, 0.1, 0.9, "middle of kindergarten"),
        (0.0, 0.0, 1.2, "early kindergarten (could be K to 1)"),
        (5.9, 4.9, 7.0, "late grade 5 (could be 4 to 7)"),
        (12, 11, 12, "early grade 12 (could be 11 to 12)"),
    ],
)
def test_a_level_is_said_as_a_teacher_says_it(grade, low, high, said):
    assert Level(grade, low, high).words == said


def test_a_level_whose_range_does_not_hold_its_grade_is_refused():
    with pytest.raises(ValueError, match="low <= grade <= high"):
        Level(3.0, 3.5, 4.0)


def test_a_level_survives_json_with_its_formulas_and_reasons():
    level = level_text("The committee postponed its decision.", "sentence")
    again = Level.from_dict(json.loads(json.dumps(level.to_dict())))
    assert again == level
    assert all(isinstance(reason, Reason) for reason in again.reasons)


def test_a_text_without_an_english_word_is_refused():
    for nothing in ("", "  ", "?!", "123", "猫が好きですか"):
        with pytest.raises(ValueError, match="no English word"):
            level_text(nothing)


def test_an_unknown_kind_is_refused_with_the_kinds_there_are():
    with pytest.raises(ValueError, match="question, sentence, topic"):
        level_text("Do you like cats?", "poem")


def test_many_texts_get_the_levels_that_each_gets_alone():
    texts = [("Do you like cats?", "question"), ("A red ball", "topic"), ("I see.", "sentence")]
    assert list(level_many(texts)) == [level_text(*pair) for pair in texts]
