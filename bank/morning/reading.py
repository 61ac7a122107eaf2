"""Quiet reading: the shelf, and each learner's basket of the week.

A basket holds books at or below the low end of the learner's band, so that they can be read alone;
it changes every week, and no book comes twice to the same learner.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

from bank.calendar import monday_of
from bank.learner import grade_name

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

    `earlier` are the baskets so far; one of this very week stays as it is. Books are shared out in
    rounds, the learner with the fewest to choose from first, and each takes the hardest book that
    is still easy enough and new to them; where several are as hard, the one that the fewest others
    can read. A basket with fewer than `size` books is named in `short`.
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
    able = {
        learner: [b for b in books if b.grade <= lows[learner] and b.code not in read[learner]]
        for learner in due
    }
    wanted = Counter(book.code for learner in due for book in able[learner])
    taken: dict[str, list[str]] = {learner: [] for learner in due}
    for _ in range(size):
        for learner in sorted(due, key=lambda one: (len(able[one]), due.index(one))):
            free = [
                book
                for book in able[learner]
                if book.code not in taken[learner] and out[book.code] < book.copies
            ]
            if free:
                best = min(free, key=lambda book: (-book.grade, wanted[book.code], book.code))
                taken[learner].append(best.code)
                out[best.code] += 1
    short = tuple(
        f"{learner}: {len(taken[learner])} of {size} books; the shelf has no more that are new to "
        f"them, free this week, and at or below {grade_name(lows[learner])}"
        for learner in due
        if len(taken[learner]) < size
    )
    made = {learner: Basket(learner, monday, tuple(taken[learner])) for learner in due}
    return Baskets(tuple(standing.get(one) or made[one] for one in lows), short)


def book_level(page: str) -> float:
    """The level of a book from a typed sample page, as a reading grade (loads the parser)."""
    from bank.level import level_text

    return level_text(page, kind="passage").grade
