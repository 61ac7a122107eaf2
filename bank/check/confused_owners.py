"""Whose it is, and who is: their, there and they're; your and you're; its and it's."""

from __future__ import annotations

from bank.check.articles import countable
from bank.check.confused_help import (
    bare_thing,
    ing_form,
    only_describes,
    thing_at,
    verb_behind,
    wrong_word,
)
from bank.check.engine import Found, at, on_words
from bank.check.grammar import (
    AUXILIARIES,
    BE,
    JOINERS,
    MODALS,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    is_verb_tag,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

_PLACE_WORDS = word_set(
    "over in up down out under right go went stay live sit sat from put been back"
)
_PREDICATES = word_set(
    "not so very too a an the always never really just all almost both my his her our going gonna "
    "here there"
)


@on_words("their")
def their_for_there_or_they_are(r: Reading, i: int) -> Found:
    """their where there or they're is meant.

    >>> show("Their are two bees over their.")
    ['homophone: Their -> There', 'homophone: their -> there']
    """
    after = r.after(i)
    if (
        after in BE | {"isn't", "aren't", "wasn't", "weren't"}
        or after in MODALS
        or after in word_set("seems seemed has have had goes lived")
    ):
        return wrong_word(r, i, "there")
    if (
        not after
        or r.before(i) in BE
        and after in word_set("any some a an many enough more no two")
    ):
        return wrong_word(r, i, "there")
    if (
        after in _PREDICATES
        or ing_form(r, i + 1)
        and not thing_at(r, i + 2)
        or only_describes(r, i + 1)
    ):
        return wrong_word(r, i, "they're")
    if (
        r.before(i) in ("over", "down", "out", "up")
        and after in PREPOSITIONS | JOINERS
        or after in PREPOSITIONS
    ):
        return wrong_word(r, i, "there")
    return None


@on_words("there")
def there_for_their(r: Reading, i: int) -> Found:
    """there where their or they're is meant.

    >>> show("There dog barks all night.")
    ['homophone: There -> Their']
    >>> show("There goes the bus. I have been there before.")
    []
    """
    j = i + 1
    if not r.near(i):
        return None
    if r.before(i) in word_set("is are was were over out be"):
        return None
    if (
        ing_form(r, j)
        and (r.first[i] or r.before(i) in word_set("because when that and if but"))
        and r.after(j)
    ):
        return wrong_word(r, i, "they're", r.first[i])
    owner = r.lower[j].endswith("'s") and is_noun(r.lower[j][:-2]) and r.near(j)
    if not owner and (not thing_at(r, j) or verb_forms(r.lower[j]) and is_verb_tag(r.tag[j])):
        return None
    before = r.before(i)
    if r.first[i]:
        return wrong_word(r, i, "their", True)
    if (
        before in PREPOSITIONS
        or before in ("and", "all")
        or is_verb_tag(r.tag[i - 1])
        and before
        not in word_set(
            """
            go went goes been live lived stay stood get got sat sit going come came
            is
            """
        )
    ):
        return wrong_word(
            r, i, "their", r.lower[j] not in ("today", "tomorrow", "yesterday", "night", "morning")
        )
    return None


@on_words("they're there's")
def they_are_for_their(r: Reading, i: int) -> Found:
    """they're where their or there is meant.

    >>> show("They're house is big. They're are two swings.")
    ["homophone: They're -> Their", "homophone: They're -> There"]
    """
    after = r.after(i)
    if r.lower[i] == "there's":
        return None
    if after in BE - {"being"}:
        return wrong_word(r, i, "there")
    if (
        r.before(i) in ("over", "up", "down", "out")
        or not after
        and r.gap[i].strip()[:1] in (".", "?", "!")
    ):
        return wrong_word(r, i, "there", not after)
    j = i + 1
    if not after or not bare_thing(r, j):
        return None
    word = r.lower[j]
    if (
        r.before(i) in PREPOSITIONS
        or r.before(i)
        and is_verb_tag(r.tag[i - 1])
        and r.before(i) not in ("think", "know", "say", "said", "hope")
    ):
        return wrong_word(r, i, "their")
    if countable(word) and r.after(j) or verb_behind(r, j):
        return wrong_word(r, i, "their", verb_behind(r, j))
    return None


@on_words("your")
def your_for_you_are(r: Reading, i: int) -> Found:
    """your where you're is meant.

    >>> show("Your my best friend. I know your tired.")
    ["homophone: Your -> You're", "homophone: your -> you're"]
    """
    after = r.after(i)
    if (
        after in _PREDICATES
        or after in ("welcome", "right", "wrong", "late", "okay")
        and only_describes(r, i + 1)
        or after in ("in", "on", "at", "from", "with")
    ):
        if after in ("all", "almost") and is_noun(r.after(i + 1)) and after != "all":
            return None
        return wrong_word(r, i, "you're")
    if not after:
        return None
    if after in word_set("having being going getting doing coming making trying") and (
        r.first[i]
        or r.before(i) in word_set("hope think know glad if when that because sure sorry")
    ):
        return wrong_word(r, i, "you're")
    if (
        ing_form(r, i + 1)
        and not thing_at(r, i + 2)
        and (r.after(i + 1) or r.first[i])
        and r.after(i + 1) not in ("is", "was", "of")
    ):
        return wrong_word(r, i, "you're", r.tag[i + 1] == "VBG")
    if only_describes(r, i + 1) and not is_noun(after):
        return wrong_word(r, i, "you're")
    return None


@on_words("you're")
def you_are_for_your(r: Reading, i: int) -> Found:
    """you're where your is meant.

    >>> show("Is that you're coat?")
    ["homophone: you're -> your"]
    """
    j = i + 1
    if not bare_thing(r, j):
        return None
    before = r.before(i)
    word = r.lower[j]
    if before and (
        before in PREPOSITIONS
        or before in BE
        or before in ("that", "this")
        and r.lower[i - 2 : i - 1]
        and r.lower[i - 2] in BE
        or is_verb_tag(r.tag[i - 1])
        and before not in word_set("think know say said hope sure guess hear see")
    ):
        return wrong_word(r, i, "your")
    if verb_behind(r, j):
        return wrong_word(r, i, "your")
    if word in word_set(
        """
        name mom dad dog cat shoes turn favorite teacher friends hands house own
        """
    ) and word not in ("friends",):
        return wrong_word(r, i, "your")
    if countable(word) and not r.first[i]:
        return wrong_word(r, i, "your", False)
    return None


@on_words("it's")
def it_is_for_its(r: Reading, i: int) -> Found:
    """it's where its is meant.

    >>> show("The cat licked it's paw.")
    ["homophone: it's -> its"]
    """
    j = i + 1
    if not bare_thing(r, j) or r.lower[j] in word_set(
        """
        time fun night day winter summer spring fall lunch noon okay home lunchtime
        bedtime midnight christmas people rain snow
        """
    ):
        return None
    before = r.before(i)
    if before and (
        before in PREPOSITIONS - {"like", "until", "before", "after", "because"}
        or is_verb_tag(r.tag[i - 1])
        and before
        not in word_set("think know say said says thinks hope guess bet thought knew means")
        or before in ("and", "all", "both")
        and verb_behind(r, j)
    ):
        return at(
            r,
            i,
            "homophone",
            "For what belongs to it write “its”.",
            "its",
            before not in ("and",),
        )
    if verb_behind(r, j) and (singular_of(r.lower[j]) or r.lower[j + 1] in AUXILIARIES):
        return at(r, i, "homophone", "For what belongs to it write “its”.", "its")
    return None


@on_words("who's whose")
def whose_or_who_is(r: Reading, i: int) -> Found:
    """whose for the owner, who's for who is.

    >>> show("Who's shoe is this? Whose going to the park?")
    ["homophone: Who's -> Whose", "homophone: Whose -> Who's"]
    """
    j = i + 1
    if not r.near(i):
        return None
    after = r.lower[j]
    if r.lower[i] == "who's":
        if (
            bare_thing(r, j)
            and (verb_behind(r, j) or not r.after(j))
            and "ADJ" not in lemmas(after)
        ):
            return wrong_word(r, i, "whose")
        return None
    if (
        after in word_set("the a an not been your my there at in on going ready that it")
        or ing_form(r, j)
        and not thing_at(r, j + 1)
        or only_describes(r, j)
        and not is_noun(after)
    ):
        return wrong_word(r, i, "who's")
    return None


@on_words("are our hour")
def are_or_our(r: Reading, i: int) -> Found:
    """are, our and hour.

    >>> show("We love are dog. They our happy.")
    ['homophone: are -> our', 'homophone: our -> are']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    j = i + 1
    if word == "are":
        if (
            before
            and (
                r.tag[i - 1][:1] == "V"
                or "VBG" in verb_forms(before)
                and i > 1
                and r.lower[i - 2] in PREPOSITIONS
            )
            and before not in AUXILIARIES
            and thing_at(r, j)
            and not any(
                w in WH or w in ("that", "there", "who") for w in r.lower[max(0, i - 5) : i]
            )
            and r.lower[i - 2 : i - 1] != ["to"]
        ):
            return wrong_word(r, i, "our", "VBD" in verb_forms(before) and not is_noun(before))
        if (
            (
                before in PREPOSITIONS
                or before
                in word_set(
                    """
                    love loves like clean cleaned fed visited brought ate
                    washed lost found wore opened took packed forgot is was
                    this did
                    """
                )
            )
            and thing_at(r, j)
            and not (r.first[i - 1] and before in ("is", "was"))
        ):
            if i > 1 and any(w in WH or w in ("that", "there") for w in r.lower[max(0, i - 4) : i]):
                return None
            if (
                before in PREPOSITIONS
                and any(r.tag[k] == "NNS" or r.lower[k] in SUBJECTS for k in range(i))
                and not any(is_verb_tag(r.tag[k]) for k in range(i))
            ):
                return None
            return wrong_word(r, i, "our", before not in ("is", "this", "did", "was"))
        return None
    if word == "our":
        if (
            before in word_set("they you we there where what how these those who")
            or r.tag[i - 1 : i] == ["NNS"]
            and r.before(i)
        ) and (
            ing_form(r, j)
            or after
            in word_set(
                """
                a the you they not so very we two going in on at many three four
                five my your
                """
            )
            or only_describes(r, j)
        ):
            return wrong_word(r, i, "are")
        return None
    if (
        thing_at(r, j)
        and before not in word_set("an half one the this each every per")
        and not before.endswith("-")
        and (before in PREPOSITIONS or is_verb_tag(r.tag[i - 1]) or r.first[i])
    ):
        return wrong_word(r, i, "our", False)
    return None
