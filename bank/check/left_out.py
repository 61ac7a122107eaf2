"""Small words that are left out in the middle of a sentence: of, in, to, and a whole verb."""

from __future__ import annotations

from bank.check.engine import Found, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    BE,
    DETERMINERS,
    FUNCTION,
    MODALS,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, pair, word_set, zipf
from bank.check.missing import missing_behind
from bank.check.reading import Reading

_TAKES = {
    "afraid": "of", "proud": "of", "tired": "of", "scared": "of", "full": "of", "fond": "of",
    "ready": "for", "late": "for", "famous": "for", "interested": "in", "excited": "about",
    "worried": "about", "kind": "to", "nice": "to", "mad": "at", "angry": "at", "different": "from",
    "next": "to", "because": "of",
}  # fmt: skip
"""The small word behind a describing word, before what it is about."""
_FELT = BE | word_set(
    "feel feels felt get got gets seem seems so very not too always i'm it's he's she's we're "
    "they're you're was were"
)


@on_words(" ".join(_TAKES))
def small_word_behind_a_describing_word(r: Reading, i: int) -> Found:
    """afraid the dark, full water, proud my team: the word that ties the two is missing.

    >>> show("My brother is afraid the dark.")
    ['missing-word: afraid the -> afraid of the']
    >>> show("The late bus is full. We were late the first day. Be kind to them.")
    []
    """
    word, after = r.lower[i], r.after(i)
    if not after or r.tag[i][:1] == "N" or word == "because":
        return None
    felt = r.before(i) in _FELT or i >= 2 and r.lower[i - 2] in BE and r.tag[i - 1][:1] in "NPR"
    if not felt:
        return None
    tied = after in ARTICLES | POSSESSIVES and r.near(i + 1)
    if tied and r.lower[i + 2] in _TIMES or tied and word in ("late", "kind", "nice"):
        return None
    stuff = word in ("full", "afraid", "scared", "tired") and r.tag[i + 1] in ("NNS", "NN")
    if stuff and (not is_noun(after) or r.after(i + 1) and r.tag[i + 2][:1] == "N"):
        return None
    if word == "next":
        tied = after in ARTICLES | POSSESSIVES | OBJECTS and r.before(i) in BE
    if word in ("kind", "nice", "mad", "angry", "proud", "afraid", "scared"):
        tied = tied or after in OBJECTS - {"her"}
    return missing_behind(r, i, _TAKES[word]) if tied or stuff else None


_TIMES = word_set(
    "day night morning afternoon evening week month year time whole entire first last next other "
    "same first second minute hour weekend summer winter moment more longer"
)
_STAYS = {
    "sit": "on", "sits": "on", "sat": "on", "sitting": "on", "live": "in", "lives": "in",
    "lived": "in", "living": "in", "sleep": "in", "sleeps": "in", "slept": "in", "sleeping": "in",
    "arrive": "at", "arrives": "at", "arrived": "at", "laugh": "at", "laughs": "at",
    "laughed": "at", "smile": "at", "smiled": "at", "stare": "at", "stared": "at",
    "lie": "on", "lies": "on", "lay": "on", "went": "to",
    "goes": "to", "go": "to", "going": "to", "come": "to", "comes": "to", "came": "to",
    "stand": "by", "stands": "by", "stood": "by", "fell": "on", "point": "at", "pointed": "at",
    "depends": "on", "apologized": "to", "agree": "with", "agreed": "with", "knocked": "on",
}  # fmt: skip
"""Verbs that take no thing without a small word, and the one that most places ask for."""
_STAYS_THING = word_set(
    "life lives dream lie truth test chance ground way ways distance extra mile race trip journey "
    "first second third last long egg eggs bricks tiles one most best same opposite"
)
_MAY_TAKE_A_THING = word_set("lay knocked stand stands stood point fell come comes go goes going")


@on_words(" ".join(_STAYS))
def small_word_behind_a_verb(r: Reading, i: int) -> Found:
    """sat the bench, lives a farm, laughed the joke.

    >>> show("The old man sat the bench.")
    ['missing-word: sat the -> sat on the']
    >>> show("She slept the whole night. He stood the test. I lived a good life.")
    []
    """
    word, after = r.lower[i], r.after(i)
    if after not in ARTICLES | POSSESSIVES - {"her"} or not r.near(i + 1):
        return None
    if word in ("lies", "stands", "lay") and r.tag[i][:1] == "N" or r.tag[i] in ("NN", "NNS", "JJ"):
        return None
    if r.before(i) in DETERMINERS | word_set("let let's by there here") or r.tag[i - 1 : i] == [
        "JJ"
    ]:
        return None
    if r.before(i) == "how" and word == "come" or r.before(i) in PREPOSITIONS and r.first[i - 1]:
        return None  # "How come the moon", "Up went the balloon"
    inside = r.lower[i + 2 : i + 5]
    if not _STAYS_THING.isdisjoint(inside) or not _TIMES.isdisjoint(inside[:2]):
        return None
    if r.before(i) == "to" and word in ("lie", "point"):
        return None
    thing = next((w for w in inside if is_noun(w)), "")
    if not thing or word in _MAY_TAKE_A_THING and "NOUN" not in lemmas(thing):
        return None
    follows = r.after(i + 2)
    # "When we sat the dog barked": the thing is the subject of what follows.
    if follows and r.tag[i + 3] in ("VBD", "VBZ", "VBP", "MD"):
        return None
    return missing_behind(r, i, _STAYS[word], word not in _MAY_TAKE_A_THING)


_AMOUNTS = word_set("lot lots bunch couple plenty")
_PARTS = word_set("one some most many each both none half")


@on_words(" ".join(_AMOUNTS | _PARTS))
def of_is_missing(r: Reading, i: int) -> Found:
    """a lot apples, one my friends.

    >>> show("We picked a lot apples. I saw one my friends.")
    ['missing-word: lot apples -> lot of apples', 'missing-word: one my -> one of my']
    >>> show("I like it a lot. Half the class and both my friends left.")
    []
    """
    word, after = r.lower[i], r.after(i)
    if not after:
        return None
    if word in _AMOUNTS:
        if word in ("lot", "bunch", "couple") and r.before(i) != "a":
            return None
        many = singular_of(after) is not None and r.tag[i + 1] == "NNS" and after not in _TIMES
        return missing_behind(r, i, "of") if many or after in POSSESSIVES else None
    if after in POSSESSIVES - {"her"} and word not in ("both", "half", "each"):
        return missing_behind(r, i, "of") if r.near(i + 1) else None
    return None


@on_words(" ".join(MODALS), "can't won't couldn't wouldn't shouldn't")
def verb_behind_a_helper_is_missing(r: Reading, i: int) -> Found:
    """can a bike, will the park: a helping word and at once a thing.

    >>> show("My sister can a bike.")
    ['missing-word: can a -> can ride a']
    >>> show("Can a fish swim? Open the can. You can, my dear.")
    []
    """
    after = r.after(i)
    if after not in ARTICLES | POSSESSIVES | word_set("me him them us") or not r.near(i + 1):
        return None
    if r.first[i] or r.text.rstrip().endswith("?") or r.tag[i][:1] in ("N", "V"):
        return None
    before = r.before(i)
    if not before or before in DETERMINERS or not (is_noun(before) or before in SUBJECTS):
        return None
    if any(verb_forms(w) & {"VB"} and r.tag[k] in ("VB", "VBP") and k > i + 1
           for k, w in enumerate(r.lower)):  # fmt: skip
        return None
    finding = missing_behind(r, i, "…", False)
    return Finding(
        finding.code, finding.start, finding.end,
        f"A verb is missing behind “{r.words[i]}”.", _with_a_verb(r, i), False,
    )  # fmt: skip


@on_words(" ".join(MODALS))
def to_behind_a_helper(r: Reading, i: int) -> Found:
    """can to see: no to stands behind can, will, should.

    >>> show("We can to see the moon.")
    ['extra-word: to -> ']
    """
    if r.after(i) != "to" or not r.near(i + 1) or r.tag[i] != "MD":
        return None
    if "VB" not in verb_forms(r.lower[i + 2]) or r.before(i) in DETERMINERS:
        return None
    return Finding(
        "extra-word", r.starts[i + 1], r.ends[i + 1],
        f"No “to” stands behind “{r.words[i]}”.", "", True,
    )  # fmt: skip


def _with_a_verb(r: Reading, i: int) -> str | None:
    """The words around word `i` with the verb that pairs with the thing most often."""
    thing = next((w for w in r.lower[i + 2 : i + 4] if is_noun(w)), "")
    tried = [(pair(verb, thing) + pair(verb, "a"), verb) for verb in _MAIN_VERBS]
    verb = "ride" if thing in ("bike", "horse", "bus") else max(tried)[1]
    return f"{r.words[i]} {verb} {r.words[i + 1]}"


_MAIN_VERBS = word_set("have make see get use take find read")


@on_text(["sentence", "passage"])
def nobody_does_it(r: Reading) -> Found:
    """A statement that starts with what was done and does not say who did it.

    >>> show("Went to the zoo on Friday.")
    ['missing-word: Went -> I went']
    >>> show("Put the cup down. Lost in the woods, he ran. Stop!")
    []
    """
    found = []
    for start, close in r.sentences:
        word = r.lower[start]
        forms = verb_forms(word)
        if close - start < 3 or not r.near(start) or word in FUNCTION - {"is", "was"}:
            continue
        past_only = "VBD" in forms and not forms & {"VB", "VBN", "VBG"}
        is_now = word in ("is", "was") and r.after(start) in _SAID_OF_NOBODY
        if not (past_only or is_now) or "NOUN" in lemmas(word) or "ADJ" in lemmas(word):
            continue
        if r.gap[close - 1].strip()[:1] == "?" or any(c in r.text for c in '"“”'):
            continue
        if r.after(start) in SUBJECTS - {"it", "you"} or zipf(word) < 3.5:
            continue
        who = "It" if is_now else "I"
        found.append(
            Finding(
                "missing-word", r.starts[start], r.ends[start],
                "This does not say who or what.", f"{who} {word}", False,
            )
        )  # fmt: skip
    return found


_SAID_OF_NOBODY = PREPOSITIONS | word_set("a very so raining snowing hot cold fun not too")
