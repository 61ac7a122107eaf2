import csv
from collections.abc import Callable
from pathlib import Path

import pytest
from making import Ran

Run = Callable[..., Ran]


@pytest.fixture
def ready(run: Run) -> Run:
    run("new")
    return run


def test_adding_shows_the_level_in_words_every_formula_and_the_findings(ready: Run) -> None:
    shown = ready("add", "question", "Where do bees sleep at night", "--theme", "animals")
    assert shown.code == 0
    words = " ".join(shown.out.split())
    for said in (
        "level:",
        "Flesch",
        "Spache",
        "Dale",
        "Coleman",
        "ARI",
        "must fix (end-mark)",
    ):
        assert said.lower() in words.lower()
    assert "a draft" in words


def test_an_item_may_come_from_standard_input(ready: Run) -> None:
    assert ready("add", "topic", said="A red hat\n").code == 0
    assert "A red hat" in ready("find", "hat").out


def test_an_item_can_be_ready_as_it_is(ready: Run) -> None:
    added = ready("add", "question", "Where do bees sleep", "--as-is", "a song", "--json").json
    assert added["state"] == "ready"


def test_a_twin_is_said_when_it_is_added(ready: Run) -> None:
    ready("add", "question", "What is your favorite game at the fair?")
    shown = ready("add", "question", "Which game do you like most at the fair?").out
    assert "asks the same as" in shown


def test_import_and_export_say_what_they_did(ready: Run, tmp_path: Path) -> None:
    (tmp_path / "x.csv").write_text("kind,text\nquestion,Is ice hot?\nquestion,\n", "utf-8")
    refused = ready("import", "x.csv")
    assert refused.code == 2 and "row 3" in refused.err and "nothing was imported" in refused.err
    part = ready("import", "x.csv", "--keep-good", "--json")
    assert part.code == 1
    assert part.json["added"] == 1 and part.json["refused"][0]["row"] == 3
    assert (tmp_path / "x.csv.refused.csv").exists()
    assert ready("export", "out.csv", "--plain").code == 0
    with (tmp_path / "out.csv").open(encoding="utf-8", newline="") as file:
        assert [row["text"] for row in csv.DictReader(file)] == ["Is ice hot?"]


def test_items_are_tagged_placed_retired_and_found(ready: Run) -> None:
    item = ready("add", "question", "Is ice hot?", "--json").json["id"]
    assert ready("tag", item, "--add", "theme:weather").code == 0
    assert item in ready("find", "--theme", "weather").out
    assert "placed at 3" in ready("level-as", item, "3").out
    assert ready("find", "--level", "2-4", "--json").json["items"][0]["level_as"] == 3.0
    assert ready("retire", item).code == 0
    assert ready("find", "--state", "retired", "--json").json["items"][0]["id"] == item
    assert ready("retire", item, "--back").code == 0
    assert ready("level-as", item, "computed").code == 0
    assert ready("change", item, "--text", "Is snow hot?").code == 0
    assert "Is snow hot?" in ready("show", item).out
    assert "0 items" in ready("relevel").out
    assert "no conflicts" in ready("conflicts").out


def test_choices_and_a_starter_can_come_later(ready: Run) -> None:
    item = ready("add", "question", "Who has mittens?", "--answer", "Mia", "--json").json["id"]
    refused = ready("change", item, "--choice", "a cat")
    assert refused.code == 2 and "1 choice; there are 2 to 4" in refused.err
    changed = ("--choice", "a cat", "--choice", "a girl", "--starter", "Mittens are on")
    assert ready("change", item, *changed, "--word", "girl", "--answer", "").code == 0
    kept = ready("show", item, "--json").json
    assert (kept["choices"], kept["starter"]) == (["a cat", "a girl"], "Mittens are on")
    assert (kept["words"], kept["answer"], kept["text"]) == (["girl"], "", "Who has mittens?")


def test_the_tags_in_use_are_listed_with_how_many_items_have_them(ready: Run) -> None:
    item = ready("add", "question", "Is ice hot?", "--theme", "weather", "--json").json["id"]
    ready("add", "topic", "A red hat", "--theme", "weather", "--theme", "clothes")
    shown = ready("tag").out
    assert "theme: weather (2), clothes (1)" in " ".join(shown.split())
    assert {"family": "theme", "value": "clothes", "items": 1} in ready("tag", "--json").json[
        "tags"
    ]
    assert ready("tag", item, "--add", "theme:food").out == "1 item tagged\n"
    same = ready("tag", item, "--remove", "theme:nope")
    assert same.out == "0 items tagged; 1 item had no such tag\n"
    assert ready("tag", item, "--add", "theme:food").out == "0 items tagged; 1 item had it before\n"
    assert ready("tag", item).code == 2 and ready("tag", "--add", "theme:food").code == 2


def test_a_sensitive_theme_is_offered_as_a_tag_and_does_not_block(ready: Run) -> None:
    shown = ready("add", "question", "What does your dad cook for you?")
    assert "--add theme:family" in " ".join(shown.out.split())
    assert "draft" not in shown.out.splitlines()[0]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("import", "x.xlsx"), "x.xlsx is neither .csv nor .jsonl; save it as CSV UTF-8"),
        (("export", "out.xlsx"), "out.xlsx is neither .csv nor .jsonl; name it out.csv"),
        (("check", "x.xlsx"), "x.xlsx is not written in UTF-8; save it as CSV UTF-8"),
    ],
)
def test_a_spreadsheets_own_file_is_answered_with_what_helps(
    ready: Run, tmp_path: Path, words: tuple[str, ...], said: str
) -> None:
    (tmp_path / "x.xlsx").write_bytes(b"PK\x03\x04\x14\x00\x06\x00\x08\x00\x00\x00!\x00\xe9")
    refused = ready(*words)
    assert (refused.code, refused.out, refused.err) == (2, "", f"binderbank: {said}\n")


def test_a_refused_import_says_how_many_rows_are_wrong(ready: Run, tmp_path: Path) -> None:
    rows = "question,Is ice hot?\nquestion,日本\njoke,Is it hot?\nquestion,\n"
    (tmp_path / "x.csv").write_text("kind,text\n" + rows, "utf-8")
    refused = ready("import", "x.csv")
    assert refused.code == 2
    assert "x.csv: 3 rows cannot be taken; the first: row 3, column text: no English" in refused.err
    assert len(refused.err.splitlines()) == 1 and "nothing was imported" in refused.err


@pytest.mark.parametrize("rows", ["", ",,\n , ,\n", ",animals,frame: grade 1\n"])
def test_a_sheet_with_nothing_in_its_rows_is_no_import(
    ready: Run, tmp_path: Path, rows: str
) -> None:
    (tmp_path / "x.csv").write_text("text,theme,note\n" + rows, "utf-8")
    refused = ready("import", "x.csv", "--kind", "topic")
    assert (refused.code, refused.out) == (2, "")
    assert "no row has a text" in refused.err and "nothing was imported" in refused.err


def test_one_draft_is_said_in_the_singular(ready: Run, tmp_path: Path) -> None:
    (tmp_path / "x.csv").write_text("kind,text\nquestion,Where do Ben play?\n", "utf-8")
    assert "1 of them is a draft" in ready("import", "x.csv").out
