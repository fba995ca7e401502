"""What another reader extracts from a face is what the page says, line after line.

The glyphs prove what is printed; this proves what is found by a search, copied, or read aloud.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from service.geometry import Rect
from service.render.proof.places import at
from service.render.proof.text.lines import Line
from service.render.proof.text.spelling import is_shaped, plain

_KEPT_LINES = 4096
_plain_line = lru_cache(_KEPT_LINES)(plain)
"""Labels repeat many lines."""


def extract_faults(text: str, lines: Sequence[Line]) -> Iterator[str]:
    """Say which lines an extracted text lacks, and what it has besides; `lines` as they are drawn.

    Blanks do not count, for a reader adds its own. Lines that are shaped come back in many orders
    and spellings, and so does what stands beside them: they are passed over here.
    """
    read = plain(text)
    wanted = [_plain_line(line.text) for line in lines]
    if len(read) == sum(map(len, wanted)) and all(one in read for one in wanted):
        return
    shaped = [line.rect for line in lines if is_shaped(line.text)]
    # The longest first, so that no short line is found inside a long one.
    for one, line in sorted(zip(wanted, lines, strict=True), key=lambda pair: -len(pair[0])):
        if any(_is_beside(line.rect, other) for other in shaped):
            continue
        if one in read:
            read = read.replace(one, "\0", 1)
        else:
            yield f"the {line.block.purpose} {line.text!r} cannot be searched for, {at(line.rect)}"
    rest = read.replace("\0", "")
    if rest and not shaped:
        yield f"{rest[:60]!r} is found by a search, but no block asks for it"


def _is_beside(one: Rect, other: Rect) -> bool:
    """Tell whether two lines share a height, so that a reader may take them for one."""
    return one.y_mm < other.bottom_mm and other.y_mm < one.bottom_mm
