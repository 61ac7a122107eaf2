"""The ideas of a text in order: words and phrases with the names of their groups and a weight."""

from __future__ import annotations

from typing import Any

from bank.choose.ask.lexicon import Lexicon
from bank.choose.ask.words import ANYONE, YOU, Word

# Words that carry no idea of their own in a question.
_EMPTY = frozenset(
    """a an the this that these those it its he she they them their his her him there here be do
    of to and or so as if when while at in on by for then than too also just any some such
    would will shall could can may might should must very ever usually mostly
    please than thing things something anything one ones all who what where why how which whose
    kind sort type way be like get_to 's ' , ; : - " about into onto tell am during because
    himself herself themselves itself whole own each every often again else already still yet
    most more many really quite even only other another""".split()
) - {"like", "often", "every", "only", "please"}
# Words that say little: they weigh something only where nothing else tells two asks apart.
_LIGHT = frozenset(
    """have get make go use put come keep give thing time place person like part let become seem
    happen turn become favorite special best good new able with from add happy_with know feel
    world people child""".split()
)
# Words that say something, but that another wording can easily do without.
_MIDDLING = frozenset(
    """take find see need want think name say tell help try show look work spend mean call hold day
    every eat act ask home school""".split()
)
_RELATIONS = frozenset(
    "before after under over above below behind between near inside outside without around "
    "through until since up down off out away with from beside".split()
)
_NEGATIONS = frozenset("not never nobody nothing no none neither without".split())
FULL_WEIGHT, MIDDLING_WEIGHT, LIGHT_WEIGHT, RELATION_WEIGHT = 1.0, 0.5, 0.3, 0.5


def ideas_of(words: list[Word], lex: Lexicon, head_at: int) -> tuple[list[list[Any]], list[str]]:
    """The ideas in order, and the names of the one that is asked for (token `head_at`).

    An idea that is a phrase ("brush your teeth") keeps the ideas of its words, for the comparison
    with a text that does not have the phrase.
    """
    atoms: list[list[Any]] = []
    head: list[str] = []
    turned = False  # a "not" waits for the idea that it turns around
    at = 0
    while at < len(words):
        word = words[at]
        length, groups = _phrase_at(words, at, lex)
        parts: list[list[Any]] = []
        if length > 1:
            names, weight = groups, LIGHT_WEIGHT if groups[0] in _LIGHT else FULL_WEIGHT
            parts = _single(words[at : at + length], lex)
        elif length:
            names, weight = [*groups, word.lemma], FULL_WEIGHT
        else:
            length = 1
            names, weight = _concepts(word.lemma, word, lex)
        asked = any(w.token.i == head_at for w in words[at : at + length])
        at += length
        if not names:
            continue
        if asked:
            head = names
        if names[0] in _NEGATIONS:
            turned = True
            atoms.append([["not"], FULL_WEIGHT, "n", []])
            continue
        if turned and names[0] != "you":
            turned = False
            contrary = sorted({o for name in names for o in lex.contradictory.get(name, ())})
            if contrary:
                del atoms[max(i for i, atom in enumerate(atoms) if atom[0] == ["not"])]
                names, weight = [*contrary, *(f"not_{name}" for name in names)], FULL_WEIGHT
                parts = []
        atoms.append([names, weight, "h" if asked else word.role, parts])
    return atoms, head


def _single(words: list[Word], lex: Lexicon) -> list[list[Any]]:
    """The ideas of the words of a phrase, one by one."""
    found = ((*_concepts(word.lemma, word, lex), word.role) for word in words)
    return [
        [names, weight, "n" if names[0] in _NEGATIONS else role, []]
        for names, weight, role in found
        if names
    ]


_SKIPPED_IN_PHRASES = frozenset("a an the your my our their his her some".split())


def _phrase_at(words: list[Word], at: int, lex: Lexicon) -> tuple[int, list[str]]:
    """How many words from `at` on make a phrase of the lexicon (0: none), and its groups."""
    word = words[at]
    longest, groups = 0, list(lex.joined.get(word.lemma, ()))
    if groups:
        longest = 1
    for first in {word.lemma, word.form, word.lemma.split("_")[0]}:
        for parts, group in lex.phrases.get(first, ()):
            length = _fits(words, at, parts)
            if length > longest:
                longest, groups = length, [group]
            elif length and length == longest and group not in groups:
                groups.append(group)
    return longest, groups


def _fits(words: list[Word], at: int, parts: tuple[str, ...]) -> int:
    """How many words from `at` on say `parts`, articles and owners aside (0: they do not)."""
    here = at
    wanted = [part for part in parts if part not in _SKIPPED_IN_PHRASES]
    while wanted:
        if here >= len(words):
            return 0
        said = words[here].lemma.split("_")
        if here > at and said[0] in _SKIPPED_IN_PHRASES:
            here += 1
            continue
        if wanted[: len(said)] == said:
            wanted = wanted[len(said) :]
        elif wanted[0] == words[here].form and len(said) == 1:
            wanted = wanted[1:]
        else:
            return 0
        here += 1
    return here - at


def _concepts(lemma: str, word: Word, lex: Lexicon) -> tuple[list[str], float]:
    if word.form in YOU:
        return ["you"], LIGHT_WEIGHT
    if lemma in ANYONE and word.pos != "a":
        return (["you", "person"], LIGHT_WEIGHT) if lemma != "one" else ([], 0.0)
    if lemma in _NEGATIONS:
        return [lemma], FULL_WEIGHT
    if lemma in _RELATIONS:
        if lemma == "with" and not word.stranded:
            return [], 0.0
        return [lemma], RELATION_WEIGHT if lemma not in ("with", "from") else LIGHT_WEIGHT
    if (lemma in _EMPTY or word.form in _EMPTY) and not (lemma == "kind" and word.pos == "a"):
        return [], 0.0
    names = list(dict.fromkeys([*lex.groups(lemma, word.pos), lemma, *_other_lemmas(word, lex)]))
    if lemma in _LIGHT or names[0] in _LIGHT:
        return names, LIGHT_WEIGHT
    if lemma in _MIDDLING or names[0] in _MIDDLING:
        return names, MIDDLING_WEIGHT
    return names, _telling(word.form)


def _telling(word: str) -> float:
    """How much a word tells: a spider more than a school, by how often it is met (Zipf scale)."""
    from bank.language import zipf

    return round(min(1.2, max(0.55, (7.3 - zipf(word)) / 2.5)), 2)


def _other_lemmas(word: Word, lex: Lexicon) -> list[str]:
    """The concepts of the form's other readings: the tagger takes "scares" for more than one scar."""
    import lemminflect

    if "_" in word.lemma:
        return []
    found = list(lex.groups(word.form, word.pos if word.form == word.lemma else ""))
    for lemmas in lemminflect.getAllLemmas(word.form).values():
        for lemma in lemmas:
            if lemma != word.lemma:
                found += [*lex.groups(lemma), lemma]
    return found
