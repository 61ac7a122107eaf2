"""Use cases of quiet reading: the shelf, and each learner's basket of the week."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection
from typing import TYPE_CHECKING

from bank.calendar import monday_of
from bank.classroom_days import Days
from bank.item import BankError, clean_text
from bank.store import Store
from bank.store_morning import (
    keep_baskets,
    kept_baskets,
    put_books,
    remove_book,
    shelf_books,
    take_back_baskets,
)

if TYPE_CHECKING:
    from bank.morning.reading import Baskets, Book

BOOKS = "books"  # the setting that says how many books a basket has


class QuietReading:
    """The books of a bank and who has which this week."""

    def __init__(self, store: Store, days: Days) -> None:
        self.store = store
        self.days = days

    def shelf(self) -> list[Book]:
        return shelf_books(self.store)

    def put_book(
        self,
        title: str,
        grade: float | None = None,
        page: str = "",
        copies: int = 1,
        code: str = "",
    ) -> Book:
        """Put a book on the shelf; its level is the teacher's, or estimated from a typed page."""
        from bank.morning.reading import Book, book_level

        title = clean_text(title, "the title", 200)
        if grade is None and not page.strip():
            raise BankError("say the book's level, or give a typed page of it")
        try:
            found = book_level(page) if grade is None else grade
        except ValueError as error:
            raise BankError(str(error)) from error
        # A code that a basket once named is not given to another book.
        taken = {book.code.lower() for book in self.shelf()}
        taken |= {one.lower() for basket in kept_baskets(self.store) for one in basket.books}
        if not code:
            code = next(f"b{n}" for n in range(1, len(taken) + 2) if f"b{n}" not in taken)
        book = Book(code, title, found, copies, "teacher" if grade is not None else "page")
        put_books(self.store, [book])
        return book

    def remove_book(self, code: str) -> None:
        remove_book(self.store, code)

    def baskets(self, day: dt.date, size: int = 0) -> Baskets:
        """Fill the baskets of the week of `day`; those that were filled before stay as they are.

        They hold `size` books, or as many as was said the last time.
        """
        from bank.morning.reading import BASKET, weekly_baskets

        with self.store.writing():
            if size:
                self.store.set_setting(BOOKS, size)
            there = [one for one in self.days.learners() if one.in_class(day)]
            lows = {one.code: one.band.low for one in there}
            books = size or self.store.setting(BOOKS, BASKET)
            made = weekly_baskets(self.shelf(), lows, kept_baskets(self.store), day, books)
            keep_baskets(self.store, made.baskets)
        return made

    def told_baskets(self, day: dt.date) -> dict[str, list[str]]:
        """The titles in each basket as a page tells them: those still empty are filled for it.

        Nothing is filled in a week that is over, or before baskets that were given out for later.
        """
        monday = monday_of(day)
        latest = self.store.value("SELECT max(monday) FROM basket") or ""
        is_due = monday >= monday_of(dt.date.today()) and latest <= monday.isoformat()
        told = self.basket_titles(day)
        if is_due and self.store.writable and self._has_empty(told, day):
            self.baskets(day)
            told = self.basket_titles(day)
        return told

    def _has_empty(self, told: Collection[str], day: dt.date) -> bool:
        """Whether somebody here has no basket although there are books."""
        here = [one.code for one in self.days.learners() if not one.is_away(day)]
        shelf = self.store.value("SELECT 1 FROM book LIMIT 1")
        return bool(shelf) and any(code not in told for code in here)

    def basket_titles(self, day: dt.date) -> dict[str, list[str]]:
        """The titles in each learner's basket in the week of `day`, as far as it was given out."""
        monday = monday_of(day)
        if not self.store.value("SELECT 1 FROM basket WHERE monday = ?", (monday.isoformat(),)):
            return {}
        titles = {book.code: book.title for book in self.shelf()}
        return {
            basket.learner: [titles.get(code, code) for code in basket.books]
            for basket in kept_baskets(self.store)
            if basket.monday == monday
        }

    def empty_baskets(self, day: dt.date) -> int:
        """Take the baskets of the week of `day` back; returns how many books came back."""
        return take_back_baskets(self.store, monday_of(day))
