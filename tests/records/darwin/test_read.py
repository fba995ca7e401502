from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import UnreadableFileError
from service.records.darwin.read import read_darwin
from service.records.record import PhotoReference, PhotoRole

FOLDER = Path(__file__).parents[3] / "sample_records" / "darwin_archive"


def test_sample_is_read_with_the_tables_beside() -> None:
    """Objects come from the archive, containers and packings from the tables."""
    tables = {path.name: path.read_bytes() for path in FOLDER.glob("*.csv")}
    data = (FOLDER / "skins.zip").read_bytes()
    collection = read_darwin(data, name="skins.zip", beside=tables)
    bird, otter = collection.objects
    assert (bird.object_number, bird.object_name) == ("PMM.Z.12", 'guillemot, "cabinet skin"')
    assert bird.title == "Uria aalge (Pontoppidan, 1763)"
    assert (bird.former_numbers, bird.materials) == (("Z 12", "87/4"), ("skin", "skull"))
    assert bird.photos == (
        PhotoReference("PMM.Z.12_front.jpg"),
        PhotoReference("PMM.Z.12, label.jpg", PhotoRole.DETAIL),
    )
    assert (otter.period, otter.photos) == ("1902", ())
    assert len(collection.packings[0].places) == 2
    codes = [finding.code for finding in collection.findings]
    assert codes == ["skipped-sheet", "unknown-column", "headings-recognised"]


@pytest.mark.parametrize("data", [b"", b"PK\x03\x04", b"catalogNumber\n1\n"])
def test_other_files_are_refused(data: bytes) -> None:
    """What is no packed folder is an error that names the file."""
    with pytest.raises(UnreadableFileError, match=r"x\.zip"):
        read_darwin(data, name="x.zip")
