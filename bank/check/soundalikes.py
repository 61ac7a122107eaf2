"""Real words that sound like the one that is meant: meat for meet, flower for flour.

Three witnesses: the kind of word that the place asks for, the counts of word pairs, and for some
pairs the words that go with one of the two. None alone is enough to be certain of.
"""

from __future__ import annotations

import math
from functools import cache

from bank.check.engine import Found, at, on_text
from bank.check.finding import Finding
from bank.check.grammar import (
    ARTICLES,
    AUXILIARIES,
    BE,
    FUNCTION,
    HE,
    MODALS,
    POSSESSIVES,
    SUBJECTS,
    is_noun,
    verb_forms,
)  # fmt: skip
from bank.check.lexicon import lemmas, pair, word_set, zipf
from bank.check.reading import Reading

_GROUPS = """
accept except | ad add | affect effect | air heir | aisle isle | allowed aloud | ant aunt | ate eight
bail bale | bare bear | base bass | be bee | beach beech | beat beet | berry bury | billed build
blew blue | board bored | brake break | bread bred | breath breathe | bridal bridle | buy by bye
ceiling sealing | cell sell | cent scent sent | cereal serial | chews choose | chose choose
clothes close cloths | coarse course | creak creek | dear deer | desert dessert | die dye | doe dough
dairy diary | ewe you | fair fare | feat feet | find fined | fir fur | flea flee | flew flu | flour flower
for four | forth fourth | gate gait | great grate | groan grown | guessed guest | hair hare | hall haul
hay hey | heal heel | heard herd | hi high | him hymn | hoarse horse | hole whole | in inn
knead need | knew new | knight night | knot not | knows nose | lead led | lessen lesson | loan lone
loose lose | made maid | mail male | main mane | meat meet | missed mist | moose mousse | morning mourning
muscle mussel | nun none | oar or ore | one won | pail pale | pain pane | pair pear pare | passed past
patience patients | pause paws | pea pee | peace piece | peak peek | pedal petal | plain plane
poor pour pore | pray prey | principal principle | rain reign rein | raise rays | rap wrap | read red
real reel | right write | ring wring | road rode | role roll | root route | rose rows | sail sale
sauce source | scene seen | sea see | seam seem | sew so sow | shoe shoo | side sighed | sight site cite
soar sore | sole soul | some sum | son sun | stair stare | stairs stares | stake steak | stationary stationery
steal steel | straight strait | suite sweet | tail tale | tea tee | team teem | tents tense | threw through
throne thrown | tide tied | toad towed | toe tow | vain vein | vary very | wade weighed | wail whale
waist waste | wait weight | wander wonder | war wore | warn worn | way weigh | we wee | weak week | weather whether
which witch | wood would | yoke yolk | advice advise | angel angle | lay lie | thing think
ride write | walk work | live leave | cloth clothe | later latter | loss lost | trail trial | quit quiet
sink think | sing thing | tree three | then den | bus buzz | chef chief | coma comma | dose does | finally finely
hear here | hour our | its it's | eye i | hopping hoping | dinning dining | staring starring | planed planned
scared scarred | pined pinned | caned canned | taped tapped | bead beed | stile style | vale veil | cheap cheep | pleas please
bolder boulder | cellar seller | colonel kernel | core corps | cue queue | cymbal symbol | days daze
dual duel | earn urn | fawn faun | flair flare | foul fowl | frees freeze | grease greece | grisly grizzly | hail hale
hostel hostile | idle idol | jam jamb | key quay | lane lain | leak leek | levee levy | links lynx | lightening lightning
manner manor | marshal martial | medal meddle metal | minor miner | naval navel | packed pact | palate palette | pole poll | pact packed
pi pie | pride pried | prince prints | profit prophet | sleigh slay | slow sloe | stalk stock | steak stake | tacks tax | tear tier
time thyme | toes tows | told tolled | vile vial | wax whacks | wheel we'll | where wear | whine wine | world whirled | wrote rote | hire higher
ball bawl | band banned | been bin | bite byte | boy buoy | bow bough | cash cache | chord cord | click clique | crews cruise | dew do due | fare fair | faze phase
find fined | gnome nome | guys guise | heroes heroin | jeans genes | knit nit | lie lye | mind mined | moor more | mall maul | nay neigh | pale pail
peel peal | peer pier | plum plumb | praise prays | presence presents | quarts quartz | rapped wrapped | rose rows | rye wry | sees seas seize | serf surf
sink sync | spade spayed | tease teas tees | tire tyre | trussed trust | turn tern | two too | wales whales | weave we've | wheeled wield | wrung rung | ink inc | dock doc | pick pic | gym jim | sing singh
""".replace("\n", " | ")

_GOES_WITH = {
    "flour": "bake baked bakes baking cook cake bread cup cups dough recipe sugar mix cookies muffins pancakes bag stir mixed eggs",
    "flower": "garden vase pick picked bloom bloomed petals bee bees smell smelled water watered plant planted grow grew red pink yellow pretty bouquet spring stem",
    "sun": "sky shine shines shining shone hot bright moon rise rose set sets warm planets earth heat light clouds",
    "son": "father mother dad mom daughter parents baby king queen her his their my",
    "meat": "eat ate cook cooked beef chicken dinner grill butcher vegetarian steak",
    "deer": "woods forest antlers saw animal animals field ran leap fawn hunter",
    "pear": "eat ate fruit apple apples juicy tree peach ripe",
    "pair": "shoes socks gloves mittens pants glasses scissors skates boots of",
    "sail": "boat wind ship sea lake sailed", "sale": "store buy for price garage yard bake toys shop",
    "mail": "letter letters box mailbox stamp post carrier package deliver", "male": "female lion bird animal",
    "tail": "dog cat wag wagged monkey fluffy horse animal long squirrel puppy", "tale": "fairy story told folk tall tell listened",
    "hair": "brush brushed comb long short curly brown cut wash washed head", "hare": "tortoise rabbit",
    "night": "dark moon stars sleep bed last tonight dream owl", "knight": "castle armor horse king sword dragon brave shining",
    "whale": "ocean sea blue swim swam", "dessert": "eat ate cake ice pie dinner sweet chocolate",
    "desert": "sand hot dry camel cactus", "plane": "flew fly airport pilot sky trip", "stairs": "climb climbed up down walk walked ran fell",
    "piece": "of cake pizza paper pie puzzle bread", "peace": "war quiet", "creek": "fish water swam frog", "beach": "sand ocean shell shells waves swim",
    "bear": "woods honey cub cave forest den brown polar", "steak": "eat ate dinner grill", "ant": "hill bug insect tiny crawled picnic", "aunt": "uncle cousin my visit visited",
    "toe": "stub stubbed foot hurt", "cereal": "milk bowl breakfast ate eat", "bee": "honey hive sting stung buzz buzzed flower", "cent": "penny coin", "scent": "smell rose",
    "principal": "school office teacher", "nose": "face run runny smell blow sneeze", "maid": "clean cleaned", "oar": "boat row rowed", "pail": "water sand shovel milk carried",
    "pale": "face skin", "pane": "window glass", "pain": "hurt felt leg", "pause": "stop button", "paws": "dog cat puppy kitten bear muddy", "petal": "flower rose", "pedal": "bike bicycle",
    "rain": "wet clouds umbrella storm puddle", "read": "book books story", "road": "car drive drove street truck", "rode": "bike horse bus", "seller": "shop", "steel": "metal iron bridge",
    "wood": "tree trees cut fire build saw", "week": "days last next", "weak": "strong sick", "waist": "belt", "weight": "heavy pounds", "berry": "eat ate blue pick", "hole": "dig dug deep ground in",
    "whole": "the pizza class day family cake", "heel": "shoe foot", "herd": "cows cattle sheep", "horse": "ride rode barn saddle", "hoarse": "voice throat", "moose": "antlers woods", "mane": "lion horse",
    "dairy": "milk cow cows cheese", "diary": "write wrote writes", "angel": "wings snow", "angle": "degrees right triangle", "boulder": "rock huge", "symbol": "flag map", "metal": "steel iron magnet", "medal": "won gold race winner",
    "witch": "broom spell cat hat", "fur": "soft cat dog", "fir": "tree trees", "root": "plant tree", "route": "map bus", "throne": "king queen sat", "reindeer": "sleigh", "sleigh": "snow bells",
}  # fmt: skip
_TOGETHER = {word: frozenset(words.split()) for word, words in _GOES_WITH.items()}
_SKIP = word_set(
    "to too two there their your its it's our where were then than no know hear here you i be we or in not than do been of for by or so want live you've off quit which lay lie time due eye tree three sing sink then walk work ride"
)
_FLOOR = 2_000_000.0
_NEAR_PAIR = word_set(
    "chose choose loose lose breath breathe advice advise dairy diary angel angle desert dessert accept except affect effect clothes close cloths later latter trial trail"
)


@cache
def _alternatives() -> dict[str, tuple[str, ...]]:
    table: dict[str, list[str]] = {}
    for group in _GROUPS.split("|"):
        words = group.split()
        for word in words:
            for other in words:
                if other != word and other not in table.setdefault(word, []):
                    table[word].append(other)
    return {word: tuple(others) for word, others in table.items()}


@cache
def _jobs(word: str) -> frozenset[str]:
    """The places that `word` can fill: verb forms, N (noun), A (describes), or F (a small word)."""
    jobs = set(verb_forms(word))
    own = lemmas(word)
    if "NOUN" in own:
        jobs.add("N")
    if "ADJ" in own:
        jobs.add("A")
    if "ADV" in own:
        jobs.add("R")
    if word in FUNCTION or word in _SMALL_ONES:
        jobs.add("F")
    jobs -= _NEVER.get(word, frozenset())
    jobs |= _ALSO.get(word, frozenset())
    return frozenset(jobs)


_SMALL_ONES = word_set(
    "four eight one none some through which whether except hey hi please not very whole so"
)
# What the lexicon has and a school does not: uses that no prompt will make.
_NEVER = {
    "blue": {"VB"}, "red": {"VB"}, "see": {"N"}, "be": {"N"}, "meet": {"N", "A"}, "need": set(), "hare": {"VB"},
    "pear": {"VB"}, "weak": {"VB", "N"}, "week": {"A"}, "deer": {"A"}, "dear": {"VB"}, "knight": set(), "sun": {"VB"},
    "son": {"VB"}, "flower": set(), "flour": set(), "nose": {"VB"}, "sea": {"A"}, "one": {"VB"}, "won": {"N"}, "new": {"VB", "N"},
    "ate": {"N"}, "eight": {"VB"}, "would": {"N"}, "wood": {"VB", "A"}, "tale": {"VB"}, "tail": set(), "hole": {"VB"}, "whole": {"VB"},
    "made": {"N"}, "maid": {"VB"}, "red_": set(), "road": {"VB"}, "rode": {"N"}, "threw": {"N"}, "through": {"N", "VB"}, "bored": set(),
    "knew": {"N"}, "sell": {"N"}, "cell": {"VB"}, "beat": {"A"}, "flew": {"N"}, "grown": {"N"}, "heard": {"N"}, "write": {"N"}, "know": {"N"},
    "horse": {"VB"}, "hoarse": {"VB"}, "meat": {"VB"}, "plain": {"VB"}, "piece": set(), "peace": {"VB"}, "aunt": {"VB"}, "bee": {"VB"},
    "night": {"VB"}, "pail": {"VB"}, "mane": {"VB"}, "seen": {"N"}, "choose": {"N"}, "lose": {"N"}, "build": {"N"}, "buy": set(), "guest": {"VB"},
    "great": {"VB"}, "high": {"VB"}, "hi": {"N"}, "read": set(), "led": {"N"}, "sent": {"N"}, "cent": {"VB"}, "wore": {"N"}, "war": {"VB"}, "hymn": {"VB"},
    "lesson": {"VB"}, "morning": {"VB", "VBG"}, "sore": {"VB"}, "some": {"N"}, "sum": set(), "weigh": {"N"}, "way": {"VB", "A"}, "bare": set(), "son_": set(),
    "breathe": {"N"}, "breath": {"VB"}, "advise": {"N"}, "advice": {"VB"}, "loose": {"VB", "N", "R"}, "main": {"VB", "N"}, "past": {"VB"}, "passed": {"N", "A"},
    "allowed": {"A"}, "cheap": {"VB"}, "tied": {"N"}, "tide": {"VB"}, "stake": set(), "steak": {"VB"}, "toad": {"VB"}, "bread": {"VB"}, "fair": {"VB"},
    "beach": {"VB"}, "feet": {"VB"}, "fur": {"VB"}, "hair": {"VB"}, "male": {"VB"}, "whale": {"VB"}, "pain": set(), "witch": {"VB"}, "ant": {"VB"},
    "weather": set(), "bury": {"N"}, "berry": {"VB"}, "clothes": {"VBZ"}, "close": {"N"}, "scene": {"VB"}, "steal": {"N"}, "steel": {"VB"}, "wait": set(), "weight": {"VB"},
    "sale": {"VB"}, "waist": {"VB"}, "road_": set(), "knows": {"N"}, "throne": {"VB"}, "thrown": {"N", "A"}, "wander": {"N"}, "deer_": set(), "dough": {"VB"}, "find": {"N"},
    "forth": {"N", "A"}, "fourth": {"R"}, "meddle": {"N"}, "pie": {"VB"}, "pour": {"N"}, "poor": {"N"}, "prey": set(), "pray": {"N"}, "real": {"N", "R"}, "sew": {"N"}, "soar": {"N"},
    "stairs": {"VBZ"}, "die": {"N"}, "wood_": set(), "add": {"N"}, "chews": {"N"}, "accept": {"N"}, "except": {"VB"}, "sight": {"VB"}, "weave": {"N"}, "sing": {"N"}, "tell": set(), "told": {"N"}, "wrote": {"N"}, "please": {"N"},
}  # fmt: skip
_ALSO = {
    "would": {"F"},
    "passed": set(),
    "whether": {"F"},
    "lose": set(),
    "left": {"A"},
    "hi": {"F"},
    "eight": {"N", "A"},
    "four": {"N", "A"},
    "blew": set(),
    "whole": {"A"},
    "fourth": {"A"},
    "main": {"A"},
}


@on_text()
def word_that_sounds_like_it(r: Reading) -> Found:
    """A real word, but the wrong one of those that sound the same.

    >>> show("I will meat you there.")
    ['homophone: meat -> meet']
    >>> show("Mom used flower to bake a cake.")
    ['homophone: flower -> flour']
    >>> show("We ate meat. Did you meet the new girl?")
    []
    """
    table = _alternatives()
    found = []
    for i, word in enumerate(r.lower):
        others = table.get(word)
        if others is None or word in _SKIP or r.words[i][0].isupper() and not r.first[i]:
            continue
        finding = _best_other(r, i, others)
        if finding is not None:
            found.append(finding)
    return found


def _best_other(r: Reading, i: int, others: tuple[str, ...]) -> Finding | None:
    word = r.lower[i]
    best: tuple[float, str, bool] | None = None
    asked = _asked_jobs(r, i)
    own_fits = _fits(word, asked)
    for other in others:
        gain = _pair_gain(r, i, word, other)
        fits = _fits(other, asked)
        company = _company(r, i, other) - _company(r, i, word)
        if (
            r.tag[i] in ("VBD", "VBZ", "VBP")
            and _jobs(word) & {"VBD", "VBZ", "VB"}
            and not _jobs(other) & {"VBD", "VBZ", "VB"}
            and own_fits
        ):
            gain -= 1.0
        score = (
            gain
            + (2.5 if fits and not own_fits else 0.0)
            - (2.5 if own_fits and not fits else 0.0)
            + 1.6 * company
        )
        slot = fits and not own_fits
        if score < (1.6 if slot else 2.4):
            continue
        if best is None or score > best[0]:
            best = (score, other, slot or score > 3.4)
    if best is None:
        return None
    return at(
        r,
        i,
        "homophone",
        f"“{r.words[i]}” sounds like “{best[1]}”, which fits here.",
        best[1],
        best[2],
    )


def _fits(word: str, asked: frozenset[str] | None) -> bool:
    return asked is None or not asked.isdisjoint(_jobs(word))


def _asked_jobs(r: Reading, i: int) -> frozenset[str] | None:
    """The jobs of which a word at `i` must have one, by the words around it; None where any will do."""
    before, after = r.before(i), r.after(i)
    if not before:
        if (
            r.first[i]
            and after in ("you", "we", "they", "he", "she", "i")
            and r.text.rstrip().endswith("?")
        ):
            return frozenset("F")
        return None
    if before in MODALS or before in (
        "didn't",
        "don't",
        "doesn't",
        "can't",
        "won't",
        "couldn't",
        "wouldn't",
        "shouldn't",
        "let's",
    ):
        return frozenset({"VB", "R", "F"})
    if before == "to" and (i < 2 or r.lower[i - 2] in _INFINITIVE):
        return frozenset({"VB", "R"})
    if before in SUBJECTS and before not in ("it", "you") and not _helped(r, i - 1):
        # "he", "she": third form or past; the others: plain or past.
        return frozenset({"VBZ", "VBD", "R", "F"} if before in HE else {"VB", "VBD", "R", "F"})
    if before in SUBJECTS and _helped(r, i - 1) and not _be_helped(r, i - 1):
        return frozenset({"VB", "VBN", "R", "F"})
    if before in ARTICLES | POSSESSIVES - {"her"} and before not in ("that", "this"):
        return frozenset(
            {"N", "A", "VBG", "VBN", "R", "F"} if before == "the" else {"N", "A", "VBG", "VBN", "R"}
        )
    if (
        "VBD" in verb_forms(before)
        and before not in AUXILIARIES
        and not is_noun(before)
        and before not in ("let", "made", "helped", "saw", "heard", "had")
    ):
        return frozenset({"N", "A", "R", "F", "VBG"})
    if (
        r.tag[i - 1] in ("VBD", "VBZ", "VBP", "VB")
        and before not in AUXILIARIES
        and before not in ("let", "make", "help", "made", "helped", "go", "come")
    ):
        return frozenset({"N", "A", "R", "F", "VBG"})
    if before in BE and not r.first[i - 1] or before in ("has", "have") and r.lower[i] == "blew":
        return frozenset({"N", "A", "R", "F", "VBG", "VBN"})
    if (
        before in ("hardly", "never", "always", "really", "also")
        and i > 1
        and r.lower[i - 2] in MODALS
    ):
        return frozenset({"VB", "R"})
    if before in ("very", "so", "too") and after in ("", "and", "to", "that"):
        return frozenset({"A", "R", "F"})
    return None


_INFINITIVE = word_set(
    "want wants wanted need needs needed like likes liked love loves loved going how have has had try tried used able where what when ready learn learned time way"
)


def _helped(r: Reading, i: int) -> bool:
    return i > 0 and r.lower[i - 1] in AUXILIARIES and r.near(i - 1)


def _be_helped(r: Reading, i: int) -> bool:
    return i > 0 and (
        r.lower[i - 1] in BE or r.lower[i - 1].startswith(("is", "are", "was", "were"))
    )


@cache
def _log_pair(first: str, second: str) -> float:
    return math.log10(max(pair(first, second), _FLOOR))


def _pair_gain(r: Reading, i: int, word: str, other: str) -> float:
    """How much likelier the neighbours make `other` than `word`, in powers of ten."""
    gain = 0.0
    before, after = r.before(i), r.after(i)
    if before:
        gain += _log_pair(before, other) - _log_pair(before, word)
    if after:
        gain += _log_pair(other, after) - _log_pair(word, after)
    # A frequent word has more pairs with everything.
    return gain - 0.5 * (zipf(other) - zipf(word)) * (1 if gain > 0 else 0)


def _company(r: Reading, i: int, word: str) -> int:
    together = _TOGETHER.get(word)
    if together is None:
        return 0
    alike = _alternatives().get(word, ())
    return min(
        2, sum(1 for k, w in enumerate(r.lower) if k != i and w in together and w not in alike)
    )
