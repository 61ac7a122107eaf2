"""Small words that are missing, words too many, and words in the wrong order."""

from __future__ import annotations

from bank.check.engine import Found, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    DETERMINERS,
    FUNCTION,
    HE,
    OBJECTS,
    POSSESSIVES,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    noun_phrase,
    verb_forms,
)
from bank.check.lexicon import lemmas, word_set
from bank.check.reading import Reading

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
    "listen": "to",
    "listens": "to",
    "listened": "to",
    "listening": "to",
    "belongs": "to",
    "belong": "to",
    "wait": "for",
    "waits": "for",
    "waited": "for",
    "waiting": "for",
    "looking": "at",
    "look": "at",
    "looks": "at",
    "looked": "at",
    "talked": "to",
    "talk": "to",
    "talks": "to",
}


def missing_behind(r: Reading, i: int, word: str, certain: bool = True) -> Finding:
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
    return missing_behind(
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
        if r.lower[i] in ("walk", "walked", "ran") and r.after(i + 1) in word_set(
            "farm garden store party museum kitchen office school library zoo cafeteria station town"
        ):
            return None
        return missing_behind(r, i, "to")
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
    return missing_behind(r, i, want, word not in ("talk", "talks", "talked") or after in OBJECTS)


@on_words("what where when why how who which")
def helper_is_missing(r: Reading, i: int) -> Found:
    """What you like, Where you go: a question without do, does, did, is, are.

    >>> show("What you like to do at recess?", "question")
    ['missing-word: What you -> What do you']
    >>> show("What she is doing? How old he is?")
    ['word-order: she is -> is she', 'word-order: he is -> is he']
    """
    if not r.first[i] or not r.text.rstrip().endswith("?") or not r.near(i):
        return None
    j = i + 1
    if (
        j + 1 < r.n
        and r.near(j)
        and r.lower[j + 1] in SUBJECTS
        and (
            r.lower[i] in ("what", "which") and is_noun(r.lower[j]) and r.tag[j][:1] == "N"
            or r.lower[i] == "how" and r.tag[j][:2] in ("JJ", "RB") and r.lower[j] != "come"
        )
    ):  # fmt: skip
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
