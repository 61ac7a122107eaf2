"""One no is enough."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.grammar import JOINERS
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_ANY = {
    "no": "any", "nothing": "anything", "nobody": "anybody", "nowhere": "anywhere",
    "none": "any", "never": "ever", "noone": "anyone",
}  # fmt: skip
_OPENERS = word_set("nobody nothing never none hardly scarcely neither")


@on_words(" ".join(_ANY), "hardly")
def second_no(r: Reading, i: int) -> Found:
    """A second no in the same part of a sentence.

    >>> show("I don't have no pencils.")
    ['double-negative: no -> any']
    >>> show("We can't find it nowhere.")
    ['double-negative: nowhere -> anywhere']
    >>> show("No, I don't know. I have no idea why it does not work.")
    []
    """
    word = r.lower[i]
    if word == "no" and (r.gap[i].strip() or r.before(i) in ("say", "said", "says", "yes", "or")):
        return None
    first = _earlier_no(r, i)
    if first is None:
        return None
    if word == "no" and r.after(i) in ("longer", "one", "matter"):
        right = {"longer": "any", "one": "any"}.get(r.after(i))
        if right is None:
            return None
    if word == "hardly":
        return at(r, i, "double-negative", "One no is enough.", "", False)
    return at(r, i, "double-negative", f"One no is enough; say “{_ANY[word]}”.", _ANY[word])


def _earlier_no(r: Reading, i: int) -> int | None:
    j = i - 1
    while j >= 0 and not r.first[j + 1] and not any(c in r.gap[j] for c in ",;:—"):
        word = r.lower[j]
        if word in JOINERS and word not in ("and", "or", "then", "when"):
            return None
        if (
            word.endswith("n't")
            or word in word_set("not cannot dont cant didnt doesnt")
            or word in _OPENERS
        ):
            return None if r.after(j) in ("only", "just", "because") else j
        j -= 1
    return None


@on_words("nobody nothing no-one none neither never no")
def no_before_not(r: Reading, i: int) -> Found:
    """Nobody with a verb that says not.

    >>> show("Nobody didn't come to the party.")
    ["double-negative: didn't -> came"]
    """
    word = r.lower[i]
    if word == "no" and r.after(i) != "one" or not r.near(i):
        return None
    j = i + (2 if word == "no" else 1)
    while (
        j < r.n
        and r.near(j - 1)
        and r.lower[j] in word_set("of us them the in class my friends else")
    ):
        j += 1
    if j >= r.n or r.gap[j - 1] != " " or not r.lower[j].endswith("n't"):
        return None
    from bank.check.grammar import form

    helper = {"won't": "will", "can't": "can"}.get(r.lower[j], r.lower[j].removesuffix("n't"))
    last = j
    right = helper
    if helper in ("did", "does", "do") and r.near(j):
        tag = {"did": "VBD", "does": "VBZ", "do": "VB"}[helper]
        right = form(r.lower[j + 1], tag) or helper
        if right != helper:
            return at(r, j, "double-negative", "One no is enough.", right, to=j)
    return at(r, j, "double-negative", "One no is enough.", right, to=last)
