"""Questions: the helping verb that is left out, and the one that stands too late."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    BE,
    DETERMINERS,
    DO,
    HAVE,
    HE,
    MODALS,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    form,
    is_noun,
    noun_phrase,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.missing import missing_behind
from bank.check.reading import Reading

_ASKS = word_set("what where when why how who which")
_COUNTS = word_set("many much")
_LATE = BE | MODALS | HAVE - {"being"}


@on_text({"question", "sentence", "passage"})
def question_without_its_helper(r: Reading) -> Found:
    """A question whose subject has no do, does or did before it, or its is and can behind it.

    >>> show("What you do when you are bored? What color the dog likes?")
    ['missing-word: What you -> What do you', 'missing-word: color the -> color does the']
    >>> show("Where the crayons are?")
    ['word-order: the crayons are -> are the crayons']
    >>> show("When you sing, do you move? What if you fall? Why not go?")
    []
    """
    found = []
    for start, close in r.sentences:
        if r.lower[start] not in _ASKS or not r.gap[close - 1].lstrip("\"”'").startswith("?"):
            continue
        finding = _unhelped(r, start, close)
        if finding is not None:
            found.append(finding)
    return found


def _unhelped(r: Reading, start: int, close: int) -> Finding | None:
    k = start + 1
    about = r.lower[start] in ("what", "which", "how") and k + 1 < close and _asked_about(r, k)
    if about:
        k += 2 if r.lower[k] in _COUNTS and k + 2 < close else 1
    if k >= close - 1 or not all(r.near(m) for m in range(start, k)):
        return None
    if r.lower[k] not in SUBJECTS and r.lower[k] not in DETERMINERS - {"what", "which", "whose"}:
        return None
    phrase = noun_phrase(r, k)
    if phrase is None or phrase.last + 1 >= close or not r.near(phrase.last):
        return None
    if about and r.lower[k] in ("this", "that", "a", "an", "these", "those"):
        return None
    v = phrase.last + 1
    if any("," in gap for gap in r.gap[start : close - 1]) or _asked_later(r, v, close):
        return None
    one = not phrase.many and r.lower[k] not in ("i", "you")
    late = r.lower[v] in DO and "VB" in verb_forms(r.lower[v + 1] if v + 1 < close else "")
    if r.lower[v] in _LATE or late and r.lower[v + 1] not in ("for", "to", "in", "at", "on"):
        said = r.text[r.starts[k] : r.ends[phrase.last]]
        return Finding(
            "word-order", r.starts[k], r.ends[v], "In a question the helping word comes first.",
            f"{r.lower[v]} {said}", phrase.sure,
        )  # fmt: skip
    forms = verb_forms(r.lower[v])
    if forms == {"VBG"} and phrase.sure and r.lower[start] != "who":
        return missing_behind(r, k - 1, "is" if one else "am" if r.lower[k] == "i" else "are")
    if r.lower[v] in AUXILIARIES - DO or not forms & {"VB", "VBZ", "VBD"} or "VBG" in forms:
        return None
    if r.lower[k] not in SUBJECTS and r.tag[v] not in ("VB", "VBP", "VBZ", "VBD"):
        return None
    past = "VBD" in forms and "VB" not in forms
    helper = "did" if past else "does" if one or r.lower[k] in HE else "do"
    return missing_behind(r, k - 1, helper)


def _asked_about(r: Reading, k: int) -> bool:
    """Whether word `k` says what is asked about: what color, how many, which book."""
    word = r.lower[k]
    if word in _COUNTS:
        return k + 1 < r.n and r.lower[k + 1] not in AUXILIARIES and is_noun(r.lower[k + 1])
    if "VBZ" in verb_forms(word) or word in SUBJECTS | AUXILIARIES:
        return False
    return is_noun(word) and r.tag[k][:1] == "N" or r.tag[k] in ("JJ", "RB")


def _asked_later(r: Reading, v: int, close: int) -> bool:
    """Whether a question in the right order comes behind: `When you go do you wave?`"""
    return any(
        r.lower[m] in AUXILIARIES and m + 1 < close and r.lower[m + 1] in SUBJECTS | DETERMINERS
        for m in range(v + 1, close)
    )


@on_words("who")
def who_with_the_verb_of_many(r: Reading, i: int) -> Found:
    """Who asks for one: Who wants to go?

    >>> show("Who want to feed the fish?")
    ['agreement: want -> wants']
    >>> show("Who do you like? Who put the cup here? People who live here wave.")
    []
    """
    if not r.first[i] or not r.near(i) or not r.text.rstrip().endswith("?"):
        return None
    word = r.lower[i + 1]
    if word in AUXILIARIES - {"have"} or "VB" not in verb_forms(word) or not r.near(i + 1):
        return None
    if form(word, "VBD") == word:
        return None
    if word == "have" and r.after(i + 1) in SUBJECTS | {"been"}:
        return None
    right = "has" if word == "have" else form(word, "VBZ")
    return at(r, i + 1, "agreement", f"“Who” goes with “{right}”.", right) if right else None


@on_words(" ".join(BE - {"be", "been", "being"}))
def bare_thing_of(r: Reading, i: int) -> Found:
    """What is name of: a thing with `of` behind it needs the.

    >>> show("What is name of your street?")
    ['article: name -> the name']
    >>> show("The box is full of toys. It is part of the game.")
    []
    """
    word = r.after(i)
    if word not in _OF_THINGS or r.after(i + 1) != "of" or r.before(i) in PREPOSITIONS:
        return None
    return at(
        r, i + 1, "article", f"“{word}” needs “the” before it.", f"the {r.words[i + 1]}", True
    )


_OF_THINGS = word_set(
    "name color title end top bottom capital size shape center middle number first last best "
    "biggest smallest tallest oldest name's date year beginning rest back front owner author "
    "sound smell taste price age weight length job"
)


@on_words(" ".join(DO | {"can", "could", "will", "would", "should"}))
def subject_asked_twice(r: Reading, i: int) -> Found:
    """Why did the hen she leave?

    >>> show("Why did the hen she leave the nest?")
    ['extra-word: she -> ']
    >>> show("Did the hen she fed leave? Can the boy see?")
    []
    """
    if not (r.first[i] or r.before(i) in WH) or not r.near(i) or r.lower[i + 1] in SUBJECTS:
        return None
    phrase = noun_phrase(r, i + 1)
    if phrase is None or not r.near(phrase.last) or phrase.last + 2 >= r.n:
        return None
    k = phrase.last + 1
    if r.lower[k] not in ("he", "she", "it", "they") or not r.near(k):
        return None
    if "VB" not in verb_forms(r.lower[k + 1]) or r.lower[k + 1] in AUXILIARIES:
        return None
    return at(
        r, k, "extra-word", f"“{r.words[k]}” is too many; the subject stands there already.", ""
    )


@on_text()
def tag_without_its_mark(r: Reading) -> Found:
    """You like pickles, don't you.

    >>> show("You like pickles, don't you.")
    ['end-mark: . -> ?']
    >>> show("If you cannot, I can. He ran, and so did we.")
    []
    """
    found = []
    for start, close in r.sentences:
        if close - start < 5 or r.gap[close - 3][:1] != "," or r.gap[close - 1][:1] != ".":
            continue
        helper, who = r.lower[close - 2], r.lower[close - 1]
        if who not in SUBJECTS or helper not in AUXILIARIES or r.lower[start] in ("if", "when"):
            continue
        turned = helper.endswith("n't") != any(
            w.endswith("n't") or w == "not" for w in r.lower[start : close - 2]
        )
        if turned:
            end = r.ends[close - 1]
            found.append(Finding("end-mark", end, end + 1, "A question ends with ?", "?", True))
    return found


@on_words("which what")
def thing_asked_for_twice(r: Reading, i: int) -> Found:
    """Which book did you read it?

    >>> show("Which book did you read it last night?")
    ['extra-word: it -> ']
    >>> show("Which book did you read? What day did you see it? What would you do with it?")
    []
    """
    if not r.first[i] or i + 5 > r.n or not is_noun(r.lower[i + 1]) or r.lower[i + 1] in _TIMES:
        return None
    k = i + 2
    if r.lower[k] not in AUXILIARIES or k + 3 >= r.n or r.lower[k + 1] not in SUBJECTS:
        return None
    v = k + 2
    if "VB" not in verb_forms(r.lower[v]) or r.after(v) not in ("it", "them"):
        return None
    behind = r.after(v + 1)
    if behind and behind not in word_set(
        "last today yesterday again best most every at on in this first"
    ):
        return None
    return at(r, v + 1, "extra-word", f"“{r.words[v + 1]}” is too many.", "")


_TIMES = word_set("time day way month year season week place part kind sort reason")


@on_words("kinds sorts types")
def kinds_of_with_the_verb_of_one(r: Reading, i: int) -> Found:
    """What kinds of music makes you dance?

    >>> show("What kinds of music makes you want to dance?")
    ['agreement: makes -> make']
    >>> show("What kinds of music do you like?")
    []
    """
    if (
        r.after(i) != "of"
        or not r.near(i + 1)
        or r.before(i) not in ("what", "which", "two", "these")
    ):
        return None
    phrase = noun_phrase(r, i + 2)
    v = phrase.last + 1 if phrase is not None else i + 3
    if v >= r.n or not r.near(v - 1):
        return None
    word = r.lower[v]
    right = {"is": "are", "was": "were", "has": "have", "does": "do"}.get(word)
    if right is None and verb_forms(word) == {"VBZ"} and r.tag[v] in ("VBZ", "NNS"):
        right = form(word, "VB")
    return at(r, v, "agreement", f"“Kinds” goes with “{right}”.", right) if right else None
