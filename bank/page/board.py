"""The board: the day on a screen, one thing at a time, in one file that needs no network."""

from __future__ import annotations

import base64
from collections.abc import Iterable, Sequence
from html import escape
from importlib.resources import files
from string import Template

from bank.page.content import FACES, DayContent, LearnerPage, Made, PageFile, PageFix, Picture
from bank.page.key import SharedSentence, shared_questions, shared_sentences, shared_topics
from bank.page.signs import sign_picture
from bank.page.spots import spots
from bank.page.typeset import face_bytes

# Letters of a prompt up to which it is set large, or middling, on the board.
SHORT, MIDDLE = 70, 150
# What a list on a screen of 1280 by 720 has room for, in such points: three columns of so many
# letters a line. Beside the lines of today there is room for two rows of jobs.
LIST_HEIGHT, LIST_LINE, LIST_GAP, LIST_HEADING = 425, 34, 13, 70
COLUMNS, COLUMN_LETTERS = 3, 20
TODAY_JOBS = 2 * (LIST_LINE + LIST_GAP)

_List = tuple[str, Sequence[tuple[str, str]]]  # a name, and signs with what is said beside each


def board_html(day: DayContent, learners: Sequence[LearnerPage], face: str = FACES[0]) -> Made:
    """The board of `day` for these learners as one HTML file.

    Give it the pages of one group for that group's board; a sentence is shown in its fullest faulty
    version. Whatever is typed into its lines stays on the screen and is gone when it is closed.
    """
    jobs = [(turn.sign, f"{turn.job}: {turn.code}") for turn in day.turns]
    beside = _height(jobs) <= TODAY_JOBS
    things = [_today(day, jobs if beside else [])]
    places = [_place("Today", first=True)]
    lists = _views([("Jobs", jobs)] if not beside else [], "Jobs", "turns")
    for views in (lists, _work(learners)):
        for title, body in views:
            things.append(_list_thing(title, body))
            places.append(_place(title, first=title == views[0][0]))
    for number, (question, owners) in enumerate(shared_questions(learners), 1):
        choices = () if question.is_yes_no else question.choices
        whose = _whose(owners, learners)
        things.append(_prompt(f"Question {number}", question.text, whose, choices=choices))
        places.append(_place(str(number), f"Question {number}", first=number == 1))
    sentences = shared_sentences(learners)
    for label, shared in zip(_labels("Sentence", len(sentences)), sentences, strict=True):
        things.append(_sentence(label, shared, _whose(shared.owners, learners)))
        places.append(_place(label, first=shared is sentences[0]))
    topics = shared_topics(learners)
    for label, (text, owners) in zip(_labels("Journal", len(topics)), topics.items(), strict=True):
        picture = next((p.topic.picture for p in owners if p.topic and p.topic.picture), None)
        things.append(_prompt(label, text, _whose(owners, learners), picture))
        places.append(_place(label, first=text == next(iter(topics))))
    layout = files("bank.page") / "layout"
    page = Template((layout / "board.html").read_text(encoding="utf-8")).substitute(
        title=escape(f"Board, {day.long_date}"),
        date=escape(day.long_date),
        font=base64.b64encode(face_bytes(face)).decode(),
        style=(layout / "board.css").read_text(encoding="utf-8"),
        script=(layout / "board.js").read_text(encoding="utf-8"),
        things="\n".join(things),
        credits="".join(f" {escape(words)}." for words in _credits(day, learners)),
        places="\n".join(places),
    )
    return Made((PageFile(f"{day.date.isoformat()}-board.html", page.encode()),))


def _credits(day: DayContent, learners: Sequence[LearnerPage]) -> list[str]:
    """What the pictures of signs ask to have said, each once."""
    signs = [*(page.sign for page in learners), *(turn.sign for turn in day.turns)]
    said = (sign_picture(sign)[0].credit for sign in dict.fromkeys(signs))
    return list(dict.fromkeys(words for words in said if words))


def _labels(name: str, count: int) -> list[str]:
    """A name for each of `count` things: with a number only where there are several."""
    return [name] if count == 1 else [f"{name} {number}" for number in range(1, count + 1)]


def _place(label: str, name: str = "", first: bool = False) -> str:
    """The button of a thing; that of the `first` of its kind stays where only some are shown."""
    named = f' aria-label="{escape(name)}"' if name else ""
    kept = ' class="first"' if first else ""
    return f'<li{kept}><button type="button"{named}>{escape(label)}</button></li>'


def _picture(picture: Picture, words: str | None = None) -> str:
    kind = "svg+xml" if picture.kind == "svg" else picture.kind
    data = base64.b64encode(picture.data).decode()
    alt = picture.words if words is None else words
    return f'<img src="data:image/{kind};base64,{data}" alt="{escape(alt)}">'


# So many letters fit on a line of the board; a browser that fits the box to its words needs no rows.
_A_LINE = 40


def _today(day: DayContent, jobs: Sequence[tuple[str, str]]) -> str:
    known = {
        "Weather": day.weather,
        "Temperature": day.temperature,
        "Lunch": day.lunch,
        "Specials": ", ".join(day.specials),
    }
    lines = "\n".join(
        f"<label>{escape(label)}"
        f'<textarea rows="{1 + len(words) // _A_LINE}" autocomplete="off">'
        f"{escape(words)}</textarea></label>"
        for label, words in known.items()
    )
    listed = f"\n{_list('Jobs', jobs, 'turns')}" if jobs else ""
    return (
        '<section class="thing" aria-labelledby="thing-today">\n'
        '<h1 id="thing-today" tabindex="-1">Today</h1>\n'
        f'<div class="lines">\n{lines}\n</div>{listed}\n</section>'
    )


def _list(name: str, rows: Sequence[tuple[str, str]], style: str) -> str:
    """Signs and what is said beside each."""
    inside = "\n".join(
        f"<li>{_picture(sign_picture(sign)[0], '')}{escape(words)}</li>" for sign, words in rows
    )
    return f'<ul class="{style}" aria-label="{name}">\n{inside}\n</ul>'


def _height(rows: Sequence[tuple[str, str]]) -> int:
    """How high a list stands on a screen of 1280 by 720, the row with the longest words deciding."""
    lines = [1 + (len(words) - 1) // COLUMN_LETTERS for _, words in rows]
    tops = [max(lines[at : at + COLUMNS]) for at in range(0, len(lines), COLUMNS)]
    return sum(top * LIST_LINE + LIST_GAP for top in tops)


def _work(learners: Sequence[LearnerPage]) -> list[tuple[str, str]]:
    """Who works on which word sort, and who reads which books, where there are any."""
    lists = [
        (
            "Word sorts",
            [(page.sign, f"{page.code}: {page.sort}") for page in learners if page.sort],
        ),
        (
            "Books to read",
            [(page.sign, f"{page.code}: {page.basket}") for page in learners if page.basket],
        ),
    ]
    return _views([(name, rows) for name, rows in lists if rows], "Sorts and books", "work")


def _views(lists: Sequence[_List], title: str, style: str) -> list[tuple[str, str]]:
    """Titles and bodies of the views of some lists: one where it has room, else it goes on in others."""
    views: list[list[_List]] = []
    for name, rows in lists:
        for row in rows:
            grown = _grown(views[-1], name, row) if views else []
            if views and sum(_height(some) + LIST_HEADING for _, some in grown) <= LIST_HEIGHT:
                views[-1] = grown
            else:
                views.append([(name, [row])])
    made = []
    for label, view in zip(_labels(title, len(views)), views, strict=True):
        parts = [
            ("" if name == title else f"<h2>{name}</h2>\n") + _list(name, some, style)
            for name, some in view
        ]
        made.append((label, "\n".join(parts)))
    return made


def _grown(view: Sequence[_List], name: str, row: tuple[str, str]) -> list[_List]:
    """The view with one row more, under the name that it belongs to."""
    if view[-1][0] == name:
        return [*view[:-1], (name, [*view[-1][1], row])]
    return [*view, (name, [row])]


def _list_thing(title: str, body: str) -> str:
    return (
        f'<section class="thing" aria-label="{title}">\n<h1 tabindex="-1">{title}</h1>\n'
        f"{body}\n</section>"
    )


def _whose(owners: Iterable[LearnerPage], learners: Sequence[LearnerPage]) -> str:
    """The signs of those who have a prompt, where it is not everybody."""
    chosen = list(owners)
    if len({page.code for page in chosen}) == len({page.code for page in learners}):
        return ""
    signs = "".join(
        f"<li>{_picture(sign_picture(page.sign)[0], '')}{escape(page.code)}</li>" for page in chosen
    )
    return f'\n<ul class="for" aria-label="For">{signs}</ul>'


def _size(text: str) -> str:
    return "short" if len(text) <= SHORT else "middle" if len(text) <= MIDDLE else "long"


def _prompt(
    title: str,
    text: str,
    whose: str,
    picture: Picture | None = None,
    choices: Sequence[str] = (),
) -> str:
    said = f'<p class="said">{escape(text)}</p>'
    if choices:
        listed = "".join(f"<li>{escape(choice)}</li>" for choice in choices)
        said += f'\n<ul class="choices" aria-label="Choose one">{listed}</ul>'
    if picture:
        credit = f"<figcaption>{escape(picture.credit)}</figcaption>" if picture.credit else ""
        said = f'<div class="with-picture">{said}<figure>{_picture(picture)}{credit}</figure></div>'
    return (
        f'<section class="thing {_size(text + "".join(choices))}" aria-label="{escape(title)}">\n'
        f'<h1 tabindex="-1">{escape(title)}</h1>\n{said}{whose}\n</section>'
    )


def _sentence(label: str, shared: SharedSentence, whose: str) -> str:
    # Set as small as it must be when all its fixes are open.
    text = shared.fullest.faulty + "".join(fix.right for fix in shared.fixes)
    lines = "\n".join(f"<li>{_line(fix)}</li>" for fix in shared.fixes)
    return (
        f'<section class="thing {_size(text)}" aria-label="{label}">\n'
        f'<h1 tabindex="-1">{label} to fix</h1>\n'
        f'<p class="said">{_pieces(shared)}</p>\n'
        f'<ol class="fixes" aria-live="polite">\n{lines}\n</ol>\n'
        f'<p class="right">{escape(shared.fullest.corrected)}</p>\n'
        '<div class="doors"><button type="button" class="open-more">Open a fix</button>'
        f'<button type="button" class="close-one">Close it</button></div>{whose}\n</section>'
    )


def _line(fix: PageFix) -> str:
    if not fix.wrong:
        change = f"Put in {fix.right}"
    elif not fix.right:
        change = f"Take out {fix.wrong}"
    else:
        change = f"{fix.wrong} → {fix.right}"
    why = f" {fix.why}" if fix.why else ""
    return escape(f"{fix.number}. {change} ({fix.label}).{why}")


def _pieces(shared: SharedSentence) -> str:
    """The faulty text with each spot in a span that opens with its first fix."""
    faulty = shared.fullest.faulty
    own = [fix for fix in shared.fixes if fix.start >= 0]
    row: list[str] = []
    done = 0
    for spot in spots(faulty, shared.fullest.corrected, own)[0]:
        row.append(escape(faulty[done : spot.start]))
        wrong = escape(faulty[spot.start : spot.end])
        right = escape(shared.fullest.corrected[spot.right_start : spot.right_end])
        row.append(
            f'<span class="fix" data-first="{spot.numbers[0]}"><del>{wrong}</del>'
            f"<ins>{right}</ins></span>"
        )
        done = spot.end
    return "".join([*row, escape(faulty[done:])])
