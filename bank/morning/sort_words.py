"""The words that a sort may use: readable, common, kind, and regular through and through.

Loading them costs a second or two (CMUdict), so it happens only when a sort is made; a sort is
stored and needs nothing of this afterwards.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache

from bank.morning.alignment import VOWELS, Segment, align

COMMON_ENOUGH = 3.0
"""The least Zipf frequency (wordfreq): about one word in a million."""
# Themes (`bank.check.themes`) that a word card should not bring up by itself.
_NOT_ALONE = frozenset(
    "body religion death violence illness fear home money family food-limits".split()
)
# Words that hurt, tease, frighten or embarrass, or mean something rude besides; our own choice.
_UNKIND = frozenset(
    """ass bad bandit bang bastard beast beat beg bit bite bitten blame blew blow bomb bone boob booze
    bossy bra brat bruise bug bum burn burp burst butt cane cheat chubby chunky cock coffin cop crap
    crash crazy creep creepy crib crime crook cruel cry cuss damn danger dead deadly deaf demon devil
    dick dirt dirty dope drool drown drug drugs drunk dull dumb dump enemy evil fail fake fart
    fatten fearful fight fire fool foolish freak fungus fuss gag gang gay ghost gin grave greedy gross
    grumpy guilt guilty guts harm harmful hate hell helpless hoe hooker hose hump idiot itchy jail
    jerk junk kick killer lame lazy leech liar lice lick lie lone lonely loose lose loser lost louse
    lump lung mad mean mess mock moan nag naughty nasty nerd nipple nosy nude numb pain painful pants
    pat pee pill pimple poison poke poop pot potty prick prison pub punish punk pussy rape rash rat
    rid rob robber rude rum sad sadness scab scar scare scream screw selfish sex shame slap slave slob
    slug sly smack smell smelly smoke snob snot sore sorry spank spit stab steal sting stink stole
    strip stung stunt stupid suck suspect sweat sweaty sword tease thief tick tit tomb toxic tramp
    trap trash trouble ugly venom victim viper vodka vomit wail weak weed weird whine whip wicked wimp
    witch worm wound wrong yell balls nuts fist nerve grab shrink thigh limp
    violence skull skeleton swearing snatch knob blacks whites injury injure injured accident bleed
    disaster orphanage scalp spear breed thieves explode staggered wasted waste rotten clumsy flirt
    moist innocent bet gamble""".split()
)
# Names of days and months take a capital; the others are not for a card of school words.
_NO_CARD = frozenset(
    """january february march april may june july august september october november december monday
    tuesday wednesday thursday friday saturday sunday gotta gonna wanna yep nope yeah okay wow hi hey
    oops ouch moo hooray emu mister miss god won ate childrens hers theirs ours yours""".split()
)
# Spelled alike and said in two ways, or said differently from place to place; CMUdict often knows
# only one of them.
_TWO_WAYS = frozenset(
    """read lead wind bow row sow tear live lives close use used house excuse abuse does dove wound
    minute present record object content desert refuse sewer bass polish august job mow mouth
    produce project rebel subject separate perfect permit contest contract conduct console
    learned blessed aged dogged ragged invalid entrance moped number resume putting route root roof
    creek aunt either neither often again egg leg keg tour poor""".split()
)
# Beside the words of the level's lists: words for patterns that these have few of.
MORE_LEARNT = 3.5
"""The grade by which children know the words of `_MORE`, at the latest: from judgement."""
_MORE = """
    cube huge prune cage bridge badge edge hedge judge fudge fridge lodge dodge ridge pledge fern
    clerk stern term herb surf church churn turnip surprise turkey spoil moist enjoy annoy employ
    royal loyal oyster cowboy hawk airy repair unfair spare fare mare screw jewel whirl whisker
    whistle wrestle wrapper quest quote quake squash blaze blend blizzard gleam glimpse slope slim
    sling slow fling frost freckle mall flight slight delight tonight foul hound prowl gown towel
    shower gum photo gopher alphabet elephant snip snore snowflake spider draft drum fry chirp
    thirst girl curl hurdle turn burger purple turtle coin join toy boy joy jaw paw claw straw
    crow grow boast soak float foam croak mule mitten kitten tunnel muffin napkin insect picnic
    basket pilot robot raven drift shift raft soft gift swift pulp gulp help""".split()


@dataclass(frozen=True, slots=True)
class SortWord:
    """A word with its segments for every pronunciation, and what it was made from.

    `learnt` is the grade in which most children know it (`bank.level.vocabulary`); `beats` are its
    syllables, 0 where pronunciations differ; it `is_regular` when every letter of every
    pronunciation is as it is taught. `base` and `ending` say what a regular -s, -ed or -ing form
    comes from, and are empty for other words.
    """

    text: str
    readings: tuple[tuple[Segment, ...], ...]
    learnt: float
    beats: int
    is_regular: bool
    base: str = ""
    ending: str = ""

    @property
    def family(self) -> str:
        """What words that are forms of one another have in common: cat and cats, it and its."""
        return self.base or self.text.removesuffix("s")


def _beats(reading: Sequence[Segment]) -> int:
    return sum(sound in VOWELS for segment in reading for sound in segment.sounds)


SHORT = {"a": "AE", "e": "EH", "i": "IH", "o": "AA", "u": "AH"}
LONG = {"a": "EY", "e": "IY", "i": "AY", "o": "OW", "u": "UW", "y": "AY"}


def closing_e(reading: Sequence[Segment]) -> int | None:
    """Where a single vowel stands before one consonant and a silent -e, or None.

    >>> closing_e(align("cake", ("K", "EY1", "K")))
    1
    """
    for at in range(len(reading) - 2):
        vowel, consonant, silent = reading[at : at + 3]
        ends = at + 3 == len(reading) or (at + 4 == len(reading) and reading[-1].letters in "sd")
        if (
            vowel.letters in LONG
            and vowel.is_vowel
            and consonant.sounds
            and not consonant.is_vowel
            and consonant.letters != "dg"
            and (silent.letters, silent.sounds) == ("e", ())
            and ends
        ):
            return at
    return None


def _is_lawful(reading: Sequence[Segment]) -> bool:
    """Whether single vowels are short where they are shut in and long where they are open.

    Only for words of one beat; "have", "find" and "cold" are no examples of a pattern.
    """
    if any(_soft(segment, following) for segment, following in _pairs(reading)):
        return False
    if _beats(reading) != 1:
        return True
    at = next((n for n, segment in enumerate(reading) if segment.is_vowel), None)
    if at is None:
        return False
    letters, sound = reading[at].letters, reading[at].sounds[-1]
    if letters not in SHORT and letters != "y":
        return True
    last = at == len(reading) - 1
    if last:
        return sound == LONG[letters]
    if closing_e(reading) == at:
        return sound == LONG[letters]
    return letters != "y" and sound == SHORT[letters]


def _soft(segment: Segment, following: str) -> bool:
    """Whether a c or g sounds hard or soft against the letter after it."""
    before_soft = following[:1] in ("e", "i", "y")
    if segment.letters == "c":
        return (segment.sounds == ("S",)) != before_soft
    return segment.letters == "g" and segment.sounds == ("JH",) and not before_soft


def _pairs(reading: Sequence[Segment]) -> Iterator[tuple[Segment, str]]:
    for segment, after in zip(reading, (*reading[1:], None), strict=True):
        yield segment, after.letters if after else ""


def is_kind(word: str, family: str = "") -> bool:
    """Whether a word may stand alone on a card: nothing unkind, rude or painful.

    >>> is_kind("rain"), is_kind("ugly"), is_kind("killed", "kill")
    (True, False, False)
    """
    from bank.check.themes import sensitive_themes

    forms = {word, family or word}
    return forms.isdisjoint(_UNKIND) and not any(
        theme in _NOT_ALONE for form in forms for theme in sensitive_themes(form)
    )


@lru_cache(maxsize=1)
def sort_words() -> tuple[SortWord, ...]:
    """All words that a sort may use, with their pronunciations, the earliest learnt first.

    Those that are not regular are among them, for the odd ones out.
    """
    from bank.language import sounds, zipf
    from bank.level import vocabulary

    kinds = {text: frozenset[str]() for text in _MORE}
    for name in ("early", "next"):
        for text, sections in vocabulary.own_list(name).items():
            kinds[text] = kinds.get(text, frozenset()) | sections
    known = {text: _made_from(text) for text in kinds}
    for text, sections in kinds.items():
        for form, ending in _forms(text, sections):
            known.setdefault(form, (text, ending))
    words = []
    for text, (base, ending) in known.items():
        if not _fits_a_card(text, base) or zipf(text) < COMMON_ENOUGH:
            continue
        readings = [align(text, phones) for phones in dict.fromkeys(sounds(text))]
        whole = tuple(reading for reading in readings if reading is not None)
        if whole and len(whole) == len(readings):
            learnt = vocabulary.word(base or text).learnt
            if text in _MORE:
                learnt = min(learnt, MORE_LEARNT)
            counted = {_beats(reading) for reading in whole}
            beats = counted.pop() if len(counted) == 1 else 0
            regular = all(
                all(segment.regular for segment in reading) and _is_lawful(reading)
                for reading in whole
            )
            words.append(SortWord(text, whole, learnt, beats, regular, base, ending))
    return tuple(sorted(words, key=lambda word: (word.learnt, word.text)))


def _fits_a_card(text: str, base: str) -> bool:
    plain = text.isascii() and text.isalpha() and text.islower() and 1 < len(text) < 10
    once = {text, base or text}
    return plain and once.isdisjoint(_TWO_WAYS | _NO_CARD) and is_kind(text, base)


def _made_from(text: str) -> tuple[str, str]:
    """The base and ending of a listed word that is itself a regular form: glasses, thrilled."""
    import lemminflect

    from bank.level import forms

    for base, ending in forms.inflected_from(text):
        tag, part = _PARTS[ending]
        # Asked of its dictionary alone: by its rules "thing" could come from "the".
        usual = lemminflect.getAllInflections(base, upos=part).get(tag, ())[:1]
        if text in usual:
            return base, ending
    return "", ""


_PARTS = {"s": ("NNS", "NOUN"), "ed": ("VBD", "VERB"), "ing": ("VBG", "VERB")}


def _forms(base: str, sections: frozenset[str]) -> Iterator[tuple[str, str]]:
    """The -s, -ed and -ing forms of a noun or verb, where they are the usual ones."""
    from bank.language import inflections
    from bank.level import forms

    if "noun" in sections and forms.plural(base) in inflections(base, "NNS")[:1]:
        yield forms.plural(base), "s"
    for ending, tag in (("ed", "VBD"), ("ing", "VBG")) if "verb" in sections else ():
        form = forms.joined(base, ending)[0]
        if form in inflections(base, tag)[:1]:
            yield form, ending
