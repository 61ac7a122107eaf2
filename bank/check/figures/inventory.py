"""The idioms: text files beside this module, read into patterns that a text is held against.

A line has up to four parts, divided by bars: the pattern, a plainer wording, what a literal reader
may picture, and words that decide between the two readings. In a pattern `x*` is any form of x,
`a/b` either word, `(x)` may be missing, `MY` is a possessive, `ME` a person or thing, `MYself` a
reflexive, `..` up to four words. After `-` stand words that show that it is meant as it says; after
`+` words of which one must be there for the figure. The inventory was written for this project.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from itertools import product

from bank.check.lexicon import lemmas, listed_words, word_set, zipf

FILES = ("idioms_body.txt", "idioms_animals_food.txt", "idioms_things.txt")
SLOTS = word_set("MY ME MYself ..")
_OPTIONAL = re.compile(r"\(([^()]*)\)")
_ANCHOR_LIMIT = 6.2
_SMALL = word_set(
    """a an the of in on to at up out off for and or be* be is are was it its all with from by
    not n't as like go* get* have* make* take* put* do* my your his her no one i you he she they
    me so that this what how who when if into over down away some any there here can could"""
)


@dataclass(frozen=True, slots=True)
class Idiom:
    """One entry: `pattern` as written, `plain` wording, `picture`, and deciding words."""

    pattern: str
    plain: str
    picture: str
    literal: frozenset[str]
    needs: frozenset[str]


@dataclass(frozen=True, slots=True)
class Shape:
    """One way in which an idiom can stand in a text.

    `parts` are sets of alternatives (a slot is its name alone), `anchor` is the part that is looked
    up first, `others` are the remaining parts with content, all of which the text must have.
    """

    idiom: Idiom
    parts: tuple[frozenset[str], ...]
    anchor: int
    others: tuple[frozenset[str], ...]


@lru_cache(maxsize=1)
def idioms() -> tuple[Idiom, ...]:
    """All entries, each pattern once."""
    entries: dict[str, Idiom] = {}
    for name in FILES:
        text = (files(__package__) / name).read_text(encoding="utf-8")
        for line in text.splitlines():
            if line.strip() and not line.startswith("#"):
                entry = _entry(line)
                # A figure may stand twice: once free, once only beside words that show it.
                entries.setdefault(f"{entry.pattern}|{bool(entry.needs)}", entry)
    return tuple(entries.values())


def _entry(line: str) -> Idiom:
    pattern, plain, picture, deciding = ([part.strip() for part in line.split("|")] + [""] * 3)[:4]
    words = frozenset(deciding[1:].split())
    return Idiom(
        pattern, plain, picture,
        words if deciding.startswith("-") else frozenset(),
        words if deciding.startswith("+") else frozenset(),
    )  # fmt: skip


@lru_cache(maxsize=1)
def shapes() -> dict[str, tuple[Shape, ...]]:
    """The shapes of all idioms by the keys of their anchors."""
    index: dict[str, list[Shape]] = {}
    for idiom in idioms():
        for words in _spellings(idiom.pattern):
            shape = _shape(idiom, words)
            if shape is not None:
                for key in shape.parts[shape.anchor]:
                    index.setdefault(key, []).append(shape)
    return {key: tuple(found) for key, found in index.items()}


def _spellings(pattern: str) -> list[list[str]]:
    """The pattern without its brackets, in every way of keeping or leaving what they hold."""
    pattern = pattern.replace(",", "")
    held = _OPTIONAL.findall(pattern)
    if not held:
        return [pattern.split()]
    ways = []
    for kept in product((True, False), repeat=len(held)):
        choice = iter(kept)
        words = _OPTIONAL.sub(lambda m, c=choice: m.group(1) if next(c) else "", pattern)  # type: ignore[misc]
        ways.append(words.split())
    return ways


def _shape(idiom: Idiom, words: list[str]) -> Shape | None:
    parts = tuple(frozenset(_key(word) for word in part.split("/")) for part in words)
    weights = [_commonness(part) for part in parts]
    if not parts or min(weights) > _ANCHOR_LIMIT:
        return None
    anchor = weights.index(min(weights))
    others = tuple(
        part for i, part in enumerate(parts) if i != anchor and weights[i] < _ANCHOR_LIMIT
    )
    return Shape(idiom, parts, anchor, others)


def _key(word: str) -> str:
    if word.endswith("*"):
        stem = word[:-1]
        if stem not in listed_words() and stem + "e" in listed_words():
            stem += "e"
        return stem + "*"
    return word


def _commonness(part: frozenset[str]) -> float:
    if part & SLOTS:
        return 9.0
    return max(8.5 if word in _SMALL else zipf(word.rstrip("*")) for word in part)


def keys_of(word: str) -> tuple[str, ...]:
    """The keys under which `word` can stand in a pattern: itself and its lemmas.

    >>> sorted(keys_of("kept"))
    ['keep*', 'kept', 'kept*']
    """
    keys = {word, word + "*"}
    for found in lemmas(word).values():
        keys.update(lemma + "*" for lemma in found)
    if word in _BE or word.endswith(("'s", "'re", "'m", "isn't", "wasn't", "aren't", "weren't")):
        keys.add("be*")
    if word.endswith("n't"):
        keys.add("n't")
    return tuple(keys)


_BE = word_set("am is are was were be been being")
