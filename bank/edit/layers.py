"""A word taken apart: capital, dot, apostrophe and letters can each be an error of their own."""

from __future__ import annotations

from bank.edit import lexicon
from bank.edit.look import Change, Sentence, Verdict
from bank.edit.pieces import Draft, Piece
from bank.edit.rules_words import EXCHANGED, no_word_too_many
from bank.edit.sets import PRONOUNS
from bank.edit.tokens import straight
from bank.edit.wordset import word_set

# Words that sound the same though an apostrophe is in one of them.
_SOUND_ALIKE = frozenset(
    frozenset(pair.split())
    for pair in (
        "your you're",
        "yore you're",
        "their they're",
        "there they're",
        "theirs there's",
        "whose who's",
        "its it's",
        "aisle i'll",
        "isle i'll",
        "heel he'll",
        "weave we've",
        "wheel we'll",
        "eye i",
    )
)
_CONTRACTED = ("n't", "'m", "'re", "'ve", "'ll", "'d")
_WITH_IS = PRONOUNS | word_set(
    "that there here what where when how why let who this everyone everybody someone"
)


def name_word(piece: Piece, wrong: str, right: str, sentence: Sentence) -> None:
    """Give each layer of one word for another the draft that repairs it."""
    wrong, right = straight(wrong), straight(right)
    j = piece.j0
    doubled_no = no_word_too_many(Change(wrong.lower(), right.lower(), piece.i0, j, sentence))
    if doubled_no is not None and "'" in wrong + right:
        _claim_whole(piece, doubled_no)
        return
    if wrong.lower() == right.lower() and wrong[1:] != right[1:]:
        # TV, DC, bOOk: not only the first letter.
        is_more = _capitals(right) > _capitals(wrong)
        skill = capital_skill(wrong, right, j, sentence) if is_more else "capital-extra"
        _claim_whole(piece, Verdict(skill))
        return
    if _capital_differs(wrong, right):
        skill = capital_skill(wrong, right, j, sentence)
        if skill == "capital-first" and sentence.is_name(j) and piece.i0 > j == 0:
            skill = "capital-name"
        piece.claim(Draft(skill), "capital")
    w, r = wrong.lower(), right.lower()
    if "." in r.rstrip(".") and w.replace(".", "") == r.replace(".", ""):
        _claim_whole(piece, Verdict("abbreviation"))
        return
    if r.endswith(".") != w.endswith("."):
        piece.claim(Draft("abbreviation"), "dot")
    w, r = w.rstrip("."), r.rstrip(".")
    if w == r:
        return
    if frozenset((w, r)) in _SOUND_ALIKE and not _is_contraction_left_off(w, r):
        piece.claim(Draft("homophone"), "letters")
        piece.layers["apostrophe"] = piece.layers["letters"]
        return
    w_bare, r_bare = w.replace("'", ""), r.replace("'", "")
    if w_bare.replace("-", "") == r_bare.replace("-", "") and ("-" in w) != ("-" in r):
        _claim_whole(piece, Verdict("spacing"))
        return
    if w_bare == r_bare:
        verdict = apostrophe_skill(w, r, j, sentence)
        piece.claim(Draft(verdict.skill, verdict.sure), "apostrophe")
        return
    if "'" in r and (verdict_or_none := _ending_left_off(w, r, j, sentence)) is not None:
        draft = Draft(verdict_or_none.skill, verdict_or_none.sure)
        piece.claim(draft, "letters")
        piece.claim(draft, "apostrophe")
        return
    if _tail(w) != _tail(r):
        verdict = apostrophe_skill(w, r, j, sentence)
        if "'" in r and not w_bare.endswith(r_bare[-1]) and lexicon.closeness(w_bare, r_bare) < 0.5:
            _claim_letters(piece, Verdict("homophone", sure=False), both=True)
            return
        piece.claim(Draft(verdict.skill, verdict.sure), "apostrophe")
    _claim_letters(piece, name_letters(w, r, piece.i0, j, sentence), both=False)


def _capital_differs(wrong: str, right: str) -> bool:
    if "I" in (wrong, right) and wrong.lower() != right.lower():
        return False
    both = wrong[0].isalpha() and right[0].isalpha()
    return both and wrong[0].isupper() != right[0].isupper()


def _is_contraction_left_off(w: str, r: str) -> bool:
    return w == "its" and r == "it's"


def _claim_whole(piece: Piece, verdict: Verdict) -> None:
    piece.layers.pop("capital", None)
    piece.claim(Draft(verdict.skill, verdict.sure))


def _claim_letters(piece: Piece, verdict: Verdict, both: bool) -> None:
    draft = Draft(verdict.skill, verdict.sure)
    piece.claim(draft, "letters")
    if both:
        piece.claim(draft, "apostrophe")


def _capitals(text: str) -> int:
    return sum(letter.isupper() for letter in text)


def _tail(word: str) -> int:
    """How many letters follow the last apostrophe, or -1 without one."""
    at = word.rfind("'")
    return len(word) - at - 1 if at >= 0 else -1


def capital_skill(wrong: str, right: str, j: int, sentence: Sentence) -> str:
    """Which capital it is: of the pronoun I, of a first word, of a name, or one too many.

    The pronoun I needs its capital wherever it stands, so at the start it stays `capital-i`.
    """
    if not right[0].isupper():
        return "capital-extra"
    if right == "I" or right.startswith("I'"):
        return "capital-i"
    return "capital-first" if j in sentence.starts else "capital-name"


def is_contraction(right: str, j: int, sentence: Sentence) -> bool:
    """Whether the apostrophe of `right` stands for letters left out, and not for an owner."""
    if right.endswith(_CONTRACTED) or right.startswith("o'"):
        return True
    if not right.endswith("'s"):
        return not right.endswith("s'")
    if right[:-2] in _WITH_IS and right[:-2] not in ("who", "everyone", "everybody", "someone"):
        return True
    last = sentence.last_word(j)
    return last is not None and last.tag_ in ("VBZ", "MD", "VBD", "VBP", "PRP")


def apostrophe_skill(w: str, r: str, j: int, sentence: Sentence) -> Verdict:
    """Which skill an apostrophe belongs to that is missing, misplaced or too many."""
    if "'" in r:
        is_short = is_contraction(r, j, sentence)
        return Verdict("apostrophe-contraction" if is_short else "apostrophe-possessive")
    if w.endswith(_CONTRACTED):
        return Verdict("apostrophe-contraction")
    return Verdict("apostrophe-possessive")


def _ending_left_off(w: str, r: str, j: int, sentence: Sentence) -> Verdict | None:
    """`the dog tail` for `the dog's tail`, `he going` for `he's going`."""
    stem = r[: r.rfind("'")]
    plain = r.replace("'", "")
    if "'" in w or w not in (stem, stem.removesuffix("s"), plain):
        return None
    if is_contraction(r, j, sentence):
        return Verdict("apostrophe-contraction", sure=False)
    return Verdict("apostrophe-possessive")


_STEM_ENDS = ("n't", "'s", "'re", "'ll", "'ve", "'d", "'m")


def name_letters(w: str, r: str, i: int, j: int, sentence: Sentence) -> Verdict:
    """The first rule that knows why these letters stand for those."""
    ending = next((e for e in _STEM_ENDS if r.endswith(e)), "")
    w_core, r_core = w.replace("'", ""), r.replace("'", "")
    tail = ending.replace("'", "")
    if ending and w_core.endswith(tail):
        w_core, r_core = w_core.removesuffix(tail), r_core.removesuffix(tail)
    change = Change(w_core, r_core, i, j, sentence)
    for rule in EXCHANGED:
        verdict = rule(change)
        if verdict is not None:
            return verdict
    raise AssertionError("the last rule always answers")
