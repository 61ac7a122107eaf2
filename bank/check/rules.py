"""All families of rules, in the order in which they win where two find the same place."""

from __future__ import annotations

from bank.check import (  # noqa: F401  (importing a family registers its rules)
    agreement,
    answers,
    apostrophes,
    articles,
    capital_names,
    capitals,
    comma_lists,
    commas,
    confused,
    confused_numbers,
    confused_owners,
    confused_places,
    confused_throws,
    extra,
    figurative,
    forms,
    left_out,
    marks,
    missing,
    negatives,
    no_verb,
    nouns,
    openings,
    order,
    owners,
    past,
    pronouns,
    sentences,
    soundalikes,
    speech,
    spelled,
    subjects,
    too_many,
    verbless,
    verbs,
    wording,
)
from bank.check.engine import RULES, run

__all__ = ["RULES", "run"]
