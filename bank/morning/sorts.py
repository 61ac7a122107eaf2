"""Word sorts: made from a pattern, key and all, and the one that a day gives.

A sort is made once (which loads the pronunciations) and stored as plain values; everything that the
morning needs of it, and the rule "one sort for two school days, then another", starts without them.
"""

from __future__ import annotations

import random
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from bank.morning.patterns import Column, Pattern
    from bank.morning.sort_words import SortWord

FEWEST, MOST = 12, 18
ODD_HEADING = "odd one out"
READABLE = 4.0
"""Words learnt before the end of grade 3 (4.0 is where grade 4 begins)."""
DAYS_EACH = 2
_BLOCK = 3  # so many sorts take the easiest words before harder ones come


class NoSort(ValueError):
    """A sort that cannot be made; the message says of what there is too little."""


@dataclass(frozen=True, slots=True)
class SortColumn:
    """One column of the key."""

    heading: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WordSort:
    """A sort: its `pattern`'s code, a `title`, the `columns` of the key, and its `cards`.

    `cards` are all words in the order in which they are laid out to be cut. The last column may be
    the odd one out: words that are spelled like a column and do not sound like it.
    """

    pattern: str
    title: str
    columns: tuple[SortColumn, ...]
    cards: tuple[str, ...]

    @property
    def odd(self) -> tuple[str, ...]:
        """The odd ones out, if there are any."""
        last = self.columns[-1]
        return last.words if last.heading == ODD_HEADING else ()

    def column_of(self, word: str) -> str:
        """The heading under which `word` belongs."""
        return next(column.heading for column in self.columns if word in column.words)

    @property
    def text(self) -> str:
        """The words in one line, for lists and searches: what a learner reads.

        >>> WordSort("ch-sh", "ch or sh", (SortColumn("ch-", ("chin", "chop")),), ("chop", "chin")).text
        'chop, chin'
        """
        return ", ".join(self.cards)

    def to_dict(self) -> dict[str, Any]:
        return {
            "pattern": self.pattern,
            "title": self.title,
            "columns": [{"heading": c.heading, "words": list(c.words)} for c in self.columns],
            "cards": list(self.cards),
        }

    @classmethod
    def from_dict(cls, plain: Mapping[str, Any]) -> WordSort:
        columns = tuple(SortColumn(c["heading"], tuple(c["words"])) for c in plain["columns"])
        return cls(plain["pattern"], plain["title"], columns, tuple(plain["cards"]))


def pattern_codes() -> dict[str, str]:
    """The codes of all patterns with their titles, in the order in which they are usually taught."""
    from bank.morning.pattern_list import PATTERNS

    return {pattern.code: pattern.title for pattern in PATTERNS}


def make_sort(
    pattern: str,
    number: int = 0,
    size: int = FEWEST,
    odd: int = 0,
    grade: float = READABLE,
    without: Collection[str] = (),
) -> WordSort:
    """Sort number `number` of a pattern: the same number always gives the same sort.

    `size` words (12 to 18, without the odd ones) fall evenly into the columns; `odd` more are odd
    ones out. All words are learnt before `grade` and none is in `without`. Successive numbers take
    fresh words as long as there are some. The key is right by construction: a word goes under a
    column only when every pronunciation shows that column's pattern, and no other's.

    Raises `NoSort` where the pattern is unknown, the size is none, or words are too few.
    """
    if not FEWEST <= size <= MOST:
        raise NoSort(f"a sort has {FEWEST} to {MOST} words, not {size}")
    wanted = _pattern(pattern)
    pools = _pools(pattern, grade, frozenset(without))
    each = size // len(wanted.columns)
    spare = size - each * len(wanted.columns)
    columns: list[SortColumn] = []
    for place, (column, pool) in enumerate(zip(wanted.columns, pools, strict=True)):
        count = each + (place < spare)
        if len(pool) < count:
            raise NoSort(
                f"{wanted.title}: only {len(pool)} words under {column.heading!r} are known by "
                f"grade {grade:g}, and {count} are needed"
            )
        columns.append(SortColumn(column.heading, _window(pool, number, count, wanted.code)))
    if odd:
        columns.append(
            SortColumn(ODD_HEADING, _odd_ones(pattern, number, odd, grade, frozenset(without)))
        )
    cards = [word for column in columns for word in column.words]
    random.Random(f"{pattern} {number} cards").shuffle(cards)
    return WordSort(pattern, wanted.title, tuple(columns), tuple(cards))


def how_many(pattern: str, size: int = FEWEST, grade: float = READABLE) -> int:
    """How many different sorts of `size` words successive numbers give, counted up to 30."""
    found: set[frozenset[str]] = set()
    for number in range(30):
        try:
            found.add(frozenset(make_sort(pattern, number, size, grade=grade).cards))
        except NoSort:
            return 0
    return len(found)


def _pattern(code: str) -> Pattern:
    from bank.morning.pattern_list import BY_CODE

    if code not in BY_CODE:
        raise NoSort(f"there is no pattern {code!r}; the patterns are {', '.join(BY_CODE)}")
    return BY_CODE[code]


@lru_cache(maxsize=128)
def _pools(code: str, grade: float, without: frozenset[str]) -> tuple[tuple[str, ...], ...]:
    """For each column the words that show it and no other, one of each family, easiest first."""
    from bank.morning.sort_words import sort_words

    pattern = _pattern(code)
    able = [
        word
        for word in sort_words()
        if word.is_regular and word.learnt < grade and word.text not in without
    ]
    pools: list[tuple[str, ...]] = []
    families: set[str] = set()
    for column in pattern.columns:
        pool = []
        for word in able:
            others = (other for other in pattern.columns if other is not column)
            if word.family in families or not column.has(word):
                continue
            if not any(_shows_at_all(other, word) for other in others):
                pool.append(word.text)
                families.add(word.family)
        pools.append(tuple(pool))
    return tuple(pools)


def _shows_at_all(column: Column, word: SortWord) -> bool:
    return any(column.shows(word, reading) for reading in word.readings)


def _window(pool: Sequence[str], number: int, count: int, code: str) -> tuple[str, ...]:
    """`count` words of the pool, easy ones first; each number's begin where the last one's ended."""
    mixed: list[str] = []
    for block in range(0, len(pool), _BLOCK * count):
        words = list(pool[block : block + _BLOCK * count])
        random.Random(f"{code} {block}").shuffle(words)
        mixed += words
    rounds, start = divmod(number * count, len(mixed))
    # Each round through the pool begins one word later, so that the same sort does not come back.
    at = (start + rounds) % len(mixed)
    return tuple((mixed + mixed)[at : at + count])


def _odd_ones(
    code: str, number: int, count: int, grade: float, without: frozenset[str]
) -> tuple[str, ...]:
    pool = _odd_pool(code, grade, without)
    if len(pool) < count:
        title = _pattern(code).title
        if not pool:
            raise NoSort(f"{title}: no odd one out is known; leave --odd out")
        known = "1 odd one out is" if len(pool) == 1 else f"{len(pool)} odd ones out are"
        raise NoSort(f"{title}: only {known} known, not {count}; say --odd {len(pool)}")
    at = number * count % len(pool)
    return (pool + pool)[at : at + count]


@lru_cache(maxsize=128)
def _odd_pool(code: str, grade: float, without: frozenset[str]) -> tuple[str, ...]:
    """Words that look like one of the columns and show none, one of each family."""
    from bank.morning.sort_words import sort_words

    columns = _pattern(code).columns
    found: dict[str, str] = {}
    for word in sort_words():
        usable = word.learnt < grade and word.text not in without and not word.ending
        # A regular word that breaks no rule ("rain" among short vowels) is no odd one out.
        if not usable or word.beats != 1 or word.is_regular:
            continue
        looks = any(column.looks(word) for column in columns)
        heard = any(column.is_heard_in(word) for column in columns)
        if looks and not heard and not any(_shows_at_all(column, word) for column in columns):
            found.setdefault(word.family, word.text)
    return tuple(found.values())


def sort_of_the_day(
    given: Mapping[date, str],
    ready: Iterable[str],
    today: date,
    days_each: int = DAYS_EACH,
    also: Iterable[date] = (),
) -> str | None:
    """Which sort a learner has `today`: the same one for two school days, then another.

    `given` are the ids of the sorts of earlier days (and of today, where it was given already);
    `ready` are the ids of sorts under patterns that the learner has mastered, in the order in which
    they should come. The next one is the first that was never given, else the one given longest
    ago. None where nothing is ready. `also` are days that count without a sort given yet: the
    school days before one that is looked at ahead.

    >>> monday, tuesday, wednesday = date(2026, 9, 7), date(2026, 9, 8), date(2026, 9, 9)
    >>> sort_of_the_day({monday: "w1"}, ["w1", "w2"], tuesday)
    'w1'
    >>> sort_of_the_day({monday: "w1"}, ["w1", "w2"], wednesday, also=[tuesday])
    'w2'
    """
    if today in given:
        return given[today]
    choice = list(dict.fromkeys(ready))
    latest: dict[str, int] = {}
    last, running = None, 0

    def following() -> str | None:
        if last in choice and running < days_each:
            return last
        others = [one for one in choice if one != last] or choice
        return min(others, key=lambda one: (latest.get(one, -1), choice.index(one)), default=None)

    for at, day in enumerate(sorted(one for one in {*given, *also} if one < today)):
        item = given.get(day) or following()
        if item is not None:
            running = running + 1 if item == last else 1
            last = item
            latest[item] = at
    return following()
