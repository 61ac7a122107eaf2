"""How much two asks share, as numbers."""

from __future__ import annotations

from dataclasses import dataclass
from math import log

from bank.choose.ask.align import LIGHT, Alignment, Frame, Idea, brought
from bank.choose.ask.relations import BROUGHT, is_of

# Leaving one of these unsaid asks something else, unless another word brings it along.
_NARROWING = frozenset(
    "animal relative helper someone meal weekday month season holiday daypart timeword place room "
    "number planet".split()
)
SOMEONE = frozenset({"relative", "helper", "someone"})
_LIKES = frozenset("like favorite love enjoy prefer choose want".split())
# Wants that may stand for each other.
TOLD_ALIKE = frozenset(
    frozenset(pair)
    for pair in (
        ("what", "how"),
        ("what", "tell"),
        ("how", "tell"),
        ("feel", "tell"),
        ("who", "tell"),
        ("who", "name"),
        ("choice", "what"),
        ("choice", "who"),
        ("choice", "where"),
        ("choice", "yesno"),
    )
)


def features(found: Alignment, a: Frame, b: Frame) -> dict[str, float]:
    """What the decision weighs, by name.

    First what is matched: `full` and `light` by telling and by light words, `general` by a general
    word only, `one_idea` where at most one telling idea is. Then what is left over on the emptier
    and on the fuller side (`..._both`, `..._one`): `plain` nothing explains it, `brought` the other
    text brings it along, `cost` both with light words. `covered_...` are the shares of the two
    texts that are matched or explained. The others are about what is wanted, and of whom.
    """
    telling = [(x, y, k) for x, y, k in found.matched if min(x.weight, y.weight) > LIGHT]
    full = sum((x.weight + y.weight) / 2 * k for x, y, k in telling)
    one_idea = float(len(telling) <= 1)
    left = _rest(found.left, found.right, found.right_all)
    right = _rest(found.right, found.left, found.left_all)
    told_left, told_right = _told_weight(found.left_all), _told_weight(found.right_all)
    covered_left = max(0.0, 1 - left.cost / told_left) if told_left else 0.0
    covered_right = max(0.0, 1 - right.cost / told_right) if told_right else 0.0
    wants = frozenset({a["wants"], b["wants"]})
    two_wants = len(wants) == 2
    plain = sorted((left.plain, right.plain))
    explained = sorted((left.plain + left.brought, right.plain + right.brought))
    return {
        "full": log(0.3 + full),
        "light": LIGHT
        * sum(
            k
            for x, y, k in found.matched
            if min(x.weight, y.weight) <= LIGHT and x.names[0] != "you"
        ),
        "general": found.general,
        "one_idea": one_idea,
        "plain_both": plain[0],
        "plain_one": plain[1],
        "brought_both": explained[0] - plain[0],
        "brought_one": explained[1] - plain[1],
        "cost_both": min(left.cost, right.cost),
        "cost_one": max(left.cost, right.cost),
        "covered_worse": min(covered_left, covered_right),
        "covered_better": max(covered_left, covered_right),
        "covered_product": covered_left * covered_right,
        "narrowing": left.narrowing + right.narrowing,
        "light_left": left.light + right.light,
        "you_on_one_side": float(left.you != right.you),
        "likes_on_one_side": float(left.likes != right.likes),
        "shorter": min(told_left, told_right),
        "near": found.near,
        "near_by_one_idea": one_idea * found.near,
        "other_want": float(two_wants and wants not in TOLD_ALIKE),
        "like_want": float(wants in TOLD_ALIKE),
        "other_want_by_one_idea": one_idea * two_wants,
        "choice_and_other": float(two_wants and "choice" in wants),
        "both_what": float(wants == {"what"}),
        "one_definite_want": float(not two_wants and not wants <= {"what", "tell", "name"}),
        "topic": float("tell" in wants),
        "other_liking": float(a["liking"] != b["liking"]),
        "supposed_on_one_side": float(_supposed_on_one_side(a, b)),
        "asked_by_another_side": float({_asked_part(a), _asked_part(b)} == {"doer", "done"}),
        "other_part_of_speech": _moved(telling, "v"),
        "in_condition_on_one_side": _moved(telling, "c"),
    }


@dataclass(frozen=True, slots=True)
class _Rest:
    plain: float
    brought: float
    cost: float
    narrowing: float
    light: float
    you: bool
    likes: int


def _rest(rest: tuple[Idea, ...], others_left: tuple[Idea, ...], others: tuple[Idea, ...]) -> _Rest:
    """What the ideas left over on one side weigh, by what explains them in the other text."""
    plain = by_other = cost = narrowing = 0.0
    light = likes = 0
    said = told(rest)
    others_said = tuple(told(others_left))
    for x in said:
        left = brought(x, others)
        cost += max(x.weight, LIGHT / 2) * _kept_cost(brought(x, others_said), left)
        likes += not _LIKES.isdisjoint(x.names)
        if x.weight <= LIGHT:
            light += 1
        elif left < 1.0:
            by_other += x.weight * (0.5 if x.role == "h" or left == BROUGHT else 1.0)
        else:
            plain += x.weight
            if x.role != "h" and is_of(x.names, _NARROWING):
                narrowing += x.weight
    return _Rest(plain, by_other, cost, narrowing, float(light), len(said) < len(rest), likes)


def _kept_cost(beside_left_over: float, beside_all: float) -> float:
    """What stays of an idea's cost: least where the other text's left-over ideas explain it.

    What an idea in common explains stays most of it: of a hand and of a dish "wash" says nothing.
    """
    if beside_left_over < 1.0:
        return beside_left_over
    return 0.6 if beside_all == BROUGHT else 0.8 if beside_all < 1.0 else 1.0


def _told_weight(everything: tuple[Idea, ...]) -> float:
    return sum(max(x.weight, LIGHT / 2) for x in told(everything))


def _moved(telling: list[tuple[Idea, Idea, float]], *roles: str) -> float:
    """How much is matched that stands in one of these roles in one of the texts only."""
    return sum(
        (x.weight + y.weight) / 2 * k
        for x, y, k in telling
        if (x.role in roles) != (y.role in roles)
    )


def _supposed_on_one_side(a: Frame, b: Frame) -> bool:
    tenses = {a["tense"], b["tense"]}
    return "would" in tenses and len(tenses) == 2 and "" not in tenses


_HELPERS = frozenset(
    "do does did can could will would should must may might shall have has had".split()
)


def _asked_part(frame: Frame) -> str:
    """Whether who or what does it is asked for, what is done, what something is, or another thing."""
    words = frame["words"]
    if not words or words[0] not in ("what", "who", "which", "whose"):
        return ""
    for at, word in enumerate(words[1:6]):
        if word in _HELPERS or (at and word in ("you", "people")):
            return "done"
        if word in ("is", "are", "was", "were"):
            return "is"
    return "doer"


def costs(found: Alignment, a: Frame, b: Frame) -> tuple[float, float]:
    """What the ideas left over on each side weigh."""
    left = sum(_cost(x, b, found.right_all) for x in found.left)
    right = sum(_cost(y, a, found.left_all) for y in found.right)
    return left, right


def _cost(x: Idea, other: Frame, others: tuple[Idea, ...]) -> float:
    weight = x.weight
    unnamed = x.role == "h" and other["wants"] in ("what", "who", "where") and not other["head"]
    if weight <= LIGHT or unnamed:
        weight = LIGHT / 2
    left = brought(x, others)
    if left == 1.0 and weight > LIGHT and is_of(x.names, _NARROWING):
        return weight * 1.5
    return weight * left


def told(rest: tuple[Idea, ...]) -> list[Idea]:
    """The ideas left over that are more than "you"."""
    return [x for x in rest if x.names[0] != "you"]
