"""Words that are taken for one another where the words beside them decide; a comparison of all."""

from __future__ import annotations

from bank.check.confused_help import wrong_word
from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.forms import is_compared
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    form,
    is_noun,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

_SKY = word_set(
    "the today's tomorrow's this hot cold nice bad good rainy sunny stormy wet warm snowy windy fall "
    "winter spring summer like"
)
_WONDERS = word_set(
    "know knows knew wonder wonders wondered ask asked asks see tell decide decided check sure"
)


@on_words("whether weather")
def whether_or_weather(r: Reading, i: int) -> Found:
    """the whether outside; I wonder weather it will rain.

    >>> show("The whether is nice. I wonder weather it will rain.")
    ['homophone: whether -> weather', 'homophone: weather -> whether']
    >>> show("The weather is bad. Ask whether the bus is late. I know weather words.")
    []
    """
    before, after = r.before(i), r.after(i)
    if r.lower[i] == "whether":
        sky = before in _SKY and (not after or after not in SUBJECTS | DETERMINERS)
        return wrong_word(r, i, "weather") if sky else None
    asks = before in _WONDERS and after in SUBJECTS | ARTICLES | POSSESSIVES
    return (
        wrong_word(r, i, "whether") if asks or after == "or" and r.after(i + 1) == "not" else None
    )


_FEELS = BE | word_set(
    "feel feels felt feeling look looks looked very too so got get gets seem seemed grew"
)


@on_words("week weak")
def week_or_weak(r: Reading, i: int) -> Found:
    """My legs felt week; once a weak.

    >>> show("My knees felt week. We swim once a weak.")
    ['homophone: week -> weak', 'homophone: weak -> week']
    >>> show("The tea is weak. He has a weak knee.")
    []
    """
    before, after = r.before(i), r.after(i)
    if r.lower[i] == "week":
        felt = before in _FEELS and (not after or after in PREPOSITIONS | {"and", "but", "because"})
        return wrong_word(r, i, "weak") if felt and before != "been" else None
    timed = before in word_set("last next every this per a one once each all") and (
        not after or after in PREPOSITIONS | SUBJECTS | AUXILIARIES
    )
    return wrong_word(r, i, "week") if timed else None


@on_words("to")
def to_before_how_it_is(r: Reading, i: int) -> Found:
    """The box is to heavy for Nora.

    >>> show("The box of nails is to heavy for Nora.")
    ['homophone: to -> too']
    >>> show("It is to open on Monday. This is next to heavy bags.")
    []
    """
    after = r.after(i)
    if r.before(i) not in BE | {"looks", "felt", "feels", "seems"} or r.after(i + 1) not in (
        "for",
        "to",
        "",
    ):
        return None
    plain = "ADJ" in lemmas(after) and "VB" not in verb_forms(after) and not is_noun(after)
    return wrong_word(r, i, "too") if after and (plain or after in _SIZES) else None


_SIZES = word_set(
    "heavy light big small long short hard easy cold hot wide tall deep early late loud"
)


@on_words("it's")
def it_is_in_a_topic(r: Reading, i: int) -> Found:
    """Our school and it's garden.

    >>> show("Our school and it's garden", "topic")
    ["homophone: it's -> its"]
    """
    if r.kind != "topic" or r.before(i) not in ("and", "with", "of", "in", "for", "on"):
        return None
    thing = r.after(i)
    closes = thing and is_noun(thing) and r.tag[i + 1][:1] == "N" and not r.after(i + 1)
    return wrong_word(r, i, "its") if closes else None


@on_words("the")
def higher_of_all(r: Reading, i: int) -> Found:
    """Of all the kites, mine flew the higher.

    >>> show("Of all the kites, mine flew the higher.")
    ['comparison: higher -> highest']
    >>> show("Of the two, he is the taller. The more the better.")
    []
    """
    opening = r.lower[:2]
    after = r.after(i)
    if opening != ["of", "all"] or i < 3 or not after or not is_compared(after, "er"):
        return None
    if r.after(i + 1) and r.after(i + 1) not in PREPOSITIONS:
        return None
    right = {"better": "best", "worse": "worst"}.get(after, after[:-2] + "est")
    return at(r, i + 1, "comparison", f"Of three or more say “{right}”.", right)


@on_words("very")
def very_much_before_what_is_liked(r: Reading, i: int) -> Found:
    """I like very much strawberries.

    >>> show("I like very much strawberries.")
    ['word-order: very much strawberries -> strawberries very much']
    >>> show("I like you very much. I like very much to swim.")
    []
    """
    if r.after(i) != "much" or not r.near(i + 1) or r.before(i) not in _LIKES:
        return None
    last = i + 2
    while (
        last < r.n - 1
        and r.near(last)
        and (r.lower[last] in DETERMINERS or r.tag[last][:2] == "JJ")
    ):
        last += 1
    if not is_noun(r.lower[last]) or r.tag[last][:1] != "N":
        return None
    thing = r.text[r.starts[i + 2] : r.ends[last]]
    return Finding(
        "word-order",
        r.starts[i],
        r.ends[last],
        "These words are in the wrong order.",
        f"{thing} very much",
        True,
    )


@on_words("are is am was were")
def plain_verb_behind_are_you(r: Reading, i: int) -> Found:
    """What are you make?

    >>> show("What are you make with that clay?")
    ['tense: make -> making']
    >>> show("Are you set to go? Is it open? Where are you people from?")
    []
    """
    if r.after(i) not in SUBJECTS or not r.near(i + 1) or r.tag[i + 2] in ("JJ", "NNS", "VBN"):
        return None
    word, behind = r.lower[i + 2], r.after(i + 2)
    doing = word in ("do", "have") and r.lower[i] in ("are", "were") and not is_noun(behind)
    if not doing and (
        verb_forms(word) != {"VB"}
        or word in AUXILIARIES
        or "ADJ" in lemmas(word)
        or "ADV" in lemmas(word)
    ):
        return None
    if is_noun(word) and not _takes_a_thing(word, behind):
        return None
    right = form(word, "VBG")
    return (
        at(r, i + 2, "tense", f"After “{r.words[i]} {r.words[i + 1]}” stands “{right}”.", right)
        if right
        else None
    )


@on_text()
def person_behind_a_helper_and_a_pair(r: Reading) -> Found:
    """Can him and Leo come? Did you see they at the fair?

    >>> show("Can him and Leo work together?")
    ['pronoun: him -> he']
    >>> show("Did you see they at the fair?")
    ['pronoun: they -> them']
    >>> show("Can you see he is sad? Let him and Leo work.")
    []
    """
    found = []
    for start, close in r.sentences:
        if close - start < 5 or r.lower[start] not in AUXILIARIES or not r.near(start):
            continue
        pair = r.lower[start + 1] in _WHO and r.lower[start + 2] == "and"
        if pair and r.lower[start] not in ("let", "help"):
            right = _WHO[r.lower[start + 1]]
            found.append(at(r, start + 1, "pronoun", f"Who does it is “{right}”.", right))
        last = r.lower[start + 2 : start + 4] == ["and", "me"] and start + 4 < close
        if (
            last
            and "VB" in verb_forms(r.lower[start + 4])
            and r.lower[start] not in ("let", "help")
        ):
            found.append(at(r, start + 3, "pronoun", "Who does it is “I”.", "I"))
        for k in range(start + 3, close):
            whom = _WHOM.get(r.lower[k])
            seen = whom and r.before(k) in _SEES and r.lower[k - 2] in SUBJECTS
            behind = r.after(k)
            if (
                whom
                and seen
                and (not behind or behind in PREPOSITIONS | {"again", "today", "yesterday"})
            ):
                found.append(
                    at(r, k, "pronoun", f"After “{r.words[k - 1]}” stands “{whom}”.", whom)
                )
    return found


_DONE = word_set("draw write read cook play swim paint sing build make")
_LIKES = word_set("like likes liked love loves loved enjoy enjoys miss want")
_WHO = {"her": "she", "him": "he", "me": "I", "us": "we", "them": "they"}
_WHOM = {"he": "him", "she": "her", "we": "us", "they": "them"}
_SEES = word_set(
    "see help like know meet love miss find visit call ask tell follow watch hear thank want invite catch hug feed"
)


def _takes_a_thing(word: str, behind: str) -> bool:
    """Whether a word that may be a noun is a verb here, by what stands behind it."""
    if word == "time":
        return False
    if word in ("go", "come") and behind in ("to", "with", "home", "in"):
        return True
    return (
        behind in DETERMINERS | OBJECTS | {"with", "it"}
        or word in _DONE
        and behind in ("in", "on", "at")
    )
