"""The closed sets of small English words that the rules and the planting share.

Closed classes of grammar: every grammar of English has the same members; written down here.
"""

from __future__ import annotations

from bank.edit.wordset import word_set

ARTICLES = frozenset(["a", "an", "the"])

# Each line is one pronoun in its forms; children's own forms stand at the end.
PERSONAL = (
    ("i", "me", "my", "mine", "myself", "meself"),
    ("you", "your", "yours", "yourself", "yourselves", "youse", "yous", "yourselfs"),
    ("he", "him", "his", "himself", "hisself"),
    ("she", "her", "hers", "herself", "sheself"),
    ("it", "its", "itself", "itsself"),
    ("we", "us", "our", "ours", "ourselves", "ourself", "ourselfs", "usselves"),
    (
        "they",
        "them",
        "their",
        "theirs",
        "themselves",
        "theirselves",
        "themself",
        "theirself",
        "theirselfs",
        "themselfs",
    ),
    ("who", "whom"),
)
DEMONSTRATIVE = word_set("this that these those them")
RELATIVE = word_set("who whom which that what")
PRONOUNS = frozenset(form for line in PERSONAL for form in line)
CHILD_PRONOUNS = word_set(
    "meself youse yous yourselfs hisself sheself itsself ourself ourselfs usselves "
    "theirselves mines themself theirself theirselfs themselfs"
)

NEGATIVES = word_set(
    "no not none nothing nobody nowhere never neither nor no-one cannot hardly barely"
)
# What stands for a no word once there is another in the sentence.
NEGATIVE_PAIRS = {
    "no": word_set("any a an the some"),
    "none": frozenset(["any", "some"]),
    "nothing": frozenset(["anything", "something"]),
    "nobody": frozenset(["anybody", "anyone", "somebody"]),
    "nowhere": frozenset(["anywhere"]),
    "never": frozenset(["ever"]),
    "neither": frozenset(["either"]),
    "not": frozenset(),
    "hardly": frozenset(),
}

BE = word_set("be am is are was were been being")
HAVE = frozenset(["have", "has", "had"])
DO = frozenset(["do", "does", "did"])
MODALS = word_set("can could will would shall should may might must")
AUXILIARIES = BE | HAVE | DO | MODALS

JOINERS = word_set("and but or so yet nor for")

# Real words that are often taken for each other though they do not quite sound alike.
CONFUSED = frozenset(
    frozenset(pair.split())
    for pair in (
        "then than",
        "lose loose",
        "are our",
        "of off",
        "of have",
        "off have",
        "were where",
        "were we're",
        "quiet quite",
        "accept except",
        "affect effect",
        "desert dessert",
        "whether weather",
        "bath bathe",
        "breath breathe",
        "cloth clothes",
        "chose choose",
        "wonder wander",
        "now know",
        "wear were",
        "with which",
        "an and",
        "has as",
        "is his",
        "advice advise",
        "through though",
        "thought though",
        "form from",
        "angel angle",
        "diary dairy",
        "picture pitcher",
        "won want",
        "our are",
        "there they're",
        "it's its",
    )
)

SPEECH_VERBS = word_set(
    "said says say asked asks ask yelled shouted cried called answered whispered replied told "
    "added laughed explained begged exclaimed wrote sang thought smiled"
)

MONTHS = word_set(
    "january february march april may june july august september october november "
    "december jan feb mar apr jun jul aug sept sep oct nov dec jan. feb. aug. sept. oct. "
    "nov. dec."
)
DAYS = word_set("monday tuesday wednesday thursday friday saturday sunday")

# How the states, provinces and countries begin that come after a town in a child's address.
REGION_STARTS = word_set(
    "alabama alaska arizona arkansas california colorado connecticut delaware florida georgia "
    "hawaii idaho illinois indiana iowa kansas kentucky louisiana maine maryland massachusetts "
    "michigan minnesota mississippi missouri montana nebraska nevada new north south west rhode "
    "ohio oklahoma oregon pennsylvania tennessee texas utah vermont virginia washington wisconsin "
    "wyoming dc ontario quebec alberta manitoba canada mexico england scotland wales ireland "
    "france spain italy germany japan china india brazil kenya australia usa egypt peru greece"
)

_COUNTED = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen "
    "fifteen sixteen seventeen eighteen nineteen twenty"
)
NUMBER_WORDS = {word: str(value) for value, word in enumerate(_COUNTED.split())} | {
    "thirty": "30",
    "forty": "40",
    "fifty": "50",
    "hundred": "100",
}
