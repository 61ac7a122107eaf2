"""Commas: in lists, dates and places, before a joining word."""

from __future__ import annotations

import re

from bank.check import names
from bank.check.clauses import SUBORDINATE
from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    FUNCTION,
    MODALS,
    OBJECTS,
    PREPOSITIONS,
    SUBJECTS,
    Phrase,
    is_noun,
    noun_phrase,
)  # fmt: skip
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_MONTH = "January|February|March|April|May|June|July|August|September|October|November|December"
_DATE = re.compile(rf"\b((?:{_MONTH}) \d{{1,2}}(?:st|nd|rd|th)?)( )(\d{{4}})\b", re.IGNORECASE)
_DAY = re.compile(rf"\b((?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day)( )((?:{_MONTH}) \d{{1,2}})\b")
_TWO_WORD = ("new york", "new mexico", "new jersey", "new hampshire", "north carolina", "south carolina",
             "north dakota", "south dakota", "west virginia", "rhode island")  # fmt: skip


@on_text()
def date_without_comma(r: Reading) -> Found:
    """A comma between the day and the year, and after the name of the day.

    >>> show("She was born on June 3 2015.")
    ['comma-date:   -> , ']
    """
    if not any(c.isdigit() for c in r.text):
        return None
    return [
        Finding("comma-date", m.start(2), m.end(2), "Put a comma between the parts of a date.", ", ", True)
        for pattern in (_DATE, _DAY) for m in pattern.finditer(r.text)
    ]  # fmt: skip


@on_text()
def place_without_comma(r: Reading) -> Found:
    """A comma between the town and the state or country.

    >>> show("We live in Austin Texas.")
    ['comma-place:   -> , ']
    """
    found = []
    for i in range(1, r.n):
        word = r.lower[i]
        if not r.words[i][0].isupper() or r.gap[i - 1] != " " or not r.words[i - 1][0].isupper():
            continue
        k = i
        if word in names.STATES | names.COUNTRIES:
            pair = f"{r.lower[i - 1]} {word}"
            if pair in _TWO_WORD:
                k = i - 1
            elif word in ("york", "jersey", "carolina", "dakota", "hampshire"):
                continue
        elif f"{word} {r.after(i)}" in _TWO_WORD:
            k = i
        else:
            continue
        town = k - 1
        if (
            town < 0
            or r.gap[town] != " "
            or not r.words[town][0].isupper()
            or r.lower[town] in _NO_TOWN
        ):
            continue
        if r.first[town] and r.lower[town] not in names.CITIES or r.lower[town] in FUNCTION:
            continue
        if r.lower[town] in names.MONTHS | names.DAYS | names.PEOPLES or "'" in r.words[town]:
            continue
        after = r.after(k)
        if (
            after
            and r.words[k + 1][0].isupper()
            and after not in ("i",)
            and k == i
            and f"{word} {after}" not in _TWO_WORD
        ):
            continue
        if r.lower[town] in names.PEOPLE and r.lower[town] not in names.CITIES:
            continue
        if word in ("washington", "georgia", "virginia", "jordan", "dakota") and r.lower[town] in (
            "george",
            "martha",
        ):
            continue
        gap = r.ends[town]
        found.append(
            Finding(
                "comma-place",
                gap,
                gap + 1,
                "Put a comma between the town and the state or country.",
                ", ",
                r.lower[town] in names.CITIES
                or r.before(town) in ("in", "to", "from", "near", "at"),
            )
        )
    return found


_STREET = re.compile(
    r"\b(\d+ (?:[A-Z]\w+ )+(?:Street|Lane|Road|Avenue|Drive|Court|Way|Place|Boulevard|St\.|Ave\.|Rd\.))( )(?=[A-Z])"
)


@on_text()
def street_without_comma(r: Reading) -> Found:
    """A comma between the street and the town.

    >>> show("The pool is at 9 Mill Street Pebble Bend.")
    ['comma-place:   -> , ']
    """
    return [
        Finding(
            "comma-place",
            m.start(2),
            m.end(2),
            "Put a comma between the street and the town.",
            ", ",
            True,
        )
        for m in _STREET.finditer(r.text)
    ]


_NO_TOWN = word_set(
    "new north south east west central northern southern eastern western lake mount upper lower "
    "aunt uncle miss mr mrs ms dr president great"
)


_BETWEEN_JOIN_AND_SUBJECT = word_set("then first now today later soon once also finally")
_STOPS_A_JOIN = word_set(
    "when if because while after before that what how where who until as why which since both "
    "between"
)
_SHARES = word_set("most some many all none hundreds thousands dozens several few")
_SO_BELONGS = word_set("is was are think and ever be hope")


@on_words("and but so or yet")
def joined_without_comma(r: Reading, i: int) -> Found:
    """A comma before the word that joins two whole sentences.

    >>> show("I wanted to play outside but it was raining.")
    ['comma-join: outside -> outside,']
    """
    if i < 2 or not r.near(i - 1) or not r.near(i) or r.kind == "topic":
        return None
    word = r.lower[i]
    j = i + 1
    while r.lower[j] in _BETWEEN_JOIN_AND_SUBJECT and r.near(j):
        j += 1
    if word == "so" and (r.lower[j] == "that" or r.lower[i - 1] in _SO_BELONGS):
        return None
    if word == "yet" and (r.lower[j] not in SUBJECTS or r.before(i) in ("not", "and", "but")):
        return None
    phrase = noun_phrase(r, j)
    if r.lower[j] in _SHARES and r.after(j) == "of":
        whole = r.lower[j + 2] if j + 2 < r.n else ""
        phrase = (
            Phrase(j, j + 2, j, True, True) if whole in OBJECTS else noun_phrase(r, j + 2)
        )  # fmt: skip
    if phrase is None or phrase.last + 1 >= r.n or not r.near(phrase.last):
        return None
    if not _finite_behind(r, phrase.last + 1):
        return None
    start = next((s for s, e in r.sentences if s <= i < e), 0)
    if r.lower[start] in AUXILIARIES:
        return None
    if word == "so" and r.lower[phrase.last + 1] in MODALS:
        # "I moved so she could see": so that she could.
        return None
    stops = _STOPS_A_JOIN
    if word in ("but", "so", "yet") and r.lower[start] not in SUBORDINATE:
        stops = stops - word_set("that what who how where when as while after before until since")
    if not _has_subject_and_verb(r, start, i) or not stops.isdisjoint(r.lower[start:i]):
        return None
    if (
        word in ("and", "or")
        and is_noun(r.lower[i - 1])
        and r.lower[j] not in SUBJECTS
        and not _same_verb(r, i, phrase.last + 1)
    ):
        return None
    certain = word == "but" and i - start >= 4 and phrase.first == phrase.last
    return at(
        r, i - 1, "comma-join", "Put a comma before the word that joins two sentences.",
        r.words[i - 1] + ",", certain,
    )  # fmt: skip


def _finite_behind(r: Reading, v: int) -> bool:
    """Whether a finite verb stands at `v`, after adverbs and the phrases of its subject."""
    while v < r.n - 1 and r.near(v) and (r.tag[v] == "RB" or r.lower[v] in ("both", "all")):
        v += 1
    while v < r.n - 2 and r.lower[v] in PREPOSITIONS and r.near(v):
        inner = noun_phrase(r, v + 1)
        if inner is None or inner.last + 1 >= r.n:
            return False
        v = inner.last + 1
    word = r.lower[v]
    if word in AUXILIARIES:
        return word not in ("be", "been", "being")
    return r.tag[v] in ("VBD", "VBZ", "VBP", "MD") and word not in FUNCTION


def _same_verb(r: Reading, i: int, v: int) -> bool:
    """Whether the parse sees the verb at `v` as a second clause and not as part of a list of things."""
    return any(
        r.head[k] == m
        for m in range(v, min(r.n, v + 3))
        for k in range(i + 1, v)
        if r.dep[k] in ("nsubj", "nsubjpass", "expl")
    )


def _has_subject_and_verb(r: Reading, start: int, i: int) -> bool:
    return any(r.dep[k] in ("nsubj", "nsubjpass", "expl") for k in range(start, i)) and any(
        r.tag[k] in ("VBD", "VBZ", "VBP", "MD") for k in range(start, i)
    )
