"""Owners told by what stands beside them: a title, a number, a name in s."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    DETERMINERS,
    FUNCTION,
    is_noun,
    plural_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import word_set
from bank.check.names import is_name
from bank.check.owners import verb_follows
from bank.check.reading import Reading


@on_words("mr mrs ms dr")
def owner_behind_a_title(r: Reading, i: int) -> Found:
    """Mr. Lees ladder.

    >>> show("We borrowed Mr. Lees ladder.")
    ["apostrophe-possessive: Lees -> Lee's"]
    >>> show("We gave Mr. Lees flowers. Mr. Jones plants trees.")
    []
    """
    j = i + 1
    if j + 1 >= r.n or r.gap[i] not in (" ", ". ") or not r.words[j][0].isupper() or not r.near(j):
        return None
    thing = r.lower[j + 1]
    if (
        r.lower[j][-1] != "s"
        or "'" in r.lower[j]
        or len(r.lower[j]) < 4
        or r.words[j + 1][0].isupper()
    ):
        return None
    if not is_noun(thing) or r.tag[j + 1] not in ("NN", "NNS") or thing in FUNCTION:
        return None
    if (
        i
        and verb_forms(r.lower[i - 1])
        and r.lower[i - 1] in _GIVES
        or r.after(j + 1) in DETERMINERS
    ):
        return None
    if verb_forms(thing) & {"VBZ", "VBD"} or r.first[i] and not verb_follows(r, j + 1):
        return None
    right = r.words[j][:-1] + "'s"
    return at(r, j, "apostrophe-possessive", f"For who owns it write “{right}”.", right, False)


_GIVES = word_set(
    "gave give gives brought bring made make showed show sent send told tell asked ask bought handed"
)


_OWN_ALONE = {"her's": "hers", "their's": "theirs", "our's": "ours", "your's": "yours"}


@on_words(" ".join(_OWN_ALONE))
def owning_word_with_apostrophe(r: Reading, i: int) -> Found:
    """her's, their's.

    >>> show("The red mittens are her's.")
    ["apostrophe-possessive: her's -> hers"]
    """
    right = _OWN_ALONE[r.lower[i]]
    return at(r, i, "apostrophe-possessive", f"This word has no apostrophe: “{right}”.", right)


@on_words("two three four five six seven eight nine ten many several few these those both all")
def owner_of_several(r: Reading, i: int) -> Found:
    """The three pig's pen.

    >>> show("We saw the three pig's pen.")
    ["apostrophe-possessive: pig's -> pigs'"]
    >>> show("Two of Sam's dogs bark. All of the dog's food is gone.")
    []
    """
    if not r.near(i) or i + 2 >= r.n or not r.near(i + 1):
        return None
    word = r.lower[i + 1]
    stem = word.removesuffix("'s")
    if stem == word or r.words[i + 1][0].isupper() or plural_of(stem) != stem + "s":
        return None
    if not is_noun(r.lower[i + 2]) or not is_noun(stem) or r.lower[i + 2] in FUNCTION:
        return None
    right = stem + "s'"
    return at(r, i + 1, "apostrophe-possessive", f"More than one owner: “{right}”.", right)


@on_text()
def one_person_with_s_and_apostrophe(r: Reading) -> Found:
    """Joeys' cup: one person, so the apostrophe stands before the s.

    >>> show("Can you find Joeys' blue cup?")
    ["apostrophe-possessive: Joeys' -> Joey's"]
    >>> show("James' cup is blue. The boys' cups are blue.")
    []
    """
    if "' " not in r.text:
        return None
    found = []
    for i, word in enumerate(r.lower[:-1]):
        one = word[:-1]
        if r.gap[i][:2] != "' " or word[-1:] != "s" or is_name(word) or not r.words[i][0].isupper():
            continue
        if is_name(one) and is_noun(r.lower[i + 1]) or is_name(one) and r.tag[i + 1][:2] == "JJ":
            right = r.words[i][:-1] + "'s"
            found.append(
                Finding("apostrophe-possessive", r.starts[i], r.ends[i] + 1,
                        f"For one owner write “{right}”.", right, True)
            )  # fmt: skip
    return found
