import pytest

from bank.skill import SKILLS, skill


def test_every_skill_has_a_name_and_a_rule_and_its_own_code() -> None:
    assert len(SKILLS) == 28
    for code, one in SKILLS.items():
        assert code == one.code
        assert one.name and one.rule


def test_a_near_code_is_offered_for_one_that_is_none() -> None:
    with pytest.raises(ValueError, match="did you mean spelling"):
        skill("speling")
