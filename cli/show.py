"""How sets, items and keys look in the terminal, at 80 columns, without colour carrying meaning."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Any

from rich.console import Console
from rich.text import Text

from bank.classroom_days import GivenView, Key, KeySentence, SetView
from bank.item import Item
from bank.learner import grade_word
from bank.skill import SKILLS
from cli.common import table

SLOT_NAMES = {"question": "questions", "sentence": "sentence to fix", "topic": "topic"}


def show_set(screen: Console, one: SetView, why: bool = False) -> None:
    """One learner's set: a heading, the items with their levels, and what is less than wished."""
    learner = one.learner
    heading = Text(learner.code, style="bold")
    heading.append(f"  {learner.sign}, works alone from {learner.band}", style="not bold")
    short = ", short morning" if one.short else ""
    heading.append(f"  {one.state}{short}", style="not bold italic")
    rows: list[tuple[str, str, str]] = []
    for part in one.given:
        label = str(part.position + 1) if part.kind == "question" else _short_label(part.kind)
        shown = part.faulty or part.text if part.kind == "sentence" else part.text
        rows.append((label, shown, grade_range(part)))
        if part.choices and part.question_word != "yes-no":
            rows.append(("", "   ".join(f"({choice})" for choice in part.choices), ""))
        if why:
            rows.append(("", why_line(part), ""))
    lines = in_columns(rows, screen.width)
    for line in one.notes:
        lines += textwrap.wrap(
            f"note: {line}", screen.width, initial_indent="  ", subsequent_indent="    "
        )
    screen.print(heading)
    screen.print(Text("\n".join([*lines, ""])))


def shared_lines(sets: Sequence[SetView]) -> list[str]:
    """Who shares what today, and who has their own: a line for slots that are shared alike."""
    alike: dict[str, list[str]] = {}
    for kind, name in SLOT_NAMES.items():
        if said := _shared(sets, kind):
            alike.setdefault(said, []).append(name)
    return [f"{in_a_list(names).capitalize()}: {said}" for said, names in alike.items()]


def to_be_said_line(sets: Sequence[SetView]) -> str:
    """Whose questions cannot be circled, though that is how they answer; empty where all can."""
    found = []
    for one in sets:
        places = [
            str(part.position + 1)
            for part in one.of("question")
            if not part.choices and part.question_word != "yes-no"
        ]
        if places and one.learner.mode == "circles":
            many = "questions" if len(places) > 1 else "question"
            found.append(f"{one.learner.code} {many} {in_a_list(places)}")
    return f"nothing to circle, so it is to be said: {'; '.join(found)}" if found else ""


def _shared(sets: Sequence[SetView], kind: str) -> str:
    circles: dict[tuple[str, ...], None] = {}
    for one in sets:
        with_me = {
            code
            for part in one.of(kind)
            if not part.why.get("swapped")
            for code in part.why.get("shared_with", ())
        }
        if one.of(kind):
            circles[tuple(sorted({one.learner.code, *with_me}))] = None
    together = [f"{in_a_list(codes)} share" for codes in circles if len(codes) > 1]
    alone = [codes[0] for codes in circles if len(codes) == 1]
    if alone and together:
        together.append(f"{in_a_list(alone)} on their own (the band stands apart)")
    return "; ".join(together)


def in_a_list(words: Sequence[str]) -> str:
    """Words in a list as one says it.

    >>> in_a_list(["A1"]), in_a_list(["A1", "A2"]), in_a_list(["A1", "A2", "B3"])
    ('A1', 'A1 and A2', 'A1, A2 and B3')
    """
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


LABEL, LEVEL = 7, 14  # columns at the left and the right of a set


def in_columns(rows: Sequence[tuple[str, str, str]], width: int) -> list[str]:
    """Rows of a label, a text wrapped between whole words, and a short mark at the right.

    >>> in_columns([("1", "Can a fish swim?", "0.5"), ("2", "Is it?", "0.2")], 40)
    ['      1  Can a fish swim?  0.5', '      2  Is it?            0.2']
    """
    room = max(10, width - LABEL - 2 - LEVEL)
    wrapped = [textwrap.wrap(text, room, break_on_hyphens=False) or [""] for _, text, _ in rows]
    widest = max((len(line) for lines in wrapped for line in lines), default=0)
    made: list[str] = []
    for (label, _, right), lines in zip(rows, wrapped, strict=True):
        made.append(f"{label:>{LABEL}}  {lines[0]:<{widest}}  {right}".rstrip())
        made += [" " * (LABEL + 2) + line for line in lines[1:]]
    return made


def _short_label(kind: str) -> str:
    return {"sentence": "fix", "topic": "topic"}[kind]


def grade_range(part: GivenView) -> str:
    """A level in a column: the grade, with a mark where it is the specialist's own."""
    return grade_word(part.grade) + (" (placed)" if part.placed else "")


def why_line(part: GivenView) -> str:
    """Why this item: level and band, last seen, season, who shares it, what it was chosen over."""
    why = part.why
    band = why.get("band", [0, 0])
    said = [
        f"{part.item}: level {grade_word(part.grade)}, band {grade_word(band[0])} to {grade_word(band[1])}"
    ]
    said.append(f"last seen {why['last_seen']}" if why.get("last_seen") else "not seen before")
    if "season_ends_in" in why:
        said.append(f"its season ends in {why['season_ends_in']} days")
    if why.get("shared_with"):
        said.append(f"shared with {', '.join(why['shared_with'])}")
    if why.get("errors"):
        skills = (f"{code} ({state})" for code, state in why["errors"].items())
        said.append(f"errors left by skills: {', '.join(skills)}")
    if why.get("swapped"):
        said.append(f"swapped: {why['swapped']}")
    if why.get("over"):
        said.append(f"chosen over {', '.join(why['over'])}")
    return "; ".join(said)


def show_items(screen: Console, items: Sequence[Item]) -> None:
    rows = table("id", "kind", "level", "text", "tags", keep=(0, 1, 2))
    for item in items:
        grade = item.reading_grade
        level = (
            "-" if grade is None else grade_word(grade) + ("*" if item.level_as is not None else "")
        )
        state = "" if item.state == "ready" else f" [{item.state}]"
        tags = ", ".join([*item.themes, *map(str, item.seasons)])
        rows.add_row(item.id, item.kind, level, Text(item.text + state), Text(tags))
    screen.print(rows)
    if any(item.level_as is not None for item in items):
        screen.print("* placed by the specialist")


def show_item(screen: Console, item: Item, twins: Sequence[Item] = ()) -> None:
    """One item whole: its text, level with formulas, findings, versions and what it asks the same as."""
    screen.print(Text(f"{item.id}  {item.kind}, {item.state}", style="bold"))
    _hang(screen, f"  {item.text}")
    for number, version in enumerate(item.versions, start=1):
        skills = ", ".join(fix["skill"] for fix in version.fixes)
        _hang(screen, f"  version {number}: {version.faulty}")
        _hang(screen, f"             {len(version.fixes)} to fix: {skills}")
    if item.grade is not None and item.low is not None and item.high is not None:
        from bank.level.scale import in_words

        screen.print(
            Text(f"  level: {in_words(item.grade, item.low, item.high)}, {item.grade:.1f}")
        )
    if item.level_as is not None:
        screen.print(Text(f"  placed by the specialist: {grade_word(item.level_as)}"))
    for reason in item.reasons[:4]:
        _hang(screen, f"    {reason.get('said', '')}")
    for label, value in (
        ("question word", item.question_word),
        ("themes", ", ".join(item.themes)),
        ("seasons", ", ".join(map(str, item.seasons))),
        ("answer", item.answer),
        ("choices", " | ".join(item.choices)),
        ("starter", item.starter),
        ("as is", item.as_is),
        ("objection", item.objection),
    ):
        if value:
            _hang(screen, f"  {label}: {value}")
    show_findings(screen, item.text, item.findings)
    for twin in twins:
        _hang(screen, f"  asks the same as {twin.id}: {twin.text}")


def show_formulas(screen: Console, formulas: Sequence[dict[str, Any]]) -> None:
    """Every published formula's value, with a mark where the text is shorter than it is meant for."""
    if not formulas:
        return
    rows = table("published formula", "value", "meant for", keep=(0, 1, 2))
    for formula in formulas:
        mark = "  (this text is shorter)" if formula["shorter_than_meant"] else ""
        rows.add_row(
            formula["name"],
            f"{formula['value']:.1f} {formula['unit']}",
            f"{formula['meant_from']} words or more{mark}",
        )
    screen.print(rows)


def show_findings(screen: Console, text: str, findings: Sequence[dict[str, Any]]) -> None:
    for finding in findings:
        place = text[finding["start"] : finding["end"]]
        where = f' at "{place}"' if place else ""
        offer = finding.get("suggestion")
        offered = f' -> "{offer}"' if offer else ""
        said = f"{finding['on_screen']} ({finding['code']}){where}: {finding['message']}{offered}"
        _hang(screen, f"  {said}")


def _hang(screen: Console, line: str) -> None:
    """A line that hangs four columns below its start where it is long."""
    start = len(line) - len(line.lstrip())
    lines = textwrap.wrap(
        line.strip(),
        screen.width,
        initial_indent=" " * start,
        subsequent_indent=" " * (start + 4),
        break_on_hyphens=False,
    )
    screen.print(Text("\n".join(lines)), soft_wrap=True)


def show_key(screen: Console, key: Key, with_learners: bool = False) -> None:
    """The answer key of a day: sentences with numbered fixes, then expected answers."""
    for sentence in key.sentences:
        show_key_sentence(screen, sentence, with_learners)
    if not key.answers:
        return
    lines = []
    for answer in key.answers:
        who = f" ({', '.join(answer.learners)})" if with_learners else ""
        yes_no = {one.lower() for one in answer.choices} == {"yes", "no"}
        of = f"  (to choose from: {' / '.join(answer.choices)})"
        lines += textwrap.wrap(
            f"{answer.text}{who}  ->  {answer.answer}{of if answer.choices and not yes_no else ''}",
            screen.width,
            initial_indent="  ",
            subsequent_indent="    ",
            break_on_hyphens=False,
        )
    screen.print(Text("Expected answers", style="bold"))
    screen.print(Text("\n".join(lines)))


def show_key_sentence(screen: Console, sentence: KeySentence, with_learners: bool) -> None:
    """A sentence with numbered proofreading marks, the corrected one, and its fixes in order."""
    lines = ["Sentence to fix"]
    for number, (faulty, mine, codes) in enumerate(sentence.versions):
        # Where nobody has all errors, the first is what the board shows.
        who = f"  ({', '.join(codes) or 'on the board'})" if with_learners or not codes else ""
        if number == 0:
            lines += _marked(faulty, sentence.fixes, mine, screen.width)
            if who:
                lines.append(who)
        else:
            many = "fixes" if len(mine) > 1 else "fix"
            which = f"with {many} {', '.join(map(str, mine))} only:"
            lines += textwrap.wrap(
                f"{which} {faulty}{who}", screen.width - 4, subsequent_indent="  "
            )
    lines += textwrap.wrap(
        f"Corrected: {sentence.corrected}", screen.width - 4, subsequent_indent="  "
    )
    for number, fix in enumerate(sentence.fixes, start=1):
        rule = fix.get("explanation") or SKILLS[fix["skill"]].rule
        change = f"{fix['wrong'] or '(nothing)'} -> {fix['right'] or '(nothing)'}"
        lines += textwrap.wrap(
            f"{number:>3}  {fix['skill']:<22} {change}",
            screen.width,
            subsequent_indent=" " * 28,
            break_on_hyphens=False,
        )
        lines += textwrap.wrap(
            rule, screen.width, initial_indent=" " * 28, subsequent_indent=" " * 28
        )
    screen.print(Text("\n".join([*lines, ""])))


def _marked(
    faulty: str, fixes: Sequence[dict[str, Any]], mine: Sequence[int], width: int
) -> list[str]:
    """The faulty text with its marks; plain where a fix does not know its place."""
    from bank.edit.fix import Fix
    from bank.edit.proof import proof_lines

    known = set(Fix.__dataclass_fields__)
    try:
        stored = [fixes[number - 1] for number in mine]
        made = [Fix(**{name: fix[name] for name in fix if name in known}) for fix in stored]
    except TypeError:
        return [f"  {faulty}"]
    return [f"  {line}".rstrip() for line in proof_lines(faulty, made, width - 2, legend=False)]
