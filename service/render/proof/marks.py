"""Every mark shows something: its drawing is looked at once, for plates are proved without it."""

from __future__ import annotations

import io
import zlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path

from service.geometry import Rect, Size
from service.render.compose.sheets import Parts, write_faces
from service.render.plates.plate import Plate
from service.render.raster import draw_dots, opened
from service.units import points_from_mm

_SIDE_MM = 10.0
_DOTS_PER_MM = 8
_LEAST_INK_RATIO = 0.05
"""Less of the square inked than this is a blank or a speck; marks we ship have a fifth or more."""
_DARK = b"\1" * 128 + bytes(128)
"""Whether a tone is nearer to ink than to paper."""
_FACE = Rect(0.0, 0.0, _SIDE_MM, _SIDE_MM)


class MarkProof:
    """Looks at drawings of marks, and remembers which it has seen."""

    def __init__(self, fonts: Sequence[tuple[str, Path]]) -> None:
        """Take what a file of faces is written with, though a mark names no font."""
        self._fonts = fonts
        self._sound: dict[str, bytes] = {}

    def faults(self, codes: Iterable[str], marks: Mapping[str, bytes]) -> dict[str, str]:
        """Say what is wrong with the drawings of these marks, by their codes."""
        unseen = [code for code in set(codes) if self._sound.get(code) != marks[code]]
        if not unseen:
            return {}
        found = dict(zip(unseen, self._inked_ratios(unseen, marks), strict=True))
        self._sound |= {code: marks[code] for code in unseen if found[code] >= _LEAST_INK_RATIO}
        return {
            code: f"the drawing of the mark {code} shows {ratio:.0%} of ink"
            for code, ratio in found.items()
            if ratio < _LEAST_INK_RATIO
        }

    def _inked_ratios(self, codes: Sequence[str], marks: Mapping[str, bytes]) -> Iterator[float]:
        """Draw each mark alone, and give how much of its square is dark."""
        target = io.BytesIO()
        parts = Parts(lambda _sha256: b"", marks.__getitem__, self._fonts)
        write_faces(target, [_plate(code) for code in codes], parts)
        with opened(target.getvalue()) as file:
            for page in file:
                memory = draw_dots(page, _FACE, dots_per_mm=_DOTS_PER_MM).memory
                yield memory.translate(_DARK).count(1) / len(memory)


def _plate(code: str) -> Plate:
    side_pt = points_from_mm(_SIDE_MM)
    content = f"q {side_pt:.3f} 0 0 {side_pt:.3f} 0 0 cm /M{code} Do Q".encode("latin-1")
    return Plate(Size(_SIDE_MM, _SIDE_MM), zlib.compress(content), (), (), (code,), "")
