"""The reprint list against the paper: the words of the kept PDFs compared with the records.

Nothing of the fingerprint or of the comparison of cards is used here: PDFium reads each card where
it lies in its file, and plain rules say which words must and which may not stand there.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

import pypdfium2
import pytest

from service.cards.kinds import CONTENTS_LIST, END_LABEL, LID_CARD
from service.config import Settings
from service.geometry import Rect
from service.keeping.desk import Desk
from service.keeping.printing.attach import attach_run
from service.keeping.printing.prints import print_run
from service.keeping.repack import Seen, put_in, take_out
from service.keeping.reprints import list_reprints
from service.pipeline.options import PrintOptions
from service.records.record import (
    Collection,
    ContainerRecord,
    Hazard,
    HazardState,
    ObjectRecord,
    PackingRecord,
    PlaceRecord,
    Weight,
)
from service.sheets.stocks import STOCKS, find_stock
from service.store.handles import Connection
from service.store.load_records import load_collection
from service.store.open import reading, writing
from service.store.packing.load import load_packing
from service.store.packing.move import Move, move_object
from service.store.printed.card import PrintedCard
from service.store.printed.runs import load_attached, load_run_record
from service.store.save_records import save_records
from service.units import points_from_mm
from service.wiring import open_desk
from tests.store.made import LATER, STAMP

pytestmark = [pytest.mark.print, pytest.mark.slow]

NUMBER = re.compile(r"N\.\d+\.\d+")
PRINTED = PrintOptions(kinds=(LID_CARD, END_LABEL, CONTENTS_LIST))
WHOLE_FROM_KG = 20.0
"""From here on cards write whole kilograms, as README says."""

Boxes = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Size:
    """How many boxes there are, how many objects lie in each, and how often the list is asked."""

    boxes: int
    objects: int
    rounds: int
    changes: int

    @property
    def names(self) -> Boxes:
        """The numbers of the boxes."""
        return tuple(f"R-{number}" for number in range(1, self.boxes + 1))


SMALL, WHOLE_STORE = Size(8, 3, 6, 1), Size(8_000, 12, 1, 1_000)


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    """Open a desk over a new store."""
    with open_desk(Settings(data=tmp_path)) as opened:
        yield opened


def fill(connection: Connection, size: Size) -> None:
    """Pack objects of known weight into each box."""
    objects, packings = [], []
    for box in range(1, size.boxes + 1):
        numbers = [f"N.{box}.{part}" for part in range(1, size.objects + 1)]
        objects += [ObjectRecord(n, f"Thing {n}", weight=Weight(1_000.0)) for n in numbers]
        packings.append(PackingRecord(f"R-{box}", 1, tuple(map(PlaceRecord, numbers))))
    boxes = tuple(ContainerRecord(n, title=f"Box {n}", tare=Weight(500.0)) for n in size.names)
    everything = Collection(objects=tuple(objects), containers=boxes, packings=tuple(packings))
    save_records(connection, everything, stamp=STAMP)


def change(connection: Connection, chance: random.Random, boxes: Boxes) -> None:
    """Make one change of a random kind to a random object or box."""
    chance.choice([describe, repack])(connection, chance, boxes)


def describe(connection: Connection, chance: random.Random, boxes: Boxes) -> None:
    """Give an object another title, hazard or weight, or a box another title."""
    box = chance.choice(boxes)
    now = load_collection(connection, [box])
    record = chance.choice([one for one in now.objects if NUMBER.fullmatch(one.object_number)])
    state = chance.choice([HazardState.PRESUMED, HazardState.CONFIRMED])
    choices: list[ObjectRecord | ContainerRecord] = [
        replace(record, title=f"Thing renamed {chance.randrange(10_000)}"),
        replace(record, hazards=(Hazard("arsenic", state),)),
        replace(record, weight=Weight(1_000.0 * chance.randrange(2, 9))),
        ContainerRecord(box, title=f"Renamed {box}", tare=Weight(500.0)),
    ]
    changed = chance.choice(choices)
    if isinstance(changed, ContainerRecord):
        save_records(connection, Collection(containers=(changed,)), stamp=LATER)
    else:
        save_records(connection, Collection(objects=(changed,)), stamp=LATER)


def repack(connection: Connection, chance: random.Random, boxes: Boxes) -> None:
    """Take an object out, put an unrecorded one in, or move one to another box."""
    box, to = chance.sample(boxes, 2)
    packing = load_packing(connection, box)
    seen, held = Seen(box, packing.revision), [place.object_number for place in packing.places]
    kind = chance.randrange(3)
    if kind == 0 and len(held) > 1:
        take_out(connection, seen, held[0], stamp=LATER)
    elif kind == 1:
        put_in(connection, seen, PlaceRecord(f"N.99.{chance.randrange(10_000)}"), stamp=LATER)
    elif held:
        revision = load_packing(connection, to).revision
        move = Move(PlaceRecord(held[-1]), box, packing.revision, to, revision)
        move_object(connection, move, stamp=LATER)


def read_cards(desk: Desk, run: int) -> dict[tuple[str, str, int], str]:
    """Give the words of every card of a run, as a reader of PDFs finds them at its places."""
    with reading(desk.engine) as connection:
        record = load_run_record(connection, run)
        cards = load_attached(connection)
    said = {}
    for file in record.files:
        pdf = pypdfium2.PdfDocument(desk.shelf.get(file.sha256, ".pdf"))
        stock = find_stock(file.stock, STOCKS)
        for card in cards:
            if card.made.file == file.name:
                places = [(stock.position_rect(at), sheet) for sheet, at in card.made.places]
                words = " ".join(_read_place(pdf, rect, sheet) for rect, sheet in places)
                said[card.made.key] = " ".join(words.split())
        pdf.close()
    return said


def _read_place(pdf: pypdfium2.PdfDocument, rect: Rect, sheet: int) -> str:
    page = pdf[sheet - 1]
    height_pt = page.get_height()
    sides_mm = (rect.x_mm, rect.y_mm, rect.right_mm, rect.bottom_mm)
    left, top, right, bottom = map(points_from_mm, sides_mm)
    return str(
        page.get_textpage().get_text_bounded(left, height_pt - bottom, right, height_pt - top)
    )


@dataclass(frozen=True, slots=True)
class Now:
    """What the records say now, by number."""

    objects: Mapping[str, ObjectRecord]
    containers: Mapping[str, ContainerRecord]
    packings: Mapping[str, PackingRecord]


def load_now(desk: Desk) -> Now:
    """Load everything that the records say now."""
    with reading(desk.engine) as connection:
        now = load_collection(connection)
    return Now(
        {one.object_number: one for one in now.objects},
        {one.container_number: one for one in now.containers},
        {one.container_number: one for one in now.packings},
    )


def is_true(kind: str, words: str, box: str, now: Now) -> bool:
    """Say whether the words on a card agree with the records, by plain rules."""
    container, packing = now.containers[box], now.packings[box]
    held = [place.object_number for place in packing.places]
    known = [now.objects[number] for number in held if number in now.objects]
    rules = [container.title in words]
    states = {hazard.state.value for one in known for hazard in one.hazards}
    rules += [
        (f"Arsenic {state}" in words) is (state in states) for state in ("presumed", "confirmed")
    ]
    if len(known) == len(held):
        total_kg = (500.0 + sum(one.weight.weight_g for one in known if one.weight)) / 1_000
        figure = f"{total_kg:.0f}" if total_kg >= WHOLE_FROM_KG else f"{total_kg:.1f}"
        rules.append(re.search(rf"(?<![\d.]){re.escape(figure)} kg(?!\+)", words) is not None)
    else:
        rules.append("kg+" in words or "not weighed" in words)
    if kind == "end-label":
        rules.append(f"{len(held)} object" in words)
    else:
        rules.append(set(NUMBER.findall(words)) == set(held))
        rules += [one.title in words for one in known]
    return all(rules)


def listed(desk: Desk) -> Iterator[PrintedCard]:
    """Give the cards of the reprint list."""
    for one in list_reprints(desk.engine, desk.workshop.ruler).out_of_date:
        yield one.printed


def compare(desk: Desk, size: Size) -> None:
    """Print a store, change it at random, and compare the list with the paper each round."""
    chance = random.Random(20261125)  # noqa: S311  Changes to make, no secrets.
    with writing(desk.engine) as connection:
        fill(connection, size)
    run = print_run(desk, PRINTED, stamp=STAMP).run_id
    with writing(desk.engine) as connection:
        attach_run(connection, run, stamp=STAMP)
    said = read_cards(desk, run)
    assert len(said) == size.boxes * 4
    wrong: set[tuple[str, str, int]] = set()
    for _ in range(size.rounds):
        with writing(desk.engine) as connection:
            for _ in range(size.changes):
                change(connection, chance, size.names)
        now = load_now(desk)
        wrong = {key for key, words in said.items() if not is_true(key[1], words, key[0], now)}
        assert {card.made.key for card in listed(desk)} == wrong
    assert 0 < len(wrong) < len(said)


@pytest.mark.timeout(300)
def test_the_list_is_what_the_paper_says(desk: Desk) -> None:
    """After many random changes just the cards whose words are no longer true are listed."""
    compare(desk, SMALL)


@pytest.mark.timeout(7200)
def test_the_list_of_a_whole_store_is_what_the_paper_says(
    desk: Desk, request: pytest.FixtureRequest
) -> None:
    """So it is with 96,000 objects in 8,000 boxes after a thousand changes at once."""
    if not request.config.getoption("--long"):
        pytest.skip("prints 32,000 cards; runs with --long")
    compare(desk, WHOLE_STORE)
