from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Size
from service.records.museum.language import Language
from service.records.record import Weight
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.second.made import phrasebook
from tests.contents.made import BOX, hazard, objects, packing
from tests.pages.checks import collisions, marks, strays, texts
from tests.pages.made import PLAIN, end_page
from tests.pages.two_languages import bilingual, fit_both

ONE = objects(1)[0]
LOW, MIDDLE = Size(99.1, 38.1), Size(140.0, 67.7)
SHORT = replace(BOX, container_number="B-42")
MARGIN_MM = 2.0


def advice(mass_g: float, *, size: Size = MIDDLE, codes: tuple[str, ...] = ()) -> list[str]:
    """Give the advice that a label prints for a box of that weight with these hazards."""
    record = replace(ONE, hazards=tuple(hazard(code) for code in codes))
    page = end_page(packing([record], replace(SHORT, gross=Weight(mass_g))), size)
    assert len(marks([page])) == len(codes)
    return [block.whole for block in texts([page], "lift-advice")]


@pytest.mark.parametrize(
    ("mass_g", "printed"),
    [
        (16_000, []),
        (16_001, ["Two people or a trolley."]),
        (25_001, ["Trolley or lifting aid; assess before lifting."]),
    ],
)
def test_a_label_tells_who_must_not_lift_alone(mass_g: float, printed: list[str]) -> None:
    """What one person lifts is on the lid; more than that stands where the box is taken from."""
    assert advice(mass_g) == printed


def test_advice_gives_way_to_marks() -> None:
    """Where a hazard would have no room beside the advice, the weight in figures stands alone."""
    assert advice(16_001, size=LOW, codes=("lead", "mould")) == []
    assert advice(16_001, size=LOW) == ["Two people or a trolley."]


@pytest.mark.parametrize("size", [LOW, MIDDLE], ids=["low", "middle"])
def test_advice_meets_nothing(size: Size) -> None:
    """Weight, advice, marks and symbol each have their place, in the shipped fonts as well."""
    record = replace(ONE, hazards=(hazard("lead"),), cautions=("fragile",))
    made = packing([record], replace(SHORT, gross=Weight(26_000)))
    for ruler in (PLAIN, PangoRuler(FONTS_CONF)):
        page = end_page(made, size, ruler, distance_mm=900.0)
        assert collisions(page, ruler) == []
        assert strays(page, ruler, margin_mm=MARGIN_MM) == []


def _second(size: Size, codes: tuple[str, ...], cautions: tuple[str, ...] = ()) -> list[str]:
    """Give what a label says in Welsh; all English marks stand as without it."""
    ruler = PangoRuler(FONTS_CONF)
    record = replace(ONE, hazards=tuple(map(hazard, codes)), cautions=cautions)
    made = packing([record], replace(SHORT, gross=Weight(17_000)))
    card = bilingual(made, "end-label", phrasebook(Language.WELSH))
    (both,), (english,) = fit_both(card, size, ruler)
    assert len(marks([both])) == len(marks([english]))
    assert texts([both], "lift-advice") == texts([english], "lift-advice")
    assert collisions(both, ruler) == []
    assert strays(both, ruler, margin_mm=MARGIN_MM) == []
    return [block.whole for block in texts([both], "second")]


def test_the_first_hazard_is_named_in_a_second_language() -> None:
    """Its name and state stand behind the English, where nothing gives way to them."""
    assert _second(MIDDLE, ("lead", "mould")) == ["Plwm (cadarnhawyd)"]
    assert _second(LOW, ("lead",), ("fragile", "keep-dry", "nothing-on-top")) == []
    assert _second(MIDDLE, ()) == []
