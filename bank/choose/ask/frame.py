"""The frame of a text: what it asks for, of whom, about what, when, and whether.

A frame is a dict that JSON can hold:

- `method`: how it was made;
- `wants`: what is asked for (`who`, `where`, `when`, `why`, `how`, `amount`, `what`, `name`,
  `know`, `choice`, `yesno`, `tell`), and `head`, the names of the thing asked for ("game", "long");
- `liking`: "most", "least" or "";
- `tense`: "past", "will", "would", "now" or "" (no verb);
- `atoms`: the ideas of the text in order, each `[names, weight, role, parts]`: the names are
  concepts that all fit; the parts of a phrase are the ideas of its words;
- `acts`: who does what to whom, `[verb names, doers, done-to]`;
- `compares`: `[names of the measure, one side, other side]`, or empty.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from bank.choose.ask.lexicon import Lexicon, lexicon
from bank.choose.ask.wording import said_words, split_liking

if TYPE_CHECKING:
    from spacy.tokens import Doc, Token

METHOD = "ask-2"

_POS = {"NOUN": "n", "PROPN": "n", "VERB": "v", "AUX": "v", "ADJ": "a", "ADV": "a"}
_YOU = frozenset(
    "you your yours yourself i me my mine myself we us our ours ourselves yourselves".split()
)
_ANYONE = frozenset("people person someone somebody everyone everybody anyone one they".split())
_WH = frozenset("who what where when why how which whose".split())
_AUXES = frozenset("do be can could will would should must may might have shall".split())
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


def frame_of(text: str) -> dict[str, Any]:
    """The frame of `text`."""
    from bank.language import parse

    wording, liking = split_liking(text)
    doc = parse(wording)
    lex = lexicon()
    words = _words(doc, lex)
    wants, head_at = _wants(doc, text)
    atoms, head = _atoms(words, lex, head_at)
    if wants == "amount":
        head = [doc[head_at].lemma_.lower().replace("little", "much")]
    if liking:
        atoms = [atom for atom in atoms if not {"favorite", "like"} & set(atom[0])]
    return {
        "method": METHOD,
        "wants": wants,
        "head": head,
        "liking": liking,
        "tense": _tense(doc, wants),
        "atoms": atoms,
        "acts": _acts(doc, lex),
        "verbs": _verbs(atoms, doc, lex),
        "compares": _compares(doc, lex, wants),
        "words": [token.lower_ for token in doc if token.is_alpha or token.like_num],
        "said": said_words(text),
    }


class _Word:
    """A word, or a verb with its particle, that still has to find its concepts."""

    __slots__ = ("form", "lemma", "pos", "role", "stranded", "token")

    def __init__(self, token: Token) -> None:
        self.token = token
        self.form = token.lower_
        self.lemma = _lemma(token)
        self.pos = _POS.get(token.pos_, "")
        self.role = _role(token)
        self.stranded = token.pos_ == "ADP" and not any(
            child.dep_ in ("pobj", "pcomp") for child in token.children
        )


def _lemma(token: Token) -> str:
    lemma = token.lemma_.lower()
    return {"n't": "not", "better": "good", "best": "best", "'s": "'s"}.get(token.lower_, lemma)


def _role(token: Token) -> str:
    """Where the word stands: s(ubject), v(erb), o(bject), c(ondition), m(odifier)."""
    here = token
    while here.dep_ not in ("ROOT", "advcl") and here.head is not here:
        if here.dep_ in ("nsubj", "nsubjpass"):
            return "s"
        if here.dep_ in ("dobj", "attr", "acomp", "dative", "oprd"):
            return "o"
        if here.dep_ in ("prep", "npadvmod"):
            return "m"
        here = here.head
    return "c" if here.dep_ == "advcl" else "v"


_PARTICLES = frozenset("on off up down away out over in back".split())


def _verb_of_particle(token: Token, by_index: dict[int, _Word], lex: Lexicon) -> _Word | None:
    """The verb of a particle that stands apart from it: *put* your socks *on*."""
    if token.lower_ not in _PARTICLES:
        return None
    if token.dep_ == "prt":
        verb = by_index.get(token.head.i)
        return verb if verb is not None and verb.pos == "v" else None
    if any(child.dep_ in ("pobj", "pcomp") for child in token.children):
        return None
    for back in range(token.i - 1, max(-1, token.i - 5), -1):
        verb = by_index.get(back)
        if verb is not None and f"{verb.lemma}_{token.lower_}" in lex.joined:
            return verb
    return None


def _words(doc: Doc, lex: Lexicon) -> list[_Word]:
    words: list[_Word] = []
    by_index: dict[int, _Word] = {}
    for token in doc:
        if token.is_punct or token.is_space:
            continue
        verb = _verb_of_particle(token, by_index, lex)
        if verb is not None:
            verb.lemma = f"{verb.lemma}_{token.lower_}"
            continue
        by_index[token.i] = word = _Word(token)
        words.append(word)
    return words


def _atoms(words: list[_Word], lex: Lexicon, head_at: int) -> tuple[list[list[Any]], list[str]]:
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


def _single(words: list[_Word], lex: Lexicon) -> list[list[Any]]:
    """The ideas of the words of a phrase, one by one."""
    found = ((*_concepts(word.lemma, word, lex), word.role) for word in words)
    return [
        [names, weight, "n" if names[0] in _NEGATIONS else role, []]
        for names, weight, role in found
        if names
    ]


_SKIPPED_IN_PHRASES = frozenset("a an the your my our their his her some".split())


def _phrase_at(words: list[_Word], at: int, lex: Lexicon) -> tuple[int, list[str]]:
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


def _fits(words: list[_Word], at: int, parts: tuple[str, ...]) -> int:
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


def _concepts(lemma: str, word: _Word, lex: Lexicon) -> tuple[list[str], float]:
    if word.form in _YOU:
        return ["you"], LIGHT_WEIGHT
    if lemma in _ANYONE and word.pos != "a":
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


def _other_lemmas(word: _Word, lex: Lexicon) -> list[str]:
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


def _wants(doc: Doc, text: str) -> tuple[str, int]:
    """What is asked for, and the token of the thing asked for (-1: none is named)."""
    tokens = [token for token in doc if not token.is_punct]
    if not tokens:
        return "tell", -1
    wh = _main_wh(tokens)
    options = any(t.lower_ == "or" for t in tokens)
    if tokens[0].lower_ == "tell" or ("?" not in text and not _asks(tokens, wh)):
        return "tell", -1
    if wh is None:
        return ("choice" if options else "yesno"), -1
    listed = (
        any(t.lower_ == "," for t in doc[wh.i : next(t.i for t in doc if t.lower_ == "or")])
        if (options and wh.i < next(t.i for t in doc if t.lower_ == "or"))
        else False
    )
    if options and (listed or wh.lower_ in ("which", "what", "who")):
        return "choice", -1
    return _wh_wants(wh)


def _asks(tokens: list[Token], wh: Token | None) -> bool:
    """Whether a text without a question mark asks all the same: *What I like* only names a topic."""
    if wh is None or wh.i > 0:
        return False
    return any(t.lemma_ in _AUXES or t.pos_ == "VERB" for t in tokens[1:2]) or (
        len(tokens) > 2 and tokens[1].pos_ == "NOUN" and tokens[2].lemma_ in _AUXES
    )


def _main_wh(tokens: list[Token]) -> Token | None:
    """The question word of the main clause: "what" in *When the phone rings, what do you say?*"""
    found = [t for t in tokens if t.lower_ in _WH and not _inside_condition(t)]
    if len(found) > 1 and found[0].i == 0 and found[0].lower_ in ("when", "where"):
        comma = next((t.i for t in found[0].doc if t.lower_ == ","), None)
        later = [t for t in found if comma is not None and t.i > comma]
        return later[0] if later else found[0]
    return found[0] if found else None


def _inside_condition(token: Token) -> bool:
    return any(a.dep_ == "advcl" for a in (token.head, token.head.head)) and token.lower_ in (
        "when",
        "where",
    )


_AMOUNTS = frozenset(
    "many much long old far often tall big heavy fast deep high wide hot cold loud strong late "
    "early soon hard little".split()
)


def _wh_wants(wh: Token) -> tuple[str, int]:
    word = wh.lower_
    after = wh.nbor() if wh.i + 1 < len(wh.doc) else None
    if word == "how" and after is not None and after.lemma_ in _AMOUNTS:
        return "amount", after.i
    if word in ("what", "which") and after is not None and after.lower_ == "name":
        return "name", -1
    if word in ("what", "which"):
        noun = wh.head if wh.dep_ == "det" and wh.head.i > wh.i else None
        if noun is None and after is not None and after.pos_ == "NOUN":
            noun = after
        if noun is None and after is not None and after.lemma_ == "be":
            noun = next((t for t in wh.doc if t.lower_ == "favorite"), None)
            noun = noun.head if noun is not None and noun.head.pos_ in ("NOUN", "PROPN") else None
        if noun is None:
            return "what", -1
        if noun.lemma_ in ("kind", "sort", "type", "part"):
            inner = [p for prep in noun.children for p in prep.children if p.dep_ == "pobj"]
            noun = inner[0] if inner else noun
        return ("who" if _is_someone(noun.lemma_.lower()) else "what"), noun.i
    if word == "how" and any(t.lower_ == "know" and t.i <= wh.i + 3 for t in wh.doc):
        return "know", -1
    return ("who" if word == "whose" else word), -1


def _is_someone(noun: str) -> bool:
    lex = lexicon()
    concepts = [*lex.groups(noun, "n"), noun]
    return any(
        lex.kinds.get(c, frozenset()) & {"relative", "helper", "someone"} for c in concepts
    ) and not {"animal", "pet"} & set(concepts)


def _tense(doc: Doc, wants: str) -> str:
    if any(t.lower_ in ("born", "if") for t in doc):
        return "would" if doc[0].lower_ == "if" and wants != "tell" else ""
    if wants == "tell":
        return "past" if any(t.tag_ == "VBD" for t in doc) else ""
    root = next((t for t in doc if t.dep_ == "ROOT"), None)
    if root is None:
        return ""
    own = [root, *(c for c in root.children if c.dep_ in ("aux", "auxpass", "cop"))]
    forms = {t.lower_ for t in own}
    if forms & {"will", "shall"} or ({"going"} & forms and any(t.dep_ == "xcomp" for t in doc)):
        return "will"
    if forms & {"would", "could", "might"}:
        return "would"
    if forms & {"did", "was", "were"} or any(t.tag_ == "VBD" for t in own):
        return "past"
    if root.lemma_ == "be" and any(t.dep_ == "relcl" and t.tag_ in ("VBD", "VBN") for t in doc):
        return "past"
    if any(t.tag_ in ("VBP", "VBZ", "VB", "MD") for t in own):
        return "now"
    return ""


def _names(token: Token, lex: Lexicon) -> list[str]:
    if token.lower_ in _YOU or token.lemma_ in _ANYONE:
        return ["you"]
    if token.lower_ in _WH:
        return ["?"]
    if any(c.lower_ in _WH and c.dep_ == "det" for c in token.children):
        return ["?"]
    lemma = _lemma(token)
    return list(dict.fromkeys([*lex.groups(lemma, _POS.get(token.pos_, "")), lemma]))


def _verbs(atoms: list[list[Any]], doc: Doc, lex: Lexicon) -> list[str]:
    """The names of what is done in the main clause (nothing for *be* and *do*)."""
    found: list[str] = []
    for token in doc:
        verb = token.pos_ == "VERB" and token.lemma_ not in ("be", "do", "have", "get")
        if verb and not any(a.dep_ in ("advcl", "relcl") for a in (token, *token.ancestors)):
            found += _names(token, lex)
    known = {name for names, *_ in atoms for name in names}
    return [name for name in dict.fromkeys(found) if name in known]


def _acts(doc: Doc, lex: Lexicon) -> list[list[Any]]:
    acts: list[list[Any]] = []
    for verb in doc:
        if verb.pos_ not in ("VERB", "AUX") or verb.dep_ in ("aux", "auxpass"):
            continue
        doers: list[str] = []
        done_to: list[str] = []
        for child in verb.children:
            if child.dep_ == "nsubj":
                doers += _names(child, lex)
            elif child.dep_ in ("dobj", "nsubjpass", "dative"):
                done_to += _names(child, lex)
            elif child.dep_ in ("prep", "agent"):
                for inner in child.children:
                    if inner.dep_ == "pobj":
                        (doers if child.dep_ == "agent" else done_to).extend(_names(inner, lex))
        if doers and done_to:
            acts.append([_names(verb, lex), doers, done_to])
    return acts


def _compares(doc: Doc, lex: Lexicon, wants: str) -> list[list[str]]:
    """The two sides of a comparison, and what is compared, for a question that yes or no answers."""
    if wants not in ("yesno", "choice"):
        return []
    pivot = next((t for t in doc if t.lower_ in ("than", "before", "after")), None)
    if pivot is None:
        return []
    measure: list[str] = []
    sides: tuple[list[str], list[str]] = ([], [])
    for token in doc:
        if token.tag_ in ("JJR", "RBR") or token.i == pivot.i and pivot.lower_ != "than":
            measure += _names(token, lex)
        elif (
            token.pos_ not in ("DET", "ADP", "PUNCT", "PART")
            and token.lemma_ not in _AUXES
            and token.lower_ not in _WH
            and token.dep_ != "poss"
        ):
            sides[token.i > pivot.i].extend(_names(token, lex))
    return [measure, *sides] if measure and all(sides) else []
