"""Forms of verbs and adjectives that the rewrites need: *lend*, *lends*, *lent*; *slower*, *slowest*."""

from __future__ import annotations

from functools import lru_cache

OF_AUX = {"did": "VBD", "do": "VBP", "does": "VBZ", "was": "VBD", "were": "VBD"}
_COMPARED = {"good": ("better", "best"), "bad": ("worse", "worst"), "much": ("more", "most")}
# Adjectives of which the one of two has more where the other has less.
OPPOSITE_MEASURES = {
    **{a: b for pair in (
        "big small", "large small", "tall short", "long short", "heavy light", "fast slow",
        "quick slow", "loud quiet", "noisy quiet", "old young", "hot cold", "warm cool",
        "hard soft", "difficult easy", "strong weak", "high low", "wide narrow", "thick thin",
        "deep shallow", "good bad", "bright dark", "rich poor", "expensive cheap", "early late",
        "rough smooth", "clean dirty", "safe dangerous", "far near", "happy sad", "wet dry",
        "sweet sour", "full empty", "new old", "smart silly", "calm excited", "common rare",
    ) for a, b in (pair.split(), pair.split()[::-1])},
    "small": "big", "short": "tall", "slow": "fast", "quiet": "loud", "old": "young",
    "easy": "hard", "tiny": "big", "costly": "cheap", "speedy": "slow", "cheap": "expensive",
}  # fmt: skip
# Parts of the patterns of rewrites: who or what is asked for, a side, and a time or place at the end.
WH = r"(?:who|whom|what|(?:what|which|whose) (?!do\b|does\b|did\b|can\b|is\b)[\w'-]+(?: [\w'-]+){0,2}?)"
TAIL = (
    r"(?P<tail>(?: (?:last|this|next|every|yesterday|today|tomorrow|at|on|when|while|because|during|if|"
    r"in (?!front))\b.*)?)$"
)
SIDE = r"(?:[\w'-]+ ){0,5}?[\w'-]+"
_KEPT = 1 << 12
_TO_OBJECT = {"i": "me", "we": "us", "he": "him", "she": "her", "they": "them"}
_TO_SUBJECT = {new: old for old, new in _TO_OBJECT.items()}


@lru_cache(maxsize=_KEPT)
def verb_form(lemma: str, tag: str) -> str:
    """The form of a verb under a Penn Treebank tag: `verb_form("sit", "VBZ")` is "sits"."""
    from bank.language import inflections

    return next(iter(inflections(lemma, tag)), lemma) if tag not in ("VB", "VBP") else lemma


@lru_cache(maxsize=_KEPT)
def verb_lemma(form: str) -> str:
    """The verb of which `form` is a form ("" for a word that is none)."""
    import lemminflect

    return next(iter(lemminflect.getAllLemmas(form, upos="VERB").get("VERB", ())), "")


@lru_cache(maxsize=_KEPT)
def participle_of(form: str) -> str:
    """The verb of which `form` is the past participle, or "".

    >>> participle_of("eaten"), participle_of("eat")
    ('eat', '')
    """
    from bank.language import inflections

    verb = verb_lemma(form)
    return verb if verb not in ("", "be") and form in inflections(verb, "VBN") else ""


@lru_cache(maxsize=_KEPT)
def compared(adjective: str, tag: str) -> str:
    """The comparative (JJR) or superlative (JJS) of an adjective."""
    if adjective in _COMPARED:
        return _COMPARED[adjective][tag == "JJS"]
    if len(adjective) > 7 or adjective in ("careful", "patient", "honest", "polite"):
        return f"{'most' if tag == 'JJS' else 'more'} {adjective}"
    from bank.language import inflections

    end = "est" if tag == "JJS" else "er"
    forms = [form for form in inflections(adjective, tag) if form.endswith(end)]
    return forms[0] if forms else adjective + end


@lru_cache(maxsize=1)
def bases() -> dict[str, str]:
    """Comparatives and superlatives of measures with their base: *slower* and *slowest* with *slow*."""
    own = ("good", "bad")  # "best" is an idea of its own
    adjectives = [a for a in OPPOSITE_MEASURES if len(a) <= 7 and a not in own]
    return {compared(a, tag): a for a in adjectives for tag in ("JJR", "JJS")} | {"fewer": "few"}


def as_object(phrase: str) -> str:
    """A pronoun in the form it has as an object."""
    return _TO_OBJECT.get(phrase, phrase)


def as_subject(phrase: str) -> str:
    """A pronoun in the form it has as a subject."""
    return _TO_SUBJECT.get(phrase, phrase)


def do_of(doer: str) -> str:
    """The form of *do* that goes with a doer."""
    last = doer.split()[-1]
    many = last.endswith("s") and not last.endswith("ss")
    many = many or doer in ("you", "we", "they", "i", "people", "children") or " and " in doer
    return "do" if many else "does"


def who_asked(wh: str) -> str:
    """What is asked for, as the subject of its verb."""
    return "who" if wh == "whom" else wh
