"""What a reader that cannot see the sheet is told (ISO 32000-1, 14.8: tagged PDF).

Each placed face is one figure whose alternative text is the words of the face, so that they are
read in their own order and script; cut marks are artifacts and are not read at all. The title and
the name of this service are the only things said about the file: no date, no engine, no machine.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

import pikepdf
from pikepdf import Array, Dictionary, Name, String

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


@dataclass(frozen=True, slots=True)
class Figure:
    """A placed face: its words, and left, bottom, right and top of its box in points."""

    alt: str
    box_pt: tuple[float, float, float, float]


class TagTree:
    """The tree of tags of one document, built page by page."""

    def __init__(self, pdf: pikepdf.Pdf) -> None:
        """Begin with an empty document."""
        self._pdf = pdf
        self._root = pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
        self._document = pdf.make_indirect(
            Dictionary(Type=Name.StructElem, S=Name.Document, P=self._root, K=Array())
        )
        self._root.K = self._document
        self._parents: list[pikepdf.Array] = []

    def add_page(self, page: pikepdf.Page, figures: Sequence[Figure]) -> None:
        """Tag a page on which figure n stands in the marked content n."""
        page.obj.StructParents = len(self._parents)
        page.obj.Tabs = Name.S
        elements = Array()
        for number, figure in enumerate(figures):
            element = self._pdf.make_indirect(self._element(page, number, figure))
            elements.append(element)
            self._document.K.append(element)
        self._parents.append(elements)

    def write(self) -> None:
        """Hang the tree into the document."""
        entries = Array()
        for number, elements in enumerate(self._parents):
            entries.append(number)
            entries.append(self._pdf.make_indirect(elements))
        self._root.ParentTree = Dictionary(Nums=entries)
        self._root.ParentTreeNextKey = len(self._parents)
        self._pdf.Root.StructTreeRoot = self._root
        self._pdf.Root.MarkInfo = Dictionary(Marked=True)

    def _element(self, page: pikepdf.Page, number: int, figure: Figure) -> pikepdf.Dictionary:
        box = Array([round(value, 3) for value in figure.box_pt])
        return Dictionary(
            Type=Name.StructElem,
            S=Name.Figure,
            P=self._document,
            Pg=page.obj,
            K=number,
            Alt=String(figure.alt),
            A=Dictionary(O=Name.Layout, BBox=box, Placement=Name.Block),
        )


def describe_document(pdf: pikepdf.Pdf, *, title: str) -> None:
    """Name the document, and ask viewers to show that name and to print at full size."""
    packet = _XMP.format(title=escape(title), producer=PRODUCER)
    pdf.Root.Metadata = pdf.make_stream(
        packet.encode("utf-8"), Type=Name.Metadata, Subtype=Name.XML
    )
    pdf.Root.Lang = String(LANGUAGE)
    pdf.Root.ViewerPreferences = Dictionary(DisplayDocTitle=True, PrintScaling=Name("/None"))
    for key, value in (("Title", title), ("Producer", PRODUCER), ("Creator", PRODUCER)):
        pdf.docinfo[Name("/" + key)] = String(value)
