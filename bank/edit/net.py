"""A net of all acceptable and given wordings, and the path through it nearest to an attempt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from bank.edit.align import DROP_MARK, DROP_WORD, NEVER, pair_cost
from bank.edit.other_ways import Alternative
from bank.edit.pieces import Draft, Piece, layered
from bank.edit.tokens import Token, tokens
from bank.edit.versions import Comparison

# A little more for what is right: on a tie nothing was fixed.
_TIE = 0.001


@dataclass(frozen=True, slots=True)
class Choice:
    """One wording at one piece: which drafts it makes and leaves."""

    pieces: tuple[Piece, ...]
    made: frozenset[Draft]
    left: frozenset[Draft]
    is_other: bool = False


@dataclass(frozen=True, slots=True)
class Edge:
    """A step of the net: a token to be written, or none; the corrected token it stands for."""

    start: int
    end: int
    token: Token | None
    choice: Choice | None = None
    piece: Piece | None = None
    j: int = -1
    price: float = 0.0
    other: Choice | None = None


@dataclass(frozen=True, slots=True)
class Walked:
    """One step of the nearest path: an edge, an attempt token, or both, and what it cost."""

    edge: Edge | None
    a: int | None
    cost: float


@dataclass(slots=True)
class Net:
    """Nodes are numbers in an order that every edge follows."""

    edges: list[Edge] = field(default_factory=list)
    size: int = 1

    def node(self) -> int:
        """A new node."""
        self.size += 1
        return self.size - 1


def build(known: Comparison, others: Sequence[Alternative]) -> tuple[Net, int, int]:
    """The net of a comparison, with its first and last node."""
    net = Net()
    pieces = known.pieces
    moves = {move.start: move for move in pieces.moves}
    at_j: dict[int, tuple[int, int]] = {}
    node, k = 0, 0
    while k < len(pieces.row):
        move = moves.get(k)
        if move is None:
            piece = pieces.row[k]
            at_j.setdefault(piece.j0, (node, k))
            node = _add_piece(net, known, piece, node)
            k += 1
            continue
        end = net.node()
        orders = ((list(range(move.start, move.end)), False), (move.order, True))
        for order, is_made in orders:
            made = frozenset([move.draft]) if is_made else frozenset()
            left = frozenset() if is_made else frozenset([move.draft])
            here = net.node()
            choice = Choice((), made, left)
            net.edges.append(Edge(node, here, None, choice, price=_TIE * is_made))
            for number in order:
                here = _add_piece(net, known, pieces.row[number], here, move.draft, is_made)
            net.edges.append(Edge(here, end, None))
        node, k = end, move.end
    at_j.setdefault(len(pieces.corrected), (node, len(pieces.row)))
    for other in others:
        if other.j0 in at_j and other.j1 in at_j:
            _add_other(net, known, other, at_j[other.j0], at_j[other.j1])
    return net, 0, node


def _add_piece(
    net: Net,
    known: Comparison,
    piece: Piece,
    start: int,
    move: Draft | None = None,
    is_moved: bool = False,
) -> int:
    end = net.node()
    wrong, right = known.pieces.wrong(piece), known.pieces.right(piece)
    # Tokens know no spaces: those are looked at afterwards.
    layers = {layer: draft for layer, draft in piece.layers.items() if layer != "space"}
    drafts = list(dict.fromkeys(draft for draft in layers.values() if draft is not move))
    if move is not None and move in piece.layers.values():
        text = right if is_moved else wrong
        _chain(net, text, start, end, Choice((piece,), frozenset(), frozenset()), piece)
        return end
    for chosen in range(1 << len(drafts)):
        made = frozenset(d for bit, d in enumerate(drafts) if chosen >> bit & 1)
        if "whole" in layers or not drafts:
            text = right if made else wrong
        else:
            text = layered(wrong, right, {k: d in made for k, d in layers.items()})
        choice = Choice((piece,), made, frozenset(drafts) - made)
        _chain(net, text, start, end, choice, piece, price=_TIE * len(made))
    return end


def _chain(
    net: Net,
    text: str,
    start: int,
    end: int,
    choice: Choice,
    piece: Piece | None,
    price: float = 0.0,
) -> None:
    row = tokens(text)
    here = start
    for number, token in enumerate(row):
        after = end if number == len(row) - 1 else net.node()
        j = piece.j0 + number if piece is not None and piece.j0 + number < piece.j1 else -1
        first = number == 0
        net.edges.append(
            Edge(
                here,
                after,
                token,
                choice if first else None,
                piece,
                j,
                price if first else 0.0,
                choice if choice.is_other else None,
            )
        )
        here = after
    if not row:
        net.edges.append(Edge(start, end, None, choice, piece, price=price))


def _add_other(
    net: Net, known: Comparison, other: Alternative, start: tuple[int, int], end: tuple[int, int]
) -> None:
    inside = known.pieces.row[start[1] : end[1]]
    if not inside or any(piece.j1 > other.j1 for piece in inside):
        return
    drafts = frozenset(draft for piece in inside for draft in piece.layers.values())
    choice = Choice(tuple(inside), drafts, frozenset(), is_other=True)
    _chain(net, other.text, start[0], end[0], choice, None, price=2 * _TIE)


def nearest(net: Net, first: int, last: int, attempt: Sequence[Token]) -> list[Walked]:
    """The cheapest way to read `attempt` along the net."""
    leaving: dict[int, list[Edge]] = {}
    for edge in net.edges:
        leaving.setdefault(edge.start, []).append(edge)
    order = _order(leaving, first)
    width = len(attempt) + 1
    cost = {node: [NEVER * (width + net.size)] * width for node in order}
    back: dict[tuple[int, int], tuple[int, int, Walked]] = {}
    cost[first][0] = 0.0
    for node in order:
        row = cost[node]
        for a in range(width):
            here = row[a]
            if a + 1 < width:
                price = _drop(attempt[a])
                _offer(cost, back, (node, a + 1), here + price, (node, a, Walked(None, a, price)))
            for edge in leaving.get(node, ()):
                for target, price, used in _along(edge, attempt, a):
                    step = (node, a, Walked(edge, used, price))
                    _offer(cost, back, target, here + price + edge.price, step)
    path: list[Walked] = []
    spot = (last, width - 1)
    while spot != (first, 0):
        node, a, walked = back[spot]
        path.append(walked)
        spot = (node, a)
    return path[::-1]


def _along(
    edge: Edge, attempt: Sequence[Token], a: int
) -> list[tuple[tuple[int, int], float, int | None]]:
    if edge.token is None:
        return [((edge.end, a), 0.0, None)]
    if edge.other is not None:
        # Another wording counts only where it is written in full.
        is_same = a < len(attempt) and attempt[a].key == edge.token.key
        price = pair_cost(attempt[a], edge.token) if is_same else NEVER
        return [((edge.end, a + 1), price, a)] if is_same else []
    found: list[tuple[tuple[int, int], float, int | None]] = [
        ((edge.end, a), _drop(edge.token), None)
    ]
    if a < len(attempt):
        price = pair_cost(attempt[a], edge.token)
        if price < NEVER:
            found.append(((edge.end, a + 1), price, a))
    if a + 1 < len(attempt) and edge.token.is_word and len(edge.token.letters) >= 4:
        joined = attempt[a].letters + attempt[a + 1].letters
        if joined == edge.token.letters:
            found.append(((edge.end, a + 2), 0.4, a))
    return found


def _offer(
    cost: dict[int, list[float]],
    back: dict[tuple[int, int], tuple[int, int, Walked]],
    target: tuple[int, int],
    price: float,
    step: tuple[int, int, Walked],
) -> None:
    if price < cost[target[0]][target[1]] - 1e-9:
        cost[target[0]][target[1]] = price
        back[target] = step


def _drop(token: Token) -> float:
    return DROP_WORD if token.is_word else DROP_MARK


def _order(leaving: dict[int, list[Edge]], first: int) -> list[int]:
    """The nodes so that every edge goes forward."""
    done: list[int] = []
    seen: set[int] = set()
    stack = [(first, iter(leaving.get(first, ())))]
    seen.add(first)
    while stack:
        node, edges = stack[-1]
        for edge in edges:
            if edge.end not in seen:
                seen.add(edge.end)
                stack.append((edge.end, iter(leaving.get(edge.end, ()))))
                break
        else:
            done.append(node)
            stack.pop()
    return done[::-1]
