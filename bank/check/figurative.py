"""Figures of speech: idioms, stock comparisons and things that act like people."""

from __future__ import annotations

import re
from functools import cache

from bank.check.engine import Found, on_text
from bank.check.figures.inflect import in_form_of
from bank.check.figures.match import Match, find_idioms
from bank.check.finding import Finding
from bank.check.grammar import FUNCTION, is_noun
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading


@on_text()
def idiom(r: Reading) -> Found:
    """Words that do not mean what they say.

    >>> show("It rained cats and dogs.")
    ['figurative: rained cats and dogs -> rained very hard']
    >>> show("We have cats and dogs.")
    []
    """
    return [_idiom_finding(r, match) for match in find_idioms(r)]


def _idiom_finding(r: Reading, match: Match) -> Finding:
    start, end = r.starts[match.first], r.ends[match.last]
    said, plain = r.text[start:end], _plain_wording(r, match)
    picture = match.idiom.picture
    message = f"“{said}” does not mean what it says"
    message += f"; a literal reader may think that {picture}." if picture else "."
    if plain is None:
        message += f" It means: {_as_reading(match.idiom.plain)}."
    return Finding("figurative", start, end, message, plain, False)


def _plain_wording(r: Reading, match: Match) -> str | None:
    """The plainer wording, fitted into the sentence; None where a slot stays open."""
    words = []
    for word in match.idiom.plain.split():
        if word.endswith("*"):
            form = in_form_of(r, match, word[:-1])
            if form is None:
                return None
            words.append(form)
        elif word == "MY" and "MY" in match.slots:
            words.append(match.slots["MY"])
        elif word == "ME" and match.slots:
            words.append(match.slots.get("ME") or _owner(match.slots["MY"]))
        elif word in ("ME", "MY", "MYself"):
            return None
        else:
            words.append(word)
    plain = " ".join(words)
    if r.words[match.first][0].isupper() and r.first[match.first]:
        plain = plain[0].upper() + plain[1:]
    return plain


def _owner(possessive: str) -> str:
    """Who owns it: "your" is you, "Sam's" is Sam."""
    owners = {"my": "me", "your": "you", "his": "him", "our": "us", "its": "it", "their": "them"}
    word = possessive.lower()
    return owners.get(word) or re.sub(r"['’]s?$", "", possessive)


def _as_reading(plain: str) -> str:
    plain = re.sub(r"\bMYself\b", "themselves", plain.replace("*", ""))
    return re.sub(r"\bMY\b", "their", re.sub(r"\bME\b", "someone", plain))


_HUMAN_ACTS = word_set(
    """whisper smile laugh dance sing cry wink yawn beg sigh moan groan scream shout hug kiss
    tiptoe giggle frown shiver grin scold invite complain grumble mutter weep argue chase stare
    swallow devour"""
)
_THINGS = word_set(
    """wind sun moon star rain cloud tree leaf flower breeze storm thunder lightning snow river
    wave ocean sea stream waterfall mountain sky night morning fire flame shadow house door stair floor chair
    clock alarm engine car radio kettle time snowflake raindrop daffodil sunflower branch sunlight
    darkness fog book bed backpack"""
)


@on_text()
def thing_that_acts_like_a_person(r: Reading) -> Found:
    """The wind whispers, the sun smiles.

    >>> show("The wind whispered through the trees.")
    ['figurative: wind whispered -> None']
    >>> show("The girl whispered to her friend.")
    []
    """
    for i in range(r.n - 1):
        if not r.near(i) or _lemma(r.lower[i], "NOUN") not in _THINGS:
            continue
        j = i + 1
        if r.lower[j] in word_set("was were is are softly always never seemed") and r.near(j):
            j += 1
        if r.lower[j] == "to" and r.near(j):
            j += 1
        if (
            j + 2 < r.n
            and r.lower[j + 1] == "and"
            and r.near(j)
            and _lemma(r.lower[j + 2], "VERB") in _HUMAN_ACTS
        ):
            j += 2
        if (
            _lemma(r.lower[j], "VERB") in _HUMAN_ACTS
            and r.tag[j][:1] == "V"
            and _lemma(r.lower[j], "VERB") != "stare"
        ):
            return Finding("figurative", r.starts[i], r.ends[j],
                           f"A thing cannot {_lemma(r.lower[j], 'VERB')}; a literal reader may wonder.", None, False)  # fmt: skip
    return None


@cache
def _lemma(word: str, kind: str) -> str:
    found = lemmas(word).get(kind)
    return found[0] if found else ""


_STOCK = word_set(
    """bee beaver mouse fox mule ox bull lion lamb feather rock pancake cucumber beet tomato ghost sheet
    snow ice day night pie sugar honey bone whistle owl bat eel peacock pig horse wolf bear snail
    turtle tortoise lightning wind rainbow button pin nail pancake board ruler daisy bird fish cheetah rabbit hare
    kitten dove clam lark hatter hornet molasses cricket monkey fiddle leather silk glass velvet razor
    tack crystal mud pitch coal gold silver diamond picture bell hills dirt elephant giraffe house
    mountain tree stick toothpick rail flash wink bullet rocket deer gazelle kite cloud gooseberry
    toast bug pea peas statue stone doornail brass bricks ton brick whale ant flea raisin prune
    lobster parrot swan angel sunshine star stars firecracker dog cat tiger saint thief judge king
    queen tiger's church thieves thunder autumn winter summer"""
)
_PEOPLE_WORDS = word_set(
    "i you he she we they who everyone everybody someone mom dad brother sister friend teacher "
    "baby boy girl man woman grandma grandpa coach uncle aunt cousin kids children students twins"
)


@on_text()
def stock_comparison(r: Reading) -> Found:
    """as busy as a bee, as light as a feather.

    >>> show("My sister is as busy as a bee.")
    ['figurative: busy as a bee -> very busy']
    >>> show("My sister is as tall as a door. She is as tall as her brother.")
    []
    """
    found = []
    for i in range(r.n - 2):
        j = i
        if (
            r.lower[i] == "as"
            and i + 2 < r.n
            and r.lower[i + 2] == "as"
            and r.near(i)
            and r.near(i + 1)
        ):
            j = i + 2
            adjective = i + 1
        elif (
            r.after(i) == "as"
            and "ADJ" in lemmas(r.lower[i])
            and r.lower[i] not in FUNCTION
            and r.lower[i] not in word_set("same such well far long much soon many")
            and r.before(i) != "as"
            and r.near(i + 1)
        ):
            j, adjective = i + 1, i
        else:
            continue
        k = j + 1
        if k >= r.n or not r.near(j):
            continue
        if r.lower[k] in ("a", "an", "the", "two"):
            k += 1
        if k < r.n - 1 and r.near(k) and r.tag[k][:2] == "JJ" and r.lower[k] not in _STOCK:
            k += 1
        if (
            k >= r.n
            or r.lower[k] not in _STOCK
            or r.lower[j + 1] in word_set("his her my your their our this that")
        ):
            continue
        if r.lower[adjective] in word_set(
            "tall big heavy large old long small fast hard high wide soft"
        ) and not _is_person(r, i):
            continue
        if r.lower[adjective] in ("much", "many", "well", "good", "far") or _asks_literally(r):
            continue
        word = r.lower[adjective]
        found.append(
            Finding(
                "figurative",
                r.starts[i],
                r.ends[k],
                f"“{r.text[r.starts[i] : r.ends[k]]}” is a comparison; a literal reader may picture the {r.words[k]}.",
                f"very {word}",
                False,
            )  # fmt: skip
        )
    return found


def _is_person(r: Reading, i: int) -> bool:
    """Whether the words before `i` are about a person."""
    start = max((k for k in range(i + 1) if r.first[k]), default=0)
    return any(
        w in _PEOPLE_WORDS or w.split("'")[0] in _PEOPLE_WORDS
        for w in r.lower[max(start, i - 6) : i]
    ) and not _asks_literally(r)


def _asks_literally(r: Reading) -> bool:
    return (
        r.lower[0] in word_set("is are can what which would could does do")
        and r.text.rstrip().endswith("?")
        and "you" not in r.lower[:4]
    )


_LIKE_VERBS = word_set(
    "run eat sleep swim sing fight work fly move climb shine cry roar laugh jump hop dance act "
    "talk walk fit spread go race grow drop shake stand sparkle glow chatter bark howl sit stick "
    "smell wiggle slither buzz spin explode melt crawl float zoom squeal purr growl soar leap "
    "gobble drink snore sneak hug treat follow watch disappear disappeared chirp waddle"
)


@on_text()
def like_an_animal_or_a_thing(r: Reading) -> Found:
    """He runs like a cheetah, she sleeps like a log.

    >>> show("My brother runs like a cheetah.")
    ['figurative: runs like a cheetah -> None']
    >>> show("I like a dog. It looks like a dog. A puppy barks like a dog.")
    []
    """
    found = []
    for i in range(1, r.n - 2):
        if r.lower[i] != "like" or not r.near(i - 1) or not r.near(i):
            continue
        verb = i - 1
        if _lemma(r.lower[verb], "VERB") not in _LIKE_VERBS and verb > 0 and r.near(verb - 1):
            verb -= 1
            if _lemma(r.lower[verb], "VERB") not in _LIKE_VERBS and verb > 1:
                verb -= 1
        if _lemma(r.lower[verb], "VERB") not in _LIKE_VERBS or r.tag[verb] == "NN":
            continue
        k = i + 1
        if r.lower[k] in ("a", "an", "the", "two", "little"):
            k += 1
        while (
            k < r.n - 1
            and r.near(k)
            and (
                r.tag[k] in ("JJ", "VBG", "VBN")
                or is_noun(r.lower[k])
                and is_noun(r.lower[k + 1])
                and r.tag[k + 1][:1] == "N"
            )
        ):
            k += 1
        if k >= r.n:
            continue
        word = r.lower[k]
        stem = _lemma(word, "NOUN") or word
        if (
            stem not in _STOCK
            and word not in _STOCK
            or not (_is_person(r, verb) or stem in ("log", "diamond", "diamonds"))
        ):
            continue
        if (
            any(
                w in word_set("pretend pretended costume play game let's imagine robot")
                for w in r.lower[:verb]
            )
            or _asks_literally(r)
            or r.text.rstrip().endswith("?")
        ):
            continue
        found.append(
            Finding(
                "figurative",
                r.starts[verb],
                r.ends[k],
                f"“{r.text[r.starts[verb] : r.ends[k]]}” is a comparison; a literal reader may picture the {word}.",
                None,
                False,
            )  # fmt: skip
        )
    return found


_METAPHORS = word_set(
    "pig pigsty snail angel monster rock star clown shark monkey gem treasure pearl lamb chicken "
    "turkey peach lemon zombie bear tornado hurricane oven furnace icebox freezer jungle disaster "
    "nightmare dream sponge machine fish rollercoaster firecracker blanket ray sunshine diamond "
    "diamonds jewel jewels walking couch night tiger bulldozer peacock sieve sardines volcano "
    "icicle popsicle bookworm steal"
)
_LITERAL_METAPHOR = word_set(
    "pretend play costume dressed dress part story would were could if wish wants want puppet in"
)
_KIN_SUBJECT = word_set(
    "brother sister mom dad mother father friend teacher grandma grandpa uncle aunt cousin coach "
    "baby room bedroom classroom house closet desk desks locker hair heart mind brain memory eyes "
    "voice test snow stars world feet hands life love smile laughter street sidewalk playground "
    "basement attic kitchen"
)


@on_text()
def one_thing_called_another(r: Reading) -> Found:
    """A person or a room that is called another thing.

    >>> show("My brother is a pig at dinner.")
    ['figurative: brother is a pig -> None']
    >>> show("My dog is a pug. My brother is a clown in the play.")
    []
    """
    for i in range(r.n - 2):
        if r.lower[i] not in _KIN_SUBJECT or not r.near(i):
            continue
        j = i + 1
        if r.lower[j] not in ("is", "was", "are", "were") or not r.near(j):
            continue
        k = j + 1
        if r.lower[k] in ("such", "like", "really", "always") and r.near(k):
            k += 1
        if r.lower[k] in ("a", "an") and r.near(k):
            k += 1
        elif r.tag[k] not in ("NNS", "NN"):
            continue
        if (
            k < r.n - 1
            and r.near(k)
            and r.tag[k] in ("JJ", "VBG", "NN")
            and r.lower[k + 1] in _METAPHORS
        ):
            k += 1
        if (
            k < r.n
            and r.lower[k] in _METAPHORS
            and not (
                r.lower[k] in word_set("star clown dream machine rock gem")
                and not _LITERAL_METAPHOR.isdisjoint(r.lower)
            )
        ):
            if (
                not {"pretend", "play", "costume", "dressed", "puppet", "story", "if"}.isdisjoint(
                    r.lower
                )
                or is_noun(r.after(k))
                and r.tag[k + 1][:1] == "N"
            ):
                continue
            return Finding("figurative", r.starts[i], r.ends[k],
                           f"“{r.text[r.starts[i]:r.ends[k]]}” calls one thing another.", None, False)  # fmt: skip
    return None
