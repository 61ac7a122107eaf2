"""Small words by their jobs, the forms that a word can have, and reading a noun phrase.

The tags of a parser cannot be trusted in a faulty sentence, so the rules ask several witnesses:
the tag, the forms that lemminflect knows, and the counts of word pairs.
"""

from __future__ import annotations

from functools import cache

from bank.check.lexicon import lemmas, pair, word_set
from bank.check.reading import Reading
from bank.language import inflections

BE = word_set("am is are was were be been being")
HAVE = word_set("have has had")
DO = word_set("do does did")
MODALS = word_set("can could will would shall should may might must")
_NEGATED = frozenset(
    f"{w}n't"
    for w in "is are was were have has had do does did could would should must might need".split()
) | word_set("can't won't shan't cannot ain't")
AUXILIARIES = BE | HAVE | DO | MODALS | _NEGATED
HE = word_set("he she it")
THEY = word_set("i you we they")
SUBJECTS = HE | THEY
OBJECTS = word_set("me him her us them")
POSSESSIVES = word_set("my your his her its our their")
ARTICLES = word_set("a an the")
DETERMINERS = (
    ARTICLES
    | POSSESSIVES
    | word_set("this that these those each every another some any no which what whose both all")
)
ONE = word_set("a an one each every another this that either neither")
MANY = word_set(
    """two three four five six seven eight nine ten eleven twelve twenty thirty forty fifty sixty
    seventy eighty ninety hundred many several few both these those"""
)
WH = word_set("what where when why how who which whose whom")
JOINERS = word_set(
    "and but so or because when if while after before until although since that then"
)
ADVERBS = word_set(
    """always never also often usually really just sometimes still already ever not probably only
    even almost almost once finally now soon"""
)
SINGULAR_PRONOUNS = word_set(
    """everybody everyone everything somebody someone something nobody anybody anyone anything
    nothing"""
)
PREPOSITIONS = word_set(
    """in on at to from with by for of under over near into onto through across behind beside
    between around along after before about above below inside outside off up down during without
    against among toward towards past like until"""
)
FUNCTION = (
    AUXILIARIES | SUBJECTS | OBJECTS | DETERMINERS | WH | JOINERS | ADVERBS | PREPOSITIONS
    | SINGULAR_PRONOUNS
    | word_set(
        """
        not there here too very well back then than more most much lot out away again as own
        """
    )
)  # fmt: skip
# Forms that are met as the past of one verb far more than as the plain form of another.
_MOSTLY_PAST = word_set(
    "found saw fell felt wound ground bore rode rose spoke left lit shot stove dove"
)


@cache
def verb_forms(word: str) -> frozenset[str]:
    """The Penn tags that `word` can have as a verb: VB (also VBP), VBZ, VBD, VBN, VBG.

    >>> sorted(verb_forms("ran")), sorted(verb_forms("put"))
    (['VBD'], ['VB', 'VBD', 'VBN'])
    """
    tags: set[str] = set()
    for lemma in lemmas(word).get("VERB", ()):
        if lemma == word and word not in _MOSTLY_PAST:
            tags.add("VB")
        for tag in ("VBZ", "VBD", "VBN", "VBG"):
            forms = inflections(lemma, tag)
            # A second form of the participle is seldom the one that a school teaches.
            if word in (forms[:1] if tag == "VBN" and not word.endswith("ed") else forms):
                tags.add(tag)
    if "VBD" in tags and word.endswith("ed"):
        tags.add("VBN")  # "smelled" beside "smelt"
    if word in _BE_FORMS:
        tags |= _BE_FORMS[word]
    return frozenset(tags)


_BE_FORMS = {
    "is": {"VBZ"}, "am": {"VB"}, "are": {"VB"}, "was": {"VBD"}, "were": {"VBD"},
    "be": {"VB"}, "been": {"VBN"}, "being": {"VBG"},
    "has": {"VBZ"}, "have": {"VB"}, "had": {"VBD", "VBN"},
    "does": {"VBZ"}, "do": {"VB"}, "did": {"VBD"}, "done": {"VBN"},
}  # fmt: skip


@cache
def form(word: str, tag: str) -> str | None:
    """The verb `word` (in any form) under `tag`, the likeliest first, or None.

    >>> form("goes", "VBD"), form("like", "VBZ")
    ('went', 'likes')
    """
    own = lemmas(word)
    for lemma in own.get("VERB", ()) or own.get("AUX", ()):
        if tag == "VB":
            return lemma
        forms = inflections(lemma, tag)
        if (
            tag == "VBN"
            and forms[:1] == (lemma + "t",)
            and lemma + "ed" in inflections(lemma, "VBD")
        ):
            return lemma + "ed"
        if forms:
            return forms[0]
    return None


@cache
def is_noun(word: str) -> bool:
    """Whether `word` can be a noun with content."""
    return "NOUN" in lemmas(word) and word not in FUNCTION


@cache
def plural_of(word: str) -> str | None:
    """The plural of the singular noun `word`, None where it is none or has no other form.

    >>> plural_of("child"), plural_of("sheep"), plural_of("cats")
    ('children', None, None)
    """
    if word not in lemmas(word).get("NOUN", ()) or word in FUNCTION:
        return None
    forms = inflections(word, "NNS")
    if not forms or forms[0] == word:
        return None
    return forms[0]


@cache
def singular_of(word: str) -> str | None:
    """The singular of the plural noun `word`, None where it is none.

    >>> singular_of("mice"), singular_of("glass"), singular_of("dogs")
    ('mouse', None, 'dog')
    """
    head, law, rest = word.partition("-in-law")
    if law and not rest and singular_of(head):
        return f"{singular_of(head)}-in-law"
    found = lemmas(word).get("NOUN", ())
    if not found or word in found or word in FUNCTION:
        return None
    return found[0]


@cache
def leans_to_verb(word: str) -> bool:
    """Whether word pairs show `word` after to, will, can more than after the, a, my."""
    verb = sum(pair(w, word) for w in ("to", "will", "can", "i", "they", "we", "you", "not"))
    noun = sum(pair(w, word) for w in ("the", "a", "an", "of", "my", "your", "this", "and"))
    return verb > noun


def is_verb_tag(tag: str) -> bool:
    """Whether a Penn tag is a verb's or a modal's."""
    return tag[:1] == "V" or tag == "MD"


def clause_has_finite_verb(r: Reading, first: int, last: int, but: int = -1) -> bool:
    """Whether a word from `first` to before `last`, other than `but`, is surely a finite verb."""
    for i in range(first, last):
        if i == but:
            continue
        word = r.lower[i]
        if word in AUXILIARIES and word not in ("be", "been", "being"):
            return True
        if r.tag[i] in ("VBD", "VBZ", "VBP", "MD") and word not in FUNCTION:
            return True
        if word.endswith(("'s", "'re", "'m", "'ll", "'ve", "'d", "n't")) and "'" in word:
            if word.endswith("'s") and word[:-2] not in _SHORT_IS:
                continue
            return True
    return False


_SHORT_IS = SUBJECTS | WH | word_set("that there here let")


class Phrase:
    """A noun phrase: from word `first` to `last`, its head, and whether it is about many."""

    __slots__ = ("first", "head", "last", "many", "sure")

    def __init__(self, first: int, last: int, head: int, many: bool, sure: bool) -> None:
        self.first, self.last, self.head, self.many, self.sure = first, last, head, many, sure


def noun_phrase(r: Reading, i: int) -> Phrase | None:
    """The noun phrase that opens at word `i`: `the two old dogs`, `Ben and Sam`, `my box of toys`.

    None where there is none. `sure` is False where the number could be either.
    """
    one = _one_phrase(r, i)
    if one is None:
        return None
    end = one.last
    if r.after(end) == "of" and r.near(end + 1):
        inner = _one_phrase(r, end + 2)
        if inner is not None:
            sure = one.sure and r.lower[one.head] not in _LOTS
            many = inner.many if r.lower[one.head] in _LOTS else one.many
            one = Phrase(i, inner.last, one.head, many, sure)
            end = inner.last
    if r.after(end) == "and" and r.near(end + 1):
        other = _one_phrase(r, end + 2)
        if other is not None and r.lower[one.head + 1 : one.head + 2] == ["of"]:
            # "the bouquet of roses and lilies": one or many
            return Phrase(i, other.last, one.head, one.many, False)
        if other is not None:
            return Phrase(i, other.last, one.head, True, True)
    if r.after(end) == "or" and r.near(end + 1):
        return Phrase(i, end, one.head, one.many, False)
    return one


_LOTS = word_set(
    "lot lots some all most half none any plenty couple pair number group team rest bunch"
)


_TITLES = word_set("mr mrs ms dr")


def _one_phrase(r: Reading, i: int) -> Phrase | None:
    n = r.n
    if i >= n:
        return None
    word = r.lower[i]
    if word in SUBJECTS:
        return Phrase(i, i, i, word not in HE, True)
    if word in SINGULAR_PRONOUNS:
        return Phrase(i, i, i, False, True)
    if word in _TITLES and r.gap[i] == ". " and i + 1 < n and r.words[i + 1][0].isupper():
        return Phrase(i, i + 1, i + 1, False, True)
    first = i
    counted: bool | None = None
    opened = False
    while i < n and (
        r.lower[i] in DETERMINERS
        or r.lower[i] in MANY
        or r.lower[i].isdigit()
        or r.lower[i] in ("one", "first", "last", "next", "other")
        or r.lower[i].endswith("'s")
        and r.lower[i][:-2] not in _SHORT_IS
    ):
        opened = True
        if r.lower[i] in MANY or r.lower[i].isdigit() and r.lower[i] != "1":
            counted = True
        elif r.lower[i].endswith("'s"):
            counted = None  # the three pigs' pen: how many owners there are says nothing
        elif r.lower[i] in ONE:
            counted = False
        if not r.near(i):
            return None
        i += 1
    head = -1
    while i < n:
        word = r.lower[i]
        tag = r.tag[i]
        nounish = is_noun(word) and (tag[:1] == "N" or tag[:2] == "JJ" or not is_verb_tag(tag))
        named = r.words[i][0].isupper() and not r.first[i] or tag == "NNP"
        adjective = (
            tag[:2] in ("JJ", "CD")
            or tag == "VBG"
            and opened
            and head < 0
            or tag == "VBN"
            and opened
            and head < 0
        )
        if word in FUNCTION or "'" in word:
            break
        if nounish and tag[:1] == "N" or named:
            head = i
        elif adjective and head < 0:
            pass
        elif nounish and opened and head < 0:
            head = i
        else:
            break
        if not r.near(i):
            i += 1
            break
        i += 1
    if head < 0:
        return None
    word = r.lower[head]
    many = singular_of(word) is not None and not r.words[head].istitle()
    if r.words[head][0].isupper() and r.first[head]:
        many = singular_of(word) is not None
    sure = opened or many or r.tag[head] == "NNP"
    if counted or counted is not None and not many and plural_of(word) is None:
        many = counted
    if word in EITHER_NUMBER:
        sure = counted is not None
        many = bool(counted)
    elif counted and word in _AMOUNTS:
        sure = False  # "Ten dollars is too much", "Ten dollars were lost"
    elif word in ONLY_MANY:
        many = sure = counted is not False
    return Phrase(first, head, head, many, sure)


EITHER_NUMBER = word_set(
    "sheep fish deer moose team family class group people police series species staff crew band "
    "crowd audience none data"
)
_AMOUNTS = word_set(
    "dollars cents minutes hours seconds days weeks months years miles feet inches yards pounds ounces "
    "degrees percent times points pages cups quarts gallons meters kilometers"
)
ONLY_MANY = word_set(
    "pants jeans shorts trousers leggings tights overalls pajamas clothes glasses sunglasses goggles "
    "headphones binoculars scissors pliers tweezers tongs thanks groceries belongings surroundings "
    "suspenders swim-trunks trunks undies slacks khakis"
)
"""Things that are many even where there is one: her glasses are new."""
