from __future__ import annotations

from array import array
from dataclasses import replace
from pathlib import Path

import pytest

from service.render.plates.plate import FontUse, Plate, ProvedPlate
from service.render.proof.finished.forms import Forms
from service.render.reading.objects import Ref
from service.render.reading.pdf_file import opened_file
from service.sheets.impose import Face, impose_pages
from tests.render.proof.finished.made_file import (
    FACE,
    PARTS,
    composed,
    glyphs_of,
    plate,
    stock,
    use_of,
)

PLATE = plate("B-042", tone=120)
_OWN = PLATE.plate
SHEETS = impose_pages([Face("a1", FACE)], stock())


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Compose a sheet with one face."""
    return composed(tmp_path / "sheets.pdf", SHEETS, {"a1": PLATE})


def _faults(path: Path, wanted: ProvedPlate) -> tuple[list[str], set[int]]:
    """Compare the one form with a plate, and give the glyphs that were met."""
    with opened_file(path) as file:
        page = next(file.pages())
        drawn = file.dictionary(file.dictionary(page["/Resources"])["/XObject"])
        form = next(iter(drawn.values()))
        assert isinstance(form, Ref)
        forms = Forms(file, PARTS)
        faults = list(forms.faults(form.number, wanted))
        return faults, {glyph for _, _, glyphs in forms.glyphs() for glyph in glyphs}


def test_the_plate_itself_has_no_fault(path: Path) -> None:
    """All its glyphs are noted, to be looked at once for the whole file."""
    assert _faults(path, PLATE) == ([], set(glyphs_of("B-042", 0)))


@pytest.mark.parametrize(
    ("other", "fault"),
    [
        (replace(_OWN, content=b"other"), "its instructions are others"),
        (replace(_OWN, fonts=(FontUse(5, array("H", [4]).tobytes(), ("x",)),)), "it has no font 5"),
        (replace(_OWN, pictures=(use_of(99),)), "its picture 1 is another"),
        (replace(_OWN, pictures=(replace(use_of(120), width_px=121),)), "its picture 1 is another"),
        (replace(_OWN, pictures=_OWN.pictures * 2), "its picture 2 is another"),
        (replace(_OWN, size=FACE.turned), "it is 100.00 x 60.00 mm large"),
    ],
)
def test_another_plate_has_faults(path: Path, other: Plate, fault: str) -> None:
    """Each part of a plate is compared."""
    assert fault in _faults(path, replace(PLATE, plate=other))[0]
