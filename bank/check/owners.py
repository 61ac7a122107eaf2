"""The apostrophe of who owns it."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    DO,
    FUNCTION,
    MANY,
    MODALS,
    POSSESSIVES,
    PREPOSITIONS,
    is_noun,
    is_verb_tag,
    plural_of,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, pair, word_set
from bank.check.names import PERSON_NAMES, is_name
from bank.check.reading import Reading

# Nouns that end in s and stand before another noun as they are.
_S_COMPOUND = word_set(
    """sports clothes arms news goods savings customs glasses scissors pants species series
    mathematics physics gymnastics athletics politics electronics graphics hours woods games boots
    mess class glass grass dress bus gas his this is was has does as us its yes plus bonus circus
    cactus address princess business process actress waitress boss cross moss loss pass kiss
    christmas tennis always besides perhaps across lots less across thus sometimes various"""
)
_OWNERS = word_set(
    """mom mommy mother dad daddy father brother sister grandma grandpa grandmother grandfather
    aunt uncle cousin friend teacher neighbor doctor nurse farmer baby boy girl man woman kid child
    student coach king queen prince princess knight pirate cat dog kitten puppy bird horse pony cow pig hen
    duck bear lion tiger fox wolf rabbit bunny mouse frog turtle fish elephant monkey owl bee
    spider squirrel hamster lamb goat sheep dragon giant witch wizard robot clown player team class
    family school principal driver pilot artist author singer chef baker firefighter officer captain
    classmate nephew niece son daughter wife husband lady gentleman sailor hunter scientist
    deer whale dolphin shark snake butterfly ladybug chick rooster kangaroo giraffe zebra penguin
    character hero author narrator mayor explorer president detective captain inventor settler
    everyone everybody someone somebody nobody person tree car day year week month today yesterday
    tomorrow world city country state town store sun moon"""
)


@on_text()
def owner_without_apostrophe(r: Reading) -> Found:
    """Who owns it takes ' and s.

    >>> show("The dogs bowl is empty.")
    ["apostrophe-possessive: dogs -> dog's"]
    >>> show("We went to Sams house.")
    ["apostrophe-possessive: Sams -> Sam's"]
    """
    found = []
    for i in range(r.n - 1):
        word = r.lower[i]
        if (
            word[-1] != "s"
            or len(word) < 4
            or not r.near(i)
            or word in _S_COMPOUND
            or word in FUNCTION
            or "'" in word
        ):
            continue
        finding = _owner(r, i)
        if finding is not None:
            found.append(finding)
    return found


def _owner(r: Reading, i: int) -> Finding | None:
    word, j = r.lower[i], i + 1
    stem = word[:-1]
    named = (
        r.words[i][0].isupper()
        and (stem in PERSON_NAMES or not r.first[i] and not lemmas(word))
        and not is_name(word)
    )
    one = singular_of(word)
    if word.endswith("ies") and len(word) > 4 and one == word[:-3] + "y":
        stem = one
    if one is None and not named and plural_of(stem) != word and stem not in _OWNERS:
        return None
    if (
        not named
        and is_verb_tag(r.tag[i])
        and "VBZ" in verb_forms(word)
        and r.before(i) not in DETERMINERS
    ):
        return None
    thing = j
    alone = r.before(i) in word_set("a an each every one another")
    steps = 0
    while (
        thing < r.n - 1
        and r.near(thing)
        and steps < 2
        and (r.tag[thing] in ("JJ", "JJS", "JJR") or r.lower[thing] in MANY)
        and r.lower[thing] not in ("more", "most", "less", "many")
        and r.lower[thing] not in PREPOSITIONS
    ):
        thing += 1
        steps += 1
    if _compound_behind(r, i, thing):
        thing += 1
    owned = r.lower[thing]
    if named and stem in PERSON_NAMES and owned.endswith("ing") and r.after(thing) == "of":
        right = r.words[i][:-1] + "'s"
        return at(r, i, "apostrophe-possessive", f"For who owns it write “{right}”.", right, True)
    if (
        not is_noun(owned)
        or owned in ADVERBS
        or r.tag[thing][:1] not in ("N",)
        and not (r.tag[thing] in ("VB", "VBZ", "VBP", "JJ", "VBD") and verb_follows(r, thing))
    ):
        return None
    if r.words[thing][0].isupper() and not named:
        return None
    if r.tag[thing] == "NNS" and r.after(thing) in ("and", "or") and singular_of(word):
        return None
    if (
        "VB" in verb_forms(owned)
        and not verb_follows(r, thing)
        and not _ASKING.isdisjoint(r.lower[max(0, i - 4) : i])
    ):
        # "How do rescue dogs help?"
        return None
    if r.lower[i] == "farmers" and owned.startswith("market"):
        return None  # written either way
    strong = named or alone or stem in _OWNERS or (one or "") in _OWNERS
    if (
        verb_forms(owned)
        and not alone
        and not verb_follows(r, thing)
        and not _closed_by_end(r, i, thing)
    ):
        return None
    if not strong and not verb_follows(r, thing):
        return None
    if not strong and not (
        r.before(i) in word_set("the my his her our their your that this")
        and verb_follows(r, thing)
    ):
        return None
    if r.first[i] and not named or r.before(i) in AUXILIARIES and r.first[i - 1]:
        return None
    if r.before(i - 1) == "of" and r.before(i - 2) in _HOW_MANY and "VB" in verb_forms(r.lower[j]):
        return None  # "Both of my brothers play"
    many = r.before(i) in MANY or r.before(i) in ("all", "both", "most") or r.before(i).isdigit()
    if many or not named and one and singular_of(owned) is not None and False:
        right = word + "'"
    elif named:
        right = r.words[i][:-1] + "'s"
    elif one is None and stem not in lemmas(stem).get("NOUN", (stem,)):
        right = stem + "'s"
    else:
        right = (one or stem) + "'s"
    others = () if many or named else (word + "'",)
    return at(
        r,
        i,
        "apostrophe-possessive",
        f"For who owns it write “{right}”.",
        right,
        strong,
        others=others,
    )


_ASKING = DO | MODALS
_HOW_MANY = MANY | word_set("some all most none half one each")
_KIN = word_set(
    "mom mommy mother dad daddy father grandma grandpa grandmother grandfather nana papa teacher friend "
    "aunt uncle cousin neighbor"
)


def _compound_behind(r: Reading, i: int, thing: int) -> bool:
    """`the cats water bowl`: two words for the one thing."""
    return (
        (r.before(i) in ARTICLES | POSSESSIVES or r.words[i][0].isupper() and not r.first[i])
        and thing < r.n - 1
        and r.near(thing)
        and is_noun(r.lower[thing])
        and is_noun(r.lower[thing + 1])
        and r.tag[thing + 1] == "NN"
        and r.lower[thing + 1] not in FUNCTION
        and (not r.after(thing + 1) or r.after(thing + 1) in AUXILIARIES | PREPOSITIONS)
    )


def verb_follows(r: Reading, thing: int) -> bool:
    after = r.after(thing)
    if not after:
        return False
    return (
        after in AUXILIARIES
        or r.tag[thing + 1] in ("VBZ", "VBD", "VBP", "MD")
        or bool(verb_forms(after) & {"VBD", "VBZ"})
        and not is_noun(after)
    )


def _closed_by_end(r: Reading, i: int, thing: int) -> bool:
    """Whether the owned thing closes its phrase, after a verb or a small word before the owner."""
    if r.after(thing) and r.after(thing) not in PREPOSITIONS | word_set(
        "and or but because so when after"
    ):
        return False
    start = i
    while (
        start > 0
        and r.near(start - 1)
        and (r.lower[start - 1] in DETERMINERS | MANY or r.tag[start - 1][:2] == "JJ")
    ):
        start -= 1
    if start == 0 or r.first[start]:
        # "My grandmas garden": a topic is often the thing alone.
        return r.kind == "topic" and start < i and r.lower[i][:-1] in _KIN and not r.after(thing)
    before = r.lower[start - 1]
    return (
        before in PREPOSITIONS
        or before in AUXILIARIES
        or is_verb_tag(r.tag[start - 1])
        or bool(verb_forms(before))
    )


@on_words("childrens mens womens peoples")
def owner_of_many_without_apostrophe(r: Reading, i: int) -> Found:
    """children's, men's, women's.

    >>> show("The childrens coats are wet.")
    ["apostrophe-possessive: childrens -> children's"]
    """
    if r.gap[i].startswith(("'", "’")):
        return None  # "the childrens' coats"
    right = r.lower[i][:-1] + "'s"
    return at(r, i, "apostrophe-possessive", f"For who owns it write “{right}”.", right)


@on_text()
def name_as_owner_alone(r: Reading) -> Found:
    """A name with s and a verb behind it: Rosas is the brightest.

    >>> show("Sams is the biggest.")
    ["apostrophe-possessive: Sams -> Sam's"]
    """
    for i, word in enumerate(r.lower):
        if (
            word.endswith("s")
            and word[:-1] in PERSON_NAMES
            and word not in PERSON_NAMES
            and r.words[i][0].isupper()
        ) and (
            r.after(i) in ("is", "was", "has")
            or not r.after(i)
            and r.before(i) in ("to", "at", "of", "is", "than")
        ):
            right = r.words[i][:-1] + "'s"
            return at(r, i, "apostrophe-possessive", f"For who owns it write “{right}”.", right)
    return None


@on_text()
def plural_with_apostrophe(r: Reading) -> Found:
    """More than one takes no apostrophe.

    >>> show("I saw three dog's.")
    ["apostrophe-possessive: dog's -> dogs"]
    """
    found = []
    for i, word in enumerate(r.lower):
        if not word.endswith("'s") or r.before(i) not in MANY and not r.before(i).isdigit():
            continue
        many = plural_of(word[:-2])
        after = r.after(i)
        if (
            many is None
            or after
            and (is_noun(after) or r.tag[min(i + 2, r.n - 1)] in ("JJ",))
            or after in AUXILIARIES
        ):
            continue
        found.append(
            at(
                r,
                i,
                "apostrophe-possessive",
                f"More than one is “{many}”, with no apostrophe.",
                many,
            )
        )
    return found


@on_words("your my his her our their the a this that")
def owner_of_a_thing_of_the_owner(r: Reading, i: int) -> Found:
    """Someone who owns the next word, with neither apostrophe nor s: your teacher name.

    >>> show("What is your teacher name?")
    ["apostrophe-possessive: teacher -> teacher's"]
    >>> show("The rabbit ears were long.")
    ["apostrophe-possessive: rabbit -> rabbit's"]
    """
    j = i + 1
    if not r.near(i) or j + 1 >= r.n or not r.near(j):
        return None
    if r.tag[j][:2] == "JJ" and j + 2 < r.n and r.near(j + 1) and r.lower[j + 1] in _OWNERS:
        j += 1
    owner, owned = r.lower[j], r.lower[j + 1]
    many = owner in ("children", "men", "women", "people")
    if owner not in _OWNERS and not many and not owner.endswith("ian") or not is_noun(owned):
        return None
    if r.tag[j + 1][:1] != "N" or r.words[j + 1][0].isupper() or r.lower[j + 1] in _S_COMPOUND:
        return None
    right = owner + "'s"
    if many:
        return at(
            r,
            j,
            "apostrophe-possessive",
            f"For who owns it write “{right}”.",
            right,
            verb_follows(r, j + 1),
        )
    kin = owner in _PEOPLE and verb_follows(r, j + 1) and not verb_forms(owned) & {"VBD", "VBZ"}
    if owned not in _BELONGINGS and not kin or owner in _NO_PERSON:
        return None
    if pair(owner, owned) > 0 and owner not in _PEOPLE:
        return None
    return at(
        r,
        j,
        "apostrophe-possessive",
        f"For who owns it write “{right}”.",
        right,
        owner in _PEOPLE and owned in ("name", "birthday"),
    )


_NO_PERSON = word_set(
    "tree car day year month week today tomorrow world city country state town store class team "
    "school family sun moon baby doll fish everyone"
)
_BELONGINGS = word_set(
    """name house car hat shoes shoe coat coats birthday room bike job bed toy toys bowl tail ears ear
    eyes eye nose paw paws fur feathers feather wings wing beak leg legs feet foot hand hands head
    hair teeth tooth mouth voice face arm arms back neck desk keys key phone backpack book books
    bag lunch jacket boots glasses picture drawing story idea garden truck tools sister brother mom dad
    mother father friend friends dog cat puppy kitten nest den cage collar leash footprints tracks
    mural song speech turn home office whistle horn shell stripes spots mane trunk horns"""
)


_PEOPLE = word_set(
    "mom mother dad father brother sister grandma grandpa grandmother grandfather aunt uncle "
    "cousin friend teacher neighbor"
)
