from __future__ import annotations

from service.records.record import (
    Hazard,
    HazardState,
    ObjectRecord,
    PhotoReference,
    PhotoRole,
    PlaceRecord,
)
from service.store.kept.outs import Out, Slip
from service.store.shelf.photos import StoredPhoto
from service.web.views.containers.contents import (
    find_place,
    list_lost,
    place_key,
    show_layers,
)
from tests.store.made import STAMP
from tests.web.views.containers.made import look

PHOTO = StoredPhoto("a.jpg", PhotoRole.FRONT, "f00d", ".jpg")
JAR = ObjectRecord(
    "X.1",
    "Jar",
    photos=(PhotoReference(PHOTO.stored_name),),
    hazards=(Hazard("lead", HazardState.PRESUMED),),
    cautions=("fragile",),
)


def test_layers_come_from_the_top_with_photos_and_full_words() -> None:
    """Hazards with their state before cautions; what has no photo has no address."""
    seen = look([JAR], [PlaceRecord("X.2", layer=3), PlaceRecord("X.1")], photos=[PHOTO])
    top, bottom = show_layers(seen)
    assert (top.number, bottom.number) == (1, 3)
    (jar,) = top.objects
    assert (jar.name, jar.photo) == ("Jar", "/api/photos/f00d?object=X.1&width_px=400")
    assert [words for _, words in jar.marks] == ["Lead presumed", "Fragile"]
    assert (bottom.objects[0].name, bottom.objects[0].photo) == ("not in the records", "")


def test_human_remains_are_pictured_nowhere() -> None:
    """Their title may stand inside the house."""
    remains = ObjectRecord(
        "X.1", "Jar", photos=JAR.photos, hazards=(Hazard("human-remains", HazardState.CONFIRMED),)
    )
    ((shown,),) = (
        layer.objects
        for layer in show_layers(look([remains], [PlaceRecord("X.1")], photos=[PHOTO]))
    )
    assert (shown.name, shown.photo, shown.is_restricted) == ("Jar", "", True)


def test_a_slip_stands_at_the_parts_it_names() -> None:
    """Of parts that lie apart only the gap of those that are out is told."""
    places = [PlaceRecord("H", ("a",)), PlaceRecord("H", ("b",))]
    slips = [Slip("H", "B-1", ("b",)), Slip("GONE", "B-1")]
    outs = [Out(number, slip, STAMP) for number, slip in enumerate(slips, 1)]
    seen = look([], places, outs=outs)
    shown = [one for layer in show_layers(seen) for one in layer.objects]
    assert [one.out and one.out.out_id for one in shown] == [None, 1]
    assert list_lost(seen) == (outs[1],)


def test_an_order_is_only_among_those_at_one_spot() -> None:
    """What lies alone in its compartment has no neighbours."""
    places = [PlaceRecord("A", compartment="A1"), PlaceRecord("B"), PlaceRecord("C")]
    (layer,) = show_layers(look([], places))
    assert [one.has_neighbours for one in layer.objects] == [False, True, True]


def test_a_key_names_an_object_in_the_same_parts() -> None:
    """Whatever the order of parts, and wherever it lies."""
    place = PlaceRecord("H", ("a", "b"), layer=2)
    assert place_key(place) == place_key(PlaceRecord("H", ("b", "a"), note="moved"))
    assert place_key(place) != place_key(PlaceRecord("H", ("a",)))
    assert find_place([PlaceRecord("X"), place], place_key(place)) == place
    assert find_place([place], "nothing") is None
