"""Ways of asking for a number, and the one wording for each: sums, counts, sizes, age, price.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order.
"""

from __future__ import annotations

from bank.choose.ask.ways import IS, WHAT, YOU

_TEEN = (
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
    "sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety "
    "hundred"
)
_NUM = (
    r"((?:a |one )?(?:"
    + "|".join(_TEEN.split())
    + r"|\d+)(?:[- ](?:"
    + "|".join(_TEEN.split()[:9])
    + r"))?)"
)
_THING = r"(?:(?: more| of them| of these)?(?: (?!and\b|plus\b|from\b|by\b|times\b)[a-z]+)?)"
_RESULT = (
    rf"(?:{WHAT}(?: number| answer| amount| total)?|how many|how much)(?: \w+)?? "
    r"(?:do (?:you|we|they) (?:have|get|end up with|make|see)|will (?:you|we|there) (?:have|get|be)"
    r"|would you (?:have|get)|are there|is that|are left|is left|is it|do you have left|remain"
    r"|remains|are still there|is the (?:answer|sum|total|result)|does each(?: \w+)? get|do they "
    r"each get|do each get|is each(?: \w+)?|are in each(?: \w+)?)"
    r"(?: now| in all| altogether| all together| in total| left| left over)?"
)
_IF = r"(?:when|if|once|after) (?:you|we|two \w+|both|they|\w+ \w+|someone)? ?"

SUMS = (
    (
        rf"^(?:{WHAT} (?:number |answer )?(?:is|do (?:you|we) get (?:for|from|with))|how (?:much|many)"
        rf" (?:is|are|makes?|does it make)|find|add|add up|{WHAT} {IS} the (?:sum|total) of|find the "
        rf"(?:sum|total) of|what (?:do|does)) (?:the (?:sum|total) of )?{_NUM}{_THING} (?:plus|and"
        rf"|added to|\+) {_NUM}{_THING}(?: together| make| add up to| equal| altogether| in all)?$",
        r"what is \1 plus \2",
    ),
    (
        rf"^{_RESULT} {_IF}(?:add|adds|put|join|combine|count) {_NUM}{_THING} (?:and|plus|to|with"
        rf"|more to) {_NUM}{_THING}(?: together)?$",
        r"what is \1 plus \2",
    ),
    (
        rf"^{_IF}(?:add|adds|put|join|combine|count) {_NUM}{_THING} (?:and|plus|to|with) "
        rf"{_NUM}{_THING}(?: together)?[,.] {_RESULT}$",
        r"what is \1 plus \2",
    ),
    (
        rf"^{_IF}(?:have|has|had|see|start with) {_NUM}{_THING} (?:and|, then|and then|,) (?:you |we )?"
        rf"(?:get|find|buy|pick|add|gets|finds|receive) {_NUM}{_THING}[,.] {_RESULT}$",
        r"what is \1 plus \2",
    ),
    (
        rf"^(?:{WHAT} (?:number |answer )?(?:is|do you get for)|how (?:much|many) (?:is|are)|find|solve"
        rf") {_NUM}{_THING} (?:minus|take away|less|subtract|take|-) {_NUM}{_THING}$",
        r"what is \1 minus \2",
    ),
    (
        rf"^(?:{WHAT} {IS}|find|tell|say) the difference (?:between|of) {_NUM} and {_NUM}$",
        r"what is \1 minus \2",
    ),
    (
        rf"^{_RESULT} {_IF}(?:take|takes|subtract|remove|give|lose|eat) {_NUM}{_THING} (?:away )?from"
        rf" {_NUM}{_THING}$",
        r"what is \2 minus \1",
    ),
    (
        rf"^{_RESULT} {_IF}(?:take|takes|subtract|remove) (?:away )?{_NUM}{_THING} (?:away )?from"
        rf" {_NUM}{_THING}$",
        r"what is \2 minus \1",
    ),
    (
        rf"^(?:{_IF})?(?:take|subtract|remove) {_NUM}{_THING} (?:away )?from {_NUM}{_THING}[,.] "
        rf"{_RESULT}$",
        r"what is \2 minus \1",
    ),
    (
        rf"^{_IF}(?:have|has|had|start with) {_NUM}{_THING} (?:and|, then|and then|, but|but) (?:you |we"
        rf" )?(?:lose|eat|give away|take away|give|spend|use|sell|drop) {_NUM}{_THING}(?: away)?[,.] "
        rf"{_RESULT}$",
        r"what is \1 minus \2",
    ),
    (
        rf"^(?:{WHAT} (?:number )?(?:is|do you get for)|how (?:much|many) (?:is|are)|find) {_NUM} "
        rf"(?:times|multiplied by|groups of|sets of|rows of|bags of) {_NUM}{_THING}$",
        r"what is \1 times \2",
    ),
    (
        rf"^{_RESULT} (?:in|{_IF}(?:have|make|add up|count)) {_NUM} (?:groups|sets|rows|bags) of "
        rf"{_NUM}{_THING}$",
        r"what is \1 times \2",
    ),
    (
        rf"^{_NUM} (?:groups|sets|rows|bags) of {_NUM}{_THING} (?:make|makes|is|are|equal|have) "
        r"(?:how many|what number|how much)(?: \w+)?(?: in all)?$",
        r"what is \1 times \2",
    ),
    (
        rf"^(?:{WHAT} (?:number |amount )?(?:is|do you get for)|how (?:much|many) (?:is|are)|find|{WHAT}"
        rf" {IS}) (?:a |one )?half (?:of )?{_NUM}{_THING}$",
        r"what is half of \1",
    ),
    (
        rf"^{_IF}(?:share|shares|split|splits|divide|cut)s? {_NUM}{_THING} (?:equally|evenly|fairly|in "
        rf"half|(?:in|into|between|among) (?:two|2)(?: \w+){{0,2}})+(?: (?:between|among) (?:two|2) "
        rf"\w+)?[,.]? (?:how|what)\b.*$",
        r"what is half of \1",
    ),
    (
        rf"^(?:how|what)\b.*? {_IF}(?:share|shares|split|splits|divide|cut)s? {_NUM}{_THING} (?:equally|"
        rf"evenly|fairly|in half|(?:in|into|between|among) (?:two|2)(?: \w+){{0,2}})+(?: (?:between|"
        rf"among) (?:two|2) \w+)?$",
        r"what is half of \1",
    ),
    (rf"^{WHAT} is {_NUM} divided by (?:two|2)$", r"what is half of \1"),
    (rf"^(?:{WHAT} {IS}|find) (?:the )?double (?:of )?{_NUM}$", r"what is 2 times \1"),
    (rf"^{WHAT} {IS} twice {_NUM}$", r"what is 2 times \1"),
)

NUMBERS = (
    # how old, and the day of birth
    (
        r"\bhow (?:many|much) (?:years|time) (?:have|has) (.+?) (?:lived|been alive|been living|been"
        r" in the world)(?: so far| for| on earth)?$",
        r"how old is \1",
    ),
    (
        r"\bhow long (?:have|has) (.+?) (?:lived|been alive)(?: so far| on earth)?$",
        r"how old is \1",
    ),
    (
        r"\bhow many (?:birthdays) (?:have|has|did) (.+?) (?:had|celebrated|have)(?: so far)?$",
        r"how old is \1",
    ),
    (
        r"\bhow many candles (?:were|are|go|will be|belong|do you put) on (your|his|her|the \w+'s)"
        r" (?:last |next )?(?:birthday )?cake(?: this year)?$",
        r"how old \1",
    ),
    (rf"\b{WHAT} age (is|are|was|were|will|do|does|did|can|must|should) ", r"how old \1 "),
    (rf"\b(?:at|by) {WHAT} age\b", "how old"),
    (rf"\b{WHAT} {IS} (the \w+|\w+)'s age\b", r"how old is \1"),
    (r"\bhow old is you\b", "how old are you"),
    (r"\bhow old (your|my) ?$", "how old are you"),
    (r"\bhow many years old\b", "how old"),
    (
        rf"\b{WHAT} {IS} (your|his|her|their|the \w+'s|\w+'s|your \w+'s) (?:date of birth|birth ?date"
        r"|day of birth|birthday|birth day)\b",
        r"when is \1 birthday",
    ),
    (
        r"\b(?:when|(?:on )?(?:what|which) (?:date|day)) (?:do|does|will|did) you (?:turn|become|get|be)"
        r" (?:a year|one year|another year) older$",
        "when is your birthday",
    ),
    (
        r"\b(?:when|(?:on )?(?:what|which) (?:date|day)) (?:do|does) you (?:have|celebrate)(?: your)?"
        r" birthday\b",
        "when is your birthday",
    ),
    (
        r"\b(?:on )?(?:what|which) (?:date|day)(?: of the year)? (?:is|does) (your|his|her|\w+'s)"
        r" birthday(?: fall| come)?(?: on)?\b",
        r"when is \1 birthday",
    ),
    (
        r"\b(?:in |during )?(?:what|which) month (?:is|does|do) (?:you have |you celebrate )?"
        r"(your|his|her|\w+'s) birthday(?: fall| come)?(?: in| on)?\b",
        r"what month is \1 birthday",
    ),
    (
        r"\b(?:in |during )?(?:what|which) month do you (?:turn a year older|have a birthday"
        r"|get a year older)\b",
        "what month is your birthday",
    ),
    (
        r"\b(?:in |on )?(?:what|which) (month|season) (?:was|were) you born(?: in| on)?\b",
        r"what \1 is your birthday",
    ),
    (
        r"\bwhen(?: day| month)? (?:was|were) you born\b|"
        r"\b(?:on )?(?:what|which) (?:day|date) (?:was|were) you born(?: on)?\b",
        "when is your birthday",
    ),
    # how heavy, tall, long, wide, hot, fast, far
    (
        rf"\b{WHAT}(?: weight)? (?:do|does|did) (.+?) weigh(?: about| in pounds)?$",
        r"how heavy is \1",
    ),
    (r"\bhow many (?:pounds|ounces|grams|kilograms) (?:do|does) (.+?) weigh$", r"how heavy is \1"),
    (r"\bhow many (?:inches|feet|meters|centimeters) (tall|long|wide|high|deep) ", r"how \1 "),
    (r"\bhow many (?:miles|kilometers|blocks) (?:away )?(is|are) (?:it )?", r"how far \1 it "),
    (r"\bhow far is it (?=your|the|a|an )", "how far is "),
    (rf"\b{WHAT} (?:is|was) (?:the|your) (?:way|trip) (?:in miles|in blocks)\b", "how far is it"),
    (r"\bhow many (?:miles|kilometers) (?:an|per|in an|in one) hour\b", "how fast"),
    (rf"\b(?:at |with )?{WHAT} speed (do|does|can|is|did)\b", r"how fast \1"),
    (r"\bhow (?:quickly|rapidly|speedy|quick)\b", "how fast"),
    (r"\bhow high (is|are) (?=you|your|the tree|a tree|a giraffe|the \w+ tree)", r"how tall \1 "),
    (
        rf"\b(?:{WHAT} {IS} the temperature|how (?:hot|cold|warm|chilly|cool) is it|how many degrees"
        rf" (?:is|are) it|{WHAT} temperature is it)\b",
        "how hot is it",
    ),
    (r"\bhow large\b", "how big"),
    (r"\bhow lengthy\b", "how long"),
    (r"\bhow broad\b", "how wide"),
    (rf"\b{WHAT} height (is|are)\b", r"how tall \1"),
    (rf"\b{WHAT} length (is|are)\b", r"how long \1"),
    (rf"\b{WHAT} weight (is|are)\b", r"how heavy \1"),
    (rf"\b{WHAT} width (is|are)\b", r"how wide \1"),
    (rf"\b{WHAT} distance (is|are)\b", r"how far \1"),
    (rf"\b{WHAT} distance (do|does|did|can)\b", r"how far \1"),
    # the price
    (
        rf"\bfor {WHAT} (?:price|amount|money) (?:can|do) {YOU} (?:buy|get)\b(.*)",
        r"how much does\1 cost",
    ),
    (
        rf"\b(?:for )?how much money (?:can|do) {YOU} (?:buy|get)\b(.*?)(?: for)?$",
        r"how much does\1 cost",
    ),
    (
        rf"\b(?:how expensive|how costly) {IS}\b(.*)|\b{WHAT} (?:price|cost) (?:is|are|does)\b(.*?)"
        r"(?: have)?$",
        r"how much does\1\2 cost",
    ),
    (
        rf"\b(?:{WHAT}|how many (?:dollars|cents)) (?:do|does) (.+?) cost\b",
        r"how much does \1 cost",
    ),
    (rf"\b{WHAT} {IS} (.+?)'s (?:price|cost)\b", r"how much does \1 cost"),
    (
        rf"\bhow (?:much|many dollars|many cents) (?:money )?(?:do|must|would|will|did) {YOU} (?:have to |"
        r"need to )?(?:pay|spend|give) (?:for|on)\b(.*)",
        r"how much does\1 cost",
    ),
    (
        r"\bhow much (?:is|are) ((?:a|an|one|the|your) (?!.*\b(?:of|plus)\b)[\w ]+)$",
        r"how much does \1 cost",
    ),
    # how many
    (
        rf"\b{WHAT} (?:is |was )?(?:the )?(?:total |whole )?(?:number|count) of\b",
        "how many",
    ),
    (rf"\b{WHAT} quantity of\b", "how many"),
    (
        r"\bhow many (seconds|minutes|hours|days|weeks|months|years) (?:does|do) (.+?) (?:have|contain"
        r"|hold|consist of|last)$",
        r"how many \1 are in \2",
    ),
    (
        r"\bhow many (\w+) (?:do you need to make|does it take to make|make up|make|fit in|fit into"
        r"|equal|are equal to|are the same as|go into|are needed (?:for|to make)) (?=a |an |one |1 )",
        r"how many \1 are in ",
    ),
    (r"\bhow many (\w+) (?:are there|can you find|can you count) (in|on) ", r"how many \1 are \2 "),
    (
        r"\bhow many (?:people|persons|family members) (?:are there |are |live |do you have )(?:in|at|with)"
        r" (?:your (?:house|home|family|household|apartment)|you|the family)\b",
        "how big is your family",
    ),
    (
        r"\bhow many people (?:belong to|make up|does|do) your family(?: have| has)?\b",
        "how big is your family",
    ),
    (r"\bhow (?:big|large) is your (?:household|family)\b", "how big is your family"),
    # how often, how long
    (r"\bhow (?:frequently|regularly)\b", "how often"),
    (r"\b(?:for|in) how (long|many (?:minutes|hours|days|weeks|months|years))\b", r"how \1"),
    (
        r"\bhow (?:long|much time|many (?:minutes|hours|days)) (?:does|do|did|will|would) (?:it|you) "
        r"(?:take|need)(?: you| us| for you)? (?:to|for you to) ",
        "how long do you ",
    ),
    (
        rf"\bhow (?:much time|many (?:minutes|hours)) (?:do|does|did) {YOU} (?:spend|need)(?: on| for)?\b",
        "how long do you",
    ),
    (r"\bhow (?:long|many (?:minutes|hours)) do you spend\b", "how long do you"),
    (rf"\b{WHAT} (?:length|amount|stretch) of time (?:does|do|is|did)\b", "how long does"),
    (r"\bhow early (do|does|did|must|should|can|will)\b", r"when \1"),
    (r"\bhow late (do|does|did|must|should|can|will)\b", r"when \1"),
    (rf"\bby {WHAT} (?:time|hour)\b", "when"),
    (rf"\b{WHAT} (?:hour|oclock|clock time) (?=do|does|did|is your|will|must|should)", "when "),
    (r"\bhow soon (do|does|will|is|are|can)\b", r"when \1"),
    (rf"\b{WHAT} (?:time|hour) (?:is|of (?:the )?day is) (your|the|our|my) ", r"when is \1 "),
    (
        r"\bwhat (?:is|does) (?:the )?(?:time|clock say|clock show|hour)(?: right)?(?: now)?$",
        "what time is it",
    ),
    (r"\b(?:what|which) (?:hour|time) is it(?: right)? now$", "what time is it"),
)
