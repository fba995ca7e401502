from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from service.cards.compose.warn import warn_outside
from service.cards.parts import Handling, Pointer, SecondWords, Warn
from service.geometry import Rect
from service.pages.lid.strip import MOST_POINTERS, set_strip, write_pointers
from service.pages.page import Block, TextBlock
from service.pages.setting.stack import bottom_of
from service.records.record import Weight
from tests.contents.made import BOX, MUSEUM, hazard, objects, packing
from tests.pages.fake_ruler import FakeRuler

RULER = FakeRuler()
AREA = Rect(6.5, 40.0, 135.0, 0)
ONE = objects(1)[0]


def strip(handling: Handling, width_mm: float = 135.0) -> tuple[Block, ...]:
    """Set a strip."""
    return set_strip(RULER, handling, replace(AREA, width_mm=width_mm))


def words(blocks: tuple[Block, ...], purpose: str) -> list[str]:
    """Give what the texts of a purpose say."""
    return [one.whole for one in blocks if isinstance(one, TextBlock) and one.purpose == purpose]


def test_the_weight_comes_first_with_its_honesty() -> None:
    """Figure, how it is known and what to do stand together."""
    box = replace(BOX, gross=Weight(7400.0))
    blocks = strip(warn_outside(packing([ONE], box), MUSEUM))
    assert [block.purpose for block in blocks][:3] == ["weight", "basis", "lift-advice"]
    assert words(blocks, "weight") == ["7.4 kg"]
    assert words(blocks, "basis") == ["weighed"]


def test_an_unknown_weight_has_no_figure() -> None:
    """The words stand where the figure would."""
    blocks = strip(warn_outside(packing([replace(ONE, weight=None)]), MUSEUM))
    assert words(blocks, "weight") == []
    assert words(blocks, "basis") == ["Weight not known"]
    assert words(blocks, "lift-advice") == ["Weigh before lifting."]


@pytest.mark.parametrize("width_mm", [60.0, 94.0, 135.0, 192.0])
@pytest.mark.parametrize("count", [0, 1, 3, 6])
def test_nothing_meets_and_nothing_is_shortened(count: int, width_mm: float) -> None:
    """Whatever the width, every warning stands whole and apart from the next."""
    codes = ("lead", "arsenic", "asbestos", "mould", "sharps", "radium")[:count]
    cautions = ("fragile", "keep-dry", "do-not-tilt", "do-not-fold", "light-sensitive")
    record = replace(ONE, hazards=tuple(hazard(code) for code in codes), cautions=cautions)
    box = replace(BOX, heavy_end="left", stacking_limit=2, handling_notes="Two straps. " * 12)
    blocks = strip(warn_outside(packing([record], box), MUSEUM), width_mm)
    texts = [block for block in blocks if isinstance(block, TextBlock)]
    assert not any(text.is_shortened for text in texts)
    assert len(words(blocks, "hazard")) == len(words(blocks, "instruction")) == count
    assert len(words(blocks, "limit")) == 3
    pairs = [(a, b) for index, a in enumerate(blocks) for b in blocks[index + 1 :]]
    assert [(a, b) for a, b in pairs if a.rect.overlaps(b.rect, tolerance_mm=1.2)] == []
    assert all(block.rect.right_mm <= AREA.x_mm + width_mm + 0.01 for block in blocks)


def test_more_columns_make_the_strip_lower() -> None:
    """Hazards stand side by side where there is room."""
    record = replace(ONE, hazards=(hazard("lead"), hazard("mould"), hazard("sharps")))
    handling = warn_outside(packing([record]), MUSEUM)
    assert bottom_of(strip(handling, 192.0)) < bottom_of(strip(handling, 60.0))


def _warn(pointers: Sequence[Pointer], unmarked: Sequence[Pointer] = ()) -> Warn:
    return Warn("toxic", "Lead confirmed", "Gloves.", tuple(pointers), 2, tuple(unmarked))


def test_pointers_name_place_and_number() -> None:
    """Place and number stay together; above four the warning says how many."""
    named = (Pointer("B3", "1987.412.9"), Pointer("", "L 12"))
    assert write_pointers(_warn(named)) == "B3\N{NO-BREAK SPACE}1987.412.9, L 12"
    many = tuple(Pointer("", str(number)) for number in range(MOST_POINTERS + 1))
    assert write_pointers(_warn(many)) == "5 objects, each marked."
    assert write_pointers(_warn(many[:-1])).count(",") == 3
    assert not write_pointers(_warn(()))


def test_what_carries_no_mark_is_named_however_many() -> None:
    """A warning never says that an object is marked where its mark has no room."""
    many = tuple(Pointer("", str(number)) for number in range(6))
    assert write_pointers(_warn(many, many[4:])) == "6 objects: marked, and also 4, 5"
    assert write_pointers(_warn(many, many)) == "0, 1, 2, 3, 4, 5"


def test_advice_that_has_a_reason_says_it_below() -> None:
    """The reason stands below the advice, whole, and only where there is one."""
    box = replace(BOX, gross=Weight(17_000), hand_height_mm=1000.0)
    blocks = strip(warn_outside(packing([ONE], box), MUSEUM))
    reason = "17.0 kg: over 13 kg for hands between shoulder and elbow, close to the body"
    assert words(blocks, "lift-reason") == [reason]
    assert [block.purpose for block in blocks].index("lift-reason") == 3
    unplaced = replace(box, hand_height_mm=None)
    assert words(strip(warn_outside(packing([ONE], unplaced), MUSEUM)), "lift-reason") == []


def test_a_second_language_stands_after_the_english() -> None:
    """It is below weight and hazards, behind cautions and limits where the line has room."""
    record = replace(ONE, hazards=(hazard("lead"),), cautions=("fragile",))
    handling = warn_outside(packing([record], replace(BOX, heavy_end="left")), MUSEUM)
    said = {
        "Weigh before lifting.": "Pwyswch cyn codi.",
        "Lead confirmed": "Plwm",
        "Fragile": "Bregus",
        "Heavy end: left": "Pen trwm",
    }
    blocks = set_strip(RULER, handling, AREA, SecondWords("cy", tuple(said.items())))
    assert words(blocks, "second") == list(said.values())
    rects = {block.whole: block.rect for block in blocks if isinstance(block, TextBlock)}
    for english in ("Weigh before lifting.", "Lead confirmed"):
        assert rects[said[english]].y_mm >= rects[english].bottom_mm
    for english in ("Fragile", "Heavy end: left"):
        assert rects[said[english]].x_mm >= rects[english].right_mm
        assert rects[english].y_mm <= rects[said[english]].y_mm < rects[english].bottom_mm


def test_a_long_limit_has_its_second_words_below() -> None:
    """Where the line is full, the other words begin the next one."""
    limit = "Heavy end: the end with the brass handle, away from the aisle " * 3
    handling = warn_outside(packing([ONE], replace(BOX, heavy_end="")), MUSEUM)
    handling = replace(handling, limits=(limit,))
    blocks = set_strip(RULER, handling, AREA, SecondWords("cy", ((limit, "Pen trwm"),)))
    english, second = (block.rect for block in blocks[-2:])
    assert second.y_mm == pytest.approx(english.bottom_mm)
    assert second.x_mm == english.x_mm
