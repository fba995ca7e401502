"""Tests for the main job as one function."""

from __future__ import annotations

from dataclasses import replace

import pikepdf
import pytest

from service.cards.kinds import CONTENTS_LIST, END_LABEL, LID_CARD, find_kind
from service.errors import ContentsError
from service.geometry import Insets
from service.pipeline.options import PrintOptions
from service.pipeline.printing import plates
from service.pipeline.ready import Workshop
from service.pipeline.run import check_collection, print_collection
from service.records.record import (
    Collection,
    ContainerKind,
    ContainerRecord,
    ObjectRecord,
    PackingRecord,
    PhotoReference,
    PlaceRecord,
)
from service.render.raster import opened
from service.sheets.printers.printer import Printer, PrinterSetup
from service.sheets.printers.used_sheet import UsedSheet
from service.sheets.stocks import STOCKS, find_stock
from tests.pipeline.conftest import make_photo, with_title


@pytest.mark.print
def test_box_gets_its_cards(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A box prints a lid card, two end labels and a contents list, each into its own file."""
    steps: list[tuple[str, int, int]] = []
    outcome = print_collection(
        collection,
        photos,
        PrintOptions(),
        workshop,
        on_progress=lambda step, done, of: steps.append((step, done, of)),
    )
    made = {file.kind.code: (file.cards, file.sheets) for file in outcome.files}
    assert made == {"lid-card": (1, 1), "end-label": (2, 1), "contents-list": (1, 1)}
    assert outcome.cards == 4
    assert {step for step, _, _ in steps} >= {"cards", "sheets"}
    assert [finding.code for finding in outcome.findings] == ["no-photo"]


@pytest.mark.print
def test_same_input_gives_same_bytes(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Printing the same records twice gives the same file, so that its hash tells a run."""
    options = PrintOptions(kinds=(LID_CARD,))
    one, other = (print_collection(collection, photos, options, workshop) for _ in range(2))
    assert one.files[0].pdf == other.files[0].pdf


@pytest.mark.print
def test_a_photo_is_shown_small_and_large_in_one_run(
    collection: Collection, workshop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A later card may show it larger than the sizes made at first hold; the earlier ones stay."""
    monkeypatch.setattr(plates, "WINDOW", 1)
    gown = ObjectRecord("1991.8.14", "Oilskin coat", photos=(PhotoReference("lead.jpg"),))
    cover = ContainerRecord("GC-1", ContainerKind.GARMENT_COVER)
    both = replace(
        collection,
        objects=(*collection.objects, gown),
        containers=(*collection.containers, cover),
        packings=(*collection.packings, PackingRecord("GC-1", 1, (PlaceRecord("1991.8.14"),))),
    )
    photos = {"lead.jpg": make_photo("#404040", (2400, 1600))}
    outcome = print_collection(both, photos, PrintOptions(), workshop)
    assert {"lid-card", "cover-card"} <= {file.kind.code for file in outcome.files}
    assert "card-failed" not in {finding.code for finding in outcome.findings}


@pytest.mark.print
def test_begun_sheets_are_gone_on_with(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A run goes on with the sheet begun of its stock, kind after kind, and with no other sheet."""
    options = PrintOptions(
        kinds=(LID_CARD, CONTENTS_LIST, END_LABEL),
        begun=(UsedSheet("A4 2x4 99.1x67.7", frozenset({1, 2, 5})),),
    )
    outcome = print_collection(collection, photos, options, workshop)
    places = {file.kind.code: [one.places for one in file.placed] for file in outcome.files}
    assert places["end-label"] == [((1, 3),), ((1, 4),)]
    assert places["lid-card"] == [((1, 1),)]


@pytest.mark.print
def test_start_skip_and_copies(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """Copies go on at the first free position and run over to a second sheet."""
    options = PrintOptions(
        kinds=(END_LABEL,),
        stock=find_stock("A4 2x4 99.1x67.7", STOCKS),
        start_position=6,
        skipped=frozenset({7}),
        copies=2,
    )
    (file,) = print_collection(collection, photos, options, workshop).files
    assert file.sheets == 2


@pytest.mark.print
def test_unprintable_signs_are_told(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A sign no font holds prints as its code and is a finding, never an empty box."""
    odd = with_title(collection, "Tally stick \U00013000")
    outcome = print_collection(odd, photos, PrintOptions(kinds=(LID_CARD,)), workshop)
    assert "cannot-be-printed" in {finding.code for finding in outcome.findings}
    with opened(outcome.files[0].pdf) as document:
        assert "[U+13000]" in document[0].get_textpage().get_text_range()


@pytest.mark.print
def test_broken_photo_costs_only_itself(collection: Collection, workshop: Workshop) -> None:
    """A damaged photo is a finding naming the file; the card prints with an empty frame."""
    options = PrintOptions(kinds=(LID_CARD,))
    outcome = print_collection(collection, {"lead.jpg": b"\xff\xd8nothing"}, options, workshop)
    told = {finding.code: finding.where.file for finding in outcome.findings}
    assert told["photo-unusable"] == "lead.jpg"
    with opened(outcome.files[0].pdf) as document:
        assert "no photo yet" in document[0].get_textpage().get_text_range()


@pytest.mark.print
def test_card_that_fails_leaves_the_others(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A container whose number fits no label is a finding; its neighbour prints."""
    record = collection.containers[0]
    number = "B" * 60
    second = replace(record, container_number=number)
    both = replace(
        collection,
        containers=(record, second),
        packings=(*collection.packings, replace(collection.packings[0], container_number=number)),
    )
    options = PrintOptions(kinds=(END_LABEL,))
    outcome = print_collection(both, photos, options, workshop)
    failed = [finding for finding in outcome.findings if finding.code == "card-failed"]
    assert {finding.where.container_number for finding in failed} == {number}
    assert outcome.cards == 2


@pytest.mark.parametrize("containers", [frozenset({"X-9"}), frozenset({"B-1"})])
def test_nothing_to_print_is_an_error(
    collection: Collection, workshop: Workshop, containers: frozenset[str]
) -> None:
    """A name that is not there, or a kind nobody gets, leaves nothing to hand over."""
    options = PrintOptions(kinds=(find_kind("cover-card"),), containers=containers)
    with pytest.raises(ContentsError):
        print_collection(collection, {}, options, workshop)


def test_unusable_address_is_told_per_container(collection: Collection, workshop: Workshop) -> None:
    """A pattern that must not be printed keeps the cards back and says why."""
    bad = replace(collection, museum=replace(collection.museum, container_address="http://x/{a}"))
    with pytest.raises(ContentsError):
        print_collection(bad, {}, PrintOptions(), workshop)


def test_check_prints_nothing_and_tells_all(collection: Collection, workshop: Workshop) -> None:
    """Checking reports missing photos and whom to ask without making a file."""
    silent = replace(
        collection, museum=replace(collection.museum, questions=type(collection.museum.questions)())
    )
    codes = [
        finding.code
        for finding in check_collection(silent, {"x.jpg": b""}, PrintOptions(), workshop)
    ]
    assert codes.count("photo-missing") == 1
    assert {"nobody-to-ask", "photo-not-named"} <= set(codes)


@pytest.mark.print
def test_description_reads_in_order(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """The words for whoever cannot see the card begin with which container it is."""
    outcome = print_collection(collection, photos, PrintOptions(kinds=(LID_CARD,)), workshop)
    with pikepdf.open(outcome.files[0].path) as pdf:
        said = str(pdf.Root.StructTreeRoot.K.K[0].Alt)
    assert said.startswith("Box. B-1. Tools")
    assert "Lead presumed" in said


@pytest.mark.print
def test_positions_out_of_reach_are_told(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A printer with a wide strip it cannot print leaves positions empty, and says which."""
    stock = find_stock("A4 2x4 99.1x67.7", STOCKS)
    printer = PrinterSetup(Printer("Old copier", edges=Insets(40.0, 4.2, 4.2, 4.2)))
    options = PrintOptions(kinds=(END_LABEL,), stock=stock, printer=printer)
    outcome = print_collection(collection, photos, options, workshop)
    (told,) = (one for one in outcome.findings if one.code == "position-left-empty")
    assert "position 1, 2:" in told.message
    assert told.where.file == outcome.files[0].name


@pytest.mark.print
def test_an_address_with_brackets_prints(
    collection: Collection, photos: dict[str, bytes], workshop: Workshop
) -> None:
    """A catalogue may have brackets in its addresses (RFC 3986, 2.2); the link leads there."""
    pattern = "https://collections.portmerrow.example/items(1)/{container_number}"
    museum = replace(collection.museum, container_address=pattern)
    options = PrintOptions(kinds=(LID_CARD,))
    outcome = print_collection(replace(collection, museum=museum), photos, options, workshop)
    with pikepdf.open(outcome.files[0].path) as pdf:
        addresses = [str(link.A.URI) for link in pdf.pages[0].obj.Annots]
    assert addresses
    assert all("/items(1)/B-1" in address for address in addresses)
