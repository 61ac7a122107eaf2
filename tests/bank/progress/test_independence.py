import datetime as dt

from bank.progress.independence import Day, by_day, by_step, is_stuck, trend
from bank.progress.marks import NOT_ASKED, NOT_DONE, STEP, Mark
from bank.progress.settings import PROMPTS

MONDAY = dt.date(2026, 9, 14)


def day(number: int, alone: int, count: int, help_level: float = 0.0) -> Day:
    return Day(MONDAY + dt.timedelta(days=number), alone, count, help_level)


def test_a_day_counts_what_was_done_without_an_adult() -> None:
    marks = [
        Mark(MONDAY, "question", 0),
        Mark(MONDAY, "question", 1, help="model"),
        Mark(MONDAY, "question", 2, outcome=NOT_DONE),
        Mark(MONDAY, STEP, 0, "game", outcome=NOT_ASKED),
        Mark(MONDAY, "sentence", 0),
        Mark(MONDAY, "sentence", 0, "1", skill="tense", outcome="missed"),
    ]
    (found,) = by_day(marks, PROMPTS)
    assert (found.alone, found.count) == (2, 4)
    assert found.help == 1.0  # nothing, a model (third of the help), nothing


def test_steps_of_the_routine_stand_by_themselves() -> None:
    marks = [Mark(MONDAY, "question", n) for n in range(3)]
    marks.append(Mark(MONDAY, STEP, 4, "game", help="verbal"))
    shares = {step.step: (step.alone, step.count) for step in by_step(marks, PROMPTS)}
    assert shares == {"question": (3, 3), "game": (0, 1)}


def test_two_days_below_eighty_percent_are_stuck_and_one_is_not() -> None:
    assert is_stuck([day(0, 7, 7), day(1, 5, 7), day(2, 4, 7)], 0.8, 2)
    assert not is_stuck([day(0, 5, 7), day(1, 7, 7), day(2, 4, 7)], 0.8, 2)
    assert not is_stuck([day(0, 1, 7)], 0.8, 2)
    assert not is_stuck([day(0, 4, 5), day(1, 4, 5)], 0.8, 2)


def test_help_falls_when_prompts_get_lighter_even_where_nothing_is_alone_yet() -> None:
    more = [day(n, 0, 5, 3.0) for n in range(5)]
    less = [day(n + 5, 0, 5, 1.0) for n in range(5)]
    assert trend(more + less) == "falling"
    assert trend(less + more) == "rising"
    assert trend(more) == ""
    assert trend(more + more) == "steady"


def test_a_word_for_help_that_is_no_longer_used_counts_as_the_most() -> None:
    (found,) = by_day([Mark(MONDAY, "question", 0, help="nudge")], PROMPTS)
    assert found.help == len(PROMPTS)
