"""Use cases of the check: what the bank's items have wrong, and mending them one by one.

The same walk serves a bank and a file of prompts: both are a row of `Prompt`s that can be mended.
"""

from __future__ import annotations

import csv
import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from bank.item import KINDS, BankError, Item, Version
from bank.spreadsheet import mark_as_utf8, read_text, separator

if TYPE_CHECKING:
    from bank.check import Finding
    from bank.classroom_items import Items

Plain = dict[str, Any]


@dataclass(slots=True)
class Prompt:
    """A text with its findings: an item of the bank (`id`) or a line of a file (`line`).

    `accepted` is the reason for which an item is ready in spite of them.
    """

    text: str
    kind: str
    findings: list[Plain] = field(default_factory=list)
    id: str = ""
    line: int = 0
    accepted: str = ""
    themes: list[str] = field(default_factory=list)

    @property
    def must_fix(self) -> int:
        """How many certain findings stand."""
        return 0 if self.accepted else sum(finding["certain"] for finding in self.findings)

    @property
    def name(self) -> str:
        return self.id or f"line {self.line}"

    def to_dict(self) -> Plain:
        place: Plain = {"id": self.id} if self.id else {"line": self.line}
        return {
            **place, "kind": self.kind, "text": self.text, "findings": self.findings,
            "as_is": self.accepted, "themes_to_tag": self.themes,
        }  # fmt: skip


def worst_first(prompts: Iterable[Prompt]) -> list[Prompt]:
    """Those with findings: first what must be fixed, then what was found most often."""
    found = [prompt for prompt in prompts if prompt.findings]
    return sorted(found, key=lambda p: (-p.must_fix, bool(p.accepted), -len(p.findings)))


def of_bank(items: Items) -> Iterator[Prompt]:
    """The items in use, with what was found when they were last checked."""
    for item in items:
        if item.state != "retired":
            yield of_item(item)


def of_item(item: Item) -> Prompt:
    from bank.check import sensitive_themes

    offered = [theme for theme in sensitive_themes(item.text) if theme not in item.themes]
    return Prompt(
        item.text, item.kind, list(item.findings), id=item.id, accepted=item.as_is, themes=offered
    )


def mend_item(items: Items, item_id: str, text: str, finding: Plain | None) -> Prompt:
    """Give an item a mended text; a word that its faulty versions share is mended there, too.

    `BankError` where the text cannot be an item or the bank has it already.
    """
    item = items.get(item_id)
    versions = tuple(Version(_mended_version(item, one.faulty, finding)) for one in item.versions)
    return of_item(items.change(item_id, text=text, versions=versions))


def _mended_version(item: Item, faulty: str, finding: Plain | None) -> str:
    if finding is None or not finding.get("suggestion"):
        return faulty
    wrong = item.text[finding["start"] : finding["end"]]
    if wrong and faulty.count(wrong) == 1 == item.text.count(wrong):
        return faulty.replace(wrong, finding["suggestion"])
    return faulty


class PromptFile:
    """A file of prompts: one on each line, or CSV or JSON Lines with a `text` in each row."""

    def __init__(self, path: Path, kind: str = "") -> None:
        self.path = path
        self.default_kind = kind or "question"
        self.changed = False
        self.ending = path.suffix.lower()
        self.named: dict[str, str] = {}  # columns as the file spells them, by their plain names
        self.rows: list[Any] = list(self._read(read_text(path)))

    def _read(self, raw: str) -> Iterator[Any]:
        if self.ending == ".csv":
            lines = raw.splitlines(keepends=True)
            self.separator = separator(lines[0] if lines else "")
            reader = csv.DictReader(lines, delimiter=self.separator)
            self.columns = list(reader.fieldnames or [])
            self.named = {name.strip().lower(): name for name in self.columns}
            if "text" not in self.named:
                raise BankError(f"{self.path.name} has no column `text`")
            for number, cells in enumerate(reader, start=2):
                if None in cells:
                    raise BankError(f"{self.path.name}: row {number} has more cells than the first")
                yield cells
        elif self.ending in (".jsonl", ".ndjson"):
            for number, line in enumerate(raw.splitlines(), start=1):
                try:
                    row = json.loads(line) if line.strip() else None
                except ValueError as error:
                    raise BankError(
                        f"{self.path.name}: row {number} is no JSON: {error}"
                    ) from error
                if row is not None and not isinstance(row, dict):
                    raise BankError(f"{self.path.name}: row {number} is no JSON object")
                yield row
        else:
            yield from raw.splitlines()

    def prompts(self) -> Iterator[Prompt]:
        """The prompts with what is found in them, in the order of the file."""
        from bank.check import check_many, sensitive_themes

        first = 2 if self.ending == ".csv" else 1
        made = [
            Prompt(text, self._kind(row, number), line=number)
            for number, row in enumerate(self.rows, start=first)
            if (text := self._text(row))
        ]
        for prompt, found in zip(made, check_many((p.text, p.kind) for p in made), strict=True):
            yield replace(
                prompt, findings=[f.to_dict() for f in found], themes=sensitive_themes(prompt.text)
            )

    def _text(self, row: Any) -> str:
        text = row.get(self.named.get("text", "text")) if isinstance(row, dict) else row
        return str(text or "").strip()

    def _kind(self, row: Any, number: int) -> str:
        said = row.get(self.named.get("kind", "kind")) if isinstance(row, dict) else ""
        kind = str(said or "").strip().lower() or self.default_kind
        if kind not in KINDS:
            raise BankError(f"{self.path.name}: row {number}: {kind!r} is no kind")
        return kind

    def mend(self, prompt: Prompt, text: str) -> Prompt:
        """The prompt with a new text, checked again; `save` writes it."""
        from bank.check import check_text

        self.changed = True
        at = prompt.line - (2 if self.ending == ".csv" else 1)
        if isinstance(self.rows[at], dict):
            self.rows[at][self.named.get("text", "text")] = text
        else:
            self.rows[at] = text
        return replace(
            prompt, text=text, findings=[f.to_dict() for f in check_text(text, prompt.kind)]
        )

    def save(self) -> None:
        """Write the file anew; the old one stays until the new one is whole."""
        waiting = self.path.with_name(self.path.name + ".new")
        with waiting.open("w", encoding="utf-8", newline="") as out:
            if self.ending == ".csv":
                writer = csv.DictWriter(out, self.columns, delimiter=self.separator)
                writer.writeheader()
                writer.writerows(self.rows)
            elif self.ending in (".jsonl", ".ndjson"):
                out.writelines(
                    json.dumps(row, ensure_ascii=False) + "\n"
                    for row in self.rows
                    if row is not None
                )
            else:
                out.writelines(line + "\n" for line in self.rows)
        if self.ending == ".csv":
            mark_as_utf8(waiting)
        waiting.replace(self.path)


def applied(prompt: Prompt, finding: Plain, suggestion: str | None = None) -> str:
    """The text of `prompt` with the suggestion of one finding, or another, in its place."""
    from bank.check import apply

    return apply(prompt.text, as_finding(finding, suggestion))


def as_finding(finding: Plain, suggestion: str | None = None) -> Finding:
    from bank.check import Finding

    return Finding(
        finding["code"], finding["start"], finding["end"], finding["message"],
        finding["suggestion"] if suggestion is None else suggestion, finding["certain"],
        tuple(finding.get("others", ())),
    )  # fmt: skip
