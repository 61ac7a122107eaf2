"""Turned relations: two opposites *and* exchanged sides give the same ask, brought to one direction.

What Dad buys from Tom is what Tom sells to Dad; who sits behind you is whom you sit in front of; what a
dog is bigger than is smaller than a dog. Only the verb or only the sides exchanged is another ask, and
stays one: each rule turns both at once. Runs before the parse, on the lower-case text.
"""

from __future__ import annotations

import re
from functools import lru_cache

from bank.choose.ask.forms import (
    OF_AUX,
    OPPOSITE_MEASURES,
    as_object,
    as_subject,
    bases,
    compared,
    do_of,
    verb_form,
    verb_lemma,
)

_WH = r"(?:who|whom|what|(?:what|which|whose) (?!do\b|does\b|did\b|can\b|is\b)[\w'-]+(?: [\w'-]+){0,2}?)"
_AUX = r"(?:do|does|did|can|could|will|would|should)"
_TAIL = (
    r"(?P<tail>(?: (?:last|this|next|every|yesterday|today|tomorrow|at|on|when|while|because|during|if|"
    r"in (?!front))\b.*)?)$"
)
_WHEN = r"(?P<tail>(?: (?:at|in|on|when|after|during|before)\b.*)?)$"
_SIDE = r"(?:[\w'-]+ ){0,5}?[\w'-]+"

# Who takes a thing, and what the one does who hands it over.
_HANDS_OVER = {
    "buy": "sell",
    "purchase": "sell",
    "borrow": "lend",
    "learn": "teach",
    "get": "give",
    "receive": "give",
    "hear": "tell",
    "catch": "throw",
}
_TAKES = r"buy|purchase|borrow|learn|get|receive|hear|catch"
_TOOK = (
    r"bought|buys|purchased|borrowed|borrows|learned|learns|learnt|got|gets|received|receives|heard"
)
# What is got from here is not given by anyone.
_NO_GIVER = (
    r"(?!(?:the |a |your |this )?(?:\w+ )?(?:store|shop|market|library|home|house|school|fridge|closet"
    r"|shelf|bus|bed|floor|here|there|book|one|point|getting|falling|being|\w+ to)\b)"
)
_NOT_A_THING = (
    r"(?!home|out|off|up|away|back|down|here|there|to|ready|sick|well|better|dressed|food$)"
)

# Where one stands to the other, and where the other stands to the one.
TURNED = {
    "before": "after",
    "after": "before",
    "behind": "in front of",
    "in back of": "in front of",
    "in front of": "behind",
    "ahead of": "behind",
    "above": "below",
    "over": "under",
    "on top of": "under",
    "below": "above",
    "under": "over",
    "underneath": "over",
    "beneath": "over",
    "north of": "south of",
    "south of": "north of",
    "east of": "west of",
    "west of": "east of",
    "to the left of": "to the right of",
    "to the right of": "to the left of",
    "next to": "next to",
    "beside": "next to",
    "near": "near",
    "close to": "near",
    "next door to": "next door to",
    "across from": "across from",
    "across the street from": "across the street from",
}
_RELATION = "|".join(sorted(TURNED, key=len, reverse=True))
_IN_ORDER = (
    r"(?:season|month|day|letter|number|time of year|day of the week|weekday|holiday|meal|grade)"
)
_STANDS = (
    r"(?:come|go|sit|stand|walk|line up|live|hang|lie|fall|happen|stay|wait|play|sleep|run|march)"
)
_STANDING = r"(?P<adv>(?: (?:standing|sitting|walking|living|right|waiting|hanging))?)"

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


_SENT = re.compile(r"\b(?:letters?|cards?|postcards?|mail|package|message|note|email|call)\b")


def _gives(takes: str, what: str) -> str:
    gives = _HANDS_OVER[takes]
    return "send" if gives == "give" and _SENT.search(what) else gives


def _hand_over_asked(m: re.Match[str]) -> str:
    """Who did Dad buy the truck from? Who sold Dad the truck?"""
    gives = _gives(m["verb"], m["what"] or "")
    does = (
        verb_form(gives, OF_AUX[m["aux"]] if m["aux"] != "do" else "VBZ")
        if (m["aux"] in OF_AUX)
        else f"{m['aux']} {gives}"
    )
    return f"{_who(m['wh'])} {does} {as_object(m['a'])} {m['what'] or ''}{m['tail']}"


def _hand_over_done(m: re.Match[str]) -> str:
    """What did the neighbor buy from Grandpa? What did Grandpa sell to the neighbor?"""
    gives, giver = _gives(m["verb"], m["what"] or m["q"] or ""), as_subject(m["b"])
    what = f"{m['what']} to " if m["what"] else "to " if m["q"] else ""
    aux = m["aux"] if m["aux"] not in ("do", "does") else do_of(giver)
    return f"{m['q'] or ''}{aux} {giver} {gives} {what}{as_object(m['a'])}{m['tail']}"


def _taker_asked(m: re.Match[str]) -> str:
    """Who borrowed a pencil from the teacher? Who did the teacher lend a pencil to?"""
    gives = _gives(verb_lemma(m["verb"]), m["what"] or "")
    giver = as_subject(m["b"])
    aux = do_of(giver) if m["verb"].endswith("s") else "did"
    what = m["what"] or ""
    return f"{_who(m['wh'])} {aux} {giver} {gives}{what} to{m['tail']}"


def _beaten_by_asked(m: re.Match[str]) -> str:
    beats = verb_form("beat", "VBD" if m["aux"] == "did" else "VBZ")
    return f"{_who(m['wh'])} {beats} {as_object(m['a'])}{m['tail']}"


def _stands_asked(m: re.Match[str]) -> str:
    """Which classmate do you sit in front of? Which classmate sits behind you?"""
    verb, _, particle = m["verb"].partition(" ")
    tag = "VBD" if m["aux"] == "did" else "VBZ"
    stands = verb_form(verb, tag) if m["aux"] in OF_AUX else f"{m['aux']} {verb}"
    turned = TURNED[m["rel"]]
    return f"{_who(m['wh'])} {stands} {particle} {turned} {as_object(m['a'])}{m['tail']}"


def _is_asked(m: re.Match[str]) -> str:
    """What is the lamp above? What is below the lamp?"""
    turned = TURNED[m["rel"]]
    return f"{_who(m['wh'])} {m['be']}{m['adv']} {turned} {as_object(m['a'])}{m['tail']}"


def _stands_last(m: re.Match[str]) -> str:
    """Winter comes right before which season? Which season comes after winter?"""
    return f"{_who(m['wh'])} {m['verb']} {TURNED[m['rel']]} {as_object(m['a'])}"


def _more_asked(m: re.Match[str]) -> str:
    """What is a cow bigger than? What is smaller than a cow?"""
    turned = _compare_words().get(m["more"])
    return f"{_who(m['wh'])} {m['be']} {turned} than {as_object(m['a'])}" if turned else m[0]


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
    be = "are" if do_of(m["b"]) == "do" else "is"
    be = m["be"] if m["be"] in ("was", "were") else be
    return f"{be} {m['b']} {more} than {m['a']}{m['tail']}"


def _more_by(m: re.Match[str]) -> str:
    """How much less is 3 than 5? How much more is 5 than 3?"""
    turned = _compare_words().get(m["more"], "")
    if m["more"] not in ("less", "fewer", "shorter") and bases().get(m["more"], "") not in _FEWER:
        return m[0]
    return f"{m['q']} {turned} {m['be']} {m['b']} than {m['a']}"


def _who(wh: str) -> str:
    return "who" if wh == "whom" else wh


def _same(new: str) -> str:
    return new


_RULES = tuple(
    (re.compile(pattern), turn)
    for pattern, turn in (
        (r"(?<!left and )\b(?:right|just|directly|immediately|straight) (?=(?:before|after|behind|in front of|above"
         r"|below|under|over|next to|beside|ahead of)\b)", ""),
        (r"^(?:before|after|in front of|behind|next to|beside|above|below|under) (?:who|whom|which "
         r"[\w'-]+) .*", lambda m: _moved_back(m[0])),
        (r"\b(?P<verb>come|comes|came) (?:first )?(?:followed by)\b", r"\g<verb> before"),
        (r"\b(?:(?P<n>season|month|day|letter|number|time of year|weekday|holiday|meal|grade|word) )"
         r"(?P<v>follows|followed)\b",
         lambda m: f"{m['n']} {'comes' if m['v'] == 'follows' else 'came'} after"),
        (r"\b(?P<n>monday|tuesday|wednesday|thursday|friday|saturday|sunday|winter|spring|summer|fall|"
         r"autumn|january|february|march|april|june|july|august|september|october|november|december) "
         r"follow(?:s|ed)?\b", r"\g<n> comes after"),
        (r"^(?P<aux>do|does|did) (?P<a>.+?) follow (?P<b>(?:mon|tues|wednes|thurs|fri|satur|sun)day|"
         r"winter|spring|summer|fall|autumn)$", r"\g<aux> \g<a> come after \g<b>"),
        (r"\bcome (?:next|right) after\b", "come after"),
        (r"\b(?:starts|begins) (?:right )?(?:when|after) (?P<a>[\w ]+?) (?:ends|is over|stops|finishes)$",
         r"comes after \g<a>"),
        (r"\b(?:ends|is over|stops) (?:right )?(?:when|before) (?P<a>[\w ]+?) (?:starts|begins|comes)$",
         r"comes before \g<a>"),
        (rf"^(?:which|what) (?:is the )?(?P<n>{_IN_ORDER})s? (?:(?:that )?(?:is|comes?|goes|falls|do you have) "
         r")?(?:next )?(?P<rel>before|after)\b(?= \w)", r"which \g<n> comes \g<rel>"),
        # hand over
        (rf"^who (?P<be>is|was) (?P<a>(?:your|the|this|that|his|her) {_SIDE}) from$", r"who gave you \g<a>"),
        (rf"^(?:from )?(?P<wh>{_WH}) (?P<aux>{_AUX}) (?P<a>{_SIDE}) (?P<verb>{_TAKES})"
         rf"(?P<what> {_NOT_A_THING}{_SIDE})? from{_TAIL}", _hand_over_asked),
        (rf"^from (?P<wh>{_WH}) (?P<aux>{_AUX}) (?P<a>{_SIDE}) (?P<verb>{_TAKES})"
         rf"(?P<what> {_NOT_A_THING}{_SIDE}?)??{_TAIL}", _hand_over_asked),
        (rf"^(?P<wh>who|(?:what|which) [\w'-]+(?: [\w'-]+)?) (?P<verb>{_TOOK})"
         rf"(?P<what> {_NOT_A_THING}{_SIDE})? from {_NO_GIVER}(?P<b>{_SIDE}){_TAIL}", _taker_asked),
        (rf"^(?P<q>(?:(?:what|which|when|where|why|how)\b(?: [\w'-]+){{0,3}}? )?)(?P<aux>{_AUX}) "
         rf"(?P<a>{_SIDE}) (?P<verb>{_TAKES})(?: (?P<what>{_NOT_A_THING}{_SIDE}))? "
         rf"from {_NO_GIVER}(?P<b>{_SIDE}){_TAIL}", _hand_over_done),
        (r"^(?:what|which) (?:kind of )?(?:place|store|shop|building|room|spot)(?P<near>(?: in [\w' ]+?)?) "
         r"(?P<v>lends|sells) (?P<what>.+?)(?: to (?:you|people|kids|children|anyone|everyone))?$",
         lambda m: f"where can you {'buy' if m['v'] == 'sells' else 'borrow'} {m['what']}{m['near']}"),
        (r"^(?:whose (?:job|work|task) is it|who has the job|which (?:helper|worker|person|grownup)'?s? "
         r"(?:has the job|job is it|job is)) (?:to |of )(?P<v>[\w-]+)",
         lambda m: f"who {verb_form(verb_lemma(m['v']) or m['v'], 'VBZ')}"),
        # win and lose
        (r"\bwin against\b", "beat"),
        (r"\b(?:won|wins) against\b", "beat"),
        (rf"^(?:to )?(?P<wh>{_WH}) (?P<aux>do|does|did) (?P<a>{_SIDE}) lose(?: (?:the |a )?\w+)?"
         rf"(?: to| against){_TAIL}", _beaten_by_asked),
        (rf"^to (?P<wh>{_WH}) (?P<aux>do|does|did) (?P<a>{_SIDE}) lose{_TAIL}", _beaten_by_asked),
        (rf"^(?P<wh>{_WH}) (?:lost|loses)(?: (?:the |a )?\w+)? (?:to|against) (?P<b>{_SIDE}){_TAIL}",
         lambda m: f"{m['wh']} did {as_subject(m['b'])} beat{m['tail']}"),
        (rf"^(?P<aux>do|does|did) (?P<a>{_SIDE}) lose(?: (?:the |a )?\w+)? (?:to|against) (?P<b>{_SIDE})"
         rf"{_TAIL}",
         lambda m: f"{m['aux']} {as_subject(m['b'])} beat {as_object(m['a'])}{m['tail']}"),
        # follow and lead
        (rf"^(?P<wh>who|whom) (?P<aux>do|does|did) (?P<a>{_SIDE}) follow{_TAIL}",
         lambda m: f"who {'led' if m['aux'] == 'did' else 'leads'} {as_object(m['a'])}{m['tail']}"),
        # own and belong, fear and scare
        (rf"^(?:to )?(?:who|whom) do(?:es)? (?P<a>{_SIDE}) belong(?: to)?$", r"who owns \g<a>"),
        (r"^whose (?P<a>[\w'-]+(?: [\w'-]+)?) (?:is|are) (?P<b>this|that|these|those|it)$",
         r"who owns the \g<a>"),
        (rf"^what belongs to (?P<a>{_SIDE})$", r"what does \g<a> own"),
        (rf"^(?P<wh>what|which [\w'-]+) (?:do|does) (?P<a>{_SIDE}) (?:fear|dread){_WHEN}",
         r"\g<wh> scares \g<a>\g<tail>"),
        (rf"^(?P<wh>what|which [\w'-]+) (?:is|are) (?!.*\bnot\b)(?P<a>{_SIDE}) (?:afraid|scared|frightened|fearful|"
         rf"terrified) of{_WHEN}", r"\g<wh> scares \g<a>\g<tail>"),
        # where one stands to the other
        (rf"^(?P<wh>{_WH}) (?P<aux>{_AUX}) (?!.*\b(?:like|want|rather|have|need)\b)"
         rf"(?P<a>{_SIDE}) (?P<verb>{_STANDS}) (?P<rel>{_RELATION})"
         r"(?P<tail>(?: (?:in|on|at) (?!top|front)[\w' -]+)?)$", _stands_asked),
        (rf"^(?P<wh>{_WH}) (?P<be>is|are|was|were) (?P<a>{_SIDE}?){_STANDING} (?P<rel>{_RELATION})"
         r"(?P<tail>(?: (?:in|on|at) (?!top|front)[\w' -]+)?)$", _is_asked),
        (rf"^(?P<a>(?!wh|how\b|is\b|are\b|do\b|does\b|did\b){_SIDE}) (?P<verb>is|are|comes|come|came|goes"
         rf"|sits|stands|lives|hangs|lies|falls)(?: the [\w'-]+)? (?P<rel>{_RELATION}) (?P<wh>who|whom|what|"
         r"(?:what|which) [\w'-]+(?: [\w'-]+)?)$", _stands_last),
        # what holds what
        (rf"^what (?:do|does|did) (?P<a>{_SIDE}) (?:contain|hold inside|have in it|have in them|have inside"
         r"(?: it)?)$", r"what is in \g<a>"),
        # more and less
        (rf"^(?P<be>is|are) (?P<a>{_SIDE}) half as (?P<adj>\w+) as (?P<b>{_SIDE})$",
         r"\g<be> \g<b> twice as \g<adj> as \g<a>"),
        (rf"^(?P<q>how (?:much|many)(?: \w+)?) (?P<more>\w+er|less) (?P<be>is|are) (?P<a>{_SIDE}) than "
         rf"(?P<b>{_SIDE})$", _more_by),
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
        (rf"^(?P<aux>do|does|did) (?P<a>{_SIDE}) (?P<verb>weigh|cost) (?P<more>more|less) than\b",
         _does_more),
        (rf"^(?P<be>is|are|was|were) (?P<a>{_SIDE}) (?P<more>[\w]+er|worse) than (?P<b>{_SIDE}){_TAIL}",
         _turned_sides),
        (rf"^(?P<wh>{_WH}) (?P<be>is|are) (?P<a>(?:a|an|the|your|\w+) ?{_SIDE}?) (?P<more>\w+er|more|less"
         r"|worse) than$", _more_asked),
        (rf"^(?P<a>(?!wh|how\b|is\b|are\b){_SIDE}) (?P<be>is|are) (?P<more>\w+er|worse) than (?P<wh>who|"
         r"what|(?:what|which) [\w'-]+(?: [\w'-]+)?)$", _more_asked),
    )
)  # fmt: skip
_NEXT_TO_IT = re.compile(  # After May, what month comes next?
    rf"^(?:right )?(?P<rel>before|after) (?P<a>[\w ]+?),? (?:which|what) (?P<n>{_IN_ORDER})s? (?:comes?|is it|"
    r"is|do you have|goes)(?: next| first| then)?$"
)
_PREFIX = re.compile(
    r"^(?P<pre>(?:when|if|before|after|at|in|on|during|while|once) [^,]+, )(?P<rest>.+)$"
)


def _moved_back(plain: str) -> str:
    """Before which month does May come? Which month does May come before?"""
    found = re.match(
        rf"^(?P<rel>{_RELATION}) (?P<wh>who|whom|(?:which|what) [\w'-]+) (?P<rest>(?:do|does|did|is|are"
        r"|can) .+)$",
        plain,
    )
    return f"{found['wh']} {found['rest']} {found['rel']}" if found else plain


def in_one_direction(plain: str) -> str:
    """`plain` (lower case, no end mark) with each turned relation told from its one chosen side.

    >>> in_one_direction("who did the red team lose to")
    'who beat the red team'
    >>> in_one_direction("what month does may come right after")
    'what month comes before may'
    >>> in_one_direction("who borrowed a pencil from the teacher")
    'who did the teacher lend a pencil to'
    """
    plain = _NEXT_TO_IT.sub(r"which \g<n> comes \g<rel> \g<a>", plain)
    prefix = _PREFIX.match(plain)
    before, rest = (prefix["pre"], prefix["rest"]) if prefix else ("", plain)
    for pattern, turn in _RULES:
        new, turned = pattern.subn(turn, rest)
        if turned:
            rest = " ".join(new.split())
    return before + rest
