"""The board as a class meets it: in a browser, by keyboard and by pointer."""

import dataclasses
import json
import os
import shutil
from pathlib import Path

import pytest

from bank.page import LearnerPage, PageQuestion, PageTopic, PageTurn, board_html

webdriver = pytest.importorskip("selenium.webdriver", reason="selenium is not installed")
from selenium.webdriver.common.action_chains import ActionChains  # noqa: E402
from selenium.webdriver.common.by import By  # noqa: E402
from selenium.webdriver.common.keys import Keys  # noqa: E402

CHROMIUM = shutil.which("chromium")
DRIVER = shutil.which("chromedriver")
pytestmark = pytest.mark.skipif(
    not (CHROMIUM and DRIVER), reason="Debian's chromium and chromium-driver are not installed"
)
QUIET = (
    *("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"),
    *("--disable-background-networking", "--disable-component-update", "--disable-sync"),
)
# Where `npm install axe-core` puts it in the project's folder, or wherever AXE_CORE says.
AXE = Path(
    os.environ.get("AXE_CORE", Path(__file__).parents[3] / "node_modules/axe-core/axe.min.js")
)
SCREENS = {"projector": (1280, 720, False), "phone": (390, 844, True)}


@pytest.fixture(scope="module")
def browser(tmp_path_factory):
    options = webdriver.ChromeOptions()
    options.binary_location = CHROMIUM
    for flag in (*QUIET, f"--user-data-dir={tmp_path_factory.mktemp('profile')}"):
        options.add_argument(flag)
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    started = webdriver.Chrome(options=options, service=webdriver.ChromeService(DRIVER))
    yield started
    started.quit()


@pytest.fixture(scope="module")
def address(day, learners, tmp_path_factory):
    path = tmp_path_factory.mktemp("board") / "board.html"
    path.write_bytes(board_html(day, learners).files[0].data)
    return path.as_uri()


@pytest.fixture(params=SCREENS)
def board(browser, address, request):
    width, height, mobile = SCREENS[request.param]
    browser.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride",
        {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": mobile},
    )
    browser.get_log("performance")
    browser.get(address)
    return browser


def press(board, *keys):
    for key in keys:
        ActionChains(board).send_keys(key).perform()


def shown(board):
    """The headings of the things that can be seen."""
    return [h1.text for h1 in board.find_elements(By.TAG_NAME, "h1") if h1.is_displayed()]


def seen(board, selector):
    found = board.find_elements(By.CSS_SELECTOR, f".thing.now {selector}")
    return [each.text for each in found if each.is_displayed()]


def click(board, name):
    """Presses the button of that name with the pointer, if it can be seen."""
    buttons = [
        button
        for button in board.find_elements(By.TAG_NAME, "button")
        if button.is_displayed() and name in (button.text, button.get_attribute("aria-label"))
    ]
    ActionChains(board).move_to_element(buttons[0]).click().perform()


def test_a_key_shows_one_thing_at_a_time(board):
    assert shown(board) == ["Today"]
    press(board, Keys.ARROW_RIGHT)
    assert shown(board) == ["Sorts and books"]
    press(board, Keys.ARROW_RIGHT)
    assert shown(board) == ["Question 1"]
    press(board, Keys.PAGE_DOWN, Keys.PAGE_DOWN)
    assert shown(board) == ["Question 3"]
    press(board, Keys.ARROW_LEFT, Keys.PAGE_UP)
    assert shown(board) == ["Question 1"]
    press(board, Keys.END)
    assert shown(board) == ["Journal 2"]
    press(board, Keys.ARROW_RIGHT)
    assert shown(board) == ["Journal 2"]
    press(board, Keys.HOME)
    assert shown(board) == ["Today"]


def test_another_key_opens_the_fixes_one_by_one(board):
    click(board, "Sentence 1")
    assert shown(board) == ["Sentence 1 to fix"]
    assert seen(board, "ins") == [] and seen(board, ".fixes li") == []
    board.execute_script("document.activeElement.blur()")
    press(board, Keys.ENTER)
    assert seen(board, "ins") == ["The"]
    assert len(seen(board, ".fixes li")) == 1 and "first capital" in seen(board, ".fixes li")[0]
    press(board, Keys.ENTER)
    assert seen(board, "ins") == ["The", "ran"]
    assert "when it is" in seen(board, ".fixes li")[0]
    press(board, Keys.BACKSPACE)
    assert seen(board, "ins") == ["The"]
    assert seen(board, ".right") == []
    press(board, Keys.ENTER, Keys.ENTER, Keys.ENTER, Keys.ENTER)
    assert seen(board, ".right") == ["The dog ran to the park."]


def test_a_pointer_does_all_that_the_keys_do(board):
    click(board, "Next")
    assert shown(board) == ["Sorts and books"]
    click(board, "Question 3")
    assert shown(board) == ["Question 3"]
    click(board, "Back")
    assert shown(board) == ["Question 2"]
    click(board, "Sentence 2")
    click(board, "Open a fix")
    assert seen(board, "ins") == ["Ben and I"]
    click(board, "Close it")
    assert seen(board, "ins") == []


def test_the_keyboard_alone_reaches_every_button_and_shows_where_it_is(board):
    press(board, Keys.END, Keys.ARROW_LEFT, Keys.ARROW_LEFT)
    assert shown(board) == ["Sentence 2 to fix"]
    reached = []
    for _ in range(30):
        press(board, Keys.TAB)
        name, outline = board.execute_script(
            "const at = document.activeElement;"
            "return [at.ariaLabel || at.textContent, getComputedStyle(at).outlineWidth]"
        )
        if board.execute_script("return document.activeElement === document.body"):
            break
        assert outline == "4px", name
        reached.append(name)
    for name in ("Open a fix", "Close it", "Back", "Next", "Today", "Question 1", "Journal 2"):
        assert name in reached


def test_enter_on_a_button_presses_that_button_once(board):
    click(board, "Sentence 1")
    press(board, Keys.TAB)
    buttons = board.find_elements(By.CSS_SELECTOR, ".thing.now .open-more")
    board.execute_script("arguments[0].focus()", buttons[0])
    press(board, Keys.ENTER)
    assert seen(board, "ins") == ["The"]


def test_what_is_typed_into_a_line_stays_there(board):
    weather = board.find_element(By.CSS_SELECTOR, "label textarea")
    weather.send_keys("Sunny", Keys.ARROW_LEFT, Keys.HOME, Keys.BACKSPACE, Keys.ENTER)
    assert shown(board) == ["Today"]
    assert weather.get_attribute("value") == "Sunny"
    board.find_element(By.TAG_NAME, "body").click()
    click(board, "Next")
    click(board, "Back")
    assert weather.get_attribute("value") == "Sunny"


def test_a_line_that_is_long_is_shown_whole(board):
    special = board.find_elements(By.CSS_SELECTOR, "label textarea")[-1]
    special.send_keys(", gym in the small hall, library with the second grade, " * 3)
    room = "return arguments[0].scroll{0} <= arguments[0].client{0}"
    assert all(board.execute_script(room.format(side), special) for side in ("Height", "Width"))


def test_nothing_is_written_to_the_console_or_asked_of_any_host(board, address):
    press(board, *[Keys.ARROW_RIGHT] * 5, Keys.ENTER, Keys.ENTER, Keys.HOME)
    assert board.get_log("browser") == []
    events = [json.loads(line["message"])["message"] for line in board.get_log("performance")]
    asked = [
        event["params"]["request"]["url"]
        for event in events
        if event["method"] == "Network.requestWillBeSent"
    ]
    assert address in asked
    assert all(url == address or url.startswith("data:") for url in asked)


def test_at_four_times_the_size_nothing_is_wider_than_the_screen(browser, address):
    """WCAG 1.4.10, reflow: 320 points wide is a screen of 1280 at 400 percent."""
    browser.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride",
        {"width": 320, "height": 256, "deviceScaleFactor": 1, "mobile": False},
    )
    browser.get(address)
    for _ in range(8):
        wide = browser.execute_script("return document.documentElement.scrollWidth")
        assert wide <= 320, shown(browser)
        press(browser, *[Keys.ENTER] * 3, Keys.ARROW_RIGHT)


def test_nothing_is_wider_than_the_screen(board):
    for _ in range(8):
        wide = board.execute_script(
            "return [document.documentElement.scrollWidth, window.innerWidth]"
        )
        assert wide[0] <= wide[1], shown(board)
        press(board, Keys.ARROW_RIGHT)


def test_a_projector_shows_each_thing_without_scrolling(browser, address):
    browser.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride",
        {"width": 1280, "height": 720, "deviceScaleFactor": 1, "mobile": False},
    )
    browser.get(address)
    for _ in range(8):
        press(browser, *[Keys.ENTER] * 9)
        high = browser.execute_script("return document.documentElement.scrollHeight")
        assert high <= 720, shown(browser)
        press(browser, Keys.ARROW_RIGHT)


@pytest.fixture
def full_day(day):
    """Eight learners with their own questions, sorts and books, and jobs with long names."""
    signs = ("star", "moon", "leaf", "heart", "drop", "circle", "square", "cross")
    long = ("Calendar helper", "Door holder", "Weather", "The one who carries the lunch box")
    turns = tuple(PageTurn(f"{long[n % 4]} {n + 1}", f"K{n % 8}", signs[n % 8]) for n in range(26))
    choices = ("because we see different parts of it lit by the sun", "at night", "a cat", "never")
    learners = [
        LearnerPage(
            f"K{n}",
            sign,
            questions=tuple(
                PageQuestion(
                    f"Why does the moon seem to change its shape in {n} {number} weeks?", choices
                )
                for number in range(5)
            ),
            sort="short a, short i, short o and odd ones",
            basket="The red sled, Rain on the roof, A day at the farm, The last bus home",
            topic=PageTopic(f"What would you do with {n} dogs?"),
        )
        for n, sign in enumerate(signs)
    ]
    return dataclasses.replace(day, turns=turns), learners


def test_a_full_day_fits_a_projector_and_goes_on_where_a_part_does_not(browser, full_day, tmp_path):
    path = tmp_path / "board.html"
    path.write_bytes(board_html(*full_day).files[0].data)
    browser.execute_cdp_cmd(
        "Emulation.setDeviceMetricsOverride",
        {"width": 1280, "height": 720, "deviceScaleFactor": 1, "mobile": False},
    )
    browser.get(path.as_uri())
    things = browser.find_elements(By.CLASS_NAME, "thing")
    said = []
    for _ in things:
        high, foot, rows, room = browser.execute_script(
            "const list = document.getElementById('places');"
            "return [document.documentElement.scrollHeight,"
            " document.querySelector('footer').offsetHeight, list.scrollHeight, list.clientHeight]"
        )
        assert high <= 720 and foot <= 170 and rows <= room, shown(browser)
        said += [line for text in seen(browser, "li") for line in text.splitlines()]
        press(browser, Keys.ARROW_RIGHT)
    day, learners = full_day
    assert [line for line in said if any(turn.job in line for turn in day.turns)] == [
        f"{turn.job}: {turn.code}" for turn in day.turns
    ]
    for page in learners:
        assert f"{page.code}: {page.sort}" in said and f"{page.code}: {page.basket}" in said
    assert shown(browser) == ["Journal 8"]


def test_of_many_buttons_the_near_ones_and_the_first_of_each_kind_are_there(
    browser, full_day, tmp_path
):
    path = tmp_path / "board.html"
    path.write_bytes(board_html(*full_day).files[0].data)
    browser.get(path.as_uri())
    click(browser, "Question 1")
    click(browser, "Question 3")
    click(browser, "Question 5")
    buttons = browser.find_elements(By.CSS_SELECTOR, "#places button")
    there = [button.text for button in buttons if button.is_displayed()]
    assert [text for text in there if text.isdigit()] == ["1", "3", "4", "5", "6", "7"]
    assert {"Today", "Jobs 1", "Sorts and books 1", "Journal 1"} <= set(there)
    click(browser, "Journal 1")
    assert shown(browser) == ["Journal 1"]


def test_nothing_moves_for_a_reader_who_asks_for_less_motion(board):
    board.execute_cdp_cmd(
        "Emulation.setEmulatedMedia",
        {"features": [{"name": "prefers-reduced-motion", "value": "reduce"}]},
    )
    press(board, Keys.ARROW_RIGHT)
    assert board.execute_script("return document.getAnimations().length") == 0
    board.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": []})


@pytest.mark.skipif(not AXE.is_file(), reason="axe-core is not installed: npm install axe-core")
def test_axe_finds_no_violation(board):
    """WCAG 2.0 to 2.2, A and AA, and axe's best practices, on every kind of thing."""
    board.execute_script(AXE.read_text(encoding="utf-8"))
    for keys in ([], [Keys.ARROW_RIGHT], [Keys.END], [Keys.ARROW_LEFT] * 2, [Keys.ENTER] * 3):
        press(board, *keys)
        found = board.execute_async_script(
            "const done = arguments[arguments.length - 1];"
            "axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa',"
            " 'best-practice']}).then(result => done(result))"
        )
        assert found["passes"]
        told = [
            (each["id"], [node["html"][:120] for node in each["nodes"]])
            for each in found["violations"]
        ]
        assert told == [], shown(board)
