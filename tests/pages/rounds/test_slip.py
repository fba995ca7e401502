from __future__ import annotations

from dataclasses import replace

import pytest

from service.cards.papers.removal_slip import RemovalSlip
from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.page import TextBlock
from service.pages.rounds.slip import fit_removal_slip
from service.records.record import Hazard, HazardState, ObjectRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.cards.papers.made import BONES, JAR, LEAD, slip_of
from tests.pages.checks import collisions, pictures, said, strays

A6, QUARTER = Size(105.0, 148.0), Size(107.95, 139.7)
RULER = PangoRuler(FONTS_CONF)
CODES = ("arsenic", "asbestos", "radium", "lead", "pesticide", "sharps", "mould", "celluloid")
HEAVY = replace(LEAD, hazards=tuple(Hazard(code, HazardState.PRESUMED) for code in CODES * 2))
LONG = replace(
    slip_of(LEAD),
    object_number="PMM.STORE/2019-OVERFLOW.0001-REHOUSED-A",
    name="Regatta-day dress of striped cotton, with sash and straw hat and much else " * 4,
    to_whom="The conservation workshop of the county, second floor, annexe " * 4,
    location="Long Store, bay 4, shelf 2, behind the rolling rack",
    reason="Stopper seized: to be opened under extraction by somebody trained " * 6,
)


@pytest.mark.parametrize("size", [A6, QUARTER], ids=["A6", "quarter"])
@pytest.mark.parametrize(
    "slip",
    [slip_of(LEAD), slip_of(JAR), slip_of(BONES)],
    ids=["lead", "jar", "bones"],
)
def test_a_slip_is_one_card(slip: RemovalSlip, size: Size) -> None:
    """Nothing meets or leaves the card; the number is whole; a photo stands where there is one."""
    (page,) = fit_removal_slip(slip, size, RULER)
    assert collisions(page, RULER) == []
    assert strays(page, RULER, margin_mm=4.3) == []
    assert said([page], "object-number") == [slip.object_number]
    assert [block.photo for block in pictures([page])] == ([slip.photo] if slip.photo else [])


@pytest.mark.parametrize(("size", "cards"), [(A6, 1), (QUARTER, 2)], ids=["A6", "quarter"])
def test_long_words_are_shortened_before_hazards(size: Size, cards: int) -> None:
    """Name, receiver and reason give way; number, place and warnings stay whole."""
    pages = fit_removal_slip(LONG, size, RULER)
    assert len(pages) == cards
    assert [page for page in pages if collisions(page, RULER)] == []
    cut = [
        block.purpose
        for block in pages[0].blocks
        if isinstance(block, TextBlock) and block.is_shortened
    ]
    assert cut == ["name", "fact", "fact"]
    assert said(pages, "hazard") == ["Lead presumed"]


def test_what_is_not_known_is_left_to_a_pen() -> None:
    """A line each for whom, until when and why."""
    empty = replace(slip_of(JAR), to_whom="", due_back="", reason="")
    (page,) = fit_removal_slip(empty, A6, RULER)
    assert [block.purpose for block in page.blocks].count("line") == 3


def test_silence_is_said() -> None:
    """A slip without hazards says that none is recorded, and promises nothing."""
    assert said(fit_removal_slip(slip_of(JAR), A6, RULER), "silent") == [
        "No hazard is recorded; that does not mean there is none."
    ]
    assert said(fit_removal_slip(slip_of(LEAD), A6, RULER), "silent") == []


def test_hazards_that_have_no_room_go_on() -> None:
    """None is shortened or lost; the second card names object and slip again."""
    slip = slip_of(HEAVY)
    pages = fit_removal_slip(slip, A6, RULER)
    assert len(pages) == 2
    assert said(pages, "hazard") == [warn.heading for warn in slip.handling.hazards]
    assert said(pages, "object-number") == [slip.object_number] * 2
    assert said(pages, "slip") == ["Slip 3 · card 1 of 2", "Slip 3 · card 2 of 2"]
    assert [page for page in pages if collisions(page, RULER)] == []


def test_what_no_card_can_name_is_told() -> None:
    """Parts are never shortened: some thousands of them fit no slip."""
    slip = replace(slip_of(JAR), parts=", ".join(map(str, range(3000))))
    with pytest.raises(DoesNotFitError):
        fit_removal_slip(slip, A6, RULER)


def test_records_of_one_object_make_one_slip() -> None:
    """The whole slip is of the object it names."""
    record = ObjectRecord("X.1", "Jar")
    (page,) = fit_removal_slip(slip_of(record), A6, RULER)
    assert (page.kind, page.container_number, page.number, page.of) == (
        "removal-slip",
        "B-042",
        1,
        1,
    )
