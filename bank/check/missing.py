"""Small words that are missing, words too many, and words in the wrong order."""

from __future__ import annotations

from bank.check.engine import Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    FUNCTION,
    HE,
    MODALS,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    is_verb_tag,
    noun_phrase,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, pair, word_set, zipf
from bank.check.names import PERSON_NAMES
from bank.check.reading import Reading
from bank.check.spelling import is_word

_WANT = word_set(
    "want wants wanted need needs hope hopes hoped plan plans planned decided forgot learned "
    "going like likes liked love loves loved try tries tried start starts started began begins "
    "wish able supposed ready"
)
_GO = word_set("go goes went going walk walked drove rode ride ran come came moved travel traveled")
_PLACES = word_set(
    "store park zoo beach library school house pool farm museum playground movies mall lake "
    "office kitchen bathroom gym cafeteria doctor dentist river garden city town station airport "
    "forest party circus fair barn woods"
)
_LISTEN = {
    "listen": "to", "listens": "to", "listened": "to", "listening": "to", "belongs": "to", "belong": "to", "wait": "for",
    "waits": "for", "waited": "for", "waiting": "for", "looking": "at", "look": "at", "looks": "at", "looked": "at", "talked": "to", "talk": "to", "talks": "to",
}  # fmt: skip


def _missing(r: Reading, i: int, word: str, certain: bool = True) -> Finding:
    """`word` is missing right behind word `i`."""
    return Finding("missing-word", r.starts[i], r.ends[i + 1], f"The word “{word}” is missing.",
                   f"{r.words[i]} {word} {r.words[i + 1]}", certain)  # fmt: skip


@on_words(" ".join(_WANT))
def to_is_missing(r: Reading, i: int) -> Found:
    """want ride, need go, likes play.

    >>> show("I want ride my bike.")
    ['missing-word: want ride -> want to ride']
    >>> show("I like music. They like run-down barns.")
    []
    """
    after, word = r.after(i), r.lower[i]
    if not after or after in FUNCTION - {"be", "have", "do"} or "VB" not in verb_forms(after):
        return None
    if word in ("like", "likes") and r.before(i) not in SUBJECTS and r.tag[i] == "IN":
        return None
    if word in ("going", "able", "supposed", "ready") and (
        word == "going"
        and (after in ("home", "out", "up") or is_noun(after))
        or not (r.before(i) in BE or r.before(i).endswith(("'s", "'m", "'re")))
    ):
        return None
    if word in ("need", "needs") and r.lower[max(0, i - 1)] in ("n't", "not"):
        return None
    following = r.after(i + 1)
    if is_noun(after) or "ADJ" in lemmas(after):
        if after == "be":
            pass
        elif not (
            following in DETERMINERS - {"that"} | OBJECTS
            or following
            in PREPOSITIONS - {"of", "for", "in", "on", "with", "from", "about", "like"}
            and r.tag[i + 1] in ("VB", "VBP")
            or after in word_set("live go play swim run ride walk")
            and r.tag[i + 1] in ("VB", "VBP", "VBD")
        ):
            return None
        if (
            word in word_set("start starts plan plans love try hope wish need likes")
            and after in ("work", "school", "practice", "play")
            and not following
        ):
            return None
    return _missing(
        r,
        i,
        "to",
        not is_noun(after) or following in DETERMINERS | OBJECTS or r.tag[i + 1] in ("VB", "VBP"),
    )


@on_words(" ".join(_GO))
def to_a_place_is_missing(r: Reading, i: int) -> Found:
    """went the store, go the park.

    >>> show("We went the store after school.")
    ['missing-word: went the -> went to the']
    """
    after = r.after(i)
    if (
        after in ARTICLES | POSSESSIVES
        and (r.after(i + 1) in _PLACES)
        or after in word_set("school bed church grandma's mexico florida")
    ):
        if (
            after == "school"
            and r.lower[i] in word_set("going ride come came walk moved rode")
            and r.after(i + 1) == "bus"
        ):
            return None
        if r.lower[i] in word_set("walk walked ride rode drove ran travel") and (
            r.lower[i] in ("rode", "ride", "drove") or after not in ARTICLES
        ):
            return None
        if r.lower[i] in ("walk", "walked", "ran") and r.after(i + 1) in (
            "farm",
            "garden",
            "store",
            "party",
            "museum",
        ):
            return None
        return _missing(r, i, "to")
    return None


@on_words(" ".join(_LISTEN))
def small_word_after_a_verb_is_missing(r: Reading, i: int) -> Found:
    """listen music, wait the bus, look the bird.

    >>> show("We listened music in the car.")
    ['missing-word: listened music -> listened to music']
    """
    word, after = r.lower[i], r.after(i)
    if not after:
        return None
    want = _LISTEN[word]
    thing = (
        after in ARTICLES | POSSESSIVES | OBJECTS
        or word.startswith(("listen", "belong", "wait"))
        and is_noun(after)
        and r.tag[i + 1][:1] == "N"
    )
    if (
        not thing
        or word in ("look", "looks", "looked")
        and (
            after in OBJECTS
            or after in ("the",)
            and r.after(i + 1) in ("same", "way", "part", "other")
        )
    ):
        return None
    if (
        word in word_set("talk talks wait waits look looks")
        and r.before(i) in ARTICLES | POSSESSIVES
        or word.startswith("wait")
        and after in ("a", "an")
        or word in ("listening", "waiting", "talks")
        and r.before(i) in DETERMINERS
    ):
        return None
    if (
        word.startswith("wait")
        and after in ("my", "your", "his", "her", "their")
        and r.after(i + 1) == "turn"
        or word.startswith("look")
        and r.after(i + 1) in ("age", "best", "part")
    ):
        return None
    return _missing(r, i, want, word not in ("talk", "talks", "talked") or after in OBJECTS)


@on_words("what where when why how who")
def helper_is_missing(r: Reading, i: int) -> Found:
    """What you like, Where you go: a question without do, does, did, is, are.

    >>> show("What you like to do at recess?", "question")
    ['missing-word: What you -> What do you']
    >>> show("What she is doing?")
    ['word-order: she is -> is she']
    """
    if not r.first[i] or not r.text.rstrip().endswith("?") or not r.near(i):
        return None
    j = i + 1
    if (
        r.lower[i] in ("what", "how", "which")
        and r.tag[j] in ("NN", "NNS")
        and r.lower[j]
        in word_set(
            """
            color kind time colors day food foods game games book books animal
            animals toy toys sport sports
            """
        )
        and r.near(j)
        and r.lower[j + 1] in SUBJECTS
    ):
        j += 1
    if (
        r.lower[i] == "how"
        and r.lower[j] in ("many", "much")
        and j + 2 < r.n
        and is_noun(r.lower[j + 1])
    ):
        j += 2
    if r.lower[j] not in SUBJECTS:
        return _noun_subject(r, i, j)
    if not r.near(j):
        return None
    v = j + 1
    verb = r.lower[v]
    close = next(e for s, e in r.sentences if s == i)
    if any(r.lower[k] in AUXILIARIES for k in range(v + 1, close)) and any(
        "," in g for g in r.gap[i : close - 1]
    ):
        return None
    if verb in AUXILIARIES:
        if verb in ("be", "been") or any(
            r.lower[k] in AUXILIARIES or r.tag[k] in ("VBZ", "VBD") for k in range(v + 2, close)
        ):
            return None
        return Finding(
            "word-order",
            r.starts[j],
            r.ends[v],
            "In a question the helping word comes first.",
            f"{verb} {r.words[j]}",
            True,
        )
    forms = verb_forms(verb)
    if not forms & {"VB", "VBD", "VBG", "VBZ"} or any(
        r.tag[k] in ("VBZ", "MD") or r.lower[k] in AUXILIARIES - {"do", "have", "be"}
        for k in range(v + 1, close)
    ):
        return None
    subject = r.lower[j]
    if "VBG" in forms and "VB" not in forms:
        helper = "is" if subject in HE else "am" if subject == "i" else "are"
    elif "VB" in forms and "VBD" not in forms:
        helper = "does" if subject in HE else "do"
    else:
        helper = "did"
    return Finding(
        "missing-word",
        r.starts[j - 1],
        r.ends[j],
        f"A word like “{helper}” is missing.",
        f"{r.words[j - 1]} {helper} {r.words[j]}",
        True,
    )


def _noun_subject(r: Reading, i: int, j: int) -> Finding | None:
    """`What color the dog?`, `Where the ball?`, `What time the movie start?`: a helper is missing."""
    k = (
        j
        if r.lower[j] in DETERMINERS - WH
        else j + 1
        if r.lower[j + 1 : j + 2]
        and r.lower[j + 1] in word_set("the my your his her a")
        and is_noun(r.lower[j])
        else -1
    )
    if k > 0 and r.lower[i] != "who":
        close = next(e for s, e in r.sentences if s == i)
        subject = noun_phrase(r, k)
        if (
            subject is not None
            and subject.last + 1 < close
            and not any(w in AUXILIARIES or "'" in w for w in r.lower[i:close])
        ):
            verb = r.lower[subject.last + 1]
            if verb.endswith("ing") and verb_forms(verb) == {"VBG"}:
                helper = "are" if subject.many else "is"
                return Finding(
                    "missing-word", r.starts[k - 1], r.ends[k], f"A word like “{helper}” is missing.",
                    f"{r.words[k - 1]} {helper} {r.words[k]}", True,
                )  # fmt: skip
            if (
                "VB" in verb_forms(verb)
                and "VBD" not in verb_forms(verb)
                and not any(r.tag[m] in ("VBD", "VBZ", "MD") for m in range(i, close))
            ):
                helper = "do" if subject.many else "does"
                return Finding(
                    "missing-word",
                    r.starts[k - 1],
                    r.ends[k],
                    f"A word like “{helper}” is missing.",
                    f"{r.words[k - 1]} {helper} {r.words[k]}",
                    not is_noun(verb),
                )
    if (
        r.lower[i] in ("who", "how", "when")
        and r.lower[j] not in DETERMINERS
        or r.lower[j] not in ("the", "my", "your", "his", "her")
    ):
        return None
    phrase = noun_phrase(r, j)
    if phrase is None or r.near(phrase.last) or not r.gap[phrase.last].startswith("?"):
        return None
    helper = "are" if phrase.many else "is"
    return Finding(
        "missing-word",
        r.starts[i],
        r.ends[j],
        f"A word like “{helper}” is missing.",
        f"{r.words[i]} {helper} {r.words[j]}",
        r.lower[i] == "where",
    )


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
    if r.lower[start] == "it" and r.after(start) == "your":
        return _missing(r, start, "is")
    phrase = noun_phrase(r, start)
    if phrase is None:
        return None
    last = phrase.last
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
        if w in word_set("when because until while if that who") and k > j:
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
    return _missing(r, last, be, pronoun or r.kind == "sentence")


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
    return _missing(r, last - 1, be, r.kind == "sentence")


@on_text()
def words_in_the_wrong_order(r: Reading) -> Found:
    """A small word behind the word that it belongs before: dog the, ball red.

    >>> show("I ran to park the.")
    ['word-order: park the -> the park']
    >>> show("She has a ball red.")
    ['word-order: ball red -> red ball']
    """
    found: list[Finding] = []
    for i in range(1, r.n):
        if r.gap[i - 1] != " ":
            continue
        word, before = r.lower[i], r.lower[i - 1]
        after = r.after(i)
        if word in ARTICLES and _stranded(r, i):
            if is_noun(before) or "ADJ" in lemmas(before) or before in PREPOSITIONS:
                if before in AUXILIARIES:
                    continue
                found.append(_swap(r, i - 1))
        elif (
            (
                word == "the"
                and "ADJ" in lemmas(before)
                and not is_noun(before)
                and before not in FUNCTION | {"far"}
                and not verb_forms(before)
                and i > 1
                and r.lower[i - 2] in PREPOSITIONS
                and after
                and is_noun(after)
            )
            or word in ("the", "a", "an")
            and r.first[i - 1]
            and _before_its_article(r, i - 1)
            or (
                word in _DESCRIBES
                and not after
                and r.tag[i - 1] == "NNS"
                and is_noun(before)
                and i > 1
                and (
                    r.lower[i - 2] in PREPOSITIONS
                    or is_verb_tag(r.tag[i - 2])
                    and r.lower[i - 2] not in _MAKES | BE
                )
            )
        ):
            found.append(_swap(r, i - 1))
        elif (
            word in _DESCRIBES
            and is_noun(before)
            and r.tag[i - 1][:1] == "N"
            and before not in _DESCRIBES
            and not after
        ):
            if (
                i > 1
                and r.lower[i - 2] in ARTICLES | POSSESSIVES
                and i > 2
                and r.near(i - 3)
                and (
                    is_verb_tag(r.tag[i - 3])
                    or verb_forms(r.lower[i - 3])
                    or r.lower[i - 3] in PREPOSITIONS
                )
                and r.lower[i - 3] not in _MAKES
                and r.lower[i - 3] not in BE
            ):
                found.append(_swap(r, i - 1))
        elif (
            word in _DESCRIBES
            and i > 1
            and r.lower[i - 2] in ARTICLES | POSSESSIVES
            and is_noun(before)
            and r.tag[i - 1][:1] == "N"
            and before not in _DESCRIBES
            and (after in AUXILIARIES - {"be"} or r.tag[i + 1 : i + 2] in (["VBD"], ["VBZ"]))
            and r.first[i - 2]
            or word in PREPOSITIONS
            and before in ARTICLES
            and after
            and (is_noun(after) or "ADJ" in lemmas(after))
            and word
            not in word_set(
                """
                after in off on up down inside outside under above past like
                over for below
                """
            )
            or word in word_set("in on at to under over for of with from")
            and before in ARTICLES
            and after
            and (is_noun(after) or "ADJ" in lemmas(after))
            and pair(word, before) > 50_000_000
        ):
            found.append(_swap(r, i - 1))
    return found


def _before_its_article(r: Reading, i: int) -> bool:
    """`Kind the cook`, `Museum the guide`: a word that should stand behind the article."""
    word = r.lower[i]
    after = r.after(i + 1)
    if (
        is_noun(word)
        and word not in FUNCTION
        and after
        and (after in AUXILIARIES or verb_forms(after) & {"VBD", "VBZ"} and not is_noun(after))
    ):
        return True
    if (
        word in FUNCTION
        or verb_forms(word) & {"VB", "VBD", "VBG"}
        or not after
        or word in word_set("yesterday today tonight tomorrow half quite such many")
    ):
        return False
    if "ADV" in lemmas(word) or r.words[i].endswith("ly"):
        return False
    describes = "ADJ" in lemmas(word) and is_noun(after)
    thing = is_noun(word) and (
        is_noun(after) or r.tag[i + 2] in ("VBZ", "VBD", "VBP", "MD") or after in AUXILIARIES
    )
    return describes or thing


_DESCRIBES = word_set(
    "red blue green yellow purple black brown pink big small tall short tiny huge hot warm wet "
    "dry soft loud happy sad tired hungry funny brave strong pretty old new clean dirty heavy "
    "round fluffy shiny"
)
_MAKES = word_set(
    "paint painted paints made make makes keep kept keeps turn turned get got color colored dye "
    "dyed feel felt leave left find found like wash washed wipe wiped"
)


def _stranded(r: Reading, i: int) -> bool:
    """Whether an article has nothing behind it that it could belong to."""
    if i + 1 >= r.n or r.gap[i].strip():
        return r.gap[i].strip()[:1] in (".", "?", "!", ",") and r.words[i] != "A"
    after = r.lower[i + 1]
    if after in word_set("because that and but when who which so or"):
        return True
    if (
        after in PREPOSITIONS
        and after not in word_set("inside outside above past down up in off under over like after")
        or after in AUXILIARIES - {"can", "will", "might", "may", "must", "do"}
        or after in SUBJECTS - {"it"}
    ):
        return True
    return (
        r.tag[i + 1] in ("VBD", "VBZ")
        and not is_noun(after)
        and "ADJ" not in lemmas(after)
        and "VBN" not in verb_forms(after)
    )


def _swap(r: Reading, i: int) -> Finding:
    first, second = r.words[i], r.words[i + 1]
    if r.first[i]:
        first, second = first[0].lower() + first[1:], second[0].upper() + second[1:]
    return Finding(
        "word-order",
        r.starts[i],
        r.ends[i + 1],
        "These words are in the wrong order.",
        f"{second} {first}",
        True,
    )


@on_words("he she they it")
def subject_said_twice(r: Reading, i: int) -> Found:
    """My brother he plays: the subject once as a noun and once as a pronoun.

    >>> show("My brother he plays the drums.")
    ['extra-word: he -> ']
    >>> show("The book she reads is long.")
    []
    """
    if i < 1 or not r.near(i - 1) or not r.near(i):
        return None
    start = _clause_start(r, i)
    phrase = noun_phrase(r, start)
    if (
        phrase is None
        or phrase.last != i - 1
        or r.lower[start] in WH
        or r.lower[phrase.head] in SUBJECTS
        or not (r.lower[start] in DETERMINERS or r.tag[start] in ("NNP", "NNS"))
    ):
        return None
    word, after = r.lower[i], r.after(i)
    if phrase.many != (word == "they") and word != "they":
        return None
    if phrase.many is False and word == "they":
        return None
    verb = after in AUXILIARIES or bool(verb_forms(after) & {"VB", "VBD", "VBZ"})
    if not verb:
        return None
    head = r.lower[phrase.head]
    person = head in _HE_WORDS and word == "he" or head in _SHE_WORDS and word == "she"
    close = next(e for s, e in r.sentences if s <= i < e)
    later = sum(
        1
        for k in range(i + 2, close)
        if r.tag[k] in ("VBZ", "VBD", "VBP", "MD") or r.lower[k] in AUXILIARIES
    )
    if (
        later or not person and word in ("he", "she") and r.words[phrase.head][0].islower()
    ) and later:
        return None
    return at(
        r,
        i,
        "extra-word",
        f"“{r.words[i]}” is too many; the subject stands there already.",
        "",
        True,
    )


def _clause_start(r: Reading, i: int) -> int:
    """Where the clause around word `i` starts: after a joining word or a comma."""
    k = i - 1
    while k > 0 and not r.first[k]:
        if r.gap[k - 1] != " " or r.lower[k - 1] in _OPENS_CLAUSE:
            break
        k -= 1
    return k


_OPENS_CLAUSE = word_set(
    "when if why where because while although that how until since and but so after before"
)
_HE_WORDS = word_set("brother dad father uncle grandpa grandfather boy man king")
_SHE_WORDS = word_set("sister mom mother aunt grandma grandmother girl woman queen")


@on_text()
def two_small_words_that_do_not_go_together(r: Reading) -> Found:
    """Two small words in a row of which one is too many: in to on, a the, the my.

    >>> show("She put the my book down.")
    ['extra-word: the -> ']
    """
    found = []
    for i in range(1, r.n):
        if r.gap[i - 1] != " ":
            continue
        a, b = r.lower[i - 1], r.lower[i]
        if (
            a in ARTICLES
            and b in (ARTICLES | POSSESSIVES | {"this", "these", "those"})
            and a != b
            or a in POSSESSIVES - {"her"}
            and b in ARTICLES | POSSESSIVES
            and a != b
        ):
            if r.words[i - 1] == "A" and not r.first[i - 1] or a == "an" and b == "a":
                continue
            found.append(
                Finding(
                    "extra-word",
                    r.starts[i - 1],
                    r.ends[i - 1],
                    f"“{r.words[i - 1]}” is too many.",
                    "",
                    True,
                )
            )
        elif (
            i > 1
            and a in _PLAIN_PREP
            and b in _PLAIN_PREP
            and r.lower[i - 2] in _PLAIN_PREP
            and r.near(i - 2)
            and a != b
        ):
            found.append(
                Finding(
                    "extra-word",
                    r.starts[i - 2],
                    r.ends[i - 1],
                    f"“{r.words[i - 2]} {r.words[i - 1]}” is too many.",
                    "",
                    False,
                )
            )
        elif (
            b == "is"
            and a == "is"
            or a in MODALS
            and b in MODALS - {"will"}
            and a not in ("can", "might", "may", "will", "must")
            and a != b
        ):
            found.append(
                Finding(
                    "extra-word", r.starts[i], r.ends[i], f"“{r.words[i]}” is too many.", "", True
                )
            )
    return found


_PLAIN_PREP = word_set("in to on at into onto of with for from")


_FEELINGS = word_set(
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
        after not in _FEELINGS
        or r.before(i) in AUXILIARIES
        or r.after(i + 1)
        and r.after(i + 1) not in PREPOSITIONS | {"and", "because", "when", "today"}
    ):
        return None
    be = "am" if r.lower[i] == "i" else "is" if r.lower[i] in HE else "are"
    return _missing(r, i, be)
