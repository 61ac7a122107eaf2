"""As many as possible have the keyboard, and those who had it least come first."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bank.morning.keyboard import match_places

WEEK = [date(2026, 9, 7) + timedelta(days=n) for n in range(5)]


@given(
    st.lists(st.sets(st.integers(0, 4)), min_size=1, max_size=9),
    st.lists(st.integers(0, 3), min_size=5, max_size=5),
)
def test_as_many_have_a_place_as_a_maximum_flow_finds(
    can: list[set[int]], places: list[int]
) -> None:
    networkx = pytest.importorskip("networkx")
    graph = networkx.DiGraph()
    graph.add_node("sink")
    for n, days in enumerate(can):
        graph.add_edge("source", f"K{n}", capacity=1)
        for one in days:
            graph.add_edge(f"K{n}", one, capacity=1)
    for one, free in enumerate(places):
        graph.add_edge(one, "sink", capacity=free)
    best = networkx.maximum_flow_value(graph, "source", "sink")
    learners = [f"K{n}" for n in range(len(can))]
    found = match_places(
        learners,
        {f"K{n}": [WEEK[one] for one in sorted(days)] for n, days in enumerate(can)},
        dict(zip(WEEK, places, strict=True)),
    )
    assert len(found) == best
    assert all(WEEK.index(day) in can[int(code[1:])] for code, day in found.items())
    given_out = list(found.values())
    assert all(given_out.count(day) <= free for day, free in zip(WEEK, places, strict=True))


@given(st.integers(1, 8), st.integers(1, 3))
def test_those_who_come_first_are_never_left_out_for_those_after_them(n: int, free: int) -> None:
    learners = [f"K{k}" for k in range(n)]
    found = match_places(learners, dict.fromkeys(learners, WEEK[:2]), dict.fromkeys(WEEK, free))
    assert list(found) == learners[: 2 * free]
