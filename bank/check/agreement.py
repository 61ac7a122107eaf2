"""Subject and verb: who does it, and the verb that matches."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    AUXILIARIES,
    BE,
    DO,
    FUNCTION,
    HAVE,
    HE,
    JOINERS,
    MANY,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    form,
    is_verb_tag,
    leans_to_verb,
    noun_phrase,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

FOR_ONE = {
    "are": "is", "were": "was", "have": "has", "do": "does", "don't": "doesn't",
    "aren't": "isn't", "weren't": "wasn't", "haven't": "hasn't", "am": "is",
}  # fmt: skip
FOR_MANY = {
    "is": "are", "was": "were", "has": "have", "does": "do", "doesn't": "don't",
    "isn't": "aren't", "wasn't": "weren't", "hasn't": "haven't", "am": "are",
}  # fmt: skip
_AMOUNTS = word_set(
    "total number lot couple few group variety series range handful dozen hundred thousand"
)
_WISHES = word_set("if wish wishes wished though whether suppose imagine would rather")
_LETTING = word_set("let make makes made help helped helps see saw watch hear heard")
_NOT_A_VERB = FUNCTION | word_set(
    "better best even right both too like please maybe yes no okay mean sure thank"
)
_GROUP_NAMES = word_set("kids guys boys girls students friends children people two three four all")


def _message(subject: str, verb: str) -> str:
    return f"“{subject}” goes with “{verb}”."


def agreement_finding(
    r: Reading, i: int, subject: str, right: str, certain: bool = True
) -> Finding:
    return at(r, i, "agreement", _message(subject, right), right, certain)


def wishing(r: Reading, i: int) -> bool:
    return any(word in _WISHES for word in r.lower[max(0, i - 6) : i])


@on_words("he she it")
def one_person_with_verb_for_many(r: Reading, i: int) -> Found:
    """He, she or it with a verb for many.

    >>> show("He like to draw.")
    ['agreement: like -> likes']
    >>> show("Does he like to draw?")
    []
    """
    before = r.before(i)
    if before == "and" and not _verb_earlier(r, i):
        return None
    if before in AUXILIARIES or before in ("or", "nor") or before in _LETTING:
        return None
    if r.lower[i] == "it" and before and before not in JOINERS and before not in WH:
        return None
    j = _verb_after(r, i)
    if j is None:
        return None
    word = r.lower[j]
    if word in FOR_ONE:
        if word in ("were", "weren't") and wishing(r, i):
            return None
        if _asked_before(r, i):
            return None
        return agreement_finding(r, j, r.words[i], FOR_ONE[word])
    if word in _NOT_A_VERB and word != "like":
        return None
    forms = verb_forms(word)
    if (
        "VB" not in forms
        or "VBD" in forms
        or "VBN" in forms
        and word not in ("come", "run", "become")
    ):
        return None
    if _asked_before(r, i) or r.tag[j] in ("IN", "RB", "NNS") and word != "like":
        return None
    if r.tag[j] == "JJ" and "ADJ" in lemmas(word) and not leans_to_verb(word):
        # "It hot": what is missing is the verb.
        return None
    right = form(word, "VBZ")
    return agreement_finding(r, j, r.words[i], right) if right else None


def _verb_earlier(r: Reading, i: int) -> bool:
    """Whether the clause before `and` has its verb, so that a new one starts with the pronoun."""
    start = next((s for s, e in r.sentences if s <= i < e), 0)
    return any(r.tag[k] in ("VBD", "VBZ", "VBP") or r.lower[k] in BE for k in range(start, i - 1))


def _verb_after(r: Reading, i: int) -> int | None:
    """The word where the verb of the subject at `i` would stand: the next, or after an adverb."""
    if not r.near(i):
        return None
    j = i + 1
    if r.lower[j] in ADVERBS and r.lower[j] not in ("not",) and r.near(j):
        j += 1
    return j


def _asked_before(r: Reading, i: int) -> bool:
    """Whether a helping verb earlier in the same clause already carries the number."""
    j = i - 1
    while j >= 0 and not r.first[j + 1] and r.gap[j] == " ":
        word = r.lower[j]
        if word in AUXILIARIES:
            return True
        if word in JOINERS and word not in ("and", "or"):
            return False
        j -= 1
    return False


@on_words("i you we they")
def many_with_verb_for_one(r: Reading, i: int) -> Found:
    """I, you, we or they with a verb for one.

    >>> show("They was late.")
    ['agreement: was -> were']
    >>> show("Ben and I likes soup.")
    ['agreement: likes -> like']
    """
    subject = r.lower[i]
    if r.before(i) in AUXILIARIES and r.before(i) not in ("is", "was"):
        return None
    j = _verb_after(r, i)
    if j is None:
        return None
    word = r.lower[j]
    joined = r.before(i) == "and" and bool(r.before(i - 1))
    if (
        word == "am"
        and (subject != "i" or joined)
        or word in ("are", "aren't")
        and subject == "i"
        and not joined
    ):
        if _asked_before(r, i):
            return None
        return agreement_finding(r, j, r.words[i], "are" if word == "am" else "am")
    if word in FOR_MANY and word != "am":
        if subject == "i" and not joined:
            if word in ("was", "wasn't"):
                return None
            right = "am" if word == "is" else "am not" if word == "isn't" else FOR_MANY[word]
            return agreement_finding(r, j, "I", right)
        if _relative(r, i):
            return None
        return agreement_finding(r, j, r.words[i], FOR_MANY[word])
    if word in ("were", "weren't") and subject == "i" and not joined:
        if wishing(r, i) or _asked_before(r, i):
            return None
        return agreement_finding(r, j, "I", word.replace("were", "was"))
    if word in FUNCTION or word in _GROUP_NAMES:
        return None
    forms = verb_forms(word)
    if "VBZ" not in forms or "VB" in forms or r.tag[j] == "NNS" and subject in ("you", "we"):
        return None
    plain = form(word, "VB")
    return agreement_finding(r, j, r.words[i], plain) if plain else None


def _relative(r: Reading, i: int) -> bool:
    """Whether the pronoun may close a clause about a noun: `the thing for you is`."""
    return r.before(i) in PREPOSITIONS or bool(r.before(i)) and is_verb_tag(r.tag[i - 1])


@on_words(
    "do does have has is are was were don't doesn't isn't aren't wasn't weren't haven't hasn't"
)
def helper_before_its_subject(r: Reading, i: int) -> Found:
    """In a question the helping verb matches the subject behind it.

    >>> show("Where do she play?")
    ['agreement: do -> does']
    >>> show("Is your shoes wet?")
    ['agreement: Is -> Are']
    >>> show("There is three cookies.")
    ['agreement: is -> are']
    """
    word = r.lower[i]
    if not r.near(i):
        return None
    there = r.before(i) in ("there", "here") and not (i > 1 and r.lower[i - 2] in BE)
    j = i + 1
    if (
        r.lower[j] == "there"
        and word in BE | {"isn't", "aren't", "wasn't", "weren't"}
        and r.near(j)
    ):
        there, j = True, j + 1
    opens = r.first[i] or r.lower[i - 1] in WH or there or _asks_what_sort(r, i)
    if not opens or word in ("have", "do") and r.lower[j] == "it" and r.first[i]:
        return None
    if r.lower[j] in ("not", "also", "only", "still", "now") and r.near(j):
        j += 1
    if r.lower[j] == "all":
        return None
    if r.lower[j] in SUBJECTS:
        if (
            there
            or r.lower[j] == "you"
            and i
            and r.before(i) == "what"
            and r.tag[i] != "VBP"
            and r.near(j)
        ):
            return None  # "What is you name?"
        return _inverted_pronoun(r, i, j)
    if r.lower[j] in word_set("who what that this these those") and not there:
        return _inverted_demonstrative(r, i, j)
    phrase = noun_phrase(r, j)
    if phrase is None or not phrase.sure:
        return None
    # "What is in the box" has no subject behind the verb; a phrase right behind it is one.
    behind_wh = i > 0 and r.lower[i - 1] in ("who", "which", "what") and not r.first[i]
    if (
        behind_wh
        and word not in ("do", "does", "don't", "doesn't")
        and (r.lower[i - 1] != "what" or word in HAVE)
    ):
        return None
    if word in ("do", "have", "don't") and r.first[i] and not r.text.rstrip().endswith("?"):
        return None
    if word in DO or word in ("don't", "doesn't"):
        verb = phrase.last + 1
        if verb < r.n and r.lower[verb] in ("in", "on", "at", "from", "with") and r.near(verb):
            behind = noun_phrase(r, verb + 1)
            seen = r.tag[phrase.head] == ("NNS" if phrase.many else "NN")
            if behind is None or not r.near(behind.last) or not seen:
                return None
            if phrase.many != (word in ("does", "doesn't")):
                return None
            subject = r.text[r.starts[phrase.first] : r.ends[phrase.last]]
            return agreement_finding(r, i, subject, (FOR_MANY if phrase.many else FOR_ONE)[word])
        if verb >= r.n or not r.near(phrase.last) or not verb_forms(r.lower[verb]):
            return None
    if "times" in r.lower and any(w.isdigit() for w in r.lower):
        return None  # "What is 9 times 6?"
    if there and phrase.many and r.after(phrase.last) in ("and",):
        return None
    if there and r.lower[phrase.head] in _AMOUNTS:
        return None
    if (
        there
        and phrase.many
        and singular_of(r.lower[phrase.head]) is None
        and r.lower[j] not in MANY
    ):
        return None
    table = FOR_MANY if phrase.many else FOR_ONE
    right = table.get(word)
    if right is None or word in ("were", "weren't") and wishing(r, i):
        return None
    subject = r.text[r.starts[phrase.first] : r.ends[phrase.last]]
    return agreement_finding(r, i, subject, right)


def _asks_what_sort(r: Reading, i: int) -> bool:
    """`what color is`, `how many legs does`, `which book is`: a wh word up to three words back."""
    if i < 2:
        return False
    for j in range(i - 2, max(-1, i - 5), -1):
        if r.lower[j] in WH and (r.first[j] or r.lower[j - 1] in PREPOSITIONS or j == 0):
            return r.lower[i] in DO or r.lower[j] in ("what", "how") and r.lower[i] in DO
        if r.lower[j] in AUXILIARIES:
            return False
    return False


def _inverted_pronoun(r: Reading, i: int, j: int) -> Finding | None:
    word, subject = r.lower[i], r.lower[j]
    if subject in HE:
        right = FOR_ONE.get(word)
        if r.after(j) == "and" or word in ("were",) and not r.text.rstrip().endswith("?"):
            return None
        if word in ("have", "do") and subject == "it" and not _then_verb(r, j):
            return None
    elif subject == "i":
        right = {"is": "am", "are": "am", "does": "do", "has": "have", "doesn't": "don't",
                 "were": "was", "hasn't": "haven't"}.get(word)  # fmt: skip
        if word in ("are", "aren't", "isn't") or r.after(j) == "and":
            return None
    else:
        right = FOR_MANY.get(word)
    if right is None:
        return None
    if r.after(j) in AUXILIARIES and r.after(j) not in ("have", "do", "be"):
        return None
    return agreement_finding(r, i, r.words[j], right)


def _then_verb(r: Reading, j: int) -> bool:
    return bool(r.after(j)) and "VB" in verb_forms(r.after(j))


def _inverted_demonstrative(r: Reading, i: int, j: int) -> Finding | None:
    word, subject = r.lower[i], r.lower[j]
    if subject in ("these", "those") and word in FOR_MANY:
        return agreement_finding(r, i, r.words[j], FOR_MANY[word])
    if (
        subject in ("this", "that")
        and word in ("are", "were", "do", "have")
        and r.tag[j + 1 : j + 2] != ["NNS"]
    ):
        if word in ("do", "have") and not _then_verb(r, j):
            return None
        return agreement_finding(r, i, r.words[j], FOR_ONE[word])
    return None


@on_words("this that these those")
def this_is_and_these_are(r: Reading, i: int) -> Found:
    """This is, these are.

    >>> show("This are my shoes. These is mine.")
    ['agreement: are -> is', 'agreement: is -> are']
    """
    after = r.after(i)
    if not r.first[i]:
        return None
    table = FOR_ONE if r.lower[i] in ("this", "that") else FOR_MANY
    if after in BE and after in table and not (r.lower[i] == "that" and after == "were"):
        return agreement_finding(r, i + 1, r.words[i], table[after])
    return None


@on_words(
    "one neither either everybody everyone everything somebody someone something nobody anybody "
    "anyone nothing each"
)
def everyone_is_one(r: Reading, i: int) -> Found:
    """Everyone, nobody and their like are one.

    >>> show("Everybody have a partner.")
    ['agreement: have -> has']
    """
    if r.before(i) in AUXILIARIES or _asked_before(r, i):
        return None
    j = i + 1
    if r.after(i) == "of":
        while (
            j < r.n
            and r.near(j - 1)
            and (
                r.lower[j] in word_set("of the us them my these those our you")
                or r.tag[j] in ("NNS", "JJ")
            )
        ):
            j += 1
    if (
        j >= r.n
        or not r.near(j - 1)
        or r.lower[i] in ("each", "one", "neither", "either")
        and j == i + 1
    ):
        return None
    right = FOR_ONE.get(r.lower[j])
    if right is None or r.lower[j] in ("were", "do", "have") and wishing(r, i):
        return None
    return agreement_finding(r, j, r.words[i], right)
