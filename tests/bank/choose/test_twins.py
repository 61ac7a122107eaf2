"""Two questions that ask the same in other words are twins; one word can make another ask.

The pairs beside this file were written for the project, half of them near misses, before the rules
that they test: `twin_pairs_first` before any, each further file before it was first measured. A
third of the first file is held aside: nothing was tuned or fitted on it, nor on the nineteenth, which
was first measured when all else stood. `twin_pairs_bank` has the texts of a bank, one a line; of those
that share a key nearly no two are twins: `twins_by_reading` has these.
"""

import json
import subprocess
import sys
from collections import Counter, defaultdict
from functools import lru_cache
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bank.choose.ask.keys import keys_of
from bank.choose.search import SURE_ENOUGH
from bank.choose.twins import ask_frame, ask_frames, ask_keys, how_surely, same_ask, same_ask_frames

HERE = Path(__file__).parent
FILES = tuple(
    "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth"
    " fourteenth fifteenth sixteenth seventeenth eighteenth".split()
)
LAST = "nineteenth"


def pairs(name: str) -> list[tuple[str, str, str]]:
    """The rows of a file: the sort of the pair, and its two texts."""
    lines = (HERE / f"twin_pairs_{name}.tsv").read_text("utf-8").splitlines()[1:]
    return [(sort, a, b) for sort, a, b in (line.split("\t") for line in lines)]


@lru_cache(maxsize=1)
def frames() -> dict[str, Any]:
    """The frames of all texts, by text, as they come out of the store."""
    texts = [text for name in (*FILES, LAST) for _, *both in pairs(name) for text in both]
    return {
        text: json.loads(json.dumps(frame))
        for text, frame in zip(texts, ask_frames(texts), strict=True)
    }


def same(a: str, b: str) -> bool:
    return same_ask_frames(frames()[a], frames()[b])


def f1(rows: list[tuple[str, str, str]]) -> float:
    hits = Counter((sort == "twin", same(a, b)) for sort, a, b in rows)
    right, missed, wrong = hits[True, True], hits[True, False], hits[False, True]
    return 2 * right / (2 * right + missed + wrong)


def test_the_pairs_held_aside_are_told_apart_with_an_f1_of_nine_tenths():
    assert f1(pairs("first")[2::3]) >= 0.90


def test_the_pairs_of_the_file_that_came_last_are_told_apart_with_an_f1_of_nine_tenths():
    assert f1(pairs(LAST)) >= 0.90


def test_the_pairs_of_all_files_are_told_apart_with_an_f1_of_nine_tenths():
    assert f1([row for name in FILES for row in pairs(name)]) >= 0.90


@pytest.mark.parametrize(
    "sort",
    "opposite person animal time place not exchange unknown object action".split(),
)
def test_near_misses_of_every_sort_are_other_asks(sort):
    rows = [row for name in FILES for row in pairs(name) if row[0] == sort]
    mistaken = [(a, b) for _, a, b in rows if same(a, b)]
    assert len(mistaken) <= 0.06 * len(rows), mistaken


def test_most_pairs_that_a_bank_keeps_are_twins_by_reading():
    """The pairs were fitted on: what holds for others is printed by `tests/bench/fit_twins.py bank`."""
    texts = (HERE / "twin_pairs_bank.tsv").read_text("utf-8").splitlines()[1:]
    rows = (HERE / "twins_by_reading.tsv").read_text("utf-8").splitlines()[1:]
    read = {frozenset((a, b)): sort for sort, a, b in (row.split("\t") for row in rows)}
    asks = dict(zip(texts, ask_frames(texts), strict=True))
    by_key = defaultdict(list)
    for text, frame in asks.items():
        for key in keys_of(frame):
            by_key[key].append(text)
    sharing = {frozenset(pair) for some in by_key.values() for pair in combinations(some, 2)}
    kept = {pair for pair in sharing if how_surely(*(asks[text] for text in pair)) >= SURE_ENOUGH}
    sure = {pair for pair in kept if read.get(pair) != "unsure"}
    right = {pair for pair in sure if read.get(pair) == "twin"}
    assert len(right) >= 0.55 * len(sure), [sorted(pair) for pair in sure - right]
    assert len(right) >= 0.5 * sum(sort == "twin" for sort in read.values())


@pytest.mark.parametrize(
    ("a", "b"),
    [
        ("What do you do with clothes that are too small?", "Which pet is small?"),
        ("What do babies eat?", "Name one thing a baby can do."),
        ("Which animal is the slowest?", "Name one animal on a farm."),
        ("Who is your friend?", "Name one thing you do with a friend."),
    ],
)
def test_one_idea_in_common_makes_no_twins_in_a_bank(a, b):
    assert how_surely(ask_frame(a), ask_frame(b)) < SURE_ENOUGH


def test_asking_the_same_goes_both_ways():
    for _, a, b in pairs("second") + pairs("third"):
        assert same(a, b) == same(b, a), (a, b)


def test_twins_that_a_bank_would_keep_nearly_always_share_a_key():
    twins = [(a, b) for name in FILES for sort, a, b in pairs(name) if sort == "twin"]
    found = [(a, b) for a, b in twins if how_surely(frames()[a], frames()[b]) >= SURE_ENOUGH]
    apart = [(a, b) for a, b in found if not {*ask_keys(a)} & {*ask_keys(b)}]
    assert len(apart) <= 0.03 * len(found), apart


@pytest.mark.parametrize(
    ("a", "b"),
    [
        (
            "Which game do you like most at the fair?",
            "At the fair, what is your favorite game?",
        ),
        ("How old are you?", "What is your age?"),
        ("Is a cow bigger than a cat?", "Is a cat smaller than a cow?"),
        ("A trip to the lake", "The day we went to the lake"),
        ("Tell about your family.", "Write about your family."),
        ("Why does ice melt?", "What makes ice melt?"),
        (
            "What do you want to be when you grow up?",
            "What would you like to be when you grow up?",
        ),
        ("Are dogs louder than rabbits?", "Are rabbits quieter than dogs?"),
    ],
)
def test_other_words_can_ask_the_same(a, b):
    assert same_ask(a, b)


@pytest.mark.parametrize(
    ("a", "b"),
    [
        ("What do you pack for the beach?", "What do you pack for school?"),
        ("Is a cow bigger than a cat?", "Is a cat bigger than a cow?"),
        ("What do you eat?", "What do you eat for lunch?"),
        ("What do you wear?", "What do you wear in the winter?"),
        ("Who helps you?", "Who do you help?"),
        ("What did you do last summer?", "What will you do next summer?"),
        ("Which animals can fly?", "Which animals are not able to fly?"),
    ],
)
def test_one_word_can_make_another_ask(a, b):
    assert not same_ask(a, b)


def test_a_map_and_where_it_is_are_two_asks():
    assert how_surely(ask_frame("What is on a map?"), ask_frame("Where is the map?")) < 0.1


@settings(max_examples=25)
@given(
    st.lists(
        st.sampled_from("what who not or than do you the cat like more before ? , 3 of".split()),
        max_size=8,
    )
)
def test_any_text_asks_the_same_as_itself_and_has_a_frame_that_json_can_hold(words):
    text = " ".join(words)
    frame = ask_frame(text)
    assert json.loads(json.dumps(frame)) == frame
    assert same_ask_frames(frame, frame)
    assert ask_keys(text) == sorted(set(ask_keys(text)))


def test_comparing_frames_does_not_import_spacy():
    frame = json.dumps(ask_frame("What do you pack for the beach?"))
    code = (
        "import json, sys; from bank.choose.twins import same_ask_frames;"
        f"frame = json.loads({frame!r}); assert same_ask_frames(frame, frame);"
        "assert not {'spacy', 'numpy', 'lemminflect', 'wordfreq'} & {*sys.modules}"
    )
    subprocess.run([sys.executable, "-c", code], check=True, timeout=60)
