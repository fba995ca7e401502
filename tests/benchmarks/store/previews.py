"""Pictures of cards: the first, one that is unchanged, and those of boxes just changed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

from service.config import Settings
from service.keeping.desk import Desk
from service.keeping.previews.cards import CardWish, lay_card, preview_card
from service.keeping.previews.pages import draw_sheet, find_planned_file
from service.keeping.previews.plans import plan_run
from service.pipeline.options import PrintOptions
from service.records.record import Collection
from service.store.handles import Engine
from service.store.history import Stamp
from service.store.open import reading, writing
from service.store.packing.load import load_packing
from service.store.packing.save import save_packing
from service.store.shelf.files import open_shelf
from service.wiring import open_bench
from tests.benchmarks.store.timed import Measured, timed

_BOXES = 20
_WIDTH_PX = 900
_TODAY = date(2026, 11, 25)


def measure_previews(
    engine: Engine, town: Collection, folder: Path, stamp: Stamp
) -> Iterator[Measured]:
    """Measure lid cards of a town; the floor is drawing finished pages of the same size."""
    numbers = [one.container_number for one in town.containers[:_BOXES]]
    with open_bench(Settings(data=folder)) as bench:
        desk = Desk(engine, open_shelf(folder / "files", scratch=folder), bench, folder)
        yield Measured("first picture, nothing kept", timed(lambda: _draw(desk, numbers[:1])))
        _draw(desk, numbers)
        floor = _raster(desk, numbers)
        drawn = timed(lambda: _draw(desk, numbers))
        yield Measured(f"{_BOXES} pictures, plates kept", drawn, floor)
        yield Measured(f"{_BOXES} tags, nothing drawn", timed(lambda: _tag(desk, numbers)))
        for number in numbers:
            _take_one_out(engine, number, stamp)
        changed = timed(lambda: _draw(desk, numbers))
        yield Measured(f"{_BOXES} pictures, an object taken out", changed, floor)


def _draw(desk: Desk, numbers: list[str]) -> None:
    for number in numbers:
        preview_card(desk, _wish(number), width_px=_WIDTH_PX, today=_TODAY)


def _tag(desk: Desk, numbers: list[str]) -> None:
    for number in numbers:
        lay_card(desk, _wish(number), today=_TODAY).tag(1, width_px=_WIDTH_PX)


def _raster(desk: Desk, numbers: list[str]) -> float:
    only = frozenset((number, "lid-card", 1) for number in numbers)
    plan = plan_run(desk, PrintOptions(only=only), today=_TODAY)
    file = find_planned_file(desk, plan.name, plan.files[0].file.name)
    return timed(lambda: [draw_sheet(desk, file, 1, width_px=_WIDTH_PX) for _ in numbers])


def _take_one_out(engine: Engine, number: str, stamp: Stamp) -> None:
    with reading(engine) as connection:
        packing = load_packing(connection, number)
    fewer = replace(packing, places=packing.places[1:])
    with writing(engine) as connection:
        save_packing(connection, fewer, expected_revision=packing.revision, stamp=stamp)


def _wish(number: str) -> CardWish:
    return CardWish(number, "lid-card")
