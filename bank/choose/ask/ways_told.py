"""Prompts, wishes, plans and feelings, and the one wording for each.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order.
"""

from __future__ import annotations

import re

from bank.choose.ask.ways import IS, WHAT, YOU

_TELL = (
    r"(?:please )?(?:tell|write|talk|share|describe|explain|say|name|list|give|think of|think|draw|"
    r"show)(?: me| us| the class| your class| your teacher)?(?: about| down)?"
)
_FELT = (
    r"(scared|afraid|frightened|happy|sad|angry|mad|proud|brave|nervous|worried|surprised|excited|"
    r"lonely|shy|bored|embarrassed|jealous|calm|sick|hurt|tired|hungry|lost|upset|glad|safe|sorry)"
)
_FRIGHTS = {
    "frighten": "scared",
    "scare": "scared",
    "terrify": "scared",
    "surprise": "surprised",
    "shock": "surprised",
    "amaze": "surprised",
    "excite": "excited",
    "worry": "worried",
    "anger": "angry",
    "upset": "upset",
    "bore": "bored",
    "embarrass": "embarrassed",
    "please": "happy",
    "delight": "happy",
    "sadden": "sad",
    "cheer": "happy",
    "hurt": "hurt",
    "bother": "upset",
    "annoy": "angry",
}
_FRIGHTEN = (
    r"(frighten|scare|terrify|terrifie|surprise|shock|amaze|excite|worry|worrie|anger|upset|bore"
    r"|embarrass|please|delight|sadden|annoy|cheer)"
)


_FEARS = frozenset({"scared", "afraid", "frightened"})


def _as_feeling(verb: str) -> str:
    return _FRIGHTS.get(verb, _FRIGHTS.get(verb[:-1] + "y", verb))


def _makes_feel(found: re.Match[str]) -> str:
    """*What scares you* becomes *what makes you scared*."""
    feeling = _as_feeling(found.group(1))
    return "what scares you" if feeling in _FEARS else f"what makes you {feeling}"


def _made_feel(found: re.Match[str]) -> str:
    """*What scared you* becomes *what made you scared*."""
    feeling = _as_feeling(found.group(1))
    return "what scared you" if feeling in _FEARS else f"what made you {feeling}"


def _time_felt(found: re.Match[str]) -> str:
    """*When did something frighten you* becomes *tell a time you felt scared*."""
    return f"tell a time you felt {_as_feeling(found.group(1))}"


def _asked(found: re.Match[str]) -> str:
    """*How I helped my mother* becomes *how did I help my mother*."""
    import lemminflect

    asked, who, verb = found.groups()
    lemma = (lemminflect.getLemma(verb, "VERB") or (verb,))[0]
    past = verb in lemminflect.getInflection(lemma, "VBD") and verb != lemma
    return f"{asked} {'did' if past else 'do'} {who} {lemma}"


_DREAM = r"(?:dream|ideal|perfect|best possible|most wonderful|best ever)"

TOLD = (
    (r"\b(?:what|which) (?:time|hour) it is\b", "the time"),
    # a wish
    (
        r"^if (?:you (?:had|got|were given|were granted|could have|could make)|someone (?:gave|granted)"
        r" you|a genie (?:gave|granted) you|you were to get) (?:only |just )?(?:a|one|any|1)(?: single)?"
        r" wish,? (?:what|which)\b.*$",
        "what would you wish for",
    ),
    (
        r"^(?:what|which)(?: \w+)? would (?:you|it|your wish) (?:wish(?: for)?|ask for|make|want|choose|be)"
        r" if (?:you (?:had|got|could have|could make|were given|were granted) (?:only |just )?(?:a|one"
        r"|any|1) wish(?:es)?|(?:a|one|any|your) (?:wish|dream) (?:could|would|can)? ?(?:come|came) true"
        r"|you could (?:wish for|have) anything.*|someone (?:gave|granted) you (?:a|one) wish)$",
        "what would you wish for",
    ),
    (
        rf"^(?:{_TELL} )?(?:what|which|one|a|your|the)(?: one)? wish (?:would|do|that) (?:you|i) "
        r"(?:make|have|want|like)(?: to come true)?$",
        "what would you wish for",
    ),
    (
        r"^(?:you get|you have|you are given|a genie gives you) (?:one|a) wish[.,:;!]? what\b.*$",
        "what would you wish for",
    ),
    (
        r"^if (?:you|we|i) could (have|be|own|eat|visit|meet|learn|play|make|get|choose|pick|buy|drive|see"
        r"|read|change|keep|invent|grow) (?:any|one|only one|a|any one|any kind of)(?: new| single)?"
        r" (\w+)(?: in the (?:whole )?world| you (?:want|wanted|like|liked))?((?: (?:for|at|in|from|to"
        r"|on)[\w ]+)?),? (?:what|which|who)(?: \w+)? (?:would|will) (?:it|you|that|they)(?: \w+)*$",
        r"what \2 would you like to \1\3",
    ),
    (
        r"^if (?:you|we|i) could (have|be|own|eat|visit|meet|learn|play|make|get|choose|pick|buy|drive|see"
        r"|read|change|do|become) any(?:thing|one|body)?(?: you (?:want|wanted|like|liked)| at all)?"
        r"((?: (?:for|at|in|from|to|on)[\w ]+)?),? (what|who|which)(?: \w+)? (?:would|will) "
        r"(?:it|you|that)(?: \w+)*$",
        r"\3 would you like to \1\2",
    ),
    (
        r"^if (?:you|we|i) could (?:go|travel|fly|live|visit) (?:to )?(?:any ?where|any place)"
        r"(?: (?:in the world|you want(?:ed)?|you like[d]?|at all))*,? (?:where|which place|what place)"
        r"(?: would)? (?:you|it|that)? ?(?:want to |like to |choose to )?(go|travel|fly|live|visit|be)?"
        r"(?: to)?$",
        r"where would you like to go",
    ),
    (
        r"^(where|what|who|which \w+) would you (\w+(?: \w+){0,3}?) if you could (?:go|travel|have|choose|be"
        r"|do|pick|eat|meet|visit|buy) (?:any ?where|anything|anyone|any \w+)(?: in the world| you"
        r" want(?:ed)?| at all)?$",
        r"\1 would you like to \2",
    ),
    (
        r"\b(?:the|a|your) (\w+) (?:that )?you (?:would|could) (?:take|have|live in|choose|go on|like|like"
        r" to have|want|eat|buy|build|make|own|go to|plan) if you could (?:go|have|do|choose|pick|take|be"
        r"|make|live|eat|build|own) [\w ]*\bany\w*\b.*$",
        r"your dream \1",
    ),
    (
        rf"^(?:{_TELL} )?how (?:your|the|a|my) (\w+) would (?:go|be|look) if (?:everything|all|it) (?:was|were"
        r"|went|could be) (?:just )?(?:right|perfect|great|well|the way you like it)$",
        r"tell your dream \1",
    ),
    (rf"\b{_DREAM} (?=\w)(?!of\b)", "dream "),
    (r"\bwould you (?:want|love|wish|choose|pick|like most|like best) to\b", "would you like to"),
    (r"\bwould you (?:want|love|wish for|choose|pick)\b(?=.*\bif\b)", "would you like"),
    (
        r"^(?:what|which) (\w+) would you (?:choose|pick) to (be|have|own|visit|meet|eat)\b",
        r"what \1 would you like to \2",
    ),
    (
        r"^(?:what|which) (\w+) do you (?:wish|want|hope) (?:to|you could) (be|have|own|visit|meet)\b",
        r"what \1 would you like to \2",
    ),
    (
        r"^what do you (?:wish|want|hope) to (?:be|become) (?:one day|someday|later|when)\b.*$",
        "what do you want to be when you grow up",
    ),
    (
        r"^(?:what|which) (?:job|work|career|kind of job|kind of work) (?:do|would|will) you (?:want|like|hope"
        r"|wish|plan|have|do)(?: to (?:have|do|get))? (?:one day|someday|later|when you (?:grow up|are (?:grown"
        r"|an adult|a grownup|big|older).*)|as (?:an adult|a grownup)|in the future)$",
        "what do you want to be when you grow up",
    ),
    # plans
    (rf"^{_TELL} (?:your|the|some) plans? (?:for|on|over|during)\b", "what will you do in"),
    (r"\b(?:what|which) (?:are|is) your plans? (?:for|on|over|during)\b", "what will you do in"),
    (
        r"\bwhat (?:do|are|have) you (?:plan|planning|planned|hope|hoping|intend|want) (?:to do|on doing"
        r"|to be doing|for) (?=(?:this|next|tomorrow|on|over|after|in|during|for)\b)",
        "what will you do ",
    ),
    # step by step, ways
    (
        rf"^{_TELL}(?: step by step| in order| with pictures)*,? how (?:you|to|i|we|people) (?!feel|look)"
        r"(?=\w)",
        "how do you ",
    ),
    (
        rf"^{_TELL} (?:the |some |a |one |two |three )?(?:good |best )?(?:ways?|steps?|directions?|rules?) (?:that "
        r"|in which )?(?:you can |you |people can |people |we can |to |for |of )",
        "how do you ",
    ),
    (
        rf"\b{WHAT} (?:actions?|things?|nice things?|good things?|something) (?:can|could|should|do|might|would)"
        rf" {YOU} do (?:to|so that you can|so that|so you can|in order to) ",
        "how do you ",
    ),
    (
        rf"\b(?:what|which) (?:steps?|actions?) (?:do|should|must|can|would) {YOU} (?:take|follow|do) (?:to|for"
        r"|when you|in order to)\b",
        "how do you",
    ),
    (
        rf"\b(?:what|which) {IS} (?:the |a |some |one )?(?:right |good |best |safe |proper )?(?:ways?|manner|method"
        r"|steps?|trick) (?:to|for|of)\b",
        "how do you",
    ),
    (
        rf"\bhow (?:should|must|ought|would|can|could) {YOU} (?:go about|manage to|be able to)\b",
        "how do you",
    ),
    (r"\bhow (do|does|did|can) (.+?) (?:go about|manage to)\b", r"how \1 \2"),
    (
        rf"\bwhat (do|does|should|must|can|would) {YOU} (?:need to |have to )?do "
        r"(?=(?:when|if|after|before|during|while|on)\b)",
        r"what \1 you do ",
    ),
    (r"\bhow do you like your time in\b", "do you like"),
    (
        r"\bhow (do|does|did|will|would) (you|your \w+) (?:like to |usually )?spend (?=(?:yesterday|last|this"
        r"|after|on|in|time|today|tomorrow|recess|an|most|all|every|each|evenings|afternoons|nights"
        r"|mornings|weekends)\b)(?!.*(?:money|dollar|allowance))",
        r"what \1 \2 do ",
    ),
    (
        r"\bwhat (do|does|did) you (?:usually |mostly |most often )do (?=with your (?:free |spare )?time)",
        r"what \1 you do ",
    ),
    (
        r"\b(?:when you have (?:no work|nothing|no jobs?|no homework|free time|time off|extra time)(?: to do)?,?"
        r" (?:what do you do|how do you spend (?:the|your|that) time)|what do you do when you have (?:nothing to "
        r"do|no work to do|free time|extra time|some time to yourself|time to yourself))$",
        "what do you do in your free time",
    ),
    (
        r"\bwhat do you do (?:on|in|with|during) (?:your )?(?:spare time|free time|free moments)\b",
        "what do you do in your free time",
    ),
    # the way to school
    (
        r"\b(how (?:do|did|does) (?:you|your \w+) (?:come|get|go|travel) (?:to school|home))\b[ ,:]"
        r".*\bor\b.*$",
        r"\1",
    ),
    (
        r"^(do|did|does|will) (you|your \w+) (?:usually |mostly )?(?:walk|ride|come|get|go|travel|take|drive)"
        r"\b(?=.*\bor\b)(?=.*\b(?:bus|car|foot|walk|bike)\b)(?:.*\b(to school|to class|home)\b)?.*$",
        r"how \1 \2 get to school",
    ),
    (
        r"\b(?:by what means|in what way|what way) (do|did|does) (you|your \w+) (?:travel|come|get|go) to\b",
        r"how \1 \2 get to",
    ),
    (
        r"^what (?:do you ride|brings you|takes you|do you travel in|do you take|gets you|do you ride in|do you ride on)"
        r"(?: to get)? to school\b",
        "how do you get to school",
    ),
    (
        r"\bhow (do|did|does) (you|your \w+) (?:travel|come|go|make it|arrive) (to|home)\b",
        r"how \1 \2 get \3",
    ),
    (r"\bhow (do|did|does) (you|your \w+) arrive at\b", r"how \1 \2 get to"),
    # feelings
    (
        r"\b(?:what|which) (?:kind of )?(?:mood|feeling|emotion)s? (?:are you (?:in|having|feeling)|do you have|do"
        r" you feel|have you got|is in you)(?: right now| now| at the moment| at this moment| today)?$",
        "how do you feel today",
    ),
    (
        r"^(?:how are you(?: feeling| doing)?|how do you feel|what is your mood|how is your mood|what are you "
        r"feeling)(?: like)?(?: right now| now| at the moment| at this moment| today| this morning)?$",
        "how do you feel today",
    ),
    (
        rf"\b(?:what|which) (?:things? |animals? |noises? )?{_FRIGHTEN}e?s? you(?: (?:most|the most|a lot))?$",
        _makes_feel,
    ),
    (rf"\bwhat (?:has )?(?:ever )?{_FRIGHTEN}e?d you$", _made_feel),
    (
        r"\bwhat (?:thing |things )?(gives?|gave|brings?) you (?:a |an |the )?(?:\w+ )?"
        + _FELT
        + r" feelings?\b",
        r"what makes you \2",
    ),
    (
        r"\bwhat (?:thing |things )?makes you (?:feel )?(?:scared|afraid|frightened)$",
        "what scares you",
    ),
    (
        r"\bwhat (?:thing |things )?made you (?:feel )?(?:scared|afraid|frightened)$",
        "what scared you",
    ),
    (
        rf"\bwhat (?:do|does) (?:you|it) (?:feel|get|become) {_FELT} (?:about|from|of)\b",
        r"what makes you \1",
    ),
    (
        rf"^what (?:are|do) you (?:feel )?(?:most )?(?!scared|afraid|frightened){_FELT} (?:about|from)$",
        r"what makes you \1",
    ),
    (rf"^when (?:are|do|is) (?:you )?(?:feel |get )?{_FELT}$", r"when do you feel \1"),
    (
        rf"\bwhen (?:did|has) (?:something|someone|anything|a person|an animal)(?: ever)? {_FRIGHTEN}"
        r"e?d? you(?: (?:most|a lot|very much|badly))?$",
        _time_felt,
    ),
    (
        rf"^(?:{_TELL} )?(?:a |the |one |some )?(?:time|moment|day) (?:when |that )?(?:something|someone|anything) "
        rf"{_FRIGHTEN}e?d you$",
        _time_felt,
    ),
    (
        rf"^when (?:did you (?:last |ever )?(?:feel|get|become)|were you|have you (?:ever )?(?:been|felt)|was the "
        rf"last time you (?:felt|were|got))(?: really| very| so)? {_FELT}$",
        r"tell a time you felt \1",
    ),
    (
        rf"^(?:have|did) you (?:ever )?(?:been|felt|feel|get|gotten)(?: really| very| so)? {_FELT}[?.,] "
        r"(?:when|tell|what happened).*$",
        r"tell a time you felt \1",
    ),
    (
        r"^(?:when|what) (?:did you|was a time you|was the last time you) (?:last )?(?:get|got|had|have) a (?:bad |big )?"
        r"(?:fright|scare)$",
        "tell a time you felt scared",
    ),
    (
        r"\bwhat (?:do|does|would) (you|your \w+|children|kids|people|babies) (?:find|think is|call|consider) "
        r"(?:so |very |really )?(?:funny|silly|hilarious)$",
        r"what makes \1 laugh",
    ),
    (
        r"\bwhat (?:is|are) (?:so |very |really )?(?:funny|hilarious) (?:to|for) (you|your \w+)$",
        r"what makes \1 laugh",
    ),
    (
        r"\bwhat (?:do|does) (you|your \w+) (?:laugh|giggle|chuckle) (?:about|at)$",
        r"what makes \1 laugh",
    ),
    (
        r"\bwhat do you find (?:to be )?(hard|difficult|easy|scary|boring|fun|exciting|interesting)$",
        r"what is \1 for you",
    ),
    # a topic for a question: how I helped my mother, what I like about winter
    (
        r"^(what|how|why|where|who|which \w+) (i|we) am\b"
        r"(?!.*(?:,|\b(?:what|who|how|where|which|do|does)\b))",
        r"\1 are you",
    ),
    (
        r"^(what|how|why|where|who|which \w+) (i|we|you) (am|are|can|will|would|should|was|were"
        r"|could)\b(?!.*(?:,|\b(?:what|who|how|where|which|do|does)\b))",
        r"\1 \3 \2",
    ),
    (
        r"^(what|how|why|where|who) (i|we|you) (?!do\b(?! )|did\b|does\b|have been|had been)(\w+)\b"
        r"(?!.*(?:,|\b(?:what|who|how|where|which|do|does|are|is|should|will|would|can)\b))",
        _asked,
    ),
    (
        r"^(?:the )?(?:things?|something|anything|one thing|stuff) (?:that |which )?(makes?|made|scares?|helps?|gives?"
        r"|happens?|worr(?:y|ies)|cheers?) ",
        r"what \1 ",
    ),
    (r"^(?:the )?reasons? (?:why |that |for which )?(i|we|you) ", r"why do \1 "),
)
