from __future__ import annotations

from contextlib import nullcontext, suppress
from dataclasses import replace

import pytest

from service.cards.compose.end_label import compose_end_labels
from service.errors import DoesNotFitError, ModuleTooSmallError
from service.geometry import Size
from service.legibility import LEAST_ANGLE_ARCMIN, cap_height_mm
from service.pages.end_label import fit_end_label
from service.pages.setting.type import caps_mm
from service.records.codes import HAZARD_CODES
from service.records.record import ContainerKind, ContainerRecord, Weight
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.contents.made import BOX, MUSEUM, hazard, objects, packing
from tests.pages.checks import collisions, marks, said, strays, texts
from tests.pages.made import PLAIN, end_page

LOW, MIDDLE, HIGH = Size(99.1, 38.1), Size(140.0, 67.7), Size(199.6, 143.5)
SIZES = {"low": LOW, "middle": MIDDLE, "high": HIGH}
MARGIN_MM = 2.0
"""A die line may be off by 1.5 mm (common practice, no source)."""
ONE = objects(1)[0]


@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
@pytest.mark.parametrize("distance_mm", [600.0, 1000.0, 1500.0, 2000.0])
@pytest.mark.parametrize("number", ["B-042", "PM.2026.0042", "STORE-2-BAY-4"])
def test_the_number_is_read_from_across_the_aisle(
    number: str, distance_mm: float, size: Size
) -> None:
    """Its capitals fill 16 arc minutes or more (NUREG-0700, item 1.3.1-4), or it is refused."""
    made = packing([ONE], replace(BOX, container_number=number))
    least_mm = cap_height_mm(distance_mm, angle_arcmin=LEAST_ANGLE_ARCMIN)
    with nullcontext() if size is HIGH else suppress(DoesNotFitError):
        page = end_page(made, size, distance_mm=distance_mm)
        (block,) = texts([page], "container-number")
        assert caps_mm(block.style.size_pt) >= least_mm - 1e-6
        assert "".join(block.lines) == number
        assert len(block.lines) <= 2


@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
@pytest.mark.parametrize("codes", [(), ("lead",), ("lead", "mould")], ids=len)
def test_nothing_meets_and_nothing_leaves_the_label(codes: tuple[str, ...], size: Size) -> None:
    """Number, title, weight, marks, symbol and foot each have their place."""
    record = replace(ONE, hazards=tuple(hazard(code) for code in codes), cautions=("fragile",))
    box = replace(BOX, container_number="B-42", gross=Weight(7400.0))
    for ruler in (PLAIN, PangoRuler(FONTS_CONF)):
        page = end_page(packing([record], box), size, ruler, distance_mm=900.0)
        assert collisions(page, ruler) == []
        assert strays(page, ruler, margin_mm=MARGIN_MM) == []
        assert len(marks([page])) >= len(codes)


def test_hazards_are_never_left_out() -> None:
    """A label with room for all has all, one without is refused."""
    every = tuple(hazard(code) for code in HAZARD_CODES)
    with pytest.raises(DoesNotFitError, match="row of marks needs"):
        end_page(packing([replace(ONE, hazards=every)]), MIDDLE)
    few = packing([replace(ONE, hazards=every[:5])])
    assert len(marks([end_page(few, HIGH)])) == 5


def test_a_number_too_long_for_the_aisle_is_refused() -> None:
    """A label that cannot be read from where one stands is not printed."""
    made = packing([ONE], replace(BOX, container_number="W" * 14))
    with pytest.raises(DoesNotFitError, match="The number needs"):
        end_page(made, LOW, distance_mm=3000.0)


def test_an_address_too_long_for_the_label_is_refused() -> None:
    """A symbol no telephone reads is not printed."""
    made = packing([ONE], replace(BOX, container_number="B-" + "0" * 300))
    with pytest.raises(ModuleTooSmallError, match="QR module"):
        end_page(made, LOW, distance_mm=300.0)


def test_weights_are_honest() -> None:
    """A least weight carries a plus, an unknown one is not there."""
    assert said([end_page(packing([ONE]), MIDDLE)], "weight") == ["0.1 kg+"]
    weighed = packing([ONE], replace(BOX, gross=Weight(7400.0)))
    assert said([end_page(weighed, MIDDLE)], "weight") == ["7.4 kg"]
    assert said([end_page(packing([replace(ONE, weight=None)]), MIDDLE)], "weight") == []


def test_a_side_says_which_it_is() -> None:
    """A box has two labels, numbered; a drawer has one, which needs no number."""
    assert said([end_page(packing([ONE]), MIDDLE)], "side")[0].startswith("1 of 2 · ")
    drawer = packing([ONE], ContainerRecord("D-4", ContainerKind.DRAWER))
    page = end_page(drawer, MIDDLE)
    assert " of " not in said([page], "side")[0]
    assert said([page], "title") == []


def test_cautions_give_way_where_there_is_no_room() -> None:
    """A low label keeps its hazard; the cautions it leaves out stand on the lid."""
    codes = ("fragile", "keep-dry", "do-not-tilt", "nothing-on-top", "keep-flat", "heavy-end")
    record = replace(ONE, hazards=(hazard("lead"), hazard("mould")), cautions=codes)
    page = end_page(packing([record]), LOW, distance_mm=1000.0)
    found = [one.mark for one in marks([page])]
    assert found[:2] == ["toxic", "biological"]
    assert len(found) < 2 + len(codes)


def test_words_of_a_mark_take_two_lines_at_most() -> None:
    """A long name of the museum's own is as wide as it must be, and whole."""
    record = replace(ONE, hazards=(hazard("xxxxxxxxxx-y-zzzzzzzzzz"),))
    (words,) = texts([end_page(packing([record]), HIGH)], "mark-words")
    assert len(words.lines) <= 2
    assert " ".join(words.lines) == "Xxxxxxxxxx y zzzzzzzzzz confirmed"


@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
@pytest.mark.parametrize("letters", ["WWWW", "MWMW", "JJJJ", "BCDF"])
def test_no_letters_come_too_near_the_edge(letters: str, size: Size) -> None:
    """The widest letters stay inside the die line as the narrowest do."""
    made = packing([ONE], replace(BOX, container_number="B-42"))
    (card, _) = compose_end_labels(made, MUSEUM)
    lettered = replace(card, head=replace(card.head, check_letters=letters))
    page = fit_end_label(lettered, size, PangoRuler(FONTS_CONF), distance_mm=1500.0)
    (side,) = texts([page], "side")
    assert side.rect.right_mm <= size.width_mm - MARGIN_MM
    assert "".join(side.lines).endswith(letters)
    ruler = PangoRuler(FONTS_CONF)
    assert all(ruler.width_mm(line, side.style) <= side.rect.width_mm for line in side.lines)
