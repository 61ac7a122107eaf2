"""Words that must never stand on a learner's page, not even by misspelling.

Kept turned by thirteen letters, so that this file can be opened in a classroom. From memory.
"""

from __future__ import annotations

import codecs

# Rude wherever they stand in a word.
_TURNED_INSIDE = "shpx fuvg phag ovgpu cvff onfgneq fcnfgvp ergneq"
# Rude or unkind as a whole word: "button" is neither.
_TURNED_WHOLE = (
    "gjng qvpx pbpx cbbc nff ohgg ohggf sneg gvg gvgf obbo frk cbea jnax cevpx fyhg juber anmv snt avt "
    "ergnqr qhzo fghcvq vqvbg zbeba ungr xvyy qrnq qvr uryy qnza penc ubr sng htyl ybfre"
)


def _turn_back(words: str) -> tuple[str, ...]:
    return tuple(codecs.decode(words, "rot13").split())


_INSIDE, _WHOLE = _turn_back(_TURNED_INSIDE), frozenset(_turn_back(_TURNED_WHOLE))


def is_rude(text: str) -> bool:
    """Whether `text` is, holds or sounds near a rude or unkind word.

    >>> is_rude("freind"), is_rude("button"), is_rude("fuk")
    (False, False, True)
    """
    low = text.lower()
    plain = low.replace("ck", "k").replace("ph", "f").replace("c", "k")
    if low in _WHOLE or any(stem in low for stem in _INSIDE):
        return True
    return any(stem.replace("ck", "k").replace("c", "k") == plain for stem in (*_INSIDE, *_WHOLE))
