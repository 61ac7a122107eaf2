"""Holding the idioms against a text."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache

from bank.check.figures.inventory import Idiom, Shape, keys_of, shapes
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

_SKIPPED = word_set(
    """really so very just totally completely always all such quite too already still almost even
    never not now both also only kind sort fully truly pretty big little nice whole"""
)
_POSSESSIVE = word_set("my your his her its our their one's someone's everyone's somebody's")
_OBJECT = word_set(
    "me you him her it us them someone everyone anyone somebody everybody this that people"
)
_SELF = word_set("myself yourself himself herself itself ourselves themselves yourselves")
_OPENS_NAME = _POSSESSIVE | word_set("the a an this that these those")
_ABOUT_WORDS = word_set("saying sayings idiom idioms phrase expression expressions proverb")
# After an idiom that can be meant as it says, a thing of this sort shows that it is.
_SCENE = word_set(
    """floor table counter plate shelf barn field garden pan pot bowl ground grass road sidewalk
    pond lake river bag box basket kitchen desk wall tree yard porch bucket street water beach
    sand snow mud dirt fence window oven fridge sink cup jar car truck"""
)


@dataclass(slots=True)
class Match:
    """An idiom found from word `first` to word `last`, with what fills its slots."""

    idiom: Idiom
    first: int
    last: int
    slots: dict[str, str] = field(default_factory=dict)
    verb: tuple[str, int] | None = None


@cache
def _shapes_at(word: str) -> tuple[Shape, ...]:
    index = shapes()
    return tuple(shape for key in keys_of(word) for shape in index.get(key, ()))


_keys = cache(keys_of)


def find_idioms(r: Reading) -> list[Match]:
    """The idioms in a text, the longest where several start from the same words."""
    found: list[Match] = []
    keys: set[str] | None = None
    for i, word in enumerate(r.lower):
        candidates = _shapes_at(word)
        if not candidates:
            continue
        if keys is None:
            keys = {key for w in r.lower for key in _keys(w)}
        for shape in candidates:
            if any(part.isdisjoint(keys) for part in shape.others):
                continue
            match = _match(r, i, shape)
            if match is not None and _meant_as_figure(r, match):
                found.append(match)
    found.sort(key=lambda m: (m.first - m.last, m.first))
    kept: list[Match] = []
    for match in found:
        if all(match.last < other.first or other.last < match.first for other in kept):
            kept.append(match)
    return kept


def _match(r: Reading, i: int, shape: Shape) -> Match | None:
    slots: dict[str, str] = {}
    parts, anchor = shape.parts, shape.anchor
    last = _forward(r, i, parts[anchor:], slots)
    if last is None:
        return None
    first = _backward(r, i, parts[:anchor], slots)
    if first is None:
        return None
    if "," not in shape.idiom.pattern and any("," in gap for gap in r.gap[first:last]):
        return None
    if any(mark in gap for gap in r.gap[first:last] for mark in ".!?;:"):
        return None
    match = Match(shape.idiom, first, last, slots)
    match.verb = _verb(r, match)
    return match


def _forward(
    r: Reading, i: int, parts: tuple[frozenset[str], ...], slots: dict[str, str]
) -> int | None:
    """The last word of a match of `parts` that starts at word `i`."""
    if not parts:
        return i - 1
    for end in _ends(r, i, parts[0], slots, 1):
        last = _forward(r, end + 1, parts[1:], slots)
        if last is not None:
            return last
    if 0 < i < r.n and r.lower[i] in _SKIPPED:
        for end in _ends(r, i + 1, parts[0], slots, 1):
            last = _forward(r, end + 1, parts[1:], slots)
            if last is not None:
                return last
    return None


def _backward(
    r: Reading, i: int, parts: tuple[frozenset[str], ...], slots: dict[str, str]
) -> int | None:
    """The first word of a match of `parts` that ends right before word `i`."""
    if not parts:
        return i
    for start in _ends(r, i - 1, parts[-1], slots, -1):
        first = _backward(r, start, parts[:-1], slots)
        if first is not None:
            return first
    if i > 0 and r.lower[i - 1] in _SKIPPED:
        for start in _ends(r, i - 2, parts[-1], slots, -1):
            first = _backward(r, start, parts[:-1], slots)
            if first is not None:
                return first
    return None


def _ends(r: Reading, i: int, part: frozenset[str], slots: dict[str, str], step: int) -> list[int]:
    """Where a match of one part that begins at `i` and runs in direction `step` can end."""
    if not 0 <= i < r.n:
        return []
    word = r.lower[i]
    if ".." in part:
        # The part before or after the gap still has to match; a gap of no words steps back by one.
        return [i + step * k for k in range(-1, 4) if -1 <= i + step * k <= r.n]
    if "MY" in part:
        return _owner(r, i, slots, step)
    if "ME" in part:
        return _thing(r, i, slots, step)
    if "MYself" in part and word in _SELF:
        return [i]
    return [i] if not part.isdisjoint(_keys(word)) else []


def _owner(r: Reading, i: int, slots: dict[str, str], step: int) -> list[int]:
    """my, Ana's, her grandfather's: where the owner that begins at `i` can end."""
    word = r.lower[i]
    if step > 0 and word in _OPENS_NAME and r.word(i + 1).endswith(("'s", "s'")):
        slots["MY"] = f"{r.words[i]} {r.words[i + 1]}"
        return [i + 1]
    if word in _POSSESSIVE:
        slots["MY"] = r.words[i]
        return [i]
    if word.endswith(("'s", "s'")):
        slots["MY"] = r.words[i]
        if step < 0 and i > 0 and r.lower[i - 1] in _OPENS_NAME:
            slots["MY"] = f"{r.words[i - 1]} {r.words[i]}"
            return [i - 1]
        return [i]
    return []


def _thing(r: Reading, i: int, slots: dict[str, str], step: int) -> list[int]:
    word = r.lower[i]
    if word in _OBJECT or r.words[i][0].isupper() or (r.tag[i] or "X")[0] == "N":
        ends = [i]
        if step < 0 and i > 0 and r.lower[i - 1] in _OPENS_NAME:
            ends = [i - 1]
        slots["ME"] = r.text[r.starts[min(i, ends[0])] : r.ends[i]]
        return ends
    if step > 0 and word in _OPENS_NAME and i + 1 < r.n:
        slots["ME"] = r.text[r.starts[i] : r.ends[i + 1]]
        return [i + 1, i + 2]
    return []


def _verb(r: Reading, match: Match) -> tuple[str, int] | None:
    """The first word of the match whose form the pattern leaves open: its lemma and its place."""
    open_forms = {
        word[:-1] for part in match.idiom.pattern.split() for word in part.strip("()").split("/")
        if word.endswith("*")
    }  # fmt: skip
    for i in range(match.first, match.last + 1):
        word = r.lower[i]
        if "be" in open_forms and "be*" in _keys(word):
            return "be", i
        for lemma in lemmas(word).get("VERB", ()):
            if lemma in open_forms:
                return lemma, i
    return None


def _meant_as_figure(r: Reading, match: Match) -> bool:
    idiom = match.idiom
    around = [w for i, w in enumerate(r.lower) if not match.first <= i <= match.last]
    if not _ABOUT_WORDS.isdisjoint(around):
        return False
    if idiom.needs:
        return any(_decides(word, idiom.needs) for word in around)
    if idiom.literal:
        if any(_decides(word, idiom.literal) for word in around):
            return False
        after = r.lower[match.last + 1 : match.last + 5]
        if after[:1] and after[0] in _PLACING and not _SCENE.isdisjoint(after):
            return False
    return True


_PLACING = word_set("on in into under off from of by near onto behind beside across through inside")


def _decides(word: str, deciding: frozenset[str]) -> bool:
    if word in deciding:
        return True
    return any(lemma in deciding for found in lemmas(word).values() for lemma in found)
