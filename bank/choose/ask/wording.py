"""One wording for one way of asking: rewrites that run before the parse.

Each rule is a pattern over the lower-case text and what it becomes, tried in order. They bring the
many ways to ask for a reason, a person, a place, a number … to the one that the frame reads.
"""

from __future__ import annotations

import re

_AUX = r"(?:do|does|did|can|could|should|would|will|must|may|might|is|are|was|were|has|have)"
_YOU = r"(?:you|we|people|i|they|someone|a person|children|kids|one|anyone|everyone|some people)"
_IS = r"(?:is|are|was|were)"
_WHAT = r"(?:what|which)"

_SHORT_FORMS = (
    (r"\bwon't\b", "will not"),
    (r"\bcan't\b|\bcannot\b", "can not"),
    (r"\bshan't\b", "shall not"),
    (r"n't\b", " not"),
    (r"\b(what|who|where|when|why|how|that|there|it|he|she|here)'s\b", r"\1 is"),
    (r"\blet's\b", "let us"),
    (r"\bi'm\b", "i am"),
    (r"'re\b", " are"),
    (r"'ll\b", " will"),
    (r"'ve\b", " have"),
    (r"'d\b", " would"),
    (r"\$\s?(\d+)", r"\1 dollars"),
    (r"\bt\.?v\.?(?=\W|$)", "tv"),
    (r"\bwanna\b", "want to"),
    (r"\bgrown-up(s?)\b", r"grownup\1"),
    (r"\bo'clock\b", "oclock"),
)

_OPENINGS = (
    (r"^(?:please|now|so|ok|okay)[, ]+|, please$", ""),
    (
        r"^(?:can|could|will|would) you (?:please )?(?=(?:tell|name|describe|explain|list|think|say))",
        "",
    ),
    (
        r"^(?:do you know|i wonder|guess|tell me|tell us|say|explain|tell|think about) "
        r"(?=(?:what|who|where|when|why|how|which)\b)(?!how to)",
        "",
    ),
    (r"^(?:what do you think|do you think)(?: is)? (?=\w)", ""),
    (r"\bdo you think\b ?", ""),
    (r"^(?:tell|explain|show|describe|say|write)(?: me| us)? how to\b", "how do you"),
    (
        r"^(?:tell|explain|describe|give|list|write|name|say)(?: me| us)?(?: about)? the steps "
        r"(?:to|for|of|in|you take to)\b",
        "how do you",
    ),
    (r"^(?:what|which) (?:are|is) the steps? (?:to|for|of|in|you take to)\b", "how do you"),
    (r"^(?:what|which) steps do you (?:take|follow|do|use) (?:to|for|when you)\b", "how do you"),
    (
        r"^(?:tell|write|talk|think)(?: me| us)?(?: a story| something| a little| a bit)? about "
        r"(?:a|the|one|some)? ?(?:time|day|moment) (?:when |that |in which |on which )?"
        r"(?=(?:you|i|we|some|your|my)\b)",
        "tell a time ",
    ),
    (
        r"^(?:describe|remember|share) (?:a|the|one) (?:time|day|moment) (?:when |that )?"
        r"(?=(?:you|i|we)\b)",
        "tell a time ",
    ),
    (r"^(?:a|the|one) (?:time|day|moment) (?:when |that )?(?=(?:you|i|we)\b)", "tell a time "),
    (r"^(?:when|once) (?=(?:i|we|my|our)\b)", "tell a time "),
    (
        r"^(?:please )?(?:tell|write|talk|share)(?: me| us)?(?: a story| something| a little| a bit"
        r"| some things| all)? about\b",
        "tell",
    ),
    (r"^(?:describe|draw)\b", "tell"),
    (
        r"^(?:name|list|give|think of|tell|write|say)(?: me| us)? (?:an example of|examples of)",
        "what is",
    ),
    (r"^name (?=your|the)", "what name is "),
    (r"^(?:name|list|give|think of)\b", "what is"),
    (r"^what (?:are|is) (?:some|any) ", "what is "),
    (
        r"^what (?:is|are) (?:something|a thing|one thing|some things|things|the things?) "
        r"(?:that |which )?(?=(?:you|we|people|your|i)\b)",
        "what thing ",
    ),
    (r"^is there (?:something|anything|a thing) (?:that )?(?=(?:you|we)\b)", "what thing "),
    (r"^is there (?:someone|anyone|somebody|anybody|a person) (?:that |who |whom )?", "who "),
    (r"^(?:the|a|some) (?:thing|things) (?:that )?", "something "),
)

_FRAMES = (
    # reason
    (rf"\b(?:for )?{_WHAT} reasons? (?={_AUX})", "why "),
    (
        rf"\b{_WHAT} {_IS} (?:the|a|your|some|one|two)? ?(?:main |good )?reasons?(?: for| that| why| of| to|(?= \w))",
        "why ",
    ),
    (r"\bhow come\b", "why"),
    (r"\bwhat makes it (\w+) to\b", r"why is it \1 to"),
    (rf"\b{_WHAT} {_IS} the (?:point|purpose|use|good) of\b", "why use"),
    (rf"\bwhat do(?:es)? {_YOU} use (.+?) for$", r"why use \1"),
    (rf"\bwhat {_IS} (.+?) (?:used )?for$", r"why use \1"),
    (rf"\bwhat do(?:es)? {_YOU} need (.+?) for$", r"why need \1"),
    (r"\bwhat causes?\b", "why"),
    (
        r"\bwhy (?:is|are) (?:it )?(?:dangerous|bad|unsafe|not safe|wrong|not good|not a good idea|a bad idea) "
        r"(?:for you |for us )?to\b",
        "why should you not",
    ),
    # manner
    (
        r"\bwhat (do|does|should|can|did) (.+?) do (?:just |right )?before (?:you |they |he |she )?(?:go(?:es)?|going) to (?:bed|sleep)\b",
        r"how \1 \2 get ready for bed",
    ),
    (r"\bkeep from getting cold\b", "stay warm"),
    (r"\bhow does ((?:a|an|the) \w+(?: \w+)?) help (?:people|others)$", r"what job is \1"),
    (r"\bso (?:that )?(?:you|we|they) (?:do|will|can) not\b|\bin order not to\b", "to not"),
    (r"\b(?:keep|stop)(?: yourself| yourselves)? from (?:getting |being )?", "not get "),
    (r"\bavoid (?:getting |being )?", "not get "),
    (r"\bnot get(?:ting)? (\w+ing)\b", r"not \1"),
    (rf"\b(?:in|by) {_WHAT} (?:ways?|manner)\b", "how"),
    (
        rf"\b{_WHAT} {_IS} (?:a|the|your|some|one|two|ways)? ?(?:(\w+) )?ways? (?:to|of|for|that {_YOU})\b",
        r"how do you \1",
    ),
    (rf"\b{_WHAT} ways? (do|does|can|could|should|would|did)\b", r"how \1"),
    (
        rf"\bwhat (do|does|can|could|should|would|did|will) ({_YOU}) do (?:to|so that you can|in order to)\b",
        r"how \1 \2",
    ),
    (r"\bwhat (?:can )?helps? (?:you|us|people|me) (?:to )?(?=[a-z])", "how do you "),
    (
        r"\bhow (do|does|can|could|should|would|did|will) (.+?) (?:act|behave|react)\b",
        r"what \1 \2 do",
    ),
    (
        rf"\bhow (do|does|did|will|would|can|could) ({_YOU}|.+?) (?:like to |want to |enjoy )?spend(?:ing)?"
        r" (?:your |their |our |the |his |her )?(?:free )?time\b",
        r"what \1 \2 do",
    ),
    (
        rf"\bhow (do|does|did|will|would|can|could) ({_YOU}|.+?) (?:like to |want to )?spend"
        r" (?=(?:the|your|their|a|saturday|sunday|monday|friday|winter|summer|spring|fall)\b)(?!.*(?:money|dollar))",
        r"what \1 \2 do on ",
    ),
    (
        r"\b(?:mak|fix|prepar|cook)(e|es|s|ing)? ((?:your |the |a |some )?(?:breakfast|lunch|dinner|supper|food|meals?))\b",
        r"cook \2",
    ),
    (r"\bmade ((?:your |the |a )?(?:breakfast|lunch|dinner|supper|food|meals?))\b", r"cooked \1"),
    (
        r"\bhow (?:is|are) (.+?) (?:not like|different from|unlike|not the same as) (.+)",
        r"what difference is between \1 and \2",
    ),
    (
        r"\bhow (?:is|are) (.+? and .+?) (?:not alike|different|not the same)$",
        r"what difference is between \1",
    ),
    (
        r"\bhow (?:is|are) (.+?) (?:like|the same as|similar to|alike) (.+)",
        r"how are \1 and \2 alike",
    ),
    (r"\bwhat (?:do|does) (.+? and .+?) have in common\b", r"how are \1 alike"),
    (
        r"^(?:from who|from whom|who) (?:did|do|does) you (?:get|receive) (.+?)(?: from)?$",
        r"who gave you \1",
    ),
    (
        r"^(?:from who|from whom|who) (?:did|do|does) you learn (.+?)(?: from)?$",
        r"who taught you \1",
    ),
    (
        r"^(?:from who|from whom|who) (?:did|do|does) you borrow (.+?)(?: from)?$",
        r"who lent you \1",
    ),
    (r"\bwhat (?:is|are) (.+?) called$", r"what name is \1"),
    # place
    (
        rf"\b{_WHAT} {_IS} (?:the name of )?(?:a|the|your|one)? ?(?:good )?(place|town|city|spot|room|store|building)s? "
        r"(?:where|in which|for|that|to)\b",
        r"where \1",
    ),
    (
        rf"\b(?:in|at|on|to|from|inside) {_WHAT} (place|spot|town|city|room|store|shop|building|country|part|kind of place)s?\b",
        r"where \1",
    ),
    (rf"^{_WHAT} (place|spot|room|store|shop|building|town|city)s? (?={_AUX})", r"where \1 "),
    (
        r"^is there (?:a|any) (place|store|spot)s? (?:near you |in your town )?(?:where|to|for|that)\b",
        r"where \1",
    ),
    # person
    (rf"\b{_WHAT} (?:person|people|grownup|adult|one of your friends)\b", "who"),
    (rf"\bwho {_IS} the (?:person|people|one|man|woman) (?:who|that)\b", "who"),
    (
        rf"\bwho {_IS} (?:someone|somebody|a person|one person|a friend|a grownup)(?: who| that| whom)? (?=\w)",
        "who ",
    ),
    (
        rf"\b{_WHAT} (?:family member|member of your family|relative|person in your family)\b",
        "who family",
    ),
    (r"\bwhom\b", "who"),
    (r"\bwhat (?:do|does|did) (?:you|people) call (?=your|the|a)", "what name is "),
    (rf"\b{_WHAT} {_IS} the names? (?:of|for)\b", "what name is"),
    (rf"\b{_WHAT} {_IS} (your|my|his|her|their|the) (.+?)'s? names?\b", r"what name is \1 \2"),
    (r"\bhow do you like to be called\b", "what name is you"),
    # time
    (
        rf"\b(?:at|on|in|during) {_WHAT} (?:time of (?:the )?(?:day|year)|time|date|hour)s?\b",
        "when",
    ),
    (
        rf"\b(?:at|on|in|during) {_WHAT} (day|month|season|year|part of the day|part of the year|week)s?\b",
        r"when \1",
    ),
    (r"\bwhat time (?!is it)", "when "),
    (rf"\b{_WHAT} (?:day|date) is (?=your|my|his|her)", "when is "),
    (rf"\bwhat {_IS} the time (?:when|that)\b", "when"),
    (r"\bwhen (?:is|was) the time (?:when|that)?\b", "when"),
    (r"\bwhat (?:is|was) (your|his|her|the \w+'s) bedtime\b", r"when do you go to bed"),
    (r"\bwhat (?:is|was) (your|his|her|the \w+'s) address\b", r"where is \1 home"),
    (
        r"\b(?:what|which) (month|day|season) (?:was|were) (.+?) born(?: in| on)?\b",
        r"what \1 is \2 birthday",
    ),
    (r"\bwhen(?: day| month)? (?:was|were) (.+?) born\b", r"when is \1 birthday"),
    (
        r"\b(leaf|leaves) (?:turn|become|go) (?:red|yellow|orange|brown)(?:,? (?:and|or) (?:red|yellow|orange|brown))?\b",
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
        r"\b(?:in|on) (?:a |the )?(dark|cold|hot|warm|wet|rainy|snowy|sunny|windy) (?:weather|days?)\b",
        r"when weather \1",
    ),
    # amount
    (rf"\b{_WHAT} (?:{_IS} the )?number of\b", "how many"),
    (rf"\b{_WHAT} (?:{_IS} the )?amount of\b", "how much"),
    (rf"\b{_WHAT} {_IS} the (?:price|cost) of\b(.*)", r"how much does\1 cost"),
    (r"\bwhat do you pay for\b(.*)", r"how much does\1 cost"),
    (
        r"\bhow much (?:money )?(?:do you (?:need|pay) (?:to buy|for)|is it for|will it cost to buy)\b(.*)",
        r"how much does\1 cost",
    ),
    (rf"\b{_WHAT} {_IS} (your|my|his|her|their) age\b", r"how old \1"),
    (rf"\b{_WHAT} {_IS} the age of\b", "how old is"),
    (r"\b(?:at )?(?:what|which) age\b", "how old"),
    (r"\bhow many years old\b", "how old"),
    (rf"\b{_WHAT} {_IS} the distance (?:between|from|of|to)\b", "how far"),
    (
        rf"\b{_WHAT} {_IS} (?:the|your) (height|length|size|weight|speed|width|depth|temperature) of\b",
        r"how \1 is",
    ),
    (
        rf"\b{_WHAT} {_IS} (your|his|her|the \w+'s) (height|length|size|weight|speed)\b",
        r"how \2 is \1",
    ),
    (rf"\b{_WHAT} size is\b", "how big is"),
    (r"\bhow (height)\b", "how tall"),
    (r"\bhow (length)\b", "how long"),
    (r"\bhow (size)\b", "how big"),
    (r"\bhow (weight)\b|\bhow much do(?:es)? (.+?) weigh\b", r"how heavy is \2"),
    (r"\bhow (speed)\b", "how fast"),
    (r"\bhow (temperature)\b", "how hot"),
    (
        r"\bhow many (?:minutes|hours|days|weeks|months|years) (?:of \w+ )?(do|does|did|is|will|are)\b(?! in | there in )",
        r"how long \1",
    ),
    (r"\bhow much time\b", "how long"),
    (r"\bhow many times (?:a|each|every|per|in a|in one)\b", "how often a"),
    (r"\bhow many times\b", "how often"),
    (r"\bhow far (?:away )?", "how far "),
    (
        r"\bhow many people (?:are there |are |live )in (?:your (?:house|home|family)|the family)\b",
        "how big is your family",
    ),
    # feeling, weather, looks
    (rf"\bwhat (?:{_IS}|kind of) (?:your )?(?:mood|feelings?)(?: like)?\b", "how do you feel"),
    (rf"\b{_WHAT} (?:feeling|mood|emotion)s? (do|does|did) (.+?) have\b", r"how \1 \2 feel"),
    (
        r"\bwhat is the weather like\b|\bwhat is the weather\b|\bwhat kind of weather (?:is it|do we have)\b",
        "how is the weather",
    ),
    (r"\bwhat (?:tells|shows) (?:you|us)(?: that| when| if)?\b", "how do you know"),
    (r"\bwhat are (?:the |some )?signs (?:that|of)\b", "how do you know"),
    (r"\bhow can (?:you|we|people) (?:tell|see|know)(?: that| when| if)?\b", "how do you know"),
    (r"\bhow do (?:you|we|people) (?:tell|see|know)(?: that| when| if)\b", "how do you know"),
    (r"\bwhat (?:do|does|did) (.+?) look like\b", r"tell \1"),
    (r"\bhow (?:do|does|did) (.+?) look\b", r"tell \1"),
    (r"\bhow (?:do|does) (.+?) sound\b", r"what sound does \1 make"),
    (
        rf"\bwhat {_IS} the (color|colour|shape|sound|job|name|meaning|smell|taste) of\b",
        r"what \1 is",
    ),
    (r"\bwhat do(?:es)? (.+?) mean\b", r"what meaning is \1"),
    (r"\bwhat does it mean (?:when|if|that)\b", "what meaning is"),
    (
        r"\bwhat does ((?:a|an|the) (?!good|best|nice|kind|bad)\w+(?: \w+)?) do(?: at work| for work| for a job| all day)?$",
        r"what job is \1",
    ),
    (r"\bwhat (?:do|does|did) (.+?) do for (?:work|a job|a living)\b", r"what job is \1"),
    (r"\bwhat (?:are|is) (?:your|the) plans? (?:for|on)\b", "what will you do"),
    (r"\bhow (?:would|do|can) you describe (.+)", r"tell \1"),
    (
        r"\bwhat (?:is|are) (?!it\b|that\b|.*\b(?:you|not|do|does|would|people|they)\b)((?:your|the|a|an) .+?) like$",
        r"tell \1",
    ),
    (
        r"\bhow (?:do|does) (.+?) (?:show|let (?:you|us) know)(?: you| us)?(?: that)? (?:it|he|she|they) (?:is|are|feels?)\b",
        r"how do you know \1 feels",
    ),
    (r"\bthe best (\w+) (?:of|in) (?!your life|the class)", r"mostliked \1 of "),
    (r"(?<!like )(?<!enjoy )(?<!love )\bleast (?!liked|like\b|favou?rite|of)(\w+)", r"not \1"),
    (
        r"\b(is|are|am) (?:(\w+(?: \w+)?) )?(?:going|about) to (?!the\b|a\b|an\b|your\b|school\b|bed\b|sleep\b|town\b|church\b)(?=\w)",
        r"will \2 ",
    ),
    (r"\b(in|until|since|of|early|late|last|next|this|after|before) may\b", r"\1 maymonth"),
    # ability, habit, experience
    (r"\b(?:do|does) (\w+) know how to\b", r"can \1"),
    (rf"\b{_IS} (.+?) able to\b", r"can \1"),
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
        r"\bwhich (\w+ )?(?:would|do|will) you (?:rather have|choose|pick|prefer|like better|like more|like best)"
        r"(?=[^?]*\bor\b)",
        r"do you prefer \1",
    ),
    (r"\bdo you (?:like|enjoy) (.+?\bor\b.+?) (?:better|more|best)\b", r"do you prefer \1"),
    (r"^of all (?:the )?(.+?),? which (?:one )?", r"which \1 "),
    (r"^(?:out of|of|between) (.+?\b(?:and|or)\b.+?),? which (?:one )?", r"which one of \1 "),
    (
        rf"\b{_WHAT} {_IS} (?:your|the) favou?rite (?:thing|activity|way|things) to do\b",
        "what do you like to do",
    ),
    (rf"\b{_WHAT} {_IS} (your|my) favou?rite (?:thing|things) to\b", "what do you like to"),
    (rf"\b{_WHAT} {_IS} your least[- ]favou?rite\b", "what leastliked"),
    (r"\bleast[- ]favou?rite\b", "leastliked"),
    (r"\b(?:like|enjoy|love) (?:the )?least\b|\b(?:hate|dislike)s? (?:the )?most\b", "leastlike"),
    (r"\bfavou?rite\b", "mostliked"),
    (
        r"\b(?:like|enjoy|love|prefer)s?((?: \w+){0,3}?)(?: the)? (?:most|best)(?: of all)?\b",
        r"mostlike\1",
    ),
    (r"\bmostlike to\b", "mostlike"),
    (
        r"\b(?:like|enjoy|love)s? (?:more|better) than (?:any|all)(?: the)?(?: other)?s?(?: \w+)?\b",
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

_SPACES = re.compile(r"\s+")


def _compiled(rules: tuple[tuple[str, str], ...]) -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple((re.compile(pattern), new) for pattern, new in rules)


_compiled_short_forms = _compiled(_SHORT_FORMS)
_RULES = _compiled(_SHORT_FORMS + _OPENINGS + _FRAMES)


def said_words(text: str) -> list[str]:
    """The words as they were said, in lower case, short forms written out."""
    plain = text.replace("\u2019", "'").lower()
    for pattern, new in _compiled_short_forms:
        plain = pattern.sub(new, plain)
    return re.findall(r"[a-z0-9']+", plain)


def one_wording(text: str) -> str:
    """`text` in lower case, without its end mark, in the one wording of its way of asking.

    >>> one_wording("For what reason do birds go south?")
    'why do birds go south'
    >>> one_wording("What number of legs are on a spider?")
    'how many legs are on a spider'
    """
    return split_liking(text)[0]


def split_liking(text: str) -> tuple[str, str]:
    """The one wording of `text`, and whether it asks for what is liked "most", "least" or neither.

    >>> split_liking("Which game do you like most at the fair?")
    ('which game do you like at the fair', 'most')
    """
    plain = text.replace("\u2019", "'").replace("\u2018", "'").strip().lower()
    plain = _SPACES.sub(" ", plain).rstrip(".?! ")
    for pattern, new in _RULES:
        plain = _SPACES.sub(" ", pattern.sub(new, plain)).strip()
    plain = re.sub(r"\b(?:i|me|we|us)\b", "you", plain)
    plain = re.sub(r"\b(?:my|our|mine|ours)\b", "your", plain)
    plain = plain.replace("you am", "you are")
    liking = "least" if "leastlike" in plain else "most" if "mostlike" in plain else ""
    plain = re.sub(r"\b(?:most|least)liked\b", "favorite", plain)
    return re.sub(r"\b(?:most|least)like\b", "like", plain), liking
