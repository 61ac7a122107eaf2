"""The teacher's commands: see and print today, look ahead, exchange an item."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import typer

from bank.item import BankError
from cli.common import (
    CODES,
    DAY,
    IN_PART,
    JSON,
    TEACHER,
    add_commands,
    console,
    counted,
    day_title,
    named_bank,
    print_json,
    read_day,
    say,
    say_next,
    use_bank,
)


def register(app: typer.Typer, only: str = "") -> None:
    commands = {
        "today": today,
        "draw": draw,
        "swap": swap,
        "unused": unused,
        "new": new,
        "demo": demo,
    }
    add_commands(app, TEACHER, commands, only)


def today(
    anyway: bool = typer.Option(False, "--anyway", help="Draw on a day without school, too."),
    paper: bool = typer.Option(False, "--print", help="Make pages, strips, key and proof sheet."),
    week: bool = typer.Option(False, "--week", help="With --print: five school days."),
    to: Path = typer.Option(None, "--to", metavar="FOLDER", help="Where printed files go."),
    as_json: bool = JSON,
) -> int:
    """The one command to remember: today's sets, drawn if that is not done, and what to print.

    With --print everything on paper is made in one folder and the sets become printed. The files
    hold no name; delete the folder when the day is done: binderbank forget-prints

    Example: binderbank today --print
    """
    if paper or week:
        return _print(5 if week else 1, to, anyway, as_json)
    return _draw("today", [], None, anyway, False, as_json, next_steps=True)


def _print(count: int, to: Path | None, anyway: bool, as_json: bool) -> int:
    from cli.paper import print_mornings

    with use_bank() as bank:
        days = [read_day("today")]
        calendar = bank.days.calendar()
        if not anyway and calendar.why_off(days[0]) and count > 1:
            days = []
        last = days[0] if days else read_day("today")
        while len(days) < count:
            following = calendar.next_school_day(last)
            if following is None:
                break
            last = following
            days.append(last)
        if not days:
            raise BankError("there is no school day ahead in the calendar; --anyway prints today")
        return print_mornings(bank, days, to, anyway, as_json)


def draw(
    day: str = DAY,
    codes: list[str] = CODES,
    short: bool = typer.Option(False, "--short", help="Draw the short-morning set."),
    undo: bool = typer.Option(False, "--undo", help="Take proposed sets of the day back."),
    why: bool = typer.Option(False, "--why", help="Show for each item why it was chosen."),
    anyway: bool = typer.Option(False, "--anyway", help="Draw on a day without school, too."),
    as_json: bool = JSON,
) -> int:
    """Draw the sets of a day: the same sets whoever asks. Looking ahead spends nothing.

    Example: binderbank draw tomorrow --why
    """
    if undo:
        return _undo(read_day(day), codes, as_json)
    return _draw(day, codes, short or None, anyway, why, as_json)


def _draw(
    day: str,
    codes: list[str],
    short: bool | None,
    anyway: bool,
    why: bool,
    as_json: bool,
    next_steps: bool = False,
) -> int:
    from cli.show import shared_lines, show_set, to_be_said_line

    when = read_day(day)
    with use_bank() as bank:
        sets = bank.days.draw(when, codes, short, anyway)
        missing = [one for one in bank.days.learners(codes) if one.is_away(when)]
        away = [one for one in missing if one.in_class(when)]
        gone = [one for one in missing if not one.in_class(when)]
        stuck = bank.days.stuck(when) if next_steps else []
        path = bank.path
        rest = _rest(bank, when) if next_steps else {}
    short_of = any(len(one.of("question")) < _asked(one) for one in sets)
    if as_json:
        plain = {"day": when, "away": [one.code for one in away], "sets": sets, **rest}
        plain["not_in_class"] = [one.code for one in gone]
        if next_steps:
            plain["stuck"] = [{"learner": one, "said": words} for one, words in stuck]
        print_json(plain)
        return IN_PART if short_of else 0
    screen = console()
    screen.print(day_title(when), style="bold")
    screen.print()
    for one in sets:
        show_set(screen, one, why)
    if short and (long := [one.learner.code for one in sets if not one.short]):
        say(f"not short, since they are {sets[0].state} already: {', '.join(long)}", to_errors=True)
    for line in [*shared_lines(sets), to_be_said_line(sets)]:
        if line:
            say(line)
    if away:
        screen.print("Away: " + ", ".join(one.code for one in away))
    for one in gone:
        # Said in the first week, or where somebody asks; nobody needs to read it for ever.
        if codes or abs(when - (one.last or one.first)).days <= 7:
            screen.print(f"{one.not_in_class(when)}, so has no set")
    for one, words in stuck:
        screen.print(f"{one} is stuck: {words}")
    for line in _rest_lines(rest):
        say(line)
    if next_steps and sets:
        _show_proof(sets)
        screen.print()
        say_next("Make everything on paper: ", path, "today --print")
        say_next("Print the answer key: ", path, "key")
        say_next("Another item for one learner: ", path, "swap CODE question 2")
        say_next("When it is done, mark it: ", path, "mark")
    return IN_PART if short_of else 0


def _rest(bank, when: dt.date) -> dict[str, object]:  # type: ignore[no-untyped-def]
    """Today's turns, sorts and baskets, where the teacher has set them up."""
    if not bank.has_morning:
        return {}
    from bank.classroom_morning_paper import morning_lines

    there = [one.code for one in bank.days.learners() if one.in_class(when)]
    lines = morning_lines(bank.morning, when, there)
    return {
        "morning": {
            code: {"job": said.job, "sort": said.sort, "basket": said.basket}
            for code, said in lines.items()
        }
    }


def _rest_lines(rest: dict[str, object]) -> list[str]:
    """A line for each learner who has a job, a sort or a basket today."""
    found = []
    lines: dict[str, dict[str, str]] = rest.get("morning", {})  # type: ignore[assignment]
    for code, said in lines.items():
        words = [f"{name}: {said[name]}" for name in ("job", "sort", "basket") if said[name]]
        if words:
            found.append(f"{code}  {'; '.join(words)}")
    without = [code for code, said in lines.items() if not said["basket"]]
    if without and len(without) < len(lines):
        found.append(f"No book that is new and easy enough for {', '.join(without)}: see basket")
    return ["The rest of the morning:", *found, ""] if found else []


def _show_proof(sets) -> None:  # type: ignore[no-untyped-def]
    from bank.classroom_proof import proof_items
    from bank.page.proof import proof_lines

    for line in proof_lines(proof_items(sets)):
        say(line)


def _asked(one):  # type: ignore[no-untyped-def]
    return 0 if one.short else one.learner.questions


def _undo(day: dt.date, codes: list[str], as_json: bool) -> int:
    with use_bank() as bank:
        gone, stay = bank.days.undo(day, codes)
    if as_json:
        print_json({"day": day, "taken_back": gone, "left": stay})
        return IN_PART if stay else 0
    say(f"{counted(gone, 'proposed set')} of {day} taken back; the items are free again")
    if stay:
        kept = counted(stay, "printed or used set")
        say(f"{kept} left as they were; if they were not used: binderbank unused {day}")
        return IN_PART
    return 0


def swap(
    code: str = typer.Argument(..., metavar="CODE", help="The learner's code."),
    slot: list[str] = typer.Argument(..., metavar="SLOT", help="question 2, sentence or topic."),
    day: str = typer.Option("today", "--on", metavar="DATE", help="The day of the set."),
    reason: str = typer.Option("swapped by the teacher", "--reason", help="Why; it is kept."),
    item: str = typer.Option(
        "", "--with", metavar="ITEM", help="This item, if it suits the learner."
    ),
    missed: str = typer.Option(
        "", "--missed", metavar="DATE", help="What the others had on a day the learner was away."
    ),
    as_json: bool = JSON,
) -> int:
    """Give one learner another item in place of one of the set.

    Example: binderbank swap K4 question 2 --reason "upset by it"
    """
    from cli.paper import print_again

    name = " ".join(slot)
    with use_bank() as bank:
        if missed:
            from bank.classroom_swap import missed as missed_item
            from bank.classroom_swap import read_slot

            item = missed_item(bank.days, code, read_day(missed), read_slot(name)[0])
        when = read_day(day)
        was, now = bank.days.swap(code, when, name, reason, item)
        (one,) = bank.days.learners([code])
        again = print_again(bank, when, one.code)
        path = bank.path
    if as_json:
        print_json({"was": was, "now": now, "print_again": again})
        return 0
    say(f"was:  {was.faulty or was.text}")
    say(f"now:  {now.faulty or now.text}")
    for words in again:
        say_next("print again: ", path, words)
    return 0


def unused(
    day: str = DAY,
    codes: list[str] = CODES,
    used: bool = typer.Option(False, "--used", help="Say that they were used after all."),
) -> int:
    """Say that the sets of a day were not used (snow, assembly): their items may come again.

    Example: binderbank unused 2026-01-12
    """
    when = read_day(day)
    state = "used" if used else "unused"
    with use_bank() as bank:
        count = bank.days.set_state(when, state, codes)
        sorts = [] if used or not count else _sorts_again(bank, when, codes)
    if not count:
        raise BankError(f"there is no set on {when}; nothing was changed")
    said = f"{counted(count, 'set')} of {when} marked {state}"
    say(said if used else f"{said}; the items may come again")
    for line in sorts:
        say(line)
    return 0


def _sorts_again(bank, lost: dt.date, codes: list[str]) -> list[str]:  # type: ignore[no-untyped-def]
    """What becomes of the word sorts of a day that was not used, where somebody had one."""
    following, again, other = bank.morning.sorts_after_unused(lost, codes)
    lines = []
    if again:
        who = f"{', '.join(again)} {'has' if len(again) == 1 else 'have'}"
        lines.append(f"its word sort does not count: {who} the same one on {following}")
    if other:
        lines.append(f"the word sort of {following} stays as it was given out: {', '.join(other)}")
    return [*lines, "turns stay as they are"] if lines else []


def new(
    path: Path = typer.Argument(None, metavar="[FILE]", help="Where; else the usual place."),
    for_others: bool = typer.Option(
        False, "--for-others", help="Let others of your group on this computer read and write it."
    ),
    with_items: bool = typer.Option(
        False, "--with-items", help="With the items that come along, and no learner."
    ),
) -> int:
    """Make a new bank: an empty one, or one with the items that come with the program.

    Example: binderbank new class.sqlite3 --with-items
    """
    from bank.classroom import Bank
    from bank.store import create_store, find_path

    with Bank(create_store(find_path(path or named_bank[0]), for_others)) as bank:
        made, counts = bank.path, list[str]()
        if with_items:
            from cli.demo import fill_items

            counts = fill_items(bank)
    if with_items:
        say(f"made a bank: {made}")
        say(", ".join(counts))
    else:
        say(f"made an empty bank: {made}")
        say_next("next: ", made, "import questions.csv")
    say_next("next: " if with_items else "and: ", made, "learner add K4 --reads 2")
    return 0


def demo(
    folder: Path = typer.Argument(
        None, metavar="[FOLDER]", help="Where; else binderbank-demo here."
    ),
) -> int:
    """Make a bank of demo items with six learners, draw today for all, and print sets and key.

    Example: binderbank demo
    """
    from cli.demo import run

    return run(folder)
