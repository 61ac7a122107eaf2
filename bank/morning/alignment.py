"""Which letters of a word stand for which of its sounds.

A word is cut into graphemes (one to four letters) that take its phones (CMUdict's ARPAbet, without
stress) one after another, at the least cost: a usual pairing is cheap, an unusual one dear, a silent
letter or a guess dearer. The table below is our own; it says what is usual in English spelling, with
the place in the word where that matters, and whether the pairing is one that is taught as regular
("ai" as in rain) or one to be learnt by heart ("ai" as in said).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from heapq import heappop, heappush
from itertools import count

VOWELS = frozenset("AA AE AH AO AW AY EH ER EY IH IY OW OY UH UW".split())

# Letters, then their regular sounds divided by "|"; "-" is silent. Sounds of one pairing stand
# beside each other. An asterisk marks a sound that is met but taught as an exception.
_TABLE = """
b B *-; bb B; c K|S *CH; cc K|K S; ch CH *K *SH; ck K; d D *JH; dd D; dg JH; f F *V; ff F
g G|JH *ZH *-; gg G *JH; gh *F *G *-; gn N; gu *G; h HH *-; j JH; k K; kk K; kn N; l L *-; ll L
m M; mm M; mb M; mn M; n N|NG; ng NG; nn N; p P *-; ph F; pp P; qu K W *K; r R; rr R; rh R
s S|Z *SH *ZH *-; sc S; sh SH; ss S *SH *Z; st *S; t T *SH *CH *-; tch CH; th TH|DH *T; tt T; ti *SH
ci *SH; si *SH *ZH; v V; w W *-; wh W|HH W *HH; wr R; x K S|G Z *Z *K SH; y Y; z Z *S; zz Z
a AE|EY *AA *AO *AH *EH *IH *-; e EH|IY *IH *AH *EY *-; i IH|AY *IY *AH *Y *-; o AA|OW *AO *AH *UW *UH *IH *-
u AH|UW|Y UW *UH *Y UH *IH *W *EH *Y AH *-; y AY|IY|IH *AH
ai EY *EH *AH *AE *IH; au AO *AE *AA *EY *OW; aw AO *AA; ay EY *EH *AY *IY; ea IY|EH *EY *IH
ee IY *IH; ei *IY *EY *AY *EH *IH; eigh EY *AY; eu *UW *Y UW; ew UW|Y UW *OW; ey IY *EY *AY; eau *OW *Y UW
ie AY|IY *EH *IH; igh AY; oa OW *AO; oe OW *UW *AH *IY; oi OY; oo UW|UH *AH *OW; ou AW *AH *UW *OW *UH *AO
ough *AO *OW *UW *AH *AW *AO *AA; augh *AO *AE; ow OW|AW *AA; oy OY; ue UW|Y UW; ui UW *IH *AY; uy *AY
eye *AY; ye *AY; ia *AH *IY AH; io *AH; iou *AH; eo *AH *IY
ar AA R *AO R *EH R *ER; arr *AE R *EH R *AA R; air EH R; are EH R *AA R; aer *EH R; ayer *EH R
er ER *IH R *EH R *AA R; err *EH R *ER; ear IH R|ER *EH R *AA R *IY R; eer IH R *IY R; ere *IH R *EH R *ER *IY R
ir ER *IH R; irr *ER *IH R; ier *IH R *IY ER *AY ER *IY R; ire AY ER|AY R; or AO R *ER; orr *AA R *AO R; oar AO R
oor AO R *UH R; ore AO R; our AO R|AW ER|AW R *ER *UH R; ower AW ER; our *ER; ur ER *UH R *Y UH R; urr ER; ure *UH R *Y UH R *ER *Y ER
oir *W AY ER; eur *ER; yr *ER; eir *EH R; wor *W ER; ol *ER
le AH L *L; el AH L *EH L *L; al AH L *AO L; all AO L; il *AH L; ol *AH L *OW L; ed T|D|IH D|AH D; es IH Z|AH Z
en AH N *EH N *N; on AH N *AA N; an *AH N *AE N; in *AH N *IH N *IY N; om *AH M; em *AH M; um *AH M; am *AH M; us *AH S
one *W AH N; tw *T; sw *S; ho *AA *AO; oul *UH; alk AO K *AA K; alm *AA M; aul *AO; olk *OW K; isl *AY L; ld *D
"""  # noqa: E501
_VOWEL_LETTERS = frozenset("aeiouy")
# An unstressed vowel may lose its own sound; that is regular for any vowel letter.
_WEAK = frozenset(("AH0", "IH0"))
_USUAL, _UNUSUAL, _GUESS = 1, 4, 9
# Endings that are graphemes of their own only at the end of a word.
_AT_THE_END = frozenset("ed es le el al en on il ol in om em um am us an".split())


@dataclass(frozen=True, slots=True)
class Segment:
    """Letters that stand for sounds; `sounds` is empty where they are silent.

    `regular` says that the pairing is taught as regular.
    """

    letters: str
    sounds: tuple[str, ...]
    regular: bool

    @property
    def is_vowel(self) -> bool:
        return any(sound in VOWELS for sound in self.sounds)


_Way = tuple[int, int, int, int, tuple[Segment, ...]]


@lru_cache(maxsize=1)
def _pairings() -> dict[str, list[tuple[str, list[tuple[Segment, int]]]]]:
    """By first letter: each grapheme with its segments, one for each sound, and their costs."""
    found: dict[str, list[tuple[Segment, int]]] = {}
    for entry in _TABLE.replace("\n", ";").split(";"):
        if not entry.strip():
            continue
        letters, _, rest = entry.strip().partition(" ")
        for part in rest.replace(" *", "|*").split("|"):
            regular = not part.startswith("*")
            sounds = tuple(s for s in part.lstrip("*").split() if s != "-")
            segment = Segment(letters, sounds, regular)
            found.setdefault(letters, []).append((segment, _USUAL if regular else _UNUSUAL))
    by_letter: dict[str, list[tuple[str, list[tuple[Segment, int]]]]] = {}
    for letters, segments in found.items():
        by_letter.setdefault(letters[0], []).append((letters, segments))
    return by_letter


def plain(phones: Sequence[str]) -> tuple[str, ...]:
    """Phones without their stress marks.

    >>> plain(("K", "AE1", "T"))
    ('K', 'AE', 'T')
    """
    return tuple(phone.rstrip("012") for phone in phones)


def align(word: str, phones: Sequence[str]) -> tuple[Segment, ...] | None:
    """The segments of `word` for one pronunciation, or None where they do not fit together.

    `word` is in lower-case letters; `phones` may carry stress marks. An -e that closes the word, or
    stands before a closing -s or -d, may be silent and is then a segment of its own.

    >>> [(s.letters, " ".join(s.sounds)) for s in align("cake", ("K", "EY1", "K"))]
    [('c', 'K'), ('a', 'EY'), ('k', 'K'), ('e', '')]
    >>> [s.regular for s in align("said", ("S", "EH1", "D"))]
    [True, False, True]
    """
    sounds = plain(phones)
    weak = [phone in _WEAK for phone in phones]
    # The cheapest way so far is taken further first (Dijkstra), since most words need no guess.
    number = count()
    waiting: list[_Way] = [(0, next(number), 0, 0, ())]
    done: set[tuple[int, int]] = set()
    while waiting:
        cost, _, i, j, path = heappop(waiting)
        if (i, j) in done:
            continue
        if i == len(word):
            if j == len(sounds):
                return path
            continue
        done.add((i, j))
        for segment, price in _next_segments(word, i, sounds, j, path, weak):
            at = (i + len(segment.letters), j + len(segment.sounds))
            if at not in done:
                heappush(waiting, (cost + price, next(number), *at, (*path, segment)))
    return None


def _next_segments(
    word: str,
    i: int,
    sounds: tuple[str, ...],
    j: int,
    path: tuple[Segment, ...],
    weak: Sequence[bool],
) -> Iterator[tuple[Segment, int]]:
    for letters, segments in _pairings().get(word[i], ()):
        if not word.startswith(letters, i):
            continue
        rest = word[i + len(letters) :]
        if letters in _AT_THE_END and (rest not in ("", "s") or word[i - 1 : i] == letters[0]):
            continue
        for segment, price in segments:
            taken = segment.sounds
            heard = sounds[j : j + len(taken)] == taken
            if heard and not _splits_r(taken, rest, sounds[j + len(taken) :]):
                yield segment, price
    letter, rest = word[i], word[i + 1 :]
    if letter == "e" and rest in ("", "s", "d") and path and not path[-1].is_vowel:
        yield Segment("e", (), True), _USUAL
    yield Segment(letter, (), False), _GUESS
    if j < len(sounds) and (letter in _VOWEL_LETTERS) == (sounds[j] in VOWELS):
        reduced = letter in _VOWEL_LETTERS and weak[j]
        yield Segment(letter, sounds[j : j + 1], reduced), _USUAL if reduced else _GUESS


def _splits_r(taken: tuple[str, ...], rest: str, still: tuple[str, ...]) -> bool:
    """Whether an r that colours its vowel would be cut off from it: "ear" in bear, "ere" in there."""
    coloured = taken[-1:] != () and taken[-1] in VOWELS and rest[:1] == "r" and still[:1] == ("R",)
    return coloured and (rest[1:2] not in tuple(_VOWEL_LETTERS) or rest[1:] in ("e", "es", "ed"))
