"""Tests for finding out whose photos the files are."""

from __future__ import annotations

from service.keeping.photos.plan import MatchedPhoto, plan_photos
from service.records.record import ObjectRecord, PhotoReference, PhotoRole

NAMED = ObjectRecord("1987.412.3", photos=(PhotoReference("Jar.JPG"),))
BARE = ObjectRecord("1987.412.30")
FRONT, BACK, DETAIL = PhotoRole.FRONT, PhotoRole.BACK, PhotoRole.DETAIL


def test_names_as_people_write_them_find_their_objects() -> None:
    """Dots or hyphens, side words and counters: the number is found, and the side."""
    names = ["1987-412-30 back.JPG", "1987.412.30_1.jpg"]
    plan = plan_photos(names, [NAMED, BARE])
    assert {(photo.file, photo.object_number, photo.role) for photo in plan.matched} == {
        ("1987-412-30 back.JPG", "1987.412.30", BACK),
        ("1987.412.30_1.jpg", "1987.412.30", FRONT),
    }
    assert (plan.unmatched, plan.ambiguous) == ((), ())


def test_a_name_a_record_gives_wins() -> None:
    """Capitals are no matter, and the file is known by the name its record gives."""
    plan = plan_photos(["jar.jpg"], [NAMED, BARE])
    assert plan.matched == (MatchedPhoto("jar.jpg", "1987.412.3", FRONT, "Jar.JPG"),)


def test_one_file_may_show_several_objects() -> None:
    """A photo that two records name is brought for both."""
    other = ObjectRecord("X.112", photos=(PhotoReference("jar.jpg", DETAIL),))
    plan = plan_photos(["jar.jpg"], [NAMED, other])
    assert [(photo.object_number, photo.role) for photo in plan.matched] == [
        ("1987.412.3", FRONT),
        ("X.112", DETAIL),
    ]


def test_what_fits_nothing_or_several_is_listed() -> None:
    """Neither is given to anything."""
    plan = plan_photos(["holiday.jpg", "1987.412.3 and 1987.412.30.jpg"], [NAMED, BARE])
    assert plan.matched == ()
    assert plan.unmatched == ("holiday.jpg",)
    ((name, numbers),) = plan.ambiguous
    assert name.startswith("1987.412.3 and")
    assert numbers == ("1987.412.3", "1987.412.30")
