"""The spans of single errors against ERRANT (Bryant, Felice and Briscoe, 2017), a reference library.

ERRANT splits words as spaCy does ("do", "n't") and these fixes keep them whole, so both are
widened to whole words before they are compared. Where the two still differ, the reason stands here.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import pytest

from bank.edit import compare

# Why a fix may stand elsewhere than ERRANT's edits, by skill.
EXPLAINED = {
    "quotation-marks": "a speech is one fix from mark to mark; ERRANT has one edit for each mark",
    "comma-list": "the commas of one list are one fix; ERRANT has one edit for each",
    "comma-date": "the commas of one date are one fix; ERRANT has one edit for each",
    "comma-place": "the commas of one place are one fix; ERRANT has one edit for each",
    "pronoun": "`me and Ben` for `Ben and I` is one fix of the phrase; ERRANT edits its words",
    "extra-word": "of `The the` these fixes keep the capital, ERRANT puts it back",
    "word-order": "two groups that change places are one fix; ERRANT sees a word go and come",
    "homophone": "spaCy cuts `you're` in two, so that ERRANT sees `'re` come or go",
    "apostrophe-possessive": "spaCy cuts `'s` off, so that ERRANT sees it come or go",
    "abbreviation": "the dot of `Ave.` is a mark of its own for ERRANT and stands beside the word",
    "spacing": "ERRANT knows no space between a word and a mark, or no token border there",
    "agreement": "`I ain't` for `I'm not` is one fix of both words; ERRANT edits the second",
    "article": "at the start the next word's capital goes with the article; ERRANT has two edits",
}


@pytest.fixture(scope="module")
def annotator() -> Any:
    from errant.annotator import Annotator
    from errant.en import classifier, merger

    from bank.language import pipeline

    classifier.nlp = pipeline()
    return Annotator("en", pipeline(), merger, classifier)


def words_touched(text: str, spans: Iterable[tuple[int, int]]) -> set[int]:
    """The whitespace words that the spans touch; a gap touches the word it stands in or before."""
    bounds, at = [], 0
    for word in text.split():
        start = text.index(word, at)
        at = start + len(word)
        bounds.append((start, at))
    touched = set()
    for a, b in spans:
        inside = {n for n, (s, e) in enumerate(bounds) if a < e and b > s}
        touched |= inside or {n for n, (s, e) in enumerate(bounds) if s <= a <= e}
    return touched


def errant_words(annotator: Any, faulty: str, corrected: str) -> tuple[set[int], set[int]]:
    one, other = annotator.nlp(faulty), annotator.nlp(corrected)
    edits = [edit for edit in annotator.annotate(one, other) if edit.type != "noop"]

    def characters(doc: Any, a: int, b: int) -> tuple[int, int]:
        if a < b:
            return doc[a].idx, doc[b - 1].idx + len(doc[b - 1])
        return (doc[a].idx, doc[a].idx) if a < len(doc) else (len(doc.text), len(doc.text))

    return (
        words_touched(faulty, [characters(one, edit.o_start, edit.o_end) for edit in edits]),
        words_touched(corrected, [characters(other, edit.c_start, edit.c_end) for edit in edits]),
    )


def agrees(annotator: Any, faulty: str, corrected: str) -> tuple[str, bool]:
    """The skill of the one fix, and whether its words are those of ERRANT's edits.

    What is only put in is compared in the corrected version, what is only taken out in the faulty.
    """
    (fix,) = compare(faulty, corrected)
    wrong, right = errant_words(annotator, faulty, corrected)
    ours_wrong = words_touched(faulty, [(fix.wrong_start, fix.wrong_end)])
    ours_right = words_touched(corrected, [(fix.right_start, fix.right_end)])
    same = (not fix.wrong or ours_wrong == wrong) and (not fix.right or ours_right == right)
    return fix.skill, same


def test_the_spans_of_single_errors_agree_with_errant(
    annotator: Any, tuned_on: list[Any], wide: list[Any]
) -> None:
    pairs = [p for p in [*tuned_on, *wide] if len(p.skills) == 1]
    pairs = [p for p in pairs if len(compare(p.faulty, p.corrected)) == 1]
    same, others = 0, []
    for pair in pairs:
        skill, is_same = agrees(annotator, pair.faulty, pair.corrected)
        same += is_same
        if not is_same:
            others.append((skill, pair.faulty, pair.corrected))
    print(f"{same} of {len(pairs)} agree ({same / len(pairs):.3f})")
    for other in others:
        print(other)
    assert same / len(pairs) >= 0.90
    assert {skill for skill, _, _ in others} <= set(EXPLAINED)
