"""What a sheet's instructions draw: faces, then cut marks, and nothing else (ISO 32000-1, 8)."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from service.render.proof.finished.places import Matrix
from service.render.reading.objects import refuse

_NUMBER = rb"[-+]?[.\d]+"
# One face in marked content of its own, or alone.
_FACE = re.compile(
    rb"(?:/Figure\s*<<\s*/MCID\s+\d+\s*>>\s*BDC\s+)?"
    rb"q\s+([-+.\d\s]+)cm\s*(/\w+)\s+Do\s+Q(?:\s+EMC)?(?=\s|\Z)"
)
_MATRIX_NUMBERS = 6
# Black lines of one width.
_LINE = rb"(?:" + _NUMBER + rb"\s+){2}m\s+(?:" + _NUMBER + rb"\s+){2}l\s+"
_MARKS = re.compile(
    rb"\s*(?:/Artifact\s+BMC\s+)?q\s+(?:0\s+G\s+)?(" + _NUMBER + rb")\s+w\s+(?:0\s+G\s+)?"
    rb"((?:" + _LINE + rb")+)S\s+Q(?:\s+EMC)?\s*"
)

Line = tuple[float, float, float, float]
"""From one point to another."""


@dataclass(frozen=True, slots=True)
class Drawing:
    """The faces of a page by the names of their forms, and its lines; all in points."""

    faces: list[tuple[str, Matrix]]
    lines: list[Line]
    width_pt: float


def read_drawing(content: bytes) -> Drawing:
    """Read the instructions of a page; whatever else it paints is a `ValueError`."""
    # Between two faces stands what is no face; then come the numbers and the name of the next.
    parts = _FACE.split(content)
    faces = [
        (name.decode("ascii"), _matrix_of(numbers))
        for numbers, name in zip(parts[1::3], parts[2::3], strict=True)
    ]
    lines, width_pt = _read_lines(b"".join(parts[::3]))
    return Drawing(faces, lines, width_pt)


# Sheets of labels are alike, so most matrices come again on the next.
@lru_cache(maxsize=1024)
def _matrix_of(numbers: bytes) -> Matrix:
    matrix = tuple(map(float, numbers.split()))
    if len(matrix) != _MATRIX_NUMBERS:
        refuse("it places a face by a matrix that is none")
    return matrix


def _read_lines(content: bytes) -> tuple[list[Line], float]:
    if not content.strip():
        return [], 0.0
    marks = _MARKS.fullmatch(content)
    if marks is None:
        refuse(f"it paints something beside faces and marks: {content.strip()[:40]!r}")
    ends = [float(word) for word in marks[2].split() if word not in {b"m", b"l"}]
    return list(zip(*[iter(ends)] * 4, strict=True)), float(marks[1])
