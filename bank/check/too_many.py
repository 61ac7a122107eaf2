"""Words too many: a subject said twice, two small words for one."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    MODALS,
    POSSESSIVES,
    SUBJECTS,
    WH,
    noun_phrase,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading


@on_words("he she they it")
def subject_said_twice(r: Reading, i: int) -> Found:
    """My brother he plays: the subject once as a noun and once as a pronoun.

    >>> show("My brother he plays the drums.")
    ['extra-word: he -> ']
    >>> show("The book she reads is long.")
    []
    """
    if i < 1 or not r.near(i - 1) or not r.near(i):
        return None
    if r.kind == "topic" and r.text.rstrip()[-1:].isalnum():
        return None  # "The noise it made" names a thing
    start = _clause_start(r, i)
    phrase = noun_phrase(r, start)
    if (
        phrase is None
        or phrase.last != i - 1
        or r.lower[start] in WH
        or r.lower[phrase.head] in SUBJECTS
        or not (r.lower[start] in DETERMINERS or r.tag[start] in ("NNP", "NNS"))
    ):
        return None
    word, after = r.lower[i], r.after(i)
    if word in ("it", "they") and r.before(start) == "and":
        return None  # "a mistake and the lesson it taught you"
    if phrase.many != (word == "they") and word != "they":
        return None
    if phrase.many is False and word == "they":
        return None
    verb = after in AUXILIARIES or bool(verb_forms(after) & {"VB", "VBD", "VBZ"})
    if not verb:
        return None
    head = r.lower[phrase.head]
    person = head in _HE_WORDS and word == "he" or head in _SHE_WORDS and word == "she"
    close = next(e for s, e in r.sentences if s <= i < e)
    later = sum(
        1
        for k in range(i + 2, close)
        if r.tag[k] in ("VBZ", "VBD", "VBP", "MD") or r.lower[k] in AUXILIARIES
    )
    if (
        later or not person and word in ("he", "she") and r.words[phrase.head][0].islower()
    ) and later:
        return None
    return at(
        r,
        i,
        "extra-word",
        f"“{r.words[i]}” is too many; the subject stands there already.",
        "",
        True,
    )


def _clause_start(r: Reading, i: int) -> int:
    """Where the clause around word `i` starts: after a joining word or a comma."""
    k = i - 1
    while k > 0 and not r.first[k]:
        if r.gap[k - 1] != " " or r.lower[k - 1] in _OPENS_CLAUSE:
            break
        k -= 1
    return k


_OPENS_CLAUSE = word_set(
    "when if why where because while although that how until since and but so after before"
)
_HE_WORDS = word_set("brother dad father uncle grandpa grandfather boy man king")
_SHE_WORDS = word_set("sister mom mother aunt grandma grandmother girl woman queen")


@on_text()
def two_small_words_that_do_not_go_together(r: Reading) -> Found:
    """Two small words in a row of which one is too many: in to on, a the, the my.

    >>> show("She put the my book down.")
    ['extra-word: the -> ']
    """
    found = []
    for i in range(1, r.n):
        if r.gap[i - 1] != " ":
            continue
        a, b = r.lower[i - 1], r.lower[i]
        if (
            a in ARTICLES
            and b in (ARTICLES | POSSESSIVES | {"this", "these", "those", "that"})
            and a != b
            or a in POSSESSIVES - {"her"}
            and b in ARTICLES | POSSESSIVES
            and a != b
        ):
            if r.words[i - 1] == "A" and not r.first[i - 1] or a == "an" and b == "a":
                continue
            found.append(
                Finding(
                    "extra-word",
                    r.starts[i - 1],
                    r.ends[i - 1],
                    f"“{r.words[i - 1]}” is too many.",
                    "",
                    True,
                )
            )
        elif (
            i > 1
            and a in _PLAIN_PREP
            and b in _PLAIN_PREP
            and r.lower[i - 2] in _PLAIN_PREP
            and r.near(i - 2)
            and a != b
        ):
            found.append(
                Finding(
                    "extra-word",
                    r.starts[i - 2],
                    r.ends[i - 1],
                    f"“{r.words[i - 2]} {r.words[i - 1]}” is too many.",
                    "",
                    False,
                )
            )
        elif (
            b == "is"
            and a == "is"
            or a in MODALS
            and b in MODALS - {"will"}
            and a not in ("can", "might", "may", "will", "must")
            and a != b
        ):
            found.append(
                Finding(
                    "extra-word", r.starts[i], r.ends[i], f"“{r.words[i]}” is too many.", "", True
                )
            )
    return found


_PLAIN_PREP = word_set("in to on at into onto of with for from")
