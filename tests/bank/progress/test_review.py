import datetime as dt

from hypothesis import given
from hypothesis import strategies as st

from bank.progress.review import due_day, weekdays_later

MONDAY = dt.date(2026, 9, 14)
STEPS = (2, 4, 8, 16)


def due(*days: tuple[int, bool]) -> dt.date | None:
    """When the skill is due after data days so many weekdays from Monday on."""
    return due_day([(weekdays_later(MONDAY, n), ok) for n, ok in days], STEPS, weekdays_later)


def test_a_skill_that_is_done_alone_each_time_it_is_due_waits_longer_and_longer() -> None:
    assert due((0, True)) == weekdays_later(MONDAY, 2)
    assert due((0, True), (2, True)) == weekdays_later(MONDAY, 2 + 4)
    assert due((0, True), (2, True), (6, True)) == weekdays_later(MONDAY, 6 + 8)


def test_the_longest_wait_stays() -> None:
    days = [(0, True), (2, True), (6, True), (14, True), (30, True), (46, True)]
    assert due(*days) == weekdays_later(MONDAY, 46 + 16)


def test_a_miss_starts_again_with_the_shortest_wait() -> None:
    assert due((0, True), (2, True), (6, False)) == weekdays_later(MONDAY, 6 + 2)


def test_coming_up_early_earns_no_longer_wait() -> None:
    assert due((0, True), (1, True)) == weekdays_later(MONDAY, 1 + 2)


def test_a_skill_that_never_came_up_has_no_day() -> None:
    assert due() is None


@given(st.dates(dt.date(2020, 1, 1), dt.date(2030, 1, 1)), st.integers(1, 60))
def test_weekdays_are_counted_without_weekends(day: dt.date, count: int) -> None:
    last = weekdays_later(day, count)
    between = [day + dt.timedelta(days=n) for n in range(1, (last - day).days + 1)]
    assert sum(one.weekday() < 5 for one in between) == count
