from __future__ import annotations

from itertools import repeat

from service.cards.parts import Handling, Pointer, Warn
from service.handling.lifting import LiftAdvice
from service.pages.page import MarkBlock, TextBlock, TextStyle
from service.pages.rounds.warnings import (
    Item,
    Voice,
    WarningLook,
    pair_items,
    set_warnings,
    share_items,
    stack_items,
    write_numbers,
)
from service.pages.setting.stack import bottom_of
from tests.pages.made import PLAIN

LOOK = WarningLook(6.0, TextStyle(9.0, weight=700), TextStyle(7.0))
LIFT = LiftAdvice("7.4", "weighed", "At waist height, close to the body.")
ARSENIC = Warn("toxic", "Arsenic presumed", "Gloves. Do not brush.", (Pointer("B3", "X.1"),))


def whole(items: tuple[Item, ...]) -> list[str]:
    """Give all texts in the order of reading."""
    return [b.whole for item in items for b in item.blocks if isinstance(b, TextBlock)]


def test_hazards_come_before_lift_and_cautions() -> None:
    """Every hazard has its mark, its state, what to do and which object it is of."""
    handling = Handling(LIFT, (ARSENIC,), (Warn("glass", "Glass"),), ("Nothing on top",))
    items = set_warnings(Voice(PLAIN), handling, LOOK, 80.0)
    assert whole(items) == [
        "Arsenic presumed",
        "Gloves. Do not brush.",
        "B3\N{NO-BREAK SPACE}X.1",
        "7.4 kg, weighed",
        "At waist height, close to the body.",
        "Glass",
        "Nothing on top",
    ]
    assert [block.mark for block in items[0].blocks if isinstance(block, MarkBlock)] == ["toxic"]


def test_long_words_can_be_parted_but_not_cut() -> None:
    """A page may end between pieces; together they say it all."""
    words = " ".join(f"note{n}" for n in range(300))
    items = set_warnings(Voice(PLAIN), Handling(LIFT, limits=(words,)), LOOK, 60.0)[1:]
    assert len(items) > 2
    assert " ".join(whole(items)) == words
    assert max(item.height_mm for item in items) < 20.0


def test_of_many_objects_the_count_is_told() -> None:
    """Four are named; five are counted."""
    five = [Pointer("", f"X.{n}") for n in range(5)]
    assert write_numbers(five[:4]) == "X.0, X.1, X.2, X.3"
    assert write_numbers(five) == "5 objects: see the contents list"


def made(*heights_mm: float) -> list[Item]:
    """Give items of these heights."""
    return [Item((), height_mm) for height_mm in heights_mm]


def test_rooms_are_filled_in_order() -> None:
    """No item is parted; the first room may be too small for any."""
    items = made(4, 4, 4)
    assert share_items(items, repeat(9.0), gap_mm=1.0) == [items[:2], items[2:]]
    assert share_items(items, iter([2.0, 20.0]), gap_mm=1.0) == [[], items]
    assert share_items(items[:1], iter([4.0]), gap_mm=1.0) == [items[:1]]


def test_two_stand_side_by_side() -> None:
    """A pair is as high as its higher one, and the second stands a step to the right."""
    items = set_warnings(
        Voice(PLAIN), Handling(LIFT, (ARSENIC,), limits=("Heavy end: left",)), LOOK, 40.0
    )
    pairs = pair_items(items, 45.0)
    assert len(pairs) == 2
    assert pairs[0].height_mm == max(items[0].height_mm, items[1].height_mm)
    assert pairs[0].blocks[-1].rect.x_mm == items[1].blocks[-1].rect.x_mm + 45.0
    stacked = stack_items(pairs, 10.0, 100.0, gap_mm=1.0)
    assert bottom_of(stacked) <= 100.0 + sum(pair.height_mm for pair in pairs) + 1.0
