from __future__ import annotations

import io

import pytest
from PIL import Image

from service.cards.card import CoverCard
from service.errors import FileNotStoredError, NotFoundError, UnusableCropError
from service.keeping.desk import Desk
from service.keeping.photos.shown import WHOLE, PhotoChange, Ratios, change_photo, find_source
from service.keeping.reprints import list_reprints
from service.keeping.today import compose_today, load_printable
from service.pages.ruler import Ruler
from service.records.photos.edit import PhotoCrop, PhotoEdit
from service.records.record import PhotoRole
from service.render.pictures.prepare import prepare_photos
from service.render.pictures.shown.edited import EditedPhoto
from service.store.history import load_history
from service.store.open import reading, writing
from service.store.printed.card import describe_card
from service.store.shelf.photos import BroughtPhoto, StoredPhoto, bring_photos
from tests.keeping.made import COVER, GOWN, attach_all
from tests.store.made import LATER, STAMP


def bring(desk: Desk, size: tuple[int, int] = (400, 300)) -> str:
    """Bring a photo of the gown and give its hash."""
    stream = io.BytesIO()
    Image.linear_gradient("L").resize(size).convert("RGB").save(stream, "JPEG")
    stored = desk.shelf.put(stream.getvalue(), ".jpg")
    with writing(desk.engine) as connection:
        photo = BroughtPhoto(GOWN, "gown.jpg", PhotoRole.FRONT, stored)
        bring_photos(connection, [photo], stamp=STAMP)
    return stored.sha256


def test_a_turned_photo_makes_its_card_wrong(desk: Desk, ruler: Ruler) -> None:
    """And turned back it makes it right again; the file is never touched."""
    sha256 = bring(desk)
    with writing(desk.engine) as connection:
        attach_all(connection, ruler, COVER)
    original = desk.shelf.get(sha256, ".jpg")
    change_photo(desk, GOWN, sha256, PhotoChange(turns=1), stamp=LATER)
    wrong = list_reprints(desk.engine, ruler).out_of_date
    assert {one.reprint.container_number for one in wrong} == {COVER}
    assert all("photo" in change.words for one in wrong for change in one.reprint.changes)
    assert desk.shelf.get(sha256, ".jpg") == original
    change_photo(desk, GOWN, sha256, PhotoChange(turns=4), stamp=LATER)
    assert list_reprints(desk.engine, ruler).out_of_date == ()
    with reading(desk.engine) as connection:
        verbs = [one.entry.verb for one in load_history(connection, object_number=GOWN)]
    assert verbs[-2:] == ["photo turned", "photo turned"]


def test_print_takes_what_is_shown(desk: Desk, ruler: Ruler) -> None:
    """The source of the thumbnails has the turn and the crop; its shape is theirs."""
    sha256 = bring(desk)
    change = PhotoChange(turns=1, crop=(0, 0, 0.5, 1))
    change_photo(desk, GOWN, sha256, change, stamp=LATER)
    with reading(desk.engine) as connection:
        loaded = load_printable(connection, [COVER])
        today = compose_today(connection, ruler, [COVER])
    ((name, photo),) = loaded.photos.items()
    (card,) = [one for one in today.cards.values() if isinstance(one, CoverCard)]
    assert name in describe_card(card).content
    source = find_source(desk.shelf, photo)
    assert source == EditedPhoto(
        desk.shelf.local_path(sha256, ".jpg"), PhotoEdit(1, PhotoCrop(0, 0, 0.5, 1))
    )
    folder, decoders = desk.workshop.cache_folder, desk.workshop.decoders
    for _ in ("made", "found again"):
        ready, _ = prepare_photos({name: source}, cache_folder=folder, workers=decoders)
        assert (ready[name].largest.width_px, ready[name].largest.height_px) == (300, 200)
    plain = StoredPhoto("gown.jpg", PhotoRole.FRONT, sha256, ".jpg")
    assert find_source(desk.shelf, plain) == desk.shelf.local_path(sha256, ".jpg")
    whole, _ = prepare_photos(
        {name: find_source(desk.shelf, plain)}, cache_folder=folder, workers=decoders
    )
    assert whole[name].largest.width_px == 400


@pytest.mark.parametrize(
    ("crop", "said"),
    [
        ((0, 0, 0.0375, 1), "15 x 300 pixels would be left; 16 each way are needed"),
        ((0.5, 0, 0.4, 1), "left before right"),
    ],
)
def test_a_part_that_shows_nothing_is_refused(desk: Desk, crop: Ratios, said: str) -> None:
    """What is left measures 16 pixels each way at least; just those are taken."""
    sha256 = bring(desk)
    with pytest.raises(UnusableCropError, match=said):
        change_photo(desk, GOWN, sha256, PhotoChange(crop=crop), stamp=LATER)
    shown = change_photo(desk, GOWN, sha256, PhotoChange(crop=(0, 0, 0.04, 1)), stamp=LATER)
    assert shown.edit.crop == PhotoCrop(0, 0, 0.04, 1)
    assert change_photo(desk, GOWN, sha256, PhotoChange(crop=WHOLE), stamp=LATER).edit.crop is None


def test_each_part_of_a_change_stands_alone(desk: Desk) -> None:
    """What a change does not name stays as it was."""
    sha256 = bring(desk)
    change_photo(desk, GOWN, sha256, PhotoChange(turns=3), stamp=LATER)
    change_photo(desk, GOWN, sha256, PhotoChange(role=PhotoRole.BACK), stamp=LATER)
    shown = change_photo(desk, GOWN, sha256, PhotoChange(is_removed=True), stamp=LATER)
    assert (shown.edit.turns, shown.role, shown.is_removed) == (3, PhotoRole.BACK, True)
    assert shown.is_printed


def test_a_photo_that_is_not_there_is_told(desk: Desk) -> None:
    """Neither an unknown one nor a lost file is changed."""
    sha256 = bring(desk)
    with pytest.raises(NotFoundError):
        change_photo(desk, GOWN, "0" * 64, PhotoChange(turns=1), stamp=LATER)
    desk.shelf.local_path(sha256, ".jpg").unlink()
    with pytest.raises(FileNotStoredError):
        change_photo(desk, GOWN, sha256, PhotoChange(crop=(0, 0, 0.5, 1)), stamp=LATER)
