"""Tests for warning labels in two languages, with the shipped fonts."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Size
from service.pages.asked.warning_words import shorten_worn
from service.pages.page import Page, TextBlock
from service.pages.setting.give_way import keeps_english
from service.pages.setting.second import PURPOSE
from service.records.codes import HAZARD_CODES
from service.records.museum.language import LANGUAGE_NAMES, Language
from service.records.record import HazardState
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.second.made import phrasebook
from tests.contents.made import hazard, objects, packing
from tests.pages.checks import collisions, said, strays, texts
from tests.pages.two_languages import bilingual, fit_both

SMALL, MIDDLE, LARGE = Size(99.1, 67.7), Size(99.1, 93.1), Size(199.6, 143.5)
REAL = PangoRuler(FONTS_CONF)
ONE, TWO = objects(2)


def _fit(
    size: Size, language: Language, *codes: str, state: HazardState = HazardState.PRESUMED
) -> tuple[list[Page], list[Page]]:
    record = replace(ONE, hazards=tuple(hazard(code, state) for code in codes))
    card = bilingual(packing([record]), "warning-label", phrasebook(language))
    return fit_both(card, size, REAL)


def _faults(pages: list[Page]) -> list[object]:
    return [
        found
        for page in pages
        for found in (*collisions(page, REAL), *strays(page, REAL, margin_mm=2.0))
    ]


@pytest.mark.slow
@pytest.mark.parametrize("language", LANGUAGE_NAMES)
@pytest.mark.parametrize("code", HAZARD_CODES)
def test_each_hazard_has_room_for_both(code: str, language: Language) -> None:
    """On the large label each hazard speaks both; English stands as before, nothing meets."""
    both, english = _fit(LARGE, language, code)
    assert said(both, PURPOSE)
    assert keeps_english(both, english)
    assert _faults(both) == []


@pytest.mark.slow
@pytest.mark.parametrize("size", [SMALL, MIDDLE], ids=["small", "middle"])
@pytest.mark.parametrize("code", HAZARD_CODES)
def test_english_never_pays(code: str, size: Size) -> None:
    """Where there is little room the English is word for word, size for size, what it was."""
    both, english = _fit(size, Language.POLISH, code, state=HazardState.UNCHECKED)
    assert keeps_english(both, english)
    assert _faults(both) == []


def test_it_is_smaller_and_lighter_than_the_english() -> None:
    """Each text of the second language is set below the size and weight of its English."""
    (page,), _ = _fit(LARGE, Language.WELSH, "lead")
    blocks = [block for block in page.blocks if isinstance(block, TextBlock)]
    named, told, foot = (block for block in blocks if block.purpose == PURPOSE)
    by_purpose = {block.purpose: block for block in blocks}
    for again, purpose in (
        (named, "state"),
        (named, "hazard"),
        (told, "instruction"),
        (foot, "protection"),
    ):
        assert again.style.size_pt <= by_purpose[purpose].style.size_pt
        assert again.style.weight < by_purpose[purpose].style.weight
    assert named.rect.y_mm >= by_purpose["instruction"].rect.bottom_mm
    assert foot.rect.y_mm >= by_purpose["questions"].rect.bottom_mm
    assert foot.whole.startswith("Amddiffyniad: Menig nitril tenau; lle mae llwch")
    assert foot.whole.endswith("Gofynnwch yn gyntaf")


def test_what_is_worn_is_shortened_in_both() -> None:
    """Where only what is always worn has room, both point to the contents list for the rest."""
    both, _ = _fit(Size(120, 72.5), Language.WELSH, "mercury-liquid")
    assert said(both, "protection") == ["Protection: nitrile gloves; more on the contents list"]
    assert said(both, PURPOSE)[-1] == (
        "Amddiffyniad: Menig nitril; mwy ar y rhestr gynnwys · Gofynnwch yn gyntaf"
    )


def test_states_are_named_apart() -> None:
    """A hazard that is known in two ways is named in each; the counts stand in the English."""
    records = [
        replace(ONE, hazards=(hazard("lead"),)),
        replace(TWO, hazards=(hazard("lead", HazardState.UNCHECKED),)),
    ]
    card = bilingual(packing(records), "warning-label", phrasebook(Language.WELSH))
    (page,), _ = fit_both(card, LARGE, REAL)
    assert texts([page], PURPOSE)[0].whole == "Plwm (cadarnhawyd), Plwm (nis gwiriwyd)"


def test_one_label_gives_way_alone() -> None:
    """Each label decides for itself: where one is full, another still speaks both."""
    both, english = _fit(SMALL, Language.WELSH, "lead", "ammunition")
    assert len(both) == len(english) == 2
    assert [bool(said([page], PURPOSE)) for page in both] == [True, False]


@pytest.mark.parametrize(
    ("worn", "short"),
    [("Nitrile gloves; a mask", "Nitrile gloves; more"), ("Nitrile gloves", "Nitrile gloves")],
)
def test_only_what_has_a_rest_is_shortened(worn: str, short: str) -> None:
    """Protection that is one thing stays as it is."""
    assert shorten_worn(worn, "more") == short
