"""Verbs that cannot stand side by side: a helper left over from an earlier wording."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    DETERMINERS,
    DO,
    HAVE,
    MODALS,
    OBJECTS,
    POSSESSIVES,
    SUBJECTS,
    WH,
    form,
    is_noun,
    is_verb_tag,
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

_IS = word_set("am is are was were")
_NEVER_BEHIND = {
    **dict.fromkeys(_IS, DO | MODALS | HAVE | _IS | {"be"}),
    **dict.fromkeys(DO, MODALS | _IS | {"does", "did", "has", "had"}),
    **dict.fromkeys(MODALS, DO - {"do"} | MODALS | _IS | {"has", "had"}),
}
"""Helper by helper, those that never come right behind it."""
_MAY_END_A_CLAUSE = SUBJECTS | WH | word_set("that this there those to not all who everyone")


def too_many(r: Reading, i: int, certain: bool = True) -> Finding:
    return at(r, i, "extra-word", f"“{r.words[i]}” is too many.", "", certain)


@on_words(" ".join(_NEVER_BEHIND))
def two_helpers(r: Reading, i: int) -> Found:
    """did can, is are, were have.

    >>> show("How did can they keep warm? We are can make a kite. Where do does it begin?")
    ['extra-word: did -> ', 'extra-word: are -> ', 'extra-word: do -> ']
    >>> show("What I can do is sing. The can is red. Who he is will be seen.")
    []
    """
    word, after = r.lower[i], r.after(i)
    if after not in _NEVER_BEHIND[word] or i == 0 or after == word:
        return None
    if r.before(i) in WH and is_noun(r.after(i + 1)):
        return None  # "What is are class": our is meant
    if r.tag[i][:1] == "N" or r.tag[i + 1][:1] == "N":
        return None
    opens = r.before(i) in WH and r.first[i - 1]
    if not opens and any(w in WH or w == "that" for w in r.lower[max(0, i - 6) : i]):
        return None
    if not opens and r.before(i) in DETERMINERS | word_set("that those there all to it he she you"):
        return None
    if (
        after in HAVE
        and r.after(i + 1) in ("to", "been")
        and word in _IS
        or word in _IS
        and after == "be"
    ):
        return too_many(r, i + (after == "be"))
    return too_many(r, i)


@on_words("do does did")
def helper_twice_around_its_subject(r: Reading, i: int) -> Found:
    """Why does do you think so?

    >>> show("Why does do you think he left?")
    ['extra-word: does -> ']
    """
    if (
        r.after(i) not in DO - {r.lower[i]}
        or r.after(i + 1) not in SUBJECTS
        or r.before(i) not in WH
    ):
        return None
    return too_many(r, i)


_NEEDS_NO_SECOND = word_set(
    "given shown told asked taught called named made paid sent offered handed promised fed born left "
    "voted read elected awarded denied granted considered worth done gone finished built used set "
    "designated appointed declared brought dealt issued served charged fined spared deemed "
    "rented bought sold put found held grown kept lost won located situated"
)


@on_words("is are was were am")
def is_before_what_was_done(r: Reading, i: int) -> Found:
    """The class is planted twelve bulbs: a leftover is.

    >>> show("The old man was crossed the bridge slowly.")
    ['extra-word: was -> ']
    >>> show("She was given a book. The room was painted the same color. It was built last year.")
    []
    """
    if not r.near(i) or not r.near(i + 1):
        return None
    word, behind = r.lower[i + 1], r.after(i + 1)
    forms = verb_forms(word)
    if not {"VBD", "VBN"} <= forms or word in _NEEDS_NO_SECOND or "ADJ" in lemmas(word):
        return None
    if behind not in ARTICLES | POSSESSIVES | word_set(
        "two three four five six seven eight nine ten eleven twelve many several some them it him"
    ):
        return None
    if r.before(i) in WH or any(w in WH or w in ("that", "there") for w in r.lower[:i]):
        return None
    inside = r.lower[i + 2 : i + 6]
    if not _TIMES.isdisjoint(inside) or not _MEASURES.isdisjoint(inside):
        return None
    return too_many(r, i)


_MEASURES = word_set("way time color colors distance size bit part lot times miles feet")
_TIMES = word_set(
    "day days week weeks month months year years night morning afternoon evening minute minutes hour "
    "hours second time times moment while summer winter spring fall weekend weekends season century ago later"
)


@on_words("is are am was were")
def plain_verb_behind_is(r: Reading, i: int) -> Found:
    """I am go to school; She is read a book.

    >>> show("I am go to school. She is read a book about whales.")
    ['tense: go -> going', 'tense: read -> reading']
    >>> show("They are set. The book is read by many. It is like that. He is well read.")
    []
    """
    if r.before(i) not in SUBJECTS or not r.near(i) or not r.near(i + 1):
        return None
    if i > 1 and (
        r.lower[i - 2] in WH
        or r.first[i - 1] is False
        and r.lower[i - 2] not in ("and", "but", "so", "because")
    ):
        return None
    word, behind = r.lower[i + 1], r.after(i + 1)
    if word == "read":
        if (
            behind not in ARTICLES | POSSESSIVES - {"her"}
            or r.lower[i] in ("was", "were")
            and behind == "the"
        ):
            return None
    elif (
        word
        not in word_set(
            "go eat see want need make take give play sing write help look wait talk walk ride swim bake cook"
        )
        or word
        not in (
            "go",
            "eat",
            "see",
            "sing",
            "write",
            "give",
        )
        and behind not in ARTICLES | POSSESSIVES | {"to", "for", "at", "with"}
    ):
        return None
    right = form(word, "VBG")
    return (
        at(r, i + 1, "tense", f"After “{r.words[i]}” stands “{right}”.", right) if right else None
    )


@on_words("had has have")
def to_left_out_behind_had(r: Reading, i: int) -> Found:
    """had wait for something.

    >>> show("Write about a time you had wait for something.")
    ['missing-word: had wait -> had to wait']
    >>> show("We had fun. Dad had cut it. They have run far. I had hurt it. Have fun with it.")
    []
    """
    word, behind = r.after(i), r.after(i + 1)
    if word not in _HAD_TO or r.first[i]:
        return None
    if r.before(i) not in SUBJECTS or behind not in ARTICLES | POSSESSIVES | word_set(
        "for to in on at with until"
    ):
        return None
    return Finding("missing-word", r.starts[i], r.ends[i + 1], "The word “to” is missing.",
                   f"{r.words[i]} to {r.words[i + 1]}", True)  # fmt: skip


_HAD_TO = word_set("wait go be stay make take give learn find choose wear leave eat say")


@on_words("where when who")
def two_words_that_join(r: Reading, i: int) -> Found:
    """a place that where you feel calm.

    >>> show("Describe a place that where you feel calm.")
    ['extra-word: that -> ']
    >>> show("I know that when you sing I smile. He said that where we go is a secret.")
    []
    """
    if r.before(i) not in ("that", "which") or r.after(i) not in SUBJECTS:
        return None
    if r.before(i - 1) not in word_set(
        "place places time times day days person people year room town week moment"
    ):
        return None
    return too_many(r, i - 1)


@on_words("be")
def be_before_a_plain_verb(r: Reading, i: int) -> Found:
    """How can you be tell?

    >>> show("How can you be tell if it is ripe?")
    ['extra-word: be -> ']
    >>> show("Can you be quiet? It will be cut. We want to be set to go.")
    []
    """
    word = r.after(i)
    if (
        verb_forms(word) != {"VB"}
        or lemmas(word).keys() & {"ADJ", "ADV", "NOUN"}
        or word in AUXILIARIES
    ):
        return None
    return too_many(r, i)


@on_text()
def verb_twice(r: Reading) -> Found:
    """something that made make you smile; a day when you felt was proud.

    >>> show("Draw something that made make you smile.")
    ['extra-word: make -> ']
    >>> show("Write about a day when you felt was very proud.")
    ['extra-word: was -> ']
    >>> show("She had had lunch. What you felt was real.")
    []
    """
    found = []
    for i in range(1, r.n):
        if r.gap[i - 1] != " ":
            continue
        one, two = r.lower[i - 1], r.lower[i]
        if one in AUXILIARIES or one == two or r.tag[i - 1][:1] != "V" or r.tag[i][:1] != "V":
            continue
        own = lemmas(two).get("VERB", ())
        if (
            own
            and own == lemmas(one).get("VERB", ())
            and verb_forms(one) != {"VBG"}
            and "VBN" not in (verb_forms(two) - verb_forms(one))
        ) or (
            two in ("was", "were", "is")
            and one in _SEEMS
            and i > 1
            and r.near(i - 2)
            and r.lower[i - 2] in SUBJECTS
            and r.after(i)
            in word_set("very so really too happy sad proud angry scared tired sick brave")
            and not any(w in ("what", "how", "it", "that") for w in r.lower[: i - 1])
        ):
            found.append(too_many(r, i))
    return found


_SEEMS = word_set("feel felt feels look looked looks seem seemed seems get got gets became")


@on_words("to")
def to_behind_would(r: Reading, i: int) -> Found:
    """would you rather to live, let you to have, make him to go.

    >>> show("Would you rather to live in a castle? Let me to have a pet.")
    ['extra-word: to -> ', 'extra-word: to -> ']
    >>> show("Would you rather go to the zoo? What made it to the top? Let her to the front.")
    []
    """
    if "VB" not in verb_forms(r.after(i)) or r.after(i) in ("sleep",):
        return None
    before = r.before(i)
    if before in ("rather",) and any(w in ("would", "i'd", "he'd", "she'd") for w in r.lower[:i]):
        return too_many(r, i)
    if (
        before in OBJECTS | {"you"}
        and r.before(i - 1) in word_set("let lets")
        and not (
            is_noun(r.after(i))
            and r.lower[i + 1] not in ("have", "go", "play", "help", "use", "take", "ride")
        )
    ):
        return too_many(r, i)
    return None


@on_words("do does did")
def to_behind_do_you(r: Reading, i: int) -> Found:
    """Where do you to go?

    >>> show("Where do you to go after school?")
    ['extra-word: to -> ']
    >>> show("What do you do to help? What did he do to it? How do you get to go?")
    []
    """
    if (
        r.before(i) not in WH
        and not r.first[i]
        or r.after(i) not in SUBJECTS
        or r.after(i + 1) != "to"
    ):
        return None
    if "VB" not in verb_forms(r.after(i + 2)):
        return None
    return too_many(r, i + 2)


@on_words("are")
def are_before_who_does_it(r: Reading, i: int) -> Found:
    """Are teacher reads to us: our is meant.

    >>> show("Are teacher reads to us.")
    ['homophone: Are -> Our', 'end-mark: . -> ?']
    >>> show("Are teachers here? Are teacher jobs hard?")
    []
    """
    j = i + 1
    if not r.first[i] or j + 1 >= r.n or not r.near(i) or not r.near(j):
        return None
    if not is_noun(r.lower[j]) or r.lower[j].endswith("s") or r.text.rstrip()[-1:] == "?":
        return None
    if (
        not (is_verb_tag(r.tag[j + 1]) or verb_forms(r.lower[j + 1]) & {"VBZ", "VBD"})
        or r.tag[j + 1] == "VBG"
    ):
        return None
    return at(r, i, "homophone", "The word that is meant is “our”.", "our")


@on_words("is was")
def are_behind_is(r: Reading, i: int) -> Found:
    """What is are class going to do?

    >>> show("What is are class going to plant?")
    ['homophone: are -> our']
    """
    if r.after(i) != "are" or r.before(i) not in WH or not is_noun(r.after(i + 1)):
        return None
    if singular_of(r.lower[i + 2]):
        return None
    return at(r, i + 1, "homophone", "The word that is meant is “our”.", "our")
