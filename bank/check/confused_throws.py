"""threw and through."""

from __future__ import annotations

from bank.check.confused_help import wrong_word
from bank.check.engine import Found, on_words
from bank.check.grammar import (
    ADVERBS,
    AUXILIARIES,
    BE,
    DETERMINERS,
    JOINERS,
    OBJECTS,
    SUBJECTS,
    WH,
    is_noun,
    is_verb_tag,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading


@on_words("through")
def through_for_threw(r: Reading, i: int) -> Found:
    """through where threw is meant.

    >>> show("He through the ball to me. She walked through the door.")
    ['homophone: through -> threw']
    """
    if r.after(i) not in DETERMINERS | OBJECTS:
        return None
    before = r.before(i)
    if before in SUBJECTS - {"it", "you"}:
        return wrong_word(r, i, "threw")
    start = max((k for k in range(i + 1) if r.first[k]), default=0)
    alone = not any(is_verb_tag(r.tag[k]) or r.lower[k] in AUXILIARIES for k in range(start, i))
    rest = not any(r.tag[k] in ("VBD", "VBZ", "VBP", "MD") for k in range(i + 1, r.n))
    if alone and rest and before and (is_noun(before) or r.tag[i - 1] == "NNP") and i - start <= 4:
        return wrong_word(r, i, "threw", r.kind == "sentence")
    return None


@on_words("threw")
def threw_for_through(r: Reading, i: int) -> Found:
    """threw where through is meant.

    >>> show("We walked threw the tunnel. She looked threw the window.")
    ['homophone: threw -> through', 'homophone: threw -> through']
    >>> show("He turned and threw the ball. The boy threw a stick.")
    []
    """
    before, after = r.before(i), r.after(i)
    if after not in DETERMINERS | OBJECTS | {"it"} or not before or before in SUBJECTS | JOINERS:
        return None
    if before in AUXILIARIES | ADVERBS:
        return wrong_word(r, i, "through", False) if before in BE else None
    if before in _MOVES or "VBG" in verb_forms(before) and before.endswith("ing"):
        return wrong_word(r, i, "through")
    start = max((k for k in range(i + 1) if r.first[k]), default=0)
    linked = any(r.lower[k] in JOINERS | WH or r.gap[k] != " " for k in range(start, i))
    earlier = any(
        r.tag[k] in ("VBD", "VBZ", "VBP", "VB") and verb_forms(r.lower[k]) for k in range(start, i)
    )
    return wrong_word(r, i, "through") if earlier and not linked else None


_MOVES = word_set(
    "go goes went walk walks walked run runs ran ride rides rode drive drives drove look looks "
    "looked crawl crawls crawled climb climbed swim swam fly flies flew pass passed move moved "
    "come came fell peeked shone shines right halfway straight all"
)
