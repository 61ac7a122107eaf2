"""Ways of asking for a person, a name, a job or a place, and the one wording for each.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order.
"""

from __future__ import annotations

import re

from bank.choose.ask.ways import IS, WHAT, YOU

_SOMEONE = (
    r"(?:person|people|man|woman|grownup|grown up|adult|worker|helper|community helper|human|"
    r"somebody|someone|individual)"
)
_RELATED = (
    r"(?:teacher|principal|best friend|friend|neighbor|doctor|dentist|coach|bus driver|mother|mom|"
    r"father|dad|brother|sister|grandma|grandmother|grandpa|grandfather|aunt|uncle|cousin|nurse|"
    r"librarian|president|author|writer|mayor|partner|buddy|hero|babysitter|aide|classmate|"
    r"head of (?:the|your|our) school)"
)
_PLACE = (
    r"(?:place|spot|room|store|shop|building|town|city|location|country|state|kind of place|part of "
    r"the (?:house|school|room|town|world)|area|corner)"
)
_NO_JOB = r"(?!good|best|nice|kind|bad|real|true|new|baby|young|family|friend)"
_JOB = r"(?:job|work|role|duty|duties|task|responsibility|day at work|workday|occupation)"


def _who_does(found: re.Match[str]) -> str:
    """*Whose job is it to clean the floor* becomes *who cleans the floor*."""
    import lemminflect

    lemma = (lemminflect.getLemma(found.group(1), "VERB") or (found.group(1),))[0]
    return f"who {(lemminflect.getInflection(lemma, 'VBZ') or (lemma,))[0]}"


WHO = (
    # the job of a person, and the person of a job
    (
        rf"\b(?:whose (?:job|work|duty|task|responsibility|turn|chore) is it|who {IS} (?:in charge of|"
        r"responsible for|the one to|the person to|supposed to)|who has the (?:job|duty|task)"
        r"(?: of)?|who gets paid) (?:to )?(\w+)",
        _who_does,
    ),
    (rf"\bwhose (?:job|work|duty|task) {IS} (\w+ing)\b", _who_does),
    (
        rf"\b{WHAT} (?:is|are|kind of work is) the {_JOB} of (?:a |an |the )?"
        rf"(?:person|people|worker|someone|men and women) (?:who|that) ",
        "what job is the worker who ",
    ),
    (
        rf"^(?:tell|write|talk|say|explain|describe)(?: me| us)?(?: about| what is)? (?:the |a )?"
        rf"{_JOB} of ((?:a |an |the )?.+)$",
        r"what job is \1",
    ),
    (
        rf"^(?:tell|write|talk|explain|describe)(?: me| us)?(?: about)? (?:a|an|the) "
        rf"(\w+(?: \w+)?)'s {_JOB}$",
        r"what job is a \1",
    ),
    (
        rf"^(?:tell|write|talk|say|explain|describe)(?: me| us)?(?: about)? what (?:a|an|the) "
        rf"{_NO_JOB}(\w+(?: \w+)?) (?:does|do|has to do)(?: at work| for work| for a job| all day"
        r"| each day| every day)?$",
        r"what job is a \1",
    ),
    (rf"\b{WHAT} (?:{IS} )?(?:a|an|the) (\w+(?: \w+)?)'s {_JOB}$", r"what job is a \1"),
    (
        rf"^what (?:does|must|can|might|would) ((?:a|an|the|your|our|most|many) {_NO_JOB}\w+(?: \w+)?)"
        r" (?:have to )?do (?:at (?:his|her|their|the|a|its)? ?(?:work|job)|at work|on the job"
        r"|for a job|for a living|all day(?: long)?|at school|each day|every day|in (?:his|her|their"
        r"|a) job)$",
        r"what job is \1",
    ),
    (
        r"^what do ((?!you|we|they|people|kids|children|students|your|our|animals|dogs|cats|babies"
        r"|plants|birds|bees|bears)\w+(?:ers|ors|ists|ians|men|women|nurses|vets|pilots|chefs|cooks"
        r"|coaches|astronauts|guards)) do(?: at work| for work| all day| for a living)?$",
        r"what job is \1",
    ),
    (r"\bwhat kind of work (?:do|does) (.+?) do$", r"what job is \1"),
    (r"\bwhat work (?:do|does) (.+?) do$", r"what job is \1"),
    # a person
    (
        rf"\b(?:what (?:is|was)|{WHAT} {IS}|tell|say|give|name)(?: me| us)? the (?:full |first |last )?"
        rf"names? of (?:the|a|an|one|some|any) {_SOMEONE}s? (?:who|that|whom) ",
        "who ",
    ),
    (
        rf"\bwhat (?:do|does|did|would) {YOU} call (?:the|a|an) {_SOMEONE}s? (?:who|that|whom) ",
        "who ",
    ),
    (rf"\b{WHAT} {IS} (?:a|the|an) {_SOMEONE}s? (?:who|that|whom) (.+?) called$", r"who \1"),
    (rf"\b(to|for|with|from|by|about|at) (?:which|what) {_SOMEONE}s?\b", r"\1 who"),
    (
        rf"\b(?:which|what) (?:kind of |sort of |type of )?{_SOMEONE}s? (?:in|at|from|on) (?:your|our|the) "
        r"(class|school|family|house|town|bus|team)\b",
        r"who in your \1",
    ),
    (
        rf"\b(?:which|what) (?:kind of |sort of |type of )?{_SOMEONE}s?(?= (?!is your|are your|name))",
        "who",
    ),
    (
        rf"\bwho {IS} (?:the |a |an |one |some )?(?:very |first |special )?{_SOMEONE}s?,? (?:who|that"
        r"|whom) ",
        "who ",
    ),
    (rf"^is there (?:a|an|any|some) {_SOMEONE}s? (?:who |that |whom )?(?=\w)", "who "),
    (
        rf"^(?:name|tell|say|give|think of|list|describe|choose|pick)(?: me| us)?(?: about)? (?:the|a|an"
        rf"|one|some|any|your)?(?: one)? ?(?:special )?{_SOMEONE}s? (?:who|that|whom) ",
        "who ",
    ),
    (
        rf"^(?:name|tell|write|talk|think|describe|say)(?: me| us)?(?: about)? (?:the|a|an|one|some)? ?"
        rf"(?:special )?{_SOMEONE}s? (you (?!know\b)|i (?!know\b))(\w+)(.*)$",
        r"who do you \2\3",
    ),
    (
        rf"^(?:the |a |an |some |one )?{_SOMEONE}s? (?:who|that|whom) (?=\w)",
        "who ",
    ),
    (rf"^(?:the |a |an |some |one )?{_SOMEONE}s? (?:i|you) (?!know)(\w+)(.*)$", r"who do you \1\2"),
    (
        r"\bwho (?:all )?(?:is|are) there (?:in|at) your (?:family|house|home)$",
        "who is in your family",
    ),
    (
        r"\bwho (?:all )?(?:lives?|is living|are living|stays?|do you live|shares? a home|lives in the same"
        r" house)(?: together)?(?: with| in| at)?(?: (?:you|your (?:house|home|apartment)|"
        r"the same (?:house|home)))?(?: with you)?$",
        "who lives in your home",
    ),
    # the author, the winner
    (
        rf"\b(?:{WHAT} {IS} the (?:author|writer)(?:'s)?(?: name)?(?: of)?|who {IS} the (?:author|writer)"
        rf" of|{WHAT} {IS} the name of the (?:author|writer|person who wrote)(?: of)?|who {IS} the name "
        r"of the author of|who made up)\b",
        "who wrote",
    ),
    (r"\bwho wrote$", "who wrote the book"),
    (r"\bwho (?:is|was) the (?:illustrator|artist) of\b", "who drew the pictures in"),
    (
        r"\bwho (?:is|was) the winner of\b|\bwho came in first(?: place)? in\b|\bwho finished first in\b",
        "who won",
    ),
    (
        r"\bwho crossed the finish line first\b|\bwho came in first(?: place)?$|\bwho was the fastest in the"
        r" race$",
        "who won the race",
    ),
    (r"\bwho (?:is|was) the (?:inventor|maker|builder) of\b", "who invented"),
    (r"\bwho (?:is|was) (?:first|the first) to\b", "who first"),
    # a person's name
    (
        rf"\bwhat (?:is|are|was) ((?:your|the|our|my|his|her) (?:\w+ )?{_RELATED})(?:'s|s')? "
        r"(?:full |first |last )?names?\b",
        r"who is \1",
    ),
    (
        rf"\bwhat (?:is|are|was) (?:the )?(?:full |first |last )?names? of ((?:your|the|our|my|his|her) "
        rf"(?:\w+ )?{_RELATED}s?)\b(?!')",
        r"who is \1",
    ),
    (
        rf"\bwhat (?:is|are) ((?:your|the|our|my) (?:\w+ )?{_RELATED}) (?:called|named)\b",
        r"who is \1",
    ),
    (
        r"\bwhat do you call (your (?:teacher|principal|best friend|bus driver|nurse|coach))\b",
        r"who is \1",
    ),
    (r"\bhow (?:is|are) (.+?) (?:called|named)$", r"what name is \1"),
    # names of things
    (
        rf"\bwhat (?:do|does|did|would|can|should|could) {YOU} (?:call|name) (?=your|the|a |an |it |"
        r"this|that|my|our|two|three|\w+ (?:babies|animal))",
        "what name is ",
    ),
    (
        rf"\b(?:{WHAT} {IS}|tell|give|say|name|do you know)(?: me| us)? (?:the |a |an |another )?(?:right |"
        r"special |other |correct |proper )?(?:words?|names?|terms?) (?:for|of|given to|that means|"
        r"meaning|that names|we use for|people use for|you use for)\b",
        "what name is",
    ),
    (
        rf"\b{WHAT} (?:word|term|name) (?:do|does|can|would|should) {YOU} (?:use|give|say|have) (?:for|to|"
        r"to mean|when you mean|to name|as the name (?:for|of))\b",
        "what name is",
    ),
    (
        rf"\b{WHAT} (?:word|term|name) (?:means|names|is for|is used for|describes|fits|stands for)\b",
        "what name is",
    ),
    (rf"\b{WHAT} (?:name|word|term) (?:is|are) given to\b", "what name is"),
    (
        rf"\bby {WHAT} name (?:do {YOU} (?:know|call)|is|are) (.+?)(?: called| known)?$",
        r"what name is \1",
    ),
    (r"\bwhat (?:is|are) (.+?) (?:called|named|known as)(?: when .+)?$", r"what name is \1"),
    (r"^do you have (?:a )?names? for\b", "what name is"),
    (
        r"\bwhat name (?:have|did|do) you (?:given|give|gave|choose for|pick for) (?:to )?",
        "what name is ",
    ),
    (
        r"\bwhat name is (?:the )?(?:opposite|reverse|contrary) of\b|"
        r"\b(?:what|which) (?:word )?(?:is|means|says) (?:the |just the )?(?:opposite|reverse|contrary) (?:of|to)\b|"
        r"\b(?:what|which) word is opposite (?:of|to|in meaning to)\b",
        "what is the opposite of",
    ),
    (r"\bwhat name is (?:a|an|the) (\w+(?: \w+)?) (?:that|which) (?=\w)", r"what \1 "),
    (r"\bwhat name is (?:a|an|the) (\w+) (?:you|we|i) (?=\w)", r"what \1 do you "),
    (r"\bwhat name is (?:a|an|the) (\w+) with (?=\w)", r"what \1 has "),
    (r"\bwhat name is (?:a|an|the) (\w+) (?=(?:when|after|before|between) )", r"what \1 is "),
    (
        r"\bwhat name is (?:the )?part of (?:a|an|the|your) (\w+) (?:that is )?(?=(?:under|above|below"
        r"|on|in|at|over) )",
        r"what part of a \1 is ",
    ),
    # places
    (
        rf"\b(?:what|which) {IS} (?:the )?(?:name of )?(?:the )?(?:city|town|place|state|country|hospital) "
        r"(?:of (?:your|his|her) birth|where you were born|you were born in)$",
        "where were you born",
    ),
    (
        r"\bwhat (?:is|was) (?:the |your )?(?:birthplace|place of birth)(?: of (\w+ ?\w*))?$",
        "where were you born",
    ),
    (
        rf"\b(?:what|tell|say|give)(?: me| us)?(?: {IS})? (?:your|the) (?:home |house |street )?"
        r"address(?: of your (?:home|house))?$",
        "where do you live",
    ),
    (
        r"\b(?:at|on) (?:what|which) address (?:do you live|is your (?:home|house))$|\bwhere is your"
        r" (?:home|house)(?: located)?$|\bwhere is the (?:home|house) you live in$",
        "where do you live",
    ),
    (
        r"\bwhat (?:is|was) the (?:setting|place) of ((?:the|this|your|a) (?:story|book|movie|tale).*)$",
        r"where does \1 take place",
    ),
    (r"\bwhere (?:does|do|did) (.+?) (?:happen|go on|occur)$", r"where does \1 take place"),
    (r"\bwhere (?:is|are) (.+?) (?:located|found|kept|at|to be found)$", r"where is \1"),
    (
        rf"\bwhere (?:can|do|could|would) {YOU} (?:find|see|get to) (?=the (?!.*\bto\b))",
        "where is ",
    ),
    (
        rf"^(?:name|tell|write|talk|think|describe|say|give|pick|list|choose)(?: me| us)?(?: about| of)?"
        rf" (?:the|a|an|one|some|any|your)?(?: one)? ?(?:special )?{_PLACE}s? (?:where|that|in which|at which"
        r"|to which) (?:i|you|we|people) (\w+)(.*)$",
        r"where do you \1\2",
    ),
    (
        rf"^(?:a |the |one |some )?{_PLACE}s? (?:where |that |in which )?(?:i|you|we) (\w+)(.*)$",
        r"where do you \1\2",
    ),
    (
        rf"\b(?:what|which) (?:is |are )(?:the |a |an |one |some |your )?(?:good |best )?{_PLACE}s? "
        r"(?:where|in which|at which) ",
        "where ",
    ),
    (rf"\b(?:in|at|on|to|from|inside|into|near) (?:what|which) {_PLACE}s?\b", "where"),
    (
        r"^(?:what|which) (?:part|side|end) of the (?:house|school|town|room) (?=do|does|is|are)",
        "where ",
    ),
    (
        r"\bwhere(?: \w+)? (?:do|does|did) (\w+) (?:go to|need to go to|have to go to|go) (?:in order )?to ",
        r"where can \1 ",
    ),
    (
        rf"\bwhere (?:can|could|would|should|do) {YOU} (?:go )?(?:in order )?to (?=\w+ )",
        "where can you ",
    ),
    (r"\bto which (\w+) (do|does|did) (\w+) (go|travel|walk)\b", r"where \2 \3 \4"),
    (r"\bwhich way\b|\bin (?:which|what) direction\b|\bto (?:which|what) side\b", "where"),
)
