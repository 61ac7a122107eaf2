"""How a learner's page looks: face, size, ruled lines, and what stands beside a question."""

from __future__ import annotations

from typing import Any

import typer

from cli.common import JSON, console, counted, print_json, table, use_bank


def learner_page(
    code: str = typer.Argument("", metavar="[CODE]", help="The learner; left out, all of them."),
    face: str = typer.Option("", "--face", help="ABeeZee or Atkinson Hyperlegible."),
    size: float = typer.Option(0.0, "--size", help="Points, 14 to 36.", show_default=False),
    lines: str = typer.Option("", "--lines", help="plain, dotted or wide."),
    count: int = typer.Option(0, "--line-count", help="Lines for an answer.", show_default=False),
    height: float = typer.Option(
        -1.0, "--line-height", help="Millimetres; 0: the usual.", show_default=False
    ),
    starters: bool = typer.Option(
        None, "--starters/--no-starters", help="Sentence starters where an item has one."
    ),
    word_boxes: bool = typer.Option(
        None, "--word-boxes/--no-word-boxes", help="Word boxes where an item has one."
    ),
    as_json: bool = JSON,
) -> int:
    """Show or change how a learner's page looks; what is not named stays.

    Example: binderbank learner page K4 --lines dotted --size 22
    """
    from bank.classroom_paper import checked_page_settings, page_settings

    said: dict[str, Any] = {
        "face": face or None,
        "size": size or None,
        "lines": lines or None,
        "line_count": count or None,
        "line_height": height if height >= 0 else None,
        "starters": starters,
        "word_boxes": word_boxes,
    }
    changes = {name: value for name, value in said.items() if value is not None}
    with use_bank() as bank:
        shown = [bank.learners.get(code)] if code else list(bank.learners)
        if changes:
            changed = [checked_page_settings(one, changes) for one in shown]
            shown = [bank.learners.change(one.code, support=one.support) for one in changed]
    if as_json:
        print_json({"pages": [{"learner": one.code, **page_settings(one)} for one in shown]})
        return 0
    rows = table("code", "face", "size", "lines", "answer", "beside it", keep=(0, 2, 3, 4))
    for one in shown:
        is_now = page_settings(one)
        beside = [
            words
            for name, words in (("starters", "starters"), ("word_boxes", "word boxes"))
            if is_now[name]
        ]
        rows.add_row(
            one.code,
            is_now["face"],
            f"{is_now['size']:g} points",
            is_now["lines"] + (f", {is_now['line_height']:g} mm" if is_now["line_height"] else ""),
            counted(is_now["line_count"], "line"),
            ", ".join(beside) or "-",
        )
    console().print(rows)
    return 0
