"""What a rule may look at: one change between the versions, and what stands around it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from bank.edit.sets import JOINERS, NEGATIVES, SPEECH_VERBS
from bank.edit.tokens import END_MARKS, QUOTES, Token
from bank.language import parse

if TYPE_CHECKING:
    from spacy.tokens import Doc
    from spacy.tokens import Token as Word

_FINITE = frozenset(["VBD", "VBZ", "VBP", "MD"])
SUBJECTS = frozenset(["nsubj", "nsubjpass", "expl", "csubj"])


class Sentence:
    """The corrected version as tokens and as a parse, and the faulty one as tokens.

    Only the corrected version is parsed, as a parser has learnt from sentences without errors, and
    only when a rule asks: a capital or an end mark needs no parse.
    """

    def __init__(self, f: Sequence[Token], c: Sequence[Token], text: str) -> None:
        self.f = f
        self.c = c
        self._text = text

    @cached_property
    def doc(self) -> Doc:
        """The parse of the corrected version."""
        return parse(self._text)

    @cached_property
    def _at(self) -> dict[int, Word]:
        return {at: word for word in self.doc for at in range(word.idx, word.idx + len(word.text))}

    def word(self, j: int) -> Word | None:
        """The first parsed word of corrected token `j`."""
        return self._at.get(self.c[j].start) if 0 <= j < len(self.c) else None

    def last_word(self, j: int) -> Word | None:
        """The last parsed word of corrected token `j`, such as the `'s` of `Ben's`."""
        return self._at.get(self.c[j].end - 1) if 0 <= j < len(self.c) else None

    def key(self, j: int) -> str:
        """Corrected token `j` in small letters, or an empty text beyond the ends."""
        return self.c[j].key if 0 <= j < len(self.c) else ""

    def f_key(self, i: int) -> str:
        """Faulty token `i` in small letters, or an empty text beyond the ends."""
        return self.f[i].key if 0 <= i < len(self.f) else ""

    @cached_property
    def starts(self) -> frozenset[int]:
        """The corrected tokens that begin a sentence, also one inside quotation marks."""
        found = set()
        is_start = True
        for j, token in enumerate(self.c):
            if token.is_word and is_start:
                found.add(j)
                is_start = False
            elif token.text in END_MARKS:
                after = next((k for k in range(j + 1, len(self.c)) if self.c[k].is_word), j)
                is_small = self.c[after].text[0].islower()
                is_start = not is_small and not (after > j + 1 and self.tells_who_speaks(after))
            elif token.text in QUOTES and self._opens(j) and j + 1 < len(self.c):
                is_start = self.c[j + 1].text[:1].isupper()
        return frozenset(found)

    def _opens(self, j: int) -> bool:
        return sum(token.text in QUOTES for token in self.c[:j]) % 2 == 0

    def tells_who_speaks(self, j: int) -> bool:
        """Whether corrected token `j` begins the `Omar asked` that follows a speech."""
        if not self.is_name(j):
            return False
        ahead = range(j + 1, min(j + 4, len(self.c)))
        return any(self.key(k) in SPEECH_VERBS for k in ahead)

    def is_name(self, j: int) -> bool:
        """Whether corrected token `j` is a proper noun, or the pronoun I."""
        word = self.word(j)
        return word is not None and (word.pos_ == "PROPN" or self.c[j].text.split("'")[0] == "I")

    def has_negative(self, besides: int) -> bool:
        """Whether the corrected sentence has a no word at another place."""
        return any(
            j != besides and (token.key in NEGATIVES or token.key.endswith("n't"))
            for j, token in enumerate(self.c)
        )

    def clause_around(self, j: int) -> range:
        """The corrected tokens from the joiner or mark before `j` to the one after it."""
        start = j
        while start > 0 and not self._parts_clauses(start - 1):
            start -= 1
        end = j + 1
        while end < len(self.c) and not self._parts_clauses(end):
            end += 1
        return range(start, end)

    def _parts_clauses(self, j: int) -> bool:
        word = self.word(j)
        opens = word is not None and (word.pos_ == "SCONJ" or word.tag_[0] == "W")
        return not self.c[j].is_word or self.key(j) in JOINERS or opens

    def has_finite_verb(self, j: int) -> bool:
        """Whether the clause around corrected token `j` has a finite verb besides it."""
        words = [self.word(k) for k in self.clause_around(j) if k != j]
        return any(word is not None and word.tag_ in _FINITE for word in words)

    def clause_ahead(self, j: int) -> bool:
        """Whether there is a subject with its verb from `j` to the next joiner or mark."""
        for at in range(j, len(self.c)):
            token = self.c[at]
            if not token.is_word or (at > j and token.key in JOINERS):
                return False
            word = self.word(at)
            if word is None:
                continue
            if word.tag_[0] == "W" and at > j:
                return False
            if word.dep_ in SUBJECTS and word.head.pos_ in ("VERB", "AUX"):
                return True
            if word.pos_ == "VERB" and word.dep_ not in ("amod", "csubj"):
                return False
        return False

    def clause_behind(self, j: int) -> bool:
        """Whether there is a subject before corrected token `j` in its sentence."""
        for at in range(j - 1, -1, -1):
            if self.c[at].text in END_MARKS:
                return False
            word = self.word(at)
            if word is not None and word.dep_ in SUBJECTS:
                return True
        # "Sit down, and I will read": a request has no subject.
        first = self.word(max((s for s in self.starts if s <= j), default=0))
        return first is not None and first.tag_ == "VB"


@dataclass(frozen=True, slots=True)
class Change:
    """One difference: `wrong` for `right` in small letters (one may be empty), and where.

    `i` and `j` are the first tokens concerned in the faulty and the corrected version.
    """

    wrong: str
    right: str
    i: int
    j: int
    sentence: Sentence

    @property
    def word(self) -> Word | None:
        """The parse of the right word."""
        return self.sentence.word(self.j)

    @property
    def pos(self) -> str:
        """The part of speech of the right word, or an empty text."""
        word = self.word
        return word.pos_ if word is not None else ""

    @property
    def tag(self) -> str:
        """The Penn Treebank tag of the right word, or an empty text."""
        word = self.word
        return word.tag_ if word is not None else ""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a rule says of a change: the skill, and whether the rule is sure."""

    skill: str
    sure: bool = True
