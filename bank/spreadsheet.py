"""What spreadsheets do to a file of rows, and what keeps a file safe from them.

They write other encodings and other separators, add empty cells, take a cell that begins like a
formula for one, and read letters with accents wrongly unless the file says that it is UTF-8.
"""

from __future__ import annotations

import codecs
import re
import shutil
from pathlib import Path

from bank.item import BankError

SPREADSHEETS = (".xlsx", ".xls", ".ods", ".numbers")


def separator(header: str) -> str:
    """What stands between the cells: a comma, or what spreadsheets write where that is the decimal mark.

    >>> separator("kind;text;theme"), separator("text")
    (';', ',')
    """
    return max(",;\t", key=header.count)


def without_empty_end(cells: list[str]) -> list[str]:
    """The cells without the empty ones at the end, which spreadsheets like to add."""
    filled = [number for number, cell in enumerate(cells, start=1) if cell.strip()]
    return cells[: filled[-1]] if filled else []


def refuse_other_encodings(path: Path) -> None:
    """Raise `BankError` naming what the file is written in, where that is not UTF-8."""
    try:
        with path.open("rb") as file:
            start = file.read(4)
            for mark, name in (
                (codecs.BOM_UTF32_LE, "UTF-32"),
                (codecs.BOM_UTF32_BE, "UTF-32"),
                (codecs.BOM_UTF16_LE, "UTF-16"),
                (codecs.BOM_UTF16_BE, "UTF-16"),
            ):
                if start.startswith(mark):
                    raise BankError(f"{path.name} is written in {name}; save it as CSV UTF-8")
            file.seek(0)
            decoder = codecs.getincrementaldecoder("utf-8")()
            line = 1
            while chunk := file.read(1 << 20):
                try:
                    decoder.decode(chunk)
                except UnicodeDecodeError as error:
                    line += error.object[: error.start].count(b"\n")
                    byte = error.object[error.start]
                    raise BankError(
                        f"{path.name} is not UTF-8: line {line} has the byte 0x{byte:02X}"
                        " (perhaps Windows-1252); save it as CSV UTF-8"
                    ) from None
                line += chunk.count(b"\n")
            decoder.decode(b"", final=True)
    except UnicodeDecodeError:
        raise BankError(
            f"{path.name} ends in the middle of a letter; save it as CSV UTF-8"
        ) from None
    except OSError as error:
        raise BankError(f"{path} cannot be read: {error.strerror or error}") from error


_FORMULA = re.compile(r"'*[=+\-@\t]")


def guarded(cell: str) -> str:
    """A cell that a spreadsheet shows as text, even where it begins like a formula."""
    return "'" + cell if _FORMULA.match(cell) else cell


def unguarded(cell: str) -> str:
    """What `guarded` was given.

    >>> unguarded(guarded("=1+1")), unguarded(guarded("'=1")), unguarded("'tis")
    ('=1+1', "'=1", "'tis")
    """
    return cell[1:] if cell.startswith("'") and _FORMULA.match(cell) else cell


def read_text(path: Path) -> str:
    """The text of a file in UTF-8, with or without its mark; `BankError` says what it is instead."""
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        encoding = "CSV UTF-8" if path.suffix.lower() in SPREADSHEETS else "UTF-8"
        raise BankError(f"{path.name} is not written in UTF-8; save it as {encoding}") from None
    except OSError as error:
        raise BankError(f"{path} cannot be read: {error.strerror or error}") from error


def mark_as_utf8(path: Path) -> None:
    """Put the mark before the file by which spreadsheets know UTF-8, where it has letters that need it."""
    with path.open("rb") as file:
        if all(chunk.isascii() for chunk in iter(lambda: file.read(1 << 20), b"")):
            return
        file.seek(0)
        marked = path.with_name(path.name + ".marked")
        with marked.open("wb") as copy:
            copy.write(codecs.BOM_UTF8)
            shutil.copyfileobj(file, copy)
    marked.replace(path)
