"""Which words are names: people, places, days, months, holidays, languages.

The lists are common knowledge, arranged here. A word that lemminflect's lexicon does not have and
that symspellpy's list or wordfreq does is taken for a name, too: the lexicon leaves names out.
"""

from __future__ import annotations

import re
from functools import cache

from bank.check.lexicon import lemmas, listed_words, word_set, zipf

DAYS = word_set("monday tuesday wednesday thursday friday saturday sunday")
MONTHS = word_set("january february april june july august september october november december")
HOLIDAYS = word_set(
    "christmas thanksgiving halloween easter hanukkah kwanzaa ramadan diwali passover"
)
PEOPLES = word_set(
    """american english spanish french german italian chinese japanese korean mexican canadian
    african asian european indian russian irish greek roman british dutch swedish norwegian danish
    polish portuguese arabic hebrew latin vietnamese thai turkish egyptian australian brazilian
    cuban hawaiian alaskan navajo cherokee muslim christian jewish hindu buddhist catholic"""
)
STATES = word_set(
    """alabama alaska arizona arkansas california colorado connecticut delaware florida georgia
    hawaii idaho illinois indiana iowa kansas kentucky louisiana maine maryland massachusetts
    michigan minnesota mississippi missouri montana nebraska nevada ohio oklahoma oregon
    pennsylvania tennessee texas utah vermont virginia washington wisconsin wyoming carolina dakota
    jersey mexico york hampshire"""
)
COUNTRIES = word_set(
    """america canada mexico brazil peru chile argentina cuba haiti jamaica england scotland ireland
    france spain portugal italy germany austria switzerland poland sweden norway denmark finland
    iceland russia ukraine greece egypt kenya nigeria ghana morocco ethiopia israel
    iran iraq india pakistan nepal japan korea vietnam thailand philippines indonesia australia
    africa asia europe antarctica netherlands belgium hungary romania syria lebanon somalia sudan
    colombia venezuela ecuador guatemala honduras nicaragua panama bolivia paraguay uruguay"""
)
CITIES = word_set(
    """london paris rome madrid berlin tokyo dublin moscow athens cairo sydney toronto chicago
    boston denver dallas houston austin seattle portland atlanta miami detroit cleveland
    philadelphia baltimore pittsburgh minneapolis milwaukee memphis nashville orlando tampa tucson
    tulsa omaha sacramento oakland honolulu anchorage albany savannah charleston louisville
    cincinnati columbus indianapolis vegas francisco angeles antonio orleans vancouver montreal
    boise topeka lansing springfield salem augusta trenton annapolis olympia juneau"""
)
# Names that are also words (may, mark, rose) are not here: only their place shows what they are.
PEOPLE = word_set(
    """aaron abby abdul adam adrian ahmed aisha alan albert alex alexander alice alicia aliyah
    allison alyssa amanda amelia amina amir amy ana andre andrea andrew angela angelo anita ann anna
    anne anthony antonio ariana arthur asha ashley aubrey ava avery barbara becky ben benjamin
    beth betty bella beatriz bobby bonnie brandon brenda brian brianna bruce caleb cameron
    carla carlos carmen carol caroline carter catherine cathy charles charlie charlotte cheryl
    chloe chris christina christopher cindy claire clara cody connor corey craig cynthia daniel
    daniela danny darius david deborah dennis derek destiny devon diana diego dominic donald donna
    doris dorothy douglas dylan eddie edgar eduardo edward edwin elena eli elijah elizabeth ella ellen
    emilio emily emma enrique eric erica erin ethan eva evan evelyn fatima felix fernando fiona frank
    gabriel gabriela gary gavin george gina gloria gregory hannah harold harry hassan hector
    heather helen henry hugo ian ibrahim imani isaac isabel isabella isaiah ivan jackson
    jacob jake jamal james jamie janet jared jasmine jason javier jayden jeff jeffrey jen jenna
    jennifer jenny jeremy jerry jesse jessica jimmy joan joe joel john johnny jonathan jordan jorge
    jose joseph joshua joey juan juanita judy julia julian julie justin kaitlyn karen karim kate katherine kathy
    katie kayla keisha kelly kenji kenneth kevin khalid kim kimberly kyle laila laura lauren layla leah leo
    leon leslie liam linda lindsay lisa logan lorenzo louis louise lucas lucia lucy luis luke luna lydia mabel madison maggie
    malik manuel marco marcus margaret maria mariah marie mario martha martin marvin mary mateo
    matt matthew max maya megan melissa mia michael michelle miguel mike mila milo miriam mohammed
    molly monica nadia nancy naomi natalie nathan nathaniel nicholas nicole nina noah nora oliver olivia omar
    oscar owen pablo pamela patricia patrick paul paula pedro peter philip phillip priya rachel rafael raj ralph ramon
    raul raymond rebecca ricardo richard ricky robert roberto roger ronald rosa rosie roy ruth ryan
    sabrina sally sam samantha samira samuel sandra sara sarah scott sean sebastian selena sergio seth
    shannon sharon sheila shirley simon sofia sonia sophia sophie stacy stanley stella stephanie stephen steve
    steven stuart susan sylvia tamara tanya teresa terry theo theresa theodore thomas tim timothy tina todd
    tom tommy tony tracy tyler tyrone vanessa vera veronica victor victoria vincent vivian walter wanda
    jasper silas caden kaden aiden brayden hudson wyatt landon carson colton easton parker tucker bryce
    trevor spencer preston marshall desmond terrence lamar deshawn tyrese kiara tiana ciara aaliyah
    nevaeh jada amari imani kendra latoya marisol ximena camila valentina lucia renata paola esteban
    joaquin rafael santiago mateo anya katya dmitri boris ingrid freya astrid soren lars sven mei
    ling hiro yuki akira kenta aiko sakura jin min soo ravi anil sanjay deepa anjali meera kavya rohan
    arjun vikram lakshmi zainab khadija yusra bilal tariq nadira salma rania kofi kwame ama abena
    chidi ngozi amara zuri wayne wendy william xavier yasmin yolanda yusuf zachary zara zoe zoey zack"""
)
TITLES = word_set("mr mrs ms dr")
KNOWN = (
    DAYS
    | MONTHS
    | HOLIDAYS
    | PEOPLES
    | STATES
    | COUNTRIES
    | CITIES
    | PEOPLE
    | word_set(
        "mars saturn jupiter neptune uranus pacific atlantic arctic niagara nile amazon mississippi"
    )
)
# Known names that are also words in small letters.
_ALSO_WORDS = word_set(
    """polish turkey china max august may mark rose will bill jack hope grace art roman
    latin hazel amber ivy lily olive ruby violet jasmine ginger pepper daisy heather brook sandy
    sunny rusty buddy frank mars matt sally tony rocky drew grant chase chuck pat rob sue jean gene
    mobile phoenix buffalo jersey reading bath augusta olympia luna stella carol mercury earth dean
    kelly robin dawn faith joy penny stuart tracy savannah victor ray earl duke cliff dale
    glen miles josh peg dot bob hugo theo carter"""
)


PERSON_NAMES = PEOPLE | word_set(
    "max lily rose ruby daisy pepper jack will mark grace hope faith joy dawn ivy olive violet "
    "hazel amber rusty buddy frank matt sally tony pat rob bob josh jay reed"
)


@cache
def is_name(word: str) -> bool:
    """Whether `word` (small letters) is surely a name, wherever it stands.

    >>> [is_name(w) for w in ("texas", "tuesday", "maya", "turkey", "dog", "jessica", "lunchbox")]
    [True, True, True, False, False, True, False]
    """
    if word in _ALSO_WORDS:
        return False
    return word in KNOWN


_COMMON_ENDING = re.compile(
    r"(ly|ful|able|ible|ing|ed|tion|sion|ment|ness|al|ic|ism|ology|age|ers?|ors?|ists?|ive|ous|teen|teenth|fth|nth|less|ward|wise|ity|ship|hood|where|self|selves|site|phone|book|cast|s)$"
)


@cache
def looks_like_a_name(word: str) -> bool:
    """Whether a word in small letters is known, and left out of the lexicon as names are."""
    if word in _ALSO_WORDS or not word.isalpha() or len(word) < 4 or _COMMON_ENDING.search(word):
        return False
    if lemmas(word) or not (word in listed_words() and zipf(word) >= 2.8):
        return False
    return word not in _PLAIN_WORDS


_PLAIN_WORDS = word_set(
    """lunchbox cannot maybe hello okay yeah wow oops yikes hooray hurray ouch yum yuck shh hmm
    anybody anyone anything everybody everyone everything nobody nothing somebody someone something
    myself yourself himself herself itself ourselves themselves yourselves whom whose hers ours
    yours theirs mine whoever whatever whichever whenever wherever because although though unless
    until without within among amongst toward towards upon onto into during since per via versus
    eight eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty
    forty fifty sixty seventy eighty ninety hundred thousand million billion dozen zero seven three
    this that these those they them their with from where were what when which would could should
    shall might must does have been being"""
)
