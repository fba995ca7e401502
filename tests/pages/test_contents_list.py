from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.compose.contents_list import compose_contents_list
from service.errors import DoesNotFitError
from service.geometry import Size
from service.handling.lifting.hse import SOURCE
from service.pages.contents_list import write_lift
from service.pages.look import NEAREST_EDGE_MM
from service.pages.page import TextBlock
from service.records.codes import HAZARD_CODES
from service.records.museum.language import Language
from service.records.record import ObjectRecord, PlaceRecord, Weight
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.second.made import phrasebook
from tests.contents.made import A4, A5, BOX, LETTER, MUSEUM, hazard, objects, packing
from tests.pages.checks import collisions, numbers, pictures, said, strays, texts
from tests.pages.made import PLAIN, list_pages
from tests.pages.two_languages import bilingual, fit_both

ONE = objects(1)[0]


@pytest.mark.parametrize("size", [A4, LETTER], ids=["A4", "Letter"])
@pytest.mark.parametrize("count", [0, 1, 9, 60, 300])
def test_every_object_has_its_row(count: int, size: Size) -> None:
    """Rows run on in order, each object once, nothing over anything."""
    pages = list_pages(packing(objects(count)), size)
    assert numbers(pages) == [one.object_number for one in objects(count)]
    for page in pages:
        assert collisions(page, PLAIN) == []
        assert strays(page, PLAIN, margin_mm=NEAREST_EDGE_MM) == []


def test_rows_are_whole() -> None:
    """All words, the picture and both boxes of an object stand on the page of its number."""
    record = replace(ONE, handling_notes="Lift by the body. " * 30, hazards=(hazard("lead"),))
    records = [replace(record, object_number=f"1987.{n}") for n in range(9)]
    pages = list_pages(packing(records), A4)
    assert len(pages) > 1
    for page in pages:
        held = len(numbers([page]))
        assert held == len(pictures([page])) == len(texts([page], "hazard"))
        assert sum(block.purpose == "tick-box" for block in page.blocks) == 2 * held


def test_pages_are_numbered_only_where_there_are_several() -> None:
    """One page needs no number; two say which they are."""
    assert said(list_pages(packing(objects(2)), A4), "part") == []
    pages = list_pages(packing(objects(15)), A4)
    assert said(pages, "part") == [f"page {n} of {len(pages)}" for n in range(1, len(pages) + 1)]


def test_nothing_is_shortened() -> None:
    """The list is where the whole text is."""
    every = tuple(hazard(code) for code in HAZARD_CODES[:6])
    record = replace(ONE, title="Long title " * 20, condition="Poor. " * 60, hazards=every)
    pages = list_pages(packing([record]), A4)
    assert len(texts(pages, "hazard")) == 6
    blocks = [one for page in pages for one in page.blocks if isinstance(one, TextBlock)]
    assert not any(one.is_shortened for one in blocks)


def test_a_place_stands_below_the_number() -> None:
    """Where in the container an object lies is read beside its number."""
    places = [PlaceRecord("1987.412.1", compartment="B3")]
    pages = list_pages(packing([ONE], places=places), A4)
    (number,), (place,) = texts(pages, "object-number"), texts(pages, "place")
    assert place.whole == "B3"
    assert place.rect.x_mm == number.rect.x_mm
    assert place.rect.y_mm > number.rect.bottom_mm


def test_a_number_without_a_place_to_break_keeps_to_its_column() -> None:
    """Thirty letters in one piece do not run into the picture."""
    pages = list_pages(packing([replace(ONE, object_number="A" * 30)]), A4)
    assert [found for page in pages for found in collisions(page, PLAIN)] == []


def test_a_missing_photo_says_why() -> None:
    """Words stand where the photo would."""
    pages = list_pages(packing([replace(ONE, photos=())]), A4)
    assert (said(pages, "no-photo"), pictures(pages)) == (["no photo yet"], [])


def test_a_weight_never_known_is_said_at_the_head() -> None:
    """The count stands beside the weight, or beside the words that there is none."""
    known = said(list_pages(packing([ONE]), A4), "count")[0]
    unknown = said(list_pages(packing([ObjectRecord("1")]), A4), "count")[0]
    assert known == "Contents list · 1 object · 0.1 kg, at least: container not weighed"
    assert unknown == "Contents list · 1 object · Weight not known"


def test_nobody_named_leaves_somebody_to_ask() -> None:
    """A foot without who packed still says whom to ask."""
    made = replace(packing([ONE]), packed_by="", packed_on=None)
    pages = list_pages(made, A4)
    assert said(pages, "packed") == []
    assert said(pages, "questions") == ["Ask first: Collections desk ext. 214"]


def test_a_row_higher_than_a_page_is_refused() -> None:
    """An object's row is not cut in two."""
    with pytest.raises(DoesNotFitError, match="The entry needs"):
        list_pages(packing([replace(ONE, condition="Poor. " * 900)]), A5)


def test_the_same_holds_for_the_shipped_fonts() -> None:
    """Measured by the engine that draws, nothing meets and nothing leaves the page."""
    ruler = PangoRuler(FONTS_CONF)
    pages = list_pages(packing(objects(20)), A4, ruler)
    assert [found for page in pages for found in collisions(page, ruler)] == []
    assert [found for page in pages for found in strays(page, ruler, margin_mm=4.3)] == []


def test_lifting_advice_says_what_it_is_worth() -> None:
    """Where a shelf height gives a reason, the list says that it is a first filter only."""
    box = replace(BOX, gross=Weight(17_000), hand_height_mm=1000.0)
    card = compose_contents_list(packing([ONE], box), MUSEUM)
    assert write_lift(card.lift) == (
        "Two people or a trolley.",
        "17.0 kg: over 13 kg for hands between shoulder and elbow, close to the body",
        f"A first filter; local assessment decides. Figures: {SOURCE}",
    )
    unplaced = compose_contents_list(packing([ONE]), MUSEUM)
    assert write_lift(unplaced.lift) == ()


def test_a_second_language_stands_below_each_english_line() -> None:
    """Hazards, cautions and lifting advice are said again; the foot tells what that is worth."""
    record = replace(objects(1)[0], hazards=(hazard("lead"),), cautions=("fragile",))
    box = replace(BOX, gross=Weight(17_000), hand_height_mm=900.0)
    card = bilingual(packing([record], box), "contents-list", phrasebook(Language.WELSH))
    both, _ = fit_both(card, A4)
    assert said(both, "second") == [
        (
            "Plwm (cadarnhawyd). Menig. Peidiwch â chodi llwch. Golchwch eich dwylo."
            " Menig nitril tenau; lle mae llwch, dillad gwarchod a mwgwd llwch"
        ),
        "Bregus",
    ]
    lines = said(both, "count")
    assert lines.index("Dau berson neu droli.") == lines.index("Two people or a trolley.") + 1
    assert said(both, "disclaimer")[1:] == ["Welsh words: translation not reviewed by a specialist"]
    (hazard_line,) = texts(both, "hazard")
    second = texts(both, "second")[0]
    assert second.rect.y_mm == pytest.approx(hazard_line.rect.bottom_mm)
