"""Verb forms: after a helping verb, in the past, and forms that no verb has."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    DO,
    FUNCTION,
    HAVE,
    MODALS,
    OBJECTS,
    POSSESSIVES,
    SUBJECTS,
    WH,
    form,
    is_noun,
    is_verb_tag,
    leans_to_verb,
    noun_phrase,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set, zipf
from bank.check.reading import Reading

ANY_DO = DO | word_set("don't doesn't didn't")
ANY_MODAL = MODALS | word_set("can't won't couldn't wouldn't shouldn't mustn't cannot mightn't")
ANY_HAVE = HAVE | word_set(
    "haven't hasn't hadn't i've you've we've they've could've should've would've"
)
_BE = BE | word_set("isn't aren't wasn't weren't i'm you're we're they're")


def verb_finding(r: Reading, i: int, right: str, why: str, certain: bool = True) -> Finding:
    return at(r, i, "tense", f"{why} “{right}”.", right, certain)


@on_words(" ".join(ANY_DO))
def plain_form_after_do(r: Reading, i: int) -> Found:
    """After do, does and did the verb is plain.

    >>> show("When did they came home?")
    ['tense: came -> come']
    >>> show("They didn't saw the sign.")
    ['tense: saw -> see']
    """
    j = i + 1
    if not r.near(i):
        return None
    if r.lower[j] in word_set("not ever never also really always") and r.near(j):
        j += 1
    if (
        r.lower[j] in ANY_DO
        or r.lower[j] in WH
        or r.lower[j] in ("is", "was")
        and (r.before(i) in MODALS | SUBJECTS or is_noun(r.before(i)))  # "What I can do is sing."
        or r.lower[i] in ("do", "did", "does")
        and r.lower[j] in ("so", "it", "that")
        and not r.first[i]
        and r.before(i) not in WH
    ):
        return None
    asks = r.first[i] or r.before(i) in WH or r.text.rstrip().endswith("?")
    if asks or r.lower[j] in SUBJECTS:
        phrase = noun_phrase(r, j)
        if phrase is not None and r.near(phrase.last):
            j = phrase.last + 1
            if r.lower[j] in ADVERBS and r.near(j):
                j += 1
        elif phrase is not None:
            return None
    elif not r.lower[i].endswith("n't") and r.lower[i] != "did" and r.lower[j] in DETERMINERS:
        return None
    if r.lower[j] in AUXILIARIES and r.lower[j] not in word_set("had has was were is are did"):
        return None
    return _needs_plain(r, j, f"After “{r.words[i]}” stands", asks and j == i + 1)


def _needs_plain(r: Reading, j: int, why: str, asks: bool = False) -> Finding | None:
    word = r.lower[j]
    if word in FUNCTION and word not in AUXILIARIES:
        return None
    forms = verb_forms(word)
    if not forms or "VB" in forms or forms == {"VBG"}:
        return None
    if asks and is_noun(r.after(j)) and r.tag[j + 1][:1] == "N" and word not in ANY_HAVE:
        return None
    if (
        forms == {"VBZ"}
        and singular_of(word)
        and (asks or r.tag[j] == "NNS" and r.after(j) in ("", "and", "or"))
    ):
        # "Where do bears sleep": the things that are asked about.
        return None
    right = "be" if word in ("was", "were", "is", "are") else form(word, "VB")
    if right and forms == {"VBZ"}:
        return at(r, j, "agreement", f"{why} “{right}”.", right)
    return verb_finding(r, j, right, why) if right else None


@on_words(" ".join(ANY_MODAL), "let's")
def plain_form_after_can(r: Reading, i: int) -> Found:
    """After can, will, should and their like the verb is plain.

    >>> show("She can sings very well.")
    ['agreement: sings -> sing']
    """
    if (
        not r.near(i)
        or r.before(i) in ARTICLES
        or r.before(i) in POSSESSIVES
        or r.tag[i][:2] == "NN"
    ):
        return None
    j = i + 1
    asks = r.first[i] or r.before(i) in WH or bool(i > 1 and r.before(i - 1) in ("what", "which"))
    if asks and r.lower[i] != "let's":
        phrase = noun_phrase(r, j)
        if phrase is not None:
            if not r.near(phrase.last):
                return None
            j = phrase.last + 1
    while (
        j < r.n - 1 and (r.lower[j] in ADVERBS or r.lower[j] in ("all", "both", "be")) and r.near(j)
    ):
        if r.lower[j] == "be":
            return None
        j += 1
    if r.lower[j] in AUXILIARIES and r.lower[j] in ("have", "be"):
        return None
    if (
        r.tag[j] in ("NNS", "JJ", "IN")
        and not is_verb_tag(r.tag[j])
        and "VBD" not in verb_forms(r.lower[j])
        and r.after(j) in ("", "and", "of")
    ):
        return None
    if (
        verb_forms(r.lower[j]) == {"VBG"}
        and r.tag[j] == "VBG"
        and not asks
        and r.lower[i] != "let's"
    ):
        right = form(r.lower[j], "VB")
        return verb_finding(r, j, right, f"After “{r.words[i]}” stands") if right else None
    return _needs_plain(r, j, f"After “{r.words[i]}” stands", asks and j == i + 1)


_TAKES_TO = word_set(
    """want wants wanted need needs needed like likes liked love loves loved hope hopes hoped try
    tries tried trying going able has have had learn learned learning plan planned start started
    begin began forgot forget remember decided decide how what where when ready time way used
    supposed got get ought asked told order wanting helped chose excited happy place chance
    allowed easy hard fun wish expect him her me us them you not"""
)


@on_words("to")
def plain_form_after_to(r: Reading, i: int) -> Found:
    """After to the verb is plain.

    >>> show("He wants to went home.")
    ['tense: went -> go']
    """
    if not r.near(i):
        return None
    j = i + 1
    word = r.lower[j]
    forms = verb_forms(word)
    if (
        word in FUNCTION
        and word not in ("was", "were", "had", "did")
        or not forms
        or "VB" in forms
        or "VBG" in forms
    ):
        return None
    if "NOUN" in lemmas(word) and word not in ("saw",) or "ADJ" in lemmas(word):
        return None
    if word == "saw" and r.after(j) not in DETERMINERS | OBJECTS:
        return None
    if r.words[j][0].isupper():
        return None
    right = "be" if word in ("was", "were") else form(word, "VB")
    sure = r.before(i) in _TAKES_TO or forms <= {"VBD", "VBZ"}
    return verb_finding(r, j, right, "After “to” stands", sure) if right else None


@on_words(" ".join(ANY_HAVE))
def form_after_have(r: Reading, i: int) -> Found:
    """After have stands the third form: has written, have eaten.

    >>> show("She has wrote a letter.")
    ['tense: wrote -> written']
    """
    if not r.near(i):
        return None
    j = i + 1
    if r.lower[j] in SUBJECTS and (r.first[i] or r.before(i) in WH):
        if not r.near(j):
            return None
        j += 1
    elif r.first[i] and r.lower[j] not in SUBJECTS:
        phrase = noun_phrase(r, j)
        if phrase is None or not r.near(phrase.last):
            return None
        j = phrase.last + 1
    while r.lower[j] in ADVERBS and r.near(j):
        j += 1
    word = r.lower[j]
    if word in FUNCTION and word not in ("did", "was", "were"):
        return None
    forms = verb_forms(word)
    if not forms or "VBN" in forms or "VBG" in forms:
        return None
    right = "been" if word in ("was", "were") else form(word, "VBN")
    if right is None or right == word:
        return None
    if "VBD" in forms:
        if word == "saw" and r.after(j) not in DETERMINERS | OBJECTS | SUBJECTS | {""}:
            return None
        return verb_finding(r, j, right, f"After “{r.words[i]}” stands", "VB" not in forms)
    with_object = r.after(j) in DETERMINERS | OBJECTS and is_verb_tag(r.tag[j])
    if "ADJ" in lemmas(word) or (is_noun(word) or not is_verb_tag(r.tag[j])) and not with_object:
        return None
    if "VB" in forms and r.lower[i] in ("have", "had", "has"):
        return verb_finding(r, j, right, f"After “{r.words[i]}” stands", not is_noun(word))
    return None


HELPERS = AUXILIARIES | ANY_HAVE | _BE


@on_words("i you he she it we they who")
def third_form_without_have(r: Reading, i: int) -> Found:
    """The third form of a verb needs have: I saw, I have seen.

    >>> show("I seen a deer in the woods.")
    ['tense: seen -> saw']
    """
    if not r.near(i) or r.before(i) in HELPERS:
        return None
    j = i + 1
    if r.lower[j] in word_set("just already never always all both") and r.near(j):
        j += 1
    word = r.lower[j]
    if word == "been":
        return None
    forms = verb_forms(word)
    if word == "been":
        return at(
            r,
            j,
            "tense",
            "“been” needs “have” or “has” before it.",
            "was" if r.lower[i] in ("i", "he", "she", "it") else "were",
        )
    if "VBN" not in forms or forms & {"VBD", "VB"} or word == "done" and r.after(j) == "":
        return None
    if any(w in HELPERS for w in r.lower[max(0, i - 3) : i]):
        return None
    right = form(word, "VBD")
    return (
        verb_finding(r, j, right, f"“{word}” needs “have” before it; alone stands")
        if right
        else None
    )


@on_words(" ".join(_BE - {"be", "been", "being"}), "he's she's it's")
def form_after_be(r: Reading, i: int) -> Found:
    """After is and was stands the -ing form: is kicking.

    >>> show("The boy is kick the ball.")
    ['tense: kick -> kicking']
    """
    if not r.near(i) or r.before(i) in DO:
        return None
    j = i + 1
    if r.lower[j] in SUBJECTS and r.near(j) and (r.first[i] or r.before(i) in WH):
        j += 1
    while r.lower[j] in ADVERBS and r.near(j):
        j += 1
    word = r.lower[j]
    if word in FUNCTION or r.words[j][0].isupper():
        return None
    forms = verb_forms(word)
    right = form(word, "VBG")
    if (
        right is None
        or forms & {"VBG", "VBN"}
        or not forms
        or "ADJ" in lemmas(word)
        or "ADV" in lemmas(word)
    ):
        return None
    asks = r.first[i] or r.before(i) in WH
    if word == "got" or word in ("like", "please", "thank", "let") or asks and is_noun(word):
        return None
    if "VBD" in forms and "VB" not in forms:
        return verb_finding(r, j, right, f"After “{r.words[i]}” stands", word != "saw")
    after = r.after(j)
    if is_noun(word) and not leans_to_verb(word) and zipf(word) < 4.2:
        return None
    if is_noun(word):
        if (
            after not in DETERMINERS | OBJECTS or after in word_set("that which all her both no")
        ) and not (
            r.tag[j] in ("VB", "VBP") and after in word_set("to in at on up for down with outside")
        ):
            return None
        return verb_finding(
            r,
            j,
            right,
            f"After “{r.words[i]}” stands",
            is_verb_tag(r.tag[j]) or after in DETERMINERS,
        )
    if r.tag[j][:2] in ("RB", "IN", "CC"):
        return None
    return verb_finding(
        r, j, right, f"After “{r.words[i]}” stands", is_verb_tag(r.tag[j]) or r.tag[j][:2] == "NN"
    )
