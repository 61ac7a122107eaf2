"""What the title of an entry in a district's calendar means for the classroom.

Districts write titles in their own words, so a title is read by small named rules, tried in order;
what no rule knows is left to the teacher ("unknown") and never guessed. The words are common
practice. Nothing here reads a file.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

OFF, HALF, FIRST, LAST, UNKNOWN = "off", "half", "first", "last", "unknown"
MEANINGS = (OFF, HALF, FIRST, LAST, UNKNOWN)


@dataclass(frozen=True, slots=True)
class Title:
    """An entry's title with what its times say: `timed` entries do not last the whole day."""

    text: str
    timed: bool = False


def _words(pattern: str) -> Callable[[str], bool]:
    found = re.compile(rf"\b(?:{pattern})\b", re.IGNORECASE)
    return lambda text: bool(found.search(text))


_SHORT = _words(
    r"half[- ]?days?|(?:early|noon|midday|1/2[- ]day) (?:release|dismissal|out|closing)"
    r"|(?:release|dismissal) at \d|dismiss(?:ed|al)? early|minimum day|shortened day|short day"
    r"|abbreviated day|(?:late|delayed) (?:start|opening|arrival)|(?:one|two|1|2)[- ]hour delay"
    r"|1/2 day"
)
_NO_SCHOOL = _words(
    r"(?:no|non)[- ](?:school|class(?:es)?|students?|student days?|pupils?)"
    r"|schools? (?:is |are )?closed|student holiday|non[- ]?attendance day"
    r"|(?:schools?|offices?|district) closed|no attendance"
)
_PARTLY = _words(
    r"no (?:school|class(?:es)?) (?:for|at|in) (?!all\b|students?\b|pupils?\b|observance)"
)
_EDGE = _words(
    r"resumes?|returns?|reopens?|back (?:to|in)|before|begins?|ends?|starts?|last day of .*break"
)
_BREAK = _words(
    r"(?:(?:fall|autumn|winter|spring|mid-?winter|summer|thanksgiving|christmas|easter|holiday"
    r"|february|april|october|november|december) (?:break|recess|vacation|holidays?)"
    r"|school (?:break|vacation|holidays?)|snow day)"
)
_AN_EVENT = _words(
    r"camps?|party|parties|concerts?|shows?|sales?|fairs?|programs?|sing|packets?|registration"
    r"|luncheon|lunch|drive|shop|bazaar|celebration|activities|classes|hours"
)
_STAFF = _words(
    r"(?:teacher|staff)s?'? (?:work ?|planning |in-?service |institute |development |record )?days?"
    r"|teacher in-?service|in-?service day|professional (?:development|learning)(?: day)?"
    r"|institute day|records? day"
)
# The federal holidays of the United States (5 U.S.C. 6103) and the names districts use beside them,
# from memory.
_HOLIDAY = re.compile(
    r"^(?:holiday|legal holiday|district holiday)?[\s:,(–-]*"
    r"(?:new year'?s(?: day| eve)?|mlk(?: jr\.?)? day"
    r"|(?:dr\.? )?martin luther king,?(?: jr\.?)?,?(?:'s)?(?: birthday| day)?"
    r"|presidents'?s?'? day|washington'?s birthday|memorial day|juneteenth(?: day)?"
    r"|independence day|labor day|columbus day|indigenous peoples?'?s?'? day|veterans'? day"
    r"|thanksgiving(?: day)?|day after thanksgiving|christmas(?: day| eve)?|good friday"
    r"|easter monday|holiday)"
    r"[\s)]*(?:\(?observed\)?|holiday)?[\s).!]*$",
    re.IGNORECASE,
)
_SCHOOL = (
    r"(?:the )?(?:(?P<name>[\w ]*?(?:term|semester|trimester|quarter))"
    r"|school(?: year)?|class(?:es)?|instruction|students?)"
)
_FIRST_DAY = re.compile(
    rf"^\W*(?:first (?:student )?day (?:of|for) {_SCHOOL}|school (?:year )?(?:begins|starts)"
    rf"|classes (?:begin|start)|{_SCHOOL.replace('name', 'begun')} (?:begins|starts))\b",
    re.IGNORECASE,
)
_LAST_DAY = re.compile(
    rf"^\W*(?:last (?:student )?day (?:of|for) {_SCHOOL}|school (?:year )?ends"
    rf"|classes end|{_SCHOOL.replace('name', 'ended')} ends)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Rule:
    """A named reading of a title: where `applies`, the entry means `meaning`."""

    name: str
    meaning: str
    applies: Callable[[Title], bool]


# Tried in order. "Early release - no school for the afternoon classes" is a short day, so short
# comes first; "Winter break begins" says nothing of the days between, so edges come before breaks.
RULES = (
    Rule("short day", HALF, lambda title: _SHORT(title.text)),
    Rule("closed for some", UNKNOWN, lambda title: _PARTLY(title.text)),
    Rule("no school", OFF, lambda title: _NO_SCHOOL(title.text)),
    Rule("first day", FIRST, lambda title: bool(_FIRST_DAY.search(title.text))),
    Rule("last day", LAST, lambda title: bool(_LAST_DAY.search(title.text))),
    Rule("edge of a break", UNKNOWN, lambda title: _EDGE(title.text)),
    Rule("a meeting or party", UNKNOWN, lambda title: title.timed),
    Rule("break", OFF, lambda title: _BREAK(title.text) and not _AN_EVENT(title.text)),
    Rule("holiday", OFF, lambda title: bool(_HOLIDAY.search(title.text))),
    Rule("staff day", OFF, lambda title: _STAFF(title.text)),
)


def meaning(text: str, timed: bool = False) -> str:
    """What an entry's title means: "off", "half", "first", "last" or "unknown".

    `timed` says that the entry has times of day, as a meeting has; a break or a holiday has none.

    >>> meaning("Early Release (PD)", timed=True), meaning("Thanksgiving Break - No School")
    ('half', 'off')
    >>> meaning("School resumes after winter break"), meaning("Holiday Concert", timed=True)
    ('unknown', 'unknown')
    """
    title = Title(" ".join(text.replace("’", "'").split()), timed)
    return next((rule.meaning for rule in RULES if rule.applies(title)), UNKNOWN)


def term_name(text: str) -> str:
    """The name of the term in a title that opens or closes one, or an empty text.

    >>> term_name("First day of Fall term"), term_name("First Day of School")
    ('Fall term', '')
    """
    found = _FIRST_DAY.search(text) or _LAST_DAY.search(text)
    named = [name for name in found.groupdict().values() if name] if found else []
    return named[0].strip() if named else ""
