"""Re-anchoring the scale to a specialist's judgement, by paired comparisons."""

from __future__ import annotations

from math import log
from random import Random

import numpy as np
import pytest
from scipy.optimize import minimize

from bank.level import ear, parts_of
from bank.level.ear import Answer, Ear, Heard


def prompts(count: int = 60, seed: int = 4) -> list[Heard]:
    random = Random(seed)
    made = []
    for number in range(count):
        words, length = random.uniform(0, 4), random.uniform(0, 3)
        made.append(Heard(f"p{number}", words + length, {"words": words, "length": length}))
    return made


class Specialist:
    """One who minds hard words half as much again as the computed level, and length less."""

    def __init__(self, seed: int, surety: float = 0.6) -> None:
        self.random, self.surety = Random(seed), surety

    def strength(self, one: Heard) -> float:
        return one.grade + 0.5 * one.parts["words"] - 0.5 * one.parts["length"]

    def judges(self, first: Heard, second: Heard) -> Answer:
        chance = ear.chance_harder(self.strength(first), self.strength(second), self.surety)
        pair = (first.key, second.key)
        return Answer(*pair) if self.random.random() < chance else Answer(*reversed(pair))


def interview(heard: list[Heard], who: Specialist, answers: int) -> list[Answer]:
    by_key = {one.key: one for one in heard}
    given: list[Answer] = []
    for _ in range(answers):
        pair = ear.next_pair(heard, given)
        assert pair is not None
        given.append(who.judges(by_key[pair[0]], by_key[pair[1]]))
    return given


def test_two_prompts_come_apart_by_the_log_odds_of_their_wins():
    # Outside check: with two items and no prior the model has the closed form log(wins/losses).
    answers = [Answer("a", "b")] * 7 + [Answer("b", "a")] * 3
    found = ear.strengths({"a": 2.0, "b": 2.0}, answers, spread=1e4, step=1.0)
    assert found["a"] - found["b"] == pytest.approx(log(7 / 3), abs=1e-4)
    assert found["a"] + found["b"] == pytest.approx(4.0)


def test_strengths_are_where_a_general_optimizer_finds_the_posteriors_summit():
    # Outside check: scipy's BFGS on the same posterior.
    heard = prompts(8)
    answers = interview(heard, Specialist(1), 20)
    priors = {one.key: one.grade for one in heard}
    keys = list(priors)

    def less_likely(values: np.ndarray) -> float:
        at = dict(zip(keys, values, strict=True))
        total = sum(((at[key] - priors[key]) / 0.5) ** 2 / 2 for key in keys)
        for one in answers:
            total -= log(ear.chance_harder(at[one.harder], at[one.easier]))
        return total

    expected = minimize(less_likely, np.array(list(priors.values())), method="BFGS").x
    found = ear.strengths(priors, answers)
    assert [found[key] for key in keys] == pytest.approx(list(expected), abs=1e-3)


def test_after_thirty_answers_her_scale_orders_unseen_pairs_more_as_she_does():
    gains = []
    for seed in range(6):
        heard, who = prompts(seed=seed), Specialist(seed)
        answers = interview(heard, who, ear.ENOUGH_ANSWERS)
        learnt = ear.fit(heard, answers)
        sure = Specialist(seed, surety=0.01)
        random = Random(seed + 100)
        fresh = [sure.judges(*random.sample(heard, 2)) for _ in range(300)]
        gains.append(ear.agreement(heard, fresh, learnt) - ear.agreement(heard, fresh))
    assert min(gains) > -0.02
    assert sum(gains) / len(gains) > 0.03


def test_the_answers_kept_aside_are_not_learnt_from():
    answers = [Answer(f"a{number}", f"b{number}") for number in range(30)]
    learnt_from, aside = ear.held_aside(answers)
    assert len(aside) == 10 and not set(aside) & set(learnt_from)
    assert {*aside, *learnt_from} == set(answers)


def test_no_pair_is_asked_twice_and_the_asking_ends():
    heard = prompts(4)
    given: list[Answer] = []
    while pair := ear.next_pair(heard, given):
        given.append(Answer(*pair))
    assert len({frozenset((one.harder, one.easier)) for one in given}) == len(given) == 6


def test_the_first_pairs_are_of_near_levels():
    heard = prompts(200)
    by_key = {one.key: one for one in heard}
    first, second = ear.next_pair(heard, [])
    assert abs(by_key[first].grade - by_key[second].grade) < 1.0


def test_without_answers_the_scale_is_the_computed_one():
    heard = prompts(5)
    nothing = ear.fit(heard, [])
    assert [nothing.grade(one) for one in heard] == [one.grade for one in heard]


def test_her_scale_survives_json():
    heard = prompts(10)
    learnt = ear.fit(heard, interview(heard, Specialist(2), 12))
    assert Ear.from_dict(learnt.to_dict()) == learnt


def test_the_parts_of_a_text_say_which_ingredient_brings_its_level():
    hard_words = parts_of("The vile ruse irked me.", "sentence")
    long_text = parts_of("I see the dog and the cat and the big red ball in the sun.", "sentence")
    assert hard_words["words"] > long_text["words"]
    assert hard_words["length"] < long_text["length"]
