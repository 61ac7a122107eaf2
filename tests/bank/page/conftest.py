"""An invented class on an invented day, and how the tests read what was made."""

import datetime as dt
import io
import re
import unicodedata
from types import SimpleNamespace

import pytest
from pypdf import PdfReader

from bank.page import (
    DayContent,
    LearnerPage,
    PageFix,
    PageQuestion,
    PageSentence,
    PageTopic,
    PageTurn,
    RuledLines,
)


def fix(number, skill, wrong, right, faulty, after="", at=None):
    """The fix of the first `wrong` in `faulty`, or of an insertion just behind `after`."""
    start = at if at is not None else faulty.index(wrong or after) + (0 if wrong else len(after))
    return PageFix(number, skill, wrong, right, start, start + len(wrong))


@pytest.fixture(scope="session")
def fix_at():
    return fix


@pytest.fixture(scope="session")
def day():
    return DayContent(
        dt.date(2026, 11, 25),
        lunch="Soup and bread",
        specials=("Music",),
        steps=("Homework in the tray", "Binder page", "Word sort", "Quiet reading", "Game"),
        turns=(PageTurn("Weather", "K4", "star"), PageTurn("Game leader", "B2", "moon")),
    )


@pytest.fixture(scope="session")
def questions():
    return (
        PageQuestion(
            "What do you put on when it rains?",
            ("a raincoat", "a swimsuit", "pajamas"),
            "When it rains I put on",
            ("raincoat", "boots", "hat"),
            "a raincoat",
            ("boots",),
        ),
        PageQuestion("Which animal gives us milk?", ("a cow", "a frog", "a bee"), answer="a cow"),
        PageQuestion("Why do we wear a coat in winter?", ("to stay warm", "to swim")),
    )


@pytest.fixture(scope="session")
def sentences():
    """One corrected sentence in two versions, the first the fullest; and another sentence."""
    full = "the dog runned to the park"
    less = "The dog runned to the park"
    right = "The dog ran to the park."
    other = "me and ben dont like mrs lopez"
    return SimpleNamespace(
        full=PageSentence(
            full,
            right,
            (
                fix(1, "capital-first", "the", "The", full),
                fix(2, "tense", "runned", "ran", full),
                fix(3, "end-mark", "", ".", full, after="park"),
            ),
            ("The dog has run to the park.",),
        ),
        less=PageSentence(
            less,
            right,
            (
                fix(1, "tense", "runned", "ran", less),
                fix(2, "end-mark", "", ".", less, after="park"),
            ),
        ),
        other=PageSentence(
            other,
            "Ben and I don't like Mrs. Lopez.",
            (
                fix(1, "pronoun", "me and ben", "ben and I", other),
                fix(2, "capital-first", "b", "B", other),
                fix(3, "apostrophe-contraction", "dont", "don't", other),
                fix(4, "capital-name", "mrs", "Mrs", other),
                fix(5, "abbreviation", "", ".", other, after="mrs"),
                fix(6, "capital-name", "lopez", "Lopez", other),
                fix(7, "end-mark", "", ".", other, after="lopez"),
            ),
        ),
    )


@pytest.fixture(scope="session")
def learners(questions, sentences):
    """One learner for each response mode, with both faces and all ruled lines among them."""
    snow = PageTopic("What would you do on a day with lots of snow?")
    atkinson = "Atkinson Hyperlegible"
    return (
        LearnerPage(
            "K4",
            "star",
            "writes",
            RuledLines("dotted"),
            questions=questions,
            sentence=sentences.full,
            topic=snow,
            job="Weather",
            sort="ai / ay",
            basket="green",
        ),
        LearnerPage(
            "B2",
            "moon",
            "circles",
            face=atkinson,
            size=20,
            questions=questions,
            sentence=sentences.less,
            topic=snow,
        ),
        LearnerPage(
            "T7",
            "leaf",
            "types",
            RuledLines("wide"),
            size=14,
            questions=questions,
            sentence=sentences.other,
            topic=snow,
        ),
        LearnerPage("S1", "heart", "says", face=atkinson, size=28, questions=questions),
        LearnerPage("M9", "drop", "signs", questions=questions, topic=PageTopic("Draw a map.")),
    )


def squeezed(text):
    """`text` without white space, which a line break adds or takes, in one Unicode form."""
    return re.sub(r"\s+", "", unicodedata.normalize("NFC", text))


class Sheets:
    """A PDF as pypdf, which has nothing to do with the typesetter, reads it."""

    def __init__(self, made):
        (self.file,) = made.files
        self.reader = PdfReader(io.BytesIO(self.file.data))
        self.pages = [page.extract_text() for page in self.reader.pages]
        self.text = squeezed("\n".join(self.pages))

    def __contains__(self, text):
        return squeezed(text) in self.text

    @property
    def title(self):
        return self.reader.metadata.title

    @property
    def language(self):
        return str(self.reader.trailer["/Root"]["/Lang"])

    def faces(self):
        """The names of all faces, each with whether its letters are inside the file."""
        found = {}
        for page in self.reader.pages:
            for font in page["/Resources"].get("/Font", {}).values():
                inner = font.get_object()["/DescendantFonts"][0].get_object()
                parts = inner["/FontDescriptor"].get_object()
                held = any(key in parts for key in ("/FontFile", "/FontFile2", "/FontFile3"))
                found[str(inner["/BaseFont"]).split("+")[-1]] = held
        return found

    def sizes(self):
        """Every text with the size in points in which it is set."""
        found = []

        def note(text, _, matrix, __, size):
            if text.strip():
                found.append((abs(matrix[3]) * size, text.strip()))

        for page in self.reader.pages:
            page.extract_text(visitor_text=note)
        return found


@pytest.fixture(scope="session")
def read():
    return Sheets
