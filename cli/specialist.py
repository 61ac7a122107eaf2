"""The specialist's commands: add, find, tag, change and place items."""

from __future__ import annotations

import sys
from typing import Any

import typer

from bank.item import KINDS, STATES, BankError
from cli.common import (
    DONE,
    JSON,
    SPECIALIST,
    add_commands,
    console,
    counted,
    print_json,
    progress,
    read_span,
    say,
    use_bank,
)

NO_BREAK = "\u00a0"
ITEM = typer.Argument(..., metavar="ITEM", help="The item's id.")
ITEMS = typer.Argument(..., metavar="ITEM...", help="The items' ids.")


def register(app: typer.Typer, only: str = "") -> None:
    commands: dict[str, Any] = {
        "add": add,
        "find": find,
        "show": show,
        "tag": tag,
        "change": change,
        "retire": retire,
        "level-as": level_as,
        "relevel": relevel,
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

        say(f"faulty versions to choose from (binderbank change {item.id} --choose 1,3):")
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
    from bank.assess import NO_FAULTY
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
    certain = [one["code"] for one in item.findings if one["certain"]]
    if item.state == "draft" and certain == [NO_FAULTY]:
        say(f"a draft: give it faulty versions (binderbank change {item.id} --choose all)")
    elif item.state == "draft":
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
    for tag in tags:
        if ":" not in tag:
            raise BankError(f"{tag[:40]!r} is no tag; write FAMILY:VALUE, such as theme:food")
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
    item_ids: list[str] = typer.Argument(None, metavar="[ITEM...]", help="The items' ids."),
    put: list[str] = typer.Option([], "--add", help="FAMILY:VALUE, such as theme:food."),
    take: list[str] = typer.Option([], "--remove", help="FAMILY:VALUE."),
    as_json: bool = JSON,
) -> int:
    """Add or take away tags: theme, season, question-word, note. Without items: the tags in use.

    Example: binderbank tag q0001 q0002 --add theme:weather --add season:12-01..02-28
    """
    if not item_ids and not put and not take:
        with use_bank() as bank:
            return _show_tags(bank.items.tags(), as_json)
    if not item_ids or not (put or take):
        raise BankError("say what to tag, and how: binderbank tag ITEM --add theme:food")
    with use_bank() as bank:
        count = bank.items.tag(item_ids, put, take)
    if as_json:
        print_json({"tagged": count})
    else:
        same = len(set(item_ids)) - count
        why = (
            "had no such tag"
            if not put
            else "had it before"
            if not take
            else "had nothing to change"
        )
        unchanged = f"; {counted(same, 'item')} {why}" if same else ""
        say(f"{counted(count, 'item')} tagged{unchanged}")
    return 0


def _show_tags(tags: list[tuple[str, str, int]], as_json: bool) -> int:
    if as_json:
        print_json(
            {"tags": [dict(zip(("family", "value", "items"), one, strict=True)) for one in tags]}
        )
        return DONE
    if not tags:
        say("no item has a tag yet")
    for family in ("theme", "question-word", "skill"):
        named = [f"{value}{NO_BREAK}({count})" for one, value, count in tags if one == family]
        if named:
            say(f"{family}: {', '.join(named)}")
    return DONE


def change(
    item_id: str = ITEM,
    text: str = typer.Option("", "--text", help="A new text."),
    faulty: list[str] = typer.Option([], "--faulty", help="New faulty versions."),
    choose: str = typer.Option(
        "",
        "--choose",
        help="Which of three faulty versions made for a sentence without any: 1,3 or all.",
    ),
    answer: str = typer.Option(None, "--answer", help="A new expected answer."),
    choice: list[str] = typer.Option([], "--choice", help="New choices to circle (2 to 4)."),
    starter: str = typer.Option(None, "--starter", help="A new sentence starter."),
    words: list[str] = typer.Option([], "--word", help="New words for the word box."),
    as_is: str = typer.Option(
        None, "--as-is", metavar="REASON", help="Ready in spite of a finding."
    ),
    as_json: bool = JSON,
) -> int:
    """Change an item's text, faulty versions, answer, choices or starter; it is checked again.

    Example: binderbank change q0001 --text "Can a fish swim fast?"
    """
    from bank.exchange import read_cells

    said = {"text": text or None, "answer": answer, "starter": starter, "as_is": as_is}
    lists = {"faulty": faulty, "choices": choice, "words": words}
    cells: dict[str, Any] = {name: cell for name, cell in said.items() if cell is not None}
    cells |= {name: cell for name, cell in lists.items() if cell}
    if not cells and not choose:
        raise BankError("nothing to change; say --text, --faulty, --answer, --choice or --as-is")
    with use_bank() as bank:
        if choose:
            cells["faulty"] = _chosen(bank.items.get(item_id), text, faulty, choose)
        row = read_cells(1, {"text": bank.items.get(item_id).text, **cells})
        if row.wrong:
            raise BankError(row.wrong[1])
        item = bank.items.change(item_id, **row.fields)
        twins = [bank.items.get(other) for other in bank.items.twins(item.id)]
    return _show(item, twins, as_json, formulas=False)


def _chosen(item: Any, text: str, faulty: list[str], choose: str) -> list[str]:
    """Those of three versions made for a sentence without one that the person chooses."""
    from cli.making import offered

    if item.kind != "sentence":
        raise BankError(f"{item.id} is a {item.kind}; --choose is for a sentence to fix")
    if item.versions or faulty:
        raise BankError("--choose is for a sentence without a faulty version; say --faulty alone")
    versions, chosen = offered(text or item.text, choose)
    if not versions:
        raise BankError("there are no three faulty versions of this sentence; say --faulty")
    if not chosen:
        raise BankError("nothing is chosen; say numbers or all")
    return chosen


def retire(
    item_ids: list[str] = ITEMS,
    back: bool = typer.Option(False, "--back", help="Bring them back."),
) -> int:
    """Retire items: they are drawn no more; what was given stays known.

    Example: binderbank retire q0001
    """
    with use_bank() as bank:
        count = bank.items.retire(item_ids, back)
    say(f"{counted(count, 'item')} {'brought back' if back else 'retired'}")
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
    say(f"{counted(count, 'item')} brought up to date")
    return 0
