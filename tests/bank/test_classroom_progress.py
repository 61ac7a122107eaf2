"""Marks in a bank: kept, corrected, and what they make of the next set."""

import datetime as dt
import sys
from pathlib import Path

import pytest
from making import MONDAY, make_item, put

from bank.classroom import Bank
from bank.item import BankError, Version
from bank.progress.chart import Goal

FAULTY, CORRECTED = "my dog runned to me", "My dog ran to me."
OWN_FIXES = (
    {
        "skill": "capital-first",
        "wrong": "my",
        "right": "My",
        "wrong_start": 0,
        "wrong_end": 2,
        "right_start": 0,
        "right_end": 2,
    },
    {
        "skill": "tense",
        "wrong": "runned",
        "right": "ran",
        "wrong_start": 7,
        "wrong_end": 13,
        "right_start": 7,
        "right_end": 10,
    },
    {
        "skill": "end-mark",
        "wrong": "",
        "right": ".",
        "wrong_start": 19,
        "wrong_end": 19,
        "right_start": 16,
        "right_end": 17,
    },
)


def later(days: int) -> dt.date:
    return MONDAY + dt.timedelta(days=days)


def mark(bank: Bank, code: str, day: dt.date, keys: str) -> bool:
    """Press keys on a learner's sheet of the day and keep it."""
    bank.days.draw(day, anyway=True)
    ((learner, sheet),) = bank.marks.sheets(day, [code])
    for key in keys:
        sheet.press(key)
    return bank.marks.save(learner, sheet)


@pytest.fixture
def skilled(bank: Bank) -> Bank:
    """A bank whose sentences have three errors at known places, and one learner."""
    put(bank, *(make_item(n, "question", 1.0) for n in range(60)))
    put(bank, *(make_item(n, "topic", 1.0) for n in range(20)))
    versions = (Version(FAULTY, OWN_FIXES),)
    put(
        bank,
        *(
            make_item(
                n,
                "sentence",
                1.0,
                text=f"{CORRECTED[:-1]}{' now' * n}.",
                versions=_moved(versions, n),
            )
            for n in range(6)
        ),
    )
    bank.learners.add("K4", 2.0, errors=3)
    return bank


def _moved(versions: tuple[Version, ...], count: int) -> tuple[Version, ...]:
    """The same errors in a sentence with some words more, so that no two items are alike."""
    more = " now" * count
    end = OWN_FIXES[2]
    moved = {
        **end,
        "wrong_start": 19 + len(more),
        "wrong_end": 19 + len(more),
        "right_start": 16 + len(more),
        "right_end": 17 + len(more),
    }
    return (Version(versions[0].faulty + more, (*OWN_FIXES[:2], moved)),)


def test_a_marked_set_is_a_used_set_and_its_items_are_kept_as_they_were(stocked: Bank) -> None:
    assert mark(stocked, "K4", MONDAY, "a")
    states = {one.learner.code: one.state for one in stocked.days.sets(MONDAY)}
    assert states == {"K4": "used", "M7": "proposed"}
    kept = stocked.store.rows("SELECT printed FROM given WHERE learner = 1")
    assert kept and all(row["printed"] for row in kept)


def test_marking_again_corrects_and_what_was_there_before_is_kept(stocked: Bank) -> None:
    mark(stocked, "K4", MONDAY, "a")
    assert not mark(stocked, "K4", MONDAY, "a"), "the same marks say nothing new"
    assert mark(stocked, "K4", MONDAY, "2v\n")
    ((_, sheet),) = stocked.marks.sheets(MONDAY, ["K4"])
    assert [state.help for state in sheet.states].count("verbal") == 1
    rows = stocked.store.rows(
        "SELECT help, replaced FROM mark WHERE kind = 'question' AND position = 1 ORDER BY id"
    )
    assert [tuple(row) for row in rows] == [("", 1), ("verbal", 0)]


def test_without_a_day_the_last_day_with_a_set_is_marked(stocked: Bank) -> None:
    with pytest.raises(BankError, match="nothing to mark"):
        stocked.marks.day_to_mark(MONDAY)
    stocked.days.draw(MONDAY)
    assert stocked.marks.day_to_mark(later(0)) == MONDAY
    assert stocked.marks.day_to_mark(later(2)) == MONDAY
    stocked.days.set_state(MONDAY, "unused")
    with pytest.raises(BankError):
        stocked.marks.day_to_mark(later(2))


def test_a_learner_who_is_stuck_shows_and_one_bad_day_does_not(stocked: Bank) -> None:
    mark(stocked, "K4", MONDAY, "a")
    mark(stocked, "K4", later(1), "1n2n3n4na")
    assert stocked.progress.stuck(later(2)) == []
    mark(stocked, "K4", later(2), "1v2v3v4va")
    ((code, words),) = stocked.progress.stuck(later(2))
    assert code == "K4" and "8 of 12 and 8 of 12 alone" in words
    assert stocked.progress.stuck(later(1)) == []


def test_the_days_and_the_share_of_being_stuck_are_settings(stocked: Bank) -> None:
    mark(stocked, "K4", MONDAY, "1n2n3n4na")
    stocked.marks.change_settings(stuck_days=1)
    assert [code for code, _ in stocked.progress.stuck(MONDAY)] == ["K4"]
    stocked.marks.change_settings(alone_share=0.5)
    assert stocked.progress.stuck(MONDAY) == []


def test_what_a_learner_wrote_is_kept_only_where_the_teacher_says_so(skilled: Bank) -> None:
    skilled.days.draw(MONDAY)
    ((learner, sheet),) = skilled.marks.sheets(MONDAY, ["K4"])
    at = next(n for n, slot in enumerate(sheet.slots) if slot.fixes)
    right = sheet.slots[at].corrected
    for keep in (False, True):
        skilled.marks.change_settings(attempts=keep)
        sheet.press(sheet.row_keys[at])
        said = skilled.marks.typed(sheet, right.replace("ran", "runned"))
        sheet.press("\n")
        skilled.marks.save(learner, sheet)
        rows = skilled.store.rows("SELECT attempt FROM mark WHERE replaced = 0")
        assert any(row["attempt"] for row in rows) == keep
        assert said[:2] == ["2 of 3 fixed", "missed: tense"]
    outcomes = {
        row["skill"]: row["outcome"]
        for row in skilled.store.rows("SELECT * FROM mark WHERE replaced = 0 AND skill <> ''")
    }
    assert outcomes == {"capital-first": "fixed", "tense": "missed", "end-mark": "fixed"}


def test_a_sentence_has_mastered_skills_and_one_in_work(skilled: Bank) -> None:
    skilled.learners.change("K4", errors=2, skills={"tense": "in-work", "end-mark": "mastered"})
    ((one),) = skilled.days.draw(MONDAY)
    (sentence,) = one.of("sentence")
    assert [fix["skill"] for fix in sentence.fixes] == ["tense", "end-mark"]
    assert sentence.why["errors"] == {"tense": "in-work", "end-mark": "mastered"}
    assert sentence.faulty.startswith("My dog runned") and not sentence.faulty.endswith(".")
    skilled.days.printed(MONDAY)
    (again,) = skilled.days.sets(MONDAY)
    printed = again.of("sentence")[0]
    assert (printed.faulty, printed.fixes) == (sentence.faulty, sentence.fixes)
    (key,) = skilled.days.key(MONDAY).sentences
    assert len(key.fixes) == 2 and key.versions[0][0] == sentence.faulty


def test_a_sentence_without_any_taught_skill_is_said_and_has_the_fewest_errors(
    skilled: Bank,
) -> None:
    skilled.learners.change("K4", skills={"plural": "taught"})
    ((one),) = skilled.days.draw(MONDAY)
    (note,) = [line for line in one.notes if "not taught" in line]
    assert "capital-first, end-mark, tense" in note


def test_a_season_that_ends_soon_brings_no_sentence_that_was_not_taught(stocked: Bank) -> None:
    """Where the bank has one in the band whose errors the learner can mend."""
    fix = {"skill": "comma-date", "wrong": "", "right": ","}
    seasonal = make_item(
        90,
        "sentence",
        1.0,
        seasons=("09-01..09-16",),
        versions=(Version("Only commas", (fix,)),),
    )
    put(stocked, seasonal)
    stocked.learners.change("K4", skills={"end-mark": "taught"})
    (one,) = stocked.days.draw(MONDAY, ["K4"])
    assert one.of("sentence")[0].item != seasonal.id
    stocked.learners.change("K4", skills={"comma-date": "taught"})
    stocked.days.undo(MONDAY)
    (one,) = stocked.days.draw(MONDAY, ["K4"])
    assert one.of("sentence")[0].item == seasonal.id


def test_the_board_and_the_key_show_the_errors_of_all_where_versions_do_not_nest(
    skilled: Bank,
) -> None:
    skilled.learners.change("K4", errors=1, skills={"tense": "in-work"})
    skilled.learners.add("M7", 2.0, errors=1, skills={"end-mark": "in-work"})
    skilled.days.draw(MONDAY)
    (sentence,) = skilled.days.key(MONDAY).sentences
    assert [fix["skill"] for fix in sentence.fixes] == ["tense", "end-mark"]
    board, numbers, codes = sentence.versions[0]
    assert (numbers, codes) == ((1, 2), ())
    assert board.startswith("My dog runned to me") and not board.endswith(".")
    assert sorted(mine for _, mine, _ in sentence.versions[1:]) == [(1,), (2,)]
    from bank.page.key import shared_sentences

    (shared,) = shared_sentences(skilled.paper.pages(MONDAY)[0])
    assert shared.fullest.faulty == board
    assert shared.theirs == {"K4": (True, False), "M7": (False, True)}
    # The aide's keys are the numbers on the key, though M7 has only the second error.
    ((learner, sheet),) = skilled.marks.sheets(MONDAY, ["M7"])
    for pressed in "62aa":
        sheet.press(pressed)
    skilled.marks.save(learner, sheet)
    (missed,) = [mark for mark in sheet.marks() if mark.outcome == "missed"]
    assert (missed.skill, missed.part) == ("end-mark", "1")
    said = {row["what"]: row["mark"] for row in skilled.marks.blank_rows(MONDAY, ["M7"])}
    assert said["fix 2"] == "missed" and "fix 1" not in said


def test_the_mixing_of_skills_is_a_setting(skilled: Bank) -> None:
    skilled.learners.change("K4", skills={"tense": "in-work", "end-mark": "mastered"})
    skilled.marks.change_settings(mix=False)
    ((one),) = skilled.days.draw(MONDAY)
    assert len(one.of("sentence")[0].fixes) == 3


def test_a_mastered_skill_comes_back_when_it_is_due_and_not_before(skilled: Bank) -> None:
    states = {"capital-first": "mastered", "end-mark": "mastered", "tense": "in-work"}
    skilled.learners.change("K4", errors=2, skills=states)
    seen = []
    for n in range(5):
        (one,) = skilled.days.draw(later(n), anyway=True)
        seen.append({fix["skill"] for fix in one.of("sentence")[0].fixes} - {"tense"})
        mark(skilled, "K4", later(n), "a")
    flat = [code for some in seen for code in sorted(some)]
    assert len(flat) == 5
    assert flat[0] != flat[1], "the one that has not come up goes first"


def test_nothing_moves_by_itself(stocked: Bank) -> None:
    before = stocked.learners.get("K4")
    for n in range(12):
        mark(stocked, "K4", later(n), "1n2n3n4n5na")
    report = stocked.progress.report("K4")
    assert {one.kind for one in report.proposals} == {"easier"}
    assert stocked.learners.get("K4") == before


def test_a_report_has_independence_skills_and_the_goal_of_each_skill_in_work(skilled: Bank) -> None:
    skilled.learners.change("K4", skills={"tense": "in-work", "end-mark": "mastered"})
    for n in range(5):
        mark(skilled, "K4", later(n), "63v63\na" if n == 0 else "a")
    report = skilled.progress.report("K4")
    assert len(report.days) == 5
    assert {one.step for one in report.steps} >= {"question", "sentence", "topic", "game"}
    assert {one.skill for one in report.skills} == {"tense", "end-mark"}
    assert [goal.name for goal in report.goals] == ["independence", "tense"]
    by = later(60)
    skilled.progress.set_goal("K4", Goal("tense", 0.9, by, "tense at 90"))
    skilled.progress.add_phase("K4", later(2), "new seat")
    report = skilled.progress.report("K4")
    assert report.goals[0] == Goal("tense", 0.9, by, "tense at 90")
    assert [phase.words for phase in report.phases] == ["new seat"]
    with pytest.raises(BankError, match="independence or a skill"):
        skilled.progress.set_goal("K4", Goal("running"))


def test_a_change_for_a_learner_with_marks_becomes_a_phase_line(stocked: Bank) -> None:
    stocked.learners.change("K4", errors=3)
    mark(stocked, "K4", MONDAY, "a")
    stocked.learners.change("K4", errors=2, skills={"tense": "in-work"})
    stocked.learners.change("K4", group="A")
    (phase,) = stocked.progress.report("K4").phases
    assert phase.words == "2 errors, tense in-work"


def test_items_that_the_same_learners_do_worse_come_first_for_the_specialist(bank: Bank) -> None:
    put(bank, *(make_item(n, "question", 1.0) for n in range(40)))
    for code in "ABC":
        bank.learners.add(code, 2.0, group="G")
    hard = ""
    for n in range(4):
        bank.days.draw(later(n))
        for learner, sheet in bank.marks.sheets(later(n)):
            if n == 0:
                hard = sheet.slots[0].item or ""
            for key in "1ma" if n == 0 else "a":
                sheet.press(key)
            bank.marks.save(learner, sheet)
    first = bank.progress.evidence()[0]
    assert (first.item, first.given, first.alone, first.helped) == (hard, 3, 0, 3)
    assert first.goes_worse and first.text


def test_marks_from_a_spreadsheet_are_taken_learner_by_learner(
    stocked: Bank, tmp_path: Path
) -> None:
    stocked.days.draw(MONDAY)
    path = tmp_path / "marks.csv"
    path.write_text(
        "day,learner,what,mark\n"
        f"{MONDAY},k4,all,alone\n{MONDAY},k4,question 2,verbal\n"
        f"{MONDAY},M7,all,alone\n{MONDAY},M7,question 9,alone\n"
        f"{MONDAY},Q1,all,alone\nsoon,K4,all,alone\n"
    )
    done, refused = stocked.marks.take(path)
    assert done == [("K4", MONDAY)]
    assert [line.split(":")[0] for line in refused] == ["row 5, what", "row 6", "row 7"]
    assert len(stocked.progress.report("K4").days) == 1
    assert not stocked.progress.report("M7").days


def test_a_blank_spreadsheet_has_a_row_for_each_thing_and_takes_itself_back(stocked: Bank) -> None:
    mark(stocked, "K4", MONDAY, "3m7461\na")
    rows = [row for row in stocked.marks.blank_rows(MONDAY) if row["learner"] == "K4"]
    said = {row["what"]: row["mark"] for row in rows}
    assert said["question 3"] == "model" and said["topic"] == "4 alone"
    assert said["fix 1"] == "missed" and said["step Game"] == "alone"


def test_marking_loads_no_parser_and_no_numbers_package(stocked: Bank, tmp_path: Path) -> None:
    import subprocess

    mark(stocked, "K4", MONDAY, "a")
    code = (
        "import sys; from bank.classroom import open_bank\n"
        f"with open_bank({str(stocked.path)!r}) as bank:\n"
        "    import datetime as dt\n"
        "    day = dt.date(2026, 9, 14)\n"
        "    for learner, sheet in bank.marks.sheets(day):\n"
        "        sheet.press('a'); bank.marks.save(learner, sheet)\n"
        "    bank.progress.stuck(day); bank.progress.report('K4')\n"
        "slow = {'spacy', 'numpy', 'scipy', 'textstat', 'sqlite_utils', 'typst'} & set(sys.modules)\n"
        "print(sorted(slow))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
