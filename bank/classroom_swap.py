"""Another item in place of one of a set: the next best, or one that the teacher names."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

from bank.choose.draw import Draw
from bank.choose.ladder import EASIER, IN_BAND, Choice
from bank.choose.mix import Mixture
from bank.choose.rules import SLOTS
from bank.choose.share import Circle, own
from bank.classroom_days import Days, GivenView, given_view, snapshot
from bank.item import BankError, clean_text
from bank.learner import Learner
from bank.store import now
from bank.store_items import get_item, get_items, twins_of
from bank.store_sets import DaySet, Given, day_sets, unseen_item, write_set

_SLOT_NAMES = {"q": "question", "s": "sentence", "t": "topic"}


def swap(
    days: Days, code: str, day: dt.date, slot: str, reason: str, item: str = ""
) -> tuple[GivenView, GivenView]:
    """Replace one item of a learner's set and keep the reason; returns what was and what is now.

    By the next best, or by `item` where it suits the learner. `slot` is `sentence`, `topic`, or
    `question` with a number from 1. `BankError` where nothing fits; the set is then as it was.
    """
    learner = days.learners([code])[0]
    kind, position = read_slot(slot)
    reason = clean_text(reason, "the reason")
    store = days.store
    with store.writing():
        held = day_sets(store, day).get(learner.number)
        if held is None:
            raise BankError(
                f"{learner.code} has no set on {day}; draw it first: binderbank draw {day}"
            )
        was = next((p for p in held.given if (p.kind, p.position) == (kind, position)), None)
        if was is None:
            raise BankError(f"{learner.code} has no {slot} on {day}")
        draw = Draw(store, day, days.rules(), held.short)
        barred = _barred(draw, learner, held, was)
        circle = own(learner)
        if item:
            choice = _named(draw, circle, kind, item, barred)
        else:
            chosen = draw.choose(circle, kind, 1, Mixture(), frozenset(barred))
            if not chosen:
                raise BankError(f"the bank has no other {kind} that fits {learner.code} on {day}")
            choice = chosen[0]
        new = draw.give(learner, circle, kind, position, choice)
        new = replace(new, why={**new.why, "swapped": reason, "over": [was.item]})
        if held.state == "printed":
            new = replace(new, printed=snapshot(get_item(store, new.item), new))
        write_set(store, replace(held, given=tuple(new if p is was else p for p in held.given)))
        store.execute(
            "INSERT INTO swap (learner, day, was, now, reason, made) VALUES (?, ?, ?, ?, ?, ?)",
            (learner.number, day.isoformat(), was.item, new.item, reason, now()),
        )
    items = get_items(store, [was.item, new.item])
    return given_view(was, items), given_view(new, items)


def missed(days: Days, code: str, day: dt.date, kind: str) -> str:
    """The item that the others had on a day on which this learner was away."""
    learner = days.learners([code])[0]
    sets = day_sets(days.store, day)
    if learner.number in sets:
        raise BankError(f"{learner.code} had a set on {day}; nothing was missed")
    for one in sets.values():
        for part in one.given:
            if part.kind == kind:
                return part.item
    raise BankError(f"nobody had a {kind} on {day}")


def _barred(draw: Draw, learner: Learner, held: DaySet, was: Given) -> set[str]:
    """What may not come: the set itself, its twins, and what was swapped away before."""
    barred = {part.item for part in held.given}
    for part in held.given:
        if part is not was:
            barred |= set(twins_of(draw.store, part.item))
    rows = draw.store.rows(
        "SELECT was FROM swap WHERE learner = ? AND day = ?",
        (learner.number, draw.day.isoformat()),
    )
    return barred | {row[0] for row in rows}


def _named(draw: Draw, circle: Circle, kind: str, item: str, barred: set[str]) -> Choice:
    """The named item as a choice, if every rule lets this learner have it."""
    found = get_item(draw.store, item)
    code = circle.codes[0]
    if found.kind != kind:
        raise BankError(f"{item} is a {found.kind}, not a {kind}")
    candidate = unseen_item(draw.store, draw.want(circle, kind), item)
    if candidate is None or item in barred:
        raise BankError(
            f"{item} does not suit {code} on {draw.day}: a draft, too hard, out of season, seen"
            " before, a theme to avoid, or asked in other words lately"
        )
    return candidate, EASIER if candidate.grade < circle.low else IN_BAND, ()


def read_slot(slot: str) -> tuple[str, int]:
    """The kind and place that a slot's name says.

    >>> read_slot("question 2"), read_slot("q2"), read_slot("topic")
    (('question', 1), ('question', 1), ('topic', 0))
    """
    letters = slot.strip().lower().rstrip("0123456789").strip()
    digits = slot.strip()[len(slot.strip().rstrip("0123456789")) :]
    kind = _SLOT_NAMES.get(letters, letters)
    if kind not in SLOTS or digits == "0":
        raise BankError(f"{slot!r} is no place in a set; say question 2, sentence or topic")
    return kind, int(digits or 1) - 1
