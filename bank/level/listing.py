"""What to level in a text file: one passage, or a list of prompts, one a line."""

from __future__ import annotations

import re

from bank.item import as_seen
from bank.level.canonical import asks

LONGEST_PROMPT = 40
"""A line of more words than this is no prompt."""


def texts_in(content: str, kind: str = "", whole: bool | None = None) -> list[tuple[int, str, str]]:
    """The texts of a file's content, each with the number of its line and its kind, in order.

    `whole` says whether the content is one passage; None finds out (`is_passage`). `kind` is the
    kind of every prompt of a list; "" guesses each (`guess_kind`). Blank lines, and numbers or
    bullets before a prompt, are left out.
    """
    lines = [line.strip() for line in content.splitlines()]
    if whole or (whole is None and is_passage(content)):
        text = " ".join(line for line in lines if line)
        return [(1, text, kind or "passage")] if text else []
    prompts = [(number, _BULLET.sub("", line)) for number, line in enumerate(lines, start=1)]
    return [(number, text, kind or guess_kind(text)) for number, text in prompts if text]


_BULLET = re.compile(r"^(?:[-*•]|\(?\d{1,3}[.)])\s+")
_SENTENCES = re.compile(r"[.!?][\"')\]]*\s+(?=[\"'(]?[A-Z])")


def is_passage(content: str) -> bool:
    """Whether a content reads on from line to line, or has lines too long for a prompt.

    >>> is_passage("Do you like cats?\\nWho is that?")
    False
    >>> is_passage("Once there was a fox that\\nlived in a den. It had a\\nbushy tail.")
    True
    """
    lines = [line.strip() for line in content.splitlines() if line.strip()]
    if any(len(line.split()) > LONGEST_PROMPT for line in lines):
        return True
    if len(lines) == 1:
        return len(_SENTENCES.findall(lines[0])) >= 3
    breaks = list(zip(lines, lines[1:], strict=False))
    running_on = sum(first[-1] not in ".?!\"'" and second[0].islower() for first, second in breaks)
    return running_on * 4 >= len(breaks) > 0


def guess_kind(prompt: str) -> str:
    """The kind of one prompt by how it begins and ends.

    >>> guess_kind("Do you like cats"), guess_kind("A red ball"), guess_kind("I see a dog.")
    ('question', 'topic', 'sentence')
    """
    prompt = as_seen(prompt)
    if prompt.endswith("?") or asks(prompt):
        return "question"
    return "sentence" if prompt.rstrip("\"')").endswith((".", "!")) else "topic"
