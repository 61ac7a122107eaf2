"""Persons whose verb, small word or case is wrong: I been, yells you, is her so sad."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.grammar import (
    ARTICLES,
    BE,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.missing import missing_behind
from bank.check.reading import Reading

_AT = {"yell": "at", "shout": "at", "laugh": "at", "smile": "at", "wave": "at", "stare": "at", "point": "at",
       "speak": "to", "talk": "to", "listen": "to", "wait": "for", "look": "at", "depend": "on"}  # fmt: skip


@on_words(
    " ".join(w + e for w in _AT for e in ("", "s", "ed", "ing")),
    "waves waved waving smiled smiling stared staring spoke",
)
def small_word_before_a_person(r: Reading, i: int) -> Found:
    """yells you, waved me, listen him.

    >>> show("How do you feel when someone yells you?")
    ['missing-word: yells you -> yells at you']
    >>> show("He waved us through the gate. We look.")
    []
    """
    if r.after(i) not in OBJECTS | {"you"} or r.after(i) == "her" and is_noun(r.after(i + 1)):
        return None
    behind = r.after(i + 1)
    if behind and behind not in word_set("and when because if today again every in at on after"):
        return None
    if not verb_forms(r.lower[i]) or r.before(i) in ARTICLES | POSSESSIVES:
        return None
    stem = next((w for w in _AT if r.lower[i].startswith(w[:4])), None)
    return missing_behind(r, i, _AT[stem]) if stem else None


@on_words("help helps helped helping")
def with_behind_who_is_helped(r: Reading, i: int) -> Found:
    """The aide helped Marcus his zipper.

    >>> show("The aide helped Marcus his zipper.")
    ['missing-word: Marcus his -> Marcus with his']
    >>> show("She helped Marcus zip his coat. He helped my mom.")
    []
    """
    who = r.after(i)
    if (
        not who
        or not r.near(i + 1)
        or r.lower[i + 2] not in POSSESSIVES - {"her"}
        or who in POSSESSIVES
    ):
        return None
    named = r.words[i + 1][0].isupper() or who in OBJECTS
    closes = i + 3 < r.n and not r.after(i + 3)
    return missing_behind(r, i + 1, "with") if named and closes else None


_GOOD = word_set(
    "good bad great afraid proud scared happy sad tired sorry ready hungry thankful glad"
)


@on_words("i we they he she you")
def person_who_is_something(r: Reading, i: int) -> Found:
    """Something I good at: the verb is missing in a topic, too.

    >>> show("Something I good at", "topic")
    ['missing-word: I good -> I am good']
    >>> show("What makes you happy", "topic")
    []
    """
    if (
        r.kind != "topic"
        or r.after(i) not in _GOOD
        or r.lower[i] == "you"
        and verb_forms(r.before(i))
    ):
        return None
    behind = r.after(i + 1)
    if behind and behind not in PREPOSITIONS | {"when", "to", "because"}:
        return None
    verb = {"i": "am", "he": "is", "she": "is"}.get(r.lower[i], "are")
    return missing_behind(r, i, verb)


@on_words("been")
def have_before_been(r: Reading, i: int) -> Found:
    """I been waiting.

    >>> show("I been waiting for my turn.")
    ['missing-word: I been -> I have been']
    >>> show("Where have you been? I have been ill.")
    []
    """
    who = r.before(i)
    if who not in SUBJECTS or not (
        r.first[i - 1] or r.before(i - 1) in ("and", "but", "because", "when")
    ):
        return None
    return missing_behind(r, i - 1, "has" if who in ("he", "she", "it") else "have")


@on_words("him them us me her")
def person_asked_about(r: Reading, i: int) -> Found:
    """Why is her so sad? Did them bring a cake?

    >>> show("Why is her so sad today?")
    ['pronoun: her -> she']
    >>> show("Did them bring a cake?")
    ['pronoun: them -> they']
    >>> show("Is her bag wet? Who is with them?")
    []
    """
    helper, after = r.before(i), r.after(i)
    opens = helper and (
        r.first[i - 1]
        or r.before(i - 1) in ("why", "where", "how", "when", "what")
        and r.first[i - 2]
    )
    if not opens or not after:
        return None
    right = {"him": "he", "them": "they", "us": "we", "me": "I", "her": "she"}[r.lower[i]]
    described = after in ("so", "very", "too", "still", "not", "always") and helper in BE
    described = described and r.after(i + 2) in (
        "",
        "today",
        "now",
        "tonight",
        "with",
        "about",
        "when",
    )
    does = helper in ("did", "does", "do", "can", "will") and r.lower[i] == "them"
    does = does and "VB" in verb_forms(after) and singular_of(after) is None
    if not described and not does:
        return None
    return at(r, i, "pronoun", f"Who it is about is “{right}”.", right)
