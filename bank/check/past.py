"""The past: its forms, days that ask for it, and verbs that lack their helper."""

from __future__ import annotations

from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    AUXILIARIES,
    DETERMINERS,
    DO,
    FUNCTION,
    HAVE,
    PREPOSITIONS,
    SUBJECTS,
    form,
    noun_phrase,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, listed_words, word_set, zipf
from bank.check.reading import Reading
from bank.check.verbs import ANY_DO, ANY_HAVE, ANY_MODAL, HELPERS, verb_finding
from bank.language import inflections

_CHILD_FORMS = {
    "brang": "brought", "brung": "brought", "thunk": "thought", "tooken": "taken",
    "boughten": "bought", "sawed": "saw", "flied": "flew", "costed": "cost", "thoughted": "thought", "broughted": "brought",
}  # fmt: skip


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
            found.append(verb_finding(r, k, right, "In the past stands", opens))
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
            if r.before(i) in ANY_HAVE:
                right = form(right, "VBN") or right
            elif r.before(i) in ANY_DO or r.before(i) in ANY_MODAL:
                right = form(right, "VB") or right
            found.append(verb_finding(r, i, right, f"“{r.words[i]}” is not a word; the past is"))
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
        if any(w in HELPERS or "'" in w for w in r.lower[start:close]):
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
                verb_finding(r, v, right, f"“{r.lower[v]}” needs “have” before it; alone stands")
            )
    return found
