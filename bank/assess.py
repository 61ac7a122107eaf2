"""Level, check and compare an item before it is stored: everything that is computed once.

This is the slow half of adding (it loads the spaCy pipeline); the morning's commands never come here.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

from bank.item import BankError, Item, Version, question_word_of

BATCH = 256
NO_FAULTY = "no-faulty"


def method() -> str:
    """The versions of levelling, checking and asking, as stored beside what they computed."""
    from bank import check, level
    from bank.choose import twins

    return f"{level.METHOD}/{check.METHOD}/{twins.METHOD}"


def assess(item: Item) -> Item:
    """The item with its level, findings, fixes and ask; `BankError` where it cannot be an item."""
    return next(iter(assess_many([item])))


def assess_many(items: Iterable[Item]) -> Iterator[Item]:
    """`assess` for many items, parsed in batches; raises `BankError` as `assess` does."""
    for item, problem in try_assess_many(items):
        if problem:
            raise problem
        yield item


def try_assess_many(items: Iterable[Item]) -> Iterator[tuple[Item, BankError | None]]:
    """Each item assessed, or as it was with the reason why it cannot be."""
    from itertools import islice

    from bank.language import parse_many

    rest = iter(items)
    while batch := list(islice(rest, BATCH)):
        texts = [item.text for item in batch]
        texts += [
            version.faulty for item in batch for version in item.versions if not version.fixes
        ]
        for _ in parse_many(texts):
            pass
        for item in batch:
            try:
                yield _assessed(item), None
            except BankError as problem:
                yield item, problem


def _assessed(item: Item) -> Item:
    from bank.check import check_text
    from bank.choose.ask.keys import keys_of
    from bank.choose.twins import ask_frame
    from bank.level import level_text

    try:
        level = level_text(item.text, item.kind)
    except ValueError as error:
        raise BankError(str(error)) from error
    versions = tuple(_with_fixes(item.text, version) for version in item.versions)
    findings = [finding.to_dict() for finding in check_text(item.text, item.kind)]
    if item.kind == "sentence" and not versions:
        findings.append(_no_faulty())
    frame = ask_frame(item.text) if item.kind in ("question", "topic") else None
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
        method=method(),
    )
    return replace(done, state=state_of(done))


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
    plain[0]["also_right"] = [other.note for other in alternatives(corrected)]
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
