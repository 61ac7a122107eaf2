"""Words in the wrong place: Describe what would you do; a day rainy; Why the is sky blue?"""

from __future__ import annotations

from bank.check.engine import Found, at, on_words
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    DO,
    MODALS,
    POSSESSIVES,
    SUBJECTS,
    WH,
    is_noun,
    verb_forms,
)
from bank.check.lexicon import word_set
from bank.check.reading import Reading


def swapped(r: Reading, i: int, certain: bool = True) -> Finding:
    """Word `i` and the next one stand the wrong way round."""
    one, two = r.words[i], r.words[i + 1]
    return Finding("word-order", r.starts[i], r.ends[i + 1], "These words are in the wrong order.",
                   f"{two} {one}", certain)  # fmt: skip


_TELLS = word_set("describe explain about tell know knows show wonder wonders imagine decide")


@on_words("what where how when why who")
def question_order_in_what_is_told(r: Reading, i: int) -> Found:
    """Describe what would you do.

    >>> show("Describe what would you do if you could fly.")
    ['word-order: would you -> you would']
    >>> show("Tell me what you would do. Think about what is there. I know who it is.")
    []
    """
    if r.before(i) not in _TELLS or r.text.rstrip()[-1:] == "?" or not r.near(i):
        return None
    if (
        r.lower[i + 1] not in MODALS | word_set("is are was were did do does")
        or r.after(i + 1) not in SUBJECTS
    ):
        return None
    if r.lower[i + 1] in DO:
        return at(r, i + 1, "extra-word", f"“{r.words[i + 1]}” is too many.", "")
    if (
        r.lower[i + 1] in ("is", "are", "was", "were")
        and r.lower[i] in ("what", "who")
        and r.after(i + 2) not in ("",)
    ):
        return None
    return swapped(r, i + 1)


@on_words("always never")
def always_behind_its_verb(r: Reading, i: int) -> Found:
    """rides always her bike.

    >>> show("My sister rides always her bike to practice.")
    ['word-order: rides always -> always rides']
    >>> show("He is always the first. It was never my turn. They almost never see a bear.")
    []
    """
    verb = r.before(i)
    if (
        not verb
        or verb in AUXILIARIES
        or r.tag[i - 1] not in ("VBZ", "VBD", "VBP")
        or is_noun(verb)
        and r.tag[i - 1] == "VBP"
    ):
        return None
    if r.after(i) not in ARTICLES | POSSESSIVES | {"to", "in", "at"} or not verb_forms(verb) & {
        "VBZ",
        "VBD",
    }:
        return None
    return swapped(r, i - 1)


@on_words("whose")
def whose_before_its_thing(r: Reading, i: int) -> Found:
    """Whose is backpack this?

    >>> show("Whose is backpack this?")
    ['word-order: is backpack -> backpack is']
    >>> show("Whose is this backpack? Whose are these?")
    []
    """
    if (
        r.after(i) not in ("is", "was")
        or not is_noun(r.after(i + 1))
        or r.after(i + 2) not in ("this", "that", "it")
    ):
        return None
    return swapped(r, i + 1)


_KINDS_OF = word_set(
    "rainy sunny windy snowy cloudy funny scary happy silly muddy shiny red blue green yellow purple "
    "brown black white orange pink big small tiny huge little tall short old new young pretty beautiful"
)


@on_words(" ".join(_KINDS_OF))
def word_that_describes_behind_its_thing(r: Reading, i: int) -> Found:
    """a day rainy at your house.

    >>> show("Describe a day rainy at your house.")
    ['word-order: day rainy -> rainy day']
    >>> show("We painted a house red. I want a box big enough. He made a day happy. It is a day old.")
    []
    """
    if r.after(i) not in ("at", "in", "on", "with") or not r.near(i - 1):
        return None
    thing = r.before(i)
    if not is_noun(thing) or r.tag[i - 1] != "NN" or r.before(i - 1) not in ("a", "an", "the"):
        return None
    if r.before(i - 2) not in ("describe", "about", "had", "like", "see", "saw"):
        return None
    return swapped(r, i - 1)


@on_words("the your my his her our their")
def helper_behind_the_small_word(r: Reading, i: int) -> Found:
    """Why the is sky blue?

    >>> show("Why the is sky blue? ")
    ['word-order: the is -> is the']
    >>> show("What the dog did was sad.")
    []
    """
    if r.before(i) not in WH or r.after(i) not in word_set("is are was were does do did has"):
        return None
    if not is_noun(r.after(i + 1)):
        return None
    return swapped(r, i)
