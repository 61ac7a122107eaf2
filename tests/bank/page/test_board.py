"""The board as a file: whole, safe and in need of nothing else."""

import dataclasses
import html
import re

import pytest
from bs4 import BeautifulSoup

from bank.page import FACES, LearnerPage, PageQuestion, PageTopic, PageTurn, board_html

AWKWARD = '</p><script>alert("1 < 2")</script> & “$title” ${date} &amp; it\'s'


def soup(made):
    (file,) = made.files
    return BeautifulSoup(file.data.decode("utf-8"), "html.parser")


def test_the_board_has_the_day_and_every_prompt_once(day, learners):
    page = soup(board_html(day, learners))
    assert page.title.text == "Board, Wednesday, November 25, 2026"
    assert page.html["lang"] == "en"
    assert "Wednesday, November 25, 2026" in page.header.text
    said = [each.text for each in page.select(".said")]
    wanted = [
        *(question.text for question in learners[0].questions),
        *("What would you do on a day with lots of snow?", "Draw a map."),
    ]
    assert all(said.count(text) == 1 for text in wanted)


def test_the_fullest_faulty_version_is_shown_with_its_fixes(day, learners):
    page = soup(board_html(day, learners[:2]))
    sentence = page.select_one(".fixes").parent
    faulty = "".join(
        each if isinstance(each, str) else each.find("del").text
        for each in sentence.select_one(".said").children
    )
    assert faulty == learners[0].sentence.faulty
    assert [line.text for line in sentence.select(".fixes li")] == [
        "1. the → The (first capital). A sentence starts with a capital letter.",
        "2. runned → ran (when it is). The action word tells when it is.",
        "3. Put in . (end mark). A sentence ends with . or ? or !",
    ]
    assert sentence.select_one(".right").text == learners[0].sentence.corrected


def test_the_lines_that_are_known_beforehand_are_filled_in(day, learners):
    lines = {
        label.find(string=True): label.textarea.text
        for label in soup(board_html(day, learners)).select("label")
    }
    assert lines == {
        "Weather": "",
        "Temperature": "",
        "Lunch": "Soup and bread",
        "Specials": "Music",
    }


def test_who_has_which_job_is_on_the_board(day, learners):
    turns = soup(board_html(day, learners)).select(".turns li")
    assert [turn.text for turn in turns] == ["Weather: K4", "Game leader: B2"]


def test_more_jobs_than_have_room_beside_today_have_a_view_of_their_own(day, learners):
    turns = tuple(PageTurn(f"Job {n}", "K4", "star") for n in range(11))
    page = soup(board_html(dataclasses.replace(day, turns=turns), learners))
    assert not page.select("[aria-labelledby='thing-today'] .turns")
    assert len(page.select("[aria-label='Jobs'] .turns li")) == 11


def test_the_choices_stand_below_the_question(day):
    asked = PageQuestion("Which is soft?", ("a pillow", "a rock"))
    nap = PageQuestion("Do bears nap?", ("yes", "no"))
    page = soup(board_html(day, [LearnerPage("T7", questions=(asked, nap))]))
    assert [each.text for each in page.select(".choices li")] == ["a pillow", "a rock"]


def test_who_sorts_and_reads_what_is_on_the_board_where_somebody_does(day, learners):
    without = board_html(day, [LearnerPage("K4")])
    assert "Sorts and books" not in without.files[0].data.decode()
    page = LearnerPage("K4", sort="ch or <sh>", basket="The red sled, Rain")
    thing = soup(board_html(day, [page, LearnerPage("B2", sort="ai or ay")])).select(
        "[aria-label='Sorts and books'] ul"
    )
    assert {each["aria-label"]: [li.text for li in each.select("li")] for each in thing} == {
        "Word sorts": ["K4: ch or <sh>", "B2: ai or ay"],
        "Books to read": ["K4: The red sled, Rain"],
    }


def test_a_prompt_says_whose_it_is_unless_it_is_everybodys(day, learners):
    page = soup(board_html(day, learners))
    things = {thing["aria-label"]: thing for thing in page.select(".thing[aria-label]")}
    assert not things["Question 1"].select(".for")
    assert [each.text for each in things["Journal 2"].select(".for li")] == ["M9"]


@pytest.mark.parametrize("face", FACES)
def test_nothing_in_a_prompt_is_taken_for_a_command(day, face):
    page = LearnerPage("K4", questions=(PageQuestion(AWKWARD),), topic=PageTopic(AWKWARD))
    made = board_html(day, [page], face)
    assert [each.text for each in soup(made).select(".said")] == [AWKWARD, AWKWARD]
    assert len(soup(made).find_all("script")) == 1


def test_the_file_asks_for_nothing_from_anywhere(day, learners):
    text = board_html(day, learners).files[0].data.decode("utf-8")
    asked = re.findall(r"""(?:src|href|url)\s*[=(]\s*["']?([^"')\s>]+)""", html.unescape(text))
    assert asked and all(each.startswith("data:") for each in asked)
    assert "default-src 'none'" in text
    for reach in ("fetch(", "XMLHttpRequest", "WebSocket", "localStorage", "sendBeacon", "@import"):
        assert reach not in text
    assert len(text) < 2_000_000


def test_without_a_script_everything_is_there_to_be_scrolled(day, learners):
    page = soup(board_html(day, learners))
    assert "one-by-one" not in page.html.get("class", [])
    assert not page.select("[hidden]")
