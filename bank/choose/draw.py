"""The draw of a day: a set for each learner, the same whoever asks and whenever.

The choice depends on the bank and the date alone: a seed that the bank keeps, the items and what
was given on other days; not on the clock, the order of learners or hash order.
"""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from bank.choose.ladder import EASIER, IN_BAND, SEEN, Choice, climb_down
from bank.choose.mix import Mixture, Service, serves_all_alike
from bank.choose.rules import PLURALS, REVIEW, SINGULARS, SLOTS, Rules
from bank.choose.share import Circle, circles, own
from bank.item import Item
from bank.learner import Learner, grade_name, grade_word
from bank.store import Store
from bank.store_items import get_items, twins_of
from bank.store_sets import Candidate, DaySet, Given, Want, day_sets, unseen_item


class Draw:
    """One day's draw: what is chosen for a circle is chosen once, then given to each who shares."""

    def __init__(self, store: Store, day: dt.date, rules: Rules, short: bool = False) -> None:
        self.store, self.day, self.rules, self.short = store, day, rules, short
        self.seed = store.setting("seed", "")
        self.known = day_sets(store, day)
        back = rules.calendar.nth_school_day_before(day, rules.twin_days)
        self.twins_since = (back or day - dt.timedelta(days=2 * rules.twin_days)).isoformat()
        self.items: dict[str, Item] = {}
        said = store.setting("progress", {})
        self.mix: bool = said.get("mix", True)
        self.review: Sequence[int] = said.get("review", REVIEW)
        self.overdue: dict[int, dict[str, int]] = {}

    def sets(self, learners: Sequence[Learner]) -> list[DaySet]:
        """The sets of the learners who have none on that day; those who are away get none."""
        here = sorted(
            (one for one in learners if not one.is_away(self.day)), key=lambda one: one.code
        )
        missing = [one for one in here if one.number not in self.known]
        if not missing:
            return []
        self.mixtures = {one.number: self._mixture(one) for one in here}
        self.given: dict[int, list[Given]] = {one.number: [] for one in here}
        self.notes: dict[int, list[str]] = {one.number: [] for one in here}
        for kind in SLOTS:
            for circle in circles(here, self.rules.scopes.get(kind, "own")):
                self._fill(circle, kind)
        return [
            DaySet(
                one.number,
                self.day,
                "proposed",
                self.short,
                tuple(self.notes[one.number]),
                tuple(self.given[one.number]),
            )
            for one in missing
        ]

    def start(self, *about: object) -> int:
        """Where the walk along the shelf starts: fixed by the bank's seed, the day and the slot."""
        import hashlib

        text = "/".join(map(str, (self.seed, self.day, *about)))
        return int.from_bytes(hashlib.blake2b(text.encode(), digest_size=8).digest()) >> 2

    def want(self, circle: Circle, kind: str, but_not: frozenset[str] = frozenset()) -> Want:
        return Want(
            kind=kind,
            low=circle.low,
            high=circle.high,
            learners=tuple(one.number for one in circle.learners),
            avoid=tuple(sorted({theme for one in circle.learners for theme in one.avoid})),
            day=self.day,
            twins_since=self.twins_since,
            start=self.start(kind, *circle.codes),
            but_not=but_not,
            to_circle=kind == "question" and any(one.mode == "circles" for one in circle.learners),
        )

    def choose(
        self, circle: Circle, kind: str, count: int, mixture: Mixture, but_not: frozenset[str]
    ) -> list[Choice]:
        """Up to `count` items for the circle, each with its rung and what it was chosen over."""
        want = self.want(circle, kind, but_not)
        service = self._service(circle) if kind == "sentence" else serves_all_alike
        if want.to_circle:
            service = self._can_be_circled
        return climb_down(self.store, want, count, mixture, service)

    def _can_be_circled(self, candidate: Candidate) -> tuple[int, float]:
        """Whether one who circles can answer it, who would else have to say it to an adult."""
        listed = self.store.value(
            "SELECT choices <> '[]' FROM item WHERE id = ?", (candidate.item,)
        )
        return int(bool(listed) or candidate.question_word == "yes-no"), 0.0

    def give(
        self,
        learner: Learner,
        circle: Circle,
        kind: str,
        position: int,
        chosen: Choice,
    ) -> Given:
        candidate, rung, over = chosen
        why = {
            "level": round(candidate.grade, 2),
            "band": [learner.band.low, learner.band.high],
            "over": list(over),
            "shared_with": [code for code in circle.codes if code != learner.code],
        }
        if candidate.last_seen:
            why["last_seen"] = candidate.last_seen
        if candidate.ends_in is not None:
            why["season_ends_in"] = candidate.ends_in
        version, keep = (
            self._version(learner, candidate.item) if kind == "sentence" else (None, None)
        )
        if keep is not None and version is not None:
            fixes = self.items[candidate.item].versions[version].fixes
            skills = [fixes[number]["skill"] for number in keep]
            why["errors"] = {code: learner.skills.get(code, "taught") for code in skills}
        elif version is not None and self.mix and self._is_listed(learner):
            fixes = self.items[candidate.item].versions[version].fixes
            why["untaught"] = sorted({fix["skill"] for fix in fixes} - set(learner.skills))
        return Given(kind, position, candidate.item, rung, version, keep, why)

    @staticmethod
    def _is_listed(learner: Learner) -> bool:
        """Whether the teacher has said which skills were taught, so that others were not."""
        return not {"taught", "mastered"}.isdisjoint(learner.skills.values())

    def _fill(self, circle: Circle, kind: str) -> None:
        """Choose for the whole circle, so that a draw for some gives what a draw for all gives.

        Where some have another item already (a swap, a learner who came later), the others share
        that one if it suits them, and get their own where it does not.
        """
        chosen = self._chosen(circle, kind)
        early = [one for one in circle.learners if one.number in self.known]
        held = [part for one in early for part in self.known[one.number].given if part.kind == kind]
        if {part.item for part in held} <= {candidate.item for candidate, _, _ in chosen}:
            for one in circle.learners:
                self._take(one, circle, kind, chosen)
            return
        for one in early:
            items = [part.item for part in self.known[one.number].given]
            self._load(items)
            for item in items:
                found = self.items[item]
                theme = found.themes[0] if found.themes else ""
                self.mixtures[one.number].take(
                    Candidate(item, 0.0, found.question_word, theme, None, 0)
                )
        for one in circle.learners:
            if one.number not in self.known:
                self._take(one, own(one), kind, self._shared_or_own(one, kind, held))

    def _chosen(self, circle: Circle, kind: str) -> list[Choice]:
        most = max(self.rules.counts(one, self.short)[kind] for one in circle.learners)
        if most == 0:
            return []
        taken = {part.item for one in circle.learners for part in self.given[one.number]}
        taken |= {twin for item in taken for twin in twins_of(self.store, item)}
        mixture = self._together([self.mixtures[one.number] for one in circle.learners])
        return self.choose(circle, kind, most, mixture, frozenset(taken))

    def _shared_or_own(self, learner: Learner, kind: str, held: Sequence[Given]) -> list[Choice]:
        circle = own(learner)
        want = self.want(circle, kind)
        shared: list[Choice] = []
        for item in dict.fromkeys(part.item for part in held):
            if found := unseen_item(self.store, want, item):
                shared.append((found, EASIER if found.grade < circle.low else IN_BAND, ()))
        count = self.rules.counts(learner, self.short)[kind]
        shared = shared[:count]
        if len(shared) == count:
            return shared
        barred = {part.item for part in self.given[learner.number]}
        barred |= {candidate.item for candidate, _, _ in shared}
        barred |= {twin for item in barred for twin in twins_of(self.store, item)}
        mixture = self._together([self.mixtures[learner.number]])
        return shared + self.choose(circle, kind, count - len(shared), mixture, frozenset(barred))

    def _take(self, learner: Learner, circle: Circle, kind: str, chosen: Sequence[Choice]) -> None:
        count = self.rules.counts(learner, self.short)[kind]
        self._load([candidate.item for candidate, _, _ in chosen])
        mine = chosen[:count]
        for position, choice in enumerate(mine):
            given = self.give(learner, circle, kind, position, choice)
            self.given[learner.number].append(given)
            if untaught := given.why.get("untaught"):
                self.notes[learner.number].append(
                    f"{learner.code}: the sentence has errors of skills that were not taught"
                    f" ({', '.join(untaught)}); the bank has none that fits better today"
                )
            self.mixtures[learner.number].take(choice[0])
        self.notes[learner.number] += self._said(learner, circle, kind, count, mine)

    def _said(
        self,
        learner: Learner,
        circle: Circle,
        kind: str,
        count: int,
        chosen: Sequence[Choice],
    ) -> list[str]:
        """One line for each way in which the slot is less than wished."""
        lines = []
        many, one = PLURALS[kind], SINGULARS[kind]
        span = between(circle.low, circle.high)
        easier = sum(1 for _, rung, _ in chosen if rung == EASIER)
        again = sum(1 for _, rung, _ in chosen if rung == SEEN)
        whole = f"{count} {many if count > 1 else one}"
        if easier:
            verb = "is" if easier == 1 else "are"
            lines.append(
                f"{learner.code}: {easier} of {whole} {verb} easier than the band;"
                f" the bank has no unseen {one} {span} left that fits"
            )
        if again:
            verb = "was" if again == 1 else "were"
            lines.append(
                f"{learner.code}: {again} of {whole} {verb} seen before;"
                f" the bank has no unseen {one} up to {grade_name(circle.high)} left that fits"
            )
        if len(chosen) < count:
            open_slots = count - len(chosen)
            verb = "is" if open_slots == 1 else "are"
            lines.append(
                f"{learner.code}: {open_slots} of {whole} {verb} missing; the bank has no {one}"
                f" up to {grade_name(circle.high)} that fits"
            )
        return lines

    def _load(self, ids: Sequence[str]) -> None:
        missing = [item for item in ids if item not in self.items]
        self.items.update(get_items(self.store, missing))

    def _version(self, learner: Learner, item_id: str) -> tuple[int | None, tuple[int, ...] | None]:
        """The faulty version that suits the learner, and which of its errors stay (None: all).

        By skills where the teacher has said something about them: one in work, the others
        mastered; where the sentence has none that was taught, the version with the fewest errors.
        Else the most errors that the learner's setting allows.
        """
        self._load([item_id])
        item = self.items[item_id]
        if not item.versions:
            return None, None
        counts = [(len(version.fixes), position) for position, version in enumerate(item.versions)]
        if learner.skills and self.mix:
            from bank.choose.own_version import atoms, choose

            position = max(counts)[1]
            fullest = item.versions[position]
            groups = atoms(fullest.faulty, item.text, fullest.fixes)
            waited = self._waited(learner)
            keep = choose(groups, fullest.fixes, learner.errors, learner.skills, waited)
            if keep:
                return position, None if len(keep) == len(fullest.fixes) else keep
            if groups:
                return min(counts)[1], None
        fitting = [pair for pair in counts if pair[0] <= learner.errors]
        return (max(fitting) if fitting else min(counts))[1], None

    def _waited(self, learner: Learner) -> dict[str, int]:
        """By how many days each mastered skill is overdue; one that never came up is the most."""
        if learner.number not in self.overdue:
            from bank.progress.review import days_overdue
            from bank.store_recent import skill_days

            mastered = [code for code, state in learner.skills.items() if state == "mastered"]
            came_up = skill_days(self.store, learner.number, mastered, self.day)
            self.overdue[learner.number] = {
                code: days_overdue(days, self.day, self.review) for code, days in came_up.items()
            }
        return self.overdue[learner.number]

    def _service(self, circle: Circle) -> Service:
        """How many of the circle have an error in a sentence that they were taught to mend, and how
        much its skills serve them, one learner after the other.

        A skill in work counts one, a mastered one that is due again half, and so much of one more
        as there are errors that the learner was taught to mend, of those that they should get.
        """
        wanted: dict[str, float] = {}
        taught: list[tuple[frozenset[str], int]] = []
        for one in circle.learners:
            due = self._waited(one) if self.mix and "mastered" in one.skills.values() else {}
            for code, state in one.skills.items():
                worth = 1.0 if state == "in-work" else 0.5 if due.get(code, -1) >= 0 else 0.0
                if worth:
                    wanted[code] = wanted.get(code, 0.0) + worth
            if one.skills and self.mix:
                taught.append((frozenset(one.skills), one.errors))
        if not wanted and not taught:
            return serves_all_alike

        def serves(candidate: Candidate) -> tuple[int, float]:
            rows = self.store.rows(
                "SELECT value FROM tag WHERE item = ? AND family = 'skill'", (candidate.item,)
            )
            skills = {row[0] for row in rows}
            can = sum(not skills.isdisjoint(mine) for mine, _ in taught)
            share = sum(min(len(skills & mine), errors) / errors for mine, errors in taught)
            return can, sum(wanted.get(skill, 0.0) for skill in skills) + share

        return serves

    def _mixture(self, learner: Learner) -> Mixture:
        goals = learner.support.get("goals", {})
        return Mixture(tired=self._tired(learner), goals=goals, had=self._week(learner))

    def _tired(self, learner: Learner) -> frozenset[str]:
        """Themes of both of the last two school days."""
        before = self.rules.calendar.nth_school_day_before
        days = [found for n in (1, 2) if (found := before(self.day, n))]
        if len(days) < 2:
            return frozenset()
        themes = [
            {
                row[0]
                for row in self.store.rows(
                    "SELECT tag.value FROM given CROSS JOIN tag ON tag.item = given.item WHERE learner = ?"
                    " AND day = ? AND counts = 1 AND family = 'theme' AND tag.position = 0",
                    (learner.number, day.isoformat()),
                )
            }
            for day in days
        ]
        return frozenset(themes[0] & themes[1])

    def _week(self, learner: Learner) -> Counter[str]:
        """The question words that the learner has had since Monday."""
        monday = self.day - dt.timedelta(days=self.day.weekday())
        rows = self.store.rows(
            "SELECT tag.value, count(*) FROM given CROSS JOIN tag ON tag.item = given.item WHERE learner = ?"
            " AND day >= ? AND day < ? AND counts = 1 AND family = 'question-word' GROUP BY 1",
            (learner.number, monday.isoformat(), self.day.isoformat()),
        )
        return Counter({row[0]: row[1] for row in rows})

    @staticmethod
    def _together(mixtures: Sequence[Mixture]) -> Mixture:
        """The mixture of those who share: what is too much for one is too much for all."""
        if len(mixtures) == 1:
            one = mixtures[0]
            return replace(one, words=Counter(one.words), themes=Counter(one.themes))
        joined = Mixture(tired=frozenset().union(*(one.tired for one in mixtures)))
        goals: dict[str, float] = {}
        for one in mixtures:
            joined.themes |= one.themes
            joined.words |= one.words
            joined.had += one.had
            for word, weight in one.goals.items():
                goals[word] = max(weight, goals.get(word, 1.0))
        joined.goals = goals
        return joined


def between(low: float, high: float) -> str:
    """A span of levels inside a sentence.

    >>> between(0, 1), between(1, 2)
    ('between K and grade 1', 'between grade 1 and 2')
    """
    first = grade_name(low)
    second = grade_name(high) if first == "K" else grade_word(high)
    return f"between {first} and {second}"
