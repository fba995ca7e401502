"""A file's pages, and what it says of itself: its title and the name of this service.

No date, no engine, no machine. Viewers are asked to show the title and to print at full size.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterable
from functools import lru_cache
from typing import BinaryIO
from xml.sax.saxutils import escape

from service.geometry import Size
from service.render.compose.literals import references, text_literal
from service.render.compose.place import written
from service.render.compose.writer import PdfWriter
from service.units import points_from_mm

PRODUCER = "Underlid"
LANGUAGE = "en"

_XMP = """<?xpacket begin="\N{BYTE ORDER MARK}" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<pdf:Producer>{producer}</pdf:Producer><xmp:CreatorTool>{producer}</xmp:CreatorTool>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>"""


class Document:
    """The pages of a file that is being written."""

    def __init__(self, target: BinaryIO) -> None:
        """Begin without a page."""
        self.writer = PdfWriter(target)
        self._parent = self.writer.reserve()
        self._pages = array("L")

    def begin_page(self) -> int:
        """Give the number of the next page, so that others may point to it already."""
        self._pages.append(self.writer.reserve())
        return self._pages[-1]

    def write_page(
        self, size: Size, content: bytes, forms: Iterable[int], *, entries: bytes = b""
    ) -> None:
        """Write the page begun last; its content calls the form of object n `/Xn`."""
        stream = self.writer.add_deflated(b"", content)
        names = b"".join(b"/X%d %d 0 R" % (number, number) for number in forms)
        self.writer.add(
            b"<</Type/Page/Parent %d 0 R/MediaBox[%b]/Contents %d 0 R"
            b"/Resources<</XObject<<%b>>>>%b>>"
            % (self._parent, box_of(size), stream, names, entries),
            number=self._pages[-1],
        )

    def close(self, *, title: str, entries: bytes = b"") -> None:
        """Finish the file; `entries` are added to its catalog."""
        writer = self.writer
        writer.add(
            b"<</Type/Pages/Count %d/Kids%b>>" % (len(self._pages), references(self._pages)),
            number=self._parent,
        )
        # Left as it is: programs look for it without reading the rest of the file.
        metadata = writer.add_stream(b"/Type/Metadata/Subtype/XML", xmp_packet(title))
        catalog = writer.add(
            b"<</Type/Catalog/Pages %d 0 R/Metadata %d 0 R/Lang%b"
            b"/ViewerPreferences<</DisplayDocTitle true/PrintScaling/None>>%b>>"
            % (self._parent, metadata, text_literal(LANGUAGE), entries)
        )
        name = text_literal(PRODUCER)
        info = writer.add(b"<</Title%b/Producer%b/Creator%b>>" % (text_literal(title), name, name))
        writer.close(catalog=catalog, info=info)


def xmp_packet(title: str) -> bytes:
    """Write the title and the name of this service as XMP (ISO 16684-1)."""
    return _XMP.format(title=escape(title), producer=PRODUCER).encode("utf-8")


@lru_cache(maxsize=64)
def box_of(size: Size) -> bytes:
    """Write left, bottom, right and top of a sheet or face in points."""
    sides = (0.0, 0.0, points_from_mm(size.width_mm), points_from_mm(size.height_mm))
    return written(sides).encode("ascii")
