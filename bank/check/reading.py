"""A text as the rules read it: its words as a person sees them, with the parse laid beside them.

spaCy cuts "dont" into two tokens and "girls'" into two more; a rule about what stands on the page
wants the words between the spaces. A `Reading` keeps those, in parallel lists, because reading
attributes off spaCy tokens again in every rule would cost more than the rules.
"""

from __future__ import annotations

import re
from functools import cached_property
from typing import TYPE_CHECKING

from bank.check.lexicon import word_set

if TYPE_CHECKING:
    from spacy.strings import StringStore
    from spacy.tokens import Doc

_WORD = re.compile(r"[^\W_]+(?:['’-][^\W_]+)*")
_SHORT = word_set("mr mrs ms dr st mt jr sr prof gen rev capt sgt lt no vs etc dept ave rd")


_UNITS = word_set("in ft yd mi oz lb lbs cm mm km kg pt qt gal min sec hr")
_ATTRIBUTES: list[int | str] = ["IDX", "TAG", "DEP", "HEAD"]
_WRAP, _HALF = 1 << 64, 1 << 63
_names: dict[int, str] = {}


def _name(number: int, strings: StringStore) -> str:
    """The string behind one of spaCy's numbers."""
    name = _names.get(number)
    if name is None:
        name = _names[number] = strings[number] if number else ""
    return name


class Reading:
    """The words of one text in order, and for word `i`:

    `words[i]` as written, `lower[i]`, `starts[i]` and `ends[i]` (offsets), `gap[i]` (what stands
    between it and the next word), `tag[i]`, `dep[i]` and `head[i]` (of the first spaCy token of the
    word; `head` is a word's index), `first[i]` whether it opens a sentence.
    """

    __slots__ = (
        "__dict__", "dep", "doc", "ends", "first", "gap", "head", "kind",
        "lower", "n", "opening", "starts", "tag", "text", "words",
    )  # fmt: skip

    def __init__(self, text: str, kind: str, doc: Doc) -> None:
        self.text, self.kind, self.doc = text, kind, doc
        found = list(_WORD.finditer(text))
        self.n = n = len(found)
        self.words = words = [m.group() for m in found]
        self.lower = [w.lower().replace("’", "'") for w in words]
        self.starts = [m.start() for m in found]
        self.ends = ends = [m.end() for m in found]
        self.opening = text[: self.starts[0]] if n else text
        following = [*self.starts[1:], len(text)]
        self.gap = [text[end : following[i]] for i, end in enumerate(ends)]
        self._lay_parse(doc)
        self.first = self._sentence_starts()

    def _lay_parse(self, doc: Doc) -> None:
        n = self.n
        self.tag, self.dep, self.head = [""] * n, [""] * n, list(range(n))
        heads = [0] * n
        word_of: list[int] = []
        at, last = -1, -1
        # One array for the whole text: a Token for each word would cost more than the rules.
        strings = doc.vocab.strings
        places = doc.to_array(_ATTRIBUTES).tolist()
        for k, (start, tag, dep, head) in enumerate(places):
            while at + 1 < n and self.starts[at + 1] <= start:
                at += 1
            word_of.append(max(at, 0))
            if at > last:
                last = at
                self.tag[at], self.dep[at] = _name(tag, strings), _name(dep, strings)
                # A head is stored as a distance; those to the left wrap around.
                heads[at] = k + (head - _WRAP if head >= _HALF else head)
        if word_of:
            self.head = [word_of[h] for h in heads]

    def _sentence_starts(self) -> list[bool]:
        first = [False] * self.n
        if not self.n:
            return first
        first[0] = True
        for i in range(self.n - 1):
            gap = self.gap[i]
            if gap == " ":
                continue
            if "!" in gap or "?" in gap or "\n" in gap:
                first[i + 1] = not (gap[0] in "!?" and any(q in gap for q in "\"”'’"))
            elif "." in gap:
                first[i + 1] = not self._is_short(i) and not self._is_within(i)
        return first

    def _is_within(self, i: int) -> bool:
        """Whether the dot behind word `i` stands inside a number or behind a short unit."""
        written = self.words[i + 1]
        if self.gap[i] == "." and not written[0].isupper():
            return True  # 5.00
        return self.lower[i] in _UNITS and not written[0].isupper() and self.words[i - 1].isdigit()

    def _is_short(self, i: int) -> bool:
        word = self.lower[i]
        if self.gap[i][0] != ".":
            return False
        if word in _SHORT:
            return True
        if word == "m" and i and self.lower[i - 1] in ("a", "p") and self.words[i + 1][0].islower():
            return True
        return len(word) == 1 and word != "i" and self.words[i + 1][0].isalpha()

    @cached_property
    def sentences(self) -> list[tuple[int, int]]:
        """The sentences as word ranges: first word, one past the last."""
        begins = [i for i, is_first in enumerate(self.first) if is_first]
        return list(zip(begins, [*begins[1:], self.n], strict=True)) if begins else []

    def near(self, i: int) -> bool:
        """Whether nothing but a space stands between word `i` and the next."""
        return 0 <= i < self.n - 1 and self.gap[i] == " "

    def word(self, i: int) -> str:
        """Word `i` in small letters, "" outside the text or across punctuation is not looked at."""
        return self.lower[i] if 0 <= i < self.n else ""

    def before(self, i: int) -> str:
        """The word right before `i` with only a space between, else ""."""
        return self.lower[i - 1] if i > 0 and self.gap[i - 1] == " " else ""

    def after(self, i: int) -> str:
        """The word right after `i` with only a space between, else ""."""
        return self.lower[i + 1] if i + 1 < self.n and self.gap[i] == " " else ""
