"""Progress: independence, skills and goals of a learner, and how items went."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

from bank.choose.rules import SLOTS
from bank.item import BankError
from cli.common import (
    DONE,
    JSON,
    SPECIALIST,
    TEACHER,
    add_commands,
    console,
    print_json,
    read_day,
    say,
    say_next,
    use_bank,
)

if TYPE_CHECKING:
    from bank.classroom import Bank
    from bank.classroom_progress import Report


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, TEACHER, {"progress": progress}, only)
    add_commands(app, SPECIALIST, {"evidence": evidence}, only)


def progress(
    code: str = typer.Argument("", metavar="[CODE]", help="The learner; left out, the class."),
    since: str = typer.Option("", "--since", metavar="DATE", help="Only from that day on."),
    pdf: bool = typer.Option(False, "--pdf", help="One page for a meeting."),
    to: Path = typer.Option(None, "--to", metavar="FOLDER", help="Where the PDF goes."),
    goal: str = typer.Option("", "--goal", help="Set a goal: independence or a skill."),
    aim: int = typer.Option(80, "--aim", help="With --goal: percent to reach."),
    by: str = typer.Option("", "--by", metavar="DATE", help="With --goal: the day to reach it."),
    words: str = typer.Option("", "--words", help="With --goal: the goal as it is written."),
    phase: str = typer.Option(
        "", "--phase", metavar="WORDS", help="Something changed: a line on the charts."
    ),
    on: str = typer.Option("today", "--on", metavar="DATE", help="With --phase: since when."),
    as_json: bool = JSON,
) -> int:
    """Show what a learner did without an adult, and which skills; left out, the class in lines.

    Example: binderbank progress K4
    """
    first = read_day(since) if since else None
    with use_bank() as bank:
        if not code:
            if goal or phase or pdf:
                raise BankError("say whose: binderbank progress K4")
            return _class(bank, as_json)
        if goal:
            from bank.progress.chart import Goal

            until = read_day(by) if by else None
            bank.progress.set_goal(code, Goal(goal, aim / 100, until, words))
        if phase:
            bank.progress.add_phase(code, read_day(on), phase)
        report = bank.progress.report(code, first)
        if pdf:
            return _pdf(bank, report, to)
    if as_json:
        print_json(report_dict(report))
        return DONE
    from cli.progress_screen import report_lines

    screen = console()
    for line in report_lines(report, screen.width):
        print(line)
    return DONE


def _class(bank: Bank, as_json: bool) -> int:
    reports = [report for _, report in bank.progress.class_proposals()]
    if as_json:
        print_json({"learners": [report_dict(report) for report in reports]})
        return DONE
    from cli.progress_screen import class_lines

    for line in class_lines(reports, console().width):
        print(line)
    return DONE


def _pdf(bank: Bank, report: Report, to: Path | None) -> int:
    import datetime as dt

    from bank.page.progress_page import progress_pdf
    from bank.store_marks import note_written

    if not report.days:
        raise BankError(f"{report.learner.code} has no marks yet; mark first: binderbank mark")
    today = dt.date.today()
    made, problems = progress_pdf(report, today, bank.paper.settings.size)
    folder = to or bank.path.with_name(bank.path.stem + "-reports")
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{today}-progress-{report.learner.code}.pdf"
    path.write_bytes(made)
    if bank.store.writable:
        note_written(bank.store, str(path.absolute()), "report", report.learner.number)
    say(f"one page for the meeting: {path}")
    for line in problems:
        say(line, to_errors=True)
    return DONE


def report_dict(report: Report) -> dict[str, Any]:
    """A report as plain values with stable keys."""
    from bank.progress import CAUTION

    def days(some: Any) -> list[dict[str, Any]]:
        return [
            {"day": day.day, "alone": day.alone, "of": day.count, "help": day.help} for day in some
        ]

    return {
        "learner": report.learner.code,
        "caution": CAUTION,
        "independence": days(report.days),
        "help": report.help_trend,
        "steps": [
            {"step": one.step, "help": one.trend, "days": days(one.days)} for one in report.steps
        ],
        "skills": [
            {
                "skill": one.skill,
                "state": report.learner.skills.get(one.skill, ""),
                "alone": one.alone,
                "of": one.count,
                "opportunities": one.total,
                "low": round(one.low, 4),
                "high": round(one.high, 4),
                "chance": round(one.chance, 4),
                "said": one.said,
                "goal_met": one.goal_met,
                "goal_first": one.goal_first,
                "days": [{"day": d, "alone": a, "of": n} for d, a, n in one.days],
            }
            for one in report.skills
        ],
        "goals": [goal.to_dict() for goal in report.goals],
        "phases": [{"day": one.day, "words": one.words} for one in report.phases],
        "topics": [{"day": day, "sentences": count} for day, count in report.topics],
        "proposals": [
            {"kind": one.kind, "said": one.said, "evidence": one.evidence, "command": one.command}
            for one in report.proposals
        ],
    }


def evidence(
    kind: str = typer.Option("", "--kind", help="question, sentence or topic."),
    every: bool = typer.Option(False, "--all", help="All items that were marked, not only those."),
    as_json: bool = JSON,
) -> int:
    """List items that went worse than their level says, with the counts; nothing is changed.

    Example: binderbank evidence --kind question
    """
    if kind not in ("", *SLOTS):
        raise BankError(f"{kind[:20]!r} is no kind here; it is one of {', '.join(SLOTS)}")
    with use_bank() as bank:
        found = bank.progress.evidence(kind)
        path = bank.path
    shown = found if every else [one for one in found if one.needs_a_look]
    if as_json:
        print_json(
            {
                "items": [
                    {
                        **{name: getattr(one, name) for name in one.__slots__},
                        "expected": round(one.expected, 2),
                        "goes_worse": one.goes_worse,
                    }
                    for one in shown
                ]
            }
        )
        return DONE
    if not found:
        say("no item has been marked yet; mark first: binderbank mark")
        return DONE
    from cli.progress_screen import evidence_lines

    for line in evidence_lines(shown, len(found), console().width):
        print(line)
    if shown:
        say_next("place one by ear: ", path, "level-as ITEM GRADE")
    return DONE
