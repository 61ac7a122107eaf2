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
    """
    found: dict[str, None] = {}
    for word in re.findall(r"[a-z]+(?:-[a-z]+)*", text.lower()):
        for theme in _theme_of().get(word, ()):
            found[theme] = None
    return list(found)
