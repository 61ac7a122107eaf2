"""Which skill a comma belongs to, by what stands around it in the corrected version."""

from __future__ import annotations

import re
from collections.abc import Callable

from bank.edit import lexicon
from bank.edit.look import SUBJECTS, Change, Verdict
from bank.edit.sets import DAYS, JOINERS, MONTHS, REGION_STARTS
from bank.edit.tokens import QUOTES
from bank.edit.wordset import word_set

_YEAR = re.compile(r"\d{4}$")
_DAY = re.compile(r"\d{1,2}(st|nd|rd|th)?$")
_OPENERS = word_set(
    "yes no well oh wow hey hi hello dear please sorry okay ok first second third next "
    "then last finally later soon today tomorrow yesterday tonight sometimes usually "
    "suddenly luckily however also now once afterward afterwards meanwhile instead"
)


def comma_beside_speech(change: Change) -> Verdict | None:
    """Between the words that someone says and who says them.

    >>> skills('Dad said "We can go."', 'Dad said, "We can go."')
    ['quotation-marks']
    """
    s, j = change.sentence, change.j
    if s.key(j + 1) in QUOTES or s.key(j - 1) in QUOTES:
        return Verdict("quotation-marks")
    return None


def comma_in_date(change: Change) -> Verdict | None:
    """Between weekday, day and year.

    >>> skills("We met on May 4 2020.", "We met on May 4, 2020.")
    ['comma-date']
    """
    s, j = change.sentence, change.j
    before, after = s.key(j - 1), s.key(j + 1)
    if (_DAY.match(before) or before in MONTHS) and _YEAR.match(after):
        return Verdict("comma-date")
    if before in DAYS and (after in MONTHS or after == "the" and _DAY.match(s.key(j + 2))):
        return Verdict("comma-date")
    if before in MONTHS | DAYS and _DAY.match(after):
        return Verdict("comma-date")
    in_date = any(s.key(k) in MONTHS for k in range(j - 4, j))
    ends_date = _YEAR.match(before) or _DAY.match(before)
    if ends_date and in_date and any(s.key(k) == "," for k in (j - 2, j - 3)):
        return Verdict("comma-date")
    return None


def comma_in_place(change: Change) -> Verdict | None:
    """Between a town and its state, and after the state.

    >>> skills("We live in Dallas Texas.", "We live in Dallas, Texas.")
    ['comma-place']
    """
    s, j = change.sentence, change.j
    after_region = s.key(j + 1) in REGION_STARTS and s.c[j + 1].text[0].isupper()
    is_named = j > 0 and s.c[j - 1].text[:1].isupper()
    if after_region and is_named and not _in_series(change):
        return Verdict("comma-place")
    region_before = next((k for k in (j - 2, j - 3) if s.key(k) == ","), -1)
    if region_before > 0 and s.key(region_before + 1) in REGION_STARTS:
        town = s.c[region_before - 1].text[:1].isupper()
        if town and not _in_series(change):
            return Verdict("comma-place")
    street = {"street", "st.", "st", "road", "rd.", "avenue", "ave.", "lane", "drive"}
    if s.key(j - 1) in street and s.is_name(j + 1):
        return Verdict("comma-place")
    return None


def _in_series(change: Change) -> bool:
    """Whether a joiner with one more name follows soon: `Texas, Ohio, and Maine` is a list."""
    s, j = change.sentence, change.j
    for k in range(j + 2, min(j + 6, len(s.c))):
        if s.key(k) in ("and", "or"):
            return s.is_name(k + 1) and not s.clause_ahead(k + 1)
    return False


def comma_before_joiner(change: Change) -> Verdict | None:
    """Before and, but, so … with a whole sentence on both sides.

    >>> skills("I like tea but Mom likes milk.", "I like tea, but Mom likes milk.")
    ['comma-join']
    """
    s, j = change.sentence, change.j
    if s.key(j + 1) in JOINERS and s.clause_ahead(j + 2) and s.clause_behind(j):
        return Verdict("comma-join")
    return None


_SUBORDINATE = word_set(
    "when if because after before while although though since until as once whenever unless"
)


def comma_in_series(change: Change) -> Verdict | None:
    """Between short parts without a subject of their own that run up to an `and` or `or`.

    >>> skills("I want milk a bun, and jam.", "I want milk, a bun, and jam.")
    ['comma-list']
    """
    s, j = change.sentence, change.j
    start = max((k for k in s.starts if k < j), default=0)
    first = s.word(start)
    is_first_comma = all(s.key(k) != "," for k in range(start, j))
    opens = first is not None and (first.pos_ == "ADP" or s.key(start) in _SUBORDINATE)
    if opens and is_first_comma and not _list_in_opening(change):
        return None
    words = [s.word(k) for k in range(start, j)]
    has_verb = any(
        word is not None
        and (
            word.pos_ in ("VERB", "AUX") or word.tag_ == "NNS" and lexicon.lemmas(word.text, "VERB")
        )
        for word in words
    )
    if not has_verb and j - start > 3:
        return None
    if s.key(start) in _OPENERS and is_first_comma:
        return None
    k, parts = j, 0
    while k < len(s.c) and s.key(k) == "," and parts < 6:
        if s.key(k + 1) in ("and", "or", "nor"):
            return Verdict("comma-list") if parts and not s.clause_ahead(k + 2) else None
        if s.clause_ahead(k + 1):
            return None
        end = k + 1
        while end < len(s.c) and s.c[end].is_word and s.key(end) not in ("and", "or", "nor"):
            end += 1
        if end - k > 6 or end >= len(s.c):
            return None
        if s.key(end) in ("and", "or", "nor"):
            return Verdict("comma-list") if end > k + 1 and not s.clause_ahead(end + 1) else None
        k, parts = end, parts + 1
    return None


def _list_in_opening(change: Change) -> bool:
    """Whether the row ends before the main part: `In June, July, and August, we swim.`"""
    s, j = change.sentence, change.j
    for k in range(j + 1, min(j + 7, len(s.c))):
        if s.key(k) in ("and", "or"):
            return s.key(k + 2) == "," and s.clause_ahead(k + 3)
        if s.c[k].is_word and s.clause_ahead(k):
            return False
    return False


def comma_in_list(change: Change) -> Verdict | None:
    """Between the things in a row.

    >>> skills("We ate rice beans and corn.", "We ate rice, beans and corn.")
    ['comma-list']
    """
    s, j = change.sentence, change.j
    before, after = s.word(j - 1), s.word(j + 1)
    if before is None or after is None:
        return None
    if before.pos_ == "ADJ" and after.pos_ == "ADJ" and s.key(j + 1) not in JOINERS:
        return Verdict("comma-list")
    comma = s.word(j)
    edge = comma.i if comma is not None else after.i
    if s.key(j + 1) in ("and", "or", "nor") and not s.clause_ahead(j + 2):
        return Verdict("comma-list")
    for word in s.doc[edge : edge + 6]:
        if word.i > edge and word.text == ",":
            break
        if word.dep_ == "conj" and word.head.i < edge and word.i > edge:
            has_subject = any(child.dep_ in SUBJECTS for child in word.children)
            if not has_subject:
                return Verdict("comma-list")
    return None


def comma_after_opening(change: Change) -> Verdict | None:
    """After the words that come before the main part.

    >>> skills("After lunch we play.", "After lunch, we play.")
    ['comma-intro']
    """
    s, j = change.sentence, change.j
    start = max((k for k in s.starts if k < j), default=0)
    if j == start + 1 and s.key(start) in _OPENERS:
        return Verdict("comma-intro")
    comma = s.word(j) or s.word(j + 1)
    if comma is None:
        return None
    sent_root = next((w for w in s.doc if w.dep_ == "ROOT" and w.i >= (s.word(start) or w).i), None)
    if sent_root is None:
        return None
    subject = next((w for w in sent_root.children if w.dep_ in SUBJECTS), None)
    main = subject if subject is not None else sent_root
    if main.i > comma.i:
        return Verdict("comma-intro")
    return None


def comma_before_dependent(change: Change) -> Verdict | None:
    """Any other comma: the nearest is a list after and, or an opening; the specialist should say.

    >>> [(f.skill, f.sure) for f in fixes("Can we go Mom?", "Can we go, Mom?")]
    [('comma-intro', False)]
    """
    s, j = change.sentence, change.j
    if s.key(j + 1) in JOINERS:
        return Verdict("comma-join", sure=False)
    return Verdict("comma-intro", sure=False)


COMMAS: tuple[Callable[[Change], Verdict | None], ...] = (
    comma_beside_speech,
    comma_before_joiner,
    comma_in_date,
    comma_in_place,
    comma_in_series,
    comma_in_list,
    comma_after_opening,
    comma_before_dependent,
)
