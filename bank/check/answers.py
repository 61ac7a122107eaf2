"""Questions with an amount that is not exact, or with their own answer in them."""

from __future__ import annotations

import re

from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    FUNCTION,
    is_noun,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading
from bank.check.wording import STEPS

_VAGUE = {
    "some": "two",
    "several": "three",
    "a few": "three",
    "few": "three",
    "a couple of": "two",
    "a lot of": "five",
    "lots of": "five",
    "many": "five",
    "a bunch of": "five",
    "various": "three",
    "different": "three",
    "a number of": "three",
    "as many": "five",
    "any": "two",
    "a couple": "two",
    "other": "two",
    "the": "",
    "multiple": "three",
    "numerous": "five",
    "plenty of": "five",
    "tons of": "five",
}
_AMOUNT = re.compile(
    r"^\W*(?:please )?(?P<verb>name|list|write|draw|give|find|tell|think of|describe|circle|"
    r"say|show|make|count|pick|choose|add|color|share|put)"
    r"(?: down| about| me| us)*(?: at least)? (?P<amount>some|several|a few|a couple of|a couple|"
    r"a lot of|lots of|many|a bunch of|various|a number of|"
    r"as many|multiple|numerous|plenty of|tons of|enough|a handful of|a little|more)\b(?P<rest> \w+s?\b)?",
    re.IGNORECASE,
)
_WHAT_SOME = re.compile(
    r"\b(?:what|which) (?:are|is|were) (?P<amount>some|a few|several|many|a couple|a couple of)\b"
    r"|^what (?P<amount2>some|several)\b",
    re.IGNORECASE,
)
_ANSWER_IN = re.compile(
    r"\b(?:in|with|using|write) (?P<amount>a few|some|several|a couple of|a couple) "
    r"(?:words|sentences|reasons|examples|details|lines|facts|ways|things)\b",
    re.IGNORECASE,
)


@on_text(["question", "topic"])
def amount_that_is_not_exact(r: Reading) -> Found:
    """some, a few, several where a number would tell when one is done.

    >>> show("Name some animals that live in the sea.", "question")
    ['vague-amount: some -> three']
    >>> show("What are some ways to help?", "question")
    ['vague-amount: some -> three']
    >>> show("Name three animals that can fly.", "question")
    []
    """
    text = r.text
    for pattern in (_AMOUNT, _WHAT_SOME, _ANSWER_IN):
        m = pattern.search(text)
        if m is None:
            continue
        name = "amount" if m.group("amount") else "amount2"
        start, end = m.span(name)
        return Finding("vague-amount", start, end,
                       f"“{m.group(name)}” does not say how many; a reader may not know when to stop.",
                       "three", False)  # fmt: skip
    for start, _close in r.sentences:
        if (
            r.lower[start] in STEPS
            and start + 1 < r.n
            and r.lower[start] in ("name", "list")
            and r.tag[start + 1] == "NNS"
            and r.near(start)
        ):
            return Finding("vague-amount", r.starts[start + 1], r.ends[start + 1],
                           "How many? A reader may not know when to stop.", f"three {r.words[start + 1]}", False)  # fmt: skip
    return None


_QUALITIES = {
    "color": "red blue green yellow orange purple black white brown pink gray silver gold",
    "shape": "round square triangular oval rectangular",
    "size": "big small tiny huge little large giant",
    "season": "winter summer spring fall autumn snowy",
    "sound": "barking meowing mooing quacking buzzing roaring hissing",
    "number": "one two three four five six seven eight nine ten",
    "many": "one two three four five six seven eight nine ten eight-legged four-legged two-legged three-wheeled four-wheeled",
    "animal": "dog cat cow horse pig duck bird",
    "material": "wooden metal plastic glass woolen paper",
    "weather": "rainy snowy sunny windy cloudy stormy foggy",
    "temperature": "hot cold warm freezing icy",
    "taste": "sweet sour salty bitter",
    "feel": "soft rough smooth hard sticky",
    "made": "wooden metal plastic woolen paper cardboard",
}
_SENSES = {word: frozenset(words.split()) for word, words in _QUALITIES.items()}


@on_text(["question"])
def question_that_gives_its_answer_away(r: Reading) -> Found:
    """The answer stands in the question.

    >>> show("What color is the red apple?", "question")
    ['gives-answer: red -> None']
    >>> show("What color is an apple?", "question")
    []
    """
    for s, e in r.sentences:
        if r.lower[s] not in word_set("what which how who where when in on"):
            continue
        for i in range(s, min(e, s + 4)):
            answers = _SENSES.get(r.lower[i].removesuffix("s") if r.lower[i] != "is" else "is")
            if answers is None:
                continue
            if (
                r.lower[i] in ("feels", "tastes")
                or r.lower[i] in ("many", "feel", "made", "taste")
                and r.lower[s]
                not in (
                    "how",
                    "what",
                )
            ):
                continue
            for k in range(i + 1, e):
                if r.lower[k] in answers and not _offered(r, s, e, k, answers):
                    if (
                        r.lower[i] == "many"
                        and r.lower[k] in ("one", "two", "three")
                        and r.before(k) not in ("the", "a", "your", "my")
                    ):
                        continue
                    if (
                        r.lower[i] in ("animal", "day", "month", "number")
                        and (
                            r.lower[k - 1]
                            in word_set(
                                "than as like after before between and in on a to with of add from"
                            )
                            or True
                        )
                        and r.lower[i] != "color"
                    ):
                        continue
                    return Finding(
                        "gives-answer",
                        r.starts[k],
                        r.ends[k],
                        "The question gives its answer away; take this word out.",
                        None,
                        False,
                    )
        finding = _named_twice(r, s, e)
        if finding is not None:
            return finding
    return None


def _offered(r: Reading, s: int, e: int, k: int, answers: frozenset[str]) -> bool:
    """Whether the word is one of several to choose from, or compared with."""
    others = sum(1 for m in range(s, e) if r.lower[m] in answers)
    if others > 1 or "or" in r.lower[k : k + 3] or r.before(k) in ("than", "not", "or", "mix"):
        return True
    return any(
        w in word_set("mix mixed mixing combine turn turns change add") for w in r.lower[s:e]
    ) or any("," in g for g in r.gap[k : e - 1])


_KINDS_OF = word_set(
    "animal bird fish bug insect fruit vegetable food tool shape toy sport game tree flower"
)


def _named_twice(r: Reading, s: int, e: int) -> Finding | None:
    """`What do you use a toothbrush to brush?`, `What barks like a dog?`: a word and its own part."""
    text = " ".join(r.lower[s:e])
    m = re.match(
        r"(?:what|which) (?:animal|thing|bird|insect|tool|vehicle|food) (?:is|are) (?:a |an )?(\w+)$",
        text,
    )
    if m and is_noun(m.group(1)) and "ADJ" not in lemmas(m.group(1)):
        k = e - 1
        return Finding(
            "gives-answer",
            r.starts[k],
            r.ends[k],
            "The question gives its answer away.",
            None,
            False,
        )
    for i in range(s, e):
        word = r.lower[i]
        if len(word) > 6 and is_noun(word):
            for k in range(s, e):
                part = r.lower[k]
                if (
                    k != i
                    and len(part) > 2
                    and part not in FUNCTION
                    and (word.startswith(part) or word.endswith(part))
                    and word not in (part + "s", part + "es")
                    and lemmas(part).get("NOUN", ("",))[0] != lemmas(word).get("NOUN", ("",))[0]
                ) and (
                    (part in _COMPOUND_VERBS or "VB" in verb_forms(part))
                    and r.lower[s] in ("what", "where", "who", "which")
                    and (word in _COMPOUNDS or word == part + "er")
                ):
                    return Finding(
                        "gives-answer",
                        r.starts[i],
                        r.ends[i],
                        "The question gives its answer away in this word.",
                        None,
                        False,
                    )
    return None


_COMPOUND_VERBS = word_set("brush fight teach sing bake farm paint drive run dance")
_COMPOUNDS = word_set(
    "toothbrush firefighter teacher singer baker farmer painter driver runner dancer hairbrush "
    "paintbrush bedroom bathroom lunchbox lunchtime bedtime"
)
