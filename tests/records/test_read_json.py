from __future__ import annotations

import json
from pathlib import Path

import pytest

from service.errors import TooManyRecordsError, UnreadableFileError
from service.records.museum.lifting import LiftingChoices, LiftMethod
from service.records.read_json import read_json
from service.records.read_tables import read_tables
from service.records.record import Collection, Museum, PackingRecord, PlaceRecord

SAMPLES = Path(__file__).parents[2] / "sample_records"


def read(**document: object) -> Collection:
    """Read a document made of these keys."""
    return read_json(json.dumps(document).encode(), name="x.json")


def test_document_says_what_the_tables_say() -> None:
    """The box of the sample document is the box of the sample tables, field by field."""
    folder = SAMPLES / "port_merrow"
    tables = read_tables({path.name: path.read_bytes() for path in folder.glob("*.*")})
    name = "one_box.json"
    document = read_json((SAMPLES / name).read_bytes(), name=name)
    number = document.containers[0].container_number
    assert document.findings == ()
    assert document.museum == tables.museum
    assert set(document.objects) <= set(tables.objects)
    assert document.containers == tuple(
        record for record in tables.containers if record.container_number == number
    )
    assert document.packings == tuple(
        record for record in tables.packings if record.container_number == number
    )


def test_everything_may_be_absent() -> None:
    """An empty document is an empty collection."""
    assert read() == Collection()


def test_places_take_what_their_packing_says() -> None:
    """A packing may be empty, and its places need not repeat it."""
    collection = read(
        packings=[
            {
                "container_number": "B-1",
                "revision": 4,
                "places": [{"object_number": "1", "layer": 2}],
            },
            {"container_number": "B-2", "places": []},
        ]
    )
    assert collection.packings == (
        PackingRecord("B-1", 4, (PlaceRecord("1", layer=2),)),
        PackingRecord("B-2"),
    )


@pytest.mark.parametrize(
    ("document", "place"),
    [
        ({"museum": "Port Merrow"}, "museum"),
        ({"objects": {"1": {}}}, "objects"),
        ({"objects": ["1"]}, "objects/0"),
        ({"objects": [{"object_number": "1", "weight": 2}]}, "objects/0/weight"),
        ({"packings": [{"container_number": "B-1", "places": "x"}]}, "packings/0/places"),
        (
            {"packings": [{"container_number": "B-1", "places": [{"object_number": []}]}]},
            "packings/0/places/0/object_number",
        ),
        ({"boxes": []}, "boxes"),
    ],
    ids=str,
)
def test_wrong_type_is_a_finding_with_its_place(document: dict[str, object], place: str) -> None:
    """A wrong value is named by its place in the document, and the rest is read."""
    findings = read(**document).findings
    assert place in {finding.where.column for finding in findings}
    assert {finding.where.file for finding in findings} == {"x.json"}


@pytest.mark.parametrize("data", [b"[]", b"{", b'{"museum": NaN}'])
def test_unusable_document_is_refused(data: bytes) -> None:
    """A file that is no document is refused by name."""
    with pytest.raises(UnreadableFileError, match=r"x\.json"):
        read_json(data, name="x.json")


@pytest.mark.slow
def test_too_long_list_is_refused() -> None:
    """A document has the limits of a table."""
    with pytest.raises(TooManyRecordsError):
        read_json(b'{"objects":[' + b"{}," * 200_000 + b"{}]}", name="x.json")


def test_lifting_choices_are_a_group_of_the_museum() -> None:
    """What stands in the object lifting is read, and what cannot be used is an error."""
    data = b'{"museum": {"lifting": {"method": "niosh", "twist_deg": "a little"}}}'
    collection = read_json(data, name="box.json")
    assert collection.museum == Museum(lifting=LiftingChoices(method=LiftMethod.NIOSH))
    (finding,) = collection.findings
    assert (finding.code, finding.where.column) == ("lifting-choice", "museum/lifting/twist_deg")
