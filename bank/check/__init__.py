"""What is wrong with a text, and what may stop a reader who takes it literally.

>>> from bank.check import check_text
>>> [finding.code for finding in check_text("Where do she play.")]
['agreement', 'end-mark']
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from bank.check.finding import WORDING, Finding, apply
from bank.check.themes import sensitive_themes

__all__ = [
    "METHOD",
    "WORDING",
    "Finding",
    "apply",
    "check_many",
    "check_text",
    "sensitive_themes",
    "show",
]

METHOD = "check-4"
"""The version of the rules; a bank checks again what an older method has checked."""

KINDS = ("question", "sentence", "topic", "sort", "passage")


def check_text(text: str, kind: str = "question") -> list[Finding]:
    """Everything found in `text`, in its order.

    `kind` is the kind of an item (question, sentence, topic, sort) or `passage` for plain text;
    another is a `ValueError`. The parse is the one that levelling uses.
    """
    _know(kind)
    from bank.check.reading import Reading
    from bank.check.rules import run
    from bank.language import parse

    return run(Reading(text, kind, parse(text)))


def check_many(items: Iterable[tuple[str, str]], batch_size: int = 256) -> Iterator[list[Finding]]:
    """`check_text` for many pairs of text and kind, parsed in batches, in the order given."""
    from itertools import islice

    from bank.check.reading import Reading
    from bank.check.rules import run
    from bank.language import parse_many

    rest = iter(items)
    while batch := list(islice(rest, batch_size)):
        for _, kind in batch:
            _know(kind)
        docs = parse_many([text for text, _ in batch], batch_size)
        for (text, kind), doc in zip(batch, docs, strict=True):
            yield run(Reading(text, kind, doc))


def show(text: str, kind: str = "passage") -> list[str]:
    """The findings in short, as the examples of the rules show them: code, found -> suggested."""
    return [f"{f.code}: {text[f.start : f.end]} -> {f.suggestion}" for f in check_text(text, kind)]


def _know(kind: str) -> None:
    if kind not in KINDS:
        raise ValueError(f"{kind!r} is not a kind of text; known are {', '.join(KINDS)}")
