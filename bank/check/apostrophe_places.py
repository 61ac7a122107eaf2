"""Apostrophes that neighbours ask for: think its fair, how it's body helps, Mothers Day."""

from __future__ import annotations

from bank.check.confused_help import wrong_word
from bank.check.engine import Found, at, on_words
from bank.check.grammar import (
    ARTICLES,
    POSSESSIVES,
    PREPOSITIONS,
    is_verb_tag,
    plural_of,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading


@on_words("well")
def well_for_we_will(r: Reading, i: int) -> Found:
    """Tomorrow well visit the farm.

    >>> show("Tomorrow well visit the farm. Next week well go to camp.")
    ["apostrophe-contraction: well -> we'll", "apostrophe-contraction: well -> we'll"]
    >>> show("Today went well. The dog can well be lost.")
    []
    """
    if "VB" not in verb_forms(r.after(i)) or r.after(i) in ("be", "done", "known"):
        return None
    before = r.before(i) or (r.lower[i - 1] if i and r.gap[i - 1] == ", " else "")
    if before not in word_set("tomorrow tonight later soon week month year then today"):
        return None
    return at(r, i, "apostrophe-contraction", "“We will” is written “we'll”.", "we'll")


@on_words("its")
def its_for_it_is_before_to(r: Reading, i: int) -> Found:
    """Do you think its fair to go?

    >>> show("Do you think its fair to go? I know its hard to wait.")
    ["apostrophe-contraction: its -> it's", "apostrophe-contraction: its -> it's"]
    """
    if "ADJ" not in lemmas(r.after(i)) or r.after(i + 1) not in ("to", "that", "for", "when", "if"):
        return None
    if r.before(i) not in word_set(
        "think know say says said hope sure because when if feel believe that guess"
    ):
        return None
    return at(r, i, "apostrophe-contraction", "“It is” is written “it's”.", "it's")


@on_words("it's")
def it_is_before_what_it_owns(r: Reading, i: int) -> Found:
    """explain how it's body helps it.

    >>> show("Explain how it's body helps it. The bird hurt it's wing.")
    ["homophone: it's -> its", "homophone: it's -> its"]
    >>> show("It's food that I like. It's fun. I know how it's done.")
    []
    """
    word = r.after(i)
    if word not in word_set(
        "body wing wings tail head nest leg legs paw paws fur eggs mouth "
        "nose ears eyes home shell shape color size name owner babies mother young skin feathers roots leaves"
    ):
        return None
    before = r.before(i)
    if not before or before in ("and", "but", "because", "think", "if", "that", "when"):
        return None
    if (
        before not in PREPOSITIONS
        and before != "how"
        and not is_verb_tag(r.tag[i - 1])
        and not verb_forms(before)
    ):
        return None
    return wrong_word(r, i, "its")


_DAYS_OF = word_set("mothers fathers valentines presidents groundhogs new-years years patricks")


@on_words("day eve")
def day_without_its_apostrophe(r: Reading, i: int) -> Found:
    """Mothers Day, New Years Eve.

    >>> show("I made a card for Mothers Day. It was New Years Eve.")
    ["apostrophe-possessive: Mothers -> Mother's", "apostrophe-possessive: Years -> Year's"]
    >>> show("Veterans Day is here. It took two years. Day by day.")
    []
    """
    before = r.before(i)
    if (
        before not in _DAYS_OF
        or before == "years"
        and r.before(i - 1) != "new"
        or before == "presidents"
    ):
        return None
    if r.words[i - 1][0].islower() and before == "years":
        return None
    right = r.words[i - 1][:-1] + "'s"
    return at(r, i - 1, "apostrophe-possessive", f"This is written “{right}”.", right)


@on_words("are were have do")
def owner_for_many(r: Reading, i: int) -> Found:
    """The cat's are asleep.

    >>> show("The cat's are asleep on the porch.")
    ["apostrophe-possessive: cat's -> cats"]
    >>> show("Which of the cat's are white? The dog's are bigger than the cat's.")
    []
    """
    owner = r.before(i)
    if (
        not owner.endswith("'s")
        or r.before(i - 1) not in ARTICLES | POSSESSIVES | {"these", "those", "both"}
        or not r.first[i - 2]
    ):
        return None
    word = owner[:-2]
    many = plural_of(word)
    if many is None or "than" in r.lower or singular_of(word):
        return None
    return at(r, i - 1, "apostrophe-possessive", "More than one needs no apostrophe.", many)
