"""The frame of a text: what it asks for, of whom, and about what."""

from __future__ import annotations

from typing import Any

METHOD = "ask-0"
_CONTENT = frozenset({"NOUN", "VERB", "ADJ", "ADV", "PROPN", "NUM"})
_ASKING = frozenset({"who", "what", "where", "when", "why", "how", "which", "whom", "whose"})


def frame_of(text: str) -> dict[str, Any]:
    """The frame of `text`."""
    from bank.language import parse

    words = [token for token in parse(text) if token.is_alpha]
    asking = next((t.lower_ for t in words if t.lower_ in _ASKING), "")
    content = {t.lemma_.lower() for t in words if t.pos_ in _CONTENT and t.lower_ not in _ASKING}
    return {
        "method": METHOD,
        "asks": asking,
        "not": any(t.dep_ == "neg" for t in parse(text)),
        "content": sorted(content),
    }
