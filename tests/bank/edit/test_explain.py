"""What the key says of a fix can be read by a grade 2 reader."""

from __future__ import annotations

import statistics

from bank.edit import Fix
from bank.edit.explain import explain
from bank.skill import SKILLS

# One fix of each skill in words that a young reader knows.
EXAMPLES = {
    "capital-first": ("the", "The"),
    "capital-i": ("i", "I"),
    "capital-name": ("ben", "Ben"),
    "capital-extra": ("Dog", "dog"),
    "end-mark": ("", "."),
    "quotation-marks": ("We can go", '"We can go,"'),
    "apostrophe-contraction": ("dont", "don't"),
    "apostrophe-possessive": ("dogs", "dog's"),
    "abbreviation": ("Dr", "Dr."),
    "spacing": ("alot", "a lot"),
    "spelling": ("freind", "friend"),
    "homophone": ("too", "two"),
    "agreement": ("was", "were"),
    "tense": ("goed", "went"),
    "plural": ("cat", "cats"),
    "article": ("a", "an"),
    "pronoun": ("him", "he"),
    "comparison": ("gooder", "better"),
    "double-negative": ("no", "any"),
    "missing-word": ("", "to"),
    "extra-word": ("the", ""),
    "word-order": ("dog the", "the dog"),
    "run-on": ("they", ". They"),
}


def explained(code: str) -> str:
    wrong, right = EXAMPLES.get(code, ("", ","))
    return explain(Fix(code, wrong, right, 0, len(wrong), 0, len(right)))


def test_every_skill_has_an_explanation_of_its_own() -> None:
    texts = [explained(code) for code in SKILLS]
    assert len(set(texts)) == len(SKILLS)


def test_explanations_are_readable_at_grade_2() -> None:
    from bank.level import level_text

    grades = {code: level_text(explained(code), "passage").grade for code in SKILLS}
    print({code: round(grade, 1) for code, grade in grades.items()})
    assert statistics.mean(grades.values()) <= 2.5
    assert max(grades.values()) < 3.0


def test_an_explanation_names_what_to_write() -> None:
    assert "went" in explained("tense") and "friend" in explained("spelling")


def test_a_mark_that_is_too_many_is_not_asked_for() -> None:
    assert "do not need" in explain(Fix("comma-list", ",", "", 3, 4, 3, 3))
