"""The tables of an archive as one table of objects, with the pictures that stand beside it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from service.errors import UnreadableFileError
from service.findings import Where
from service.records.darwin.meta import Field, Meta, Part, read_meta
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.rows.text import quote_text
from service.records.sources.archive import open_packed
from service.records.sources.columns import OBJECT_COLUMNS
from service.records.sources.delimited import read_described
from service.records.sources.headings import table_rows
from service.records.sources.table import Line, Table
from service.sentence import Sentence

META_FILE = "meta.xml"

_PICTURES = frozenset(("Multimedia", "Image", "SimpleMultimedia"))
_ADDRESSES = ("dcterms:identifier", "dc:identifier")
_MEDIA = "dwc:associatedMedia"
_NOTHING_TO_DO = Sentence("Nothing to do: it holds no pictures, and cards show nothing else of it.")
_NO_NUMBER = Sentence(
    "There is no catalogNumber; what tells the records apart was taken for the number."
)

Unpack = Callable[[str], bytes]


def read_rows(data: bytes, *, name: str, notebook: Notebook) -> Iterator[Row]:
    """Give a row for each record of an archive.

    Raises:
        UnreadableFileError: When the archive, its description or a table it names cannot be read.
        TooManyRecordsError: When a table is too long.
    """
    with open_packed(data, name=name, kind="a Darwin Core Archive") as folder:
        names = frozenset(folder.namelist())

        def unpack(file: str) -> bytes:
            if file not in names:
                raise UnreadableFileError(
                    name, tried=Sentence("it holds no file {file!r}", file=file[:60])
                )
            return folder.read(file)

        meta = read_meta(unpack(META_FILE), name=name)
        table = _make_table(meta, unpack, name=name, notebook=notebook)
    return table_rows(table, OBJECT_COLUMNS, notebook)


def _make_table(meta: Meta, unpack: Unpack, *, name: str, notebook: Notebook) -> Table:
    core = _read_part(meta.core, unpack, name=name, notebook=notebook)
    pictures: dict[str, list[str]] = {}
    for part in meta.extensions:
        if part.row_type in _PICTURES:
            table = _read_part(part, unpack, name=name, notebook=notebook)
            _collect_pictures(part, table.lines, pictures)
        else:
            message = Sentence("The table {file} was not read.", file=quote_text(part.file))
            notebook.note("skipped-sheet", Where(file=name), message, advice=_NOTHING_TO_DO)
    return _join(meta.core, core, pictures, notebook=notebook)


def _read_part(part: Part, unpack: Unpack, *, name: str, notebook: Notebook) -> Table:
    label = f"{name}, {part.file}"
    return read_described(unpack(part.file), name=label, form=part.form, notebook=notebook)


def _join(
    core: Part, table: Table, pictures: Mapping[str, list[str]], *, notebook: Notebook
) -> Table:
    """Put terms above the columns, and the pictures of each record behind them."""
    fields = [field for field in core.fields if field.heading != _MEDIA]
    if not any(OBJECT_COLUMNS.find(field.heading) == OBJECT_COLUMNS.number for field in fields):
        # What tells the records of the archive apart is better than no number at all.
        fields.insert(0, Field(OBJECT_COLUMNS.number, core.id_index))
        notebook.note("number-like-object-number", Where(file=table.name), _NO_NUMBER)
    media = next((field for field in core.fields if field.heading == _MEDIA), None)
    shown = [_MEDIA] if media or pictures else []
    headings = Line(1, (*(field.heading for field in fields), *shown))
    lines = []
    for line in table.lines:
        cells = [_value(line, field) for field in fields]
        own = _value(line, media) if media else ""
        listed = own or " | ".join(pictures.get(_cell(line, core.id_index), ()))
        lines.append(Line(line.row, (*cells, *([listed] if shown else []))))
    return Table(table.name, (headings, *lines))


def _value(line: Line, field: Field) -> str:
    return _cell(line, field.index) or field.default


def _collect_pictures(part: Part, lines: Iterable[Line], pictures: dict[str, list[str]]) -> None:
    index = next((field.index for field in part.fields if field.heading in _ADDRESSES), None)
    for line in lines:
        address = _cell(line, index)
        if address:
            pictures.setdefault(_cell(line, part.id_index), []).append(address)


def _cell(line: Line, index: int | None) -> str:
    return line.cells[index].strip() if index is not None and index < len(line.cells) else ""
