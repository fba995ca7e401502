from __future__ import annotations

from dataclasses import replace

import pytest

from service.errors import DoesNotFitError
from service.geometry import Size
from service.pages.page import Page
from service.pages.setting.type import caps_mm
from service.records.codes import HAZARD_CODES
from service.records.record import HazardState, PlaceRecord
from service.render.ruler import PangoRuler
from service.render.task import FONTS_CONF
from tests.contents.made import MUSEUM, hazard, objects, packing
from tests.pages.checks import collisions, marks, numbers, said, strays, texts
from tests.pages.made import PLAIN, warning_pages

SMALL, MIDDLE, LARGE = Size(99.1, 67.7), Size(99.1, 93.1), Size(199.6, 143.5)
SIZES = {"small": SMALL, "middle": MIDDLE, "large": LARGE}
ONE, TWO = objects(2)
REAL = PangoRuler(FONTS_CONF)


def _faults(pages: tuple[Page, ...]) -> list[object]:
    return [
        found
        for page in pages
        for found in (*collisions(page, REAL), *strays(page, REAL, margin_mm=2.0))
    ]


@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
@pytest.mark.parametrize("code", HAZARD_CODES)
def test_each_hazard_has_its_place(code: str, size: Size) -> None:
    """Mark, name, state, instruction, object and whom to ask: nothing meets, nothing leaves."""
    record = replace(ONE, hazards=(hazard(code, HazardState.UNCHECKED),))
    pages = warning_pages(packing([record]), size, REAL)
    assert _faults(pages) == []
    assert (len(pages), len(marks(pages))) == (1, 1)


@pytest.mark.parametrize("size", [MIDDLE, LARGE], ids=["middle", "large"])
@pytest.mark.parametrize("count", [1, 7, 60])
def test_no_object_is_left_out(count: int, size: Size) -> None:
    """What has no room goes on on a further label, under the same mark and its own heading."""
    states = list(HazardState)
    records = [
        replace(one, hazards=(hazard("lead", states[index % 3]),))
        for index, one in enumerate(objects(count))
    ]
    pages = warning_pages(packing(records), size, REAL)
    assert sorted(numbers(pages)) == sorted(one.object_number for one in records)
    assert _faults(pages) == []
    assert len(marks(pages)) == len(pages)
    if len(pages) > 1:
        parts = [words.split(" · ")[0] for words in said(pages, "part")]
        assert parts == [f"label {number} of {len(pages)}" for number in range(1, len(pages) + 1)]


def test_hazards_come_on_labels_of_their_own() -> None:
    """The most urgent first; each says which container it is for."""
    record = replace(ONE, hazards=(hazard("lead"), hazard("radium")))
    pages = warning_pages(packing([record]), SMALL)
    assert said(pages, "hazard") == ["Radium", "Lead"]
    assert said(pages, "container-number") == ["Box B-042", "Box B-042"]


def test_states_are_told_together_and_apart() -> None:
    """One word where all are known alike, else how many of each, and which is which."""
    alike = [replace(one, hazards=(hazard("lead"),)) for one in (ONE, TWO)]
    assert said(warning_pages(packing(alike), MIDDLE, REAL), "state") == ["confirmed"]
    apart = [alike[0], replace(TWO, hazards=(hazard("lead", HazardState.UNCHECKED),))]
    pages = warning_pages(packing(apart), MIDDLE, REAL)
    assert said(pages, "state") == ["1 confirmed, 1 not checked"]
    assert said(pages, "check") == ["Confirmed · check not dated", "Not checked"]


def test_a_discreet_label_says_only_whom_to_ask() -> None:
    """Neither what it is nor which object."""
    record = replace(ONE, hazards=(hazard("ammunition"),))
    pages = warning_pages(packing([record]), SMALL)
    role = MUSEUM.questions.role
    assert (said(pages, "hazard"), said(pages, "instruction")) == (["Do not open"], [f"Ask {role}"])
    assert numbers(pages) == said(pages, "state") == said(pages, "title") == []


@pytest.mark.parametrize("number", ["PMM.2026.0042.17/3a-c (bis) and a very long tail", "W" * 60])
def test_a_long_number_is_whole(number: str) -> None:
    """It takes more lines, and the name beside it stays beside it."""
    record = replace(ONE, object_number=number, title="خريطة بحرية", hazards=(hazard("lead"),))
    place = PlaceRecord(number, layer=2, compartment="B3")
    made = packing([record, TWO], places=[place, PlaceRecord(TWO.object_number)])
    pages = warning_pages(made, MIDDLE, REAL)
    assert "".join(numbers(pages)).replace(" ", "") == number.replace(" ", "")
    assert _faults(pages) == []


def test_the_name_is_read_from_a_step_away() -> None:
    """NUREG-0700, item 1.3.1-4: 16 arc minutes at a metre are 4.65 mm, for all but long names."""
    for code in ("lead", "radium", "mercury-liquid", "nitrate-film"):
        pages = warning_pages(packing([replace(ONE, hazards=(hazard(code),))]), SMALL, REAL)
        (name,) = texts(pages, "hazard")
        assert caps_mm(name.style.size_pt) >= 4.65


def test_words_without_room_are_refused() -> None:
    """A label too small for its words is not printed."""
    record = replace(ONE, hazards=(hazard("lead"),))
    with pytest.raises(DoesNotFitError):
        warning_pages(packing([record]), Size(63.5, 38.1), PLAIN)
