"""A word where no word of its sort can stand: the filed, in you family, a bird built a next."""

from __future__ import annotations

from functools import cache

from bank.check.confused_help import wrong_word
from bank.check.engine import Found, at, on_text, on_words
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    DO,
    FUNCTION,
    HAVE,
    MODALS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    is_noun,
    is_verb_tag,
    plural_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set, zipf
from bank.check.reading import Reading

_LETTERS = "abcdefghijklmnopqrstuvwxyz"
_OPENERS = ARTICLES | POSSESSIVES - {"her"}
_MET = 3.4
"""How often (Zipf) a noun is met at least that may be meant."""


@cache
def noun_one_letter_away(word: str) -> str | None:
    """The commonest noun that is one letter from `word`, or None.

    >>> noun_one_letter_away("filed"), noun_one_letter_away("blanked")
    ('field', 'blanket')
    """
    cuts = [(word[:k], word[k:]) for k in range(len(word) + 1)]
    near = {a + b[1] + b[0] + b[2:] for a, b in cuts if len(b) > 1}
    near |= {a + c + b[1:] for a, b in cuts if b for c in _LETTERS}
    nouns = [
        w
        for w in near
        if w != word and is_noun(w) and zipf(w) >= _MET and not verb_forms(w) & {"VBD"}
    ]
    return max(nouns, key=zipf, default=None)


@on_text()
def no_thing_behind_its_small_word(r: Reading) -> Found:
    """the filed., a warm blanked., built a next in.

    >>> show("The cows eat grass in the filed. The kitten slept on a warm blanked.")
    ['homophone: filed -> field', 'homophone: blanked -> blanket']
    >>> show("I like the red. She is the best. He is one of the injured. We took the next.")
    []
    """
    found = []
    for i in range(1, r.n):
        if not (r.lower[i - 1] in _OPENERS or i > 1 and r.lower[i - 2] in _OPENERS):
            continue
        word = r.lower[i]
        if word in FUNCTION or len(word) < 4 or "'" in word or r.words[i][0].isupper():
            continue
        own = lemmas(word)
        if not own or own.keys() & {"NOUN", "ADJ", "ADV"} or not own.keys() & {"VERB"}:
            continue
        if verb_forms(word) & {"VBG", "VBZ"} or word in ("lost", "found", "injured", "accused"):
            continue
        ends = i + 1 == r.n or r.gap[i].strip()[:1] in (".", "!", "?", ",")
        if not ends and r.after(i) not in ("in", "on", "with", "and", "under", "near"):
            continue
        k = i - 1
        if not r.near(k):
            continue
        if r.tag[k][:2] == "JJ" and "ADJ" in lemmas(r.lower[k]) and r.near(k - 1):
            k -= 1
        if r.lower[k] not in _OPENERS:
            continue
        meant = noun_one_letter_away(word)
        if meant is not None:
            found.append(wrong_word(r, i, meant, r.lower[k] != "the" or ends))
    return found


_KIN = word_set(
    "family mom dad mother father brother sister grandma grandpa friend friends teacher class school "
    "house home room dog cat pet birthday name favorite own best life bed desk backpack hair hand "
    "hands eyes head shoes coat lunch street town neighborhood neighbor classmate classroom body"
)


@on_words("you")
def you_for_your(r: Reading, i: int) -> Found:
    """in you family, you favorite color.

    >>> show("Tell about the kindest person in you family. What is you favorite color?")
    ['pronoun: you -> your', 'pronoun: you -> your']
    >>> show("We see you friends at noon. I told you Mom called. Can you name it? Are you home?")
    []
    """
    after, before = r.after(i), r.before(i)
    if after not in _KIN or r.words[i + 1][0].isupper():
        return None
    place = before in PREPOSITIONS - {"like", "for", "to"} | {"for", "to"} and (
        after
        in (
            "family",
            "mom",
            "dad",
            "friend",
            "teacher",
            "class",
            "school",
            "house",
            "room",
            "favorite",
            "birthday",
            "best",
            "own",
        )
    )
    asked = (
        before in BE
        and i > 1
        and r.lower[i - 2] in ("what", "who", "where", "when", "how")
        and after not in ("home", "best", "own")
    )
    if not place and not asked:
        return None
    if after in ("home", "own", "best", "name", "head", "hand") and not place:
        return None
    return at(r, i, "pronoun", "The word that is meant is “your”.", "your")


@on_words("your")
def your_for_you(r: Reading, i: int) -> Found:
    """did your see.

    >>> show("What did your see on the walk?")
    ['pronoun: your -> you']
    >>> show("Did your watch stop? Do your best. Can your dog swim?")
    []
    """
    if r.before(i) not in DO | MODALS or r.first[i - 1] and r.lower[i - 1] == "do":
        return None
    word = r.after(i)
    if (
        "VB" not in verb_forms(word)
        or lemmas(word).keys() & {"NOUN", "ADJ"}
        and word
        not in (
            "see",
            "like",
            "think",
            "feel",
            "live",
            "eat",
            "do",
            "want",
            "have",
            "use",
            "find",
            "make",
            "go",
            "hear",
            "need",
        )
    ):
        return None
    return at(r, i, "pronoun", "The word that is meant is “you”.", "you")


@on_words("form")
def form_for_from(r: Reading, i: int) -> Found:
    """a letter form my grandma.

    >>> show("I got a letter form my grandma. How far is it form here?")
    ['homophone: form -> from', 'homophone: form -> from']
    >>> show("Clouds form the sky's roof. We form a line. Fill in the form my mom sent. They form it.")
    []
    """
    before, after = r.before(i), r.after(i)
    behind = (
        after in POSSESSIVES | {"the", "me", "him", "here", "there", "where"}
        or r.near(i)
        and r.words[i + 1][0].isupper()
    )
    if (
        not behind
        or before in DETERMINERS | SUBJECTS - {"it"} | {"to", "and", "not"}
        or before in MODALS | DO
    ):
        return None
    far = before in word_set(
        "far away back different home out came come comes down it card letter gift present note call apple "
        "eggs milk water book story fell run ran walk walked drove got"
    )
    return wrong_word(r, i, "from") if far else None


@on_words("the")
def the_for_then(r: Reading, i: int) -> Found:
    """and the we dip.

    >>> show("First, we mix it, and the we dip the brush.")
    ['homophone: the -> then']
    """
    if r.before(i) not in ("and", "but") or r.after(i) not in ("we", "he", "she", "they", "i"):
        return None
    return wrong_word(r, i, "then")


@on_words("he")
def he_for_the(r: Reading, i: int) -> Found:
    """trick he crow.

    >>> show("How did the fox trick he crow?")
    ['homophone: he -> the']
    >>> show("Did he plan it? I hope he plays.")
    []
    """
    after, before = r.after(i), r.before(i)
    if (
        not before
        or not is_verb_tag(r.tag[i - 1])
        and "VB" not in verb_forms(before)
        or before in AUXILIARIES
    ):
        return None
    if (
        not is_noun(after)
        or "VB" not in verb_forms(before)
        or not plural_of(after)
        or r.after(i + 1)
    ):
        return None
    if DO.isdisjoint(r.lower[: i - 1]) or verb_forms(after) & {"VBD", "VBZ"}:
        return None
    return wrong_word(r, i, "the")


@on_words("one")
def one_for_on(r: Reading, i: int) -> Found:
    """The bread is one the table.

    >>> show("The bread is one the table. She sat one my hat.")
    ['homophone: one -> on', 'homophone: one -> on']
    >>> show("I want one the size of a pea.")
    []
    """
    if r.before(i) not in word_set(
        "is are was were sat sits sit lies lay stands stood sleeps slept"
    ) or not r.near(i):
        return None
    if r.after(i) not in ("the", "my", "his", "her", "our", "their", "your", "a") or r.tag[
        i + 2 : i + 3
    ] not in (["NN"], ["NNS"]):
        return None
    follows = r.after(i + 2)
    if follows and (is_verb_tag(r.tag[i + 3]) or follows in SUBJECTS | {"of", "that"}):
        return None
    return wrong_word(r, i, "on")


@on_words("an")
def an_for_and(r: Reading, i: int) -> Found:
    """an some grapes.

    >>> show("I ate a bun, an then I slept.")
    ['homophone: an -> and']
    """
    if r.after(i) not in DETERMINERS - {"other"} | SUBJECTS | {"then"}:
        return None
    return wrong_word(r, i, "and")


@on_words("how")
def how_for_who(r: Reading, i: int) -> Found:
    """a person how always makes you laugh.

    >>> show("Describe a person how always makes you laugh.")
    ['homophone: how -> who']
    >>> show("Teach a person how to swim. Tell a friend how always helps.")
    ['homophone: how -> who']
    """
    if r.before(i) not in word_set(
        "person people someone somebody man woman boy girl child kid friend student teacher anyone everyone"
    ):
        return None
    if r.after(i) not in word_set(
        "always never is has had was can will likes lives makes helps loves works helped lived made"
    ):
        return None
    if r.after(i) in AUXILIARIES - HAVE and r.before(i - 1) not in ("a", "the", "every", "each"):
        return None
    return wrong_word(r, i, "who")
