"""Pronouns, comparison, double no words."""

from __future__ import annotations

from collections.abc import Iterator

from bank.edit import lexicon
from bank.edit.look import Sentence
from bank.edit.make.spot import Spot, one
from bank.edit.make.write import cased
from bank.edit.other_ways import _NO_FOR_ANY

_SUBJECT_TO_OBJECT = {"he": "him", "she": "her", "we": "us", "they": "them", "i": "me"}
_OBJECT_TO_SUBJECT = {"him": "he", "us": "we", "them": "they", "me": "I"}
_SELF = {"himself": "hisself", "themselves": "theirselves", "ourselves": "ourself"}


def wrong_pronouns(s: Sentence) -> Iterator[Spot]:
    """Him went, with he and I, them boots, theirselves."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None:
            continue
        if token.key in _SUBJECT_TO_OBJECT and word.dep_ in ("nsubj", "nsubjpass", "conj"):
            if s.key(j - 1) in ("than", "as", "is", "was"):
                continue
            new = _SUBJECT_TO_OBJECT[token.key]
            is_first = j in s.starts
            yield one("pronoun", token.start, token.end, cased(new, "A") if is_first else new)
        if token.key in _OBJECT_TO_SUBJECT and word.dep_ in ("dobj", "pobj", "dative", "conj"):
            yield one("pronoun", token.start, token.end, _OBJECT_TO_SUBJECT[token.key])
        if token.key in _SELF:
            yield one("pronoun", token.start, token.end, _SELF[token.key])
        after = s.word(j + 1)
        plural_thing = after is not None and after.tag_ == "NNS"
        if token.key in ("those", "these") and plural_thing and word.dep_ == "det":
            yield one("pronoun", token.start, token.end, cased("them", token.text))
        if token.key == "i" and s.key(j - 1) == "and" and j >= 2 and word.dep_ == "conj":
            yield from _me_first(s, j)


def _me_first(s: Sentence, j: int) -> Iterator[Spot]:
    """`Me and Ben` for `Ben and I`, at the start of a sentence."""
    start = max((k for k in s.starts if k <= j), default=0)
    first = s.c[start]
    if start != 0 or j - start > 4:
        return
    others = s.c[start : j - 1]
    if not all(t.is_word for t in others):
        return
    text = " ".join(t.text for t in others)
    if not s.is_name(start):
        text = text[0].lower() + text[1:]
    yield one("pronoun", first.start, s.c[j].end, f"Me and {text}")


def wrong_comparisons(s: Sentence) -> Iterator[Spot]:
    """More bigger, gooder, the most best, bigger of all."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or word.tag_ not in ("JJR", "JJS", "RBR", "RBS"):
            continue
        stem = lexicon.comparison_stem(token.key)
        if not stem or stem == token.key or token.key in ("more", "most", "less", "least"):
            continue
        is_most = word.tag_ in ("JJS", "RBS")
        extra = "most" if is_most else "more"
        if s.key(j - 1) not in ("more", "most", "much", "even") and j:
            yield one("comparison", token.start, token.start, extra + " ")
        ending = "est" if is_most else "er"
        if stem in ("good", "bad"):
            base = lexicon.doubled(stem) if lexicon.doubles(stem) else stem
            form = base + ending
            if not lexicon.is_word(form):
                yield one("comparison", token.start, token.end, cased(form, token.text))
        if token.key.endswith(("er", "est")) and not is_most and s.key(j + 1) == "than":
            other = token.key[:-2] + "est" if token.key.endswith("er") else ""
            if other and lexicon.comparison_stem(other) == stem:
                yield one("comparison", token.start, token.end, cased(other, token.text))
            yield one("comparison", token.start, token.end, cased(stem, token.text))


def second_no(s: Sentence) -> Iterator[Spot]:
    """No for any and nobody for anybody where there is a no already."""
    for j, token in enumerate(s.c):
        no = _NO_FOR_ANY.get(token.key, "").replace(" ", "-")
        if not no or not s.has_negative(j):
            continue
        before = any(t.key.endswith("n't") or t.key in ("never", "not") for t in s.c[:j])
        if before:
            no = "nobody" if no == "no-one" else no
            yield one("double-negative", token.start, token.end, cased(no, token.text))
    for j, token in enumerate(s.c):
        word = s.word(j)
        if token.key == "never" and word is not None and word.head.pos_ == "VERB":
            helper = s.key(j - 1)
            if helper in ("can", "could", "would", "should", "does", "did", "has", "have"):
                short = "can't" if helper == "can" else helper + "n't"
                yield one(
                    "double-negative",
                    s.c[j - 1].start,
                    s.c[j - 1].end,
                    cased(short, s.c[j - 1].text),
                )
