"""How rules are kept and run.

A rule is a small function with a code. It says which words, tags or endings wake it, so that a
prompt of ten words does not pay for a hundred rules; rules that look at the text as a whole run
once. Where findings overlap, the surer and then the earlier-registered one stays.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable

from bank.check.finding import Finding
from bank.check.reading import Reading

Found = Finding | list[Finding] | None
WordRule = Callable[[Reading, int], Found]
TextRule = Callable[[Reading], Found]

ALL_KINDS = frozenset({"question", "sentence", "topic", "sort", "passage"})
RUNNING = ALL_KINDS - {"sort"}

by_word: dict[str, list[WordRule]] = defaultdict(list)
by_tag: dict[str, list[WordRule]] = defaultdict(list)
every_word: list[WordRule] = []
whole_text: list[tuple[frozenset[str], TextRule]] = []
RULES: list[Callable[..., Found]] = []
"""Every rule in the order in which it was registered."""


def on_words(*words: str) -> Callable[[WordRule], WordRule]:
    """Wake a rule at each of `words` (written apart by spaces, in small letters)."""

    def register(rule: WordRule) -> WordRule:
        RULES.append(rule)
        for word in dict.fromkeys(" ".join(words).split()):
            by_word[word].append(rule)
        return rule

    return register


def on_tags(tags: str) -> Callable[[WordRule], WordRule]:
    """Wake a rule at each word with one of the Penn tags `tags`."""

    def register(rule: WordRule) -> WordRule:
        RULES.append(rule)
        for tag in tags.split():
            by_tag[tag].append(rule)
        return rule

    return register


def on_every_word(rule: WordRule) -> WordRule:
    """Wake a rule at every word; only for rules that decide in one look-up."""
    RULES.append(rule)
    every_word.append(rule)
    return rule


def on_text(kinds: Iterable[str] = RUNNING) -> Callable[[TextRule], TextRule]:
    """Run a rule once on each text of these kinds."""

    def register(rule: TextRule) -> TextRule:
        RULES.append(rule)
        whole_text.append((frozenset(kinds), rule))
        return rule

    return register


def run(reading: Reading) -> list[Finding]:
    """Everything that the rules find in `reading`, in the order of the text, without overlaps."""
    found: list[Finding] = []
    if not reading.n:
        return found
    if reading.kind != "sort":
        _run_on_words(reading, found)
    for kinds, text_rule in whole_text:
        if reading.kind in kinds:
            _keep(found, text_rule(reading))
    return without_overlaps(found) if len(found) > 1 else found


def _run_on_words(reading: Reading, found: list[Finding]) -> None:
    tags = reading.tag
    for i, word in enumerate(reading.lower):
        for rule in every_word:
            _keep(found, rule(reading, i))
        if word in by_word:
            for rule in by_word[word]:
                _keep(found, rule(reading, i))
        if tags[i] in by_tag:
            for rule in by_tag[tags[i]]:
                _keep(found, rule(reading, i))


def _keep(found: list[Finding], result: Found) -> None:
    if result is None:
        return
    if isinstance(result, Finding):
        found.append(result)
    else:
        found.extend(result)


# Where two rules see the same place: a wrong word explains a wrong form, and where another rule
# knows what is wrong with a word, that it is no word is not worth saying.
_RANK = {
    "word-order": 0,
    "quotation-marks": 0,
    "run-on": 1,
    "apostrophe-contraction": 2,
    "homophone": 2,
    "spelling": 4,
    "missing-word": 5,
    "capital-first": 4,
}


def without_overlaps(found: list[Finding]) -> list[Finding]:
    """`found` in the order of the text; of two that touch the same letters the surer one stays."""
    kept: list[Finding] = []
    for finding in sorted(found, key=lambda f: (not f.certain, _RANK.get(f.code, 3))):
        if not any(_overlap(finding, other) for other in kept):
            kept.append(finding)
    return sorted(kept, key=lambda f: (f.start, f.end))


def _overlap(one: Finding, other: Finding) -> bool:
    if one.is_error != other.is_error:
        return False
    return (one.start < other.end and other.start < one.end) or (
        (one.start, one.end) == (other.start, other.end)
    )


def at(
    reading: Reading, i: int, code: str, message: str, suggestion: str | None, certain: bool = True,
    *, to: int | None = None, others: tuple[str, ...] = (),
) -> Finding:  # fmt: skip
    """A finding at word `i` (to word `to`, counted in); the suggestion takes the word's capital."""
    last = i if to is None else to
    if (
        suggestion
        and reading.words[i][0].isupper()
        and suggestion[0].islower()
        and reading.words[i] != "I"
    ):
        suggestion = suggestion[0].upper() + suggestion[1:]
    return Finding(
        code, reading.starts[i], reading.ends[last], message, suggestion, certain, others
    )
