"""Small words beside a verb or a measure: one too many, or one that is left out."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
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
    if behind and is_noun(behind.removesuffix("'s")) and behind not in FUNCTION:
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
    if r.lower[i - 3 : i - 2] == ["such"]:
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
