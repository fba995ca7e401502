"""What holds for every file and every cell, however it came about."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from functools import partial
from random import Random

import pytest
import xlsxwriter
from hypothesis import given
from hypothesis import strategies as st

from service.errors import RecordsError
from service.findings import CODES, Where
from service.records.cells.dates import parse_date
from service.records.cells.dimensions import parse_dimensions, read_dimensions
from service.records.cells.hazards import read_hazards
from service.records.cells.weights import parse_weight, read_weight
from service.records.codes import CAUTION_CODES, HAZARD_CODES
from service.records.darwin.read import read_darwin
from service.records.lido.export.write import write_lido
from service.records.measures import Measure
from service.records.naturally import natural_key, sort_naturally
from service.records.read_json import read_json
from service.records.read_lido import read_lido
from service.records.read_tables import read_tables, read_workbook
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    Part,
    PhotoReference,
    PhotoRole,
    Weight,
    WeightBasis,
)
from service.records.rows.cell import Cell
from service.records.rows.notebook import Notebook
from service.records.rows.text import means_nothing, tidy_text

HEADINGS = "object_number,title,dimensions,weight,hazards,parts,photos,cautions,restricted\n"

KEYS = [
    "museum",
    "objects",
    "packings",
    "places",
    "object_number",
    "hazards",
    "parts",
    "container_number",
    "questions",
    "code",
    "title",
    "restricted",
    "layer",
]

pieces = st.text(
    alphabet=st.one_of(
        st.sampled_from("0123456789.,;:/x\"'()- \n\r\t\x00\ufeffhwdcmingkboz½\u00d7"),
        st.characters(),
    ),
    max_size=40,
)
json_values = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), pieces),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3),
        st.dictionaries(
            st.sampled_from(KEYS),
            inner,
            max_size=5,
        ),
    ),
    max_leaves=20,
)


words = st.text(
    alphabet=st.characters(categories=["L"]).filter(lambda one: one == tidy_text(one)),
    min_size=5,
    max_size=12,
).filter(lambda text: text == tidy_text(text) and not means_nothing(text))
lists_of_words = st.lists(words, max_size=3, unique=True).map(tuple)
hundredths = st.integers(1, 9_999_999).map(lambda number: number / 100)
weights = st.none() | st.builds(Weight, hundredths, st.sampled_from(WeightBasis))


def _with_texts(record: ObjectRecord) -> ObjectRecord:
    """Give a record with sizes and weight as a person would write them."""
    sizes = " x ".join(f"{item.label} {item.length_mm:.2f} mm" for item in record.dimensions)
    guess = "ca. " if record.weight and record.weight.basis is WeightBasis.ESTIMATED else ""
    weight = f"{guess}{record.weight.weight_g:.2f} g" if record.weight else ""
    return replace(record, dimensions_text=sizes, weight_text=weight)


plain_records = st.builds(
    ObjectRecord,
    object_number=words,
    title=words | st.just(""),
    object_name=words | st.just(""),
    period=words | st.just(""),
    number_of_parts=st.none() | st.integers(1, 999),
    parts=st.lists(st.builds(Part, st.sampled_from("abcd"), words), max_size=3).map(tuple),
    accessories=lists_of_words,
    materials=lists_of_words,
    dimensions=st.lists(
        st.builds(Measure, st.sampled_from(["height", "width", "depth"]), hundredths), max_size=3
    ).map(tuple),
    weight=weights,
    condition=words | st.just(""),
    handling_notes=words | st.just(""),
    hazards=st.lists(
        st.builds(
            Hazard,
            st.sampled_from(HAZARD_CODES),
            st.sampled_from(HazardState),
            words | st.just(""),
            words | st.just(""),
            st.none() | st.dates(),
            words | st.just(""),
            st.none() | st.dates(),
        ),
        max_size=2,
    ).map(tuple),
    cautions=st.lists(st.sampled_from(CAUTION_CODES), max_size=3, unique=True).map(tuple),
    former_numbers=lists_of_words,
    photos=st.lists(
        st.builds(PhotoReference, words.map("{}.jpg".format), st.sampled_from(PhotoRole)),
        max_size=3,
        unique_by=lambda photo: photo.file,
    ).map(tuple),
).map(_with_texts)


def ends_well(read: Callable[[], Collection]) -> None:
    """Check that a reader gives a collection of known findings, or one of our errors."""
    try:
        collection = read()
    except RecordsError as error:
        assert str(error)  # noqa: PT017 (either end is right)
    else:
        assert all(finding.code in CODES for finding in collection.findings)


def make_cell(text: str) -> Cell:
    """Make a cell with a notebook of its own."""
    return Cell(tidy_text(text), Where(), "column", Notebook())


@pytest.fixture(scope="module")
def workbook() -> bytes:
    """Give a small workbook in which to damage bytes."""
    target = io.BytesIO()
    with xlsxwriter.Workbook(target) as book:
        sheet = book.add_worksheet("objects")
        sheet.write_row(0, 0, ["object_number", "title"])
        sheet.write_row(1, 0, ["1954.3", "Jar"])
    return target.getvalue()


@given(st.binary(max_size=300))
def test_any_bytes_end_in_a_collection_or_an_error_of_ours(data: bytes) -> None:
    """No file, whatever is in it, ends in an error of another kind."""
    ends_well(lambda: read_json(data, name="x.json"))
    ends_well(lambda: read_workbook(data, name="x.xlsx"))
    ends_well(lambda: read_tables({"objects.csv": data, "museum.toml": data}))


LIDO = b'<lidoWrap xmlns="http://www.lido-schema.org">'


@given(st.binary(max_size=300), st.binary(max_size=300))
def test_any_bytes_called_lido_end_well(first: bytes, second: bytes) -> None:
    """No stream of pieces, whole or cut, ends in an error of another kind."""
    ends_well(lambda: read_lido({"x.xml": (first, second)}))
    ends_well(lambda: read_lido({"x.xml": (LIDO + b"<lido>" + first, second)}))


CORE = (
    b'<archive xmlns="http://rs.tdwg.org/dwc/text/"><core><files><location>a</location></files>'
    b'<id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/catalogNumber"/></core>'
)


@given(st.binary(max_size=300), st.binary(max_size=300))
def test_any_bytes_called_an_archive_end_well(meta: bytes, table: bytes) -> None:
    """No packed folder, whatever its description or its table, ends in an error of another kind."""
    for described in (meta, CORE + meta, CORE + b"</archive>"):
        archive = _pack({"meta.xml": described, "a": table})
        ends_well(partial(read_darwin, archive, name="x.zip"))
    ends_well(partial(read_darwin, meta, name="x.zip"))


@given(at=st.integers(0, 10_000), change=st.integers(1, 255))
def test_damaged_archive_ends_well(at: int, change: int) -> None:
    """One changed byte gives the same records, others, or an error of ours."""
    archive = bytearray(_pack({"meta.xml": CORE + b"</archive>", "a": b"u1,Z.1\nu2,Z.2\n"}))
    archive[at % len(archive)] ^= change
    ends_well(partial(read_darwin, bytes(archive), name="x.zip"))


@given(st.lists(st.builds(ObjectRecord, *[st.text(max_size=30)] * 4), max_size=4))
def test_any_objects_can_be_written_as_lido(records: list[ObjectRecord]) -> None:
    """Whatever characters a record holds, the file can be read or holds no record."""
    ends_well(lambda: read_lido({"x.xml": write_lido(Collection(objects=tuple(records)))}))


@given(records=st.lists(plain_records, max_size=5, unique_by=lambda record: record.object_number))
def test_objects_written_as_lido_read_back(records: list[ObjectRecord]) -> None:
    """Objects of plain words come back from LIDO with every value they had."""
    if records:
        written = write_lido(Collection(objects=tuple(records)))
        assert read_lido({"x.xml": written}).objects == tuple(records)


@given(st.lists(st.lists(pieces, max_size=10), max_size=6), st.sampled_from(["utf-8", "utf-16"]))
def test_any_cells_end_in_a_collection(rows: list[list[str]], encoding: str) -> None:
    """A table with any cells at all is read, its bad cells noted."""
    text = HEADINGS + "\n".join(",".join(cells) for cells in rows)
    data = text.encode(encoding, "ignore")
    ends_well(lambda: read_tables({"objects.csv": data, "packings.csv": data}))


@given(json_values)
def test_any_document_ends_in_a_collection_or_an_error_of_ours(value: object) -> None:
    """Any JSON under the known names is read or refused."""
    data = _as_json({"museum": value, "objects": [value, value], "packings": [value]})
    ends_well(lambda: read_json(data, name="x.json"))
    ends_well(lambda: read_json(_as_json(value), name="x.json"))


@given(at=st.integers(0, 10_000), change=st.integers(1, 255))
def test_damaged_workbook_ends_well(workbook: bytes, at: int, change: int) -> None:
    """One changed byte gives the same sheet, another, or an error of ours."""
    data = bytearray(workbook)
    data[at % len(data)] ^= change
    ends_well(lambda: read_workbook(bytes(data), name="x.xlsx"))


@given(pieces)
def test_any_text_in_a_cell_is_read_or_noted(text: str) -> None:
    """A cell gives a value, nothing because it says nothing, or a finding."""
    for read in (read_dimensions, read_weight, read_hazards):
        cell = make_cell(text)
        if not read(cell) and cell.value.strip(" ;"):
            assert cell.notebook.findings()


@given(pieces)
def test_cleaning_twice_is_cleaning_once(text: str) -> None:
    """Clean text stays as it is."""
    assert tidy_text(tidy_text(text)) == tidy_text(text)


@given(
    st.lists(
        st.tuples(st.sampled_from(["height", "width", "depth"]), st.integers(1, 9_999_999)),
        min_size=1,
        max_size=6,
    )
)
def test_dimensions_written_out_read_back(written: list[tuple[str, int]]) -> None:
    """Measures of a hundredth of a mm written with label and unit come back the same."""
    measures = tuple(Measure(label, hundredths / 100) for label, hundredths in written)
    text = " x ".join(f"{item.label} {item.length_mm:.2f} mm" for item in measures)
    assert parse_dimensions(text).measures == measures
    assert parse_dimensions(text.replace(".", ",")).measures == measures


@given(st.integers(1, 99_999_999))
def test_weights_written_out_read_back(grams: int) -> None:
    """A weight in grams and the same in kilograms are one weight."""
    in_grams, in_kilograms = parse_weight(f"{grams} g"), parse_weight(f"{grams / 1000:.3f} kg")
    assert in_grams is not None
    assert in_grams == in_kilograms
    assert in_grams.weight_g == grams


@given(st.dates())
def test_dates_written_out_read_back(day: date) -> None:
    """The form the advice asks for is always understood."""
    assert parse_date(str(day)) == day


@given(st.lists(st.text(max_size=8), max_size=8), st.randoms(use_true_random=False))
def test_natural_order_is_total(numbers: list[str], shuffler: Random) -> None:
    """Any order of the same numbers sorts to one order, and only equal numbers have equal keys."""
    shuffled = list(numbers)
    shuffler.shuffle(shuffled)
    assert sort_naturally(shuffled, number=str) == sort_naturally(numbers, number=str)
    assert len({natural_key(number) for number in numbers}) == len(set(numbers))


@given(st.lists(st.tuples(st.sampled_from(["1", "2", "a"]), st.integers()), max_size=8))
def test_natural_order_is_stable(items: list[tuple[str, int]]) -> None:
    """Items of one number keep the order they came in."""
    ordered = sort_naturally(items, number=lambda item: item[0])
    for number in ("1", "2", "a"):
        assert [i for i in ordered if i[0] == number] == [i for i in items if i[0] == number]


def _as_json(value: object) -> bytes:

    return json.dumps(value).encode()


def _pack(files: dict[str, bytes]) -> bytes:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as folder:
        for name, data in files.items():
            folder.writestr(name, data)
    return target.getvalue()
