from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import NotFoundError
from service.handling.checks.kinds import LOOKED_AT
from service.keeping.rounds.look import load_look
from service.records.record import Collection, PhotoReference
from service.store.handles import Connection
from service.store.kept.checks import IN_ORDER, Check, save_check
from service.store.kept.outs import Slip, note_out
from service.store.save_records import save_records
from service.store.shelf.files import StoredFile
from service.store.shelf.photos import BroughtPhoto, bring_photos
from tests.keeping.made import BOX, COLLECTION, EMPTY, JAR, LEAD
from tests.store.made import MOMENT, STAMP

SHA = "ab" * 32


def test_it_tells_what_to_know_before_the_box_is_opened(connection: Connection) -> None:
    """Where it stands, what lies in it, the hazard with its state, what is away, the last look."""
    check = Check(BOX, MOMENT.date(), "", STAMP, IN_ORDER)
    save_check(connection, check)
    note_out(connection, Slip(JAR, BOX), stamp=STAMP)
    look = load_look(connection, BOX)
    assert look.stand.location == "Store 2 / Bay 4"
    assert [(one.object_number, one.place) for one in look.seen] == [
        (JAR, "layer 1"),
        (LEAD, "layer 2"),
    ]
    assert [warn.heading for warn in look.handling.hazards] == ["Lead presumed"]
    assert [one.kind for one in look.plan] == list(LOOKED_AT)
    assert look.past == (check,)
    assert [out.slip.object_number for out in look.outs] == [JAR]
    assert look.questions == "Collections desk 555 0142"


def test_a_photo_is_shown_unless_nobody_may_picture_it(connection: Connection) -> None:
    """The stored file is named; that of a restricted object is not."""
    photo = BroughtPhoto(JAR, "jar.jpg", PhotoReference("jar.jpg").role, StoredFile(SHA, ".jpg", 9))
    bring_photos(connection, [photo], stamp=STAMP)
    assert [one.photo for one in load_look(connection, BOX).seen] == [SHA, ""]
    hidden = replace(COLLECTION.objects[0], restricted=True)
    save_records(connection, Collection(objects=(hidden,)), stamp=STAMP)
    assert [one.photo for one in load_look(connection, BOX).seen] == ["", ""]


def test_an_empty_container_asks_for_nothing(connection: Connection) -> None:
    """There is nothing to look at; a number nobody knows is refused."""
    assert load_look(connection, EMPTY).plan == ()
    with pytest.raises(NotFoundError):
        load_look(connection, "B-999")
