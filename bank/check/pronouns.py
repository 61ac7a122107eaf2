"""Pronouns: I and me, he and him, those and them, himself."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    AUXILIARIES,
    DETERMINERS,
    JOINERS,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    is_verb_tag,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_SUBJECT = {"me": "I", "him": "he", "her": "she", "us": "we", "them": "they"}
_OBJECT = {"i": "me", "he": "him", "she": "her", "we": "us", "they": "them"}
_SELF = {"hisself": "himself", "theirselves": "themselves", "theirself": "themselves",
         "themself": "themselves", "ourself": "ourselves", "ourselfs": "ourselves",
         "themselfs": "themselves", "meself": "myself", "yourselfs": "yourselves"}  # fmt: skip
_TAKES_PERSON = PREPOSITIONS - word_set("than like before after until about")


@on_words(" ".join(_SELF))
def self_word_that_is_none(r: Reading, i: int) -> Found:
    """hisself, theirselves and their like.

    >>> show("He hurt hisself on the slide.")
    ['pronoun: hisself -> himself']
    """
    right = _SELF[r.lower[i]]
    return at(r, i, "pronoun", f"The word is “{right}”.", right)


@on_words("them")
def them_for_those(r: Reading, i: int) -> Found:
    """them before a thing.

    >>> show("Them boys are loud.")
    ['pronoun: Them -> Those']
    >>> show("I gave them books to read.")
    []
    """
    if not r.near(i):
        return None
    j = i + 1
    if r.tag[j][:2] == "JJ" and r.near(j):
        j += 1
    if singular_of(r.lower[j]) is None or r.tag[j] != "NNS":
        return None
    before = r.before(i)
    gives = before and (
        is_verb_tag(r.tag[i - 1])
        or before in word_set("gave give bring show tell make buy bought made")
    )
    if gives and before in word_set(
        """
        gave give gives giving bring brought show showed tell told make made buy bought
        send sent teach taught read get got call called offer offered hand handed feed
        fed ask asked sell sold help let see watch cost wish bake baked
        """
    ):
        return None
    return at(
        r, i, "pronoun", "Before a thing stands “those”.", "those", r.first[i] or not gives or True
    )


@on_words("me him her us them")
def object_form_as_subject(r: Reading, i: int) -> Found:
    """me, him, her, us, them where someone does something.

    >>> show("Him is my uncle.")
    ['pronoun: Him -> He']
    >>> show("Me and Sam went fishing.")
    ['pronoun: Me and Sam -> Sam and I']
    """
    word = r.lower[i]
    opens = (
        r.first[i]
        or r.before(i) in word_set("because but when if so while that until unless")
        and _clause_verb(r, i + 1)
        or (i > 0 and r.gap[i - 1].startswith(",") and _clause_verb(r, i + 1))
    )
    if r.before(i) == "but" and r.before(i - 1) in _EVERYBODY:
        return None
    if r.after(i) == "and" and opens:
        return _joined_first(r, i)
    if r.before(i) == "and" and word != "her":
        return _joined_last(r, i)
    if not r.near(i):
        return None
    if word == "us" and r.first[i] and singular_of(r.lower[i + 1]) and r.tag[i + 1] == "NNS":
        return at(r, i, "pronoun", "Who does it is “we”.", "we")
    asked = (
        r.before(i) in _HELPERS
        and (r.first[i - 1] or r.before(i - 1) in WH and r.first[i - 2])
        and "VB" in verb_forms(r.lower[i + 1])
    )
    her_thing = is_noun(r.lower[i + 1]) and r.after(i + 1) not in DETERMINERS
    if asked and not (word == "her" and her_thing) and word != "them":
        right = _SUBJECT[word]
        return Finding("pronoun", r.starts[i], r.ends[i], f"Who does it is “{right}”.", right, True)
    if _behind_a_phrase(r, i):
        right = _SUBJECT[word]
        return Finding("pronoun", r.starts[i], r.ends[i], f"Who does it is “{right}”.", right, True)
    if not opens or r.before(i) == "that":
        return None
    if (
        r.first[i]
        and word in ("us", "him", "them")
        and "VB" in verb_forms(r.lower[i + 1])
        and r.tag[i + 1] in ("VB", "VBP", "NN")
    ):
        right = _SUBJECT[word]
        if not is_noun(r.lower[i + 1]) or word != "us" and word != "them":
            return at(r, i, "pronoun", f"Who does it is “{right}”.", right)
        if r.after(i + 1) in PREPOSITIONS | DETERMINERS:
            return at(r, i, "pronoun", f"Who does it is “{right}”.", right)
    if _clause_verb(r, i + 1):
        if word == "her" and (
            is_noun(r.lower[i + 1]) and r.tag[i + 1][:1] == "N" or r.lower[i + 1] == "own"
        ):
            return None
        if word == "them" and r.tag[i + 1] == "NNS":
            return None
        right = _SUBJECT[word]
        return at(r, i, "pronoun", f"Who does it is “{right}”.", right)
    return None


_EVERYBODY = word_set("everyone everybody nobody one all no anyone anybody nothing everything")
_HELPERS = AUXILIARIES - word_set("be been being let")
_CLAUSE_OPENERS = word_set(
    "after before until while when because if though although since and then so but as where"
)


def _behind_a_phrase(r: Reading, i: int) -> bool:
    """`After me missed the train`, `under the log us found`: a sure past behind an object form."""
    j = i + 1
    if j >= r.n or r.first[i]:
        return False
    forms = verb_forms(r.lower[j])
    sure_past = (
        "VBD" in forms
        and "VBN" not in forms
        or r.lower[j] in word_set("had was were is are has")
        or r.tag[j] == "VBD"
        and "VBD" in forms
    )
    if not sure_past or is_noun(r.lower[j]) and r.lower[j] != "had":
        return False
    before = r.before(i)
    if before in _CLAUSE_OPENERS:
        return not (r.lower[i] == "her" and is_noun(r.lower[j]))
    return (
        bool(before)
        and r.tag[i - 1][:1] == "N"
        and not verb_forms(before) & {"VBD", "VBZ"}
        and r.lower[i] in ("us", "me", "him")
        and r.dep[i - 1] == "pobj"
    )


def _clause_verb(r: Reading, j: int) -> bool:
    """Whether word `j` is a verb that could have the word before it as its subject."""
    if j >= r.n or r.gap[j - 1] != " ":
        return False
    word = r.lower[j]
    if word in ADVERBS and r.near(j):
        word = r.lower[j + 1]
        j += 1
    if word in AUXILIARIES and word not in ("being", "been"):
        return True
    forms = verb_forms(word)
    return (
        bool(forms & {"VBD", "VBZ"})
        and (not is_noun(word) or is_verb_tag(r.tag[j]))
        or r.tag[j] in ("VBD", "VBZ", "VBP")
        and bool(forms)
    )


def _joined_first(r: Reading, i: int) -> Finding | None:
    """`Me and Sam went`: the pair up to its verb."""
    last = i + 2
    while last < min(r.n - 1, i + 6) and r.near(last) and not _clause_verb(r, last + 1):
        last += 1
    if last >= r.n - 1 or not _clause_verb(r, last + 1):
        return None
    right = _SUBJECT[r.lower[i]]
    pair = [right, r.text[r.starts[i + 2] : r.ends[last]]]
    if last == i + 2 and r.lower[last] in _SUBJECT:
        pair[1] = _SUBJECT[r.lower[last]]  # "Me and him went"
    if right == "I":
        pair.reverse()
    text = " and ".join(pair)
    if r.first[i]:
        text = text[0].upper() + text[1:]
    return Finding("pronoun", r.starts[i], r.ends[last], f"Who does it is “{right}”.", text, True)


def _joined_last(r: Reading, i: int) -> Finding | None:
    """`Sam and me went`: the pair opens the sentence."""
    start = i - 2
    while start > 0 and not r.first[start] and r.near(start - 1) and start > i - 5:
        start -= 1
    if (
        start < 0
        or not r.first[start]
        or not _clause_verb(r, i + 1)
        or is_verb_tag(r.tag[start])
        and not r.words[start][0].isupper()
    ):
        return None
    if any(
        is_verb_tag(r.tag[k]) or r.lower[k] in PREPOSITIONS or r.lower[k] in AUXILIARIES
        for k in range(start, i)
    ):
        return None
    right = _SUBJECT[r.lower[i]]
    return at(r, i, "pronoun", f"Who does it is “{right}”.", right)


@on_words("i he she we they")
def subject_form_as_object(r: Reading, i: int) -> Found:
    """I, he, she, we, they after a small word such as to, for, with, or after a verb.

    >>> show("Mom gave cookies to Ana and I.")
    ['pronoun: I -> me']
    >>> show("The dog ran to he.")
    ['pronoun: he -> him']
    """
    word = r.lower[i]
    after = r.after(i)
    if (
        r.words[i] == "I"
        and r.gap[i][:1] == "."
        and r.gap[i] not in (". ", ".", '."', '." ')
        and i + 1 < r.n
    ):
        return None
    if after in ("all", "both") and i + 2 < r.n and _could_be_verb(r, i + 2):
        return None
    if after and (_could_be_verb(r, i + 1) or after in ADVERBS or after in AUXILIARIES):
        return None
    right = _OBJECT[word]
    if r.before(i) == "and":
        k = i - 2
        while k > 0 and r.near(k - 1) and k > i - 6:
            if r.lower[k - 1] in PREPOSITIONS - {
                "like",
                "than",
                "before",
                "after",
                "until",
            } or r.lower[k - 1] in word_set(
                """
                give gave told tell showed show let took helped asked taught saw
                invited gives tells takes helps
                """
            ):
                if any(r.lower[m] in AUXILIARIES for m in range(k, i)):
                    return None
                if after and after not in PREPOSITIONS | JOINERS | word_set("the a an to some"):
                    return None
                return at(r, i, "pronoun", f"After “{r.words[k - 1]}” stands “{right}”.", right)
            k -= 1
        return None
    before = r.before(i)
    if (
        not before
        or before in AUXILIARIES
        or before in JOINERS
        or before in WH
        or before in SUBJECTS
    ):
        return None
    if before in _TAKES_PERSON:
        return at(r, i, "pronoun", f"After “{r.words[i - 1]}” stands “{right}”.", right)
    forms = verb_forms(before)
    if not after and "VB" in forms and r.text.rstrip().endswith("?"):
        return at(r, i, "pronoun", f"After “{r.words[i - 1]}” stands “{right}”.", right)
    if (
        forms
        and is_verb_tag(r.tag[i - 1])
        and before
        not in word_set(
            """
            said says say think thinks know knows asked thought knew hope guess wish
            """
        )
        and not r.text.rstrip().endswith("?")
    ):
        return at(
            r,
            i,
            "pronoun",
            f"After “{r.words[i - 1]}” stands “{right}”.",
            right,
            not after or after in PREPOSITIONS,
        )
    return None


def _could_be_verb(r: Reading, j: int) -> bool:
    word = r.lower[j]
    return (
        bool(verb_forms(word))
        and word not in PREPOSITIONS
        and word not in ("and", "or", "but")
        or is_verb_tag(r.tag[j])
        or "'" in word
    )


@on_words("me")
def me_for_my(r: Reading, i: int) -> Found:
    """me before a thing that is mine.

    >>> show("I put on me hat.")
    ['pronoun: me -> my']
    """
    if not r.near(i):
        return None
    j = i + 1
    if r.tag[j] == "JJ" and r.near(j) and is_noun(r.lower[j + 1]):
        j += 1
    if not is_noun(r.lower[j]) or r.tag[j] not in ("NN", "NNS") or "VBG" in verb_forms(r.lower[j]):
        return None
    before = r.before(i)
    if (
        r.first[i]
        or before in PREPOSITIONS - {"to", "for"}
        or before in ("is", "are", "was")
        or before in ("to", "for")
        and not r.after(j)
    ):
        return at(
            r,
            i,
            "pronoun",
            "For what is mine stands “my”.",
            "my",
            r.tag[j] in ("NN", "NNS") and before != "and",
        )
    if before in word_set(
        """
        love loves lost found see saw like likes wash washed brush brushed ate eat wore
        wear put opened closed ride rode clean cleaned hurt broke with forgot use used
        play played visit visited hug hugged fed feed need want packed took miss
        """
    ):
        return at(r, i, "pronoun", "For what is mine stands “my”.", "my", False)
    return None


@on_words("she he they we it you")
def subject_form_as_owner(r: Reading, i: int) -> Found:
    """A subject form before a thing: in they house.

    >>> show("They ran to they house.")
    ['pronoun: they -> their']
    """
    if r.before(i) not in PREPOSITIONS - {
        "like",
        "than",
        "before",
        "after",
        "until",
        "about",
    } or not r.near(i):
        return None
    after = r.after(i)
    if (
        not is_noun(after)
        or verb_forms(after)
        and is_verb_tag(r.tag[i + 1])
        or r.tag[i + 1][:1] != "N"
        or after.endswith("s")
        and r.lower[i] in ("he", "she", "it")
    ):
        return None
    if r.lower[i] in ("you", "we", "it"):
        return None
    right = {"she": "her", "he": "his", "they": "their"}[r.lower[i]]
    return at(r, i, "pronoun", f"Before a thing stands “{right}”.", right, not verb_forms(after))
