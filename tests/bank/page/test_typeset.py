"""The faces: what they have, and that only they are used."""

import unicodedata

import pytest

from bank.page import (
    FACES,
    LearnerPage,
    PageQuestion,
    ProofItem,
    binder_pages,
    key_pdf,
    proof_sheet,
    strips,
)
from bank.page.typeset import OTHER_FACES, SYMBOLS, Copy


def test_the_last_face_has_every_symbol_that_is_said_to_be_in_it(day, read):
    """A missing letter is found in the file as U+0000 by pypdf, whatever was asked for."""
    every = [
        chr(code)
        for low, high in SYMBOLS
        for code in range(low, high + 1)
        if unicodedata.name(chr(code), "")
    ]
    rows = ["".join(every[at : at + 60]) for at in range(0, len(every), 60)]
    page = LearnerPage("K4", questions=tuple(PageQuestion(row) for row in rows))
    sheets = read(binder_pages(day, [page]))
    assert [character for character in every if character not in sheets] == []
    assert "\0" not in sheets.text
    assert "DejaVuSansMono" in sheets.faces()


@pytest.mark.parametrize("face", FACES)
def test_a_beginners_letters_are_in_both_faces(face):
    copy = Copy()
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ abcdefghijklmnopqrstuvwxyz 0123456789 ‘’“”–—…½°éñü"
    assert copy.text(letters, face, "here") == letters
    assert copy.problems == ()


def test_every_kind_of_paper_is_a_tagged_document_by_the_standard(day, learners, read):
    """The typesetter checks PDF/UA-1 (ISO 14289-1) and marks only what passes; read by pypdf."""
    for made in (
        binder_pages(day, learners),
        strips(day, learners),
        strips(day, learners, wall=True),
        key_pdf(day, learners),
        proof_sheet(day, [ProofItem("topic", "Tell about snow.", ("K4",))]),
    ):
        sheets = read(made)
        root = sheets.reader.trailer["/Root"]
        assert b"<pdfuaid:part>1</pdfuaid:part>" in root["/Metadata"].get_data(), made.files[0].name
        assert root["/MarkInfo"]["/Marked"] and "/StructTreeRoot" in root
        assert root["/ViewerPreferences"]["/DisplayDocTitle"]


def test_the_same_day_gives_the_same_bytes_whenever_it_is_printed(day, learners):
    for make in (binder_pages, strips, key_pdf):
        assert make(day, learners).files == make(day, learners).files


def test_a_face_that_lacks_many_characters_is_one_line_not_many():
    copy = Copy()
    copy.text("Жил-был у бабушки серенький козлик", FACES[0], "K4")
    (line,) = copy.problems
    assert line.startswith("K4: ABeeZee lacks Ж (cyrillic capital letter zhe), ")
    assert line.endswith(" more: set in Noto Sans")
    assert OTHER_FACES[-1] not in line
