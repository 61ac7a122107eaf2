"""A whole sentence and a question run together."""

from __future__ import annotations

from bank.check.clauses import SUBORDINATE, clause_at
from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    FUNCTION,
    SUBJECTS,
    WH,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import word_set
from bank.check.reading import Reading
from bank.check.sentences import NOT_RUN, OPEN_FOR_CLAUSE
from bank.check.speech import QUOTES


@on_text()
def question_behind_a_comma(r: Reading) -> Found:
    """It is raining, can we go out? Where a statement or a question is whole, a new one starts.

    >>> show("It is raining, can we still go outside?")
    ['run-on: raining, can -> raining. Can']
    >>> show("It is raining where is my umbrella?")
    ['run-on: raining where -> raining. Where']
    >>> show("If it rains, can we go? You can swim, can you? Do you know where it is?")
    []
    """
    found = []
    for start, close in r.sentences:
        if not r.gap[close - 1].lstrip("\"”'").startswith("?") or any(c in r.text for c in QUOTES):
            continue
        k = _new_question(r, start, close)
        if k is not None:
            text = f"{r.words[k - 1]}. {r.words[k][0].upper()}{r.words[k][1:]}"
            found.append(Finding("run-on", r.starts[k - 1], r.ends[k], NOT_RUN, text, True))
    return found


_ASKED = word_set("wonder wonders ask asks asked say says said tell told think know guess whatever")


def _new_question(r: Reading, start: int, close: int) -> int | None:
    """The word at which a second question starts, the first part being whole."""
    first = r.lower[start]
    if first in SUBORDINATE - WH or first in (
        "if",
        "yes",
        "no",
        "so",
        "please",
        "in",
        "on",
        "at",
        "had",
        "were",
        "should",
    ):
        return None
    whole = clause_at(r, start, close) is not None or first in AUXILIARIES
    for k in range(start + 3, close - 2):
        asks = r.lower[k] in AUXILIARIES and r.lower[k + 1] in SUBJECTS and k + 2 < close
        if r.gap[k - 1] == ", " and asks and whole and verb_forms(r.lower[k + 2]):
            return k
        wh = r.lower[k] in WH - {"which", "who", "that"} and r.lower[k + 1] in AUXILIARIES
        if wh and r.gap[k - 1] == " " and whole and first not in AUXILIARIES:
            opens = r.lower[k - 1] in FUNCTION or r.lower[k - 1] in OPEN_FOR_CLAUSE
            return None if opens or k + 2 >= close else k
        spliced = (
            r.gap[k - 1] == ", "
            and whole
            and r.lower[k] in ("what", "why", "where", "how")
            and (r.lower[k + 1] in AUXILIARIES or r.lower[k + 1] == "happened")
            and not _ASKED & {*r.lower[start:k]}
        )
        if spliced and "," not in "".join(r.gap[k : close - 1]):
            return k
        twice = first in WH and r.lower[start + 1] in AUXILIARIES and k > start + 3
        if twice and r.lower[k] in WH - {"which", "who", "that"} and r.lower[k + 1] in AUXILIARIES:
            known = (
                r.lower[k - 1] in FUNCTION
                or r.lower[k - 1] in OPEN_FOR_CLAUSE
                or r.gap[k - 1] != " "
            )
            return None if known or r.lower[k + 2] not in SUBJECTS else k
        bare = asks and r.gap[k - 1] == " " and r.lower[k] not in ("have", "had") and k > start + 2
        turned = first in AUXILIARIES or first in WH and r.lower[start + 1] in AUXILIARIES
        if bare and turned and r.lower[k - 1] not in FUNCTION:
            return k
    return None
