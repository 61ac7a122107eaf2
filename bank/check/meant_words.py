"""Which word was meant, by the words around: must of the winter, even thought, step my step."""

from __future__ import annotations

from bank.check.confused_help import wrong_word
from bank.check.engine import Found, on_words
from bank.check.grammar import (
    AUXILIARIES,
    BE,
    DETERMINERS,
    DO,
    FUNCTION,
    MODALS,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    plural_of,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading


@on_words("same step day side room page face hand year piece bit little line inch")
def my_for_by(r: Reading, i: int) -> Found:
    """step my step.

    >>> show("Explain how to make it step my step.")
    ['homophone: my -> by']
    """
    if r.after(i) != "my" or r.after(i + 1) != r.lower[i]:
        return None
    return wrong_word(r, i + 1, "by")


@on_words("must")
def must_for_most(r: Reading, i: int) -> Found:
    """for must of the winter.

    >>> show("Bears sleep for must of the winter.")
    ['homophone: must -> most']
    """
    if (
        r.after(i) != "of"
        or r.before(i) in SUBJECTS
        or r.after(i + 1) not in DETERMINERS | {"us", "them", "it"}
    ):
        return None
    return wrong_word(r, i, "most")


@on_words("thought")
def thought_for_though(r: Reading, i: int) -> Found:
    """even thought it was late.

    >>> show("We crossed even thought the bridge looked weak.")
    ['homophone: thought -> though']
    >>> show("He even thought the soup was good.")
    []
    """
    if (
        r.before(i) != "even"
        or not r.first[i - 1]
        and r.lower[i - 2] in SUBJECTS | {"and"}
        or r.before(i - 1)
        and r.tag[i - 2][:1] == "N"
    ):
        return None
    return wrong_word(r, i, "though")


@on_words("hear")
def hear_at_the_end(r: Reading, i: int) -> Found:
    """Put your lunch boxes hear.

    >>> show("Please put your lunch boxes hear.")
    ['homophone: hear -> here']
    >>> show("What did the children hear? He spoke so that all could hear. I like what I hear.")
    []
    """
    if r.after(i) or r.gap[i].strip()[:1] not in (".", "!") or i < 2:
        return None
    if r.lower[0] not in word_set(
        "please put leave bring set keep sit stand wait stop"
    ) or not is_noun(r.before(i)):
        return None
    if any(w in AUXILIARIES or w in ("to", "what", "that") for w in r.lower[:i]):
        return None
    return wrong_word(r, i, "here")


@on_words("won")
def won_before_a_thing(r: Reading, i: int) -> Found:
    """gave me won shiny marble.

    >>> show("Grandpa gave me won shiny marble.")
    ['homophone: won -> one']
    >>> show("He won big prizes. They won nice hats. It made me happy.")
    []
    """
    if r.before(i) not in (
        "me",
        "him",
        "us",
        "them",
        "only",
        "have",
        "just",
        "with",
        "and",
        "for",
    ) or not r.near(i):
        return None
    if r.before(i) in ("have", "and", "only", "just") and r.tag[i] in ("VBD", "VBN"):
        return None
    j = i + 1
    if r.tag[j][:2] == "JJ" and r.near(j):
        j += 1
    if r.lower[j] in FUNCTION or not plural_of(r.lower[j]):
        return None
    return wrong_word(r, i, "one")


@on_words("affect effect")
def effect_or_affect(r: Reading, i: int) -> Found:
    """What affect did it have?

    >>> show("What affect did the storm have? It will effect the crops.")
    ['homophone: affect -> effect', 'homophone: effect -> affect']
    >>> show("How did it affect you? The effect was big. How does sleep affect us?")
    []
    """
    before, after = r.before(i), r.after(i)
    if r.lower[i] == "affect":
        named = before in DETERMINERS | {"big", "bad", "good", "main", "strong"}
        return (
            wrong_word(r, i, "effect")
            if named and (after in DO | BE | MODALS | PREPOSITIONS | {"of"} or not after)
            else None
        )
    verb = before in MODALS | DO | {"to", "not"} and after in DETERMINERS | {
        "us",
        "you",
        "me",
        "them",
        "people",
        "how",
    }
    return wrong_word(r, i, "affect") if verb else None
