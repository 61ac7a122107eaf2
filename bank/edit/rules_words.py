"""Which skill repairs one word that stands for another.

The rules are tried in order; the first that answers decides. Each sees the letters alone: capitals,
apostrophes and dots have been taken off and named before.
"""

from __future__ import annotations

from collections.abc import Callable

from bank.edit import lexicon
from bank.edit.look import Change, Verdict
from bank.edit.sets import (
    ARTICLES,
    AUXILIARIES,
    BE,
    CHILD_PRONOUNS,
    CONFUSED,
    DEMONSTRATIVE,
    DO,
    HAVE,
    MODALS,
    NEGATIVE_PAIRS,
    PRONOUNS,
    RELATIVE,
)
from bank.edit.wordset import word_set
from bank.language import inflections


def article_for_article(change: Change) -> Verdict | None:
    """One article for another.

    >>> skills("I ate a apple.", "I ate an apple.")
    ['article']
    """
    if change.wrong in ARTICLES and change.right in ARTICLES:
        return Verdict("article")
    return None


def no_word_too_many(change: Change) -> Verdict | None:
    """A second no word that becomes any, ever, or loses its not.

    >>> skills("We don't have no milk.", "We don't have any milk.")
    ['double-negative']
    >>> skills("She can't never win.", "She can never win.")
    ['double-negative']
    """
    is_pair = change.right in NEGATIVE_PAIRS.get(change.wrong, ())
    bare = change.wrong.replace("'", "")
    is_not = change.wrong.endswith("n't") or bare in _NOT_FORMS
    drops_not = is_not and change.right in AUXILIARIES
    if (is_pair or drops_not) and change.sentence.has_negative(change.j):
        return Verdict("double-negative")
    return None


_NOT_FORMS = word_set(
    "aint cant cannot couldnt didnt doesnt dont hadnt hasnt havent isnt wasnt werent wont wouldnt "
    "shouldnt arent"
)


def pronoun_for_pronoun(change: Change) -> Verdict | None:
    """Another form or another pronoun, unless the two only sound the same.

    >>> skills("Him is my brother.", "He is my brother.")
    ['pronoun']
    >>> skills("Give me them boots.", "Give me those boots.")
    ['pronoun']
    """
    wrong, right = change.wrong, change.right
    if wrong in CHILD_PRONOUNS and right in PRONOUNS:
        return Verdict("pronoun")
    pairs = (PRONOUNS, DEMONSTRATIVE, RELATIVE)
    if any(wrong in group and right in group for group in pairs):
        return Verdict("pronoun")
    if wrong in ("them", "dem") and right == "the":
        return Verdict("pronoun")
    return None


_NUMBER_OF_SUBJECT = (
    frozenset(["is", "are", "am", "be"]),
    frozenset(["was", "were"]),
    frozenset(["has", "have", "haves"]),
    frozenset(["does", "do", "dos"]),
    frozenset(["ai", "is"]),
    frozenset(["ai", "are"]),
    frozenset(["ai", "am"]),
    frozenset(["ai", "do"]),
    frozenset(["ai", "does"]),
    frozenset(["ai", "has"]),
    frozenset(["ai", "have"]),
)


def verb_for_its_subject(change: Change) -> Verdict | None:
    """The same verb and time, but for another person or number.

    >>> skills("My cat like fish.", "My cat likes fish.")
    ['agreement']
    >>> skills("The boys was loud.", "The boys were loud.")
    ['agreement']
    """
    pair = frozenset([change.wrong, change.right])
    if len(pair) == 2 and any(pair <= group for group in _NUMBER_OF_SUBJECT):
        return Verdict("agreement")
    if not _may_be_verb(change):
        return None
    for lemma in lexicon.lemmas(change.right, "VERB"):
        third = set(inflections(lemma, "VBZ")) | {lemma + "s"}
        if lemma in pair and len(pair & third) == 1:
            return Verdict("agreement")
    return None


def _may_be_verb(change: Change) -> bool:
    """Whether the right word is a verb, also where the parser takes `the bell rings` for a thing.

    A clause without any other finite verb needs one.
    """
    if change.pos in ("VERB", "AUX") or change.tag.startswith("VB"):
        return not _is_last_of_things(change)
    if not lexicon.lemmas(change.right, "VERB"):
        return False
    if not lexicon.lemmas(change.right, "NOUN") and not lexicon.lemmas(change.right, "ADJ"):
        return True
    before = change.sentence.word(change.j - 1)
    after_thing = before is not None and (
        before.pos_ in ("NOUN", "PROPN", "PRON")
        or before.text.isdigit()
        and before.i > 0
        and before.nbor(-1).tag_[0] == "N"
    )
    return after_thing and not change.sentence.has_finite_verb(change.j)


def _is_last_of_things(change: Change) -> bool:
    """Whether the right word ends a row of things: `hats, belts, and gloves in many colors`."""
    s, j = change.sentence, change.j
    if s.key(j - 1) not in ("and", "or") or not lexicon.lemmas(change.right, "NOUN"):
        return False
    before = s.word(j - 3 if s.key(j - 2) == "," else j - 2)
    after = s.word(j + 1)
    has_object = after is not None and after.pos_ in ("DET", "PRON", "NOUN", "ADJ", "PROPN")
    return before is not None and before.tag_ == "NNS" and s.key(j - 2) == "," and not has_object


def verb_form(change: Change) -> Verdict | None:
    """A verb in a form of another time, or in one that only children say.

    >>> skills("We goed home.", "We went home.")
    ['tense']
    >>> skills("She has ate it.", "She has eaten it.")
    ['tense']
    """
    wrong, right = change.wrong, change.right
    if {wrong, right} <= BE or {wrong, right} <= HAVE or {wrong, right} <= DO:
        return Verdict("tense")
    if {wrong, right} <= MODALS or wrong in ("got", "gots") and right in HAVE:
        return Verdict("tense", sure=False)
    is_verb = _may_be_verb(change) or not lexicon.is_word(wrong)
    if not is_verb and not (change.pos == "ADJ" and right.endswith(("ed", "en", "ing"))):
        return None
    shared = lexicon.lemmas(wrong, "VERB") & lexicon.lemmas(right, "VERB")
    if shared:
        return Verdict("tense")
    for lemma in lexicon.lemmas(right, "VERB"):
        is_regular = right == lexicon.regular_past(lemma) or right.endswith("ing")
        if not is_regular and wrong in lexicon.child_verb_forms(lemma):
            return Verdict("tense")
    return None


def number_of_noun(change: Change) -> Verdict | None:
    """One thing for more than one or the reverse, also in a child's plural.

    >>> skills("I have two cat.", "I have two cats.")
    ['plural']
    >>> skills("Three childs sat down.", "Three children sat down.")
    ['plural']
    """
    wrong, right = change.wrong, change.right
    if right.endswith("s") and wrong == right + "s" and not lexicon.is_word(wrong):
        return None
    if {wrong, right} == {"person", "people"}:
        return Verdict("plural")
    for lemma in lexicon.lemmas(right, "NOUN"):
        forms = {lemma, *lexicon.plurals(lemma)}
        if right in forms and (wrong in forms or wrong in lexicon.child_plurals(lemma)):
            return Verdict("plural")
    if lexicon.lemmas(right, "NOUN") and wrong in (right + "s", right + "es"):
        return Verdict("plural")
    return None


_COMPARED = ("er", "est")


def comparing_form(change: Change) -> Verdict | None:
    """Another step of comparison, or one that only children say.

    >>> skills("This is the goodest pie.", "This is the best pie.")
    ['comparison']
    >>> skills("I run fastest than Leo.", "I run faster than Leo.")
    ['comparison']
    """
    wrong, right = change.wrong, change.right
    if {wrong, right} == {"good", "well"} or {wrong, right} == {"bad", "badly"}:
        return Verdict("comparison", sure=False)
    if right == wrong + "ly" and change.pos == "ADV":
        return Verdict("comparison", sure=False)
    stem = lexicon.comparison_stem(right)
    if not stem or lexicon.comparison_stem(wrong) != stem:
        return None
    is_irregular = stem in lexicon.COMPARE_IRREGULAR
    if not is_irregular and not lexicon.is_word(wrong):
        ending = next((e for e in ("est", "er") if right.endswith(e)), "")
        if ending and wrong.endswith(ending) and not wrong[: -len(ending)].endswith(_COMPARED):
            return None
    if change.pos in ("ADJ", "ADV") or is_irregular or right.endswith(_COMPARED):
        return Verdict("comparison")
    return None


def sounds_the_same(change: Change) -> Verdict | None:
    """A real word that sounds like the right one, or that is often taken for it.

    >>> skills("She has too cats.", "She has two cats.")
    ['homophone']
    >>> skills("I am taller then you.", "I am taller than you.")
    ['homophone']
    """
    if frozenset([change.wrong, change.right]) in CONFUSED:
        return Verdict("homophone")
    if lexicon.is_rare_word(change.wrong) and lexicon.same_sound(change.wrong, change.right):
        return Verdict("homophone")
    return None


def real_but_wrong(change: Change) -> Verdict | None:
    """A real word that looks like the right one.

    >>> skills("We ate dessert in the desert.", "We ate dessert in the dessert.")
    ['homophone']
    """
    close = lexicon.closeness(change.wrong, change.right)
    if lexicon.is_word(change.wrong) and close >= 0.5:
        return Verdict("homophone")
    return None


def no_word(change: Change) -> Verdict | None:
    """Letters that make no word.

    >>> skills("My freind is here.", "My friend is here.")
    ['spelling']
    """
    return None if lexicon.is_word(change.wrong) else Verdict("spelling")


def another_word(change: Change) -> Verdict | None:
    """A real word with no kinship to the right one: nobody can say, so the specialist should.

    >>> found = fixes("I sat at a lamp by the door.", "I sat at a desk by the door.")
    >>> [(fix.skill, fix.sure) for fix in found]
    [('homophone', False)]
    """
    return Verdict("homophone", sure=False)


EXCHANGED: tuple[Callable[[Change], Verdict | None], ...] = (
    article_for_article,
    no_word_too_many,
    pronoun_for_pronoun,
    verb_for_its_subject,
    comparing_form,
    verb_form,
    number_of_noun,
    sounds_the_same,
    real_but_wrong,
    no_word,
    another_word,
)
