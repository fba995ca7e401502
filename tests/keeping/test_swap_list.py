"""Tests for the swap list of a store."""

from __future__ import annotations

from dataclasses import replace

import pypdf
import pytest

from service.cards.fingerprint import check_letters
from service.errors import NothingToDoError
from service.keeping.desk import Desk
from service.keeping.repack import Seen, put_in
from service.keeping.swap_list import print_swaps
from service.records.record import Collection, Lid, ObjectRecord, PlaceRecord
from service.store.open import writing
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, LEAD, attach_all
from tests.keeping.tags.made import attach_tags
from tests.store.made import LATER


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_what_is_wrong_is_on_paper(desk: Desk) -> None:
    """Old and new letters, the reason and who printed it; a hidden location stays hidden."""
    with writing(desk.engine) as connection:
        attach_all(connection, desk.workshop.ruler, BOX)
    with pytest.raises(NothingToDoError):
        print_swaps(desk, stamp=LATER)
    with writing(desk.engine) as connection:
        put_in(connection, Seen(BOX, 1), PlaceRecord("X.112"), stamp=LATER)
    words = pypdf.PdfReader(print_swaps(desk, stamp=LATER)).pages[0].extract_text()
    assert "4 cards" in words
    assert "X.112 added" in words
    assert "25 Nov 2026, Ben Marl" in words
    assert "Bay 4" not in words
    assert "Places are hidden" in words
    assert "End label, side 2 of 2" in words


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_card_that_cannot_be_worded_stays_on(desk: Desk) -> None:
    """A mistyped address of the museum must not send anybody to take its warnings off."""
    museum = replace(COLLECTION.museum, container_address="http://plain.example/{container_number}")
    with writing(desk.engine) as connection:
        attach_all(connection, desk.workshop.ruler, BOX)
        save_records(connection, Collection(museum=museum), stamp=LATER)
    words = pypdf.PdfReader(print_swaps(desk, stamp=LATER)).pages[0].extract_text()
    assert "leave the old one on" in words
    assert "take it off" not in words


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_a_card_no_longer_wanted_comes_off(desk: Desk) -> None:
    """A lid that is clear now stays uncovered."""
    clear = replace(COLLECTION.containers[0], lid=Lid.CLEAR)
    with writing(desk.engine) as connection:
        attach_all(connection, desk.workshop.ruler, BOX)
        save_records(connection, Collection(containers=(clear,)), stamp=LATER)
    words = pypdf.PdfReader(print_swaps(desk, stamp=LATER)).pages[0].extract_text()
    assert "take it off" in words
    assert "leave the old one on" not in words


@pytest.mark.print
@pytest.mark.slow
@pytest.mark.timeout(300)
def test_tags_are_changed_where_their_objects_lie(desk: Desk) -> None:
    """A tag is named by its object, in the row of the box; what lies nowhere comes last."""
    owl = ObjectRecord("X.112", "Owl")
    museum = replace(COLLECTION.museum, show_location=True)
    renamed = (replace(owl, title="Barn owl"), replace(COLLECTION.objects[1], title="Hand lead"))
    with writing(desk.engine) as connection:
        save_records(connection, Collection(museum, (owl,)), stamp=LATER)
        printed = attach_tags(connection, desk.workshop.ruler, LEAD, "X.112")
        save_records(connection, Collection(objects=renamed), stamp=LATER)
    words = pypdf.PdfReader(print_swaps(desk, stamp=LATER)).pages[0].extract_text()
    assert words.index("Object tag of 1931.14.2") < words.index("Object tag of X.112")
    assert words.index(BOX) < words.index("Object tag of 1931.14.2")
    assert "packed nowhere" in words
    assert "r0" not in words
    assert all(check_letters(card.made.fingerprint) in words for card in printed)
