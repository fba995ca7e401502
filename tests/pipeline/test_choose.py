"""Tests for the choice of sizes."""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

import pytest

from service.cards.kinds import CARD_KINDS, compose_cards, find_kind
from service.contents.arrange import arrange_packings
from service.geometry import Size
from service.languages.catalogue import load_phrasebook
from service.pages.fit import Fitting
from service.pages.setting.give_way import says_all
from service.pipeline.choose import fit_on_stock
from service.pipeline.options import FittedCard, PrintOptions
from service.pipeline.ready import Workshop
from service.records.museum.language import Language
from service.records.record import Collection, ContainerKind, Hazard, HazardState
from service.sheets.stocks import STOCKS, find_stock


def _fit(
    collection: Collection, workshop: Workshop, kind: str, options: PrintOptions
) -> tuple[FittedCard, list[str]]:
    (packing,) = arrange_packings(collection).packings
    card = next(
        card
        for card in compose_cards(
            packing,
            collection.museum,
            kinds=CARD_KINDS,
            phrasebook=load_phrasebook(collection.museum.second_language),
        )
        if card.kind == kind
    )
    fitted, findings = fit_on_stock(
        find_kind(kind), card, packing.container, Fitting(workshop.ruler), options
    )
    return fitted, [finding.code for finding in findings]


def _with_sizes(collection: Collection, *, lid: Size | None, end: Size | None = None) -> Collection:
    container = replace(collection.containers[0], lid_size=lid, end_size=end)
    return replace(collection, containers=(container,))


@pytest.mark.parametrize(
    ("lid", "stock", "told"),
    [
        (Size(160, 110), "A4 card 4xA6", []),
        (Size(600, 450), "A4 card 4xA6", []),
        (None, "A4 card 4xA6", ["no-lid-size"]),
        (Size(100, 80), "A4 card 4xA6", ["card-too-large"]),
    ],
    ids=["small lid", "large lid", "unknown lid", "tiny lid"],
)
def test_lid_card_follows_the_lid(
    collection: Collection, workshop: Workshop, lid: Size | None, stock: str, told: list[str]
) -> None:
    """The smallest card that shows the objects well is taken, and what is odd is told."""
    fitted, codes = _fit(_with_sizes(collection, lid=lid), workshop, "lid-card", PrintOptions())
    assert (fitted.stock.name, codes) == (stock, told)


@pytest.mark.parametrize(
    ("end", "stock"),
    [
        (Size(200, 100), "A4 2x4 99.1x67.7"),
        (Size(100, 45), "A4 2x6 99.1x42.3"),
        (None, "A4 2x4 99.1x67.7"),
    ],
    ids=["usual end", "low end", "unknown end"],
)
def test_label_follows_the_end(
    collection: Collection, workshop: Workshop, end: Size | None, stock: str
) -> None:
    """The first label that the end has room for is taken."""
    sized = _with_sizes(collection, lid=None, end=end)
    assert _fit(sized, workshop, "end-label", PrintOptions())[0].stock.name == stock


def test_asked_stock_wins(collection: Collection, workshop: Workshop) -> None:
    """A stock that was asked for is used, the card held the wide way."""
    options = PrintOptions(stock=find_stock("A5 card", STOCKS))
    fitted, _ = _fit(collection, workshop, "lid-card", options)
    assert fitted.pages[0].size == Size(210, 148)


def test_the_stock_of_a_kind_wins_for_this_kind_alone(
    collection: Collection, workshop: Workshop
) -> None:
    """Labels go on the sheet that was named for them, lid cards on the one named for the rest."""
    labels, cards = find_stock("A4 2x3 99.1x93.1", STOCKS), find_stock("A4 card", STOCKS)
    options = PrintOptions(stock=cards, by_kind={"end-label": labels})
    assert _fit(collection, workshop, "end-label", options)[0].stock == labels
    assert _fit(collection, workshop, "lid-card", options)[0].stock == cards


def test_letter_paper_has_its_own_stocks(collection: Collection, workshop: Workshop) -> None:
    """With Letter paper nothing is put on A4."""
    options = PrintOptions(paper="Letter")
    for kind in ("lid-card", "end-label", "contents-list"):
        assert _fit(collection, workshop, kind, options)[0].stock.name.startswith("Letter")


@pytest.mark.parametrize(
    ("kind", "paper", "stock"),
    [
        ("warning-label", "A4", "A4 2x4 99.1x67.7"),
        ("warning-label", "Letter", "Letter 2x3 4x3.333 in"),
        ("object-tag", "A4", "A4 card 2x5 90x50"),
        ("object-tag", "Letter", "Letter card 2x5 90x50"),
    ],
)
def test_what_is_asked_for_takes_the_smallest_that_says_all(
    collection: Collection, workshop: Workshop, kind: str, paper: str, stock: str
) -> None:
    """A hazard takes one label, and a tag of more than the smallest size."""
    fitted, told = _fit(collection, workshop, kind, PrintOptions(paper=paper))
    assert (fitted.stock.name, len(fitted.pages), told) == (stock, 1, [])


@pytest.mark.parametrize(
    ("end", "told"), [(Size(200, 120), []), (Size(200, 100), ["card-too-large"]), (None, [])]
)
def test_a_side_card_follows_the_long_side(
    collection: Collection, workshop: Workshop, end: Size | None, told: list[str]
) -> None:
    """As high as the end and as long as the lid; where it is lower than any card that is told."""
    sized = _with_sizes(collection, lid=Size(200, 300), end=end)
    fitted, found = _fit(sized, workshop, "side-card", PrintOptions())
    assert (fitted.stock.name, found) == ("A4 card 4xA6", told)
    assert fitted.pages[0].size.is_landscape


def test_a_shoulder_tag_stands(collection: Collection, workshop: Workshop) -> None:
    """It hangs upright from its hole, on the wider tag where that needs fewer of them."""
    cover = replace(
        collection.containers[0], kind=ContainerKind.GARMENT_COVER, container_number="G-7"
    )
    packing = replace(collection.packings[0], container_number="G-7")
    covered = replace(collection, containers=(cover,), packings=(packing,))
    fitted, _ = _fit(covered, workshop, "shoulder-tag", PrintOptions())
    assert (fitted.stock.name, len(fitted.pages)) == ("A4 card 4x2 45x130", 1)
    assert not fitted.pages[0].size.is_landscape


class _Speaking(NamedTuple):
    """A lid and a language, the card taken for it, and whether it says both."""

    lid: Size
    language: Language
    stock: str
    speaks: bool


@pytest.mark.parametrize(
    "case",
    [
        _Speaking(Size(300, 220), Language.NONE, "A4 card 4xA6", speaks=True),
        _Speaking(Size(300, 220), Language.WELSH, "A4 card 2xA5", speaks=True),
        _Speaking(Size(160, 110), Language.WELSH, "A4 card 4xA6", speaks=False),
    ],
    ids=["English alone", "a lid with room", "a small lid"],
)
def test_a_second_language_takes_a_larger_card(
    collection: Collection, workshop: Workshop, case: _Speaking
) -> None:
    """Where the lid has room for it; else it gives way, and nothing else does."""
    first, *others = collection.objects
    hazards = tuple(Hazard(code, HazardState.PRESUMED) for code in ("lead", "asbestos"))
    made = replace(
        _with_sizes(collection, lid=case.lid),
        objects=(replace(first, hazards=hazards), *others),
        museum=replace(collection.museum, second_language=case.language),
    )
    fitted, findings = _fit(made, workshop, "lid-card", PrintOptions())
    assert fitted.stock.name == case.stock
    assert says_all(fitted.card, fitted.pages) is case.speaks
    assert findings == []


def test_a_larger_warning_label_is_taken_before_a_second_language_gives_way(
    collection: Collection, workshop: Workshop
) -> None:
    """Where the smallest holds the English alone, the next that says both is taken."""
    lead = Hazard("lead", HazardState.PRESUMED)
    one = replace(collection.objects[0], hazards=(lead,))
    collection = replace(collection, objects=(one, *collection.objects[1:]))
    asked = replace(collection, museum=replace(collection.museum, second_language=Language.WELSH))
    (english, _), (both, _) = (
        _fit(each, workshop, "warning-label", PrintOptions()) for each in (collection, asked)
    )
    assert both.stock.label.height_mm > english.stock.label.height_mm
    assert len(both.pages) == len(english.pages)
    assert says_all(both.card, both.pages)
