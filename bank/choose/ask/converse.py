"""Turned relations: two opposites *and* exchanged sides give the same ask, brought to one direction.

What Dad buys from Tom is what Tom sells to Dad; who sits behind you is whom you sit in front of; what a
dog is bigger than is smaller than a dog. Only the verb or only the sides exchanged is another ask, and
stays one: each rule turns both at once. Runs before the parse, on the lower-case text.
"""

from __future__ import annotations

import re

from bank.choose.ask.forms import (
    OF_AUX,
    SIDE,
    TAIL,
    WH,
    as_object,
    as_subject,
    do_of,
    verb_form,
    verb_lemma,
    who_asked,
)
from bank.choose.ask.measure import MEASURE_RULES

_AUX = r"(?:do|does|did|can|could|will|would|should)"
_WHEN = r"(?P<tail>(?: (?:at|in|on|when|after|during|before)\b.*)?)$"

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
# Of two opposite places those that are turned, where yes or no is asked.
_TURNED_FROM = (
    "after|behind|in back of|below|under|underneath|beneath|south of|west of|to the right of"
)
_IN_ORDER = (
    r"(?:season|month|day|letter|number|time of year|day of the week|weekday|holiday|meal|grade)"
)
_STANDS = (
    r"(?:come|go|sit|stand|walk|line up|live|hang|lie|fall|happen|stay|wait|play|sleep|run|march)"
)
_STANDING = r"(?P<adv>(?: (?:standing|sitting|walking|living|right|waiting|hanging))?)"

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
    return f"{who_asked(m['wh'])} {does} {as_object(m['a'])} {m['what'] or ''}{m['tail']}"


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
    return f"{who_asked(m['wh'])} {aux} {giver} {gives}{what} to{m['tail']}"


def _beaten_by_asked(m: re.Match[str]) -> str:
    beats = verb_form("beat", "VBD" if m["aux"] == "did" else "VBZ")
    return f"{who_asked(m['wh'])} {beats} {as_object(m['a'])}{m['tail']}"


def _stands_asked(m: re.Match[str]) -> str:
    """Which classmate do you sit in front of? Which classmate sits behind you?"""
    verb, _, particle = m["verb"].partition(" ")
    tag = "VBD" if m["aux"] == "did" else "VBZ"
    stands = verb_form(verb, tag) if m["aux"] in OF_AUX else f"{m['aux']} {verb}"
    turned = TURNED[m["rel"]]
    return f"{who_asked(m['wh'])} {stands} {particle} {turned} {as_object(m['a'])}{m['tail']}"


def _is_asked(m: re.Match[str]) -> str:
    """What is the lamp above? What is below the lamp?"""
    turned = TURNED[m["rel"]]
    return f"{who_asked(m['wh'])} {m['be']}{m['adv']} {turned} {as_object(m['a'])}{m['tail']}"


def _stands_last(m: re.Match[str]) -> str:
    """Winter comes right before which season? Which season comes after winter?"""
    return f"{who_asked(m['wh'])} {m['verb']} {TURNED[m['rel']]} {as_object(m['a'])}"


def _sides_turned(m: re.Match[str]) -> str:
    """Does Tuesday come after Monday? Does Monday come before Tuesday?"""
    first, doing = as_subject(m["b"]), m["be"].startswith("d")
    many = do_of(first) == "do"
    be = (
        m["be"]
        if m["be"] in ("was", "were", "did")
        else ("is", "are", "does", "do")[2 * doing + many]
    )
    return f"{be} {first} {m['verb']} {TURNED[m['rel']]} {as_object(m['a'])}"


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
        (rf"^(?P<wh>which|what) (?:is the )?(?P<n>{_IN_ORDER})s? (?:(?:that )?(?:is|comes?|goes|falls|do you have) "
         r")?(?:next )?(?P<rel>before|after)\b(?= \w)", r"\g<wh> \g<n> comes \g<rel>"),
        # hand over
        (rf"^who (?P<be>is|was) (?P<a>(?:your|the|this|that|his|her) {SIDE}) from$", r"who gave you \g<a>"),
        (rf"^(?:from )?(?P<wh>{WH}) (?P<aux>{_AUX}) (?P<a>{SIDE}) (?P<verb>{_TAKES})"
         rf"(?P<what> {_NOT_A_THING}{SIDE})? from{TAIL}", _hand_over_asked),
        (rf"^from (?P<wh>{WH}) (?P<aux>{_AUX}) (?P<a>{SIDE}) (?P<verb>{_TAKES})"
         rf"(?P<what> {_NOT_A_THING}{SIDE}?)??{TAIL}", _hand_over_asked),
        (rf"^(?P<wh>who|(?:what|which) [\w'-]+(?: [\w'-]+)?) (?P<verb>{_TOOK})"
         rf"(?P<what> {_NOT_A_THING}{SIDE})? from {_NO_GIVER}(?P<b>{SIDE}){TAIL}", _taker_asked),
        (rf"^(?P<q>(?:(?:what|which|when|where|why|how)\b(?: [\w'-]+){{0,3}}? )?)(?P<aux>{_AUX}) "
         rf"(?P<a>{SIDE}) (?P<verb>{_TAKES})(?: (?P<what>{_NOT_A_THING}{SIDE}))? "
         rf"from {_NO_GIVER}(?P<b>{SIDE}){TAIL}", _hand_over_done),
        (r"^(?:what|which) (?:kind of )?(?:place|store|shop|building|room|spot)(?P<near>(?: in [\w' ]+?)?) "
         r"(?P<v>lends|sells) (?P<what>.+?)(?: to (?:you|people|kids|children|anyone|everyone))?$",
         lambda m: f"where can you {'buy' if m['v'] == 'sells' else 'borrow'} {m['what']}{m['near']}"),
        (r"^(?:whose (?:job|work|task) is it|who has the job|which (?:helper|worker|person|grownup)'?s? "
         r"(?:has the job|job is it|job is)) (?:to |of )(?P<v>[\w-]+)",
         lambda m: f"who {verb_form(verb_lemma(m['v']) or m['v'], 'VBZ')}"),
        # win and lose
        (r"\bwin against\b", "beat"),
        (r"\b(?:won|wins) against\b", "beat"),
        (rf"^(?:to )?(?P<wh>{WH}) (?P<aux>do|does|did) (?P<a>{SIDE}) lose(?: (?:the |a )?\w+)?"
         rf"(?: to| against){TAIL}", _beaten_by_asked),
        (rf"^to (?P<wh>{WH}) (?P<aux>do|does|did) (?P<a>{SIDE}) lose{TAIL}", _beaten_by_asked),
        (rf"^(?P<wh>{WH}) (?:lost|loses)(?: (?:the |a )?\w+)? (?:to|against) (?P<b>{SIDE}){TAIL}",
         lambda m: f"{m['wh']} did {as_subject(m['b'])} beat{m['tail']}"),
        (rf"^(?P<aux>do|does|did) (?P<a>{SIDE}) lose(?: (?:the |a )?\w+)? (?:to|against) (?P<b>{SIDE})"
         rf"{TAIL}",
         lambda m: f"{m['aux']} {as_subject(m['b'])} beat {as_object(m['a'])}{m['tail']}"),
        # follow and lead
        (rf"^(?P<wh>who|whom) (?P<aux>do|does|did) (?P<a>{SIDE}) follow{TAIL}",
         lambda m: f"who {'led' if m['aux'] == 'did' else 'leads'} {as_object(m['a'])}{m['tail']}"),
        # own and belong, fear and scare
        (rf"^(?:to )?(?:who|whom) do(?:es)? (?P<a>{SIDE}) belong(?: to)?$", r"who owns \g<a>"),
        (r"^whose (?P<a>[\w'-]+(?: [\w'-]+)?) (?:is|are) (?P<b>this|that|these|those|it)$",
         r"who owns the \g<a>"),
        (rf"^what belongs to (?P<a>{SIDE})$", r"what does \g<a> own"),
        (rf"^(?P<wh>what|which [\w'-]+) (?:do|does) (?P<a>{SIDE}) (?:fear|dread){_WHEN}",
         r"\g<wh> scares \g<a>\g<tail>"),
        (rf"^(?P<wh>what|which [\w'-]+) (?:is|are) (?!.*\bnot\b)(?P<a>{SIDE}) (?:afraid|scared|frightened|fearful|"
         rf"terrified) of{_WHEN}", r"\g<wh> scares \g<a>\g<tail>"),
        # where one stands to the other
        (rf"^(?P<wh>{WH}) (?P<aux>{_AUX}) (?!.*\b(?:like|want|rather|have|need)\b)"
         rf"(?P<a>{SIDE}) (?P<verb>{_STANDS}) (?P<rel>{_RELATION})"
         r"(?P<tail>(?: (?:in|on|at) (?!top|front)[\w' -]+)?)$", _stands_asked),
        (rf"^(?P<wh>{WH}) (?P<be>is|are|was|were) (?P<a>{SIDE}?){_STANDING} (?P<rel>{_RELATION})"
         r"(?P<tail>(?: (?:in|on|at) (?!top|front)[\w' -]+)?)$", _is_asked),
        (rf"^(?P<a>(?!wh|how\b|is\b|are\b|do\b|does\b|did\b){SIDE}) (?P<verb>is|are|comes|come|came|goes"
         rf"|sits|stands|lives|hangs|lies|falls)(?: the [\w'-]+)? (?P<rel>{_RELATION}) (?P<wh>who|whom|what|"
         r"(?:what|which) [\w'-]+(?: [\w'-]+)?)$", _stands_last),
        (rf"^(?P<be>is|are|was|were|do|does|did) (?P<a>(?!it\b|there\b)(?:[\w'-]+ ){{0,2}}?[\w'-]+)"
         rf"(?P<verb>(?: (?:come|sit|stand|live|walk|hang|sitting|standing|hanging))?) (?P<rel>{_TURNED_FROM}) "
         r"(?P<b>(?:[\w'-]+ ){0,2}[\w'-]+)$", _sides_turned),
        # what holds what
        (rf"^what (?:do|does|did) (?P<a>{SIDE}) (?:contain|hold inside|have in it|have in them|have inside"
         r"(?: it)?)$", r"what is in \g<a>"),
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
    for pattern, turn in _RULES + MEASURE_RULES:
        new, turned = pattern.subn(turn, rest)
        if turned:
            rest = " ".join(new.split())
    return before + rest
