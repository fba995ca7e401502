"""One LIDO record to one row of the object table."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from service.findings import Where
from service.records.lido.element import Block, Element, read_blocks
from service.records.lido.identity import (
    Numbers,
    read_address,
    read_numbers,
    read_object_name,
    read_titles,
)
from service.records.lido.making import read_materials, read_periods
from service.records.lido.measures import choose_weight, read_measures
from service.records.lido.notes import LISTS, TEXTS, read_notes
from service.records.lido.resources import read_photos, read_sides
from service.records.lido.stream import read_records
from service.records.rows.notebook import Notebook
from service.records.rows.row import Row, Value
from service.records.rows.text import quote_text
from service.sentence import Sentence

_ELEMENTS = {
    "object_number": "workID",
    "title": "titleSet",
    "object_name": "objectWorkType",
    "period": "eventDate",
    "number_of_parts": "objectMeasurementsSet",
    "materials": "materialsTech",
    "dimensions": "objectMeasurementsSet",
    "weight": "objectMeasurementsSet",
    "former_numbers": "workID",
    "photos": "linkResource",
    "catalogue_url": "recordInfoLink",
    **dict.fromkeys((*TEXTS, *LISTS), "objectDescriptionSet"),
}
"""The element that says a column, by which a person finds it in the file."""


def read_rows(chunks: Iterable[bytes], *, name: str, notebook: Notebook) -> Iterator[Row]:
    """Give a row for each record of a LIDO file, in the order of the file.

    Raises:
        UnreadableFileError: When the file cannot be read as a whole.
    """
    for position, record in enumerate(read_records(chunks, name=name), start=1):
        yield _RecordReader(record, name=name, position=position, notebook=notebook).read()


class _RecordReader:
    """Reads one record and notes what it says twice or not in a usable way."""

    def __init__(self, record: Element, *, name: str, position: int, notebook: Notebook) -> None:
        self._record = record
        self._place = f"lido[{position}]"
        self._where = Where(file=name)
        self._notebook = notebook

    def read(self) -> Row:
        """Give the row."""
        described = read_blocks(self._record, "descriptiveMetadata")
        numbers = self._read_numbers(described)
        managed = read_blocks(self._record, "administrativeMetadata")
        measures = read_measures(described)
        weight, trouble = choose_weight(measures)
        values: dict[str, Value] = {
            "object_number": numbers.number,
            "former_numbers": numbers.former,
            "title": self._only("title", read_titles(described)),
            "object_name": read_object_name(described),
            "period": self._only("period", read_periods(described)),
            "number_of_parts": self._only("number_of_parts", measures.counts),
            "materials": read_materials(described),
            "dimensions": "; ".join(measures.dimensions),
            "weight": weight,
            "catalogue_url": read_address(managed),
            **read_notes(described),
        }
        photos, unnamed = read_photos(managed)
        sides = read_sides(managed)
        values["photos"] = tuple({"file": file, "role": sides.get(file, "")} for file in photos)
        if trouble:
            self._note("unreadable-weight", "weight", trouble)
        for address in unnamed:
            self._note_unnamed(address)
        return self._make_row(values, photos)

    def _make_row(self, values: dict[str, Value], photos: Sequence[str]) -> Row:
        told = {column: value for column, value in values.items() if value}
        texts = {
            column: value if isinstance(value, str) else "; ".join(map(str, value))
            for column, value in told.items()
        }
        source = {**texts, "photos": "; ".join(photos)} if photos else texts
        headings = {column: f"{self._place}/{name}" for column, name in _ELEMENTS.items()}
        return Row(told, headings, self._where, self._notebook, source)

    def _read_numbers(self, described: Sequence[Block]) -> Numbers:
        numbers = read_numbers(self._record, described)
        self._where = Where(file=self._where.file, object_number=numbers.number)
        if numbers.others:
            said = " and ".join(map(quote_text, (numbers.number, *numbers.others)))
            self._note(
                "duplicate-number",
                "object_number",
                Sentence("The record has more than one number of its own: {said}.", said=said),
                advice=Sentence(
                    "Keep one; the first was used and the others count as former numbers."
                ),
            )
        if numbers.substitute and numbers.number:
            message = Sentence(
                "There is no inventory number; {number} was taken.",
                number=quote_text(numbers.number),
            )
            self._note(
                "number-like-object-number",
                "object_number",
                message,
                advice=Sentence(
                    "Compare it with the object, or export the inventory number as workID."
                ),
            )
        return numbers

    def _only(self, column: str, values: Sequence[str]) -> str:
        """Give the first of several values and note the others."""
        if len(set(values)) > 1:
            said = ", ".join(map(quote_text, dict.fromkeys(values)))
            self._note(
                "extra-cells",
                column,
                Sentence("The record says more than one thing: {said}.", said=said),
                advice=Sentence("Keep one, or mark one as preferred; the first was used."),
            )
        return values[0] if values else ""

    def _note_unnamed(self, address: str) -> None:
        self._note(
            "photo-not-named",
            "photos",
            Sentence("{given} ends in no name of a picture's file.", given=quote_text(address)),
            advice=Sentence("Name the photo's file by the object's number, so that it is found."),
        )

    def _note(
        self, code: str, column: str, message: Sentence, *, advice: Sentence | None = None
    ) -> None:
        place = f"{self._place}/{_ELEMENTS[column]}"
        where = replace(self._where, column=place)
        self._notebook.note(code, where, message, advice=advice)
