"""Who stands in for a learner who is away, and how they get the turn back.

A turn that was given out is never changed: a stand-in is written beside it. Where somebody later in
the same plan can change places with the one who is away, the two swap days; otherwise the next in
line stands in, and the one who is away comes first when the next turn is given out.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from bank.morning.jobs import DAILY, KEYBOARD, Job
from bank.morning.tally import Record, Turn, tally, up_to_date


def add_stand_ins(record: Record, days: list[date], swap_days: list[date]) -> None:
    """Write stand-ins into `record` for all who are away on `days`.

    A swap may take its other half from `swap_days`: days whose turns were given out already.
    """
    for day in days:
        for job, learner in list(_left_open(record, day)):
            for turn in list(_stand_in(record, job, learner, day, swap_days)):
                record.add(turn)


def _left_open(record: Record, day: date) -> Iterator[tuple[Job, str]]:
    """The jobs of `day` that were given to somebody who is not here, with no stand-in who is."""
    for code in dict.fromkeys(turn.job for turn in record.on(day)):
        job = record.settings.job(code)
        for learner in record.assigned(day, code) if job is not None else ():
            if job is not None and record.holder(day, code, learner) is None:
                yield job, _last_in_chain(record, day, code, learner)


def _last_in_chain(record: Record, day: date, code: str, learner: str) -> str:
    """The one whose place is open: a stand-in may be away too."""
    for turn in record.on(day):
        if turn.job == code and turn.instead_of == learner:
            return _last_in_chain(record, day, code, turn.learner)
    return learner


def _stand_in(
    record: Record, job: Job, learner: str, day: date, swap_days: list[date]
) -> Iterator[Turn]:
    free = [
        code
        for code in record.settings.who_can(job, day)
        if code != learner
        and record.is_present(code, day)
        and record.clashing(code, job, [day]) is None
    ]
    if job.in_charge:
        beside = record.neighbours(job, day)
        free = [code for code in free if code not in beside] or free
    if job.turn_length == DAILY:
        for later in (
            one for one in swap_days if one > day and job.turn_of(one) > job.turn_of(day)
        ):
            for other in record.assigned(later, job.code):
                if other in free and _can_take_back(record, job, learner, later):
                    yield Turn(day, job.code, other, instead_of=learner)
                    yield Turn(later, job.code, learner, instead_of=other)
                    return
    if job.code != KEYBOARD and free:
        yield Turn(day, job.code, _next_in_line(record, job, day, free), instead_of=learner)


def _can_take_back(record: Record, job: Job, learner: str, later: date) -> bool:
    """Whether `learner` can have the turn of another on a `later` day."""
    swapped = any(turn.job == job.code and turn.instead_of for turn in record.on(later))
    beside = record.neighbours(job, later) if job.in_charge else []
    return (
        not swapped
        and learner not in beside
        and record.is_present(learner, later)
        and record.clashing(learner, job, [later]) is None
        and job.can_take(learner)
    )


def _next_in_line(record: Record, job: Job, day: date, free: list[str]) -> str:
    """Whoever stood in earlier in the same turn, else whoever had the job least and longest ago."""
    turn = job.turn_of(day)
    for earlier in reversed([one for one in record.days() if turn <= one < day]):
        for code in record.holders(earlier, job.code):
            if code in free and code not in record.assigned(earlier, job.code):
                return code
    count = up_to_date(tally(record, job, before=turn), record.settings.who_can(job, day))

    def order(code: str) -> tuple[int, int, date, int]:
        coming = [
            one for one in record.days() if one > day and code in record.assigned(one, job.code)
        ]
        soon = (date.max - coming[0]).days if coming else 0
        return count.levels[code], soon, count.last.get(code, date.min), free.index(code)

    return min(free, key=order)
