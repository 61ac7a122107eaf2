"""Commas between the things in a list."""

from __future__ import annotations

from dataclasses import replace

from bank.check import names
from bank.check.engine import Found, on_text, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    AUXILIARIES,
    DETERMINERS,
    FUNCTION,
    is_noun,
    singular_of,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, pair, word_set
from bank.check.reading import Reading


@on_text()
def list_without_commas(r: Reading) -> Found:
    """Three or more things in a row need commas.

    >>> show("I like apples pears and plums.")
    ['comma-list: apples pears -> apples, pears,']
    >>> show("I would like a bun an egg, and some milk.")
    ['comma-list: a bun an egg -> a bun, an egg']
    >>> show("I like apple pie and milk.")
    []
    """
    found = []
    for i in range(2, r.n - 1):
        if r.lower[i] not in ("and", "or") or not r.near(i):
            continue
        finding = _listed(r, i)
        if finding is None:
            continue
        if r.text[finding.end : finding.end + 1] == "," and finding.suggestion:
            # "a sandwich an apple, and some juice" has its last comma.
            finding = replace(finding, suggestion=finding.suggestion.removesuffix(","))
        found.append(finding)
    return found


def _listed(r: Reading, i: int) -> Finding | None:
    """Two things that stand side by side before the `and` at word `i`."""
    b, a = i - 1, i - 2
    if not r.near(a) or r.gap[b].strip() not in ("", ","):
        return None
    both = {r.lower[a], r.lower[b]}
    alike = any(both <= group for group in _SORTS[2:])
    if alike and r.gap[b] == ", " and r.text.count(",") == 1 and r.text.rstrip()[-1:] != "?":
        return Finding("comma-list", r.starts[a], r.ends[b], "Put commas between the things in a list.",
                           f"{r.words[a]}, {r.words[b]},", True)  # fmt: skip
    three = {r.lower[a], r.lower[b], r.lower[i + 1]}
    named = three <= _SORTS[0] or len(three) == 3 and any(three <= group for group in _SORTS[2:])
    if (
        r.lower[i] == "or"
        and not r.gap[b].startswith(",")
        and not named
        and not (
            singular_of(r.lower[a]) and singular_of(r.lower[b]) and r.tag[a] == r.tag[b] == "NNS"
        )
        and any(first and w in AUXILIARIES for first, w in zip(r.first[:a], r.lower, strict=False))
    ):
        # "Is a whale a fish or a mammal?"
        return None
    first, second, third = r.lower[a], r.lower[b], r.lower[i + 1]
    sure: bool | None = None
    if singular_of(first) and singular_of(second) and is_noun(second) and not _owner_like(r, a, b):
        if r.tag[a] in ("NNS", "NN", "NNPS", "NNP") and (r.tag[b] in ("NNS", "NN", "VBZ", "NNPS")):
            sure = True
    elif (
        _same_sort(first, second, third)
        or names.is_name(first)
        and names.is_name(second)
        and r.words[a][0].isupper()
        and r.words[b][0].isupper()
        and r.words[i + 1][0].isupper()
        or r.lower[a] not in FUNCTION
        and "VBD" in verb_forms(first)
        and "VBD" in verb_forms(second)
        and "VBD" in verb_forms(third)
        and "ADJ" not in lemmas(second)
        or verb_forms(first) & {"VBG"}
        and verb_forms(second) & {"VBG"}
        and verb_forms(third) & {"VBG"}
        or "VB" in verb_forms(first)
        and "VB" in verb_forms(second)
        and "VB" in verb_forms(third)
        and not is_noun(second)
        and first not in FUNCTION
        and second not in FUNCTION
        and first not in ("go", "come", "help", "let", "make", "say")
    ):
        sure = True
    elif (
        _mass_thing(r, a)
        and _mass_thing(r, b)
        and is_noun(third)
        and r.before(a) not in DETERMINERS
        and (r.tag[b] == "NN")
    ):
        sure = False
    if sure is None:
        return _phrases_listed(r, i) or _things_listed(r, i) or _deeds_listed(r, i)
    start = a
    while (
        start > 0
        and r.near(start - 1)
        and (
            _same_sort(r.lower[start - 1], first, second)
            or singular_of(r.lower[start - 1])
            and singular_of(first)
            and r.tag[start - 1] == "NNS"
        )
    ):
        start -= 1
    things = r.words[start : b + 1]
    return Finding("comma-list", r.starts[start], r.ends[b] if r.gap[b] == " " else r.ends[b],
                   "Put commas between the things in a list.",
                   ", ".join(things) + ",", sure)  # fmt: skip


def _owner_like(r: Reading, a: int, b: int) -> bool:
    return r.lower[a] in ("sports", "clothes", "glass", "news", "arts") or r.dep[a] == "poss"


_SORTS = [word_set(group) for group in (
    "red blue green yellow orange purple black white brown pink gray grey gold silver tan",
    "big small tall short long little tiny huge cold hot warm wet dry soft hard loud quiet fast "
    "slow"
    "happy sad tired hungry kind funny smart brave strong sweet sour salty fluffy furry shiny "
    "bright dark old new clean dirty heavy light round square flat smooth rough sticky",
    "milk juice water bread butter cheese soup rice pizza cake pie salad fruit meat chicken fish "
    "ham corn honey jam yogurt popcorn lemonade cereal toast pasta chocolate lemonade tea coffee flour "
    "sugar salt pepper",
    "math reading science art music writing spelling gym recess lunch history",
    "soccer baseball football basketball tennis hockey golf swimming running chess",
    "mom dad grandma grandpa mother father",
    "monday tuesday wednesday thursday friday saturday sunday",
    "spring summer fall winter autumn",
    "one two three four five six seven eight nine ten",
    "cat dog bird fish hamster rabbit turtle cow pig horse sheep goat hen duck frog lion tiger "
    "bear monkey elephant",
    "rain snow wind sun ice sand mud rock wood stone metal plastic paper glass glue paint",
)]  # fmt: skip


_LOOKS = _SORTS[0] | _SORTS[1]


def _same_sort(first: str, second: str, third: str) -> bool:
    if first == second:
        return False
    if singular_of(first) and any(second in group and third in group for group in _SORTS[2:4]):
        return True
    if first in _LOOKS and second in _LOOKS and third in _LOOKS:
        return True
    return any(first in group and second in group and third in group for group in _SORTS)


def _mass_thing(r: Reading, i: int) -> bool:
    return any(r.lower[i] in group for group in _SORTS[2:5]) and r.lower[i] not in word_set(
        """
        chicken fruit chocolate butter cheese corn orange honey pizza tea coffee math
        science spelling music art history gym soccer baseball football tennis golf
        hockey basketball lunch ham meat rice milk water
        """
    )


_THING_OPENS = word_set("a an the my his her some one two three four five six seven eight nine ten")
_GIVING = word_set(
    "gave give gives made showed bought told called named sent brought taught is was are be"
)


def _phrases_listed(r: Reading, i: int) -> Finding | None:
    """`a hat a coat and a scarf`, `milk a bun and jam`: phrases of which one has its small word."""
    k = i - 1
    while k > 0 and r.lower[k] not in DETERMINERS and k > i - 4 and r.near(k - 1):
        k -= 1
    if r.lower[k] not in word_set("a an the my his her some") or k < 2 or not r.near(k - 1):
        return None
    j = k - 1
    if not is_noun(r.lower[j]) or r.tag[j][:1] != "N":
        return None
    start = j
    while start > 0 and r.lower[start] not in _THING_OPENS and start > j - 3 and r.near(start - 1):
        start -= 1
    opened = r.lower[start] in _THING_OPENS
    if not opened:
        start = j
    if r.before(start) in _GIVING or not (
        r.lower[i + 1] in _THING_OPENS or is_noun(r.lower[i + 1]) and r.tag[i + 1][:1] == "N"
    ):
        return None
    if opened and r.lower[k] not in ("a", "an") and r.lower[start] != r.lower[k]:
        return None
    if not opened and (r.lower[k] not in ("a", "an") or not r.before(start)):
        return None
    if (
        i + 2 < r.n
        and r.lower[i + 1] in _THING_OPENS
        and not is_noun(r.lower[i + 2])
        and r.tag[i + 2][:2] != "JJ"
    ):
        return None
    one = r.text[r.starts[start] : r.ends[j]]
    two = r.text[r.starts[k] : r.ends[i - 1]]
    return Finding(
        "comma-list", r.starts[start], r.ends[i - 1],
        "Put commas between the things in a list.", f"{one}, {two},", opened,
    )  # fmt: skip


_NO_DOER = word_set("we they you i he she it to can will must should could would please and")


def _things_listed(r: Reading, i: int) -> Finding | None:
    """`nails scissors and keys`, `flour milk and an egg`: two things side by side, then one more."""
    b, a, c = i - 1, i - 2, i + 1
    if c + 1 < r.n and r.lower[c] in DETERMINERS:
        c += 1
    first, second = r.lower[a], r.lower[b]
    if not (is_noun(second) and is_noun(r.lower[c]) and r.tag[c][:1] == "N") or first == second:
        return None
    if r.tag[a][:1] != "N" or r.tag[b] not in ("NN", "NNS") or pair(first, second):
        return None
    # "a towel sunscreen, and a hat": a comma before the last of two would be one too many.
    behind = r.after(c)
    alone = r.gap[b] == ", " and r.text.count(",") == 1 and not r.first[a]
    alone = alone and (not behind or behind in ("for", "to", "from", "in", "at"))
    many = singular_of(first) and r.tag[a] == "NNS" and not _owner_like(r, a, b)
    mixed = first in _MIXED and second in _MIXED and r.before(a) not in DETERMINERS
    if not (many and not singular_of(second) or mixed or alone):
        return None
    return Finding("comma-list", r.starts[a], r.ends[b], "Put commas between the things in a list.",
                   f"{r.words[a]}, {r.words[b]},", False)  # fmt: skip


def _deeds_listed(r: Reading, i: int) -> Finding | None:
    """`we run jump and throw`: three things that someone does, the first after who does them."""
    words = [r.lower[k] for k in (i - 2, i - 1, i + 1)]
    if r.before(i - 2) not in _NO_DOER or len({*words}) < 3:
        return None
    if any("VB" not in verb_forms(word) or word in FUNCTION for word in words):
        return None
    listed = r.gap[i - 1] == ", " and r.before(i - 2) not in ("and", "please")
    if words[0] in _BEFORE_A_VERB:
        return None
    if not listed and any(r.tag[k] not in ("VB", "VBP") for k in (i - 2, i + 1)):
        return None
    return Finding("comma-list", r.starts[i - 2], r.ends[i - 1],
                   "Put commas between the things in a list.",
                   f"{r.words[i - 2]}, {r.words[i - 1]},", False)  # fmt: skip


# What goes into a bowl or a wall, of which no two make one thing.
_MIXED = word_set(
    "flour milk salt oil sugar pepper water cheese rice honey vinegar cinnamon oats stone lumber "
    "grain sand gravel cement clay wool cotton coal"
)
_BEFORE_A_VERB = word_set(
    "go come help let make say try need want like get have do play keep start"
)


@on_words("and or")
def comma_behind_the_joining_word(r: Reading, i: int) -> Found:
    """whales and, dolphins: the comma stands before the last joining word, not behind it.

    >>> show("I like sharks, whales and, dolphins.")
    ['comma-list: and, -> and']
    >>> show("We ran and, of course, we won.")
    []
    """
    if r.gap[i] != ", " or "," in "".join(r.gap[i + 1 :]) or i < 1:
        return None
    end = r.ends[i] + 1
    return Finding(
        "comma-list", r.starts[i], end, "No comma behind the joining word.", r.words[i], True
    )


@on_words("are is were was like likes need needs have has want wants eat bought saw see")
def comma_before_the_first_thing(r: Reading, i: int) -> Found:
    """My pets are, a dog, a bird, and a turtle.

    >>> show("My pets are, a dog, a bird, and a turtle.")
    ['comma-list: are, -> are']
    >>> show("The pets are, I think, a dog and a bird.")
    []
    """
    if r.gap[i] != ", " or i + 1 >= r.n or r.first[i] or "," not in "".join(r.gap[i + 1 :]):
        return None
    thing = r.lower[i + 1]
    if thing not in ("a", "an", "my", "the", "some") and not singular_of(thing):
        return None
    if "and" not in r.lower[i + 2 :]:
        return None
    return Finding(
        "comma-list",
        r.starts[i],
        r.ends[i] + 1,
        "No comma before the first thing.",
        r.words[i],
        True,
    )
