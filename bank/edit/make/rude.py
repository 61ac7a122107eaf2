"""Words that must never stand on a learner's page, not even by misspelling.

Kept turned by thirteen letters, so that this file can be opened in a classroom. From memory.
"""

from __future__ import annotations

import codecs

_TURNED = (
    "shpx fuvg phag gjng qvpx pbpx cvff cbbc nff ohgg sneg gvgf obbo frk cbea jnax cevpx fyhg "
    "juber ovgpu onfgneq anmv snt avt fcnfgvp ergneq ergnqr qhzo fghcvq vqvbg zbeba ungr xvyy "
    "qrnq qvr uryy qnza penc ubr"
)
_STEMS = tuple(codecs.decode(word, "rot13") for word in _TURNED.split())
_WHOLE = frozenset(word for word in _STEMS if len(word) <= 3)
_INSIDE = tuple(word for word in _STEMS if len(word) > 3)


def is_rude(text: str) -> bool:
    """Whether `text` is, holds or sounds near a rude or unkind word.

    >>> is_rude("freind")
    False
    """
    low = text.lower()
    plain = low.replace("ck", "k").replace("ph", "f").replace("c", "k")
    return (
        low in _WHOLE
        or any(stem in low for stem in _INSIDE)
        or any(stem.replace("ck", "k").replace("c", "k") == plain for stem in _STEMS)
    )
