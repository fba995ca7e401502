"""Tests for giving records the photos their names say."""

from __future__ import annotations

from service.pipeline.name_photos import name_photos
from service.records.record import Collection, ObjectRecord, PhotoReference, PhotoRole

BARE = Collection(objects=(ObjectRecord("1987.412.3"), ObjectRecord("1987.412.4")))
TWINS = Collection(objects=(ObjectRecord("1987.412"), ObjectRecord("1987/412")))


def test_matched_photos_are_added_and_told_once() -> None:
    """Records get their photos in order, and one note names the first three."""
    names = [f"1987.412.3_{view}.jpg" for view in (2, 1, 3)] + ["1987.412.4.jpg"]
    named, (told,) = name_photos(names, BARE)
    assert named.objects[0].photos == (
        PhotoReference("1987.412.3_1.jpg"),
        PhotoReference("1987.412.3_2.jpg", PhotoRole.DETAIL),
        PhotoReference("1987.412.3_3.jpg", PhotoRole.DETAIL),
    )
    assert named.objects[1].photos == (PhotoReference("1987.412.4.jpg"),)
    assert told.code == "photo-matched"
    assert told.message == (
        "4 photos were matched by name: “1987.412.3_1.jpg” to 1987.412.3, “1987.412.3_2.jpg” to"
        " 1987.412.3, “1987.412.3_3.jpg” to 1987.412.3 and 1 more."
    )


def test_one_photo_is_one_photo() -> None:
    """A single match is told in the singular."""
    _named, (told,) = name_photos(["1987.412.4.jpg"], BARE)
    assert told.message == "1 photo was matched by name: “1987.412.4.jpg” to 1987.412.4."


def test_a_few_doubts_are_told_and_the_rest_counted() -> None:
    """Each doubtful file is a warning, after three there is a count, and none is told twice."""
    names = [f"1987-412_{view}.jpg" for view in range(1, 6)]
    named, told = name_photos(names, TWINS)
    assert named == TWINS
    assert [finding.code for finding in told] == ["photo-ambiguous"] * 4
    assert told[0].message == (
        "“1987-412_1.jpg” fits 1987.412, 1987/412; it was given to none of them."
    )
    assert told[-1].message == "2 more files fit more than one object."
    assert name_photos(names[:4], TWINS)[1][-1].message == "1 more file fits more than one object."


def test_what_fits_nothing_is_told_as_ever() -> None:
    """Files that fit no object are named together, and records stay as they were."""
    named, (told,) = name_photos(["d.jpg", "c.jpg", "b.jpg", "a.jpg"], BARE)
    assert named == BARE
    assert told.code == "photo-not-named"
    assert told.message == "No record names a.jpg, b.jpg, c.jpg and 1 more."


def test_a_record_with_photos_is_never_changed() -> None:
    """Even a missing photo that a record names is not replaced by one that fits."""
    own = Collection(objects=(ObjectRecord("1.2.3", photos=(PhotoReference("gone.jpg"),)),))
    named, (told,) = name_photos(["1.2.3.jpg"], own)
    assert named == own
    assert told.code == "photo-not-named"
