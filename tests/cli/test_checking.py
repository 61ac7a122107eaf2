"""Checking the bank and files of prompts, and setting an item aside."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from making import Ran

Run = Callable[..., Ran]


@pytest.fixture
def ready(run: Run) -> Run:
    run("new")
    run("add", "question", "Where do she play?")
    run("add", "question", "What do you do when you are under the weather?")
    run("add", "question", "What do bees make?")
    return run


def test_check_lists_what_must_be_fixed_before_what_to_look_at(ready: Run) -> None:
    listed = ready("check")
    assert listed.code == 1
    assert listed.out.index("must fix (agreement)") < listed.out.index("please look (figurative)")
    assert "bees" not in listed.out


def test_check_has_stable_keys(ready: Run) -> None:
    found = ready("check", "--json").json
    assert found["must_fix"] == 1 and found["found"] == 2
    finding = found["prompts"][0]["findings"][0]
    assert {"code", "start", "end", "message", "suggestion", "certain", "on_screen"} <= set(finding)


def test_fix_applies_a_suggestion_with_a_key_and_the_item_is_ready(ready: Run) -> None:
    assert "1 mended" in ready("check", "--fix", "--must-fix", said="\n").out
    assert ready("find", "play", "--json").json["items"][0]["text"] == "Where does she play?"
    assert ready("check", "--must-fix").code == 0


def test_what_is_kept_as_it_is_stays_accepted(ready: Run) -> None:
    ready("check", "--fix", "--must-fix", said="k\nshe says it so in a song\n")
    assert ready("check", "--must-fix").code == 0
    item = ready("find", "play", "--json").json["items"][0]
    assert item["state"] == "ready" and item["as_is"] == "she says it so in a song"


def test_a_file_of_prompts_is_checked_and_mended_in_place(ready: Run, tmp_path: Path) -> None:
    (tmp_path / "prompts.txt").write_text("Do you like dogs?\nI has a cat?\n", "utf-8")
    found = ready("check", "prompts.txt", "--json").json
    assert [one["line"] for one in found["prompts"]] == [2]
    ready("check", "prompts.txt", "--fix", said="\nn\n")
    assert (tmp_path / "prompts.txt").read_text("utf-8").splitlines()[1] == "I have a cat?"


FAULTY = "Where do Ben play?\nDo Mia like tea?\nWhere do Ben run?\n"


def test_who_stops_mending_hears_how_far_it_went_and_that_it_is_done_in_part(
    run: Run, tmp_path: Path
) -> None:
    run("new")
    (tmp_path / "prompts.txt").write_text(FAULTY, "utf-8")
    for stop in ("\n", "\nq\n"):
        (tmp_path / "prompts.txt").write_text(FAULTY, "utf-8")
        part = run("check", "prompts.txt", "--fix", said=stop)
        assert (part.code, part.err) == (1, "")
        assert "1 mended, 2 of 3 still to look at" in part.out
        assert part.out.endswith("prompts.txt is written anew\n")
    assert run("check", "prompts.txt", "--fix", said="n\n" * 9).code == 0


def test_control_c_while_mending_says_what_was_mended(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("new")
    (tmp_path / "prompts.txt").write_text(FAULTY, "utf-8")
    pressed = iter("1")

    def key() -> str:
        try:
            return next(pressed)
        except StopIteration:
            raise KeyboardInterrupt from None

    monkeypatch.setattr("cli.checking._key", key)
    stopped = run("check", "prompts.txt", "--fix")
    assert stopped.code == 130
    assert "1 mended, 2 of 3 still to look at\nprompts.txt is written anew" in stopped.out
    assert "nothing was changed" not in stopped.err


def test_a_csv_keeps_its_other_columns(ready: Run, tmp_path: Path) -> None:
    (tmp_path / "x.csv").write_text("kind,text,theme\ntopic,my best day,home\n", "utf-8")
    ready("check", "x.csv", "--fix", said="\n")
    assert (tmp_path / "x.csv").read_text("utf-8").split() == [
        "kind,text,theme", "topic,My", "best", "day,home",
    ]  # fmt: skip


def test_json_lines_are_checked_by_their_kind(ready: Run, tmp_path: Path) -> None:
    row = json.dumps({"kind": "topic", "text": "A red hat"})
    (tmp_path / "x.jsonl").write_text(row + "\n", "utf-8")
    assert ready("check", "x.jsonl").out.strip() == "nothing found"


def test_an_item_is_set_aside_with_its_reason_and_brought_back(ready: Run) -> None:
    item = ready("find", "bees", "--json").json["items"][0]["id"]
    aside = ready("object", item, "it has two answers", "--json").json
    assert aside["state"] == "draft" and aside["objection"] == "it has two answers"
    assert ready("object", item).code == 2
    assert ready("object", item, "--back", "--json").json["state"] == "ready"


def test_what_asks_the_same_is_listed_beside_an_item_set_aside(ready: Run) -> None:
    ready("add", "question", "What is your favorite game at the fair?")
    ready("add", "question", "Which game do you like most at the fair?")
    item = ready("find", "favorite", "--json").json["items"][0]["id"]
    assert "Which game do you like" in ready("object", item, "too loud").out


def test_a_sheet_is_mended_as_the_spreadsheet_wrote_it(run: Run, tmp_path: Path) -> None:
    run("new")
    path = tmp_path / "list.csv"
    path.write_text("\ufeffPage;Text;Kind\n3;Where is the café;Question\n", "utf-8")
    assert "must fix (end-mark)" in run("check", "list.csv").out
    assert run("check", "list.csv", "--fix", said="\n").code in (0, 1)
    written = path.read_text("utf-8")
    assert written.splitlines() == ["\ufeffPage;Text;Kind", "3;Where is the café?;Question"]


@pytest.mark.parametrize("command", ["check", "level", "make-errors"])
def test_a_file_in_another_encoding_is_said_in_plain_words(
    run: Run, tmp_path: Path, command: str
) -> None:
    run("new")
    (tmp_path / "list.txt").write_bytes("Where is the café?".encode("cp1252"))
    refused = run(command, "list.txt")
    assert (refused.code, refused.out) == (2, "")
    assert refused.err == "binderbank: list.txt is not written in UTF-8; save it as UTF-8\n"
