"""Whether two frames ask the same: first what tells them apart, then how much they share."""

from __future__ import annotations

from typing import Any

from bank.choose.ask.lexicon import Lexicon, lexicon

Frame = dict[str, Any]
Atom = list[Any]

ENOUGH = 0.52
# Leaving one of these unsaid asks something else, unless another word brings it along.
_NARROWING = frozenset(
    "animal relative helper someone meal weekday month season holiday daypart timeword place room "
    "number planet".split()
)
# Kinds too wide for their members to exclude each other.
_LOOSE = frozenset("workkind".split())


def same_frames(a: Frame, b: Frame) -> bool:
    """Whether two frames ask the same."""
    return decide(a, b)[0] >= ENOUGH


def decide(a: Frame, b: Frame) -> tuple[float, str]:
    """How much two frames share (0 where something tells them apart), and why."""
    lex = lexicon()
    if a["words"] == b["words"] and a["liking"] == b["liking"]:
        return 1.0, "the same words"
    for name, apart in _APART:
        if apart(a, b, lex):
            return 0.0, name
    return _shared(a, b, lex)


def _other_liking(a: Frame, b: Frame, lex: Lexicon) -> bool:
    return {a["liking"], b["liking"]} == {"most", "least"}


def _other_time(a: Frame, b: Frame, lex: Lexicon) -> bool:
    tenses = {a["tense"], b["tense"]}
    return "past" in tenses and bool(tenses & {"will", "now", "would"})


def _opposite(x: set[str], y: set[str], lex: Lexicon) -> bool:
    return any(lex.opposites.get(name, frozenset()) & y for name in x)


def _other_way_round(a: Frame, b: Frame, lex: Lexicon) -> bool:
    """Is a cow bigger than a cat? / Is a cat bigger than a cow?"""
    if not (a["compares"] and b["compares"]):
        return False
    (measure_a, left_a, right_a), (measure_b, left_b, right_b) = a["compares"], b["compares"]
    straight = len(set(left_a) & set(left_b)) + len(set(right_a) & set(right_b))
    crossed = len(set(left_a) & set(right_b)) + len(set(right_a) & set(left_b))
    if straight == crossed:
        return False
    turned = not set(measure_a) & set(measure_b) and _opposite(set(measure_a), set(measure_b), lex)
    return turned != (crossed > straight)


def _other_head(a: Frame, b: Frame, lex: Lexicon) -> bool:
    """What is your favorite color? / What is your favorite animal?"""
    if a["wants"] != b["wants"] or a["wants"] == "amount" or not (a["head"] and b["head"]):
        return False
    x, y = [a["head"], 1.0, "h"], [b["head"], 1.0, "h"]
    return not _likeness(x, y, lex) and not {"thing", "part"} & {*x[0], *y[0]}


# Who sits next to whom: true both ways.
_MUTUAL = frozenset("sit meet play talk live be near_to next_to look_like".split())


def _exchanged(a: Frame, b: Frame, lex: Lexicon) -> bool:
    """Who helps you? / Who do you help?"""
    for verb_a, doers_a, done_a in a["acts"]:
        for verb_b, doers_b, done_b in b["acts"]:
            if not set(verb_a) & set(verb_b) - _MUTUAL or set(doers_a) & set(doers_b):
                continue
            if set(doers_a) & set(done_b) and set(doers_b) & set(done_a):
                return True
    return False


_SAME_WANT = {
    frozenset(pair)
    for pair in (
        ("what", "how"),
        ("what", "tell"),
        ("how", "tell"),
        ("who", "tell"),
        ("where", "tell"),
        ("who", "name"),
        ("yesno", "tell"),
        ("what", "where"),
        ("what", "when"),
        ("what", "why"),
        ("what", "yesno"),
        ("what", "name"),
        ("what", "amount"),
        ("what", "choice"),
        ("choice", "yesno"),
        ("choice", "where"),
        ("choice", "what"),
        ("why", "how"),
        ("amount", "yesno"),
    )
}


def _differing(a: list[str], b: list[str]) -> tuple[list[str], list[str]]:
    """The words between the common beginning and the common end of two texts."""
    while a and b and a[0] == b[0]:
        a, b = a[1:], b[1:]
    while a and b and a[-1] == b[-1]:
        a, b = a[:-1], b[:-1]
    return a, b


def _other_want(a: Frame, b: Frame, lex: Lexicon) -> bool:
    wants = {a["wants"], b["wants"]}
    if wants == {"who", "name"}:
        return False
    if len(wants) == 2 and max(map(len, _differing(a["words"], b["words"]))) <= 2:
        return True
    if len(wants) == 1:
        return a["wants"] == "amount" and a["head"] != b["head"]
    return frozenset(wants) not in _SAME_WANT


def _thing_like(name: str, lex: Lexicon) -> bool:
    return bool(lex.kinds.get(name, frozenset()) - {"action", "dimension", "feeling"})


def _swapped(a: Frame, b: Frame, lex: Lexicon) -> bool:
    """The same ideas, but two of them have changed places: Do dogs chase cats? / Do cats chase dogs?"""
    left = [x[0][0] for x in a["atoms"]]
    right = [y[0][0] for y in b["atoms"]]
    if len(left) != len(right) or not a["wants"] == b["wants"] == "yesno":
        return False
    apart = [i for i, (x, y) in enumerate(zip(left, right, strict=True)) if x != y]
    if len(apart) != 2 or {"or", "and"} & {*a["words"], *b["words"]} or a["compares"]:
        return False
    i, j = apart
    if not {a["atoms"][i][2], a["atoms"][j][2]} <= {"s", "o", "m"} and not (
        _thing_like(left[i], lex) and _thing_like(left[j], lex)
    ):
        return False
    return left[i] == right[j] and left[j] == right[i]


_APART = (
    ("other liking", _other_liking),
    ("other time", _other_time),
    ("other way round", _other_way_round),
    ("exchanged", _exchanged),
    ("changed places", _swapped),
    ("other want", _other_want),
    ("other thing asked for", _other_head),
)


def _stem(name: str) -> str:
    for end in ("fulness", "iness", "ness", "ful", "ing", "ers", "er", "or", "ly", "y", "e", "s"):
        if name.endswith(end) and len(name) - len(end) >= 4:
            return name[: -len(end)]
    return name


def _likeness(x: Atom, y: Atom, lex: Lexicon) -> float:
    names_x, names_y = set(x[0]), set(y[0])
    if names_x & names_y:
        return 1.0
    if any(lex.kinds.get(n, frozenset()) & names_y for n in names_x):
        return 0.6
    if any(lex.kinds.get(n, frozenset()) & names_x for n in names_y):
        return 0.6
    if {_stem(n) for n in names_x} & {_stem(n) for n in names_y}:
        return 0.9
    return 0.0


def _brought(x: Atom, others: list[Atom], lex: Lexicon) -> float:
    """What is left of the cost of an idea that the other text brings along (0: it does not)."""
    names = set(x[0])
    near = 0.0
    for other in others:
        for name in other[0]:
            if lex.related.get(name, frozenset()) & names:
                return 0.2
        if any(lex.related.get(name, frozenset()) & set(other[0]) for name in names):
            near = 0.5
    return near


def _shared(a: Frame, b: Frame, lex: Lexicon) -> tuple[float, str]:
    left, right = list(a["atoms"]), list(b["atoms"])
    pairs = sorted(
        (
            (-_likeness(x, y, lex), abs(i - j), i, j)
            for i, x in enumerate(left)
            for j, y in enumerate(right)
        ),
    )
    used_left: set[int] = set()
    used_right: set[int] = set()
    common = 0.0
    for minus, _, i, j in pairs:
        if minus == 0 or i in used_left or j in used_right:
            continue
        used_left.add(i)
        used_right.add(j)
        common += -minus * (left[i][1] + right[j][1]) / 2
    rest_left = [x for i, x in enumerate(left) if i not in used_left]
    rest_right = [y for j, y in enumerate(right) if j not in used_right]
    if any(x[2] == "n" for x in rest_left + rest_right):
        return 0.0, "a not"
    turned = bool(a["compares"] and b["compares"])
    for x in rest_left:
        for y in rest_right:
            if turned and set(x[0]) & set(a["compares"][0]):
                continue
            clash = _clash(x, y, lex)
            if clash:
                return 0.0, f"{clash}: {x[0][0]} / {y[0][0]}"
    if turned:
        rest_left = [x for x in rest_left if not set(x[0]) & set(a["compares"][0])]
        rest_right = [y for y in rest_right if not set(y[0]) & set(b["compares"][0])]
    cost = sum(_cost(x, right, b, lex) for x in rest_left)
    cost += sum(_cost(y, left, a, lex) for y in rest_right)
    same_ideas = not any(x[1] > LIGHT for x in rest_left + rest_right)
    wants = frozenset({a["wants"], b["wants"]})
    if same_ideas and cost <= 0.1 and len(wants) == 2 and wants not in _TOLD_ALIKE:
        return 0.0, "other want, same ideas"
    score = common / (common + cost) if common else 0.0
    return score, f"{[x[0][0] for x in rest_left]} / {[y[0][0] for y in rest_right]}"


def _clash(x: Atom, y: Atom, lex: Lexicon) -> str:
    names_x, names_y = set(x[0]), set(y[0])
    if _opposite(names_x, names_y, lex):
        return "opposite"
    for n in names_x:
        for m in names_y:
            kinds = (lex.kinds.get(n, frozenset()) & lex.kinds.get(m, frozenset())) - _LOOSE
            if kinds and min(x[1], y[1]) > LIGHT:
                return sorted(kinds)[0]
    return ""


LIGHT = 0.3
_TOLD_ALIKE = {
    frozenset(pair)
    for pair in (
        ("what", "how"),
        ("what", "tell"),
        ("how", "tell"),
        ("who", "tell"),
        ("who", "name"),
        ("choice", "what"),
        ("choice", "who"),
        ("choice", "where"),
        ("choice", "yesno"),
    )
}


def _cost(x: Atom, others: list[Atom], other: Frame, lex: Lexicon) -> float:
    weight: float = x[1]
    if other["wants"] in ("what", "who", "where") and not other["head"] and x[2] == "h":
        weight = LIGHT
    if weight <= LIGHT:
        weight *= 0.5
    said = _brought(x, others, lex)
    if said:
        return weight * said
    if any(lex.kinds.get(n, frozenset()) & _NARROWING for n in x[0]) and weight > LIGHT:
        return weight * 1.5
    return weight
