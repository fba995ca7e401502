"""Tests for print runs from the store, with real ink."""

from __future__ import annotations

import hashlib
import io

import pytest
from PIL import Image

from service.cards.kinds import END_LABEL, LID_CARD, OBJECT_TAG, WARNING_LABEL
from service.errors import ContentsError, NotFoundError
from service.keeping.desk import Desk
from service.keeping.printing.attach import attach_run
from service.keeping.printing.prints import MadeRun, print_run
from service.keeping.reprints import list_reprints
from service.keeping.today import compose_today
from service.pipeline.options import PrintOptions, card_key, object_tag_keys
from service.records.record import Collection, ObjectRecord, PhotoRole
from service.store.handles import Connection
from service.store.kept.used_sheets import load_used_sheets
from service.store.open import reading, writing
from service.store.printed.runs import load_run, load_run_record
from service.store.save_records import save_records
from service.store.shelf.photos import BroughtPhoto, bring_photos, load_file_names
from tests.keeping.made import BOX, JAR
from tests.store.made import LATER, STAMP

pytestmark = pytest.mark.print

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


def test_object_tags_are_refused(desk: Desk) -> None:
    """The store remembers cards of containers; it says so before anything is drawn."""
    for options in (
        PrintOptions(kinds=(LID_CARD, OBJECT_TAG)),
        PrintOptions(only=object_tag_keys([JAR])),
    ):
        with pytest.raises(ContentsError, match="no object tags"):
            print_run(desk, options, stamp=STAMP)


def test_a_warning_label_is_kept_like_any_card(desk: Desk) -> None:
    """What is printed on request is remembered, with the hazard it warns of."""
    options = PrintOptions(kinds=(WARNING_LABEL,), containers=frozenset({BOX}))
    (card,) = print_run(desk, options, stamp=STAMP).cards
    assert card.made.key == (BOX, "warning-label", 1)
    assert '"name":"Lead"' in card.made.content
