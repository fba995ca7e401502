"""Tests for the proof of links: files of the real composer, damaged by another library."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest
from pikepdf import Array, Name, String

from service.errors import ProofFailedError
from service.geometry import Rect
from service.render.plates.plate import Link
from service.render.proof.finished.file import prove_file
from service.sheets.correction import Correction
from service.sheets.impose import Face, Sheet, impose_pages
from tests.render.proof.finished.made_file import (
    FACE,
    PARTS,
    MadePlates,
    composed,
    plate,
    stock,
)

ADDRESS = "https://collections.portmerrow.example/c/B-042"
PLAIN = plate("B-043")
LINKED = replace(
    PLAIN, plate=replace(PLAIN.plate, links=(Link(Rect(60.0, 10.0, 20.0, 20.0), ADDRESS),))
)
PLATES = {"a": LINKED, "b": PLAIN}
FACES = [Face("a", FACE), Face("b", FACE), Face("a", FACE)]
UPRIGHT = impose_pages(FACES, stock())
TURNED = impose_pages(FACES, stock(columns=2, rows=1, label=FACE.turned))
SENT = tuple(replace(one, correction=Correction(1.001, shift_x_mm=0.7)) for one in UPRIGHT)


def faults_of(path: Path, sheets: tuple[Sheet, ...]) -> str:
    """Give the faults the proof finds."""
    try:
        prove_file(path, sheets, MadePlates(PLATES), PARTS)
    except ProofFailedError as error:
        return " ".join(error.faults)
    return ""


@pytest.mark.parametrize("sheets", [UPRIGHT, TURNED, SENT], ids=["upright", "turned", "corrected"])
def test_links_as_they_should_be_are_proved(tmp_path: Path, sheets: tuple[Sheet, ...]) -> None:
    """The composer's own links have no fault."""
    path = composed(tmp_path / "sheets.pdf", sheets, PLATES)
    assert faults_of(path, sheets) == ""
    with pikepdf.open(path) as pdf:
        assert sum(len(page.obj.get(Name.Annots, [])) for page in pdf.pages) == 2


def _elsewhere(pdf: pikepdf.Pdf) -> None:
    rect = pdf.pages[0].obj.Annots[0].Rect
    pdf.pages[0].obj.Annots[0].Rect = Array([float(side) + 0.05 for side in rect.as_list()])


def _to_another(pdf: pikepdf.Pdf) -> None:
    pdf.pages[0].obj.Annots[0].A.URI = String("https://elsewhere.example/c/B-042")


def _to_a_file(pdf: pikepdf.Pdf) -> None:
    pdf.pages[0].obj.Annots[0].A.S = Name.Launch


def _one_too_many(pdf: pikepdf.Pdf) -> None:
    pdf.pages[0].obj.Annots.append(pdf.pages[0].obj.Annots[0])


def _with_a_note(pdf: pikepdf.Pdf) -> None:
    pdf.pages[0].obj.Annots[0].Contents = String("call 555 0199")


def _gone(pdf: pikepdf.Pdf) -> None:
    del pdf.pages[0].obj.Annots


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        (_elsewhere, "stands elsewhere than its symbol"),
        (_to_another, f"a link does not lead to {ADDRESS}"),
        (_to_a_file, f"a link does not lead to {ADDRESS}"),
        (_one_too_many, "links instead of"),
        (_with_a_note, "a link says more than it should"),
        (_gone, "it has 0 links instead of"),
    ],
)
def test_a_changed_link_is_caught(
    tmp_path: Path, change: Callable[[pikepdf.Pdf], None], fault: str
) -> None:
    """A link leads where its symbol leads, and does nothing else."""
    path = composed(tmp_path / "sheets.pdf", UPRIGHT, PLATES)
    with pikepdf.open(path, allow_overwriting_input=True) as pdf:
        change(pdf)
        pdf.save(path, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    assert fault in faults_of(path, UPRIGHT)


BRACKETS = "https://collections.portmerrow.example/items(1)/B-042"


def made_with(link: Link) -> MadePlates:
    """Give the plates, of which the first has this link."""
    return MadePlates({**PLATES, "a": replace(LINKED, plate=replace(LINKED.plate, links=(link,)))})


def test_an_address_with_brackets_is_proved(tmp_path: Path) -> None:
    """Signs that a PDF writes with a backslash are the same address."""
    plates = made_with(Link(Rect(60.0, 10.0, 20.0, 20.0), BRACKETS))
    path = composed(tmp_path / "sheets.pdf", UPRIGHT, plates.proved(["a", "b"]))
    assert prove_file(path, UPRIGHT, plates, PARTS).plates == 2


@pytest.mark.parametrize(
    ("link", "fault"),
    [
        (Link(Rect(60.05, 10.0, 20.0, 20.0), ADDRESS), "stands elsewhere than its symbol"),
        (Link(Rect(60.0, 10.0, 20.0, 20.05), ADDRESS), "stands elsewhere than its symbol"),
        (Link(Rect(60.0, 10.0, 20.0, 20.0), ADDRESS + "1"), f"does not lead to {ADDRESS}"),
        (Link(Rect(60.0, 10.0, 20.0, 20.0), BRACKETS), f"does not lead to {ADDRESS}"),
    ],
    ids=["moved", "larger", "longer", "other"],
)
def test_another_plates_link_is_caught(tmp_path: Path, link: Link, fault: str) -> None:
    """A link is held to the plate that was proved, however usual it looks."""
    plates = made_with(link).proved(["a", "b"])
    path = composed(tmp_path / "sheets.pdf", UPRIGHT, plates)
    assert fault in faults_of(path, UPRIGHT)
