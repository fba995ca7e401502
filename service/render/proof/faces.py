"""The proof of plates: nothing leaves unread.

Several plates are written into one file, a page each, and read back by readers that share no code
with what made them: their text and glyphs, fonts, symbols, photos and marks, and how far their ink
reaches. A plate that does not read as its page says is not printed.
"""

from __future__ import annotations

import io
import zlib
from collections.abc import Mapping, Sequence
from functools import lru_cache
from pathlib import Path

import pypdfium2

from service.errors import ProofFailedError
from service.pages.page import Page
from service.render.compose.sheets import Parts, write_faces
from service.render.plates.plate import Plate, PlateProof
from service.render.proof import standin
from service.render.proof.face import FaceProof, page_name
from service.render.proof.marks import MarkProof
from service.render.proof.text.fonts import PlateFonts
from service.render.proof.text.match import LineReader
from service.render.raster import opened
from service.render.reading.fonts import shipped_fonts
from service.render.reading.glyphs import RunReader
from service.render.reading.shaping import Shaper

CLEAR_EDGE_MM = 2.0
"""Nothing is printed nearer to the edge of a face: the slip of a die or a knife; ours."""
_DAMAGE = (zlib.error, ValueError, KeyError, IndexError)
"""What a plate that is none may raise when it is written or read."""

Result = PlateProof | ProofFailedError


def prove_plates(
    plates: Sequence[Plate],
    pages: Sequence[Page],
    marks: Mapping[str, bytes],
    *,
    fonts_folder: Path,
    clear_edge_mm: float = CLEAR_EDGE_MM,
) -> list[Result]:
    """Prove that each plate shows what its page says; gives one result for each.

    `marks` are the drawings of all marks by their codes; fonts are those of `fonts_folder`.
    """
    prover = _prover(fonts_folder, clear_edge_mm)
    try:
        return prover.prove(plates, pages, marks)
    except _DAMAGE as error:
        if len(plates) == 1:
            return [ProofFailedError([f"{page_name(pages[0])}: the plate is damaged: {error!r}"])]
    # One of them cannot even be written: each by itself, so that the others are not lost.
    folder, edge_mm = fonts_folder, clear_edge_mm
    return [
        result
        for pair in zip(plates, pages, strict=True)
        for result in prove_plates(
            pair[:1], pair[1:], marks, fonts_folder=folder, clear_edge_mm=edge_mm
        )
    ]


@lru_cache(maxsize=4)
def _prover(fonts_folder: Path, clear_edge_mm: float) -> _Prover:
    """Keep one for the life of the process, with what it remembers."""
    return _Prover(shipped_fonts(fonts_folder), clear_edge_mm=clear_edge_mm)


class _Prover:
    """Proves one file of plates after another with the same readers."""

    def __init__(self, shipped: Mapping[str, Path], *, clear_edge_mm: float) -> None:
        self._shipped = tuple(shipped.items())
        self._names = tuple(shipped)
        self._clear_edge_mm = clear_edge_mm
        self._shaper = Shaper(shipped)
        self._runs = RunReader(self._names, self._shaper)
        self._lines = LineReader(self._runs, self._shaper)
        self._marks = MarkProof(self._shipped)

    def prove(
        self, plates: Sequence[Plate], pages: Sequence[Page], marks: Mapping[str, bytes]
    ) -> list[Result]:
        """Write the plates into a file and prove each page of it."""
        blank = self._marks.faults((code for plate in plates for code in plate.marks), marks)
        with opened(self._written(plates, marks)) as file:
            if len(file) != len(plates):
                message = f"the file has {len(file)} pages instead of {len(plates)}"
                return [ProofFailedError([message])] * len(plates)
            return [
                self._result(plate, page, shown, blank)
                for plate, page, shown in zip(plates, pages, file, strict=True)
            ]

    def _written(self, plates: Sequence[Plate], marks: Mapping[str, bytes]) -> bytes:
        picture = standin.picture()
        shapes = standin.plain_marks(marks)
        parts = Parts(lambda _sha256: picture, shapes.__getitem__, self._shipped)
        target = io.BytesIO()
        write_faces(target, [standin.with_plain_pictures(plate) for plate in plates], parts)
        return target.getvalue()

    def _result(
        self, plate: Plate, page: Page, shown: pypdfium2.PdfPage, blank: Mapping[str, str]
    ) -> Result:
        face = FaceProof(plate, page, shown, PlateFonts(plate, self._names), self._runs)
        faults = [blank[code] for code in plate.marks if code in blank]
        faults += face.faults(self._lines, self._clear_edge_mm)
        shown.close()
        if faults:
            return ProofFailedError([f"{page_name(page)}: {fault}" for fault in faults])
        return face.result
