"""One page for a meeting: what a learner did without an adult, one chart for each goal, the data.

Drawn as single-subject graphs are (common practice, from memory): dates across, percent up, points
joined within a phase, a dashed aim line, and a labelled line where something changed.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from bank.page.binder import sheet
from bank.page.typeset import Copy, typeset
from bank.progress import CAUTION
from bank.progress.beta import interval
from bank.progress.chart import INDEPENDENCE, Chart, Phase, Point, in_words, weekly
from bank.progress.mastery import MASTERED, TOO_FEW
from bank.skill import SKILLS

if TYPE_CHECKING:
    from bank.classroom_progress import Report

FACE = "Atkinson Hyperlegible"
MOST_CHARTS = 6
# Charts stand two in a row; with more rows there is less room for weeks in the table.
MOST_WEEKS = {1: 16, 2: 12, 3: 7}
MOST_LINES = {1: 7, 2: 6, 3: 4}
LAST_DAYS = 20


def progress_pdf(report: Report, today: dt.date, paper: str = "letter") -> tuple[bytes, list[str]]:
    """The page as a PDF, and a line for each thing that went wrong or was left out.

    `ValueError` where the typesetter refuses it. The page holds the code and no name.
    """
    copy = Copy()
    problems: list[str] = []
    charts = report.charts[:MOST_CHARTS]
    if len(report.charts) > MOST_CHARTS:
        left = ", ".join(chart.goal.name for chart in report.charts[MOST_CHARTS:])
        problems.append(f"the page has room for {MOST_CHARTS} charts; left out: {left}")
    rows = max(1, (len(charts) + 1) // 2)
    weeks, table = _table(charts, MOST_WEEKS[rows])
    span = (min(one.first for one in charts), max(one.last for one in charts))
    data = {
        "iso": today.isoformat(),
        "title": f"Progress of {report.learner.code}",
        "sheet": sheet(paper),
        "face": FACE,
        "caution": CAUTION,
        "span": _span(report),
        "lines": [
            copy.text(line, FACE, "progress page")
            for line in _plain_words(report)[: MOST_LINES[rows]]
        ],
        "charts": [_chart(chart, span, copy) for chart in charts],
        "heads": [goal_name(chart).removeprefix("Fixes alone: ") for chart in charts],
        "weeks": [day_words(week) for week in weeks],
        "table": table,
        "changes": [
            f"{day_words(phase.day)}: {copy.text(phase.words, FACE, 'progress page')}"
            for phase in report.phases
            if report.days[0].day <= phase.day <= report.days[-1].day
        ][-6:],
    }
    return typeset("progress", data, copy), [*problems, *copy.problems]


def goal_name(chart: Chart) -> str:
    """What a chart is about, in words of a meeting."""
    if chart.goal.name == INDEPENDENCE:
        return "Done without an adult"
    return f"Fixes alone: {chart.goal.name.replace('-', ' ')}"


def day_words(day: dt.date) -> str:
    """
    >>> day_words(dt.date(2026, 9, 4))
    '4 Sep'
    """
    return f"{day.day} {day:%b}"


def _span(report: Report) -> str:
    first, last = report.days[0].day, report.days[-1].day
    return (
        f"{len(report.days)} school days with marks, {day_words(first)} {first.year} to"
        f" {day_words(last)} {last.year}"
    )


def _plain_words(report: Report) -> list[str]:
    """What the marks say, in sentences that need no training."""
    last = report.days[-LAST_DAYS:]
    alone, count = sum(day.alone for day in last), sum(day.count for day in last)
    low, high = interval(alone, count)
    lines = [
        f"Over the last {len(last)} days, {alone} of {count} steps of the morning were done without"
        f" an adult ({alone / count:.0%})."
    ]
    if report.help_trend:
        now = {
            "falling": "less help than",
            "rising": "more help than",
            "steady": "about as much help as",
        }
        lines[0] += f" Last week there was {now[report.help_trend]} the week before."
    for one in report.skills:
        if report.learner.skills.get(one.skill) not in ("in-work", "mastered"):
            continue
        name = f"{one.skill.replace('-', ' ')} ({SKILLS[one.skill].name})"
        said = f"{name}: {one.alone} of the last {one.count} fixed alone"
        if one.said == TOO_FEW:
            said += ", too few to tell."
        else:
            sure = "mastered" if one.said == MASTERED else "not mastered yet"
            said += f"; the true rate is likely between {one.low:.0%} and {one.high:.0%}: {sure}."
        rule = f"{report.settings.goal_share:.0%} on {report.settings.goal_days} data days in a row"
        met = "met now" if one.goal_met else "met before" if one.goal_first else "not met yet"
        lines.append(f"{said} The rule of {rule} is {met}.")
    return [line[0].upper() + line[1:] for line in lines]


def _chart(chart: Chart, span: tuple[dt.date, dt.date], copy: Copy) -> dict[str, Any]:
    """One chart as plain values from 0 to 1; all charts of a page share their dates."""
    first, last = span
    days = max(1, (last - first).days)

    def across(day: dt.date) -> float:
        return (day - first).days / days

    def point(one: Point) -> list[float]:
        return [across(one.first), one.share]

    words = chart.goal.words or in_words(chart)
    name = goal_name(chart)
    listed = ", ".join(f"{day_words(p.first)} {p.alone} of {p.count}" for p in chart.points[-8:])
    return {
        "name": name,
        "words": copy.text(words, FACE, "progress page"),
        "said": in_words(chart),
        "goal": chart.goal.aim,
        "points": [point(one) for one in chart.points],
        "stretches": [[point(one) for one in some] for some in chart.stretches()],
        "phases": [
            {"x": across(day), "words": copy.text(said, FACE, "progress page")}
            for day, said in joined_phases(chart.phases)
        ],
        "aim": [[across(day), share] for day, share in chart.aim_line] if chart.aim_line else [],
        "ticks": [{"x": across(day), "words": day_words(day)} for day in _ticks(first, last)],
        "each": "percent; a dot is a day"
        if chart.goal.name == INDEPENDENCE
        else "percent; a dot is a week",
        "alt": f"{name}. {in_words(chart)}. The last points: {listed}.",
    }


def joined_phases(phases: Sequence[Phase]) -> list[tuple[dt.date, str]]:
    """Changes of one day are one line."""
    by_day: dict[dt.date, list[str]] = {}
    for phase in phases:
        by_day.setdefault(phase.day, []).append(phase.words)
    return [(day, ", ".join(words)) for day, words in sorted(by_day.items())]


def _ticks(first: dt.date, last: dt.date) -> list[dt.date]:
    """Four or five dates along the bottom, the first and the last among them."""
    days = (last - first).days
    if days < 4:
        return sorted({first, last})
    return [first + dt.timedelta(days=round(days * part / 4)) for part in range(5)]


def _table(charts: Sequence[Chart], most: int) -> tuple[list[dt.date], list[list[str]]]:
    """The last weeks in rows, the goals in columns, each cell so many of so many."""
    columns = []
    for chart in charts:
        points = weekly([(p.first, p.alone, p.count) for p in chart.points])
        columns.append({_monday(p.first): f"{p.alone} of {p.count}" for p in points})
    weeks = sorted({week for column in columns for week in column})[-most:]
    return weeks, [[column.get(week, "-") for column in columns] for week in weeks]


def _monday(day: dt.date) -> dt.date:
    return day - dt.timedelta(days=day.weekday())
