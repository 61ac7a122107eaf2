"""What is planned together: the jobs that clash, and the steps in which their turns begin."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date, timedelta

from bank.calendar import SchoolCalendar
from bank.morning.jobs import DAILY, RHYTHMS, TWO_WEEKS, WEEKLY, Job
from bank.morning.rota import Step
from bank.morning.tally import Record, Tally, tally, up_to_date

# How many days a plan looks ahead where jobs clash: about two rounds of a class of ten to fourteen.
_LOOK_AHEAD = {DAILY: 35, WEEKLY: 7 * 24, TWO_WEEKS: 14 * 20}


def that_clash(jobs: Sequence[Job]) -> list[list[Job]]:
    """The jobs in groups such that no job clashes with one of another group."""
    groups: list[list[Job]] = []
    for job in jobs:
        touching = [group for group in groups if any(job.clashes(other) for other in group)]
        merged = [other for group in touching for other in group] + [job]
        groups = [group for group in groups if group not in touching] + [merged]
    return [[job for job in jobs if job in group] for group in groups]


def needs_a_look_ahead(record: Record, together: Sequence[Job]) -> bool:
    """Whether a group can run into a dead end: several jobs, places, or longer jobs in the way."""
    (rhythm,) = {job.turn_length for job in together}
    longer = [
        j for j in record.settings.jobs if RHYTHMS.index(j.turn_length) > RHYTHMS.index(rhythm)
    ]
    return (
        len(together) > 1
        or together[0].places > 1
        or any(job.clashes(other) for job in together for other in longer)
    )


def steps_from(
    together: Sequence[Job], week: list[date], calendar: SchoolCalendar, look_ahead: bool
) -> list[Step]:
    """The turns that begin from the first day of `week` on, or else only those that begin in it."""
    clock = together[0]
    stretches: dict[date, list[date]] = defaultdict(list)
    # A turn that begins in this week lasts to its own end, which may lie in the next.
    end = week[-1] + timedelta(days=14)
    far = week[-1] + timedelta(days=_LOOK_AHEAD[clock.turn_length] if look_ahead else 14)
    for day in calendar.school_days(week[0], max(end, far)):
        stretches[clock.turn_of(day)].append(day)
    return [
        Step(days[0], tuple(days))
        for turn, days in sorted(stretches.items())
        if look_ahead or turn <= week[-1]
    ]


def tallies_of(record: Record, jobs: Sequence[Job], week: list[date]) -> dict[str, Tally]:
    """The tally of each job before `week`, by its code."""
    return {
        job.code: up_to_date(tally(record, job), record.settings.who_can(job, week[0]))
        for job in jobs
    }
