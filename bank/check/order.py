"""Words in the wrong order."""

from __future__ import annotations

from bank.check.engine import Found, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    FUNCTION,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    is_verb_tag,
    verb_forms,
)
from bank.check.lexicon import lemmas, pair, word_set
from bank.check.reading import Reading


@on_text()
def words_in_the_wrong_order(r: Reading) -> Found:
    """A small word behind the word that it belongs before: dog the, ball red.

    >>> show("I ran to park the.")
    ['word-order: park the -> the park']
    >>> show("She has a ball red.")
    ['word-order: ball red -> red ball']
    """
    found: list[Finding] = []
    for i in range(1, r.n):
        if r.gap[i - 1] != " ":
            continue
        word, before = r.lower[i], r.lower[i - 1]
        after = r.after(i)
        if word in ARTICLES and _stranded(r, i):
            if is_noun(before) or "ADJ" in lemmas(before) or before in PREPOSITIONS:
                if before in AUXILIARIES:
                    continue
                found.append(_swap(r, i - 1))
        elif (
            _describes_before_article(r, i)
            or (
                word == "the"
                and "ADJ" in lemmas(before)
                and not is_noun(before)
                and before not in FUNCTION | {"far"}
                and not verb_forms(before)
                and i > 1
                and r.lower[i - 2] in PREPOSITIONS
                and after
                and is_noun(after)
            )
            or word in ("the", "a", "an")
            and r.first[i - 1]
            and _before_its_article(r, i - 1)
            or (
                word in _DESCRIBES
                and not after
                and r.tag[i - 1] == "NNS"
                and is_noun(before)
                and i > 1
                and (
                    r.lower[i - 2] in PREPOSITIONS
                    or is_verb_tag(r.tag[i - 2])
                    and r.lower[i - 2] not in _MAKES | BE
                )
            )
        ):
            found.append(_swap(r, i - 1))
        elif (
            word in _DESCRIBES
            and is_noun(before)
            and r.tag[i - 1][:1] == "N"
            and before not in _DESCRIBES
            and not after
        ):
            if (
                i > 1
                and r.lower[i - 2] in ARTICLES | POSSESSIVES
                and i > 2
                and r.near(i - 3)
                and (
                    is_verb_tag(r.tag[i - 3])
                    or verb_forms(r.lower[i - 3])
                    or r.lower[i - 3] in PREPOSITIONS
                )
                and r.lower[i - 3] not in _MAKES
                and r.lower[i - 3] not in BE
            ):
                found.append(_swap(r, i - 1))
        elif (
            word in _DESCRIBES
            and i > 1
            and r.lower[i - 2] in ARTICLES | POSSESSIVES
            and is_noun(before)
            and r.tag[i - 1][:1] == "N"
            and before not in _DESCRIBES
            and (after in AUXILIARIES - {"be"} or r.tag[i + 1 : i + 2] in (["VBD"], ["VBZ"]))
            and r.first[i - 2]
            or word in PREPOSITIONS
            and before in ARTICLES
            and after
            and (is_noun(after) or "ADJ" in lemmas(after))
            and word
            not in word_set(
                """
                after in off on up down inside outside under above past like
                over for below
                """
            )
            or word in word_set("in on at to under over for of with from")
            and before in ARTICLES
            and after
            and (is_noun(after) or "ADJ" in lemmas(after))
            and pair(word, before) > 50_000_000
        ):
            found.append(_swap(r, i - 1))
    return found


_COLORS = word_set("red blue green yellow purple black brown pink orange white gray")


@on_words(" ".join(_COLORS))
def color_behind_its_thing(r: Reading, i: int) -> Found:
    """My mom drives a car blue to work.

    >>> show("My mom drives a car blue to work.")
    ['word-order: car blue -> blue car']
    >>> show("We painted a car blue at home. She has a dress red as a rose.")
    []
    """
    if i < 3 or r.lower[i - 2] not in ("a", "an") or not r.near(i - 1) or not r.near(i):
        return None
    if not is_noun(r.lower[i - 1]) or r.lower[i - 1] in _COLORS:
        return None
    if r.lower[i - 3] in _MAKES | AUXILIARIES:
        return None
    tied = r.lower[i + 1] in ("to", "in", "on", "at", "with", "for", "and")
    return _swap(r, i - 1) if tied else None


def _describes_before_article(r: Reading, i: int) -> bool:
    """`on big a log`, `through cold the ground`: the describing word belongs behind the article."""
    before, after = r.lower[i - 1], r.after(i)
    return (
        r.lower[i] in ARTICLES
        and i > 2
        and "ADJ" in lemmas(before)
        and r.tag[i - 1] == "JJ"
        and before not in FUNCTION | word_set("far such half dark first last least general worth")
        and r.lower[i - 2] in PREPOSITIONS
        and not r.first[i - 2]
        and bool(after)
        and is_noun(after)
    )


def _before_its_article(r: Reading, i: int) -> bool:
    """`Kind the cook`, `Museum the guide`: a word that should stand behind the article."""
    word = r.lower[i]
    after = r.after(i + 1)
    if (
        is_noun(word)
        and word not in FUNCTION
        and after
        and (after in AUXILIARIES or verb_forms(after) & {"VBD", "VBZ"} and not is_noun(after))
    ):
        return True
    if (
        word in FUNCTION
        or verb_forms(word) & {"VB", "VBD", "VBG"}
        or not after
        or word
        in word_set("yesterday today tonight tomorrow half quite such many neither either both all")
    ):
        return False
    if "ADV" in lemmas(word) or r.words[i].endswith("ly"):
        return False
    describes = "ADJ" in lemmas(word) and is_noun(after)
    thing = is_noun(word) and (
        is_noun(after) or r.tag[i + 2] in ("VBZ", "VBD", "VBP", "MD") or after in AUXILIARIES
    )
    return describes or thing


_DESCRIBES = word_set(
    "red blue green yellow purple black brown pink big small tall short tiny huge hot warm wet "
    "dry soft loud happy sad tired hungry funny brave strong pretty old new clean dirty heavy "
    "round fluffy shiny"
)
_MAKES = word_set(
    "paint painted paints made make makes keep kept keeps turn turned get got color colored dye "
    "dyed getting making keeping painting leaving turning feel felt leave left find found like wash washed wipe wiped"
)


def _stranded(r: Reading, i: int) -> bool:
    """Whether an article has nothing behind it that it could belong to."""
    if i + 1 >= r.n or r.gap[i].strip():
        return r.gap[i].strip()[:1] in (".", "?", "!", ",") and r.words[i] != "A"
    after = r.lower[i + 1]
    if after in word_set("because that and but when who which so or"):
        return True
    if (
        after in PREPOSITIONS
        and after not in word_set("inside outside above past down up in off under over like after")
        or after in AUXILIARIES - {"can", "will", "might", "may", "must", "do"}
        or after in SUBJECTS - {"it"}
    ):
        return True
    return (
        r.tag[i + 1] in ("VBD", "VBZ")
        and not is_noun(after)
        and "ADJ" not in lemmas(after)
        and "VBN" not in verb_forms(after)
    )


def _swap(r: Reading, i: int) -> Finding:
    first, second = r.words[i], r.words[i + 1]
    if r.first[i]:
        first, second = first[0].lower() + first[1:], second[0].upper() + second[1:]
    return Finding(
        "word-order",
        r.starts[i],
        r.ends[i + 1],
        "These words are in the wrong order.",
        f"{second} {first}",
        True,
    )
