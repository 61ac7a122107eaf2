"""The page for a meeting, read back with pypdf."""

import datetime as dt
import io
from collections.abc import Callable

import pytest
from making import MONDAY
from pypdf import PdfReader

from bank.classroom_progress import Report
from bank.learner import Band, Learner
from bank.page.progress_page import joined_phases, progress_pdf
from bank.progress import CAUTION
from bank.progress.chart import INDEPENDENCE, Chart, Goal, Phase, Point, chart
from bank.progress.independence import Day
from bank.progress.mastery import mastery
from bank.progress.settings import ProgressSettings

SKILLS = ("tense", "plural", "capital-name", "comma-list", "end-mark", "spelling", "article")
LAST = MONDAY + dt.timedelta(weeks=40)


def a_report(goals: int, weeks: int, phases: int = 0) -> Report:
    """A learner with so many goals (independence first), marked weeks and changes."""
    settings = ProgressSettings()
    noted = [Phase(MONDAY + dt.timedelta(weeks=2 * n + 1), f"change {n}") for n in range(phases)]
    every = [MONDAY + dt.timedelta(days=n) for n in range(7 * weeks) if n % 7 < 5]
    days = tuple(Day(day, 6 + n % 2, 7, 0.4) for n, day in enumerate(every))
    names = (INDEPENDENCE, *SKILLS)[:goals]
    said = [Goal(name, 0.8, LAST, f"By June the goal of {name} is met") for name in names]
    mondays = [MONDAY + dt.timedelta(weeks=n) for n in range(weeks)]
    charts: list[Chart] = []
    for goal in said:
        made = chart(goal, [Point(day, day, 3 + n % 3, 6) for n, day in enumerate(mondays)], noted)
        assert made is not None
        charts.append(made)
    skills = [mastery(code, [(day, True) for day in every], settings) for code in names[1:]]
    learner = Learner(
        1, "K4", "star", 2.0, Band(0, 1.5), skills=dict.fromkeys(names[1:], "in-work")
    )
    return Report(
        learner,
        days,
        (),
        "falling",
        tuple(skills),
        tuple(said),
        tuple(charts),
        tuple(noted),
        (),
        (),
        settings,
        {},
    )


def read(report: Report, paper: str = "letter") -> PdfReader:
    made, _ = progress_pdf(report, LAST, paper)
    return PdfReader(io.BytesIO(made))


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize(
    ("goals", "weeks", "phases"), [(1, 1, 0), (2, 6, 1), (4, 20, 3), (6, 36, 4), (8, 36, 4)]
)
def test_the_page_is_one_page_however_much_there_is(
    paper: str, goals: int, weeks: int, phases: int
) -> None:
    assert len(read(a_report(goals, weeks, phases), paper).pages) == 1


def test_it_says_what_it_is_not_and_gives_the_data() -> None:
    text = " ".join(read(a_report(3, 6, 1)).pages[0].extract_text().split())
    for said in (CAUTION, "Progress of K4", "Done without an adult", "3 of 6", "change 0"):
        assert said in text
    assert "less help than the week before" in text
    assert "mastered" in text and "80% on 3 data days in a row" in text


def test_goals_that_have_no_room_are_named() -> None:
    _, problems = progress_pdf(a_report(8, 6), LAST)
    assert problems == ["the page has room for 6 charts; left out: spelling, article"]


def test_it_is_a_tagged_document_with_words_for_each_chart() -> None:
    reader = read(a_report(2, 6))
    root = reader.trailer["/Root"]
    assert b"<pdfuaid:part>1</pdfuaid:part>" in root["/Metadata"].get_data()
    words: list[str] = []
    walk: Callable[[object], None]

    def walk(node: object) -> None:
        node = node.get_object() if hasattr(node, "get_object") else node
        if isinstance(node, dict):
            if "/Alt" in node:
                words.append(str(node["/Alt"]))
            walk(node.get("/K"))
        elif isinstance(node, list):
            for child in node:
                walk(child)

    walk(root["/StructTreeRoot"]["/K"])
    assert any("The last points: " in said for said in words)


def test_two_changes_of_one_day_are_one_line() -> None:
    noted = [Phase(MONDAY, "new seat"), Phase(MONDAY, "timer")]
    assert joined_phases(noted) == [(MONDAY, "new seat, timer")]
