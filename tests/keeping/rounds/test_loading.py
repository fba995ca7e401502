from __future__ import annotations

import pytest

from service.errors import NotFoundError
from service.keeping.desk import Desk
from service.keeping.rounds.loading import (
    find_files,
    find_packed,
    load_container_of,
    load_packings,
    load_unpacked,
)
from service.records.museum.hazard_words import HazardWords
from service.records.record import (
    Collection,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    PhotoRole,
    PlaceRecord,
)
from service.store.handles import Connection
from service.store.packing.save import save_packing
from service.store.save_records import save_records
from service.store.shelf.photos import BroughtPhoto, bring_photos
from tests.keeping.made import BOX, EMPTY, JAR, LEAD
from tests.store.made import STAMP


def test_what_lies_in_a_container_is_found(connection: Connection) -> None:
    """An object that lies there with its record; one that does not is none."""
    loaded = load_packings(connection, [BOX])
    packing = load_container_of(loaded, BOX)
    packed = find_packed(packing, PlaceRecord(LEAD))
    assert packed is not None
    assert (packed.record.title, packed.place.layer) == ("Lead line", 2)
    assert find_packed(packing, PlaceRecord("X.1")) is None
    with pytest.raises(NotFoundError):
        load_container_of(loaded, EMPTY)


def test_what_guidance_presumes_is_there(connection: Connection) -> None:
    """A stuffed bird that nobody tested warns of arsenic on papers as it does on cards."""
    bird = ObjectRecord(JAR, "Gannet, mounted", object_name="taxidermy")
    save_records(connection, Collection(objects=(bird,)), stamp=STAMP)
    packing = load_container_of(load_packings(connection, [BOX]), BOX)
    packed = find_packed(packing, PlaceRecord(JAR))
    assert packed is not None
    assert ("arsenic", HazardState.PRESUMED) in [
        (hazard.code, hazard.state) for hazard in packed.record.hazards
    ]


def test_what_lies_nowhere_keeps_its_hazards(connection: Connection) -> None:
    """A record counts wherever the object is; without one nothing is known of it."""
    packed = load_unpacked(connection, PlaceRecord(LEAD))
    assert [hazard.code for hazard in packed.record.hazards] == ["lead"]
    assert not load_unpacked(connection, PlaceRecord("X.999")).known


def test_presumed_hazards_go_on_papers_too(connection: Connection) -> None:
    """As on cards, packed or not, and in the museum's own words."""
    owl = ObjectRecord("X.112", "Owl", "taxidermy", "1920s")
    museum = Museum(hazard_words=(HazardWords("arsenic", "Call the desk."),))
    packed = PackingRecord(EMPTY, places=(PlaceRecord("X.112"),))
    save_records(connection, Collection(museum, (owl,)), stamp=STAMP)
    loose = load_unpacked(connection, PlaceRecord("X.112"))
    save_packing(connection, packed, expected_revision=0, stamp=STAMP)
    (lying,) = load_packings(connection, [EMPTY]).packings[EMPTY].contents
    for one in (loose, lying):
        (hazard,) = one.record.hazards
        assert (hazard.code, hazard.state) == ("arsenic", HazardState.PRESUMED)
        assert hazard.instruction == "Call the desk."


def test_only_photos_that_are_shown_are_fetched(connection: Connection, desk: Desk) -> None:
    """By the name that the records of this loading give them."""
    stored = desk.shelf.put(b"jpeg of the jar", ".jpg")
    brought = BroughtPhoto(JAR, "jar.jpg", PhotoRole.FRONT, stored)
    bring_photos(connection, [brought], stamp=STAMP)
    loaded = load_packings(connection, [BOX])
    name = f"{stored.sha256}.jpg"
    files = find_files(desk, loaded.photos, [name, name, "unknown.jpg"])
    assert files == {name: desk.shelf.local_path(stored.sha256, ".jpg")}
    assert find_files(desk, loaded.photos, []) == {}
