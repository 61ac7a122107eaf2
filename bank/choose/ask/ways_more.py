"""Ways of asking, and the one wording for each: for a time, an amount, a feeling, a choice,"
" a liking.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order.
"""

from __future__ import annotations

from bank.choose.ask.ways import IS, WHAT

MORE_WAYS = (
    # wish
    (r"\bwould (you|we|i|they|people) (?:like|love) to be\b", r"do \1 want to be"),
    # time
    (
        rf"\b(?:at|on|in|during) {WHAT} (?:time of (?:the )?(?:day|year)|time|date|hour)s?\b",
        "when",
    ),
    (
        rf"\b(?:at|on|in|during) {WHAT} (day|month|season|year|part of the day|part of the"
        rf" year|week)s?\b",
        r"when \1",
    ),
    (r"\bwhat time (?!is it)", "when "),
    (rf"\b{WHAT} (?:day|date) is (?=your|my|his|her)", "when is "),
    (rf"\bwhat {IS} the time (?:when|that)\b", "when"),
    (r"\bwhen (?:is|was) the time (?:when|that)?\b", "when"),
    (r"\bwhat (?:is|was) (your|his|her|the \w+'s) bedtime\b", r"when do you go to bed"),
    (r"\bwhat (?:is|was) (your|his|her|the \w+'s) address\b", r"where is \1 home"),
    (
        r"\b(?:what|which) (month|day|season) (?:was|were) (.+?) born(?: in| on)?\b",
        r"what \1 is \2 birthday",
    ),
    (r"\bwhen(?: day| month)? (?:was|were) (.+?) born\b", r"when is \1 birthday"),
    (
        r"\b(leaf|leaves) (?:turn|become|go) (?:red|yellow|orange|brown)(?:,? (?:and|or)"
        r" (?:red|yellow|orange|brown))?\b",
        r"\1 change color",
    ),
    (
        r"\btell a time (?:you|i|we|my family and i|our class|my class|my family) went to\b",
        "a trip to",
    ),
    (r"\b(live|survive|breathe|be) out of\b", r"\1 without"),
    (r"\bwhen was the last time (?:that |when )?", "when last did "),
    (
        r"\b(?:when|after) (?:the )?school (?:day )?(?:is|gets?) (?:over|out|done|finished)\b|"
        r"\b(?:when|after) (?:the )?school (?:day )?(?:ends?|finishe?s|lets out)\b",
        "after school",
    ),
    (r"\b(?:first day of school|first school day)\b", "day when school starts"),
    (r"\bwhen it (?:is|gets) (dark|cold|hot|warm|wet)\b(?: outside| out)?", r"when weather \1"),
    (
        r"\b(?:in|on) (?:a |the )?(dark|cold|hot|warm|wet|rainy|snowy|sunny|windy) (?:weather"
        r"|days?)\b",
        r"when weather \1",
    ),
    # amount
    (rf"\b{WHAT} (?:{IS} the )?number of\b", "how many"),
    (rf"\b{WHAT} (?:{IS} the )?amount of\b", "how much"),
    (rf"\b{WHAT} {IS} the (?:price|cost) of\b(.*)", r"how much does\1 cost"),
    (r"\bwhat do you pay for\b(.*)", r"how much does\1 cost"),
    (
        r"\bhow much (?:money )?(?:do you (?:need|pay) (?:to buy|for)|is it for|will it cost"
        r" to buy)\b(.*)",
        r"how much does\1 cost",
    ),
    (rf"\b{WHAT} {IS} (your|my|his|her|their) age\b", r"how old \1"),
    (rf"\b{WHAT} {IS} the age of\b", "how old is"),
    (r"\b(?:at )?(?:what|which) age\b", "how old"),
    (r"\bhow many years old\b", "how old"),
    (rf"\b{WHAT} {IS} the distance (?:between|from|of|to)\b", "how far"),
    (
        rf"\b{WHAT} {IS} the (?:longest|greatest|farthest) distance (?:that )?(.+?) (can|could)\b",
        r"how far \2 \1",
    ),
    (
        rf"\b{WHAT} {IS} (?:the|your) (height|length|size|weight|speed|width|depth"
        rf"|temperature) of\b",
        r"how \1 is",
    ),
    (
        rf"\b{WHAT} {IS} (your|his|her|the \w+'s) (height|length|size|weight|speed)\b",
        r"how \2 is \1",
    ),
    (rf"\b{WHAT} size is\b", "how big is"),
    (r"\bhow (height)\b", "how tall"),
    (r"\bhow (length)\b", "how long"),
    (r"\bhow (size)\b", "how big"),
    (r"\bhow (weight)\b|\bhow much do(?:es)? (.+?) weigh\b", r"how heavy is \2"),
    (r"\bhow (speed)\b", "how fast"),
    (r"\bhow (temperature)\b", "how hot"),
    (
        r"\bhow many (?:minutes|hours|days|weeks|months|years) (?:of \w+ )?(do|does|did|is"
        r"|will|are)\b(?! in | there in )",
        r"how long \1",
    ),
    (r"\bhow much time\b", "how long"),
    (r"\bhow many times (?:a|each|every|per|in a|in one)\b", "how often a"),
    (r"\bhow many times\b", "how often"),
    (r"\bhow far (?:away )?", "how far "),
    (
        r"\bhow many people (?:are there |are |live )in (?:your (?:house|home|family)|the"
        r" family)\b",
        "how big is your family",
    ),
    # feeling, weather, looks
    (r"\bwhat (would|will) (?:your )?feelings? be\b", r"how \1 you feel"),
    (r"\bwhat is your favou?rite ((?:\w+ )?)activity\b", r"what do you like to do \1"),
    (rf"\bwhat (?:{IS}|kind of) (?:your )?(?:mood|feelings?)(?: like)?\b", "how do you feel"),
    (rf"\b{WHAT} (?:feeling|mood|emotion)s? (do|does|did) (.+?) have\b", r"how \1 \2 feel"),
    (
        r"\bwhat is the weather like\b|\bwhat is the weather\b|\bwhat kind of weather (?:is"
        r" it|do we have)\b",
        "how is the weather",
    ),
    (r"\bwhat (?:tells|shows) (?:you|us)(?: that| when| if)?\b", "how do you know"),
    (r"\bwhat are (?:the |some )?signs (?:that|of)\b", "how do you know"),
    (r"\bhow can (?:you|we|people) (?:tell|see|know)(?: that| when| if)?\b", "how do you know"),
    (r"\bhow do (?:you|we|people) (?:tell|see|know)(?: that| when| if)\b", "how do you know"),
    (r"\bwhat (?:do|does|did) (.+?) look like\b", r"tell \1"),
    (
        r"\bhow (?:do|does|did) (.+?) look\b(?! (?:after|for|at|up|out|forward|in|into|over|through))",
        r"tell \1",
    ),
    (r"\bhow (?:do|does) (.+?) sound\b", r"what sound does \1 make"),
    (
        rf"\bwhat {IS} the (color|colour|shape|sound|job|name|meaning|smell|taste) of\b",
        r"what \1 is",
    ),
    (r"\bwhat do(?:es)? (.+?) mean\b", r"what meaning is \1"),
    (r"\bwhat does it mean (?:when|if|that)\b", "what meaning is"),
    (
        r"\bwhat does ((?:a|an|the) (?!good|best|nice|kind|bad)\w+(?: \w+)?) do(?: at work|"
        r" for work| for a job| all day)?$",
        r"what job is \1",
    ),
    (r"\bwhat (?:do|does|did) (.+?) do for (?:work|a job|a living)\b", r"what job is \1"),
    (r"\bwhat (?:are|is) (?:your|the) plans? (?:for|on)\b", "what will you do"),
    (r"\bhow (?:would|do|can) you describe (.+)", r"tell \1"),
    (
        r"\bwhat (?:is|are) (?!it\b|that\b|.*\b(?:you|not|do|does|would|people"
        r"|they)\b)((?:your|the|a|an) .+?) like$",
        r"tell \1",
    ),
    (
        r"\bhow (?:do|does) (.+?) (?:show|let (?:you|us) know)(?: you| us)?(?: that)? (?:it"
        r"|he|she|they) (?:is|are|feels?)\b",
        r"how do you know \1 feels",
    ),
    (r"\bthe best (\w+) (?:of|in) (?!your life|the class)", r"mostliked \1 of "),
    (r"(?<!like )(?<!enjoy )(?<!love )\bleast (?!liked|like\b|favou?rite|of)(\w+)", r"not \1"),
    (
        r"\b(is|are|am) (?:(\w+(?: \w+)?) )?(?:going|about) to (?!the\b|a\b|an\b|your\b"
        r"|school\b|bed\b|sleep\b|town\b|church\b)(?=\w)",
        r"will \2 ",
    ),
    (r"\b(in|until|since|of|early|late|last|next|this|after|before) may\b", r"\1 maymonth"),
    # ability, habit, experience
    (r"\b(?:do|does) (\w+) know how to\b", r"can \1"),
    (rf"\b{IS} (.+?) able to\b", r"can \1"),
    (
        r"\b(?:have|has) (you|anyone|your \w+) (?:ever )?(?:been (?:on|in|to))\b",
        r"did \1 ever go to",
    ),
    (r"\b(?:have|has) (you|anyone|your \w+) ever\b", r"did \1 ever"),
    (r"\b(?:have|has) (you) (?=\w+(?:ed|en|n)\b)", r"did \1 ever "),
    # choice and preference
    (
        r"\bwould (you|your \w+|he|she|they) (?:rather|prefer(?: to)?|like better|sooner)\b",
        r"do \1 prefer",
    ),
    (
        r"\bwhich (\w+ )?(?:would|do|will) you (?:rather have|choose|pick|prefer|like better"
        r"|like more|like best)"
        r"(?=[^?]*\bor\b)",
        r"do you prefer \1",
    ),
    (r"\bdo you (?:like|enjoy) (.+?\bor\b.+?) (?:better|more|best)\b", r"do you prefer \1"),
    (r"^of all (?:the )?(.+?),? which (?:one )?", r"which \1 "),
    (r"^(?:out of|of|between) (.+?\b(?:and|or)\b.+?),? which (?:one )?", r"which one of \1 "),
    (
        rf"\b{WHAT} {IS} (?:your|the) favou?rite (?:thing|activity|way|things) to do\b",
        "what do you like to do",
    ),
    (rf"\b{WHAT} {IS} (your|my) favou?rite (?:thing|things) to\b", "what do you like to"),
    (rf"\b{WHAT} {IS} your least[- ]favou?rite\b", "what leastliked"),
    (r"\bleast[- ]favou?rite\b", "leastliked"),
    (r"\b(?:like|enjoy|love) (?:the )?least\b|\b(?:hate|dislike)s? (?:the )?most\b", "leastlike"),
    (r"\bfavou?rite\b", "mostliked"),
    (
        r"\b(?:like|enjoy|love|prefer)s?((?: \w+){0,3}?)(?: the)? (?:most|best)(?: of all)?\b",
        r"mostlike\1",
    ),
    (r"\bmostlike to\b", "mostlike"),
    (
        r"\b(?:like|enjoy|love)s? (?:more|better) than (?:any|all)(?: the)?(?: other)?s?(?:"
        r" \w+)?\b",
        "mostlike",
    ),
    (r"\b(?:do|does|is) (.+?) the best (part|thing) (?:of|about)\b", r"mostliked \2 \1"),
    (r"\bbest (part|thing)\b", r"mostliked \1"),
    (r"\bworst (part|thing)\b", r"leastliked \1"),
    (r"\b(like|love|enjoy|liked|loved)((?: \w+){0,4}) (?:a lot|very much|so much)\b", r"\1\2"),
    (r"\breally\b", ""),
    # days off
    (r"\bdays? off(?: from school| of school)?\b", "day with no school"),
    (r"\bstop(?:s|ped)? (\w+ing)(?: forever)?\b", r"never \1"),
    (r"\b(\w+) stop(?:s|ped)? falling(?: forever)?\b", r"never \1"),
)
