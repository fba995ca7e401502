"""Tests for readying a collection."""

from __future__ import annotations

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from service.cards.kinds import CARD_KINDS, CONTENTS_LIST, END_LABEL, compose_cards
from service.config import Settings
from service.pipeline.options import PrintOptions
from service.pipeline.previews.card import draw_card, lay_cards
from service.pipeline.ready import Workshop, make_ready, tell_nobody
from service.pipeline.run import print_collection
from service.records.record import Collection, PhotoReference, Weight
from service.wiring import open_bench, open_workshop


def test_record_never_opens_a_path(collection: Collection, workshop: Workshop) -> None:
    """A photo name that is a path of this machine is missing, not read."""
    first, *others = collection.objects
    named = replace(first, photos=(PhotoReference(str(Path(__file__).resolve())),))
    hostile = replace(collection, objects=(named, *others))
    ready = make_ready(hostile, {}, PrintOptions(), workshop)
    assert "photo-missing" in {finding.code for finding in ready.findings}


def test_only_wanted_photos_are_made(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Photos of containers nobody asked for are left alone."""
    elsewhere = PrintOptions(containers=frozenset({"B-9"}))
    assert make_ready(collection, photos, elsewhere, workshop).thumbnails == {}
    assert set(make_ready(collection, photos, PrintOptions(), workshop).thumbnails) == {"lead.jpg"}


def test_nested_containers_bring_their_photos(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Asking for a box brings the photos of the folder inside it."""
    outer = replace(collection.containers[0], container_number="B-0")
    inner = replace(collection.containers[0], inside="B-0")
    nested = replace(collection, containers=(outer, inner))
    options = PrintOptions(containers=frozenset({"B-0"}))
    ready = make_ready(nested, photos, options, workshop)
    assert set(ready.thumbnails) == {"lead.jpg"}
    assert [packing.container.container_number for packing in ready.packings] == ["B-0"]


def test_nobody_may_listen() -> None:
    """Progress may be told to nobody."""
    tell_nobody("cards", 1, 2)


def test_photos_are_matched_by_name(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """An object whose record names no photo gets the one called by its number, and that is told."""
    called = {**photos, "1987-412-10 front.jpg": photos["lead.jpg"]}
    ready = make_ready(collection, called, PrintOptions(), workshop)
    shown = {
        packed.record.object_number: packed.record.photos
        for packing in ready.packings
        for packed in packing.contents
    }
    assert shown == {
        "1987.412.9": (PhotoReference("lead.jpg"),),
        "1987.412.10": (PhotoReference("1987-412-10 front.jpg"),),
    }
    codes = {finding.code for finding in ready.findings}
    assert "photo-matched" in codes
    assert codes.isdisjoint({"no-photo", "photo-not-named"})


def test_matched_photo_of_a_restricted_object_stays_inside(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A photo found by its name is on no card where its object is restricted."""
    first, second = collection.objects
    hidden = replace(collection, objects=(first, replace(second, restricted=True)))
    called = {**photos, "1987-412-10.jpg": photos["lead.jpg"]}
    ready = make_ready(hidden, called, PrintOptions(), workshop)
    cards = compose_cards(ready.packings[0], ready.museum, kinds=CARD_KINDS)
    assert "lead.jpg" in repr(cards)
    assert "1987-412-10.jpg" not in repr(cards)


def test_a_container_over_its_limit_is_noted(collection: Collection, workshop: Workshop) -> None:
    """A box of two kilograms is noted where its limit is one, and not where it is two."""
    codes = []
    for limit_g in (1_000.0, 2_000.0):
        box = replace(collection.containers[0], gross=Weight(2_000.0), weight_limit_g=limit_g)
        full = replace(collection, containers=(box,))
        ready = make_ready(full, {}, PrintOptions(), workshop)
        codes.append("over-weight-limit" in {finding.code for finding in ready.findings})
    assert codes == [True, False]


def test_presumed_hazards_are_printed_and_told(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A record gains what guidance presumes, with a finding, where its object is printed."""
    first, second = collection.objects
    owl = replace(second, object_name="taxidermy", title="Owl")
    loose = replace(owl, object_number="1987.412.11")
    collection = replace(collection, objects=(first, owl, loose))
    ready = make_ready(collection, photos, PrintOptions(), workshop)
    (box,) = ready.packings
    hazards = {
        one.record.object_number: [
            (hazard.code, hazard.state.value) for hazard in one.record.hazards
        ]
        for one in box.contents
    }
    assert hazards == {
        "1987.412.9": [("lead", "presumed")],
        "1987.412.10": [("arsenic", "presumed")],
    }
    told = [finding for finding in ready.findings if finding.code == "hazard-presumed"]
    assert [finding.where.object_number for finding in told] == ["1987.412.10"]


def test_a_presumed_discreet_hazard_stays_inside(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A pistol that nobody has recorded as a firearm is not announced outside either."""
    first, second = collection.objects
    pistol = replace(second, object_name="pistol", title="Flintlock pistol")
    ready = make_ready(
        replace(collection, objects=(first, pistol)), photos, PrintOptions(), workshop
    )
    (box,) = ready.packings
    cards = {card.kind: str(card) for card in compose_cards(box, ready.museum, kinds=CARD_KINDS)}
    inside = cards.pop("contents-list")
    # A tag is of one object, and one of the two is no firearm.
    cards.pop("object-tag")
    outside = list(cards.values())
    assert [card for card in outside if "istol" in card or "irearm" in card] == []
    assert "Firearm presumed" in inside
    assert all("Do not open" in card for card in outside)


def test_how_things_are_packed_is_judged_by_the_day(
    collection: Collection, workshop: Workshop
) -> None:
    """A packing is overdue from the day it names; a museum may not want to hear of it."""
    day = date(2026, 11, 30)
    box = replace(collection.containers[0], temporary_until=day)
    made = replace(collection, containers=(box, *collection.containers[1:]))

    def noticed(given: Collection, today: date | None) -> list[str]:
        ready = make_ready(given, {}, PrintOptions(today=today), workshop)
        return [one.code for one in ready.findings if one.code == "repack-overdue"]

    assert noticed(made, day) == ["repack-overdue"]
    assert noticed(made, date(2026, 11, 29)) == noticed(made, None) == []
    museum = replace(made.museum, packing_checks_off=("repack-overdue",))
    assert noticed(replace(made, museum=museum), day) == []


@pytest.mark.slow
@pytest.mark.print
def test_two_workshops_share_a_data_folder(
    collection: Collection, photos: dict[str, bytes], tmp_path: Path
) -> None:
    """While one prints another draws previews, both from nothing: each does what it does alone."""
    labels, alone = PrintOptions(kinds=(END_LABEL,)), tmp_path / "alone"
    cards = PrintOptions(kinds=(END_LABEL, CONTENTS_LIST))

    def preview(workshop: Workshop) -> list[bytes]:
        laid, _ = lay_cards(collection, photos, labels, workshop)
        return [draw_card(each, 1, width_px=300, workshop=workshop) for each in laid] * 5

    def print_all(workshop: Workshop) -> list[bytes]:
        return [file.pdf for file in print_collection(collection, photos, cards, workshop).files]

    with open_workshop(alone, processes=1) as single:
        expected = print_all(single), preview(single)
    with (
        open_workshop(tmp_path, processes=1) as workshop,
        open_bench(Settings(data=tmp_path)) as bench,
        ThreadPoolExecutor(2) as threads,
    ):
        printing, previewing = threads.submit(print_all, workshop), threads.submit(preview, bench)
        assert (printing.result(), previewing.result()) == expected
        again = threads.submit(print_all, bench), threads.submit(preview, workshop)
        assert tuple(each.result() for each in again) == expected
    with closing(sqlite3.connect(tmp_path / "plates.db")) as plates:
        assert plates.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert plates.execute("SELECT count(*) FROM plate").fetchone() == (3,)
