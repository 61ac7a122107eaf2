"""Ways of asking what is liked, allowed, there or so, and the one wording for each.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order.
"""

from __future__ import annotations

import re


def _allowed(found: re.Match[str]) -> str:
    """*Is lying ever okay* becomes *are you allowed to lie*."""
    import lemminflect

    doing, rest, where = found.groups()
    lemma = (lemminflect.getLemma(doing, "VERB") or (doing,))[0]
    return f"are you allowed to {lemma}{rest}{where}"


LIKED = (
    # liking: the best, the top choice
    (r"^things (?:i|you|we) (?:can )?do (?:very |really )?well$", "what are you good at"),
    (
        r"\b(?:top|first|number one|best|favou?rite) (?:choice|pick) (?:of|for|in|when it comes to|among)(?: a| an"
        r"| the)? (\w+)s?\b",
        r"favorite \1",
    ),
    (
        r"\bbest[- ]?(?:loved|liked)\b|\bmost[- ]?(?:loved|liked|beloved)\b|\bnumber one\b|\btop\b"
        r"(?= (?:food|game|book|color|song|sport|animal|snack|movie|toy|subject|treat|choice|place|season))",
        "favorite",
    ),
    (
        r"^(?:which|what) (?:is |are )?(?:the )?(?:(?:yummiest|tastiest|most delicious|coolest|"
        r"funnest|most fun|greatest|best) )(?!way|thing|part|time|friend|of the)"
        r"((?:(?!you |i |someone )\w+ ){0,6}?\w+?)(?: of all| in the world| of them all| to you| ever| you know)?$",
        r"what is your favorite \1",
    ),
    (
        r"^(?:the|my|your) (?:(?:yummiest|tastiest|most delicious|coolest|most fun|greatest|best)"
        r" )(?!friend|way|buddy|thing|part|time)((?:(?!you |i |someone )\w+ ){0,6}?\w+?)"
        r"(?: of all| in the world| ever| i know| to \w+)?$",
        r"favorite \1",
    ),
    (
        r"\b(?:which|what) (\w+) (?:is|are) (?:the )?(?:best|nicest|tastiest|yummiest|most fun|the most fun|the"
        r" greatest)(?: of all| to you| for you| in your eyes)?$",
        r"what is your favorite \1",
    ),
    (
        r"\b(?:which|what) ((?:\w+ )?\w+) (?:do|would) you (?:like|love|enjoy|choose|pick|call|say is|rate|want)"
        r" (?:as |to be )?(?:your )?(?:the )?(?:favou?rite|number one|best one|the best)$",
        r"what is your favorite \1",
    ),
    (
        r"\b(?:which|what) (?:is|are) the (\w+) (?:that )?you (?:like|love|enjoy) (?:the )?(?:most|best)",
        r"what \1 do you like most",
    ),
    (
        r"^(?:tell|write|describe|name)(?: me| us)?(?: about)? the (thing|part|\w+) (?:that )?(?:you|i) "
        r"(like|love|enjoy|liked|loved|enjoyed) (?:the )?(most|best)\b",
        r"what was your favorite \1",
    ),
    (
        r"\b(?:what|which)(?: part| thing)? (?:did) you (?:like|love|enjoy) (?:the )?(?:most|best) (?:about|of|in|on"
        r"|at|during) ",
        "what was the best part of ",
    ),
    (
        r"\b(?:what|which)(?: part| thing)? (?:do) you (?:like|love|enjoy) (?:the )?(?:most|best) (?:about|of|in)"
        r" ",
        "what is the best part of ",
    ),
    (r"\bwhat do you (?:mostly |most )?(?:like|love|enjoy) doing\b", "what do you like to do"),
    (r"\b(like|love|enjoy)(s?) (\w+)ing\b(?= (?:most|best|the most|the best))", r"\1\2 \3ing"),
    (
        r"^(?:something|some things?|things?|one thing|a thing|an? activity) (?:that is |that are )?(?:fun |good |nice"
        r" |special |great )?(?:to do|you can do|i do|you do|i like to do|you like to do|for fun)\b",
        "what do you like to do",
    ),
    (
        r"^(?:what|which) (?:is|are|thing is|things are) (?:some |a |something |one )?(?:fun|nice|great) (?:things? )?"
        r"to do\b",
        "what do you like to do",
    ),
    (r"^do you (?:like|love|enjoy|want) (?=.*\bor\b)(?!.*\b(?:any|something)\b)", "do you prefer "),
    (
        r"\b(?:alone|by yourself|by myself|on your own|all alone) or (?:with|in|together with) (?:a |an |your "
        r"|other |some |the |one )?(?:partner|buddy|friends?|classmates?|someone(?: else)?|somebody(?: else)?"
        r"|others|people|kids|children|group|team|pal)\b",
        "alone or with others",
    ),
    (
        r"\b(?:with|in|together with) (?:a |an |your |other |some |the |one )?(?:partner|buddy|friends?"
        r"|classmates?|someone(?: else)?|somebody(?: else)?|others|people|kids|children|group|team|pal) or"
        r" (?:all )?(?:alone|by yourself|by myself|on your own)\b",
        "alone or with others",
    ),
    # permission, ability
    (
        r"^is it (?:ever |sometimes |always |really )?(?:okay|ok|all right|alright|allowed|permitted|fine"
        r") (?:for (?:you|us|me|kids|children|students) )?(?:if (?:you|we|i) |(not )?to )(?=\w)",
        r"are you allowed to \1",
    ),
    (
        r"^is (\w+ing)\b([\w ]*?) (?:ever |sometimes |always )?(?:okay|ok|all right|alright|allowed|permitted|fine)"
        r"((?: (?:in|at|on|to|during)\b[\w ]+)?)$",
        _allowed,
    ),
    (
        r"^(?:do (?:you|we|i) have permission to|may (?:you|we|i|kids|students)|are (?:kids|students|children|we|i)"
        r" (?:allowed|permitted) to|do the rules (?:let|allow) (?:you|us)(?: to)?|do (?:your )?(?:teachers?|"
        r"parents?) let you) ",
        "are you allowed to ",
    ),
    (r"\bwhat are (?:you|we|kids|students) (?:allowed|permitted) to\b", "what can you"),
    (r"\b(?:are|is) (you|your \w+|a \w+) capable of (\w+)ing\b", r"can \1 \2"),
    (r"\bis it possible (?:for (you|a \w+|\w+) )?to\b", r"can \1"),
    (r"\b(?:have|has) (you) learned (?:how )?to\b", r"can \1"),
    (
        r"\bwhat (?:are you|do you do) (?:really |very )?(?:good at|well)(?: doing)?$|"
        r"\bwhat (?:\w+ )?can you do (?:really |very |so |quite )?well$",
        "what are you good at",
    ),
    # existence
    (
        r"^(?:does|do|is there) (?:a |an |any |some )?([\w ]+?) (?:live|lives|living|stay) (?:with you|with your family"
        r"|at your (?:house|home)|in your (?:house|home))$",
        r"do you have \1",
    ),
    (
        r"^(?:is|are) there (a|an|any|some) ([\w ]+?) (?:at|in) your (?:house|home|family)$",
        r"do you have \1 \2",
    ),
    (
        r"^(?:have you got|do you own|are you the owner of|has your family got|does your family (?:have|own)"
        r"|do you keep) ",
        "do you have ",
    ),
    (r"\b(brothers?|sisters?) (?:or|and|and/or) (brothers?|sisters?)\b", "siblings"),
    (r"\bother children of your parents(?: besides you)?\b", "siblings"),
    (r"^are there (?:any |some )?siblings(?: (?:in|at|besides|with).*)?$", "do you have siblings"),
    # weather and other yes-or-no asks
    (
        r"\bis (?:any |the |some )?(rain|snow|hail|sleet) (?:falling|coming down|dropping)(?: from the sky"
        r"| outside| out there)*\b",
        r"is it \1ing",
    ),
    (r"\b(?:is|are) (?:there )?(?:any |some )?(rain|snow|hail)drops? falling\b", r"is it \1ing"),
    (r"\bis it (wet|rainy|snowy) (?:out|outside|out there)\b", r"is it \1"),
    (r"\bis the sun (?:out|shining|in the sky)\b", "is it sunny"),
    (
        r"\bis there (?:a )?(?:lot of |much )?(wind|fog|sunshine)(?: blowing)?(?: outside| out)?\b",
        r"is it \1y",
    ),
    (r"\bout there\b", "outside"),
)
