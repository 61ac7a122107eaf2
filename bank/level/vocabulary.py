"""How early a word is learnt, and how rarely it is met.

A common word stands where our own placements have it (`bank.level.placements`). For a rarer one
four facts are weighed: whether every small child knows it (our own lists, `lists/early.txt` and
`lists/next.txt`), how often it is met (wordfreq), its level for second-language learners (cefrpy),
and whether the familiar-word list that textstat carries has it. Our own lists come first: the
levels for second-language learners take cupcake, crayon and ladybug for the hardest words and tax
for an easy one. Inflected forms count with their base.

Everything here looks at the word's spelling alone, so that a word counts the same wherever it
stands.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib import resources, util
from math import log10
from pathlib import Path
from typing import Any

from bank.level import forms
from bank.level.placements import placement
from bank.level.spelling import oddness

MEASURES = ("start", "rarity", "very rare", "learner level", "beats", "latinate")
GROUPS = ("early", "next", "early derived", "next derived", "compound", "listed", "other")

# The grade in which a word without a placement is learnt is a sum of `MEASURES`, with weights for
# each of `GROUPS`. Fitted by `tests/bench/fit_level.py words` (least squares, no weight below zero)
# to the placements of words with an even first MD5 byte, as if they had none.
LEARNT_WEIGHTS: Mapping[str, tuple[float, ...]] = {
    "early": (0.58, 0.28, 0.00, 0.01, 0.00, 0.13),
    "next": (2.48, 0.00, 0.00, 0.15, 0.02, 0.62),
    "early derived": (2.48, 0.00, 0.65, 0.07, 0.43, 1.75),
    "next derived": (2.55, 0.32, 0.00, 0.23, 0.16, 0.00),
    "compound": (3.40, 0.00, 0.88, 0.13, 0.00, 1.19),
    "listed": (2.26, 0.48, 0.03, 0.00, 0.00, 0.34),
    "other": (1.71, 0.85, 1.21, 0.25, 0.32, 0.85),
}
# The grades between which a group's words stay, set by judgement: a word on our own lists stays
# early however long or rare it is, and a word on no list is not taken for a child's word.
BOUNDS: Mapping[str, tuple[float, float]] = {
    "early": (0.0, 1.4),
    "next": (1.2, 3.5),
    "early derived": (0.8, 5.0),
    "next derived": (1.5, 6.0),
    "compound": (1.8, 6.0),
    "listed": (1.8, 5.0),
    "other": (2.5, 10.0),
}
KNOWN_THOUGH_RARE = 0.6
"""How much of its rarity in print, and of its level for second-language learners, counts for a word
that every small child knows. Of 0.4 to 1.0 the one that orders the encyclopedia sentences of
CEFR-SP best that are fitted on (see `bank.level.weights`); the placed prompts lie as near with any.
"""
FIRST_WORDS = 0.0
"""The grade in which the first words are learnt."""
_HELD = ("early", "next")
NAME_LEARNT = 1.0
ON_EVERY_PAGE = 1.5
"""The rarity, in Zipf steps below `COMMON`, of words that stand on every page."""
FEWEST_LETTERS = (2.0, 0.5)
MOST_LETTERS = (6.0, 1.0)
"""Between how many letters a word counts: for one of the first words, and for each grade by which it
is learnt later. So a word known early stays easy however long it is, and a late word cannot look
easy for being short."""
NAME_LETTERS = 2.5
COMMON = 6.5
"""The Zipf frequency from which on a word is not rare at all ("with", "this")."""

_LATINATE = re.compile(
    r"(?:tion|sion|ity|ment|ance|ence|ism|ship|ure|ous|ive|al|ate|ic|ify|ize|ary|ory|acy|tude|ency"
    r"|ancy|ible|able|ology|ist|ant|ent)(?:s|d|ed|ing|ly)?$"
)
_VOWEL_RUN = re.compile(r"[aeiouy]+")
# Second parts that look like a word and are mostly an ending (bandage, tenant, notice).
_ENDINGS = frozenset("age ant art ash ate ear end era hen ice ill ink pat pet row ton can".split())
_SHORT_FORMS = frozenset("mr mrs ms dr st jr sr vs etc am pm a.m p.m a.m. p.m. tv ok".split())


@dataclass(frozen=True, slots=True, eq=False)
class Word:
    """What is known of one word.

    `learnt` is the grade in which most children come to know it (0 for the earliest). What
    makes it hard to read: `late`, the grades by which it is learnt after the first words; `rare`,
    the Zipf steps by which it is rarer than the words of every page; `learner`, how far its level
    for second-language learners is above the first; `odd`, how far its spelling is from its sound;
    `letters`, as how many letters it counts (`FEWEST_LETTERS`, `MOST_LETTERS`). `everyday` says that
    it is on one of our own lists or the familiar-word list, itself or by its base.
    """

    text: str
    learnt: float
    late: float
    rare: float
    learner: float
    odd: float
    letters: float
    everyday: bool


@lru_cache(maxsize=65536)
def word(text: str) -> Word:
    """What is known of `text`, a lower-case word.

    >>> word("cupcake").learnt < 1.5 < word("vile").learnt
    True
    """
    if len(text) == 1 or text in _SHORT_FORMS:
        return _as_hard_as(text, FIRST_WORDS)
    group = group_of(text)
    learnt = _learnt(text, group)
    known = KNOWN_THOUGH_RARE if group == "early" else 1.0
    late = max(0.0, learnt - FIRST_WORDS)
    fewest, most = (start + slope * late for start, slope in (FEWEST_LETTERS, MOST_LETTERS))
    return Word(
        text,
        learnt,
        late,
        0.0 if _is_little(text) else max(0.0, known * rarity(text) - ON_EVERY_PAGE),
        _stage(text, group) - 1.0,
        oddness(text),
        min(most, max(fewest, len(text))),
        group != "other",
    )


def _learnt(text: str, group: str) -> float:
    """The grade in which a word is learnt: where it is placed, or by what is known of it."""
    low, high = BOUNDS[group]
    placed = placement(text)
    if placed is not None:
        return min(high, placed.grade) if group in _HELD else placed.grade
    weights = LEARNT_WEIGHTS[group]
    return min(high, max(low, sum(w * x for w, x in zip(weights, measures(text), strict=True))))


def _stage(text: str, group: str) -> float:
    """When learners of English meet a word, 1 to 6: where it is placed, or cefrpy's level."""
    placed = placement(text)
    if placed is not None:
        return placed.stage
    known = KNOWN_THOUGH_RARE if group == "early" else 1.0
    return 1.0 + known * (corrected_level(text, group) - 1.0)


@lru_cache(maxsize=4096)
def name(text: str) -> Word:
    """What a name counts as: a word of grade 1 at most, that is not rare."""
    return _as_hard_as(text, min(word(text.lower()).learnt, NAME_LEARNT), NAME_LETTERS)


def _as_hard_as(text: str, learnt: float, letters: float = FEWEST_LETTERS[0]) -> Word:
    return Word(text, learnt, learnt - FIRST_WORDS, 0.0, 0.0, 0.0, letters, everyday=True)


def measures(text: str) -> tuple[float, ...]:
    """The values of `MEASURES` for a word."""
    rare = rarity(text)
    return (
        1.0,
        rare,
        max(0.0, rare - 2.5),
        min(6.0, learner_level(text)) - 1.0,
        float(beats(text) - 1),
        float(len(text) > 6 and _LATINATE.search(text) is not None),
    )


def group_of(text: str) -> str:
    """Which of `GROUPS` a word belongs to: the first one that holds."""
    early, later = own_list("early"), own_list("next")
    if text in early or _inflected(text, early):
        return "early"
    if text in later or _inflected(text, later):
        return "next"
    if _derived(text, early):
        return "early derived"
    if _derived(text, later):
        return "next derived"
    if _compound(text, early):
        return "compound"
    return "listed" if is_listed(text) else "other"


def rarity(text: str) -> float:
    """How far the Zipf frequency of a word, or of its commoner base, is below `COMMON`."""
    zipf = _zipf(text)
    for base in _bases(text):
        zipf = max(zipf, min(_zipf(base), zipf + 1.5) - 0.1)
    return max(0.0, COMMON - zipf)


def learner_level(text: str) -> float:
    """The level of a word for second-language learners by cefrpy: 1 (A1) to 6 (C2, or unknown)."""
    levels = [_learner_levels().get_average_word_level_float(form) for form in _with_bases(text)]
    return min((level for level in levels if level), default=6.0)


# The levels for second-language learners put many a child's word at the hardest; for a word that
# small children know they say no more than these.
_HIGHEST_LEVEL: Mapping[str, float] = {"early": 3.0, "next": 4.0}


def corrected_level(text: str, group: str) -> float:
    """The learner level of a word, held down where our own lists have it.

    >>> learner_level("cupcake"), corrected_level("cupcake", "early")
    (6.0, 3.0)
    """
    return min(learner_level(text), _HIGHEST_LEVEL.get(group, 6.0))


def is_listed(text: str) -> bool:
    """Whether the familiar-word list that textstat carries has the word or its base."""
    return any(form in _familiar() for form in _with_bases(text))


def is_first_name(text: str) -> bool:
    """Whether a lower-case word is a common first name and no everyday word of small children."""
    return text in own_list("names") and text not in own_list("early")


@lru_cache(maxsize=16384)
def is_known(text: str) -> bool:
    """Whether a word is known as an ordinary word, and so not taken for a name."""
    if placement(text) is not None or group_of(text) != "other":
        return True
    tags = _learner_levels().get_all_pos_for_word_as_str(text) or []
    return any(tag != "NNP" for tag in tags)


@lru_cache(maxsize=65536)
def is_english(text: str) -> bool:
    """Whether a lower-case word is met in English at all (see `bank.level.english` for texts)."""
    if placement(text) is not None or group_of(text) != "other" or is_first_name(text):
        return True
    return _zipf(text) >= 1.5 and _learner_levels().is_word_in_database(text)


def beats(text: str) -> int:
    """About how many syllables a word has, by its letters.

    >>> beats("cake"), beats("apple"), beats("strawberry")
    (1, 2, 3)
    """
    runs = len(_VOWEL_RUN.findall(text))
    silent_e = runs > 1 and text.endswith("e") and not text.endswith("le")
    return max(1, runs - silent_e)


def _with_bases(text: str) -> Iterable[str]:
    yield text
    yield from _bases(text)


def _bases(text: str) -> Iterable[str]:
    """The words that `text` may be a form of; a little word has none ("shed" is no form of "she")."""
    return (base for base, _ in forms.inflected_from(text) if not _is_little(base))


@cache
def own_list(name: str) -> Mapping[str, frozenset[str]]:
    """One of our own word lists, "early", "next" or "names": words with the sections they stand in."""
    sections: dict[str, frozenset[str]] = {}
    section = ""
    text = resources.files("bank.level").joinpath("lists", f"{name}.txt").read_text("utf-8")
    for line in text.splitlines():
        if line.startswith("["):
            section = line[1:].partition(":")[0]
        elif not line.startswith("#"):
            for entry in line.split():
                sections[entry] = sections.get(entry, frozenset()) | {section}
    return sections


@cache
def _familiar() -> frozenset[str]:
    # Found without importing textstat, which would load CMUdict.
    spec = util.find_spec("textstat")
    if spec is None or not spec.submodule_search_locations:
        return frozenset()
    path = Path(spec.submodule_search_locations[0], "resources", "en", "easy_words.txt")
    return frozenset(path.read_text("utf-8").split())


@cache
def _frequencies() -> Mapping[str, float]:
    from wordfreq import get_frequency_dict

    frequencies: dict[str, float] = get_frequency_dict("en")
    return frequencies


def frequency(text: str) -> float:
    """The share of running English words that are this lower-case word, by wordfreq."""
    return _frequencies().get(text, 0.0)


def _zipf(text: str) -> float:
    share = frequency(text)
    return log10(share) + 9 if share else 0.0


@cache
def _learner_levels() -> Any:
    from cefrpy import CEFRAnalyzer

    return CEFRAnalyzer()


def _is_little(text: str) -> bool:
    return own_list("early").get(text) == frozenset({"other"})


# Which words take an ending: a rug is not "rugged".
_INFLECTS = {"s": {"noun", "verb"}, "ed": {"verb"}, "ing": {"verb"}}


def _inflected(text: str, known: Mapping[str, frozenset[str]]) -> bool:
    return any(
        known[base] & _INFLECTS[ending]
        for base, ending in forms.inflected_from(text)
        if base in known
    ) or any("adjective" in known[base] for base in forms.compared_from(text) if base in known)


_DERIVES = {
    "er": {"verb"},
    "ly": {"adjective"},
    "un": {"adjective"},
    "ness": {"adjective"},
    "y": {"noun"},
    "ful": {"noun"},
    "less": {"noun"},
}


def _derived(text: str, known: Mapping[str, frozenset[str]]) -> bool:
    return any(
        known[base] & _DERIVES[part] for base, part in forms.derived_from(text) if base in known
    )


def _compound(text: str, known: Mapping[str, frozenset[str]]) -> bool:
    return len(text) > 6 and any(
        known.get(first, frozenset()) & {"noun", "adjective", "verb"}
        and "noun" in known.get(second, known.get(second.removesuffix("s"), frozenset()))
        and second.removesuffix("s") not in _ENDINGS
        for first, second in forms.compound_parts(text)
    )
