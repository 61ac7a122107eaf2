"""Verb forms: after a helping verb, in the past, and forms that no verb has."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
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
    PREPOSITIONS,
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
from bank.check.lexicon import lemmas, listed_words, word_set, zipf
from bank.check.reading import Reading
from bank.language import inflections

_DO = DO | word_set("don't doesn't didn't")
_MODALS = MODALS | word_set("can't won't couldn't wouldn't shouldn't mustn't cannot mightn't")
_HAVE = HAVE | word_set(
    "haven't hasn't hadn't i've you've we've they've could've should've would've"
)
_BE = BE | word_set("isn't aren't wasn't weren't i'm you're we're they're")
_CHILD_FORMS = {
    "brang": "brought", "brung": "brought", "thunk": "thought", "tooken": "taken",
    "boughten": "bought", "sawed": "saw", "thoughted": "thought", "broughted": "brought",
}  # fmt: skip


def _finding(r: Reading, i: int, right: str, why: str, certain: bool = True) -> Finding:
    return at(r, i, "tense", f"{why} “{right}”.", right, certain)


@on_words(" ".join(_DO))
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
        r.lower[j] in _DO
        or r.lower[j] in WH
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
    if asks and is_noun(r.after(j)) and r.tag[j + 1][:1] == "N" and word not in _HAVE:
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
    return _finding(r, j, right, why) if right else None


@on_words(" ".join(_MODALS), "let's")
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
    asks = r.first[i] or r.before(i) in WH
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
        return _finding(r, j, right, f"After “{r.words[i]}” stands") if right else None
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
    return _finding(r, j, right, "After “to” stands", sure) if right else None


@on_words(" ".join(_HAVE))
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
        return _finding(r, j, right, f"After “{r.words[i]}” stands", "VB" not in forms)
    with_object = r.after(j) in DETERMINERS | OBJECTS and is_verb_tag(r.tag[j])
    if "ADJ" in lemmas(word) or (is_noun(word) or not is_verb_tag(r.tag[j])) and not with_object:
        return None
    if "VB" in forms and r.lower[i] in ("have", "had", "has"):
        return _finding(r, j, right, f"After “{r.words[i]}” stands", not is_noun(word))
    return None


_HELPS = AUXILIARIES | _HAVE | _BE


@on_words("i you he she it we they who")
def third_form_without_have(r: Reading, i: int) -> Found:
    """The third form of a verb needs have: I saw, I have seen.

    >>> show("I seen a deer in the woods.")
    ['tense: seen -> saw']
    """
    if not r.near(i) or r.before(i) in _HELPS:
        return None
    j = i + 1
    if r.lower[j] in word_set("just already never always all both") and r.near(j):
        j += 1
    word = r.lower[j]
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
    if any(w in _HELPS for w in r.lower[max(0, i - 3) : i]):
        return None
    right = form(word, "VBD")
    return (
        _finding(r, j, right, f"“{word}” needs “have” before it; alone stands") if right else None
    )


@on_words(" ".join(_BE - {"be", "been", "being"}), "he's she's it's")
def form_after_be(r: Reading, i: int) -> Found:
    """After is and was stands the -ing form: is kicking.

    >>> show("The boy is kick the ball.")
    ['tense: kick -> kicking']
    """
    if not r.near(i):
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
        return _finding(r, j, right, f"After “{r.words[i]}” stands", word != "saw")
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
        return _finding(
            r,
            j,
            right,
            f"After “{r.words[i]}” stands",
            is_verb_tag(r.tag[j]) or after in DETERMINERS,
        )
    if r.tag[j][:2] in ("RB", "IN", "CC"):
        return None
    return _finding(
        r, j, right, f"After “{r.words[i]}” stands", is_verb_tag(r.tag[j]) or r.tag[j][:2] == "NN"
    )


_PAST_UNITS = word_set("night week month year summer winter spring fall weekend time")
_DAYS = word_set("monday tuesday wednesday thursday friday saturday sunday")


def _past_cue(r: Reading, i: int, j: int) -> bool:
    for k in range(i, j):
        word = r.lower[k]
        if word == "than":
            return False
        if word == "yesterday" or word == "ago":
            return True
        if (
            word == "last"
            and k + 1 < j
            and (r.lower[k + 1] in _PAST_UNITS or r.lower[k + 1] in _DAYS)
        ):
            if k and r.lower[k - 1] in word_set("than since from the my his her our their a"):
                continue
            return True
    return False


@on_text()
def now_form_with_a_past_day(r: Reading) -> Found:
    """Yesterday and last week want the past.

    >>> show("Yesterday we go to the pool.")
    ['tense: go -> went']
    """
    found: list[Finding] = []
    for i, j in r.sentences:
        if not _past_cue(r, i, j):
            continue
        k = _first_finite(r, i, j)
        if k is None:
            continue
        word = r.lower[k]
        right = {"is": "was", "are": "were", "am": "was", "has": "had", "have": "had", "do": "did",
                 "does": "did"}.get(word) or form(word, "VBD")  # fmt: skip
        if right and right != word:
            opens = r.lower[i] in ("yesterday", "last")
            found.append(_finding(r, k, right, "In the past stands", opens))
    return found


def _first_finite(r: Reading, i: int, j: int) -> int | None:
    """The verb right behind the subject of the sentence where it stands in the now form."""
    for k in range(i, j - 1):
        if r.lower[k] in AUXILIARIES or r.tag[k] == "VBD":
            return None
        subject = r.lower[k] in SUBJECTS
        if not subject and k and r.lower[k - 1] not in ("last",) and not _in_time(r, k):
            phrase = noun_phrase(r, k) if r.lower[k] in DETERMINERS or r.tag[k] == "NNP" else None
            if phrase is None or not r.near(phrase.last):
                continue
            v = phrase.last + 1
        elif subject and r.near(k):
            v = k + 1
        else:
            continue
        if r.lower[v] in ADVERBS and r.near(v):
            v += 1
        word = r.lower[v]
        forms = verb_forms(word)
        if word in ("have", "has", "do", "does") and "VBN" in verb_forms(r.after(v)):
            return None
        if word in word_set("know remember think hope wonder guess believe am is are say"):
            return None
        if (
            forms & {"VB", "VBZ"}
            and not forms & {"VBD"}
            and (word not in FUNCTION or word in HAVE | DO)
        ):
            return v
        return None
    return None


def _in_time(r: Reading, k: int) -> bool:
    return r.lower[k] in _PAST_UNITS or r.lower[k] in _DAYS


@on_text()
def form_that_no_verb_has(r: Reading) -> Found:
    """A past made by the rule from a verb that does not follow it.

    >>> show("He runned home and brang a ball.")
    ['tense: runned -> ran', 'tense: brang -> brought']
    """
    found = []
    for i, word in enumerate(r.lower):
        if word in listed_words() and word not in _CHILD_FORMS and zipf(word) > 2.6:
            continue
        right = _CHILD_FORMS.get(word) or (overregular(word) if word.endswith("ed") else None)
        if right:
            if r.before(i) in _HAVE:
                right = form(right, "VBN") or right
            elif r.before(i) in _DO or r.before(i) in _MODALS:
                right = form(right, "VB") or right
            found.append(_finding(r, i, right, f"“{r.words[i]}” is not a word; the past is"))
    return found


def overregular(word: str) -> str | None:
    """The past that a child's regular form stands for, None where it is none.

    >>> overregular("goed"), overregular("runned"), overregular("wented"), overregular("walked")
    ('went', 'ran', 'went', None)
    """
    stems = {word[:-2], word[:-1]}
    if len(word) > 5 and word[-3] == word[-4]:
        stems.add(word[:-3])
    if word.endswith("ied"):
        stems.add(word[:-3] + "y")
    for stem in sorted(stems, key=len, reverse=True):
        for lemma in lemmas(stem).get("VERB", ()):
            past = inflections(lemma, "VBD")
            if past and word not in past and not past[0].endswith("ed") and len(stem) > 1:
                return past[0]
    return None


@on_text()
def verb_without_be(r: Reading) -> Found:
    """An -ing verb behind its subject without is, are, was.

    >>> show("She going to the dentist today.")
    ['missing-word: She going -> She is going']
    """
    found = []
    for i, j in r.sentences:
        finding = _ing_alone(r, i, j)
        if finding is not None:
            found.append(finding)
    return found


def _ing_alone(r: Reading, i: int, j: int) -> Finding | None:
    if r.kind == "topic":
        return None
    phrase = noun_phrase(r, i)
    if phrase is None or not r.near(phrase.last):
        return None
    v = phrase.last + 1
    if v < r.n and r.lower[v] in ADVERBS and r.near(v):
        v += 1
    if v >= j or not r.lower[v].endswith("ing") or "VBG" not in verb_forms(r.lower[v]):
        return None
    pronoun = r.lower[phrase.head] in SUBJECTS
    if not pronoun:
        from bank.check.grammar import clause_has_finite_verb

        if clause_has_finite_verb(r, v + 1, j) or r.before(v) in PREPOSITIONS:
            return None
        if "," in "".join(r.gap[i : j - 1]) or r.text.rstrip()[-1:] not in ".!?":
            return None
    subject = r.lower[phrase.head]
    be = "am" if subject == "i" else "are" if phrase.many else "is"
    said = r.text[r.starts[phrase.last] : r.ends[v]]
    between = r.text[r.ends[phrase.last] : r.ends[v]]
    right = f"{r.words[phrase.last]} {be}{between}"
    return Finding("missing-word", r.starts[phrase.last], r.ends[v],
                   f"A word like “{be}” is missing in “{said}”.", right, True)  # fmt: skip


@on_text()
def third_form_behind_a_thing(r: Reading) -> Found:
    """A thing or a person with the third form and no helping verb.

    >>> show("Ana given me half of her sandwich.")
    ['tense: given -> gave']
    """
    if r.kind == "topic":
        return None
    found = []
    for start, close in r.sentences:
        if any(w in _HELPS or "'" in w for w in r.lower[start:close]):
            continue
        k = start
        if r.lower[k] in PREPOSITIONS and r.near(k):
            inner = noun_phrase(r, k + 1)
            if inner is None:
                continue
            k = inner.last + 1
            if k >= close:
                continue
        phrase = noun_phrase(r, k)
        if phrase is None or not r.near(phrase.last) or phrase.last + 1 >= close:
            continue
        v = phrase.last + 1
        forms = verb_forms(r.lower[v])
        if "VBN" not in forms or forms & {"VBD", "VB"} or r.lower[phrase.head] in SUBJECTS:
            continue
        if any(r.tag[m] in ("VBD", "VBZ", "VBP", "MD") for m in range(v + 1, close)):
            continue
        right = form(r.lower[v], "VBD")
        if right:
            found.append(
                _finding(r, v, right, f"“{r.lower[v]}” needs “have” before it; alone stands")
            )
    return found
