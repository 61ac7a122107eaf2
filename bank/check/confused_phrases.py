"""Words that sound alike, told apart by the one word before or behind: ate o'clock, the plain flew."""

from __future__ import annotations

from functools import cache

from bank.check.confused_help import wrong_word
from bank.check.engine import Found, on_words
from bank.check.reading import Reading

# What stands before, the word, what stands behind, and the word that is meant. A dash is anything, ^ the
# start of a sentence, $ the end of one or a mark.
_PHRASES = """
the | beech | $ and in with all today for | beach
good this early every monday's the | mourning | $ class everyone boys and we i is was | morning
^ | deer | grandma grandpa mom dad aunt uncle mrs mr ms miss sir santa teacher friend | dear
my a our | deer | friend friends grandma aunt uncle | dear
at until by before after about | ate | o'clock thirty | eight
i we he she they you | eight | my our the a his her their all some too two lunch dinner breakfast it | ate
is are am was turned turns be | for | years | four
i we he she they never just | herd | a the my it about that him her them you from | heard
a the big huge whole | heard | of | herd
stuffed teddy polar grizzly mama papa | bare | $ at and in with was is came ran sat cub for | bear
a the brown black big polar | bare | ate ran saw slept is was cub growls growled lives climbed | bear
my your his her their in with | bear | feet foot hands legs arms toes | bare
a need take took lunch recess short snack | brake | $ for from now at and | break
the a | plain | flew landed took ride ticket to leaves trip | plane
by on a | plain | $ trip ride | plane
will to please | brake | the a my your it | break
don't not to never | waist | paper time food water money it your our any the | waste
^ please to | weight | for here until in your | wait
of from cut chop stack pile burn the some more | would | $ and for with in is was floor pile stove | wood
how very so too jump jumps jumped up | hi | $ can up in is do into | high
i'm is am are was were get got feel felt very so | board | $ on when in with because during and today | bored
the on white | bored | $ and is was at in with | board
an half one this each per | our | $ ago and of before later early to long a | hour
a | not | in on around with | knot
^ please to then will can and | poor | the a some your my it milk water juice more | pour
its his her muddy four dirty the | pause | $ and are were off | paws
bird birds it they he she plane bee bees owl robin duck ducks geese | flu | away over to into up out past in around off | flew
the a | flew | shot season $ and so | flu
brother sister we they team he she mom dad i | one | the | won
long his her its lion's horse's | main | $ is was and | mane
^ the a on | mane | street road idea door thing room character | main
had eat ate cooked grilled like for | stake | $ for and with dinner | steak
eat ate have had want wants for like chocolate our | desert | $ after for and first with today is was | dessert
in the across hot dry | dessert | $ sand is was sun has cactus | desert
window door | pain | $ is was | pane
the our | principle | announced spoke visits asked called says comes | principal
the our | principle | came said is was of will has told walked visited talked | principal
class he she we i they car bus team | past | the a my our us by | passed
walked drove ran went flew rode walk drive go right | passed | the a my our us by | past
a long big new paper the | role | of | roll
best worst busy longest hardest whole first last | weak | $ of in ever at and | week
a an red pink | rows | $ and in for | rose
up down the climbed | stares | $ to and are were quickly | stairs
door too | two | $ | too
me you him her us them it | two | $ | too
ate eat fairy told tell tells folk tall | tail | $ about to of by and | tale
its his her the dog's cat's long | tale | $ wagged is was when and | tail
my your her his their brush | hare | $ is was every and into | hair
a in the our that this deep small little | creak | $ to and is was behind for near | creek
the a | flour | smells bloomed grew pot garden petals | flower
set raise | sale | $ boat | sail
a the | sale | boat boats | sail
for on garage | sail | $ at this today | sale
i we you they he she | knead | a the my to your help some more | need
with in a the | prays | $ | praise
over to | pear | of | pair
a the one each | pear | of | pair
i we he she they you'll we'll | sea | the a my you it him her how what | see
can can't to will did you do | sea | the a my you it him her $ how what from | see
in the deep blue by | see | $ | sea
the a my | see | shore water shell turtle lion star horse | sea
i we you he she they | wood | like love be go want not never | would
who what | wood | you we like they he she | would
a the his | nose | how what that the | knows
he she who mom dad nobody everyone | nose | how what that the where when my it | knows
^ please to | right | a your my the about to down me | write
can will should must to i we | right | a my your the about it them down | write
the turn | write | $ answer way side now time hand shoe foot one place | right
the a to | rode | $ is was to and | road
i we he she they | road | my a the his her our bikes horses in on to | rode
my your his her a the | sell | phone | cell
i he she they we mom dad | cent | a the me my him her it you us | sent
one five ten | scent sent | $ | cent
the her his my our their | ant | and made baked lives gave drove visited took called lou | aunt
an a the tiny little red | aunt | hill crawled crawls farm | ant
how | grate | $ is it | great
you we i they not is are was were be he she never | aloud | to in on inside outside | allowed
a the | piece | treaty agreement talks sign symbol | peace
knight cowboy boy girl rider king queen prince he she they who | road | his her a the my their across into through | rode
a so very really is was | grate | $ day job time big friend and for | great
very my | dairy | every | diary
^ only the these those about last first other | to | of | two
back home over school remember show down up | were | i you we they he she it | where
team class he she who they we school boys girls group side | one | by | won
^ | right | with about a your the | write
i we you they | right | with in letters poems stories notes songs | write
teacher mom dad he she i we you they grandma grandpa aunt uncle | red | us me him her them the a my our about aloud to | read
eat ate have had for after before make made cook cooked our my his her | diner | $ at with and we i tonight is every | dinner
the a | night | wore rode fought knelt | knight
the a red big old | bran | $ door roof is was with and | barn
my her his old | genes | $ are were | jeans
"""
_MARKS = ".!?,;:"


@cache
def _table() -> dict[str, list[tuple[frozenset[str], frozenset[str], str]]]:
    table: dict[str, list[tuple[frozenset[str], frozenset[str], str]]] = {}
    for line in _PHRASES.strip().splitlines():
        before, words, behind, right = (part.strip() for part in line.split("|"))
        if right == "-":
            continue
        for word in words.split():
            row = (frozenset(before.split()), frozenset(behind.split()), right)
            table.setdefault(word, []).append(row)
    return table


@on_words(" ".join(_table()))
def word_that_its_neighbours_tell(r: Reading, i: int) -> Found:
    """The word before and the word behind leave one meaning.

    >>> show("I wake up at ate o'clock. The plain flew away.")
    ['homophone: ate -> eight', 'homophone: plain -> plane']
    >>> show("We ate at eight o'clock. The plane flew over the plain.")
    []
    """
    before = "^" if r.first[i] else r.before(i) or r.lower[i - 1] * (r.gap[i - 1] == ", ")
    ends = i + 1 == r.n or r.gap[i].lstrip('"”')[:1] in _MARKS and bool(r.gap[i].strip())
    behind = "$" if ends else r.after(i)
    for befores, behinds, right in _table()[r.lower[i]]:
        if before in befores and behind in behinds:
            return wrong_word(r, i, right)
    return None
