"""The rest of the morning in the store: turns, books and baskets, and the sort of each day."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping

from bank.item import BankError
from bank.morning.reading import Basket, Book
from bank.morning.tally import Turn
from bank.store import Store, now

# Turns and baskets are kept by learners' numbers, so that a learner may have another code.


def codes_by_number(store: Store) -> dict[int, str]:
    return {row["number"]: row["code"] for row in store.rows("SELECT number, code FROM learner")}


def posted_turns(store: Store, first: dt.date | None = None) -> list[Turn]:
    """All turns that were given out, in order of day; from `first` on where it is given."""
    codes = codes_by_number(store)
    since = first.isoformat() if first else ""
    rows = store.rows("SELECT * FROM turn WHERE day >= ? ORDER BY day, job, instead_of", (since,))
    return [
        Turn(
            dt.date.fromisoformat(row["day"]),
            row["job"],
            codes[row["learner"]],
            codes.get(row["instead_of"], ""),
        )
        for row in rows
    ]


def post_turns(store: Store, turns: Iterable[Turn]) -> None:
    """Give out turns. What was given out before is never changed."""
    numbers = {code: number for number, code in codes_by_number(store).items()}
    rows = [
        (
            turn.day.isoformat(),
            turn.job,
            numbers[turn.learner],
            numbers.get(turn.instead_of, 0),
            now(),
        )
        for turn in turns
    ]
    with store.writing():
        store.execute_many("INSERT OR IGNORE INTO turn VALUES (?, ?, ?, ?, ?)", rows)


def take_back_turns(store: Store, first: dt.date) -> int:
    """Take back all turns from `first` on; returns how many."""
    with store.writing():
        return store.execute("DELETE FROM turn WHERE day >= ?", (first.isoformat(),))


def shelf_books(store: Store) -> list[Book]:
    """The books of the shelf, in order of their codes."""
    rows = store.rows("SELECT * FROM book ORDER BY code COLLATE NOCASE")
    return [Book(r["code"], r["title"], r["grade"], r["copies"], r["by"]) for r in rows]


def put_books(store: Store, books: Iterable[Book]) -> None:
    """Add books, or change those whose code is there already."""
    with store.writing():
        store.execute_many(
            "INSERT INTO book VALUES (?, ?, ?, ?, ?) ON CONFLICT (code) DO UPDATE SET"
            " title = excluded.title, grade = excluded.grade, copies = excluded.copies,"
            ' "by" = excluded."by"',
            [(book.code, book.title, book.grade, book.copies, book.by) for book in books],
        )


def remove_book(store: Store, code: str) -> None:
    with store.writing():
        if not store.execute("DELETE FROM book WHERE code = ?", (code,)):
            raise BankError(f"there is no book {code!r} on the shelf; see: binderbank shelf list")


def kept_baskets(store: Store) -> list[Basket]:
    """All baskets so far, by week and learner; books that left the shelf are still named."""
    codes = codes_by_number(store)
    found: dict[tuple[str, int], list[str]] = {}
    for row in store.rows("SELECT * FROM basket ORDER BY monday, learner, position"):
        found.setdefault((row["monday"], row["learner"]), []).append(row["book"])
    return [
        Basket(codes[learner], dt.date.fromisoformat(monday), tuple(books))
        for (monday, learner), books in found.items()
    ]


def keep_baskets(store: Store, baskets: Iterable[Basket]) -> None:
    numbers = {code: number for number, code in codes_by_number(store).items()}
    rows = [
        (numbers[basket.learner], basket.monday.isoformat(), position, book)
        for basket in baskets
        for position, book in enumerate(basket.books)
    ]
    with store.writing():
        store.execute_many("INSERT OR IGNORE INTO basket VALUES (?, ?, ?, ?)", rows)


def take_back_baskets(store: Store, monday: dt.date) -> int:
    """Empty the baskets of the week that begins on `monday`; returns how many books came back."""
    with store.writing():
        return store.execute("DELETE FROM basket WHERE monday = ?", (monday.isoformat(),))


def given_sorts(store: Store, learner: int) -> dict[dt.date, str]:
    """The sorts that a learner was given, by day."""
    rows = store.rows("SELECT day, item FROM sort_day WHERE learner = ? ORDER BY day", (learner,))
    return {dt.date.fromisoformat(row["day"]): row["item"] for row in rows}


def held_days(store: Store, learner: int) -> dict[dt.date, bool]:
    """The days on which a learner has a set, and whether it counts: False where it was not used."""
    rows = store.rows("SELECT day, state FROM day_set WHERE learner = ?", (learner,))
    return {dt.date.fromisoformat(row["day"]): row["state"] != "unused" for row in rows}


def give_sorts(store: Store, day: dt.date, sorts: Mapping[int, str]) -> None:
    """Keep which sort each learner (by number) has on `day`; what was given stays."""
    rows = [(learner, day.isoformat(), item) for learner, item in sorts.items()]
    with store.writing():
        store.execute_many("INSERT OR IGNORE INTO sort_day VALUES (?, ?, ?)", rows)
