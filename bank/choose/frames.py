"""A sheet of what to write: one row for each item that would make the bank last longer.

The specialist fills the column `text`; `import` takes the sheet back and passes over rows that are
still empty.
"""

from __future__ import annotations

import csv
import re
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path

from bank.choose.stock import MORE, Lasting
from bank.item import BankError
from bank.store import Store

COLUMNS = ("kind", "text", "theme", "question_word", "note")
FRAME = "frame:"  # how the note of a row that is still to be written begins
WORDS_EACH = 6
TOO_COMMON = 6.0  # Zipf: words of every text, which help nobody to begin
Frame = dict[str, str]


def frame_rows(store: Store, ahead: Sequence[Lasting]) -> list[Frame]:
    """For each slot that runs out, ten rows with theme, question word, level and words to use."""
    rows = []
    for one in ahead:
        if one.steps_down is None:
            continue
        themes = _thin_themes(store, one.kind, one.grade)
        for number in range(MORE):
            theme = themes[number % len(themes)] if themes else ""
            level = "K" if one.grade == 0 else f"grade {one.grade}"
            words = ", ".join(_words(store, theme, one.grade))
            note = f"{FRAME} {level}" + (f"; words: {words}" if words else "")
            rows.append(
                {
                    "kind": one.kind,
                    "text": "",
                    "theme": theme,
                    "question_word": one.short_of,
                    "note": note,
                }
            )
    return rows


def write_frames(path: Path, rows: Iterable[Frame]) -> int:
    """Write the sheet as CSV; returns how many rows. A sheet that is there already is refused: it may be
    half filled.
    """
    if path.exists():
        raise BankError(f"{path} is there already; name another file")
    if path.suffix.lower() != ".csv":
        raise BankError(f"{path.name} is no .csv; name the sheet so")
    count = 0
    try:
        with path.open("w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, COLUMNS)
            writer.writeheader()
            for row in rows:
                writer.writerow(row)
                count += 1
    except OSError as error:
        raise BankError(f"cannot write {path}: {error.strerror or error}") from error
    return count


def _thin_themes(store: Store, kind: str, grade: int) -> list[str]:
    """The themes of the bank, those with least of this kind and grade first."""
    rows = store.rows(
        "SELECT theme, sum(kind = ? AND CAST(grade AS INTEGER) = ?) AS here FROM shelf"
        " WHERE theme <> '' GROUP BY theme HAVING count(*) > 4 ORDER BY here, theme LIMIT ?",
        (kind, grade, MORE),
    )
    return [row["theme"] for row in rows]


def _words(store: Store, theme: str, grade: int) -> list[str]:
    """Words that easy items of the theme use, the most used first."""
    from bank.language import zipf

    rows = store.rows(
        "SELECT item.text FROM shelf JOIN item ON item.id = shelf.item"
        " WHERE shelf.theme = ? AND shelf.grade <= ? LIMIT 200",
        (theme, grade + 1),
    )
    # "don't" is no word to begin with, nor is a half of it.
    found = (word for row in rows for word in re.findall(r"[a-z'\u2019]+", row[0].lower()))
    counts = Counter(word for word in found if re.fullmatch(r"[a-z]{3,}", word))
    return [word for word, _ in counts.most_common(60) if zipf(word) < TOO_COMMON][:WORDS_EACH]
