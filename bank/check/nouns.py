"""Things: one and many, a and an, and the article that a thing needs."""

from __future__ import annotations

from functools import cache

from bank.check.articles import CONCRETE
from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    DETERMINERS,
    FUNCTION,
    MANY,
    is_noun,
    is_verb_tag,
    plural_of,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, listed_words, word_set, zipf
from bank.check.names import PERSON_NAMES
from bank.check.reading import Reading
from bank.language import inflections

_NO_PLURAL_AFTER = word_set(
    """more less fewer of hundred thousand million billion dozen percent am pm half other others left right little few"""
)
_BESIDE_NUMBER = word_set(
    "grade room page number chapter step part level day unit bus line route lesson problem may "
    "june july march april august september october november december january february question "
    "act scene game week figure apartment form"
)


_SAME_IN_MANY = word_set(
    "fish deer sheep moose salmon trout bison shrimp squid cod tuna elk aircraft perch bass pike"
)
_UNITS = word_set("inch foot mile pound year month week day hour minute quarter dollar cent")


def _many_word(r: Reading, i: int) -> bool:
    word = r.lower[i]
    if word.isdigit():
        before = r.before(i)
        return not (
            word in ("1", "0")
            or i
            and ":" in r.gap[i - 1]
            or before in _BESIDE_NUMBER
            or len(word) == 4
            or r.gap[i] != " "
        )
    if word in word_set("two three four five six seven eight nine ten"):
        return r.before(i) not in _BESIDE_NUMBER
    return word in MANY and word not in ("both", "these", "those") or word in ("these", "those")


@on_words(" ".join(MANY), "lots")
def one_thing_after_a_word_for_many(r: Reading, i: int) -> Found:
    """After two, many and several the thing is plural.

    >>> show("I have two cat.")
    ['plural: cat -> cats']
    >>> show("How many pencil do you have?")
    ['plural: pencil -> pencils']
    """
    if not r.near(i) or not _many_word(r, i) and r.lower[i] not in ("lots", "both"):
        return None
    if r.lower[i] == "both" and ("and" in r.lower[i + 2 : i + 5] or is_noun(r.before(i))):
        return None
    if r.lower[i] == "lots" and r.after(i) != "of":
        return None
    j = i + 2 if r.lower[i] == "lots" else i + 1
    return _needs_plural(r, i, j)


@on_text()
def one_thing_after_figures(r: Reading) -> Found:
    """After a number in figures the thing is plural.

    >>> show("We saw 12 duck on the pond.")
    ['plural: duck -> ducks']
    """
    found = []
    for i, word in enumerate(r.lower):
        if word.isdigit() and _many_word(r, i) and r.near(i):
            finding = _needs_plural(r, i, i + 1)
            if finding is not None:
                found.append(finding)
    return found


def _needs_plural(r: Reading, i: int, j: int) -> Finding | None:
    steps = 0
    if r.lower[j] in ("more", "other") and r.near(j):
        j += 1
    while (
        j < r.n - 1
        and r.near(j)
        and steps < 2
        and (
            r.tag[j] in ("JJ", "VBN", "JJR", "JJS")
            or "ADJ" in lemmas(r.lower[j])
            and is_noun(r.lower[j + 1])
        )
        and r.lower[j] not in FUNCTION
    ):
        j += 1
        steps += 1
    if j >= r.n:
        return None
    word = r.lower[j]
    many = plural_of(word)
    if (
        many is None
        or word in _NO_PLURAL_AFTER
        or word in FUNCTION
        or "-" in word
        or r.words[j][0].isupper()
    ):
        return None
    if word in _SAME_IN_MANY:
        return None
    if r.lower[i] in ("these", "those") and (is_verb_tag(r.tag[j]) or r.tag[j] in ("JJ", "RB")):
        return None
    after = r.after(j)
    if after and (
        is_noun(after) and r.tag[j + 1][:1] == "N" or "'" in after and is_noun(after.split("'")[0])
    ):
        return None
    if (
        word in _UNITS
        and after == "old"
        and (r.near(j) and r.after(j + 1) in ("", "and", "but", "now", "today"))
    ):
        return at(r, j, "plural", f"More than one: “{many}”.", many)
    if (
        word in _UNITS
        and after
        and (is_noun(after) or after in word_set("old long tall wide high deep thick"))
    ):
        return None
    if r.tag[j] in ("RB", "IN", "VBD", "VBG", "JJ") and not (r.tag[j] == "JJ" and not after):
        return None
    if (
        "-" in r.gap[i]
        or r.before(i) in ("a", "an", "the", "one")
        and r.lower[i] in MANY - {"few"}
        and after
        and after != "of"
        and not (r.tag[j] == "NN" and r.tag[j + 1] in ("VBD", "VBZ", "VBP", "MD"))
    ):
        return None
    certain = r.tag[j] == "NN" or r.tag[j] == "NNP" or not after
    return at(r, j, "plural", f"More than one: “{many}”.", many, certain)


@on_words("a an one every")
def many_things_after_a_word_for_one(r: Reading, i: int) -> Found:
    """After a, one and every stands one thing.

    >>> show("I have a cats.")
    ['plural: cats -> cat']
    """
    if not r.near(i):
        return None
    j = i + 1
    if r.tag[j] in ("JJ",) and r.near(j) and r.lower[j] not in FUNCTION:
        j += 1
    word = r.lower[j]
    one = singular_of(word)
    if one is None or one == word or word in _ONE_ANYWAY or r.words[j][0].isupper() or "'" in word:
        return None
    if (
        r.tag[j] != "NNS"
        or is_noun(r.after(j))
        or r.lower[i] == "one"
        and "VBZ" in verb_forms(word)
    ):
        return None
    if (
        r.lower[j - 1] in ("few", "many", "hundred", "dozen", "couple")
        or zipf(word) > zipf(one) + 0.7
    ):
        return None
    return at(
        r, j, "plural", f"One thing: “{one}”.", one, not r.after(j) or r.after(j) not in ("of",)
    )


_ONE_ANYWAY = word_set(
    "news sports series species crossroads headquarters means glasses pants scissors lots physics "
    "mathematics gymnastics lens gas bus tennis sometimes stairs goods clothes things days times"
)


@on_words("of")
def one_thing_after_some_of(r: Reading, i: int) -> Found:
    """One of, some of, all of the things.

    >>> show("One of my friend has a pony.")
    ['plural: friend -> friends']
    """
    if r.before(i) not in word_set(
        "one two many several few each both lots three which"
    ) or not r.near(i):
        return None
    j = i + 1
    if (
        r.lower[j] not in word_set("my the his her our their your these those")
        and r.before(i) != "lots"
    ):
        return None
    if r.before(i) == "lots":
        return None
    if not r.near(j):
        return None
    j += 1
    if r.tag[j][:2] == "JJ" and r.near(j):
        j += 1
    many = plural_of(r.lower[j])
    if (
        many is None
        or r.lower[j] in _SAME_IN_MANY
        or r.tag[j] not in ("NN",)
        or is_noun(r.after(j))
        or r.lower[j] in ("family", "class", "group", "team", "time")
    ):
        return None
    return at(r, j, "plural", f"More than one: “{many}”.", many)


@on_words("lot")
def one_thing_after_a_lot_of(r: Reading, i: int) -> Found:
    """A lot of a thing that can be counted is many.

    >>> show("She has a lot of toy.")
    ['plural: toy -> toys']
    """
    if r.after(i) != "of" or not r.near(i + 1):
        return None
    j = i + 2
    many = plural_of(r.lower[j])
    if (
        many is None
        or r.lower[j] not in CONCRETE
        or r.tag[j] not in ("NN", "VB")
        or is_noun(r.after(j))
    ):
        return None
    return at(r, j, "plural", f"More than one: “{many}”.", many, not r.after(j))


@on_text()
def plural_that_no_noun_has(r: Reading) -> Found:
    """A plural made by the rule from a noun that does not follow it.

    >>> show("The childs fed two mouses and my foots hurt.")
    ['plural: childs -> children', 'plural: mouses -> mice', 'plural: foots -> feet']
    """
    found = []
    for i, word in enumerate(r.lower):
        if word[-1:] != "s" or len(word) < 4 or "'" in word:
            continue
        right = bad_plural(word)
        if right is None or r.words[i][0].isupper() and word[:-1] in PERSON_NAMES:
            continue
        if r.gap[i].startswith(("' ", "’ ")):
            continue  # "the childrens' coats"
        if word in listed_words() or verb_forms(word):
            before = r.before(i)
            if not (
                before in DETERMINERS
                or before in MANY
                or before.isdigit()
                or r.tag[i - 1 : i] == ["JJ"]
            ):
                continue
        following = r.after(i)
        if word.endswith("ys") and r.before(i) in ("the", "a", "my") and _thing_closes(r, i + 1):
            continue  # the ponys saddle
        if (
            following
            and is_noun(following)
            and r.tag[i + 1][:1] == "N"
            and not verb_forms(following)
        ):
            continue
        found.append(at(r, i, "plural", f"More than one: “{right}”.", right))
    return found


@cache
def bad_plural(word: str) -> str | None:
    """The right plural for a child's one, None where `word` is none.

    >>> [bad_plural(w) for w in ("childs", "boxs", "babys", "sheeps", "dogs", "buses")]
    ['children', 'boxes', 'babies', 'sheep', None, None]
    """
    stems = [word[:-1]]
    if word.endswith("es"):
        stems.append(word[:-2])
    for stem in stems:
        own = lemmas(stem).get("NOUN", ())
        if not own or zipf(stem) < 3 or stem in FUNCTION or len(stem) < 3:
            continue
        # "mens", "feets": the plural with one more s
        if own[0] != stem and own[0] + "s" != stem and stem not in own:
            return stem if not stem.endswith("s") else None
        forms = inflections(stem, "NNS")
        if forms and forms[0] == stem and word == stem + "s" and word not in listed_words():
            return stem
        if word in _SOUND_PLURAL and forms and forms[0] != word:
            return forms[0]
        if not forms or word in forms or word in lemmas(word).get("NOUN", ()):
            continue
        if word in listed_words() and word not in _SOUND_PLURAL:
            continue
        if (
            word.endswith("es")
            and stem == word[:-2]
            and stem + "s" == forms[0]
            and word in listed_words()
        ):
            continue
        return forms[0]
    return None


# Real words that are seldom meant: the plural of an uncommon noun or a verb's form.
_SOUND_PLURAL = word_set(
    "foots tooths gooses mouses leafs knifes wolfs calfs halfs shelfs loafs wifes lifes thiefs "
    "mans womans oxes louses deers sheeps fishs elfs"
)


def _thing_closes(r: Reading, j: int) -> bool:
    """Whether a thing, with a describing word before it at most, closes the text from word `j` on."""
    if j < r.n - 1 and r.near(j) and r.tag[j][:2] in ("JJ", "CD"):
        j += 1
    return j < r.n and is_noun(r.lower[j]) and not r.after(j)
