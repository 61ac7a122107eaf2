"""The proof: what was made sure of today, and what deserves a look.

Loads nothing else, since the terminal shows it every morning.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

# What is made sure of for each item, in the order of the columns.
SURE = {
    "new": "new to all",
    "not-too-hard": "not too hard",
    "no-error": "no error but those on purpose",
    "plain": "plain wording",
    "no-avoided-theme": "no avoided theme",
}
HEADINGS = ("new", "level", "error", "wording", "theme")
MAY_BE = {
    "new": "may not be new to all",
    "not-too-hard": "may be too hard",
    "no-error": "may have an error that nobody meant",
    "plain": "wording may not be plain",
    "no-avoided-theme": "may touch a theme to avoid",
}
# A level whose range is wider than this many grades says little about one item.
WIDE_RANGE = 2.5
WORTH_A_GLANCE = 2


@dataclass(frozen=True, slots=True)
class ProofItem:
    """One item of the day as the proof sheet judges it.

    `sure` holds the codes of `SURE` that were checked and hold. `low` and `high` are the range of
    its level in grades, None where it has none. `please_look` are findings that are not certain,
    `seen` says when and by whom it was seen before, if it was.
    """

    kind: str
    text: str
    codes: tuple[str, ...]
    sure: frozenset[str] = frozenset(SURE)
    low: float | None = None
    high: float | None = None
    please_look: tuple[str, ...] = ()
    seen: str = ""

    def __post_init__(self) -> None:
        unknown = self.sure - SURE.keys()
        if unknown:
            raise ValueError(f"{sorted(unknown)[0]!r} is nothing to be sure of here")

    @property
    def doubts(self) -> tuple[str, ...]:
        """What is less sure about the item, in words, the gravest first."""
        lines = [words for code, words in MAY_BE.items() if code not in self.sure]
        lines += self.please_look
        if self.low is None or self.high is None:
            lines.append("no level yet")
        elif self.high - self.low > WIDE_RANGE:
            lines.append(f"level could be {_grade(self.low)} to {_grade(self.high)}")
        if self.seen:
            lines.append(f"seen before: {self.seen}")
        return tuple(lines)

    @property
    def weight(self) -> float:
        """How much the item deserves a glance: what is not sure counts most, a wide range least."""
        missing = 6 * (len(SURE) - len(self.sure))
        looks = 4 * len(self.please_look)
        unlevelled = self.low is None or self.high is None
        width = 2.0 if unlevelled else max(0.0, (self.high or 0) - (self.low or 0) - 1)
        return missing + looks + width + (2 if self.seen else 0)


def _grade(grade: float) -> str:
    return "K" if grade < 0.5 else f"{grade:.1f}".removesuffix(".0")


def worth_a_glance(items: Sequence[ProofItem]) -> list[ProofItem]:
    """The two items that most deserve a human glance; longer texts first where all are equal."""
    return sorted(items, key=lambda item: (-item.weight, -len(item.text)))[:WORTH_A_GLANCE]


def merged(items: Sequence[ProofItem]) -> list[ProofItem]:
    """Every item once, however many learners have it: sure only of what is sure for all of them."""
    groups: dict[tuple[str, str], list[ProofItem]] = {}
    for item in items:
        groups.setdefault((item.kind, item.text), []).append(item)
    return [
        ProofItem(
            kind,
            text,
            tuple(dict.fromkeys(code for item in same for code in item.codes)),
            frozenset.intersection(*(item.sure for item in same)),
            same[0].low,
            same[0].high,
            tuple(dict.fromkeys(line for item in same for line in item.please_look)),
            "; ".join(dict.fromkeys(item.seen for item in same if item.seen)),
        )
        for (kind, text), same in groups.items()
    ]


def proof_lines(items: Sequence[ProofItem]) -> list[str]:
    """The proof sheet as plain lines for the terminal."""
    each = merged(items)
    doubtful = [item for item in each if item.doubts]
    lines = [
        f"{len(each)} items today; made sure for all but those below: {', '.join(SURE.values())}."
    ]
    lines += [
        f"  {item.text} ({', '.join(item.codes)}): {'; '.join(item.doubts)}" for item in doubtful
    ]
    if each:
        lines.append("Most worth a glance:")
        lines += [f"  {item.kind}: {item.text}" for item in worth_a_glance(each)]
    return lines
