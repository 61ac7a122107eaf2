"""Small words that are often taken for one another: their and there, to and too, than and then."""

from __future__ import annotations

from bank.check.confused_help import MODALS_SET, WANTS, thing_at, wrong_word
from bank.check.engine import Found, on_words
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    OBJECTS,
    POSSESSIVES,
    SUBJECTS,
    WH,
    is_noun,
)  # fmt: skip
from bank.check.lexicon import pair, word_set
from bank.check.reading import Reading


@on_words("of")
def of_for_have_or_off(r: Reading, i: int) -> Found:
    """could of for could have, and of for off.

    >>> show("I could of gone. Please turn of the light.")
    ['homophone: of -> have', 'homophone: of -> off']
    """
    before = r.before(i)
    if before in word_set("could should would might must may couldn't shouldn't wouldn't"):
        if before == "must" and r.after(i) in ARTICLES | POSSESSIVES:
            return None  # "for must of the winter": most is meant
        return wrong_word(r, i, "have")
    if before in word_set(
        """
        turn turned turns take took takes fell fall falls hop hopped jump jumped jumps
        slid rolled dropped drop brush cut flew blew fallen wipe wiped kick kicked peel
        peeled get got knocked
        """
    ) and (r.after(i) in ARTICLES | POSSESSIVES or not r.after(i)):
        if (
            r.tag[i - 1][:1] == "N"
            and not r.first[i - 1]
            or r.before(i - 1) in ARTICLES | POSSESSIVES
            or r.tag[i - 2 : i - 1] == ["JJ"]
        ):
            return None
        return wrong_word(r, i, "off")
    return None


@on_words("off")
def off_for_of(r: Reading, i: int) -> Found:
    """off where of is meant.

    >>> show("I drank a cup off milk.")
    ['homophone: off -> of']
    """
    before, after = r.before(i), r.after(i)
    if (
        before
        in word_set(
            """
            cup one some lot lots piece all out because kind most glass bowl bag box
            full many front top pair bunch side part end made afraid picture slice
            none each two tired proud instead both middle bottle name color sort
            type group king queen book think care hundreds thousands few several
            """
        )
        and after
    ):
        if (
            before in word_set("top side all end front one box some name")
            and before not in ("one", "some")
            and r.tag[i - 1][:1] != "N"
            and before != "all"
        ):
            return None
        if pair(before, "off") * 2 > pair(before, "of"):
            return None
        return wrong_word(r, i, "of", before not in word_set("top end side picture box all"))
    measured = (
        is_noun(before)
        and r.tag[i - 1][:1] == "N"
        and before != "day"
        and pair(before, "off") == 0
        and (pair(before, "of") > 0 or before.endswith("ful"))
        and thing_at(r, i + 1)
    )
    if measured and _TAKEN_OFF.isdisjoint(r.lower[:i]):
        return wrong_word(r, i, "of", False)
    return None


_TAKEN_OFF = word_set(
    "take takes took taking turn turns turned get gets got wash washed wipe wiped brush brushed "
    "shake shook cut cuts keep kept knock knocked pull pulled pick picked drop dropped throw threw"
)


@on_words("no know")
def no_or_know(r: Reading, i: int) -> Found:
    """no where know is meant, and know for no.

    >>> show("I no how to swim. There is know milk.")
    ['homophone: no -> know', 'homophone: know -> no']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "no":
        if (
            before in MODALS_SET | {"i", "you", "we", "they", "to"}
            and r.near(i)
            and (
                after in WH
                or after in DETERMINERS | OBJECTS | SUBJECTS
                or after in ("about", "if", "it", "that")
            )
        ):
            return wrong_word(r, i, "know")
        return None
    if before in word_set("almost make makes made need needs got see saw hear heard") and (
        r.tag[i + 1][:1] == "N" and is_noun(after) and r.lower[i - 2 : i - 1] != ["to"]
    ):
        return wrong_word(r, i, "no")
    if before in word_set("is are was has have had there's with were") and (
        is_noun(after) or after in ("one", "more")
    ):
        return wrong_word(r, i, "no")
    if (
        after == "one"
        and (r.first[i] or before in ("but", "so", "because"))
        and r.after(i + 1) in AUXILIARIES
    ):
        return wrong_word(r, i, "no")
    if r.first[i] and r.gap[i].startswith(","):
        return wrong_word(r, i, "no", False)
    return None


@on_words("hear here")
def hear_or_here(r: Reading, i: int) -> Found:
    """hear with the ears, here in this place.

    >>> show("I can here the birds. Come hear, please.")
    ['homophone: here -> hear', 'homophone: hear -> here']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "here":
        wants = before in MODALS_SET or before in word_set(
            "to i we they you did could didn't never ever"
        )
        if (
            wants
            and (
                after in DETERMINERS | OBJECTS | {"you", "it"}
                or is_noun(after)
                and r.tag[i + 1][:1] == "N"
            )
            and not (before == "you" and r.first[i - 1] and False)
        ):
            if before in ("i", "you", "they", "we") and i > 1 and r.lower[i - 2] in BE:
                return None
            return wrong_word(r, i, "hear")
        return None
    if before in word_set(
        """
        come came right over from is are stay in around lives live sit was were up down
        out it them
        """
    ):
        if before in word_set("it them is are was were from down right out up") and after:
            return None
        if before in ("it", "them") and not any(
            w in ("put", "leave", "left", "bring", "keep") for w in r.lower[:i]
        ):
            return None
        return wrong_word(r, i, "here")
    if after in ("is", "are", "comes", "it") and r.first[i] and after != "it":
        return wrong_word(r, i, "here")
    return None


@on_words("quiet quite")
def quiet_or_quite(r: Reading, i: int) -> Found:
    """quiet for no noise, quite for very.

    >>> show("Please be quite. It is quiet a big dog.")
    ['homophone: quite -> quiet', 'homophone: quiet -> quite']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "quiet" and after in word_set("a an the often well some") and before not in ("the",):
        return wrong_word(r, i, "quite", after in ("a", "an"))
    if (
        word == "quite"
        and (
            not after
            or after
            in word_set("and in so when while as during place room voice voices time please")
        )
        and before not in ("not",)
    ):
        return wrong_word(r, i, "quiet")
    return None


@on_words("read")
def read_for_red(r: Reading, i: int) -> Found:
    """read where the color is meant.

    >>> show("Stop at the read sign.")
    ['homophone: read -> red']
    """
    if (
        r.before(i) in ARTICLES | POSSESSIVES | {"big", "little", "bright"}
        and thing_at(r, i + 1)
        and r.after(i) not in ("aloud", "alouds")
    ):
        return wrong_word(r, i, "red")
    return None


@on_words("buy")
def buy_for_by(r: Reading, i: int) -> Found:
    """buy where by is meant.

    >>> show("She sat buy the bridge. I want to buy the bag.")
    ['homophone: buy -> by']
    """
    if r.before(i) in _STAND_BY and r.after(i):
        return wrong_word(r, i, "by")
    if (
        r.before(i)
        and (r.tag[i - 1] in ("VBZ", "VBD", "VBN", "VBG", "NN", "RB") or r.before(i) in BE)
        and r.after(i) in DETERMINERS | OBJECTS
    ):
        if r.before(i) in word_set(
            """
            and always never also just then please often sometimes usually not only
            now
            """
        ):
            return None
        return wrong_word(r, i, "by")
    return None


_STAND_BY = word_set(
    "sit sits sat sitting stand stands stood standing live lives lived play plays played wait "
    "waits waited walk walks walked sleep sleeps slept made written drawn painted right near"
)


@on_words("hole")
def hole_for_whole(r: Reading, i: int) -> Found:
    """hole where whole is meant.

    >>> show("I ate a hole pizza.")
    ['homophone: hole -> whole']
    """
    if (
        r.before(i) in ARTICLES | POSSESSIVES
        and thing_at(r, i + 1)
        and r.after(i) not in ("punch", "puncher")
    ):
        return wrong_word(r, i, "whole")
    return None


@on_words("blue")
def blue_for_blew(r: Reading, i: int) -> Found:
    """blue where blew is meant.

    >>> show("The wind blue the leaves away.")
    ['homophone: blue -> blew']
    """
    if (
        r.after(i) in ARTICLES | POSSESSIVES | OBJECTS | {"out", "up", "away"}
        and r.before(i)
        and (is_noun(r.before(i)) or r.before(i) in SUBJECTS)
    ):
        return wrong_word(r, i, "blew")
    return None


@on_words("witch")
def witch_for_which(r: Reading, i: int) -> Found:
    """witch where which is meant.

    >>> show("Witch one do you want?")
    ['homophone: Witch -> Which']
    """
    after = r.after(i)
    opens = r.first[i] or r.before(i) in ("know", "tell", "see", "choose", "decide")
    if opens and (
        after in word_set("one way of is are do side kind color")
        or is_noun(after)
        and r.text.rstrip().endswith("?")
    ):
        return wrong_word(r, i, "which")
    return None


@on_words("by bye")
def by_for_buy(r: Reading, i: int) -> Found:
    """by where buy is meant.

    >>> show("Mom will by new shoes. We went to by bread.")
    ['homophone: by -> buy', 'homophone: by -> buy']
    """
    before = r.before(i)
    if (
        before in MODALS_SET
        or before == "to"
        and r.before(i - 1) in WANTS | {"went", "store", "go", "money"}
    ):
        return wrong_word(r, i, "buy")
    if (
        before in ("i", "we", "they", "you")
        and (r.after(i) in DETERMINERS or r.tag[i + 1 : i + 2] == ["NNS"])
        and not any(r.lower[k] in AUXILIARIES for k in range(max(0, i - 4), i - 1))
    ):
        return wrong_word(r, i, "buy", r.first[i - 1])
    return None


@on_words("whole")
def whole_for_hole(r: Reading, i: int) -> Found:
    """whole where hole is meant.

    >>> show("She made a whole in the sand.")
    ['homophone: whole -> hole']
    """
    if (
        r.before(i) in word_set("a the this big deep small that")
        and r.after(i) in ("in", "for", "with", "under", "through")
        and r.before(i - 1) not in ("as", "on")
    ):
        return wrong_word(r, i, "hole")
    return None


@on_words("loose")
def loose_for_lose(r: Reading, i: int) -> Found:
    """loose where lose is meant.

    >>> show("Do not loose your card.")
    ['homophone: loose -> lose']
    >>> show("The dogs ran loose. They let loose the birds.")
    []
    """
    if r.after(i) not in POSSESSIVES | ARTICLES or r.before(i) not in MODALS_SET | {"not", "never"}:
        return None
    return wrong_word(r, i, "lose")


@on_words("be")
def be_for_bee(r: Reading, i: int) -> Found:
    """be where bee is meant.

    >>> show("The be stung me.")
    ['homophone: be -> bee']
    """
    return wrong_word(r, i, "bee") if r.before(i) in ARTICLES | POSSESSIVES else None
