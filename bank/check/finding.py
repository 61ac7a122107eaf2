"""What a check finds: a place, a code, one plain sentence, a suggestion, and how sure it is."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any

from bank.skill import SKILLS

WORDING = {
    "figurative": "words that do not mean what they say",
    "two-questions": "two questions in one",
    "negative-question": "a question with a hidden no",
    "no-antecedent": "a small word with nothing to point to",
    "vague-amount": "an amount that is not exact",
    "gives-answer": "a question that gives its answer away",
    "two-steps": "more than one thing to do",
}
"""The wording codes: what stops a literal reader. They are no errors; no fix teaches them."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing found in a text.

    `code` is a skill's code (`bank.skill.SKILLS`) or a wording code (`WORDING`); `start` and `end`
    are character offsets into the text; `suggestion` is what should stand there instead ("" takes
    the words out, None where there is nothing to offer); `others` are further suggestions, the
    likeliest first. A `certain` finding keeps an item a draft.
    """

    code: str
    start: int
    end: int
    message: str
    suggestion: str | None
    certain: bool
    others: tuple[str, ...] = ()

    @property
    def on_screen(self) -> str:
        """What a screen says for `certain`."""
        return "must fix" if self.certain else "please look"

    @property
    def is_error(self) -> bool:
        """Whether this is an error of language rather than a matter of wording."""
        return self.code in SKILLS

    def to_dict(self) -> dict[str, Any]:
        """The finding as plain values, for JSON."""
        return asdict(self) | {"others": list(self.others), "on_screen": self.on_screen}


def apply(text: str, finding: Finding) -> str:
    """`text` with the suggestion of `finding` in place; unchanged where it suggests nothing.

    Taking words out also takes out one of the two spaces that they leave behind.

    >>> apply("I see a a dog.", Finding("extra-word", 8, 9, "One a too many.", "", True))
    'I see a dog.'
    """
    if finding.suggestion is None:
        return text
    before, after = text[: finding.start], text[finding.end :]
    if not finding.suggestion and after[:1] == " " and before[-1:] in ("", " "):
        after = after[1:]
    return before + finding.suggestion + after
