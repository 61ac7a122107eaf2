"""What has more and what has less: *Is a dog less heavy than a cow?* *Which month has the fewest days?*

Less of a measure is more of its opposite, and with exchanged sides more of itself. Runs before the
parse, on the lower-case text.
"""

from __future__ import annotations

import re
from functools import lru_cache

from bank.choose.ask.forms import (
    OPPOSITE_MEASURES,
    SIDE,
    TAIL,
    WH,
    as_object,
    bases,
    compared,
    do_of,
    verb_lemma,
    who_asked,
)

_MEASURES = {
    "speed": ("fast", "slow"),
    "height": ("tall", "short"),
    "weight": ("heavy", "light"),
    "size": ("big", "small"),
    "length": ("long", "short"),
    "age": ("old", "young"),
    "price": ("expensive", "cheap"),
    "cost": ("expensive", "cheap"),
    "width": ("wide", "narrow"),
    "depth": ("deep", "shallow"),
    "strength": ("strong", "weak"),
    "temperature": ("hot", "cold"),
    "noise": ("loud", "quiet"),
    "power": ("strong", "weak"),
}
_MEASURED_BY = {"weigh": ("heavy", "light"), "cost": ("expensive", "cheap")}
_LEAST = ("least", "smallest", "lowest", "fewest", "shortest", "slowest", "lightest")


# Of two opposite measures, those that are turned.
_FEWER = frozenset(
    "small light slow quiet young cold cool soft easy weak low narrow thin shallow bad dark poor "
    "cheap smooth dangerous near".split()
)
_MOVES = frozenset("have move go run travel swim fly be".split())


@lru_cache(maxsize=1)
def _compare_words() -> dict[str, str]:
    """Each comparative with the comparative of the opposite: *slower* with *faster*."""
    table = {"more": "less", "less": "more", "fewer": "more"}
    for one, other in OPPOSITE_MEASURES.items():
        table[compared(one, "JJR")] = compared(other, "JJR")
    table |= {"closer": "farther", "farther": "closer", "further": "closer"}
    return table


def _more_asked(m: re.Match[str]) -> str:
    """What is a cow bigger than? What is smaller than a cow?"""
    turned = _compare_words().get(m["more"])
    return f"{who_asked(m['wh'])} {m['be']} {turned} than {as_object(m['a'])}" if turned else m[0]


def _less_than(m: re.Match[str]) -> str:
    other = OPPOSITE_MEASURES.get(m["adj"])
    return f"{compared(other, 'JJR')} than" if other else m[0]


def _not_as(m: re.Match[str]) -> str:
    other = OPPOSITE_MEASURES.get(m["adj"])
    return f"{m['before']}{compared(other, 'JJR')} than" if other else m[0]


def _least(m: re.Match[str]) -> str:
    other = OPPOSITE_MEASURES.get(m["adj"])
    return compared(other, "JJS") if other else m[0]


def _most_of(m: re.Match[str]) -> str:
    """Moves with the least speed: is the slowest."""
    most = compared(_MEASURES[m["measure"]][m["most"] in _LEAST], "JJS")
    verb = m["verb"].strip()
    return f"is the {most}" if verb_lemma(verb) in {"", *_MOVES} else f"{verb} {most}"


def _more_of(m: re.Match[str]) -> str:
    """Weighs more than: is heavier than."""
    which = m["more"] in ("less", "fewer", "least")
    tag = "JJS" if m["more"] in ("most", "least") else "JJR"
    more = compared(_MEASURED_BY["weigh" if m["verb"].startswith("w") else "cost"][which], tag)
    return f"is {'the ' if tag == 'JJS' else ''}{more}"


def _does_more(m: re.Match[str]) -> str:
    more = compared(_MEASURED_BY[m["verb"]][m["more"] == "less"], "JJR")
    be = "was" if m["aux"] == "did" else "are" if m["aux"] == "do" else "is"
    return f"{be} {m['a']} {more} than"


def _turned_sides(m: re.Match[str]) -> str:
    """Are rabbits quieter than dogs? Are dogs louder than rabbits?"""
    base = bases().get(m["more"], "")
    if base not in _FEWER or " or " in m[0] or m["b"].split()[0] in ("on", "in", "at"):
        return m[0]
    more = compared(OPPOSITE_MEASURES[base], "JJR")
    many = do_of(m["b"]) == "do"
    be = {
        "is": ("is", "are"),
        "are": ("is", "are"),
        "do": ("does", "do"),
        "does": ("does", "do"),
    }.get(m["be"], (m["be"], m["be"]))[many]
    return f"{be} {m['b']} {m['verb']} {more} than {m['a']}{m['tail']}"


def _more_by(m: re.Match[str]) -> str:
    """How much less is 3 than 5? How much more is 5 than 3?"""
    turned = _compare_words().get(m["more"], "")
    if m["more"] not in ("less", "fewer", "shorter") and bases().get(m["more"], "") not in _FEWER:
        return m[0]
    return f"{m['q']} {turned} {m['be']} {m['b']} than {m['a']}"


MEASURE_RULES = tuple(
    (re.compile(pattern), turn)
    for pattern, turn in (
        (rf"^(?P<be>is|are) (?P<a>{SIDE}) half as (?P<adj>\w+) as (?P<b>{SIDE})$",
         r"\g<be> \g<b> twice as \g<adj> as \g<a>"),
        (rf"^(?P<q>how (?:much|many)(?: \w+)?) (?P<more>\w+er|less) (?P<be>is|are) (?P<a>{SIDE}) than "
         rf"(?P<b>{SIDE})$", _more_by),
        (r"\bless (?P<adj>\w+) than\b", _less_than),
        (r"(?P<before>\b(?:is|are|was|were)\b.*?)\b(?:not )(?:as|so) (?P<adj>\w+) as\b", _not_as),
        (r"\bleast (?P<adj>\w+)\b", _least),
        (r"(?P<verb>\b\w+ )(?:with |at |of )?the (?P<most>most|greatest|highest|largest|biggest|least|"
         rf"smallest|lowest|longest|shortest|slowest|fastest) (?P<measure>{'|'.join(_MEASURES)})\b",
         _most_of),
        (r"\b(?P<n>month|year|season|week)s? (?:has|have|with|of) (?:the )?(?:fewest|least|smallest number"
         r" of) (?:days|time|weeks)\b", r"\g<n> is the shortest"),
        (r"\b(?P<n>month|year|season|week)s? (?:has|have|with|of) (?:the )?(?:most|largest number of) "
         r"(?:days|weeks)\b", r"\g<n> is the longest"),
        (r"\b(?P<verb>weighs|weighed|costs|(?<!would )cost) (?:the )?(?P<more>more|less|most|least)\b", _more_of),
        (rf"^(?P<aux>do|does|did) (?P<a>{SIDE}) (?P<verb>weigh|cost) (?P<more>more|less) than\b",
         _does_more),
        (rf"^(?P<be>is|are|was|were) (?P<a>{SIDE})(?P<verb>) (?P<more>\w+er|worse) than (?P<b>{SIDE}){TAIL}",
         _turned_sides),
        (rf"^(?P<be>do|does|did|can|could|will) (?P<a>{SIDE}) (?P<verb>go|run|move|walk|swim|fly|grow|jump"
         rf"|climb|live|sound|get|talk|drive|travel) (?P<more>\w+er) than (?P<b>{SIDE}){TAIL}", _turned_sides),
        (rf"^(?P<wh>{WH}) (?P<be>is|are) (?P<a>(?:a|an|the|your|\w+) ?{SIDE}?) (?P<more>\w+er|more|less"
         r"|worse) than$", _more_asked),
        (rf"^(?P<a>(?!wh|how\b|is\b|are\b){SIDE}) (?P<be>is|are) (?P<more>\w+er|worse) than (?P<wh>who|"
         r"what|(?:what|which) [\w'-]+(?: [\w'-]+)?)$", _more_asked),
    )
)  # fmt: skip
