"""Ways of asking, and the one wording for each: for a reason, a manner, a place, a person.

Each rule is a pattern over the lower-case text and what it becomes; `wording` tries them in order.
"""

from __future__ import annotations

AUX = r"(?:do|does|did|can|could|should|would|will|must|may|might|is|are|was|were|has|have)"
YOU = r"(?:you|we|people|i|they|someone|a person|children|kids|one|anyone|everyone|some people)"
IS = r"(?:is|are|was|were)"
WHAT = r"(?:what|which)"

WAYS = (
    # reason
    (rf"\b(?:for )?{WHAT} reasons? (?={AUX})", "why "),
    (
        rf"\b{WHAT} {IS} (?:the|a|your|some|one|two)? ?(?:main |good )?reasons?(?: for| that|"
        rf" why| of| to|(?= \w))",
        "why ",
    ),
    (r"\bhow come\b", "why"),
    (r"\bwhat makes it (\w+) to\b", r"why is it \1 to"),
    (rf"\b{WHAT} {IS} the (?:point|purpose|use|good) of\b", "why use"),
    (rf"\bwhat do(?:es)? {YOU} use (.+?) for$", r"why use \1"),
    (
        rf"\bwhat {IS} (?!.*\b(?:thankful|grateful|known|famous|sorry|waiting|looking|ready|good"
        r"|excited|asking|paying|hoping|wishing|glad|searching|standing|there)\b)(?!you\b)(.+?)"
        r" (?:used |needed |good |meant |made )?for$",
        r"why use \1",
    ),
    (
        r"\bwhat good (?:is|are) ((?:a |an |the )?\w+)(?: for)?\b",
        r"why use \1",
    ),
    (
        rf"\bwhat good (?:do|does|can) ((?:a |an |the )?\w+(?: \w+)?) do(?: {YOU}\b)?",
        r"why use \1",
    ),
    (
        rf"\bhow (?:does|do|can) (?!{YOU}\b|.*\b(?:friend|teacher|mother|mom|dad|father|brother"
        r"|sister|worker|person|nurse|doctor|officer|fighter|family|classmate|grandma|grandpa|dog"
        r"|librarian|police|farmer|vet|dentist|coach|driver|carrier|aide|guard)s?\b)(.+?)"
        rf" (?:help|benefit|serve) ({YOU}|\w+s|your \w+|the \w+|a \w+)(?: out)?$",
        r"why is \1 good for \2",
    ),
    (
        r"\bwhat (?:do|does) (?!.*\b(?:wait|look|ask|pay|hope|wish|search|care)\b)(.+?) "
        r"(need|use|have|wear|keep|want|drink|eat|make|build|plant|visit|carry|put on) (.+?) for$",
        r"why \1 \2 \3",
    ),
    (
        rf"\b(?:for )?(?:what|which) (?:purpose|cause|use) (?={AUX})",
        "why ",
    ),
    (
        r"\bwhat (?:is|was) (?:the|your) (?:purpose|reason|point|use|idea|goal|job|cause|benefit)"
        r" (?:of|for|behind|in|to) (?:having |using |wearing )(?=\w)",
        "why have ",
    ),
    (
        r"\bwhat (?:would|might|could) happen if (?:you|we|people|a person|kids|someone) (?:did not|do"
        r" not|never) ",
        "why should you ",
    ),
    (
        r"^(?:tell|explain|say|give|describe|write)(?: me| us)? (?:the |a |one |some |your |two )?"
        r"(?:good )?reasons? (?:why |for |that |to )(?=\w)",
        "why ",
    ),
    (
        r"\bwhat (?:do|does) (.+?) do that for$",
        r"why do \1 do that",
    ),
    (
        r"\bwhat (?:made|caused|led|got) (you|him|her|them|the \w+|your \w+) (?:to )?(choose|pick"
        r"|decide|want|go|come|leave|stop|start|run|cry|stay|miss|forget|fall|lose|fight|yell|buy"
        r"|like|write|do|hide|wake|turn)\b",
        r"why did \1 \2",
    ),
    (rf"\bwhat do(?:es)? {YOU} need (.+?) for$", r"why need \1"),
    (r"\bwhat causes?\b", "why"),
    (
        r"\bwhy (?:is|are) (?:it )?(?:dangerous|bad|unsafe|not safe|wrong|not good|not a good"
        r" idea|a bad idea) "
        r"(?:for you |for us )?to\b",
        "why should you not",
    ),
    (r"^what (do|does|did) (.+?) (?:like|enjoy|love) about (.+)", r"why \1 \2 like \3"),
    (
        rf"^what {IS} (fun|good|nice|great|special|hard|easy|bad|scary|interesting) about (.+)",
        r"why is \2 \1",
    ),
    (
        r"^what makes (.+?) (special|fun|different from .+|important|interesting)$",
        r"why is \1 \2",
    ),
    # manner
    (
        r"\bwhat (do|does|should|can|did) (.+?) do (?:just |right )?before (?:you |they |he "
        r"|she )?(?:go(?:es)?|going) to (?:bed|sleep)\b",
        r"how \1 \2 get ready for bed",
    ),
    (r"\bkeep from getting cold\b", "stay warm"),
    (r"\bhow does ((?:a|an|the) \w+(?: \w+)?) help (?:people|others)$", r"what job is \1"),
    (r"\bso (?:that )?(?:you|we|they) (?:do|will|can) not\b|\bin order not to\b", "to not"),
    (r"\b(?:keep|stop)(?: yourself| yourselves)? from (?:getting |being )?", "not get "),
    (r"\bavoid (?:getting |being )?", "not get "),
    (r"\bnot get(?:ting)? (\w+ing)\b", r"not \1"),
    (rf"\b(?:in|by) {WHAT} (?:ways?|manner)\b", "how"),
    (
        rf"\b{WHAT} {IS} (?:a|the|your|some|one|two|ways)? ?(?:(\w+) )?ways? (?:to|of|for"
        rf"|that {YOU})\b",
        r"how do you \1",
    ),
    (rf"\b{WHAT} ways? (do|does|can|could|should|would|did)\b", r"how \1"),
    (
        rf"\bwhat (do|does|can|could|should|would|did|will) ({YOU}) do (?:to|so that you can"
        rf"|in order to)\b",
        r"how \1 \2",
    ),
    (r"\bwhat (?:can )?helps? (?:you|us|people|me) (?:to )?(?=[a-z])", "how do you "),
    (
        r"\bhow (do|does|can|could|should|would|did|will) (.+?) (?:act|behave|react)\b",
        r"what \1 \2 do",
    ),
    (
        rf"\bhow (do|does|did|will|would|can|could) ({YOU}|.+?) (?:like to |want to |enjoy"
        rf" )?spend(?:ing)?"
        r" (?:your |their |our |the |his |her )?(?:free )?time\b",
        r"what \1 \2 do",
    ),
    (
        rf"\bhow (do|does|did|will|would|can|could) ({YOU}|.+?) (?:like to |want to )?spend"
        r" (?=(?:the|your|their|a|saturday|sunday|monday|friday|winter|summer|spring"
        r"|fall)\b)(?!.*(?:money|dollar))",
        r"what \1 \2 do on ",
    ),
    (
        r"\b(?:mak|fix|prepar|cook)(e|es|s|ing)? ((?:your |the |a |some )?(?:breakfast|lunch"
        r"|dinner|supper|food|meals?))\b",
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
        rf"\b{WHAT} {IS} (?:the name of )?(?:a|the|your|one)? ?(?:good )?(place|town|city"
        rf"|spot|room|store|building)s? "
        r"(?:where|in which|for|that|to)\b",
        r"where \1",
    ),
    (
        rf"\b(?:in|at|on|to|from|inside) {WHAT} (place|spot|town|city|room|store|shop"
        rf"|building|country|part|kind of place)s?\b",
        r"where \1",
    ),
    (rf"^{WHAT} (place|spot|room|store|shop|building|town|city)s? (?={AUX})", r"where \1 "),
    (
        r"^is there (?:a|any) (place|store|spot)s? (?:near you |in your town )?(?:where|to"
        r"|for|that)\b",
        r"where \1",
    ),
    # person
    (rf"\b{WHAT} (?:person|people|grownup|adult|one of your friends)\b", "who"),
    (rf"\bwho {IS} the (?:person|people|one|man|woman) (?:who|that)\b", "who"),
    (
        rf"\bwho {IS} (?:someone|somebody|a person|one person|a friend|a grownup)(?: who|"
        rf" that| whom)? (?=\w)",
        "who ",
    ),
    (
        rf"\b{WHAT} (?:family member|member of your family|relative|person in your family)\b",
        "who family",
    ),
    (r"\bwhom\b", "who"),
    (r"\bwhat (?:do|does|did) (?:you|people) call (?=your|the|a)", "what name is "),
    (rf"\b{WHAT} {IS} the names? (?:of|for)\b", "what name is"),
    (rf"\b{WHAT} {IS} (your|my|his|her|their|the) (.+?)'s? names?\b", r"what name is \1 \2"),
    (r"\bhow do you like to be called\b", "what name is you"),
)
