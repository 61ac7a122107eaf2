from collections.abc import Callable
from pathlib import Path

from making import MONDAY, Ran, make_item, put

from bank.classroom import open_bank

Run = Callable[..., Ran]


def test_the_key_has_no_learner_codes_unless_asked(run: Run, tmp_path: Path) -> None:
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, make_item(1, grade=1.0, answer="yes"), make_item(1, "sentence", 1.0))
        bank.learners.add("K4", 2.0)
        bank.days.draw(MONDAY)
    shown = run("key", str(MONDAY))
    assert shown.code == 0
    assert "K4" not in shown.out and "K4" not in run("key", str(MONDAY), "--json").out
    assert "K4" in run("key", str(MONDAY), "--with-learners").out
    assert run("key", str(MONDAY), "--json", "--with-learners").json["answers"][0]["learners"] == [
        "K4"
    ]
    for said in ("capital-first", "the -> The", "yes"):
        assert said in shown.out


def test_the_key_says_what_there_was_to_choose_from(run: Run, tmp_path: Path) -> None:
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, make_item(1, grade=1.0, choices=("slide", "plant"), answer="slide"))
        put(bank, make_item(2, grade=1.0, choices=("yes", "no"), answer="no"))
        bank.learners.add("T7", 2.0, mode="says")
        bank.days.draw(MONDAY)
    shown = run("key", str(MONDAY)).out
    assert "question number 1  ->  slide  (to choose from: slide / plant)" in shown
    assert shown.count("to choose from") == 1
    answers = run("key", str(MONDAY), "--json").json["answers"]
    assert {tuple(one["choices"]) for one in answers} == {("slide", "plant"), ("yes", "no")}
