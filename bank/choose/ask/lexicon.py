"""The words of a classroom: which mean the same, which turn an ask around, which bring which along.

Four small lists of our own stand beside this file. A *concept* is the first word of a group of
synonyms, or a lemma that stands in no group.
"""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from itertools import product

_POS_MARK = {"n": "n", "v": "v", "a": "a", "p": "p"}


@dataclass(frozen=True, slots=True)
class Lexicon:
    """The four lists, ready to be asked.

    `words` maps a word to its (group, part of speech or "") pairs; `phrases` maps the first word of
    a phrase to its (words, group) pairs, the longest first; `kinds` maps a concept to the names of
    its kinds; `opposites` and `related` map a concept to concepts; `contradictory` has
    the opposites of which one always holds: what is not wet is dry.
    """

    words: dict[str, tuple[tuple[str, str], ...]]
    phrases: dict[str, tuple[tuple[tuple[str, ...], str], ...]]
    joined: dict[str, tuple[str, ...]]
    kinds: dict[str, frozenset[str]]
    opposites: dict[str, frozenset[str]]
    contradictory: dict[str, frozenset[str]]
    related: dict[str, frozenset[str]]

    def groups(self, word: str, pos: str = "") -> tuple[str, ...]:
        """The groups in which `word` stands as this part of speech ("n", "v", "a" or "" for any)."""
        return tuple(
            group for group, only in self.words.get(word, ()) if not only or not pos or only == pos
        )


def _lines(name: str) -> list[str]:
    text = files("bank.choose.ask").joinpath(name).read_text(encoding="utf-8")
    return [line.strip() for line in text.splitlines() if line.strip() and line[0] != "#"]


def _split_mark(word: str) -> tuple[str, str]:
    stem, dot, mark = word.rpartition(".")
    return (stem, mark) if dot and mark in _POS_MARK else (word, "")


def _said(phrase: str) -> tuple[str, ...]:
    """The words of a phrase as a parse has them: *mother's_brother* is three."""
    return tuple(phrase.replace("'s", "_'s").split("_"))


@lru_cache(maxsize=1)
def lexicon() -> Lexicon:
    """The lists, read once."""
    words: dict[str, list[tuple[str, str]]] = defaultdict(list)
    phrases: dict[str, list[tuple[tuple[str, ...], str]]] = defaultdict(list)
    joined: dict[str, list[str]] = defaultdict(list)
    for line in _lines("synonyms.txt"):
        group = _split_mark(line.split()[0])[0]
        for member in line.split():
            word, mark = _split_mark(member)
            if "_" in word:
                parts = _said(word)
                phrases[parts[0]].append((parts, group))
                joined[word].append(group)
            else:
                words[word].append((group, mark))

    def concepts(member: str) -> list[str]:
        word, mark = _split_mark(member)
        if "_" in word and word not in joined:
            joined[word].append(word)
            parts = _said(word)
            phrases[parts[0]].append((parts, word))
        if word in joined:
            return list(joined[word])
        return [g for g, only in words.get(word, ()) if not mark or not only or only == mark] or [
            word
        ]

    kinds: dict[str, set[str]] = defaultdict(set)
    for line in _lines("kinds.txt"):
        kind, _, members = line.partition(":")
        for member in members.split():
            for concept in concepts(member)[:1]:
                kinds[concept].add(kind)
    opposites: dict[str, set[str]] = defaultdict(set)
    contradictory: dict[str, set[str]] = defaultdict(set)
    for line in _lines("opposites.txt"):
        left, right, *always = line.split()
        for a, b in product(concepts(left), concepts(right)):
            for table in (opposites, contradictory) if always else (opposites,):
                if a != b:
                    table[a].add(b)
                    table[b].add(a)
    related: dict[str, set[str]] = defaultdict(set)
    for line in _lines("related.txt"):
        key, _, others = line.partition(":")
        for part in key.split():
            for concept in concepts(part):
                related[concept].update(c for other in others.split() for c in concepts(other))
    return Lexicon(
        words={word: tuple(groups) for word, groups in words.items()},
        phrases={
            first: tuple(sorted(found, key=lambda pair: -len(pair[0])))
            for first, found in phrases.items()
        },
        joined={word: tuple(found) for word, found in joined.items()},
        kinds={k: frozenset(v) for k, v in kinds.items()},
        contradictory={k: frozenset(v) for k, v in contradictory.items()},
        opposites={k: frozenset(v) for k, v in opposites.items()},
        related={k: frozenset(v) for k, v in related.items()},
    )
