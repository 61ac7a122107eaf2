"""Level, check and compare an item before it is stored: everything that is computed once.

This is the slow half of adding (it loads the spaCy pipeline); the morning's commands never come here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from bank.item import BankError, Item, Version, question_word_of

if TYPE_CHECKING:
    from bank.level import Level
    from bank.level.ear import Ear

BATCH = 256
ASKING = ("question", "topic")  # kinds that can have a twin
NO_FAULTY = "no-faulty"


def method(ear: Ear | None = None) -> str:
    """The versions of levelling, checking and asking, as stored beside what they computed."""
    from bank import check, level
    from bank.choose import twins

    plain = f"{level.METHOD}/{check.METHOD}/{twins.METHOD}"
    return f"{plain}/{ear.code}" if ear else plain


def assess(item: Item, ear: Ear | None = None) -> Item:
    """The item with its level, findings, fixes and ask; `BankError` where it cannot be an item.

    With `ear` its level is the one on the scale re-anchored to a specialist's judgement.
    """
    return next(iter(assess_many([item], ear)))


def assess_many(items: Iterable[Item], ear: Ear | None = None) -> Iterator[Item]:
    """`assess` for many items, parsed in batches; raises `BankError` as `assess` does."""
    for item, problem in try_assess_many(items, ear):
        if problem:
            raise problem
        yield item


def try_assess_many(
    items: Iterable[Item], ear: Ear | None = None
) -> Iterator[tuple[Item, BankError | None]]:
    """Each item assessed, or as it was with the reason why it cannot be."""
    from itertools import islice

    from bank.choose.twins import ask_frames
    from bank.language import parse_many

    rest = iter(items)
    while batch := list(islice(rest, BATCH)):
        for _ in parse_many(item.text for item in batch):
            pass
        # What is asked is read off a reworded text, which takes a parse of its own.
        asking = [item.text for item in batch if item.kind in ASKING]
        frames = dict(zip(asking, ask_frames(asking), strict=True))
        for item in batch:
            try:
                yield _assessed(item, frames.get(item.text), ear), None
            except BankError as problem:
                yield item, problem


def _assessed(item: Item, frame: Any, ear: Ear | None) -> Item:
    from bank.check import check_text
    from bank.choose.ask.keys import keys_of
    from bank.level import level_text

    try:
        level = _heard(item, level_text(item.text, item.kind), ear)
    except ValueError as error:
        raise BankError(str(error)) from error
    versions = tuple(_with_fixes(item.text, version) for version in item.versions)
    findings = [finding.to_dict() for finding in check_text(item.text, item.kind)]
    if item.kind == "sentence" and not versions:
        findings.append(_no_faulty())
    word = item.question_word or (question_word_of(item.text) if item.kind == "question" else "")
    plain: dict[str, Any] = level.to_dict()
    done = replace(
        item,
        question_word=word,
        versions=versions,
        grade=plain["grade"],
        low=plain["low"],
        high=plain["high"],
        formulas=tuple(plain["formulas"]),
        reasons=tuple(plain["reasons"]),
        findings=tuple(findings),
        ask=None if frame is None else {"frame": frame, "keys": sorted(keys_of(frame))},
        method=method(ear),
    )
    return replace(done, state=state_of(done))


def _heard(item: Item, level: Level, ear: Ear | None) -> Level:
    if ear is None:
        return level
    from bank.level import parts_of
    from bank.level.ear import Heard, re_anchored

    return re_anchored(level, Heard(item.id, level.grade, parts_of(item.text, item.kind)), ear)


def state_of(item: Item) -> str:
    """Draft while a certain finding or an objection stands; retired stays retired."""
    if item.state == "retired":
        return "retired"
    stands = any(finding["certain"] for finding in item.findings) and not item.as_is
    # An item without a faulty version cannot be drawn as a sentence to fix, whatever the reason.
    broken = item.kind == "sentence" and not item.versions
    return "draft" if stands or broken or item.objection else "ready"


def _with_fixes(corrected: str, version: Version) -> Version:
    if version.fixes:
        return version
    from bank.edit import alternatives, compare

    try:
        fixes = compare(version.faulty, corrected)
    except ValueError as error:
        raise BankError(f"{error}: {version.faulty[:60]!r}") from error
    if not fixes:
        raise BankError(f"the faulty version has no error to fix: {version.faulty[:60]!r}")
    plain = [{**fix.to_dict(), "explanation": fix.explanation} for fix in fixes]
    # A version is kept as its fixes; what else is right in the sentence stands with the first one.
    plain[0]["also_right"] = list(dict.fromkeys(other.note for other in alternatives(corrected)))
    return Version(version.faulty, tuple(plain))


def _no_faulty() -> dict[str, Any]:
    return {
        "code": NO_FAULTY,
        "start": 0,
        "end": 0,
        "message": "There is no faulty version yet: add one, or let the program make errors.",
        "suggestion": None,
        "certain": True,
        "others": [],
        "on_screen": "must fix",
    }
