"""Tests for print runs from the store, with real ink."""

from __future__ import annotations

import hashlib
import io
from dataclasses import replace

import pytest
from PIL import Image

from service.cards.kinds import END_LABEL, LID_CARD, OBJECT_TAG, WARNING_LABEL
from service.errors import ContentsError, NotFoundError
from service.keeping.desk import Desk
from service.keeping.printing.attach import attach_run
from service.keeping.printing.prints import MadeRun, print_run
from service.keeping.reprints import list_reprints, name_reprints
from service.keeping.today import compose_today
from service.pipeline.options import PrintOptions, card_key, object_tag_keys
from service.records.record import (
    Collection,
    ObjectRecord,
    PackingRecord,
    PhotoRole,
    PlaceRecord,
)
from service.store.handles import Connection
from service.store.kept.used_sheets import load_used_sheets
from service.store.open import reading, writing
from service.store.printed.runs import load_attached_tags, load_run, load_run_record
from service.store.save_records import save_records
from service.store.shelf.photos import BroughtPhoto, bring_photos, load_file_names
from service.store.tables import CardState
from tests.keeping.made import BOX, COLLECTION, EMPTY, GOWN, JAR, LEAD
from tests.store.made import LATER, STAMP

pytestmark = pytest.mark.print

LOOSE, LEAD_RECORD = ObjectRecord("X.112", "Owl", "taxidermy", "1920s"), COLLECTION.objects[1]
LABELS = PrintOptions(kinds=(LID_CARD, END_LABEL), containers=frozenset({BOX}))


def test_a_run_is_remembered_card_by_card(desk: Desk) -> None:
    """Each card is kept with what it says, its file and place; the files lie on the shelf."""
    made = print_run(desk, LABELS, stamp=STAMP)
    with reading(desk.engine) as connection:
        cards = load_run(connection, made.run_id)
        record = load_run_record(connection, made.run_id)
        today = compose_today(connection, desk.workshop.ruler, [BOX])
        named = load_file_names(connection)
        begun = load_used_sheets(connection)
    assert {card.made.key for card in cards} == {
        (BOX, "lid-card", 1),
        (BOX, "end-label", 1),
        (BOX, "end-label", 2),
    }
    assert [card.made.places for card in cards if card.made.kind == "end-label"] == [
        ((1, 1),),
        ((1, 2),),
    ]
    assert record.files == made.files
    assert record.options["kinds"] == "lid-card end-label"
    assert {file.sha256 for file in made.files} == set(named)
    assert {sheet.stock: sorted(sheet.positions) for sheet in begun}["A4 2x4 99.1x67.7"] == [1, 2]
    fingerprints = {card.made.key: card.made.fingerprint for card in cards}
    for card in today.cards.values():
        if card_key(card) in fingerprints:
            assert fingerprints[card_key(card)] in str(cards)


def test_an_old_run_prints_again_byte_for_byte(desk: Desk) -> None:
    """What lies on the shelf is the PDF that was made, whatever the records say by now."""
    (file,) = print_run(
        desk, PrintOptions(kinds=(LID_CARD,), containers=frozenset({BOX})), stamp=STAMP
    ).files
    pdf = desk.shelf.get(file.sha256, ".pdf")
    assert pdf.startswith(b"%PDF")
    assert hashlib.sha256(pdf).hexdigest() == file.sha256
    (again,) = print_run(
        desk, PrintOptions(kinds=(LID_CARD,), containers=frozenset({BOX})), stamp=LATER
    ).files
    assert again.sha256 == file.sha256


def test_what_was_just_printed_and_attached_holds(desk: Desk) -> None:
    """The card on paper and the card of today are worded alike, photo and all."""
    picture = io.BytesIO()
    Image.new("RGB", (400, 300), "#707070").save(picture, "JPEG")
    stored = desk.shelf.put(picture.getvalue(), ".jpg")
    with writing(desk.engine) as connection:
        brought = BroughtPhoto(JAR, "jar.jpg", PhotoRole.FRONT, stored)
        bring_photos(connection, [brought], stamp=STAMP)
    made = print_run(desk, LABELS, stamp=STAMP)
    with writing(desk.engine) as connection:
        attach_run(connection, made.run_id, stamp=STAMP)
    assert stored.sha256 in next(c for c in made.cards if c.made.kind == "lid-card").made.content
    assert list_reprints(desk.engine, desk.workshop.ruler).out_of_date == ()


def test_what_is_presumed_is_printed_and_compared_alike(desk: Desk) -> None:
    """A run and the cards of today presume the same, so what was just printed holds."""
    owl = ObjectRecord(JAR, "Owl", "taxidermy", "1920s")
    with writing(desk.engine) as connection:
        save_records(connection, Collection(objects=(owl,)), stamp=STAMP)
    made = print_run(desk, LABELS, stamp=STAMP)
    assert "hazard-presumed" in {finding.code for finding in made.findings}
    with writing(desk.engine) as connection:
        attach_run(connection, made.run_id, stamp=STAMP)
    assert list_reprints(desk.engine, desk.workshop.ruler).out_of_date == ()


def test_another_picture_makes_the_card_wrong(desk: Desk) -> None:
    """The same name with other bytes is another photo."""
    test_what_was_just_printed_and_attached_holds(desk)
    other = io.BytesIO()
    Image.new("RGB", (400, 300), "#303030").save(other, "JPEG")
    stored = desk.shelf.put(other.getvalue(), ".jpg")
    with writing(desk.engine) as connection:
        brought = BroughtPhoto(JAR, "jar.jpg", PhotoRole.FRONT, stored)
        bring_photos(connection, [brought], stamp=LATER)
    (wrong,) = list_reprints(desk.engine, desk.workshop.ruler).out_of_date
    assert [change.words for change in wrong.reprint.changes] == [f"photo of {JAR} changed"]


def test_single_cards_can_be_printed(desk: Desk) -> None:
    """One side of the end labels alone."""
    options = PrintOptions(only=frozenset({(BOX, "end-label", 2)}))
    made = print_run(desk, options, stamp=STAMP)
    assert [card.made.key for card in made.cards] == [(BOX, "end-label", 2)]


def test_a_run_is_saved_whole_or_not_at_all(desk: Desk) -> None:
    """Where what belongs to the run cannot be saved there is no run, only files nobody names."""

    def refuse(_connection: Connection, _made: MadeRun) -> None:
        name = "x"
        raise NotFoundError(name, what="task")

    with pytest.raises(NotFoundError):
        print_run(desk, LABELS, stamp=STAMP, also_save=refuse)
    with reading(desk.engine) as connection:
        assert load_file_names(connection) == {}
    assert len(list(desk.shelf.names())) == 2


def test_nothing_to_print_is_an_error(desk: Desk) -> None:
    """A container nobody knows gets no cards."""
    with pytest.raises(ContentsError):
        print_run(desk, PrintOptions(containers=frozenset({"B-999"})), stamp=STAMP)


def test_a_warning_label_is_kept_like_any_card(desk: Desk) -> None:
    """What is printed on request is remembered, with the hazard it warns of."""
    options = PrintOptions(kinds=(WARNING_LABEL,), containers=frozenset({BOX}))
    (card,) = print_run(desk, options, stamp=STAMP).cards
    assert card.made.key == (BOX, "warning-label", 1)
    assert '"name":"Lead"' in card.made.content


def _save(desk: Desk, collection: Collection) -> None:
    with writing(desk.engine) as connection:
        save_records(connection, collection, stamp=LATER)


def _attach(desk: Desk, run_id: int) -> None:
    with writing(desk.engine) as connection:
        attach_run(connection, run_id, stamp=STAMP)


def test_the_tags_of_a_container_are_printed(desk: Desk) -> None:
    """Each object in it gets one, beside the card that was asked for, and it is remembered."""
    options = PrintOptions(kinds=(LID_CARD, OBJECT_TAG), containers=frozenset({BOX}))
    made = print_run(desk, options, stamp=STAMP)
    assert [card.made.key for card in made.cards] == [
        (BOX, "lid-card", 1),
        (JAR, "object-tag", 1),
        (LEAD, "object-tag", 1),
    ]
    assert [card.made.container_number for card in made.cards] == [BOX, "", ""]
    _attach(desk, made.run_id)
    assert list_reprints(desk.engine, desk.workshop.ruler).out_of_date == ()


def test_an_object_that_is_packed_nowhere_gets_its_tag(desk: Desk) -> None:
    """Its record is enough; what was presumed is told and printed, and then it holds."""
    _save(desk, Collection(objects=(LOOSE,)))
    only = object_tag_keys([LOOSE.object_number, LEAD])
    made = print_run(desk, PrintOptions(only=only), stamp=STAMP)
    assert {card.made.key for card in made.cards} == only
    assert "hazard-presumed" in {finding.code for finding in made.findings}
    _attach(desk, made.run_id)
    assert list_reprints(desk.engine, desk.workshop.ruler).out_of_date == ()


def test_no_other_object_is_printed(desk: Desk) -> None:
    """An unknown number is refused before anything is drawn, whatever else is asked for."""
    with pytest.raises(NotFoundError, match=r"object 'X\.999'"):
        print_run(desk, PrintOptions(only=object_tag_keys([LEAD, "X.999"])), stamp=STAMP)


def test_what_is_in_no_record_gets_no_tag(desk: Desk) -> None:
    """It may be packed, and that is told; there is nothing to tie to it."""
    stray = PackingRecord(EMPTY, 1, (PlaceRecord("X.999"),))
    _save(desk, Collection(packings=(stray,)))
    options = PrintOptions(kinds=(OBJECT_TAG,), containers=frozenset({EMPTY}))
    with pytest.raises(ContentsError):
        print_run(desk, options, stamp=STAMP)


def test_a_wrong_tag_is_printed_anew_and_takes_the_place_of_the_old(desk: Desk) -> None:
    """From the reprint list, wherever the object lies by then."""
    first = print_run(desk, PrintOptions(only=object_tag_keys([LEAD, GOWN])), stamp=STAMP)
    _attach(desk, first.run_id)
    _save(desk, Collection(objects=(replace(LEAD_RECORD, title="Hand lead"),)))
    wrong = name_reprints(desk.engine, desk.workshop.ruler)
    assert wrong == {(LEAD, "object-tag", 1)}
    second = print_run(desk, PrintOptions(only=wrong), stamp=LATER)
    _attach(desk, second.run_id)
    assert list_reprints(desk.engine, desk.workshop.ruler).out_of_date == ()
    with reading(desk.engine) as connection:
        attached = load_attached_tags(connection)
        states = {card.made.object_number: card.state for card in load_run(connection, 1)}
    assert {card.made.object_number: card.run_id for card in attached} == {GOWN: 1, LEAD: 2}
    assert states == {GOWN: CardState.ATTACHED, LEAD: CardState.WITHDRAWN}
