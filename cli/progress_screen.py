"""How progress looks in a terminal: rows with share, range and sparkline, and what to look at."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from bank.classroom_progress import Report
from bank.progress import CAUTION
from bank.progress.beta import interval
from bank.progress.evidence import Evidence
from bank.progress.independence import Day
from bank.progress.mastery import Mastery
from bank.progress.spark import sparkline

SPARKS = 20
_STEPS = {"question": "questions", "sentence": "sentence to fix", "topic": "journal topic"}


def report_lines(report: Report, width: int) -> list[str]:
    """The whole screen of one learner."""
    learner = report.learner
    lines = [f"{learner.code}  {learner.sign}, works alone from {learner.band}"]
    if not report.days:
        return [*lines, "", "no marks yet; mark first: binderbank mark", "", CAUTION]
    first, last = report.days[0].day, report.days[-1].day
    lines += [f"{len(report.days)} days with marks, {first} to {last}", ""]
    lines += _titled("Done alone", "share", "likely", f"last {SPARKS} days", "help")
    lines.append(_independence_row("all steps", report.days, report.help_trend))
    for step in report.steps:
        name = _STEPS.get(step.step) or report.step_names.get(step.step, step.step)
        lines.append(_independence_row("  " + name, step.days, step.trend))
    if report.topics:
        counts = [count for _, count in report.topics[-SPARKS:]]
        lines.append(f"  sentences about the topic: last {', '.join(map(str, counts[-8:]))}")
    if report.skills:
        lines += ["", *_skills(report)]
    if report.proposals:
        lines += ["", "To look at (nothing changes by itself)"]
        for one in report.proposals:
            lines += _wrap(f"{one.said}: {one.evidence}", width)
            if one.command:
                lines.append(f"      binderbank {one.command}")
    return [*lines, "", CAUTION]


def _titled(name: str, *columns: str) -> list[str]:
    share, spread, spark, last = columns
    return [f"{name:<24}{share:<14}{spread:<11}{spark:<{SPARKS + 2}}{last}"]


def _independence_row(name: str, days: Sequence[Day], trend: str) -> str:
    last = days[-SPARKS:]
    alone, count = sum(day.alone for day in last), sum(day.count for day in last)
    low, high = interval(alone, count)
    share = f"{alone / count:4.0%} of {count}" if count else "-"
    sparks = sparkline([day.share for day in last], SPARKS)
    name = "  " * name.startswith("  ") + textwrap.shorten(
        name.strip().split(",")[0], 20, placeholder=""
    )
    likely = f"{low:.0%}-{high:.0%}"
    return f"{name:<24}{share:<14}{likely:<11}{sparks:<{SPARKS + 2}}{trend}".rstrip()


def _skills(report: Report) -> list[str]:
    said = report.settings
    lines = [
        f"Fixed alone, of the last {said.window} opportunities",
        _skill_columns("skill", "share", "likely", "days", "says", "goal"),
    ]
    order = {"in-work": 0, "mastered": 1, "taught": 2}
    states = report.learner.skills
    for one in sorted(
        report.skills, key=lambda m: (order.get(states.get(m.skill, ""), 3), m.skill)
    ):
        lines.append(_skill_row(one, states.get(one.skill, "")))
    return [
        *lines,
        "* in work   + mastered   likely: nine times in ten the true rate lies there",
        f"goal: {said.goal_share:.0%} or more on {said.goal_days} data days in a row",
    ]


def _skill_columns(name: str, share: str, likely: str, sparks: str, says: str, goal: str) -> str:
    return f"{name[:23]:<24}{share:<11}{likely:<9}{sparks:<10}{says:<17}{goal}"


def _skill_row(one: Mastery, state: str) -> str:
    mark = {"in-work": "*", "mastered": "+"}.get(state, " ")
    shares = [alone / count for _, alone, count in one.days]
    goal = "met" if one.goal_met else f"was {one.goal_first:%m-%d}" if one.goal_first else "no"
    return _skill_columns(
        mark + one.skill,
        f"{one.share:4.0%} of {one.count}",
        f"{one.low:.0%}-{one.high:.0%}",
        sparkline(shares, 9),
        one.said,
        goal,
    )


def class_lines(reports: Sequence[Report], width: int) -> list[str]:
    """One line for each learner, then what to look at."""
    if not reports:
        return ["there is no learner yet; add one: binderbank learner add K4 --reads 2"]
    lines = _titled("Done alone", "share", "likely", f"last {SPARKS} days", "help")
    for report in reports:
        if report.days:
            lines.append(_independence_row(report.learner.code, report.days, report.help_trend))
        else:
            lines.append(f"{report.learner.code:<24}no marks yet")
    looked = [(report.learner.code, one) for report in reports for one in report.proposals]
    if looked:
        lines += ["", "To look at (nothing changes by itself)"]
        for code, one in looked:
            lines += _wrap(f"{code} {one.said}: {one.evidence}", width)
            if one.command:
                lines.append(f"      binderbank {one.command}")
    return [*lines, "", CAUTION]


def evidence_lines(shown: Sequence[Evidence], marked: int, width: int) -> list[str]:
    """Items with their counts; the counts are all that is claimed."""
    if not shown:
        return [f"{marked} items were marked; none goes clearly worse than its level says"]
    ids = max(8, *(len(one.item) for one in shown))
    lines = [
        f"{'item':<{ids + 1}}{'level':<7}{'given':<7}{'alone':<7}{'expected':<10}{'helped':<8}"
        f"{'not done':<10}{'missed':<9}swapped"
    ]
    for one in shown:
        missed = f"{one.missed}/{one.fixes}" if one.fixes else "-"
        lines.append(
            f"{one.item:<{ids + 1}}{one.grade:<7.1f}{one.given:<7}{one.alone:<7}{one.expected:<10.1f}"
            f"{one.helped:<8}{one.not_done:<10}{missed:<9}{one.swapped or '-'}"
        )
        lines += _wrap(one.text, width)
        if one.objection:
            lines += _wrap(f"objection: {one.objection}", width)
    lines += [""]
    lines += textwrap.wrap(
        "expected: how many of the same learners would have done it alone, going by their other items"
        " of this kind and level. Few learners see an item, so these are counts to look at, no verdict.",
        width,
    )
    return lines


def _wrap(text: str, width: int) -> list[str]:
    return textwrap.wrap(
        text, width, initial_indent="  ", subsequent_indent="    ", break_on_hyphens=False
    )


__all__ = ["class_lines", "evidence_lines", "report_lines"]
