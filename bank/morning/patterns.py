"""The patterns that a word sort works on, and which words show which.

A pattern has two or three columns. A column is a rule about letters and the sound they stand for; a
word belongs in it when every pronunciation obeys the rule. What each column `looks` like, sound
aside, finds the odd ones out: "said" looks like ai as in rain and is not.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from bank.morning.alignment import Segment
from bank.morning.sort_words import LONG, SHORT, SortWord, closing_e

Reading = Sequence[Segment]


@dataclass(frozen=True, slots=True)
class Column:
    """One column: its heading, and the rule by which a reading of a word shows it.

    `looks` says whether a word is spelled like it; an odd one out is, and has none of its `sounds`.
    """

    heading: str
    shows: Callable[[SortWord, Reading], bool]
    looks: Callable[[SortWord], bool] = lambda word: False
    sounds: tuple[str, ...] = ()

    def is_heard_in(self, word: SortWord) -> bool:
        """Whether `word` has one of the column's sounds in any pronunciation."""
        said = [" ".join(x for s in reading for x in s.sounds) for reading in word.readings]
        return any(f" {sound} " in f" {one} " for sound in self.sounds for one in said)

    def has(self, word: SortWord) -> bool:
        """Whether `word` shows this column's pattern in every pronunciation."""
        return all(self.shows(word, reading) for reading in word.readings)


@dataclass(frozen=True, slots=True)
class Pattern:
    """A sort's pattern: a code that never changes, what it is called, its columns."""

    code: str
    title: str
    columns: tuple[Column, ...]


# Rules for the vowel of a word of one beat


def _vowel_at(reading: Reading) -> int | None:
    places = [n for n, segment in enumerate(reading) if segment.is_vowel]
    return places[0] if len(places) == 1 else None


def short(letter: str) -> Column:
    """A short vowel shut in by a consonant: cat, bed, fish, mop, sun."""

    def shows(word: SortWord, reading: Reading) -> bool:
        at = _vowel_at(reading)
        return (
            at is not None
            and word.beats == 1
            and not word.ending
            and not word.text.endswith(("e", "es"))
            and (reading[at].letters, reading[at].sounds) == (letter, (SHORT[letter],))
            and at < len(reading) - 1
            # The n of "bank" and "sing" colours the vowel before it.
            and reading[at + 1].sounds != ("NG",)
        )

    return Column(f"short {letter}", shows, _spelled(letter, "short"), (SHORT[letter],))


def long(letter: str) -> Column:
    """A long vowel before one consonant and silent e: cake, bike, rope, cube."""

    def shows(word: SortWord, reading: Reading) -> bool:
        at = closing_e(reading)
        sounds = {(LONG[letter],), ("Y", LONG[letter])} if letter == "u" else {(LONG[letter],)}
        return (
            at is not None
            and word.beats == 1
            and not word.ending
            and reading[at].letters == letter
            and reading[at].sounds in sounds
            and len(reading[at + 1].letters) == 1
            and word.text.endswith("e")
        )

    return Column(f"{letter}_e", shows, _spelled(letter, "long"), (LONG[letter],))


def team(letters: str, *sounds: str, heading: str = "", beats: int = 1) -> Column:
    """Letters that stand together for a vowel: ai, ee, oa, ow, igh, ar, or.

    In words of one beat, or of up to so many `beats` where one beat has too few.
    """
    wanted = {tuple(sound.split()) for sound in sounds}

    def shows(word: SortWord, reading: Reading) -> bool:
        found = [segment for segment in reading if segment.letters == letters]
        # "Burger" has the sound of ur twice, in two spellings.
        alike = [segment for segment in reading if segment.sounds in wanted]
        return (
            len(found) == len(alike) == 1
            and 0 < word.beats <= beats
            and word.ending != "ed"
            and found[0].sounds in wanted
        )

    return Column(heading or letters, shows, lambda word: letters in word.text, sounds)


# Rules for consonants


def start(letters: str, *sounds: str, heading: str = "") -> Column:
    """A consonant at the start: ch in chin, wr in write."""
    wanted = {tuple(sound.split()) for sound in sounds}

    def shows(word: SortWord, reading: Reading) -> bool:
        first = reading[0]
        again = [segment for segment in reading[1:] if segment.letters.startswith(letters[0])]
        return first.letters == letters and first.sounds in wanted and not again

    def looks(word: SortWord) -> bool:
        heard = [reading[0] for reading in word.readings]
        return all(s.letters == letters and s.sounds not in wanted for s in heard)

    return Column(heading or f"{letters}-", shows, looks)


def end(letters: str, *sounds: str, silent_e: bool = False) -> Column:
    """A consonant at the end: ck in duck, or with a `silent_e` dg in bridge."""
    wanted = {tuple(sound.split()) for sound in sounds}

    def shows(word: SortWord, reading: Reading) -> bool:
        if len(reading) < 3:
            return False
        last = reading[-2 if silent_e else -1]
        return (
            (reading[-1].sounds == ()) == silent_e
            and word.beats == 1
            and not word.ending
            and last.letters == letters
            and last.sounds in wanted
        )

    return Column(f"-{letters}{'e' if silent_e else ''}", shows)


def blend(letters: str, *, at_end: bool = False) -> Column:
    """Consonants that stand side by side and are both heard: bl in black, nd in hand."""

    def shows(word: SortWord, reading: Reading) -> bool:
        ordered = list(reading[-len(letters) :] if at_end else reading[: len(letters)])
        cut = "".join(segment.letters for segment in ordered)
        one_each = all(len(s.letters) == 1 and len(s.sounds) == 1 for s in ordered)
        short_word = not word.ending and (word.beats == 1 or not at_end)
        return cut == letters and one_each and not any(s.is_vowel for s in ordered) and short_word

    heading = f"-{letters}" if at_end else f"{letters}-"
    return Column(heading, shows)


def sounding(letter: str, sound: str, heading: str) -> Column:
    """A letter that has two sounds, wherever it stands: c in cat, c in city."""

    def shows(word: SortWord, reading: Reading) -> bool:
        found = [segment for segment in reading if letter in segment.letters]
        return len(found) == 1 and found[0].letters == letter and found[0].sounds == (sound,)

    def looks(word: SortWord) -> bool:
        segments = [s for reading in word.readings for s in reading if s.letters == letter]
        return bool(segments) and all(
            s.sounds not in (("K",), ("S",), ("G",), ("JH",)) for s in segments
        )

    return Column(heading, shows, looks)


# Rules for endings and beats


def ending(sounds: Sequence[str], heading: str) -> Column:
    """-ed by its sound, on a verb."""
    wanted = {tuple(sound.split()) for sound in sounds}

    def shows(word: SortWord, reading: Reading) -> bool:
        # In "hoped" the e belongs to the base, and what is heard of the ending is its d.
        last = reading[-1]
        heard = last.sounds if last.letters in ("ed", "d") else ()
        return word.ending == "ed" and heard in wanted

    return Column(heading, shows)


def added(suffix: str, change: Callable[[str], str], heading: str) -> Column:
    """A form that is made from its base by one change of spelling."""

    def shows(word: SortWord, reading: Reading) -> bool:
        return word.ending == suffix and word.text == change(word.base) and word.text != word.base

    return Column(heading, shows)


def plural_s(sounds: Sequence[str], heading: str, es: bool = False) -> Column:
    """A plural by the sound of its ending, and by -s or -es."""
    wanted = {tuple(sound.split()) for sound in sounds}

    def shows(word: SortWord, reading: Reading) -> bool:
        # "Cookies" only adds its s, but looks like "cities".
        made = word.text == word.base + ("es" if es else "s") and not word.text.endswith("ies")
        return word.ending == "s" and made and reading[-1].sounds in wanted

    return Column(heading, shows)


def beats(count: int, heading: str) -> Column:
    """Words of one, two or three beats (syllables)."""

    def shows(word: SortWord, reading: Reading) -> bool:
        return word.beats == count and not word.ending and not _wavers(reading)

    return Column(heading, shows)


def _wavers(reading: Reading) -> bool:
    """Whether people hear one beat or two: fire, hour, owl, oil."""
    sounds = [sound for segment in reading for sound in segment.sounds]
    glides = ("AY", "AW", "OY", "IY", "EY", "UW")
    return any(
        one in glides and other in ("ER", "R", "L", "AH")
        for one, other in zip(sounds, sounds[1:], strict=False)
    )


def final_y(sound: str, count: int, heading: str) -> Column:
    """A y that closes a word: my, happy."""

    def shows(word: SortWord, reading: Reading) -> bool:
        last = reading[-1]
        return word.beats == count and (last.letters, last.sounds) == ("y", (sound,))

    return Column(heading, shows)


def closing(letters: str, *sounds: str) -> Column:
    """An ending without stress in a word of two beats: -le in apple, -er in river."""
    wanted = {tuple(sound.split()) for sound in sounds}

    def shows(word: SortWord, reading: Reading) -> bool:
        tail = list(reading[-len(letters) :])
        for length in range(1, len(tail) + 1):
            part = tail[-length:]
            if "".join(s.letters for s in part) == letters:
                return word.beats == 2 and tuple(x for s in part for x in s.sounds) in wanted
        return False

    return Column(f"-{letters}", shows)


def first_beat(closed: bool, heading: str) -> Column:
    """Two beats whose first is shut in (rab-bit) or open (ti-ger)."""

    def shows(word: SortWord, reading: Reading) -> bool:
        at = next(n for n, segment in enumerate(reading) if segment.is_vowel)
        following = reading[at + 1 : at + 3]
        if word.beats != 2 or word.ending or len(following) < 2 or reading[at].letters not in SHORT:
            return False
        first, second = following
        sound, letter = reading[at].sounds[-1], reading[at].letters
        doubled = len(first.letters) == 2 and first.letters[0] == first.letters[1]
        if first.is_vowel or not first.sounds:
            return False
        if closed:
            shut = doubled or (not second.is_vowel and bool(second.sounds))
            return sound == SHORT[letter] and shut
        return sound == LONG[letter] and len(first.letters) == 1 and second.is_vowel

    return Column(heading, shows)


def _spelled(letter: str, kind: str) -> Callable[[SortWord], bool]:
    """Whether a word is spelled like one with a short or a long vowel, whatever it sounds like."""

    def looks(word: SortWord) -> bool:
        text = word.text
        vowels = [n for n, one in enumerate(text) if one in "aeiou"]
        if kind == "long":
            return (
                len(text) > 3
                and text.endswith("e")
                and len(vowels) == 2
                and text[-3] == letter
                and text[-2] not in "aeiou"
            )
        at = vowels[0] if len(vowels) == 1 else len(text) - 1
        return text[at] == letter and text[at + 1 : at + 2] not in ("", "r", "w", "y")

    return looks
