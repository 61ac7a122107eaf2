"""Each rule's example, run; the forms the rules know, against other libraries."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import pytest

import bank.edit
from bank.edit import Fix, compare
from bank.edit.rules_commas import COMMAS
from bank.edit.rules_gaps import LEFT_OUT, TOO_MANY
from bank.edit.rules_words import EXCHANGED

MODULES = [name for _, name, _ in pkgutil.walk_packages(bank.edit.__path__, prefix="bank.edit.")]


def skills(faulty: str, corrected: str) -> list[str]:
    return [fix.skill for fix in compare(faulty, corrected)]


def fixes(faulty: str, corrected: str) -> list[Fix]:
    return compare(faulty, corrected)


@pytest.mark.parametrize("name", MODULES)
def test_the_examples_in_the_docstrings_hold(name: str) -> None:
    module = importlib.import_module(name)
    result = doctest.testmod(module, extraglobs={"skills": skills, "fixes": fixes})
    assert result.failed == 0


@pytest.mark.parametrize(
    "rule", [*EXCHANGED, *LEFT_OUT, *TOO_MANY, *COMMAS], ids=lambda r: r.__name__
)
def test_every_rule_has_an_example(rule: object) -> None:
    assert ">>>" in (rule.__doc__ or "")


# Irregular forms by lemminflect (Jascob 2019), which the rules do not look up by hand.
@pytest.mark.parametrize(
    ("lemma", "tag"),
    [(lemma, tag) for lemma in "go bring eat write swim".split() for tag in ("VBD", "VBN")],
)
def test_a_standard_form_is_never_taken_for_a_child_s_form(lemma: str, tag: str) -> None:
    from bank.edit.lexicon import child_verb_forms
    from bank.language import inflections

    assert not child_verb_forms(lemma) & set(inflections(lemma, tag))


@pytest.mark.parametrize("noun", "child foot mouse tooth goose sheep wolf leaf fox baby".split())
def test_a_standard_plural_is_never_taken_for_a_child_s_plural(noun: str) -> None:
    from bank.edit.lexicon import child_plurals
    from bank.language import inflections

    assert not child_plurals(noun) & set(inflections(noun, "NNS"))
