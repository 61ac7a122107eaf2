"""Subject and verb: who does it, and the verb that matches."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    AUXILIARIES,
    BE,
    DETERMINERS,
    DO,
    EITHER_NUMBER,
    FUNCTION,
    HAVE,
    HE,
    JOINERS,
    MANY,
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
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_FOR_ONE = {
    "are": "is", "were": "was", "have": "has", "do": "does", "don't": "doesn't",
    "aren't": "isn't", "weren't": "wasn't", "haven't": "hasn't", "am": "is",
}  # fmt: skip
_FOR_MANY = {
    "is": "are", "was": "were", "has": "have", "does": "do", "doesn't": "don't",
    "isn't": "aren't", "wasn't": "weren't", "hasn't": "haven't", "am": "are",
}  # fmt: skip
_WISHES = word_set("if wish wishes wished though whether suppose imagine would rather")
_LETTING = word_set("let make makes made help helped helps see saw watch hear heard")
_NOT_A_VERB = FUNCTION | word_set(
    "better best even right both too like please maybe yes no okay mean sure thank"
)
_GROUP_NAMES = word_set("kids guys boys girls students friends children people two three four all")


def _message(subject: str, verb: str) -> str:
    return f"“{subject}” goes with “{verb}”."


def _finding(r: Reading, i: int, subject: str, right: str, certain: bool = True) -> Finding:
    return at(r, i, "agreement", _message(subject, right), right, certain)


def _wishing(r: Reading, i: int) -> bool:
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
    if word in _FOR_ONE:
        if word in ("were", "weren't") and _wishing(r, i):
            return None
        if _asked_before(r, i):
            return None
        return _finding(r, j, r.words[i], _FOR_ONE[word])
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
    if _asked_before(r, i) or _wishing(r, i) or r.tag[j] in ("IN", "RB", "NNS") and word != "like":
        return None
    right = form(word, "VBZ")
    return _finding(r, j, r.words[i], right) if right else None


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
    joined = r.before(i) == "and"
    if (
        word == "am"
        and (subject != "i" or joined)
        or word in ("are", "aren't")
        and subject == "i"
        and not joined
    ):
        if _asked_before(r, i):
            return None
        return _finding(r, j, r.words[i], "are" if word == "am" else "am")
    if word in _FOR_MANY and word != "am":
        if subject == "i" and not joined:
            if word in ("was", "wasn't"):
                return None
            right = "am" if word == "is" else "am not" if word == "isn't" else _FOR_MANY[word]
            return _finding(r, j, "I", right)
        if _relative(r, i):
            return None
        return _finding(r, j, r.words[i], _FOR_MANY[word])
    if word in ("were", "weren't") and subject == "i" and not joined:
        if _wishing(r, i) or _asked_before(r, i):
            return None
        return _finding(r, j, "I", word.replace("were", "was"))
    if word in FUNCTION or word in _GROUP_NAMES:
        return None
    forms = verb_forms(word)
    if "VBZ" not in forms or "VB" in forms or r.tag[j] == "NNS" and subject in ("you", "we"):
        return None
    plain = form(word, "VB")
    return _finding(r, j, r.words[i], plain) if plain else None


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
    if r.lower[j] in SUBJECTS:
        if there:
            return None
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
        if verb >= r.n or not r.near(phrase.last) or not verb_forms(r.lower[verb]):
            return None
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
    table = _FOR_MANY if phrase.many else _FOR_ONE
    right = table.get(word)
    if right is None or word in ("were", "weren't") and _wishing(r, i):
        return None
    subject = r.text[r.starts[phrase.first] : r.ends[phrase.last]]
    return _finding(r, i, subject, right)


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
        right = _FOR_ONE.get(word)
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
        right = _FOR_MANY.get(word)
    if right is None:
        return None
    if r.after(j) in AUXILIARIES and r.after(j) not in ("have", "do", "be"):
        return None
    return _finding(r, i, r.words[j], right)


def _then_verb(r: Reading, j: int) -> bool:
    return bool(r.after(j)) and "VB" in verb_forms(r.after(j))


def _inverted_demonstrative(r: Reading, i: int, j: int) -> Finding | None:
    word, subject = r.lower[i], r.lower[j]
    if subject in ("these", "those") and word in _FOR_MANY:
        return _finding(r, i, r.words[j], _FOR_MANY[word])
    if (
        subject in ("this", "that")
        and word in ("are", "were", "do", "have")
        and r.tag[j + 1 : j + 2] != ["NNS"]
    ):
        if word in ("do", "have") and not _then_verb(r, j):
            return None
        return _finding(r, i, r.words[j], _FOR_ONE[word])
    return None


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
        if r.lower[i] in SUBJECTS or r.lower[i] in WH:
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
        ):
            # A pet may be called Bubbles or Whiskers.
            continue
        finding = _verb_read_as_a_thing(r, phrase) or _after_phrase(r, phrase)
        if finding is not None:
            found.append(finding)
    return found


_AMOUNTS = word_set(
    "total number lot couple few group variety series range handful dozen hundred thousand"
)
_OPENS_CLAUSE = word_set("because when if while but although whenever where why until")
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


_END = word_set("and but so or because when if while until that")


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
    return _finding(r, v, subject, right, bool(r.after(v))) if right else None


_ENDS_CLAUSE = word_set("and but when because that if while so")


@on_words("this that these those")
def this_is_and_these_are(r: Reading, i: int) -> Found:
    """This is, these are.

    >>> show("This are my shoes. These is mine.")
    ['agreement: are -> is', 'agreement: is -> are']
    """
    after = r.after(i)
    if not r.first[i]:
        return None
    table = _FOR_ONE if r.lower[i] in ("this", "that") else _FOR_MANY
    if after in BE and after in table and not (r.lower[i] == "that" and after == "were"):
        return _finding(r, i + 1, r.words[i], table[after])
    return None


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
    if asked or _wishing(r, phrase.first) and word in ("were", "be", "have"):
        return None
    table = _FOR_MANY if phrase.many else _FOR_ONE
    if word in table:
        if phrase.first and r.lower[phrase.first - 1] in ("than", "as"):
            return None
        return _finding(r, i, subject, table[word])
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
        return _finding(r, i, subject, right) if right else None
    if (
        "VB" not in forms
        or "VBD" in forms
        or "VBN" in forms
        and word not in ("come", "run", "become")
    ):
        return None
    noun_too = is_noun(word) or "ADJ" in r_lemmas(word)
    if r.tag[i] == "VB" and not _complement(r, i):
        return None
    if noun_too and (clause_has_finite_verb(r, i + 1, close) or not _complement(r, i)):
        return None
    if not noun_too and not is_verb_tag(r.tag[i]) and not leans_to_verb(word):
        return None
    if r.tag[i] in ("VBD", "VBN", "JJ", "RB", "IN"):
        return None
    right = form(word, "VBZ")
    return _finding(r, i, subject, right, not noun_too or is_verb_tag(r.tag[i])) if right else None


def r_lemmas(word: str) -> dict[str, tuple[str, ...]]:
    from bank.check.lexicon import lemmas

    return lemmas(word)


def _complement(r: Reading, i: int) -> bool:
    """Whether what follows word `i` is what follows a verb: a phrase, an adverb, the end."""
    after = r.after(i)
    if not after:
        return r.gap[i].strip() not in (",",)
    return (
        after in PREPOSITIONS
        or after in WH
        or after in r_dets()
        or r.tag[i + 1] in ("RB", "CD", "PRP$", "PRP", "DT", "TO", "IN", "JJ")
        or after in ("and",)
    )


def r_dets() -> frozenset[str]:
    from bank.check.grammar import DETERMINERS, OBJECTS

    return DETERMINERS | OBJECTS


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
    right = _FOR_ONE.get(r.lower[j])
    if right is None or r.lower[j] in ("were", "do", "have") and _wishing(r, i):
        return None
    return _finding(r, j, r.words[i], right)
