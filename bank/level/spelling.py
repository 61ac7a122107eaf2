"""How regularly a word is spelled for its sound.

By its letters: silent letters, letters that stand for an unusual sound, and the most frequent words
whose sound cannot be read off at all. A pronouncing dictionary would say more, at the price of a
second to load it; the tests hold these patterns against CMUdict.
"""

from __future__ import annotations

import re

# Silent letters and unusual sounds, by where they stand.
_ODD_SPELLINGS = re.compile(
    r"^(?:kn|gn|wr|ps|pn|rh|gh|who|sch)"  # knee, gnat, write, psalm, rhyme, ghost, whole, school
    r"|(?:mb|mn|bt|gn|lm|que|gue|igm)$"  # lamb, autumn, debt, sign, calm, unique, tongue
    r"|ough|augh|eigh|aigh|eau|ieu|oeu"  # though, laugh, eight, beauty, lieu
    r"|alk|olk|alf|ould|stle|sten$"  # talk, folk, half, would, castle, listen
    r"|ch(?:or|ar?ac|em|aos|em|r|oi)|ache$|sci|xc"  # chorus, chemist, choir, ache, science
    r"|ph|ui(?=[dlt])|uy|eo(?=p|v)|ae|oe(?=[a-z]{2})"  # phone, build, buy, people
    r"|(?:w|qu)a(?=[nrst])|wo(?=[lmnr])"  # want, quart, woman, world
    r"|[ae]i(?=gn)|rrh|cqu|ss?ure|tz|zz?a$"  # reign, acquire, pressure, pizza
    r"|ea(?=d$|th$|lth|sant|ther|dy$|r[lnt])|oo(?=[kd]$)|ie(?=nd$)"  # bread, heart, book, friend
    r"|ou(?=[nb]g|ch$|s?in$|ble|gh|p$)"  # young, touch, cousin, double, group
)
# Frequent words that no pattern covers.
_ODD_WORDS = frozenset(
    "a the of to do who two one once said says was were are have give live come some done none gone "
    "does been they there where what any many again against only both most post ghost old cold gold "
    "you your own grown shown blown thrown four pour bowl put push pull full bush sugar sure shoe "
    "lose move prove love above glove dove oven "
    "other mother brother another nothing money monkey month front son won wonder from eye key "
    "great break steak bear pear wear tear heart hearth early pretty busy business buried bury "
    "island aisle isle iron ocean machine police garage answer sword hour honest honor heir half "
    "calf water father aunt laugh minute lettuce biscuit fruit juice suit cruise soup group "
    "wolf child wild mild kind mind find blind behind climb height weight their weird seize "
    "tomb comb bomb womb subtle receipt colonel rhythm yacht choir quay ballet bouquet "
    "chocolate vegetable comfortable wednesday february favorite restaurant".split()
)


def oddness(word: str) -> float:
    """How far the spelling of a lower-case word is from its sound: 0 as it sounds, up to 1.

    >>> oddness("cat"), oddness("knee"), oddness("said")
    (0.0, 0.5, 1.0)
    """
    if word in _ODD_WORDS:
        return 1.0
    return min(1.0, 0.5 * len(_ODD_SPELLINGS.findall(word)))
