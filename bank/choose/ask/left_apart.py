"""Rules that tell two asks apart by what is left over when they are laid side by side."""

from __future__ import annotations

from bank.choose.ask.align import LIGHT, Alignment, Frame, Idea, brought, clash
from bank.choose.ask.apart import differing
from bank.choose.ask.relations import contradict, is_of, opposite
from bank.choose.ask.weigh import SOMEONE, TOLD_ALIKE, costs, told

# From here on two texts are said almost alike, and a small word makes the difference.
ALMOST_SAID = 0.3
# And from here on any other idea does.
NEARLY_SAID = 0.4


# Who is meant by "you" as well.
_ANYONE = frozenset({"child", "student", "family", "grownup", "person"})
CONCRETE = frozenset(
    "animal relative helper meal month season holiday place weather body clothes food tool vehicle "
    "furniture toyish sport instrument subject material shape nature room".split()
)


def _one_sided_not(found: Alignment, a: Frame, b: Frame) -> bool:
    """Which animals can fly? / Which animals are not able to fly?

    In another wording a word of the other text may say what the "not" says: nobody is with you
    when you are alone.
    """
    for rest, others in ((found.left, found.right), (found.right, found.left)):
        if any(x.role == "n" for x in rest):
            spoken_for = any(y.weight > LIGHT and y.role != "n" for y in others)
            if found.near >= ALMOST_SAID or not spoken_for:
                return True
    return False


def _one_word_apart(found: Alignment, a: Frame, b: Frame) -> bool:
    """What do you put on your bed? / What do you put under your bed?

    Or the one says the other and more: What do you wear? / What do you wear in the winter?
    """
    rest = [len(side) for side in differing(a["said"], b["said"])]
    other = told(found.left) or told(found.right)
    return bool(other) and (max(rest) <= 2 or min(rest) == 0)


def _other_idea(found: Alignment, a: Frame, b: Frame) -> bool:
    """Why do bees go to flowers? / Why do bees sting?"""
    return found.near >= NEARLY_SAID and all(
        any(x.weight > LIGHT for x in told(rest)) for rest in (found.left, found.right)
    )


def _other_thing_done(found: Alignment, a: Frame, b: Frame) -> bool:
    """What can you do with snow? / What can you see in the snow?

    Said in other words it still holds where the texts have one idea in common: What do babies eat? /
    Name one thing a baby can do.
    """
    if bool(a["verbs"]) == bool(b["verbs"]):
        return False
    doing, rest, others = (
        (b, found.left, found.right_all) if a["verbs"] else (a, found.right, found.left_all)
    )
    if doing["words"][:1] != ["what"] or "do" not in doing["words"][2:]:
        return False
    done = [x for x in rest if x.role == "v" and x.weight > LIGHT]
    if found.near >= ALMOST_SAID:
        return doing["said"][0] == "what" and bool(done)
    telling = [x for x, y, _ in found.matched if min(x.weight, y.weight) > LIGHT]
    return len(telling) <= 1 and any(brought(x, others) == 1.0 for x in done)


def _someone_else(found: Alignment, a: Frame, b: Frame) -> bool:
    """What makes you angry? / What makes your teacher angry?"""
    sides = (
        (found.left, found.right, found.right_all),
        (found.right, found.left, found.left_all),
    )
    for rest, other_rest, others in sides:
        if any(y.weight > LIGHT for y in other_rest):
            continue  # which may say the same person in other words
        for x in rest:
            named = x.role != "h" and is_of(x.names, SOMEONE) and not _ANYONE & {*x.names}
            if named and brought(x, others) == 1.0:
                return True
    return False


def _unrelated_things(found: Alignment, a: Frame, b: Frame) -> bool:
    """Where do you keep your socks? / In what place do you store your books?"""

    def things(rest: tuple[Idea, ...], others: tuple[Idea, ...]) -> bool:
        return any(
            x.weight > LIGHT
            and x.role != "h"
            and is_of(x.names, CONCRETE)
            and brought(x, others) == 1.0
            for x in rest
        )

    return things(found.left, found.right_all) and things(found.right, found.left_all)


def _opposite_small_word(found: Alignment, a: Frame, b: Frame) -> bool:
    """How do you get on the bus? / How do you get off the bus?"""

    def turned(rest: tuple[Idea, ...], other: Frame) -> bool:
        small = tuple(word for word in ("on", "in", "up", "with") if word in other["words"])
        return any(x.weight <= LIGHT + 0.2 and opposite(x.names, small) for x in rest)

    return found.near >= ALMOST_SAID and (turned(found.left, b) or turned(found.right, a))


def _clashing(found: Alignment, a: Frame, b: Frame) -> bool:
    """What do you do at the library? / What do you do at the park?"""
    return any(
        clash(x, y)
        for x in found.left
        for y in found.right
        if min(x.weight, y.weight) > LIGHT
        or found.near >= ALMOST_SAID
        or contradict(x.names, y.names)
    )


def _only_the_want_differs(found: Alignment, a: Frame, b: Frame) -> bool:
    """What time do you eat supper? / What do you eat for supper?"""
    wants = frozenset({a["wants"], b["wants"]})
    said_alike = found.near >= ALMOST_SAID and "tell" not in wants
    told_more = any(x.weight > LIGHT for x in (*found.left, *found.right))
    if len(wants) == 2 and said_alike and told_more:
        return True
    return len(wants) == 2 and wants not in TOLD_ALIKE and sum(costs(found, a, b)) <= 0.1


LEFT_APART = (
    ("a not", _one_sided_not),
    ("one word is another", _one_word_apart),
    ("said nearly alike of another idea", _other_idea),
    ("something else is done", _other_thing_done),
    ("someone else", _someone_else),
    ("unrelated things", _unrelated_things),
    ("opposite of a small word", _opposite_small_word),
    ("opposites, or two of a kind", _clashing),
    ("other want, same ideas", _only_the_want_differs),
)
