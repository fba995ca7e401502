from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from service.cards.parts import CardLayer, CardObject
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.lid.card import split_layers
from service.pages.lid.grid import FLOOR_MM
from service.pages.look import NEAREST_EDGE_MM
from service.pages.page import MarkBlock
from service.records.codes import HAZARD_CODES
from service.records.measures import Grid
from service.records.record import PlaceRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.contents.made import A4, A5, A6, BOX, hazard, objects, packing
from tests.pages.checks import collisions, numbers, pictures, said, strays, texts
from tests.pages.made import PLAIN, lid_pages

SIZES = {"A6": A6, "A6 wide": A6.turned, "A5": A5, "A5 wide": A5.turned, "A4": A4}
size_cases = pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)


@size_cases
@pytest.mark.parametrize("count", [0, 1, 2, 9, 24, 60, 300])
def test_every_object_stands_on_exactly_one_page(count: int, size: Size) -> None:
    """Nothing is lost, nothing said twice, nothing printed over anything, however full the box."""
    pages = lid_pages(packing(objects(count)), size)
    assert sorted(numbers(pages)) == sorted(one.object_number for one in objects(count))
    assert [page.number for page in pages] == list(range(1, len(pages) + 1))
    assert {page.of for page in pages} == {len(pages)}
    for page in pages:
        assert collisions(page, PLAIN) == []
        assert strays(page, PLAIN, margin_mm=NEAREST_EDGE_MM) == []
    last = numbers(pages[-1:])
    assert len(pages) == 1 or len(last) > 1


@size_cases
@pytest.mark.parametrize("count", [1, 9, 24])
def test_the_same_holds_for_the_shipped_fonts(count: int, size: Size) -> None:
    """Measured by the engine that draws, nothing meets and nothing leaves the page."""
    ruler = PangoRuler(FONTS_CONF)
    pages = lid_pages(packing(objects(count)), size, ruler)
    assert len(numbers(pages)) == count
    assert [found for page in pages for found in collisions(page, ruler)] == []
    assert [found for page in pages for found in strays(page, ruler, margin_mm=4.3)] == []


@size_cases
@pytest.mark.parametrize("count", [1, 2, 9, 24])
def test_pictures_tell_what_they_show(count: int, size: Size) -> None:
    """In a grid every object has its picture, a list shows a sample; no short side below 16 mm."""
    pages = lid_pages(packing(objects(count)), size)
    frames = pictures(pages)
    assert len(frames) in {count, len(said(pages, "sample-number"))}
    assert all(min(one.rect.width_mm, one.rect.height_mm) >= FLOOR_MM for one in frames)


def test_two_cards_say_which_they_are() -> None:
    """Nobody takes one of two cards for the whole, and the second sends back to the first."""
    pages = lid_pages(packing(objects(100)), A5)
    assert said(pages, "part") == ["card 1 of 2", "card 2 of 2"]
    assert said(pages, "reminder") == ["Lifting and hazards: see card 1"]
    assert said(pages, "container-number") == ["B-042", "B-042"]
    assert said(lid_pages(packing(objects(2)), A5), "part") == []


def test_equal_gaps_between_pictures() -> None:
    """Cells stand in straight columns and rows with one distance across and one down."""
    frames = [one.rect for one in pictures(lid_pages(packing(objects(9)), A5))]
    across = sorted({round(one.x_mm, 6) for one in frames})
    down = sorted({round(one.y_mm, 6) for one in frames})
    for steps in (across, down):
        gaps = {round(b - a, 4) for a, b in pairwise(steps)}
        assert len(gaps) == 1
    assert len({(round(one.width_mm, 6), round(one.height_mm, 6)) for one in frames}) == 1


def _bare(words: str) -> str:
    return "".join(words.split())


@size_cases
def test_hazards_are_never_shortened(size: Size) -> None:
    """Every heading and instruction stands whole, with its mark, on the first card."""
    records = [
        replace(one, hazards=(hazard(code),))
        for one, code in zip(objects(4), ("lead", "arsenic", "firearm", "asbestos"), strict=True)
    ]
    pages = lid_pages(packing(records), size)
    for purpose in ("hazard", "instruction", "pointers"):
        found = texts(pages[:1], purpose)
        assert len(found) == 4
        assert all(
            "".join("".join(one.lines).split()) == "".join(one.whole.split()) for one in found
        )
    assert "Do not open" in said(pages, "hazard")
    assert not any("irearm" in words for words in said(pages, "hazard"))


@pytest.mark.parametrize("size", [A5, A5.turned, A4], ids=["A5", "A5 wide", "A4"])
def test_a_strip_that_fills_a_page_pushes_the_contents_on(size: Size) -> None:
    """Ten kinds of hazard leave the objects to the next card; they overprint nothing."""
    records = [
        replace(one, hazards=(hazard(HAZARD_CODES[index % 10]),))
        for index, one in enumerate(objects(30))
    ]
    pages = lid_pages(packing(records), size)
    assert len(numbers(pages)) == 30
    assert [found for page in pages for found in collisions(page, PLAIN)] == []


def test_a_strip_higher_than_the_card_is_refused() -> None:
    """No hazard is dropped to make a card fit."""
    every = tuple(hazard(code) for code in HAZARD_CODES)
    with pytest.raises(DoesNotFitError, match="handling strip needs"):
        lid_pages(packing([replace(objects(1)[0], hazards=every)]), A6)


def test_an_empty_box_with_long_notes_still_has_a_card() -> None:
    """Notes that fill the card leave nothing out where there is nothing to show."""
    for words in range(20, 140, 5):
        made = packing((), replace(BOX, handling_notes="Take both straps. " * words))
        try:
            pages = lid_pages(made, A6)
        except DoesNotFitError:
            break
        assert len(pages) >= 1
    else:
        pytest.fail("the notes never filled the card")


def test_compartments_stay_where_they_are() -> None:
    """The card repeats the container's grid, empty compartments outlined."""
    box = replace(BOX, compartments=Grid(3, 2))
    places = [
        PlaceRecord("1987.412.1", compartment="A1"),
        PlaceRecord("1987.412.2", compartment="B3"),
    ]
    (page,) = lid_pages(packing(objects(2), box, places=places), A5)
    first, second = (one.rect for one in pictures([page]))
    assert second.x_mm > first.x_mm
    assert second.y_mm > first.y_mm
    empty = [block for block in page.blocks if block.purpose == "empty-compartment"]
    assert len(empty) == 4
    assert said([page], "place") == ["A1", "B3"]


@pytest.mark.parametrize(
    "spots",
    [("A1", "A1"), ("A1", ""), ("A1", "D9")],
    ids=["one twice", "one without", "one outside"],
)
def test_a_grid_that_is_no_map_is_not_drawn_as_one(spots: tuple[str, str]) -> None:
    """Two objects in one compartment, or one in none, stand side by side instead."""
    box = replace(BOX, compartments=Grid(3, 2))
    places = [PlaceRecord(f"1987.412.{n}", compartment=spot) for n, spot in enumerate(spots, 1)]
    (page,) = lid_pages(packing(objects(2), box, places=places), A5)
    assert len(numbers([page])) == 2
    assert not [block for block in page.blocks if block.purpose == "empty-compartment"]


def test_a_map_too_fine_for_pictures_gives_way() -> None:
    """Where the grid would make stamps of the pictures, the objects fill the card instead."""
    box = replace(BOX, compartments=Grid(12, 12))
    places = [PlaceRecord(f"1987.412.{n}", compartment=f"{'ABCD'[n - 1]}1") for n in (1, 2, 3, 4)]
    (page,) = lid_pages(packing(objects(4), box, places=places), A5)
    assert min(one.rect.width_mm for one in pictures([page])) >= FLOOR_MM
    assert not [block for block in page.blocks if block.purpose == "empty-compartment"]


@pytest.mark.parametrize("count", [1, 4, 12])
def test_long_numbers_break_and_are_never_cut(count: int) -> None:
    """A number of forty signs stands whole, over as many lines as it needs."""
    records = [
        replace(one, object_number=f"PMM.1987.412.9.{n}-very/long.number.{n}")
        for n, one in enumerate(objects(count))
    ]
    pages = lid_pages(packing(records), A6)
    assert sorted(numbers(pages)) == sorted(one.object_number for one in records)
    assert [found for page in pages for found in collisions(page, PLAIN)] == []


def test_marks_beside_objects_are_two_at_most() -> None:
    """What has no room beside an object is named by the strip."""
    codes = ("light-sensitive", "do-not-fold", "support-below")
    (page,) = lid_pages(packing([replace(objects(1)[0], cautions=codes)]), A5)
    beside = [one for one in page.blocks if one.purpose == "object-mark"]
    assert all(isinstance(one, MarkBlock) for one in beside)
    assert len(beside) == 2
    assert "Support from below 1987.412.1" in said([page], "caution")


def cells(*numbered: str) -> tuple[CardObject, ...]:
    """Make objects of a card."""
    return tuple(CardObject(number, "", "", "") for number in numbered)


@pytest.mark.parametrize(
    ("count", "before", "after"),
    [
        (1, [("Top", 1)], [("Top (continued)", 1), ("", 2)]),
        (2, [("Top", 2)], [("", 2)]),
        (3, [("Top", 2), ("", 1)], [("", 1)]),
        (9, [("Top", 2), ("", 2)], []),
        (0, [], [("Top", 2), ("", 2)]),
    ],
)
def test_splitting_layers(
    count: int, before: list[tuple[str, int]], after: list[tuple[str, int]]
) -> None:
    """A layer that is cut goes on under its heading; an empty one is not carried along."""
    layers = (CardLayer("Top", cells("1", "2")), CardLayer("", cells("3", "4")))
    parts = split_layers(layers, count)
    assert [[(one.heading, len(one.objects)) for one in part] for part in parts] == [before, after]


def test_a_reminder_of_many_hazards_stays_on_its_page() -> None:
    """Thirty kinds of hazard on the second card stand in rows."""
    records = [
        replace(one, hazards=(hazard(HAZARD_CODES[index % 31]),))
        for index, one in enumerate(objects(60))
    ]
    pages = lid_pages(packing(records), A4)
    assert [found for page in pages for found in strays(page, PLAIN, margin_mm=4.3)] == []


def test_a_number_wider_than_the_card_is_not_cut_by_its_edge() -> None:
    """A number without a place to break is refused or broken, not printed off the card."""
    records = [replace(one, object_number=f"{'A' * 60}{n}") for n, one in enumerate(objects(6))]
    pages = lid_pages(packing(records), A6)
    assert [found for page in pages for found in strays(page, PLAIN, margin_mm=4.3)] == []
