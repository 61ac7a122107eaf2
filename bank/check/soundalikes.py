"""Real words that sound like the one that is meant: meat for meet, flower for flour.

Three witnesses: the kind of word that the place asks for, the counts of word pairs, and for some
pairs the words that go with one of the two. None alone is enough to be certain of.
"""

from __future__ import annotations

import math
from functools import cache

from bank.check.engine import Found, at, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DO,
    FUNCTION,
    HE,
    MODALS,
    POSSESSIVES,
    SUBJECTS,
    is_noun,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, pair, word_set, zipf
from bank.check.reading import Reading
from bank.check.soundalike_words import ALSO, GOES_WITH, GROUPS, NEVER

_TOGETHER = {word: frozenset(words.split()) for word, words in GOES_WITH.items()}
_SKIP = word_set(
    "to too two there their your its it's our where were then than no know hear here you i be we "
    "or in not than do been of for by or so want live you've off quit which lay lie time due eye "
    "tree three sing sink then walk work ride"
)
_FLOOR = 2_000_000.0
_NEAR_PAIR = word_set(
    "chose choose loose lose breath breathe advice advise dairy diary angel angle desert dessert "
    "accept except affect effect clothes close cloths later latter trial trail"
)


@cache
def _alternatives() -> dict[str, tuple[str, ...]]:
    table: dict[str, list[str]] = {}
    for group in GROUPS.replace("\n", " ").split("|"):
        words = group.split()
        for word in words:
            for other in words:
                if other != word and other not in table.setdefault(word, []):
                    table[word].append(other)
    return {word: tuple(others) for word, others in table.items()}


@cache
def _jobs(word: str) -> frozenset[str]:
    """The places that `word` can fill: verb forms, N (noun), A (describes), or F (a small word)."""
    jobs = set(verb_forms(word))
    own = lemmas(word)
    if "NOUN" in own:
        jobs.add("N")
    if "ADJ" in own:
        jobs.add("A")
    if "ADV" in own:
        jobs.add("R")
    if word in FUNCTION or word in _SMALL_ONES:
        jobs.add("F")
    jobs -= NEVER.get(word, frozenset())
    jobs |= ALSO.get(word, frozenset())
    return frozenset(jobs)


_SMALL_ONES = word_set(
    "four eight one none some through which whether except hey hi please not very whole so"
)


@on_text()
def word_that_sounds_like_it(r: Reading) -> Found:
    """A real word, but the wrong one of those that sound the same.

    >>> show("I will meat you there.")
    ['homophone: meat -> meet']
    >>> show("Mom used flower to bake a cake.")
    ['homophone: flower -> flour']
    >>> show("We ate meat. Did you meet the new girl?")
    []
    """
    table = _alternatives()
    found = []
    for i, word in enumerate(r.lower):
        others = table.get(word)
        if others is None or word in _SKIP or r.words[i][0].isupper() and not r.first[i]:
            continue
        if word == "ate" and r.before(i) in SUBJECTS:
            # "Did you ate": the verb is meant, in another form.
            continue
        finding = _best_other(r, i, others)
        if finding is not None:
            found.append(finding)
    return found


def _best_other(r: Reading, i: int, others: tuple[str, ...]) -> Finding | None:
    word = r.lower[i]
    best: tuple[float, str, bool] | None = None
    asked = _asked_jobs(r, i)
    own_fits = _fits(word, asked)
    for other in others:
        gain = _pair_gain(r, i, word, other)
        fits = _fits(other, asked)
        company = _company(r, i, other) - _company(r, i, word)
        if (
            r.tag[i] in ("VBD", "VBZ", "VBP")
            and _jobs(word) & {"VBD", "VBZ", "VB"}
            and not _jobs(other) & {"VBD", "VBZ", "VB"}
            and own_fits
        ):
            gain -= 1.0
        score = (
            gain
            + (2.5 if fits and not own_fits else 0.0)
            - (2.5 if own_fits and not fits else 0.0)
            + 1.6 * company
        )
        slot = fits and not own_fits
        if score < (1.6 if slot else 2.0 if company > 0 else 2.4):
            continue
        if best is None or score > best[0]:
            best = (score, other, slot or score > 3.4)
    if best is None:
        return None
    return at(
        r,
        i,
        "homophone",
        f"“{r.words[i]}” sounds like “{best[1]}”, which fits here.",
        best[1],
        best[2],
    )


def _fits(word: str, asked: frozenset[str] | None) -> bool:
    return asked is None or not asked.isdisjoint(_jobs(word))


def _asked_jobs(r: Reading, i: int) -> frozenset[str] | None:
    """The jobs of which a word at `i` must have one, by the words around it; None where any will do."""
    before, after = r.before(i), r.after(i)
    if not before:
        if (
            r.first[i]
            and after in word_set("you we they he she i")
            and r.text.rstrip().endswith("?")
        ):
            return frozenset("F")
        return None
    if is_noun(before) and not DO.isdisjoint(r.lower[max(0, i - 4) : i - 1]):
        # "How do fish breathe?"
        return frozenset({"VB", "N", "R", "F"})
    if before in MODALS or before in word_set(
        "didn't don't doesn't can't won't couldn't wouldn't shouldn't let's"
    ):
        return frozenset({"VB", "R", "F"})
    if before == "to" and (i < 2 or r.lower[i - 2] in _INFINITIVE):
        return frozenset({"VB", "R"})
    if before in SUBJECTS and before not in ("it", "you") and not _helped(r, i - 1):
        # "he", "she": third form or past; the others: plain or past.
        return frozenset({"VBZ", "VBD", "R", "F"} if before in HE else {"VB", "VBD", "R", "F"})
    if before in SUBJECTS and _helped(r, i - 1) and not _be_helped(r, i - 1):
        return frozenset({"VB", "VBN", "R", "F"})
    if before in ARTICLES | POSSESSIVES - {"her"} and before not in ("that", "this"):
        return frozenset(
            {"N", "A", "VBG", "VBN", "R", "F"} if before == "the" else {"N", "A", "VBG", "VBN", "R"}
        )
    if (
        "VBD" in verb_forms(before)
        and before not in AUXILIARIES
        and not is_noun(before)
        and before not in word_set("let made helped saw heard had")
    ):
        states = {"VBN"} if before in _BECOMING else set()
        return frozenset({"N", "A", "R", "F", "VBG"} | states)
    if (
        r.tag[i - 1] in ("VBD", "VBZ", "VBP", "VB")
        and before not in AUXILIARIES
        and before not in word_set("let make help made helped go come")
    ):
        return frozenset({"N", "A", "R", "F", "VBG"})
    if before in BE and not r.first[i - 1] or before in ("has", "have") and r.lower[i] == "blew":
        return frozenset({"N", "A", "R", "F", "VBG", "VBN"})
    if (
        before in ("hardly", "never", "always", "really", "also")
        and i > 1
        and r.lower[i - 2] in MODALS
    ):
        return frozenset({"VB", "R"})
    if before in ("very", "so", "too") and after in ("", "and", "to", "that"):
        return frozenset({"A", "R", "F"})
    return None


_BECOMING = word_set("got felt became looked seemed sounded stayed grew")
_INFINITIVE = word_set(
    "want wants wanted need needs needed like likes liked love loves loved going how have has had "
    "try tried used able where what when ready learn learned time way"
)


def _helped(r: Reading, i: int) -> bool:
    return i > 0 and r.lower[i - 1] in AUXILIARIES and r.near(i - 1)


def _be_helped(r: Reading, i: int) -> bool:
    return i > 0 and (
        r.lower[i - 1] in BE or r.lower[i - 1].startswith(("is", "are", "was", "were"))
    )


@cache
def _log_pair(first: str, second: str) -> float:
    return math.log10(max(pair(first, second), _FLOOR))


def _pair_gain(r: Reading, i: int, word: str, other: str) -> float:
    """How much likelier the neighbours make `other` than `word`, in powers of ten."""
    gain = 0.0
    before, after = r.before(i), r.after(i)
    if before:
        gain += _log_pair(before, other) - _log_pair(before, word)
    if after:
        gain += _log_pair(other, after) - _log_pair(word, after)
    # A frequent word has more pairs with everything.
    return gain - 0.5 * (zipf(other) - zipf(word)) * (1 if gain > 0 else 0)


def _company(r: Reading, i: int, word: str) -> int:
    together = _TOGETHER.get(word)
    if together is None:
        return 0
    alike = _alternatives().get(word, ())
    return min(
        2, sum(1 for k, w in enumerate(r.lower) if k != i and w in together and w not in alike)
    )
