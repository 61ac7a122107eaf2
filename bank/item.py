"""What a learner can be given: items, their seasons and the rules of their text."""

from __future__ import annotations

import datetime as dt
import re
import unicodedata
from dataclasses import dataclass, field
from typing import Any

KINDS = ("question", "sentence", "topic", "sort")
STATES = ("draft", "ready", "retired")
QUESTION_WORDS = (
    "who",
    "what",
    "where",
    "when",
    "why",
    "how",
    "which",
    "yes-no",
    "choice",
    "tell",
)
FAMILIES = ("theme", "season", "question-word", "skill", "note")
LONGEST_TEXT = 300
_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9_.-]{0,39}")
_ID_LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"
_SEASON = re.compile(r"(\d\d)-(\d\d)\.\.(\d\d)-(\d\d)")
# What word processors put into a text unseen: soft hyphens, zero-width spaces, marks of direction. The
# two joiners stay between two symbols, where they make one picture sign out of several.
_UNSEEN = re.compile(
    "[\u00ad\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]"
    "|[\u200c\u200d](?![^\\w\\s\u0300-\u036f])|(?<![^\\w\\s\u0300-\u036f])[\u200c\u200d]"
)
_HYPHENS = str.maketrans("\u2010\u2011", "--")


class BankError(ValueError):
    """Something that was refused: one clear line that says what is wrong and what to do."""


def as_seen(text: str) -> str:
    """`text` without characters that nobody sees, and with one hyphen for those that look the same.

    >>> as_seen("twenty\\u2011two straw\\u00adberries\\u200b")
    'twenty-two strawberries'
    """
    return text if text.isascii() else _UNSEEN.sub("", text).translate(_HYPHENS)


def clean_text(text: str, what: str = "the text", longest: int = LONGEST_TEXT) -> str:
    """`text` as the bank keeps it: NFC, one line, as it is seen, 1 to `longest` characters.

    Raises `BankError` for an empty text, one that is too long, or one with control characters.
    """
    text = unicodedata.normalize("NFC", as_seen(text)).strip()
    if "\n" in text or "\r" in text:
        raise BankError(f"{what} has more than one line; an item is one line")
    if any(unicodedata.category(letter) in ("Cc", "Cs", "Co") for letter in text):
        raise BankError(f"{what} has a control character; type it again as plain text")
    text = " ".join(text.split())
    if not text:
        raise BankError(f"{what} is empty")
    if len(text) > longest:
        raise BankError(f"{what} has {len(text)} characters; {longest} is the most")
    return text


def fold_text(text: str) -> str:
    """The form under which two texts are the same text: case, spacing and end mark aside.

    >>> fold_text("Do you  like cats?") == fold_text("do you like cats")
    True
    """
    folded = " ".join(unicodedata.normalize("NFC", text).casefold().split())
    return folded.replace("\u2019", "'").rstrip(" .?!\u2026") or folded


def new_id() -> str:
    """A random id that never changes, easy to read out: seven letters and digits."""
    import secrets

    return "".join(secrets.choice(_ID_LETTERS) for _ in range(7))


def check_id(item_id: str) -> str:
    """`item_id` if it can be one; letters, digits, `.`, `_` and `-`, 40 at most."""
    if not _ID.fullmatch(item_id):
        raise BankError(
            f"{item_id[:45]!r} cannot be an id: letters, digits, . _ - only, at most 40"
        )
    return item_id


@dataclass(frozen=True, slots=True, order=True)
class Season:
    """The days of the year from `first` to `last` (month * 100 + day), which may wrap the new year."""

    first: int
    last: int

    @classmethod
    def parse(cls, text: str) -> Season:
        """The season written `MM-DD..MM-DD`; `BankError` where it is not one.

        >>> Season.parse("12-01..02-28").includes(dt.date(2026, 1, 15))
        True
        """
        match = _SEASON.fullmatch(text.strip())
        if match:
            parts = [int(part) for part in match.groups()]
            if all(_is_month_day(*parts[i : i + 2]) for i in (0, 2)):
                return cls(parts[0] * 100 + parts[1], parts[2] * 100 + parts[3])
        raise BankError(f"{text!r} is no season; write MM-DD..MM-DD, such as 12-01..02-28")

    def includes(self, day: dt.date) -> bool:
        today = month_day(day)
        if self.first <= self.last:
            return self.first <= today <= self.last
        return today >= self.first or today <= self.last

    def __str__(self) -> str:
        first, last = (f"{md // 100:02}-{md % 100:02}" for md in (self.first, self.last))
        return f"{first}..{last}"


def _is_month_day(month: int, day: int) -> bool:
    try:
        dt.date(2024, month, day)  # a leap year: 02-29 is a day
    except ValueError:
        return False
    return True


def month_day(day: dt.date) -> int:
    """The day of the year as month * 100 + day, which orders days within a year."""
    return day.month * 100 + day.day


@dataclass(frozen=True, slots=True)
class Version:
    """One faulty version of a sentence with the fixes that repair it (plain dicts, left to right)."""

    faulty: str
    fixes: tuple[dict[str, Any], ...] = ()


@dataclass(frozen=True, slots=True)
class Item:
    """One thing that a learner can be given.

    `grade`, `low`, `high` are the computed level in reading grades; `level_as` is a specialist's own
    placement, which outranks it. `findings` are what the check found, as plain dicts; `twins` are the ids of items that
    ask the same (the store keeps them as pairs).
    """

    id: str
    kind: str
    text: str
    state: str = "draft"
    answer: str = ""
    choices: tuple[str, ...] = ()
    starter: str = ""
    words: tuple[str, ...] = ()
    picture: str = ""
    versions: tuple[Version, ...] = ()
    themes: tuple[str, ...] = ()
    seasons: tuple[Season, ...] = ()
    question_word: str = ""
    notes: tuple[str, ...] = ()
    source: str = ""
    author: str = ""
    grade: float | None = None
    low: float | None = None
    high: float | None = None
    level_as: float | None = None
    formulas: tuple[dict[str, Any], ...] = ()
    reasons: tuple[dict[str, Any], ...] = ()
    findings: tuple[dict[str, Any], ...] = ()
    ask: Any = None
    twins: tuple[str, ...] = ()
    method: str = ""
    as_is: str = ""
    objection: str = ""
    sort: dict[str, Any] = field(default_factory=dict)
    history: tuple[str, ...] = ()
    changed: str = ""

    @property
    def reading_grade(self) -> float | None:
        """The level that counts: the specialist's placement where there is one."""
        return self.grade if self.level_as is None else self.level_as

    @property
    def skills(self) -> tuple[str, ...]:
        """The skills that the fullest faulty version repairs, in the order of the text, once each."""
        if not self.versions:
            return ()
        fullest = max(self.versions, key=lambda version: len(version.fixes))
        return tuple(dict.fromkeys(fix["skill"] for fix in fullest.fixes))

    def in_season(self, day: dt.date) -> bool:
        return not self.seasons or any(season.includes(day) for season in self.seasons)


_FIRST_WORDS = {
    "who": ("who", "whose", "whom"),
    "what": ("what", "what's"),
    "where": ("where",),
    "when": ("when",),
    "why": ("why",),
    "how": ("how",),
    "which": ("which",),
    "tell": ("tell", "name", "write", "list", "describe", "draw", "say"),
}


def question_word_of(text: str) -> str:
    """The question word of a question as its wording shows it; a tag of the specialist outranks it.

    >>> question_word_of("At the fair, what is your favorite game?")
    'what'
    >>> question_word_of("Is the soup hot or cold?")
    'choice'
    """
    words = re.findall(r"[a-z']+", text.lower().replace("\u2019", "'"))
    for code, forms in _FIRST_WORDS.items():
        if words and words[0] in forms:
            return code
    if "or" in words and text.rstrip().endswith("?"):
        return "choice"
    asked = [w for w in words if any(w in forms for forms in list(_FIRST_WORDS.values())[:7])]
    comma = text.find(",")
    if comma > 0 and asked:
        opening = re.findall(r"[a-z']+", text[comma:].lower())
        for code, forms in _FIRST_WORDS.items():
            if opening and opening[0] in forms:
                return code
    return "yes-no" if text.rstrip().endswith("?") else "tell"
