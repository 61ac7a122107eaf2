"""The teacher's school calendar and the steps of the morning."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import typer

from bank.calendar import (
    WEEKDAYS,
    DayOff,
    HalfDay,
    NotASchoolCalendar,
    SchoolCalendar,
    Term,
    read_date,
)
from bank.item import BankError
from cli.common import (
    DAY,
    DONE,
    IN_PART,
    JSON,
    TEACHER,
    add_commands,
    console,
    counted,
    day_title,
    print_json,
    read_day,
    say,
    table,
    use_bank,
)


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, TEACHER, {"calendar": calendar, "routine": routine}, only)


def calendar(
    day: str = DAY,
    weekdays: str = typer.Option("", "--weekdays", help="In session: monday,tuesday,..."),
    term: list[str] = typer.Option([], "--term", metavar="FIRST..LAST=NAME", help="A term."),
    off: list[str] = typer.Option(
        [], "--off", metavar="FIRST..LAST=WHY", help="A day off, or a range."
    ),
    half: list[str] = typer.Option([], "--half", metavar="DATE=WHY", help="A short morning."),
    clear: list[str] = typer.Option(
        [], "--clear", metavar="DATE", help="Take away what is said about a day."
    ),
    read: Path = typer.Option(None, "--read", metavar="FILE", help="A district's .ics file."),
    zone: str = typer.Option("", "--zone", help="The school's time zone, for files without one."),
    write: Path = typer.Option(None, "--write", metavar="FILE", help="Write an .ics file."),
    as_json: bool = JSON,
) -> int:
    """Show a term as small month pictures; say when there is school.

    Without any settings there is school from Monday to Friday.

    Example: binderbank calendar --off "2026-11-25..2026-11-27=Thanksgiving break"
    """
    when = read_day(day)
    unknown: Sequence[str] = ()
    with use_bank() as bank:
        held = bank.morning.calendar
        changed = _changed(held, weekdays, term, off, half, clear)
        if read:
            changed, unknown = _read(read, changed, when, zone)
        if changed != held:
            bank.morning.keep_calendar(changed)
    for one in changed.half_days:
        if one not in held.half_days and (why := changed.why_off(one.day)):
            say(f"no short morning on {one.day}: {why}", to_errors=True)
    if write:
        from bank.calendar_ics import write_ics

        write.write_text(write_ics(changed, "School days"), encoding="utf-8", newline="")
        say(f"written: {write}")
    if as_json:
        print_json({**changed.to_dict(), "day": when, "why_off": changed.why_off(when)})
    else:
        _show(changed, when)
    for title in unknown:
        say(f"not understood, and left out: {title}", to_errors=True)
    return IN_PART if unknown else DONE


def _changed(
    held: SchoolCalendar,
    weekdays: str,
    terms: Sequence[str],
    offs: Sequence[str],
    halves: Sequence[str],
    clears: Sequence[str],
) -> SchoolCalendar:
    gone = [read_day(text) for text in clears]
    try:
        new_terms = [Term(*_range(text, both=True)) for text in terms]
        kept = [
            one
            for one in held.terms
            if not any(one.holds(day) for day in gone)
            and not any(one.name == new.name and new.name for new in new_terms)
        ]
        return replace(
            held,
            weekdays=_weekdays(weekdays) if weekdays else held.weekdays,
            terms=(*kept, *new_terms) if clears or terms else held.terms,
            days_off=(
                *(one for one in held.days_off if not any(one.holds(day) for day in gone)),
                *(DayOff(*_range(text)) for text in offs),
            ),
            half_days=(
                *(one for one in held.half_days if one.day not in gone),
                *(HalfDay(first, why) for first, _, why in map(_range, halves)),
            ),
        )
    except NotASchoolCalendar as error:
        raise BankError(str(error)) from None


def _range(text: str, both: bool = False) -> tuple[dt.date, dt.date, str]:
    """The days and the words of FIRST..LAST=WORDS; `both` asks for a last day."""
    days, _, words = text.partition("=")
    first, _, last = days.partition("..")
    if both and not last.strip():
        raise BankError(f"{text[:40]!r} has no last day; write FIRST..LAST=NAME")
    begins = read_day(first)
    return begins, read_day(last) if last.strip() else begins, words.strip()


def _weekdays(text: str) -> tuple[int, ...]:
    names = [name.strip().lower() for name in text.split(",") if name.strip()]
    known = [weekday.lower() for weekday in WEEKDAYS]
    for name in names:
        if len(name) < 2 or not any(one.startswith(name) for one in known):
            raise BankError(f"{name[:20]!r} is no weekday; write monday,tuesday or mon,tue")
    return tuple(n for n, one in enumerate(known) if any(one.startswith(name) for name in names))


def _read(
    path: Path, held: SchoolCalendar, day: dt.date, zone: str
) -> tuple[SchoolCalendar, list[str]]:
    """The calendar with a file's days of this school year and the next, and what was left out."""
    from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

    from bank.calendar_ics import NotACalendarFile, read_ics

    first = dt.date(day.year - (day.month < 8), 8, 1)
    try:
        ZoneInfo(zone or "UTC")
        found = read_ics(path.read_bytes(), first, first + dt.timedelta(days=2 * 365), zone or None)
        made = found.calendar(held)
    except (NotACalendarFile, NotASchoolCalendar) as error:
        raise BankError(f"{path.name}: {error}") from None
    except (ZoneInfoNotFoundError, ValueError):
        raise BankError(f"{zone!r} is no time zone; write one such as America/Chicago") from None
    say(
        f"{path.name}: {counted(len(made.days_off) - len(held.days_off), 'day off', 'days off')},"
        f" {counted(len(made.half_days) - len(held.half_days), 'short morning')}"
        f" and {counted(len(made.terms), 'term')}"
    )
    return made, [f"{entry.first} {entry.title}" for entry in found.unknown]


def _show(held: SchoolCalendar, when: dt.date) -> None:
    from bank.calendar_picture import term_picture

    for line in term_picture(held, when, dt.date.today()).splitlines():
        say(line)
    why = held.why_off(when)
    if why:
        say(f"{day_title(when)}: no school ({why})")
    elif held.is_half_day(when):
        say(f"{day_title(when)}: a short morning")


def routine(
    day: str = DAY,
    step: list[str] = typer.Option(
        [], "--step", metavar="WORDS=MINUTES", help="A step; say all of them, in order."
    ),
    only_on: list[str] = typer.Option(
        [], "--only-on", metavar="STEP=WEEKDAYS", help="A step of some weekdays only."
    ),
    not_on_short: list[str] = typer.Option(
        [], "--not-on-short", metavar="STEP", help="A step that short mornings leave out."
    ),
    starts: str = typer.Option("", "--starts", metavar="TIME", help="When it starts, as in 8:50."),
    special: list[str] = typer.Option(
        [], "--special", metavar="WEEKDAY=WORDS", help="No words take it away."
    ),
    lunch: list[str] = typer.Option([], "--lunch", metavar="DATE=WORDS", help="Lunch of a day."),
    lunches: Path = typer.Option(
        None, "--lunches", metavar="FILE", help="A .csv with the columns date and lunch."
    ),
    plain: bool = typer.Option(False, "--plain", help="Go back to the routine that comes along."),
    as_json: bool = JSON,
) -> int:
    """Show or change the steps of the morning with their minutes, the specials, and lunch.

    The step "Word sort" is only for those who have a sort that day: binderbank sort mastered

    Example: binderbank routine --step "Binder page=15" --step Game=20 --special monday=Music
    """
    from bank.morning.routine import DEFAULT_ROUTINE, NotARoutine

    when = read_day(day)
    with use_bank() as bank:
        held = bank.morning.routine()
        try:
            made = DEFAULT_ROUTINE if plain else held
            if step:
                made = replace(made, steps=tuple(map(_step, step)))
            made = replace(made, steps=_timed(made.steps, only_on, not_on_short))
            made = replace(made, starts=starts or made.starts)
            made = replace(made, specials=_specials(made.specials, special))
            made = replace(made, lunches={**made.lunches, **_lunches(lunch, lunches)})
        except NotARoutine as error:
            raise BankError(str(error)) from None
        if made != held or plain:
            bank.morning.keep_routine(made)
        days = bank.morning.calendar
    if as_json:
        print_json({"day": when, **made.to_dict(), "minutes": made.minutes_of(when, days)})
        return DONE
    rows = table("minutes", "step", "from", "to", keep=(0, 2, 3))
    for timed in made.of_day(when, days):
        rows.add_row(str(timed.step.minutes), timed.step.name, timed.begins, timed.ends)
    screen = console()
    screen.print(day_title(when), style="bold")
    screen.print(rows)
    say(f"{made.minutes_of(when, days)} minutes in all")
    for name, words in (("special", made.special_of(when)), ("lunch", made.lunch_of(when))):
        if words:
            say(f"{name}: {words}")
    return DONE


def _step(text: str):  # type: ignore[no-untyped-def]
    import re

    from bank.morning.routine import MorningStep

    words, _, minutes = text.rpartition("=")
    if not words.strip() or not minutes.strip().isdigit():
        raise BankError(f"{text[:40]!r} is no step; write WORDS=MINUTES, such as Game=20")
    code = "-".join(re.findall(r"\w+", words.lower()))[:30] or "step"
    return MorningStep(code, words.strip(), int(minutes))


def _timed(steps, only_on: Sequence[str], not_on_short: Sequence[str]):  # type: ignore[no-untyped-def]
    """The steps with their weekdays and whether they stay on short mornings."""
    changed = list(steps)

    def place(name: str) -> int:
        for n, one in enumerate(changed):
            if name.strip().lower() in (one.code, one.name.lower()):
                return n
        raise BankError(f"there is no step {name!r}: {', '.join(one.name for one in changed)}")

    for text in only_on:
        name, _, days = text.partition("=")
        at = place(name)
        changed[at] = replace(changed[at], weekdays=_weekdays(days) if days else ())
    for name in not_on_short:
        at = place(name)
        changed[at] = replace(changed[at], short_morning=False)
    return tuple(changed)


def _specials(held, said: Sequence[str]) -> dict[int, str]:  # type: ignore[no-untyped-def]
    changed = dict(held)
    for text in said:
        name, _, words = text.partition("=")
        for weekday in _weekdays(name):
            changed.pop(weekday, None)
            if words.strip():
                changed[weekday] = words.strip()
    return changed


def _lunches(said: Sequence[str], path: Path | None) -> dict[dt.date, str]:
    import csv

    found = {}
    for text in said:
        on, _, words = text.partition("=")
        found[read_day(on)] = words.strip()
    if path:
        from bank.spreadsheet import read_text, separator

        lines = read_text(path).splitlines()
        rows = csv.DictReader(lines, delimiter=separator(lines[0] if lines else ""))
        names = {name.strip().lower() for name in rows.fieldnames or ()}
        if not {"date", "lunch"} <= names:
            raise BankError(f"{path.name}: the columns are date and lunch")
        for number, row in enumerate(rows, start=2):
            cells = {(name or "").strip().lower(): cell for name, cell in row.items()}
            on, words = (str(cells[name] or "").strip() for name in ("date", "lunch"))
            try:
                if on or words:
                    found[read_date(on)] = words
            except ValueError:
                raise BankError(
                    f"{path.name}: row {number}, column date: {on[:20]!r} is no date"
                ) from None
    return found
