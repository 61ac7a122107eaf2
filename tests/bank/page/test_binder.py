"""What a learner finds on the binder page."""

import dataclasses
import doctest
import shutil
import subprocess

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import bank.page.binder
from bank.page import (
    FACES,
    MODES,
    PAPERS,
    LearnerPage,
    Made,
    PageFile,
    PageQuestion,
    PageSentence,
    PageTopic,
    RuledLines,
    binder_pages,
    clean_picture,
)
from bank.page.binder import lines_to_write

# What the typesetter itself would take for a command, what a browser would, and what wants care.
AWKWARD = (
    "He said, \"Don't!\" and 'no'.",
    "“Where’s Zoë’s café?” – she asked… twice — at 5°.",
    "#let x = $y$ *bold* _under_ @ref <label> `raw` \\n ~ // not a comment /* nor this */",
    "= Not a heading",
    "- not a list, + nor this, 1. nor that",
    "50% of $3.50 & <b>more</b> {braces} [brackets] #sys.inputs",
    "fi fl ffi office affluent -- --- ... 'tis",
    "Donaudampfschifffahrtsgesellschaftskapi went home.",
    "W" * 40,
    ("The big dog ran to the park and sat in the sun. " * 7)[:300],
)
LETTERS = st.characters(codec="latin-1", categories=("L", "N", "P", "S", "Zs"))
LETTERS = st.characters(codec="latin-1", categories=("L", "N", "P", "S", "Zs"))
TYPEABLE = st.text(LETTERS | st.sampled_from("“”‘’–—…ŁłŚśŻżĘęőŐΩЖ→"), min_size=1, max_size=300)


@pytest.mark.parametrize("paper", PAPERS)
def test_a_page_has_everything_of_the_day_in_reading_order(day, learners, read, paper):
    sheets = read(binder_pages(day, learners[:1], paper))
    page = learners[0]
    inside = [
        *("Name", *day.copy_lines, "Homework", "done", "turned in", "new one taken"),
        *("My job: Weather", "Word sort: ai / ay", "Book basket: green"),
        *(*day.steps, "All done"),
        page.sentence.faulty,
        *(question.text for question in page.questions),
        page.topic.text,
    ]
    done = 0
    for words in inside:
        place = sheets.text.find("".join(words.split()), done)
        assert place >= done, words
        done = place + 1
    assert all(day.stuck in text.replace("\n", " ") for text in sheets.pages)


def test_a_step_that_a_learner_does_not_have_today_has_no_box_to_tick(day, learners, read):
    page = dataclasses.replace(learners[0], sort="", without=("Word sort",))
    text = read(binder_pages(day, [page])).text
    assert "Wordsort" not in text and "Quietreading" in text


def test_every_page_is_a_document_that_a_machine_can_read_aloud(day, learners, read):
    sheets = read(binder_pages(day, learners))
    assert sheets.title == "Binder pages, Wednesday, November 25, 2026"
    assert sheets.language.startswith("en")
    assert sheets.faces() == {"ABeeZee-Regular": True, "AtkinsonHyperlegible-Regular": True}
    assert sheets.reader.trailer["/Root"]["/MarkInfo"]["/Marked"]


@pytest.mark.parametrize("paper, points", [("letter", (612, 792)), ("a4", (595, 842))])
def test_the_sheet_has_the_size_of_the_paper(day, learners, read, paper, points):
    for page in read(binder_pages(day, learners, paper)).reader.pages:
        assert (round(page.mediabox.width), round(page.mediabox.height)) == points


def test_paper_that_nobody_has_is_refused(day, learners):
    with pytest.raises(ValueError, match="letter or a4"):
        binder_pages(day, learners, "legal")


@pytest.mark.parametrize("mode", MODES)
def test_a_page_follows_the_response_mode(day, learners, read, mode):
    page = dataclasses.replace(learners[0], mode=mode)
    sheets = read(binder_pages(day, [page]))
    spoken = {"types": "I typed it.", "says": "I said it.", "signs": "I signed it."}.get(mode)
    for words in ("I typed it.", "I said it.", "I signed it."):
        assert (words in sheets) is (words == spoken)
    if mode != "circles":
        assert page.questions[0].starter in sheets


CHOOSE = {"writes": "Write one:", "types": "Type one:", "says": "Say one:", "signs": "Sign one:"}


@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("size", [14, 20, 36])
@pytest.mark.parametrize("mode", MODES)
def test_the_choices_stand_on_the_page_however_the_learner_answers(day, read, mode, size, face):
    choices = ("because the sun lights parts of it", "because clouds bite it", "at night", "never")
    page = LearnerPage(
        "T7", mode=mode, size=size, face=face, questions=(PageQuestion("Why is it?", choices),)
    )
    sheets = read(binder_pages(day, [page]))
    assert all(choice in sheets for choice in choices)
    for named, words in CHOOSE.items():
        assert (words in sheets) is (named == mode)


@pytest.mark.parametrize("mode", MODES)
def test_only_one_who_circles_needs_yes_and_no_on_the_page(day, read, mode):
    asked = PageQuestion("Do bears sleep now?", ("yes", "no"))
    sheets = read(binder_pages(day, [LearnerPage("T7", mode=mode, questions=(asked,))]))
    assert ("yesno" in sheets) is (mode == "circles")
    assert CHOOSE.get(mode, "Circle one:") not in sheets


def test_there_is_one_thing_to_choose_from(day, read):
    """Words to use stand beside a question of its own, never beside choices."""
    choices = PageQuestion("Which is soft?", ("a pillow", "a rock"), word_box=("feather",))
    words = PageQuestion("What is soft?", word_box=("blanket",))
    sheets = read(binder_pages(day, [LearnerPage("T7", questions=(choices, words))]))
    assert "feather" not in sheets and "blanket" in sheets


def test_a_question_without_choices_is_said_by_one_who_circles(day, read):
    page = LearnerPage("B2", mode="circles", questions=(PageQuestion("Where is the sun?"),))
    made = binder_pages(day, [page])
    assert made.problems == () and "I said it." in read(made)


@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("text", AWKWARD)
def test_an_awkward_text_is_printed_character_for_character(day, read, text, face):
    page = LearnerPage(
        "K4",
        face=face,
        questions=(PageQuestion(text, starter=text[:30], word_box=(text[:20],)),),
        sentence=PageSentence(text, text),
        topic=PageTopic(text),
    )
    sheets = read(binder_pages(day, [page]))
    assert sheets.text.count("".join(text.split())) >= 3


@settings(max_examples=60, deadline=None)
@given(text=TYPEABLE, face=st.sampled_from(FACES))
def test_whatever_is_typed_is_printed_character_for_character(day, read, text, face):
    page = LearnerPage("K4", face=face, questions=(PageQuestion(text),))
    assert text in read(binder_pages(day, [page]))


@pytest.mark.parametrize("size", [14, 24, 36])
def test_nothing_a_learner_reads_is_smaller_than_14_points(day, learners, read, size):
    long = ("The big dog ran to the park and sat in the sun. " * 7)[:300]
    page = dataclasses.replace(learners[0], size=size, questions=(PageQuestion(long),) * 2)
    sheets = read(binder_pages(day, [page]))
    small = {words for points, words in sheets.sizes() if points < 13.9}
    # What is smaller is the adult's: whose page it is, of which day, and how many there are.
    assert {word for words in small for word in words.split()} <= {
        *("K4", "2026-11-25", "page", "of"),
        *map(str, range(10)),
    }


@pytest.mark.skipif(not shutil.which("pdftoppm"), reason="pdftoppm is not installed")
@pytest.mark.parametrize("paper", PAPERS)
def test_nothing_runs_over_the_edge_and_nothing_is_cut(day, read, tmp_path, paper):
    """The outermost 5 mm of every sheet stay white, at the largest size, with the longest texts."""
    from PIL import Image

    longest = ("The big dog ran to the park and sat in the sun. " * 7)[:300]
    wide = " ".join(["W" * 40] * 7)
    page = LearnerPage(
        "K4",
        size=36,
        lines=RuledLines("dotted", 6, 20),
        questions=(
            PageQuestion(longest, starter=wide[:120], word_box=("W" * 40, "m" * 40)),
            PageQuestion(wide),
        ),
        sentence=PageSentence(wide, wide),
        topic=PageTopic(longest),
        job="W" * 40,
    )
    crowded = dataclasses.replace(day, steps=("W" * 40,) * 9, stuck=longest)
    made = binder_pages(crowded, [page, dataclasses.replace(page, mode="says")], paper)
    sheets = read(made)
    assert sheets.text.count("".join(longest.split())) >= 2 + len(sheets.pages)
    (tmp_path / "pages.pdf").write_bytes(made.files[0].data)
    subprocess.run(
        ["pdftoppm", "-r", "50.8", "-gray", "pages.pdf", "sheet"], cwd=tmp_path, check=True
    )
    for sheet in sorted(tmp_path.glob("sheet*")):
        picture = Image.open(sheet)
        inner = Image.new("L", (picture.width - 20, picture.height - 20), 255)
        picture.paste(inner, (10, 10))
        assert picture.getextrema() == (255, 255), sheet.name


@pytest.mark.parametrize("size", range(24, 37, 2))
def test_no_line_of_an_answer_is_left_alone_on_a_sheet(day, read, size):
    """A sheet with lines has the words that they go on from, too."""
    words = ("extraordinary", "neighborhood", "cafeteria", "friend", "afternoon", "understanding")
    topic = PageTopic(
        "Advice for a student who is nervous about going to a new school in the middle of the winter"
        " without knowing a single other person there",
        starter="If I were going to a new school in the middle of winter I would",
        word_box=words,
    )
    asked = (PageQuestion("Is it hot?"),)
    pages = [
        LearnerPage("K4", size=size, lines=RuledLines("wide", n), questions=asked, topic=topic)
        for n in range(1, 7)
    ]
    sheets = ["".join(sheet.split()) for sheet in read(binder_pages(day, pages, "a4")).pages]
    lasts = [
        one for one, after in zip(sheets, [*sheets[1:], ""], strict=True) if "page1of" in after
    ]
    assert all("winterIwould" in last for last in [*lasts, sheets[-1]])


def test_on_both_sides_each_learner_begins_on_a_sheet_of_their_own(day, learners, read):
    sheets = read(binder_pages(day, learners, duplex=True))
    first = [at for at, text in enumerate(sheets.pages) if "page 1 of" in text]
    assert len(first) == len(learners)
    assert all(at % 2 == 0 for at in first)


def test_a_long_sentence_has_more_lines_to_write_on():
    plain = RuledLines()
    assert lines_to_write("Go.", plain, 170) == 2
    assert lines_to_write("x" * 200, plain, 170) > lines_to_write("x" * 100, plain, 170)
    assert lines_to_write("x" * 100, RuledLines("dotted"), 170) > lines_to_write(
        "x" * 100, plain, 170
    )


def test_a_character_that_the_face_lacks_is_named_and_set_in_another(day, read):
    page = LearnerPage("K4", questions=(PageQuestion("Does Φ or → look like ★ to Nguyễn?"),))
    made = binder_pages(day, [page])
    assert page.questions[0].text in read(made)
    assert (
        "K4: ABeeZee lacks Φ (greek capital letter phi), ễ (latin small letter e with circumflex"
        " and tilde): set in Noto Sans" in made.problems
    )
    assert any("set in DejaVu Sans Mono" in line for line in made.problems)


def test_a_character_that_no_face_has_is_named_and_shown_as_a_box(day, read):
    made = binder_pages(day, [LearnerPage("K4", questions=(PageQuestion("What is 猫?"),))])
    assert "What is □?" in read(made)
    assert made.problems == (
        "K4: ABeeZee lacks 猫 (cjk unified ideograph-732b), as do all faces here: an empty box",
    )


def test_characters_that_nobody_sees_are_left_out(day, read):
    hidden = "so\N{SOFT HYPHEN}ft\N{ZERO WIDTH SPACE}ly\N{RIGHT-TO-LEFT OVERRIDE} now\tand\nthen"
    assert "softly now and then" in read(
        binder_pages(day, [LearnerPage("K4", questions=(PageQuestion(hidden),))])
    )


def test_a_page_that_cannot_be_made_leaves_the_others(day, learners):
    from bank.page import Picture

    broken = dataclasses.replace(
        learners[1], topic=PageTopic("Look at this.", Picture(b"no picture", "png", "a cat"))
    )
    made = binder_pages(day, [learners[0], broken, learners[2]])
    assert [file.name for file in made.files] == [
        "2026-11-25-pages-K4-letter.pdf",
        "2026-11-25-pages-T7-letter.pdf",
    ]
    assert len(made.problems) == 1
    assert made.problems[0].startswith("B2: no page could be made")


def test_the_examples_in_the_text_hold():
    assert doctest.testmod(bank.page.binder).failed == 0


@pytest.mark.parametrize("mode", MODES)
def test_a_topic_may_have_a_starter_and_a_word_box(day, read, mode):
    topic = PageTopic("A big dog", starter="The dog is ___.", word_box=("brown", "bark"))
    sheets = read(binder_pages(day, [LearnerPage("K4", mode=mode, topic=topic)]))
    for words in ("A big dog", "The dog is", "brown", "bark"):
        assert words in sheets
    assert "___" not in sheets


def test_an_unknown_sign_is_a_circle_and_named(day, read):
    made = binder_pages(day, [LearnerPage("K4", sign="gryphon")])
    assert isinstance(made, Made) and isinstance(made.files[0], PageFile)
    assert len(made.problems) == 1 and "a circle stands for it" in made.problems[0]


def test_a_picture_stands_in_its_frame_with_its_credit(day, learners, read):
    import io

    from PIL import Image

    drawn = io.BytesIO()
    Image.new("RGB", (40, 30), "red").save(drawn, "PNG")
    picture = clean_picture(drawn.getvalue(), "sled.png", "a red sled", "Picture: drawn by us")
    topic = PageTopic("Where would you go on this sled?", picture)
    sheets = read(binder_pages(day, [dataclasses.replace(learners[0], topic=topic)]))
    assert "Picture: drawn by us" in sheets
    assert any(page.images for page in sheets.reader.pages)


@pytest.mark.parametrize(
    "wrong",
    [
        {"mode": "sings"},
        {"face": "Papyrus"},
        {"size": 12},
        {"size": 48},
    ],
)
def test_settings_that_no_page_can_follow_are_refused(wrong):
    with pytest.raises(ValueError):
        LearnerPage("K4", **wrong)


@pytest.mark.parametrize("wrong", [{"style": "wavy"}, {"count": 0}, {"height": 2}])
def test_lines_that_nobody_can_write_on_are_refused(wrong):
    with pytest.raises(ValueError):
        RuledLines(**wrong)
