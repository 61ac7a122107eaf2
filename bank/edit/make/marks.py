"""End marks, commas, talking marks, dots and apostrophes left out or wrong."""

from __future__ import annotations

from collections.abc import Iterator

from bank.edit.layers import is_contraction
from bank.edit.look import Change, Sentence
from bank.edit.make.spot import Spot, one
from bank.edit.rules_commas import COMMAS
from bank.edit.tokens import ABBREVIATIONS, END_MARKS, QUOTES


def end_marks(s: Sentence) -> Iterator[Spot]:
    """No end mark, or a full stop after a question.

    A question mark after a statement is never made: an echo may be asked.
    """
    for j, token in enumerate(s.c):
        if token.text not in END_MARKS:
            continue
        is_last = all(not t.is_word for t in s.c[j + 1 :])
        if is_last:
            yield one("end-mark", token.start, token.end, "")
        if token.text == "?":
            yield one("end-mark", token.start, token.end, ".")


def commas(s: Sentence) -> Iterator[Spot]:
    """A comma left out; in a list, date or place all of its commas."""
    groups: dict[str, list[int]] = {}
    for j, token in enumerate(s.c):
        if token.text != ",":
            continue
        change = Change("", ",", j, j, s)
        verdict = next(v for rule in COMMAS if (v := rule(change)) is not None)
        if not verdict.sure or verdict.skill == "quotation-marks":
            continue
        if verdict.skill in ("comma-list", "comma-date", "comma-place"):
            groups.setdefault(verdict.skill, []).append(j)
        else:
            yield one(verdict.skill, token.start, token.end, "")
    for skill, places in groups.items():
        # With the comma before "and" alone gone the sentence would still be right.
        if skill == "comma-list" and all(s.key(j + 1) in ("and", "or") for j in places):
            continue
        yield Spot(skill, tuple((s.c[j].start, s.c[j].end, "") for j in places))


def talking_marks(s: Sentence) -> Iterator[Spot]:
    """The marks around one speech left out, with or without its comma."""
    quotes = [j for j, token in enumerate(s.c) if token.text in QUOTES]
    for a, b in zip(quotes[::2], quotes[1::2], strict=False):
        edits = [(s.c[j].start, s.c[j].end, "") for j in (a, b)]
        yield Spot("quotation-marks", tuple(edits))
        commas_beside = [j for j in (a - 1, b - 1) if j >= 0 and s.c[j].text == ","]
        if commas_beside:
            extra = [(s.c[j].start, s.c[j].end, "") for j in commas_beside]
            yield Spot("quotation-marks", tuple(sorted(edits + extra)))


def dots(s: Sentence) -> Iterator[Spot]:
    """The dot of a short title left out."""
    for j, token in enumerate(s.c):
        if token.text.endswith(".") and token.key.rstrip(".") in ABBREVIATIONS and j + 1 < len(s.c):
            yield one("abbreviation", token.end - 1, token.end, "")


def apostrophes(s: Sentence) -> Iterator[Spot]:
    """An apostrophe left out, or on the wrong side of the n.

    The whole `'s` is never left out: `the school garden` is right too.
    """
    for j, token in enumerate(s.c):
        at = token.key.rfind("'")
        if at < 0:
            continue
        short = is_contraction(token.key, j, s)
        skill = "apostrophe-contraction" if short else "apostrophe-possessive"
        place = token.start + at
        yield one(skill, place, place + 1, "")
        if skill == "apostrophe-contraction" and token.key.endswith("n't") and len(token.key) > 4:
            yield one(skill, place - 1, place + 1, "'n")
