"""Small words beside a verb or a measure: one too many, or one that is left out."""

from __future__ import annotations

from bank.check.articles import CONCRETE
from bank.check.engine import Found, at, on_text, on_words
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    FUNCTION,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    plural_of,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.missing import missing_behind
from bank.check.reading import Reading

_GO = word_set(
    "go goes going went gone come comes came coming walk walked walks ran run runs drove drive "
    "drives ride rode got get gets flew return returned hurry hurried"
)
_NO_TO = word_set(
    "home here there upstairs downstairs outside inside downtown abroad indoors outdoors"
)


@on_words("to")
def to_before_a_place_that_takes_none(r: Reading, i: int) -> Found:
    """went to home, come to here.

    >>> show("We went to home after the game.")
    ['extra-word: to -> ']
    >>> show("We went to home plate. We came to outside noise.")
    []
    """
    place = r.after(i)
    if place not in _NO_TO or r.before(i) not in _GO:
        return None
    behind = r.after(i + 1)
    if behind and is_noun(behind) and behind not in FUNCTION:
        return None
    return _too_many(r, i)


_NO_ABOUT = word_set(
    "discuss discusses discussed discussing mention mentions mentioned describe describes described"
)
_NO_BACK = word_set("return returned returns returning")
_NO_AGAIN = word_set("repeat repeated repeats")
_NO_TO_SOMEONE = word_set(
    "ask asked asks visit visited visits tell told tells call called calls help helped"
)


@on_words("about back again to")
def small_word_that_the_verb_holds(r: Reading, i: int) -> Found:
    """discuss about, return back, repeat again, asked to him: the verb says it already.

    >>> show("Please discuss about the story. She told to me a joke.")
    ['extra-word: about -> ', 'extra-word: to -> ']
    >>> show("I asked to go. She returned back pain pills. He was told to her face.")
    []
    """
    word, before = r.lower[i], r.before(i)
    behind = r.after(i)
    holds = (
        word == "about" and before in _NO_ABOUT
        or word == "back" and before in _NO_BACK and (not behind or behind in PREPOSITIONS)
        or word == "again" and before in _NO_AGAIN and not behind
        or word == "to" and before in _NO_TO_SOMEONE
        and (behind in OBJECTS - {"her"} or behind in ("my", "his", "our", "your"))
        and not (i >= 2 and r.lower[i - 2] in BE | {"when", "who"})
    )  # fmt: skip
    return _too_many(r, i) if holds else None


def _too_many(r: Reading, i: int) -> Found:
    return at(r, i, "extra-word", f"“{r.words[i]}” is too many.", "")


_SITS = word_set(
    "sit sits sat sitting seated live lives lived living stand stands stood standing work works "
    "worked working sleep slept sleeping is are was were am put walk walked walking"
)


@on_words("next")
def to_behind_next(r: Reading, i: int) -> Found:
    """sat next me, lives next the park.

    >>> show("Who is sitting next you?")
    ['missing-word: next you -> next to you']
    >>> show("We sit next. I am next. Who works the next day?")
    []
    """
    before, after = r.before(i), r.after(i)
    beside = before in _SITS and after in OBJECTS | ARTICLES | {"you"}
    behind_a_thing = r.tag[i - 1 : i] in (["NN"], ["NNS"]) and i and after in ARTICLES
    if not (beside or behind_a_thing or before and after in POSSESSIVES):
        return None
    return missing_behind(r, i, "to")


_WAYS = word_set(
    "zoo park beach store museum lake farm library dentist doctor fair circus pool ocean moon city"
)


@on_words("been")
def to_behind_been(r: Reading, i: int) -> Found:
    """Have you been the zoo?

    >>> show("Have you ever been the zoo?")
    ['missing-word: been the -> been to the']
    >>> show("It has been a park for years. It has been the best day.")
    []
    """
    if r.after(i) not in ("the", "a") or r.after(i + 1) not in _WAYS or r.after(i) == "a":
        return None
    who = r.lower[max(0, i - 3) : i]
    if "it" in who or "that" in who:
        return None
    return missing_behind(r, i, "to")


@on_words("care")
def of_behind_care(r: Reading, i: int) -> Found:
    """take care the dog.

    >>> show("We take care the class fish.")
    ['missing-word: care the -> care of the']
    >>> show("We take care when the road is wet.")
    []
    """
    if r.before(i) not in word_set("take takes took taking good great") or r.after(
        i
    ) not in DETERMINERS | OBJECTS - {"that"}:
        return None
    return missing_behind(r, i, "of")


_MEASURES = word_set(
    "cup cups glass glasses bowl bowls piece pieces slice slices pair pairs bottle bottles bunch "
    "lot lots loaf loaves jar jars pile piles plenty gallon pound pounds spoonful"
)
_STUFF = word_set(
    "milk water juice tea cocoa soup cereal rice paper bread cake pizza pie cheese fruit sand "
    "sugar flour salt honey jam butter popcorn toast meat fun time homework work snow rain"
)
_NO_MEASURE = word_set("lot lots plenty bunch pair pairs piece pieces slice slices loaf loaves")


@on_words(" ".join(_MEASURES))
def of_behind_a_measure(r: Reading, i: int) -> Found:
    """a cup milk, two pieces paper, a lot books.

    >>> show("I drank a cup milk and drew on a piece paper.")
    ['missing-word: cup milk -> cup of milk', 'missing-word: piece paper -> piece of paper']
    >>> show("We have a lot to do. She has a glass bowl and a lot less cake.")
    []
    """
    after = r.after(i)
    if r.before(i) not in ARTICLES | word_set("one two three four five six this some"):
        return None
    many = singular_of(after) is not None and r.lower[i] in _NO_MEASURE and r.tag[i + 1] == "NNS"
    if not after or not (after in _STUFF or many) or r.after(i + 1) and is_noun(r.after(i + 1)):
        return None
    return missing_behind(r, i, "of")


_PARTS = word_set("top bottom end side back front middle corner edge")
_PART_WORD = {"middle": "in", "corner": "in", "front": "at", "side": "on", "edge": "on"}


@on_words("the")
def word_before_a_part_is_missing(r: Reading, i: int) -> Found:
    """Write your name the top of the page.

    >>> show("Write your name the top of the page.")
    ['missing-word: name the -> name at the']
    >>> show("We saw the top of the hill. He gave the dog the end of it.")
    []
    """
    if i < 2 or not r.near(i) or r.lower[i + 1] not in _PARTS or r.after(i + 1) != "of":
        return None
    if not r.near(i - 1) or r.tag[i - 1][:1] != "N" or r.lower[i - 2] not in POSSESSIVES | ARTICLES:
        return None
    giving = word_set("gave give gives show showed told tell paint painted call called")
    if not giving.isdisjoint(r.lower[max(0, i - 4) : i]):
        return None
    return missing_behind(r, i - 1, _PART_WORD.get(r.lower[i + 1], "at"))


_LOOKS = word_set("new old big small little red blue green yellow nice good tall tiny huge")
_PLAIN_WORDS = word_set("at in on with from to into for under behind near")


@on_text()
def described_thing_without_article(r: Reading) -> Found:
    """at new school, in big house: one thing behind a small word and a describing word.

    >>> show("I was shy at new school.")
    ['article: new school -> a new school']
    >>> show("We paint with red paint. He is at good old school. She reads to old friends.")
    []
    """
    found = []
    for i in range(1, r.n - 1):
        if r.lower[i] not in _LOOKS or r.before(i) not in _PLAIN_WORDS or not r.near(i):
            continue
        thing = r.lower[i + 1]
        counted = plural_of(thing) not in (None, thing) and thing in _COUNTED
        if not counted or r.tag[i + 1] not in ("NN",) or is_noun(r.after(i + 1)):
            continue
        said = r.text[r.starts[i] : r.ends[i + 1]]
        article = "an" if said[0] in "aeiou" else "a"
        found.append(
            at(r, i, "article", f"“{said}” needs a small word like “{article}” before it.",
               f"{article} {said}", to=i + 1)
        )  # fmt: skip
    return found


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


_WAITED_FOR = word_set(
    "bus train turn ride call letter answer friend plane boat ferry van taxi lunch"
)


@on_words("wait waits waited waiting")
def for_behind_wait(r: Reading, i: int) -> Found:
    """waited a bus.

    >>> show("Have you ever waited a bus?")
    ['missing-word: waited a -> waited for a']
    >>> show("We waited a bit. We waited a long time.")
    []
    """
    if r.after(i) not in ARTICLES or r.after(i + 1) not in _WAITED_FOR:
        return None
    return missing_behind(r, i, "for")


@on_words("that which")
def thing_named_twice(r: Reading, i: int) -> Found:
    """A game that I can play it: it stands there already.

    >>> show("A game that I can play it alone", "topic")
    ['extra-word: it -> ']
    >>> show("The day that I lost it", "topic")
    []
    """
    if r.tag[i - 1 : i] not in (["NN"], ["NNS"]) or r.before(i - 1) not in DETERMINERS | {
        "favorite"
    }:
        return None
    if r.lower[i - 1] in _WHEN or r.after(i) not in SUBJECTS - {"it"} or not r.near(i + 1):
        return None
    v = i + 2
    if r.lower[v] in AUXILIARIES and r.near(v) and v + 1 < r.n:
        v += 1
    both = r.lower[i - 1][-1:] == "s"
    again = "them" if both else "it"
    if not verb_forms(r.lower[v]) or r.after(v) != again:
        return None
    behind = r.after(v + 1)
    if behind and behind not in word_set("alone again every at in with on most best all"):
        return None
    return _too_many(r, v + 1)


_WHEN = word_set(
    "day time way reason fact news idea feeling place moment year night week morning hope chance"
)


_PLAYED = {"playground": "on", "park": "in", "beach": "on", "yard": "in", "sandbox": "in", "swings": "on",
           "slide": "on", "snow": "in", "sand": "in", "gym": "in", "backyard": "in"}  # fmt: skip


@on_words("play plays played playing")
def where_it_is_played(r: Reading, i: int) -> Found:
    """play the playground.

    >>> show("What do you like to play the playground?")
    ['missing-word: play the -> play on the']
    >>> show("We play the drums.")
    []
    """
    place = r.after(i + 1) if r.after(i) == "the" else ""
    return missing_behind(r, i, _PLAYED[place]) if place in _PLAYED else None


_TO_PLACES = word_set(
    "beach park store zoo library lake pool museum playground movies doctor dentist fair mall office "
    "gym cafeteria river pond bathroom barn bakery airport hospital circus"
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


@on_words("a an")
def article_before_how_one_is(r: Reading, i: int) -> Found:
    """Tess is a very kind to us: nothing follows that the article could belong to.

    >>> show("Tess is a very kind to us.")
    ['extra-word: a -> ']
    >>> show("He is a kind boy. She was a little tired. It is a good.")
    []
    """
    if r.before(i) not in BE | {"feels", "looks", "seems"} or r.after(i) not in (
        "very",
        "so",
        "really",
        "too",
    ):
        return None
    j = i + 2
    behind = r.after(j)
    describes = "ADJ" in lemmas(r.lower[j]) and not r.lower[j].endswith("est")
    if not describes or behind and behind not in PREPOSITIONS | {"and", "when", "because", "today"}:
        return None
    return _too_many(r, i)


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


@on_words("at")
def at_behind_where(r: Reading, i: int) -> Found:
    """Where is my hat at?

    >>> show("Where is my yellow hat at?")
    ['extra-word: at -> ']
    >>> show("Where did you look at it? What did he point at?")
    []
    """
    if (
        r.after(i)
        or r.gap[i].strip()[:1] != "?"
        or r.lower[0] != "where"
        or r.lower[1:2] not in (["is"], ["are"], ["was"], ["were"])
    ):
        return None
    return _too_many(r, i)


@on_words("going how")
def to_before_a_plain_verb(r: Reading, i: int) -> Found:
    """going start, know how make.

    >>> show("When is the party going start? I know how make tea.")
    ['missing-word: going start -> going to start', 'missing-word: how make -> how to make']
    >>> show("We are going home. He knows how bees fly. How fast is it going now?")
    []
    """
    after = r.after(i)
    if "VB" not in verb_forms(after) or after in FUNCTION - {"be", "have", "do"}:
        return None
    if "ADV" in lemmas(after) or "ADJ" in lemmas(after) or after in ("home", "camping", "bowling"):
        return None
    if r.lower[i] == "how" and (
        r.before(i) not in _LEARNS
        or is_noun(after)
        and not (r.after(i + 1) in DETERMINERS or is_noun(r.after(i + 1)))
    ):
        return None
    if r.lower[i] == "going" and (
        r.before(i) in ARTICLES or is_noun(after) and r.tag[i + 1] == "NNS"
    ):
        return None
    return missing_behind(r, i, "to")


_LEARNS = word_set(
    "know knows knew learn learned learns show shows showed tell teach taught forgot explain remember me you us him them"
)


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
