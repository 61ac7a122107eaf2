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
    is_verb_tag,
    noun_phrase,
    verb_forms,
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


@on_words("aunt uncle cousin teacher brother sister doctor coach")
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


@on_words("you i he she we they")
def pair_with_the_verb_for_one(r: Reading, i: int) -> Found:
    """a game that you and your friends plays.

    >>> show("Write about a game that you and your friends plays at recess.")
    ['agreement: plays -> play']
    >>> show("I like what you and your dog play.")
    []
    """
    if r.after(i) != "and" or r.before(i) not in (
        "that",
        "what",
        "when",
        "how",
        "where",
        "game",
        "food",
    ):
        return None
    if i + 2 >= r.n or r.lower[i + 2] not in POSSESSIVES:
        return None
    phrase = noun_phrase(r, i + 2)
    if phrase is None or not r.near(phrase.last):
        # The parse may take the verb for the last thing of the phrase.
        return None
    v = phrase.last + 1
    last = phrase.last
    if v < r.n and verb_forms(r.lower[v]) == {"VBZ"} and r.after(v):
        return _one(r, v)
    if (
        last > i + 3
        and "VBZ" in verb_forms(r.lower[last])
        and r.after(last) in ("at", "in", "on", "with", "to", "after")
    ):
        return _one(r, last)
    return None


def _one(r: Reading, v: int) -> Found:
    from bank.check.grammar import form

    right = form(r.lower[v], "VB")
    return at(r, v, "agreement", f"Two do this: “{right}”.", right) if right else None


@on_words("nor")
def nor_with_many(r: Reading, i: int) -> Found:
    """Neither the coach nor the players was ready.

    >>> show("Neither the coach nor the players was ready.")
    ['agreement: was -> were']
    >>> show("Neither the players nor the coach was ready.")
    []
    """
    if "neither" not in r.lower[:i]:
        return None
    phrase = noun_phrase(r, i + 1)
    if phrase is None or not phrase.many or not phrase.sure or not r.near(phrase.last):
        return None
    v = phrase.last + 1
    right = {"was": "were", "is": "are", "has": "have"}.get(r.lower[v])
    return at(r, v, "agreement", f"The nearer one counts: “{right}”.", right) if right else None


@on_words("which")
def most_of_two(r: Reading, i: int) -> Found:
    """Which is heaviest, a feather or a stone?

    >>> show("Which is heaviest, a feather or a stone?")
    ['comparison: heaviest -> heavier']
    >>> show("Which is the best, a cat, a dog, or a bird? Which is best?")
    []
    """
    if r.after(i) not in ("is", "are") or not r.first[i] or r.lower.count("or") != 1:
        return None
    k = i + 2
    if r.after(i + 1) == "the":
        k += 1
    if (
        k >= r.n
        or r.tag[k] not in ("JJS", "RBS")
        or not r.lower[k].endswith("est")
        or r.text.count(",") != 1
    ):
        return None
    if r.gap[k] != ", ":
        return None
    right = r.lower[k][:-3] + "er"
    return at(r, k, "comparison", f"Of two, one is “{right}”.", right)


@on_words("worse better bigger")
def more_of_all(r: Reading, i: int) -> Found:
    """the worse trip you have ever taken.

    >>> show("Write about the worse trip you have ever taken.")
    ['comparison: worse -> worst']
    >>> show("It got worse than ever. The better team won, as ever.")
    []
    """
    if r.before(i) != "the" or "ever" not in r.lower[i:] or not r.near(i):
        return None
    if r.after(i + 1) not in SUBJECTS | {"that"} or is_verb_tag(r.tag[i + 1]):
        return None
    right = {"worse": "worst", "better": "best", "bigger": "biggest"}[r.lower[i]]
    return at(r, i, "comparison", f"Of all, one is the “{right}”.", right)


@on_words("than")
def one_thing_behind_than(r: Reading, i: int) -> Found:
    """more boys than girl.

    >>> show("Are there more boys than girl in the choir?")
    ['plural: girl -> girls']
    >>> show("There is more milk than tea. More dogs than one came.")
    []
    """
    from bank.check.grammar import plural_of

    if r.tag[i - 1 : i] != ["NNS"] or r.before(i - 1) not in ("more", "fewer"):
        return None
    word = r.after(i)
    if word not in word_set("girl boy dog cat bird car bike apple book pencil kid adult cow horse"):
        return None
    many = plural_of(word)
    return at(r, i + 1, "plural", "There are more than one of these here.", many) if many else None
