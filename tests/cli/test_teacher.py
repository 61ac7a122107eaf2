from collections.abc import Callable
from pathlib import Path

import pytest
from making import MONDAY, Ran, make_item, put

from bank.classroom import open_bank

Run = Callable[..., Ran]
DAY = str(MONDAY)


@pytest.fixture
def ready(run: Run, tmp_path: Path) -> Run:
    """A bank with items and one learner."""
    run("new")
    with open_bank(tmp_path / "bank.sqlite3") as bank:
        put(bank, *(make_item(n, grade=1.0) for n in range(30)))
        put(bank, *(make_item(n, "sentence", 1.0) for n in range(9)))
        put(bank, *(make_item(n, "topic", 1.0) for n in range(9)))
    run("learner", "add", "K4", "--reads", "2")
    return run


def test_a_draw_shows_the_set_in_words_and_in_json(ready: Run) -> None:
    shown = ready("draw", DAY)
    assert shown.code == 0
    assert "K4" in shown.out and "works alone from K to 1.5" in shown.out
    drawn = ready("draw", DAY, "--json").json
    assert drawn["day"] == DAY
    assert [item["kind"] for item in drawn["sets"][0]["items"]].count("question") == 5
    assert set(drawn["sets"][0]) == {"learner", "day", "state", "short", "notes", "items"}


def test_a_draw_that_is_short_of_items_is_done_in_part(ready: Run) -> None:
    ready("learner", "change", "K4", "--avoid", "theme1", "--avoid", "theme2", "--questions", "20")
    ready("learner", "change", "K4", *(w for n in range(3, 7) for w in ("--avoid", f"theme{n}")))
    shown = ready("draw", DAY)
    assert shown.code == 1
    assert "missing" in shown.out


def test_a_draw_says_why(ready: Run) -> None:
    shown = " ".join(ready("draw", DAY, "--why").out.split())
    assert "not seen before" in shown and "band K to 1.5" in shown and "chosen over" in shown


def test_an_undone_draw_gives_its_items_back(ready: Run) -> None:
    first = ready("draw", DAY, "--json").json
    assert ready("draw", DAY, "--undo").code == 0
    assert ready("key", DAY).code == 2
    assert ready("draw", DAY, "--json").json == first


def test_a_swap_is_shown_and_kept(ready: Run) -> None:
    first = ready("draw", DAY, "--json").json["sets"][0]["items"][1]["item"]
    shown = ready("swap", "K4", "question", "2", "--on", DAY, "--reason", "done at home")
    assert shown.code == 0 and "was:" in shown.out and "now:" in shown.out
    assert ready("draw", DAY, "--json").json["sets"][0]["items"][1]["item"] != first


def test_an_unused_day_can_be_used_after_all(ready: Run) -> None:
    ready("draw", DAY)
    assert "may come again" in ready("unused", DAY).out
    assert ready("draw", DAY, "--json").json["sets"][0]["state"] == "unused"
    assert ready("unused", DAY, "--used").code == 0
    assert ready("draw", DAY, "--json").json["sets"][0]["state"] == "used"


def test_learners_are_listed_with_their_settings(ready: Run) -> None:
    ready(
        "learner", "change", "K4", "--goal", "why=2", "--skill", "spelling=in-work", "--group", "A"
    )
    (one,) = ready("learner", "list", "--json").json["learners"]
    assert one["support"] == {"goals": {"why": 2.0}}
    assert one["skills"] == {"spelling": "in-work"}
    assert one["band"] == [0.0, 1.5]
    assert ready("learner", "away", "K4", DAY).code == 0
    assert ready("draw", DAY, "--json").json == {"day": DAY, "away": ["K4"], "sets": []}


def test_a_new_bank_is_not_made_over_an_old_one(ready: Run) -> None:
    assert ready("new").code == 2
    assert ready("learner", "list").code == 0
