"""Things and people as subjects, and the verb that matches."""

from __future__ import annotations

from bank.check.agreement import FOR_MANY, FOR_ONE, agreement_finding, wishing
from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    AUXILIARIES,
    DETERMINERS,
    EITHER_NUMBER,
    FUNCTION,
    JOINERS,
    OBJECTS,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    Phrase,
    clause_has_finite_verb,
    form,
    is_noun,
    is_verb_tag,
    leans_to_verb,
    noun_phrase,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading


@on_text()
def thing_with_the_wrong_verb(r: Reading) -> Found:
    """A thing or a person at the start of a sentence, and the verb behind it.

    >>> show("The birds sings in the morning.")
    ['agreement: sings -> sing']
    >>> show("My friends is at the park.")
    ['agreement: is -> are']
    >>> show("The box of crayons are here.")
    ['agreement: are -> is']
    """
    found = []
    for i in _clause_starts(r):
        if r.lower[i] in WH or r.lower[i] in SUBJECTS and r.after(i) != "and":
            continue
        phrase = noun_phrase(r, i)
        if phrase is None or not r.near(phrase.last):
            continue
        bare = (
            r.first[i] and phrase.last == i and r.tag[i] == "NN" and r.lower[i] not in EITHER_NUMBER
        )
        if not phrase.sure and not bare:
            continue
        if (
            phrase.head == i
            and r.first[i]
            and r.after(i) in ("is", "was", "has")
            and phrase.last == i
            and r.lower[i] in _PETS
        ):
            # A pet may be called Bubbles or Whiskers.
            continue
        if "-" in r.lower[phrase.last] and is_noun(r.after(phrase.last)):
            # "a thank-you note"
            continue
        finding = _verb_read_as_a_thing(r, phrase) or _after_phrase(r, phrase)
        if finding is not None:
            found.append(finding)
    return found


_OPENS_CLAUSE = word_set("because when if while but although whenever where why until")
_PETS = word_set(
    """bubbles whiskers patches socks boots buttons freckles pickles peanuts cookies snickers
    mittens waffles sprinkles biscuits speckles stripes spots paws scraps muffins"""
)
_TOLD = word_set(
    "explained said says think thinks know knows thought knew told learned believe hope is was"
)


def _clause_starts(r: Reading) -> list[int]:
    """The words at which a clause may start: of a sentence, behind a comma or a joining word."""
    starts = []
    for i in range(r.n):
        before = r.lower[i - 1] if i else ""
        opens = (
            r.first[i]
            or r.gap[i - 1].strip() in (",", '"', ";", ', "', ',"', "“", ", “")
            or before in _OPENS_CLAUSE
            or before == "that"
            and i > 1
            and r.lower[i - 2] in _TOLD
            or before == "and"
            and i > 1
            and "," in r.gap[i - 2]
        )
        if opens:
            starts.append(i + 1 if r.lower[i] in JOINERS and r.near(i) and i + 1 < r.n else i)
    return starts


def _verb_read_as_a_thing(r: Reading, phrase: Phrase) -> Finding | None:
    """`The owl sleep all day`: the parse takes the verb for the last thing of the phrase."""
    v = phrase.last
    if (
        v <= phrase.first
        or not is_noun(r.lower[v - 1])
        or r.tag[v - 1][:1] != "N"
        or r.gap[v - 1] != " "
    ):
        return None
    word = r.lower[v]
    if r.kind == "topic" or r.words[v][0].isupper():
        return None
    _, close = next((s for s in r.sentences if s[0] <= v < s[1]), (0, r.n))
    close = next((k for k in range(v + 1, close) if r.lower[k] in _ENDS_CLAUSE), close)
    if clause_has_finite_verb(r, v + 1, close) or r.lower[phrase.first - 1 : phrase.first] in (
        ["after"],
        ["before"],
    ):
        return None
    if not (
        r.first[phrase.first] or r.lower[phrase.first - 1] in _OPENS_CLAUSE
    ) or r.text.rstrip().endswith("?"):
        return None
    forms = verb_forms(word)
    many = singular_of(r.lower[v - 1]) is not None
    if not r.after(v) and r.gap[v].strip()[:1] not in (".", "!", ","):
        return None
    if many and "VBZ" in forms:
        right = form(word, "VB")
    elif (
        not many
        and "VB" in forms
        and not forms & {"VBD", "VBN"}
        and r.lower[phrase.first] in DETERMINERS
        and _complement(r, v)
    ):
        right = form(word, "VBZ")
    else:
        return None
    subject = r.text[r.starts[phrase.first] : r.ends[v - 1]]
    return agreement_finding(r, v, subject, right, bool(r.after(v))) if right else None


_ENDS_CLAUSE = word_set("and but when because that if while so")


def _after_phrase(r: Reading, phrase: Phrase) -> Finding | None:
    i = phrase.last + 1
    while i < r.n - 2 and r.lower[i] in PREPOSITIONS and r.near(i) and r.near(i - 1):
        # "the clock on the town hall": the phrase behind it does not count
        inner = noun_phrase(r, i + 1)
        if inner is None or not r.near(inner.last) or inner.last + 1 >= r.n:
            break
        i = inner.last + 1
    if r.lower[i] in ADVERBS and r.near(i):
        i += 1
    if i >= r.n:
        return None
    word = r.lower[i]
    subject = r.text[r.starts[phrase.first] : r.ends[phrase.last]]
    _, close = next((s for s in r.sentences if s[0] <= i < s[1]), (0, r.n))
    close = next(
        (
            k
            for k in range(i + 1, close)
            if r.lower[k] in word_set("and but when because that if while")
        ),
        close,
    )
    asked = any(w in AUXILIARIES for w in r.lower[max(0, phrase.first - 3) : phrase.first])
    if asked or wishing(r, phrase.first) and word in ("were", "be", "have"):
        return None
    table = FOR_MANY if phrase.many else FOR_ONE
    if word in table:
        if phrase.first and r.lower[phrase.first - 1] in ("than", "as"):
            return None
        return agreement_finding(r, i, subject, table[word])
    if word in FUNCTION or word in AUXILIARIES:
        return None
    forms = verb_forms(word)
    if phrase.many:
        if (
            "VBZ" not in forms
            or r.tag[i] == "NNS"
            and (clause_has_finite_verb(r, i + 1, close) or not _complement(r, i))
        ):
            return None
        right = form(word, "VB")
        return agreement_finding(r, i, subject, right) if right else None
    if (
        "VB" not in forms
        or "VBD" in forms
        or "VBN" in forms
        and word not in ("come", "run", "become")
    ):
        return None
    noun_too = is_noun(word) or "ADJ" in lemmas(word)
    if r.tag[i] == "VB" and not _complement(r, i):
        return None
    if noun_too and (clause_has_finite_verb(r, i + 1, close) or not _complement(r, i)):
        return None
    if not noun_too and not is_verb_tag(r.tag[i]) and not leans_to_verb(word):
        return None
    if r.tag[i] in ("VBD", "VBN", "JJ", "RB", "IN"):
        return None
    right = form(word, "VBZ")
    return (
        agreement_finding(r, i, subject, right, not noun_too or is_verb_tag(r.tag[i]))
        if right
        else None
    )


def _complement(r: Reading, i: int) -> bool:
    """Whether what follows word `i` is what follows a verb: a phrase, an adverb, the end."""
    after = r.after(i)
    if not after:
        return r.gap[i].strip() not in (",",)
    return (
        after in PREPOSITIONS
        or after in WH
        or after in DETERMINERS | OBJECTS
        or r.tag[i + 1] in ("RB", "CD", "PRP$", "PRP", "DT", "TO", "IN", "JJ")
        or after in ("and",)
    )
