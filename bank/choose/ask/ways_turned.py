"""Asks told in another order, and the one order for each: two sentences, the question word last,
who does it named with "by", what comes before or after, what is bigger of two.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order,
before the ways of asking.
"""

from __future__ import annotations

_ASKS = r"(?:what|which|who|whose|where|when|why|how)"
_HELP = r"(?:do|does|did|can|could|should|would|will|must|is|are|was|were|am)"
_LONE = r"(?:a|an|the|your|my|our|one|this|that|some)"


_KIND = r"(day|month|season|number|letter|grade|meal|holiday|year|planet|color|class)"


TURNED = (
    # two sentences: what is told first, then the question
    (
        r"^count (?:up )?(?:all )?(?:of )?(?:the |your |a )?(\w+)'s (\w+)[.,;:!] ?(?:and )?"
        r"(?:what number do you (?:get|have|find|count)|how many (?:are there|do you (?:get|have"
        r"|find|see|count)|does it have|is that))$",
        r"how many \2 does a \1 have",
    ),
    (
        r"^count (?:up )?(?:all )?(?:of )?((?:the |your |my )?.+?)[.,;:!] ?(?:and )?(?:what number"
        r" do you (?:get|have|find|count)|how many (?:are there|do you (?:get|have|find|see|count)"
        r"|is that))$",
        r"how many \1 are there",
    ),
    (r"^count (?:up )?(?:all )?(?:of )?(?:the )?", "how many are "),
    (r"^how many are your (.+?) are there$", r"how many \1 do you have"),
    (r"^how many (?:the|of the|all the|all of the) ", "how many "),
    (r"^how many (?:your|my) (.+?) are there$", r"how many \1 do you have"),
    (
        r"^this (\w+) (.+?)[.;:!] ?(?:(?:can you )?(?:guess|tell|say|name) )?"
        r"(?:what|which|who)(?: \w+)? (?:is it|is this|is that|is he|is she|am i|it is)$",
        r"which \1 \2",
    ),
    (
        r"^(?:i|it|he|she|this) (.+?)[.;:!] ?(?:and )?(?:what|which) (?:(\w+) )?"
        r"(?:am i|is it|is this|is that|can it be|could it be)$",
        r"which \2 \1",
    ),
    (r"^(?:it|he|she) (.+?)[.;:!] ?who (?:am i|is it|is this|is that|is he|is she)$", r"who \1"),
    (
        rf"^(you (?:are|feel|have|see|want|need|hear|find|lose|get|fall|drop|spill|break|cut|wake"
        rf"|come|go|meet|finish) [^.?!:;]+)[.!;] ?(?={_ASKS}\b)",
        r"when \1, ",
    ),
    (
        rf"^(your [^.?!:;]+|someone [^.?!:;]+|a (?:friend|classmate|stranger) [^.?!:;]+|it (?:is|"
        rf"starts|begins)[^.?!:;]+)[.!;] ?(?={_ASKS}\b)",
        r"when \1, ",
    ),
    (
        rf"^(?:imagine|suppose|pretend|let us pretend|let us say|say|picture this|what if)(?: that)?"
        rf"[:,]? ((?:you|your|it|there|a|an|the|we|i|someone) [^.?!:;]+?)[.!;:,?] ?(?={_ASKS}\b)",
        r"if \1, ",
    ),
    (
        rf"^(?:think|look|look back|think back)(?: about| of| at| around| on| to)? [^.?!:;]*?"
        rf"((?:your|the|a|our) [^.?!:;,]+)[.!;:,] ?(?={_ASKS} )(?=.*\b(?:it|there|him|her|they"
        rf"|them|that)\b)",
        r"about \1, ",
    ),
    (
        r"[.?!;] (?:please )?(?:now )?(?:tell|explain|say|write|describe|draw|share|name)(?: me| us)?"
        r"(?: about| something about| more about)? (?:that person|that animal|that place|that day"
        r"|that time|it|them|him|her|this person|why|how|how you know|your answer|your reason"
        r"|what happened|your choice)$",
        "",
    ),
    (r"[.?!;,] (?:and )?(?:why|why or why not|why not|how so|how do you know|how come)$", ""),
    # options first: by yourself or with a friend: how do you like to work
    (
        r"^([^:?.]+? or [^:?.]+?)[:,?.] ?how (?:do|would|does) (you) (?:like|prefer|want|like best|"
        r"like better) to (.+?)(?: best| better| most| more)?$",
        r"do \2 prefer to \3 \1",
    ),
    (
        r"^(?!of |between |out of )((?:a |an |the )?[\w ]+?,? (?:or|and) (?:a |an |the )?[\w ]+?)[:?.,] ?(?:which|what|who)"
        r"(?: one| of them| of the two| of these| animal| thing| number)? (is|are|can|has|goes|weighs"
        r"|weighs|lives|runs|moves|costs|comes|was|would|do) (.+)$",
        r"which \2 \3, \1",
    ),
    (
        r"^(?:of|between|out of) (?:the two, )?((?:a |an |the )?[\w ]+?) (?:and|or) ((?:a |an |the )?"
        r"[\w ]+?)[,:]? (?:which|what|who)(?: one| of them)? (is|are|can|has|goes|weighs|lives|runs"
        r"|moves|costs|was) (.+)$",
        r"which \3 \4, \1 or \2",
    ),
    (
        r"^(is|are|was|were) ((?:a |an |the |your )?\w+) or ((?:a |an |the |your )?\w+)(?: the)?"
        r" (\w+er)(?: one| animal| number)?$",
        r"which \1 \4, \2 or \3",
    ),
    (
        r"^(?:which|what|who) (?:one )?(?:of the two |of these |of them )?(is|are|was|were) (?:the )?"
        r"(\w+er|more \w+)(?: one| animal| number| of the two)?[,:.?]? (?:between )?((?:a |an |the )?"
        r"\w+) (?:or|and) ((?:a |an |the )?\w+)$",
        r"which \1 \2, \3 or \4",
    ),
    # what comes before and after
    (
        r"^if tomorrow is (\w+),? (?:then )?(?:what|which)(?: day)? is (?:it )?today(?: it)?$",
        r"what day comes right before \1",
    ),
    (
        r"^if (?:today|it) is (\w+)(?: today)?,? (?:then )?(?:what|which)(?: day)? was (?:it )?"
        r"yesterday$",
        r"what day comes right before \1",
    ),
    (
        r"^if (?:today|it) is (\w+)(?: today)?,? (?:then )?(?:what|which)(?: day)? (?:is|will) (?:it )?"
        r"(?:be )?(?:tomorrow)(?: be)?$",
        r"what day comes right after \1",
    ),
    (
        r"^if yesterday was (\w+),? (?:then )?(?:what|which)(?: day)? is (?:it )?today(?: it)?$",
        r"what day comes right after \1",
    ),
    (
        rf"^(?:which|what) is the (?:next )?{_KIND} (?:right |just )?(after|before) (.+)$",
        r"what \1 comes right \2 \3",
    ),
    # the question word last or in the middle: a nickel is worth how many cents
    (
        rf"^({_LONE} [\w ]+?) (?:is worth|equals|is equal to|is the same as|is made of|makes|has"
        rf"|contains) (how many [\w ]+)$",
        r"\2 are in \1",
    ),
    (
        rf"^((?:{_LONE} )?\w+(?: \w+)?) (?:rolls?|rides?|runs?|goes|stands?|walks?|moves?|sits?) on"
        rf" (how many [\w ]+)$",
        r"\2 are on \1",
    ),
    (
        rf"^((?:{_LONE} )?[\w ]+?) (can|could|will|would|should|must) (\w+(?: \w+)*?) ((?:which|what|how"
        rf" many|how much)(?: \w+)*)$",
        r"\4 \2 \1 \3",
    ),
    (
        rf"^((?:{_LONE} |[a-z]+ )?\w+) (?:is|are) (?:found |kept |located |sold )?where$",
        r"where is \1",
    ),
    # it is X who …: who is it that
    (rf"\b({_ASKS}(?: \w+)?) (?:is|was) it that (?=\w)", r"\1 "),
    (rf"^({_ASKS}) exactly\b", r"\1"),
    (rf"^(?:and|but|well|hey|class)[, ]+(?={_ASKS}\b|{_HELP} )", ""),
    (rf"^(?:in your (?:own )?words|in your opinion|for you|to you),? (?={_ASKS}|{_HELP} )", ""),
    (r",? (?:in your (?:own )?words|in your opinion|in a few words|step by step|in order)$", ""),
)
