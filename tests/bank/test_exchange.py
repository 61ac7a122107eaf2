import csv
import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from making import make_item

from bank.exchange import cells_of, digest, guarded, read_cells, read_rows, unguarded, write_rows
from bank.item import BankError, Item, as_seen
from bank.skill import SKILLS

# Letters that spreadsheets, CSV and JSON stumble over, beside plain ones.
letters = st.characters(
    exclude_categories=("Cc", "Cs", "Co", "Cn", "Zl", "Zp", "Zs")
) | st.sampled_from("=+-@'\",;{}[]\\$#_*éß漢 ")
lines = (
    st.text(letters, min_size=1, max_size=40)
    .map(lambda text: " ".join(as_seen(text).split()))
    .filter(bool)
)
parts = lines.filter(lambda text: "|" not in text and ";" not in text)


@given(st.text(max_size=30))
def test_a_guarded_cell_never_begins_like_a_formula_and_comes_back(cell: str) -> None:
    assert guarded(cell)[:1] not in ("=", "+", "-", "@", "\t")
    assert unguarded(guarded(cell)) == cell


@pytest.mark.parametrize("ending", ["csv", "jsonl"])
@given(
    texts=st.lists(lines, min_size=1, max_size=5, unique=True),
    choices=st.lists(parts, min_size=2, max_size=4) | st.just([]),
    themes=st.lists(
        parts.map(str.lower).map(lambda t: " ".join(t.split())), max_size=3, unique=True
    ),
    answer=lines | st.just(""),
    placed=st.none() | st.integers(0, 120).map(lambda tenths: tenths / 10),
)
def test_what_goes_out_comes_back_as_it_was(
    tmp_path_factory: pytest.TempPathFactory,
    ending: str,
    texts: list[str],
    choices: list[str],
    themes: list[str],
    answer: str,
    placed: float | None,
) -> None:
    import unicodedata

    def nfc(values: list[str]) -> tuple[str, ...]:
        return tuple(unicodedata.normalize("NFC", value) for value in values)

    items = [
        make_item(
            number,
            text=unicodedata.normalize("NFC", text),
            choices=nfc(choices),
            themes=nfc(themes),
            answer=unicodedata.normalize("NFC", answer),
            level_as=placed,
            seasons=("12-01..02-28",),
        )
        for number, text in enumerate(texts)
    ]
    path = tmp_path_factory.mktemp("out") / f"items.{ending}"
    assert write_rows(path, items) == len(items)
    rows = list(read_rows(path))
    assert [row.wrong for row in rows] == [None] * len(items)
    for row, item in zip(rows, items, strict=True):
        for name in (
            "id",
            "kind",
            "text",
            "state",
            "answer",
            "choices",
            "themes",
            "seasons",
            "level_as",
        ):
            assert row.fields[name] == getattr(item, name)


def test_a_cell_with_nothing_to_see_in_it_is_empty() -> None:
    row = read_cells(2, {"text": "Is ice hot?", "answer": "\u200b", "choices": "yes | no | \u00ad"})
    assert row.wrong is None
    assert (row.fields["answer"], row.fields["choices"]) == ("", ("yes", "no"))


def test_two_items_that_a_person_wrote_alike_have_the_same_digest() -> None:
    one = make_item(1)
    assert digest(one) == digest(make_item(1, grade=3.0, method="other"))
    assert digest(one) != digest(make_item(1, answer="yes"))


def write(path: Path, content: bytes) -> Path:
    path.write_bytes(content)
    return path


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "empty"),
        (b"kind,txt\nquestion,Can a fish swim?\n", "did you mean text"),
        (b"kind,answer\nquestion,yes\n", "no column text"),
        (b"text,text\na,b\n", "twice"),
        ("kind,text\nquestion,Where is the café?\n".encode("cp1252"), "0xE9"),
        ("kind,text\nquestion,Can a fish swim?\n".encode("utf-16"), "UTF-16"),
        (b'kind,text\nquestion,"Can a fish swim?\n', "line"),
        ("kind,text\nquestion,é".encode()[:-1], "UTF-8"),
    ],
)
def test_a_file_that_is_no_list_of_items_is_refused_in_one_line(
    tmp_path: Path, content: bytes, said: str
) -> None:
    with pytest.raises(BankError, match=said) as refused:
        list(read_rows(write(tmp_path / "x.csv", content)))
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize(
    "content",
    [
        "kind;text;theme\r\nquestion;Can a fish swim?;animals; nature\r\n".replace(
            "animals; nature", '"animals; nature"'
        ),
        "kind\ttext\ttheme\r\nquestion\tCan a fish swim?\tanimals; nature\r\n",
        "kind,text,theme,,\r\nquestion,Can a fish swim?,animals; nature,,\r\n,,,,\r\n,,,,\r\n",
        "row,column,reason,kind,text,theme\r\n"
        "7,text,too long,question,Can a fish swim?,animals; nature\r\n",
    ],
    ids=["semicolons", "tabs", "empty cells at the end", "a mended file of refused rows"],
)
def test_a_sheet_comes_in_as_spreadsheets_write_it(tmp_path: Path, content: str) -> None:
    (row,) = read_rows(write(tmp_path / "x.csv", content.encode()))
    assert row.wrong is None
    assert (row.fields["text"], row.fields["themes"]) == ("Can a fish swim?", ("animals", "nature"))


def test_a_specialists_own_columns_are_left_out_where_she_says_so(tmp_path: Path) -> None:
    path = write(tmp_path / "x.csv", b"page,kind,text,for\n3,question,Can a fish swim?,K4\n")
    with pytest.raises(BankError, match="no column 'page'.*--skip-unknown"):
        list(read_rows(path))
    (row,) = read_rows(path, skip_unknown=True)
    assert dict(row.cells) == {"kind": "question", "text": "Can a fish swim?"}


def test_a_spreadsheet_is_told_of_letters_with_accents(tmp_path: Path) -> None:
    plain, accents = tmp_path / "plain.csv", tmp_path / "accents.csv"
    write_rows(plain, [make_item(1)])
    write_rows(accents, [make_item(1, text="Where is the café?")])
    assert plain.read_bytes().startswith(b"id,")
    assert accents.read_bytes().startswith(b"\xef\xbb\xbfid,")
    assert next(read_rows(accents)).fields["text"] == "Where is the café?"
    assert {path.name for path in tmp_path.iterdir()} == {"plain.csv", "accents.csv"}


def test_a_byte_order_mark_is_no_part_of_the_header(tmp_path: Path) -> None:
    content = "\ufeffkind,text\r\nquestion,Can a fish swim?\r\n".encode()
    assert next(read_rows(write(tmp_path / "x.csv", content))).fields["text"] == "Can a fish swim?"


@pytest.mark.parametrize(
    ("row", "column"),
    [
        ("question,Can a fish\x00 swim?,,", "text"),
        ("question,,,", "text"),
        ("joke,Can a fish swim?,,", "kind"),
        ("question,Can a fish swim?,winter,", "season"),
        ("question,Can a fish swim?,,one", "choices"),
        ("question,Can a fish swim?,,a | b | c | d | e", "choices"),
        ("question," + "x" * 1_000_000 + ",,", "text"),
        ("question,Can a fish swim, or can it,,,walk?", "choices"),
    ],
)
def test_a_bad_row_is_named_by_its_number_and_column(tmp_path: Path, row: str, column: str) -> None:
    content = f"kind,text,season,choices\nquestion,Is ice cold?,,\n{row}\n".encode()
    good, bad = read_rows(write(tmp_path / "x.csv", content))
    assert good.wrong is None
    assert bad.number == 3
    assert bad.wrong is not None and bad.wrong[0] == column


@pytest.mark.parametrize("line", ["[1]", "{", '{"txt": "a"}', '{"text": ""}', "[" * 100_000])
def test_a_line_that_is_no_item_is_refused_by_its_number(tmp_path: Path, line: str) -> None:
    content = ('{"kind": "topic", "text": "A red hat"}\n' + line + "\n").encode()
    good, bad = read_rows(write(tmp_path / "x.jsonl", content))
    assert good.wrong is None and bad.number == 2 and bad.wrong is not None


def test_a_list_in_json_lines_is_read_as_a_list(tmp_path: Path) -> None:
    line = json.dumps({"text": "Is it hot?", "choices": ["a; b", "c"], "theme": ["food"]})
    row = next(read_rows(write(tmp_path / "x.jsonl", line.encode())))
    assert row.fields["choices"] == ("a; b", "c")


@given(st.dictionaries(st.sampled_from(["kind", "text", "theme", "choices", "season"]), st.text()))
def test_no_cells_break_the_reading(cells: dict[str, str]) -> None:
    row = read_cells(1, cells)
    assert bool(row.wrong) != bool(row.fields.get("text"))


def test_a_file_that_cannot_be_written_leaves_no_half_of_it(tmp_path: Path) -> None:
    def breaks() -> object:
        yield make_item(1)
        raise RuntimeError

    with pytest.raises(RuntimeError):
        write_rows(tmp_path / "x.csv", breaks())  # type: ignore[arg-type]
    assert list(tmp_path.iterdir()) == []


def test_the_csv_is_what_the_standard_reader_reads(tmp_path: Path) -> None:
    # RFC 4180: lines end in CRLF, quotes are doubled; Python's csv module is the second reader.
    item = make_item(1, text='Say "hi", please', answer="=1+1")
    write_rows(tmp_path / "x.csv", [item])
    assert b"\r\n" in (tmp_path / "x.csv").read_bytes()
    with (tmp_path / "x.csv").open(newline="", encoding="utf-8") as file:
        row = next(csv.DictReader(file))
    assert (row["text"], row["answer"]) == ('Say "hi", please', "'=1+1")


def test_a_row_has_a_cell_for_everything_that_an_item_holds() -> None:
    held = {name for name in Item.__dataclass_fields__ if name not in ("changed",)}
    computed = {"formulas", "reasons", "findings", "ask", "twins"}
    from bank.exchange import COLUMNS

    assert {column.field for column in COLUMNS.values()} | computed >= held
    assert set(cells_of(make_item(1))) == set(COLUMNS)
    assert len(SKILLS) == 28
