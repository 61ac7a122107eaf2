"""Which tokens of the faulty version stand for which of the corrected one.

A shortest path in the manner of Damerau and Levenshtein over tokens, with three more steps that
a child's sentence needs: two words for one (`grand mother`), one for two (`alot`), and two
neighbouring groups in the wrong order (`dog a big`). Costs say how likely one word stands for
another, so that `goed` meets `went` and not the word beside it.
"""

from __future__ import annotations

import heapq
import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from bank.edit import lexicon
from bank.edit.sets import (
    ARTICLES,
    AUXILIARIES,
    BE,
    CONFUSED,
    DEMONSTRATIVE,
    NEGATIVE_PAIRS,
    NUMBER_WORDS,
    PERSONAL,
    PRONOUNS,
)
from bank.edit.tokens import END_MARKS, QUOTES, Token

DROP_WORD = 1.0
DROP_MARK = 0.55
UNRELATED = 1.75
NEVER = 9.0
_LONGEST_MOVE = 7
# Two words for one: the cheapest step that leaves one version behind the other.
LEAST_JOIN = 0.25


@dataclass(frozen=True, slots=True)
class Step:
    """Tokens `i0:i1` of the faulty version stand for tokens `j0:j1` of the corrected one.

    Where they change places, `order` says which of the faulty tokens comes first, second … in the
    corrected version.
    """

    i0: int
    i1: int
    j0: int
    j1: int
    order: tuple[int, ...] = ()


def align(faulty: Sequence[Token], corrected: Sequence[Token]) -> list[Step]:
    """The cheapest steps from left to right that cover both versions."""
    # From the end first: of two equal words side by side the first is the one too many.
    f_end, c_end = len(faulty), len(corrected)
    while f_end and c_end and faulty[f_end - 1].text == corrected[c_end - 1].text:
        f_end, c_end = f_end - 1, c_end - 1
    start = 0
    while start < min(f_end, c_end) and faulty[start].text == corrected[start].text:
        start += 1
    same_before = [Step(k, k + 1, k, k + 1) for k in range(start)]
    same_after = [
        Step(f_end + k, f_end + k + 1, c_end + k, c_end + k + 1) for k in range(len(faulty) - f_end)
    ]
    middle = _cheapest(faulty[start:f_end], corrected[start:c_end])
    moved = [Step(s.i0 + start, s.i1 + start, s.j0 + start, s.j1 + start, s.order) for s in middle]
    return same_before + moved + same_after


def _cheapest(f: Sequence[Token], c: Sequence[Token]) -> list[Step]:
    """Search from the start, the cheapest spot first, so that most spots are never looked at.

    What is left to drop because one version is longer is counted in advance (A*, Hart, Nilsson and
    Raphael 1968).
    """
    rows, columns = len(f), len(c)
    best: dict[tuple[int, int], float] = {(0, 0): 0.0}
    back: dict[tuple[int, int], Step] = {}
    queue: list[tuple[float, int, int, int]] = [(0.0, 0, 0, 0)]
    done: set[tuple[int, int]] = set()
    while queue:
        _, _, i, j = heapq.heappop(queue)
        if (i, j) in done:
            continue
        done.add((i, j))
        if i == rows and j == columns:
            break
        here = best[i, j]
        for step, price in _steps_from(f, c, i, j):
            spot = (step.i1, step.j1)
            cost = here + price
            if cost < best.get(spot, math.inf) - 1e-9:
                best[spot] = cost
                back[spot] = step
                ahead = LEAST_JOIN * abs((rows - spot[0]) - (columns - spot[1]))
                heapq.heappush(queue, (cost + ahead, -spot[0] - spot[1], *spot))
    found: list[Step] = []
    i, j = rows, columns
    while i or j:
        step = back[i, j]
        found.append(step)
        i, j = step.i0, step.j0
    return found[::-1]


def _steps_from(f: Sequence[Token], c: Sequence[Token], i: int, j: int) -> list[tuple[Step, float]]:
    steps: list[tuple[Step, float]] = []
    more_f, more_c = i < len(f), j < len(c)
    if more_f:
        steps.append((Step(i, i + 1, j, j), _drop(f, i)))
    if more_c:
        steps.append((Step(i, i, j, j + 1), _drop(c, j)))
    if not (more_f and more_c):
        return steps
    steps.append((Step(i, i + 1, j, j + 1), pair_cost(f[i], c[j])))
    if f[i].text == c[j].text:
        return steps
    if i + 1 < len(f) and (price := _joined(f[i], f[i + 1], c[j])) < NEVER:
        steps.append((Step(i, i + 2, j, j + 1), price))
    if j + 1 < len(c) and (price := _joined(c[j], c[j + 1], f[i])) < NEVER:
        steps.append((Step(i, i + 1, j, j + 2), price))
    steps += _turns(f, c, i, j)
    return steps


def _drop(row: Sequence[Token], at: int) -> float:
    token = row[at]
    if not token.is_word:
        return DROP_MARK
    if at and row[at - 1].key == token.key:
        return DROP_WORD + 0.01
    return DROP_WORD


def _turns(f: Sequence[Token], c: Sequence[Token], i: int, j: int) -> list[tuple[Step, float]]:
    """Neighbouring groups that change places; `me and Ben` for `Ben and I` is one."""
    if f[i].key == c[j].key:
        return []
    room = min(_words_ahead(f, i), _words_ahead(c, j))
    ahead = {c[k].key for k in range(j + 1, j + room)}
    if f[i].key not in ahead and f[i].key not in ("me", "i", "myself"):
        return []
    found: list[tuple[Step, float]] = []
    for length in range(2, room + 1):
        places = range(length)
        price = 0.8 + 0.05 * length
        orders = [((*places[turn:], *places[:turn]), price) for turn in range(1, length)]
        if length > 2:
            # The first and the last change places around the middle.
            orders.append(((length - 1, *places[1:-1], 0), price))
        for order, cost in orders:
            if all(f[i + k].key == c[j + at].key for at, k in enumerate(order)):
                found.append((Step(i, i + length, j, j + length, order), cost))
        if length >= 3 and _changed_places(f, c, i, j, length):
            order = (*places[2:], 1, 0)
            found.append((Step(i, i + length, j, j + length, order), 0.8))
    return found


def _words_ahead(row: Sequence[Token], at: int) -> int:
    """How many words stand in a row from `at`, up to the longest move: marks do not move."""
    end = at
    while end < len(row) and row[end].is_word and end - at < _LONGEST_MOVE:
        end += 1
    return end - at


def _changed_places(f: Sequence[Token], c: Sequence[Token], i: int, j: int, length: int) -> bool:
    """`me and X` against `X and I`."""
    last = j + length - 1
    return (
        f[i].key in ("me", "i", "myself")
        and c[last].key in ("i", "me")
        and f[i + 1].key in ("and", "or")
        and c[last - 1].key == f[i + 1].key
        and all(pair_cost(f[i + 2 + k], c[j + k]) < UNRELATED for k in range(length - 2))
    )


@lru_cache(maxsize=32768)
def pair_cost(wrong: Token, right: Token) -> float:
    """How unlikely it is that `wrong` was written for `right`: from 0 to `UNRELATED`, or `NEVER`."""
    if wrong.text == right.text:
        return 0.0
    if wrong.is_word != right.is_word:
        return NEVER
    if not wrong.is_word:
        return _mark_cost(wrong, right)
    if wrong.key == right.key:
        return 0.1
    if wrong.letters == right.letters:
        return 0.2
    return word_cost(wrong.key, right.key)


def _mark_cost(wrong: Token, right: Token) -> float:
    if wrong.key == right.key:
        return 0.05
    if wrong.text in END_MARKS and right.text in END_MARKS:
        return 0.35
    return NEVER if wrong.text in QUOTES or right.text in QUOTES else 0.9


@lru_cache(maxsize=32768)
def word_cost(w: str, r: str) -> float:
    """The cost of one word for another, both in small letters, by the nearest kinship."""
    w_bare, r_bare = w.replace("'", ""), r.replace("'", "")
    close = lexicon.closeness(w_bare, r_bare) if _may_be_close(w_bare, r_bare) else 0.0
    if frozenset((w, r)) in CONFUSED:
        return 0.3
    if w in ARTICLES and r in ARTICLES:
        return 0.35
    if w in NEGATIVE_PAIRS and r in NEGATIVE_PAIRS[w]:
        return 0.35
    if NUMBER_WORDS.get(w) == r or NUMBER_WORDS.get(r) == w:
        return 0.3
    if w in BE and r in BE:
        return 0.4
    if any(w in line and r in line for line in PERSONAL):
        return 0.35
    if w in PRONOUNS and r in PRONOUNS or w in DEMONSTRATIVE and r in DEMONSTRATIVE:
        return 0.45
    if w_bare + "s" == r_bare or w_bare == r_bare + "s":
        return 0.3
    if akin(w_bare, r_bare):
        return 0.35
    if close < 0.7 and lexicon.is_word(w) and lexicon.same_sound(w, r):
        return 0.4
    if w in AUXILIARIES and r in AUXILIARIES:
        return 0.8
    if _contraction_stem(w) and _contraction_stem(w) == _contraction_stem(r):
        return 0.4
    if close >= 0.45:
        return min(UNRELATED - 0.05, 0.35 + (1 - close) * 1.6)
    if close >= 0.3 and w[0] == r[0] and not lexicon.is_word(w):
        return 1.3
    return UNRELATED


_ONE_VOWEL = str.maketrans("aeiouy", "eeeeee")


def _may_be_close(w: str, r: str) -> bool:
    """Whether the letters alone leave a closeness of 0.3 possible: a quick look before the long one."""
    longest = max(len(w), len(r))
    left = list(w.translate(_ONE_VOWEL))
    common = 0
    for letter in r.translate(_ONE_VOWEL):
        if letter in left:
            left.remove(letter)
            common += 1
    return common >= 0.3 * longest


def _contraction_stem(word: str) -> str:
    """What kind of contraction a word is: `don't` and `doesn't` share one."""
    for ending in ("n't", "nt", "'s", "'re", "'ll", "'ve", "'d", "'m"):
        if word.endswith(ending) and word[: -len(ending)] in AUXILIARIES | {
            "ai",
            "wo",
            "ca",
            "sha",
        }:
            return "n't" if ending in ("n't", "nt") else ending
    return ""


@lru_cache(maxsize=16384)
def akin(w: str, r: str) -> bool:
    """Whether two words are forms of one word, standard or as children say them."""
    if lexicon.lemmas(w) & lexicon.lemmas(r):
        return True
    # Forms of one word begin alike, or as its dictionary form does: goed, go, went.
    if w[:1] != r[:1] and not any(lemma[:1] == w[:1] for lemma in lexicon.lemmas(r)):
        stem = lexicon.comparison_stem(r)
        return bool(stem) and stem != r and lexicon.comparison_stem(w) == stem
    for lemma in lexicon.lemmas(r, "VERB") | lexicon.lemmas(r, "AUX"):
        if w in lexicon.child_verb_forms(lemma):
            return True
    for lemma in lexicon.lemmas(r, "NOUN"):
        if w in lexicon.child_plurals(lemma):
            return True
    stem = lexicon.comparison_stem(r)
    return bool(stem) and stem != r and lexicon.comparison_stem(w) == stem


def _joined(one: Token, two: Token, whole: Token) -> float:
    """The cost of two tokens for one: joined letters, or `more fast` for `faster`."""
    if not (one.is_word and two.is_word and whole.is_word):
        return NEVER
    if one.key in ("more", "most") and whole.key not in ("more", "most"):
        stem = lexicon.comparison_stem(whole.key)
        if stem and lexicon.comparison_stem(two.key) == stem and two.key != whole.key:
            return 0.5
    off = len(one.letters) + len(two.letters) - len(whole.letters)
    if not -2 <= off <= 2:
        return NEVER
    joined = one.letters + two.letters
    if joined == whole.letters:
        return 0.25
    if joined == "noone" and whole.key in ("anyone", "anybody", "someone"):
        return 0.35
    is_small = min(len(one.key), len(two.key)) == 1 and not whole.key.startswith("al")
    if is_small or len(joined) < 5 or one.letters[0] != whole.letters[0]:
        return NEVER
    close = lexicon.closeness(joined, whole.letters)
    if close >= 0.75 and not _is_pair_better(one, two, whole):
        return 0.45 + (1 - close) * 1.2
    return NEVER


def _is_pair_better(one: Token, two: Token, whole: Token) -> bool:
    """Whether one of the two already is the whole word, beside an extra word."""
    return any(
        lexicon.closeness(part.letters, whole.letters) >= 0.85 or akin(part.letters, whole.letters)
        for part in (one, two)
    )
