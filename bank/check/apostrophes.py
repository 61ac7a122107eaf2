"""Apostrophes: in short forms, and for who owns it."""

from __future__ import annotations

from bank.check.engine import ALL_KINDS, Found, at, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ADVERBS,
    DETERMINERS,
    FUNCTION,
    SUBJECTS,
    is_noun,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import word_set
from bank.check.reading import Reading

_SHORT = {
    w.replace("'", ""): w
    for w in (
        "don't doesn't didn't can't isn't aren't wasn't weren't hasn't haven't hadn't wouldn't "
        "couldn't shouldn't mustn't needn't mightn't i'm i've you're you've you'll you'd they're "
        "they've they'll they'd we've he's she's that's what's where's who's there's here's it'll "
        "that'll o'clock how's when's why's ain't could've would've should've y'all"
    ).split()
}


@on_text(ALL_KINDS)
def short_form_without_apostrophe(r: Reading) -> Found:
    """A short form whose apostrophe was left out or stands in the wrong place.

    >>> show("I dont know.")
    ["apostrophe-contraction: dont -> don't"]
    >>> show("It does'nt work.")
    ["apostrophe-contraction: does'nt -> doesn't"]
    """
    found = []
    for i, word in enumerate(r.lower):
        right = _SHORT.get(word)
        if right is None and word.endswith("'nt"):
            right = _SHORT.get(word.replace("'", ""))
        if (
            right is None
            and word.endswith("n")
            and r.gap[i] in ("'", "’")
            and _SHORT.get(word + "t")
        ):
            right = None
        if right is not None:
            if right[0] == "i":
                right = "I" + right[1:]
            found.append(_short(r, i, right))
    return found


def _short(r: Reading, i: int, right: str, certain: bool = True) -> Finding:
    return at(
        r,
        i,
        "apostrophe-contraction",
        f"Letters were left out; the short form is “{right}”.",
        right,
        certain,
    )


@on_words("o")
def clock_without_apostrophe(r: Reading, i: int) -> Found:
    """o'clock in two words.

    >>> show("It is two o clock.")
    ["apostrophe-contraction: o clock -> o'clock"]
    """
    if r.after(i) == "clock":
        return at(
            r, i, "apostrophe-contraction", "The short form is “o'clock”.", "o'clock", to=i + 1
        )
    return None


@on_words("wont lets id ill were well shell wed hell shed")
def short_form_that_is_a_word(r: Reading, i: int) -> Found:
    """wont, lets, id and ill where won't, let's, I'd and I'll are meant.

    >>> show("Lets go home.")
    ["apostrophe-contraction: Lets -> Let's"]
    >>> show("She lets me in. He feels ill. The well is deep.")
    []
    """
    word, after = r.lower[i], r.after(i)
    if word == "wont":
        return _short(r, i, "won't")
    if not after:
        return None
    plain = "VB" in verb_forms(after) or after in ("be", "have", "do")
    if word == "lets":
        if r.first[i] and plain and after not in ("in", "out", "me"):
            return _short(r, i, "let's")
        return None
    opens = (
        r.first[i]
        or r.lower[i - 1] in word_set("and but because so if when that think hope")
        or "," in r.gap[i - 1]
    )
    if word == "id" and after in word_set("like love rather be have never go say want"):
        return _short(r, i, "I'd")
    if (
        word == "ill"
        and opens
        and (plain or after in ADVERBS)
        and after not in ("people", "health")
    ):
        return _short(r, i, "I'll")
    if word == "were" and opens:
        return _we_are(r, i)
    if (
        word in ("well", "shell")
        and opens
        and r.first[i]
        and plain
        and "," not in r.gap[i]
        and after not in FUNCTION - {"be", "have", "do"}
        and not is_noun(after)
    ):
        return _short(r, i, {"well": "we'll", "shell": "she'll"}[word])
    if word in ("wed", "shed", "hell") and r.first[i] and plain and not is_noun(after):
        return _short(r, i, {"wed": "we'd", "shed": "she'd", "hell": "he'll"}[word])
    return None


def _we_are(r: Reading, i: int) -> Finding | None:
    after = r.after(i)
    if after in SUBJECTS or after in DETERMINERS or r.text.rstrip().endswith("?"):
        return None
    if "VBG" in verb_forms(after) or after in word_set(
        "not all almost very so ready going late happy here"
    ):
        return _short(r, i, "we're")
    return None


@on_words("its")
def its_for_it_is(r: Reading, i: int) -> Found:
    """its where it's is meant.

    >>> show("Its raining outside.")
    ["apostrophe-contraction: Its -> It's"]
    >>> show("The dog wagged its tail. Its raincoat is red.")
    []
    """
    after = r.after(i)
    if not after:
        return (
            _short(r, i, "it's", False)
            if r.text[r.ends[i] : r.ends[i] + 1] in (".", "!") and False
            else None
        )
    j = i + 1
    if after in word_set(
        """
        a an the not been so too very my your his our their me you him us them going
        raining snowing because important okay always never really just almost hard easy
        fun just probably also in on at like that what where how he she they i here
        there nice good great funny sunny windy cloudy rainy bad sad true time
        """
    ):
        if (
            after
            in word_set("time good great fun sunny bad nice hard easy funny true sad important")
            and is_noun(r.after(j))
            and r.tag[j + 1][:1] == "N"
        ):
            return None
        if after == "time" and r.after(j) not in ("to", "for", "that", ""):
            return None
        return _short(r, i, "it's")
    tag = r.tag[j]
    next_after = r.after(j)
    if (
        tag in ("VBG", "NN")
        and "VBG" in verb_forms(after)
        and not (next_after and is_noun(next_after))
    ):
        opens = r.first[i] or r.before(i) in word_set("that because and but when if think so")
        return _short(r, i, "it's", opens) if opens else None
    if (
        tag in ("JJ", "RB", "JJR")
        and not is_noun(after)
        and not is_noun(next_after)
        and (not next_after or next_after in FUNCTION or r.tag[j + 1] in ("IN", "TO", "CC", "RB"))
    ):
        return _short(r, i, "it's")
    return None
