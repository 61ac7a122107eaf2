"""Whether a string of letters is an English word."""

from __future__ import annotations

from functools import cache

from bank.check.lexicon import lemmas, listed_words, word_set, zipf

# So frequent in every kind of writing that it must be a word, a name or a usual short form: about
# the 20,000 most frequent strings of wordfreq.
_FREQUENT = 3.4
# Rarer, but in lemminflect's lexicon, too.
_KNOWN = 3.25
# Words of a classroom that the packages leave out or write in the British way.
_SOUNDS = word_set(
    """baa achoo brr brrr ahem psst tsk whoa eek phew boo yum yuck oink moo quack neigh cluck ribbit
    tweet chirp hiss buzz splat thud clang bang pow zap whee tada yay aha shh ugh nope yep yup oof
    nay aye ole eh oho hoo coo woo hee hah gee aww aah ooh argh yikes"""
)
_CLASSROOM = word_set(
    """pajama pajamas donut donuts barcode barcodes vroom snowplow snowplows zigzag whiteboard
    smartboard glitter playdough lunchroom storytime snacktime circletime flashcard flashcards
    cubby cubbies preschooler preschoolers kindergartner kindergartners popsicles trampoline trampolines
    unicorns dinosaurs superhero superheroes emoji emojis cooties booger boogers yuck ick splish splosh
    kaboom zoom whoosh tractors sleepover sleepovers fidget fidgets headphones earbuds tablet tablets
    lasagna quesadilla quesadillas burrito burritos taco tacos sushi dumpling dumplings hummus
    oxen guacamole quokka quokkas ocelots komodo orca orcas koi jicama pierogi pierogies naan pho djembe snuck
    piñata piñatas café jalapeño jalapeños
    pinata pinatas smores jumprope hopscotch foursquare kickball dodgeball tetherball"""
)
# A compound of two listed nouns that is met at all.
_MET = 1.7
_AMERICAN = (("or", "our"), ("er", "re"), ("iz", "is"), ("yz", "ys"), ("l", "ll"), ("og", "ogue"),
             ("ense", "ence"), ("mold", "mould"), ("plow", "plough"), ("ic", "ise"), ("um", "ium"))  # fmt: skip


@cache
def is_word(word: str) -> bool:
    """Whether `word` (small letters) is a word of English, with its inflections.

    >>> is_word("lunchboxes"), is_word("recieve"), is_word("neighbor")
    (True, False, True)
    """
    if word in _CLASSROOM:
        return True
    if word in listed_words():
        return not _is_odd(word)
    if drops_the_g(word):
        return False
    if zipf(word) >= _KNOWN and lemmas(word):
        return True
    if word.endswith(("ier", "iest")) and "ADJ" in lemmas(word):
        return True  # coziest, spiciest
    if (
        word.endswith("s")
        and word[:-1] in listed_words()
        and len(word) > 6
        and not lemmas(word[:-1])
    ):
        return zipf(word) > 0  # capybaras: of a noun that the lexicon does not have
    return zipf(word) >= _FREQUENT or _is_american(word) or _is_compound(word) or _is_derived(word)


def _is_odd(word: str) -> bool:
    """A short string that is listed but that no lexicon knows and few write: cen, truk."""
    return len(word) <= 4 and zipf(word) < 3 and not lemmas(word) and word not in _SOUNDS


def drops_the_g(word: str) -> bool:
    """Whether this is an -ing word written as it is said.

    >>> drops_the_g("lookin"), drops_the_g("robin")
    (True, False)
    """
    return word.endswith("in") and word + "g" in listed_words() and word not in listed_words()


def _is_american(word: str) -> bool:
    if zipf(word) < 2:
        return False
    for here, there in _AMERICAN:
        if here in word and word.replace(here, there, 1) in listed_words():
            return bool(lemmas(word))
    return False


def _is_compound(word: str) -> bool:
    for ending in ("", "s", "es"):
        if ending and not word.endswith(ending):
            continue
        stem = word[: len(word) - len(ending)]
        if zipf(stem) < _MET:
            continue
        for cut in range(3, len(stem) - 2):
            if _is_part(stem[:cut]) and _is_part(stem[cut:]):
                return True
    return False


_ENDINGS = ("less", "like", "ness", "free")


def _is_derived(word: str) -> bool:
    """A listed noun with an ending that makes new words: touchless, catlike."""
    return zipf(word) >= _MET and any(
        word.endswith(ending)
        and word[: -len(ending)] in listed_words()
        and len(word) > len(ending) + 2
        for ending in _ENDINGS
    )


def _is_part(part: str) -> bool:
    return part in listed_words() and zipf(part) >= 3.3 and "NOUN" in lemmas(part)
