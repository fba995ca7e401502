from __future__ import annotations

from pathlib import Path

import pytest

from service.errors import NotFoundError
from service.keeping.table.put_down import TableItem, TablePhoto, put_down
from service.records.record import Hazard, HazardState, ObjectRecord, PhotoRole, PlaceRecord
from service.store.open import open_folder, reading, writing
from service.store.shelf.files import StoredFile
from service.web.views.pack.lying import list_lacking, load_lying
from tests.web.store.opened import EMPTY_BOX, STAMP, fill_store


def test_the_last_thing_stands_first_with_its_front(tmp_path: Path) -> None:
    """Photos, hazards and what its record lacks are told beside it."""
    fill_store(tmp_path)
    engine = open_folder(tmp_path)
    front, back = (
        TablePhoto(StoredFile(letter * 64, ".jpg", 9), role)
        for letter, role in (("a", PhotoRole.FRONT), ("b", PhotoRole.BACK))
    )
    lead = Hazard("lead", HazardState.PRESUMED)
    with writing(engine) as connection:
        for at in range(30):
            item = TableItem(EMPTY_BOX, PlaceRecord(f"N.{at}", layer=1 + at % 2), title="Net")
            put_down(connection, item, None, stamp=STAMP)
        last = TableItem(EMPTY_BOX, PlaceRecord("N.99", layer=2), hazard=lead)
        for photo in (back, front):
            put_down(connection, last, photo, stamp=STAMP)
    with reading(engine) as connection:
        lying = load_lying(connection, EMPTY_BOX)
        with pytest.raises(NotFoundError):
            load_lying(connection, "none")
    engine.dispose()
    first = lying.lines[0]
    assert first.place.object_number == "N.99"
    assert first.picture == f"/api/photos/{'a' * 64}?object=N.99&width_px=160"
    assert (first.photos, first.hazards) == ("2 photos", ("Lead presumed",))
    assert (lying.things, lying.more, lying.layers) == ("31 objects", 7, ((1, 15), (2, 16)))
    assert [one.code for one in lying.lacking].count("no-title") == 1
    assert [one.code for one in lying.lacking].count("no-photo") == 30


def test_what_is_complete_lacks_nothing() -> None:
    """A restricted object wants no photo; one without record lacks both."""
    assert list_lacking(ObjectRecord("X", "Net", restricted=True), (), "X") == ()
    codes = [one.code for one in list_lacking(None, (), "X")]
    assert codes == ["no-title", "no-photo"]
