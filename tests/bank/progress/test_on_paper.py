import datetime as dt
from pathlib import Path

import pytest

from bank.item import BankError
from bank.progress.on_paper import blank_rows, fill, read, write
from bank.progress.settings import PROMPTS
from bank.progress.sheet import Sheet, Slot

MONDAY = dt.date(2026, 9, 14)
FIXES = ({"skill": "tense"}, {"skill": "end-mark"})


def a_sheet() -> Sheet:
    slots = [Slot("question", n, f"question {n}", f"q{n}") for n in range(2)]
    slots.append(Slot("sentence", 0, "We goed home", "s1", fixes=FIXES))
    slots.append(Slot("topic", 0, "Snow", "t1"))
    slots.append(Slot("step", 3, "Quiet reading", part="reading"))
    return Sheet(MONDAY, slots, PROMPTS)


def test_marks_on_paper_become_the_same_marks() -> None:
    sheet = a_sheet()
    rows = [
        ("question 1", "alone"),
        ("Question 2", "Verbal"),
        ("fix 2", "missed"),
        ("topic", "4 alone"),
        ("step quiet reading", "not done"),
    ]
    fill(sheet, rows)
    pressed = a_sheet()
    for key in "1a2v32\n445n":
        pressed.press(key)
    assert sheet.marks() == pressed.marks()


def test_all_alone_with_one_exception_takes_two_rows() -> None:
    sheet = a_sheet()
    fill(sheet, [("all", "alone"), ("question 2", "not done")])
    assert [m.position for m in sheet.marks() if not m.alone] == [1]


def test_a_sheet_written_and_read_again_says_the_same(tmp_path: Path) -> None:
    sheet = a_sheet()
    for key in "1v31\n44\na":
        sheet.press(key)
    write(tmp_path / "marks.csv", blank_rows(sheet, "K4"))
    again = a_sheet()
    fill(again, [(cells["what"], cells["mark"]) for _, cells in read(tmp_path / "marks.csv")])
    assert again.marks() == sheet.marks()


def test_a_spreadsheet_may_write_semicolons_and_a_byte_order_mark(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("\ufeffDay;Learner;What;Mark\n2026-09-14;K4;all;alone\n", "utf-8")
    ((number, cells),) = read(path)
    assert number == 2
    assert cells == {"day": "2026-09-14", "learner": "K4", "what": "all", "mark": "alone"}


@pytest.mark.parametrize(
    ("what", "mark", "said"),
    [
        ("question 9", "alone", "what: there is no 'question 9'"),
        ("fix 3", "missed", "what: the sentence has no fix 3"),
        ("fix 1", "alone", "mark: a fix is fixed or missed"),
        ("question 1", "shouted", "mark: 'shouted' is none of: alone, gesture"),
        ("question 1", "4 alone", "mark: "),
    ],
)
def test_a_row_that_cannot_be_names_the_column(what: str, mark: str, said: str) -> None:
    with pytest.raises(BankError, match=said):
        fill(a_sheet(), [(what, mark)])


def test_a_table_without_the_columns_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "marks.csv"
    path.write_text("day,learner\n2026-09-14,K4\n")
    with pytest.raises(BankError, match="no column what"):
        read(path)
    path.write_bytes("day,learner,what,mark\n2026-09-14,K4,all,\xe9".encode("latin-1"))
    with pytest.raises(BankError, match="UTF-8"):
        read(path)
