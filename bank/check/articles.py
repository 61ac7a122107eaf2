"""a and an by sound, and the article that a thing needs."""

from __future__ import annotations

import re
from functools import cache

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    BE,
    DETERMINERS,
    DO,
    FUNCTION,
    PREPOSITIONS,
    WH,
    is_noun,
    is_verb_tag,
    plural_of,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import PAIR_FLOOR, lemmas, pair, word_set, zipf
from bank.check.names import PERSON_NAMES
from bank.check.reading import Reading

_SILENT_H = re.compile(
    r"(hours?|hourly|hourglass(es)?|honest\w*|honou?r\w*|heirs?|heiress\w*|heirloom\w*)$"
)
_YOU_SOUND = re.compile(
    r"(uni(?!n|m)\w*|unanim\w*|u|use[ds]?|user\w*|useful\w*|useless\w*|usual\w*|usab\w*|utens\w*|"
    r"utili\w*|utopia\w*|ukulele\w*|ukrain\w*|uranium|uranus|urin\w*|eu\w+|ewes?|ew\w+|one(?!rous)\w*|once|ouija|"
    r"uvula|usurp\w*|ubiquit\w*)$"
)
_VOWEL_LETTERS = word_set("a e f h i l m n o r s x")


def vowel_sound(word: str) -> bool:
    """Whether `word` (a number in figures, too) starts with a vowel sound, by its letters.

    >>> [vowel_sound(w) for w in ("apple", "hour", "unicorn", "umbrella", "one", "8", "11", "x-ray")]
    [True, True, False, True, False, True, True, True]
    """
    lower = word.lower()
    head = re.split(r"[-']", lower)[0]
    if head.isdigit():
        return (
            head[0] == "8"
            or head in ("11", "18")
            or head[:2] in ("11", "18")
            and len(head) in (5, 8)
        )
    if len(head) == 1:
        return head in _VOWEL_LETTERS
    if _SILENT_H.match(head):
        return True
    return lower[0] in "aeiou" and not _YOU_SOUND.match(head)


@on_words("a an")
def a_or_an(r: Reading, i: int) -> Found:
    """an before a vowel sound, a before the others.

    >>> show("I ate a apple for an hour.")
    ['article: a -> an']
    >>> show("An unicorn has a horn.")
    ['article: An -> A']
    """
    if not r.near(i) or r.words[i] == "A" and not r.first[i]:
        return None
    nxt = r.words[i + 1]
    if nxt.isupper() and len(nxt) > 1 or nxt.lower() in ("herb", "herbs", "herbal"):
        return None
    if r.after(i) in PREPOSITIONS and r.after(i) not in word_set(
        "in up off over under inside outside"
    ):
        return None
    if r.after(i) in ("a", "an", "the", "on") or nxt.lower() in ("and", "or", "is", "in"):
        return None
    right = "an" if vowel_sound(nxt) else "a"
    if right == r.lower[i]:
        return None
    sound = "a vowel sound" if right == "an" else "a sound that is no vowel"
    return at(r, i, "article", f"“{nxt}” starts with {sound}, so it takes “{right}”.", right)


_BARE = word_set(
    """school bed home church work town lunch dinner breakfast supper class college camp court sea
    land jail prison bus train car plane boat bike foot night noon midnight day morning music art
    math reading science history soccer football baseball basketball tennis hockey golf chess tag
    spring summer fall winter autumn snow rain water milk time kindergarten recess practice heaven
    earth nature life space god sunset sunrise fire smoke disaster fun love trouble danger fear joy peace ground top front back
    order line place fact case point example part question answer man woman mom dad grandma
    grandpa mother father grandmother grandfather everyone swim dance sign trade mail phone hand
    heart age rest sleep dawn dusk pizza chicken cake pie turkey fish lamb salad soup pasta popcorn
    bark toast tape shade jam change paint glue yarn string tea lemonade chocolate candy straw hay ham dessert matter"""
)
_TAKERS = word_set(
    """have has had saw see sees want wants need needs got get gets bought buy made make makes eat
    ate eats like likes drew draw found find build built read write wrote wear wore wears is was
    am became become be hold held carry carried drive drives drove ride rode rides ride throw threw
    kick kicked catch caught open opened close closed play plays use used at in on to into from
    with by near under over behind fly flew feed fed pet chase chased"""
)


CONCRETE = word_set(
    """dog cat bird rabbit hamster turtle frog pony horse cow pig duck hen goat sheep_ bear lion
    tiger elephant monkey snake spider bee butterfly fox squirrel owl whale shark puppy kitten pet
    car truck bike bicycle bus_ train_ plane_ boat_ wagon sled scooter skateboard kite ball balloon
    doll robot puzzle toy game book pencil pen crayon marker backpack lunchbox notebook desk chair
    table lamp bed_ pillow blanket hat cap coat jacket shirt sweater dress skirt shoe boot sock
    mitten glove scarf umbrella house tent cabin castle barn garage store zoo park_ museum library
    farm garden playground apple banana orange pear peach sandwich cookie cupcake pizza_ carrot
    potato egg spoon fork knife plate bowl cup bottle box bag basket bucket ladder hammer nail
    shovel rake broom flower tree leaf rock shell stick nest teacher doctor nurse firefighter
    farmer baker pilot boy girl baby friend brother sister cousin uncle aunt picture letter card
    present gift birthday camera phone computer tablet clock watch_ ring key door window river lake
    mountain hill pond island bridge story song poem microscope telescope ruler calculator helmet rope
    map snowman fort ferry ranch tower castle nest magnet stapler"""
)


@cache
def countable(word: str) -> bool:
    """Whether word pairs and forms show `word` as a thing that can be counted.

    >>> countable("dog"), countable("water"), countable("zoo")
    (True, False, True)
    """
    many = plural_of(word)
    if many is None or word in _BARE:
        return False
    with_article = pair("a", word) + pair("an", word)
    as_mass = pair("some", word) + pair("much", word) + pair("of", word) + pair("more", word)
    if with_article == 0 and as_mass == 0:
        return zipf(many) > zipf(word) - 1.0 and zipf(many) > 2.3
    return with_article > as_mass


_VERBS_OF_THINGS = word_set("VBD VBZ VBP VB VBG")


def _often_one(word: str) -> bool:
    """Whether word pairs show `word` behind a, an far more than as stuff."""
    alone = pair("some", word) + pair("much", word) + pair("of", word) + pair("more", word)
    return pair("a", word) + pair("an", word) > max(8 * alone, 20_000_000)


_LOOKS = word_set(
    "red blue green yellow orange purple black white brown pink big small little new old hot cold "
    "soft long short tall huge tiny"
)
_ORDER = FUNCTION | word_set(
    "last next first second third other same such few many several own little"
)


def _bare_subjects(r: Reading) -> list[Finding]:
    """One thing at the start of a clause, with its verb behind it and nothing before it."""
    found = []
    for i, word in enumerate(r.lower):
        if (
            word not in CONCRETE
            or r.words[i][0].isupper()
            and not r.first[i]
            or r.tag[i] not in ("NN", "NNP")
        ):
            continue
        opens = r.first[i] or r.before(i) in ("because", "when", "if", "but")
        opens = opens or r.before(i) == "that" and r.tag[i - 1] != "DT"
        if (
            opens
            and r.near(i)
            and r.tag[i + 1] in ("VBD", "VBZ")
            and not is_noun(r.lower[i + 1])
            and word not in PERSON_NAMES
        ):
            article = "an" if vowel_sound(word) else "a"
            right = f"{article.title()} {word}" if r.first[i] else f"{article} {word}"
            found.append(
                Finding(
                    "article",
                    r.starts[i],
                    r.ends[i],
                    f"“{word}” needs a small word like “{article}” or “the” before it.",
                    right,
                    not r.first[i],
                )
            )
    return found


def after_list(r: Reading, j: int) -> bool:
    return j > 0 and r.gap[j - 1].startswith(",") and r.lower[j] not in _TAKERS


@on_text()
def thing_without_its_article(r: Reading) -> Found:
    """One thing that can be counted needs a, an, the or my.

    >>> show("I saw dog in the yard.")
    ['article: dog -> a dog']
    """
    if r.kind == "topic":
        return None
    found = _bare_subjects(r)
    for i in range(1, r.n):
        word = r.lower[i]
        if (
            r.tag[i] not in ("NN", "VB", "NNP", "JJ")
            or r.first[i]
            or r.words[i][0].isupper()
            or not r.near(i - 1)
        ):
            continue
        j = i - 1
        if (
            (r.tag[j] == "JJ" or r.lower[j] in _LOOKS)
            and j
            and r.near(j - 1)
            and r.lower[j] not in _ORDER
            and "ADJ" in lemmas(r.lower[j])
        ):
            j -= 1
        before = r.lower[j]
        if "rhyme" in r.lower or "rhymes" in r.lower or before.endswith("n't"):
            continue
        if before in BE and j and is_verb_tag(r.tag[j - 1]):
            continue
        if r.tag[j] in ("VBG", "VBN") and (
            r.before(j) in DETERMINERS
            or r.before(j).endswith("ly")
            and r.before(j - 1) in DETERMINERS
        ):
            continue  # "the missing key", "a strongly held opinion"
        if "VB" in verb_forms(word) and singular_of(before) and not DO.isdisjoint(r.lower[:j]):
            continue  # "What do squirrels store?"
        if r.before(j) in DETERMINERS and is_noun(before):
            continue
        if (
            before not in PREPOSITIONS
            and not is_verb_tag(r.tag[j])
            or before in BE
            and (r.first[j] or r.before(j) in WH)
        ):
            continue
        if (
            r.gap[i].startswith(",")
            or after_list(r, j)
            or r.tag[i] == "JJ"
            and word not in CONCRETE
        ):
            continue
        if (
            (
                before not in _TAKERS
                and not (r.tag[j] in _VERBS_OF_THINGS and (_often_one(word) or word in CONCRETE))
            )
            or word in FUNCTION
            or not countable(word)
        ):
            continue
        after = r.after(i)
        if after and (
            is_noun(after)
            and r.tag[i + 1][:1] == "N"
            or after in word_set("and or after to by of")
            and before not in word_set("have has had saw see want wants")
        ):
            continue
        if (
            r.gap[i].startswith("-")
            or r.tag[i] == "VB"
            and before in word_set("to need make made have help see saw")
        ):
            continue
        if (
            before in word_set("to play plays made make got get am be is was become became")
            and (verb_forms(word) & {"VB"} or "ADJ" in lemmas(word))
            and pair("a", word) < 100_000_000
        ):
            continue
        if "ADJ" in lemmas(word) and before in word_set("is was am be get got made make"):
            continue
        if pair(before, word) > max(pair(before, "a") // 400, 30_000_000):
            continue
        if j < i - 1 and word not in CONCRETE and pair(r.lower[i - 1], word) > PAIR_FLOOR:
            # "broken glass": often said together without an article.
            continue
        if word == "orange" and before in word_set("turn turns turned paint painted color colored"):
            continue
        start = j + 1
        article = "an" if vowel_sound(r.words[start]) else "a"
        said = r.text[r.starts[start] : r.ends[i]]
        found.append(
            Finding(
                "article",
                r.starts[start],
                r.ends[i],
                f"“{said}” needs a small word like “{article}” or “the” before it.",
                f"{article} {said}",
                word in CONCRETE and r.tag[i] != "VB",
            )  # fmt: skip
        )
    return found
