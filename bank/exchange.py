"""CSV and JSON Lines, in and out: rows of a spreadsheet and the items they stand for.

A row that comes in becomes a `Row`: its number, the fields that its columns give, and the first thing
wrong with it. A cell that a spreadsheet would take for a formula goes out with an apostrophe before
it and comes back as it was.
"""

from __future__ import annotations

import csv
import hashlib
import json
import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain
from pathlib import Path
from typing import Any

from bank.item import (
    KINDS,
    LONGEST_TEXT,
    QUESTION_WORDS,
    STATES,
    BankError,
    Item,
    Season,
    Version,
    as_seen,
    check_id,
    clean_text,
)
from bank.spreadsheet import (
    guarded,
    mark_as_utf8,
    refuse_other_encodings,
    separator,
    unguarded,
    without_empty_end,
)

# A faulty version may be a little longer than the sentence that it is made from.
LONGEST_FAULTY = 400
LONGEST_CELL = 4_000_000
MOST_CHOICES, FEWEST_CHOICES = 4, 2
BAR, SEMICOLON = " | ", "; "
FORMATS = ("csv", "jsonl")


@dataclass(frozen=True, slots=True)
class Row:
    """One row that came in. `wrong` is (column, reason) where it cannot be an item."""

    number: int
    cells: Mapping[str, Any]
    fields: Mapping[str, Any] = field(default_factory=dict)
    wrong: tuple[str, str] | None = None


def _is_blank(cell: Any) -> bool:
    return not as_seen(str(cell)).strip()


def _line(what: str, longest: int = LONGEST_TEXT) -> Callable[[Any], str]:
    return lambda cell: "" if _is_blank(cell) else clean_text(str(cell), what, longest)


def _several(
    separator: str, what: str, longest: int = LONGEST_TEXT
) -> Callable[[Any], tuple[str, ...]]:
    def read(cell: Any) -> tuple[str, ...]:
        parts = cell if isinstance(cell, list) else str(cell).split(separator.strip())
        return tuple(clean_text(str(part), what, longest) for part in parts if not _is_blank(part))

    return read


def _one_of(what: str, allowed: Sequence[str]) -> Callable[[Any], str]:
    def read(cell: Any) -> str:
        value = str(cell).strip().lower()
        if value and value not in allowed:
            raise BankError(f"{value[:40]!r} is no {what}; it is one of {', '.join(allowed)}")
        return value

    return read


def _grade(cell: Any) -> float | None:
    if cell is None or str(cell).strip() == "":
        return None
    said = str(cell).strip()
    try:
        grade = 0.0 if said.upper() == "K" else float(said)
    except ValueError:
        raise BankError(f"{said[:40]!r} is no reading grade; write K or a number to 12") from None
    if not 0 <= grade <= 12:
        raise BankError(f"a reading grade lies between 0 (K) and 12, not {grade:g}")
    return grade


def _json(cell: Any) -> Any:
    if isinstance(cell, dict | list):
        return cell
    if not str(cell).strip():
        return {}
    try:
        return json.loads(cell)
    except ValueError:
        raise BankError("this cell is written by the program; leave it as it is or empty") from None


def _choices(cell: Any) -> tuple[str, ...]:
    choices = _several(BAR, "a choice")(cell)
    if choices and not FEWEST_CHOICES <= len(choices) <= MOST_CHOICES:
        many = "choice" if len(choices) == 1 else "choices"
        raise BankError(f"{len(choices)} {many}; there are 2 to 4, with | between them")
    return choices


def _seasons(cell: Any) -> tuple[Season, ...]:
    return tuple(Season.parse(part) for part in _several(SEMICOLON, "a season")(cell))


def _themes(cell: Any) -> tuple[str, ...]:
    return tuple(theme.lower() for theme in _several(SEMICOLON, "a theme", 40)(cell))


def _versions(cell: Any) -> tuple[Version, ...]:
    return tuple(Version(text) for text in _several(BAR, "a faulty version", LONGEST_FAULTY)(cell))


def _digests(cell: Any) -> tuple[str, ...]:
    return tuple(re.findall(r"[0-9a-f]{10}", str(cell)))


@dataclass(frozen=True, slots=True)
class Column:
    """One column: what it holds (for the help), how a cell is read, and how a value is written."""

    name: str
    field: str
    holds: str
    read: Callable[[Any], Any]
    write: Callable[[Any], Any] = lambda value: value


def _id(cell: Any) -> str:
    return check_id(str(cell).strip()) if str(cell).strip() else ""


def _number_or_empty(value: float | None) -> Any:
    return "" if value is None else value


def _json_or_empty(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False) if value else ""


def _all_faulty(versions: Sequence[Version]) -> str:
    return BAR.join(version.faulty for version in versions)


def _joined(separator: str) -> Callable[[Any], str]:
    return lambda value: separator.join(map(str, value))


COLUMNS = {
    column.name: column
    for column in (
        Column("id", "id", "stable id; empty for a new item", _id),
        Column("kind", "kind", "question, sentence, topic or sort", _one_of("kind", KINDS)),
        Column("text", "text", "the item; for a sentence the corrected one", _line("the text")),
        Column("state", "state", "draft, ready or retired", _one_of("state", STATES)),
        Column("theme", "themes", "main theme, further ones after ;", _themes, _joined(SEMICOLON)),
        Column("question_word", "question_word", "who, what, ... yes-no, choice, tell", _one_of("question word", QUESTION_WORDS)),
        Column("answer", "answer", "the expected answer, where there is one", _line("the answer")),
        Column("choices", "choices", "2 to 4 choices with | between", _choices, _joined(BAR)),
        Column("starter", "starter", "a sentence starter", _line("the starter")),
        Column("words", "words", "words for a word box with | between", _several(BAR, "a word"), _joined(BAR)),
        Column("season", "seasons", "MM-DD..MM-DD, several with ; between", _seasons, _joined(SEMICOLON)),
        Column("picture", "picture", "a picture word or picture file", _line("the picture")),
        Column("faulty", "versions", "faulty versions, easiest first, with | between", _versions, _all_faulty),
        Column("note", "notes", "notes with | between", _several(BAR, "a note"), _joined(BAR)),
        Column("source", "source", "where the item is from", _line("the source")),
        Column("author", "author", "who wrote it", _line("the author")),
        Column("level_as", "level_as", "a specialist's own placement", _grade, _number_or_empty),
        Column("as_is", "as_is", "why it is ready in spite of a finding", _line("the reason")),
        Column("objection", "objection", "why someone set it aside", _line("the objection")),
        Column("grade", "grade", "the computed level", _grade, _number_or_empty),
        Column("low", "low", "the low end of its range", _grade, _number_or_empty),
        Column("high", "high", "the high end of its range", _grade, _number_or_empty),
        Column("method", "method", "the version of the method", _line("the method")),
        Column("history", "history", "written by the program, for exchange", _digests, _joined(" ")),
        Column("sort", "sort", "a word sort, written by the program", _json, _json_or_empty),
        Column("computed", "computed", "written by the program", _json, _json_or_empty),
    )
}  # fmt: skip
# What a person writes: two items that agree in these are the same item.
CONTENT = tuple(
    name
    for name in COLUMNS
    if name not in ("id", "grade", "low", "high", "method", "history", "computed")
)
PLAIN = tuple(name for name in COLUMNS if name not in ("history", "computed"))
# What the first line of a person's sheet may name.
WRITTEN = tuple(name for name in CONTENT if name not in ("sort", "objection")) + ("id",)
REFUSED_COLUMNS = ("row", "column", "reason")


def computed_of(item: Item) -> dict[str, Any]:
    """What was computed for an item, so that it can travel where the method is the same."""
    return {
        "formulas": item.formulas,
        "reasons": item.reasons,
        "findings": item.findings,
        "ask": item.ask,
        "twins": list(item.twins),
        "fixes": [list(version.fixes) for version in item.versions],
    }


def cells_of(item: Item) -> dict[str, Any]:
    """An item as a row: its cells by column."""
    values = {
        name: column.write(getattr(item, column.field))
        for name, column in COLUMNS.items()
        if name != "computed"
    }
    return {**values, "computed": COLUMNS["computed"].write(computed_of(item))}


def digest(item: Item) -> str:
    """Ten letters that stand for what a person wrote in the item."""
    content = [str(COLUMNS[name].write(getattr(item, COLUMNS[name].field))) for name in CONTENT]
    return hashlib.sha256("\x1f".join(content).encode()).hexdigest()[:10]


def read_cells(number: int, cells: Mapping[str, Any]) -> Row:
    """The fields that a row's cells give, or the first thing wrong with it."""
    fields: dict[str, Any] = {}
    for name, cell in cells.items():
        try:
            fields[COLUMNS[name].field] = COLUMNS[name].read("" if cell is None else cell)
        except BankError as error:
            return Row(number, cells, {}, (name, str(error)))
        except RecursionError:
            return Row(number, cells, {}, (name, "this cell is too deep"))
    if not fields.get("text"):
        return Row(number, cells, {}, ("text", "the text is empty"))
    return Row(number, cells, fields)


def read_rows(path: Path, skip_unknown: bool = False) -> Iterator[Row]:
    """The rows of a CSV or JSON Lines file, one after the other; `BankError` for a file that is neither.

    `skip_unknown` leaves out the columns of a CSV that the bank has no place for.
    """
    kind = format_of(path)
    refuse_other_encodings(path)
    with path.open(encoding="utf-8-sig", newline="") as lines:
        yield from _read_json_lines(lines) if kind == "jsonl" else _read_csv(lines, skip_unknown)


def format_of(path: Path, instead: str = "save it as CSV UTF-8") -> str:
    """`csv` or `jsonl` by the ending of the file's name."""
    ending = path.suffix.lower().lstrip(".")
    if ending in ("jsonl", "ndjson"):
        return "jsonl"
    if ending == "csv":
        return "csv"
    raise BankError(f"{path.name} is neither .csv nor .jsonl; {instead}")


def _read_csv(lines: Iterable[str], skip_unknown: bool = False) -> Iterator[Row]:
    csv.field_size_limit(LONGEST_CELL)
    lines = iter(lines)
    first = next(lines, "")
    reader = csv.reader(chain([first], lines), delimiter=separator(first), strict=True)
    try:
        header = [name.strip().lower() for name in without_empty_end(next(reader, []))]
        left_out = _left_out(header, skip_unknown)
        _check_header([name for name in header if name not in left_out])
        for number, cells in enumerate(reader, start=2):
            cells = without_empty_end(cells)
            if not cells:
                continue
            if len(cells) > len(header):
                named = dict(zip(header, cells, strict=False))
                reason = (
                    f"the row has {len(cells)} cells, the header {len(header)}; a text with a comma"
                    " in it stands in quotation marks"
                )
                yield Row(number, named, {}, (header[-1], reason))
                continue
            cells += [""] * (len(header) - len(cells))
            pairs = [pair for pair in zip(header, cells, strict=True) if pair[0] not in left_out]
            if not any(cell.strip() for _, cell in pairs) or _is_empty_frame(dict(pairs)):
                continue
            yield read_cells(number, {name: unguarded(cell) for name, cell in pairs})
    except csv.Error as error:
        open_quote = (
            "; a quotation mark is opened and not closed" if "end of data" in str(error) else ""
        )
        raise BankError(
            f"the CSV cannot be read near line {reader.line_num}: {error}{open_quote}"
        ) from error


def _left_out(header: Sequence[str], skip_unknown: bool) -> frozenset[str]:
    """The columns that nothing is read from: those of a file of refused rows, and unknown ones if asked."""
    mine = REFUSED_COLUMNS if tuple(header[: len(REFUSED_COLUMNS)]) == REFUSED_COLUMNS else ()
    return frozenset(mine) | {name for name in header if skip_unknown and name not in COLUMNS}


def _is_empty_frame(cells: Mapping[str, str]) -> bool:
    """Whether the row comes from a sheet of what to write and is still to be written."""
    return not cells.get("text", "").strip() and cells.get("note", "").startswith("frame:")


def _check_header(header: Sequence[str]) -> None:
    if not any(header):
        raise BankError("the file is empty; its first line names the columns, at least: kind,text")
    unknown = [name for name in header if name not in COLUMNS]
    if unknown:
        import difflib

        near = difflib.get_close_matches(unknown[0], PLAIN, n=1)
        hint = f"did you mean {near[0]}?" if near else f"known are {', '.join(WRITTEN)}"
        raise BankError(
            f"the first line names the columns, and the bank has no column {unknown[0][:40]!r};"
            f" {hint} (--skip-unknown leaves such columns out)"
        )
    if "text" not in header:
        raise BankError("the header has no column text; the first line names the columns")
    doubled = {name for name in header if header.count(name) > 1}
    if doubled:
        raise BankError(f"the header names the column {min(doubled)} twice")


def _read_json_lines(lines: Iterable[str]) -> Iterator[Row]:
    for number, line in enumerate(lines, start=1):
        if not line.strip():
            continue
        try:
            cells = json.loads(line)
        except (ValueError, RecursionError):
            yield Row(number, {"text": line.strip()[:200]}, {}, ("", "the line is no JSON"))
            continue
        if not isinstance(cells, dict):
            yield Row(number, {"text": line.strip()[:200]}, {}, ("", "the line is no JSON object"))
            continue
        unknown = [name for name in cells if name not in COLUMNS]
        if unknown:
            reason = f"there is no column {unknown[0][:40]!r}"
            yield Row(number, {}, {}, (unknown[0][:40], reason))
            continue
        yield read_cells(number, cells)


def write_rows(path: Path, items: Iterable[Item], columns: Sequence[str] = tuple(COLUMNS)) -> int:
    """Write the items to a CSV or JSON Lines file, whole or not at all; returns how many."""
    kind, count = format_of(path, f"name it {path.stem}.csv"), 0
    part = path.with_name(path.name + ".part")
    try:
        with part.open("w", encoding="utf-8", newline="") as file:
            writer = csv.writer(file, lineterminator="\r\n")
            if kind == "csv":
                writer.writerow(columns)
            for item in items:
                cells = cells_of(item)
                if kind == "csv":
                    writer.writerow([guarded(str(cells[name])) for name in columns])
                else:
                    kept = {name: cells[name] for name in columns}
                    file.write(json.dumps(kept, ensure_ascii=False) + "\n")
                count += 1
        if kind == "csv":
            mark_as_utf8(part)
        part.replace(path)
    except OSError as error:
        part.unlink(missing_ok=True)
        raise BankError(f"cannot write {path}: {error.strerror or error}") from error
    except BaseException:
        part.unlink(missing_ok=True)
        raise
    return count


def write_refused(path: Path, rows: Sequence[Row]) -> None:
    """Write refused rows with their number, column and reason, and their cells as they came."""
    names = list(dict.fromkeys(name for row in rows for name in row.cells))
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)
        writer.writerow([*REFUSED_COLUMNS, *names])
        for row in rows:
            column, reason = row.wrong or ("", "")
            cells = [guarded(str(row.cells.get(name, ""))) for name in names]
            writer.writerow([row.number, column, reason, *cells])
    mark_as_utf8(path)
