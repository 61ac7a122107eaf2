"""Words that stand twice."""

from __future__ import annotations

from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import SUBJECTS, singular_of
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_MAY_DOUBLE = word_set(
    "had that very so really bye no ha knock night ho tap drip choo yes hop now please hey"
)


@on_text()
def same_word_twice(r: Reading) -> Found:
    """The same word twice in a row.

    >>> show("I see the the dog.")
    ['extra-word: the -> ']
    """
    found = []
    lower = r.lower
    for i in range(1, r.n):
        if (
            lower[i] == lower[i - 1]
            and r.gap[i - 1] == " "
            and (
                lower[i] not in _MAY_DOUBLE
                and not (lower[i] == "can" and bool(singular_of(r.after(i))))
                or lower[i] == "that"
                and r.after(i) in SUBJECTS
                and r.tag[i - 2 : i - 1] == ["NN"]
            )
        ):
            found.append(
                Finding(
                    "extra-word",
                    r.starts[i],
                    r.ends[i],
                    f"“{r.words[i]}” stands there twice.",
                    "",
                    lower[i].isalpha(),
                )  # fmt: skip
            )
    return found
