"""What a learner did: a three-way alignment of what was given, what was right and what was written.

The given and the right version make a net: shared words, and at each fix the choice between the
wrong and the right text, or another that is right too. The path through the net that is nearest to
the attempt says which fixes were made; what still differs from the path is a new error.
"""

from __future__ import annotations

from collections.abc import Sequence

from bank.edit.align import pair_cost
from bank.edit.fix import Fix, Marks
from bank.edit.introduced import one_error_each
from bank.edit.net import Walked, build, nearest
from bank.edit.other_ways import alternatives
from bank.edit.pieces import Draft, Piece
from bank.edit.tokens import Token, tokens
from bank.edit.versions import Comparison, comparison, weight

# Below this share of words that meet, the attempt is not a copy of the sentence at all.
_LEAST_COPIED = 0.3
# A word that costs less is a try at the right one, and not another word.
_TRY = 1.0


def mark_attempt(faulty: str, corrected: str, attempt: str) -> Marks:
    """Which fixes `attempt` makes, which it misses, and what new errors it brings in.

    An attempt that writes something else that is also right (`does not` for `doesn't`) counts as
    fixed. Where a word is neither the wrong nor the right one, its fix is missed; a word that has
    nothing to do with either is a new error besides. An empty attempt misses everything.

    >>> marks = mark_attempt("we goed home", "We went home.", "We goed home.")
    >>> [fix.skill for fix in marks.fixed], [fix.skill for fix in marks.missed]
    (['capital-first', 'end-mark'], ['tense'])
    """
    known = comparison(faulty, corrected)
    written = tokens(attempt)
    if not any(token.is_word for token in written):
        return Marks([], list(known.fixes), [])
    others = alternatives(corrected)
    net, first, last = build(known, others)
    path = nearest(net, first, last, written)
    if not _is_copy(path, written):
        stray = Fix("extra-word", attempt.strip(), "", 0, len(attempt), 0, 0, sure=False)
        return Marks([], list(known.fixes), [stray])
    optional = {other.j0 for other in others if not other.text}
    missed = _missed(known, path, written, optional)
    introduced = one_error_each(_introduced(known, path, written), known, written, attempt)
    return Marks(
        [f for f, d in zip(known.fixes, known.drafts, strict=True) if d not in missed],
        [f for f, d in zip(known.fixes, known.drafts, strict=True) if d in missed],
        introduced,
    )


def _is_copy(path: Sequence[Walked], written: Sequence[Token]) -> bool:
    said = sum(weight(token) for token in written if token.is_word)
    met = sum(
        weight(written[step.a])
        for step in path
        if step.edge is not None
        and step.edge.token is not None
        and step.edge.token.is_word
        and step.a is not None
        and step.cost < _TRY
    )
    return met / max(0.1, said) >= _LEAST_COPIED


def _missed(
    known: Comparison, path: Sequence[Walked], written: Sequence[Token], optional: set[int]
) -> set[Draft]:
    """The drafts that the attempt does not carry out at every piece they change."""
    missed: set[Draft] = set()
    for at, step in enumerate(path):
        choice = step.edge.choice if step.edge is not None else None
        if choice is None:
            continue
        # The comma before "and" may be left out while the others of its list are put in.
        is_optional = all(piece.j0 in optional for piece in choice.pieces) and choice.pieces
        missed |= {d for d in choice.left if not (is_optional and len(d.pieces) > 1)}
        is_cut = not choice.is_other and any(p.j0 == p.j1 and p.layers for p in choice.pieces)
        if is_cut and choice.made and not _has_neighbours(path, at):
            missed |= choice.made
    for step in path:
        edge = step.edge
        if edge is not None and edge.other is not None and (step.a is None or step.cost > 0.1):
            missed |= edge.other.made
        if edge is None or edge.piece is None or edge.token is None:
            continue
        space = edge.piece.j1 > edge.piece.j0 and known.pieces.corrected[edge.piece.j0].space
        is_lead = bool(known.pieces.loose) and not any(t.is_word for t in written[: step.a or 0])
        if not (is_lead and step.a is not None and written[step.a].key == edge.token.key):
            missed |= _missed_in_word(edge.piece, step, written, space)
    if known.pieces.lead is not None:
        first = next(token for token in written if token.is_word)
        if first.text[0].islower():
            missed.add(known.pieces.lead)
    return missed


def _has_neighbours(path: Sequence[Walked], at: int) -> bool:
    """Whether the attempt goes on both before and after this place."""

    def meets(steps: Sequence[Walked]) -> bool:
        for step in steps:
            if step.edge is not None and step.edge.token is not None:
                return step.a is not None
        return True

    return meets(path[:at][::-1]) and meets(path[at + 1 :])


def _missed_in_word(
    piece: Piece, step: Walked, written: Sequence[Token], space: bool
) -> set[Draft]:
    """Where the word is neither the wrong nor the right one, its fix is missed.

    A capital is made all the same where the attempt has it.
    """
    assert step.edge is not None and step.edge.token is not None
    if step.a is None:
        return set(piece.layers.values())
    token, mine = step.edge.token, written[step.a]
    missed = set()
    for layer, draft in piece.layers.items():
        if layer == "space":
            if mine.space != space:
                missed.add(draft)
        elif step.cost < 0.06:
            continue
        elif layer == "capital":
            if mine.text[0].isupper() != token.text[0].isupper():
                missed.add(draft)
        elif mine.key == token.key:
            continue
        elif layer == "dot":
            if mine.text.endswith(".") != token.text.endswith("."):
                missed.add(draft)
        elif layer == "apostrophe" and mine.letters != token.letters:
            if ("'" in mine.key) != ("'" in token.key):
                missed.add(draft)
        else:
            missed.add(draft)
    return missed


def _introduced(
    known: Comparison, path: Sequence[Walked], written: Sequence[Token]
) -> list[tuple[int, Walked]]:
    """The steps of the path that are a new error, with their place in the path."""
    found = []
    first_word = next(at for at, token in enumerate(written) if token.is_word)
    steps = [step for step in path if step.edge is None or step.edge.token is not None]
    for at, step in enumerate(steps):
        edge = step.edge
        if edge is None:
            found.append((at, step))
            continue
        if edge.token is None or step.cost < 0.06:
            continue
        if step.a is None:
            found.append((at, step))
            continue
        mine = written[step.a]
        if known.pieces.loose and step.a == first_word and mine.key == edge.token.key:
            continue
        layers = edge.piece.layers if edge.piece is not None else {}
        owns_letters = "whole" in layers or "letters" in layers or "apostrophe" in layers
        is_try = owns_letters and pair_cost(mine, edge.token) < _TRY
        only_capital = mine.key == edge.token.key and "capital" in layers
        if not (is_try or only_capital):
            found.append((at, step))
    return found
