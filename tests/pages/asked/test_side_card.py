from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import DoesNotFitError
from service.geometry import Size
from service.records.record import Lid, PlaceRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.contents.made import A5, A6, BOX, hazard, objects, packing
from tests.pages.checks import collisions, numbers, pictures, said, strays
from tests.pages.made import side_pages

REAL = PangoRuler(FONTS_CONF)
CLEAR = replace(BOX, lid=Lid.CLEAR)


@pytest.mark.parametrize("size", [A6.turned, A5.turned], ids=["A6", "A5"])
@pytest.mark.parametrize("count", [0, 1, 12, 60])
def test_every_object_stands_in_the_order_of_layers(count: int, size: Size) -> None:
    """None is left out, and no photo is shown, at any number of objects."""
    records = objects(count)
    places = [
        PlaceRecord(one.object_number, layer=1 + index // 20) for index, one in enumerate(records)
    ]
    pages = side_pages(packing(records, CLEAR, places=places), size, REAL)
    assert numbers(pages) == [one.object_number for one in records]
    assert pictures(pages) == []
    for page in pages:
        assert collisions(page, REAL) == []
        assert strays(page, REAL, margin_mm=4.2) == []


def test_two_lines_are_worth_printing_below_the_handling() -> None:
    """Where a lid card would have no room for a picture, a list still has room."""
    codes = ("lead", "mould", "radium")
    records = [replace(one, hazards=tuple(map(hazard, codes))) for one in objects(2)]
    (page,) = side_pages(packing(records, CLEAR), A6.turned, REAL)
    assert len(numbers([page])) == 2


def test_handling_stands_on_the_first_card() -> None:
    """What can hurt and how to lift come before the contents, which go on on card 2 of 2."""
    codes = ("lead", "mould", "radium", "arsenic")
    records = [replace(one, hazards=tuple(map(hazard, codes))) for one in objects(6)]
    pages = side_pages(packing(records, CLEAR), A6.turned, REAL)
    assert [collisions(page, REAL) for page in pages] == [[] for _ in pages]
    assert len(pages) > 1
    assert len(said(pages[:1], "hazard")) == len(codes)
    assert said(pages, "part") == [f"card {n} of {len(pages)}" for n in range(1, len(pages) + 1)]
    assert len(numbers(pages)) == 6


def test_handling_higher_than_a_card_is_refused() -> None:
    """It is never printed over the foot: another size has to be taken."""
    codes = (
        "lead",
        "mould",
        "radium",
        "arsenic",
        "mercury-liquid",
        "asbestos",
        "sharps",
        "cyanide",
    )
    cautions = ("fragile", "keep-dry", "do-not-tilt", "do-not-fold", "light-sensitive", "ask-first")
    record = replace(objects(1)[0], hazards=tuple(map(hazard, codes)), cautions=cautions)
    with pytest.raises(DoesNotFitError, match="handling strip"):
        side_pages(packing([record], CLEAR), A6.turned, REAL)
    (page,) = side_pages(packing([record], CLEAR), A5.turned, REAL)
    assert collisions(page, REAL) == []
