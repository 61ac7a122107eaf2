"""Where a clause with its subject and finite verb stands."""

from __future__ import annotations

from bank.check.grammar import (
    ADVERBS,
    AUXILIARIES,
    FUNCTION,
    SUBJECTS,
    is_noun,
    noun_phrase,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

SUBORDINATE = word_set(
    "because when if while although though until since after before unless whenever as that what "
    "who where why how which whose whether once so than like wherever whatever"
)


def finite_at(r: Reading, v: int) -> bool:
    word = r.lower[v]
    if word in AUXILIARIES and word not in ("be", "been", "being"):
        return True
    forms = verb_forms(word)
    if word in FUNCTION and word not in ("like", "left") or not forms:
        return False
    if r.tag[v] in ("VBD", "VBZ", "VBP"):
        return True
    return bool(forms & {"VBD", "VBZ"}) and not is_noun(word) and "ADJ" not in lemmas(word)


def clause_at(r: Reading, k: int, close: int) -> int | None:
    """The finite verb of a clause that starts with its subject at word `k`."""
    phrase = noun_phrase(r, k)
    word = r.lower[k]
    short = "'" in word and word.split("'")[0] in SUBJECTS | {"that", "there"}
    if short and not word.endswith("'s") or short and word.endswith("'s"):
        return k
    if phrase is None or phrase.last + 1 >= close or not r.near(phrase.last):
        return None
    v = phrase.last + 1
    if r.lower[v] in ADVERBS and r.near(v) and v + 1 < close:
        v += 1
    if finite_at(r, v):
        return v
    if (
        word in SUBJECTS
        and "VB" in verb_forms(r.lower[v])
        and (r.lower[v] not in FUNCTION or r.lower[v] == "like")
    ):
        return v
    return None


SPLICE_STOPS = word_set(
    "when if because while although though until since unless whenever as whether the_more who "
    "what where how why"
)


_MOMENTS = word_set("time day moment minute second year week month morning night first_ way")


def clause_in(r: Reading, start: int, k: int) -> bool:
    """Whether a subject and its finite verb stand between `start` and `k`, at the top of the sentence."""
    for m in range(start, k):
        if (
            r.dep[m] in ("nsubj", "nsubjpass", "expl")
            or r.lower[m] in SUBJECTS
            or r.lower[m].split("'")[0] in SUBJECTS
            and "'" in r.lower[m]
        ) and (any(finite_at(r, v) for v in range(m + 1, k)) or "'" in r.lower[m]):
            opener = r.lower[m - 1] if m > start else ""
            if opener in _MOMENTS:
                return False
            return not (opener in SPLICE_STOPS or m > start + 1 and r.lower[m - 2] in SPLICE_STOPS)
    return False
