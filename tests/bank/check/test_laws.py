"""What holds for any text."""

from __future__ import annotations

import hypothesis.strategies as st
from hypothesis import given, settings

from bank.check import apply, check_many, check_text, sensitive_themes

WORDS = st.sampled_from(
    """the a an do does did is are was were have has to too two there their they're your you're
    its it's who what where when like want not no never nobody than then more most taller of off
    I i me him them he she it they we Ben dog dogs dog's cat children childs run ran runned ate
    eated ball red blue and or but so because when if Monday june 5 2015 Texas said asked , . ? !
    " ' book hear here know new a lot alot recieve under the weather""".split()
)
TEXTS = st.one_of(st.lists(WORDS, max_size=12).map(" ".join), st.text(max_size=40))
KINDS = st.sampled_from(["question", "sentence", "topic", "sort", "passage"])


@settings(max_examples=250, deadline=None)
@given(TEXTS, KINDS)
def test_any_text_is_checked_and_every_finding_lies_in_it(text: str, kind: str) -> None:
    findings = check_text(text, kind)
    for finding in findings:
        assert 0 <= finding.start <= finding.end <= len(text)
        assert isinstance(apply(text, finding), str)
    assert findings == sorted(findings, key=lambda f: (f.start, f.end))
    sensitive_themes(text)


@settings(max_examples=20, deadline=None)
@given(st.lists(st.tuples(TEXTS, KINDS), max_size=5))
def test_checking_many_finds_what_checking_one_finds(items: list[tuple[str, str]]) -> None:
    assert list(check_many(items)) == [check_text(text, kind) for text, kind in items]


def test_sensitive_matter_is_a_theme_and_no_error() -> None:
    text = "What did your grandma do when your dog died?"
    assert {"family", "death"} <= set(sensitive_themes(text))
    assert check_text(text) == []
