"""Use cases of progress: what the marks say of a learner and of items. It changes no set by itself."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace

from bank.classroom_days import Days
from bank.classroom_marks import progress_settings
from bank.item import BankError
from bank.learner import Learner
from bank.progress.chart import INDEPENDENCE, Chart, Goal, Phase
from bank.progress.evidence import Evidence
from bank.progress.independence import Day, StepShare
from bank.progress.mastery import Mastery
from bank.progress.proposals import Proposal
from bank.progress.settings import ProgressSettings
from bank.store import Store
from bank.store_marks import learner_marks
from bank.store_progress import add_phase, given_marks, phases

AIMS = "aims"  # the place in a learner's support


@dataclass(frozen=True, slots=True)
class Report:
    """All that is shown of one learner's progress."""

    learner: Learner
    days: tuple[Day, ...]
    steps: tuple[StepShare, ...]
    help_trend: str
    skills: tuple[Mastery, ...]
    goals: tuple[Goal, ...]
    charts: tuple[Chart, ...]
    phases: tuple[Phase, ...]
    topics: tuple[tuple[dt.date, int], ...]
    proposals: tuple[Proposal, ...]
    settings: ProgressSettings
    step_names: dict[str, str]


class Progress:
    """What the marks say: evidence from a classroom, not an evaluation. It changes nothing."""

    def __init__(self, store: Store, days: Days) -> None:
        self.store = store
        self.days = days

    def stuck(self, today: dt.date) -> list[tuple[str, str]]:
        """Who is stuck: the code and the last days in words."""
        return self.days.stuck(today)

    def report(self, code: str, since: dt.date | None = None) -> Report:
        """One learner's independence, skills, goals and what a teacher may look at."""
        from bank.progress.independence import by_day, by_step, trend
        from bank.progress.mastery import by_skill
        from bank.progress.proposals import proposals

        learner = self.days.learners([code])[0]
        settings = progress_settings(self.store)
        marks = learner_marks(self.store, learner.number, since)
        days = by_day(marks, settings.prompts)
        skills = by_skill(marks, settings)
        goals = self.goals(learner)
        noted = phases(self.store, learner.number)
        band = (learner.band.low, learner.band.high)
        return Report(
            learner,
            tuple(days),
            tuple(by_step(marks, settings.prompts)),
            trend(days),
            tuple(skills),
            tuple(goals),
            tuple(_charts(goals, days, skills, noted)),
            tuple(noted),
            tuple((m.day, m.amount) for m in marks if m.kind == "topic" and m.amount is not None),
            tuple(proposals(learner.code, band, learner.skills, days, skills, settings)),
            settings,
            self._step_names(),
        )

    def _step_names(self) -> dict[str, str]:
        from bank.morning.routine import DEFAULT_ROUTINE, Routine

        plain = self.store.setting("routine")
        routine = Routine.from_dict(plain) if plain else DEFAULT_ROUTINE
        return {step.code: step.name for step in routine.steps}

    def goals(self, learner: Learner) -> list[Goal]:
        """The learner's goals: those that were said, else independence and each skill in work."""
        settings = progress_settings(self.store)
        said = [Goal.from_dict(plain) for plain in learner.support.get(AIMS, [])]
        names = {goal.name for goal in said}
        usual = [Goal(INDEPENDENCE, settings.alone_share)]
        usual += [
            Goal(code, settings.goal_share)
            for code, state in sorted(learner.skills.items())
            if state == "in-work"
        ]
        return said + [goal for goal in usual if goal.name not in names]

    def set_goal(self, code: str, goal: Goal) -> None:
        """Say what a learner works towards, in place of what was said about the same."""
        from bank.skill import skill
        from bank.store_sets import write_learner

        if goal.name != INDEPENDENCE:
            try:
                skill(goal.name)
            except ValueError as error:
                raise BankError(f"a goal is {INDEPENDENCE} or a skill: {error}") from None
        learner = self.days.learners([code])[0]
        kept = [plain for plain in learner.support.get(AIMS, []) if plain["name"] != goal.name]
        support = {**learner.support, AIMS: [*kept, goal.to_dict()]}
        write_learner(self.store, replace(learner, support=support))

    def add_phase(self, code: str, day: dt.date, words: str) -> None:
        """Note something that changed; it becomes a line on the learner's charts."""
        from bank.item import clean_text

        learner = self.days.learners([code])[0]
        add_phase(self.store, learner.number, Phase(day, clean_text(words, "the words", 80)))

    def evidence(self, kind: str = "") -> list[Evidence]:
        """How items went, the furthest from what their level says first."""
        from bank.progress.evidence import evidence
        from bank.store_items import get_items

        swapped = [row[0] for row in self.store.rows("SELECT was FROM swap")]
        objections = {
            row[0]: row[1]
            for row in self.store.rows("SELECT id, objection FROM item WHERE objection <> ''")
        }
        found = evidence(given_marks(self.store), swapped, objections, self._forgotten_counts())
        items = get_items(self.store, [one.item for one in found])
        named = []
        for one in found:
            if one.item in items and kind in ("", items[one.item].kind):
                item = items[one.item]
                grade = item.reading_grade or 0.0
                named.append(replace(one, kind=item.kind, grade=grade, text=item.text))
        return named

    def _forgotten_counts(self) -> dict[str, dict[str, int]]:
        return {
            row["item"]: {name: row[name] for name in row.keys() if name != "item"}  # noqa: SIM118
            for row in self.store.rows("SELECT * FROM item_count")
        }

    def class_proposals(self) -> list[tuple[Learner, Report]]:
        """The report of each learner."""
        return [(one, self.report(one.code)) for one in self.days.learners()]


def _charts(
    goals: Sequence[Goal], days: Sequence[Day], skills: Sequence[Mastery], noted: Sequence[Phase]
) -> list[Chart]:
    from bank.progress.chart import chart, daily, weekly

    found = {one.skill: one.days for one in skills}
    made = []
    for goal in goals:
        if goal.name == INDEPENDENCE:
            points = daily([(day.day, day.alone, day.count) for day in days])
        else:
            points = weekly(found.get(goal.name, ()))
        if drawn := chart(goal, points, noted):
            made.append(drawn)
    return made


def note_change(store: Store, old: Learner, new: Learner) -> None:
    """Keep what changed for a learner who has marks: a line on the charts from that day on."""
    from bank.progress.changes import change_words

    words = change_words(old, new)
    if words and store.row("SELECT 1 FROM mark WHERE learner = ? LIMIT 1", (new.number,)):
        add_phase(store, new.number, Phase(dt.date.today(), ", ".join(words)[:80]))
