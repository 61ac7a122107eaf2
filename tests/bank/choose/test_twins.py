"""Two questions that ask the same in other words are twins; one word can make another ask."""

import subprocess
import sys

from bank.choose.twins import ask_frame, ask_keys, same_ask, same_ask_frames


def test_a_question_is_its_own_twin():
    text = "What do you pack for the beach?"
    assert same_ask(text, text)
    assert same_ask_frames(ask_frame(text), ask_frame(text))
    assert ask_keys(text)


def test_importing_the_module_does_not_import_spacy():
    code = "import sys, bank.choose.twins; assert 'spacy' not in sys.modules"
    subprocess.run([sys.executable, "-c", code], check=True, timeout=60)
