"""Sensitive matter, offered as theme tags: no error, but some learners have themes to avoid.

The words are our own choice for a classroom; a specialist accepts, drops or adds a tag.
"""

from __future__ import annotations

import re
from functools import lru_cache

_WORDS = {
    "family": """mom mommy mother mum dad daddy father parent parents brother sister grandma
        grandpa grandmother grandfather granny aunt uncle cousin family families stepmom stepdad
        stepmother stepfather son daughter husband wife divorce divorced adopted foster orphan
        birthday-party home-life""",
    "body": """body weight fat thin skinny overweight tall short diet ugly pretty muscles underwear
        naked bathroom toilet pee poop bath shower skin wheelchair scar puberty period breast""",
    "food-limits": """pork ham bacon sausage beef meat shrimp shellfish peanut peanuts nut nuts
        allergy allergic candy dessert gluten milk egg eggs lunch-money hungry starving fasting
        diet vegetarian vegan pepperoni hotdog""",
    "religion": """god church mosque temple synagogue bible koran quran torah pray prayer prayers
        christmas easter hanukkah ramadan eid diwali lent heaven hell angel angels devil santa
        halloween religion religious priest pastor rabbi imam baptism communion holy worship
        kwanzaa passover""",
    "death": """die dies died dying dead death kill kills killed killing murder funeral grave
        graveyard cemetery ghost ghosts suicide buried bury coffin drown drowned widow""",
    "money": """money rich poor expensive rent bill bills allowance salary wages debt broke homeless
        afford cost costs mortgage unemployed job-loss vacation mall spend dollar dollars""",
    "violence": """gun guns shoot shooting shot war wars fight fighting hit hits punch kick bomb
        weapon weapons knife stab attack attacked battle blood bully bullies bullied hurt""",
    "illness": """sick sickness cancer hospital disease doctor surgery operation medicine needle
        vomit throw-up virus fever ambulance emergency""",
    "fear": """scary scared afraid fear fears nightmare nightmares monster monsters horror dark
        spider spiders snake snakes thunder storm tornado hurricane earthquake fire""",
    "home": """homeless shelter evicted eviction moving-away immigrant refugee border deported
        jail prison police arrested""",
}


_OF_A_PERSON = frozenset(
    "you i me he she they we person people kid kids child children boy girl friend friends mom dad "
    "brother sister class everyone anyone someone who teacher body".split()
)
_TIME = frozenset(
    "time day days afternoon morning evening night hour hours minute minutes week weeks weekend "
    "weekends month summer winter spring fall recess vacation holiday saturday sunday year".split()
)
_NO_INJECTION = frozenset(
    "compass pine sew sewing thread knit knitting haystack tree north yarn cactus".split()
)


def _meant(word: str, others: frozenset[str]) -> bool:
    """Whether a word of several meanings has the sensitive one beside the other words of the text.

    >>> _meant("spend", frozenset({"afternoon"})), _meant("spend", frozenset({"store"}))
    (False, True)
    """
    if word in ("tall", "short"):
        return not others.isdisjoint(_OF_A_PERSON)
    if word == "spend":
        return others.isdisjoint(_TIME)
    if word == "needle":
        return others.isdisjoint(_NO_INJECTION)
    return True


@lru_cache(maxsize=1)
def _theme_of() -> dict[str, list[str]]:
    themes: dict[str, list[str]] = {}
    for theme, words in _WORDS.items():
        for word in words.split():
            themes.setdefault(word, []).append(theme)
    return themes


def sensitive_themes(text: str) -> list[str]:
    """The sensitive themes that `text` touches, in the order in which they come up.

    >>> sensitive_themes("What does your mom give you when you are sick?")
    ['family', 'illness']
    >>> sensitive_themes("How tall is the tree?"), sensitive_themes("How tall are you?")
    ([], ['body'])
    """
    found: dict[str, None] = {}
    words = re.findall(r"[a-z]+(?:-[a-z]+)*", text.lower())
    present = frozenset(words)
    for word in words:
        for theme in _theme_of().get(word, ()):
            if _meant(word, present):
                found[theme] = None
    return list(found)
