"""Ways of saying that one may, should or must: one wording for each, before the parse.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order.
"""

from __future__ import annotations

_FOR = r"(?: for (?:you|us|me|people|children|kids|a child|everyone))?"
_GOOD = (
    r"(?:important|good|smart|wise|necessary|a good idea|a smart idea|best|better|helpful|safer|"
    r"right|a good habit|a good thing|useful)"
)
_BAD = (
    r"(?:wrong|bad|dangerous|unsafe|not safe|not good|not okay|not ok|not nice|not kind|unkind|rude|mean|"
    r"a bad idea|not a good idea|not smart|not polite|impolite|against the rules|forbidden|harmful|"
    r"not right|not allowed|unhealthy)"
)
_YOU = r"(?:you|we|i|people|children|kids|students|they|everyone|someone|your class)"

DUTIES = (
    (
        r"\b(should|can|could|do|does|did|would|will|must|may|is|are|was|were) not (you|we|they|it|he|she|i|"
        r"people|children|kids|students|someone|(?:your|the|a) \w+) (?=\w)",
        r"\1 \2 not ",
    ),
    # must, should
    (r"\bought to\b|\bhad better\b", "should"),
    (rf"\b(?:is|are) ({_YOU}) (?:supposed|meant|expected) to\b", r"should \1"),
    (r"\b(?:is|are) (?:supposed|meant|expected) to\b", "should"),
    (rf"\b(?:do|does) ({_YOU}) (?:have|need) to\b", r"must \1"),
    (rf"\bwhy is it {_GOOD}{_FOR} (?:not to|to not|never to|to never)\b", "why should you not"),
    (rf"\bwhy is it {_GOOD}{_FOR} to\b", "why should you"),
    (rf"\bwhy is it {_GOOD} that ({_YOU}) (?:should )?", r"why should \1 "),
    (rf"\bis it {_GOOD}{_FOR} to\b", "should you"),
    (rf"\bwhy is it {_BAD}{_FOR} not to\b", "why should you"),
    (rf"\bwhy is it {_BAD}{_FOR} to\b", "why should you not"),
    (
        r"\bwhat (?:is|would be) the (?:right|best|smart|safe|safest|kind|nice|correct|first|polite) thing "
        r"(?:for you )?to do\b",
        "what should you do",
    ),
    (
        r"\bwhat (?:is|would be) the (?:right|best|smart|safe|safest|correct|polite) thing (?:for you )?to say\b",
        "what should you say",
    ),
    (r"\bwhat (?:is|would be) the (?:right|best|correct|proper) way to\b", "how should you"),
    (rf"\bwhy (?:do|must|should) ({_YOU}) (?:always )?(?:have to |need to )", r"why should \1 "),
    (rf"\bwhat would happen if ({_YOU}) did not\b", r"why should \1"),
    # may
    (
        rf"\bis it (?:ok|okay|all right|alright|fine|allowed|permitted){_FOR} to\b",
        "are you allowed to",
    ),
    (rf"\bis it (?:ok|okay|all right|alright|fine) (?:if|when) ({_YOU}) ", r"are \1 allowed to "),
    (rf"\b(?:do|does) ({_YOU}) have permission to\b", r"are \1 allowed to"),
    (rf"\b(?:is|are) ({_YOU}) permitted to\b", r"are \1 allowed to"),
    (rf"^may ({_YOU}) ", r"are \1 allowed to "),
    (rf"\b(what|where|when|which \w+) may ({_YOU}) ", r"\1 are \2 allowed to "),
    # must not
    (
        r"\bwhy (?:is|are) (.+?) (?:not allowed|forbidden|against the rules?|not okay|not ok|not permitted|"
        r"a no-no)\b",
        r"why should you not \1",
    ),
    (rf"\bwhy (?:is|are) ({_YOU}) not (?:allowed|permitted|supposed) to\b", r"why should \1 not"),
    (rf"\bwhy can not ({_YOU})\b", r"why should \1 not"),
    (rf"\bwhat (?:is|are) ({_YOU}) not allowed to do\b", r"what should \1 not do"),
    # what stops a thing, what saves someone
    (
        r"\b(?:stop|stops|keep|keeps) (?:a |the |things? |(?:your )?houses? |homes? |buildings? )+from "
        r"burning(?: down)?\b",
        "put out fires",
    ),
    (
        r"\bkeep(?:s)? (?:yourself|yourselves|your body|healthy)? ?from (?:getting|being) sick\b",
        "stay healthy",
    ),
    (r"\bnot get(?:ting)? sick\b", "stay healthy"),
    (r"\bkeep(?:s)? (?:yourself|you) from (?:getting|being) hurt\b", "stay safe"),
    (r"\bnot get(?:ting)? hurt\b", "stay safe"),
    (r"\bkeep(?:s)? from falling\b", "not fall"),
    # ability
    (r"\b(?:is|are|was|were) (.+?) capable of (\w+)ing\b", r"can \1 \2"),
    (r"\b(?:is|are) (?:it )?possible (?:for (.+?) )?to\b", r"can \1"),
)
