"""The tables of a bank and the migrations that make them; loaded only to make or migrate a bank.

Each migration is one transaction of sqlite-utils; `store.migrate` keeps a copy of the file before.
A migration that has landed never changes: a later one is added below it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sqlite_utils import Migrations

if TYPE_CHECKING:
    from sqlite_utils.db import Database

migrations = Migrations("binderbank")

_FIRST = """
CREATE TABLE setting (
    key TEXT PRIMARY KEY,
    value TEXT NOT NULL CHECK (json_valid(value))
) WITHOUT ROWID;

CREATE TABLE item (
    id TEXT PRIMARY KEY CHECK (length(id) BETWEEN 1 AND 40),
    kind TEXT NOT NULL CHECK (kind IN ('question', 'sentence', 'topic', 'sort')),
    text TEXT NOT NULL CHECK (length(text) BETWEEN 1 AND 300),
    folded TEXT NOT NULL UNIQUE,
    state TEXT NOT NULL CHECK (state IN ('draft', 'ready', 'retired')),
    answer TEXT NOT NULL DEFAULT '',
    choices TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(choices)),
    starter TEXT NOT NULL DEFAULT '',
    words TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(words)),
    picture TEXT NOT NULL DEFAULT '',
    source TEXT NOT NULL DEFAULT '',
    author TEXT NOT NULL DEFAULT '',
    grade REAL CHECK (grade BETWEEN 0 AND 12),
    low REAL, high REAL,
    level_as REAL CHECK (level_as BETWEEN 0 AND 12),
    formulas TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(formulas)),
    reasons TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(reasons)),
    findings TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(findings)),
    ask TEXT CHECK (ask IS NULL OR json_valid(ask)),
    method TEXT NOT NULL DEFAULT '',
    as_is TEXT NOT NULL DEFAULT '',
    objection TEXT NOT NULL DEFAULT '',
    sort TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(sort)),
    history TEXT NOT NULL DEFAULT '',
    made TEXT NOT NULL,
    changed TEXT NOT NULL
);
CREATE INDEX item_state ON item (state, kind);

CREATE TABLE version (
    item TEXT NOT NULL REFERENCES item (id) ON DELETE CASCADE,
    position INTEGER NOT NULL,
    faulty TEXT NOT NULL CHECK (length(faulty) BETWEEN 1 AND 400),
    fixes TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(fixes)),
    PRIMARY KEY (item, position)
) WITHOUT ROWID;

CREATE TABLE tag (
    item TEXT NOT NULL REFERENCES item (id) ON DELETE CASCADE,
    family TEXT NOT NULL CHECK (family IN ('theme', 'season', 'question-word', 'skill', 'note')),
    value TEXT NOT NULL CHECK (length(value) BETWEEN 1 AND 300),
    position INTEGER NOT NULL DEFAULT 0,
    PRIMARY KEY (item, family, value)
) WITHOUT ROWID;
CREATE INDEX tag_value ON tag (family, value, item);

-- What can be drawn: one row for each ready item and each of its seasons, in the order in which
-- the draw walks: kind, tenth of a grade, last day of the season (0: none), then a fixed shuffle.
CREATE TABLE shelf (
    kind TEXT NOT NULL,
    tenth INTEGER NOT NULL,
    ends INTEGER NOT NULL,
    place INTEGER NOT NULL,
    item TEXT NOT NULL REFERENCES item (id) ON DELETE CASCADE,
    starts INTEGER NOT NULL,
    grade REAL NOT NULL,
    question_word TEXT NOT NULL,
    theme TEXT NOT NULL,
    PRIMARY KEY (kind, tenth, ends, place, item)
) WITHOUT ROWID;
CREATE INDEX shelf_item ON shelf (item);

CREATE TABLE ask_key (
    key TEXT NOT NULL,
    item TEXT NOT NULL REFERENCES item (id) ON DELETE CASCADE,
    PRIMARY KEY (key, item)
) WITHOUT ROWID;
CREATE INDEX ask_key_item ON ask_key (item);

CREATE TABLE twin (
    item TEXT NOT NULL REFERENCES item (id) ON DELETE CASCADE,
    other TEXT NOT NULL REFERENCES item (id) ON DELETE CASCADE,
    PRIMARY KEY (item, other)
) WITHOUT ROWID;
CREATE INDEX twin_other ON twin (other);

CREATE TABLE learner (
    number INTEGER PRIMARY KEY,
    code TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(code) BETWEEN 1 AND 12),
    sign TEXT NOT NULL,
    taught REAL NOT NULL CHECK (taught BETWEEN 0 AND 12),
    band_low REAL NOT NULL CHECK (band_low >= 0),
    band_high REAL NOT NULL CHECK (band_high <= 12 AND band_high > band_low),
    questions INTEGER NOT NULL CHECK (questions BETWEEN 0 AND 20),
    errors INTEGER NOT NULL CHECK (errors BETWEEN 1 AND 12),
    "group" TEXT NOT NULL DEFAULT '',
    mode TEXT NOT NULL CHECK (mode IN ('writes', 'circles', 'types', 'says', 'signs')),
    support TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(support))
);
CREATE TABLE learner_avoid (
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    theme TEXT NOT NULL,
    PRIMARY KEY (learner, theme)
) WITHOUT ROWID;
CREATE TABLE learner_skill (
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    skill TEXT NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('taught', 'in-work', 'mastered')),
    PRIMARY KEY (learner, skill)
) WITHOUT ROWID;
CREATE TABLE learner_away (
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    first TEXT NOT NULL,
    last TEXT NOT NULL CHECK (last >= first),
    PRIMARY KEY (learner, first)
) WITHOUT ROWID;

CREATE TABLE day_set (
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    day TEXT NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('proposed', 'printed', 'used', 'unused')),
    short INTEGER NOT NULL DEFAULT 0,
    notes TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(notes)),
    PRIMARY KEY (learner, day)
) WITHOUT ROWID;
CREATE INDEX day_set_day ON day_set (day);

-- One item of a set. `printed` keeps the item as it stood when the set was printed.
CREATE TABLE given (
    learner INTEGER NOT NULL,
    day TEXT NOT NULL,
    kind TEXT NOT NULL,
    position INTEGER NOT NULL,
    item TEXT NOT NULL REFERENCES item (id),
    version INTEGER,
    keep TEXT CHECK (keep IS NULL OR json_valid(keep)),
    rung INTEGER NOT NULL,
    why TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(why)),
    printed TEXT CHECK (printed IS NULL OR json_valid(printed)),
    counts INTEGER NOT NULL DEFAULT 1,
    PRIMARY KEY (learner, day, kind, position),
    FOREIGN KEY (learner, day) REFERENCES day_set (learner, day) ON DELETE CASCADE
) WITHOUT ROWID;
CREATE INDEX given_item ON given (learner, item, day) WHERE counts = 1;
CREATE INDEX given_by_item ON given (item);

CREATE TABLE swap (
    id INTEGER PRIMARY KEY,
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    day TEXT NOT NULL,
    was TEXT NOT NULL,
    now TEXT,
    reason TEXT NOT NULL,
    made TEXT NOT NULL
);

CREATE TABLE mark (
    id INTEGER PRIMARY KEY,
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    day TEXT NOT NULL,
    kind TEXT NOT NULL,
    position INTEGER NOT NULL DEFAULT 0,
    item TEXT,
    part TEXT NOT NULL DEFAULT '',
    outcome TEXT NOT NULL,
    help TEXT NOT NULL DEFAULT '',
    attempt TEXT,
    replaced INTEGER NOT NULL DEFAULT 0,
    made TEXT NOT NULL
);
CREATE INDEX mark_day ON mark (learner, day);
CREATE INDEX mark_item ON mark (item);

-- Both sides of an exchange changed: the other side's row waits here for the specialist.
CREATE TABLE conflict (
    id INTEGER PRIMARY KEY,
    item TEXT NOT NULL REFERENCES item (id) ON DELETE CASCADE,
    theirs TEXT NOT NULL CHECK (json_valid(theirs)),
    made TEXT NOT NULL
);
"""


@migrations()
def first_tables(db: Database) -> None:
    """Items, learners, sets, marks, and full-text search over the items."""
    for statement in _statements(_FIRST):
        db.execute(statement)
    db.table("item").enable_fts(["text", "answer"], create_triggers=True, tokenize="porter")


_MORNING = """
-- A turn that was given out; `instead_of` is 0, or the learner who is away and gets it back.
CREATE TABLE turn (
    day TEXT NOT NULL,
    job TEXT NOT NULL,
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    instead_of INTEGER NOT NULL DEFAULT 0,
    made TEXT NOT NULL,
    PRIMARY KEY (day, job, learner, instead_of)
) WITHOUT ROWID;

CREATE TABLE book (
    code TEXT PRIMARY KEY COLLATE NOCASE,
    title TEXT NOT NULL CHECK (length(title) BETWEEN 1 AND 200),
    grade REAL NOT NULL CHECK (grade BETWEEN 0 AND 12),
    copies INTEGER NOT NULL DEFAULT 1 CHECK (copies >= 1),
    "by" TEXT NOT NULL
) WITHOUT ROWID;

-- No reference to `book`: a book that left the shelf was read all the same.
CREATE TABLE basket (
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    monday TEXT NOT NULL,
    position INTEGER NOT NULL,
    book TEXT NOT NULL,
    PRIMARY KEY (learner, monday, position)
) WITHOUT ROWID;

CREATE TABLE sort_day (
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    day TEXT NOT NULL,
    item TEXT NOT NULL REFERENCES item (id),
    PRIMARY KEY (learner, day)
) WITHOUT ROWID;
"""


@migrations()
def morning_tables(db: Database) -> None:
    """Turns, books, baskets, and the word sort of each day."""
    for statement in _statements(_MORNING):
        db.execute(statement)


_PROGRESS = """
ALTER TABLE mark ADD COLUMN skill TEXT NOT NULL DEFAULT '';
ALTER TABLE mark ADD COLUMN amount INTEGER;
CREATE INDEX mark_skill ON mark (learner, skill, day) WHERE replaced = 0 AND skill <> '';

-- Something changed for a learner on that day: a line on the charts.
CREATE TABLE phase (
    id INTEGER PRIMARY KEY,
    learner INTEGER NOT NULL REFERENCES learner (number) ON DELETE CASCADE,
    day TEXT NOT NULL,
    words TEXT NOT NULL CHECK (length(words) BETWEEN 1 AND 80)
);
CREATE INDEX phase_learner ON phase (learner, day);

-- Files and folders that the tool wrote and that hold learners' codes; `learner` where it is one's own.
CREATE TABLE written (
    path TEXT PRIMARY KEY,
    what TEXT NOT NULL CHECK (what IN ('prints', 'export', 'backup', 'report')),
    learner INTEGER REFERENCES learner (number) ON DELETE CASCADE,
    made TEXT NOT NULL
) WITHOUT ROWID;

-- What is left of learners who were forgotten: counts by item, without a code, a day or a number.
CREATE TABLE item_count (
    item TEXT PRIMARY KEY REFERENCES item (id) ON DELETE CASCADE,
    given INTEGER NOT NULL DEFAULT 0,
    alone INTEGER NOT NULL DEFAULT 0,
    helped INTEGER NOT NULL DEFAULT 0,
    not_done INTEGER NOT NULL DEFAULT 0,
    fixes INTEGER NOT NULL DEFAULT 0,
    missed INTEGER NOT NULL DEFAULT 0
) WITHOUT ROWID;
"""


@migrations()
def progress_tables(db: Database) -> None:
    """Skills in marks, phases, what was written outside the bank, and counts without a code."""
    for statement in _statements(_PROGRESS):
        db.execute(statement)


def _statements(script: str) -> list[str]:
    """The statements of a script without triggers; `executescript` would end the transaction."""
    return [statement for statement in script.split(";\n") if statement.strip()]
