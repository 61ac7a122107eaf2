"""Picture signs of learners: ten plain shapes drawn here, told apart by outline alone."""

from __future__ import annotations

from bank.page.content import Picture

# Each on a square of 100 units, filled; black on white, so that a copier keeps them apart.
_OUTLINES = {
    "circle": "M50 8a42 42 0 1 1-.01 0z",
    "square": "M12 12H88V88H12z",
    "triangle": "M50 8L95 90H5z",
    "star": "M50 4L62 37 97 38 69 60 79 94 50 74 21 94 31 60 3 38 38 37z",
    "heart": "M50 92C18 66 4 50 4 31 4 17 15 8 27 8c10 0 18 5 23 14C55 13 63 8 73 8c12 0 23 9 23 23"
    " 0 19-14 35-46 61z",
    "moon": "M64 6A45 45 0 1 0 95 72 38 38 0 0 1 64 6z",
    "diamond": "M50 3L84 50 50 97 16 50z",
    "cross": "M36 6H64V36H94V64H64V94H36V64H6V36H36z",
    "drop": "M50 4C66 30 82 46 82 65a32 31 0 0 1-64 0C18 46 34 30 50 4z",
    "leaf": "M92 8C40 6 8 30 12 72l-8 18 8 6 9-15C62 88 94 62 92 8z",
}
SHAPES = tuple(_OUTLINES)


def shape_svg(name: str) -> str:
    """The SVG text of a shape; `KeyError` where there is none of that name."""
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">'
        f'<path d="{_OUTLINES[name]}" fill="#111"/></svg>'
    )


def sign_picture(sign: str) -> tuple[Picture, str]:
    """The picture of a sign and an empty line, or the circle and a line that says what is wrong."""
    if sign in _OUTLINES:
        return Picture(shape_svg(sign).encode(), "svg", sign), ""
    from bank.page.pictures import find_pictograms, pictogram

    try:
        found = find_pictograms(sign, most=1)
        if found:
            return pictogram(found[0].number), ""
        reason = f"no shape or pictogram is called {sign!r}"
    except ValueError as missing:
        reason = str(missing)
    return sign_picture("circle")[0], f"{reason}; a circle stands for it"
