import datetime as dt
import subprocess
import sys
import time
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from making import MONDAY, make_item, put

from bank.classroom import Bank, open_bank
from bank.item import BankError
from bank.store_sets import day_sets

TUESDAY = MONDAY + dt.timedelta(days=1)


def ids(sets: object) -> dict[str, list[str]]:
    return {one.learner.code: [part.item for part in one.given] for one in sets}  # type: ignore[attr-defined]


def test_each_learner_gets_five_questions_a_sentence_and_a_topic(stocked: Bank) -> None:
    for one in stocked.days.draw(MONDAY):
        assert [len(one.of(kind)) for kind in ("question", "sentence", "topic")] == [5, 1, 1]
        assert one.state == "proposed"


def test_the_same_date_drawn_again_gives_the_same_set(stocked: Bank) -> None:
    assert ids(stocked.days.draw(MONDAY)) == ids(stocked.days.draw(MONDAY))


def test_a_draw_for_some_gives_what_a_draw_for_all_gives(stocked: Bank) -> None:
    stocked.learners.change("K4", group="A")
    stocked.learners.change("M7", group="A", band=stocked.learners.get("K4").band)
    everyone = ids(stocked.days.draw(MONDAY))
    stocked.days.undo(MONDAY)
    one = ids(stocked.days.draw(MONDAY, ["M7"]))
    assert set(one) == {"M7"}
    assert ids(stocked.days.draw(MONDAY)) == everyone


def test_looking_ahead_spends_nothing(stocked: Bank) -> None:
    today = ids(stocked.days.draw(MONDAY))
    stocked.days.undo(MONDAY)
    stocked.days.draw(TUESDAY)
    assert stocked.days.undo(TUESDAY) == (2, 0)
    assert ids(stocked.days.draw(MONDAY)) == today


def test_no_item_comes_again_on_the_next_day(stocked: Bank) -> None:
    first, second = ids(stocked.days.draw(MONDAY)), ids(stocked.days.draw(TUESDAY))
    for code in first:
        assert not set(first[code]) & set(second[code])


def test_a_snow_day_gives_its_items_back(stocked: Bank) -> None:
    first = ids(stocked.days.draw(MONDAY))
    assert stocked.days.set_state(MONDAY, "unused") == 2
    items = {item for found in first.values() for item in found}
    for item in items:
        for learner in stocked.learners:
            assert not stocked.store.value(
                "SELECT 1 FROM given WHERE item = ? AND learner = ? AND counts = 1",
                (item, learner.number),
            )


def test_a_printed_set_stays_as_printed_when_the_item_changes(stocked: Bank) -> None:
    before = stocked.days.draw(MONDAY)
    assert stocked.days.printed(MONDAY) == 2
    item = stocked.items.get(before[0].given[0].item)
    put(stocked, replace(item, text="Another text altogether?", grade=9.0, state="retired"))
    stocked.learners.change(before[0].learner.code, taught=8.0)
    after = stocked.days.draw(MONDAY)
    assert after[0].state == "printed"
    assert [part.text for part in after[0].given] == [part.text for part in before[0].given]
    assert stocked.days.undo(MONDAY) == (0, 2)


def test_nothing_is_drawn_on_a_day_without_school_unless_asked(stocked: Bank) -> None:
    saturday = dt.date(2026, 9, 19)
    with pytest.raises(BankError, match="--anyway"):
        stocked.days.draw(saturday)
    assert len(stocked.days.draw(saturday, anyway=True)) == 2


def test_a_short_morning_has_a_short_set(stocked: Bank) -> None:
    for one in stocked.days.draw(MONDAY, short=True):
        assert [len(one.of(kind)) for kind in ("question", "sentence", "topic")] == [3, 1, 0]


def test_a_learner_who_is_away_gets_no_set(stocked: Bank) -> None:
    from bank.learner import Away

    stocked.learners.change("K4", away=(Away(MONDAY, MONDAY),))
    assert set(ids(stocked.days.draw(MONDAY))) == {"M7"}
    assert set(ids(stocked.days.draw(TUESDAY))) == {"K4", "M7"}


def test_a_swap_gives_another_item_and_keeps_the_reason(stocked: Bank) -> None:
    before = stocked.days.draw(MONDAY, ["K4"])[0]
    was, now = stocked.days.swap("K4", MONDAY, "question 2", "upset by it")
    after = stocked.days.sets(MONDAY, ["K4"])[0]
    assert was.item == before.of("question")[1].item
    assert after.of("question")[1].item == now.item not in [part.item for part in before.given]
    assert after.of("question")[1].why["swapped"] == "upset by it"
    assert stocked.store.value("SELECT reason FROM swap") == "upset by it"


def test_a_swap_of_what_is_not_there_changes_nothing(stocked: Bank) -> None:
    stocked.days.draw(MONDAY)
    before = ids(stocked.days.sets(MONDAY))
    for slot in ("question 9", "song", "question 0"):
        with pytest.raises(BankError):
            stocked.days.swap("K4", MONDAY, slot, "x")
    assert ids(stocked.days.sets(MONDAY)) == before


def test_an_open_slot_is_said_with_its_reason(bank: Bank) -> None:
    bank.learners.add("K4", 2.0)
    put(bank, make_item(1, grade=1.0), make_item(2, grade=1.2))
    one = bank.days.draw(MONDAY)[0]
    assert len(one.of("question")) == 2
    assert any("3 of 5 questions are missing" in line for line in one.notes)
    assert any("topic" in line for line in one.notes)


def test_what_is_easier_than_the_band_is_said_in_one_line(bank: Bank) -> None:
    bank.learners.add("K4", 3.0)  # band 1 to 2.5
    put(bank, *(make_item(n, grade=1.5) for n in range(4)), make_item(9, grade=0.5))
    one = bank.days.draw(MONDAY)[0]
    assert one.notes[0] == (
        "K4: 1 of 5 questions is easier than the band;"
        " the bank has no unseen question between grade 1 and 2.5 left that fits"
    )


def test_the_one_seen_longest_ago_comes_back_when_nothing_is_new(bank: Bank) -> None:
    bank.learners.add("K4", 2.0, questions=1)
    put(bank, *(make_item(n, grade=1.0) for n in range(3)))
    days = [MONDAY + dt.timedelta(days=n) for n in range(4)]
    drawn = [ids(bank.days.draw(day))["K4"][0] for day in days]
    assert len(set(drawn[:3])) == 3
    assert drawn[3] == drawn[0]


def test_a_specialists_placement_decides_whether_an_item_fits(bank: Bank) -> None:
    bank.learners.add("K4", 2.0, questions=1)  # band 0 to 1.5
    put(bank, make_item(1, grade=1.0, level_as=3.0), make_item(2, grade=3.0, level_as=1.0))
    assert ids(bank.days.draw(MONDAY))["K4"] == ["q00002"]


def test_a_season_that_ends_first_goes_first(bank: Bank) -> None:
    bank.learners.add("K4", 2.0, questions=2)
    put(
        bank,
        make_item(1, grade=1.0),
        make_item(2, grade=1.0, seasons=("09-01..12-31",)),
        make_item(3, grade=1.0, seasons=("09-01..09-20",)),
        make_item(4, grade=1.0, seasons=("12-01..12-31",)),
    )
    assert ids(bank.days.draw(MONDAY))["K4"] == ["q00003", "q00002"]


def test_a_themes_to_avoid_holds_for_every_theme_of_an_item(bank: Bank) -> None:
    bank.learners.add("K4", 2.0, questions=3, avoid=("family",))
    put(bank, make_item(1, grade=1.0, themes=("food", "family")), make_item(2, grade=1.0))
    assert ids(bank.days.draw(MONDAY))["K4"] == ["q00002"]


def test_nobody_gets_two_twins_in_one_set_nor_a_twin_of_last_weeks_question(bank: Bank) -> None:
    from bank.store_items import set_twins

    bank.learners.add("K4", 2.0, questions=2)
    put(bank, *(make_item(n, grade=1.0) for n in range(4)))
    with bank.store.writing():
        set_twins(bank.store, "q00000", ["q00001"])
        set_twins(bank.store, "q00002", ["q00003"])
    drawn = ids(bank.days.draw(MONDAY))["K4"]
    assert len({int(item[1:]) // 2 for item in drawn}) == 2
    # Only twins of last week's are new: what was seen comes again rather than a twin of it.
    assert sorted(ids(bank.days.draw(MONDAY + dt.timedelta(days=7)))["K4"]) == sorted(drawn)
    later = ids(bank.days.draw(MONDAY + dt.timedelta(days=70)))["K4"]
    assert len(later) == 2 and not set(later) & set(drawn)


def test_a_learner_in_a_group_shares_its_questions(stocked: Bank) -> None:
    band = stocked.learners.get("K4").band
    stocked.learners.change("K4", group="A")
    stocked.learners.change("M7", group="A", band=band)
    drawn = ids(stocked.days.draw(MONDAY))
    assert drawn["K4"] == drawn["M7"]


def test_who_comes_late_shares_what_the_others_have(stocked: Bank) -> None:
    stocked.learners.change("K4", group="A")
    drawn = ids(stocked.days.draw(MONDAY))
    stocked.learners.add("Z9", 2.0, group="A")
    assert ids(stocked.days.draw(MONDAY))["K4"] == drawn["K4"]
    assert ids(stocked.days.draw(MONDAY))["Z9"][:5] == drawn["K4"][:5]


def test_the_key_numbers_the_fixes_of_the_fullest_version(stocked: Bank) -> None:
    stocked.learners.change("K4", errors=1, band=stocked.learners.get("M7").band)
    stocked.days.draw(MONDAY)
    key = stocked.days.key(MONDAY)
    assert len(key.sentences) == 1
    sentence = key.sentences[0]
    assert [fix["skill"] for fix in sentence.fixes] == ["capital-first", "end-mark", "tense"]
    assert [(numbers, codes) for _, numbers, codes in sentence.versions] == [
        ((1, 2, 3), ("M7",)),
        ((1,), ("K4",)),
    ]


def test_the_key_has_the_answers_of_questions_that_have_one(bank: Bank) -> None:
    bank.learners.add("K4", 2.0)
    put(bank, make_item(1, grade=1.0, answer="yes"), make_item(2, grade=1.0))
    bank.days.draw(MONDAY)
    assert [answer.answer for answer in bank.days.key(MONDAY).answers] == ["yes"]


def test_an_unknown_learner_is_refused_before_anything_is_drawn(stocked: Bank) -> None:
    with pytest.raises(BankError, match="K4, M7"):
        stocked.days.draw(MONDAY, ["X1"])
    assert day_sets(stocked.store, MONDAY) == {}


def test_a_bank_without_learners_says_what_to_do(bank: Bank) -> None:
    with pytest.raises(BankError, match="learner add"):
        bank.days.draw(MONDAY)


def test_a_killed_draw_leaves_all_sets_or_none(stocked: Bank) -> None:
    for number in range(30):
        stocked.learners.add(f"L{number}", 2.0 + number / 20)
    path = stocked.path
    code = (
        "import datetime as dt, sys; from bank.classroom import open_bank\n"
        f"bank = open_bank({str(path)!r}); print('ready', flush=True)\n"
        f"bank.days.draw(dt.date.fromisoformat(sys.argv[1]))\n"
    )
    sizes = set()
    for number, delay in enumerate((0.0, 0.005, 0.01, 0.02, 0.04)):
        day = MONDAY + dt.timedelta(days=number)
        command = [sys.executable, "-c", code, day.isoformat()]
        with subprocess.Popen(command, stdout=subprocess.PIPE, cwd=Path.cwd()) as process:
            assert process.stdout is not None
            process.stdout.readline()
            time.sleep(delay)
            process.kill()
        with open_bank(path) as bank:
            sizes.add(len(day_sets(bank.store, day)))
            assert bank.store.value("PRAGMA integrity_check") == "ok"
    assert sizes <= {0, 32}


def test_a_teacher_gives_the_missed_topic_to_who_was_away(stocked: Bank) -> None:
    from bank.classroom_swap import missed
    from bank.learner import Away

    band = stocked.learners.get("K4").band
    stocked.learners.change("M7", band=band, away=(Away(MONDAY, MONDAY),))
    topic = next(p.item for p in stocked.days.draw(MONDAY)[0].given if p.kind == "topic")
    stocked.days.draw(TUESDAY)
    assert missed(stocked.days, "M7", MONDAY, "topic") == topic
    _, now = stocked.days.swap("M7", TUESDAY, "topic", "was away", topic)
    assert now.item == topic
    with pytest.raises(BankError, match="does not suit"):
        stocked.days.swap("K4", TUESDAY, "topic", "had it", topic)


def test_an_item_that_is_too_hard_cannot_be_given_by_name(stocked: Bank) -> None:
    put(stocked, make_item(900, "topic", 3.9), make_item(901, "topic", 0.5, state="draft"))
    stocked.days.draw(MONDAY)
    for item in ("t00900", "t00901", "q00001"):
        with pytest.raises(BankError):
            stocked.days.swap("K4", MONDAY, "topic", "x", item)


def test_a_goal_for_why_questions_is_met_over_a_week(bank: Bank) -> None:
    words = ("who", "what", "where", "when", "why", "how")
    put(bank, *(make_item(n, grade=1.0, question_word=words[n % 6], themes=()) for n in range(120)))
    bank.learners.add("K4", 2.0)
    bank.learners.add("M7", 2.0, support={"goals": {"why": 3.0}})
    had: dict[str, Counter[str]] = {"K4": Counter(), "M7": Counter()}
    for number in range(5):
        for one in bank.days.draw(MONDAY + dt.timedelta(days=number)):
            had[one.learner.code].update(part.question_word for part in one.of("question"))
    # 25 questions a week: an even share of six words is 4 or 5; three times the weight is 3 of 8 shares.
    assert set(had["K4"].values()) == {4, 5}
    assert 9 <= had["M7"]["why"] <= 10


def test_question_words_and_themes_are_mixed_within_a_set(bank: Bank) -> None:
    words = ("who", "what", "where", "when", "why")
    put(
        bank,
        *(
            make_item(n, grade=1.0, question_word=words[n % 5], themes=(f"theme{n // 5 % 6}",))
            for n in range(90)
        ),
    )
    bank.learners.add("K4", 2.0)
    for number in range(5):
        (one,) = bank.days.draw(MONDAY + dt.timedelta(days=number))
        assert sorted(part.question_word for part in one.given) == sorted(words)
        themes = [part.themes[0] for part in one.given]
        assert max(themes.count(theme) for theme in themes) <= 2


def test_no_theme_comes_three_school_days_running_while_another_is_there(bank: Bank) -> None:
    bank.learners.add("K4", 2.0, questions=1)
    themes = ["weather"] * 20 + ["food"] * 8
    put(bank, *(make_item(n, grade=1.0, themes=(theme,)) for n, theme in enumerate(themes)))
    run = []
    # Eight days: whatever the draw takes, some of either theme is left.
    for number in (0, 1, 2, 3, 4, 7, 8, 9):
        (one,) = bank.days.draw(MONDAY + dt.timedelta(days=number))
        run.append(one.given[0].themes[0])
    for three in zip(run, run[1:], run[2:], strict=False):
        assert len(set(three)) == 2
