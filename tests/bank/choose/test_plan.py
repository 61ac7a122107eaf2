"""The plan against an independent bound, and a school year of random classes without a violation."""

import datetime as dt
import random

import networkx as nx
import pytest
from choosing import a_class, a_year_without_violations
from making import make_item, put

from bank.classroom import Bank
from bank.classroom_plan import Plans
from bank.item import Item
from bank.store import create_store

FIRST = dt.date(2026, 9, 7)


def windows(chance: random.Random, count: int, days: list[dt.date]) -> list[Item]:
    """Items in the band whose seasons are windows of days inside the plan; some have none."""
    items = []
    for number in range(count):
        start, length = chance.choice(days), chance.randrange(1, 9)
        last = start + dt.timedelta(days=length)
        season = () if chance.random() < 0.2 else (f"{start:%m-%d}..{last:%m-%d}",)
        items.append(make_item(number, grade=1.0, seasons=season, themes=()))
    return items


def most_slots(items: list[Item], days: list[dt.date], each: int) -> int:
    """The most slots that can be filled at all: a maximum flow, computed by networkx."""
    flow = nx.DiGraph()
    for day in days:
        flow.add_edge("source", day, capacity=each)
        for item in items:
            if item.in_season(day):
                flow.add_edge(day, item.id, capacity=1)
    for item in items:
        flow.add_edge(item.id, "sink", capacity=1)
    if "sink" not in flow or "source" not in flow:
        return 0
    return int(nx.maximum_flow_value(flow, "source", "sink"))


@pytest.mark.parametrize("seed", range(300))
def test_with_seasons_alone_the_plan_fills_as_many_slots_as_a_maximum_flow(
    seed: int, tmp_path_factory: pytest.TempPathFactory
) -> None:
    chance = random.Random(seed)
    each, length = chance.randrange(1, 4), chance.randrange(2, 8)
    with Bank(create_store(tmp_path_factory.mktemp("flow") / "b.sqlite3")) as bank:
        bank.store.connection.execute("PRAGMA synchronous = OFF")
        bank.learners.add("K4", 2.0, questions=each)
        days = list(bank.days.calendar().school_days(FIRST, FIRST + dt.timedelta(days=30)))
        days = days[:length]
        items = windows(chance, chance.randrange(1, 2 + each * length * 2), days)
        put(bank, *items)
        Plans(bank.days).make(days[0], days[-1])
        new: set[str] = set()
        for day in days:
            new |= {part.item for one in bank.days.sets(day) for part in one.of("question")}
        assert len(new) == most_slots(items, days, each)


@pytest.mark.parametrize("seed", range(6))
def test_a_school_year_of_a_random_class_breaks_no_rule(
    seed: int, tmp_path_factory: pytest.TempPathFactory
) -> None:
    with a_class(random.Random(seed), tmp_path_factory.mktemp("year") / "b.sqlite3") as bank:
        assert a_year_without_violations(bank, FIRST, days=25) == []
