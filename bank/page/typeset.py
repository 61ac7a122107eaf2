"""The one place that talks to the typesetter: faces, characters, pictures, and the PDF itself.

Texts reach the layout as JSON, never as markup, so that no character of an item can be taken for a
command. Only faces that come with packages are used; those of the machine are left out.
"""

from __future__ import annotations

import json
import unicodedata
from functools import lru_cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from bank.page.content import FACES, Picture

# Where the chosen face lacks a character the next one that has it is used. The last comes inside
# the typst package; it knows arrows, boxes and ticks.
FALLBACK_FACES = ("Atkinson Hyperlegible", "ABeeZee", "Noto Sans", "DejaVu Sans Mono")
NO_FACE_HAS_IT = "\N{WHITE SQUARE}"
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
    from fontTools.ttLib import TTFont

    return frozenset(TTFont(_font_files()[face], lazy=True).getBestCmap())


@lru_cache(maxsize=1)
def _last_characters() -> frozenset[int]:
    """Those of the wanted characters that the face inside typst has, asked of the typesetter.

    The face is inside the compiled package, so its table cannot be read; these blocks are the ones
    it is known for (DejaVu Sans Mono 2.37), less what the tests find missing.
    """
    blocks = (
        (0x2190, 0x21FF),
        (0x2200, 0x22EF),
        (0x25A0, 0x25FF),
        (0x2600, 0x2638),
        (0x2701, 0x2704),
    )
    return frozenset(code for low, high in blocks for code in range(low, high + 1))


class Copy:
    """Texts on their way to a layout: cleaned, and a line for each character in another face."""

    def __init__(self) -> None:
        self.problems: list[str] = []
        self._told: set[tuple[str, str]] = set()

    def text(self, text: str, face: str, where: str) -> str:
        """`text` as it can be printed in `face`; `where` begins the line about a character."""
        clean = "".join(
            character
            for character in unicodedata.normalize("NFC", text).replace("\n", " ")
            if unicodedata.category(character) not in _UNSEEN
        )
        if clean.isascii():
            return clean
        return "".join(self._printable(character, face, where) for character in clean)

    def _printable(self, character: str, face: str, where: str) -> str:
        code = ord(character)
        if code < 0x7F or code in _characters(face):
            return character
        name = unicodedata.name(character, f"U+{code:04X}").lower()
        for other in FALLBACK_FACES:
            known = _last_characters() if other == FALLBACK_FACES[-1] else _characters(other)
            if code in known:
                self._tell(
                    where, character, f"{name}, {character}, is not in {face}: set in {other}"
                )
                return character
        self._tell(where, character, f"no face has {name}, {character}: an empty box stands for it")
        return NO_FACE_HAS_IT

    def _tell(self, where: str, character: str, line: str) -> None:
        if (where, character) not in self._told:
            self._told.add((where, character))
            self.problems.append(f"{where}: {line}")


class Pictures:
    """The pictures that a layout needs, each under a file name inside the typesetter's world."""

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


def _sources(layout: str) -> dict[str, bytes]:
    folder = files("bank.page") / "layout"
    return {
        "main": (folder / f"{layout}.typ").read_bytes(),
        "common.typ": (folder / "common.typ").read_bytes(),
    }


def _world(layout: str, data: dict[str, Any], pictures: Pictures | None) -> dict[str, Any]:
    return {
        "input": {**_sources(layout), **(pictures.files if pictures else {})},
        "font_paths": _fonts(),
        "ignore_system_fonts": True,
        "sys_inputs": {
            "data": json.dumps({**data, "fallback": list(FALLBACK_FACES)}, ensure_ascii=False)
        },
    }


def typeset(layout: str, data: dict[str, Any], pictures: Pictures | None = None) -> bytes:
    """The PDF of `layout` filled with `data`; `ValueError` where the typesetter refuses it."""
    import typst

    try:
        made: bytes = typst.compile(**_world(layout, data, pictures), format="pdf")
    except typst.TypstError as wrong:
        raise ValueError(f"the typesetter stopped: {wrong}") from wrong
    return made


def ask(
    layout: str, data: dict[str, Any], label: str, pictures: Pictures | None = None
) -> list[Any]:
    """The values that `layout` marks with `label` when it is filled with `data`."""
    import typst

    found: list[Any] = json.loads(
        typst.query(**_world(layout, data, pictures), selector=f"<{label}>", field="value")
    )
    return found
