"""Tests for making records printable."""

from __future__ import annotations

from dataclasses import replace

from service.pipeline.printable import keep_photos, replace_missing
from service.pipeline.ready import Workshop
from service.records.record import Collection, Hazard, HazardState, PlaceRecord
from tests.pipeline.conftest import with_title


def test_missing_signs_become_their_code(collection: Collection, workshop: Workshop) -> None:
    """Only the sign no font holds is replaced, and the finding names object and code."""
    odd = with_title(collection, "Tally \U00013000 stick")
    clean, findings = replace_missing(odd, workshop.ruler)
    assert clean.objects[0].title == "Tally [U+13000] stick"
    assert [(finding.code, finding.where.object_number) for finding in findings] == [
        ("cannot-be-printed", "1987.412.9")
    ]


def test_what_was_noted_of_places_and_hazards_is_printable(
    collection: Collection, workshop: Workshop
) -> None:
    """A smiling face in a note, or a control character, would stop every card of the box."""
    hazard = Hazard("arsenic", HazardState.CONFIRMED, note="spot test \U00013000")
    place = PlaceRecord(collection.objects[0].object_number, note="in \U00013000 tissue")
    odd = replace(
        collection,
        objects=(replace(collection.objects[0], hazards=(hazard,)), *collection.objects[1:]),
        packings=(replace(collection.packings[0], places=(place,), reason="bell\a"),),
    )
    clean, findings = replace_missing(odd, workshop.ruler)
    assert clean.objects[0].hazards == (replace(hazard, note="spot test [U+13000]"),)
    assert clean.packings[0].places == (replace(place, note="in [U+13000] tissue"),)
    assert clean.packings[0].reason == "bell[U+0007]"
    assert [finding.message.split()[0] for finding in findings] == ["hazards", "places", "reason"]


def test_printable_records_stay_as_they_are(collection: Collection, workshop: Workshop) -> None:
    """Records our fonts can print are not touched."""
    assert replace_missing(collection, workshop.ruler) == (collection, ())


def test_unusable_photos_are_let_go(collection: Collection) -> None:
    """A reference to a photo that cannot be used is left out."""
    assert keep_photos(collection, {"lead.jpg"}) == collection
    assert keep_photos(collection, set()).objects[0].photos == ()
