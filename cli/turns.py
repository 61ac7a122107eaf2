"""The teacher's turns: who has which job today and this week, and the jobs themselves."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

from bank.item import BankError
from cli.common import (
    DAY,
    DONE,
    IN_PART,
    JSON,
    REFUSED,
    TEACHER,
    add_commands,
    ask_yes,
    console,
    day_title,
    print_json,
    read_day,
    say,
    table,
    use_bank,
)

if TYPE_CHECKING:
    from bank.classroom import Bank
    from bank.morning.jobs import Job, TurnSettings
    from bank.morning.tally import Turn
    from bank.morning.turns import TurnPlan

job_app = typer.Typer(no_args_is_help=True, help="The class jobs, and who can take which.")


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, TEACHER, {"turns": turns, "job": job_app}, only)


def turns(
    day: str = DAY,
    paper: bool = typer.Option(False, "--print", help="A sheet for the wall, and how-to cards."),
    to: Path = typer.Option(None, "--to", metavar="FOLDER", help="Where printed files go."),
    stand_in: str = typer.Option(
        "", "--stand-in", metavar="JOB=CODE", help="Who has a job today instead."
    ),
    undo: bool = typer.Option(False, "--undo", help="Take the turns from this day on back."),
    anyway: bool = typer.Option(False, "--anyway", help="Also on a day without school."),
    yes: bool = typer.Option(False, "--yes", help="Do not ask."),
    as_json: bool = JSON,
) -> int:
    """Who has which job today and this week.

    Today's turns stand once they are shown, the week's (and those before it) once it is printed;
    who is away has a stand-in and gets the turn back.

    Example: binderbank turns --print
    """
    when = read_day(day)
    with use_bank() as bank:
        if undo:
            return _undo(bank, when, yes)
        off = bank.morning.calendar.why_off(when)
        if off and not (anyway or paper):
            raise BankError(
                f"{when} is no school day ({off}); --anyway shows the week all the same"
            )
        week = bank.morning.calendar.week_of(when)
        ahead = [one for one in week if one >= when] or [when]
        if stand_in:
            _stand_in(bank, when, stand_in)
        if paper:
            bank.morning.post(ahead[0], ahead[-1])
        elif when == dt.date.today() and not off:
            bank.morning.post(when)
        plan = bank.morning.turns(min([when, *week]), ahead[-1])
        every = plan.turns
        if paper:
            return _print(bank, every, list(week), _problems(plan), to, as_json)
        lines = {one: day_lines(bank, every, one) for one in dict.fromkeys((when, *week))}
    if as_json:
        print_json(turns_dict(plan, when))
    else:
        show_turns(lines[when], when)
        _show_week(lines, list(week))
    for line in _problems(plan):
        say(line, to_errors=True)
    return IN_PART if plan.problems else DONE


def _problems(plan: TurnPlan) -> list[str]:
    return list(dict.fromkeys(problem.text for problem in plan.problems))


def turns_dict(plan: TurnPlan, day: dt.date) -> dict[str, Any]:
    """The turns as plain values."""
    return {
        "day": day,
        "turns": [turn.to_dict() for turn in plan.turns if turn.day >= day],
        "new": [turn.to_dict() for turn in plan.new if turn.day >= day],
        "problems": [
            {"rule": p.rule, "day": p.day, "job": p.job, "learners": p.learners, "text": p.text}
            for p in plan.problems
        ],
    }


def _undo(bank: Bank, when: dt.date, yes: bool) -> int:
    if not ask_yes(f"Take back all turns from {when} on?", yes):
        return REFUSED
    count = bank.morning.take_back(when)
    say(f"{count} turns from {when} on taken back; they are given out anew")
    return DONE


def _stand_in(bank: Bank, when: dt.date, text: str) -> None:
    job, _, code = (part.strip() for part in text.partition("="))
    if not code:
        raise BankError(f"{text[:40]!r} is no stand-in; write JOB=CODE, such as line=K4")
    turn = bank.morning.stand_in(when, _job(bank.morning.settings(), job).code, code)
    say(f"{turn.learner} stands in for {turn.instead_of}")


def day_lines(bank: Bank, every: Sequence[Turn], day: dt.date) -> dict[str, str]:
    """Each job of a day by name with those who have it, a stand-in with whom they stand in for."""
    found: dict[str, list[str]] = {}
    for job, code, instead_of in bank.morning.who(every, day):
        said = f"{code} (for {instead_of})" if instead_of else code
        found.setdefault(job.name, []).append(said)
    return {name: ", ".join(who) for name, who in found.items()}


def show_turns(lines: dict[str, str], when: dt.date) -> None:
    """The turns of one day, a line for each job."""
    say(f"Turns, {day_title(when)}", style="bold")
    if not lines:
        say("no turns were given out that day")
        return
    rows = table("job", "who", keep=(0,))
    for name, who in lines.items():
        rows.add_row(name, who)
    console().print(rows)


def _show_week(lines: dict[dt.date, dict[str, str]], week: Sequence[dt.date]) -> None:
    if not week:
        return
    rows = table("this week", *(f"{day:%a} {day.day}" for day in week), keep=())
    for name in dict.fromkeys(name for day in week for name in lines[day]):
        rows.add_row(name, *(lines[day].get(name, "") for day in week))
    say("")
    console().print(rows)


def _print(
    bank: Bank,
    every: Sequence[Turn],
    week: list[dt.date],
    problems: Sequence[str],
    to: Path | None,
    as_json: bool,
) -> int:
    from bank.classroom_morning_paper import turn_paper
    from cli.paper import save_prints

    made = turn_paper(bank.morning, every, week, bank.paper.settings.size)
    return save_prints(bank, week[0], made.files, [*made.problems, *problems], to, as_json)


# Jobs


@job_app.command("list")
def job_list(as_json: bool = JSON) -> int:
    """List the jobs with their rhythm, when they are and who can take them.

    Example: binderbank job list
    """
    with use_bank() as bank:
        settings = bank.morning.settings()
    return _show_jobs(settings, as_json)


@job_app.command("add")
def job_add(
    name: str = typer.Argument(..., metavar="NAME", help="What the job is called, in your words."),
    code: str = typer.Option("", "--code", help="A short code; else from the name."),
    every: str = typer.Option("day", "--every", help="day, week or two-weeks: when it changes."),
    on: str = typer.Option("", "--on", help="Only on these weekdays, such as friday."),
    places: int = typer.Option(1, "--places", help="How many learners have it together."),
    only: list[str] = typer.Option([], "--only", help="Who can take it; may be said again."),
    not_for: list[str] = typer.Option([], "--not-for", help="Who cannot; may be said again."),
    during: list[str] = typer.Option(
        [], "--during", help="The part of the morning that it takes; jobs that share one clash."
    ),
    step: list[str] = typer.Option([], "--step", help="A step of its how-to card, in order."),
    game: bool = typer.Option(False, "--game", help="The one in charge of the game."),
    as_json: bool = JSON,
) -> int:
    """Add a class job, or change the one with this code.

    Example: binderbank job add "Line leader" --during line --step "Walk at the front."
    """
    from bank.morning.jobs import DAILY, TWO_WEEKS, WEEKLY, Job, NotAJob
    from cli.school_days import _weekdays

    rhythms = {"day": DAILY, "week": WEEKLY, "two-weeks": TWO_WEEKS}
    if every not in rhythms:
        raise BankError(f"{every!r} is no rhythm; it is one of {', '.join(rhythms)}")
    with use_bank() as bank:
        known = [one.code for one in bank.days.learners()]
        try:
            made = Job(
                code or "-".join(re.findall(r"\w+", name.lower()))[:30],
                name.strip(),
                rhythms[every],
                _weekdays(on) if on else (),
                places,
                _codes(only, known),
                _codes(not_for, known),
                tuple(one.strip().lower() for one in during if one.strip()),
                tuple(one.strip() for one in step if one.strip()),
                game,
            )
            held = bank.morning.settings()
            others = [one for one in held.jobs if one.code != made.code]
            place = next((n for n, one in enumerate(held.jobs) if one.code == made.code), None)
            others.insert(len(others) if place is None else place, made)
            settings = bank.morning.keep_jobs(others, held.keyboard)
        except NotAJob as error:
            raise BankError(str(error)) from None
    return _show_jobs(settings, as_json)


@job_app.command("remove")
def job_remove(code: str = typer.Argument(..., metavar="CODE", help="The job's code.")) -> int:
    """Take a job away; turns that were given out stay.

    Example: binderbank job remove line-leader
    """
    with use_bank() as bank:
        held = bank.morning.settings()
        gone = _job(held, code)
        keyboard = None if held.keyboard and gone.code == "keyboard" else held.keyboard
        bank.morning.keep_jobs([one for one in held.jobs if one.code != gone.code], keyboard)
    say(f"{gone.name} is no job any more")
    return DONE


@job_app.command("keyboard")
def job_keyboard(
    computers: int = typer.Option(1, "--computers", help="How many learners a day can have it."),
    only: list[str] = typer.Option([], "--only", help="Who can have it; may be said again."),
    not_for: list[str] = typer.Option([], "--not-for", help="Who cannot; may be said again."),
    during: list[str] = typer.Option(["journal"], "--during", help="When it is."),
    as_json: bool = JSON,
) -> int:
    """The keyboard for the journal: everybody who can has it once a week.

    Example: binderbank job keyboard --computers 2
    """
    from bank.morning.jobs import Keyboard

    if not 1 <= computers <= 30:
        raise BankError(f"there are 1 to 30 computers, not {computers}")
    with use_bank() as bank:
        held = bank.morning.settings()
        known = [one.code for one in bank.days.learners()]
        made = Keyboard(
            computers,
            _codes(only, known),
            _codes(not_for, known),
            tuple(one.strip().lower() for one in during),
        )
        settings = bank.morning.keep_jobs(held.jobs, made)
    return _show_jobs(settings, as_json)


@job_app.command("stay")
def job_stay(
    code: str = typer.Argument(..., metavar="CODE", help="The learner's code."),
    first: str = typer.Option("", "--from", metavar="DATE", help="The first day in this class."),
    last: str = typer.Option("", "--until", metavar="DATE", help="The last day in this class."),
) -> int:
    """Say when a learner joins or leaves: there are no sets, pages or turns outside these days.

    What was given out and marked stays. Without --until a last day that was said is taken back.

    Example: binderbank job stay K4 --until 2026-12-18
    """
    begins, ends = (read_day(text) if text else None for text in (first, last))
    if begins and ends and ends < begins:
        raise BankError(f"{ends} lies before {begins}")
    with use_bank() as bank:
        member = bank.morning.keep_stay(code, begins, ends)
    said = f"from {member.first}" if member.first else "from the start"
    say(f"{member.code} has turns {said}" + (f" until {ends}" if ends else ""))
    if begins:
        say(f"before {begins} there are no sets and pages for {member.code}")
    if ends:
        say(f"after {ends} there are no sets and pages for {member.code}; all records stay")
    return DONE


def _codes(texts: Sequence[str], known: Sequence[str]) -> tuple[str, ...]:
    by_code = {code.lower(): code for code in known}
    for text in texts:
        if text.strip().lower() not in by_code:
            raise BankError(f"there is no learner {text!r}; see: binderbank learner list")
    return tuple(by_code[text.strip().lower()] for text in texts)


def _job(settings: TurnSettings, text: str) -> Job:
    """The job with this code or name."""
    said = text.strip().lower()
    found = [one for one in settings.jobs if said in (one.code.lower(), one.name.lower())]
    if settings.keyboard and said in ("keyboard", settings.keyboard.name.lower()):
        found.append(settings.keyboard.as_job())
    if not found:
        raise BankError(f"there is no job {text!r}; see: binderbank job list")
    return found[0]


def _show_jobs(settings: TurnSettings, as_json: bool) -> int:
    if as_json:
        print_json({**settings.to_dict(), "members": [m.code for m in settings.members]})
        return DONE
    jobs = [*settings.jobs, *([settings.keyboard.as_job()] if settings.keyboard else [])]
    if not jobs:
        say("there is no job yet; add one: binderbank job add 'Line leader'")
        return DONE
    rows = table("code", "job", "changes", "when", "who", keep=(0,))
    for one in jobs:
        rhythm = "once a week each" if one.code == "keyboard" else one.rhythm
        rows.add_row(one.code, one.name, rhythm, _when(one), _who(one))
    console().print(rows)
    return DONE


def _when(job: Job) -> str:
    from bank.calendar import WEEKDAYS

    days = ", ".join(WEEKDAYS[day] for day in job.weekdays)
    return "; ".join(filter(None, [days, ", ".join(job.during)])) or "-"


def _who(job: Job) -> str:
    said = [f"{job.places} at a time" if job.places > 1 else ""]
    said.append(f"only {', '.join(job.only)}" if job.only else "")
    said.append(f"not {', '.join(job.not_for)}" if job.not_for else "")
    return "; ".join(filter(None, said)) or "everyone"


__all__ = ["day_lines", "show_turns", "turns_dict"]
