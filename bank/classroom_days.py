"""Use cases of the morning: draw, look, print, swap, give back, and the answer key.

Nothing here loads spaCy, textstat, numpy, sqlite-utils or a typesetter: what is slow was computed
when the items were added.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from bank.calendar import SchoolCalendar
from bank.choose.rules import DEFAULT_SCOPES, DEFAULT_SHORT, SLOTS, TWIN_DAYS, Rules
from bank.item import BankError, Item, Version
from bank.learner import Learner, somebody_in_class
from bank.store import Store
from bank.store_items import get_items
from bank.store_sets import (
    DaySet,
    Given,
    day_sets,
    learners,
    remove_set,
    write_set,
)


@dataclass(slots=True, eq=False)
class GivenView:
    """One item of a set as a page shows it: as printed where it was printed, else as it stands."""

    kind: str
    position: int
    item: str
    rung: int
    why: dict[str, Any]
    text: str
    themes: tuple[str, ...]
    question_word: str
    grade: float
    low: float
    high: float
    placed: bool
    answer: str
    choices: tuple[str, ...]
    starter: str
    words: tuple[str, ...]
    picture: str
    faulty: str
    fixes: tuple[dict[str, Any], ...]
    findings: tuple[dict[str, Any], ...]
    # The version with all errors, where the learner's own has only some of them.
    whole: dict[str, Any] | None = None

    def to_dict(self) -> dict[str, Any]:
        return {name: getattr(self, name) for name in self.__slots__ if name != "whole"}


@dataclass(slots=True, eq=False)
class SetView:
    """One learner's set of a day."""

    learner: Learner
    day: dt.date
    state: str
    short: bool
    notes: tuple[str, ...]
    given: tuple[GivenView, ...]

    def of(self, kind: str) -> list[GivenView]:
        return [part for part in self.given if part.kind == kind]

    def to_dict(self) -> dict[str, Any]:
        return {
            "learner": self.learner.code,
            "day": self.day.isoformat(),
            "state": self.state,
            "short": self.short,
            "notes": list(self.notes),
            "items": [part.to_dict() for part in self.given],
        }


@dataclass(slots=True, eq=False)
class KeySentence:
    """One sentence of the day on the answer key.

    `versions` are the faulty versions that were given, the fullest first, each with the numbers of
    its fixes in `fixes` and the codes of the learners who have it.
    """

    item: str
    corrected: str
    fixes: tuple[dict[str, Any], ...]
    versions: tuple[tuple[str, tuple[int, ...], tuple[str, ...]], ...]


@dataclass(slots=True, eq=False)
class KeyAnswer:
    """A question with an expected answer, and who has it."""

    item: str
    text: str
    answer: str
    choices: tuple[str, ...]
    learners: tuple[str, ...]


@dataclass(slots=True, eq=False)
class Key:
    """The answer key of a day."""

    day: dt.date
    sentences: tuple[KeySentence, ...]
    answers: tuple[KeyAnswer, ...]


class Days:
    """The school days of a bank: what each learner is given."""

    def __init__(self, store: Store) -> None:
        self.store = store

    def calendar(self) -> SchoolCalendar:
        plain = self.store.setting("calendar")
        return SchoolCalendar.from_dict(plain) if plain else SchoolCalendar()

    def rules(self) -> Rules:
        """The settings of the draw."""
        kept = self.store.setting("draw", {})
        return Rules(
            calendar=self.calendar(),
            scopes={**DEFAULT_SCOPES, **kept.get("scopes", {})},
            twin_days=kept.get("twin_days", TWIN_DAYS),
            sentences=kept.get("sentences", 1),
            topics=kept.get("topics", 1),
            short={**DEFAULT_SHORT, **kept.get("short", {})},
        )

    def learners(self, codes: Sequence[str] = ()) -> list[Learner]:
        """All learners, or those with these codes; `BankError` for a code that nobody has."""
        known = learners(self.store)
        if not codes:
            return known
        by_code = {one.code.lower(): one for one in known}
        for code in codes:
            if code.lower() not in by_code:
                named = ", ".join(one.code for one in known[:12]) or "none yet"
                raise BankError(f"there is no learner {code!r}; the codes are: {named}")
        wanted = {code.lower() for code in codes}
        return [one for one in known if one.code.lower() in wanted]

    def draw(
        self,
        day: dt.date,
        codes: Sequence[str] = (),
        short: bool | None = None,
        anyway: bool = False,
    ) -> list[SetView]:
        """The sets of a day, drawn where that is not done: the same whoever asks, and whenever.

        `short` draws the short-morning set (None: on half days), also in place of a proposed set that
        was drawn long. `BankError` on a day without school unless `anyway`, and where there is no
        learner, or a bank that can only be read and has no set for one who is there.
        """
        everyone = self.learners()
        if not everyone:
            raise BankError("there is no learner yet; add one: binderbank learner add K4 --reads 2")
        asked = {one.number for one in somebody_in_class(self.learners(codes), day)}
        rules = self.rules()
        off = rules.calendar.why_off(day)
        if off and not anyway:
            after = rules.calendar.next_school_day(day) or "not in the calendar"
            raise BankError(
                f"{day} is no school day ({off}); the next is {after}; --anyway draws all the same"
            )
        known = day_sets(self.store, day)
        here = {one.number for one in everyone if not one.is_away(day)} & asked
        long = {n for n, one in known.items() if one.state == "proposed" and not one.short}
        again = asked & long if short else ()
        if short is None:
            short = rules.calendar.is_half_day(day)
        if here - set(known) or again:
            from bank.choose.draw import Draw

            with self.store.writing():
                for number in again:
                    remove_set(self.store, number, day)
                for made in Draw(self.store, day, rules, short).sets(everyone):
                    if made.learner in asked:
                        write_set(self.store, made)
        return self.sets(day, codes)

    def sets(self, day: dt.date, codes: Sequence[str] = ()) -> list[SetView]:
        """The sets of a day that were drawn, in the order of the learners' codes.

        Of a learner who is not in the class then, only a set that was used.
        """
        found = day_sets(self.store, day)
        used = {number for number, one in found.items() if one.state == "used"}
        wanted = [one for one in self.learners(codes) if one.in_class(day) or one.number in used]
        parts = [part for one in wanted if one.number in found for part in found[one.number].given]
        items = get_items(self.store, list(dict.fromkeys(part.item for part in parts)))
        return [_view(one, found[one.number], items) for one in wanted if one.number in found]

    def undo(self, day: dt.date, codes: Sequence[str] = ()) -> tuple[int, int]:
        """Take back proposed sets; returns how many went, and how many stay because they were printed."""
        found = day_sets(self.store, day)
        gone = 0
        with self.store.writing():
            for one in self.learners(codes):
                if one.number in found and found[one.number].state == "proposed":
                    remove_set(self.store, one.number, day)
                    gone += 1
        wanted = {one.number for one in self.learners(codes)}
        return gone, sum(number in wanted for number in found) - gone

    def set_state(self, day: dt.date, state: str, codes: Sequence[str] = ()) -> int:
        """Mark sets as `used` or `unused`: an unused set gives its items back. Returns how many."""
        found = day_sets(self.store, day)
        sets = [found[one.number] for one in self.learners(codes) if one.number in found]
        with self.store.writing():
            for one in sets:
                write_set(self.store, replace(one, state=state))
        return len(sets)

    def printed(self, day: dt.date, codes: Sequence[str] = ()) -> int:
        """Mark sets as printed and keep their items as they stand now. Returns how many changed."""
        found = day_sets(self.store, day)
        there = {one.number for one in self.learners(codes) if one.in_class(day)}
        sets = [one for n, one in found.items() if n in there and one.state == "proposed"]
        ids = list(dict.fromkeys(part.item for one in sets for part in one.given))
        items = get_items(self.store, ids)
        with self.store.writing():
            for one in sets:
                given = tuple(
                    replace(part, printed=snapshot(items[part.item], part)) for part in one.given
                )
                write_set(self.store, replace(one, state="printed", given=given))
        return len(sets)

    def swap(
        self, code: str, day: dt.date, slot: str, reason: str, item: str = ""
    ) -> tuple[GivenView, GivenView]:
        """Replace one item of a learner's set; see `bank.classroom_swap.swap`."""
        from bank.classroom_swap import swap

        return swap(self, code, day, slot, reason, item)

    def stuck(self, day: dt.date) -> list[tuple[str, str]]:
        """Who is stuck by the marks up to `day`: the code, and the last days in words."""
        if self.store.row("SELECT 1 FROM mark LIMIT 1") is None:
            return []
        from bank.store_recent import stuck

        return stuck(self.store, day)

    def key(self, day: dt.date) -> Key:
        """The answer key of a day: each sentence once with its fixes, and expected answers."""
        return make_key(day, self.sets(day))


def snapshot(item: Item, part: Given) -> dict[str, Any]:
    """An item as a page shows it, in plain values: what a printed set keeps."""
    version = (
        item.versions[min(part.version or 0, len(item.versions) - 1)] if item.versions else None
    )
    grade = item.reading_grade or 0.0
    faulty, fixes = _own_version(item, version, part.keep)
    return {
        "text": item.text,
        "themes": list(item.themes),
        "question_word": item.question_word,
        "grade": grade,
        "low": grade if item.low is None else item.low,
        "high": grade if item.high is None else item.high,
        "placed": item.level_as is not None,
        "answer": item.answer,
        "choices": list(item.choices),
        "starter": item.starter,
        "words": list(item.words),
        "picture": item.picture,
        "faulty": faulty,
        "fixes": fixes,
        **({"whole": _whole(version)} if version and part.keep is not None else {}),
        "findings": list(item.findings),
    }


def _whole(version: Version) -> dict[str, Any]:
    return {"faulty": version.faulty, "fixes": list(version.fixes)}


def _own_version(
    item: Item, version: Version | None, keep: Sequence[int] | None
) -> tuple[str, list[dict[str, Any]]]:
    """The faulty text and its fixes, with only the errors that stay for this learner."""
    if version is None:
        return "", []
    if keep is not None:
        from bank.choose.own_version import only

        if left := only(version.faulty, item.text, version.fixes, keep):
            return left
    return version.faulty, list(version.fixes)


def given_view(part: Given, items: dict[str, Item]) -> GivenView:
    plain = part.printed or snapshot(items[part.item], part)
    values: dict[str, Any] = {
        name: tuple(value) if isinstance(value, list) else value for name, value in plain.items()
    }
    return GivenView(part.kind, part.position, part.item, part.rung, part.why, **values)


def _view(learner: Learner, held: DaySet, items: dict[str, Item]) -> SetView:
    order = {kind: number for number, kind in enumerate(SLOTS)}
    given = sorted(held.given, key=lambda part: (order[part.kind], part.position))
    return SetView(
        learner,
        held.day,
        held.state,
        held.short,
        held.notes,
        tuple(given_view(part, items) for part in given),
    )


def make_key(day: dt.date, sets: Sequence[SetView]) -> Key:
    """The key of these sets: one entry for each sentence and each question with an answer."""
    sentences: dict[str, list[tuple[SetView, GivenView]]] = {}
    answers: dict[str, list[tuple[SetView, GivenView]]] = {}
    for one in sets:
        for part in one.given:
            if part.kind == "sentence":
                sentences.setdefault(part.item, []).append((one, part))
            elif part.kind == "question" and part.answer:
                answers.setdefault(part.item, []).append((one, part))
    return Key(
        day,
        tuple(_key_sentence(item, given) for item, given in sentences.items()),
        tuple(
            KeyAnswer(
                item,
                given[0][1].text,
                given[0][1].answer,
                given[0][1].choices,
                tuple(one.learner.code for one, _ in given),
            )
            for item, given in answers.items()
        ),
    )


def _key_sentence(item: str, given: Sequence[tuple[SetView, GivenView]]) -> KeySentence:
    parts = [part for _, part in given]
    faulty, fixes = with_all_errors(parts)
    numbers: dict[tuple[Any, ...], int] = {}
    for fix in fixes:
        numbers.setdefault(_same_fix(fix), len(numbers) + 1)
    # A version that does not nest in the fullest one brings fixes of its own to the end of the list.
    for _, part in given:
        for fix in part.fixes:
            if _same_fix(fix) not in numbers:
                numbers[_same_fix(fix)] = len(numbers) + 1
                fixes.append(fix)
    # What the board shows comes first, with no learner of its own where nobody has all of it.
    versions: dict[str, tuple[tuple[int, ...], list[str]]] = {}
    if faulty not in {part.faulty for part in parts}:
        versions[faulty] = (tuple(range(1, len(fixes) + 1)), [])
    for one, part in given:
        mine = tuple(sorted(numbers[_same_fix(fix)] for fix in part.fixes))
        versions.setdefault(part.faulty, (mine, []))[1].append(one.learner.code)
    ordered = sorted(versions.items(), key=lambda pair: (-len(pair[1][0]), pair[0]))
    return KeySentence(
        item,
        parts[0].text,
        tuple(fixes),
        tuple((faulty, mine, tuple(codes)) for faulty, (mine, codes) in ordered),
    )


def with_all_errors(parts: Sequence[GivenView]) -> tuple[str, list[dict[str, Any]]]:
    """One sentence with the errors of all these versions of it, for the board and the key.

    The fullest of them where the others nest in it. Where they do not nest and the errors cannot be
    brought together, the fullest all the same.
    """
    fullest = max(parts, key=lambda part: len(part.fixes))
    wanted = {_same_fix(fix) for part in parts for fix in part.fixes}
    if len(wanted) == len(fullest.fixes):
        return fullest.faulty, list(fullest.fixes)
    from bank.choose.own_version import only

    for whole in (part.whole for part in parts if part.whole):
        keep = {n for n, fix in enumerate(whole["fixes"]) if _same_fix(fix) in wanted}
        made = only(whole["faulty"], fullest.text, whole["fixes"], keep)
        if made and len(keep) == len(wanted):
            return made
    return fullest.faulty, list(fullest.fixes)


def _same_fix(fix: dict[str, Any]) -> tuple[Any, ...]:
    """What tells one fix from another in all versions: its place in the corrected sentence."""
    return fix["skill"], fix.get("right_start"), fix.get("right_end"), fix["right"]
