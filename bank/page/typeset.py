"""The one place that talks to the typesetter: faces, characters, pictures, and the PDF itself.

Texts reach the layout as JSON, never as markup, so that no character of an item can be taken for a
command. Only faces that come with packages are used; those of the machine are left out.
"""

from __future__ import annotations

import datetime as dt
import json
import unicodedata
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Final

from bank.page.content import FACES, Picture

# PDF/UA-1, ISO 14289-1: text in reading order, headings, words for pictures, title and language; the
# typesetter refuses to call a file so that lacks one of them.
ACCESSIBLE: Final = "ua-1"
# Where the chosen face lacks a character the next one that has it is used. The last comes inside
# the typst package; it is here for arrows, boxes, stars and the like.
OTHER_FACES = ("Atkinson Hyperlegible", "ABeeZee", "Noto Sans", "DejaVu Sans Mono")
SYMBOLS = (
    (0x2190, 0x2213),  # arrows, signs of mathematics
    (0x2260, 0x2269),  # unequal, at most, at least
    (0x2500, 0x262F),  # boxes, shapes, weather, stars
    (0x2638, 0x268B),  # faces, chess, cards, music, dice
    (0x270C, 0x2727),  # hands, ticks, crosses
)
NO_FACE_HAS_IT = "\N{WHITE SQUARE}"
NO_BREAK_SPACE = "\N{NO-BREAK SPACE}"
NAMED_AT_MOST = 4
# Characters that take no room on paper and would hide in a text: soft hyphens, joiners, marks of
# direction. They are dropped; every other character is printed.
_UNSEEN = frozenset(("Cf", "Cc", "Cs", "Co", "Cn"))


@lru_cache(maxsize=1)
def _font_files() -> dict[str, Path]:
    import fontpkg

    return {face: Path(str(fontpkg.path(face))) for face in (*FACES, "Noto Sans")}


def face_bytes(face: str) -> bytes:
    """The font file of a face, to be embedded in the board."""
    return _font_files()[face].read_bytes()


@lru_cache(maxsize=1)
def _fonts() -> Any:
    import typst

    folders = [str(path.parent) for path in _font_files().values()]
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=True, font_paths=list(folders)
    )


@lru_cache(maxsize=8)
def _characters(face: str) -> frozenset[int]:
    """The characters that a face has."""
    if face == OTHER_FACES[-1]:
        # That one is inside the compiled typesetter, where its table cannot be read; the tests
        # print every character of these blocks.
        return frozenset(code for low, high in SYMBOLS for code in range(low, high + 1))
    from fontTools.ttLib import TTFont

    return frozenset(TTFont(_font_files()[face], lazy=True).getBestCmap())


class Copy:
    """Texts on their way to a layout: cleaned, and a line for what had to be set otherwise."""

    def __init__(self) -> None:
        self._lines: list[str] = []
        self._elsewhere: dict[str, dict[str, str]] = {}
        self._met: dict[tuple[str, str, str], dict[str, None]] = {}

    def tell(self, line: str) -> None:
        """Adds a line about something that went wrong."""
        self._lines.append(line)

    @property
    def problems(self) -> tuple[str, ...]:
        """All lines: what was told, then one for each place and face that lacked characters."""
        return (*self._lines, *(_lacking_line(*key, list(met)) for key, met in self._met.items()))

    def lacking(self) -> dict[str, list[list[str]]]:
        """For each face, the other faces and the characters that they stand in for."""
        return {
            face: [
                [other, "".join(c for c, home in homes.items() if home == other)]
                for other in dict.fromkeys(homes.values())
            ]
            for face, homes in self._elsewhere.items()
        }

    def text(self, text: str, face: str, where: str) -> str:
        """`text` as it can be printed in `face`; `where` begins the line about its characters."""
        if text.isascii() and text.isprintable():
            return text
        clean = "".join(
            " " if character.isspace() and character != NO_BREAK_SPACE else character
            for character in unicodedata.normalize("NFC", text)
            if character.isspace() or unicodedata.category(character) not in _UNSEEN
        )
        return "".join(self._printable(character, face, where) for character in clean)

    def _printable(self, character: str, face: str, where: str) -> str:
        code = ord(character)
        if code < 0x7F or code in _characters(face):
            return character
        for other in OTHER_FACES:
            if code in _characters(other):
                self._elsewhere.setdefault(face, {})[character] = other
                self._met.setdefault((where, face, other), {})[character] = None
                return character
        self._elsewhere.setdefault(face, {})[NO_FACE_HAS_IT] = OTHER_FACES[-1]
        self._met.setdefault((where, face, ""), {})[character] = None
        return NO_FACE_HAS_IT


def _lacking_line(where: str, face: str, other: str, characters: list[str]) -> str:
    named = [
        f"{character} ({unicodedata.name(character, f'U+{ord(character):04X}').lower()})"
        for character in characters[:NAMED_AT_MOST]
    ]
    if len(characters) > NAMED_AT_MOST:
        named.append(f"{len(characters) - NAMED_AT_MOST} more")
    lacks = f"{where}: {face} lacks {', '.join(named)}"
    return f"{lacks}: set in {other}" if other else f"{lacks}, as do all faces here: an empty box"


class Pictures:
    """The pictures that a layout needs, each under a file name."""

    def __init__(self) -> None:
        self.files: dict[str, bytes] = {}
        self._names: dict[bytes, str] = {}

    def add(self, picture: Picture) -> dict[str, str]:
        """What the layout is told about a picture."""
        name = self._names.get(picture.data)
        if name is None:
            ending = "jpg" if picture.kind == "jpeg" else picture.kind
            name = f"picture-{len(self._names)}.{ending}"
            self._names[picture.data] = name
            self.files[name] = picture.data
        return {"file": name, "words": picture.words, "credit": picture.credit}


@contextmanager
def _world(
    layout: str, data: dict[str, Any], copy: Copy, pictures: Pictures | None
) -> Iterator[dict[str, Any]]:
    """A folder of layout and pictures, which the typesetter wants as files, and the data."""
    with TemporaryDirectory() as folder:
        root = Path(folder)
        for name in (f"{layout}.typ", "common.typ"):
            (root / name).write_bytes((files("bank.page") / "layout" / name).read_bytes())
        for name, content in (pictures.files if pictures else {}).items():
            (root / name).write_bytes(content)
        yield {
            "input": str(root / f"{layout}.typ"),
            "root": folder,
            "font_paths": _fonts(),
            "ignore_system_fonts": True,
            "sys_inputs": {
                "data": json.dumps({**data, "elsewhere": copy.lacking()}, ensure_ascii=False)
            },
        }


def typeset(
    layout: str, data: dict[str, Any], copy: Copy, pictures: Pictures | None = None
) -> bytes:
    """The PDF of `layout` filled with `data`; `ValueError` where the typesetter refuses it.

    The file says that it was made at midnight of the day that it is for (`data["iso"]`), so that
    the same day gives the same bytes on every machine.
    """
    import typst

    made_at = dt.datetime.fromisoformat(data["iso"]).replace(tzinfo=dt.UTC)
    with _world(layout, data, copy, pictures) as world:
        made: bytes
        try:
            made = typst.compile(**world, format="pdf", timestamp=made_at, pdf_standards=ACCESSIBLE)
        except RuntimeError:
            # A text that the standard forbids is still worth a page.
            try:
                made = typst.compile(**world, format="pdf", timestamp=made_at)
            except RuntimeError as wrong:
                raise ValueError(f"the typesetter stopped: {wrong}") from wrong
    return made


def ask(
    layout: str, data: dict[str, Any], label: str, copy: Copy, pictures: Pictures | None = None
) -> list[Any]:
    """The values that `layout` marks with `label` when it is filled with `data`."""
    import typst

    with _world(layout, data, copy, pictures) as world:
        try:
            found: list[Any] = json.loads(
                typst.query(**world, selector=f"<{label}>", field="value")
            )
        except RuntimeError as wrong:
            raise ValueError(f"the typesetter stopped: {wrong}") from wrong
    return found
