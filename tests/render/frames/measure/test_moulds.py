from __future__ import annotations

from dataclasses import replace

import pytest

from service.geometry import Size
from service.render.frames.frame import Look, Mould
from service.render.frames.measure.ink import Inked
from service.render.frames.measure.moulds import UnkeepableInkError, ink_of_block, mould_of
from service.render.frames.measure.specimen import Specimen, make_specimens
from tests.render.frames import made

RED = (1.0, 0.0, 0.0)
BLUE = (0.0, 0.0, 1.0)
FACE = Size(200.0, 60.0)


def specimen_of(look: Look) -> Specimen:
    """Give the first specimen of a look."""
    return make_specimens([look], FACE)[0]


# The first room of this face is 20 mm from the left, 9 mm from the top, 89.74 mm wide and 23.478 mm
# high; a picture of 4 to 3 is 31.304 mm wide in its middle, that is from 49.218 to 80.522 mm.
PLACE = (20.0, 9.0, 109.74, 32.478)
SQUARE = (20.0, 9.0, 43.478, 32.478)
# A symbol of 25 modules (version 2) stands with four clear modules around it in the square.
MODULES = (22.846, 11.846, 40.632, 29.632)
PICTURE = Inked("picture", corners=(49.218, 9.0, 80.522, 32.478))
AROUND = Inked("hollow", RED, (49.018, 8.8, 80.722, 32.678))
DASH = Inked("stroke", RED, PLACE, 0.2, is_dashed=True)

KEPT: dict[str, tuple[Look, list[Inked], Mould]] = {
    "text": (made.TITLE, [Inked("text", RED)] * 2, Mould(RED)),
    "picture": (made.PHOTO, [PICTURE], Mould()),
    "outline": (made.PHOTO, [PICTURE, AROUND, AROUND], Mould(None, RED, 0.2)),
    "empty": (made.NO_PHOTO, [DASH] * 4, Mould(None, RED, 0.2)),
    "shape": (
        made.PANEL,
        [Inked("fill", BLUE, PLACE), Inked("hollow", RED, PLACE)],
        Mould(BLUE, RED),
    ),
    "symbol": (made.SYMBOL, [Inked("fill", BLUE, MODULES)], Mould(BLUE)),
    "mark": (made.MARK, [Inked("fill", BLUE, SQUARE), Inked("fill", RED, SQUARE)], Mould()),
}


@pytest.mark.parametrize(("look", "ink", "mould"), KEPT.values(), ids=KEPT)
def test_ink_fills_a_mould(look: Look, ink: list[Inked], mould: Mould) -> None:
    """Colours and widths are taken from where the look has them."""
    assert mould_of(specimen_of(look), ink) == mould


REFUSED: dict[str, tuple[Look, list[Inked], str]] = {
    "nothing": (made.TITLE, [], "not drawn"),
    "reason": (made.MARK, [Inked("object", reason="it is shaded")], "shaded"),
    "two-colours": (made.TITLE, [Inked("text", RED), Inked("text", BLUE)], "several colours"),
    "text-and-line": (made.TITLE, [Inked("text", RED), DASH], "a thin line is drawn"),
    "two-pictures": (made.PHOTO, [PICTURE, PICTURE], "at its place"),
    "moved-picture": (made.PHOTO, [replace(PICTURE, corners=PLACE)], "at its place"),
    "picture-of-none": (made.NO_PHOTO, [PICTURE], "where there is none"),
    "uneven-outline": (
        made.PHOTO,
        [PICTURE, replace(AROUND, corners=(49.018, 9.0, 80.722, 32.678))],
        "even line",
    ),
    "dashed-outline": (made.PHOTO, [PICTURE, replace(AROUND, is_dashed=True)], "even line"),
    "two-widths": (made.NO_PHOTO, [DASH, replace(DASH, width_mm=0.3)], "one dashed line"),
    "small-filling": (made.PANEL, [Inked("fill", RED, (20.0, 9.0, 40.0, 32.478))], "to its edges"),
    "text-in-shape": (made.PANEL, [Inked("text", RED)], "more than an inside"),
    "other-dashes": (made.PANEL, [DASH], "as the page asks"),
    "beside-mark": (made.MARK, [Inked("fill", RED, PLACE)], "beside it"),
    "moved-symbol": (made.SYMBOL, [Inked("fill", RED, SQUARE)], "at their place"),
    "backed-symbol": (made.SYMBOL, [Inked("fill", RED)] * 2, "more than its modules"),
}


@pytest.mark.parametrize(("look", "ink", "reason"), REFUSED.values(), ids=REFUSED)
def test_ink_beyond_a_mould_is_refused(look: Look, ink: list[Inked], reason: str) -> None:
    """The reason says what a mould cannot keep."""
    with pytest.raises(UnkeepableInkError, match=reason):
        mould_of(specimen_of(look), ink)


def test_static_ink_is_taken_away_once() -> None:
    """A slot may be inked exactly as something fixed is."""
    fixed, own = Inked("fill", RED, PLACE), Inked("fill", BLUE, PLACE)
    assert ink_of_block([fixed, own, fixed], [fixed]) == [own, fixed]
