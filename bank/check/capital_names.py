"""Capitals of names, and capitals where none belong."""

from __future__ import annotations

from functools import cache

from bank.check import names
from bank.check.engine import ALL_KINDS, Found, at, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    FUNCTION,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set, zipf
from bank.check.reading import Reading
from bank.check.spelling.words import drops_the_g, is_word

_TITLE_WORDS = word_set(
    "mr mrs ms dr miss lake mount fort cape coach aunt uncle grandma grandpa grandmother grandfather officer captain "
    "principal president king queen prince princess mayor nurse judge sir lady saint"
)
_KIN = word_set(
    "mom dad mommy daddy grandma grandpa mother father papa mama nana granny auntie mum"
)
_PLACE_ENDS = word_set(
    "street avenue road lane river lake mountain mountains ocean sea park school elementary "
    "island bay beach county city library museum zoo canyon falls bridge hospital university "
    "drive court"
)
_ALWAYS_CAPITAL = word_set(
    "i english god internet earth sun moon mom dad grandma grandpa mommy daddy santa tv ok dvd "
    "usa us pe bc ad am pm a o x t b c d e f g h north south east west northeast northwest "
    "southeast southwest midwest bible koran"
)
_NAMED = word_set("named name's called")
_MONTH_NEAR = word_set("in on of last next every this since until by early late during")


@on_text(ALL_KINDS)
def small_name(r: Reading) -> Found:
    """A name without its capital.

    >>> show("School starts on monday.")
    ['capital-name: monday -> Monday']
    >>> show("I gave it to mr. Ruiz and to aunt Rosa in march.")
    ['capital-name: mr -> Mr', 'capital-name: aunt -> Aunt', 'capital-name: march -> March']
    """
    found = []
    for i, written in enumerate(r.words):
        if not written[0].islower() or r.kind == "sort":
            continue
        if r.first[i] and not names.is_name(r.lower[i]):
            continue
        if (
            not _may_be_a_name(r.lower[i])
            and r.before(i) not in _NAMED
            and not (i and r.lower[i - 1] in names.TITLES)
            and not (i + 1 < r.n and r.words[i + 1][0].isupper())
        ):
            continue
        verdict = _name_verdict(r, i)
        if verdict is None:
            continue
        found.append(
            at(
                r,
                i,
                "capital-first" if r.first[i] else "capital-name",
                "A sentence starts with a capital letter."
                if r.first[i]
                else "A name starts with a capital letter.",
                written[0].upper() + written[1:],
                verdict,
            )  # fmt: skip
        )
    return found


@cache
def _may_be_a_name(word: str) -> bool:
    """Whether more than the place could make `word` a name; most words can be passed over."""
    word = word.removesuffix("'s").removesuffix("'")
    return (
        names.is_name(word) or word in names.KNOWN or word in names.TITLES or word in _TITLE_WORDS
        or word in names.PERSON_NAMES or word in _STREETS or word in _PLACE_ENDS
        or word in ("march", "may", "august") or word[:-1] in names.DAYS
        or not lemmas(word) and word not in FUNCTION
    )  # fmt: skip


def _name_verdict(r: Reading, i: int) -> bool | None:
    """True where the word is surely a name, False where it may be one, None where it is none."""
    word = r.lower[i].removesuffix("'s")
    if word.endswith("'"):
        word = word[:-1]
    after_capital = i + 1 < r.n and r.words[i + 1][0].isupper() and r.words[i + 1] != "I"
    if names.is_name(word):
        return True
    if word.endswith("s") and word[:-1] in names.DAYS:
        return True
    if word in names.TITLES:
        return True if r.gap[i].strip() in (".", "") and i + 1 < r.n else None
    if (
        word in _TITLE_WORDS
        and after_capital
        and r.gap[i] == " "
        and r.before(i) not in DETERMINERS
        and not r.first[i + 1]
    ):
        return True
    before = r.before(i)
    if word in ("march", "may", "august") and before in _MONTH_NEAR - {"this", "by"} and before:
        after = r.after(i)
        if (
            before in word_set("in on last next since until every")
            and not is_noun(after)
            or after.isdigit()
        ):
            return True
        return None
    if word in ("march", "may", "august") and r.after(i).isdigit():
        return True
    if before in _NAMED and not lemmas(word) and word not in FUNCTION and before != "called":
        return True
    if (
        before in _NAMED
        and r.gap[i].strip()
        and word not in FUNCTION
        and r.tag[i] in ("NN", "JJ", "NNP", "VB")
        and before == "named"
    ):
        return True
    if (
        before.isdigit() is False
        and before
        in _TITLE_WORDS
        - {
            "coach",
            "principal",
            "president",
            "judge",
            "nurse",
            "captain",
            "king",
            "queen",
            "prince",
            "princess",
            "miss",
            "lady",
            "officer",
            "mayor",
        }
        and before in word_set("mr mrs ms dr aunt uncle")
    ):
        return (
            True
            if word not in FUNCTION
            and not verb_forms(word)
            or zipf(word) < 4
            and word not in FUNCTION
            else None
        )
    if (
        i
        and r.lower[i - 1] in names.TITLES
        and r.gap[i - 1].startswith(".")
        and word not in FUNCTION
    ):
        return True
    if (
        word in _PLACE_ENDS
        and i
        and r.words[i - 1][0].isupper()
        and not r.first[i - 1]
        and r.gap[i - 1] == " "
        and r.lower[i - 1] not in names.DAYS | names.MONTHS | names.PEOPLES
        and "'" not in r.words[i - 1]
        and r.words[i - 1] != "I"
        and word in word_set("street avenue ocean river lake road elementary canyon bay")
    ):
        return word not in ("road", "lake", "river", "bay")
    after = r.after(i)
    capital_next = bool(after) and r.words[i + 1][0].isupper()
    if capital_next and after in _PLACES and word not in FUNCTION and before in _BEFORE_PLACE:
        return True
    if word in names.PERSON_NAMES and (
        before in _SAY and not after or before == "and" and i > 1 and r.lower[i - 2] in SUBJECTS
    ):
        return True
    if (
        capital_next
        and after in _PLACES
        and (before.isdigit() or i and "," in r.gap[i - 1])
        and word not in FUNCTION
    ):
        return True
    if word in _STREETS and _behind_a_street_name(r, i):
        return r.lower[i - 2].isdigit()
    if _is_unknown_name(word) and r.tag[i] in ("NNP", "NN"):
        return False
    if (
        word not in FUNCTION
        and names.looks_like_a_name(word)
        and (
            r.tag[i] in ("NNP", "NNPS")
            or before in PREPOSITIONS
            and r.tag[i] == "NN"
            and not r.after(i)
        )
    ):
        return False
    return None


def is_word_listed(word: str) -> bool:
    return is_word(word) or drops_the_g(word)


_SAY = word_set("said asked yelled shouted cried whispered replied answered")
_STREETS = word_set("lane park farm street road avenue hill pond market bend drive court")
_PLACES = _PLACE_ENDS | _STREETS | {"town"}
_BEFORE_PLACE = PREPOSITIONS | {"the", "cross"}


def _behind_a_street_name(r: Reading, i: int) -> bool:
    """Whether a capital word that could name a street or park stands right before word `i`."""
    return (
        i > 1 and r.words[i - 1][0].isupper() and r.gap[i - 1] == " " and not r.first[i - 1]
        and "'" not in r.words[i - 1] and not names.is_name(r.lower[i - 1])
    )  # fmt: skip


def _is_unknown_name(word: str) -> bool:
    """Whether a word is met often and stands in no list: a name that few share, such as tess."""
    return (
        word.isalpha() and len(word) > 2 and zipf(word) >= 2.8 and not lemmas(word)
        and word not in FUNCTION and not is_word(word) and not drops_the_g(word)
    )  # fmt: skip


@on_text()
def capital_where_none_belongs(r: Reading) -> Found:
    """A capital on a word that is no name.

    >>> show("The Dog chased a ball.")
    ['capital-extra: Dog -> dog']
    >>> show("We met Dr. Rose at Lake Erie on May Street.")
    []
    """
    if sum(1 for w in r.words if w[0].isupper()) > max(3, 0.6 * r.n):
        return None
    found = []
    for i, written in enumerate(r.words):
        if r.first[i] or not written[0].isupper() or len(written) < 2 or not written[1:].islower():
            continue
        verdict = _extra_verdict(r, i)
        if verdict is not None:
            found.append(at_small(r, i, verdict))
    return found


def at_small(r: Reading, i: int, certain: bool) -> Finding:
    return Finding("capital-extra", r.starts[i], r.ends[i],
                   "A word that is not a name stays small inside a sentence.",
                   r.words[i][0].lower() + r.words[i][1:], certain)  # fmt: skip


def _extra_verdict(r: Reading, i: int) -> bool | None:
    word = r.lower[i]
    gap = r.gap[i - 1]
    if any(c in gap for c in '"“”‘:.!?—-(') or gap != " " and gap != ", ":
        return None
    if (
        word in _ALWAYS_CAPITAL
        or word in ("march", "may", "august")
        or names.is_name(word)
        or "'" in word
        or word.removesuffix("s") in names.DAYS
        or word in ("day", "eve")
        and r.words[i - 1][0].isupper()
        and r.lower[i - 1].endswith(("'s", "s'"))
    ):
        return None
    if word in names.KNOWN or word in names._ALSO_WORDS and r.before(i) not in DETERMINERS:
        return None
    if word == "rocky" and r.after(i) == "mountains":
        return None
    if r.gap[i][:2] in ("' ", "’ ") and i + 1 < r.n and r.words[i + 1][0].isupper():
        return None  # Presidents' Day
    if r.gap[i] == ", " and i + 1 < r.n and r.lower[i + 1] in POSSESSIVES | {"the"}:
        return None  # Pickles, our guinea pig
    if (
        gap == ", "
        and r.gap[i].startswith(",")
        or r.before(i - 1) == "name"
        and r.before(i) == "is"
    ):
        return None  # My cat, Pickles, hates water.
    own = lemmas(word)
    if word in FUNCTION or word in AUXILIARIES:
        neighbours = _capital_beside(r, i)
        return None if neighbours else True
    if r.after(i).isdigit() or r.after(i) == "of" and i + 2 < r.n and r.words[i + 2][0].isupper():
        return None
    if not own or _capital_beside(r, i) or zipf(word) < (2.4 if singular_of(word) else 3.2):
        return None
    before = r.before(i)
    if word in _OFFICES:
        return False
    if word in _KIN | _TITLE_WORDS:
        return True if before in POSSESSIVES | ARTICLES and word in _KIN else None
    if before in _NAMED or r.lower[i - 1] in names.TITLES:
        return None
    if (
        before
        in ARTICLES
        | POSSESSIVES
        | {"this", "these", "those", "some", "every", "two", "three", "many"}
        or r.tag[i - 1][:2] == "JJ"
        and before not in FUNCTION
        or before in WH
    ):
        if before in ("the",) and word in word_set(
            "queen king president capitol constitution congress bible"
        ):
            return None
        return True
    if before.endswith("'s") or before == "please" and "VB" in verb_forms(word):
        return True
    if (
        before in SUBJECTS
        and verb_forms(word) & {"VB", "VBD", "VBZ"}
        or is_noun(before)
        and r.before(i - 1) in DETERMINERS
        and r.tag[i - 1] == "NN"
    ):
        return word not in names._ALSO_WORDS
    if singular_of(word) or verb_forms(word) & {"VBG", "VBD", "VBZ"} and "NOUN" not in own:
        return True
    if (
        "ADV" in own
        and "NOUN" not in own
        or before in word_set("to can will is are very do does")
        and (before != "to" or "VB" in verb_forms(word) and "NOUN" not in own)
    ):
        return word not in names._ALSO_WORDS
    if word in names._ALSO_WORDS:
        return None
    return (
        False
        if r.tag[i] not in ("NNP", "NNPS") or "ADJ" in own and zipf(word) > 4.3 or word in _TIMES
        else None
    )


# What many write with a capital: offices and houses of state.
_OFFICES = word_set(
    """government governor minister order professor museum emperor pharaoh region empire state church
    army navy bank senate house court university college academy club league union party ministry
    department council committee office hall festival award museum museum gallery institute foundation
    association society company game games cup series season district county general reverend"""
)
_TIMES = word_set("night morning lunch dinner breakfast school home recess bed noon")


def _capital_beside(r: Reading, i: int) -> bool:
    if i + 1 < r.n and r.gap[i] == " " and r.words[i + 1][0].isupper() and r.words[i + 1] != "I":
        return True
    k = i - 1
    return (
        k >= 0
        and r.words[k][0].isupper()
        and r.words[k] not in ("I", "A", "The", "My")
        and not r.first[k]
        and r.gap[k] in (" ", ". ")
    )
