"""Two together: their verb, their form, and which of them is more."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    POSSESSIVES,
    SUBJECTS,
    form,
    is_verb_tag,
    noun_phrase,
    plural_of,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading


@on_words("me him us them")
def pair_with_the_object_form(r: Reading, i: int) -> Found:
    """a trip that you and me could take.

    >>> show("Write about a trip that you and me could take together.")
    ['pronoun: me -> I']
    >>> show("I saw you and me in the mirror. He told you and me could be a song.")
    []
    """
    if r.before(i) != "and" or r.after(i) not in (
        "can",
        "could",
        "will",
        "would",
        "should",
        "might",
        "are",
        "were",
    ):
        return None
    if r.before(i - 1) not in ("you", "he", "she", "mom", "dad") or r.before(i - 2) not in (
        "that",
        "what",
        "if",
        "when",
        "because",
        "where",
        "how",
    ):
        return None
    right = {"me": "I", "him": "he", "us": "we", "them": "they"}[r.lower[i]]
    return Finding("pronoun", r.starts[i], r.ends[i], f"Who does it is “{right}”.", right, True)


@on_words("you i he she we they")
def pair_with_the_verb_for_one(r: Reading, i: int) -> Found:
    """a game that you and your friends plays.

    >>> show("Write about a game that you and your friends plays at recess.")
    ['agreement: plays -> play']
    >>> show("I like what you and your dog play.")
    []
    """
    if r.after(i) != "and" or r.before(i) not in (
        "that",
        "what",
        "when",
        "how",
        "where",
        "game",
        "food",
    ):
        return None
    if i + 2 >= r.n or r.lower[i + 2] not in POSSESSIVES:
        return None
    phrase = noun_phrase(r, i + 2)
    if phrase is None or not r.near(phrase.last):
        # The parse may take the verb for the last thing of the phrase.
        return None
    v = phrase.last + 1
    last = phrase.last
    if v < r.n and verb_forms(r.lower[v]) == {"VBZ"} and r.after(v):
        return _one(r, v)
    if (
        last > i + 3
        and "VBZ" in verb_forms(r.lower[last])
        and r.after(last) in ("at", "in", "on", "with", "to", "after")
    ):
        return _one(r, last)
    return None


def _one(r: Reading, v: int) -> Found:
    right = form(r.lower[v], "VB")
    return at(r, v, "agreement", f"Two do this: “{right}”.", right) if right else None


@on_words("nor")
def nor_with_many(r: Reading, i: int) -> Found:
    """Neither the coach nor the players was ready.

    >>> show("Neither the coach nor the players was ready.")
    ['agreement: was -> were']
    >>> show("Neither the players nor the coach was ready.")
    []
    """
    if "neither" not in r.lower[:i]:
        return None
    phrase = noun_phrase(r, i + 1)
    if phrase is None or not phrase.many or not phrase.sure or not r.near(phrase.last):
        return None
    v = phrase.last + 1
    right = {"was": "were", "is": "are", "has": "have"}.get(r.lower[v])
    return at(r, v, "agreement", f"The nearer one counts: “{right}”.", right) if right else None


@on_words("which")
def most_of_two(r: Reading, i: int) -> Found:
    """Which is heaviest, a feather or a stone?

    >>> show("Which is heaviest, a feather or a stone?")
    ['comparison: heaviest -> heavier']
    >>> show("Which is the best, a cat, a dog, or a bird? Which is best?")
    []
    """
    if r.after(i) not in ("is", "are") or not r.first[i] or r.lower.count("or") != 1:
        return None
    k = i + 2
    if r.after(i + 1) == "the":
        k += 1
    if (
        k >= r.n
        or r.tag[k] not in ("JJS", "RBS")
        or not r.lower[k].endswith("est")
        or r.text.count(",") != 1
    ):
        return None
    if r.gap[k] != ", ":
        return None
    right = r.lower[k][:-3] + "er"
    return at(r, k, "comparison", f"Of two, one is “{right}”.", right)


@on_words("two")
def most_of_the_two(r: Reading, i: int) -> Found:
    """Of the two ropes, the blue one is longest.

    >>> show("Of the two ropes, the blue one is longest.")
    ['comparison: longest -> longer']
    >>> show("The two ropes are the longest. One of the two is the best.")
    []
    """
    if r.lower[i - 2 : i] != ["of", "the"] or not r.first[i - 2]:
        return None
    k = next((k for k in range(i, r.n) if r.tag[k] in ("JJS", "RBS")), None)
    if k is None or not r.lower[k].endswith("est"):
        return None
    right = r.lower[k][:-3] + "er"
    return at(r, k, "comparison", f"Of two, one is “{right}”.", right)


@on_words("worse better bigger")
def more_of_all(r: Reading, i: int) -> Found:
    """the worse trip you have ever taken.

    >>> show("Write about the worse trip you have ever taken.")
    ['comparison: worse -> worst']
    >>> show("It got worse than ever. The better team won, as ever.")
    []
    """
    if r.before(i) != "the" or "ever" not in r.lower[i:] or not r.near(i):
        return None
    if r.after(i + 1) not in SUBJECTS | {"that"} or is_verb_tag(r.tag[i + 1]):
        return None
    right = {"worse": "worst", "better": "best", "bigger": "biggest"}[r.lower[i]]
    return at(r, i, "comparison", f"Of all, one is the “{right}”.", right)


@on_words("than")
def one_thing_behind_than(r: Reading, i: int) -> Found:
    """more boys than girl.

    >>> show("Are there more boys than girl in the choir?")
    ['plural: girl -> girls']
    >>> show("There is more milk than tea. More dogs than one came.")
    []
    """
    if r.tag[i - 1 : i] != ["NNS"] or r.before(i - 1) not in ("more", "fewer"):
        return None
    word = r.after(i)
    if word not in word_set("girl boy dog cat bird car bike apple book pencil kid adult cow horse"):
        return None
    many = plural_of(word)
    return at(r, i + 1, "plural", "There are more than one of these here.", many) if many else None
