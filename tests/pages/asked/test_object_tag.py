from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import DoesNotFitError, ModuleTooSmallError
from service.geometry import Size
from service.pages.page import SymbolBlock
from service.records.codes import HAZARD_CODES
from service.records.record import HazardState
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.contents.made import hazard, objects, packing
from tests.pages.checks import collisions, marks, numbers, said, strays
from tests.pages.made import tag_pages

SMALL, LARGE = Size(60.0, 30.0), Size(90.0, 50.0)
REAL = PangoRuler(FONTS_CONF)
ONE = objects(1)[0]
LONG = "PMM.2026.0042.17/3a-c (bis) and a very long tail 1987.412.3"


def test_a_plain_object_has_a_small_tag() -> None:
    """Number, former number, name, whom to ask and the symbol stand on 60 x 30 mm."""
    record = replace(ONE, former_numbers=("1931/14",))
    (page,) = tag_pages(packing([record]), SMALL, REAL)
    assert numbers([page]) == ["1987.412.1"]
    assert said([page], "former-numbers") == ["formerly 1931/14"]
    assert said([page], "questions") == ["Ask first: Collections desk ext. 214"]
    assert said([page], "weight") == []
    assert sum(isinstance(block, SymbolBlock) for block in page.blocks) == 1
    assert collisions(page, REAL) == []
    assert strays(page, REAL, margin_mm=2.0) == []


def test_a_hazard_needs_a_larger_tag() -> None:
    """It is never left out: the small tag is refused, the large one carries it with its state."""
    made = packing([replace(ONE, hazards=(hazard("lead", HazardState.PRESUMED),))])
    with pytest.raises(DoesNotFitError):
        tag_pages(made, SMALL, REAL)
    assert said(tag_pages(made, LARGE, REAL), "mark-words") == ["Lead presumed"]


@pytest.mark.parametrize(
    "title", ["Brass buckle", "خريطة بحرية لمدخل الميناء", "港の水先案内人の外套"]
)
@pytest.mark.parametrize("number", ["X.9", LONG])
def test_nothing_is_left_out(number: str, title: str) -> None:
    """Twelve hazards and the cautions go on on further tags; each has number and symbol."""
    codes = HAZARD_CODES[:12]
    cautions = ("fragile", "loose-parts")
    record = replace(
        ONE,
        object_number=number,
        title=title,
        hazards=tuple(map(hazard, codes)),
        cautions=cautions,
    )
    pages = tag_pages(packing([record]), LARGE, REAL)
    assert len(marks(pages)) == len(codes) + len(cautions)
    assert {one.replace(" ", "") for one in numbers(pages)} == {number.replace(" ", "")}
    assert len(numbers(pages)) == len(pages)
    for page in pages:
        assert collisions(page, REAL) == []
        assert strays(page, REAL, margin_mm=2.0) == []


def test_words_without_room_are_refused() -> None:
    """Where names and former numbers leave no room, a larger tag is asked for."""
    former = tuple(f"1931/{number}" for number in range(30))
    with pytest.raises(DoesNotFitError, match="object tag"):
        tag_pages(packing([replace(ONE, former_numbers=former)]), SMALL, REAL)


def test_an_address_too_long_for_a_tag_is_refused() -> None:
    """A symbol no telephone reads is not printed."""
    record = replace(ONE, object_number="1987." + "0" * 300)
    with pytest.raises(ModuleTooSmallError):
        tag_pages(packing([record]), LARGE, REAL)
