from __future__ import annotations

import io

import pikepdf
import pytest

from service.geometry import Size
from service.render.compose.document import Document
from service.render.compose.literals import text_literal
from service.render.compose.structure import TagTree
from tests.render.compose.made_plates import opened

BOX = (10.0, 20.0, 30.0, 40.0)
LOWER = (10.0, 0.0, 30.0, 20.125)


def tagged(*pages: list[tuple[tuple[float, float, float, float], str]]) -> pikepdf.Pdf:
    """Write a file of tagged pages without ink."""
    target = io.BytesIO()
    document = Document(target)
    tags = TagTree(document.writer)
    for figures in pages:
        number = document.begin_page()
        entries = tags.add_page(number, [(box, text_literal(alt)) for box, alt in figures])
        document.write_page(Size(100.0, 60.0), b"", [], entries=entries)
    document.close(title="tags", entries=tags.write())
    return opened(target.getvalue())


def test_each_face_is_one_figure_with_its_words() -> None:
    """Figures hang below the document in order, each on its page and in its marked content."""
    with tagged([(BOX, "B-042, ثقيل")], [(BOX, "B-043"), (LOWER, "B-044")]) as pdf:
        root = pdf.Root.StructTreeRoot
        document = root.K
        assert str(document.S) == "/Document"
        assert document.P.objgen == root.objgen
        assert [str(one.Alt) for one in document.K] == ["B-042, ثقيل", "B-043", "B-044"]
        assert {str(one.S) for one in document.K} == {"/Figure"}
        assert {one.P.objgen for one in document.K} == {document.objgen}
        assert [int(one.K) for one in document.K] == [0, 0, 1]
        pages = [pdf.pages[n].obj.objgen for n in (0, 1, 1)]
        assert [one.Pg.objgen for one in document.K] == pages
        assert pdf.Root.MarkInfo.Marked


def test_each_page_leads_back_to_its_figures() -> None:
    """The parent tree names, for each page, the figure of each marked content (14.7.4.4)."""
    with tagged([(BOX, "one")], [(BOX, "two"), (LOWER, "three")]) as pdf:
        tree = pikepdf.NumberTree(pdf.Root.StructTreeRoot.ParentTree)
        said = [
            [str(one.Alt) for one in tree[int(page.obj.StructParents)].as_list()]
            for page in pdf.pages
        ]
        assert said == [["one"], ["two", "three"]]
        assert int(pdf.Root.StructTreeRoot.ParentTreeNextKey) == 2
        assert {str(page.obj.Tabs) for page in pdf.pages} == {"/S"}


def test_figures_at_the_same_place_share_what_says_so() -> None:
    """Sheets of labels say each place once (14.8.5.4: layout attributes)."""
    with tagged([(BOX, "one"), (LOWER, "two")], [(BOX, "three")]) as pdf:
        first, second, third = (one.A for one in pdf.Root.StructTreeRoot.K.K)
        assert first.objgen == third.objgen != second.objgen
        assert [float(side) for side in second.BBox] == pytest.approx(list(LOWER))
        assert (str(first.O), str(first.Placement)) == ("/Layout", "/Block")
