"""What holds for every lid card: nothing lost, nothing over anything, nothing off the page."""

from __future__ import annotations

import string

from hypothesis import given
from hypothesis import strategies as st

from service.contents.packing import Packing
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.lid.grid import FLOOR_MM
from service.records.codes import CAUTION_CODES
from service.records.record import (
    Hazard,
    HazardState,
    ObjectRecord,
    PhotoReference,
    PlaceRecord,
    Weight,
)
from tests.contents.made import A4, A5, A6, BOX, packing
from tests.pages.checks import collisions, numbers, pictures, said, strays
from tests.pages.made import PLAIN, lid_pages

sizes = st.sampled_from([A6, A6.turned, A5, A5.turned, A4])
# Words are short enough to stand on a line of their own, as words of a title are.
words = st.text(string.ascii_letters, min_size=1, max_size=12)
titles = st.lists(words, max_size=12).map(" ".join)
hazards = st.lists(
    st.builds(
        Hazard, st.sampled_from(["lead", "arsenic", "firearm"]), st.sampled_from(HazardState)
    ),
    max_size=2,
).map(tuple)


@st.composite
def boxes(draw: st.DrawFn) -> Packing:
    """Draw a box whose objects differ in all that a card shows."""
    prefix = draw(st.sampled_from(["1987.", "L", "PMM/2026-12.", "1987.412.9."]))
    records, places = [], []
    for index in range(draw(st.integers(0, 40))):
        number = f"{prefix}{index}"
        records.append(
            ObjectRecord(
                number,
                title=draw(titles),
                hazards=draw(hazards),
                cautions=tuple(draw(st.sets(st.sampled_from(CAUTION_CODES[:8]), max_size=2))),
                photos=(PhotoReference("one.jpg"),) * draw(st.integers(0, 1)),
                weight=draw(st.none() | st.just(Weight(120.0))),
            )
        )
        spot = draw(st.sampled_from(["", "A1", "C12"]))
        note = draw(st.sampled_from(["", "under tissue"]))
        places.append(PlaceRecord(number, (), draw(st.integers(1, 3)), spot, note))
    return packing(records, BOX, places=places)


@given(boxes(), sizes)
def test_a_card_is_whole_and_clear(made: Packing, size: Size) -> None:
    """Every number stands once and uncut; nothing meets, nothing leaves, no picture is a stamp."""
    try:
        pages = lid_pages(made, size)
    except DoesNotFitError:
        assert size in {A6, A6.turned}
        return
    wanted = sorted(item.record.object_number for item in made.everything)
    assert sorted(numbers(pages)) == wanted
    assert [found for page in pages for found in collisions(page, PLAIN)] == []
    assert [found for page in pages for found in strays(page, PLAIN, margin_mm=4.3)] == []
    for frame in pictures(pages):
        assert min(frame.rect.width_mm, frame.rect.height_mm) >= FLOOR_MM


@given(boxes(), sizes)
def test_pages_know_each_other(made: Packing, size: Size) -> None:
    """Pages are numbered in order, and every one of several says so in words."""
    try:
        pages = lid_pages(made, size)
    except DoesNotFitError:
        assert size in {A6, A6.turned}
        return
    assert [(page.number, page.of) for page in pages] == [
        (number, len(pages)) for number in range(1, len(pages) + 1)
    ]
    parts = [f"card {page.number} of {page.of}" for page in pages]
    assert said(pages, "part") == (parts if len(pages) > 1 else [])
