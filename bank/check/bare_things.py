"""Things that lack the small word before them: at new school, in box, to beach."""

from __future__ import annotations

from bank.check.articles import CONCRETE
from bank.check.engine import Found, at, on_words
from bank.check.grammar import (
    is_noun,
    plural_of,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_LOOKS = word_set("new old big small little red blue green yellow nice good tall tiny huge")

_PLAIN_WORDS = word_set("at in on with from to into for under behind near")


@on_words(" ".join(_LOOKS))
def described_thing_without_article(r: Reading, i: int) -> Found:
    """at new school, in big house: one thing behind a small word and a describing word.

    >>> show("I was shy at new school.")
    ['article: new school -> a new school']
    >>> show("We paint with red paint. He is at good old school. She reads to old friends.")
    []
    """
    if r.before(i) not in _PLAIN_WORDS or not r.near(i) or r.lower[i + 1] not in _COUNTED:
        return None
    thing = r.lower[i + 1]
    if plural_of(thing) in (None, thing) or r.tag[i + 1] != "NN" or is_noun(r.after(i + 1)):
        return None
    said = r.text[r.starts[i] : r.ends[i + 1]]
    article = "an" if said[0] in "aeiou" else "a"
    return at(
        r, i, "article", f"“{said}” needs a small word like “{article}” before it.",
        f"{article} {said}", to=i + 1,
    )  # fmt: skip


_COUNTED = word_set(
    """school house room car bus truck book table chair desk bed bag box park store farm dog cat
    horse boat bike hat coat shirt dress teacher friend neighbor barn tree hill pond town city
    garden yard pencil pen brush bowl cup plate spoon basket bucket wagon sled door window"""
)

_RIDES = word_set("drive drives drove driving")

_WHEELS = word_set("bus car truck train van tractor taxi boat plane")


@on_words(" ".join(_RIDES))
def ride_without_article(r: Reading, i: int) -> Found:
    """My mom drives bus.

    >>> show("My mom drives bus in the city.")
    ['article: bus -> a bus']
    >>> show("She drives bus 9 to school. He drives truck parts to the shop.")
    []
    """
    thing = r.after(i)
    behind = r.after(i + 1) if thing else ""
    if thing not in _WHEELS or behind and (behind.isdigit() or is_noun(behind)):
        return None
    return at(
        r, i + 1, "article", f"“{thing}” needs a small word like “a” before it.", f"a {thing}"
    )


_ON = word_set(
    "ferry bus train plane boat roof table chair floor swing slide wall shelf playground farm porch "
    "sidewalk stage ladder desk bench couch rug"
)

_IN = word_set(
    "box park kitchen barn garden car tree yard pond forest store closet bag backpack lunchbox desk "
    "truck tent cave nest bucket basket drawer garage playground hallway window"
)


@on_words("on in")
def place_without_article(r: Reading, i: int) -> Found:
    """a ride on ferry, toys in box.

    >>> show("We put the toys in box.")
    ['article: box -> the box']
    >>> show("It is in box form. Play it on stage left.")
    []
    """
    thing = r.after(i)
    if thing not in (_ON if r.lower[i] == "on" else _IN) or r.tag[i + 1] != "NN":
        return None
    behind = r.after(i + 1)
    if behind and (is_noun(behind) or behind.isdigit()) or r.words[i + 1][0].isupper():
        return None
    if thing in ("stage", "floor") and behind or r.gap[i + 1][:1] == "-":
        return None
    return at(
        r, i + 1, "article", f"“{thing}” needs a small word like “the” before it.", f"the {thing}"
    )


@on_words("is was isn't wasn't")
def thing_that_there_is(r: Reading, i: int) -> Found:
    """Is there playground near? There was fox in the yard.

    >>> show("Is there playground near your home?")
    ['article: playground -> a playground']
    >>> show("Is there milk? There is time. There was snow on the hill.")
    []
    """
    j = i + 1 if r.before(i) == "there" else i + 2 if r.first[i] and r.after(i) == "there" else 0
    if not j or j >= r.n or not r.near(j - 1) or r.tag[j] != "NN":
        return None
    thing, behind = r.lower[j], r.after(j)
    if thing not in _COUNTED | CONCRETE | {"playground"} or behind and is_noun(behind):
        return None
    article = "an" if thing[0] in "aeiou" else "a"
    return at(
        r,
        j,
        "article",
        f"“{thing}” needs a small word like “{article}” before it.",
        f"{article} {thing}",
    )


_TO_PLACES = word_set(
    "beach park store zoo library lake pool museum playground movies doctor dentist fair mall office "
    "gym cafeteria river pond bathroom barn bakery airport circus"
)


@on_words("to at from")
def known_place_without_the(r: Reading, i: int) -> Found:
    """to beach, at zoo.

    >>> show("We took our buckets to beach with Grandma.")
    ['article: beach -> the beach']
    >>> show("We went to beach parties. She likes to park here.")
    []
    """
    place = r.after(i)
    if place not in _TO_PLACES:
        return None
    verb = r.tag[i + 1] != "NN" and (
        place in ("park", "pool", "store", "mall") or r.tag[i - 1][:1] != "N"
    )
    if verb or r.words[i + 1][0].isupper():
        return None
    behind = r.after(i + 1)
    if behind and is_noun(behind) or r.gap[i + 1][:1] == "-":
        return None
    return at(r, i + 1, "article", f"“{place}” needs “the” before it.", f"the {place}")


_BUYS = word_set(
    "got get gets have has had bought buy saw see want wants found need needs built made drew"
)


@on_words("new big small little")
def new_thing_without_article(r: Reading, i: int) -> Found:
    """A time I got new pet.

    >>> show("A time I got new pet", "topic")
    ['article: new pet -> a new pet']
    >>> show("We got new paint. I have little time.")
    []
    """
    thing = r.after(i)
    if (
        r.before(i) not in _BUYS
        or thing not in _COUNTED | CONCRETE | {"pet"}
        or r.tag[i + 1] != "NN"
    ):
        return None
    if r.after(i + 1) and is_noun(r.after(i + 1)):
        return None
    said = f"{r.words[i]} {r.words[i + 1]}"
    return at(
        r, i, "article", f"“{said}” needs a small word like “a” before it.", f"a {said}", to=i + 1
    )
