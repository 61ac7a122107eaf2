"""Words left out, doubled or changed about; two sentences run together; spaces."""

from __future__ import annotations

from collections.abc import Iterator

from bank.edit import lexicon
from bank.edit.look import Sentence
from bank.edit.make.spot import Spot, one
from bank.edit.wordset import word_set
from bank.language import inflections

# After these the word "to" may be dropped, and the sentence stays right.
_BARE_AFTER = word_set("help go come dare need try")
_GO = word_set("go come listen look talk wait belong")


def words_left_out(s: Sentence) -> Iterator[Spot]:
    """The is of a sentence, the to of `want to go`, the to or at of `go to the park`."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or not j or j + 1 >= len(s.c) or not s.c[j + 1].is_word:
            continue
        spot = one("missing-word", token.start, s.c[j + 1].start, "")
        if token.key in ("is", "are", "was", "were", "am") and s.clause_behind(j):
            if not _stays_right(s, j):
                yield spot
        elif token.key == "to" and word.tag_ == "TO" and word.dep_ == "aux":
            verb = s.word(j - 1)
            is_bare = verb is None or verb.pos_ != "VERB" or verb.lemma_ in _BARE_AFTER
            if not is_bare and not _reads_as_thing(s, j + 1):
                yield spot
        elif token.key in ("to", "at", "for") and word.dep_ == "prep":
            verb = s.word(j - 1)
            if verb is not None and verb.pos_ == "VERB" and verb.lemma_ in _GO:
                after = s.word(j + 1)
                if after is not None and after.pos_ in ("DET", "PRON", "NOUN", "PROPN"):
                    yield spot


def _stays_right(s: Sentence, j: int) -> bool:
    """`The door was closed`, without `was`, is right again."""
    after = s.word(j + 1)
    return (
        after is not None
        and after.tag_ in ("VBN", "VBD")
        and (after.text in inflections(after.lemma_, "VBD"))
    )


def _reads_as_thing(s: Sentence, j: int) -> bool:
    """`I want to help`, without `to`, is right again; `I want to help my dad` is not."""
    after = s.word(j + 1)
    has_object = after is not None and after.pos_ in ("DET", "PRON", "PROPN", "NUM")
    return bool(lexicon.lemmas(s.key(j), "NOUN")) and not has_object


def words_doubled(s: Sentence) -> Iterator[Spot]:
    """A small word twice; the subject again as a pronoun."""
    for j, token in enumerate(s.c):
        word = s.word(j)
        if word is None or not j or j + 1 >= len(s.c) or not s.c[j + 1].is_word:
            continue
        small = word.pos_ in ("DET", "ADP", "CCONJ") and token.key not in ("her", "that")
        if small and token.text.islower():
            yield one("extra-word", token.start, token.start, token.text + " ")
        if word.dep_ == "nsubj" and word.pos_ == "NOUN" and s.word(j + 1) is not None:
            pronoun = {"NNS": "they"}.get(word.tag_, "")
            lowered = token.key
            if lowered in ("brother", "dad", "uncle", "grandpa", "boy", "man", "grandfather"):
                pronoun = "he"
            if lowered in ("sister", "mom", "aunt", "grandma", "girl", "woman", "grandmother"):
                pronoun = "she"
            after = s.word(j + 1)
            if pronoun and after is not None and after.pos_ in ("VERB", "AUX"):
                yield one("extra-word", token.end, token.end, " " + pronoun)


def words_exchanged(s: Sentence) -> Iterator[Spot]:
    """Two neighbours in the wrong order: `dog the`, `ball red`."""
    for j in range(len(s.c) - 1):
        one_, two = s.c[j], s.c[j + 1]
        a, b = s.word(j), s.word(j + 1)
        if a is None or b is None or not (one_.is_word and two.is_word):
            continue
        if one_.key == two.key or s.is_name(j) or s.is_name(j + 1):
            continue
        is_det = a.pos_ == "DET" and b.pos_ in ("NOUN", "ADJ") and one_.key in ("a", "an", "the")
        is_adj = a.pos_ == "ADJ" and b.pos_ == "NOUN" and a.head == b and b.tag_ in ("NN", "NNS")
        is_prep = a.pos_ == "ADP" and b.pos_ in ("DET",) and a.dep_ == "prep"
        if not (is_det or is_adj or is_prep):
            continue
        first, second = one_.text, two.text
        if j and j in s.starts:
            continue
        if j in s.starts:
            second, first = second[0].upper() + second[1:], first[0].lower() + first[1:]
        yield one("word-order", one_.start, two.end, f"{second} {first}")


def sentences_joined(s: Sentence) -> Iterator[Spot]:
    """The full stop between two sentences left out, or a comma for it."""
    for j, token in enumerate(s.c[:-1]):
        after = s.c[j + 1]
        if token.text not in (".", "!") or not after.is_word or j + 1 not in s.starts:
            continue
        if not s.clause_behind(j) or not s.clause_ahead(j + 1):
            continue
        keep = s.is_name(j + 1)
        first = after.text[0] if keep else after.text[0].lower()
        yield one("run-on", token.start, after.start + 1, " " + first)
        yield one("run-on", token.start, after.start + 1, ", " + first)


def spaces(s: Sentence) -> Iterator[Spot]:
    """Two words written as one, or a joined word written as two."""
    for j, token in enumerate(s.c):
        pair = (token.key, s.key(j + 1))
        if pair in _ALWAYS_TWO and j + 1 < len(s.c):
            yield one("spacing", token.end, s.c[j + 1].start, "")
        if len(token.key) < 6 or not token.text.isalpha() or s.is_name(j):
            continue
        for cut in range(3, len(token.key) - 2):
            left, right = token.key[:cut], token.key[cut:]
            if (left, right) in _ALWAYS_TWO or not _is_joint(token.key, left, right):
                continue
            yield one("spacing", token.start + cut, token.start + cut, " ")


_ALWAYS_TWO = frozenset([("a", "lot"), ("each", "other"), ("in", "front")])
# Not "some", "any", "every" or a color: "every one" and "black bird" can be right.
_JOINT_HEADS = word_set(
    "grand him her them my your it our in out up down bath bed birth class sun snow rain star foot "
    "base butter home play straw lunch sail air after back bull cup dragon fire flash gum hair hand "
    "lady lip mail moon news note pan pea pine pop rail sea side sand scare ship skate tooth water "
    "week wheel work door book basket"
)


def _is_joint(whole: str, left: str, right: str) -> bool:
    return (
        left in _JOINT_HEADS
        and lexicon.is_word(left)
        and lexicon.is_word(right)
        and len(right) >= 3
        and not whole.endswith(("ing", "ed"))
    )
