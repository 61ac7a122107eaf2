"""The two versions cut into pieces, so that any choice of fixes can be written out.

Each piece holds what stands in the faulty and in the corrected version at one place. A word with
two errors is one piece with two drafts: its text for each choice is put together from layers
(letters, apostrophe, capital, dot).
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from dataclasses import dataclass, field

from bank.edit.align import Step
from bank.edit.tokens import Token, straight


@dataclass(slots=True, eq=False)
class Draft:
    """A fix in the making: which skill, whether that is sure, and which pieces it changes."""

    skill: str
    sure: bool = True
    pieces: list[Piece] = field(default_factory=list)


@dataclass(slots=True, eq=False)
class Piece:
    """Tokens `i0:i1` of the faulty version and `j0:j1` of the corrected one at one place.

    `layers` names the draft that repairs each layer: `whole`, or `letters`, `apostrophe`, `capital`
    and `dot` of a word, and `space` for the space before it. A layer without a draft is the same in both versions.
    """

    i0: int
    i1: int
    j0: int
    j1: int
    layers: dict[str, Draft] = field(default_factory=dict)

    def claim(self, draft: Draft, layer: str = "whole") -> None:
        """Let `draft` repair one layer of this piece."""
        self.layers[layer] = draft
        if self not in draft.pieces:
            draft.pieces.append(self)


@dataclass(slots=True, eq=False)
class Move:
    """Pieces `start:end` (in the faulty order) that the draft puts into another order."""

    draft: Draft
    start: int
    end: int
    order: list[int]


@dataclass(slots=True)
class Pieces:
    """All pieces in the order of the faulty version, and the moves among them.

    Where the first word itself is moved, left out or too many, its capital goes to whatever word
    comes first. Then `loose` counts the pieces this touches, `lead` is the draft that repairs a
    missing capital there (None: the faulty version has it); `small_f` and `small_c` say that the
    first word of that version would be small elsewhere.
    """

    faulty: tuple[Token, ...]
    corrected: tuple[Token, ...]
    row: list[Piece]
    moves: list[Move] = field(default_factory=list)
    loose: int = 0
    lead: Draft | None = None
    small_f: bool = False
    small_c: bool = False

    def corrected_row(self) -> list[Piece]:
        """The pieces in the order of the corrected version."""
        row = list(self.row)
        for move in self.moves:
            row[move.start : move.end] = [self.row[k] for k in move.order]
        return row

    def wrong(self, piece: Piece) -> str:
        """What the faulty version has at this piece, as it would stand inside the sentence."""
        text = _written(self.faulty[piece.i0 : piece.i1])
        return _first(text, str.lower) if self.small_f and self._is_lead(piece, piece.i0) else text

    def right(self, piece: Piece) -> str:
        """What the corrected version has at this piece, as it would stand inside the sentence."""
        text = _written(self.corrected[piece.j0 : piece.j1])
        return _first(text, str.lower) if self.small_c and self._is_lead(piece, piece.j0) else text

    def _is_lead(self, piece: Piece, at: int) -> bool:
        return at == 0 and piece in self.row[: self.loose]


def cut(steps: Sequence[Step], f: tuple[Token, ...], c: tuple[Token, ...]) -> Pieces:
    """One piece for each step; a turn becomes its pieces and a move."""
    pieces = Pieces(f, c, [])
    for step in steps:
        if not step.order:
            pieces.row.append(Piece(step.i0, step.i1, step.j0, step.j1))
            continue
        base = len(pieces.row)
        where = {k: at for at, k in enumerate(step.order)}
        for k in range(len(step.order)):
            j = step.j0 + where[k]
            pieces.row.append(Piece(step.i0 + k, step.i0 + k + 1, j, j + 1))
        order = [base + k for k in step.order]
        move = Move(Draft("word-order"), base, base + len(order), order)
        pieces.moves.append(move)
    return pieces


def render(pieces: Pieces, made: Collection[Draft]) -> str:
    """The sentence with just the fixes of `made` carried out."""
    chosen = set(map(id, made))
    row = list(pieces.row)
    moved: set[int] = set()
    for move in pieces.moves:
        moved |= {id(pieces.row[k]) for k in range(move.start, move.end)}
        if id(move.draft) in chosen:
            row[move.start : move.end] = [pieces.row[k] for k in move.order]
    loose = {id(piece) for piece in pieces.row[: pieces.loose]}
    is_led = not pieces.loose
    out: list[str] = []
    # The side whose spaces hold at the next place: that of the last change.
    is_right_before: bool | None = None
    for piece in row:
        text, is_right = _text(pieces, piece, chosen)
        if text and not is_led and id(piece) in loose:
            is_led = True
            # A small i at the start is an error of its own.
            if text != "i" and (pieces.lead is None or id(pieces.lead) in chosen):
                text = _first(text, str.upper)
        if text:
            space_made = id(piece.layers.get("space")) in chosen
            space = id(piece) in moved or _space(
                pieces, piece, space_made, is_right, is_right_before
            )
            out.append((" " if space and out else "") + text)
        is_right_before = is_right
    return "".join(out)


def _space(
    pieces: Pieces, piece: Piece, space_made: bool, is_right: bool | None, before: bool | None
) -> bool:
    f, c = pieces.faulty[piece.i0 : piece.i1], pieces.corrected[piece.j0 : piece.j1]
    if not (f and c):
        return (f or c)[0].space
    if "space" in piece.layers:
        return c[0].space if space_made else f[0].space
    if before is not None:
        return c[0].space if before else f[0].space
    return c[0].space if is_right else f[0].space


def _text(pieces: Pieces, piece: Piece, chosen: set[int]) -> tuple[str, bool | None]:
    """The text of a piece under a choice; whether it follows the corrected version (None: both)."""
    wrong, right = pieces.wrong(piece), pieces.right(piece)
    layers = {layer: id(draft) in chosen for layer, draft in piece.layers.items()}
    layers.pop("space", None)
    if not layers:
        return wrong, None
    if "whole" in layers:
        return (right if layers["whole"] else wrong), layers["whole"]
    return layered(wrong, right, layers), any(layers.values())


def _written(row: Sequence[Token]) -> str:
    return "".join((" " if token.space and at else "") + token.text for at, token in enumerate(row))


def layered(wrong: str, right: str, is_made: Mapping[str, bool]) -> str:
    """One word with some of its layers repaired; a layer not named is the same in both.

    >>> layered("dont", "doesn't", {"letters": True, "apostrophe": False})
    'doesnt'
    >>> layered("dont", "doesn't", {"letters": False, "apostrophe": True})
    "don't"
    """

    def choose(layer: str) -> str:
        return right if is_made.get(layer, True) else wrong

    letters = choose("letters")
    bare = "".join(mark for mark in letters if mark not in "'’.")
    text = _with_apostrophe(bare, choose("apostrophe"))
    if "capital" in is_made:
        text = _first(text, str.upper if choose("capital")[:1].isupper() else str.lower)
    return text + "." if choose("dot").endswith(".") else text


def _with_apostrophe(bare: str, pattern: str) -> str:
    at = straight(pattern).rfind("'")
    if at < 0:
        return bare
    tail = len(pattern.rstrip(".")) - at - 1
    return bare[: len(bare) - tail] + pattern[at] + bare[len(bare) - tail :]


def _first(text: str, change: Callable[[str], str]) -> str:
    return change(text[:1]) + text[1:]
