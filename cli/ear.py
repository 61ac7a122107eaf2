"""`level --calibrate`: which of two prompts is harder to read? The bank's levels follow the answers."""

from __future__ import annotations

import sys
from collections.abc import Sequence
from random import Random

from bank.classroom import Bank
from bank.item import BankError, Item
from bank.level import level_many, parts_of
from bank.level.ear import (
    ENOUGH_ANSWERS,
    Answer,
    Ear,
    Heard,
    agreement,
    fit,
    held_aside,
    next_pair,
)
from cli.common import DONE, print_json, progress, say, use_bank

MOST_PROMPTS = 240
_ASK = "which is harder to read? 1, 2, s to skip, q to stop: "


def calibrate(as_json: bool) -> int:
    """Ask for judgements until there are enough, then re-anchor the bank's levels to them."""
    with use_bank() as bank:
        items = _prompts(bank)
        if len(items) < 2:
            raise BankError("there are too few prompts to compare; add or import some first")
        heard = _heard(items)
        keys = {one.key for one in heard}
        answers = [Answer(*pair) for pair in bank.items.ear_answers if keys.issuperset(pair)]
        before = len(answers)
        _ask_pairs(heard, {item.id: item.text for item in items}, answers, quiet=as_json)
        enough = len(answers) >= ENOUGH_ANSWERS
        ear = fit(heard, answers) if enough else bank.items.ear
        bank.items.hear([(one.harder, one.easier) for one in answers], ear)
        if enough and len(answers) > before:
            with progress("bringing the items to your scale", bank.items.stale()) as step:
                bank.items.relevel(progress=step)
    _report(heard, answers, ear if enough else None, as_json)
    return DONE


def _prompts(bank: Bank) -> list[Item]:
    """The prompts to compare: the ones judged before, and others, by chance but always the same."""
    judged = {key for pair in bank.items.ear_answers for key in pair}
    items = [item for item in bank.items if item.kind != "sort" and item.state != "retired"]
    items.sort(key=lambda item: (item.id not in judged, Random(item.id).random()))
    return items[: max(MOST_PROMPTS, len(judged))]


def _heard(items: Sequence[Item]) -> list[Heard]:
    levels = level_many((item.text, item.kind) for item in items)
    return [
        Heard(item.id, level.grade, parts_of(item.text, item.kind))
        for item, level in zip(items, levels, strict=True)
    ]


def _ask_pairs(
    heard: Sequence[Heard], texts: dict[str, str], answers: list[Answer], quiet: bool
) -> None:
    """Ask until it is enough or the person stops; each answer is added to `answers`."""
    skipped: list[Answer] = []
    left = max(10, ENOUGH_ANSWERS - len(answers))
    while left > 0:
        pair = next_pair(heard, answers, skipped)
        if pair is None:
            if not quiet:
                say("")
                say("no pairs are left; with more prompts in the bank there are more")
            return
        # Which of the two comes first is by chance, so that a habit of saying "1" tells nothing.
        first, second = pair if Random("/".join(pair)).random() < 0.5 else pair[::-1]
        said = _asked(texts[first], texts[second], left, quiet)
        if said == "q":
            return
        if said == "s":
            skipped.append(Answer(first, second))
            if len(skipped) > ENOUGH_ANSWERS:
                return
            continue
        answers.append(Answer(first, second) if said == "1" else Answer(second, first))
        left -= 1


def _asked(first: str, second: str, left: int, quiet: bool) -> str:
    if not quiet:
        say("")
        say(f"  1  {first}")
        say(f"  2  {second}")
    while True:
        if not quiet:
            sys.stdout.write(f"({left} to go) {_ASK}")
            sys.stdout.flush()
        line = sys.stdin.readline()
        if not line:
            return "q"
        if line.strip().lower() in ("1", "2", "s", "q"):
            return line.strip().lower()
        if not quiet:
            say(f"  {line.strip()[:20]!r} is no answer here; say 1 or 2, or s or q")


def _report(heard: list[Heard], answers: list[Answer], ear: Ear | None, as_json: bool) -> None:
    learnt_from, aside = held_aside(answers)
    before = agreement(heard, aside)
    after = agreement(heard, aside, fit(heard, learnt_from))
    if as_json:
        print_json(
            {
                "answers": len(answers),
                "aside": len(aside),
                "agreement_before": before,
                "agreement_after": after,
                "weights": dict(ear.weights) if ear else {},
                "re_anchored": ear is not None,
            }
        )
        return
    say("")
    if ear is None:
        left = ENOUGH_ANSWERS - len(answers)
        say(f"{len(answers)} answers kept; {left} more and the levels follow your judgement")
        return
    say(
        f"of {len(aside)} answers kept aside, the computed levels agreed with {before:.0%}, "
        f"your scale with {after:.0%}"
    )
    for name, weight in sorted(ear.weights.items(), key=lambda pair: -abs(pair[1])):
        if abs(weight) >= 0.05:
            more = "more" if weight > 0 else "less"
            say(f"  {name} weigh{'' if name == 'words' else 's'} {abs(weight):.0%} {more} for you")
    say("the bank's levels follow your judgement; your own placements stay as they are")
