"""One among many: each of them is, all the things, a misspelt plural that a thing follows."""

from __future__ import annotations

from bank.check.agreement import FOR_ONE, agreement_finding
from bank.check.engine import Found, at, on_text, on_words
from bank.check.grammar import (
    AUXILIARIES,
    FUNCTION,
    MODALS,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    form,
    is_noun,
    noun_phrase,
    plural_of,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_BEFORE = word_set("and but because when if so then while that today")


@on_words("each neither either one")
def one_of_them_with_the_verb_of_many(r: Reading, i: int) -> Found:
    """each of the boys carries, one of my friends is.

    >>> show("Each of the boys carry a flag.")
    ['agreement: carry -> carries']
    >>> show("One of my friends have a pony.")
    ['agreement: have -> has']
    >>> show("Can one of the boys carry it? One of the men who sing is my uncle.")
    []
    """
    if r.after(i) != "of" or not r.near(i + 1):
        return None
    opens = r.first[i] or r.before(i) == "which" and r.first[i - 1]
    opens = opens or r.before(i) in _BEFORE or r.before(i) == "every" and r.first[i - 1]
    if not opens or i > 0 and r.first[i] is False and r.before(i) == "":
        return None
    if r.lower[i + 2] in OBJECTS:
        v, last = i + 3, i + 2
    else:
        phrase = noun_phrase(r, i + 2)
        if phrase is None:
            return None
        v, last = phrase.last + 1, phrase.last
        if (
            v + 1 < r.n
            and r.near(last)
            and r.lower[v] in ("on", "in", "at", "with", "under", "from")
        ):
            behind = noun_phrase(r, v + 1)
            if behind is not None:
                v, last = behind.last + 1, behind.last
    if v >= r.n or not r.near(last) or any(w in MODALS for w in r.lower[max(0, i - 3) : i]):
        return None
    word = r.lower[v]
    subject = r.text[r.starts[i] : r.ends[last]]
    if word in FOR_ONE and word not in ("were", "weren't"):
        return agreement_finding(r, v, subject, FOR_ONE[word])
    if word in FUNCTION or verb_forms(word) != {"VB"} or r.tag[v] in ("JJ", "IN", "RB"):
        return None
    right = form(word, "VBZ")
    return agreement_finding(r, v, subject, right) if right else None


@on_words("all")
def all_the_thing(r: Reading, i: int) -> Found:
    """All the thing, all my friend: more than one.

    >>> show("Name all the toy in the box.")
    ['plural: toy -> toys']
    >>> show("We played all the time and ate all the cake. All my family came.")
    []
    """
    if r.after(i) not in POSSESSIVES | {"the", "of", "these", "those"} or not r.near(i + 1):
        return None
    j = i + 2
    if r.lower[i + 1] == "of" and r.near(j) and r.lower[j] in POSSESSIVES | {"the", "these"}:
        j += 1
    if j < r.n - 1 and r.tag[j][:2] == "JJ" and r.near(j):
        j += 1
    if j >= r.n:
        return None
    word = r.lower[j]
    many = plural_of(word)
    if (
        many in (None, word)
        or word not in _COUNTED
        or is_noun(r.after(j))
        and r.tag[j + 1][:1] == "N"
    ):
        return None
    return at(r, j, "plural", f"More than one: “{many}”.", many, r.tag[j] == "NN")


_COUNTED = word_set(
    """thing toy book friend kid child student boy girl dog cat bird animal game chair desk table
    pencil crayon marker block ball car truck bus door window tree flower leaf plant letter number
    word name color shape song story picture page rule job chore egg apple cookie cupcake plate cup
    spoon shoe sock coat hat shirt button box bag bed light star planet street town farm horse cow
    pig hen duck frog fish_ bug bee ant teacher neighbor cousin brother sister player team coin"""
)
_TWICE_MANY = {
    "childrens": "children", "mens": "men", "womens": "women", "peoples": "people", "mices": "mice",
    "feets": "feet", "teeths": "teeth", "geeses": "geese",
}  # fmt: skip
_HOW_MANY = word_set(
    "many some few several all two three four five six seven eight nine ten both these those most"
)


@on_words(" ".join(_TWICE_MANY))
def many_made_many_again(r: Reading, i: int) -> Found:
    """childrens where no thing of theirs follows.

    >>> show("How many childrens are here?")
    ['plural: childrens -> children']
    """
    if r.gap[i].startswith(("'", "’")):
        return None  # "the childrens' coats"
    after = r.after(i)
    if r.before(i) not in _HOW_MANY and after and is_noun(after) and after not in AUXILIARIES:
        return None
    right = _TWICE_MANY[r.lower[i]]
    return at(r, i, "plural", f"More than one: “{right}”.", right)


_WRONG_F = {
    "wolfs": "wolves", "knifes": "knives", "leafs": "leaves", "shelfs": "shelves",
    "loafs": "loaves", "wifes": "wives", "calfs": "calves", "halfs": "halves", "thiefs": "thieves",
    "scarfs": "scarves", "gooses": "geese", "mouses": "mice", "oxes": "oxen", "mooses": "moose",
}  # fmt: skip


@on_words(" ".join(set(_WRONG_F) - {"scarfs"}))
def plural_of_a_thing_in_f(r: Reading, i: int) -> Found:
    """facts about wolfs.

    >>> show("We read facts about wolfs.")
    ['plural: wolfs -> wolves']
    >>> show("She wolfs it.")
    []
    """
    if r.before(i) in word_set("he she it who dad mom") or r.after(i) in (
        "down",
        "through",
        "around",
    ):
        return None
    right = _WRONG_F[r.lower[i]]
    return at(r, i, "plural", f"More than one: “{right}”.", right)


@on_text({"topic"})
def this_many_in_a_topic(r: Reading) -> Found:
    """Why this animals need help.

    >>> show("Why this animals need our help", "topic")
    ['agreement: this -> these']
    """
    for i in range(r.n - 1):
        if (
            (r.lower[i] != "this" and not (r.first[i] and r.lower[i] == "that"))
            or not r.near(i)
            or r.tag[i + 1] not in ("NNS", "NNPS")
        ):
            continue
        if (
            singular_of(r.lower[i + 1]) is None
            or "VBZ" in verb_forms(r.lower[i + 1])
            and r.after(i + 1) not in AUXILIARIES
        ):
            continue
        if (
            r.after(i + 1)
            and not verb_forms(r.after(i + 1))
            and r.after(i + 1) not in ("in", "on", "at", "of")
        ):
            continue
        right = "these" if r.lower[i] == "this" else "those"
        return at(r, i, "agreement", f"More than one: “{right}”.", right)
    return None


@on_words("that who which")
def verb_behind_that_one(r: Reading, i: int) -> Found:
    """A bird that sing, the birds that sings.

    >>> show("I saw a bird that sing at dawn.")
    ['agreement: sing -> sings']
    >>> show("The birds that sing are gone. I like the bird that you see. One of the men who sing left.")
    []
    """
    if not r.near(i) or r.before(i - 1) == "of" or r.tag[i - 1 : i] not in (["NN"], ["NNS"]):
        return None
    if i > 3 and r.lower[i - 3] in PREPOSITIONS and r.tag[i - 4] == "NNS":
        return None  # "words in this poem that rhyme"
    word, behind = r.lower[i + 1], r.after(i + 1)
    if not r.before(i) or word in FUNCTION - {"have"} or r.before(i - 1) in ("and", "or"):
        return None
    one = r.tag[i - 1] == "NN" and r.before(i - 1) in _ONE_OPENS | {
        "old",
        "big",
        "little",
        "small",
        "new",
    }
    forms = verb_forms(word)
    thing = is_noun(word) and not behind
    if (
        one
        and forms == {"VB"}
        and not thing
        and r.tag[i + 1] in ("VBP", "VB", "NN")
        and "of" not in r.lower[max(0, i - 4) : i]
    ):
        right = "has" if word == "have" else form(word, "VBZ")
        return (
            at(r, i + 1, "agreement", f"“{r.lower[i - 1]}” goes with “{right}”.", right)
            if right
            else None
        )
    return None


_ONE_OPENS = word_set("a an one every this each another")


@on_words("everyone everybody someone somebody nobody anyone")
def everyone_in_a_place(r: Reading, i: int) -> Found:
    """Everyone in our room like popcorn.

    >>> show("Everyone in our room like popcorn day.")
    ['agreement: like -> likes']
    >>> show("Everyone in our room likes it. Does everyone in the room like it?")
    []
    """
    if not r.first[i] or r.after(i) not in ("in", "on", "at", "from") or not r.near(i + 1):
        return None
    phrase = noun_phrase(r, i + 2)
    if phrase is None or not r.near(phrase.last) or phrase.last + 1 >= r.n:
        return None
    v = phrase.last + 1
    word = r.lower[v]
    subject = r.text[r.starts[i] : r.ends[phrase.last]]
    if word in FOR_ONE:
        return agreement_finding(r, v, subject, FOR_ONE[word])
    right = form(word, "VBZ") if "VB" in verb_forms(word) and form(word, "VBD") != word else None
    if right is None or word in FUNCTION - {"like"} or r.tag[v] == "NNS":
        return None
    return agreement_finding(r, v, subject, right)


@on_words("this")
def this_many(r: Reading, i: int) -> Found:
    """This pencils are short.

    >>> show("This pencils are too short.")
    ['agreement: This -> These']
    >>> show("This means that we are late.")
    []
    """
    if not r.near(i) or singular_of(r.lower[i + 1]) is None or r.after(i + 1) not in _FOR_MANY:
        return None
    return at(r, i, "agreement", "More than one: “these”.", "these")


_FOR_MANY = word_set("are were aren't weren't don't have haven't do")
_YOUNG = word_set(
    "baby kid child boy girl puppy kitten student parent adult lamb cub whale shark spider snake"
)


@on_words("all")
def all_before_one(r: Reading, i: int) -> Found:
    """Do all baby cry?

    >>> show("Do all baby cry at night?")
    ['plural: baby -> babies']
    >>> show("Do all babies cry? We swam all day.")
    []
    """
    one = r.after(i)
    many = plural_of(one) if one in _YOUNG | _COUNTED else None
    if many in (None, one) or is_noun(r.after(i + 1)) and not verb_forms(r.after(i + 1)):
        return None
    behind = r.after(i + 1)
    if behind and not verb_forms(behind) and behind not in AUXILIARIES:
        return None
    return at(r, i + 1, "plural", f"More than one: “{many}”.", many)


@on_words("these those")
def one_thing_behind_those_are(r: Reading, i: int) -> Found:
    """Are those your new shoe? Those are my sock.

    >>> show("Are those your new shoe?")
    ['plural: shoe -> shoes']
    >>> show("Those are my family. These are my pants.")
    []
    """
    j = i + 1
    if j < r.n and r.lower[j] in ("are", "were") and r.near(i):
        j += 1
    elif r.before(i) not in ("are", "were"):
        return None
    if j >= r.n - 1 or r.lower[j] not in POSSESSIVES or not r.near(j - 1) or not r.near(j):
        return None
    j += 1
    if r.tag[j][:2] == "JJ" and r.near(j) and j < r.n - 1:
        j += 1
    many = plural_of(r.lower[j])
    if (
        many in (None, r.lower[j])
        or r.lower[j] not in _COUNTED
        or r.after(j)
        and is_noun(r.after(j))
    ):
        return None
    return at(r, j, "plural", f"More than one: “{many}”.", many)
