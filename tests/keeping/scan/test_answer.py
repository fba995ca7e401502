"""Tests for what somebody who scans a card is told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.fingerprint import check_letters
from service.cards.standing import Answer
from service.keeping.repack import Seen, put_in
from service.keeping.scan import answer_scan
from service.keeping.scan.inside import NOTHING_INSIDE
from service.keeping.tags.today import compose_tag
from service.pages.ruler import Ruler
from service.records.record import (
    Collection,
    Hazard,
    HazardState,
    ObjectRecord,
    PlaceRecord,
    Weight,
)
from service.store.handles import Connection
from service.store.printed.card import NewRun, PrintedCard, describe_card
from service.store.printed.runs import save_run
from service.store.printed.states import mark_attached
from service.store.save_records import save_records
from tests.keeping.made import BOX, COLLECTION, LEAD, attach_all
from tests.store.made import LATER


@pytest.fixture
def lid(connection: Connection, ruler: Ruler) -> PrintedCard:
    """Give the lid card that is attached to the box."""
    return next(c for c in attach_all(connection, ruler, BOX) if c.made.kind == "lid-card")


def letters(card: PrintedCard) -> str:
    """Give the check letters of a printed card."""
    return check_letters(card.made.fingerprint)


def test_a_card_that_holds(connection: Connection, ruler: Ruler, lid: PrintedCard) -> None:
    """The answer is one word; hazards, lift and whom to ask stand beside it."""
    answer = answer_scan(connection, ruler, BOX, revision=1, letters=letters(lid))
    assert answer.standing.answer is Answer.CURRENT
    assert answer.changes == ()
    assert any("Lead" in warning and "presumed" in warning.lower() for warning in answer.warnings)
    assert "5.6 kg" in answer.lift
    assert "Collections desk 555 0142" in answer.questions


def test_a_card_that_went_out_of_date(
    connection: Connection, ruler: Ruler, lid: PrintedCard
) -> None:
    """What changed is told, the most urgent first."""
    confirmed = ObjectRecord(
        LEAD, "Lead line", weight=Weight(4_000.0), hazards=(Hazard("lead", HazardState.CONFIRMED),)
    )
    save_records(connection, Collection(objects=(confirmed,)), stamp=LATER)
    put_in(connection, Seen(BOX, 1), PlaceRecord("X.112"), stamp=LATER)
    answer = answer_scan(connection, ruler, BOX, revision=1, letters=letters(lid).lower())
    assert answer.standing.answer is Answer.OUT_OF_DATE
    assert "confirmed" in answer.changes[0]
    assert any("X.112" in change for change in answer.changes)
    assert ("Lid card", 2) in {(card.kind, card.revision) for card in answer.newest}


def test_a_withdrawn_card(connection: Connection, ruler: Ruler, lid: PrintedCard) -> None:
    """A card whose place another one took is no longer to be relied on, even if it is right."""
    put_in(connection, Seen(BOX, 1), PlaceRecord("X.112"), stamp=LATER)
    attach_all(connection, ruler, BOX)
    answer = answer_scan(connection, ruler, BOX, revision=1, letters=letters(lid))
    assert answer.standing.answer is Answer.WITHDRAWN


@pytest.mark.parametrize(
    ("number", "revision", "code"),
    [("B-999", 1, "KMTF"), (BOX, 1, "KMTF"), (BOX, None, "")],
    ids=["no such container", "no such card", "no revision"],
)
def test_unknown_cards(
    connection: Connection, ruler: Ruler, number: str, revision: int | None, code: str
) -> None:
    """What was never printed is not vouched for."""
    answer = answer_scan(connection, ruler, number, revision=revision, letters=code)
    assert answer.standing.answer is Answer.UNKNOWN
    assert answer.changes == ()


def test_the_tag_of_an_object(connection: Connection, ruler: Ruler) -> None:
    """It holds while it is attached and says what the record says; else nobody knows it."""
    answer = answer_scan(connection, ruler, LEAD, revision=None, letters="")
    assert (answer.standing.answer, answer.is_tag) == (Answer.UNKNOWN, True)
    assert "No tag of this object" in answer.standing.sentence
    assert any("Lead" in warning for warning in answer.warnings)
    tag = compose_tag(connection, ruler, LEAD)
    assert tag is not None
    (printed,) = save_run(connection, NewRun((describe_card(tag),)), stamp=LATER)
    mark_attached(connection, printed.card_id, stamp=LATER)
    answer = answer_scan(connection, ruler, LEAD, revision=None, letters="")
    assert answer.standing.answer is Answer.CURRENT
    renamed = ObjectRecord(LEAD, "Sounding lead", weight=Weight(4_000.0))
    save_records(connection, Collection(objects=(renamed,)), stamp=LATER)
    answer = answer_scan(connection, ruler, LEAD, revision=None, letters="")
    assert answer.standing.answer is Answer.OUT_OF_DATE
    assert any("title" in change for change in answer.changes)


def test_contents_are_told_where_the_museum_opens_them(
    connection: Connection, ruler: Ruler
) -> None:
    """Without its word neither contents nor location are in the answer."""
    closed = answer_scan(connection, ruler, BOX, revision=None, letters="")
    assert closed.inside == NOTHING_INSIDE
    museum = replace(COLLECTION.museum, scan_shows_contents=True)
    save_records(connection, Collection(museum=museum), stamp=LATER)
    opened = answer_scan(connection, ruler, BOX, revision=None, letters="")
    assert (LEAD, "Lead line") in opened.inside.contents
