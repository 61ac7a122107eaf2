"""What else is right: other ways to write the corrected sentence that no key should mark wrong."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from bank import language
from bank.edit.look import SUBJECTS, Sentence
from bank.edit.sets import JOINERS, NUMBER_WORDS
from bank.edit.tokens import tokens
from bank.edit.wordset import word_set


@dataclass(frozen=True, slots=True)
class Alternative:
    """`text` may stand for the corrected tokens `j0:j1`, which read `right`.

    `note` says so in words for the key.
    """

    j0: int
    j1: int
    right: str
    text: str
    note: str


def alternatives(corrected: str) -> list[Alternative]:
    """What else is right in `corrected`, from left to right.

    >>> [a.note for a in alternatives("We ate rice, beans and corn.")]
    ['a comma before "and" in the list is right too', '! for . is right too']
    """
    row = tokens(corrected)
    sentence = Sentence((), row, corrected)
    found = [alternative for rule in _RULES for alternative in rule(sentence)]
    return sorted(found, key=lambda a: (a.j0, a.j1, a.text))


def _make(s: Sentence, j0: int, j1: int, text: str, note: str = "") -> Alternative:
    right = " ".join(token.text for token in s.c[j0:j1])
    return Alternative(
        j0, j1, right, text, note or f"{_said(text)} for {_said(right)} is right too"
    )


def _said(text: str) -> str:
    return f'"{text}"' if any(letter.isalnum() for letter in text) else text


def stronger_mark(s: Sentence) -> Iterator[Alternative]:
    """An exclamation mark for a full stop, and the reverse."""
    for j, token in enumerate(s.c):
        if token.text in (".", "!"):
            yield _make(s, j, j + 1, "!" if token.text == "." else ".")


def list_comma(s: Sentence) -> Iterator[Alternative]:
    """A comma before and, or in a list of three or more: with and without."""
    for j, token in enumerate(s.c):
        if token.key not in ("and", "or") or j < 3 or s.clause_ahead(j + 1):
            continue
        has_comma = s.key(j - 1) == ","
        earlier = any(s.key(k) == "," for k in range(max(0, j - 5), j - 1))
        word = s.word(j)
        if not earlier or word is None or word.dep_ != "cc":
            continue
        if has_comma:
            yield _make(s, j - 1, j, "", f'the comma before "{token.text}" may be left out')
        elif any(child.dep_ == "conj" for child in word.head.children) and _is_series(s, j):
            yield _make(
                s,
                j,
                j + 1,
                f", {token.text}",
                f'a comma before "{token.text}" in the list is right too',
            )


def _is_series(s: Sentence, j: int) -> bool:
    last = s.word(j)
    head = last.head if last is not None else None
    return head is not None and (head.dep_ == "conj" or any(c.text == "," for c in head.children))


_LONG_FORMS = {
    "n't": " not",
    "'m": " am",
    "'re": " are",
    "'ve": " have",
    "'ll": " will",
}
_LONG_STEMS = {"ca": "can", "wo": "will", "sha": "shall"}


def long_form(s: Sentence) -> Iterator[Alternative]:
    """`does not` for `doesn't`, `it is` for `it's`."""
    for j, token in enumerate(s.c):
        text = token.text.replace("’", "'")
        for ending, full in _LONG_FORMS.items():
            if not text.lower().endswith(ending) or text.lower() == "ain't":
                continue
            stem = text[: -len(ending)]
            stem = _cased(_LONG_STEMS.get(stem.lower(), stem), stem)
            yield _make(s, j, j + 1, "cannot" if stem == "can" else stem + full)
            if stem == "can":
                yield _make(s, j, j + 1, "can not")
            elif ending == "n't" and j + 1 < len(s.c) and s.key(j + 1) in _SUBJECT_WORDS:
                yield _make(s, j, j + 2, f"{stem} {s.c[j + 1].text} not")
        if text.lower().endswith("'s") and text.lower() not in ("let's",):
            last = s.last_word(j)
            if last is not None and last.pos_ in ("AUX", "VERB"):
                follows = s.word(j + 1)
                has = follows is not None and follows.tag_ == "VBN" and last.dep_ == "aux"
                yield _make(s, j, j + 1, text[:-2] + (" has" if has else " is"))
        if text.lower() == "let's":
            yield _make(s, j, j + 1, text[:-2] + " us")
        if text.lower() == "cannot":
            yield _make(s, j, j + 1, _cased("can't", text))


_SUBJECT_WORDS = word_set("i you he she it we they")
_SHORT_AFTER = {"am": "'m", "are": "'re", "is": "'s", "will": "'ll", "have": "'ve", "has": "'s"}
_NOT_STEMS = {"can": "can't", "will": "won't"}


def short_form(s: Sentence) -> Iterator[Alternative]:
    """`doesn't` for `does not`, `it's` for `it is`."""
    for j in range(len(s.c) - 1):
        one, two = s.c[j], s.c[j + 1]
        word = s.word(j)
        if (
            two.key == "not"
            and word is not None
            and word.pos_ == "AUX"
            and one.key not in ("am", "may")
        ):
            short = _NOT_STEMS.get(one.key, one.key + "n't")
            yield _make(s, j, j + 2, _cased(short, one.text))
        helper = s.word(j + 1)
        if (
            one.key in _SUBJECT_WORDS | {"that", "there", "here"}
            and two.key in _SHORT_AFTER
            and helper is not None
            and helper.pos_ == "AUX"
            and j + 2 < len(s.c)
            and s.c[j + 2].is_word
            and (two.key not in ("have", "has") or helper.dep_ == "aux")
        ):
            if two.key in ("am", "are", "have") and one.key in ("that", "there", "here"):
                continue
            yield _make(s, j, j + 2, one.text + _SHORT_AFTER[two.key])


def number_as_figure(s: Sentence) -> Iterator[Alternative]:
    """`2` for `two`, and the reverse."""
    figures = {figure: word for word, figure in NUMBER_WORDS.items()}
    for j, token in enumerate(s.c):
        word = s.word(j)
        if token.key in NUMBER_WORDS and word is not None and word.pos_ == "NUM":
            yield _make(s, j, j + 1, NUMBER_WORDS[token.key])
        elif token.key in figures and not _in_date(s, j):
            yield _make(s, j, j + 1, figures[token.key])


def _in_date(s: Sentence, j: int) -> bool:
    from bank.edit.sets import MONTHS

    return s.key(j - 1) in MONTHS or s.key(j + 1) in MONTHS


_SAME_WORD = {
    "dr.": ("Doctor",),
    "mr.": ("Mister",),
    "st.": ("Street",),
    "ok": ("okay",),
    "okay": ("OK",),
    "gray": ("grey",),
    "grey": ("gray",),
    "anybody": ("anyone",),
    "anyone": ("anybody",),
    "everybody": ("everyone",),
    "everyone": ("everybody",),
    "nobody": ("no one",),
    "tv": ("television",),
}


def same_word(s: Sentence) -> Iterator[Alternative]:
    """Two accepted ways to write one word."""
    for j, token in enumerate(s.c):
        for text in _SAME_WORD.get(token.key, ()):
            yield _make(s, j, j + 1, _cased(text, token.text) if text.islower() else text)


def joined_sentences(s: Sentence) -> Iterator[Alternative]:
    """`, and we` or `; we` for `. We`, and a full stop for a comma with a joiner."""
    for j in range(1, len(s.c) - 2):
        if s.key(j) == "." and j + 1 in s.starts and s.clause_behind(j) and s.clause_ahead(j + 1):
            first = s.c[j + 1]
            small = first.text if s.is_name(j + 1) else _small(first.text)
            note = f'a comma with and, so or but, or a ; before "{small}" is right too'
            for link in ("; {}", ", and {}", ", so {}", ", but {}"):
                yield _make(s, j, j + 2, link.format(small), note)
        joins = s.key(j) == "," and s.key(j + 1) in JOINERS
        if joins and s.clause_behind(j) and s.clause_ahead(j + 2):
            word, after = s.c[j + 1], s.c[j + 2]
            note = f'two sentences, without "{word.text}" or with it, are right too'
            yield _make(s, j, j + 3, f". {_big(after.text)}", note)
            yield _make(s, j, j + 3, f"; {after.text}", note)
            yield _make(s, j, j + 2, f". {_big(word.text)}", note)


_NO_FOR_ANY = {
    "any": "no",
    "anybody": "nobody",
    "anyone": "no one",
    "anything": "nothing",
    "anywhere": "nowhere",
    "ever": "never",
}
_DO_TAGS = {"don't": "VB", "doesn't": "VBZ", "didn't": "VBD"}


def other_no(s: Sentence) -> Iterator[Alternative]:
    """`has no` for `doesn't have any`, and `didn't see a thing` in its other forms."""
    for j, token in enumerate(s.c):
        if not token.key.endswith("n't"):
            continue
        for k in range(j + 1, min(j + 5, len(s.c))):
            no = _NO_FOR_ANY.get(s.key(k))
            if no is None:
                continue
            middle = [t.text for t in s.c[j + 1 : k]]
            verb = s.word(j + 1)
            if token.key in _DO_TAGS and len(middle) == 1 and verb is not None:
                forms = language.inflections(verb.lemma_, _DO_TAGS[token.key])
                if forms:
                    yield _make(s, j, k + 1, f"{forms[0]} {no}")
            elif token.key not in _DO_TAGS:
                stem = _LONG_STEMS.get(token.key[:-3], token.key[:-3])
                yield _make(s, j, k + 1, " ".join([_cased(stem, token.text), *middle, no]))
            break


def opening_comma(s: Sentence) -> Iterator[Alternative]:
    """A comma after an opening phrase that the corrected version leaves out."""
    root = next((word for word in s.doc if word.dep_ == "ROOT"), None)
    subject = next((w for w in root.children if w.dep_ in SUBJECTS), None) if root else None
    if root is None or subject is None:
        return
    first = min(subject.subtree, key=lambda w: w.i)
    before = s.doc[first.i - 1] if first.i else None
    if before is None or not before.text[0].isalnum() or before.pos_ in ("CCONJ", "AUX", "VERB"):
        return
    if before.dep_ in ("pobj", "npadvmod", "advmod") or before.head.dep_ in ("npadvmod", "pobj"):
        for j, token in enumerate(s.c):
            if token.start == first.idx and not any(s.key(k) == "," for k in range(j)):
                yield _make(
                    s,
                    j,
                    j + 1,
                    f", {token.text}",
                    f'a comma after "{s.c[j - 1].text}" is right too',
                )


_RULES: tuple[Callable[[Sentence], Iterator[Alternative]], ...] = (
    stronger_mark,
    list_comma,
    long_form,
    short_form,
    number_as_figure,
    same_word,
    joined_sentences,
    other_no,
    opening_comma,
)


def _cased(text: str, like: str) -> str:
    return _big(text) if like[:1].isupper() else text


def _big(text: str) -> str:
    return text[:1].upper() + text[1:]


def _small(text: str) -> str:
    return text if text == "I" or text.startswith(("I'", "I’")) else text[:1].lower() + text[1:]
