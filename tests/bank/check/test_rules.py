"""Every rule shows in its docstring what it finds, and the example holds."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import pytest

import bank.check

MODULES = sorted(
    module.name for module in pkgutil.walk_packages(bank.check.__path__, prefix="bank.check.")
)


@pytest.mark.parametrize("name", MODULES)
def test_the_examples_hold(name: str) -> None:
    outcome = doctest.testmod(
        importlib.import_module(name), extraglobs={"show": bank.check.show}, verbose=False
    )
    assert outcome.failed == 0


def test_every_rule_has_an_example() -> None:
    from bank.check.rules import RULES

    assert [rule.__name__ for rule in RULES if ">>> show(" not in (rule.__doc__ or "")] == []
