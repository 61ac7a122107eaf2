"""Small words that sound like numbers: to, too and two; one and won; some and sum."""

from __future__ import annotations

from bank.check.confused_help import FEELS, THESE, WANTS, thing_at, wrong_word
from bank.check.engine import Found, on_words
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    FUNCTION,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    is_verb_tag,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.names import is_name
from bank.check.reading import Reading


@on_words("to")
def to_for_too_or_two(r: Reading, i: int) -> Found:
    """to where too or two is meant.

    >>> show("The soup is to hot. I have to cats.")
    ['homophone: to -> too', 'homophone: to -> two']
    >>> show("I like to read to kids. She goes to bed.")
    []
    """
    after = r.after(i)
    before = r.before(i)
    if after in word_set("much many few late soon bad little") and after != "little":
        return wrong_word(r, i, "too", before not in ("from", "due"))
    if not after:
        mark = r.gap[i].strip()[:1]
        if i > 0 and r.gap[i - 1] == ", " and mark in (".", "!", "?"):
            return wrong_word(r, i, "too")
        if (
            mark in (".", "!", "?", "")
            and before
            and before not in WANTS
            and (
                before in OBJECTS | POSSESSIVES | SUBJECTS
                or is_noun(before)
                or r.tag[i - 1] in ("RB", "NN", "NNS", "VB")
            )
            and mark
        ):
            if any(w in WH for w in r.lower[:i]):
                return None
            if r.text.rstrip().endswith("?"):
                return (
                    wrong_word(r, i, "too", False)
                    if before in word_set("come go play help sing me")
                    else None
                )
            return wrong_word(r, i, "too", before in word_set("me it him her them us you"))
        return None
    j = i + 1
    if before in POSSESSIVES - {"her"} | {"these", "those"} and not verb_forms(before):
        return wrong_word(r, i, "two")
    if r.words[j][0].isupper() or is_name(r.after(j)):
        return None
    if (
        after in FEELS | {"quickly", "slowly", "loudly"}
        and not r.after(j)
        and before
        and r.tag[i - 1] in ("VBD", "VBZ", "VBP", "VB")
    ):
        return wrong_word(r, i, "too")
    if (
        "ADJ" in lemmas(after)
        and "VB" not in verb_forms(after)
        and not is_noun(after)
        and after not in FUNCTION
    ):
        if (
            before in ("due", "next", "close", "belongs", "belong")
            or is_noun(r.after(j))
            and r.tag[j + 1][:1] == "N"
        ):
            return None
        return wrong_word(
            r,
            i,
            "too",
            before in AUXILIARIES
            or before in word_set("it's that's he's she's feels way far looks got just seems"),
        )
    if (
        (
            before in BE
            or before in word_set("it's that's he's she's i'm looks feels tastes seems way")
        )
        and "ADJ" in lemmas(after)
        and (
            after
            in word_set(
                """
                cold hot warm dry slow cool wet clean open dark light hard fast
                short thin dirty quiet loud full empty busy tired sour sweet
                long low close right
                """
            )
        )
        and (not r.after(j) or r.after(j) in ("to", "for", "and", "in", "today"))
    ):
        return wrong_word(r, i, "too", r.after(j) != "in")
    if after in _TOO_MUCH and (not r.after(j) or r.after(j) in ("for", "to")) and before:
        asked = r.text.rstrip().endswith("?") and any(w in BE for w in r.lower[max(0, i - 4) : i])
        if asked and (is_noun(before) or before in SUBJECTS | THESE | {"that", "it"}):
            return wrong_word(r, i, "too")
    if (
        singular_of(after)
        and r.tag[j] == "NNS"
        and "VB" not in verb_forms(after)
        and (
            before
            in word_set(
                """
                have has had see saw ate found bought got are were the my has
                eat need make made drew caught only about wants
                """
            )
        )
    ):
        if before in ("are", "were") and not (i > 1 and r.lower[i - 2] in ("there", "here")):
            return None
        return wrong_word(r, i, "two")
    return None


_TOO_MUCH = FEELS | word_set(
    "cool wide thin thick spicy salty sweet sour tired sleepy scared shy bright dark light cloudy "
    "rainy windy busy full noisy quiet messy sticky expensive close short tight easy narrow"
)


@on_words("for four")
def for_or_four(r: Reading, i: int) -> Found:
    """for where the number is meant, and four where for is meant.

    >>> show("My jacket has for pockets. This gift is four you.")
    ['homophone: for -> four', 'homophone: four -> for']
    >>> show("She looked for shells. We had eggs for lunch. What do you have for snacks?")
    []
    """
    before, after = r.before(i), r.after(i)
    if not after:
        return None
    if r.lower[i] == "four":
        if after in OBJECTS | POSSESSIVES | word_set("you the a an this") and not r.first[i]:
            return wrong_word(r, i, "for")
        return None
    j = i + 1
    if r.tag[j] == "JJ" and r.near(j):
        j += 1
    if any(w in WH for w in r.lower[:i]) or singular_of(r.lower[j]) is None or r.tag[j] != "NNS":
        return None
    if before in _HOLDS or before in ("are", "were") and r.before(i - 1) in ("there", "here"):
        return wrong_word(r, i, "four", r.lower[j] not in _TIMES_OF_DAY)
    return None


_HOLDS = word_set(
    "have has had see sees saw found got bought drew made eat ate needs drank read wrote caught "
    "the these those my your his our their"
)
_TIMES_OF_DAY = word_set("days weeks months years hours minutes reasons snacks times")


@on_words("too two")
def too_or_two_for_to(r: Reading, i: int) -> Found:
    """too or two where to is meant, and one for the other.

    >>> show("I want too go two the park.")
    ['homophone: too -> to', 'homophone: two -> to']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    j = i + 1
    if not after:
        if (
            word == "two"
            and r.gap[i].strip()[:1] in (".", "!")
            and before in word_set("me it him her them us you")
        ):
            return wrong_word(r, i, "too", False)
        return None
    plain = "VB" in verb_forms(after) or after in ("be", "have", "do")
    if word == "too":
        if after in ("more", "other", "new", "old", "big", "little", "small") and (
            singular_of(r.after(j)) and r.tag[j + 1] == "NNS"
        ):
            return wrong_word(r, i, "two")
        if (
            before in word_set("see saw have has had the my are got ate")
            and "ADJ" in lemmas(after)
            and singular_of(r.after(j))
        ):
            return wrong_word(r, i, "two")
        if after in ARTICLES | POSSESSIVES | OBJECTS - {"her"} | THESE or after in word_set(
            "school bed work town church them him"
        ):
            return wrong_word(r, i, "to")
        if plain and before and "ADJ" not in lemmas(after) and after not in FUNCTION - AUXILIARIES:
            return wrong_word(r, i, "to", before in WANTS or is_verb_tag(r.tag[i - 1]))
        if before in WANTS and plain:
            return wrong_word(r, i, "to")
        if (
            before in word_set("have has had see saw the my are got ate")
            and r.tag[j] == "NN"
            and r.tag[j + 1 : j + 2] == ["NNS"]
            and r.near(j)
        ):
            return wrong_word(r, i, "two")
        if singular_of(after) and r.tag[j] == "NNS" and "ADJ" not in lemmas(after):
            return wrong_word(
                r,
                i,
                "two" if before in word_set("have has had see saw the my are ate got") else "to",
            )
        if r.words[j][0].isupper() and not r.first[j] and r.words[j] != "I":
            return wrong_word(r, i, "to", False)
        return None
    if (
        after in DETERMINERS - {"which", "what", "whose", "all", "both", "those", "these"}
        or plain
        and before in WANTS
        and not is_noun(after)
        or after in word_set("me him them us school bed")
    ):
        return wrong_word(r, i, "to")
    if plain and before in WANTS and r.after(j) in DETERMINERS | PREPOSITIONS:
        return wrong_word(r, i, "to")
    if (
        plain
        and not r.first[i]
        and before not in DETERMINERS | PREPOSITIONS | FUNCTION
        and r.after(j) in ARTICLES | POSSESSIVES | OBJECTS
    ):
        return wrong_word(r, i, "to")
    if (
        after in ("much", "many")
        or "ADJ" in lemmas(after)
        and before in BE
        and (not r.after(j) or r.after(j) in ("to", "for"))
        and not is_noun(after)
    ):
        return wrong_word(r, i, "too")
    return None


@on_words("won")
def won_for_one(r: Reading, i: int) -> Found:
    """won where one is meant.

    >>> show("This is the last won in the box.")
    ['homophone: won -> one']
    """
    if r.before(i) in _BEFORE_ONE and r.after(i) not in ARTICLES | POSSESSIVES:
        return wrong_word(r, i, "one")
    return None


_BEFORE_ONE = word_set(
    "this that last next only each every another no big small red blue green new old other which "
    "any the"
)


@on_words("sum")
def sum_for_some(r: Reading, i: int) -> Found:
    """sum where some is meant.

    >>> show("I gave it sum water.")
    ['homophone: sum -> some']
    """
    if (
        r.before(i) not in ARTICLES | POSSESSIVES
        and thing_at(r, i + 1)
        or r.after(i) in ("of", "more")
        and r.after(i + 1) in POSSESSIVES | OBJECTS
    ):
        return wrong_word(r, i, "some")
    return None


@on_words("one")
def one_for_won(r: Reading, i: int) -> Found:
    """one where won is meant.

    >>> show("We one the game.")
    ['homophone: one -> won']
    """
    if (
        r.before(i) in SUBJECTS
        and r.after(i) in ARTICLES | POSSESSIVES | {"first", "second", "every"}
        and not any(w in AUXILIARIES for w in r.lower[max(0, i - 3) : i])
    ):
        return wrong_word(r, i, "won")
    return None
