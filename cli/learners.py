"""Learners on the command line: codes and settings, no names."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from typing import TYPE_CHECKING

import typer

from bank.item import BankError
from cli.common import (
    JSON,
    TEACHER,
    add_commands,
    console,
    print_json,
    read_day,
    read_span,
    say,
    table,
    use_bank,
)
from cli.learner_page import learner_page

if TYPE_CHECKING:
    from bank.classroom import Bank
    from bank.learner import Away, Band, Learner

learner_app = typer.Typer(
    no_args_is_help=True, help="Add, list and change learners (codes, no names)."
)


learner_app.command("page")(learner_page)


def register(app: typer.Typer, only: str = "") -> None:
    add_commands(app, TEACHER, {"learner": learner_app}, only)


@learner_app.command("add")
def learner_add(
    code: str = typer.Argument(..., metavar="CODE", help="A short code of your choosing."),
    reads: str = typer.Option(..., "--reads", help="Reading grade as taught: K or a number."),
    band: str = typer.Option("", "--band", help="Band for working alone, such as K-1.5."),
    questions: int = typer.Option(5, "--questions", help="Questions in a set."),
    errors: int = typer.Option(0, "--errors", help="Errors in the sentence (0: from the band)."),
    group: str = typer.Option("", "--group", help="A group that shares its questions."),
    avoid: list[str] = typer.Option([], "--avoid", help="A theme to avoid; may be said again."),
    mode: str = typer.Option("writes", "--mode", help="writes, circles, types, says or signs."),
    sign: str = typer.Option("", "--sign", help="Picture sign; else the next free one."),
    skill: list[str] = typer.Option(
        [], "--skill", help="SKILL or SKILL=in-work; may be said again."
    ),
    as_json: bool = JSON,
) -> int:
    """Add a learner. The band follows from the reading grade: 2.0 to 0.5 below it.

    Use a code, not a name; in a small class initials give a learner away, so avoid those too.

    Example: binderbank learner add K4 --reads 2.5 --group A
    """
    settings = {
        "questions": questions,
        "group": group,
        "avoid": tuple(avoid),
        "mode": mode,
        "sign": sign,
    }
    if band:
        settings["band"] = _band(band)
    if errors:
        settings["errors"] = errors
    if skill:
        settings["skills"] = _skills(skill)
    with use_bank() as bank:
        made = bank.learners.add(code, _grade(reads), **settings)
        notes = _themes_of_nothing(bank, avoid)
    return _show_learners([made], as_json, notes)


@learner_app.command("list")
def learner_list(as_json: bool = JSON) -> int:
    """List the learners with their bands and settings.

    Example: binderbank learner list
    """
    with use_bank() as bank:
        return _show_learners(list(bank.learners), as_json)


@learner_app.command("change")
def learner_change(
    code: str = typer.Argument(..., metavar="CODE", help="The learner's code."),
    reads: str = typer.Option("", "--reads", help="Reading grade as taught; moves the band, too."),
    band: str = typer.Option("", "--band", help="Band for working alone, such as K-1.5."),
    questions: int = typer.Option(
        -1, "--questions", help="Questions in a set.", show_default=False
    ),
    errors: int = typer.Option(0, "--errors", help="Errors in the sentence.", show_default=False),
    group: str = typer.Option(None, "--group", help="A group that shares its questions."),
    avoid: list[str] = typer.Option([], "--avoid", help="Add a theme to avoid."),
    allow: list[str] = typer.Option([], "--allow", help="Take a theme to avoid away."),
    mode: str = typer.Option("", "--mode", help="writes, circles, types, says or signs."),
    sign: str = typer.Option("", "--sign", help="Picture sign."),
    skill: list[str] = typer.Option(
        [], "--skill", help="SKILL=taught, =in-work, =mastered or =none."
    ),
    goal: list[str] = typer.Option([], "--goal", help="Question word and weight: why=2."),
    new_code: str = typer.Option("", "--code", help="A new code."),
    as_json: bool = JSON,
) -> int:
    """Change a learner's settings; what is not named stays.

    Example: binderbank learner change K4 --reads 3 --goal why=2
    """
    from bank.item import QUESTION_WORDS

    with use_bank() as bank:
        old = bank.learners.get(code)
        settings: dict[str, object] = {}
        if reads:
            settings["taught"] = _grade(reads)
        if band:
            settings["band"] = _band(band)
        if questions >= 0:
            settings["questions"] = questions
        for name, value in (("errors", errors), ("mode", mode), ("sign", sign), ("code", new_code)):
            if value:
                settings[name] = value
        if group is not None:
            settings["group"] = group
        if avoid or allow:
            settings["avoid"] = tuple(({*old.avoid} | {*avoid}) - {*allow})
        if skill:
            changed = {**old.skills, **_skills(skill)}
            settings["skills"] = {one: state for one, state in changed.items() if state != "none"}
        if goal:
            goals = dict(old.support.get("goals", {}))
            for text in goal:
                word, _, weight = text.partition("=")
                if word not in QUESTION_WORDS:
                    raise BankError(f"{word!r} is no question word: {', '.join(QUESTION_WORDS)}")
                goals[word] = _number(weight or "2")
            settings["support"] = {**old.support, "goals": goals}
        if not settings:
            raise BankError("nothing to change; name a setting, such as --reads 3")
        made = bank.learners.change(code, **settings)
        notes = _themes_of_nothing(bank, avoid)
    return _show_learners([made], as_json, notes)


@learner_app.command("away")
def learner_away(
    code: str = typer.Argument(..., metavar="CODE", help="The learner's code."),
    first: str = typer.Argument(..., metavar="DATE", help="The first day away."),
    last: str = typer.Argument("", metavar="[DATE]", help="The last day away; else the same day."),
    back: bool = typer.Option(False, "--back", help="Take such a stretch away again."),
) -> int:
    """Say that a learner is away: no set is drawn for those days.

    Example: binderbank learner away K4 2026-12-01 2026-12-03
    """
    from bank.learner import Away

    stretch = Away(read_day(first), read_day(last or first))
    with use_bank() as bank:
        old = bank.learners.get(code)
        kept = tuple(away for away in old.away if away != stretch)
        bank.learners.change(code, away=kept if back else (*kept, stretch))
    until = f"from {stretch.first} to {stretch.last}" if last else f"on {stretch.first}"
    say(f"{old.code} is {'back' if back else 'away'} {until}")
    return 0


def _themes_of_nothing(bank: Bank, avoid: Sequence[str]) -> list[str]:
    """A line for each theme to avoid that no item has: it may be misspelled, and would keep nothing away."""
    if not avoid or not len(bank.items):
        return []
    import difflib

    known = {value for family, value, _ in bank.items.tags() if family == "theme"}
    lines = []
    for theme in (one.strip().lower() for one in avoid):
        if theme not in known:
            near = difflib.get_close_matches(theme, known, n=3)
            hint = f"; is it {' or '.join(near)}?" if near else ""
            lines.append(f"no item has the theme {theme!r} yet, so it keeps nothing away{hint}")
    return lines


def _show_learners(learners: list[Learner], as_json: bool, notes: Sequence[str] = ()) -> int:
    for line in notes:
        say(line, to_errors=True)
    if as_json:
        print_json({"learners": [_learner_dict(one) for one in learners]})
        return 0
    if not learners:
        say("there is no learner yet; add one: binderbank learner add K4 --reads 2")
        return 0
    rows = table(
        "code", "sign", "reads", "alone from", "set", "answers", "group", "avoids", keep=range(6)
    )
    for one in learners:
        rows.add_row(
            one.code,
            one.sign,
            _word(one.taught),
            str(one.band),
            f"{one.questions} + {one.errors} errors",
            one.mode,
            one.group or "-",
            ", ".join(one.avoid) or "-",
        )
    console().print(rows)
    today = dt.date.today()
    for one in learners:
        ahead = [away for away in sorted(one.away, key=_first) if away.last >= today]
        if ahead:
            days = ", ".join(
                f"{away.first}" + (f" to {away.last}" if away.last != away.first else "")
                for away in ahead
            )
            say(f"{one.code} is away: {days}")
    return 0


def _first(away: Away) -> dt.date:
    return away.first


def _learner_dict(one: Learner) -> dict[str, object]:
    return {
        "code": one.code,
        "sign": one.sign,
        "reads": one.taught,
        "band": [one.band.low, one.band.high],
        "questions": one.questions,
        "errors": one.errors,
        "group": one.group,
        "avoid": list(one.avoid),
        "mode": one.mode,
        "away": [[away.first, away.last] for away in one.away],
        "skills": one.skills,
        "support": one.support,
    }


def _word(grade: float) -> str:
    from bank.learner import grade_word

    return grade_word(grade)


def _grade(text: str) -> float:
    return 0.0 if text.strip().upper() == "K" else _number(text)


def _number(text: str) -> float:
    try:
        number = float(text)
    except ValueError:
        raise BankError(f"{text[:20]!r} is no number; write K or a number such as 2.5") from None
    if not 0 <= number <= 12:
        raise BankError(f"{text} is out of range; a reading grade lies between K and 12")
    return number


def _band(text: str) -> Band:
    from bank.learner import Band

    return Band(*read_span(text))


def _skills(texts: list[str]) -> dict[str, str]:
    from bank.skill import skill

    found = {}
    for text in texts:
        code, _, state = text.partition("=")
        try:
            skill(code)
        except ValueError:
            from bank.skill import SKILLS

            raise BankError(f"{code!r} is no skill; it is one of {', '.join(SKILLS)}") from None
        found[code] = state or "taught"
    return found
