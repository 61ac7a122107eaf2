"""A bank as its three people use it: items, learners, days, marks. The room that joins the others."""

from __future__ import annotations

import functools
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any

from bank.classroom_days import Days
from bank.item import BankError
from bank.learner import (
    RESPONSE_MODES,
    SIGNS,
    SKILL_STATES,
    Learner,
    check_code,
    default_band,
    default_errors,
)
from bank.skill import skill
from bank.store import Store, create_store, find_path, open_store
from bank.store_sets import learners, write_learner

if TYPE_CHECKING:
    from bank.classroom_items import Items
    from bank.classroom_marks import Marks
    from bank.classroom_morning import Morning
    from bank.classroom_paper import Paper
    from bank.classroom_progress import Progress
    from bank.classroom_records import Records


def open_bank(
    path: str | Path | None = None, create: bool = False, for_others: bool = False
) -> Bank:
    """The bank at `path`, else at `BINDERBANK`, else in the user's data folder.

    `create` makes it where there is none. `BankError` says what is wrong with a file that is none.
    """
    found = find_path(path)
    if create and not found.exists():
        return Bank(create_store(found, for_others))
    return Bank(open_store(found))


class Bank:
    """An open bank; use it in a `with` block or close it."""

    def __init__(self, store: Store) -> None:
        self.store = store
        self.learners = Learners(store)
        self.days = Days(store)

    @functools.cached_property
    def items(self) -> Items:
        """The items; loaded when asked for, since the morning's commands go without."""
        from bank.classroom_items import Items

        return Items(self.store)

    @functools.cached_property
    def paper(self) -> Paper:
        """What is printed and shown; loaded when asked for."""
        from bank.classroom_paper import Paper

        return Paper(self.store, self.days)

    @property
    def has_morning(self) -> bool:
        """Whether jobs, sorts or books are kept; asked before the rooms that know them are loaded."""
        return bool(
            self.store.value(
                "SELECT 1 FROM setting WHERE key = 'turns' UNION SELECT 1 FROM item WHERE kind = 'sort'"
                " UNION SELECT 1 FROM book"
            )
        )

    @functools.cached_property
    def morning(self) -> Morning:
        """School days, turns, word sorts, quiet reading and the routine; loaded when asked for."""
        from bank.classroom_morning import Morning

        return Morning(self.store, self.days)

    @functools.cached_property
    def marks(self) -> Marks:
        """What learners did with their sets; loaded when asked for."""
        from bank.classroom_marks import Marks

        return Marks(self.store, self.days)

    @functools.cached_property
    def progress(self) -> Progress:
        """What the marks say; loaded when asked for."""
        from bank.classroom_progress import Progress

        return Progress(self.store, self.days)

    @functools.cached_property
    def records(self) -> Records:
        """Export, forget, backup and restore; loaded when asked for."""
        from bank.classroom_records import Records

        return Records(self.store, self.days)

    @property
    def path(self) -> Path:
        return self.store.path

    def draw(self, *args: Any, **named: Any) -> Any:
        """The sets of a day; see `Days.draw`."""
        return self.days.draw(*args, **named)

    def close(self) -> None:
        self.store.close()

    def __enter__(self) -> Bank:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()


class Learners:
    """The learners of a bank: codes and signs, no names."""

    def __init__(self, store: Store) -> None:
        self.store = store

    def __iter__(self) -> Iterator[Learner]:
        return iter(learners(self.store))

    def __len__(self) -> int:
        return len(learners(self.store))

    def get(self, code: str) -> Learner:
        for one in self:
            if one.code.lower() == code.strip().lower():
                return one
        raise BankError(f"there is no learner {code!r}; see: binderbank learner list")

    def add(self, code: str, taught: float, **settings: Any) -> Learner:
        """Add a learner by code and the reading grade at which they are taught.

        Settings are the fields of `Learner`; what is not given follows from the reading grade
        (common practice). A taken code is refused.
        """
        code = check_code(code)
        if any(one.code.lower() == code.lower() for one in self):
            raise BankError(f"the code {code} is taken; choose another")
        band = settings.pop("band", None) or default_band(taught)
        new = Learner(0, code, settings.pop("sign", "") or self._free_sign(), taught, band)
        settings.setdefault("errors", default_errors(band))
        write_learner(self.store, _checked(replace(new, **settings)))
        return self.get(code)

    def change(self, code: str, /, **settings: Any) -> Learner:
        """Change settings of a learner. A new reading grade moves the band unless one is given."""
        old = self.get(code)
        if "taught" in settings and "band" not in settings:
            settings["band"] = default_band(settings["taught"])
        if "code" in settings:
            settings["code"] = check_code(settings["code"])
        new = _checked(replace(old, **settings))
        write_learner(self.store, new)
        if (old.band, old.errors, old.mode, old.skills) != (
            new.band,
            new.errors,
            new.mode,
            new.skills,
        ):
            from bank.classroom_progress import note_change

            note_change(self.store, old, new)
        return self.get(new.code)

    def _free_sign(self) -> str:
        taken = {one.sign for one in self}
        return next((sign for sign in SIGNS if sign not in taken), SIGNS[len(taken) % len(SIGNS)])


def _checked(learner: Learner) -> Learner:
    """The learner, if every setting can be; `BankError` says which cannot."""
    if learner.mode not in RESPONSE_MODES:
        raise BankError(f"{learner.mode!r} is no response mode: {', '.join(RESPONSE_MODES)}")
    if not 0 <= learner.questions <= 20:
        raise BankError(f"a set has 0 to 20 questions, not {learner.questions}")
    if not 1 <= learner.errors <= 12:
        raise BankError(f"a sentence has 1 to 12 errors, not {learner.errors}")
    for code, state in learner.skills.items():
        try:
            skill(code)
        except ValueError as error:
            raise BankError(str(error)) from error
        if state not in SKILL_STATES:
            raise BankError(f"{state!r} is no state of a skill: {', '.join(SKILL_STATES)}")
    for away in learner.away:
        if away.last < away.first:
            raise BankError(
                f"away from {away.first} to {away.last}: the last day is before the first"
            )
    themes = tuple(sorted({theme.strip().lower() for theme in learner.avoid if theme.strip()}))
    return replace(learner, avoid=themes, group=learner.group.strip())


__all__ = ["Bank", "Learners", "open_bank"]
