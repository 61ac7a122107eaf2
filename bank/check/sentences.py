"""Two sentences run together, and speech without its marks."""

from __future__ import annotations

from bank.check.clauses import SPLICE_STOPS, SUBORDINATE, clause_at, clause_in, finite_at
from bank.check.confused_places import compares
from bank.check.engine import Found, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    BE,
    DETERMINERS,
    FUNCTION,
    JOINERS,
    PREPOSITIONS,
    SUBJECTS,
    WH,
    is_noun,
    is_verb_tag,
    noun_phrase,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import word_set
from bank.check.reading import Reading
from bank.check.speech import QUOTES
from bank.check.spelling import is_word

OPEN_FOR_CLAUSE = word_set(
    "think thinks thought know knows knew say says said hope hopes hoped wish wishes wished guess "
    "guessed believe believes bet feel feels felt see saw sure glad happy sad sorry remember "
    "remembered heard hear told tell imagine mean means promise promised afraid show showed "
    "learned decided noticed dream dreamed let make made help helped watch watched forgot "
    "understand"
)
NOT_RUN = "These are two sentences. End the first one."


@on_text()
def two_sentences_run_together(r: Reading) -> Found:
    """Two whole sentences with no end mark or joining word between them.

    >>> show("I like my teacher she is nice.")
    ['run-on: teacher she -> teacher. She']
    >>> show("We went outside, it was snowing.")
    ['run-on: outside, it -> outside. It']
    >>> show("I like the dog she has. When I ran, it ran. I think she is nice.")
    []
    """
    if r.kind == "topic":
        return None
    found = []
    for start, close in r.sentences:
        if close - start < 5:
            continue
        k = _seam(r, start, close)
        if k is not None and (is_word(r.lower[k - 1]) or r.words[k - 1][0].isupper()):
            comma = r.gap[k - 1].startswith(",")
            word = r.words[k] if r.words[k] == "I" else r.words[k][0].upper() + r.words[k][1:]
            found.append(
                Finding(
                    "run-on",
                    r.starts[k - 1],
                    r.ends[k],
                    NOT_RUN,
                    f"{r.words[k - 1]}. {word}",
                    _sure(r, start, k, close) or comma,
                )
            )
    return found


def _seam(r: Reading, start: int, close: int) -> int | None:
    """The first word of a second sentence."""
    opener = r.lower[start]
    if (
        r.lower[start : start + 3] == ["by", "the", "time"]
        or opener in SUBORDINATE | WH - {"who"}
        and opener not in ("so",)
        or opener in ("the",)
        and (
            r.after(start) in ("more", "less", "fewer")
            or start + 1 < close
            and compares(r, start + 1)
        )
    ):
        subordinate_first = True
    else:
        subordinate_first = False
    for k in range(start + 2, close - 1):
        if r.gap[k - 1] == ", " and not subordinate_first and _comma_splice(r, start, k, close):
            return k
    first = clause_at(r, start, close)
    imperative = first is None and "VB" in verb_forms(opener) and r.tag[start] in ("VB", "VBP")
    if first is None and not imperative:
        k = start + 1
        if opener in word_set("yesterday today then now once first soon"):
            first = clause_at(r, k, close)
        if first is None:
            first = next(
                (k - 1 for k in range(start + 3, close - 1) if clause_in(r, start, k)), None
            )
        if first is None:
            return None
    if subordinate_first:
        return None
    begin = (first or start) + 1
    for k in range(begin, close - 1):
        gap = r.gap[k - 1]
        if gap not in (" ", ", ", ". "):
            return None
        before = r.lower[k - 1]
        if (
            before == "yet"
            or imperative
            and r.lower[k] in ("you", "i", "we")
            and r.tag[k - 1][:1] == "N"
        ):
            return None
        if before in SUBORDINATE | JOINERS | {"or", "nor"}:
            if (
                before in SUBORDINATE
                and before not in ("so", "like", "than")
                and (before not in ("as", "before", "after") or clause_at(r, k, close) is not None)
            ):
                return None
            continue
        word = r.lower[k]
        if gap == ", ":
            continue
        if (
            word in ("then", "now")
            and gap == " "
            and k + 2 < close
            and r.lower[k + 1] in SUBJECTS
            and not (word == "then" and before != "later" and compares(r, k - 1))
            and before not in FUNCTION - word_set("me him her us them it there here home outside")
            and clause_at(r, k + 1, close) is not None
        ):
            return k
        if word in SUBJECTS or "'" in word and word.split("'")[0] in SUBJECTS:
            if word == "it's" and before in PREPOSITIONS:
                continue
            if _pronoun_seam(r, k, close):
                return k
        elif (
            word in word_set("the my his our their there this")
            or word == "her"
            and k + 2 < close
            and r.lower[k + 2] in AUXILIARIES
        ) and _noun_seam(r, k, close):
            return k
    return None


_AFTER_SPLICE = word_set(
    "then later now soon finally suddenly today yesterday instead next afterward"
)


def _comma_splice(r: Reading, start: int, k: int, close: int) -> bool:
    """Whether a comma before word `k` stands between two whole sentences."""
    if any(c in r.text for c in QUOTES) or r.text.rstrip().endswith("?"):
        return False
    before = r.lower[start:k]
    if ";" in "".join(r.gap[start:k]) or r.lower[k] in ("whose", "which", "who", "where", "when"):
        return False
    if r.tag[start] in ("VBN", "VBG", "JJ"):
        return False
    if not SPLICE_STOPS.isdisjoint(before[:2]) or any(
        w in SUBORDINATE - _SPLICE_ALLOWS for w in before[:1]
    ):
        return False
    # Part of a list, or a second clause that a joining word closes: "I came, I saw, and I won".
    if any("," in g for g in r.gap[k : close - 1]) and not (
        r.lower[k] in SUBJECTS and "," not in "".join(r.gap[k : k + 3])
    ):
        return False
    if any("," in g for g in r.gap[start : k - 1]) and not (
        any(d in ("nsubj", "nsubjpass") for d in r.dep[_last_comma(r, start, k) : k])
        or k - _last_comma(r, start, k) <= 2
        and (r.words[k - 1].isdigit() or r.words[k - 1][0].isupper())
    ):
        return False
    j = k
    if r.lower[j] in _AFTER_SPLICE and r.near(j):
        j += 1
    elif r.lower[j] in PREPOSITIONS and r.near(j):
        inner = noun_phrase(r, j + 1)
        if (
            inner is None
            or not r.near(inner.last)
            or inner.last + 1 >= close
            or r.lower[inner.last + 1] not in SUBJECTS
        ):
            return False
        j = inner.last + 1
    if j >= close - 1 or clause_at(r, j, close) is None and not _clause_with_tail(r, j, close):
        return False
    if r.lower[k - 1] in word_set("yes no well oh please hello hi") or not _SAYS.isdisjoint(
        r.lower[max(k, close - 3) : close]
    ):
        return False
    if (
        r.lower[j] not in SUBJECTS
        and "'" not in r.lower[j]
        and not (r.lower[j] in DETERMINERS or r.tag[j] in ("NNP", "JJ", "NNS", "EX"))
    ):
        return False
    if k - start < 2:
        return False
    return clause_in(r, start, k) or _clause_alone(r, start, k)


def _clause_alone(r: Reading, start: int, k: int) -> bool:
    """Whether the words from `start` to `k` are a clause, whatever the parse makes of them."""
    v = clause_at(r, start, k)
    return v is not None and r.lower[start] not in SUBORDINATE | WH | PREPOSITIONS


def _clause_with_tail(r: Reading, j: int, close: int) -> bool:
    """Whether a subject with a phrase behind it, and then its verb, start at `j`."""
    phrase = noun_phrase(r, j)
    if phrase is None:
        return False
    v = phrase.last + 1
    while v < close - 2 and r.lower[v] in PREPOSITIONS and r.near(v):
        inner = noun_phrase(r, v + 1)
        if inner is None:
            return False
        v = inner.last + 1
    return v < close and r.near(v - 1) and finite_at(r, v) and r.tag[v] != "VBN"


def _last_comma(r: Reading, start: int, k: int) -> int:
    return max((m + 1 for m in range(start, k - 1) if "," in r.gap[m]), default=start)


_SPLICE_ALLOWS = word_set("so like as that than once")


_SAYS = word_set(
    "said says asked yelled shouted cried whispered replied answered called exclaimed think guess "
    "know"
)


def _pronoun_seam(r: Reading, k: int, close: int) -> bool:
    before = r.lower[k - 1]
    word = r.lower[k]
    if (
        before in OPEN_FOR_CLAUSE
        or before in AUXILIARIES
        or before
        in FUNCTION
        - word_set(
            "me him her us them it too there here out away back up down off in on home outside "
            "inside again everything something everyone someone you lot"
        )
    ):
        return False
    if k > 1 and r.lower[k - 2] in ("every", "each", "any", "only"):
        return False  # "every game it has played"
    if word in ("it", "you") and (is_verb_tag(r.tag[k - 1]) or before in PREPOSITIONS):
        return False
    if before in PREPOSITIONS and word in ("you", "it"):
        return False
    v = clause_at(r, k, close)
    if v is None or "'" in word and is_verb_tag(r.tag[k - 1]) or "so" in r.lower[max(0, k - 4) : k]:
        return False
    if "'" in word:
        v = k
    elif r.lower[v] in ("be",):
        return False
    if is_verb_tag(r.tag[k - 1]) and not verb_forms(before) & {"VBD", "VBN", "VBG", "VBZ", "VB"}:
        return False
    if is_verb_tag(r.tag[k - 1]) and before in OPEN_FOR_CLAUSE:
        return False
    if r.tag[k - 1][:2] == "JJ" and word in ("i", "he", "she", "we", "they"):
        return True
    # "the dog she has", "the game we played": a clause about the thing, whose verb has no object.
    if (
        is_noun(before)
        or r.tag[k - 1][:1] == "N"
        or before in ("everything", "something", "anything", "one")
    ):
        return _complete(r, v, close) and not _clause_goes_on(r, v, close)
    return True


def _complete(r: Reading, v: int, close: int) -> bool:
    """Whether the verb at `v` has what it needs behind it: then it is not about the thing before."""
    word = r.lower[v]
    if "'" in word:
        return True
    if v + 1 >= close:
        return word not in AUXILIARIES and word in word_set(
            "barked ran slept cried laughed fell smiled left won lost"
        )
    after = r.lower[v + 1]
    if after in word_set("yesterday today tomorrow tonight last every most best"):
        return False
    if (
        word in word_set("looked looks lived lives sat sits waited waits listened listens played")
        and after in PREPOSITIONS
        and v + 2 < close
        and r.lower[v + 2] in DETERMINERS
    ):
        return True
    if word in word_set("came went ran slept fell laughed cried smiled jumped sat stood"):
        return True
    if (
        word in AUXILIARIES - BE
        and v + 2 < close
        and (r.lower[v + 1] == "not" or word.endswith("n't"))
    ):
        return v + 3 < close
    if word in BE:
        return v + 1 < close and not (r.lower[v + 1].endswith("ing") and v + 2 >= close)
    if word in AUXILIARIES:
        return v + 2 < close and (
            r.lower[v + 2] in DETERMINERS | word_set("it them him her me us you")
            or r.tag[v + 2] in ("JJ", "RB", "NN", "NNS")
        )
    return (
        after in DETERMINERS
        or after in word_set("it them him her me us you to")
        and after != "to"
        or r.tag[v + 1] in ("NN", "NNS", "PRP", "JJ", "VBG", "NNP", "CD")
        or after in ("home", "away", "very", "so")
    )


def _clause_goes_on(r: Reading, v: int, close: int) -> bool:
    """Whether a later finite verb shows that the clause between was about the thing: `the dog she has is big`."""
    for k in range(v + 2, close):
        if r.lower[k - 1] in JOINERS | SUBORDINATE or r.gap[k - 1] != " ":
            return False
        if (
            finite_at(r, k)
            and r.lower[k - 1] not in SUBJECTS
            and not _clause_subject_before(r, k, v)
        ):
            return r.tag[k] in ("VBZ", "VBD", "VBP") and r.lower[k] in BE
    return False


def _clause_subject_before(r: Reading, k: int, v: int) -> bool:
    return any(r.lower[m] in SUBJECTS for m in range(v + 1, k))


def _noun_seam(r: Reading, k: int, close: int) -> bool:
    """A new clause that starts with a thing: `the dog barked the cat ran away`."""
    before = r.lower[k - 1]
    if (
        before
        in FUNCTION
        - word_set(
            "me him her us them it there here out away home outside inside again too you down up off"
        )
        or before in OPEN_FOR_CLAUSE
    ):
        return False
    v = clause_at(r, k, close)
    if v is None or v == k:
        return False
    if r.tag[v] not in ("VBD", "VBZ", "VBP", "MD") and r.lower[v] not in AUXILIARIES:
        return False
    # A verb before the phrase could have it as its object; the second verb then has no subject.
    if r.dep[v] in ("acl", "advcl", "relcl") and r.lower[v] not in AUXILIARIES:
        return False
    if (
        verb_forms(before) & {"VBD", "VBZ"}
        or is_noun(before)
        or r.tag[k - 1][:2] in ("RB", "JJ")
        or before in word_set("outside inside home there here away it them him")
    ):
        phrase = noun_phrase(r, k)
        return (
            phrase is not None
            and phrase.head > k
            and r.lower[v] not in ("been", "being")
            and r.tag[v] != "VBN"
        )
    return False


def _sure(r: Reading, start: int, k: int, close: int) -> bool:
    word = r.lower[k]
    if any(w in WH or w == "that" for w in r.lower[start:k]):
        return False
    return word in SUBJECTS or "'" in word or not is_verb_tag(r.tag[k - 1])
