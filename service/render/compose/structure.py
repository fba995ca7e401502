"""What a reader that cannot see the sheet is told (ISO 32000-1, 14.8: tagged PDF).

Each placed face is one figure whose alternative text is the words of the face, so that they are
read in their own order and script; cut marks are artifacts and are not read at all.
"""

from __future__ import annotations

from array import array
from collections.abc import Sequence

from service.render.compose.literals import numeral, references
from service.render.compose.writer import PdfWriter

Box = tuple[float, float, float, float]
"""Left, bottom, right and top in points."""

Figure = tuple[Box, bytes]
"""Where a face stands, and its words as a PDF spells them."""


class TagTree:
    """The tree of tags of one file, written page by page."""

    def __init__(self, writer: PdfWriter) -> None:
        """Begin with an empty document."""
        self._writer = writer
        self._root = writer.reserve()
        self._document = writer.reserve()
        self._elements = array("L")
        self._pages = array("L")
        self._attributes: dict[Box, int] = {}

    def add_page(self, page: int, figures: Sequence[Figure]) -> bytes:
        """Tag a page on which figure n stands in the marked content n; give the page's entries."""
        add, document = self._writer.add, self._document
        elements = [
            add(
                b"<</S/Figure/P %d 0 R/Pg %d 0 R/K %d/A %d 0 R/Alt%b>>"
                % (document, page, index, self._attribute(box_pt), alt)
            )
            for index, (box_pt, alt) in enumerate(figures)
        ]
        self._elements.extend(elements)
        self._pages.append(add(references(elements)))
        return b"/StructParents %d/Tabs/S" % (len(self._pages) - 1)

    def write(self) -> bytes:
        """Write the tree; give the entries of the catalog that lead to it."""
        add = self._writer.add
        add(
            b"<</Type/StructElem/S/Document/P %d 0 R/K%b>>"
            % (self._root, references(self._elements)),
            number=self._document,
        )
        leaves = b" ".join(b"%d %d 0 R" % pair for pair in enumerate(self._pages))
        parents = add(b"<</Nums[%b]>>" % leaves)
        add(
            b"<</Type/StructTreeRoot/K %d 0 R/ParentTree %d 0 R/ParentTreeNextKey %d>>"
            % (self._document, parents, len(self._pages)),
            number=self._root,
        )
        return b"/StructTreeRoot %d 0 R/MarkInfo<</Marked true>>" % self._root

    def _attribute(self, box_pt: Box) -> int:
        """Give the object that says where a figure stands; the same place on each sheet is one."""
        number = self._attributes.get(box_pt)
        if number is None:
            sides = b" ".join(map(numeral, box_pt))
            body = b"<</O/Layout/Placement/Block/BBox[%b]>>" % sides
            number = self._attributes[box_pt] = self._writer.add(body)
        return number
