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
    singular_of,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set, zipf
from bank.check.reading import Reading

_LETTERS = "abcdefghijklmnopqrstuvwxyz"
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
        if (
            r.lower[k] not in ARTICLES | POSSESSIVES - {"her"}
            or k == i - 1
            and r.lower[k] in ("a", "an")
            and False
        ):
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
        "far away back different home out came come comes down it card letter gift present note call apple eggs milk water book story fell run ran walk walked drove"
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


@on_words("same step day side room page face hand year piece bit little line inch")
def my_for_by(r: Reading, i: int) -> Found:
    """step my step.

    >>> show("Explain how to make it step my step.")
    ['homophone: my -> by']
    """
    if r.after(i) != "my" or r.after(i + 1) != r.lower[i]:
        return None
    return wrong_word(r, i + 1, "by")


@on_words("must")
def must_for_most(r: Reading, i: int) -> Found:
    """for must of the winter.

    >>> show("Bears sleep for must of the winter.")
    ['homophone: must -> most']
    """
    if (
        r.after(i) != "of"
        or r.before(i) in SUBJECTS
        or r.after(i + 1) not in DETERMINERS | {"us", "them", "it"}
    ):
        return None
    return wrong_word(r, i, "most")


@on_words("thought")
def thought_for_though(r: Reading, i: int) -> Found:
    """even thought it was late.

    >>> show("We crossed even thought the bridge looked weak.")
    ['homophone: thought -> though']
    >>> show("He even thought the soup was good.")
    []
    """
    if (
        r.before(i) != "even"
        or not r.first[i - 1]
        and r.lower[i - 2] in SUBJECTS | {"and"}
        or r.before(i - 1)
        and r.tag[i - 2][:1] == "N"
    ):
        return None
    return wrong_word(r, i, "though")


@on_words("well")
def well_for_we_will(r: Reading, i: int) -> Found:
    """Tomorrow well visit the farm.

    >>> show("Tomorrow well visit the farm. Next week well go to camp.")
    ["apostrophe-contraction: well -> we'll", "apostrophe-contraction: well -> we'll"]
    >>> show("Today went well. The dog can well be lost.")
    []
    """
    if "VB" not in verb_forms(r.after(i)) or r.after(i) in ("be", "done", "known"):
        return None
    before = r.before(i) or (r.lower[i - 1] if i and r.gap[i - 1] == ", " else "")
    if before not in word_set("tomorrow tonight later soon week month year then today"):
        return None
    return at(r, i, "apostrophe-contraction", "“We will” is written “we'll”.", "we'll")


@on_words("its")
def its_for_it_is_before_to(r: Reading, i: int) -> Found:
    """Do you think its fair to go?

    >>> show("Do you think its fair to go? I know its hard to wait.")
    ["apostrophe-contraction: its -> it's", "apostrophe-contraction: its -> it's"]
    """
    if "ADJ" not in lemmas(r.after(i)) or r.after(i + 1) not in ("to", "that", "for", "when", "if"):
        return None
    if r.before(i) not in word_set(
        "think know say says said hope sure because when if feel believe that guess"
    ):
        return None
    return at(r, i, "apostrophe-contraction", "“It is” is written “it's”.", "it's")


@on_words("it's")
def it_is_before_what_it_owns(r: Reading, i: int) -> Found:
    """explain how it's body helps it.

    >>> show("Explain how it's body helps it. The bird hurt it's wing.")
    ["homophone: it's -> its", "homophone: it's -> its"]
    >>> show("It's food that I like. It's fun. I know how it's done.")
    []
    """
    word = r.after(i)
    if word not in word_set(
        "body wing wings tail head nest leg legs paw paws fur eggs mouth nose ears eyes home shell shape color size name owner babies mother young skin feathers roots leaves"
    ):
        return None
    before = r.before(i)
    if not before or before in ("and", "but", "because", "think", "if", "that", "when"):
        return None
    if (
        before not in PREPOSITIONS
        and before != "how"
        and not is_verb_tag(r.tag[i - 1])
        and not verb_forms(before)
    ):
        return None
    return wrong_word(r, i, "its")


_DAYS_OF = word_set("mothers fathers valentines presidents groundhogs new-years years patricks")


@on_words("day eve")
def day_without_its_apostrophe(r: Reading, i: int) -> Found:
    """Mothers Day, New Years Eve.

    >>> show("I made a card for Mothers Day. It was New Years Eve.")
    ["apostrophe-possessive: Mothers -> Mother's", "apostrophe-possessive: Years -> Year's"]
    >>> show("Veterans Day is here. It took two years. Day by day.")
    []
    """
    before = r.before(i)
    if (
        before not in _DAYS_OF
        or before == "years"
        and r.before(i - 1) != "new"
        or before == "presidents"
    ):
        return None
    if r.words[i - 1][0].islower() and before == "years":
        return None
    right = r.words[i - 1][:-1] + "'s"
    return at(r, i - 1, "apostrophe-possessive", f"This is written “{right}”.", right)


@on_words("are were have do")
def owner_for_many(r: Reading, i: int) -> Found:
    """The cat's are asleep.

    >>> show("The cat's are asleep on the porch.")
    ["apostrophe-possessive: cat's -> cats"]
    >>> show("Which of the cat's are white? The dog's are bigger than the cat's.")
    []
    """
    owner = r.before(i)
    if (
        not owner.endswith("'s")
        or r.before(i - 1) not in ARTICLES | POSSESSIVES | {"these", "those", "both"}
        or not r.first[i - 2]
    ):
        return None
    word = owner[:-2]
    many = plural_of(word)
    if many is None or "than" in r.lower or singular_of(word):
        return None
    return at(r, i - 1, "apostrophe-possessive", "More than one needs no apostrophe.", many)


@on_words("hear")
def hear_at_the_end(r: Reading, i: int) -> Found:
    """Put your lunch boxes hear.

    >>> show("Please put your lunch boxes hear.")
    ['homophone: hear -> here']
    >>> show("What did the children hear? He spoke so that all could hear. I like what I hear.")
    []
    """
    if r.after(i) or r.gap[i].strip()[:1] not in (".", "!") or i < 2:
        return None
    if r.lower[0] not in word_set(
        "please put leave bring set keep sit stand wait stop"
    ) or not is_noun(r.before(i)):
        return None
    if any(w in AUXILIARIES or w in ("to", "what", "that") for w in r.lower[:i]):
        return None
    return wrong_word(r, i, "here")


@on_words("won")
def won_before_a_thing(r: Reading, i: int) -> Found:
    """gave me won shiny marble.

    >>> show("Grandpa gave me won shiny marble.")
    ['homophone: won -> one']
    >>> show("He won big prizes. They won nice hats. It made me happy.")
    []
    """
    if r.before(i) not in (
        "me",
        "him",
        "us",
        "them",
        "only",
        "have",
        "just",
        "with",
        "and",
        "for",
    ) or not r.near(i):
        return None
    if r.before(i) in ("have", "and", "only", "just") and r.tag[i] in ("VBD", "VBN"):
        return None
    j = i + 1
    if r.tag[j][:2] == "JJ" and r.near(j):
        j += 1
    if r.lower[j] in FUNCTION or not plural_of(r.lower[j]):
        return None
    return wrong_word(r, i, "one")


@on_words("affect effect")
def effect_or_affect(r: Reading, i: int) -> Found:
    """What affect did it have?

    >>> show("What affect did the storm have? It will effect the crops.")
    ['homophone: affect -> effect', 'homophone: effect -> affect']
    >>> show("How did it affect you? The effect was big. How does sleep affect us?")
    []
    """
    before, after = r.before(i), r.after(i)
    if r.lower[i] == "affect":
        named = before in DETERMINERS | {"big", "bad", "good", "main", "strong"}
        return (
            wrong_word(r, i, "effect")
            if named and (after in DO | BE | MODALS | PREPOSITIONS | {"of"} or not after)
            else None
        )
    verb = before in MODALS | DO | {"to", "not"} and after in DETERMINERS | {
        "us",
        "you",
        "me",
        "them",
        "people",
        "how",
    }
    return wrong_word(r, i, "affect") if verb else None
