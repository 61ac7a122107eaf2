"""Why a fix is made, in words that a grade 2 reader can follow.

Each skill has a function of the wrong and the right text; the words are short and said plainly.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from bank.skill import skill

if TYPE_CHECKING:
    from bank.edit.fix import Fix


def explain(fix: Fix) -> str:
    """One or two short sentences on what to do and why.

    >>> from bank.edit.fix import Fix
    >>> explain(Fix("tense", "goed", "went", 3, 7, 3, 7))
    'We say it like this: went.'
    """
    say = _SAY.get(fix.skill)
    if say is None:
        return skill(fix.skill).rule
    return say(fix.wrong.strip(), fix.right.strip())


def _capital_first(wrong: str, right: str) -> str:
    return f"A sentence starts with a capital. Write {right}."


def _capital_i(wrong: str, right: str) -> str:
    return "The word I is always a capital."


def _capital_name(wrong: str, right: str) -> str:
    return f"A name starts with a capital. Write {right}."


def _capital_extra(wrong: str, right: str) -> str:
    return f"This is not a name. Write {right}."


_STOPS = {
    "?": "You ask here. Put ? at the end.",
    "!": "This is said in a big way. Put ! at the end.",
    ".": "The sentence ends here. Put a dot at the end.",
}


def _end_mark(wrong: str, right: str) -> str:
    if not right:
        return "The sentence goes on here. Take out the mark."
    return _STOPS.get(right[:1], f"The sentence ends here. Write {right}")


def _comma(rule: str) -> Callable[[str, str], str]:
    def say(wrong: str, right: str) -> str:
        return rule if right else "You do not need a comma here."

    return say


def _quotation(wrong: str, right: str) -> str:
    if right == ",":
        return "Someone is talking. Put a comma by the words."
    return "Someone is talking. Put talking marks here."


def _contraction(wrong: str, right: str) -> str:
    if "'" not in right and "’" not in right:
        return f"No letter is left out here. Write {right}."
    return f"The ' stands for what is left out. Write {right}."


def _possessive(wrong: str, right: str) -> str:
    if "'" not in right and "’" not in right:
        return f"You do not need the ' here. Write {right}."
    return f"The ' shows who has it. Write {right}."


def _abbreviation(wrong: str, right: str) -> str:
    return f"{right} is short. It ends with a dot."


def _spacing(wrong: str, right: str) -> str:
    return f"Write two words: {right}." if " " in right else f"Write one word: {right}."


def _spelling(wrong: str, right: str) -> str:
    return f"Spell it like this: {right}."


def _homophone(wrong: str, right: str) -> str:
    return f"Here you need {right}. The word {wrong} is not the same."


def _agreement(wrong: str, right: str) -> str:
    return f"Make it fit who does it. Write {right}."


def _tense(wrong: str, right: str) -> str:
    return f"We say it like this: {right}."


def _plural(wrong: str, right: str) -> str:
    if wrong.lower() in (right.lower() + "s", right.lower() + "es"):
        return f"We say it like this: {right}."  # one of them, or a word like deer
    return f"There is more than one. Write {right}."


def _article(wrong: str, right: str) -> str:
    if not right:
        return f"You do not need {wrong} here."
    if right.lower() == "an":
        return "Use an here, as in an egg."
    if right.lower() == "a" and wrong.lower() == "an":
        return "Use a here, as in a cat."
    return f"Put {right} in front of the thing."


def _pronoun(wrong: str, right: str) -> str:
    return f"We write {right} here, not {wrong}."


def _comparison(wrong: str, right: str) -> str:
    return f"We say {right} here." if right else f"Take out {wrong}. One way to say it is enough."


def _double_negative(wrong: str, right: str) -> str:
    return "Two no words are too many. Use just one."


def _missing(wrong: str, right: str) -> str:
    return f"A word is left out. Put in {right}."


def _extra(wrong: str, right: str) -> str:
    return f"This word is too many. Take out {wrong}."


def _order(wrong: str, right: str) -> str:
    return f"Put the words like this: {right}."


def _run_on(wrong: str, right: str) -> str:
    if right.startswith(","):
        return "These are two sentences. Put a comma and a word to join them."
    return "These are two sentences. End the first one. Start the next with a capital."


_SAY: dict[str, Callable[[str, str], str]] = {
    "capital-first": _capital_first,
    "capital-i": _capital_i,
    "capital-name": _capital_name,
    "capital-extra": _capital_extra,
    "end-mark": _end_mark,
    "comma-list": _comma("There is a list here. Put a comma in it."),
    "comma-date": _comma("Put a comma in the date."),
    "comma-place": _comma("Put a comma after the town."),
    "comma-join": _comma("Two sentences are joined here. Put a comma first."),
    "comma-intro": _comma("Stop a bit here. Put a comma."),
    "quotation-marks": _quotation,
    "apostrophe-contraction": _contraction,
    "apostrophe-possessive": _possessive,
    "abbreviation": _abbreviation,
    "spacing": _spacing,
    "spelling": _spelling,
    "homophone": _homophone,
    "agreement": _agreement,
    "tense": _tense,
    "plural": _plural,
    "article": _article,
    "pronoun": _pronoun,
    "comparison": _comparison,
    "double-negative": _double_negative,
    "missing-word": _missing,
    "extra-word": _extra,
    "word-order": _order,
    "run-on": _run_on,
}
