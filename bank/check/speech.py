"""The words that someone says, without talking marks."""

from __future__ import annotations

import re

from bank.check.clauses import SUBORDINATE, clause_in
from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    FUNCTION,
    PREPOSITIONS,
    WH,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.names import is_name
from bank.check.reading import Reading

QUOTES = '"“”'
_SPEECH_VERB = (
    r"(?:said|says|asked|asks|yelled|shouted|cried|whispered|replied|answered|exclaimed|called|told|explained|"
    r"reminded|warned|announced|added|begged|promised|laughed|sang|suggested|wondered)"
)
_WHO = (
    r"(?:(?:[Tt]he|[Mm]y|[Hh]er|[Hh]is|[Oo]ur|[Tt]heir) (?:\w+ ){0,1}\w+"
    r"|(?:Mr|Mrs|Ms|Dr)\. [A-Z]\w+|(?:Officer |Coach |Aunt |Uncle |Miss )?[A-Z]\w+"
    r"|[Hh]e|[Ss]he|[Tt]hey|[Ww]e|I)"
)
_WHO_LAST = re.compile(rf"([,?!]?)\s+(?:{_SPEECH_VERB} {_WHO}|{_WHO} {_SPEECH_VERB})\b")
_WHO_FIRST = re.compile(
    rf"^(?:Then |Later |Today )?{_WHO} {_SPEECH_VERB}(?: to \w+| me| us| him| her| them)?,?\s+(?=[A-Z])"
)
_PLAIN_SPEECH = r"(?:said|says|asked|asks|yelled|shouted|cried|whispered|replied|answered)"
_CLOSED_BARE = re.compile(rf'\w(["”])\s+(?:{_SPEECH_VERB} {_WHO}|{_WHO} {_SPEECH_VERB})\b')
_OPENED_BARE = re.compile(rf"\b{_PLAIN_SPEECH}( )[\"“][A-Z]")
_GOES_ON = re.compile(
    rf"^([^\"“”]+?),? (?:{_SPEECH_VERB} {_WHO}|{_WHO} {_SPEECH_VERB}), [\"“][a-z]"
)
_SAID_LAST = re.compile(rf"\s({_WHO} {_PLAIN_SPEECH})[.!]$")
_SAID_FIRST = re.compile(rf"\b(?!sang|laughed|called|cried){_SPEECH_VERB}\s*,\s*(?=[A-Za-z])")


_SPEAKS = word_set(
    """said says asked asks yelled shouted cried whispered replied answered exclaimed called told
    explained reminded warned announced added begged promised laughed sang suggested wondered"""
)


@on_text()
def comma_beside_speech(r: Reading) -> Found:
    """A comma stands between the words that someone says and who says them.

    >>> show('"Please sit down" said the nurse.')
    ['quotation-marks: " -> ,"']
    >>> show('Mom said "It is late."')
    ['quotation-marks:   -> , ']
    >>> show('"Stop!" yelled Ben. Write the word "said" again. She called him "Pal."')
    []
    """
    if not any(c in r.text for c in QUOTES):
        return None
    message = "A comma stands between the words that someone says and who says them."
    return [
        Finding("quotation-marks", m.start(1), m.end(1), message, "," + m.group(1), True)
        for m in _CLOSED_BARE.finditer(r.text)
        if sum(r.text[: m.start(1)].count(c) for c in QUOTES) % 2
    ] + [
        Finding("quotation-marks", m.start(1), m.end(1), message, ", ", True)
        for m in _OPENED_BARE.finditer(r.text)
    ]


@on_text()
def speech_without_marks(r: Reading) -> Found:
    """The words that someone says stand between talking marks.

    >>> show("Mom said, come inside now.")
    ['quotation-marks: come inside now. -> "Come inside now."']
    >>> show("Where are you going? asked Ben.")
    ['quotation-marks: Where are you going? -> "Where are you going?"']
    >>> show("Dad said that we could go. I asked her to come.")
    []
    """
    text = r.text
    count = sum(text.count(c) for c in QUOTES)
    if not count and _SPEAKS.isdisjoint(r.lower):
        return None
    if count:
        if count % 2 == 0:
            split = _GOES_ON.search(text)
            return _speech(text, 0, _with_comma(text, split.end(1))) if split else None
        place = min((text.find(c) for c in QUOTES if c in text), default=0)
        at_start = not text[:place].strip()
        return (
            Finding(
                "quotation-marks",
                place,
                place + 1,
                "Talking marks come in pairs: one before and one after the words.",
                None,
                True,
            )
            if at_start or place
            else Finding(
                "quotation-marks", place, place + 1, "Talking marks come in pairs.", None, True
            )
        )
    first = _SAID_FIRST.search(text)
    if first and first.group().rstrip().endswith(","):
        start, end = first.end(), len(text.rstrip())
        said = text[start:end]
        if len(said) > 2 and not said.startswith(
            ("that ", "who ", "which ", "and ", "but ", "so ")
        ):
            return Finding(
                "quotation-marks",
                start,
                end,
                "Put talking marks around the words that someone says.",
                f'"{said[0].upper()}{said[1:]}"',
                True,
            )
    opening = _WHO_FIRST.search(text)
    if opening:
        said = text[opening.end() :].rstrip()
        word = re.match(r"[A-Za-z']+", said)
        if (
            word
            and not (is_name(word.group().lower()) and "," not in opening.group())
            and (word.group() != "I" or "," in opening.group())
            and (lemmas(word.group().lower()) or word.group().lower() in FUNCTION | _EXCLAIMED)
        ):
            start = opening.end()
            return _speech(text, start, start + len(said))
    for last in _WHO_LAST.finditer(text):
        end = last.start() + len(last.group(1))
        said = text[:end]
        first_word = text.split(" ")[0].lower()
        if len(said) < 5 or _frame(text[: last.start()]) and last.group(1) == ",":
            continue
        if last.group(1):
            if last.group(1) == "," and not _whole(r, last.start()):
                continue
            return _speech(text, 0, end)
        # Without any mark: "Come and play said Lily."
        turned = re.match(rf"\s*{_SPEECH_VERB} ", last.group())
        if (
            turned
            and first_word not in ("what", "who")
            and text[last.end() :].strip(" .!?") == ""
            and _whole(r, last.start())
        ):
            return _speech(text, 0, end)
    return _said_last(r)


_SAID_OF = word_set(
    "what that than as everything all something anything thing things word words way who like if "
    "because when which whatever nothing how where why and or but"
)


def _said_last(r: Reading) -> Finding | None:
    """`I am scared Sam said.`: the speaker at the end, with no mark at all."""
    last = _SAID_LAST.search(r.text.rstrip())
    if last is None or r.lower[0] in SUBORDINATE | WH:
        return None
    words = sum(1 for start in r.starts if start < last.start())
    if words < 2 or r.lower[words - 1] in _SAID_OF or not clause_in(r, 0, words):
        return None
    return _speech(r.text, 0, last.start())


def _with_comma(text: str, end: int) -> int:
    return end + 1 if text[end : end + 1] == "," else end


_EXCLAIMED = word_set(
    "yes no hello hi hey wow oh ouch please thank let's don't i'm we're it's that's you're can't"
)


def _speech(text: str, start: int, end: int) -> Finding:
    said = text[start:end]
    return Finding(
        "quotation-marks", start, end, "Put talking marks around the words that someone says.",
        f'"{said[0].upper()}{said[1:]}"', True,
    )  # fmt: skip


def _whole(r: Reading, end: int) -> bool:
    """Whether what stands before offset `end` is a sentence or an order."""
    last = sum(1 for start in r.starts if start < end)
    if not last or r.tag[0] == "VBN" and not r.text[:end].rstrip().endswith("!"):
        return False
    return (
        clause_in(r, 0, last)
        or r.tag[0] in ("VB", "UH")
        or "VB" in verb_forms(r.lower[0])
        and r.tag[0] != "NNP"
        or r.lower[0] in WH | AUXILIARIES | {"please", "don't"}
    )


def _frame(before: str) -> bool:
    """Whether what stands before the comma is an opening and no speech: `When I fell, Mom said`."""
    return before.split(" ")[0].lower() in SUBORDINATE | PREPOSITIONS | {
        "yesterday",
        "today",
        "then",
        "finally",
        "first",
        "later",
        "suddenly",
    }
