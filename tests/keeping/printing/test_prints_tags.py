"""Tests for printing tags of objects from the store."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.kinds import LID_CARD, OBJECT_TAG
from service.errors import ContentsError, NotFoundError
from service.keeping.desk import Desk
from service.keeping.printing.attach import attach_run
from service.keeping.printing.prints import print_run
from service.keeping.printing.spoil import SpoiledSheet, print_spoiled
from service.keeping.reprints import list_reprints, name_reprints
from service.pipeline.options import PrintOptions, object_tag_keys
from service.records.record import Collection, ObjectRecord, PackingRecord, PlaceRecord
from service.store.open import reading, writing
from service.store.printed.runs import load_attached_tags, load_run
from service.store.save_records import save_records
from service.store.tables import CardState
from tests.keeping.made import BOX, COLLECTION, EMPTY, GOWN, JAR, LEAD
from tests.store.made import LATER, STAMP

pytestmark = [pytest.mark.print, pytest.mark.slow, pytest.mark.timeout(300)]

LOOSE, LEAD_RECORD = ObjectRecord("X.112", "Owl", "taxidermy", "1920s"), COLLECTION.objects[1]


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


def test_a_spoiled_sheet_of_tags_is_printed_again(desk: Desk) -> None:
    """Its tags alone, and the old ones count no more."""
    first = print_run(desk, PrintOptions(only=object_tag_keys([LEAD, GOWN])), stamp=STAMP)
    sheet = SpoiledSheet(first.run_id, first.files[0].name, 1)
    again = print_spoiled(desk, sheet, stamp=LATER)
    on_sheet = {card.made.key for card in first.cards if card.made.file == first.files[0].name}
    assert {card.made.key for card in again.cards} == on_sheet
    with reading(desk.engine) as connection:
        spoiled = {
            card.made.key
            for card in load_run(connection, first.run_id)
            if card.state is CardState.SPOILED
        }
    assert spoiled == on_sheet
