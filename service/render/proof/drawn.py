"""Photos, marks and symbols stand where the page wants them, and none stands anywhere else."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from service.geometry import Rect
from service.pages.page import MarkBlock, Page, PictureBlock, SymbolBlock
from service.render.plates.plate import PictureUse
from service.render.proof.ink import FaceInk
from service.render.proof.places import at
from service.render.proof.standin import TONE
from service.render.proof.symbols import modules_rect
from service.render.reading.content import Drawn

_ROUNDING_MM = 0.1
_STRETCH_MM = 0.05
"""A picture's sides may be off by this much before it counts as stretched."""
_LEAST_PICTURE_RATIO = 0.9
"""A picture fills its frame in one direction at least; the rest is rounding and hairlines."""
_PICTURE, _MARK = "P", "M"


class DrawnProof:
    """What one plate draws by name against the blocks of its page."""

    def __init__(
        self, drawn: Sequence[Drawn], pictures: Sequence[PictureUse], ink: FaceInk
    ) -> None:
        """Take what is drawn, the pictures it may draw, and what is seen of it."""
        self._left = list(drawn)
        self._pictures = pictures
        self._ink = ink

    def faults(self, page: Page) -> Iterator[str]:
        """Say what is missing, spoiled, or was never asked for."""
        for block in page.blocks:
            if isinstance(block, PictureBlock) and block.photo:
                yield from self._picture_faults(block)
            elif isinstance(block, MarkBlock):
                yield from self._mark_faults(block)
            elif isinstance(block, SymbolBlock):
                # Whether it is the right one, and whole, is for `symbols` to say.
                self._take("", modules_rect(block), fills=True)
        for drawn in self._left:
            name = drawn.name or "a symbol"
            yield f"{name!r} is drawn where no block asks for it, {at(drawn.rect)}"

    def _picture_faults(self, block: PictureBlock) -> Iterator[str]:
        here = f"the photo {block.photo}"
        found = self._take(_PICTURE, block.rect, fills=False)
        if found is None:
            yield f"{here} is not printed in its frame {at(block.rect)}"
        else:
            if not self._is_in_shape(found):
                yield f"{here} is stretched {at(found.rect)}"
            yield from self._spoiled(here, found)

    def _mark_faults(self, block: MarkBlock) -> Iterator[str]:
        here = f"the mark {block.mark}"
        found = self._take(_MARK + block.mark, block.rect, fills=True)
        if found is None:
            yield f"{here} is not printed {at(block.rect)}"
        else:
            yield from self._spoiled(here, found)

    def _take(self, name: str, frame: Rect, *, fills: bool) -> Drawn | None:
        """Find what is drawn in a frame, and take it away; a photo's name is any number."""
        for index, drawn in enumerate(self._left):
            is_called = drawn.name == name or (name == _PICTURE and drawn.name[:1] == _PICTURE)
            if is_called and _stands_in(drawn.rect, frame, fills=fills):
                return self._left.pop(index)
        return None

    def _is_in_shape(self, drawn: Drawn) -> bool:
        """Tell whether a picture has the proportions of its file."""
        number = int(drawn.name[1:]) if drawn.name[1:].isdigit() else len(self._pictures)
        if number >= len(self._pictures):
            return False
        use, rect = self._pictures[number], drawn.rect
        return abs(rect.width_mm * use.height_px / use.width_px - rect.height_mm) <= _STRETCH_MM

    def _spoiled(self, here: str, drawn: Drawn) -> Iterator[str]:
        if not self._ink.is_plain(drawn.rect, TONE):
            yield f"{here} is covered or printed over {at(drawn.rect)}"


def _stands_in(rect: Rect, frame: Rect, *, fills: bool) -> bool:
    """Tell whether a rectangle lies in a frame, and is as large in one direction, or in both."""
    shares = (rect.width_mm / frame.width_mm, rect.height_mm / frame.height_mm)
    share = min(shares) if fills else max(shares)
    return frame.holds(rect, tolerance_mm=_ROUNDING_MM) and share >= _LEAST_PICTURE_RATIO
