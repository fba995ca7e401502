from __future__ import annotations

from collections.abc import Callable

import pytest

from service.errors import UnreadableFileError
from service.records.darwin.rows import read_rows
from service.records.rows.notebook import Notebook

Maker = Callable[..., bytes]
DWC = "http://rs.tdwg.org/dwc/terms/"
NUMBER = f'<id index="0"/><field index="1" term="{DWC}catalogNumber"/>'
MEDIA = f'<field index="2" term="{DWC}associatedMedia"/>'
PICTURES = (
    '<extension rowType="http://rs.gbif.org/terms/1.0/Multimedia"><files><location>m.csv</location>'
    '</files><coreid index="0"/><field index="1" term="http://purl.org/dc/terms/identifier"/>'
    "</extension>"
)


def test_pictures_beside_go_to_their_records(make_meta: Maker, pack: Maker) -> None:
    """Pictures of the extension are found by the record's id; what a record names itself counts."""
    data = pack(
        {
            "meta.xml": make_meta(NUMBER + MEDIA, PICTURES),
            "core.txt": b"id\tno\tmedia\nu1\tZ.1\t\nu2\tZ.2\thttps://x/own.jpg\nu3\tZ.3\n",
            "m.csv": b"u1,https://x/a.jpg\nu1,https://x/b.jpg\nu2,https://x/c.jpg\nu2,\n",
        }
    )
    rows = list(read_rows(data, name="x.zip", notebook=Notebook()))
    assert [row.text("object_number") for row in rows] == ["Z.1", "Z.2", "Z.3"]
    photos = [row.list_cell("photos").texts() for row in rows]
    assert photos == [("a.jpg", "b.jpg"), ("own.jpg",), ()]
    assert (rows[0].where.file, rows[0].where.row) == ("x.zip, core.txt", 2)


def test_defaults_fill_empty_cells(make_meta: Maker, pack: Maker) -> None:
    """A value the description gives for all records stands where a record has none."""
    kind = f'<field index="2" term="{DWC}preparations" default="skin | skull"/>'
    files = {"meta.xml": make_meta(NUMBER + kind), "core.txt": b"h\nu\tZ.1\t\nu\tZ.2\tpelt\n"}
    rows = read_rows(pack(files), name="x.zip", notebook=Notebook())
    materials = [row.list_cell("materials").texts() for row in rows]
    assert materials == [("skin", "skull"), ("pelt",)]


def test_id_stands_in_for_a_number(make_meta: Maker, pack: Maker) -> None:
    """Without a catalogue number the id of the record is used, and that is told."""
    notebook = Notebook()
    files = {"meta.xml": make_meta('<id index="0"/>'), "core.txt": b"h\nu1\n"}
    (row,) = read_rows(pack(files), name="x.zip", notebook=notebook)
    assert row.text("object_number") == "u1"
    assert [finding.code for finding in notebook.findings()] == ["number-like-object-number"]


@pytest.mark.parametrize(
    ("lacking", "reason"), [("meta.xml", "no file 'meta.xml'"), ("core.txt", "no file 'core.txt'")]
)
def test_lacking_file_is_told(make_meta: Maker, pack: Maker, lacking: str, reason: str) -> None:
    """An archive without its description or its table is refused by name."""
    files = {"meta.xml": make_meta(NUMBER), "core.txt": b"h\nu\tZ.1\n"}
    del files[lacking]
    with pytest.raises(UnreadableFileError, match=reason):
        list(read_rows(pack(files), name="x.zip", notebook=Notebook()))


def test_nothing_outside_the_archive_is_opened(make_meta: Maker, pack: Maker) -> None:
    """A path or an address for a file is looked for in the archive alone."""
    for place in ("../../etc/hostname", "http://192.0.2.1/core.txt"):
        meta = make_meta(NUMBER).replace(b"core.txt", place.encode())
        with pytest.raises(UnreadableFileError, match="no file"):
            list(read_rows(pack({"meta.xml": meta}), name="x.zip", notebook=Notebook()))


def test_records_without_id_or_number_are_no_records(make_meta: Maker, pack: Maker) -> None:
    """A table in which nothing tells records apart gives rows without a number."""
    title = '<field index="0" term="http://purl.org/dc/terms/title"/>'
    files = {"meta.xml": make_meta(title), "core.txt": b"h\nJar\n"}
    rows = list(read_rows(pack(files), name="x.zip", notebook=Notebook()))
    assert [row.text("object_number") for row in rows] == [""]
