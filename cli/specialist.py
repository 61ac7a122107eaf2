"""The specialist's commands: add, bring in, tag, find, place and send out items."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import typer

from bank.item import KINDS, STATES, BankError
from cli.common import (
    DONE,
    IN_PART,
    JSON,
    REFUSED,
    SPECIALIST,
    add_commands,
    console,
    print_json,
    progress,
    read_span,
    say,
    use_bank,
)

ITEM = typer.Argument(..., metavar="ITEM", help="The item's id.")
ITEMS = typer.Argument(..., metavar="ITEM...", help="The items' ids.")


def register(app: typer.Typer, only: str = "") -> None:
    commands: dict[str, Any] = {
        "add": add,
        "import": bring_in,
        "export": send_out,
        "find": find,
        "show": show,
        "tag": tag,
        "change": change,
        "retire": retire,
        "level-as": level_as,
        "relevel": relevel,
        "conflicts": conflicts,
    }
    add_commands(app, SPECIALIST, commands, only)


def add(
    kind: str = typer.Argument(..., metavar="KIND", help="question, sentence, topic or sort."),
    text: str = typer.Argument(
        None, metavar="[TEXT]", help="The item; left out, it is read from standard input."
    ),
    faulty: list[str] = typer.Option([], "--faulty", help="A faulty version of a sentence."),
    choose: str = typer.Option(
        "",
        "--choose",
        help="Which of three faulty versions made for a sentence: 1,3 or all or none.",
    ),
    theme: list[str] = typer.Option([], "--theme", help="A theme; the first is the main one."),
    season: list[str] = typer.Option([], "--season", help="MM-DD..MM-DD."),
    word: str = typer.Option("", "--question-word", help="Where the wording does not show it."),
    answer: str = typer.Option("", "--answer", help="The expected answer."),
    choice: list[str] = typer.Option([], "--choice", help="A choice to circle (2 to 4)."),
    starter: str = typer.Option("", "--starter", help="A sentence starter."),
    words: list[str] = typer.Option([], "--word", help="A word for the word box."),
    picture: str = typer.Option("", "--picture", help="A picture word or file."),
    note: list[str] = typer.Option([], "--note", help="A note."),
    source: str = typer.Option("", "--source", help="Where it is from."),
    author: str = typer.Option("", "--author", help="Who wrote it."),
    as_is: str = typer.Option("", "--as-is", metavar="REASON", help="Ready in spite of a finding."),
    as_json: bool = JSON,
) -> int:
    """Add one item; shows its level, every published formula, what the check found, and its twins.

    Example: binderbank add question "What do bees make?" --theme animals
    """
    if text is None:
        text = sys.stdin.read()
    text = text.strip()
    versions: list[str] = []
    if kind == "sentence" and text and not faulty:
        from cli.making import offered

        versions, faulty = offered(text, choose)
    cells = {
        "kind": kind,
        "text": text,
        "faulty": faulty,
        "theme": theme,
        "season": season,
        "question_word": word,
        "answer": answer,
        "choices": choice,
        "starter": starter,
        "words": words,
        "picture": picture,
        "note": note,
        "source": source,
        "author": author,
        "as_is": as_is,
    }
    with use_bank() as bank:
        item = bank.items.add(**{name: cell for name, cell in cells.items() if cell})
        twins = [bank.items.get(other) for other in bank.items.twins(item.id)]
    if as_json:
        print_json({**item_dict(item, [twin.id for twin in twins]), "offers": versions})
        return DONE
    done = _show(item, twins, as_json, formulas=True)
    if versions and not faulty and not sys.stdin.isatty():
        from cli.making import show_offers

        say(f"faulty versions to choose from (binderbank change {item.id} --faulty ...):")
        show_offers(versions)
    return done


def show(item_id: str = ITEM, as_json: bool = JSON) -> int:
    """Show one item whole: level, formulas, findings, versions and what it asks the same as.

    Example: binderbank show q0001
    """
    with use_bank() as bank:
        item = bank.items.get(item_id)
        twins = [bank.items.get(other) for other in bank.items.twins(item.id)]
    return _show(item, twins, as_json, formulas=True)


def _show(item: Any, twins: list[Any], as_json: bool, formulas: bool) -> int:
    from cli.show import show_formulas, show_item

    if as_json:
        print_json(item_dict(item, [twin.id for twin in twins]))
        return 0
    screen = console()
    show_item(screen, item, twins)
    if formulas:
        show_formulas(screen, item.formulas)
    if formulas and (themes := _sensitive(item)):
        tags = " ".join(f"--add theme:{theme}" for theme in themes)
        say(f"a theme that some learners avoid? binderbank tag {item.id} {tags}")
    if item.state == "draft":
        say(f"a draft: mend it (binderbank change {item.id} --text ...) or say --as-is REASON")
    return 0


def _sensitive(item: Any) -> list[str]:
    """Sensitive themes that the text may touch and that the item does not carry yet."""
    from bank.check import sensitive_themes

    return [theme for theme in sensitive_themes(item.text) if theme not in item.themes]


def item_dict(item: Any, twins: list[str]) -> dict[str, Any]:
    """An item as plain values with stable keys."""
    from bank.exchange import cells_of

    cells = cells_of(item)
    return {
        **{name: cells[name] for name in ("id", "kind", "text", "state")},
        "themes": list(item.themes),
        "seasons": [str(season) for season in item.seasons],
        "question_word": item.question_word,
        "answer": item.answer,
        "choices": list(item.choices),
        "starter": item.starter,
        "words": list(item.words),
        "picture": item.picture,
        "versions": [{"faulty": one.faulty, "fixes": list(one.fixes)} for one in item.versions],
        "skills": list(item.skills),
        "notes": list(item.notes),
        "source": item.source,
        "author": item.author,
        "level": {"grade": item.grade, "low": item.low, "high": item.high, "method": item.method},
        "level_as": item.level_as,
        "formulas": list(item.formulas),
        "reasons": list(item.reasons),
        "findings": list(item.findings),
        "as_is": item.as_is,
        "objection": item.objection,
        "twins": twins,
    }


def bring_in(
    path: Path = typer.Argument(..., metavar="FILE", help="A .csv or .jsonl file."),
    kind: str = typer.Option("", "--kind", help="The kind of rows that do not say it."),
    keep_good: bool = typer.Option(
        False, "--keep-good", help="Import the good rows; write the others to FILE.refused.csv."
    ),
    skip_unknown: bool = typer.Option(
        False, "--skip-unknown", help="Leave out columns that the bank has no place for."
    ),
    as_json: bool = JSON,
) -> int:
    """Import items: rows with an id that the bank has update it, others are added.

    All or nothing, unless --keep-good. Columns: kind, text, theme, question_word, answer, choices,
    starter, words, season, picture, faulty, note, source, author, level_as, state, id.

    Example: binderbank import questions.csv --kind question
    """
    if kind and kind not in KINDS:
        raise BankError(f"{kind!r} is no kind; it is one of {', '.join(KINDS)}")
    refused = path.with_name(path.name + ".refused.csv") if keep_good else None
    with use_bank() as bank, progress("levelling and checking", _lines(path)) as step:
        done = bank.items.bring_in(path, kind, refused, step, skip_unknown)
    if as_json:
        print_json(
            {
                "added": done.added,
                "updated": done.updated,
                "unchanged": done.unchanged,
                "drafts": done.drafts,
                "conflicts": done.conflicts,
                "refused": [
                    {"row": row.number, "column": row.wrong[0], "reason": row.wrong[1]}
                    for row in done.refused
                    if row.wrong
                ],
            }
        )
    else:
        say(f"{done.added} added, {done.updated} updated, {done.unchanged} unchanged")
        if done.drafts:
            say(
                f"{done.drafts} of them are drafts; what must be fixed: binderbank check --must-fix"
            )
        for item_id in done.conflicts:
            say(f"both sides changed {item_id}; see: binderbank conflicts")
        if done.refused:
            many = "row" if len(done.refused) == 1 else "rows"
            say(f"{len(done.refused)} {many} refused, with the reasons in {refused}")
            say("mend them there, then import that file; the good rows are in the bank")
    if done.refused and not (done.added or done.updated or done.unchanged):
        return REFUSED
    return IN_PART if done.refused or done.conflicts else 0


def _lines(path: Path) -> int | None:
    try:
        with path.open("rb") as file:
            return sum(chunk.count(b"\n") for chunk in iter(lambda: file.read(1 << 20), b""))
    except OSError:
        return None


def send_out(
    path: Path = typer.Argument(..., metavar="FILE", help="A .csv or .jsonl file."),
    kind: str = typer.Option("", "--kind", help="Only this kind."),
    plain: bool = typer.Option(
        False, "--plain", help="Leave out what the program wrote for itself."
    ),
) -> int:
    """Export items to CSV or JSON Lines: what `import` takes back.

    Example: binderbank export bank.csv
    """
    from bank.store_items import Query

    with use_bank() as bank:
        count = bank.items.send_out(path, Query(kind=kind) if kind else None, plain)
    say(f"{count} items written to {path}")
    return 0


def find(
    words: list[str] = typer.Argument(None, metavar="[WORDS]", help="Words of the item."),
    kind: str = typer.Option("", "--kind", help="question, sentence, topic or sort."),
    tags: list[str] = typer.Option([], "--tag", help="FAMILY:VALUE, such as theme:food."),
    theme: list[str] = typer.Option([], "--theme", help="Short for --tag theme:..."),
    level: str = typer.Option("", "--level", help="A span of grades, such as K-1.5."),
    state: str = typer.Option("", "--state", help="draft, ready or retired."),
    never_used: bool = typer.Option(False, "--never-used", help="Only what nobody was given yet."),
    limit: int = typer.Option(50, "--limit", help="At most so many; 0 for all."),
    as_json: bool = JSON,
) -> int:
    """Find items by words, tags, level, kind and state, easiest first.

    Example: binderbank find snow --kind question --level K-2
    """
    from bank.store_items import Query
    from cli.show import show_items

    if kind and kind not in KINDS:
        raise BankError(f"{kind!r} is no kind; it is one of {', '.join(KINDS)}")
    if state and state not in STATES:
        raise BankError(f"{state!r} is no state; it is one of {', '.join(STATES)}")
    pairs = [tuple(part.strip() for part in tag.partition(":")[::2]) for tag in tags]
    pairs += [("theme", one.lower()) for one in theme]
    low, high = read_span(level) if level else (None, None)
    query = Query(" ".join(words or []), kind, state, tuple(pairs), low, high, never_used, limit)  # type: ignore[arg-type]
    with use_bank() as bank:
        items = bank.items.find(query)
        twins = {item.id: bank.items.twins(item.id) for item in items} if as_json else {}
    if as_json:
        print_json({"items": [item_dict(item, twins[item.id]) for item in items]})
        return 0
    if not items:
        say("nothing found; fewer words or a wider level find more")
        return 0
    show_items(console(), items)
    if limit and len(items) == limit:
        say(f"the first {limit}; --limit 0 shows all")
    return 0


def tag(
    item_ids: list[str] = ITEMS,
    put: list[str] = typer.Option([], "--add", help="FAMILY:VALUE, such as theme:food."),
    take: list[str] = typer.Option([], "--remove", help="FAMILY:VALUE."),
) -> int:
    """Add or take away tags: theme, season, question-word, note.

    Example: binderbank tag q0001 q0002 --add theme:weather --add season:12-01..02-28
    """
    if not put and not take:
        raise BankError("say what to tag: --add theme:food or --remove theme:food")
    with use_bank() as bank:
        count = bank.items.tag(item_ids, put, take)
    say(f"{count} items tagged")
    return 0


def change(
    item_id: str = ITEM,
    text: str = typer.Option("", "--text", help="A new text."),
    faulty: list[str] = typer.Option([], "--faulty", help="New faulty versions."),
    answer: str = typer.Option(None, "--answer", help="A new expected answer."),
    as_is: str = typer.Option(
        None, "--as-is", metavar="REASON", help="Ready in spite of a finding."
    ),
    as_json: bool = JSON,
) -> int:
    """Change an item's text, faulty versions or answer; it is levelled and checked again.

    Example: binderbank change q0001 --text "Can a fish swim fast?"
    """
    from bank.exchange import read_cells

    cells: dict[str, Any] = {"text": text, "faulty": faulty, "answer": answer, "as_is": as_is}
    cells = {name: cell for name, cell in cells.items() if cell not in ("", [], None)}
    if not cells:
        raise BankError("nothing to change; say --text, --faulty, --answer or --as-is")
    with use_bank() as bank:
        row = read_cells(1, {"text": bank.items.get(item_id).text, **cells})
        if row.wrong:
            raise BankError(row.wrong[1])
        item = bank.items.change(item_id, **row.fields)
        twins = [bank.items.get(other) for other in bank.items.twins(item.id)]
    return _show(item, twins, as_json, formulas=False)


def retire(
    item_ids: list[str] = ITEMS,
    back: bool = typer.Option(False, "--back", help="Bring them back."),
) -> int:
    """Retire items: they are drawn no more; what was given stays known.

    Example: binderbank retire q0001
    """
    with use_bank() as bank:
        count = bank.items.retire(item_ids, back)
    say(f"{count} items {'brought back' if back else 'retired'}")
    return 0


def level_as(
    item_id: str = ITEM,
    grade: str = typer.Argument(
        ..., metavar="GRADE", help="K or a number to 12; `computed` takes it away."
    ),
) -> int:
    """Place an item yourself: your placement outranks the computed level.

    Example: binderbank level-as q0001 1.5
    """
    from bank.exchange import COLUMNS
    from bank.learner import grade_word

    placed = None if grade.lower() == "computed" else COLUMNS["level_as"].read(grade)
    with use_bank() as bank:
        item = bank.items.level_as(item_id, placed)
    if placed is None:
        say(f"{item.id} is back at its computed level, {grade_word(item.grade or 0)}")
    else:
        say(
            f"{item.id} is placed at {grade_word(placed)} (computed: {grade_word(item.grade or 0)})"
        )
    return 0


def relevel(
    everything: bool = typer.Option(False, "--all", help="Also what the present method computed."),
) -> int:
    """Bring computed levels and checks up to date; your own placements stay.

    Example: binderbank relevel
    """
    with use_bank() as bank:
        total = len(bank.items) if everything else bank.items.stale()
        with progress("levelling and checking", total) as step:
            count = bank.items.relevel(everything, step)
    say(f"{count} items brought up to date")
    return 0


def conflicts(
    number: int = typer.Argument(None, metavar="[NUMBER]", help="The conflict to settle."),
    take: str = typer.Option("", "--take", help="`theirs` or `ours`."),
    as_json: bool = JSON,
) -> int:
    """List items that both sides of an exchange changed, and settle them one by one.

    Example: binderbank conflicts 1 --take theirs
    """
    with use_bank() as bank:
        if number is not None:
            if take not in ("theirs", "ours"):
                raise BankError("say which to keep: --take theirs or --take ours")
            item = bank.items.settle(number, take == "theirs")
            say(f"{item.id} settled: {item.text}")
            return 0
        waiting = bank.items.conflicts()
        ours = {one["id"]: bank.items.get(one["id"]).text for one in waiting}
    if as_json:
        print_json({"conflicts": [{**one, "ours": ours[one["id"]]} for one in waiting]})
        return 0
    if not waiting:
        say("no conflicts")
    for one in waiting:
        say(f"{one['number']}  {one['id']}")
        say(f"   ours:   {ours[one['id']]}")
        say(f"   theirs: {one['theirs'].get('text', '')}")
    return 0
