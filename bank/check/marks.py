"""End marks."""

from __future__ import annotations

import re

from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.reading import Reading

_ENDED = re.compile(r"[.!?…][\"”'’)\]]*\s*$")


@on_text(["question", "sentence", "passage"])
def no_end_mark(r: Reading) -> Found:
    """A text without a mark at its end.

    >>> show("I like cats")
    ['end-mark:  -> .']
    """
    if not r.n or _ENDED.search(r.text):
        return None
    end = len(r.text.rstrip())
    mark = "?" if r.kind == "question" else "."
    return Finding("end-mark", end, end, "A sentence ends with . or ? or !", mark, True)
