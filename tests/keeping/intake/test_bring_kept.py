"""Tests for taking in what was sent and looked at."""

from __future__ import annotations

from service.keeping.desk import Desk
from service.keeping.intake.bring_kept import hash_of, preview_kept, take_in_kept
from service.keeping.intake.how_read import AS_IT_IS
from service.keeping.intake.parts import choose_how, find_parts
from service.store.load_records import load_collection
from service.store.open import reading
from tests.keeping.intake.sent import WITH_BOXES, keep
from tests.store.made import STAMP
from tests.web.sent import SAMPLES

PHOTO = (SAMPLES / "port_merrow" / "photos" / "1902.7_front.jpg").read_bytes()


def test_the_preview_is_what_is_done(desk: Desk) -> None:
    """Objects, a new box and its packing; a second time nothing is left to do."""
    kept = keep(desk, list__csv=WITH_BOXES)
    how = choose_how(find_parts(desk, kept))
    seen = preview_kept(desk, kept, how)
    assert seen.plan.objects.outcome.new == ("T.1", "T.2", "T.3")
    assert seen.plan.packings.outcome.new == ("N-1",)
    with reading(desk.engine) as connection:
        assert all(one.object_number != "T.1" for one in load_collection(connection).objects)
    taken = take_in_kept(desk, kept, how, stamp=STAMP)
    assert taken.records is not None
    assert taken.records.saved.objects.new == ("T.1", "T.2", "T.3")
    again = preview_kept(desk, kept, how).plan
    assert not again.objects.outcome.touched
    assert not again.packings.outcome.touched


def test_photos_go_to_the_objects_that_come_with_them(desk: Desk) -> None:
    """Matched by the records as they will be; what fits none is told beforehand."""
    table = b"object_number,title\n1902.7,Lantern\n"
    kept = keep(desk, mine__csv=table, **{"1902__7_front__jpg": PHOTO, "stray__jpg": PHOTO})
    how = choose_how(find_parts(desk, kept))
    photos = preview_kept(desk, kept, how).photos
    assert [one.object_number for one in photos.matched] == ["1902.7"]
    assert photos.unmatched == ("stray.jpg",)
    taken = take_in_kept(desk, kept, how, stamp=STAMP)
    assert taken.photos is not None
    assert taken.photos.new == 1


def test_photos_alone_are_no_import(desk: Desk) -> None:
    """There are no records to take back."""
    kept = keep(desk, stray__jpg=PHOTO)
    assert take_in_kept(desk, kept, AS_IT_IS, stamp=STAMP).records is None
    assert len(hash_of(kept)) == 64
