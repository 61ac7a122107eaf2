from collections.abc import Callable
from pathlib import Path

import pytest
from making import Ran

Run = Callable[..., Ran]

TEXTS = "The dog ran home.\nMy sister went to the park.\n\nThe dog ran home.\n"


@pytest.fixture
def ready(run: Run, tmp_path: Path) -> Run:
    run("new")
    (tmp_path / "right.txt").write_text(TEXTS, "utf-8")
    return run


def test_correct_sentences_get_versions_that_nest(ready: Run) -> None:
    done = ready("make-errors", "right.txt", "--errors", "3", "--json")
    assert done.code == 0
    assert len(done.json["made"]) == 2
    for one in done.json["made"]:
        kept = ready("show", one["id"], "--json").json
        assert [version["faulty"] for version in kept["versions"]] == one["versions"]
        assert sorted(len(version["fixes"]) for version in kept["versions"]) == [1, 2, 3]


def test_only_the_skills_that_were_asked_for_are_broken(ready: Run) -> None:
    made = ready(
        "make-errors", "right.txt", "--skills", "tense,end-mark", "--errors", "2", "--json"
    ).json["made"]
    for one in made:
        for version in ready("show", one["id"], "--json").json["versions"]:
            assert {fix["skill"] for fix in version["fixes"]} <= {"tense", "end-mark"}


def test_a_sentence_without_a_place_is_left_out_and_said(ready: Run) -> None:
    done = ready("make-errors", "right.txt", "--skills", "comma-date", "--errors", "1")
    assert done.code == 2
    assert "this sentence has no place for: comma-date" in " ".join(done.err.split())


def test_a_sentence_that_has_an_error_itself_is_left_out_and_said(
    ready: Run, tmp_path: Path
) -> None:
    (tmp_path / "mine.txt").write_text("The cat are wet.\nThe dog ran home.\n", "utf-8")
    done = ready("make-errors", "mine.txt", "--dry-run")
    assert done.code == 1 and "1 sentence with 3 faulty versions" in done.out
    assert 'must be fixed first (agreement at "are")' in done.err and "The cat are wet." in done.err
    item = ready("add", "sentence", "The cat are wet.", "--as-is", "a song", "--json").json["id"]
    assert [one["id"] for one in ready("make-errors", "--json").json["made"]] == [item]


def test_of_many_sentences_left_out_a_few_are_named_and_all_are_counted(
    ready: Run, tmp_path: Path
) -> None:
    names = ("Ben", "Mia", "Omar", "Rosa", "Lena", "Kai", "Ana")
    lines = "".join(f"{name} ran home.\n" for name in names)
    (tmp_path / "mine.txt").write_text(lines, "utf-8")
    done = ready("make-errors", "mine.txt", "--skills", "quotation-marks", "--dry-run")
    said = done.err.splitlines()
    assert len(said) == 4 and said[-1] == "left out: 4 more for such reasons; --json names each"
    asked = ("make-errors", "mine.txt", "--skills", "quotation-marks", "--json")
    assert len(ready(*asked).json["refused"]) == len(names)


def test_sentences_that_are_in_the_bank_already_get_their_versions(ready: Run) -> None:
    added = ready("add", "sentence", "The cat sat on my bed.", "--json").json
    assert added["state"] == "draft"
    assert ready("make-errors", "--errors", "2", "--json").json["made"][0]["id"] == added["id"]
    shown = ready("show", added["id"], "--json").json
    assert len(shown["versions"]) == 2 and shown["state"] == "ready"


def test_a_trial_stores_nothing(ready: Run) -> None:
    done = ready("make-errors", "right.txt", "--dry-run")
    assert done.code == 0 and "would be made" in done.out
    assert ready("find", "dog").out.count("The dog ran home") == 0


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("right.txt", "--skills", "tenses"), "did you mean tense?"),
        (("right.txt", "--errors", "0"), "--errors"),
        (("none.txt",), "cannot be read"),
    ],
)
def test_what_cannot_be_is_said_in_one_line(ready: Run, words: tuple[str, ...], said: str) -> None:
    done = ready("make-errors", *words)
    assert done.code == 2 and said in done.err


def test_adding_one_correct_sentence_offers_three_faulty_ones(ready: Run) -> None:
    added = ready("add", "sentence", "My sister went to the park on Monday.", "--json").json
    assert len(added["offers"]) == 3 and added["versions"] == []
    said = " ".join(ready("add", "sentence", "My brother went to the zoo on Friday.").out.split())
    item = said.split()[0]
    assert f"faulty versions to choose from (binderbank change {item} --choose 1,3)" in said
    assert "--as-is" not in said  # it would stay a draft all the same


def test_versions_are_chosen_for_a_sentence_that_has_none_without_typing_it_anew(
    ready: Run,
) -> None:
    added = ready("add", "sentence", "My sister went to the park on Monday.", "--json").json
    changed = ready("change", added["id"], "--choose", "1,3", "--json").json
    assert [one["faulty"] for one in changed["versions"]] == added["offers"][::2]
    assert (changed["text"], changed["state"]) == (added["text"], "ready")
    question = ready("add", "question", "Is ice hot?", "--json").json["id"]
    for words, said in (
        ((added["id"], "--choose", "2"), "without a faulty version"),
        ((question, "--choose", "2"), "is a question"),
    ):
        refused = ready("change", *words)
        assert refused.code == 2 and said in refused.err


def test_what_is_chosen_is_kept(ready: Run) -> None:
    added = ready(
        "add", "sentence", "My sister went to the park on Monday.", "--choose", "1,3", "--json"
    ).json
    kept = [version["faulty"] for version in added["versions"]]
    assert kept == [added["offers"][0], added["offers"][2]]
    assert added["state"] == "ready"
    wrong = ready("add", "sentence", "Our dog ran to the lake.", "--choose", "7")
    assert wrong.code == 2 and "numbers from 1 to 3" in wrong.err
