"""A year's plan, the bound that it reaches, and a district's day, measured."""

import datetime as dt
import random
import time
from pathlib import Path
from typing import Any

import pytest
from choosing import a_class, a_year_without_violations
from making import FULL, make_item, put

from bank.choose import mix
from bank.classroom import Bank
from bank.classroom_plan import Plans
from bank.item import QUESTION_WORDS
from bank.learner import Learner, default_band
from bank.store import create_store
from bank.store_sets import write_learner

pytestmark = pytest.mark.bench
FIRST = dt.date(2026, 9, 7)
YEAR = 180 if FULL else 30


def year_bank(path: Path, size: int, learners: int) -> Bank:
    bank = Bank(create_store(path))
    chance = random.Random(6)
    seasons = (("09-01..11-30",), ("12-01..02-28",), ("03-01..05-31",), (), (), ())
    kinds = ("question",) * 5 + ("sentence", "topic")
    put(
        bank,
        *(
            make_item(
                n,
                kinds[n % 7],
                chance.randrange(0, 45) / 10,
                seasons=chance.choice(seasons),
                question_word=chance.choice(QUESTION_WORDS) if n % 7 < 5 else "",
                themes=(f"theme{chance.randrange(22)}",),
            )
            for n in range(size)
        ),
    )
    for n in range(learners):
        bank.learners.add(f"L{n}", 1 + n * 0.4, group="ABC"[n // 4])
    return bank


def test_a_years_plan_for_a_class_of_ten(tmp_path: Path) -> None:
    with year_bank(tmp_path / "b.sqlite3", 3000, 10) as bank:
        days = list(bank.days.calendar().school_days(FIRST, dt.date(2027, 7, 31)))[:YEAR]
        start, used = time.perf_counter(), time.process_time()
        Plans(bank.days).make(days[0], days[-1])
        print(
            f"plan of {len(days)} days for 10 learners, 3,000 items:"
            f" {time.perf_counter() - start:.1f} s, {time.process_time() - used:.1f} s of processor"
        )
        assert all(len(bank.days.sets(day)) == 10 for day in (days[0], days[-1]))


def fresh_slots(bank: Bank, days: list[dt.date]) -> int:
    """How many slots got an item that was new to the learner."""
    seen: set[str] = set()
    for day in days:
        seen |= {part.item for one in bank.days.sets(day) for part in one.given}
    return len(seen)


def seasonal_bank(path: Path, seed: int, with_limits: bool) -> tuple[Bank, list[dt.date]]:
    """One learner, five questions a day, and just about as many items, most with a season."""
    chance = random.Random(seed)
    bank = Bank(create_store(path))
    bank.store.connection.execute("PRAGMA synchronous = OFF")
    bank.learners.add("K4", 2.0, questions=5)
    days = list(bank.days.calendar().school_days(FIRST, FIRST + dt.timedelta(days=60)))[:40]
    items = []
    for n in range(230):
        start = chance.choice(days)
        last = start + dt.timedelta(days=chance.randrange(4, 25))
        season = () if chance.random() < 0.35 else (f"{start:%m-%d}..{last:%m-%d}",)
        themes = (f"theme{chance.randrange(12)}",) if with_limits else ()
        items.append(make_item(n, grade=1.0, seasons=season, themes=themes))
    put(bank, *items)
    if with_limits:
        from bank.store_items import set_twins

        with bank.store.writing():
            for n in range(0, 40, 2):
                set_twins(bank.store, items[n].id, [items[n + 1].id])
    return bank, days


def test_how_near_the_plan_comes_to_the_bound_and_what_no_look_ahead_loses(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import networkx as nx

    bound = limited = blind = 0
    for seed in range(20 if FULL else 4):
        bank, days = seasonal_bank(tmp_path / f"{seed}.sqlite3", seed, with_limits=True)
        flow = nx.DiGraph()
        for day in days:
            flow.add_edge("source", day, capacity=5)
            for item in bank.items:
                if item.in_season(day):
                    flow.add_edge(day, item.id, capacity=1)
                    flow.add_edge(item.id, "sink", capacity=1)
        bound += int(nx.maximum_flow_value(flow, "source", "sink"))
        Plans(bank.days).make(days[0], days[-1])
        limited += fresh_slots(bank, days)
        bank.close()
        # The same draw without look-ahead: the season's end counts for nothing.
        bank, days = seasonal_bank(tmp_path / f"{seed}-blind.sqlite3", seed, with_limits=True)
        with monkeypatch.context() as patched:
            patched.setattr("bank.choose.ladder.best_two", _best_two_without_look_ahead)
            Plans(bank.days).make(days[0], days[-1])
        blind += fresh_slots(bank, days)
        bank.close()
    print(
        f"slots filled: bound {bound}, plan {limited} ({100 * limited / bound:.1f} %),"
        f" without look-ahead {blind} ({100 * blind / bound:.1f} %:"
        f" {(limited - blind) / 5:.0f} days of five questions lost)"
    )
    assert limited >= 0.99 * bound


def _best_two_without_look_ahead(found: list[mix.Candidate], *rest: Any) -> list[mix.Candidate]:
    return mix.best_two([_without_season(one) for one in found], *rest)


def _without_season(candidate: mix.Candidate) -> mix.Candidate:
    from dataclasses import replace

    return replace(candidate, ends_in=None)


def test_school_years_of_random_classes_break_no_rule(tmp_path: Path) -> None:
    classes, days = (200, 180) if FULL else (3, 30)
    broken: list[str] = []
    for seed in range(classes):
        with a_class(random.Random(1000 + seed), tmp_path / f"{seed}.sqlite3") as bank:
            broken += a_year_without_violations(bank, FIRST, days)
        (tmp_path / f"{seed}.sqlite3").unlink()
    print(f"{classes} classes over {days} school days: {len(broken)} violations")
    assert broken == []


def test_a_districts_day(tmp_path: Path) -> None:
    """Draws per second for many learners, and how they grow with the bank and with the history."""
    rates = {}
    sizes = (10_000, 100_000) if FULL else (2_000, 8_000)
    many = 10_000 if FULL else 100
    for size in sizes:
        with year_bank(tmp_path / f"{size}.sqlite3", size, 0) as bank:
            with bank.store.writing():
                for n in range(many):
                    band = default_band(1 + (n % 40) / 10)
                    write_learner(bank.store, Learner(0, f"L{n}", "star", 3.0, band))
            bank.store.execute("ANALYZE")
            for number in range(2):
                day = FIRST + dt.timedelta(days=number)
                start = time.process_time()
                bank.days.draw(day)
                rates[size, number] = many / (time.process_time() - start)
    for (size, number), rate in rates.items():
        print(f"{many} learners, {size:,} items, day {number + 1}: {rate:.0f} draws a second")
