"""The specialist's check: what is wrong in the bank or a file, mended with a key press each."""

from __future__ import annotations

import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import typer

from bank.classroom_check import Prompt
from bank.item import KINDS, BankError
from cli.common import (
    DONE,
    IN_PART,
    JSON,
    SPECIALIST,
    add_commands,
    console,
    print_json,
    progress,
    say,
    use_bank,
)

MOST_SHOWN = 50
_KEYS = "Enter: do it   2-6: another word   e: type it anew   k: keep as it is   n: next   q: stop"


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, SPECIALIST, {"check": check, "object": set_aside}, only)


def check(
    path: Path = typer.Argument(
        None,
        metavar="[FILE]",
        help="A file of prompts (a line each, .csv or .jsonl); else the bank.",
    ),
    fix: bool = typer.Option(False, "--fix", help="Walk through them and mend each with a key."),
    kind: str = typer.Option("", "--kind", help="The kind of prompts that do not say it."),
    certain: bool = typer.Option(False, "--must-fix", help="Only what must be fixed."),
    limit: int = typer.Option(MOST_SHOWN, "--limit", help="At most so many; 0 for all."),
    as_json: bool = JSON,
) -> int:
    """List what is wrong in the bank or a file of prompts, worst first; exit code 1 if it must be fixed.

    Example: binderbank check --fix
    """
    if kind and kind not in KINDS:
        raise BankError(f"{kind!r} is no kind; it is one of {', '.join(KINDS)}")
    if fix and as_json:
        raise BankError("--fix asks and --json does not; say one of them")
    if path is not None:
        return _check_file(path, kind, fix, certain, limit, as_json)
    from bank.classroom_check import mend_item, of_bank, of_item, worst_first

    with use_bank() as bank:
        items = bank.items
        if bank.store.writable and items.stale():
            with progress("levelling and checking", items.stale()) as step:
                items.relevel(progress=step)
        found = _chosen(worst_first(of_bank(items)), certain)
        if fix:
            return _walk(
                [one for one in found if not one.accepted],
                lambda one, text, finding: mend_item(items, one.id, text, finding),
                lambda one, reason: of_item(items.accept(one.id, reason)),
            )
    return _list(found, limit, as_json)


def _check_file(path: Path, kind: str, fix: bool, certain: bool, limit: int, as_json: bool) -> int:
    from bank.classroom_check import PromptFile, worst_first

    file = PromptFile(path, kind)
    found = _chosen(worst_first(file.prompts()), certain)
    if not fix:
        return _list(found, limit, as_json)
    try:
        return _walk(found, lambda one, text, _: file.mend(one, text), None)
    finally:
        if file.changed:
            file.save()
            say(f"{path} is written anew")


def _chosen(found: list[Prompt], certain: bool) -> list[Prompt]:
    return [one for one in found if one.must_fix] if certain else found


def _list(found: list[Prompt], limit: int, as_json: bool) -> int:
    must = sum(1 for one in found if one.must_fix)
    if as_json:
        shown = found[:limit] if limit else found
        print_json({"must_fix": must, "found": len(found), "prompts": [p.to_dict() for p in shown]})
        return IN_PART if must else DONE
    if not found:
        say("nothing found")
        return DONE
    from cli.show import show_findings

    screen = console()
    for one in found[:limit] if limit else found:
        say(f"{one.name}  {one.text}")
        show_findings(screen, one.text, one.findings)
        if one.accepted:
            say(f"  accepted: {one.accepted}")
    say(f"{len(found)} with findings, {must} of them must be fixed")
    if limit and len(found) > limit:
        say(f"the first {limit}; --limit 0 shows all")
    return IN_PART if must else DONE


Mend = Callable[[Prompt, str, Any], Prompt]
Accept = Callable[[Prompt, str], Prompt]


def _walk(found: list[Prompt], mend: Mend, accept: Accept | None) -> int:
    """One finding after the other; what is mended is checked again before the next is asked."""
    if not found:
        say("nothing found")
        return DONE
    say(_KEYS)
    done = _Walked(len(found))
    try:
        for prompt in found:
            _mend_one(prompt, mend, accept, done)
            done.looked_at += 1
    except EOFError:
        _end_line()
    except KeyboardInterrupt:
        _end_line()
        done.report()
        raise
    return done.report()


@dataclass(slots=True)
class _Walked:
    """How far a walk has come."""

    prompts: int
    looked_at: int = 0
    mended: int = 0

    def report(self) -> int:
        left = self.prompts - self.looked_at
        say(
            f"{self.mended} mended"
            + (f", {left} of {self.prompts} still to look at" if left else "")
        )
        return IN_PART if left else DONE


def _mend_one(prompt: Prompt, mend: Mend, accept: Accept | None, done: _Walked) -> None:
    """Ask about each finding of one prompt; `EOFError` where the person stops."""
    passed: set[tuple[str, str]] = set()
    while finding := _next_finding(prompt, passed):
        _ask(prompt, finding, f"{done.looked_at + 1}/{done.prompts}")
        key = _key()
        if key == "q":
            raise EOFError
        if key == "k" and accept is not None:
            reason = _typed("why is it right as it is? ")
            if reason:
                accept(prompt, reason)
                return
            continue
        text = _new_text(prompt, finding, key)
        if text is None:
            passed.add(_same(prompt, finding))
            continue
        try:
            prompt = mend(prompt, text, finding if key != "e" else None)
            done.mended += 1
        except BankError as error:
            say(f"  {error}", to_errors=True)
            passed.add(_same(prompt, finding))


def _same(prompt: Prompt, finding: dict[str, Any]) -> tuple[str, str]:
    return finding["code"], prompt.text[finding["start"] : finding["end"]]


def _next_finding(prompt: Prompt, passed: set[tuple[str, str]]) -> dict[str, Any] | None:
    """The next to ask about, what must be fixed first; what was passed over is not asked again."""
    waiting = sorted(prompt.findings, key=lambda finding: not finding["certain"])
    return next((one for one in waiting if _same(prompt, one) not in passed), None)


def _ask(prompt: Prompt, finding: dict[str, Any], where: str) -> None:
    say(f"{where}  {prompt.name}  {prompt.text}")
    wrong = prompt.text[finding["start"] : finding["end"]]
    place = f' at "{wrong}"' if wrong else ""
    say(f"  {finding['on_screen']} ({finding['code']}){place}: {finding['message']}")
    if finding["suggestion"] is not None:
        offered = [finding["suggestion"], *finding.get("others", [])[:5]]
        say("  " + "   ".join(f"{n}: {one or '(take it out)'}" for n, one in enumerate(offered, 1)))


def _new_text(prompt: Prompt, finding: dict[str, Any], key: str) -> str | None:
    """The text that a key asks for; None where it leaves it as it is."""
    from bank.classroom_check import applied

    if key == "e":
        return _typed("new text: ") or None
    offered = [finding["suggestion"], *finding.get("others", [])[:5]]
    if key in ("\r", "\n", "y"):
        key = "1"
    if key.isdigit() and 0 < int(key) <= len(offered) and offered[int(key) - 1] is not None:
        return applied(prompt, finding, offered[int(key) - 1])
    return None


def _key() -> str:
    """One key press; without a terminal the first letter of a line, and `q` at the end."""
    if sys.stdin.isatty():
        return str(typer.getchar()).lower()
    line = sys.stdin.readline()
    return line.strip().lower()[:1] or "\n" if line else "q"


def _typed(question: str) -> str:
    if sys.stdin.isatty():
        return input(question).strip()
    return sys.stdin.readline().strip()


def _end_line() -> None:
    if sys.stdout.isatty():
        sys.stdout.write("\n")  # a question may stand there, unfinished


def set_aside(
    item_id: str = typer.Argument(..., metavar="ITEM", help="The item's id."),
    reason: str = typer.Argument(
        None, metavar="[REASON]", help="Why: a learner was upset, it is wrong, two answers."
    ),
    back: bool = typer.Option(False, "--back", help="Take the objection away again."),
    as_json: bool = JSON,
) -> int:
    """Set an item aside on the spot: it goes back to draft with the reason; what asks the same is listed.

    Example: binderbank object q0001 "it has two answers"
    """
    if not back and not (reason or "").strip():
        raise BankError("say why in a few words, so that the next person can mend it")
    with use_bank() as bank:
        items = bank.items
        item = items.change(item_id, objection="") if back else items.set_aside(item_id, reason)
        twins = [bank.items.get(other) for other in bank.items.twins(item.id)]
    if as_json:
        print_json(
            {"id": item.id, "state": item.state, "objection": item.objection,
             "twins": [{"id": one.id, "text": one.text, "state": one.state} for one in twins]}
        )  # fmt: skip
        return DONE
    if back:
        say(f"{item.id} is {item.state} again: {item.text}")
        return DONE
    say(f"{item.id} is set aside, a draft: {item.text}")
    say(f"  the reason: {item.objection}")
    for one in twins:
        say(f"  asks the same, {one.state}: {one.id}  {one.text}")
    return DONE
