"""Whether two asks that someone holds side by side are the same: there a twin is as likely as not.

In a bank nearly no pair is a twin, so there one rule that tells two asks apart is enough (`compare`).
Two texts that someone holds side by side were chosen to be alike: there each rule is one more thing
to weigh, beside what is matched and what is left over. Before Monday and after Sunday are opposites,
and still the same day.
"""

from __future__ import annotations

from math import exp
from typing import Any

from bank.choose.ask.align import Alignment, Frame, align
from bank.choose.ask.apart import APART
from bank.choose.ask.bound import little_in_common
from bank.choose.ask.compare import LEFT_APART, same_words
from bank.choose.ask.relations import opposite
from bank.choose.ask.sides import exchanged_sides
from bank.choose.ask.weigh import features

ENOUGH = 0.5


def same_frames(a: Frame, b: Frame) -> bool:
    """Whether two frames ask the same."""
    return likely(a, b) >= ENOUGH


def likely(a: Frame, b: Frame) -> float:
    """How likely two frames ask the same, from 0 to 1, where half of the pairs do."""
    if same_words(a, b):
        return 1.0
    total = WEIGHTS["constant"]
    total += sum(WEIGHTS.get(name, 0.0) * value for name, value in weighed(a, b).items())
    return 1 / (1 + exp(-max(-500.0, min(500.0, total))))


def weighed(a: Frame, b: Frame) -> dict[str, float]:
    """All that is weighed: the features of `weigh`, and 1 for each rule that tells the two apart."""
    found = align(a, b)
    values = features(found, a, b)
    values["little in common"] = float(little_in_common(a, b))
    turned = exchanged_sides(a, b)
    opposites = any(opposite(x.names, y.names) for x in found.left for y in found.right)
    values["sides exchanged"] = float(turned and not opposites)
    values["an opposite"] = float(opposites and not turned)
    values["an opposite of exchanged sides"] = float(opposites and turned)
    modes = {*a["modes"]} ^ {*b["modes"]}
    values["other mode"] = float(bool(modes) and min(len(a["modes"]), len(b["modes"])) > 0)
    values["mode on one side"] = float(bool(modes) and min(len(a["modes"]), len(b["modes"])) == 0)
    values["mode of a yes or no"] = float(bool(modes) and a["wants"] == b["wants"] == "yesno")
    values.update((name, float(apart(a, b))) for name, apart in APART)
    values.update((name, float(_left(found, apart, a, b))) for name, apart in LEFT_APART)
    return values


def _left(found: Alignment, apart: Any, a: Frame, b: Frame) -> bool:
    return bool(found.common) and apart(found, a, b)


WEIGHTS = {"constant": 0.0}
