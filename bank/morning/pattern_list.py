"""The patterns that come with the tool, in the order in which they are usually taught.

The choice and the order are common practice in teaching spelling; the headings are our own.
"""

from __future__ import annotations

from bank.morning.patterns import (
    Column,
    Pattern,
    added,
    beats,
    blend,
    closing,
    end,
    ending,
    final_y,
    first_beat,
    long,
    plural_s,
    short,
    sounding,
    start,
    team,
)

_OO_MOON = team("oo", "UW", heading="oo as in moon")
_OO_BOOK = team("oo", "UH", heading="oo as in book")
_OW_SNOW = team("ow", "OW", heading="ow as in snow")
_OW_COW = team("ow", "AW", heading="ow as in down")
_EA_LONG = team("ea", "IY", heading="ea as in team")
_EA_SHORT = team("ea", "EH", heading="ea as in bread")


def _y_to_i(word: str) -> str:
    return word[:-1] + "ies" if word.endswith("y") else word


def _just_ing(word: str) -> str:
    # "Tell" ends in a double letter already, and "tie" changes it.
    return word + "ing" if word[-1:] not in ("e", word[-2:-1]) else word


def _doubled(word: str) -> str:
    return word + word[-1] + "ing" if word[-1] not in "aeiouwxy" else word


def _without_e(word: str) -> str:
    return word[:-1] + "ing" if word.endswith("e") and not word.endswith("ee") else word


def _pattern(code: str, title: str, *columns: Column) -> Pattern:
    return Pattern(code, title, columns)


PATTERNS: tuple[Pattern, ...] = (
    # Short vowels
    _pattern("short-a-i", "short a or short i", short("a"), short("i")),
    _pattern("short-a-o", "short a or short o", short("a"), short("o")),
    _pattern("short-o-u", "short o or short u", short("o"), short("u")),
    _pattern("short-e-i", "short e or short i", short("e"), short("i")),
    _pattern("short-a-e", "short a or short e", short("a"), short("e")),
    _pattern("short-a-i-u", "short a, short i or short u", short("a"), short("i"), short("u")),
    _pattern("short-e-o-u", "short e, short o or short u", short("e"), short("o"), short("u")),
    # Two letters, one sound; letters side by side
    _pattern("ch-sh", "ch or sh at the start", start("ch", "CH"), start("sh", "SH")),
    _pattern("ch-sh-end", "ch or sh at the end", end("ch", "CH"), end("sh", "SH")),
    _pattern("th-sh", "th or sh at the start", start("th", "TH", "DH"), start("sh", "SH")),
    _pattern("th-t", "th or t at the start", start("th", "TH", "DH"), start("t", "T")),
    _pattern("wh-w", "wh or w at the start", start("wh", "W", "HH W"), start("w", "W")),
    _pattern("qu-k", "qu or k at the start", start("qu", "K W"), start("k", "K")),
    _pattern("bl-cl-fl", "bl, cl or fl", blend("bl"), blend("cl"), blend("fl")),
    _pattern("gl-pl-sl", "gl, pl or sl", blend("gl"), blend("pl"), blend("sl")),
    _pattern("br-cr-tr", "br, cr or tr", blend("br"), blend("cr"), blend("tr")),
    _pattern("dr-fr-gr", "dr, fr or gr", blend("dr"), blend("fr"), blend("gr")),
    _pattern("sp-st-sn", "sp, st or sn", blend("sp"), blend("st"), blend("sn")),
    _pattern("nd-nt", "nd or nt at the end", blend("nd", at_end=True), blend("nt", at_end=True)),
    _pattern("nk-ng", "nk or ng at the end", blend("nk", at_end=True), end("ng", "NG")),
    _pattern("mp-st", "mp or st at the end", blend("mp", at_end=True), blend("st", at_end=True)),
    _pattern("ck-k", "ck or k at the end", end("ck", "K"), end("k", "K")),
    _pattern("tch-ch", "tch or ch at the end", end("tch", "CH"), end("ch", "CH")),
    _pattern("ll-ss", "ll or ss at the end", end("ll", "L"), end("ss", "S")),
    # Long vowels
    _pattern("short-long-a", "short a or a_e", short("a"), long("a")),
    _pattern("short-long-i", "short i or i_e", short("i"), long("i")),
    _pattern("short-long-o", "short o or o_e", short("o"), long("o")),
    _pattern("short-long-u", "short u or u_e", short("u"), long("u")),
    _pattern("long-a-i-o", "a_e, i_e or o_e", long("a"), long("i"), long("o")),
    _pattern("ee-short-e", "ee or short e", team("ee", "IY"), short("e")),
    _pattern("ai-ay", "ai or ay", team("ai", "EY"), team("ay", "EY")),
    _pattern("ai-a-e", "ai or a_e", team("ai", "EY"), long("a")),
    _pattern("ee-ea", "ee or ea", team("ee", "IY"), _EA_LONG),
    _pattern("oa-o-e", "oa or o_e", team("oa", "OW"), long("o")),
    _pattern("oa-ow", "oa or ow", team("oa", "OW"), _OW_SNOW),
    _pattern("igh-i-e", "igh or i_e", team("igh", "AY"), long("i")),
    _pattern(
        "y-long-i-e",
        "y as in my or as in happy",
        final_y("AY", 1, "y as in my"),
        final_y("IY", 2, "y as in happy"),
    ),
    # Other vowels
    _pattern("ow-ow", "ow as in snow or as in down", _OW_SNOW, _OW_COW),
    _pattern("ou-ow", "ou or ow", team("ou", "AW"), _OW_COW),
    _pattern("oi-oy", "oi or oy", team("oi", "OY", beats=2), team("oy", "OY", beats=2)),
    _pattern("oo-oo", "oo as in moon or as in book", _OO_MOON, _OO_BOOK),
    _pattern("oo-ew", "oo or ew", _OO_MOON, team("ew", "UW", "Y UW", beats=2)),
    _pattern("ea-ea", "ea as in team or as in bread", _EA_LONG, _EA_SHORT),
    _pattern("aw-all", "aw or all", team("aw", "AO", beats=2), team("all", "AO L")),
    _pattern("ar-or", "ar or or", team("ar", "AA R"), team("or", "AO R")),
    _pattern("ir-ur", "ir or ur", team("ir", "ER", beats=2), team("ur", "ER", beats=2)),
    _pattern(
        "er-ir-ur",
        "er, ir or ur",
        team("er", "ER"),
        team("ir", "ER", beats=2),
        team("ur", "ER", beats=2),
    ),
    _pattern("ar-a", "ar or short a", team("ar", "AA R"), short("a")),
    _pattern("air-are", "air or are", team("air", "EH R", beats=2), team("are", "EH R")),
    _pattern("ore-or", "or or ore", team("or", "AO R"), team("ore", "AO R")),
    _pattern("ear-ea", "ear or ea", team("ear", "IH R"), _EA_LONG),
    # One letter, two sounds; silent letters
    _pattern(
        "hard-soft-c",
        "hard c or soft c",
        sounding("c", "K", "c as in cat"),
        sounding("c", "S", "c as in city"),
    ),
    _pattern(
        "hard-soft-g",
        "hard g or soft g",
        sounding("g", "G", "g as in goat"),
        sounding("g", "JH", "g as in giraffe"),
    ),
    _pattern(
        "ge-dge",
        "ge or dge at the end",
        end("g", "JH", silent_e=True),
        end("dg", "JH", silent_e=True),
    ),
    _pattern("kn-k", "kn or k at the start", start("kn", "N"), start("k", "K")),
    _pattern("wr-r", "wr or r at the start", start("wr", "R"), start("r", "R")),
    # Endings
    _pattern(
        "s-s-z",
        "plural s as in cats or as in dogs",
        plural_s(["S"], "s as in cats"),
        plural_s(["Z"], "s as in dogs"),
    ),
    _pattern(
        "s-es",
        "plural -s or -es",
        plural_s(["S", "Z"], "-s"),
        plural_s(["IH Z", "AH Z"], "-es", es=True),
    ),
    _pattern("s-ies", "plural -s or -ies", plural_s(["S", "Z"], "-s"), added("s", _y_to_i, "-ies")),
    _pattern(
        "ed",
        "-ed with three sounds",
        ending(["T"], "-ed as in jumped"),
        ending(["D"], "-ed as in played"),
        ending(["IH D", "AH D"], "-ed as in wanted"),
    ),
    _pattern(
        "ing",
        "-ing: nothing changes, or the last letter doubles",
        added("ing", _just_ing, "add -ing"),
        added("ing", _doubled, "double the letter"),
    ),
    _pattern(
        "ing-e",
        "-ing: nothing changes, or e goes",
        added("ing", _just_ing, "add -ing"),
        added("ing", _without_e, "drop the e"),
    ),
    # Words of two beats and more
    _pattern("beats-1-2", "one beat or two", beats(1, "one beat"), beats(2, "two beats")),
    _pattern(
        "beats-1-2-3",
        "one, two or three beats",
        beats(1, "one beat"),
        beats(2, "two beats"),
        beats(3, "three beats"),
    ),
    _pattern(
        "shut-open",
        "first beat shut or open",
        first_beat(True, "shut, as in rabbit"),
        first_beat(False, "open, as in tiger"),
    ),
    _pattern("le-er", "-le or -er", closing("le", "AH L"), closing("er", "ER")),
    _pattern("le-y", "-le or -y", closing("le", "AH L"), final_y("IY", 2, "-y")),
)
BY_CODE = {pattern.code: pattern for pattern in PATTERNS}
