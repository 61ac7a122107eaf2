"""`level`: a text, a list, a file, and a specialist's ear."""

import csv
import io
from collections.abc import Callable
from pathlib import Path

from making import Ran

Run = Callable[..., Ran]
LIST = "Do you like cats?\nA red ball\n???\nTo what extent should a town limit packaging?\n"


def test_one_text_is_shown_as_a_picture_with_formulas_and_reasons(run: Run) -> None:
    shown = run("level", "The vile ruse irked me.")
    assert shown.code == 0
    for said in ("●", "K ", "Flesch–Kincaid", "without", '"ruse"', "could be"):
        assert said in shown.out
    assert max(map(len, shown.out.splitlines())) <= 80


def test_what_a_long_sentence_costs_says_what_it_is_measured_by(run: Run) -> None:
    shown = " ".join(run("level", "The dog and the cat ran to the big red barn.").out.split())
    assert "letters in a sentence; one of six short words has 21" in shown


def test_a_list_from_a_file_is_levelled_line_by_line_and_refused_lines_are_named(
    run: Run, tmp_path: Path
) -> None:
    file = tmp_path / "prompts.txt"
    file.write_text("\n" + LIST, "utf-8")
    shown = run("level", str(file), "--json")
    assert shown.code == 1
    levels = shown.json["levels"]
    assert [one["kind"] for one in levels] == ["question", "topic", "question", "question"]
    assert levels[0]["grade"] < levels[3]["grade"]
    assert "no English word" in levels[2]["problem"]
    assert shown.err == "binderbank: line 4: no English word in '???'\n"


def test_a_list_from_standard_input_comes_out_as_csv(run: Run) -> None:
    rows = list(csv.DictReader(io.StringIO(run("level", "--csv", said=LIST).out)))
    assert [row["text"] for row in rows] == LIST.strip().splitlines()
    assert float(rows[0]["grade"]) < float(rows[3]["grade"])
    assert rows[3]["flesch_kincaid"] and "packaging" in rows[3]["hardest"]


def test_a_text_file_is_one_passage(run: Run, tmp_path: Path) -> None:
    file = tmp_path / "story.txt"
    file.write_text("Once a fox lived in\nthe woods. She had a\nred coat. She slept.\n", "utf-8")
    shown = run("level", str(file), "--json").json["levels"]
    assert [one["kind"] for one in shown] == ["passage"]


def test_what_cannot_be_levelled_is_refused(run: Run) -> None:
    for words in (
        ("level", "???"),
        ("level", "no-such-file.txt"),
        ("level", "A dog", "--kind", "x"),
    ):
        refused = run(*words)
        assert refused.code == 2
        assert refused.err.startswith("binderbank: ") and not refused.out
        assert "Traceback" not in refused.err


def test_a_refused_text_is_said_as_it_was_typed(run: Run) -> None:
    assert run("level", "http://xqz").err == "binderbank: no English word in 'http://xqz'\n"


def test_the_help_says_that_it_is_an_estimate_and_whose_placement_wins(run: Run) -> None:
    said = " ".join(run("level", "--help").out.split())
    assert "An estimate to help choose, not an assessment of a learner" in said
    assert "the specialist's own placement always wins" in said


def stocked(run: Run, tmp_path: Path) -> None:
    run("new")
    things = "dog cat hat bridge machine library pumpkin museum tradition consequence".split()
    asks = ("Do you like the {}?", "Why is a {} useful to people?")
    rows = [f'question,"{ask.format(thing)}"' for ask in asks for thing in things]
    (tmp_path / "items.csv").write_text("kind,text\n" + "\n".join(rows) + "\n", "utf-8")
    assert run("import", str(tmp_path / "items.csv")).code == 0


def test_after_thirty_answers_the_banks_levels_follow_her_judgement(
    run: Run, tmp_path: Path
) -> None:
    stocked(run, tmp_path)
    first = run("level", "--calibrate", said="1\n2\ns\n1\nq\n")
    assert "3 answers kept; 27 more" in " ".join(first.out.split())
    before = {one["id"]: one["level"] for one in run("find", "--json").json["items"]}
    told = run("level", "--calibrate", "--json", said="1\n2\n" * 20).json
    assert told["answers"] == 30 and told["re_anchored"]
    assert 0 <= told["agreement_before"] <= 1 and 0 <= told["agreement_after"] <= 1
    after = {one["id"]: one["level"] for one in run("find", "--json").json["items"]}
    assert before != after
    assert run("relevel").out.startswith("0 items")


def test_a_wrong_key_is_answered_and_the_end_of_the_pairs_is_said(run: Run) -> None:
    run("new")
    for text in ("Do you like dogs?", "Is ice hot?", "What is a verdict?"):
        run("add", "question", text)
    shown = run("level", "--calibrate", said="x\n1\n1\n1\n").out
    assert "'x' is no answer here; say 1 or 2, or s or q" in shown
    assert "no pairs are left" in shown and "3 answers kept; 27 more" in shown


def test_a_sheet_is_levelled_row_by_row(run: Run, tmp_path: Path) -> None:
    sheet = "page;kind;text\n1;question;What do bees make?\n2;topic;My first day of school\n3;;\n"
    (tmp_path / "list.csv").write_text(sheet)
    levels = run("level", "list.csv", "--json").json["levels"]
    assert [(one["kind"], one["text"]) for one in levels] == [
        ("question", "What do bees make?"),
        ("topic", "My first day of school"),
    ]
    (tmp_path / "list.csv").write_text(sheet + "4;question;???\n")
    assert run("level", "list.csv", "--json").err.startswith("binderbank: row 5: no English word")
    refused = run("level", ".")
    assert refused.code == 2 and "is a folder" in refused.err
