"""Spelling: words that are none."""

from __future__ import annotations

from bank.check.engine import ALL_KINDS, Found, on_text
from bank.check.finding import Finding
from bank.check.names import KNOWN, is_name
from bank.check.reading import Reading
from bank.check.spelling import is_word, suggest


@on_text(ALL_KINDS)
def no_such_word(r: Reading) -> Found:
    """A string of letters that is no word.

    >>> show("I recieve a letter.")
    ['spelling: recieve -> receive']
    """
    found = []
    for i, word in enumerate(r.lower):
        if not word.isalpha() or len(word) < 2 or is_word(word):
            continue
        written = r.words[i]
        if written[0].isupper() and (is_name(word) or word in KNOWN):
            continue
        if any(c.isupper() for c in written[1:]) or (written[0].isupper() and not r.first[i]):
            continue
        likely = suggest(word)
        if written[0].isupper():
            if not likely:
                continue
            likely = tuple(w[0].upper() + w[1:] for w in likely)
        best = likely[0] if likely else None
        found.append(
            Finding(
                "spelling",
                r.starts[i],
                r.ends[i],
                f"“{written}” is not a word" + (f"; did you mean “{best}”?" if best else "."),
                best,
                bool(best) and not (written[0].isupper() and r.tag[i][:3] == "NNP"),
                likely[1:],
            )  # fmt: skip
        )
    return found
