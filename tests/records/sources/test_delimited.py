from __future__ import annotations

import pytest

from service.errors import TooManyRecordsError, UnreadableFileError
from service.records.rows.notebook import Notebook
from service.records.sources.delimited import (
    Form,
    Written,
    choose_delimiter,
    find_delimiter,
    peek_lines,
    read_delimited,
    read_described,
)
from service.records.sources.table import ROWS_LIMIT

KNOWN = frozenset({"objectnumber", "title"})


def rows_of(text: str | bytes, notebook: Notebook | None = None) -> list[tuple[int, list[str]]]:
    """Read a text and give row numbers with their cells."""
    data = text.encode() if isinstance(text, str) else text
    table = read_delimited(
        data, name="x.csv", written=Written(known=KNOWN), notebook=notebook or Notebook()
    )
    return [(line.row, list(line.cells)) for line in table.lines]


@pytest.mark.parametrize("delimiter", [",", ";", "\t"], ids=["comma", "semicolon", "tab"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"], ids=["LF", "CRLF", "CR"])
def test_delimiters_and_line_ends(delimiter: str, end: str) -> None:
    """Every usual delimiter with every line end gives the same table."""
    text = end.join(["object_number|title", '1|"a, b; c\td"', "", "2|z", ""])
    assert rows_of(text.replace("|", delimiter)) == [
        (1, ["object_number", "title"]),
        (2, ["1", "a, b; c\td"]),
        (4, ["2", "z"]),
    ]


def test_known_headings_outvote_other_signs() -> None:
    """A heading full of commas does not make the comma the delimiter."""
    assert choose_delimiter(["object_number;title;a, b, c, d, e"], known=KNOWN) == ";"


def test_separator_line_is_no_row() -> None:
    """The delimiter that some spreadsheets write above the headings keeps its row number."""
    assert rows_of("sep=;\nobject_number;title\n1;a") == [
        (2, ["object_number", "title"]),
        (3, ["1", "a"]),
    ]


def test_quoted_cell_may_span_lines() -> None:
    """A row is counted as a spreadsheet counts it, however many lines it takes."""
    assert rows_of('object_number,title\n1,"a\r\nb ""c"""\n2,d') == [
        (1, ["object_number", "title"]),
        (2, ["1", 'a\nb "c"']),
        (3, ["2", "d"]),
    ]


def test_open_quote_swallows_nothing() -> None:
    """A quotation mark without partner spoils one row at most, and is noted there."""
    notebook = Notebook()
    rest = "\n".join(f"{number},t" for number in range(3, 500))
    rows = rows_of(f'object_number,title\n1,"open\n2,z\n{rest}', notebook)
    assert rows[1:3] == [(2, ["1", "open"]), (3, ["2", "z"])]
    assert len(rows) == 500
    (finding,) = notebook.findings()
    assert (finding.code, finding.where.row) == ("unbalanced-quote", 2)


def test_inch_marks_are_letters_like_others() -> None:
    """A mark inside a cell that is not quoted belongs to the text."""
    notebook = Notebook()
    assert rows_of('object_number,title\n1,Box 12" deep', notebook)[1] == (2, ["1", 'Box 12" deep'])
    assert notebook.findings() == ()


def test_zero_bytes_do_not_end_a_table() -> None:
    """A NUL inside a cell is left for the cell's cleaning."""
    assert rows_of("object_number,title\n1,a\x00b")[1] == (2, ["1", "a\x00b"])


def test_guessed_encoding_is_noted() -> None:
    """A table that had to be guessed says so once."""
    notebook = Notebook()
    assert rows_of("object_number,title\n1,Café".encode("cp1252"), notebook)[1] == (
        2,
        ["1", "Café"],
    )
    assert [finding.code for finding in notebook.findings()] == ["guessed-encoding"]


def test_huge_cell_is_no_error() -> None:
    """A cell beyond the field limit of the standard reader is still a cell."""
    rows = rows_of('object_number,title\n1,"' + "x" * 200_000 + '"\n2,b')
    assert len(rows[1][1][1]) == 200_000
    assert rows[2] == (3, ["2", "b"])


@pytest.mark.slow
def test_too_many_rows_are_refused() -> None:
    """A table above the limit is refused with the limit named."""
    with pytest.raises(TooManyRecordsError, match="200000"):
        rows_of("object_number\n" + "1\n" * (ROWS_LIMIT + 1))


def test_too_many_columns_are_refused() -> None:
    """A row of more cells than a catalogue has fields is no record; empty cells do not count."""
    assert len(rows_of("object_number" + "," * 500)[0][1]) == 501
    with pytest.raises(UnreadableFileError, match="201 columns"):
        rows_of(",".join(["x"] * 201))


@pytest.mark.parametrize(
    ("form", "expected"),
    [
        (Form(",", quoted=True, skipped_lines=0), [(1, ["a", "b,c"]), (3, ["d", "e"])]),
        (Form(",", quoted=False, skipped_lines=0), [(1, ["a", '"b', 'c"']), (3, ["d", "e"])]),
        (Form(",", quoted=True, skipped_lines=1), [(3, ["d", "e"])]),
        (Form("|", quoted=False, skipped_lines=2), [(3, ["d,e"])]),
    ],
    ids=["quoted", "bare", "headings", "bars"],
)
def test_described_form_is_obeyed(form: Form, expected: list[tuple[int, list[str]]]) -> None:
    """A table is cut as its description says, whatever its lines look like."""
    data = b'a,"b,c"\n\nd,e\n'
    table = read_described(data, name="x.txt", form=form, notebook=Notebook())
    assert [(line.row, list(line.cells)) for line in table.lines] == expected


def test_a_delimiter_that_is_named_is_used() -> None:
    """Also where another gives more headings; the line that names one is no row in any case."""
    data = b"sep=;\nobject_number|a;title\n"
    written = Written(delimiter="|", known=KNOWN)
    table = read_delimited(data, name="x.csv", written=written, notebook=Notebook())
    assert [line.cells for line in table.lines] == [("object_number", "a;title")]
    assert find_delimiter(data, name="x.csv", written=written) == "|"
    assert find_delimiter(b"object_number;title", name="x.csv", written=Written(known=KNOWN)) == ";"


def test_the_first_lines_are_seen_alone() -> None:
    """Blank ones do not count, and a quote left open hurts nothing."""
    data = b'\nobject_number,title\n\n"1,x\n2,y\n3,z\n'
    seen = peek_lines(data, name="x.csv", written=Written(known=KNOWN), lines=2)
    assert seen == (("object_number", "title"), ("1", "x"), ("2", "y"))
