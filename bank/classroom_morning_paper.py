"""The rest of the morning on paper, on the board and in a few lines for each learner's page."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from bank.item import BankError

if TYPE_CHECKING:
    from bank.classroom_morning import Morning
    from bank.morning.tally import Turn
    from bank.page.content import DayContent, LearnerPage, Made


@dataclass(frozen=True, slots=True)
class MorningLines:
    """What a learner's page says about the morning."""

    job: str = ""
    sort: str = ""
    basket: str = ""


def with_morning(content: DayContent, morning: Morning) -> DayContent:
    """The day with its turns, the steps of the routine, and its special and lunch where they are set.

    The steps are the ones that are marked afterwards, in the same words.
    """
    from bank.page.content import PageTurn

    day = content.date
    if morning.has_turns:
        signs = {one.code: one.sign for one in morning.days.learners()}
        turns = tuple(
            PageTurn(name, code, signs.get(code, "circle"))
            for name, code in held_jobs(morning, day)
        )
        content = replace(content, turns=turns)
    routine = morning.routine()
    special, lunch = routine.special_of(day), routine.lunch_of(day)
    return replace(
        content,
        steps=tuple(timed.step.name for timed in routine.of_day(day, morning.calendar)),
        specials=(special,) if special else content.specials,
        lunch=lunch or content.lunch,
    )


def with_lines(pages: Sequence[LearnerPage], morning: Morning, day: dt.date) -> list[LearnerPage]:
    """The pages with a line about each learner's job, sort and basket.

    Who has no sort has no step for it.
    """
    lines = morning_lines(morning, day, [page.code for page in pages])
    sorting = tuple(step.name for step in morning.routine().steps if step.needs_sort)
    return [
        replace(
            page,
            job=said.job,
            sort=said.sort,
            basket=said.basket,
            without=() if said.sort else sorting,
        )
        for page in pages
        for said in [lines.get(page.code, MorningLines())]
    ]


def morning_lines(morning: Morning, day: dt.date, codes: Sequence[str]) -> dict[str, MorningLines]:
    """For each learner the jobs of a day, the day's sort, and the books of the week."""
    jobs: dict[str, list[str]] = {}
    if morning.has_turns:
        for name, code in held_jobs(morning, day):
            jobs.setdefault(code, []).append(name)
    sorts = morning.sorts_of(day, codes)
    titles = {item: morning.sort(item).title for item in set(sorts.values())}
    baskets = morning.told_baskets(day)
    return {
        code: MorningLines(
            ", ".join(jobs.get(code, ())),
            titles.get(sorts.get(code, ""), ""),
            ", ".join(baskets.get(code, ())),
        )
        for code in codes
    }


def held_jobs(morning: Morning, day: dt.date) -> list[tuple[str, str]]:
    """Each job of a day by name with each learner who has it, as a page tells them."""
    return [(job.name, code) for job, code, _ in morning.who(morning.told(day).turns, day)]


def turn_paper(
    morning: Morning, turns: Sequence[Turn], week: Sequence[dt.date], paper: str
) -> Made:
    """The week's turns for the wall, and a how-to card for each job with steps."""
    from bank.page import JobCard, TurnRow, turn_sheet

    if not week:
        raise BankError("there is no school day in this week")
    by_day = {day: morning.who(turns, day) for day in week}
    jobs = {job.code: job for day in week for job, _, _ in by_day[day]}
    order = [job.code for job in morning.settings().jobs] + list(jobs)
    rows = [
        TurnRow(
            jobs[code].name,
            tuple(
                ", ".join(who for job, who, _ in by_day[day] if job.code == code) for day in week
            ),
        )
        for code in dict.fromkeys(order)
        if code in jobs
    ]
    cards = [JobCard(job.name, job.steps) for job in jobs.values()]
    return turn_sheet(week, rows, cards, paper)


def sort_paper(
    morning: Morning, whose: Mapping[str, Sequence[str]], day: dt.date, paper: str
) -> Made:
    """Word sorts as cards to cut, a set for each learner of `whose`, with the key for the aide.

    A sort that is nobody's has one set.
    """
    from bank.page import CardSet, sort_cards

    cards, keys = [], []
    for item, codes in whose.items():
        sort = morning.sort(item)
        columns = tuple((column.heading, column.words) for column in sort.columns)
        title = f"{sort.title} ({item})"
        cards += [CardSet(f"{code}: {title}", sort.cards, columns) for code in codes]
        if not codes:
            cards.append(CardSet(title, sort.cards, columns))
        keys.append(CardSet(f"{title}: {sets_said(codes)}", sort.cards, columns))
    if not cards:
        raise BankError(
            "nobody has a word sort that day: make one (binderbank sort make ai-ay), and say who has"
            " mastered its pattern (binderbank sort mastered CODE --add ai-ay)"
        )
    return sort_cards(day, cards, keys, paper)


def sets_said(codes: Sequence[str]) -> str:
    """How many sets of cards a sort has, and for whom.

    >>> sets_said(["K4"]), sets_said(["K4", "B2"]), sets_said([])
    ('1 set of cards, for K4', '2 sets of cards, for K4, B2', '1 set of cards')
    """
    said = f"{max(1, len(codes))} set{'s' if len(codes) > 1 else ''} of cards"
    return f"{said}, for {', '.join(codes)}" if codes else said


def building_paper(
    morning: Morning, code: str, count: int, phrases: bool, day: dt.date, paper: str
) -> Made:
    """Correct sentences at a learner's level, cut into words or phrases, with their key."""
    from bank.morning.strips import NoStrips, phrase_strips, word_strips
    from bank.page import CardSet, building_strips
    from bank.store_items import Query, find_items

    learner = morning.days.learners([code])[0]
    band = learner.band
    found = find_items(morning.store, Query("", "sentence", "ready", (), band.low, band.high))
    cut = phrase_strips if phrases else word_strips
    sets: list[CardSet] = []
    # Each day begins at another sentence.
    start = day.toordinal() * count % max(1, len(found))
    for item in [*found[start:], *found[:start]]:
        if len(sets) == count:
            break
        if set(item.themes) & set(learner.avoid):
            continue
        try:
            strips = cut(item.text, day.toordinal())
        except NoStrips:
            continue
        sets.append(CardSet(f"{learner.code} {item.id}", strips.mixed, (), strips.sentence))
    if not sets:
        raise BankError(f"the bank has no sentence to build at the level of {learner.code}")
    return building_strips(day, sets, paper)
