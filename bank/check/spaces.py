"""Spaces beside marks."""

from __future__ import annotations

import re

from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.reading import Reading

_BEFORE_A_MARK = re.compile(r"(?<=\w)( +)(?=[,;:!?]|\.(?!\.|\d|\w))")
_AFTER_A_MARK = re.compile(
    r"(?<=[a-z]{2})([.!?])(?=[A-Z][a-z]*(?:\s|$))|(?<=[a-z])([,;])(?=[A-Za-z])"
)
_TWICE = re.compile(r"(?<=\w)( {2,})(?=\w)")
_ADDRESS = re.compile(r"https?:|www\.|@")


@on_text()
def space_beside_a_mark(r: Reading) -> Found:
    """No space before a mark, one behind it, and one between words.

    >>> show("I like cats . We ran home.Then we ate.")
    ['spacing:   -> ', 'spacing: . -> . ']
    >>> show("It is 3.5 miles, at 10:30 a.m. or so. Wait ... I see it.")
    []
    """
    if _ADDRESS.search(r.text):
        return None
    found = [
        Finding("spacing", m.start(1), m.end(1), "No space stands before this mark.", "", True)
        for m in _BEFORE_A_MARK.finditer(r.text)
    ]
    for m in _AFTER_A_MARK.finditer(r.text):
        mark = m.group(1) or m.group(2)
        message = f"A space stands behind “{mark}”."
        found.append(Finding("spacing", m.start(), m.end(), message, f"{mark} ", True))
    found += [
        Finding("spacing", m.start(1), m.end(1), "One space is enough.", " ", False)
        for m in _TWICE.finditer(r.text)
    ]
    return found
