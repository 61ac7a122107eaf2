"""Clauses whose subject stands there without a verb."""

from __future__ import annotations

from bank.check.engine import Found, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    FUNCTION,
    HE,
    JOINERS,
    MANY,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    leans_to_verb,
    noun_phrase,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, listed_words, word_set
from bank.check.missing import missing_behind
from bank.check.names import is_name
from bank.check.reading import Reading
from bank.check.verbless import FEELINGS

_NO_SUBJECT_HERE = word_set("and or than as but like to between with for except nor not")
_WITH_ITS_THING = word_set("both all each who that kids too either two three")
_AM_IS_ARE = {"i": "am"}
_INSIDE = word_set("because when if while although though but so once until since that and")
_DEGREE = word_set("so very too not")


def _be(subject: str, many: bool) -> str:
    return _AM_IS_ARE.get(subject, "are" if many else "is")


@on_words("i he she we they it")
def person_without_a_verb(r: Reading, i: int) -> Found:
    """A pronoun that can only be a subject, and behind it no word that could be its verb.

    >>> show("I left the pears because they not ripe.")
    ['missing-word: they not -> they are not']
    >>> show("She is taller than he. What is she afraid of? We often eat late.")
    []
    """
    if not r.near(i) or r.before(i) in _NO_SUBJECT_HERE | AUXILIARIES or r.kind == "topic":
        return None
    if "n't" in r.before(i) or r.before(i) in PREPOSITIONS or _asks_before(r, i):
        return None
    j = i + 1
    while j < r.n - 1 and r.near(j) and (r.lower[j] in ADVERBS or r.tag[j] == "RB"):
        if r.lower[j] == "not" or verb_forms(r.lower[j]):
            break
        j += 1
    word = r.lower[j]
    if word in _WITH_ITS_THING | WH | JOINERS | SUBJECTS | AUXILIARIES or "'" in word:
        return None
    if word.isdigit() or r.words[j][0].isupper() or word not in listed_words():
        return None
    follows = r.after(j)
    many = r.lower[i] in ("we", "they") and singular_of(word) is not None
    if many and (follows in AUXILIARIES or verb_forms(follows)):
        return None  # We students would like it.
    if r.lower[i] == "it" and not (r.first[i] or r.before(i) in _INSIDE - {"that"}):
        return None
    if only_a_state(r, j):
        return missing_behind(r, i, _be(r.lower[i], r.lower[i] not in HE))
    if verb_forms(word) - {"VBG"} or r.tag[j] == "RB" and word != "not":
        return None
    if word in ADVERBS - {"not"} or word == "no":
        return None
    subject = r.lower[i]
    if verb_forms(r.before(i)) and not r.first[i]:
        # "gave I half": not the verb is wrong but the case.
        return None
    return missing_behind(r, i, _be(subject, subject not in HE))


def only_a_state(r: Reading, j: int) -> bool:
    """Whether word `j` could be a verb but here describes: `It hot.`, `They dry now.`"""
    word, after = r.lower[j], r.after(j)
    return (
        "ADJ" in lemmas(word)
        and word not in FUNCTION
        and r.tag[j] == "JJ"
        and not verb_forms(word) & {"VBD", "VBZ"}
        and not leans_to_verb(word)
        and (not after or after in word_set("today now because when and"))
    )


def _asks_before(r: Reading, i: int) -> bool:
    """Whether a helping verb before word `i` in its clause may belong to it: `How old is he now`."""
    return i >= 2 and r.lower[i - 2] in AUXILIARIES and r.tag[i - 1] in ("RB", "DT")


@on_text()
def thing_without_a_verb(r: Reading) -> Found:
    """A thing and what is said of it, with no verb between, in any clause of the sentence.

    >>> show("I stopped because the puzzle too hard for me.")
    ['missing-word: puzzle too -> puzzle is too']
    >>> show("Our house bigger than the shed.")
    ['missing-word: house bigger -> house is bigger']
    >>> show("The box full of toys is mine. I saw the man so clearly.")
    []
    """
    if r.kind == "topic" or r.text.rstrip().endswith("?") or any(c in r.text for c in '"“”'):
        return None
    found = []
    for start, close in r.sentences:
        for k in _clause_openings(r, start, close):
            finding = _verbless(r, start, k, close)
            if finding is not None:
                found.append(finding)
                break
    return found


def _clause_openings(r: Reading, start: int, close: int) -> list[int]:
    first = start + 1 if r.tag[start] == "RB" and r.near(start) else start
    return [first] + [
        k + 1
        for k in range(start, close - 2)
        if r.lower[k] in _INSIDE and r.near(k) and (k == start or r.lower[k] not in ("that", "and"))
        or k > start and r.gap[k].startswith(", ") and r.lower[k + 1] not in _INSIDE
    ]  # fmt: skip


def _verbless(r: Reading, start: int, k: int, close: int) -> Finding | None:
    if k == start and close - start > 2 and r.near(start) and _this_mine(r, start, close):
        return missing_behind(
            r,
            start,
            "are" if r.lower[start] in ("these", "those", "there") else "is",
            r.kind == "sentence",
        )
    phrase = noun_phrase(r, k)
    if phrase is None or r.lower[phrase.first] in SUBJECTS or r.lower[k] in WH:
        return None
    opened = (
        r.lower[k] in DETERMINERS or r.words[k][0].isupper() and is_name(r.lower[k])
    )  # fmt: skip
    if not opened:
        return None
    last, head = phrase.last, phrase.head
    if any(verb_forms(r.lower[m]) & {"VBD", "VBZ"} for m in range(k + 2, last + 1)):
        return None
    end = _clause_end(r, last, close)
    v = last + 1
    while v < end - 1 and r.lower[v] in PREPOSITIONS - {"about"} and r.near(v - 1) and r.near(v):
        inner = noun_phrase(r, v + 1)
        if inner is None or inner.last + 1 > end:
            return None
        last, v = inner.last, inner.last + 1
    if v >= end:
        return None
    if not r.near(v - 1) or any(_may_be_finite(r, m) for m in range(v, end)):
        return None
    # A later verb could have the thing as its subject: "The box full of toys fell."
    if k <= start + 1 and end < close and r.lower[end] in ("that", "which", "who"):
        end = close if r.lower[v] not in _DEGREE else end
        if any(_may_be_finite(r, m) for m in range(end, close)) and r.lower[v] not in _DEGREE:
            return None
    if not _said_of_it(r, v, end) or r.lower[v] in ("later", "earlier", "ago"):
        return None
    if end < close and r.gap[end - 1].startswith(",") and r.lower[end] not in _INSIDE:
        return None
    if k > start + 1 and r.lower[k - 1] not in _INSIDE:
        return None
    subject = r.lower[head]
    return missing_behind(r, last, _be(subject, phrase.many), r.kind == "sentence")


def _this_mine(r: Reading, start: int, close: int) -> bool:
    """`This my best jump.`, `Sam my pal.`: who or what, and at once a new thing, without a verb."""
    word = r.lower[start]
    there = word == "there" and (r.lower[start + 1] in MANY or r.tag[start + 1] == "CD")
    if r.lower[start + 1] not in ARTICLES | POSSESSIVES and not there:
        return False
    if any(_may_be_finite(r, m) for m in range(start + 1, close)):
        return False
    return (
        there
        or word in ("this", "that", "these", "those")
        or is_name(word)
        and not leans_to_verb(word)
    )


def _clause_end(r: Reading, k: int, close: int) -> int:
    """One past the last word of the clause in which word `k` stands."""
    for m in range(k + 1, close):
        if not r.near(m - 1) and r.gap[m - 1].strip()[:1] in ",;:" and r.gap[m - 1].strip():
            return m
        if r.lower[m] in word_set(
            "because when if while although but so until that who which"
        ) and (r.lower[m] != "so" or m + 1 < close and "ADJ" not in lemmas(r.lower[m + 1])):
            return m
    return close


def _may_be_finite(r: Reading, m: int) -> bool:
    word = r.lower[m]
    if word in AUXILIARIES or "'" in word:
        return True
    forms = verb_forms(word)
    if not forms or word in PREPOSITIONS | DETERMINERS or r.tag[m - 1] == "CD":
        return False
    if r.tag[m] in ("VBD", "VBZ", "VBP", "VB", "MD"):
        return True
    return bool(forms & {"VBD", "VBZ"}) and "ADJ" not in lemmas(word) and not (
        is_noun(word) and singular_of(word) is None and "VBZ" not in forms
    )  # fmt: skip


def _said_of_it(r: Reading, v: int, end: int) -> bool:
    """Whether the words from `v` to the end of the clause can only be said of the thing before."""
    word = r.lower[v]
    rest = r.lower[v + 1 : end]
    if word in _DEGREE:
        return bool(rest) and ("ADJ" in lemmas(rest[0]) or rest[0] in ARTICLES | PREPOSITIONS)
    if word in ARTICLES | POSSESSIVES:
        return bool(rest)
    if word.isdigit() or r.tag[v] == "CD":
        return bool(rest) and rest[-1] in word_set("old late slow tall long high away deep wide")
    if word == "about":
        return rest[:1] == ["to"]
    if word in _WHERE_IT_IS and not rest:
        return True
    if not (describes_only(word) or r.tag[v] == "JJR"):
        return False
    return (
        not rest
        or rest[0] in ("than", "and", "of", "for", "to", "with", "at", "in", "on", "now", "today")
        and (rest[0] not in ("and",) or "ADJ" in lemmas(rest[-1]))
    )


_WHERE_IT_IS = word_set("on off out up away home here there inside outside asleep awake")


def describes_only(word: str) -> bool:
    """Whether `word` describes and is no past form that could be the verb: `full`, not `closed`."""
    return (
        "ADJ" in lemmas(word)
        and word not in FUNCTION
        and ("VBD" not in verb_forms(word) or word in FEELINGS)
    )
