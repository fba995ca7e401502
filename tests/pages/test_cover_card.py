from __future__ import annotations

from dataclasses import replace

import pytest

from service.contents.packing import Packing
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.cover_card import HOLE_MM
from service.pages.look import NEAREST_EDGE_MM
from service.pages.page import ShapeBlock, TextBlock
from service.records.record import ObjectRecord, PhotoReference, PhotoRole
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.contents.made import A4, A5, GARMENT_COVER, hazard, objects, packing
from tests.pages.checks import collisions, numbers, pictures, said, strays, symbols, texts
from tests.pages.made import PLAIN, cover_page

WIDE = A5.turned
DRESS = ObjectRecord(
    "1962.18",
    title="Day dress, printed cotton",
    object_name="dress",
    period="1840s",
    accessories=("Belt",),
    condition="Hem frayed",
    photos=(PhotoReference("front.jpg"), PhotoReference("back.jpg", PhotoRole.BACK)),
)


def hung(**changes: object) -> Packing:
    """Put a garment into its cover."""
    return packing([replace(DRESS, **changes)], GARMENT_COVER)  # type: ignore[arg-type] # any field


@pytest.mark.parametrize("size", [WIDE, A4.turned], ids=["A5", "A4"])
def test_holes_meet_when_the_card_is_folded(size: Size) -> None:
    """Both holes are equally far from the fold, at one height and of one size."""
    page = cover_page(hung(), size)
    holes = [block for block in page.blocks if block.purpose == "hole"]
    left, right = (block.rect for block in holes)
    middle_mm = size.width_mm / 2
    assert middle_mm - left.right_mm == pytest.approx(right.x_mm - middle_mm)
    assert left.y_mm == right.y_mm
    assert left.size == right.size
    assert left.width_mm == HOLE_MM
    assert all(isinstance(one, ShapeBlock) and one.radius_mm == HOLE_MM / 2 for one in holes)


@pytest.mark.parametrize("size", [WIDE, A4.turned], ids=["A5", "A4"])
def test_each_face_keeps_to_its_half(size: Size) -> None:
    """Nothing but the marks of the fold stands across it, and nothing meets anything."""
    page = cover_page(hung(hazards=(hazard("arsenic"), hazard("lead"))), size)
    middle_mm = size.width_mm / 2
    across = [
        block.purpose
        for block in page.blocks
        if block.rect.x_mm < middle_mm < block.rect.right_mm and block.purpose != "symbol"
    ]
    assert set(across) == {"fold"}
    assert symbols(page)[0].rect.right_mm <= middle_mm
    assert collisions(page, PLAIN) == []
    assert strays(page, PLAIN, margin_mm=NEAREST_EDGE_MM) == []


def test_the_front_shows_the_garment_and_how_it_is_kept() -> None:
    """Number, title, period, photo and advice stand right of the fold."""
    page = cover_page(hung(), WIDE)
    middle_mm = WIDE.width_mm / 2
    for purpose in ("object-number", "title", "period", "hang-advice", "container-number"):
        assert texts([page], purpose)[0].rect.x_mm > middle_mm
    assert pictures([page])[0].rect.x_mm > middle_mm
    assert numbers([page]) == ["1962.18"]
    assert said([page], "container-number") == ["Garment cover G-7"]


def test_the_reason_of_the_advice_stands_below_it() -> None:
    """Whoever reads the advice sees what it rests on; without a reason there is no empty line."""
    page = cover_page(hung(hang_factors=("weak-shoulders", "beads", "bias-cut")), WIDE)
    assert said([page], "hang-reason") == ["Recorded: weak shoulders, beads, bias cut"]
    (advice,), (reason,) = texts([page], "hang-advice"), texts([page], "hang-reason")
    assert advice.rect.bottom_mm <= reason.rect.y_mm < advice.rect.bottom_mm + 1
    assert collisions(page, PLAIN) == []
    assert said([cover_page(hung(), WIDE)], "hang-reason") == []


def test_hazards_stand_on_both_faces() -> None:
    """The mark is seen from the aisle, the instruction is read when the card is opened."""
    page = cover_page(hung(hazards=(hazard("arsenic"),)), WIDE)
    assert said([page], "hazard") == ["Arsenic confirmed"] * 2
    assert said([page], "instruction") == ["Gloves. Do not brush or shake. Wash hands."]


def test_what_lies_in_the_cover_too_is_named() -> None:
    """Accessories and other objects are labelled, notes are not."""
    page = cover_page(packing([DRESS, *objects(1)], GARMENT_COVER), WIDE)
    assert said([page], "note") == [
        "With it: Belt",
        "Also here: 1987.412.1 Brass buckle, cast 1",
        "Condition: Hem frayed",
    ]


def test_the_back_photo_comes_only_where_it_shows_something() -> None:
    """Where words fill the back there is none; no photo leaves no frame."""
    assert len(pictures([cover_page(hung(), A4.turned)], "back-photo")) == 1
    full = hung(handling_notes="Two people lift it by the hanger. " * 36)
    assert pictures([cover_page(full, WIDE)], "back-photo") == []
    assert pictures([cover_page(hung(photos=DRESS.photos[:1]), A4.turned)], "back-photo") == []


def test_a_garment_without_photo_period_or_name() -> None:
    """The empty frame says why it is empty; what is not known takes no line."""
    page = cover_page(hung(photos=(), period="", object_name=""), WIDE)
    assert said([page], "no-photo") == ["no photo yet"]
    assert said([page], "period") == []


def test_a_long_number_is_smaller_and_whole() -> None:
    """It shrinks or breaks and is never cut."""
    page = cover_page(hung(object_number="PMM.1962.18.0000042-very.long"), WIDE)
    assert numbers([page]) == ["PMM.1962.18.0000042-very.long"]
    assert collisions(page, PLAIN) == []


@pytest.mark.parametrize(
    ("made", "size", "block"),
    [
        (hung(handling_notes="Two people lift it. " * 80), WIDE, "back of the cover card"),
        (hung(title="Dress " * 30, accessories=(), condition=""), Size(210, 80), "photo"),
        (hung(), Size(148, 80), "photo"),
    ],
)
def test_what_does_not_fit_is_refused(made: Packing, size: Size, block: str) -> None:
    """Nothing is left out to make a face fit."""
    with pytest.raises(DoesNotFitError, match=block):
        cover_page(made, size)


def test_hazards_are_never_shortened() -> None:
    """However many lines a heading takes, it stands whole."""
    page = cover_page(hung(hazards=(hazard("medicine"), hazard("radioactive-mineral"))), WIDE)
    blocks = [one for one in page.blocks if isinstance(one, TextBlock)]
    assert not any(one.is_shortened for one in blocks if one.purpose != "title")


def test_the_same_holds_for_the_shipped_fonts() -> None:
    """Measured by the engine that draws, nothing meets and nothing leaves the page."""
    ruler = PangoRuler(FONTS_CONF)
    page = cover_page(hung(hazards=(hazard("arsenic"),)), WIDE, ruler)
    assert collisions(page, ruler) == []
    assert strays(page, ruler, margin_mm=NEAREST_EDGE_MM) == []
