"""Tests for single cards of the store as pictures."""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import replace
from datetime import date

import pytest
from PIL import Image
from sqlalchemy import inspect, text

from service.errors import NotFoundError, UnknownCardKindError
from service.keeping.desk import Desk
from service.keeping.previews.cards import CardWish, lay_all, lay_card, preview_card
from service.pages.page import PictureBlock, TextBlock
from service.pipeline.previews.card import LaidCard
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    PackingRecord,
    PhotoRole,
    PlaceRecord,
)
from service.store.open import reading, writing
from service.store.packing.save import save_packing
from service.store.save_records import save_records
from service.store.shelf.photos import BroughtPhoto, bring_photos
from tests.keeping.made import BOX, COLLECTION, COVER, EMPTY, GOWN, JAR, LEAD
from tests.store.made import STAMP

pytestmark = pytest.mark.print

TODAY = date(2026, 11, 25)
BAIT = COLLECTION.objects[0]


def words_of(laid: LaidCard) -> str:
    """Give everything a card says on its pages."""
    blocks = [block for page in laid.fitted.pages for block in page.blocks]
    return "\n".join(block.whole for block in blocks if isinstance(block, TextBlock))


def photos_on(laid: LaidCard) -> int:
    """Count the photos on a card."""
    blocks = [block for page in laid.fitted.pages for block in page.blocks]
    return len([block for block in blocks if isinstance(block, PictureBlock) and block.photo])


def count_rows(desk: Desk) -> dict[str, int]:
    """Count the rows of every table."""
    with reading(desk.engine) as connection:
        names: Sequence[str] = inspect(connection).get_table_names()
        return {
            name: connection.execute(text(f'SELECT count(*) FROM "{name}"')).scalar_one()  # noqa: S608 - our tables
            for name in names
        }


def test_a_card_is_shown_as_the_records_say_now(desk: Desk) -> None:
    """Taking an object out gives another picture, in which it is not; nothing is remembered."""
    wish = CardWish(BOX, "lid-card")
    before = lay_card(desk, wish, today=TODAY)
    first = preview_card(desk, wish, width_px=700, today=TODAY)
    assert Image.open(io.BytesIO(first)).width == 700
    assert JAR in words_of(before)
    rows = count_rows(desk)
    assert preview_card(desk, wish, width_px=700, today=TODAY) == first
    assert count_rows(desk) == rows
    with writing(desk.engine) as connection:
        fewer = PackingRecord(BOX, 1, (PlaceRecord(LEAD, layer=2),), "I. Hale", TODAY)
        save_packing(connection, fewer, expected_revision=1, stamp=STAMP)
    after = lay_card(desk, wish, today=TODAY)
    assert JAR not in words_of(after)
    assert after.tag(1, width_px=700) != before.tag(1, width_px=700)
    assert preview_card(desk, wish, width_px=700, today=TODAY) != first


def test_every_kind_and_side_is_shown_at_the_size_of_a_run(desk: Desk) -> None:
    """What a box always gets is listed; what it gets on request is shown when it is asked for."""
    cards, findings = lay_all(desk, BOX, today=TODAY)
    assert [card.fitted.kind.code for card in cards] == [
        "lid-card",
        "end-label",
        "end-label",
        "contents-list",
    ]
    assert findings
    second = lay_card(desk, CardWish(BOX, "end-label", side=2), today=TODAY)
    assert second.fitted.stock == cards[1].fitted.stock
    side = lay_card(desk, CardWish(BOX, "side-card", paper="Letter"), today=TODAY)
    assert side.fitted.stock.name.startswith("Letter")
    tag = lay_card(desk, CardWish(GOWN), today=TODAY)
    assert GOWN in words_of(tag)
    assert BOX not in words_of(tag)


@pytest.mark.parametrize(
    "wish",
    [
        CardWish("B-999", "lid-card"),
        CardWish(BOX, "cover-card"),
        CardWish(BOX, "end-label", side=3),
        CardWish(COVER, "lid-card"),
        CardWish("X.9"),
    ],
)
def test_what_is_not_there_is_told(desk: Desk, wish: CardWish) -> None:
    """No such container, no such card of it, no such side, no such object."""
    with pytest.raises(NotFoundError):
        lay_card(desk, wish, today=TODAY)


def test_an_unknown_kind_is_told(desk: Desk) -> None:
    """The kind has to be one of the list; a container has to be in the store."""
    with pytest.raises(UnknownCardKindError):
        lay_card(desk, CardWish(BOX, "postcard"), today=TODAY)
    with pytest.raises(NotFoundError):
        lay_all(desk, "B-999", today=TODAY)
    assert lay_all(desk, EMPTY, today=TODAY)[0]


def bring_photo(desk: Desk, object_number: str) -> None:
    """Bring a photo of an object."""
    photo = io.BytesIO()
    Image.new("RGB", (900, 600), "#405060").save(photo, "JPEG")
    stored = desk.shelf.put(photo.getvalue(), ".jpg")
    with writing(desk.engine) as connection:
        brought = BroughtPhoto(object_number, "jar.jpg", PhotoRole.FRONT, stored)
        bring_photos(connection, [brought], stamp=STAMP)


@pytest.mark.parametrize(
    ("changed", "unsaid"),
    [
        pytest.param(replace(BAIT, restricted=True), ("Bait jar",), id="restricted"),
        pytest.param(
            replace(BAIT, hazards=(Hazard("human-remains", HazardState.CONFIRMED),)),
            ("Bait jar",),
            id="human remains",
        ),
        pytest.param(
            replace(BAIT, hazards=(Hazard("firearm", HazardState.CONFIRMED),)),
            ("Bait jar", "irearm"),
            id="discreet",
        ),
    ],
)
def test_the_outside_shows_what_its_card_says_and_no_more(
    desk: Desk, changed: ObjectRecord, unsaid: tuple[str, ...]
) -> None:
    """Neither photo nor title of such an object is on a picture; nor is what a discreet one is."""
    bring_photo(desk, JAR)
    assert photos_on(lay_card(desk, CardWish(BOX, "lid-card"), today=TODAY)) == 1
    with writing(desk.engine) as connection:
        save_records(connection, Collection(objects=(changed,)), stamp=STAMP)
    for wish in (CardWish(BOX, "lid-card"), CardWish(BOX, "end-label"), CardWish(JAR)):
        laid = lay_card(desk, wish, today=TODAY)
        assert photos_on(laid) == 0
        assert [words for words in unsaid if words in words_of(laid)] == []
