"""What makes a sentence hard beside its words: clauses, passives, negation, and what is asked.

The little words that open a clause (because, if, who, that …), the forms of "be" before a
participle and the words of negation are the evidence, and not the parser's opinion of the
sentence: a parser that stumbles over a rare word finds fewer clauses there, and the text would
come out easier for it. So exchanging a word for a rarer one of the same form changes nothing
here. The parse shows where the clause ends, for the reasons.

The weights are small. On the two thirds of the encyclopedia sentences of CEFR-SP that are fitted on
(see `bank.level.weights`), what the level leaves unsaid goes with none of these (correlations of
0.07 at most), nor with the depth of the parse, the distance to a word's head, or some forty patterns
of grammar in the order in which learners of English meet them; a measure of the latest patterns met
lowered the agreement with the raters on both sets of sentences.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

_OPENERS = frozenset("because if while until although though unless whereas whether since".split())
_RELATIVES = frozenset("which whose whom who where when".split())
_NEGATIONS = frozenset("not n't never nothing nobody none neither nor without no cannot".split())
_BE = frozenset("am is are was were be been being 's 're 'm".split())
_MARKING = _OPENERS | _RELATIVES | _NEGATIONS | _BE | {"that"}
_WOULD = frozenset("would could might 'd".split())
_WHO = frozenset("who whom whose what which when where why how".split())
# Past participles that do not end in -ed and differ from an adjective.
_PARTICIPLES = frozenset(
    "eaten given taken made found built broken born known seen written chosen hidden stolen "
    "thrown grown shown worn torn drawn driven spoken forgotten held kept left lost sent sold "
    "told taught thought brought bought caught fought said paid put cut hit hurt shut read "
    "spread woven frozen bitten beaten done gone begun sung sunk rung hung won led fed met shot "
    "spent burnt buried laid ridden risen forbidden understood overcome withdrawn bound wound "
    "ground struck swept".split()
)
# Words in -ed that every child uses as an adjective after "is".
_FEELINGS = frozenset(
    "tired scared excited bored surprised worried interested married crowded pleased red "
    "bed".split()
)
_COMPARING = frozenset(
    "different distinct dissimilar alike compare similar difference differ similarity contrast".split()
)
_EXPLAINING = frozenset("explain describe justify persuade convince suppose evaluate".split())
_ONE_WORD_HOW = frozenset("many much old long often far big tall".split())


@dataclass(frozen=True, slots=True)
class Marker:
    """One thing in the build of a sentence that makes it harder: what, and at which word."""

    what: str
    at: int


def markers(words: Sequence[str]) -> list[Marker]:
    """The markers of `words` (lower case, in order, contractions cut: "do", "n't").

    >>> [m.what for m in markers("the dog that was not fed barked because it was hungry".split())]
    ['that', 'passive', 'negation', 'clause']
    """
    found = []
    for at, word in enumerate(words):
        if word not in _MARKING:
            continue
        if word in _OPENERS:
            found.append(Marker("clause", at))
        elif at and word in _RELATIVES and not _opens_question(words, at):
            found.append(Marker("relative", at))
        elif at and word == "that":
            found.append(Marker("that", at))
        elif word in _NEGATIONS:
            found.append(Marker("negation", at))
        elif word in _BE and _has_participle(words[at + 1 : at + 3]):
            found.append(Marker("passive", at))
    if "if" in words and not _WOULD.isdisjoint(words):
        found.append(Marker("conditional", list(words).index("if")))
    return found


def _opens_question(words: Sequence[str], at: int) -> bool:
    """A question word just after the start ("On Monday, where …", "And who …") opens no clause."""
    return at == 1 and words[0] in {"and", "but", "so", "or", "to", "in", "at", "on", "for", "with"}


def _has_participle(following: Sequence[str]) -> bool:
    return any(
        word in _PARTICIPLES or (word.endswith("ed") and len(word) > 4 and word not in _FEELINGS)
        for word in following
    )


def asks_to_compare(words: Sequence[str]) -> bool:
    """ "How are a lake and a river different?" """
    return not _COMPARING.isdisjoint(words)


def asks_why(words: Sequence[str]) -> bool:
    """ "Why do birds sing?" """
    return "why" in words


def asks_to_explain(words: Sequence[str]) -> bool:
    """ "Explain …", "How would you justify …" """
    return not _EXPLAINING.isdisjoint(words)


def asks_how(words: Sequence[str]) -> bool:
    """ "How do you make toast?", not "How many …" and not "How are you?" """
    return any(
        word == "how" and next_word not in _ONE_WORD_HOW and next_word not in {"are", "is", "was"}
        for word, next_word in pairwise([*words, ""])
    )


def asks_for_a_fact(words: Sequence[str]) -> bool:
    """ "Who is that?", "Where does a fish swim?" """
    return not _WHO.isdisjoint(words[:4])


# What a question asks for, the hardest first; the first that holds counts.
ASKS: tuple[tuple[str, Callable[[Sequence[str]], bool]], ...] = (
    ("why", asks_why),
    ("compare", asks_to_compare),
    ("explain", asks_to_explain),
    ("how", asks_how),
    ("fact", asks_for_a_fact),
    ("yes or no", lambda words: True),
)


def what_is_asked(words: Sequence[str]) -> str:
    """What the answer to a question asks for: one of the names in `ASKS`.

    >>> what_is_asked("do you like cats".split()), what_is_asked("why is it hot".split())
    ('yes or no', 'why')
    """
    return next(name for name, holds in ASKS if holds(words))
