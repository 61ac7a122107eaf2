"""The specialist's pictures: found by a word, confirmed by a person, or brought as a file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import typer

from bank.item import BankError
from cli.common import (
    DONE,
    JSON,
    SPECIALIST,
    add_commands,
    console,
    counted,
    print_json,
    say,
    table,
    use_bank,
)

if TYPE_CHECKING:
    from bank.classroom import Bank
    from bank.item import Item


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, SPECIALIST, {"picture": picture}, only)


def picture(
    item: str = typer.Argument("", metavar="[ITEM]", help="The topic or other item."),
    find: str = typer.Option("", "--find", help="Look for pictograms by this word."),
    take: str = typer.Option("", "--take", metavar="NUMBER", help="Confirm this pictogram."),
    file: Path = typer.Option(None, "--file", help="Take a picture file of your own."),
    words: str = typer.Option("", "--words", help="What the file shows, for who cannot see it."),
    none: bool = typer.Option(False, "--none", help="Take the picture away."),
    exact: bool = typer.Option(
        False, "--exact", help="Confirm every picture word that is a pictogram's own name."
    ),
    limit: int = typer.Option(50, "--limit", help="At most so many waiting; 0 for all."),
    as_json: bool = JSON,
) -> int:
    """Find, confirm or bring a picture for an item; without an item: those that wait for one.

    Example: binderbank picture t0001 --take 1F436
    """
    with use_bank() as bank:
        if exact:
            return _take_exact(bank, as_json)
        if not item and not find:
            return _waiting(bank, limit, as_json)
        if take or file or none:
            return _settle_picture(bank, item, take, file, words)
        word = find or bank.items.get(item).picture
    return _candidates(item, word, as_json)


def _settle_picture(bank: Bank, item: str, take: str, file: Path | None, words: str) -> int:
    if not item:
        raise BankError("say whose picture: binderbank picture ITEM")
    bank.items.get(item)
    try:
        if file:
            if not words:
                raise BankError("say what the picture shows: --words 'a red sled'")
            kept = bank.paper.keep_picture(item, file, words)
        else:
            kept = take.upper()
            if take and bank.paper.picture(kept) is None:
                raise BankError(f"{take!r} is no pictogram; see: binderbank picture --find dog")
    except BankError:
        raise
    except ValueError as wrong:
        raise BankError(str(wrong)) from None
    bank.items.change(item, picture=kept)
    say(f"{item} shows {words or kept}" if kept else f"{item} has no picture now")
    return DONE


def _waiting(bank: Bank, limit: int, as_json: bool) -> int:
    """Topics whose picture is only a word so far."""
    found = _topics_that_wait(bank)
    if as_json:
        print_json({"waiting": [{"item": one.id, "word": one.picture} for one in found]})
        return DONE
    if not found:
        say("no topic waits for a picture")
        return DONE
    rows = table("id", "picture word", "topic")
    for one in found[: limit or None]:
        rows.add_row(one.id, one.picture, one.text)
    console().print(rows)
    if limit and len(found) > limit:
        say(f"the first {limit}; --limit 0 shows all")
    say(f"{counted(len(found), 'topic')}; one: binderbank picture {found[0].id}; or: --exact")
    return DONE


def _topics_that_wait(bank: Bank) -> list[Item]:
    from bank.store_items import Query

    topics = bank.items.find(Query(kind="topic", limit=0))
    return [one for one in topics if one.picture and not bank.paper.is_settled(one.picture)]


def _take_exact(bank: Bank, as_json: bool) -> int:
    """Confirm the pictures whose word can only mean one pictogram; the others go on waiting."""
    from bank.page import find_pictograms

    taken, waiting = list[dict[str, str]](), 0
    for one in _topics_that_wait(bank):
        word = one.picture.strip().lower()
        try:
            named = [found.number for found in find_pictograms(word) if found.name == word]
        except ValueError as wrong:
            raise BankError(str(wrong)) from None
        if len(named) == 1:
            bank.items.change(one.id, picture=named[0])
            taken.append({"item": one.id, "word": one.picture, "number": named[0]})
        else:
            waiting += 1
    if as_json:
        print_json({"taken": taken, "waiting": waiting})
        return DONE
    say(f"{counted(len(taken), 'picture')} confirmed by name, {waiting} wait for a look")
    return DONE


def _candidates(item: str, word: str, as_json: bool) -> int:
    from bank.page import find_pictograms

    try:
        found = find_pictograms(word) if word else []
    except ValueError as wrong:
        raise BankError(str(wrong)) from None
    if as_json:
        print_json({"word": word, "pictograms": [[one.number, one.name] for one in found]})
        return DONE
    if not found:
        say(f"no pictogram for {word!r}; another word: --find WORD, or a file: --file PICTURE")
        return DONE
    rows = table("number", "", "shows")
    for one in found:
        rows.add_row(one.number, chr(int(one.number, 16)), one.name)
    console().print(rows)
    say(f"confirm one: binderbank picture {item or 'ITEM'} --take {found[0].number}")
    return DONE
