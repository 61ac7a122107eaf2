"""What goes wrong in longer sentences: times that change, numbers and small words further apart."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    BE,
    DETERMINERS,
    HAVE,
    MANY,
    PREPOSITIONS,
    SUBJECTS,
    form,
    is_noun,
    noun_phrase,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import pair, word_set
from bank.check.missing import missing_behind
from bank.check.reading import Reading

_TIES = {
    "responsible": "for", "interested": "in", "good": "at", "afraid": "of", "tired": "of",
    "excited": "about", "bad": "at", "famous": "for", "proud": "of", "scared": "of",
}  # fmt: skip


@on_words(" ".join(_TIES))
def small_word_before_an_ing_form(r: Reading, i: int) -> Found:
    """responsible watering, good drawing.

    >>> show("Who is responsible watering the plants? She is good drawing.")
    ['missing-word: responsible watering -> responsible for watering', 'missing-word: good drawing -> good at drawing']
    >>> show("It was good coloring. The good painting is wet.")
    []
    """
    after = r.after(i)
    if r.before(i) not in BE | {"very", "so", "really"} or not after.endswith("ing"):
        return None
    if "VBG" not in verb_forms(after) or r.lower[i - 2 : i - 1] == ["it"]:
        return None
    return missing_behind(r, i, _TIES[r.lower[i]])


@on_words("forward")
def to_behind_forward(r: Reading, i: int) -> Found:
    """looking forward the trip.

    >>> show("We are looking forward the trip.")
    ['missing-word: forward the -> forward to the']
    >>> show("We look forward to the trip.")
    []
    """
    looks = r.before(i) in ("look", "looks", "looked", "looking")
    return missing_behind(r, i, "to") if looks and r.after(i) in DETERMINERS else None


@on_words("ever never")
def been_behind_ever(r: Reading, i: int) -> Found:
    """Have you ever to a museum?

    >>> show("Have you ever to a museum?")
    ['missing-word: ever to -> ever been to']
    >>> show("Have you ever been to a zoo?")
    []
    """
    if r.after(i) not in ("to", "in", "on", "at") or not r.near(i + 1):
        return None
    helped = r.lower[max(0, i - 2) : i]
    have = any(word in HAVE for word in helped) and r.lower[i + 2] in DETERMINERS
    return missing_behind(r, i, "been") if have else None


@on_words("is are was were")
def most_of_all_without_the(r: Reading, i: int) -> Found:
    """What is longest river?

    >>> show("What is longest river in your state?")
    ['article: longest -> the longest']
    >>> show("They are best friends. Which is longest?")
    []
    """
    word, thing = r.after(i), r.after(i + 1)
    most = word.endswith("est") and r.tag[i + 1] == "JJS" or word in ("best", "worst")
    if (
        not most
        or not thing
        or r.tag[i + 2] != "NN"
        or not is_noun(thing)
        or is_noun(r.after(i + 2))
    ):
        return None
    return at(r, i + 1, "article", f"“{word}” needs “the” before it.", f"the {r.words[i + 1]}")


@on_words("this that")
def this_before_a_number(r: Reading, i: int) -> Found:
    """this two tools.

    >>> show("Where did you find this two old tools?")
    ['agreement: this -> these']
    >>> show("This one is mine. I like that many-colored coat. This five is blue.")
    []
    """
    if r.after(i) not in MANY - {"few", "both", "many", "several", "these", "those"} or not r.near(
        i + 1
    ):
        return None
    things = any(
        r.tag[k] == "NNS" and singular_of(r.lower[k]) for k in range(i + 2, min(r.n, i + 5))
    )
    right = "these" if r.lower[i] == "this" else "those"
    return at(r, i, "agreement", f"More than one: “{right}”.", right) if things else None


@on_words("and")
def time_that_changes(r: Reading, i: int) -> Found:
    """The dog jumped over the fence and runs away.

    >>> show("The dog jumped over the fence and runs away.")
    ['tense: runs -> ran']
    >>> show("He said that she swims and runs. The dog barked, and it runs now.")
    []
    """
    word = r.after(i)
    if verb_forms(word) != {"VBZ"} or r.kind == "topic" or any(c in r.text for c in '"“”'):
        return None
    start = next(s for s, e in r.sentences if s <= i < e)
    verbs = [k for k in range(start, i) if r.tag[k] in ("VBD", "VBZ", "VBP", "MD")]
    if len(verbs) != 1 or r.tag[verbs[0]] != "VBD" or r.tag[i + 1] not in ("VBZ", "NNS"):
        return None
    if (
        r.tag[i + 1] == "NNS"
        and r.after(i + 1) not in PREPOSITIONS
        or {"that", "who"} & {*r.lower[start:i]}
    ):
        return None
    right = form(word, "VBD")
    return at(r, i + 1, "tense", f"In the past stands “{right}”.", right, False) if right else None


@on_words("tomorrow")
def past_with_tomorrow(r: Reading, i: int) -> Found:
    """Tomorrow the mayor opened the park.

    >>> show("Tomorrow the mayor opened the new park.")
    ['tense: opened -> will open']
    >>> show("Tomorrow we leave. He said that tomorrow is fine.")
    []
    """
    if not r.first[i] or any(word in AUXILIARIES for word in r.lower):
        return None
    verbs = [k for k in range(i + 1, r.n) if r.tag[k] == "VBD"]
    if len(verbs) != 1 or not verb_forms(r.lower[verbs[0]]) & {"VBD"}:
        return None
    plain = form(r.lower[verbs[0]], "VB")
    return at(r, verbs[0], "tense", f"For tomorrow say “will {plain}”.", f"will {plain}")


@on_words("was were is are")
def broken_not_broke(r: Reading, i: int) -> Found:
    """Was the pot broke? In a question the third form stands behind the thing.

    >>> show("Was the clay pot broke when you came?")
    ['tense: broke -> broken']
    >>> show("Was the pot broken? Was the man who broke it sad?")
    []
    """
    if not r.first[i] or not r.near(i) or r.lower[i + 1] not in DETERMINERS:
        return None
    phrase = noun_phrase(r, i + 1)
    if phrase is None or phrase.last + 1 >= r.n or not r.near(phrase.last):
        return None
    v = phrase.last + 1
    if verb_forms(r.lower[v]) != {"VBD"}:
        return None
    right = form(r.lower[v], "VBN")
    return at(r, v, "tense", f"After “{r.words[i]}” stands “{right}”.", right) if right else None


@on_words("ill")
def i_will_without_apostrophe(r: Reading, i: int) -> Found:
    """A lesson Ill always remember.

    >>> show("The book Ill read", "topic")
    ["apostrophe-contraction: Ill -> I'll"]
    """
    if r.words[i] != "Ill" or r.first[i]:
        return None
    return at(r, i, "apostrophe-contraction", "Short for “I will”: “I'll”.", "I'll")


_ANYONE = {
    w + "s": w + "'s" for w in word_set("anyone everyone someone anybody everybody somebody nobody")
}


@on_words(" ".join(_ANYONE))
def anyone_as_owner(r: Reading, i: int) -> Found:
    """Did you find anyones jacket?

    >>> show("Did you find anyones jacket?")
    ["apostrophe-possessive: anyones -> anyone's"]
    """
    right = _ANYONE[r.lower[i]]
    return at(r, i, "apostrophe-possessive", f"For who owns it write “{right}”.", right)


_NAMES_OF_TWO = {
    "rocky": "mountains", "pacific": "ocean", "atlantic": "ocean", "arctic": "ocean", "indian": "ocean",
    "grand": "canyon", "united": "states", "white": "house",
}  # fmt: skip


@on_words(" ".join({*_NAMES_OF_TWO.values()}))
def second_half_of_a_name(r: Reading, i: int) -> Found:
    """the Rocky mountains.

    >>> show("They crossed the Rocky mountains.")
    ['capital-name: mountains -> Mountains']
    >>> show("We climbed the rocky mountains.")
    []
    """
    first = r.before(i)
    if not first or r.words[i][0].isupper() or not r.words[i - 1][0].isupper() or r.first[i - 1]:
        return None
    if _NAMES_OF_TWO.get(first) != r.lower[i]:
        return None
    right = r.words[i].capitalize()
    return at(r, i, "capital-name", f"A name: “{right}”.", right)


@on_words("sun moon sky ocean")
def sun_without_the(r: Reading, i: int) -> Found:
    """Sun is hot.

    >>> show("Sun is very hot today.")
    ['article: Sun -> The sun']
    >>> show("Sun and rain help plants. Moon is a dog.")
    ['article: Moon -> The moon']
    """
    if not r.first[i] or r.after(i) not in ("is", "was", "shines", "looks", "rises", "sets"):
        return None
    right = f"The {r.lower[i]}"
    return at(r, i, "article", f"“{r.words[i]}” needs “the” before it.", right, r.lower[i] == "sun")


@on_words("pet")
def pet_without_article(r: Reading, i: int) -> Found:
    """My brother has pet hamster.

    >>> show("My brother has pet hamster.")
    ['article: pet -> a pet']
    >>> show("We have pet food. I have pet mice.")
    []
    """
    thing = r.after(i)
    if (
        r.before(i) not in ("has", "have", "had", "got", "want", "wants")
        or r.after(i + 1)
        or not thing
    ):
        return None
    if r.tag[i + 1] != "NN" or thing in ("food", "care", "hair", "time"):
        return None
    return at(r, i, "article", "“pet” needs “a” before it.", "a pet")


@on_text()
def four_things_without_commas(r: Reading) -> Found:
    """flour butter eggs and milk.

    >>> show("We need flour butter eggs and a pinch of salt.")
    ['comma-list: flour butter eggs -> flour, butter, eggs,']
    >>> show("I like apple juice boxes and nuts.")
    []
    """
    for i in range(4, r.n - 1):
        if r.lower[i] != "and" or not all(r.near(k) for k in range(i - 4, i)):
            continue
        three = r.lower[i - 3 : i]
        if not all(is_noun(w) and r.tag[k][:1] == "N" for k, w in enumerate(three, i - 3)):
            continue
        if pair(three[0], three[1]) or pair(three[1], three[2]) or r.lower[i - 4] in DETERMINERS:
            continue
        if "-" in "".join(three) or any(r.words[k][0].isupper() for k in range(i - 3, i)):
            continue
        if singular_of(three[2]) is None or r.tag[i - 2] == "NNS" or three[1] in SUBJECTS:
            continue
        return Finding("comma-list", r.starts[i - 3], r.ends[i - 1], "Put commas between the things in a list.",
                       ", ".join(r.words[i - 3 : i]) + ",", False)  # fmt: skip
    return None
