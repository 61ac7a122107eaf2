"""One wording for one way of asking: rewrites that run before the parse.

Each rule is a pattern over the lower-case text and what it becomes, tried in order. They bring the
many ways to ask for a reason, a person, a place, a number … to the one that the frame reads.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from bank.choose.ask.active import in_active_voice
from bank.choose.ask.converse import in_one_direction
from bank.choose.ask.duties import DUTIES
from bank.choose.ask.ways import WAYS
from bank.choose.ask.ways_liked import LIKED
from bank.choose.ask.ways_more import MORE_WAYS
from bank.choose.ask.ways_number import NUMBERS, SUMS
from bank.choose.ask.ways_told import TOLD
from bank.choose.ask.ways_turned import TURNED
from bank.choose.ask.ways_who import WHO

_New = str | Callable[[re.Match[str]], str]

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
        r"^(?:can|could|will|would) you (?:please )?(?=(?:tell|name|describe|explain|list"
        r"|think|say))",
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
        r"^(?:please )?(?:tell|write|talk|share)(?: me| us)?(?: a story| something| a little|"
        r" a bit"
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

_SPACES = re.compile(r"\s+")


def _compiled(rules: Iterable[tuple[str, _New]]) -> tuple[tuple[re.Pattern[str], _New], ...]:
    return tuple((re.compile(pattern), new) for pattern, new in rules)


_compiled_short_forms = _compiled(_SHORT_FORMS)
_FIRST_RULES = _compiled((*_SHORT_FORMS, *TURNED, *SUMS, *LIKED, *TOLD, *WHO, *_OPENINGS))
_RULES = _compiled((*DUTIES, *NUMBERS, *WAYS, *MORE_WAYS))


def _rewritten(plain: str, rules: Iterable[tuple[re.Pattern[str], _New]]) -> str:
    """`plain` after each rule in order, its words one space apart."""
    for pattern, new in rules:
        if pattern.search(plain):
            plain = _SPACES.sub(" ", pattern.sub(new, plain)).strip()
    return plain


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
    """The one wording of `text`, and whether it asks for what is liked "most", "least" or"
    " neither.

    >>> split_liking("Which game do you like most at the fair?")
    ('which game do you like at the fair', 'most')
    """
    plain = text.replace("\u2019", "'").replace("\u2018", "'").strip().lower()
    plain = _SPACES.sub(" ", plain).rstrip(".?! ")
    plain = _rewritten(plain, _FIRST_RULES)
    plain = _rewritten(in_one_direction(in_active_voice(plain)), _RULES)
    plain = re.sub(r"\b(?:i|me|we|us)\b", "you", plain)
    plain = re.sub(r"\b(?:my|our|mine|ours)\b", "your", plain)
    plain = plain.replace("you am", "you are")
    liking = "least" if "leastlike" in plain else "most" if "mostlike" in plain else ""
    plain = re.sub(r"\b(?:most|least)liked\b", "favorite", plain)
    return re.sub(r"\b(?:most|least)like\b", "like", plain), liking
