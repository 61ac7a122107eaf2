"""The compact picture of one level in the terminal."""

from __future__ import annotations

import pytest

from bank.level import Level, Published, level_text
from bank.level.picture import LEVEL, RANGE, picture, scale_lines

HARD = "To what extent should a community limit the use of plastic packaging?"


@pytest.mark.parametrize("width", [40, 60, 80, 120])
def test_no_line_is_wider_than_the_terminal(width):
    assert max(map(len, picture(level_text(HARD), HARD, width))) <= width


def test_the_level_stands_under_its_grade_with_its_range_about_it():
    grades, line = scale_lines(Level(2.5, 1.0, 3.9), [], 80)
    assert grades.index("2") < line.index(LEVEL) < grades.index("3")
    assert grades.index("1") <= line.index(RANGE) < grades.index("2")
    assert grades.index("3") < line.rindex(RANGE) < grades.index("4")


def test_formulas_are_dots_on_the_same_line_and_those_beyond_it_are_counted():
    values = [
        Published(str(at), str(at), value, "grade", 100, True)
        for at, value in enumerate((-2.0, 5.5, 12.0, 15.0))
    ]
    grades, line = scale_lines(Level(2.5, 2.2, 2.8), values, 80)
    assert grades.index("5") < line.index("·") < grades.index("6")
    assert line.strip().startswith("‹1") and line.endswith("2›")


def test_the_picture_says_the_level_the_formulas_and_what_each_reason_costs():
    shown = "\n".join(picture(level_text("The vile ruse irked me.", "sentence"), "The …"))
    assert "grade" in shown and "Flesch" in shown
    assert '"ruse": mostly learnt about grade' in shown and "without" in shown
