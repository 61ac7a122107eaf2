import csv
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from making import make_item, put

from bank.assess import method
from bank.classroom import Bank, open_bank
from bank.item import BankError, Item
from bank.store import create_store
from bank.store_items import Query

HEADER = "kind,text,theme,answer\n"


def write(path: Path, text: str) -> Path:
    path.write_text(text, encoding="utf-8")
    return path


def content(bank: Bank) -> list[Item]:
    from dataclasses import replace

    return [replace(item, changed="", history=()) for item in bank.items]


def test_adding_shows_level_formulas_and_what_the_check_found(bank: Bank) -> None:
    item = bank.items.add(kind="question", text="Where do bees sleep at night", theme="animals")
    assert item.grade is not None and item.low is not None and item.high is not None
    assert item.low <= item.grade <= item.high
    assert len(item.formulas) >= 6
    assert [finding["code"] for finding in item.findings] == ["end-mark"]
    assert item.state == "draft"
    assert item.question_word == "where"
    assert item.method == method()


def test_a_draft_is_ready_when_someone_says_why(bank: Bank) -> None:
    item = bank.items.add(kind="question", text="Where do bees sleep at night")
    assert bank.items.accept(item.id, "a line of a song").state == "ready"
    assert bank.items.relevel(everything=True) == 1
    assert bank.items.get(item.id).state == "ready"


def test_mending_the_text_makes_a_draft_ready(bank: Bank) -> None:
    item = bank.items.add(kind="question", text="Where do bees sleep at night")
    assert bank.items.change(item.id, text="Where do bees sleep at night?").state == "ready"


def test_an_item_that_was_set_aside_stays_a_draft(bank: Bank) -> None:
    item = bank.items.add(kind="question", text="Where do bees sleep at night?")
    assert item.state == "ready"
    assert bank.items.set_aside(item.id, "it has two answers").state == "draft"
    bank.items.relevel(everything=True)
    assert bank.items.get(item.id).state == "draft"


def test_the_same_text_is_refused_and_the_first_is_named(bank: Bank) -> None:
    first = bank.items.add(kind="question", text="Where do bees sleep?")
    with pytest.raises(BankError, match=first.id):
        bank.items.add(kind="topic", text="where do  BEES sleep")
    assert len(bank.items) == 1


def test_a_sentence_knows_its_fixes_and_skills(bank: Bank) -> None:
    item = bank.items.add(
        kind="sentence",
        text="The dog ran home.",
        faulty=["the dog ran home", "the dog runned home"],
    )
    assert [len(version.fixes) for version in item.versions] == [2, 3]
    assert item.skills == ("capital-first", "tense", "end-mark")


@pytest.mark.parametrize("faulty", ["The dog ran home.", "My hat is on the shelf by the door"])
def test_a_faulty_version_must_be_a_version_with_an_error(bank: Bank, faulty: str) -> None:
    with pytest.raises(BankError):
        bank.items.add(kind="sentence", text="The dog ran home.", faulty=[faulty])
    assert len(bank.items) == 0


def test_a_sentence_without_a_faulty_version_is_a_draft(bank: Bank) -> None:
    assert bank.items.add(kind="sentence", text="The dog ran home.").state == "draft"


def test_adding_shows_what_asks_the_same(bank: Bank) -> None:
    first = bank.items.add(kind="question", text="What is your favorite game at the fair?")
    second = bank.items.add(kind="question", text="Which game do you like most at the fair?")
    third = bank.items.add(kind="question", text="What do you pack for the beach?")
    assert bank.items.twins(second.id) == [first.id]
    assert bank.items.twins(third.id) == []


def test_her_own_placement_outranks_the_computed_level_and_outlives_relevelling(bank: Bank) -> None:
    item = bank.items.add(kind="question", text="Where do bees sleep?")
    placed = bank.items.level_as(item.id, 3.5)
    assert placed.reading_grade == 3.5
    bank.items.relevel(everything=True)
    assert bank.items.get(item.id).level_as == 3.5
    assert bank.items.level_as(item.id, None).reading_grade == item.grade


def test_what_an_older_method_computed_is_brought_up_to_date(bank: Bank) -> None:
    put(bank, make_item(1, text="Where do bees sleep?", grade=9.9))
    assert bank.items.stale() == 1
    assert bank.items.relevel() == 1
    assert bank.items.stale() == 0
    grade = bank.items.get("q00001").grade
    assert grade is not None and grade < 9


def test_tags_are_added_and_taken_away_for_all_or_none(bank: Bank) -> None:
    put(bank, make_item(1), make_item(2))
    bank.items.tag(["q00001", "q00002"], ["theme:snow", "season:12-01..02-28"])
    assert "snow" in bank.items.get("q00001").themes
    with pytest.raises(BankError):
        bank.items.tag(["q00001", "nobody"], ["theme:rain"])
    assert "rain" not in bank.items.get("q00001").themes
    bank.items.tag(["q00001"], [], ["theme:snow"])
    assert "snow" not in bank.items.get("q00001").themes


@pytest.mark.parametrize(
    "tag", ["snow", "colour:red", "skill:spelling", "season:winter", "question-word:hm"]
)
def test_what_is_no_tag_is_refused(bank: Bank, tag: str) -> None:
    put(bank, make_item(1))
    with pytest.raises(BankError):
        bank.items.tag(["q00001"], [tag])


def test_a_retired_item_is_drawn_no_more_and_can_come_back(bank: Bank) -> None:
    put(bank, make_item(1))
    bank.items.retire(["q00001"])
    assert bank.store.value("SELECT count(*) FROM shelf") == 0
    bank.items.retire(["q00001"], back=True)
    assert bank.store.value("SELECT count(*) FROM shelf") == 1


def test_items_are_found_by_words_tags_level_and_use(stocked: Bank) -> None:
    put(stocked, make_item(900, text="Is snow cold?", grade=0.5, themes=("weather",)))
    assert [item.id for item in stocked.items.find(Query("snow"))] == ["q00900"]
    assert [item.id for item in stocked.items.find(Query(tags=(("theme", "weather"),)))] == [
        "q00900"
    ]
    levels = [item.grade for item in stocked.items.find(Query(low=1.0, high=2.0))]
    assert levels == sorted(levels) and levels
    import datetime as dt

    stocked.days.draw(dt.date(2026, 9, 14))
    never = {item.id for item in stocked.items.find(Query(never_used=True))}
    given = {row[0] for row in stocked.store.rows("SELECT item FROM given")}
    assert never and given and not never & given


@pytest.mark.parametrize("ending", ["csv", "jsonl"])
def test_what_goes_out_and_comes_into_an_empty_bank_gives_the_same_bank(
    bank: Bank, tmp_path: Path, ending: str
) -> None:
    bank.items.add(kind="question", text="What do bees make?", answer="=honey", theme="animals")
    bank.items.add(kind="sentence", text="The dog ran home.", faulty=["the dog runned home"])
    bank.items.level_as(
        bank.items.add(kind="topic", text="A red hat", season="12-01..02-28").id, 1.0
    )
    bank.items.set_aside(bank.items.add(kind="topic", text="My new shoes").id, "not now")
    bank.items.send_out(tmp_path / f"x.{ending}")
    with Bank(create_store(tmp_path / "other.sqlite3")) as other:
        brought = other.items.bring_in(tmp_path / f"x.{ending}")
        assert (brought.added, brought.refused, brought.conflicts) == (4, [], [])
        assert content(other) == content(bank)
        again = other.items.bring_in(tmp_path / f"x.{ending}")
        assert (again.added, again.updated, again.unchanged) == (0, 0, 4)


def test_a_grown_spreadsheet_updates_what_is_there_and_adds_the_rest(
    bank: Bank, tmp_path: Path
) -> None:
    item = bank.items.add(kind="question", text="What do bees make?", theme="animals")
    path = tmp_path / "x.csv"
    bank.items.send_out(path, plain=True)
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    rows[0]["text"], rows[0]["grade"] = "What do bees eat?", ""
    rows.append({**dict.fromkeys(rows[0], ""), "kind": "topic", "text": "A red hat"})
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows(rows)
    brought = bank.items.bring_in(path)
    assert (brought.added, brought.updated) == (1, 1)
    changed = bank.items.get(item.id)
    assert changed.text == "What do bees eat?" and changed.themes == ("animals",)
    assert changed.grade is not None


def test_two_laptops_exchange_items_and_a_conflict_loses_neither(
    bank: Bank, tmp_path: Path
) -> None:
    item = bank.items.add(kind="question", text="What do bees make?")
    bank.items.send_out(tmp_path / "a.csv")
    with Bank(create_store(tmp_path / "other.sqlite3")) as other:
        other.items.bring_in(tmp_path / "a.csv")
        other.items.change(item.id, answer="honey")
        other.items.send_out(tmp_path / "b.csv")
        # Only they changed it: their change comes over.
        assert bank.items.bring_in(tmp_path / "b.csv").updated == 1
        assert bank.items.get(item.id).answer == "honey"
        # An older state that comes in again changes nothing.
        assert bank.items.bring_in(tmp_path / "a.csv").unchanged == 1
        # Both changed it: it is listed, and neither is lost.
        bank.items.change(item.id, answer="wax")
        other.items.change(item.id, answer="honey and wax")
        other.items.send_out(tmp_path / "b.csv")
        brought = bank.items.bring_in(tmp_path / "b.csv")
        assert brought.conflicts == [item.id]
        assert bank.items.get(item.id).answer == "wax"
        (waiting,) = bank.items.conflicts()
        assert waiting["theirs"]["answer"] == "honey and wax"
        assert bank.items.settle(waiting["number"], take_theirs=True).answer == "honey and wax"
        assert bank.items.conflicts() == []


@pytest.mark.parametrize("take_theirs", [True, False])
def test_what_one_side_settled_is_no_second_conflict_on_the_other(
    bank: Bank, tmp_path: Path, take_theirs: bool
) -> None:
    item = bank.items.add(kind="question", text="What do bees make?")
    bank.items.send_out(tmp_path / "a.csv")
    with Bank(create_store(tmp_path / "other.sqlite3")) as other:
        other.items.bring_in(tmp_path / "a.csv")
        bank.items.change(item.id, answer="wax")
        other.items.change(item.id, answer="honey")
        other.items.send_out(tmp_path / "b.csv")
        bank.items.bring_in(tmp_path / "b.csv")
        (waiting,) = bank.items.conflicts()
        bank.items.settle(waiting["number"], take_theirs)
        bank.items.tag([item.id], ["theme:insects"])
        bank.items.send_out(tmp_path / "a.csv")
        assert other.items.bring_in(tmp_path / "a.csv").updated == 1
        there = other.items.get(item.id)
        assert there.answer == ("honey" if take_theirs else "wax")
        assert there.themes == ("insects",)
        # And back again: there is nothing left to take over.
        other.items.send_out(tmp_path / "b.csv")
        assert bank.items.bring_in(tmp_path / "b.csv").unchanged == 1


def test_an_import_is_all_or_nothing(bank: Bank, tmp_path: Path) -> None:
    path = write(tmp_path / "x.csv", HEADER + "question,Is it hot?,,\njoke,Is it cold?,,\n")
    with pytest.raises(BankError, match="row 3, column kind"):
        bank.items.bring_in(path)
    assert len(bank.items) == 0


def test_good_rows_go_in_and_bad_ones_are_written_with_reasons(bank: Bank, tmp_path: Path) -> None:
    rows = "question,Is it hot?,,\njoke,Is it cold?,,\nquestion,is it HOT,,\nquestion,日本,,\n"
    brought = bank.items.bring_in(
        write(tmp_path / "x.csv", HEADER + rows), keep_good=tmp_path / "bad.csv"
    )
    assert brought.added == 1
    with (tmp_path / "bad.csv").open(encoding="utf-8-sig", newline="") as file:
        refused = list(csv.DictReader(file))
    assert [(row["row"], row["column"]) for row in refused] == [
        ("3", "kind"),
        ("4", "text"),
        ("5", "text"),
    ]
    assert "row 2" in refused[1]["reason"]
    assert "English" in refused[2]["reason"]


def test_the_same_text_in_the_bank_is_refused_by_its_row(bank: Bank, tmp_path: Path) -> None:
    first = bank.items.add(kind="question", text="Is it hot?")
    with pytest.raises(BankError, match=f"row 2.*{first.id}"):
        bank.items.bring_in(write(tmp_path / "x.csv", HEADER + "topic,is it hot,,\n"))


def test_a_killed_import_leaves_all_rows_or_none(tmp_path: Path) -> None:
    path = tmp_path / "bank.sqlite3"
    with Bank(create_store(path)) as bank:
        many = (make_item(n, method=method(), ask={"frame": {}, "keys": []}) for n in range(3000))
        from bank.exchange import write_rows

        write_rows(tmp_path / "x.jsonl", many)
        assert len(bank.items) == 0
    code = (
        "import sys; from pathlib import Path; from bank.classroom import open_bank\n"
        f"bank = open_bank({str(path)!r})\n"
        "write = bank.store.execute_many\n"
        "print('ready', flush=True)\n"
        f"bank.items.bring_in(Path({str(tmp_path / 'x.jsonl')!r}))\n"
    )
    for delay in (0.05, 0.4, 0.9, 1.4):
        with subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE) as process:
            assert process.stdout is not None
            process.stdout.readline()
            time.sleep(delay)
            process.send_signal(signal.SIGTERM if os.name == "nt" else signal.SIGKILL)
        with open_bank(path) as bank:
            assert len(bank.items) in (0, 3000)
            assert bank.store.value("PRAGMA integrity_check") == "ok"


def test_a_sentence_with_a_new_text_has_its_fixes_found_anew(bank: Bank) -> None:
    item = bank.items.add(kind="sentence", text="The dog ran home.", faulty=["the dog ran home."])
    changed = bank.items.change(item.id, text="The dog ran home!")
    assert [fix["skill"] for fix in changed.versions[0].fixes] == ["capital-first", "end-mark"]
    with pytest.raises(BankError):
        bank.items.change(item.id, text="My red hat is under the big bed.")
    assert bank.items.get(item.id).text == "The dog ran home!"
