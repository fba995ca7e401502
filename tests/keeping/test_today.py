"""Tests for wording today's cards from the store."""

from __future__ import annotations

from dataclasses import replace

from service.cards.fingerprint import fingerprint_card
from service.cards.kinds import KEPT_KINDS
from service.keeping.today import compose_today, load_printable
from service.pages.ruler import Ruler
from service.pipeline.fitting import fit_cards
from service.pipeline.options import PrintOptions, card_key
from service.pipeline.ready import Workshop, make_ready
from service.records.museum.language import Language
from service.records.record import (
    Collection,
    ContainerRecord,
    ObjectRecord,
    PhotoReference,
    PhotoRole,
)
from service.store.handles import Connection
from service.store.save_records import save_records
from service.store.shelf.files import StoredFile
from service.store.shelf.photos import BroughtPhoto, bring_photos
from tests.keeping.made import BOX, COLLECTION, COVER, EMPTY, JAR, LEAD
from tests.store.made import LATER


def test_only_the_containers_asked_for_are_worded(connection: Connection, ruler: Ruler) -> None:
    """A box gets lid card, two end labels and a list; nothing is worded for its neighbours."""
    today = compose_today(connection, ruler, [BOX])
    assert sorted(today.standing) == [
        (BOX, "contents-list", 1),
        (BOX, "end-label", 1),
        (BOX, "end-label", 2),
        (BOX, "lid-card", 1),
    ]
    assert list(today.packings) == [BOX]
    on_request = set(today.cards) - today.standing
    assert on_request == {(BOX, "side-card", 1), (BOX, "warning-label", 1)}


def test_what_lies_inside_is_not_worded_unasked(connection: Connection, ruler: Ruler) -> None:
    """A tray that comes before its box in natural order is loaded with it, and left out."""
    tray = ContainerRecord("A-1", title="Tray", inside=BOX)
    save_records(connection, Collection(containers=(tray,)), stamp=LATER)
    today = compose_today(connection, ruler, [BOX])
    assert list(today.packings) == [BOX]
    assert {number for number, _, _ in today.cards} == {BOX}


def test_cards_come_with_what_they_are_worded_from(connection: Connection, ruler: Ruler) -> None:
    """The packing of each container, and the museum with its choices."""
    today = compose_today(connection, ruler, [BOX])
    packing = today.packings[BOX]
    assert (packing.container.container_number, packing.revision) == (BOX, 1)
    assert [item.record.object_number for item in packing.contents] == [JAR, LEAD]
    assert today.museum == COLLECTION.museum


def test_without_names_everything_is_worded(connection: Connection, ruler: Ruler) -> None:
    """All containers come in natural order, the empty one too."""
    assert list(compose_today(connection, ruler).packings) == [BOX, EMPTY, COVER]


def test_a_photo_that_was_never_brought_is_not_printed(connection: Connection) -> None:
    """The record names a photo, but no file came: the card says that there is none."""
    named = ObjectRecord(JAR, "Bait jar", photos=(PhotoReference("jar.jpg"),))
    save_records(connection, Collection(objects=(named,)), stamp=LATER)
    loaded = load_printable(connection, [BOX])
    assert {one.photos for one in loaded.collection.objects} == {()}


def test_a_photo_that_was_brought_is_named_by_its_file(connection: Connection) -> None:
    """Another picture under the same name is another card."""
    picture = BroughtPhoto(JAR, "jar.jpg", PhotoRole.BACK, StoredFile("a" * 64, ".jpg", 9))
    bring_photos(connection, [picture], stamp=LATER)
    (jar, _) = load_printable(connection, [BOX]).collection.objects
    assert jar.photos == (PhotoReference(f"{'a' * 64}.jpg", PhotoRole.BACK),)


def test_what_cannot_be_worded_is_told(connection: Connection, ruler: Ruler) -> None:
    """A museum whose address is no lasting one gets no cards, and hears why, box by box."""
    museum = replace(COLLECTION.museum, container_address="http://plain.example/{container_number}")
    save_records(connection, Collection(museum=museum), stamp=LATER)
    today = compose_today(connection, ruler, [BOX, COVER])
    assert today.cards == {}
    assert {error.code for error in today.failed.values()} == {"address-pattern"}


def test_a_sign_no_font_holds_is_worded_as_printed(connection: Connection, ruler: Ruler) -> None:
    """Cards are compared as they are printed: with the code of a sign that has no glyph."""
    save_records(
        connection, Collection(objects=(ObjectRecord(JAR, "Jar \U0001f3fa"),)), stamp=LATER
    )
    (card,) = (c for k, c in compose_today(connection, ruler, [BOX]).cards.items() if "lid" in k[1])
    assert "Jar [U+1F3FA]" in str(card)


def test_presumed_hazards_are_worded_as_printed(connection: Connection, ruler: Ruler) -> None:
    """Cards are compared as they are printed: with what guidance presumes, unless turned off."""
    owl = ObjectRecord(JAR, "Owl", "taxidermy", "1920s")
    save_records(connection, Collection(objects=(owl,)), stamp=LATER)
    assert _names_arsenic(connection, ruler)
    museum = replace(COLLECTION.museum, presume_hazards=False)
    save_records(connection, Collection(museum=museum), stamp=LATER)
    assert not _names_arsenic(connection, ruler)


def _names_arsenic(connection: Connection, ruler: Ruler) -> bool:
    today = compose_today(connection, ruler, [BOX])
    return all("Arsenic presumed" in str(today.cards[key]) for key in today.standing)


def test_a_run_without_a_store_words_both_languages_alike(
    connection: Connection, ruler: Ruler, workshop: Workshop
) -> None:
    """A card printed from files has the fingerprint that the store expects of it."""
    museum = replace(COLLECTION.museum, second_language=Language.POLISH)
    save_records(connection, Collection(museum=museum), stamp=LATER)
    stored = compose_today(connection, ruler, [BOX]).cards
    options = PrintOptions(KEPT_KINDS, containers=frozenset({BOX}))
    ready = make_ready(replace(COLLECTION, museum=museum), {}, options, workshop)
    printed = {card_key(one.card): one.card for one in fit_cards(ready, options, ruler, [])}
    assert {key: fingerprint_card(card) for key, card in printed.items()} == {
        key: fingerprint_card(card) for key, card in stored.items()
    }
    lid = printed[BOX, "lid-card", 1]
    assert lid.head.second is not None
    assert ("Lead presumed", "Ołów (przypuszczalnie)") in lid.head.second.words
