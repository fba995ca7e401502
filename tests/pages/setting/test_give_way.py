"""Tests for when a second language gives way, on real cards with the shipped fonts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.card import Card
from service.cards.second.phrasebook import Phrasebook
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.page import Page, PictureBlock, TextBlock
from service.pages.setting.give_way import has_room, in_english, says_all
from service.pages.setting.second import PURPOSE
from service.records.museum.language import LANGUAGE_NAMES, Language
from service.records.record import HazardState, Weight
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.second.made import MADE_UP, phrasebook
from tests.contents.made import A4, A5, A6, BOX, GARMENT_COVER, hazard, objects, packing
from tests.pages.checks import collisions, marks, pictures, said, strays
from tests.pages.two_languages import bilingual, fit_both

RULER = PangoRuler(FONTS_CONF)
CODES = ("lead", "arsenic", "asbestos", "mould", "sharps", "radium")
CAUTIONS = ("fragile", "keep-dry", "do-not-tilt", "do-not-fold", "light-sensitive")


def _card(kind: str, *, count: int = 3, hazards: int = 2, book: Phrasebook = MADE_UP) -> Card:
    first, *others = objects(count)
    codes = tuple(hazard(code, HazardState.PRESUMED) for code in CODES[:hazards])
    first = replace(first, hazards=codes, cautions=CAUTIONS)
    container = (
        GARMENT_COVER
        if kind in {"cover-card", "shoulder-tag"}
        else replace(BOX, gross=Weight(17_000))
    )
    return bilingual(packing([first, *others], replace(container, stacking_limit=2)), kind, book)


def _english(pages: list[Page]) -> list[tuple[str, str]]:
    blocks = (block for page in pages for block in page.blocks if isinstance(block, TextBlock))
    restless = {PURPOSE, "disclaimer", "revision", "side", "part", "museum"}
    return [(one.purpose, one.whole) for one in blocks if one.purpose not in restless]


@pytest.mark.slow
@pytest.mark.parametrize("language", LANGUAGE_NAMES)
@pytest.mark.parametrize(
    ("kind", "size", "margin_mm"),
    [
        ("lid-card", A5.turned, 4.3),
        ("lid-card", A4.turned, 4.3),
        ("side-card", A5.turned, 4.2),
        ("cover-card", A4.turned, 4.3),
        ("contents-list", A4, 4.3),
        ("end-label", Size(99.1, 67.7), 2.0),
        ("warning-label", Size(99.1, 93.1), 2.0),
        ("warning-label", Size(199.6, 143.5), 2.0),
        ("shoulder-tag", Size(45, 130), 2.0),
        ("object-tag", Size(99, 67), 2.0),
    ],
)
def test_both_languages_have_their_place(
    kind: str, size: Size, margin_mm: float, language: Language
) -> None:
    """Where both are printed all English stands as before, nothing meets, nothing is shortened."""
    both, english = fit_both(_card(kind, book=phrasebook(language)), size, RULER)
    assert said(both, PURPOSE)
    assert _english(both) == _english(english)
    for page in both:
        assert collisions(page, RULER) == []
        assert strays(page, RULER, margin_mm=margin_mm) == []
        second = (one for one in page.blocks if one.purpose == PURPOSE)
        assert not any(one.is_shortened for one in second if isinstance(one, TextBlock))


@pytest.mark.slow
@pytest.mark.parametrize("hazards", range(1, 7))
@pytest.mark.parametrize("count", [1, 6, 12, 24, 60, 130])
def test_a_lid_card_never_pays_for_it(count: int, hazards: int) -> None:
    """However full a card is, it has as many pages, marks and pictures, and they stay as good."""
    card = _card("lid-card", count=count, hazards=hazards, book=phrasebook(Language.WELSH))
    both, english = fit_both(card, A5.turned, RULER)
    assert len(both) == len(english)
    assert len(marks(both)) == len(marks(english))
    assert len(pictures(both)) == len(pictures(english))
    assert has_room(card, both, english)
    if not said(both, PURPOSE):
        assert both == english


@pytest.mark.slow
@pytest.mark.parametrize("hazards", range(6))
def test_a_side_card_never_pays_for_it(hazards: int) -> None:
    """A small card has as many faces and numbers in both languages, and nothing meets."""
    card = _card("side-card", count=12, hazards=hazards, book=phrasebook(Language.WELSH))
    both, english = fit_both(card, A6.turned, RULER)
    assert len(both) == len(english)
    assert _english(both) == _english(english)
    assert [collisions(page, RULER) for page in both] == [[] for _ in both]


def test_it_gives_way_wholly() -> None:
    """On a card that is full not one word of it is left, and the English is what it was."""
    card = _card("lid-card", count=6, hazards=3, book=phrasebook(Language.WELSH))
    assert said(fit_both(card, A4.turned, RULER)[0], PURPOSE)
    both, english = fit_both(card, A6.turned, RULER)
    assert both == english
    assert not says_all(card, both)
    assert says_all(in_english(card), both)


@pytest.mark.parametrize(
    ("hazards", "again"),
    [(0, "Gofynnwch yn gyntaf"), (1, "Plwm (rhagdybir)"), (6, "")],
)
def test_on_a_tag_names_stay_where_sentences_give_way(hazards: int, again: str) -> None:
    """What to do is said again where all has room, else the names alone, else nothing."""
    card = _card("object-tag", count=1, hazards=hazards, book=phrasebook(Language.WELSH))
    both, english = fit_both(card, Size(90, 50), RULER)
    words = " ".join(said(both, PURPOSE))
    assert again in words
    assert bool(words) is bool(again)
    assert ("Menig. Peidiwch" in words) is (hazards > 0 and says_all(card, both))
    assert len(both) == len(english)
    assert says_all(card, both) is (hazards == 0)


def test_a_tag_without_warnings_needs_no_larger_one() -> None:
    """Where only lifting and to ask would be said again, a small tag says all that matters."""
    plain = replace(objects(1)[0], weight=None)
    card = bilingual(packing([plain]), "object-tag", phrasebook(Language.WELSH))
    both, _ = fit_both(card, Size(60, 30), RULER)
    assert "Pwyswch cyn codi." not in " ".join(said(both, PURPOSE))
    assert says_all(card, both)


def test_a_card_too_small_for_english_is_refused() -> None:
    """Leaving the second language out does not make room for hazards that have none."""
    with pytest.raises(DoesNotFitError):
        fit_both(_card("lid-card", hazards=6), Size(70, 40), RULER)


def _page(count: int, side_mm: float) -> Page:
    (page, *_), _ = fit_both(_card("lid-card"), A5.turned)
    (picture, *_) = (block for block in page.blocks if isinstance(block, PictureBlock))
    rect = replace(picture.rect, width_mm=side_mm, height_mm=side_mm)
    return replace(page, blocks=(replace(picture, rect=rect),) * count)


@pytest.mark.parametrize(
    ("kind", "both", "english", "room"),
    [
        ("lid-card", [(2, 25.0)], [(2, 40.0)], True),
        ("lid-card", [(2, 24.9)], [(2, 40.0)], False),
        ("lid-card", [(2, 20.0)], [(2, 20.0)], True),
        ("lid-card", [(2, 19.9)], [(2, 20.0)], False),
        ("lid-card", [(1, 40.0)], [(2, 40.0)], False),
        ("lid-card", [(1, 40.0), (1, 40.0)], [(2, 40.0)], False),
        ("cover-card", [(2, 19.9)], [(2, 20.0)], True),
        ("cover-card", [(1, 40.0)], [(2, 20.0)], False),
        ("contents-list", [(1, 16.0), (1, 16.0)], [(2, 16.0)], True),
    ],
)
def test_what_it_may_cost(
    kind: str, both: list[tuple[int, float]], english: list[tuple[int, float]], *, room: bool
) -> None:
    """No page but of a list, no picture, and on a lid card none below 25 mm for its sake."""
    pages = ([_page(*one) for one in some] for some in (both, english))
    assert has_room(_card(kind), *pages) is room
