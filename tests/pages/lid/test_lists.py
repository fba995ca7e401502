from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.lid_card import compose_lid_card
from service.contents.packing import Packing
from service.errors import LayoutError
from service.geometry import Size
from service.pages.lid.lists import fit_lists
from service.pages.page import Page
from service.records.record import PlaceRecord
from tests.contents.made import A4, A5, A6, MUSEUM, hazard, objects, packing
from tests.pages.checks import collisions, marks, numbers, pictures, said, texts
from tests.pages.made import PLAIN


def fitted(made: Packing, size: Size = A5) -> tuple[Page, ...]:
    """Fit a packing as lists."""
    return fit_lists(compose_lid_card(made, MUSEUM), size, PLAIN)


@pytest.mark.parametrize("count", [1, 2, 17, 60, 150])
@pytest.mark.parametrize("size", [A6, A5, A5.turned, A4], ids=["A6", "A5", "A5 wide", "A4"])
def test_every_number_stands_in_a_column(count: int, size: Size) -> None:
    """Numbers run on from column to column in the order of the packing, none cut."""
    pages = fitted(packing(objects(count)), size)
    assert numbers(pages) == [one.object_number for one in objects(count)]
    assert [found for page in pages for found in collisions(page, PLAIN)] == []


def test_hazards_are_shown_first_in_the_sample() -> None:
    """A few pictures stand above; an object with a hazard is among them, with its marks below."""
    records = list(objects(40))
    records[33] = replace(records[33], hazards=(hazard("lead"),))
    pages = fitted(packing(records))
    assert "1987.412.34" in said(pages, "sample-number")
    assert len(pictures(pages)) == len(said(pages, "sample-number"))
    assert [one.mark for one in marks(pages, "object-mark")] == ["toxic"]


def test_without_photos_there_is_no_sample() -> None:
    """Empty frames tell nothing."""
    pages = fitted(packing(replace(one, photos=()) for one in objects(30)))
    assert pictures(pages) == []
    assert said(pages, "note") == []


def test_headings_stand_above_their_layer() -> None:
    """Each layer has its heading, and no heading stands last in a column."""
    places = [PlaceRecord(f"1987.412.{n}", layer=1 + n // 10) for n in range(1, 41)]
    pages = fitted(packing(objects(40), places=places), A6)
    headings = texts(pages, "layer")
    assert next(one.whole for one in headings) == "Layer 1, top"
    assert len(headings) == 5
    for page in pages:
        entries = [one.rect for one in texts([page], "object-number")]
        for heading in texts([page], "layer"):
            below = [one for one in entries if one.x_mm == heading.rect.x_mm]
            assert any(one.y_mm >= heading.rect.bottom_mm - 0.1 for one in below)


def test_a_place_stands_before_the_title() -> None:
    """In a list there is no tag."""
    places = [PlaceRecord("1987.412.1", compartment="B3")]
    pages = fitted(packing(objects(1), places=places))
    assert said(pages, "caption") == ["B3  Brass buckle, cast 1"]


def test_long_numbers_below_the_sample_stay_apart() -> None:
    """A number without a place to break does not run into its neighbour."""
    records = [replace(one, object_number=f"{'A' * 20}{n}") for n, one in enumerate(objects(30))]
    pages = fitted(packing(records), A6)
    assert [found for page in pages for found in collisions(page, PLAIN)] == []


@pytest.mark.slow
def test_more_than_any_card_holds_is_refused() -> None:
    """Where nothing can be printed an error says so; a card does not vanish."""
    with pytest.raises(LayoutError):
        fitted(packing(objects(2000)), A6)


def test_a_card_without_room_for_one_line_is_refused_at_once() -> None:
    """Where further pages have no room either, no more of them are tried."""
    with pytest.raises(LayoutError):
        fitted(packing(objects(3)), Size(105.0, 58.0))
