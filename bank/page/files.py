"""Saving what was made, and forgetting it again."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from bank.page.content import PageFile

# Files named so are ours to delete; anything else in the folder is somebody's own.
_OURS = re.compile(
    r"\d{4}-\d\d-\d\d-(pages|strips|wall-strips|key|proof|board|turns|job-cards"
    r"|sort-cards|sort-key|building-cards|building-key)(-[A-Za-z0-9-]+)?\.(pdf|html)"
    r"|what-to-print\.txt"
)


def save(files: Sequence[PageFile], folder: Path) -> tuple[list[Path], list[str]]:
    """Writes `files` into `folder`; the paths written, and a line for each that could not be."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except FileExistsError:
        return [], [f"{folder} is a file, not a folder; name another"]
    except OSError as wrong:
        return [], [f"the folder {folder} cannot be made ({wrong.strerror})"]
    written, problems = [], []
    for file in files:
        path = folder / file.name
        try:
            path.write_bytes(file.data)
            written.append(path)
        except OSError as wrong:
            problems.append(f"{path} cannot be written ({wrong.strerror})")
    return written, problems


def forget(folder: Path) -> tuple[list[Path], list[str]]:
    """Deletes the pages, strips, keys, proof sheets and boards in `folder`, and it when left empty.

    Gives the paths deleted, and a line for each that could not be or that is not ours.
    """
    deleted, problems = [], []
    if not folder.is_dir():
        return [], [f"there is no folder {folder}"]
    for path in sorted(folder.iterdir()):
        if not path.is_file() or not _OURS.fullmatch(path.name):
            problems.append(f"{path.name} was not printed from the bank: it stays")
            continue
        try:
            path.unlink()
            deleted.append(path)
        except OSError as wrong:
            problems.append(f"{path} cannot be deleted ({wrong.strerror})")
    if not any(folder.iterdir()):
        folder.rmdir()
    return deleted, problems
