"""From two versions of one sentence to the fixes between them.

How errors are counted, where one could count in two ways:

- the pronoun I without its capital is `capital-i` wherever it stands, also as the first word; any
  other first word without its capital is `capital-first`, a name too;
- all commas of one list, of one date or of one place are one fix; so are the two marks of a speech
  with their comma and the capital that they bring;
- two wrong pronouns side by side ("Him and me") are two; "me and Ben" for "Ben and I" is one;
- an apostrophe that is missing belongs to what the right word is (`its` for `it's` is a contraction,
  `dogs` for `dog's` a possessive); `it's` for `its` and `your` for `you're` only sound the same;
  any other apostrophe that is too many (`three cat's`) is a possessive;
- a word with a regular ending spelled wrong (`stoped`) is a misspelling, one with an ending that it
  does not take (`runned`) is a tense; `foxs`, `babys` and `knifes` are plurals;
- a full stop that is missing before a word with a capital is an `end-mark`, unless that word always
  has one; before a word without it, it is a `run-on`;
- the same word twice is an `extra-word`, also an article.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from bank import language
from bank.edit.align import UNRELATED, Step, align, pair_cost
from bank.edit.fix import Fix
from bank.edit.layers import capital_skill, name_word
from bank.edit.look import Change, Sentence, Verdict
from bank.edit.merge import Merger
from bank.edit.pieces import Draft, Piece, Pieces, cut, render
from bank.edit.rules_gaps import LEFT_OUT, TOO_MANY
from bank.edit.sets import ARTICLES, AUXILIARIES, JOINERS, PRONOUNS
from bank.edit.tokens import END_MARKS, Token, tokens
from bank.edit.wordset import word_set

if TYPE_CHECKING:
    pass

UNRELATED_MESSAGE = "these do not look like two versions of one sentence"
# Few enough that language.parse still remembers a batch.
_BATCH = 512
# Below this share of words in common, small words counting little, two texts are not versions.
_LEAST_SHARED = 0.4
_SMALL_WORD = 0.3
_SMALL_WORDS = ARTICLES | AUXILIARIES | JOINERS | PRONOUNS | word_set("in on at to of")


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two versions, the fixes between them, and what is needed to carry out some of the fixes."""

    faulty: str
    corrected: str
    fixes: tuple[Fix, ...]
    drafts: tuple[Draft, ...]
    pieces: Pieces

    def with_fixed(self, fixed: Iterable[int]) -> str:
        """The sentence with the fixes of these numbers made, and the others left."""
        return render(self.pieces, [self.drafts[number] for number in fixed])


def compare(faulty: str, corrected: str) -> list[Fix]:
    """The fixes that turn `faulty` into `corrected`, from left to right, one for each error.

    Raises `ValueError` where the two have too little in common.

    >>> [(fix.skill, fix.wrong, fix.right) for fix in compare("we goed home", "We went home.")]
    [('capital-first', 'we', 'We'), ('tense', 'goed', 'went'), ('end-mark', '', '.')]
    """
    return list(comparison(faulty, corrected).fixes)


def compare_many(pairs: Sequence[tuple[str, str]]) -> list[list[Fix]]:
    """`compare` for many (faulty, corrected) pairs; the corrected ones are parsed in one batch."""
    found: list[list[Fix]] = []
    for start in range(0, len(pairs), _BATCH):
        batch = pairs[start : start + _BATCH]
        for _ in language.parse_many(dict.fromkeys(corrected for _, corrected in batch)):
            pass
        found += [compare(faulty, corrected) for faulty, corrected in batch]
    return found


def comparison(faulty: str, corrected: str) -> Comparison:
    """What `compare` finds, with the pieces from which any choice of fixes can be written."""
    f, c = tokens(faulty), tokens(corrected)
    steps = align(f, c)
    if not _are_versions(f, c, steps):
        raise ValueError(UNRELATED_MESSAGE)
    pieces = cut(steps, f, c)
    sentence = Sentence(f, c, corrected)
    Merger(pieces, sentence).run()
    for piece in pieces.row:
        _name(pieces, piece, sentence)
    _name_spaces(pieces)
    drafts = _drafts(pieces)
    numbered = sorted(
        ((_fix(draft, pieces.lead, faulty, corrected, f, c), draft) for draft in drafts),
        key=lambda pair: (pair[0].wrong_start, pair[0].right_start, pair[0].wrong_end),
    )
    return Comparison(
        faulty,
        corrected,
        tuple(fix for fix, _ in numbered),
        tuple(draft for _, draft in numbered),
        pieces,
    )


def _are_versions(f: Sequence[Token], c: Sequence[Token], steps: Sequence[Step]) -> bool:
    if [t.text for t in f] == [t.text for t in c]:
        return True
    shared = total = 0.0
    for step in steps:
        f_part = [t for t in f[step.i0 : step.i1] if t.is_word]
        c_part = [t for t in c[step.j0 : step.j1] if t.is_word]
        here = sum(map(weight, f_part)) + sum(map(weight, c_part))
        total += here
        is_pair = len(f_part) == 1 and len(c_part) == 1
        if f_part and c_part and not (is_pair and pair_cost(f_part[0], c_part[0]) >= UNRELATED):
            shared += here
    return shared > 0 and shared / total >= _LEAST_SHARED


def weight(token: Token) -> float:
    """How much a word says about which sentence it is from."""
    return _SMALL_WORD if token.key in _SMALL_WORDS else 1.0


def _name(pieces: Pieces, piece: Piece, sentence: Sentence) -> None:
    """Give a piece that no group has claimed, or only in part, the drafts of its own."""
    f, c = pieces.faulty[piece.i0 : piece.i1], pieces.corrected[piece.j0 : piece.j1]
    if "whole" in piece.layers:
        return
    if len(f) == 1 and len(c) == 1 and f[0].is_word and c[0].is_word:
        wrong, right = pieces.wrong(piece), pieces.right(piece)
        capital = piece.layers.get("capital")
        if wrong != right:
            if capital is not None:
                wrong = (wrong[0].upper() if right[0].isupper() else wrong[0].lower()) + wrong[1:]
            if wrong != right:
                name_word(piece, wrong, right, sentence)
        return
    if [t.text for t in f] == [t.text for t in c]:
        return
    if not f or not c:
        verdict = _gap(piece, f, c, sentence)
        piece.claim(Draft(verdict.skill, verdict.sure))
        return
    _name_group(piece, f, c, sentence)


def _name_spaces(pieces: Pieces) -> None:
    """Spaces that are missing or too many where nothing else changes; side by side they are one."""
    last: Draft | None = None
    moved = {k for move in pieces.moves for k in range(move.start, move.end + 1)}
    for at, (before, piece) in enumerate(pairwise(pieces.row), start=1):
        is_pair = piece.i1 > piece.i0 and piece.j1 > piece.j0 and before.i1 > before.i0
        differs = is_pair and pieces.faulty[piece.i0].space != pieces.corrected[piece.j0].space
        if not differs or at in moved or before.layers.keys() - {"space"} or before.j1 == before.j0:
            last = None
            continue
        last = last or Draft("spacing")
        piece.claim(last, "space")


def _gap(piece: Piece, f: Sequence[Token], c: Sequence[Token], s: Sentence) -> Verdict:
    token = (f or c)[0]
    if not token.is_word:
        return _mark(token)
    wrong, right = (token.key, "") if f else ("", token.key)
    change = Change(wrong, right, piece.i0, piece.j0, s)
    for rule in TOO_MANY if f else LEFT_OUT:
        verdict = rule(change)
        if verdict is not None:
            return verdict
    raise AssertionError("the last rule always answers")


def _mark(token: Token) -> Verdict:
    if token.text in END_MARKS:
        return Verdict("end-mark")
    if token.text in ("-", "'", "’"):
        return Verdict("spacing" if token.text == "-" else "apostrophe-possessive", sure=False)
    return Verdict("end-mark", sure=False)


def _name_group(piece: Piece, f: Sequence[Token], c: Sequence[Token], sentence: Sentence) -> None:
    """Two words for one or one for two; or one mark for another."""
    if not f[0].is_word:
        is_end = c[0].text in END_MARKS
        piece.claim(Draft("end-mark", sure=is_end))
        return
    whole, parts = (c[0], f) if len(c) == 1 else (f[0], c)
    joined = "".join(token.letters for token in parts)
    if joined == "noone" and whole.key != "noone":
        piece.claim(Draft("double-negative"))
        return
    if parts[0].key in ("more", "most") and joined != whole.letters:
        piece.claim(Draft("comparison"))
        return
    if parts[1].key == "not" and whole.letters.endswith("nt"):
        piece.claim(Draft("apostrophe-contraction"))
        return
    first_f, first_c = f[0].text[0], c[0].text[0]
    if first_f.lower() == first_c.lower() and first_f != first_c:
        piece.claim(Draft(capital_skill(f[0].text, c[0].text, piece.j0, sentence)), "capital")
        piece.claim(Draft("spacing"), "letters")
        return
    piece.claim(Draft("spacing"))


def _drafts(pieces: Pieces) -> list[Draft]:
    found: list[Draft] = [move.draft for move in pieces.moves]
    if pieces.lead is not None:
        found.append(pieces.lead)
    for piece in pieces.row:
        for draft in piece.layers.values():
            if draft not in found:
                found.append(draft)
    return found


def _fix(
    draft: Draft,
    lead: Draft | None,
    faulty: str,
    corrected: str,
    f: Sequence[Token],
    c: Sequence[Token],
) -> Fix:
    parts = draft.pieces
    if draft is lead:
        # Whatever word comes first: it need not be the same in both.
        w, r = f[0], c[0]
        wrong, right = faulty[w.start : w.end], corrected[r.start : r.end]
        return Fix(draft.skill, wrong, right, w.start, w.end, r.start, r.end, draft.sure)
    if all(p.layers.get("space") is draft for p in parts):
        i0, j0 = parts[0].i0 - 1, parts[0].j0 - 1
        w0, w1 = f[i0].start, f[parts[-1].i1 - 1].end
        r0, r1 = c[j0].start, c[parts[-1].j1 - 1].end
        return Fix(draft.skill, faulty[w0:w1], corrected[r0:r1], w0, w1, r0, r1, draft.sure)
    w0, w1 = _hull(draft, f, [(p.i0, p.i1) for p in parts], c, [p.j0 for p in parts], faulty)
    r0, r1 = _hull(draft, c, [(p.j0, p.j1) for p in parts], f, [p.i0 for p in parts], corrected)
    return Fix(draft.skill, faulty[w0:w1], corrected[r0:r1], w0, w1, r0, r1, draft.sure)


def _hull(
    draft: Draft,
    row: Sequence[Token],
    parts: Sequence[tuple[int, int]],
    other: Sequence[Token],
    other_at: Sequence[int],
    text: str,
) -> tuple[int, int]:
    """The characters from the first to the last token of the parts.

    A gap counts where there is nothing else, and for marks that stand around what they belong to.
    """
    has_tokens = any(b > a for a, b in parts)
    with_gaps = not has_tokens or draft.skill.startswith(("comma", "quotation"))
    spots: list[int] = []
    for (a, b), k in zip(parts, other_at, strict=True):
        if b > a:
            spots += [row[a].start, row[b - 1].end]
        elif with_gaps:
            spots.append(_spot(row, a, k < len(other) and other[k].space, text))
    start, end = min(spots), max(spots)
    while start < end and text[start].isspace():
        start += 1
    return start, end


def _spot(row: Sequence[Token], at: int, before_space: bool, text: str) -> int:
    """Where something is missing: before the next word, or right behind the last for a mark."""
    if at >= len(row):
        return row[-1].end if row else 0
    if at == 0 or before_space or text[row[at].start - 1 : row[at].start] != " ":
        return row[at].start
    return row[at - 1].end
