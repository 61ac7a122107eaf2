"""Wording that may stop a reader who works alone: two questions, a hidden not, nothing to point to.

None of these is an error, so none is certain: a teacher looks and decides.
"""

from __future__ import annotations

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
from bank.check.lexicon import word_set
from bank.check.marks import asks_something
from bank.check.reading import Reading

STEPS = word_set(
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
        if r.lower[i] in STEPS and _orders(r, i):
            steps.append(i)
            for k in range(i + 2, e - 1):
                joined = r.lower[k] in ("and", "then") or r.gap[k - 1].startswith((",", ";"))
                v = k + 1 if r.lower[k] in ("and", "then") else k
                while v < e - 1 and r.lower[v] in ("then", "and", "also"):
                    v += 1
                if joined and r.lower[v] in STEPS and v not in steps and _orders(r, v):
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
