"""Where, were and wear; then and than."""

from __future__ import annotations

from bank.check.confused_help import wrong_word
from bank.check.engine import Found, on_words
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    FUNCTION,
    MANY,
    MODALS,
    POSSESSIVES,
    SUBJECTS,
    is_noun,
    is_verb_tag,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

_COMPARES = word_set(
    "more less rather other fewer better worse older younger elder farther further sooner later "
    "faster"
)


def compares(r: Reading, i: int) -> bool:
    """Whether word `i` says more or less of something: taller, better, rather."""
    word = r.lower[i]
    return (
        word in _COMPARES
        or r.tag[i] in ("JJR", "RBR")
        or word.endswith("er")
        and len(word) > 4
        and bool(set(lemmas(word).get("ADJ", ())) - {word})
    )


@on_words("then")
def then_for_than(r: Reading, i: int) -> Found:
    """then where than is meant.

    >>> show("She is taller then me.")
    ['homophone: then -> than']
    >>> show("First we ate more, and then we slept.")
    []
    """
    if i == 0 or r.gap[i - 1] != " ":
        return None
    for k in range(i - 1, max(-1, i - 4), -1):
        if r.gap[k] != " " or r.lower[k] in ("and", "but", "so"):
            return None
        if compares(r, k):
            if k < i - 1 and (
                r.lower[k] not in word_set("more less fewer rather other better bigger")
                or is_verb_tag(r.tag[i - 1])
                and r.lower[k] != "rather"
            ):
                return None
            if r.lower[k] == "later":
                return None
            return wrong_word(r, i, "than")
    return None


@on_words("than")
def than_for_then(r: Reading, i: int) -> Found:
    """than where then is meant.

    >>> show("We ate, and than we played.")
    ['homophone: than -> then']
    """
    before = r.before(i)
    if (
        r.first[i]
        or before in word_set("and but since back until by now")
        or i
        and "," in r.gap[i - 1]
    ):
        if (
            any(compares(r, k) for k in range(max(0, i - 5), i))
            and before not in ("and", "but", "since")
            and not r.first[i]
        ):
            return None
        return wrong_word(r, i, "then")
    if "ADJ" in lemmas(before) or "ADV" in lemmas(before):
        return None
    if not any(compares(r, k) or r.lower[k] in ("different", "no", "as") for k in range(i)):
        return wrong_word(r, i, "then", False)
    return None


@on_words("were")
def were_for_where(r: Reading, i: int) -> Found:
    """were where where or we're is meant.

    >>> show("Were do you live?")
    ['homophone: Were -> Where']
    """
    after = r.after(i)
    asks = after in (AUXILIARIES - {"be", "been", "being"})
    if asks and (r.first[i] or r.before(i) in word_set("know see tell remember guess and")):
        return wrong_word(r, i, "where")
    before = r.before(i)
    if (
        before
        in word_set(
            """
            know knows remember forgot place places see find me from exactly house
            park wonder
            """
        )
        and after in SUBJECTS | ARTICLES | POSSESSIVES
    ):
        if before in ("me",) and i > 1 and r.lower[i - 2] == "and":
            return None
        return wrong_word(r, i, "where", before not in word_set("place house park see from places"))
    return None


@on_words("where wear ware")
def where_for_were(r: Reading, i: int) -> Found:
    """where or wear, and were, one for the other.

    >>> show("We where late for the bus. Wear is my hat? I will where a coat.")
    ['homophone: where -> were', 'homophone: Wear -> Where', 'homophone: where -> wear']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "ware":
        return None
    if (
        word == "where"
        and r.first[i]
        and after in ("you", "we", "they")
        and r.text.rstrip().endswith("?")
    ):
        j = i + 2
        if j < r.n and (
            r.lower[j] in word_set("at in on with there here")
            or "ADJ" in lemmas(r.lower[j])
            and not verb_forms(r.lower[j])
        ):
            return wrong_word(r, i, "were", r.lower[j] != "there")
    if word == "wear":
        if after in AUXILIARIES and (r.first[i] or before in ("know", "and", "tell", "see")):
            return wrong_word(r, i, "where")
        if (
            before in word_set("know knows remember forgot place find see wonder tell")
            and after in SUBJECTS | ARTICLES | POSSESSIVES
        ):
            return wrong_word(r, i, "where")
        if before in ("they", "we", "you") and (
            "ADJ" in lemmas(after)
            and not is_noun(r.after(i + 1))
            and after not in FUNCTION
            or "VBG" in verb_forms(after)
        ):
            return wrong_word(r, i, "were")
        return None
    if (
        before in MODALS
        or before in word_set("to didn't don't can't won't always let's doesn't")
        and after in DETERMINERS | POSSESSIVES
    ):
        if before in ("to", "can", "will", "should") and after in SUBJECTS:
            return None
        return wrong_word(r, i, "wear", after in DETERMINERS | POSSESSIVES)
    if before in ("we", "they", "you") and not r.first[i]:
        if after in SUBJECTS or is_noun(after) and r.tag[i + 1][:1] == "N" and False:
            return None
        alone = not any(r.tag[k] in ("VBD", "VBZ", "VBP", "MD") for k in range(i + 1, r.n))
        if r.first[i - 1] and after in DETERMINERS and alone:
            return wrong_word(r, i, "were")
        if after in DETERMINERS or after in word_set("to it's he's she's they're i'm"):
            return None
        return wrong_word(r, i, "were")
    if (
        before in ("there", "these", "those", "who")
        or r.tag[i - 1 : i] == ["NNS"]
        and i
        and r.near(i - 1)
    ):
        if r.lower[i - 1] in ("marks", "knows", "remembers") or is_verb_tag(r.tag[i - 1]):
            return None
        if (
            "VBG" in verb_forms(after)
            or after in word_set("not so very too all happy late in on at wet cold")
            or after in MANY
            and before == "there"
            or "ADJ" in lemmas(after)
            and after not in FUNCTION
        ):
            return wrong_word(r, i, "were")
        return None
    if before in ("i", "they", "we", "you") and after in DETERMINERS:
        return wrong_word(r, i, "wear", False)
    return None
