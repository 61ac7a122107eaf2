"""Wording that may stop a reader who works alone: two questions, a hidden not, nothing to point to.

None of these is an error, so none is certain: a teacher looks and decides.
"""

from __future__ import annotations

import re

from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    BE,
    DETERMINERS,
    DO,
    FUNCTION,
    MODALS,
    SUBJECTS,
    WH,
    is_noun,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.marks import asks_something
from bank.check.reading import Reading

_STEPS = word_set(
    """tell name explain describe write draw list say show color circle underline find read look
    make choose pick label count compare glue cut trace copy share add solve give match sort put
    fold paint point spell type finish start discuss"""
)
_TELL = word_set("tell explain describe say why how")


@on_text(["question", "topic"])
def two_questions_in_one(r: Reading) -> Found:
    """Two things asked at once.

    >>> show("What is your favorite food and where do you eat it?", "question")
    ['two-questions: and where do you eat it -> None']
    >>> show("Do you like cats or dogs?", "question")
    []
    """
    asked = [(s, e) for s, e in r.sentences if asks_something(r, s, e)]
    if len(asked) > 1:
        s, e = asked[1]
        return Finding("two-questions", r.starts[s], _stop(r, e - 1),
                       "Two questions in one; a reader may answer only one of them.", None, False)  # fmt: skip
    for s, e in r.sentences:
        for i in range(s + 2, e - 2):
            if (
                r.lower[i] in ("and", "or")
                and r.lower[i + 1] in WH
                and _second(r, i, e)
                and asks_something(r, s, e)
            ):
                return Finding("two-questions", r.starts[i], r.ends[e - 1],
                               "Two questions in one; a reader may answer only one of them.", None, False)  # fmt: skip
            if (
                r.lower[i] == "and"
                and r.lower[i + 1] in AUXILIARIES - BE | {"is", "are", "was", "were"}
                and r.lower[i + 2] in SUBJECTS
                and asks_something(r, s, e)
            ):
                return Finding("two-questions", r.starts[i], r.ends[e - 1],
                               "Two questions in one; a reader may answer only one of them.", None, False)  # fmt: skip
    return None


def _second(r: Reading, i: int, close: int) -> bool:
    wh = r.lower[i + 1]
    after = r.lower[i + 2]
    if after in AUXILIARIES or wh == "why" and i + 2 >= close - 1:
        return True
    if wh in ("which", "what", "how") and any(w in AUXILIARIES for w in r.lower[i + 2 : i + 6]):
        return True
    return wh == "who" and bool(verb_forms(after))


def _stop(r: Reading, last: int) -> int:
    return r.ends[last] + (1 if r.gap[last].strip()[:1] in ("?", ".", "!") and r.gap[last] else 0)


@on_text(["question", "topic"])
def why_after_the_question(r: Reading) -> Found:
    """A question with "Why?" or "Why or why not?" behind it.

    >>> show("Do you like rain? Why or why not?", "question")
    ['two-questions: Why or why not? -> None']
    """
    asks = [(s, e) for s, e in r.sentences]
    if len(asks) < 2:
        return None
    s, e = asks[-1]
    if (
        r.lower[s] in ("why", "how")
        and e - s <= 5
        and asks_something(r, *asks[0])
        and r.text.rstrip().endswith("?")
    ):
        if asks_something(r, s, e):
            return None
        return Finding("two-questions", r.starts[s], _stop(r, e - 1),
                       "Two questions in one; a reader may answer only one of them.", None, False)  # fmt: skip
    return None


_NOT_ASKED = word_set("not never cannot")


@on_text(["question", "topic"])
def question_with_a_hidden_no(r: Reading) -> Found:
    """A question that asks for what is not.

    >>> show("Which animal is not a bird?", "question")
    ['negative-question: not -> None']
    >>> show("Why shouldn't you run in the hall?", "question")
    ["negative-question: shouldn't -> None"]
    >>> show("What can you do when you cannot sleep?", "question")
    []
    """
    for s, e in r.sentences:
        asks = asks_something(r, s, e) or r.text.rstrip().endswith("?")
        tells = r.lower[s] in word_set("name list tell find circle choose")
        if not asks and not tells:
            continue
        for i in range(s, e):
            word = r.lower[i]
            if not (word in _NOT_ASKED or word.endswith("n't") or False):
                continue
            if any(
                w in _CLAUSE for w in r.lower[max(s, i - 6) : i] if w not in ("who",)
            ) and not _main_clause(r, s, i):
                continue
            if (
                word == "not"
                and r.before(i) in ("or", "why", "if", "and", "whether")
                or r.after(i) in ("only", "just")
            ):
                continue
            return Finding("negative-question", r.starts[i], r.ends[i],
                           f"A reader may miss “{r.words[i]}” ; ask for what is.", None, False)  # fmt: skip
        if r.lower[s] in ("which", "what", "who", "name") and "except" in r.lower[s:e]:
            i = r.lower.index("except", s, e)
            return Finding(
                "negative-question",
                r.starts[i],
                r.ends[i],
                "A reader may miss “except”; ask for what is.",
                None,
                False,
            )
        for i in range(s + 2, e):
            if (
                r.lower[i] in ("unlike", "least", "false", "wrong")
                and r.lower[s] in ("which", "what")
                and r.before(i) in BE
                and r.lower[i] == "unlike"
            ):
                return Finding(
                    "negative-question",
                    r.starts[i],
                    r.ends[i],
                    "A reader may miss the no in this word.",
                    None,
                    False,
                )
    return None


_CLAUSE = word_set(
    "when if because while who that so although after before until where someone something "
    "anything there's as"
)


def _main_clause(r: Reading, s: int, i: int) -> bool:
    """Whether the no at `i` is in the part of the sentence that asks."""
    last = max((k for k in range(s, i) if r.lower[k] in _CLAUSE), default=s)
    commas = [k for k in range(last, i) if r.gap[k].startswith(",")]
    return bool(commas)


_POINTING = {"he": "who", "she": "who", "they": "who or what", "him": "who", "them": "who or what", "it": "what",
             "his": "who", "her": "who", "their": "who or what", "those": "what", "these": "what"}  # fmt: skip
_WEATHER = word_set(
    "rain rains raining rained snow snows snowing snowed hot cold dark late sunny windy cloudy "
    "time o'clock important hard easy fun safe better good okay possible true take takes like "
    "feel feels mean means cost fair kind wise polite rainy warm foggy stormy day night winter "
    "summer spring fall called"
)


@on_text(["question", "topic"])
def nothing_to_point_to(r: Reading) -> Found:
    """A pronoun with nobody and nothing before it that it could mean.

    >>> show("What did he do with it?", "question")
    ['no-antecedent: he -> None']
    >>> show("What did the boy do with his ball?", "question")
    []
    """
    for i, word in enumerate(r.lower):
        if word not in _POINTING:
            continue
        if (
            word in ("those", "these")
            and r.after(i)
            and (
                is_noun(r.after(i))
                or r.after(i) in ("two", "three", "who", "words", "of")
                or r.tag[i + 1][:2] == "JJ"
            )
        ):
            continue
        if word in ("these", "those") and any(c in r.text for c in ":_"):
            continue
        if _could_mean(r, i, word):
            continue
        if word == "it" and _it_of_weather(r, i):
            continue
        what = _POINTING[word]
        return Finding("no-antecedent", r.starts[i], r.ends[i],
                       f"“{r.words[i]}” points to nothing before it; name {what} is meant.", None, False)  # fmt: skip
    return None


_PERSON_END = word_set(
    "someone somebody everyone everybody anyone anybody nobody person people who"
)


def _could_mean(r: Reading, i: int, word: str) -> bool:
    for k in range(i):
        w = r.lower[k]
        if (
            w in FUNCTION
            and w not in _PERSON_END
            and w not in ("this", "that", "something", "anything", "everything")
        ):
            continue
        if (
            r.tag[k][:1] == "N"
            or w in _PERSON_END
            or r.words[k][0].isupper()
            and not r.first[k]
            or is_noun(w)
            and r.tag[k][:1] not in ("V",)
        ):
            return True
        if w in word_set("this that something anything everything nothing doing one") and word in (
            "it",
            "them",
            "they",
        ):
            return True
        if word == "it" and w.endswith("ing"):
            return True
    # "When he was small, Ben ..." points forward inside the same sentence.
    if any(
        r.words[k][0].isupper() and r.tag[k] == "NNP" and not r.first[k] for k in range(i + 1, r.n)
    ):
        return True
    return word in ("his", "her", "their") and any(r.tag[k][:1] == "N" for k in range(i))


def _it_of_weather(r: Reading, i: int) -> bool:
    near = r.lower[max(0, i - 2) : i + 5]
    if r.before(i) in word_set(
        "is was does would will did if when makes make"
    ) and not _WEATHER.isdisjoint(near):
        return True
    if not _WEATHER.isdisjoint(r.lower[i + 1 : i + 4]):
        return True
    return any(r.lower[k] in ("to", "that", "when", "if") for k in range(i + 1, min(r.n, i + 6)))


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
            r.lower[start] in _STEPS
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


@on_text(["question", "topic"])
def more_than_one_step(r: Reading) -> Found:
    """More than one thing to do.

    >>> show("Draw a house, color it, and write a sentence about it.", "question")
    ['two-steps: color it, and write a sentence about it -> None']
    >>> show("Name two animals that run and jump.", "question")
    []
    """
    steps: list[int] = []
    for s, e in r.sentences:
        i = s
        if r.lower[i] in word_set("please first then next now finally and") and i + 1 < e:
            i += 1
        if r.lower[i] in _STEPS and _orders(r, i):
            steps.append(i)
            for k in range(i + 2, e - 1):
                joined = r.lower[k] in ("and", "then") or r.gap[k - 1].startswith((",", ";"))
                v = k + 1 if r.lower[k] in ("and", "then") else k
                while v < e - 1 and r.lower[v] in ("then", "and", "also"):
                    v += 1
                if joined and r.lower[v] in _STEPS and v not in steps and _orders(r, v):
                    steps.append(v)
        elif asks_something(r, s, e):
            continue
    asked = [s for s, e in r.sentences if asks_something(r, s, e)]
    if len(steps) >= 2:
        return Finding("two-steps", r.starts[steps[1]], r.ends[_end_of(r, steps[1])],
                       "More than one thing to do; a reader may stop after the first.", None, False)  # fmt: skip
    if len(steps) == 1 and asked:
        i = max(steps[0], asked[0])
        return Finding("two-steps", r.starts[i], _stop(r, _end_of(r, i)),
                       "More than one thing to do; a reader may stop after the first.", None, False)  # fmt: skip
    return None


def _orders(r: Reading, i: int) -> bool:
    """Whether the word at `i` tells the reader to do something."""
    after = r.after(i)
    if i and r.near(i - 1) and r.lower[i - 1] in SUBJECTS_AND_DO | {"to", "or"}:
        return False
    return (
        not after
        or after
        in DETERMINERS
        | {
            "about",
            "it",
            "them",
            "me",
            "us",
            "why",
            "how",
            "what",
            "two",
            "three",
            "four",
            "five",
            "one",
            "in",
            "to",
            "with",
            "on",
            "down",
            "under",
            "around",
            "your",
            "at",
            "up",
            "out",
            "if",
            "whether",
        }
        or r.tag[i + 1] in ("CD", "NNS", "JJ")
    )


SUBJECTS_AND_DO = SUBJECTS | DO | MODALS


def _end_of(r: Reading, i: int) -> int:
    return next(e - 1 for s, e in r.sentences if s <= i < e)
