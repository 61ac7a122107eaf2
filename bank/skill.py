"""The skills: what sort of repair a fix is.

Each skill has a code, a short name that a learner can read, a one-line rule for the key, and the
place in a set of language standards that teaches it. The standards are a table that a school can
exchange for its own; the one here is the Common Core State Standards (Language strand), from memory.
"""

from __future__ import annotations

from dataclasses import dataclass

STANDARDS_SOURCE = "Common Core State Standards, Language strand (from memory)"


@dataclass(frozen=True, slots=True)
class Skill:
    """One sort of repair.

    `code` is stable and used everywhere; `name` is short and readable by a learner; `rule` is one
    plain line for the answer key; `standards` are the places in the language standards, from memory.
    """

    code: str
    name: str
    rule: str
    standards: tuple[str, ...] = ()


_TABLE = (
    Skill(
        "capital-first", "first capital", "A sentence starts with a capital letter.", ("L.K.2.a",)
    ),
    Skill("capital-i", "capital I", "The word I is always a capital letter.", ("L.K.2.a",)),
    Skill(
        "capital-name",
        "capital for a name",
        "Names of people, places, days and months start with a capital letter.",
        ("L.1.2.a", "L.2.2.a"),
    ),
    Skill(
        "capital-extra",
        "too many capitals",
        "A word that is not a name stays small inside a sentence.",
        ("L.K.2.a",),
    ),
    Skill("end-mark", "end mark", "A sentence ends with . or ? or !", ("L.K.2.b", "L.1.2.b")),
    Skill("comma-list", "commas in a list", "Put commas between things in a list.", ("L.1.2.c",)),
    Skill(
        "comma-date", "comma in a date", "Put a comma between the day and the year.", ("L.1.2.c",)
    ),
    Skill(
        "comma-place",
        "comma in a place",
        "Put a comma between the town and the state.",
        ("L.3.2.b",),
    ),
    Skill(
        "comma-join",
        "comma before and, but, so",
        "Put a comma before the word that joins two sentences.",
        ("L.4.2.c",),
    ),
    Skill(
        "comma-intro",
        "comma after the start",
        "Put a comma after the words that come before the main part.",
        ("L.5.2.b",),
    ),
    Skill(
        "quotation-marks",
        "talking marks",
        "Put talking marks around the words that someone says.",
        ("L.3.2.c",),
    ),
    Skill(
        "apostrophe-contraction",
        "short form with '",
        "Put ' where letters were left out.",
        ("L.2.2.c",),
    ),
    Skill(
        "apostrophe-possessive",
        "' for who owns it",
        "Put ' and s to show who owns it.",
        ("L.2.2.c", "L.3.2.d"),
    ),
    Skill("abbreviation", "short title", "A short title like Dr. ends with a dot."),
    Skill("spacing", "spaces", "Some words are one word and some are two.", ("L.2.2.d",)),
    Skill("spelling", "spelling", "Spell the word the right way.", ("L.1.2.d", "L.2.2.d")),
    Skill(
        "homophone",
        "sounds the same",
        "Some words sound the same. Pick the one that means what you want.",
        ("L.4.1.g",),
    ),
    Skill(
        "agreement",
        "who and what they do",
        "The action word must match who does it.",
        ("L.1.1.c", "L.3.1.f"),
    ),
    Skill("tense", "when it is", "The action word tells when it is.", ("L.1.1.e", "L.2.1.d")),
    Skill("plural", "more than one", "Use the word for more than one.", ("L.1.1.c", "L.2.1.b")),
    Skill("article", "a, an, the", "Use a, an or the before a thing.", ("L.1.1.h",)),
    Skill(
        "pronoun",
        "I, me, he, him",
        "Use the small word that fits, like I or me.",
        ("L.1.1.d", "L.3.1.f"),
    ),
    Skill(
        "comparison", "big, bigger, biggest", "Use er for two and est for the most.", ("L.3.1.g",)
    ),
    Skill("double-negative", "one no", "Use only one no word."),
    Skill("missing-word", "missing word", "A word was left out.", ("L.1.1.j",)),
    Skill("extra-word", "extra word", "Take out the word that is too many.", ("L.1.1.j",)),
    Skill("word-order", "word order", "Put the words in order.", ("L.1.1.j",)),
    Skill("run-on", "two sentences", "These are two sentences. End the first one.", ("L.4.1.f",)),
)

SKILLS: dict[str, Skill] = {skill.code: skill for skill in _TABLE}


def skill(code: str) -> Skill:
    """The skill with this code; `ValueError` names the code and a near one where there is one."""
    try:
        return SKILLS[code]
    except KeyError:
        import difflib

        near = difflib.get_close_matches(code, SKILLS, n=1)
        hint = f"; did you mean {near[0]}?" if near else ""
        raise ValueError(f"{code!r} is not a skill{hint}") from None
