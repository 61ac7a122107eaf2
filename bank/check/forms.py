"""Spaces inside words, dots of short titles, and comparing."""

from __future__ import annotations

from functools import cache

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import FUNCTION, SUBJECTS, is_noun, verb_forms
from bank.check.lexicon import lemmas, listed_words, pair, word_set, zipf
from bank.check.reading import Reading
from bank.language import inflections

_ONE_TO_TWO = {
    "alot": "a lot",
    "infact": "in fact",
    "aswell": "as well",
    "eachother": "each other",
    "atleast": "at least",
    "highschool": "high school",
    "icecream": "ice cream",
    "thankyou": "thank you",
    "allright": "all right",
    "incase": "in case",
    "upto": "up to",
    "nextdoor": "next door",
    "inbetween": "in between",
    "goodnight": "goodnight",
    "eventhough": "even though",
    "everytime": "every time",
    "noone": "no one",
    "abit": "a bit",
    "ofcourse": "of course",
    "aslong": "as long",
    "infront": "in front",
    "eachday": "each day",
    "everyday_": "every day",
    "hotdog": "hot dog",
    "livingroom": "living room",
    "postoffice": "post office",
}
_JOINED = word_set(
    """into onto inside outside upstairs downstairs without within today tonight tomorrow yesterday
    someone something somewhere somebody everything everybody everywhere anything anybody nothing nobody
    nowhere myself himself herself itself yourself themselves ourselves afternoon bedroom bathroom
    classroom playground backyard basketball baseball football birthday grandmother grandfather
    grandparent backward forward daylight season strawberry hallway doorway driveway pathway
    railroad shipwreck snowflake
    grandma grandpa rainbow sunshine sunflower snowman snowball cupcake pancake popcorn notebook
    backpack butterfly firefly ladybug grasshopper strawberry blueberry toothbrush doorbell
    homework raincoat raindrop airplane sailboat mailbox teapot goldfish jellyfish starfish
    firefighter policeman fireman weekend newspaper keyboard  seashell sidewalk pinecone
    bookshelf campfire cardboard earthquake eyelash fingernail fireplace flashlight friendship
    haircut horseback lighthouse moonlight necklace nighttime daytime peanut pinwheel scarecrow
    skateboard spaceship staircase suitcase sunrise sunset teaspoon tablespoon thunderstorm treehouse
    underwater waterfall watermelon wheelchair windmill anyway forever because before behind
    between beside around above along away again ago alone another asleep awake became become
    sometimes maybe cannot bookcase bulldog cowboy cowgirl drumstick eggshell footprint handbag
    headache hillside household ladybugs stepmother stepfather stepsister fishbowl fishhook rowboat"""
)


@on_text()
def two_words_written_as_one(r: Reading) -> Found:
    """alot, icecream, noone.

    >>> show("I like you alot.")
    ['spacing: alot -> a lot']
    """
    found = []
    for i, word in enumerate(r.lower):
        right = _ONE_TO_TWO.get(word) or (
            glued(word) if len(word) > 3 and word not in listed_words() else None
        )
        if right and right != word:
            found.append(at(r, i, "spacing", f"These are two words: “{right}”.", right))
    return found


def glued(word: str) -> str | None:
    """Two small or frequent words that lost the space between them.

    >>> glued("thedog"), glued("becasue")
    ('the dog', None)
    """
    if not word.isalpha() or zipf(word) > 2.6:
        return None
    for cut in range(1, len(word)):
        a, b = word[:cut], word[cut:]
        if a in _GLUES and len(b) > 2 and b in listed_words() and zipf(b) > 4.6:
            return f"{a} {b}"
    return None


_GLUES = word_set("the a in of to and my is at on it for you we he she")


@on_text()
def one_word_written_as_two(r: Reading) -> Found:
    """grand mother, sun flower, back ward.

    >>> show("My grand mother bakes bread.")
    ['spacing: grand mother -> grandmother']
    >>> show("I want to day dream. We go in side by side.")
    []
    """
    found = []
    for i in range(r.n - 1):
        if r.gap[i] != " " or r.lower[i] in _NEVER_FIRST or r.words[i + 1][0].isupper():
            continue
        a, b = r.lower[i], r.lower[i + 1]
        whole = a + b
        if len(whole) < 5 or whole not in listed_words() and _base(whole) not in listed_words():
            continue
        verdict = _joined(r, i, a, b, whole)
        if verdict is not None:
            found.append(
                at(r, i, "spacing", f"This is one word: “{whole}”.", whole, verdict, to=i + 1)
            )
    return found


@cache
def _base(word: str) -> str:
    own = lemmas(word).get("NOUN", ())
    return own[0] if own else word


def _joined(r: Reading, i: int, a: str, b: str, whole: str) -> bool | None:
    """True where the two are surely one word, False where they may be, None where they are two."""
    if not (a.isalpha() and b.isalpha()) or a in ("i", "a") or zipf(whole) < 2.3:
        return None
    known = whole in _JOINED or _base(whole) in _JOINED
    if known and not _could_be_two(r, i, a, b, whole):
        return True
    if whole in ("everyone", "anyone", "someone") and r.after(i + 1) not in ("of", ""):
        return False if r.after(i + 1) in FUNCTION or verb_forms(r.after(i + 1)) else None
    if whole in ("sometimes",) and (r.first[i] or r.before(i) in SUBJECTS):
        return True
    if a in FUNCTION or b in FUNCTION:
        return None
    if known and _could_be_two(r, i, a, b, whole):
        return None
    # A part that is no word alone, or seldom met alone, and no count of the two side by side.
    odd = a not in listed_words() or b not in listed_words() or zipf(a) < 2.8 or zipf(b) < 2.8
    if odd and zipf(whole) > 2.8:
        return False
    if pair(a, b) == 0 and zipf(whole) > 3.2 and zipf(whole) > min(zipf(a), zipf(b)) - 1.2:
        return None if verb_forms(b) & {"VBD", "VBZ"} and not is_noun(b) else False
    return None


_NEVER_FIRST = word_set("i")


def _could_be_two(r: Reading, i: int, a: str, b: str, whole: str) -> bool:
    after = r.after(i + 1)
    if whole == "sunsets" and r.before(i) in ("the", "a", "our"):
        return True  # after the sun sets
    if whole == "underwater":
        return not is_noun(after)  # to breathe under water, but an underwater cave
    if whole in word_set(
        """
        into onto today tonight because before behind beside along away alone above ago
        asleep awake around again another maybe cannot become became anyway sometimes
        forever between within without inside outside someone
        """
    ):
        if whole in ("today", "tonight"):
            return bool(after) and a == "to" and after in ("dream", "and") or r.tag[i + 1] == "VB"
        if whole in word_set("without within inside outside because another asleep awake again"):
            return whole in ("inside", "within", "without", "outside") and (
                after in ("by", "in", "to", "of")
                or whole in ("within", "without")
                and after in ("the", "my")
                and False
            )
        return True
    if r.words[i + 1][0].isupper():
        return True
    if whole in ("grandmother", "grandfather", "grandma", "grandpa", "butterfly"):
        return False
    if whole == "nighttime" or whole == "daytime":
        return False
    if whole in ("peanut", "horseback", "footprint"):
        return False
    return bool(
        b
        in word_set(
            """
            fly fall drop rise set print shine ball house light box man room way
            where body thing
            """
        )
        and a in ("sun", "water", "rain", "tree", "moon")
        and r.tag[i + 1][:1] == "V"
        and after
    )


@on_text()
def title_without_dot(r: Reading) -> Found:
    """Mr, Mrs, Dr without the dot.

    >>> show("Mr Lopez is our coach.")
    ['abbreviation: Mr -> Mr.']
    """
    found = []
    for i, word in enumerate(r.lower):
        if (
            word in ("mr", "mrs", "ms", "dr", "jr")
            and r.gap[i] == " "
            and i + 1 < r.n
            and (r.words[i + 1][0].isupper() or r.words[i][0].isupper())
            or word in ("st", "ave", "rd")
            and r.words[i][0].isupper()
            and i
            and r.words[i - 1][0].isupper()
            and r.gap[i - 1] == " "
            and not r.gap[i].startswith(".")
            and not r.first[i - 1]
        ):
            found.append(
                at(r, i, "abbreviation", "A short title ends with a dot.", r.words[i] + ".")
            )
    return found


_BAD = {
    "gooder": "better",
    "goodest": "best",
    "bestest": "best",
    "betterer": "better",
    "worser": "worse",
    "worstest": "worst",
    "badder": "worse",
    "baddest": "worst",
    "mostest": "most",
    "funner": "more fun",
    "funnest": "most fun",
    "littler": "smaller",
    "littlest": "smallest",
    "beautifuller": "more beautiful",
    "beautifullest": "most beautiful",
    "biggerest": "biggest",
    "betterest": "best",
    "farer": "farther",
    "manyest": "most",
    "muchest": "most",
}
_DOUBLED = word_set("more most")


@on_words(" ".join(_BAD))
def comparing_word_that_is_none(r: Reading, i: int) -> Found:
    """gooder, bestest, worser.

    >>> show("This is the bestest day ever.")
    ['comparison: bestest -> best']
    """
    certain = r.lower[i] not in ("funner", "funnest", "littler", "littlest", "baddest")
    start = i - 1 if r.before(i) in _DOUBLED else i
    return at(r, start, "comparison", f"Say “{_BAD[r.lower[i]]}”.", _BAD[r.lower[i]], certain, to=i)


@on_words("more most")
def compared_twice(r: Reading, i: int) -> Found:
    """more taller, most biggest.

    >>> show("My tower is more taller than yours.")
    ['comparison: more taller -> taller']
    """
    after = r.after(i)
    if not after or not is_compared(after, "er" if r.lower[i] == "more" else "est"):
        return None
    if (
        r.after(i + 1)
        and is_noun(r.after(i + 1))
        and r.lower[i] == "more"
        and r.before(i) not in ("a", "the", "is", "was")
    ):
        return None
    return at(r, i, "comparison", f"Say “{after}” alone.", after, to=i + 1)


def is_compared(word: str, ending: str) -> bool:
    """Whether `word` is a describing word with -er or -est, or better, best, worse, worst.

    >>> is_compared("taller", "er"), is_compared("water", "er"), is_compared("best", "est")
    (True, False, True)
    """
    if word in (("better", "worse") if ending == "er" else ("best", "worst")):
        return True
    return word.endswith(ending) and any(
        lemma != word for kind in ("ADJ", "ADV") for lemma in lemmas(word).get(kind, ())
    )


@on_words("than")
def plain_word_before_than(r: Reading, i: int) -> Found:
    """taller than, not tall than or tallest than.

    >>> show("The oak is tall than the house.")
    ['comparison: tall -> taller']
    >>> show("A whale is biggest than a shark.")
    ['comparison: biggest -> bigger']
    """
    before = r.before(i)
    if not before or before in FUNCTION or r.near(i) is False:
        return None
    for k in range(max(0, i - 6), i - 1):
        if (
            r.lower[k] in word_set("more less rather better other fewer")
            or r.tag[k] in ("JJR", "RBR")
            or r.lower[k].endswith("er")
            and is_compared(r.lower[k], "er")
        ):
            return None
    if is_compared(before, "est"):
        stem = lemmas(before).get("ADJ", (before,))[0]
        forms = (
            ("better",)
            if before == "best"
            else ("worse",)
            if before == "worst"
            else inflections(stem, "JJR")
        )
        return at(r, i - 1, "comparison", f"Of two say “{forms[0]}”.", forms[0]) if forms else None
    forms = inflections(before, "JJR") if before in lemmas(before).get("ADJ", ()) else ()
    if before in ("good", "bad"):
        forms = ("better",) if before == "good" else ("worse",)
    if not forms or forms[0] == before or len(before) > 6 or is_compared(before, "er"):
        return None
    if before.endswith("er") and before in ("other", "rather"):
        return None
    return at(r, i - 1, "comparison", f"Of two say “{forms[0]}”.", forms[0])


@on_words("good bad")
def more_good(r: Reading, i: int) -> Found:
    """more good, most bad.

    >>> show("My cake is more good than yours.")
    ['comparison: more good -> better']
    """
    before = r.before(i)
    if before not in _DOUBLED or r.after(i) and is_noun(r.after(i)) and before == "more":
        return None
    right = {
        ("more", "good"): "better",
        ("most", "good"): "best",
        ("more", "bad"): "worse",
        ("most", "bad"): "worst",
    }[before, r.lower[i]]
    return Finding("comparison", r.starts[i - 1], r.ends[i], f"Say “{right}”.", right, True)


_SHORT_ONES = word_set(
    "big small tall short long old young fast slow hot cold nice large hard soft loud strong weak "
    "bright dark clean heavy light cheap rich poor warm cool wide deep high low thin thick happy "
    "funny easy silly pretty early"
)


@on_words("more most")
def more_with_a_short_word(r: Reading, i: int) -> Found:
    """more big, most tall: short words take -er and -est.

    >>> show("My dog is more big than yours.")
    ['comparison: more big -> bigger']
    """
    after = r.after(i)
    if (
        after not in _SHORT_ONES
        or r.lower[i] == "more"
        and r.after(i + 1) != "than"
        and r.gap[i + 1].strip() not in (".", "?", "!")
    ):
        return None
    if r.lower[i] == "most" and r.before(i) not in ("the", "my"):
        return None
    forms = inflections(after, "JJR" if r.lower[i] == "more" else "JJS")
    return (
        at(r, i, "comparison", f"Say “{forms[0]}”.", forms[0], r.after(i + 1) == "than", to=i + 1)
        if forms
        else None
    )
