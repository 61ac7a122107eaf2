"""Commas and capitals at the seams of a sentence: someone spoken to, an opening clause, a speech."""

from __future__ import annotations

import re

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    POSSESSIVES,
    SUBJECTS,
    WH,
    noun_phrase,
)
from bank.check.lexicon import word_set
from bank.check.names import PERSON_NAMES
from bank.check.reading import Reading

_CALLED = word_set("mom dad grandma grandpa mommy daddy class everyone friends children boys sir")


@on_text()
def someone_spoken_to_without_comma(r: Reading) -> Found:
    """Ben where is your lunch box?

    >>> show("Ben where is your lunch box? Mom can we go?")
    ['comma-intro: Ben where -> Ben, where', 'comma-intro: Mom can -> Mom, can']
    >>> show("Ben can help you. Mom is here. Will you come? Who is Ben?")
    []
    """
    found = []
    for start, close in r.sentences:
        if close - start < 4 or not r.near(start) or "?" not in r.gap[close - 1]:
            continue
        word, after = r.lower[start], r.lower[start + 1]
        if (
            word not in PERSON_NAMES
            and word not in _CALLED
            or word in ("will", "may", "can", "mark")
        ):
            continue
        asks = after in WH or after in AUXILIARIES and r.lower[start + 2] in SUBJECTS
        if not asks:
            continue
        found.append(_comma(r, start))
    return found


def _comma(r: Reading, i: int, certain: bool = True) -> Finding:
    """A comma behind word `i`."""
    return Finding("comma-intro", r.starts[i], r.ends[i + 1], "A comma stands behind the opening part.",
                   f"{r.words[i]}, {r.words[i + 1]}", certain)  # fmt: skip


@on_words("if when")
def clause_before_a_question(r: Reading, i: int) -> Found:
    """If you could visit any planet which one would you choose?

    >>> show("If you could visit any planet which one would you choose?")
    ['comma-intro: planet which -> planet, which']
    >>> show("If you could choose, what would you do? If you know which one it is, tell me.")
    []
    """
    if not r.first[i]:
        return None
    close = next((e for s, e in r.sentences if s == i), r.n)
    if "?" not in r.gap[close - 1] or any("," in g for g in r.gap[i:close]):
        return None
    for k in range(i + 4, close - 3):
        if r.lower[k] not in ("which", "what", "where", "how", "who", "would", "could", "should"):
            continue
        turned = any(
            r.lower[m] in AUXILIARIES and r.lower[m + 1] in SUBJECTS
            for m in range(k, min(k + 3, close - 1))
        )
        if turned and r.tag[k - 1] in ("NN", "NNS", "RB", "JJ") and r.near(k - 1):
            return _comma(r, k - 1)
    return None


_OPENS = word_set("when after before if because although while since as")


@on_text({"sentence", "passage"})
def opening_clause_left_alone(r: Reading) -> Found:
    """When the bell rang. We lined up.

    >>> show("When the bell rang. We lined up at the door.")
    ['comma-intro: rang. We -> rang, we']
    >>> show("When did it ring? We ran. After lunch. If so, we go. When we ran, it fell. We won.")
    []
    """
    found = []
    for (start, close), (following, _) in zip(r.sentences, r.sentences[1:], strict=False):
        if r.lower[start] not in _OPENS or close - start < 4 or r.gap[close - 1] != ". ":
            continue
        if any("," in g for g in r.gap[start : close - 1]) or r.lower[start + 1] in AUXILIARIES:
            continue
        phrase = noun_phrase(r, start + 1)
        if phrase is None or phrase.last + 1 >= close:
            continue
        verbs = [
            k for k in range(phrase.last + 1, close) if r.tag[k] in ("VBD", "VBZ", "VBP", "MD")
        ]
        if len(verbs) != 1 or verbs[0] > phrase.last + 2:
            continue
        if r.lower[following] not in SUBJECTS | ARTICLES | POSSESSIVES:
            continue
        word = r.words[following]
        small = word if word == "I" else word[0].lower() + word[1:]
        found.append(
            Finding("comma-intro", r.starts[close - 1], r.ends[following],
                    "The opening part is no sentence of its own; a comma stands behind it.",
                    f"{r.words[close - 1]}, {small}", True)
        )  # fmt: skip
    return found


_SAYS_SMALL = re.compile(
    r"\b(?:said|says|asked|asks|yelled|shouted|cried|whispered|replied|answered|called), [\"“]([a-z])"
)


@on_text()
def speech_that_starts_small(r: Reading) -> Found:
    """Grandma asked, "did you eat?"

    >>> show('Grandma asked, "did you feed the hens?"')
    ['capital-first: d -> D']
    >>> show('"If it rains," Dad said, "we stay." He said, "Come."')
    []
    """
    return [
        Finding("capital-first", m.start(1), m.end(1), "What someone says starts with a capital letter.",
                m.group(1).upper(), True)
        for m in _SAYS_SMALL.finditer(r.text)
        if not any(c in r.text[: m.start()] for c in '"“”')
    ]  # fmt: skip


_SECOND = {
    "new": word_set("york mexico jersey hampshire orleans england zealand"),
    "north": word_set("carolina dakota america korea pole"),
    "south": word_set("carolina dakota america korea africa pole"),
    "west": word_set("virginia"),
    "rhode": word_set("island"),
    "united": word_set("states kingdom"),
    "los": word_set("angeles"),
    "san": word_set("francisco diego antonio jose"),
}


@on_words(" ".join(_SECOND))
def first_half_of_a_name_small(r: Reading, i: int) -> Found:
    """new Mexico.

    >>> show("My family drove through new Mexico.")
    ['capital-name: new -> New']
    """
    if (
        r.after(i) not in _SECOND[r.lower[i]]
        or r.words[i][0].isupper()
        or not r.words[i + 1][0].isupper()
    ):
        return None
    right = r.words[i][0].upper() + r.words[i][1:]
    return at(r, i, "capital-name", "A name has a capital letter.", right)


@on_words(
    "aunt uncle cousin teacher brother sister doctor coach mom dad mother father grandma grandpa"
)
def kin_with_a_capital(r: Reading, i: int) -> Found:
    """My Aunt taught me.

    >>> show("My Aunt taught me how to knit.")
    ['capital-extra: Aunt -> aunt']
    >>> show("My Aunt Rose is here. I asked Coach to help.")
    []
    """
    if (
        r.before(i) not in POSSESSIVES
        or not r.words[i][0].isupper()
        or not r.words[i][1:].islower()
    ):
        return None
    if i + 1 < r.n and r.words[i + 1][0].isupper() or not r.near(i):
        return None
    return Finding(
        "capital-extra", r.starts[i], r.ends[i],
        "A word that is not a name stays small inside a sentence.", r.lower[i], True,
    )  # fmt: skip


_BESIDE = re.compile(
    r"[,?!][\"”] (?:said|says|asked|asks|yelled|shouted|cried|whispered|replied|answered|warned|called) "
    r"(?:(?:the|my|her|his|our) )?\w+( )[\"“][a-z]"
)


@on_text()
def speech_that_goes_on_without_comma(r: Reading) -> Found:
    """ "It is hot," warned Dad "so wait."

    >>> show('"The soup is hot," warned Dad "so let it cool."')
    ['quotation-marks:   -> , ']
    >>> show('"The soup is hot," warned Dad, "so let it cool."')
    []
    """
    return [
        Finding("quotation-marks", m.start(1), m.end(1),
                "A comma stands between the words that someone says and who says them.", ", ", True)
        for m in _BESIDE.finditer(r.text)
    ]  # fmt: skip


_LAST_CALLED = re.compile(
    r"(?<=\b(?:me|us|it|up) )((?:Mr|Mrs|Ms|Dr)\. [A-Z]\w+|(?:Aunt|Uncle|Coach|Miss) [A-Z]\w+)[.?!]$"
)
_THANKED = re.compile(
    r"^Thank you for [\w ]+?( )((?:Aunt|Uncle|Coach|Miss) [A-Z]\w+|(?:Mr|Mrs|Ms|Dr)\. [A-Z]\w+)[.!]$"
)


@on_text()
def someone_spoken_to_at_the_end(r: Reading) -> Found:
    """Can you help me Mrs. Lowell?

    >>> show("Can you help me Mrs. Lowell?")
    ['comma-intro:   -> , ']
    >>> show("Thank you for the mittens Aunt Rosa.")
    ['comma-intro:   -> , ']
    >>> show("Can you bring me Mr. Bear? Did you tell Mrs. Lowell? They call me Aunt Rosa.")
    []
    """
    message = "A comma stands before the name of someone spoken to."
    text = r.text.rstrip()
    m = _LAST_CALLED.search(text)
    if (
        m
        and r.lower[0] in word_set("can could will would please thank help")
        and not _GIVING & {*r.lower}
    ):
        return Finding("comma-intro", m.start(1) - 1, m.start(1), message, ", ", True)
    m = _THANKED.match(text)
    return Finding("comma-intro", m.start(1), m.end(1), message, ", ", True) if m else None


_GIVING = word_set("call calls called bring brings show give make read tell name names")


@on_words("or and but")
def second_question_without_comma(r: Reading, i: int) -> Found:
    """Do you like to read alone or do you like company?

    >>> show("Do you like to read alone or do you like to read with me?")
    ['comma-join: alone -> alone,']
    >>> show("Do you and can you? Do you sing or does she?")
    []
    """
    if r.lower[0] not in AUXILIARIES or r.lower[1] not in SUBJECTS or not r.near(i - 1):
        return None
    if r.after(i) not in AUXILIARIES or r.after(i + 1) not in SUBJECTS or i < 4 or r.n - i < 5:
        return None
    return Finding("comma-join", r.starts[i - 1], r.ends[i - 1], "A comma stands between two whole parts.",
                   f"{r.words[i - 1]},", False)  # fmt: skip


_TOLD = word_set("tell describe write explain draw list name")


@on_text()
def order_with_a_question_mark(r: Reading) -> Found:
    """Tell about your favorite toy?

    >>> show("Tell about your favorite toy?")
    ['end-mark: ? -> .']
    >>> show("Tell me: what is it? Name it, will you? Write, please? Draw what?")
    []
    """
    if (
        r.n < 4
        or r.lower[0] not in _TOLD
        or not r.text.rstrip().endswith("?")
        or len(r.sentences) > 1
    ):
        return None
    if any(w in WH | AUXILIARIES for w in r.lower) or any("," in g or ":" in g for g in r.gap):
        return None
    if any(r.tag[k] in ("VBZ", "VBD", "MD") for k in range(1, r.n)) or "right" in r.lower:
        return None
    place = len(r.text.rstrip()) - 1
    return Finding("end-mark", place, place + 1, "This is no question; it ends with .", ".", True)


@on_text()
def question_behind_an_order(r: Reading) -> Found:
    """Think about your room what would you change?

    >>> show("Think about your room what would you change?")
    ['run-on: room what -> room. What']
    >>> show("Think about what you would change. Think about it: what would you do?")
    []
    """
    if (
        r.n < 6
        or r.lower[0] not in word_set("think look imagine pretend read draw")
        or "?" not in r.gap[r.n - 1]
    ):
        return None
    for k in range(3, r.n - 3):
        if r.lower[k] in ("what", "how", "where", "why", "who") and r.near(k - 1):
            turned = r.lower[k + 1] in AUXILIARIES and r.lower[k + 2] in SUBJECTS
            if turned and r.tag[k - 1][:1] == "N":
                word = r.words[k]
                text = f"{r.words[k - 1]}. {word[0].upper()}{word[1:]}"
                message = "These are two sentences."
                return Finding("run-on", r.starts[k - 1], r.ends[k], message, text, True)
    return None
