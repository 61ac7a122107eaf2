"""Which words sound alike, which words go with one of them, and what a word is never used as.

Common knowledge, arranged here.
"""

from __future__ import annotations

GROUPS = """
accept except | ad add | affect effect | air heir | aisle isle | allowed aloud | ant aunt | ate
eight | bail bale | bare bear | base bass | be bee | beach beech | beat beet | berry bury |
billed build | blew blue | board bored | brake break | bread bred | breath breathe | bridal
bridle | buy by bye | ceiling sealing | cell sell | cent scent sent | cereal serial | chews
choose | chose choose | clothes close cloths | coarse course | creak creek | dear deer | desert
dessert | die dye | doe dough | dairy diary | ewe you | fair fare | feat feet | find fined | fir
fur | flea flee | flew flu | flour flower | for four | forth fourth | gate gait | great grate |
groan grown | guessed guest | hair hare | hall haul | hay hey | heal heel | heard herd | hi high
| him hymn | hoarse horse | hole whole | in inn | knead need | knew new | knight night | knot
not | knows nose | lead led | lessen lesson | loan lone | loose lose | made maid | mail male |
main mane | meat meet | missed mist | moose mousse | morning mourning | muscle mussel | nun none
| oar or ore | one won | pail pale | pain pane | pair pear pare | passed past | patience
patients | pause paws | pea pee | peace piece | peak peek | pedal petal | plain plane | poor
pour pore | pray prey | principal principle | rain reign rein | raise rays | rap wrap | read red
| real reel | right write | ring wring | road rode | role roll | root route | rose rows | sail
sale | sauce source | scene seen | sea see | seam seem | sew so sow | shoe shoo | side sighed |
sight site cite | soar sore | sole soul | some sum | son sun | stair stare | stairs stares |
stake steak | stationary stationery | steal steel | straight strait | suite sweet | tail tale |
tea tee | team teem | tents tense | threw through | throne thrown | tide tied | toad towed | toe
tow | vain vein | vary very | wade weighed | wail whale | waist waste | wait weight | wander
wonder | war wore | warn worn | way weigh | we wee | weak week | weather whether | which witch |
wood would | yoke yolk | advice advise | angel angle | lay lie | thing think | ride write | walk
work | live leave | cloth clothe | later latter | loss lost | trail trial | quit quiet | sink
think | sing thing | tree three | then den | bus buzz | chef chief | coma comma | dose does |
finally finely | hear here | hour our | its it's | eye i | hopping hoping | dinning dining |
staring starring | planed planned | scared scarred | pined pinned | caned canned | taped tapped
| bead beed | stile style | vale veil | cheap cheep | pleas please | bolder boulder | cellar
seller | colonel kernel | core corps | cue queue | cymbal symbol | days daze | dual duel | earn
urn | fawn faun | flair flare | foul fowl | frees freeze | grease greece | grisly grizzly | hail
hale | hostel hostile | idle idol | jam jamb | key quay | lane lain | leak leek | levee levy |
links lynx | lightening lightning | manner manor | marshal martial | medal meddle metal | minor
miner | naval navel | packed pact | palate palette | pole poll | pact packed | pi pie | pride
pried | prince prints | profit prophet | sleigh slay | slow sloe | stalk stock | steak stake |
tacks tax | tear tier | time thyme | toes tows | told tolled | vile vial | wax whacks | wheel
we'll | where wear | whine wine | world whirled | wrote rote | hire higher | ball bawl | band
banned | been bin | bite byte | boy buoy | bow bough | cash cache | chord cord | click clique |
crews cruise | dew do due | fare fair | faze phase | gnome nome | guys guise | heroes heroin |
jeans genes | knit nit | lie lye | mind mined | moor more | mall maul | nay neigh | pale pail |
peel peal | peer pier | plum plumb | praise prays | presence presents | quarts quartz | rapped
wrapped | rye wry | seas seize | serf surf | sink sync | spade spayed | tease teas tees |
tire tyre | trussed trust | turn tern | two too | wales whales | weave we've | wheeled wield |
wrung rung | ink inc | dock doc | pick pic | gym jim | sing singh
"""
"""Words that are taken for one another: groups apart by bars."""

GOES_WITH = {
    "feet": "cold shoes socks wet walk toes hurt boots sore legs muddy two my",
    "flour": (
        "bake baked bakes baking cook cake bread cup cups dough recipe sugar mix cookies muffins "
        "pancakes bag stir mixed eggs"
    ),
    "flower": (
        "garden vase pick picked bloom bloomed petals bee bees smell smelled water watered plant "
        "planted grow grew red pink yellow pretty bouquet spring stem"
    ),
    "sun": (
        "hot sky shine shines shining shone hot bright moon rise rose set sets warm planets earth "
        "heat light clouds"
    ),
    "son": "father mother dad mom daughter parents baby king queen her his their my",
    "meat": "eat ate cook cooked beef chicken dinner grill butcher vegetarian steak",
    "deer": "woods forest antlers saw animal animals field ran leap fawn hunter",
    "pear": "eat ate fruit apple apples juicy tree peach ripe",
    "pair": "shoes socks gloves mittens pants glasses scissors skates boots of",
    "sail": "boat wind ship sea lake sailed",
    "sale": "store buy for price garage yard bake toys shop",
    "mail": "letter letters box mailbox stamp post carrier package deliver",
    "male": "female lion bird animal",
    "tail": "dog cat wag wagged monkey fluffy horse animal long squirrel puppy",
    "tale": "fairy story told folk tall tell listened",
    "hair": "brush brushed comb long short curly brown cut wash washed head",
    "hare": "tortoise rabbit",
    "night": "dark moon stars sleep bed last tonight dream owl",
    "knight": "castle armor horse king sword dragon brave shining",
    "whale": "ocean sea blue swim swam",
    "dessert": "eat ate cake ice pie dinner sweet chocolate",
    "desert": "sand hot dry camel cactus",
    "plane": "flew fly airport pilot sky trip",
    "stairs": "climb climbed up down walk walked ran fell",
    "piece": "of cake pizza paper pie puzzle bread",
    "peace": "war quiet",
    "creek": "fish water swam frog",
    "beach": "sand ocean shell shells waves swim",
    "bear": "woods honey cub cave forest den brown polar",
    "steak": "eat ate dinner grill",
    "ant": "hill bug insect tiny crawled picnic",
    "aunt": "uncle cousin my visit visited",
    "toe": "stub stubbed foot hurt",
    "cereal": "milk bowl breakfast ate eat",
    "bee": "honey hive sting stung buzz buzzed flower",
    "cent": "penny coin",
    "scent": "smell rose",
    "principal": "school office teacher",
    "nose": "face run runny smell blow sneeze",
    "maid": "clean cleaned",
    "oar": "boat row rowed",
    "pail": "water sand shovel milk carried",
    "pale": "face skin",
    "pane": "window glass",
    "pain": "hurt felt leg",
    "pause": "stop button",
    "paws": "dog cat puppy kitten bear muddy",
    "petal": "flower rose",
    "pedal": "bike bicycle",
    "rain": "wet clouds umbrella storm puddle",
    "read": "book books story",
    "road": "car drive drove street truck",
    "rode": "bike horse bus",
    "seller": "shop",
    "steel": "metal iron bridge",
    "wood": "tree trees cut fire build saw",
    "week": "days last next",
    "weak": "strong sick",
    "waist": "belt",
    "weight": "heavy pounds",
    "berry": "eat ate blue pick",
    "hole": "dig dug deep ground in",
    "whole": "the pizza class day family cake",
    "heel": "shoe foot",
    "herd": "cows cattle sheep",
    "horse": "ride rode barn saddle",
    "hoarse": "voice throat",
    "moose": "antlers woods",
    "mane": "lion horse",
    "dairy": "milk cow cows cheese",
    "diary": "write wrote writes",
    "angel": "wings snow",
    "angle": "degrees right triangle",
    "boulder": "rock huge",
    "symbol": "flag map",
    "metal": "steel iron magnet",
    "medal": "won gold race winner",
    "witch": "broom spell cat hat",
    "fur": "soft cat dog",
    "fir": "tree trees",
    "root": "plant tree",
    "route": "map bus",
    "throne": "king queen sat",
    "reindeer": "sleigh",
    "sleigh": "snow bells",
}

# What the lexicon has and a school does not: uses that no prompt will make.
NEVER = {
    "blue": {"VB"},
    "red": {"VB"},
    "see": {"N"},
    "be": {"N"},
    "meet": {"N", "A"},
    "hare": {"VB"},
    "pear": {"VB"},
    "weak": {"VB", "N"},
    "week": {"A"},
    "deer": {"A"},
    "dear": {"VB"},
    "sun": {"VB"},
    "son": {"VB"},
    "nose": {"VB"},
    "sea": {"A"},
    "one": {"VB"},
    "won": {"N"},
    "new": {"VB", "N"},
    "ate": {"N"},
    "eight": {"VB"},
    "would": {"N"},
    "wood": {"VB", "A"},
    "tale": {"VB"},
    "hole": {"VB"},
    "whole": {"VB"},
    "made": {"N"},
    "maid": {"VB"},
    "road": {"VB"},
    "rode": {"N"},
    "threw": {"N"},
    "through": {"N", "VB"},
    "knew": {"N"},
    "sell": {"N"},
    "cell": {"VB"},
    "beat": {"A"},
    "flew": {"N"},
    "grown": {"N"},
    "heard": {"N"},
    "write": {"N"},
    "know": {"N"},
    "horse": {"VB"},
    "hoarse": {"VB"},
    "meat": {"VB"},
    "plain": {"VB"},
    "peace": {"VB"},
    "aunt": {"VB"},
    "bee": {"VB"},
    "night": {"VB"},
    "pail": {"VB"},
    "mane": {"VB"},
    "seen": {"N"},
    "choose": {"N"},
    "lose": {"N"},
    "build": {"N"},
    "guest": {"VB"},
    "great": {"VB"},
    "high": {"VB"},
    "hi": {"N"},
    "led": {"N"},
    "sent": {"N"},
    "cent": {"VB"},
    "wore": {"N"},
    "war": {"VB"},
    "hymn": {"VB"},
    "lesson": {"VB"},
    "morning": {"VB", "VBG"},
    "sore": {"VB"},
    "some": {"N"},
    "weigh": {"N"},
    "way": {"VB", "A"},
    "breathe": {"N"},
    "breath": {"VB"},
    "advise": {"N"},
    "advice": {"VB"},
    "loose": {"VB", "N", "R"},
    "main": {"VB", "N"},
    "past": {"VB"},
    "passed": {"N", "A"},
    "allowed": {"A"},
    "cheap": {"VB"},
    "tied": {"N"},
    "tide": {"VB"},
    "steak": {"VB"},
    "toad": {"VB"},
    "bread": {"VB"},
    "fair": {"VB"},
    "beach": {"VB"},
    "feet": {"VB"},
    "fur": {"VB"},
    "hair": {"VB"},
    "male": {"VB"},
    "whale": {"VB"},
    "witch": {"VB"},
    "ant": {"VB"},
    "bury": {"N"},
    "berry": {"VB"},
    "clothes": {"VBZ"},
    "close": {"N"},
    "scene": {"VB"},
    "steal": {"N"},
    "steel": {"VB"},
    "weight": {"VB"},
    "sale": {"VB"},
    "waist": {"VB"},
    "knows": {"N"},
    "throne": {"VB"},
    "thrown": {"N", "A"},
    "wander": {"N"},
    "dough": {"VB"},
    "find": {"N"},
    "forth": {"N", "A"},
    "fourth": {"R"},
    "meddle": {"N"},
    "pie": {"VB"},
    "pour": {"N"},
    "poor": {"N"},
    "pray": {"N"},
    "real": {"N", "R"},
    "sew": {"N"},
    "soar": {"N"},
    "stairs": {"VBZ"},
    "die": {"N"},
    "add": {"N"},
    "chews": {"N"},
    "accept": {"N"},
    "except": {"VB"},
    "sight": {"VB"},
    "weave": {"N"},
    "sing": {"N"},
    "told": {"N"},
    "wrote": {"N"},
    "please": {"N"},
}
ALSO = {
    "would": {"F"},
    "whether": {"F"},
    "left": {"A"},
    "hi": {"F"},
    "eight": {"N", "A"},
    "four": {"N", "A"},
    "whole": {"A"},
    "fourth": {"A"},
    "main": {"A"},
}
