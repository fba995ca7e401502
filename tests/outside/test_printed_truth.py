"""The reprint list against the paper: the words of the kept PDFs compared with the records.

Nothing of the fingerprint or of the comparison of cards is used here: PDFium reads each card where
it lies in its file, and plain rules say which words must and which may not stand there.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from dataclasses import replace
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

pytestmark = [pytest.mark.print, pytest.mark.slow, pytest.mark.timeout(300)]

BOXES = tuple(f"R-{number}" for number in range(1, 9))
NUMBER = re.compile(r"N\.\d+\.\d+")
PRINTED = PrintOptions(kinds=(LID_CARD, END_LABEL, CONTENTS_LIST), containers=frozenset(BOXES))


@pytest.fixture
def desk(tmp_path: Path) -> Iterator[Desk]:
    """Open a desk over a new store."""
    with open_desk(Settings(data=tmp_path)) as opened:
        yield opened


def fill(connection: Connection) -> None:
    """Pack three objects of known weight into each box."""
    objects, packings = [], []
    for box in range(1, 9):
        numbers = [f"N.{box}.{part}" for part in range(1, 4)]
        objects += [ObjectRecord(n, f"Thing {n}", weight=Weight(1_000.0)) for n in numbers]
        packings.append(PackingRecord(f"R-{box}", 1, tuple(map(PlaceRecord, numbers))))
    boxes = tuple(ContainerRecord(n, title=f"Box {n}", tare=Weight(500.0)) for n in BOXES)
    everything = Collection(objects=tuple(objects), containers=boxes, packings=tuple(packings))
    save_records(connection, everything, stamp=STAMP)


def change(connection: Connection, chance: random.Random) -> None:
    """Make one change of a random kind to a random object or box."""
    chance.choice([describe, repack])(connection, chance)


def describe(connection: Connection, chance: random.Random) -> None:
    """Give an object another title, hazard or weight, or a box another title."""
    box = chance.choice(BOXES)
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


def repack(connection: Connection, chance: random.Random) -> None:
    """Take an object out, put an unrecorded one in, or move one to another box."""
    box, to = chance.sample(BOXES, 2)
    packing = load_packing(connection, box)
    seen, held = Seen(box, packing.revision), [place.object_number for place in packing.places]
    kind = chance.randrange(3)
    if kind == 0 and len(held) > 1:
        take_out(connection, seen, held[0], stamp=LATER)
    elif kind == 1:
        put_in(connection, seen, PlaceRecord(f"N.99.{chance.randrange(10_000)}"), stamp=LATER)
    else:
        revision = load_packing(connection, to).revision
        move = Move(PlaceRecord(held[-1]), box, packing.revision, to, revision)
        move_object(connection, move, stamp=LATER)


def read_cards(desk: Desk, run: int) -> dict[tuple[str, str, int], str]:
    """Give the words of every card of a run, as a reader of PDFs finds them at its places."""
    with reading(desk.engine) as connection:
        record = load_run_record(connection, run)
        cards = load_attached(connection, BOXES)
    files = {file.name: file for file in record.files}
    said = {}
    for card in cards:
        file = files[card.made.file]
        pdf = pypdfium2.PdfDocument(desk.shelf.get(file.sha256, ".pdf"))
        stock = find_stock(file.stock, STOCKS)
        words = [_read_place(pdf, stock.position_rect(at), sheet) for sheet, at in card.made.places]
        said[card.made.key] = " ".join(" ".join(words).split())
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


def is_true(kind: str, words: str, box: str, now: Collection) -> bool:
    """Say whether the words on a card agree with the records, by plain rules."""
    objects = {one.object_number: one for one in now.objects}
    (container,) = [one for one in now.containers if one.container_number == box]
    (packing,) = [one for one in now.packings if one.container_number == box]
    held = [place.object_number for place in packing.places]
    known = [objects[number] for number in held if number in objects]
    rules = [container.title in words]
    states = {hazard.state.value for one in known for hazard in one.hazards}
    rules += [
        (f"Arsenic {state}" in words) is (state in states) for state in ("presumed", "confirmed")
    ]
    if len(known) == len(held):
        total_kg = (500.0 + sum(one.weight.weight_g for one in known if one.weight)) / 1_000
        rules.append(re.search(rf"(?<![\d.]){total_kg:.1f} kg(?!\+)", words) is not None)
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


def test_the_list_is_what_the_paper_says(desk: Desk) -> None:
    """After many random changes just the cards whose words are no longer true are listed."""
    chance = random.Random(20261125)  # noqa: S311  Changes to make, no secrets.
    with writing(desk.engine) as connection:
        fill(connection)
    run = print_run(desk, PRINTED, stamp=STAMP).run_id
    with writing(desk.engine) as connection:
        attach_run(connection, run, stamp=STAMP)
    said = read_cards(desk, run)
    assert len(said) == len(BOXES) * 4
    wrong: set[tuple[str, str, int]] = set()
    for _ in range(6):
        with writing(desk.engine) as connection:
            change(connection, chance)
        with reading(desk.engine) as connection:
            now = load_collection(connection, BOXES)
        wrong = {key for key, words in said.items() if not is_true(key[1], words, key[0], now)}
        assert {card.made.key for card in listed(desk)} == wrong
    assert 0 < len(wrong) < len(said)
