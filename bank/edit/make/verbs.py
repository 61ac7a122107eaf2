"""Verbs as children say them: runned, brang, have ate, he don't, they was."""

from __future__ import annotations

from collections.abc import Iterator

from bank.edit import lexicon
from bank.edit.look import SUBJECTS, Sentence
from bank.edit.make.spot import Spot, one
from bank.edit.make.write import cased
from bank.edit.sets import DO, HAVE, MODALS
from bank.edit.wordset import word_set
from bank.language import inflections

_SPANS = word_set("night week month year summer winter spring fall monday friday sunday")


def other_number(s: Sentence) -> Iterator[Spot]:
    """A verb that does not match its subject."""
    swaps = {
        "is": "are",
        "are": "is",
        "was": "were",
        "were": "was",
        "has": "have",
        "have": "has",
        "does": "do",
        "do": "does",
        "doesn't": "don't",
        "don't": "doesn't",
        "isn't": "aren't",
        "aren't": "isn't",
        "wasn't": "weren't",
        "weren't": "wasn't",
        "hasn't": "haven't",
        "haven't": "hasn't",
        "am": "is",
    }
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or word.pos_ not in ("VERB", "AUX") or word.tag_ not in _FINITE:
            continue
        subject = _subject(s, j)
        if subject is None or _is_either(subject):
            continue
        new = swaps.get(token.key, "")
        if not new and word.pos_ == "VERB":
            if word.tag_ == "VBZ":
                new = word.lemma_
            elif word.tag_ == "VBP" and token.key == word.lemma_:
                new = next(iter(inflections(word.lemma_, "VBZ")), "")
        # "If I were you" is right.
        is_wish = new == "were" and any(t.key in ("if", "wish", "though") for t in s.c[:j])
        if new and new != token.key and not is_wish:
            yield one("agreement", token.start, token.end, cased(new, token.text))


_FINITE = frozenset(["VBZ", "VBP", "VBD"])
_EITHER = word_set(
    "sheep fish deer moose you team family class group who which that none some all most "
    "half any what rest"
)


def _subject(s: Sentence, j: int) -> str | None:
    """The subject of the verb, in small letters."""
    word = s.word(j)
    if word is None:
        return None
    for verb in (word, word.head):
        for child in verb.children:
            if child.dep_ in SUBJECTS:
                return str(child.text.lower())
        if verb.dep_ == "conj" and verb is word:
            continue
        if word.dep_ not in ("aux", "auxpass", "conj"):
            break
    return None


def _is_either(subject: str) -> bool:
    """Subjects that take both forms in somebody's good English."""
    return subject in _EITHER - {"you"}


# The past forms that children put a second ending on (common practice).
_TWICE_PAST = frozenset("went ate came took broke fell saw ran".split())


def child_forms(s: Sentence) -> Iterator[Spot]:
    """A form that no dictionary has: goed, brang, eated."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or word.tag_ not in ("VBD", "VBN") or word.pos_ not in ("VERB",):
            continue
        if token.key.endswith("ed") or not token.text.isalpha():
            continue
        lemma = word.lemma_.lower()
        if token.key not in inflections(lemma, word.tag_):
            continue
        said = [lexicon.regular_past(lemma)]
        if token.key in _TWICE_PAST:
            said.append(lexicon.regular_past(token.key))
        if token.key.endswith("ought") and "i" in lemma:
            said += [lemma.replace("i", "a"), lemma.replace("i", "u")]
        for form in said:
            if not lexicon.is_word(form) and form in lexicon.child_verb_forms(lemma):
                yield one("tense", token.start, token.end, cased(form, token.text))


def wrong_part(s: Sentence) -> Iterator[Spot]:
    """The past for the form after have, and that form without have: have ate, I seen."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or word.pos_ != "VERB" or not token.text.isalpha():
            continue
        lemma = word.lemma_.lower()
        past, part = inflections(lemma, "VBD"), inflections(lemma, "VBN")
        if len(past) != 1 or len(part) != 1 or past == part:
            continue
        before = s.word(j - 1)
        has_have = before is not None and before.lemma_ == "have" and before.dep_ == "aux"
        if word.tag_ == "VBN" and has_have and token.key == part[0]:
            yield one("tense", token.start, token.end, cased(past[0], token.text))
        if (
            word.tag_ == "VBD"
            and token.key == past[0]
            and before is not None
            and before.dep_ == "nsubj"
            and part[0] != lemma
        ):
            yield one("tense", token.start, token.end, cased(part[0], token.text))


def form_after_helper(s: Sentence) -> Iterator[Spot]:
    """A past form after did, to, can; a plain form after is, has; a plain form in the past."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or word.pos_ != "VERB" or not token.text.isalpha():
            continue
        lemma = word.lemma_.lower()
        past = inflections(lemma, "VBD")
        before = s.key(j - 1)
        bare = before.removesuffix("n't")
        helped = bare in DO | MODALS | {"ca", "wo"} or before == "to"
        if word.tag_ == "VB" and helped and past and past[0] != token.key:
            yield one("tense", token.start, token.end, cased(past[0], token.text))
        is_state = bool(lexicon.lemmas(lemma, "ADJ")) or lemma in inflections(lemma, "VBN")
        if word.tag_ == "VBG" and before in ("is", "are", "was", "were", "am") and not is_state:
            yield one("tense", token.start, token.end, cased(lemma, token.text))
        if word.tag_ == "VBN" and before in HAVE and lemma != token.key:
            yield one("tense", token.start, token.end, cased(lemma, token.text))
        is_told = any(
            t.key in ("yesterday", "ago") or t.key == "last" and s.key(k + 1) in _SPANS
            for k, t in enumerate(s.c)
        )
        if word.tag_ == "VBD" and is_told and lemma != token.key and word.dep_ == "ROOT":
            yield one("tense", token.start, token.end, cased(lemma, token.text))
