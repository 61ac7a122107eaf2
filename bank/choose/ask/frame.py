"""The frame of a text: what it asks for, of whom, about what, when, and whether.

A frame is a dict that JSON can hold:

- `method`: how it was made;
- `wants`: what is asked for (`who`, `where`, `when`, `why`, `how`, `amount`, `what`, `name`,
  `know`, `feel`, `choice`, `yesno`, `tell`), and `head`, the names of the thing asked for ("game", "long");
- `liking`: "most", "least" or "";
- `tense`: "past", "will", "would", "now" or "" (no verb);
- `atoms`: the ideas of the text in order, each `[names, weight, role, parts]`: the names are
  concepts that all fit; the parts of a phrase are the ideas of its words;
- `acts`: who does what to whom, `[verb names, doers, done-to]`;
- `sides`: who stands over against whom, `[verb names, doer, other]`;
- `modes`: whether something "can", "must", "will", would ("wish") or likes to ("like") be done;
- `verbs`: the names of what is done in the main clause;
- `compares`: `[names of the measure, one side, other side]`, or empty;
- `words` and `said`: the words in the one wording of their way of asking, and as they were said.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from bank.choose.ask.clause import acts_of, compared_in, tense_of, verbs_of
from bank.choose.ask.ideas import ideas_of
from bank.choose.ask.lexicon import lexicon
from bank.choose.ask.sides import doer_of, modes_of, sides_of
from bank.choose.ask.wants import want_of
from bank.choose.ask.wording import said_words, split_liking
from bank.choose.ask.words import words_of

METHOD = "ask-7"


def frames_of(texts: Sequence[str]) -> Iterator[dict[str, Any]]:
    """The frames of many texts, parsed in batches."""
    from bank.language import parse_many

    batch = 256
    for start in range(0, len(texts), batch):
        some = texts[start : start + batch]
        for _ in parse_many(_as_written(split_liking(text)[0]) for text in some):
            pass
        yield from map(frame_of, some)


def frame_of(text: str) -> dict[str, Any]:
    """The frame of `text`."""
    from bank.language import parse

    wording, liking = split_liking(text)
    doc = parse(_as_written(wording))
    lex = lexicon()
    words = words_of(doc, lex)
    wants, head_at = want_of(doc, text)
    atoms, head = ideas_of(words, lex, head_at)
    if wants == "amount":
        head = [doc[head_at].lemma_.lower().replace("little", "much")]
    if liking:
        atoms = [atom for atom in atoms if not {"favorite", "like"} & set(atom[0])]
    if wants == "why" and doc[0].lower_ == "what":
        atoms = [atom for atom in atoms if atom[0][0] != "make"]  # what makes ice melt: why it does
    return {
        "method": METHOD,
        "wants": wants,
        "head": head,
        "liking": liking,
        "tense": tense_of(doc, wants),
        "atoms": atoms,
        "acts": acts_of(doc, lex),
        "doer": doer_of(doc, lex),
        "sides": sides_of(doc, lex),
        "modes": modes_of(doc),
        "verbs": verbs_of(atoms, doc, lex),
        "compares": compared_in(doc, lex, wants),
        "words": [token.lower_ for token in doc if token.is_alpha or token.like_num],
        "said": said_words(text),
    }


_ASKING = frozenset(
    "who what where when why how which whose whom do does did can could will would should is are was"
    " were has have had may must".split()
)


def _as_written(wording: str) -> str:
    """The wording with a capital and an end mark: the parser has learnt from texts that have them.

    >>> _as_written("what do sharks eat")
    'What do sharks eat?'
    """
    if not wording:
        return wording
    mark = "?" if wording.split(maxsplit=1)[0] in _ASKING or ", " in wording else "."
    return f"{wording[0].upper()}{wording[1:]}{mark}"
