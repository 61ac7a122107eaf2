"""Small words that are often taken for one another: their and there, to and too, than and then."""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    FUNCTION,
    JOINERS,
    MANY,
    MODALS,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    is_verb_tag,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, pair, word_set
from bank.check.names import is_name
from bank.check.nouns import countable
from bank.check.reading import Reading

_PLACE_WORDS = word_set(
    "over in up down out under right go went stay live sit sat from put been back"
)
_PREDICATES = word_set(
    "not so very too a an the always never really just all almost both my his her our going gonna "
    "here there"
)


def _wrong(r: Reading, i: int, right: str, certain: bool = True) -> Finding:
    return at(r, i, "homophone", f"The word that is meant is “{right}”.", right, certain)


def _thing_at(r: Reading, j: int) -> bool:
    """Whether a thing with nothing before it but describing words starts at word `j`."""
    if j >= r.n or r.gap[j - 1] != " ":
        return False
    if (
        r.tag[j][:2] == "JJ"
        and r.near(j)
        and r.lower[j] not in FUNCTION
        and is_noun(r.lower[j + 1])
        and r.tag[j + 1][:1] == "N"
    ):
        return True
    return is_noun(r.lower[j]) and r.tag[j] in ("NN", "NNS") and r.lower[j] not in FUNCTION


def _bare_thing(r: Reading, j: int) -> bool:
    """Like `_thing_at`, where the parse cannot be trusted because a short verb stands before."""
    if _thing_at(r, j):
        return True
    if j >= r.n or r.gap[j - 1] != " ":
        return False
    word = r.lower[j]
    return (
        is_noun(word) and "ADJ" not in lemmas(word) and not verb_forms(word) & {"VBG", "VBN", "VBD"}
    )


def _ing(r: Reading, j: int) -> bool:
    return (
        j < r.n
        and r.lower[j].endswith("ing")
        and "VBG" in verb_forms(r.lower[j])
        and r.lower[j]
        not in word_set(
            """
            building drawing painting wedding meeting clothing ceiling morning
            evening feeling writing reading stocking ring king wing
            """
        )
    )


def _only_describes(r: Reading, j: int) -> bool:
    """Whether word `j` describes and nothing that it could describe follows."""
    if j >= r.n:
        return False
    word = r.lower[j]
    if "ADJ" not in lemmas(word) or word in FUNCTION or word in ("own", "first", "last", "next"):
        return False
    after = r.after(j)
    return (
        not after
        or after in PREPOSITIONS | JOINERS | {"to", "too", "at", "today", "now"}
        and not is_noun(word)
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
        return _wrong(r, i, "there")
    if not after:
        return _wrong(r, i, "there")
    if (
        after in _PREDICATES
        or _ing(r, i + 1)
        and not _thing_at(r, i + 2)
        or _only_describes(r, i + 1)
    ):
        return _wrong(r, i, "they're")
    if (
        r.before(i) in ("over", "down", "out", "up")
        and after in PREPOSITIONS | JOINERS
        or after in PREPOSITIONS
    ):
        return _wrong(r, i, "there")
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
        _ing(r, j)
        and (r.first[i] or r.before(i) in word_set("because when that and if but"))
        and r.after(j)
    ):
        return _wrong(r, i, "they're", r.first[i])
    if not _thing_at(r, j) or verb_forms(r.lower[j]) and is_verb_tag(r.tag[j]):
        return None
    before = r.before(i)
    if r.first[i]:
        return _wrong(r, i, "their", True)
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
        return _wrong(
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
        return _wrong(r, i, "there")
    if (
        r.before(i) in ("over", "up", "down", "out")
        or not after
        and r.gap[i].strip()[:1] in (".", "?", "!")
    ):
        return _wrong(r, i, "there", not after)
    j = i + 1
    if not after or not _bare_thing(r, j):
        return None
    word = r.lower[j]
    if (
        r.before(i) in PREPOSITIONS
        or r.before(i)
        and is_verb_tag(r.tag[i - 1])
        and r.before(i) not in ("think", "know", "say", "said", "hope")
    ):
        return _wrong(r, i, "their")
    if countable(word) and r.after(j) or _verb_behind(r, j):
        return _wrong(r, i, "their", _verb_behind(r, j))
    return None


def _verb_behind(r: Reading, j: int) -> bool:
    if j < r.n - 1 and r.tag[j][:2] == "JJ" and r.near(j):
        j += 1
    after = r.after(j)
    return bool(after) and (
        after in AUXILIARIES or r.tag[j + 1] in ("VBZ", "VBD", "VBP") and bool(verb_forms(after))
    )


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
        and _only_describes(r, i + 1)
        or after in ("in", "on", "at", "from", "with")
    ):
        if after in ("all", "almost") and is_noun(r.after(i + 1)) and after != "all":
            return None
        return _wrong(r, i, "you're")
    if not after:
        return None
    if after in word_set("having being going getting doing coming making trying") and (
        r.first[i]
        or r.before(i) in word_set("hope think know glad if when that because sure sorry")
    ):
        return _wrong(r, i, "you're")
    if (
        _ing(r, i + 1)
        and not _thing_at(r, i + 2)
        and (r.after(i + 1) or r.first[i])
        and r.after(i + 1) not in ("is", "was", "of")
    ):
        return _wrong(r, i, "you're", r.tag[i + 1] == "VBG")
    if _only_describes(r, i + 1) and not is_noun(after):
        return _wrong(r, i, "you're")
    return None


@on_words("you're")
def you_are_for_your(r: Reading, i: int) -> Found:
    """you're where your is meant.

    >>> show("Is that you're coat?")
    ["homophone: you're -> your"]
    """
    j = i + 1
    if not _bare_thing(r, j):
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
        return _wrong(r, i, "your")
    if _verb_behind(r, j):
        return _wrong(r, i, "your")
    if word in word_set(
        """
        name mom dad dog cat shoes turn favorite teacher friends hands house own
        """
    ) and word not in ("friends",):
        return _wrong(r, i, "your")
    if countable(word) and not r.first[i]:
        return _wrong(r, i, "your", False)
    return None


@on_words("it's")
def it_is_for_its(r: Reading, i: int) -> Found:
    """it's where its is meant.

    >>> show("The cat licked it's paw.")
    ["homophone: it's -> its"]
    """
    j = i + 1
    if not _bare_thing(r, j) or r.lower[j] in word_set(
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
        and _verb_behind(r, j)
    ):
        return at(
            r,
            i,
            "homophone",
            "For what belongs to it write “its”.",
            "its",
            before not in ("and",),
        )
    if _verb_behind(r, j) and (singular_of(r.lower[j]) or r.lower[j + 1] in AUXILIARIES):
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
            _bare_thing(r, j)
            and (_verb_behind(r, j) or not r.after(j))
            and "ADJ" not in lemmas(after)
        ):
            return _wrong(r, i, "whose")
        return None
    if (
        after in word_set("the a an not been your my there at in on going ready that it")
        or _ing(r, j)
        and not _thing_at(r, j + 1)
        or _only_describes(r, j)
        and not is_noun(after)
    ):
        return _wrong(r, i, "who's")
    return None


_WANTS = word_set(
    "want wants wanted need needs needed like likes liked love loves loved have has had going "
    "used try tried able ready hope about how"
)


@on_words("to")
def to_for_too_or_two(r: Reading, i: int) -> Found:
    """to where too or two is meant.

    >>> show("The soup is to hot. I have to cats.")
    ['homophone: to -> too', 'homophone: to -> two']
    >>> show("I like to read to kids. She goes to bed.")
    []
    """
    after = r.after(i)
    before = r.before(i)
    if after in word_set("much many few late soon bad little") and after != "little":
        return _wrong(r, i, "too", before not in ("from", "due"))
    if not after:
        mark = r.gap[i].strip()[:1]
        if (
            mark in (".", "!", "?", "")
            and before
            and before not in _WANTS
            and (
                before in OBJECTS | POSSESSIVES | SUBJECTS
                or is_noun(before)
                or r.tag[i - 1] in ("RB", "NN", "NNS", "VB")
            )
            and mark
        ):
            if any(w in WH for w in r.lower[:i]):
                return None
            if r.text.rstrip().endswith("?"):
                return (
                    _wrong(r, i, "too", False)
                    if before in word_set("come go play help sing me")
                    else None
                )
            return _wrong(r, i, "too", before in word_set("me it him her them us you"))
        return None
    j = i + 1
    if r.words[j][0].isupper() or is_name(r.after(j)):
        return None
    if (
        after in _FEELS | {"quickly", "slowly", "loudly"}
        and not r.after(j)
        and before
        and r.tag[i - 1] in ("VBD", "VBZ", "VBP", "VB")
    ):
        return _wrong(r, i, "too")
    if (
        "ADJ" in lemmas(after)
        and "VB" not in verb_forms(after)
        and not is_noun(after)
        and after not in FUNCTION
    ):
        if (
            before in ("due", "next", "close", "belongs", "belong")
            or is_noun(r.after(j))
            and r.tag[j + 1][:1] == "N"
        ):
            return None
        return _wrong(
            r,
            i,
            "too",
            before in AUXILIARIES
            or before in word_set("it's that's he's she's feels way far looks got just seems"),
        )
    if (
        (
            before in BE
            or before in word_set("it's that's he's she's i'm looks feels tastes seems way")
        )
        and "ADJ" in lemmas(after)
        and (
            after
            in word_set(
                """
                cold hot warm dry slow cool wet clean open dark light hard fast
                short thin dirty quiet loud full empty busy tired sour sweet
                long low close right
                """
            )
        )
        and (not r.after(j) or r.after(j) in ("to", "for", "and", "in", "today"))
    ):
        return _wrong(r, i, "too", r.after(j) != "in")
    if (
        singular_of(after)
        and r.tag[j] == "NNS"
        and "VB" not in verb_forms(after)
        and (
            before
            in word_set(
                """
                have has had see saw ate found bought got are were the my has
                eat need make made drew caught only about wants
                """
            )
        )
    ):
        if before in ("are", "were") and not (i > 1 and r.lower[i - 2] in ("there", "here")):
            return None
        return _wrong(r, i, "two")
    return None


_THESE = word_set("this these those")
_FEELS = word_set(
    "small big hot cold tall short loud long old young hard soft heavy slow fast late wet dry "
    "tight far high low"
)


@on_words("too two")
def too_or_two_for_to(r: Reading, i: int) -> Found:
    """too or two where to is meant, and one for the other.

    >>> show("I want too go two the park.")
    ['homophone: too -> to', 'homophone: two -> to']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    j = i + 1
    if not after:
        if (
            word == "two"
            and r.gap[i].strip()[:1] in (".", "!")
            and before in word_set("me it him her them us you")
        ):
            return _wrong(r, i, "too", False)
        return None
    plain = "VB" in verb_forms(after) or after in ("be", "have", "do")
    if word == "too":
        if (
            before in word_set("see saw have has had the my are got ate")
            and "ADJ" in lemmas(after)
            and singular_of(r.after(j))
        ):
            return _wrong(r, i, "two")
        if after in ARTICLES | POSSESSIVES | OBJECTS - {"her"} | _THESE or after in word_set(
            "school bed work town church them him"
        ):
            return _wrong(r, i, "to")
        if plain and before and "ADJ" not in lemmas(after) and after not in FUNCTION - AUXILIARIES:
            return _wrong(r, i, "to", before in _WANTS or is_verb_tag(r.tag[i - 1]))
        if before in _WANTS and plain:
            return _wrong(r, i, "to")
        if singular_of(after) and r.tag[j] == "NNS" and "ADJ" not in lemmas(after):
            return _wrong(
                r,
                i,
                "two" if before in word_set("have has had see saw the my are ate got") else "to",
            )
        if r.words[j][0].isupper() and not r.first[j] and r.words[j] != "I":
            return _wrong(r, i, "to", False)
        return None
    if (
        after in DETERMINERS - {"which", "what", "whose", "all", "both", "those", "these"}
        or plain
        and before in _WANTS
        and not is_noun(after)
        or after in word_set("me him them us school bed")
    ):
        return _wrong(r, i, "to")
    if plain and before in _WANTS and r.after(j) in DETERMINERS | PREPOSITIONS:
        return _wrong(r, i, "to")
    if (
        after in ("much", "many")
        or "ADJ" in lemmas(after)
        and before in BE
        and (not r.after(j) or r.after(j) in ("to", "for"))
        and not is_noun(after)
    ):
        return _wrong(r, i, "too")
    return None


_COMPARES = word_set(
    "more less rather other fewer better worse older younger elder farther further sooner later "
    "faster"
)


def _comparative(r: Reading, i: int) -> bool:
    word = r.lower[i]
    return (
        word in _COMPARES
        or r.tag[i] in ("JJR", "RBR")
        or word.endswith("er")
        and len(word) > 4
        and bool(set(lemmas(word).get("ADJ", ())) - {word})
    )


@on_words("then")
def then_for_than(r: Reading, i: int) -> Found:
    """then where than is meant.

    >>> show("She is taller then me.")
    ['homophone: then -> than']
    >>> show("First we ate more, and then we slept.")
    []
    """
    if i == 0 or r.gap[i - 1] != " ":
        return None
    for k in range(i - 1, max(-1, i - 4), -1):
        if r.gap[k] != " " or r.lower[k] in ("and", "but", "so"):
            return None
        if _comparative(r, k):
            if k < i - 1 and (
                r.lower[k] not in word_set("more less fewer rather other better bigger")
                or is_verb_tag(r.tag[i - 1])
                and r.lower[k] != "rather"
            ):
                return None
            if r.lower[k] == "later":
                return None
            return _wrong(r, i, "than")
    return None


@on_words("than")
def than_for_then(r: Reading, i: int) -> Found:
    """than where then is meant.

    >>> show("We ate, and than we played.")
    ['homophone: than -> then']
    """
    before = r.before(i)
    if (
        r.first[i]
        or before in word_set("and but since back until by now")
        or i
        and "," in r.gap[i - 1]
    ):
        if (
            any(_comparative(r, k) for k in range(max(0, i - 5), i))
            and before not in ("and", "but", "since")
            and not r.first[i]
        ):
            return None
        return _wrong(r, i, "then")
    if "ADJ" in lemmas(before) or "ADV" in lemmas(before):
        return None
    if not any(_comparative(r, k) or r.lower[k] in ("different", "no", "as") for k in range(i)):
        return _wrong(r, i, "then", False)
    return None


@on_words("were")
def were_for_where(r: Reading, i: int) -> Found:
    """were where where or we're is meant.

    >>> show("Were do you live?")
    ['homophone: Were -> Where']
    """
    after = r.after(i)
    asks = after in (AUXILIARIES - {"be", "been", "being"})
    if asks and (r.first[i] or r.before(i) in word_set("know see tell remember guess and")):
        return _wrong(r, i, "where")
    before = r.before(i)
    if (
        before
        in word_set(
            """
            know knows remember forgot place places see find me from exactly house
            park wonder
            """
        )
        and after in SUBJECTS | ARTICLES | POSSESSIVES
    ):
        if before in ("me",) and i > 1 and r.lower[i - 2] == "and":
            return None
        return _wrong(r, i, "where", before not in word_set("place house park see from places"))
    return None


@on_words("where wear ware")
def where_for_were(r: Reading, i: int) -> Found:
    """where or wear, and were, one for the other.

    >>> show("We where late for the bus. Wear is my hat? I will where a coat.")
    ['homophone: where -> were', 'homophone: Wear -> Where', 'homophone: where -> wear']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "ware":
        return None
    if (
        word == "where"
        and r.first[i]
        and after in ("you", "we", "they")
        and r.text.rstrip().endswith("?")
    ):
        j = i + 2
        if j < r.n and (
            r.lower[j] in word_set("at in on with there here")
            or "ADJ" in lemmas(r.lower[j])
            and not verb_forms(r.lower[j])
        ):
            return _wrong(r, i, "were", r.lower[j] != "there")
    if word == "wear":
        if after in AUXILIARIES and (r.first[i] or before in ("know", "and", "tell", "see")):
            return _wrong(r, i, "where")
        if (
            before in word_set("know knows remember forgot place find see wonder tell")
            and after in SUBJECTS | ARTICLES | POSSESSIVES
        ):
            return _wrong(r, i, "where")
        if before in ("they", "we", "you") and (
            "ADJ" in lemmas(after)
            and not is_noun(r.after(i + 1))
            and after not in FUNCTION
            or "VBG" in verb_forms(after)
        ):
            return _wrong(r, i, "were")
        return None
    if (
        before in MODALS
        or before in word_set("to didn't don't can't won't always let's doesn't")
        and after in DETERMINERS | POSSESSIVES
    ):
        if before in ("to", "can", "will", "should") and after in SUBJECTS:
            return None
        return _wrong(r, i, "wear", after in DETERMINERS | POSSESSIVES)
    if before in ("we", "they", "you") and not r.first[i]:
        if after in SUBJECTS or is_noun(after) and r.tag[i + 1][:1] == "N" and False:
            return None
        if after in DETERMINERS or after in word_set("to it's he's she's they're i'm"):
            return None
        return _wrong(r, i, "were")
    if (
        before in ("there", "these", "those", "who")
        or r.tag[i - 1 : i] == ["NNS"]
        and i
        and r.near(i - 1)
    ):
        if r.lower[i - 1] in ("marks", "knows", "remembers") or is_verb_tag(r.tag[i - 1]):
            return None
        if (
            "VBG" in verb_forms(after)
            or after in word_set("not so very too all happy late in on at wet cold")
            or after in MANY
            and before == "there"
            or "ADJ" in lemmas(after)
            and after not in FUNCTION
        ):
            return _wrong(r, i, "were")
        return None
    if before in ("i", "they", "we", "you") and after in DETERMINERS:
        return _wrong(r, i, "wear", False)
    return None


@on_words("of")
def of_for_have_or_off(r: Reading, i: int) -> Found:
    """could of for could have, and of for off.

    >>> show("I could of gone. Please turn of the light.")
    ['homophone: of -> have', 'homophone: of -> off']
    """
    before = r.before(i)
    if before in word_set("could should would might must may couldn't shouldn't wouldn't"):
        return _wrong(r, i, "have")
    if before in word_set(
        """
        turn turned turns take took takes fell fall falls hop hopped jump jumped jumps
        slid rolled dropped drop brush cut flew blew fallen wipe wiped kick kicked peel
        peeled get got knocked
        """
    ) and (r.after(i) in ARTICLES | POSSESSIVES or not r.after(i)):
        if (
            r.tag[i - 1][:1] == "N"
            and not r.first[i - 1]
            or r.before(i - 1) in ARTICLES | POSSESSIVES
            or r.tag[i - 2 : i - 1] == ["JJ"]
        ):
            return None
        return _wrong(r, i, "off")
    return None


@on_words("off")
def off_for_of(r: Reading, i: int) -> Found:
    """off where of is meant.

    >>> show("I drank a cup off milk.")
    ['homophone: off -> of']
    """
    before, after = r.before(i), r.after(i)
    if (
        before
        in word_set(
            """
            cup one some lot lots piece all out because kind most glass bowl bag box
            full many front top pair bunch side part end made afraid picture slice
            none each two tired proud instead both middle bottle name color sort
            type group king queen book think care hundreds thousands few several
            """
        )
        and after
    ):
        if (
            before in word_set("top side all end front one box some name")
            and before not in ("one", "some")
            and r.tag[i - 1][:1] != "N"
            and before != "all"
        ):
            return None
        if pair(before, "off") * 2 > pair(before, "of"):
            return None
        return _wrong(r, i, "of", before not in word_set("top end side picture box all"))
    return None


@on_words("no know")
def no_or_know(r: Reading, i: int) -> Found:
    """no where know is meant, and know for no.

    >>> show("I no how to swim. There is know milk.")
    ['homophone: no -> know', 'homophone: know -> no']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "no":
        if (
            before in MODALS_SET | {"i", "you", "we", "they", "to"}
            and r.near(i)
            and (
                after in WH
                or after in DETERMINERS | OBJECTS | SUBJECTS
                or after in ("about", "if", "it", "that")
            )
        ):
            return _wrong(r, i, "know")
        return None
    if before in word_set("is are was has have had there's with were") and (
        is_noun(after) or after in ("one", "more")
    ):
        return _wrong(r, i, "no")
    if (
        after == "one"
        and (r.first[i] or before in ("but", "so", "because"))
        and r.after(i + 1) in AUXILIARIES
    ):
        return _wrong(r, i, "no")
    if r.first[i] and r.gap[i].startswith(","):
        return _wrong(r, i, "no", False)
    return None


MODALS_SET = MODALS | word_set("don't didn't doesn't can't won't")


@on_words("hear here")
def hear_or_here(r: Reading, i: int) -> Found:
    """hear with the ears, here in this place.

    >>> show("I can here the birds. Come hear, please.")
    ['homophone: here -> hear', 'homophone: hear -> here']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "here":
        wants = before in MODALS_SET or before in word_set(
            "to i we they you did could didn't never ever"
        )
        if (
            wants
            and (
                after in DETERMINERS | OBJECTS | {"you", "it"}
                or is_noun(after)
                and r.tag[i + 1][:1] == "N"
            )
            and not (before == "you" and r.first[i - 1] and False)
        ):
            if before in ("i", "you", "they", "we") and i > 1 and r.lower[i - 2] in BE:
                return None
            return _wrong(r, i, "hear")
        return None
    if before in word_set(
        """
        come came right over from is are stay in around lives live sit was were up down
        out it them
        """
    ):
        if before in word_set("it them is are was were from down right out up") and after:
            return None
        if before in ("it", "them") and not any(
            w in ("put", "leave", "left", "bring", "keep") for w in r.lower[:i]
        ):
            return None
        return _wrong(r, i, "here")
    if after in ("is", "are", "comes", "it") and r.first[i] and after != "it":
        return _wrong(r, i, "here")
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
            and _thing_at(r, j)
            and not any(
                w in WH or w in ("that", "there", "who") for w in r.lower[max(0, i - 5) : i]
            )
            and r.lower[i - 2 : i - 1] != ["to"]
        ):
            return _wrong(r, i, "our", "VBD" in verb_forms(before) and not is_noun(before))
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
            and _thing_at(r, j)
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
            return _wrong(r, i, "our", before not in ("is", "this", "did", "was"))
        return None
    if word == "our":
        if (
            before in word_set("they you we there where what how these those who")
            or r.tag[i - 1 : i] == ["NNS"]
            and r.before(i)
        ) and (
            _ing(r, j)
            or after
            in word_set(
                """
                a the you they not so very we two going in on at many three four
                five my your
                """
            )
            or _only_describes(r, j)
        ):
            return _wrong(r, i, "are")
        return None
    if (
        _thing_at(r, j)
        and before not in word_set("an half one the this each every per")
        and not before.endswith("-")
        and (before in PREPOSITIONS or is_verb_tag(r.tag[i - 1]) or r.first[i])
    ):
        return _wrong(r, i, "our", False)
    return None


@on_words("quiet quite")
def quiet_or_quite(r: Reading, i: int) -> Found:
    """quiet for no noise, quite for very.

    >>> show("Please be quite. It is quiet a big dog.")
    ['homophone: quite -> quiet', 'homophone: quiet -> quite']
    """
    word, after, before = r.lower[i], r.after(i), r.before(i)
    if word == "quiet" and after in word_set("a an the often well some") and before not in ("the",):
        return _wrong(r, i, "quite", after in ("a", "an"))
    if (
        word == "quite"
        and (
            not after
            or after
            in word_set("and in so when while as during place room voice voices time please")
        )
        and before not in ("not",)
    ):
        return _wrong(r, i, "quiet")
    return None


@on_words("won")
def won_for_one(r: Reading, i: int) -> Found:
    """won where one is meant.

    >>> show("This is the last won in the box.")
    ['homophone: won -> one']
    """
    if r.before(i) in _BEFORE_ONE and r.after(i) not in ARTICLES | POSSESSIVES:
        return _wrong(r, i, "one")
    return None


_BEFORE_ONE = word_set(
    "this that last next only each every another no big small red blue green new old other which "
    "any the"
)


@on_words("read")
def read_for_red(r: Reading, i: int) -> Found:
    """read where the color is meant.

    >>> show("Stop at the read sign.")
    ['homophone: read -> red']
    """
    if (
        r.before(i) in ARTICLES | POSSESSIVES | {"big", "little", "bright"}
        and _thing_at(r, i + 1)
        and r.after(i) not in ("aloud", "alouds")
    ):
        return _wrong(r, i, "red")
    return None


@on_words("buy")
def buy_for_by(r: Reading, i: int) -> Found:
    """buy where by is meant.

    >>> show("She sat buy the bridge. I want to buy the bag.")
    ['homophone: buy -> by']
    """
    if (
        r.before(i)
        and (r.tag[i - 1] in ("VBZ", "VBD", "VBN", "VBG", "NN", "RB") or r.before(i) in BE)
        and r.after(i) in DETERMINERS | OBJECTS
    ):
        if r.before(i) in word_set(
            """
            and always never also just then please often sometimes usually not only
            now
            """
        ):
            return None
        return _wrong(r, i, "by")
    return None


@on_words("sum")
def sum_for_some(r: Reading, i: int) -> Found:
    """sum where some is meant.

    >>> show("I gave it sum water.")
    ['homophone: sum -> some']
    """
    if (
        r.before(i) not in ARTICLES | POSSESSIVES
        and _thing_at(r, i + 1)
        or r.after(i) in ("of", "more")
        and r.after(i + 1) in POSSESSIVES | OBJECTS
    ):
        return _wrong(r, i, "some")
    return None


@on_words("hole")
def hole_for_whole(r: Reading, i: int) -> Found:
    """hole where whole is meant.

    >>> show("I ate a hole pizza.")
    ['homophone: hole -> whole']
    """
    if (
        r.before(i) in ARTICLES | POSSESSIVES
        and _thing_at(r, i + 1)
        and r.after(i) not in ("punch", "puncher")
    ):
        return _wrong(r, i, "whole")
    return None


@on_words("blue")
def blue_for_blew(r: Reading, i: int) -> Found:
    """blue where blew is meant.

    >>> show("The wind blue the leaves away.")
    ['homophone: blue -> blew']
    """
    if (
        r.after(i) in ARTICLES | POSSESSIVES | OBJECTS | {"out", "up", "away"}
        and r.before(i)
        and (is_noun(r.before(i)) or r.before(i) in SUBJECTS)
    ):
        return _wrong(r, i, "blew")
    return None


@on_words("witch")
def witch_for_which(r: Reading, i: int) -> Found:
    """witch where which is meant.

    >>> show("Witch one do you want?")
    ['homophone: Witch -> Which']
    """
    after = r.after(i)
    opens = r.first[i] or r.before(i) in ("know", "tell", "see", "choose", "decide")
    if opens and (
        after in word_set("one way of is are do side kind color")
        or is_noun(after)
        and r.text.rstrip().endswith("?")
    ):
        return _wrong(r, i, "which")
    return None


@on_words("by bye")
def by_for_buy(r: Reading, i: int) -> Found:
    """by where buy is meant.

    >>> show("Mom will by new shoes. We went to by bread.")
    ['homophone: by -> buy', 'homophone: by -> buy']
    """
    before = r.before(i)
    if (
        before in MODALS_SET
        or before == "to"
        and r.before(i - 1) in _WANTS | {"went", "store", "go", "money"}
    ):
        return _wrong(r, i, "buy")
    if (
        before in ("i", "we", "they", "you")
        and (r.after(i) in DETERMINERS or r.tag[i + 1 : i + 2] == ["NNS"])
        and not any(r.lower[k] in AUXILIARIES for k in range(max(0, i - 4), i - 1))
    ):
        return _wrong(r, i, "buy", r.first[i - 1])
    return None


@on_words("through")
def through_for_threw(r: Reading, i: int) -> Found:
    """through where threw is meant.

    >>> show("He through the ball to me. She walked through the door.")
    ['homophone: through -> threw']
    """
    if r.after(i) not in DETERMINERS | OBJECTS:
        return None
    before = r.before(i)
    if before in SUBJECTS - {"it", "you"}:
        return _wrong(r, i, "threw")
    start = max((k for k in range(i + 1) if r.first[k]), default=0)
    alone = not any(is_verb_tag(r.tag[k]) or r.lower[k] in AUXILIARIES for k in range(start, i))
    rest = not any(r.tag[k] in ("VBD", "VBZ", "VBP", "MD") for k in range(i + 1, r.n))
    if alone and rest and before and (is_noun(before) or r.tag[i - 1] == "NNP") and i - start <= 4:
        return _wrong(r, i, "threw", r.kind == "sentence")
    return None


@on_words("one")
def one_for_won(r: Reading, i: int) -> Found:
    """one where won is meant.

    >>> show("We one the game.")
    ['homophone: one -> won']
    """
    if (
        r.before(i) in SUBJECTS
        and r.after(i) in ARTICLES | POSSESSIVES | {"first", "second", "every"}
        and not any(w in AUXILIARIES for w in r.lower[max(0, i - 3) : i])
    ):
        return _wrong(r, i, "won")
    return None


@on_words("whole")
def whole_for_hole(r: Reading, i: int) -> Found:
    """whole where hole is meant.

    >>> show("She made a whole in the sand.")
    ['homophone: whole -> hole']
    """
    if (
        r.before(i) in word_set("a the this big deep small that")
        and r.after(i) in ("in", "for", "with", "under", "through")
        and r.before(i - 1) not in ("as", "on")
    ):
        return _wrong(r, i, "hole")
    return None


@on_words("be")
def be_for_bee(r: Reading, i: int) -> Found:
    """be where bee is meant.

    >>> show("The be stung me.")
    ['homophone: be -> bee']
    """
    return _wrong(r, i, "bee") if r.before(i) in ARTICLES | POSSESSIVES else None
