"""What the rules about words taken for one another share."""

from __future__ import annotations

from bank.check.engine import at
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    FUNCTION,
    JOINERS,
    MODALS,
    PREPOSITIONS,
    is_noun,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading


def wrong_word(r: Reading, i: int, right: str, certain: bool = True) -> Finding:
    return at(r, i, "homophone", f"The word that is meant is “{right}”.", right, certain)


def thing_at(r: Reading, j: int) -> bool:
    """Whether a thing with nothing before it but describing words starts at word `j`."""
    if j >= r.n or r.gap[j - 1] != " ":
        return False
    if (
        r.tag[j][:2] == "JJ"
        and r.near(j)
        and r.lower[j] not in FUNCTION
        and is_noun(r.lower[j + 1])
        and r.tag[j + 1][:1] == "N"
    ):
        return True
    return is_noun(r.lower[j]) and r.tag[j] in ("NN", "NNS") and r.lower[j] not in FUNCTION


def bare_thing(r: Reading, j: int) -> bool:
    """Like `thing_at`, where the parse cannot be trusted because a short verb stands before."""
    if thing_at(r, j):
        return True
    if j >= r.n or r.gap[j - 1] != " ":
        return False
    word = r.lower[j]
    return (
        is_noun(word) and "ADJ" not in lemmas(word) and not verb_forms(word) & {"VBG", "VBN", "VBD"}
    )


def ing_form(r: Reading, j: int) -> bool:
    return (
        j < r.n
        and r.lower[j].endswith("ing")
        and "VBG" in verb_forms(r.lower[j])
        and r.lower[j]
        not in word_set(
            """
            building drawing painting wedding meeting clothing ceiling morning
            evening feeling writing reading stocking ring king wing
            """
        )
    )


def only_describes(r: Reading, j: int) -> bool:
    """Whether word `j` describes and nothing that it could describe follows."""
    if j >= r.n:
        return False
    word = r.lower[j]
    if "ADJ" not in lemmas(word) or word in FUNCTION or word in ("own", "first", "last", "next"):
        return False
    after = r.after(j)
    return (
        not after
        or after in PREPOSITIONS | JOINERS | {"to", "too", "at", "today", "now"}
        and not is_noun(word)
    )


def verb_behind(r: Reading, j: int) -> bool:
    if j < r.n - 1 and r.tag[j][:2] == "JJ" and r.near(j):
        j += 1
    after = r.after(j)
    return bool(after) and (
        after in AUXILIARIES or r.tag[j + 1] in ("VBZ", "VBD", "VBP") and bool(verb_forms(after))
    )


WANTS = word_set(
    "want wants wanted need needs needed like likes liked love loves loved have has had going "
    "used try tried able ready hope about how"
)


THESE = word_set("this these those")
FEELS = word_set(
    "small big hot cold tall short loud long old young hard soft heavy slow fast late wet dry "
    "tight far high low"
)


MODALS_SET = MODALS | word_set("don't didn't doesn't can't won't")
