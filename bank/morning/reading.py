"""Quiet reading: the shelf, and each learner's basket of the week.

A basket holds books at or below the low end of the learner's band, so that they can be read alone;
it changes every week, and no book comes twice to the same learner.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

from bank.calendar import monday_of
from bank.learner import grade_word

BASKET = 4
"""Books in a basket, unless the teacher says otherwise: common practice."""


@dataclass(frozen=True, slots=True)
class Book:
    """A book of the shelf: `grade` is its level as a reading grade, `copies` how many there are.

    `by` says where the level is from: "teacher", or "page" for one estimated from a typed page.
    """

    code: str
    title: str
    grade: float
    copies: int = 1
    by: str = "teacher"

    def to_dict(self) -> dict[str, Any]:
        return asdict(self)

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> Book:
        return cls(**plain)


@dataclass(frozen=True, slots=True)
class Basket:
    """The books that a learner has in the week that begins on `monday`."""

    learner: str
    monday: date
    books: tuple[str, ...]

    def to_dict(self) -> dict[str, Any]:
        return {
            "learner": self.learner,
            "monday": self.monday.isoformat(),
            "books": list(self.books),
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> Basket:
        monday = date.fromisoformat(plain["monday"])
        return cls(plain["learner"], monday, tuple(plain["books"]))


@dataclass(frozen=True, slots=True)
class Baskets:
    """The baskets of one week, and for each that is short a sentence that says of what."""

    baskets: tuple[Basket, ...]
    short: tuple[str, ...]


def weekly_baskets(
    shelf: Iterable[Book],
    lows: Mapping[str, float],
    earlier: Iterable[Basket],
    day: date,
    size: int = BASKET,
) -> Baskets:
    """The baskets of the week of `day` for the learners of `lows` (the low ends of their bands).

    `earlier` are the baskets so far; one of this very week stays as it is. Those with the least
    choice come first: who may read the fewest books of the shelf, until their baskets are full, and
    only then who may read more. Those who may read the same books take one each in turn, the one
    with the fewest new ones first. Each takes the hardest book that is still easy enough and new to
    them, unless another would be short without it; where several are as hard, the one that the
    fewest others can read. A basket with fewer than `size` books is named in `short`.
    """
    monday = monday_of(day)
    books = sorted(shelf, key=lambda book: book.code)
    read: dict[str, set[str]] = defaultdict(set)
    standing: dict[str, Basket] = {}
    out: Counter[str] = Counter()
    for basket in earlier:
        if basket.monday == monday:
            standing[basket.learner] = basket
            out.update(basket.books)
        read[basket.learner].update(basket.books)
    due = [learner for learner in lows if learner not in standing]
    may = {learner: [book for book in books if book.grade <= lows[learner]] for learner in due}
    new = {one: [book for book in may[one] if book.code not in read[one]] for one in due}
    wanted = Counter(book.code for learner in due for book in new[learner])
    taken: dict[str, list[str]] = {learner: [] for learner in due}

    def free(learner: str) -> list[Book]:
        """The books that this learner may still take, the best one first."""
        left = [
            book
            for book in new[learner]
            if book.code not in taken[learner] and out[book.code] < book.copies
        ]
        return sorted(left, key=lambda book: (-book.grade, wanted[book.code], book.code))

    def needed(others: Iterable[str]) -> set[str]:
        """The last copies of books without which one of these will be short."""
        return {
            book.code
            for other in others
            if len(left := free(other)) <= size - len(taken[other])
            for book in left
            if out[book.code] + 1 == book.copies
        }

    for choice in sorted({len(may[learner]) for learner in due}):
        alike = [learner for learner in due if len(may[learner]) == choice]
        alike.sort(key=lambda learner: len(new[learner]))
        for _ in range(size):
            for learner in alike:
                left = free(learner)
                if left:
                    others = needed(one for one in alike if one != learner)
                    best = min(left, key=lambda book: book.code in others)
                    taken[learner].append(best.code)
                    out[best.code] += 1
    short = tuple(
        _is_short(learner, len(taken[learner]), size, lows[learner])
        for learner in due
        if len(taken[learner]) < size
    )
    made = {learner: Basket(learner, monday, tuple(taken[learner])) for learner in due}
    return Baskets(tuple(standing.get(one) or made[one] for one in lows), short)


def _is_short(learner: str, count: int, size: int, low: float) -> str:
    """What is missing and what to do, in one line of a screen; the level is never above `low`."""
    level = grade_word(math.floor(low * 10 + 1e-6) / 10)
    said = f"{learner}: {count} of {size} books; add one: "
    return f"{said}binderbank shelf add TITLE --level {level}"


def book_level(page: str) -> float:
    """The level of a book from a typed sample page, as a reading grade (loads the parser)."""
    from bank.level import level_text

    return level_text(page, kind="passage").grade
