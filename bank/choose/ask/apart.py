"""What tells two asks apart, whatever else they share: small named rules, tried in order."""

from __future__ import annotations

from typing import Any

from bank.choose.ask.align import align
from bank.choose.ask.lexicon import lexicon
from bank.choose.ask.relations import alike, is_of, opposite
from bank.choose.ask.sides import MUTUAL

Frame = dict[str, Any]


def _other_liking(a: Frame, b: Frame) -> bool:
    return {a["liking"], b["liking"]} == {"most", "least"}


def _other_time(a: Frame, b: Frame) -> bool:
    tenses = {a["tense"], b["tense"]}
    return "past" in tenses and bool(tenses & {"will", "now", "would"})


def _other_way_round(a: Frame, b: Frame) -> bool:
    """Is a cow bigger than a cat? / Is a cat bigger than a cow?"""
    if not (a["compares"] and b["compares"]):
        return False
    (measure_a, left_a, right_a), (measure_b, left_b, right_b) = a["compares"], b["compares"]
    crossed = bool(
        set(left_a) & set(right_b) - set(left_b) and set(right_a) & set(left_b) - set(right_b)
    )
    turned = not set(measure_a) & set(measure_b) and opposite(tuple(measure_a), tuple(measure_b))
    straight = bool(set(left_a) & set(left_b) and set(right_a) & set(right_b) - {"you"})
    return bool(crossed != turned and (crossed or straight))


def _other_head(a: Frame, b: Frame) -> bool:
    """What is your favorite color? / What is your favorite animal?"""
    if a["wants"] != b["wants"] or a["wants"] == "amount" or not (a["head"] and b["head"]):
        return False
    general = {"thing", "part", "time", "day", "place"} & {*a["head"], *b["head"]}
    return not general and not alike(tuple(a["head"]), tuple(b["head"]))


_MUTUAL = MUTUAL | {"be"}


def _exchanged(a: Frame, b: Frame) -> bool:
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
        ("feel", "how"),
        ("feel", "tell"),
        ("feel", "what"),
        ("feel", "yesno"),
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
        ("what", "choice"),
        ("choice", "yesno"),
        ("choice", "where"),
        ("choice", "what"),
        ("why", "how"),
        ("amount", "yesno"),
        ("amount", "choice"),
        ("how", "choice"),
        ("know", "how"),
        ("know", "what"),
        ("know", "tell"),
        ("when", "tell"),
        ("why", "tell"),
        ("yesno", "where"),
        ("yesno", "how"),
    )
}


def differing(a: list[str], b: list[str]) -> tuple[list[str], list[str]]:
    """The words between the common beginning and the common end of two texts."""
    while a and b and a[0] == b[0]:
        a, b = a[1:], b[1:]
    while a and b and a[-1] == b[-1]:
        a, b = a[:-1], b[:-1]
    return a, b


def _other_want(a: Frame, b: Frame) -> bool:
    wants = {a["wants"], b["wants"]}
    if wants == {"who", "name"}:
        return False
    if len(wants) == 2 and max(map(len, differing(a["said"], b["said"]))) <= 2:
        return True
    if len(wants) == 1:
        return bool(a["wants"] == "amount" and a["head"] != b["head"])
    return frozenset(wants) not in _SAME_WANT


def _thing_like(name: str) -> bool:
    return bool(lexicon().kinds.get(name, frozenset()) - {"action", "dimension", "feeling"})


def _swapped(a: Frame, b: Frame) -> bool:
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
        _thing_like(left[i]) and _thing_like(left[j])
    ):
        return False
    if any(is_of((name,), frozenset({"feeling"})) for name in left[i + 1 : j]):
        return False  # what you are afraid of scares you
    return bool(left[i] == right[j] and left[j] == right[i])


def _asked_of_other_side(a: Frame, b: Frame) -> bool:
    """Who does your dog love? / Who loves your dog?"""
    if not a["wants"] == b["wants"] in ("who", "what") or a["head"] or b["head"]:
        return False
    do = {"do", "does", "did"}
    if {"is", "are", "was", "were"} & {f["words"][1] for f in (a, b) if len(f["words"]) > 1}:
        return False
    helped = [len(f["words"]) > 1 and f["words"][1] in do for f in (a, b)]
    if helped[0] == helped[1] or not {f["words"][0] for f in (a, b)} <= {"who", "what"}:
        return False
    doing = b if helped[0] else a
    if not any("?" in doers for _, doers, _ in doing["acts"]):
        return False
    rest = align(a, b)
    return not rest.left and not rest.right


# The quick ones first: most of what is compared is told apart by them.
APART = (
    ("other liking", _other_liking),
    ("other time", _other_time),
    ("other want", _other_want),
    ("other thing asked for", _other_head),
    ("other way round", _other_way_round),
    ("exchanged", _exchanged),
    ("changed places", _swapped),
    ("asked of the other side", _asked_of_other_side),
)
