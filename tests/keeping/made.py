"""What the tests of keeping begin with: a box, a garment cover, and what lies in them."""

from __future__ import annotations

from datetime import date

from service.keeping.today import compose_today
from service.pages.ruler import Ruler
from service.records.record import (
    Collection,
    ContainerKind,
    ContainerRecord,
    Hazard,
    HazardState,
    Museum,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
    Questions,
    Weight,
)
from service.store.handles import Connection
from service.store.printed.card import NewRun, PrintedCard, describe_card
from service.store.printed.runs import save_run
from service.store.printed.states import mark_attached
from tests.store.made import STAMP

JAR, LEAD, GOWN = "1987.412.9", "1931.14.2", "PMM.77.3"
BOX, COVER, EMPTY = "B-042", "GC-7", "B-043"

COLLECTION = Collection(
    museum=Museum(
        "Port Merrow Museum",
        container_address="https://collections.portmerrow.example/c/{container_number}",
        questions=Questions("Collections desk", "555 0142"),
    ),
    objects=(
        ObjectRecord(JAR, "Bait jar, stoneware", weight=Weight(900.0)),
        ObjectRecord(
            LEAD,
            "Lead line",
            weight=Weight(4_000.0),
            hazards=(Hazard("lead", HazardState.PRESUMED),),
        ),
        ObjectRecord(GOWN, "Regatta gown", object_name="gown"),
    ),
    containers=(
        ContainerRecord(
            BOX, title="Small finds", location=("Store 2", "Bay 4"), tare=Weight(700.0)
        ),
        ContainerRecord(COVER, ContainerKind.GARMENT_COVER, title="Regatta day"),
        ContainerRecord(EMPTY, title="Spare", location=("Store 1", "Bay 1")),
    ),
    packings=(
        PackingRecord(
            BOX, 1, (PlaceRecord(JAR), PlaceRecord(LEAD, layer=2)), "I. Hale", date(2026, 10, 14)
        ),
        PackingRecord(COVER, 1, (PlaceRecord(GOWN),), "I. Hale", date(2026, 10, 14)),
    ),
)


def attach_all(
    connection: Connection, ruler: Ruler, container_number: str
) -> tuple[PrintedCard, ...]:
    """Print every card a container always gets, without ink, and attach them."""
    today = compose_today(connection, ruler, [container_number])
    run = NewRun(tuple(describe_card(card) for card in today.standing_cards))
    printed = save_run(connection, run, stamp=STAMP)
    for card in printed:
        mark_attached(connection, card.card_id, stamp=STAMP)
    return printed
