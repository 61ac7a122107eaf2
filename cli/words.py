"""The teacher's word sorts and quiet reading: patterns, sorts, the shelf and the baskets."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import typer

from bank.item import BankError
from cli.common import (
    CODES,
    DAY,
    DONE,
    IN_PART,
    JSON,
    TEACHER,
    add_commands,
    console,
    counted,
    print_json,
    progress,
    read_day,
    say,
    table,
    use_bank,
)

if TYPE_CHECKING:
    from bank.classroom import Bank

sort_app = typer.Typer(no_args_is_help=True, help="Word sorts: make, print, and who is ready.")
shelf_app = typer.Typer(no_args_is_help=True, help="The shelf of books for quiet reading.")
TO = typer.Option(None, "--to", metavar="FOLDER", help="Where printed files go.")


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, TEACHER, {"sort": sort_app, "shelf": shelf_app, "basket": basket}, only)


@sort_app.command("patterns")
def sort_patterns(as_json: bool = JSON) -> int:
    """List the patterns that sorts can be made of, in the usual order of teaching.

    Example: binderbank sort patterns
    """
    from bank.morning.sorts import pattern_codes

    found = pattern_codes()
    if as_json:
        print_json({"patterns": found})
        return DONE
    rows = table("code", "pattern")
    for code, title in found.items():
        rows.add_row(code, title)
    console().print(rows)
    return DONE


@sort_app.command("make")
def sort_make(
    pattern: str = typer.Argument("", metavar="[PATTERN]", help="A pattern's code."),
    named: str = typer.Option("", "--pattern", help="The same, as an option."),
    count: int = typer.Option(1, "--count", help="How many sorts."),
    size: int = typer.Option(12, "--words", help="Words in a sort, 12 to 18."),
    odd: int = typer.Option(0, "--odd", help="Odd ones out beside them."),
    grade: float = typer.Option(4.0, "--grade", help="Only words learnt before this grade."),
    as_json: bool = JSON,
) -> int:
    """Make word sorts of a pattern, with their keys, and keep them in the bank.

    Example: binderbank sort make short-long-a --count 3 --odd 2
    """
    code = pattern or named
    if not code:
        raise BankError("say which pattern; see: binderbank sort patterns")
    if not 1 <= count <= 20:
        raise BankError(f"1 to 20 sorts at a time, not {count}")
    with use_bank() as bank, progress("making sorts", count) as step:
        made = bank.morning.make_sorts(code, count, size, odd, grade, step)
        kept = {item.id: bank.morning.sort(item.id) for item in made}
    if as_json:
        print_json({"sorts": [{"id": item, **sort.to_dict()} for item, sort in kept.items()]})
    else:
        for item, sort in kept.items():
            show_sort(item, sort)
    if len(made) < count:
        say(f"only {len(made)} of {count}: there are no more with these words", to_errors=True)
        return IN_PART
    return DONE


def show_sort(item: str, sort: Any) -> None:
    """A sort with its key."""
    say(f"{item}  {sort.title}", style="bold")
    for column in sort.columns:
        say(f"  {column.heading}: {', '.join(column.words)}")


@sort_app.command("show")
def sort_show(
    item: str = typer.Argument(..., metavar="ITEM", help="The sort's id."), as_json: bool = JSON
) -> int:
    """Show a sort with its key.

    Example: binderbank sort show abc2345
    """
    with use_bank() as bank:
        sort = bank.morning.sort(item)
    if as_json:
        print_json({"id": item, **sort.to_dict()})
    else:
        show_sort(item, sort)
    return DONE


@sort_app.command("list")
def sort_list(as_json: bool = JSON) -> int:
    """List the sorts of the bank.

    Example: binderbank sort list
    """
    with use_bank() as bank:
        kept = bank.morning.sorts()
    if as_json:
        print_json({"sorts": [{"id": item, **sort.to_dict()} for item, sort in kept]})
        return DONE
    if not kept:
        say("there is no word sort yet; make one: binderbank sort make ai-ay")
        return DONE
    rows = table("id", "pattern", "words", keep=(0, 1))
    for item, sort in kept:
        rows.add_row(item, sort.title, ", ".join(sort.cards))
    console().print(rows)
    return DONE


@sort_app.command("mastered")
def sort_mastered(
    code: str = typer.Argument(..., metavar="CODE", help="The learner's code."),
    add: list[str] = typer.Option([], "--add", metavar="PATTERN", help="Now mastered."),
    remove: list[str] = typer.Option([], "--remove", metavar="PATTERN", help="Not any more."),
    as_json: bool = JSON,
) -> int:
    """Say which patterns a learner has mastered: those are the sorts of the morning.

    Example: binderbank sort mastered K4 --add short-a-i --add ch-sh
    """
    with use_bank() as bank:
        held = bank.morning.mastered(code)
        kept = [one for one in held if one not in remove] + [one for one in add if one not in held]
        if kept != held:
            kept = bank.morning.keep_mastered(code, kept)
    if as_json:
        print_json({"learner": code, "mastered": kept})
    else:
        say(f"{code}: {', '.join(kept) or 'no pattern yet'}")
    return DONE


@sort_app.command("today")
def sort_today(day: str = DAY, codes: list[str] = CODES, as_json: bool = JSON) -> int:
    """Who has which sort: one for two school days, then another.

    A day ahead is counted over the school days between, and gives nothing out.

    Example: binderbank sort today tomorrow
    """
    when = read_day(day)
    with use_bank() as bank:
        _refuse_day_off(bank, when)
        found = bank.morning.sorts_of(when, codes, keep=_is_due(when))
        titles = {item: sort.title for item, sort in bank.morning.sorts()}
        there = [one.code for one in bank.days.learners(codes) if one.in_class(when)]
        without = [code for code in there if code not in found]
    if as_json:
        print_json({"day": when, "sorts": found, "without": without})
        return DONE
    rows = table("learner", "sort", "pattern")
    for code, item in found.items():
        rows.add_row(code, item, titles.get(item, "-"))
    if found:
        console().print(rows)
    if without:
        say(
            f"no sort: {', '.join(without)}; the bank has none of a pattern that they have mastered"
            " (binderbank sort make, binderbank sort mastered CODE)"
        )
    return DONE


def _refuse_day_off(bank: Bank, when: dt.date) -> None:
    calendar = bank.morning.calendar
    if off := calendar.why_off(when):
        after = calendar.next_school_day(when) or "not in the calendar"
        raise BankError(f"{when} is no school day ({off}); the next is {after}")


def _is_due(when: dt.date) -> bool:
    """Whether the day is today: looking ahead gives nothing out."""
    return when == read_day("today")


@sort_app.command("print")
def sort_print(
    items: list[str] = typer.Argument(None, metavar="[ID]...", help="Sorts; else those of today."),
    day: str = typer.Option("today", "--on", metavar="DATE", help="The day whose sorts it is."),
    to: Path = TO,
    as_json: bool = JSON,
) -> int:
    """Sorts as cards to cut, a set for each learner, with the key for the aide.

    What is printed for a day stays that day's sort. Sorts that are named are printed once each.

    Example: binderbank sort print --on tomorrow
    """
    from bank.classroom_morning_paper import sets_said, sort_paper
    from cli.paper import save_prints

    when = read_day(day)
    with use_bank() as bank:
        if not items:
            _refuse_day_off(bank, when)
        whose = bank.morning.whose_sorts(when, items or ())
        made = sort_paper(bank.morning, whose, when, bank.paper.settings.size)
        if made.files and not items:
            bank.morning.sorts_of(when)
        titles = {item: bank.morning.sort(item).title for item in whose}
        sorts = [
            {"id": item, "title": titles[item], "learners": codes, "sets": max(1, len(codes))}
            for item, codes in whose.items()
        ]
        if not as_json:
            for item, codes in whose.items():
                say(f"{item}  {titles[item]}: {sets_said(codes)}")
        more = {"sorts": sorts}
        return save_prints(bank, when, made.files, made.problems, to, as_json, more=more)


@sort_app.command("strips")
def sort_strips(
    code: str = typer.Argument(
        ..., metavar="CODE", help="The learner at whose level the sentences are."
    ),
    count: int = typer.Option(4, "--count", help="How many sentences."),
    phrases: bool = typer.Option(False, "--phrases", help="Cut into phrases, not words."),
    day: str = typer.Option("today", "--on", metavar="DATE", help="The day of the paper."),
    to: Path = TO,
    as_json: bool = JSON,
) -> int:
    """Sentence-building strips: correct sentences of the bank, cut into words or phrases.

    Example: binderbank sort strips K4 --phrases
    """
    from bank.classroom_morning_paper import building_paper
    from cli.paper import save_prints

    when = read_day(day)
    with use_bank() as bank:
        made = building_paper(bank.morning, code, count, phrases, when, bank.paper.settings.size)
        return save_prints(bank, when, made.files, made.problems, to, as_json)


# Quiet reading


@shelf_app.command("list")
def shelf_list(as_json: bool = JSON) -> int:
    """List the books of the shelf with their levels.

    Example: binderbank shelf list
    """
    with use_bank() as bank:
        return _show_books(bank.morning.shelf(), as_json)


@shelf_app.command("add")
def shelf_add(
    title: str = typer.Argument(..., metavar="TITLE", help="The book's title."),
    level: str = typer.Option("", "--level", help="Its reading grade: K or a number."),
    page: str = typer.Option("", "--page", help="Or a typed page of it, to estimate the level."),
    page_file: Path = typer.Option(None, "--page-file", metavar="FILE", help="The page in a file."),
    copies: int = typer.Option(1, "--copies", help="How many there are."),
    code: str = typer.Option("", "--code", help="A short code; else the next free one."),
    as_json: bool = JSON,
) -> int:
    """Put a book on the shelf. The level is yours, or an estimate from a typed page.

    Example: binderbank shelf add "The red sled" --level 1.5
    """
    from cli.learners import _grade

    if not 1 <= copies <= 99:
        raise BankError(f"there are 1 to 99 copies, not {copies}")
    typed = page_file.read_text(encoding="utf-8-sig") if page_file else page
    with use_bank() as bank:
        made = bank.morning.put_book(title, _grade(level) if level else None, typed, copies, code)
    return _show_books([made], as_json)


@shelf_app.command("remove")
def shelf_remove(code: str = typer.Argument(..., metavar="CODE", help="The book's code.")) -> int:
    """Take a book off the shelf; who had it is not forgotten.

    Example: binderbank shelf remove b3
    """
    with use_bank() as bank:
        bank.morning.remove_book(code)
    say(f"{code} is off the shelf")
    return DONE


def _show_books(books: Sequence[Any], as_json: bool) -> int:
    from bank.learner import grade_word

    if as_json:
        print_json({"books": [book.to_dict() for book in books]})
        return DONE
    if not books:
        say("the shelf is empty; add a book: binderbank shelf add TITLE --level 1.5")
        return DONE
    rows = table("code", "level", "copies", "title", keep=(0, 1, 2))
    for book in books:
        estimated = " (estimate)" if book.by == "page" else ""
        rows.add_row(book.code, grade_word(book.grade) + estimated, str(book.copies), book.title)
    console().print(rows)
    return DONE


def basket(
    day: str = DAY,
    size: int = typer.Option(None, "--books", help="Books in a basket from now on; at first 4."),
    undo: bool = typer.Option(False, "--undo", help="Take the week's baskets back."),
    as_json: bool = JSON,
) -> int:
    """Each learner's basket of the week: books that can be read alone, none a second time.

    Today's page fills the baskets of a week by itself; once filled they stay.

    Example: binderbank basket monday
    """
    when = read_day(day)
    if size is not None and not 1 <= size <= 12:
        raise BankError(f"a basket has 1 to 12 books, not {size}")
    with use_bank() as bank:
        if undo:
            count = bank.morning.empty_baskets(when)
            say(f"back on the shelf: {counted(count, 'book')}")
            return DONE
        made = bank.morning.baskets(when, size or 0)
        titles = {book.code: book.title for book in bank.morning.shelf()}
    if as_json:
        print_json({"baskets": [one.to_dict() for one in made.baskets], "short": made.short})
    else:
        rows = table("learner", "books")
        for one in made.baskets:
            rows.add_row(one.learner, ", ".join(titles.get(c, c) for c in one.books) or "-")
        console().print(rows)
    for line in made.short:
        say(line, to_errors=True)
    return IN_PART if made.short else DONE
