"""Sentences that lack is, are or am."""

from __future__ import annotations

from bank.check.engine import Found, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    FUNCTION,
    HE,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    is_verb_tag,
    noun_phrase,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set, zipf
from bank.check.missing import missing_behind
from bank.check.names import PERSON_NAMES
from bank.check.reading import Reading
from bank.check.spelling import is_word


@on_text()
def is_is_missing(r: Reading) -> Found:
    """A sentence without any verb: The dog big. He my friend.

    >>> show("He my friend.")
    ['missing-word: He my -> He is my']
    >>> show("The soup too hot.")
    ['missing-word: soup too -> soup is too']
    """
    if r.kind in ("topic",):
        return None
    found = []
    for start, close in r.sentences:
        finding = _no_verb(r, start, close)
        if finding is not None:
            found.append(finding)
    return found


_PREDICATE_OPENS = (
    ARTICLES
    | POSSESSIVES
    | word_set("so very too not in on at under from behind next for fun glad")
)


def _no_verb(r: Reading, start: int, close: int) -> Finding | None:
    """The first words of a sentence that has a subject and what is said of it, and no verb."""
    if (
        close - start < 2
        or any(c in r.text for c in '"“”')
        or "," in "".join(r.gap[start : start + 4])
    ):
        return None
    if r.text.rstrip().endswith("?") or r.gap[close - 1].strip()[:1] != ".":
        return None
    if r.after(start) == "right" and r.near(start + 1) and r.lower[start] in SUBJECTS:
        return None  # "I right with my left hand": another word is wrong
    if r.lower[start] == "it" and r.after(start) == "your":
        return missing_behind(r, start, "is")
    phrase = noun_phrase(r, start)
    if (
        phrase is None
        or r.lower[start].endswith(("one", "body"))
        and "like" in r.lower[start:close]
    ):
        return None
    last = phrase.last
    if (
        r.kind == "sentence"
        and last > start
        and r.lower[last] in ("spat", "spit", "bit", "cut", "hit")
    ):
        return None
    if r.gap[last] == ". " and r.lower[last] in ("mr", "mrs", "ms", "dr") and last + 2 < close:
        last += 1
    if r.lower[start] in ("mr", "mrs", "ms", "dr") and last == start:
        return None
    if last + 1 >= close or not r.near(last):
        # "The ice thin." may have been read as one phrase.
        return _describing_end(r, start, last, close)
    j = last + 1
    word = r.lower[j]
    subject = r.lower[phrase.head]
    pronoun = subject in SUBJECTS
    if any(
        verb_forms(w) & {"VBD", "VBZ"} or not is_word(w)
        for w in r.lower[start + 1 : j]
        if w.isalpha() and w.islower() and not names_ok(w)
    ):
        return None
    for k in range(j, close):
        w = r.lower[k]
        if w in word_set("when because until while if that who") and k > j and r.tag[k] != "DT":
            break
        if (
            w in AUXILIARIES
            or "'" in w
            or is_verb_tag(r.tag[k])
            and verb_forms(w)
            and not w.endswith("ing")
        ):
            return None
        if (
            verb_forms(w) & {"VBD", "VBZ"}
            and w not in FUNCTION
            and "ADJ" not in lemmas(w)
            and not (is_noun(w) and r.tag[k][:1] == "N")
        ):
            return None
    describes = "ADJ" in lemmas(word) and word not in FUNCTION
    predicate = (
        word in _PREDICATE_OPENS
        or describes
        and (
            not r.after(j)
            or r.after(j) in PREPOSITIONS | {"and", "today", "now", "when", "because"}
        )
        or pronoun
        and is_noun(word)
        and not r.after(j)
        and "VB" not in verb_forms(word)
    )
    if (
        not predicate
        or not pronoun
        and r.lower[start] not in DETERMINERS
        and not r.words[start][0].isupper()
    ):
        return None
    if "VB" in verb_forms(word) and not describes:
        return None
    if not pronoun and phrase.last > start + 1 and verb_forms(r.lower[last]) & {"VB", "VBZ"}:
        return None
    if not pronoun and last == start and subject not in PERSON_NAMES and verb_forms(subject):
        return None
    if (
        not pronoun
        and "VB" in verb_forms(subject)
        and r.lower[start] == subject
        and r.tag[start] != "NNP"
    ):
        return None
    if not pronoun and r.kind != "sentence" and close - start > 9:
        return None
    be = "am" if subject == "i" and not phrase.many else "are" if phrase.many else "is"
    return missing_behind(r, last, be, pronoun or r.kind == "sentence")


def names_ok(word: str) -> bool:
    return zipf(word) > 2.5


def _describing_end(r: Reading, start: int, last: int, close: int) -> Finding | None:
    """`My paint red.`, `This book fun.`: a thing, and at the end a word that can only describe it."""
    if r.lower[start] not in DETERMINERS or last != close - 1 or last - start != 2:
        return None
    word, thing = r.lower[last], r.lower[last - 1]
    if (
        not is_noun(thing)
        or "ADJ" in lemmas(thing)
        or not ("ADJ" in lemmas(word) or word == "fun")
        or verb_forms(thing) & {"VBD"}
    ):
        return None
    be = "are" if singular_of(thing) else "is"
    return missing_behind(r, last - 1, be, r.kind == "sentence")


FEELINGS = word_set(
    "tired scared bored excited surprised glad happy sad hungry thirsty sick late ready angry "
    "afraid proud sorry cold hot nervous shy sleepy"
)


@on_words("i he she we they you it")
def be_before_a_feeling_is_missing(r: Reading, i: int) -> Found:
    """When I tired, I rest.

    >>> show("When I tired, I sit in the quiet corner.")
    ['missing-word: I tired -> I am tired']
    """
    after = r.after(i)
    if (
        r.lower[i] in ("you", "it")
        and r.before(i)
        and r.tag[i - 1][:1] == "V"
        or r.before(i) == "to"
    ):
        return None
    if (
        after not in FEELINGS
        or r.before(i) in AUXILIARIES
        or r.after(i + 1)
        and r.after(i + 1) not in PREPOSITIONS | {"and", "because", "when", "today"}
    ):
        return None
    be = "am" if r.lower[i] == "i" else "is" if r.lower[i] in HE else "are"
    return missing_behind(r, i, be)
