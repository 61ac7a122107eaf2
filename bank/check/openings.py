"""The comma behind the words that stand before the main part of a sentence."""

from __future__ import annotations

from bank.check.clauses import finite_at
from bank.check.engine import Found, at, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    DETERMINERS,
    FUNCTION,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    noun_phrase,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_SUBORDINATORS = word_set(
    "when if after before while because although though until since once as unless whenever"
)
_CALLS = word_set("yes no oh wow hey")
_ADVERBS = word_set("well however finally suddenly luckily meanwhile first next afterward instead")
_BEHIND_A_CALL = word_set("the my a that there")
# A thought or a question can hold a clause without a mark: "When I think you are right".
_HOLDS_A_CLAUSE = word_set(
    "think know say said says hope thought knew wish guess sure feel felt see saw hear heard "
    "wonder ask asked tell told show showed"
)
_LINKS = word_set("and but or nor that who which whose whom what where when how why if because to")
_OFTEN_BARE = word_set("in on at with for from by")
"""A short phrase with one of these is often written without a comma: "On Friday we swim"."""


@on_text()
def opening_without_comma(r: Reading) -> Found:
    """A comma after a clause or a longer phrase before the main part, and after an opening word.

    >>> show("When the bell rang we ran to the door.")
    ['comma-intro: rang -> rang,']
    >>> show("After the long storm the sky was blue.")
    ['comma-intro: storm -> storm,']
    >>> show("Yes I can swim.")
    ['comma-intro: Yes -> Yes,']
    >>> show("On Friday we swim. After school I read. When I sing is up to me.")
    []
    """
    found = []
    for start, close in r.sentences:
        word = r.lower[start]
        if close - start < 3 or not r.near(start):
            continue
        if word in _CALLS | _ADVERBS:
            found += _opening_word(r, start, close)
        elif r.kind != "topic" and (word in _SUBORDINATORS or word in PREPOSITIONS):
            k = _main_part(r, start, close)
            if k is not None and not any("," in g for g in r.gap[start:k]):
                found.append(
                    at(
                        r, k - 1, "comma-intro",
                        "Put a comma after the words that come before the main part.",
                        r.words[k - 1] + ",", False,
                    )
                )  # fmt: skip
    return found


def _opening_word(r: Reading, start: int, close: int) -> list[Finding]:
    word, after = r.lower[start], r.lower[start + 1]
    opens = (
        after in SUBJECTS and word not in ("first", "next")
        or word not in ("no", "well", "first", "next") and after in _BEHIND_A_CALL
        or word in ("first", "next") and _orders(r, start + 1, close)
    )  # fmt: skip
    if not opens:
        return []
    return [
        at(
            r, start, "comma-intro", "Put a comma after the opening word.",
            r.words[start] + ",", word in _CALLS,
        )
    ]  # fmt: skip


def _orders(r: Reading, k: int, close: int) -> bool:
    """Whether an order (`wash your hands`) starts at word `k`."""
    return (
        "VB" in verb_forms(r.lower[k])
        and k + 1 < close
        and (r.lower[k + 1] in DETERMINERS or r.tag[k] in ("VB", "VBP"))
        and not any(r.tag[m] in ("VBD", "VBZ", "MD") for m in range(k + 1, close))
    )


def _main_part(r: Reading, start: int, close: int) -> int | None:
    """Where the main part starts behind the clause or phrase that opens at `start`."""
    if r.lower[start + 1] in AUXILIARIES:
        return None
    phrase_end = _behind_phrases(r, start, close)
    if phrase_end is not None:
        k = phrase_end
        length = k - start
        needed = 4 if r.lower[start] in _OFTEN_BARE else 3
        if _starts_clause(r, k, close) and r.near(k - 1):
            return k if length >= needed else None
    if r.lower[start] not in _SUBORDINATORS:
        return None
    return _second_subject(r, start, close)


def _behind_phrases(r: Reading, start: int, close: int) -> int | None:
    """The word behind `After the game`, `On our trip to the farm`; None where no phrase opens."""
    k = start
    while k < close - 2 and (r.lower[k] in PREPOSITIONS or k == start):
        phrase = noun_phrase(r, k + 1)
        if phrase is None or r.lower[phrase.first] in SUBJECTS or phrase.last + 1 >= close:
            return None
        if not r.near(phrase.last):
            return None
        k = phrase.last + 1
    return k if k > start else None


def _starts_clause(r: Reading, k: int, close: int) -> bool:
    phrase = noun_phrase(r, k)
    if phrase is None or phrase.last + 1 >= close or not r.near(phrase.last):
        return False
    return _finite(r, phrase.last + 1) or r.lower[k] in SUBJECTS and _plain(r, phrase.last + 1)


def _finite(r: Reading, v: int) -> bool:
    return finite_at(r, v) and not r.lower[v].endswith("ing")


def _plain(r: Reading, v: int) -> bool:
    return "VB" in verb_forms(r.lower[v]) and r.lower[v] not in FUNCTION


def _second_subject(r: Reading, start: int, close: int) -> int | None:
    """Where the subject of the second verb starts, the one that no joining word ties to the first.

    "If the bridge is closed the drivers wait": two finite verbs side by side in one sentence, so
    the second belongs to the main part.
    """
    first = _first_verb(r, start, close)
    if first is None:
        return None
    for k in range(first + 1, close):
        if not r.near(k - 1):
            return None
        word, before = r.lower[k], r.lower[k - 1]
        if before in _HOLDS_A_CLAUSE or word in _LINKS - WH - {"to"} or word == "who":
            return None
        if before in PREPOSITIONS - _PARTICLES or before in AUXILIARIES | DETERMINERS:
            continue
        if word in WH and k + 1 < close and r.lower[k + 1] in AUXILIARIES | {"happens", "comes"}:
            return k
        turned = word in AUXILIARIES and k > start + 2 and k + 2 < close
        if turned and r.lower[k + 1] in SUBJECTS and r.text.rstrip().endswith("?"):
            return k
        if word in WH:
            return None
        if before in ("to", "not") or before in SUBJECTS:
            continue
        if word in SUBJECTS - {"it", "you"} or word in DETERMINERS or word in ("it", "you"):
            if _starts_clause(r, k, close):
                return k
        elif _finite(r, k) and k > first + 2:
            return _bare_subject(r, k, first)
        elif r.dep[k] == "ROOT" and r.tag[k] == "VB" and before not in AUXILIARIES:
            # "If the dough is dry add water": an order is the main part.
            return k
        elif word in _ORDERS and k > first + 1 and k + 2 < close and r.lower[k + 1] in _ORDERED:
            return k
    return None


# "When the light turns green look both ways": what a child is told to do.
_ORDERS = word_set(
    "look wash put close open turn raise line clean pick take bring tell ask wait stop walk give get "
    "keep hold write read use wear check call add mix cut"
)
_ORDERED = word_set("your the both a up for down out away off it in")
_PARTICLES = word_set("up down out off in over on outside inside")


def _first_verb(r: Reading, start: int, close: int) -> int | None:
    """The finite verb of the clause that opens at `start`."""
    phrase = noun_phrase(r, start + 1)
    if phrase is None:
        return None
    if r.lower[start + 1] in SUBJECTS and phrase.last + 1 < close:
        v = phrase.last + 1
        if _finite(r, v) or _plain(r, v):
            return v
    for v in range(start + 2, close - 1):
        if _finite(r, v) or v == phrase.last and verb_forms(r.lower[v]) & {"VBZ", "VBD"}:
            return v
    return None


def _bare_subject(r: Reading, v: int, first: int) -> int | None:
    """The first word of a subject without a small word, right before the verb at `v`."""
    k = v - 1
    if not (is_noun(r.lower[k]) or r.words[k][0].isupper()) or r.lower[k] in FUNCTION:
        return None
    if r.tag[v] not in ("MD", "VBZ", "VBD", "VBP") or r.lower[v - 1] in AUXILIARIES:
        return None
    if k - 1 > first and r.tag[k - 1][:2] in ("NN", "JJ") and r.dep[k - 1] in ("amod", "compound"):
        k -= 1
    return k if k > first + 1 or r.lower[first] not in AUXILIARIES else None
