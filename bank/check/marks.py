"""End marks."""

from __future__ import annotations

import re

from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    DETERMINERS,
    SUBJECTS,
    WH,
    noun_phrase,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_ENDED = re.compile(r"[.!?…:][\"”'’)\]]*\s*$|[_]+\s*$")
_ASKS = AUXILIARIES - word_set("be been being")
_RULE = "A sentence ends with . or ? or !"
_TELLS = word_set(
    "tell name explain describe write draw list say show think imagine pretend use compare give "
    "read look make find circle count choose pick share"
)


@on_text(["question", "sentence", "passage"])
def no_end_mark(r: Reading) -> Found:
    """A text without a mark at its end.

    >>> show("I like cats")
    ['end-mark:  -> .']
    >>> show("Do you like cats")
    ['end-mark:  -> ?']
    """
    if not r.n or _ENDED.search(r.text):
        return None
    end = len(r.text.rstrip())
    start, close = r.sentences[-1]
    asks = asks_something(r, start, close) or r.kind == "question" and r.lower[start] not in _TELLS
    return Finding("end-mark", end, end, _RULE, "?" if asks else ".", True)


@on_text()
def mark_that_does_not_fit(r: Reading) -> Found:
    """A question that ends like a statement, or the other way round.

    >>> show("Where does the bus stop.")
    ['end-mark: . -> ?']
    >>> show("I have a loose tooth?")
    ['end-mark: ? -> .']
    >>> show("What a big dog! How fast you ran! Where he went is a secret.")
    []
    >>> show("Who ate the bun is still a mystery. What she said was kind.")
    []
    """
    found = []
    for start, close in r.sentences:
        last = close - 1
        gap = r.gap[last]
        short = r.lower[last] == "m" and last > start and r.lower[last - 1] in ("a", "p")
        if short and re.match(r"\.[?!]", gap):
            continue  # 8:45 a.m.?
        mark = re.match(r"[\"”'’)\]]*([.!?])", gap)
        if mark is None:
            continue
        place = r.ends[last] + mark.start(1)
        asks = asks_something(r, start, close)
        if mark.group(1) in ".!" and asks and not gap.startswith("..."):
            if mark.group(1) == "!" and not (r.kind == "question" or _wh_with_helper(r, start)):
                continue
            found.append(
                Finding(
                    "end-mark",
                    place,
                    place + 1,
                    "A question ends with ?",
                    "?",
                    mark.group(1) == "." or r.kind == "question",
                )
            )
        elif mark.group(1) == "?" and not asks and _plainly_tells(r, start, close):
            found.append(
                Finding(
                    "end-mark", place, place + 1, "This is no question; it ends with .", ".", False
                )
            )
    return found


def asks_something(r: Reading, start: int, close: int) -> bool:
    """Whether the words from `start` to `close` are in the order of a question."""
    # A question inside talking marks ends inside them; the frame around it decides nothing.
    if any(c in r.text[r.starts[start] : r.ends[close - 1]] for c in '"“”'):
        return False
    i = start
    if close - start < 2:
        return False
    word = r.lower[i]
    if word in word_set("so and but then well oh hey now please") and i + 2 < close:
        i += 1
        word = r.lower[i]
    if _opens_question(r, i, close):
        return not _told_by_a_clause(r, i, close)
    if (
        word
        in word_set(
            """
            if when after before in on at to for from with during besides once while
            because suppose
            """
        )
        or word in SUBJECTS
        or r.tag[i] == "NNP"
    ):
        for k in range(i + 1, close - 1):
            if r.gap[k].startswith(",") and _opens_question(r, k + 1, close):
                return word not in SUBJECTS or False
        if word in word_set("in on at to for from with during about by") and r.lower[i + 1] in (
            "what",
            "which",
            "whose",
            "how",
            "whom",
        ):
            return any(_inverted(r, k, close) for k in range(i + 2, min(close - 1, i + 6)))
    return False


def _opens_question(r: Reading, i: int, close: int) -> bool:
    word = r.lower[i]
    if word in _ASKS and word not in word_set("do have don't may can will might must had"):
        return _subject_at(r, i + 1, close)
    if word in _ASKS:
        nxt = r.lower[i + 1] if i + 1 < close else ""
        if word in ("do", "don't", "have"):
            return (
                nxt in SUBJECTS - {"it"}
                or word in ("do", "don't")
                and _inverted(r, i, close)
                and bool(nxt)
                and nxt in DETERMINERS
                and any("VB" in verb_forms(w) for w in r.lower[i + 3 : close])
                and word != "don't"
                and _has_late_verb(r, i, close)
            )
        return _subject_at(r, i + 1, close)
    if word in word_set("what's who's where's when's how's why's"):
        return True
    if word not in WH or i + 1 >= close:
        return False
    if word in ("what", "how") and r.lower[i + 1] in ("a", "an"):
        return False
    nxt = r.lower[i + 1]
    if nxt in _ASKS:
        if (
            word in ("who", "what", "which", "where", "when")
            and nxt in ("is", "was", "will", "can")
            and _clause_is_subject(r, i, close)
        ):
            return False
        return word not in ("when", "that") or _subject_at(r, i + 2, close)
    if word in ("who",) and verb_forms(nxt) & {"VBZ", "VBD", "VB"}:
        return not any(
            r.lower[k] in _ASKS or r.tag[k] in ("VBZ", "VBD", "VBP")
            for k in range(i + 3, close)
            if r.lower[k - 1] not in word_set("who that which and to when if because") and False
        )
    for k in range(i + 2, min(close - 1, i + 6)):
        if r.lower[k] in SUBJECTS:
            return False
        if r.lower[k] in _ASKS:
            return word in ("what", "which", "whose", "how") and (
                _inverted(r, k, close)
                or word in ("which", "whose", "what")
                or r.lower[i + 1] in ("many", "much")
            )
        if word in ("which", "what", "whose") and r.tag[k] in ("VBZ", "VBD") and k == i + 2:
            return True
    return (
        word in ("which", "whose")
        and r.tag[i + 1][:1] == "N"
        or word == "how"
        and nxt in ("many", "much")
        and any(verb_forms(w) & {"VB", "VBD", "VBZ"} for w in r.lower[i + 3 : close])
    )


def _has_late_verb(r: Reading, i: int, close: int) -> bool:
    phrase = noun_phrase(r, i + 1)
    return (
        phrase is not None
        and phrase.last + 1 < close
        and "VB" in verb_forms(r.lower[phrase.last + 1])
    )


def _clause_is_subject(r: Reading, i: int, close: int) -> bool:
    """`What is in the box is a secret`: a second finite verb makes the wh clause the subject."""
    if r.gap[close - 1].lstrip().startswith("?"):
        return False
    return (
        sum(
            1
            for k in range(i + 2, close)
            if r.tag[k] in ("VBZ", "VBD", "VBP", "MD") and r.dep[k] == "ROOT"
        )
        > 0
    )


def _told_by_a_clause(r: Reading, i: int, close: int) -> bool:
    """`Who ate the muffin is a mystery.`: two verbs, the later one is or was, and a full stop."""
    if r.lower[i] not in WH or r.lower[i + 1] in _ASKS or r.gap[close - 1].lstrip()[:1] != ".":
        return False
    finite = [k for k in range(i + 1, close) if r.tag[k] in ("VBZ", "VBD", "VBP", "MD")]
    return (
        len(finite) > 1
        and r.lower[finite[-1]] in ("is", "was")
        and r.lower[finite[-1] - 1] not in WH | SUBJECTS | {"that", "there"}
    )


def _subject_at(r: Reading, i: int, close: int) -> bool:
    if i >= close:
        return False
    word = r.lower[i]
    if (
        word
        in word_set(
            """
            not there this that these those anyone anybody someone everyone
            everybody each all any one your my his her its our their the a an
            """
        )
        or word in SUBJECTS
    ):
        return True
    return r.tag[i][:1] == "N" or r.tag[i] in ("DT", "PRP$", "CD") or noun_phrase(r, i) is not None


def _inverted(r: Reading, k: int, close: int) -> bool:
    return r.lower[k] in _ASKS and _subject_at(r, k + 1, close)


def _wh_with_helper(r: Reading, start: int) -> bool:
    return r.lower[start] in WH and start + 1 < r.n and r.lower[start + 1] in _ASKS


def _plainly_tells(r: Reading, start: int, close: int) -> bool:
    if any(c in r.text[r.starts[start] : r.ends[close - 1]] for c in '"“”'):
        return False
    if r.kind == "question" and r.lower[start] in ("you", "so"):
        return False
    if any(r.gap[k - 1] == ", " and r.lower[k] in _ASKS for k in range(start + 1, close)):
        return False
    if _asks_about(r, start, close) or _orders(r, start, close):
        return True
    if any(r.lower[k] in WH for k in range(start, close)) or "," in "".join(
        r.gap[max(start, close - 3) : close - 1]
    ):
        return False
    if r.lower[close - 1] in ("right", "okay", "ok", "too", "please"):
        return False
    first = r.lower[start]
    if first in _TELLS and r.tag[start] in ("VB", "VBP") and r.near(start):
        return r.kind == "topic"
    if first not in SUBJECTS - {"you"} and first not in DETERMINERS and r.tag[start] != "NNP":
        return False
    phrase = noun_phrase(r, start)
    if phrase is None or phrase.last + 1 >= close:
        return False
    verb = phrase.last + 1
    if r.kind == "sentence" and r.lower[verb] in (
        "of",
        "on",
        "in",
        "at",
        "by",
        "with",
        "under",
        "near",
    ):
        behind = noun_phrase(r, verb + 1) if verb + 1 < close else None
        verb = behind.last + 1 if behind is not None and behind.last + 1 < close else verb
    return r.lower[verb] in AUXILIARIES or r.tag[verb] in ("VBZ", "VBD", "VBP", "MD")


def _asks_about(r: Reading, start: int, close: int) -> bool:
    """`I asked Dad where the ball was?`: a statement that holds what was asked."""
    who = r.lower[start] in ("i", "he", "she", "we", "they") or r.tag[start] == "NNP"
    if not who and r.lower[start] not in DETERMINERS or "," in "".join(r.gap[start : close - 1]):
        return False
    asked = [k for k in range(start + 1, min(close, start + 4)) if r.lower[k] in _WONDERS]
    if not asked:
        return False
    at = [k for k in range(asked[0] + 1, close - 1) if r.lower[k] in WH | {"if", "whether"}]
    return bool(at) and r.lower[at[0] + 1] not in _ASKS


_WONDERS = word_set("asked wonder wondered know knew told showed forgot learned found explained")


def _orders(r: Reading, start: int, close: int) -> bool:
    """`Watch out for the paint?`: an order."""
    if r.lower[start] == "please" and start + 1 < close and r.near(start):
        start += 1
    word = r.lower[start]
    if r.kind == "topic" or word in _ASKS or close - start < 3 or r.tag[start] != "VB":
        return False
    if word in word_set(
        "want need like got see know have care mind guess remember ready feel hear think"
    ):
        return False
    return "VB" in verb_forms(word) and r.lower[start + 1] in DETERMINERS | word_set(
        "out up down on off in for to with your it them away not"
    )
