"""What was made sure of for the sets of a day: from what the bank knows to the proof's own values."""

from __future__ import annotations

from collections.abc import Sequence

from bank.classroom_days import GivenView, SetView
from bank.learner import Learner
from bank.page.proof import ProofItem
from bank.skill import SKILLS


def proof_items(sets: Sequence[SetView]) -> list[ProofItem]:
    """One for each item of each set, in their order."""
    return [_proof_item(part, one.learner) for one in sets for part in one.given]


def _proof_item(part: GivenView, learner: Learner) -> ProofItem:
    errors = [one for one in part.findings if one["code"] in SKILLS]
    wording = [one for one in part.findings if one["code"] not in SKILLS]
    held = {
        "new": not part.why.get("last_seen"),
        "not-too-hard": part.grade <= learner.band.high,
        "no-error": not any(one["certain"] for one in errors),
        "plain": not any(one["certain"] for one in wording),
        "no-avoided-theme": not set(part.themes) & set(learner.avoid),
    }
    return ProofItem(
        part.kind,
        part.text,
        (learner.code,),
        frozenset(code for code, holds in held.items() if holds),
        part.low,
        part.high,
        tuple(one["message"] for one in part.findings if not one["certain"]),
        f"on {part.why['last_seen']} by {learner.code}" if part.why.get("last_seen") else "",
    )
