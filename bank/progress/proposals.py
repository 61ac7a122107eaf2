"""What a teacher may look at, each with its evidence. Nothing moves by itself.

Working alone at 95 % is where a learner should be, not a sign to move up. So trouble is said at once,
an easier band is proposed after two weeks, and steady work is only mentioned.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from bank.progress.independence import Day, is_stuck
from bank.progress.mastery import MASTERED, Mastery, has_slipped
from bank.progress.settings import ProgressSettings

STUCK, EASIER, STEADY, SKILL_MASTERED, SKILL_SLIPPED = (
    "stuck easier steady mastered slipped".split()
)
EASIER_BY = 0.5  # grades; the band is proposed so much lower (common practice: half a grade)


@dataclass(frozen=True, slots=True)
class Proposal:
    """One thing to look at: its `kind`, what is said, the evidence, and the command that would do it.

    `command` is in words after `binderbank` and empty where nothing is to be changed.
    """

    kind: str
    said: str
    evidence: str
    command: str = ""


def proposals(
    code: str,
    band: tuple[float, float],
    states: Mapping[str, str],
    days: Sequence[Day],
    skills: Sequence[Mastery],
    settings: ProgressSettings,
) -> list[Proposal]:
    """What to look at for one learner; `states` are the teacher's own words for the skills."""
    found = [
        one
        for one in (
            _easier(code, band, days, settings),
            _stuck(days, settings),
            _steady(days, settings),
        )
        if one
    ]
    if found and found[0].kind == EASIER:
        found = found[:1]
    return found + _skills(code, states, skills, settings)


def stuck_line(days: Sequence[Day]) -> str:
    """The last days of a learner who is stuck, as one says it.

    >>> import datetime as dt
    >>> stuck_line([Day(dt.date(2026, 9, 14), 3, 7), Day(dt.date(2026, 9, 15), 4, 7)])
    '3 of 7 and 4 of 7 alone'
    """
    return " and ".join(f"{day.alone} of {day.count}" for day in days) + " alone"


def _stuck(days: Sequence[Day], settings: ProgressSettings) -> Proposal | None:
    if not is_stuck(days, settings.alone_share, settings.stuck_days):
        return None
    last = days[-settings.stuck_days :]
    evidence = f"{stuck_line(last)} on the last {len(last)} days with marks"
    return Proposal(STUCK, "is stuck", evidence)


def _easier(
    code: str, band: tuple[float, float], days: Sequence[Day], settings: ProgressSettings
) -> Proposal | None:
    last = days[-settings.easier_days :]
    if len(last) < settings.easier_days or band[0] <= 0 and band[1] <= 1:
        return None
    alone, count = sum(day.alone for day in last), sum(day.count for day in last)
    below = sum(day.share < settings.alone_share for day in last)
    # Two weeks under the share: as a whole, and on most days, so that two bad days are not enough.
    if alone >= settings.alone_share * count or below * 2 <= len(last):
        return None
    low = max(0.0, round(band[0] - EASIER_BY, 1))
    high = max(low + 1.0, round(band[1] - EASIER_BY, 1))
    evidence = (
        f"{alone} of {count} done alone over the last {len(last)} days with marks,"
        f" {below} of them below {_percent(settings.alone_share)}"
    )
    command = f"learner change {code} --band {_grade(low)}-{_grade(high)}"
    return Proposal(EASIER, "may need an easier band", evidence, command)


def _steady(days: Sequence[Day], settings: ProgressSettings) -> Proposal | None:
    last = days[-settings.easier_days :]
    count = sum(day.count for day in last)
    alone = sum(day.alone for day in last)
    if len(last) < settings.easier_days or alone < settings.steady_share * count:
        return None
    evidence = f"{alone} of {count} done alone over the last {len(last)} days with marks"
    return Proposal(
        STEADY, "works steadily without prompts, as one should; you may look at it", evidence
    )


def _skills(
    code: str, states: Mapping[str, str], skills: Sequence[Mastery], settings: ProgressSettings
) -> list[Proposal]:
    found = []
    for one in skills:
        state = states.get(one.skill)
        evidence = (
            f"{one.alone} of the last {one.count} fixed alone, likely between"
            f" {_percent(one.low)} and {_percent(one.high)}"
        )
        change = f"learner change {code} --skill {one.skill}"
        if one.said == MASTERED and state == "in-work":
            said = f"may have mastered {one.skill}"
            found.append(Proposal(SKILL_MASTERED, said, evidence, f"{change}=mastered"))
        elif state == "mastered" and has_slipped(one, settings):
            said = f"may have lost {one.skill} again"
            found.append(Proposal(SKILL_SLIPPED, said, evidence, f"{change}=in-work"))
    return found


def _percent(share: float) -> str:
    return f"{share:.0%}"


def _grade(grade: float) -> str:
    return "K" if grade == 0 else f"{grade:g}"
