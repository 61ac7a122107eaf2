"""A learner who has left, or has not joined yet, is given nothing; what was kept stays."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from making import Ran

from bank.classroom import Bank

Run = Callable[..., Ran]
# A Friday, and the Monday and Tuesday after it.
LAST, AFTER, TUESDAY = "2026-09-18", "2026-09-21", "2026-09-22"


@pytest.fixture
def ready(run: Run, stocked: Bank) -> Run:
    """A class of three, K1, K2 and K3, with a few items."""
    for old, new in (("K4", "K1"), ("M7", "K2")):
        stocked.learners.change(old, code=new, taught=2.0)
    stocked.learners.add("K3", 2.0)
    return run


def codes(ran: Ran) -> list[str]:
    return [one["learner"] for one in ran.json["sets"]]


def test_a_learner_who_has_left_has_sets_until_the_last_day_and_none_after(ready: Run) -> None:
    said = ready("job", "stay", "K3", "--until", LAST)
    assert said.code == 0 and f"after {LAST} there are no sets and pages for K3" in said.out
    assert codes(ready("draw", LAST, "--json")) == ["K1", "K2", "K3"]
    drawn = ready("draw", AFTER, "--json")
    assert codes(drawn) == ["K1", "K2"]
    assert drawn.json["away"] == [] and drawn.json["not_in_class"] == ["K3"]
    assert f"K3 left on {LAST}, so has no set" in ready("draw", AFTER).out
    assert "K3" not in ready("draw", "2026-11-02").out, "nobody needs to read it for ever"


def test_a_set_that_was_planned_for_after_the_last_day_is_on_no_page_and_no_key(ready: Run) -> None:
    ready("draw", AFTER)
    ready("job", "stay", "K3", "--until", LAST)
    assert codes(ready("draw", AFTER, "--json")) == ["K1", "K2"]
    assert "K3" not in ready("key", AFTER, "--with-learners", "--json").out
    assert ready("pages", AFTER, "--json").code == 0
    assert ready("job", "stay", "K3").code == 0, "she stays after all"
    assert codes(ready("draw", AFTER, "--json")) == ["K1", "K2", "K3"]


def test_what_a_learner_who_has_left_did_can_still_be_marked(ready: Run) -> None:
    ready("draw", LAST)
    ready("job", "stay", "K3", "--until", LAST)
    assert ready("mark", "--on", LAST, "--blank", "marks.csv").code == 0
    assert "K3" in Path("marks.csv").read_text()


def test_no_basket_and_no_sort_for_a_learner_who_has_left(ready: Run) -> None:
    for n in range(9):
        ready("shelf", "add", f"Book {n}", "--level", "K")
    ready("sort", "make", "ai-ay")
    ready("sort", "mastered", "K3", "--add", "ai-ay")
    ready("job", "stay", "K3", "--until", LAST)
    baskets = ready("basket", AFTER, "--books", "1", "--json").json["baskets"]
    assert [one["learner"] for one in baskets] == ["K1", "K2"]
    sorts = ready("sort", "today", AFTER, "--json").json
    assert sorts["sorts"] == {} and sorts["without"] == ["K1", "K2"]
    assert ready("sort", "today", LAST, "--json").json["sorts"].keys() == {"K3"}


def test_who_joins_later_has_no_set_before(ready: Run) -> None:
    ready("job", "stay", "K2", "--from", TUESDAY)
    assert codes(ready("draw", AFTER, "--json")) == ["K1", "K3"]
    assert codes(ready("draw", TUESDAY, "--json")) == ["K1", "K2", "K3"]


def test_a_learner_whom_only_the_turns_took_in_later_has_sets_from_the_start(ready: Run) -> None:
    ready("job", "add", "Line leader")
    ready("turns", "--print")
    ready("learner", "add", "K4", "--reads", "2")
    ready("turns", "--print")
    assert "K4" in codes(ready("draw", LAST, "--json"))


def test_to_ask_for_a_learner_who_has_left_is_one_line(ready: Run) -> None:
    ready("job", "stay", "K3", "--until", LAST)
    for command in ("draw", "pages", "board"):
        refused = ready(command, AFTER, "--for", "K3")
        assert refused.code == 2 and refused.err.count("\n") <= 2
        assert f"K3 left on {LAST}" in refused.err.replace("\n    ", " ")


def test_nobody_leaves_before_they_join(ready: Run) -> None:
    ready("job", "stay", "K2", "--from", TUESDAY)
    refused = ready("job", "stay", "K2", "--until", AFTER)
    assert refused.code == 2 and f"K2 joins on {TUESDAY}" in refused.err
