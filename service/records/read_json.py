"""One JSON document to a collection."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from service.errors import TooManyRecordsError
from service.findings import Where
from service.records.museum import read_hazard_words
from service.records.museum.read import read_museum
from service.records.museum.read_lifting import GROUP, read_lifting
from service.records.read_containers import read_containers
from service.records.read_objects import read_objects
from service.records.read_packings import read_packings
from service.records.record import Collection, Museum
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row
from service.records.rows.said import SaidColumns
from service.records.sources.columns import (
    CONTAINER_COLUMNS,
    MUSEUM_COLUMNS,
    OBJECT_COLUMNS,
    PACKING_COLUMNS,
    Columns,
)
from service.records.sources.document import read_document
from service.records.sources.entries import make_row
from service.records.sources.table import ROWS_LIMIT
from service.sentence import Sentence

_KEYS = ("museum", "objects", "containers", "packings")
_PLACES = "places"


def read_json(data: bytes, *, name: str) -> Collection:
    """Read a document {"museum", "objects", "containers", "packings"}; each may be absent.

    Fields are called as the columns of the tables are, and may hold the same text. A packing has
    its rows in "places".

    Raises:
        UnreadableFileError: When the file is not JSON that can be used.
        TooManyRecordsError: When one of its lists is too long.
    """
    document = _Document(read_document(data, name=name), name)
    document.note_unknown_keys()
    objects, containers = SaidColumns(), SaidColumns()
    return Collection(
        museum=document.museum(),
        objects=read_objects(document.rows("objects", OBJECT_COLUMNS), objects),
        containers=read_containers(document.rows("containers", CONTAINER_COLUMNS), containers),
        packings=read_packings(document.place_rows()),
        findings=document.notebook.findings(),
        said_of_objects=objects.by_number,
        said_of_containers=containers.by_number,
    )


class _Document:
    """The top level of a document, with its name and the notebook for what it holds."""

    def __init__(self, values: Mapping[str, object], name: str) -> None:
        self._values = values
        self._name = name
        self.notebook = Notebook()

    def note_unknown_keys(self) -> None:
        """Note what stands beside the four keys of a collection."""
        for key in self._values:
            if key not in _KEYS:
                self._note("unknown-column", key, Sentence("The field is not known."))

    def museum(self) -> Museum:
        """Read the museum's choices, the usual ones where there are none."""
        values = self._values.get("museum")
        if values is not None and not isinstance(values, dict):
            self._note("wrong-type", "museum", Sentence("A group of fields should stand here."))
        plain = dict(values) if isinstance(values, dict) else {}
        where = Where(file=self._name, column=f"museum/{GROUP}")
        lifting = read_lifting(plain.pop(GROUP, {}), where=where, notebook=self.notebook)
        where = Where(file=self._name, column=f"museum/{read_hazard_words.GROUP}")
        own = plain.pop(read_hazard_words.GROUP, {})
        words = read_hazard_words.read_hazard_words(own, where=where, notebook=self.notebook)
        return read_museum(self._row(plain, MUSEUM_COLUMNS, "museum"), lifting, words)

    def rows(self, key: str, columns: Columns) -> Iterator[Row]:
        """Give a row for each object of a list."""
        for pointer, entry in self._entries(self._values.get(key), key):
            yield self._row(entry, columns, pointer)

    def place_rows(self) -> Iterator[Row]:
        """Give a row for each place, as in a table: what the packing says stands in every one."""
        for pointer, entry in self._entries(self._values.get("packings"), "packings"):
            shared = {key: value for key, value in entry.items() if key != _PLACES}
            packing = self._row(shared, PACKING_COLUMNS, pointer)
            places = list(self._entries(entry.get(_PLACES), f"{pointer}/{_PLACES}"))
            if not places:
                yield packing
            for at, place in places:
                yield _beneath(packing, self._row(place, PACKING_COLUMNS, at))

    def _entries(self, value: object, pointer: str) -> Iterator[tuple[str, Mapping[str, object]]]:
        if value is None:
            return
        if not isinstance(value, list):
            self._note("wrong-type", pointer, Sentence("A list should stand here."))
            return
        if len(value) > ROWS_LIMIT:
            raise TooManyRecordsError(self._name, count=len(value), limit=ROWS_LIMIT)
        for at, entry in enumerate(value):
            if isinstance(entry, dict):
                yield f"{pointer}/{at}", entry
            else:
                self._note(
                    "wrong-type",
                    f"{pointer}/{at}",
                    Sentence("A group of fields should stand here."),
                )

    def _row(self, entry: Mapping[str, object], columns: Columns, pointer: str) -> Row:
        return make_row(entry, columns, name=self._name, pointer=pointer, notebook=self.notebook)

    def _note(self, code: str, pointer: str, message: Sentence) -> None:
        self.notebook.note(code, Where(file=self._name, column=pointer), message)


def _beneath(packing: Row, place: Row) -> Row:
    """Give the row of a place with what its packing says."""
    return Row(
        values={**place.values, **packing.values},
        headings={**place.headings, **packing.headings},
        where=place.where,
        notebook=place.notebook,
        source=place.source,
        retyped=place.retyped | packing.retyped,
    )
