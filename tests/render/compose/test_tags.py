from __future__ import annotations

import io
from xml.etree import ElementTree as ET

import pikepdf
from pikepdf import Name

from service.render.compose.tags import Figure, TagTree, describe_document

BOX = (10.0, 20.0, 30.0, 40.0)


def test_each_face_is_one_figure_with_its_words() -> None:
    """Figures hang below the document in order, and each page leads back to its own."""
    with pikepdf.new() as pdf:
        tree = TagTree(pdf)
        for alts in (["B-042, ثقيل"], ["B-043", "B-044"]):
            page = pdf.add_blank_page()
            tree.add_page(page, [Figure(alt, BOX) for alt in alts])
        tree.write()
        document = pdf.Root.StructTreeRoot.K
        assert [str(one.Alt) for one in document.K] == ["B-042, ثقيل", "B-043", "B-044"]
        assert {str(one.S) for one in document.K} == {"/Figure"}
        assert [int(one.K) for one in document.K] == [0, 0, 1]
        assert [float(side) for side in document.K[0].A.BBox] == list(BOX)
        numbers = pdf.Root.StructTreeRoot.ParentTree.Nums
        assert (
            [int(pdf.pages[n].obj.StructParents) for n in (0, 1)]
            == [0, 1]
            == [
                int(str(numbers[0])),
                int(str(numbers[2])),
            ]
        )
        assert numbers[3][1].objgen == document.K[2].objgen
        assert pdf.Root.MarkInfo.Marked


def test_the_file_tells_its_title_and_nothing_of_its_making() -> None:
    """Title in both places, our name alone, no date; viewers show the title and print full size."""
    with pikepdf.new() as pdf:
        pdf.add_blank_page()
        describe_document(pdf, title="Lid cards <B> & more")
        data = io.BytesIO()
        pdf.save(data)
    with pikepdf.open(data) as pdf:
        assert {key: str(value) for key, value in pdf.docinfo.items()} == {
            "/Title": "Lid cards <B> & more",
            "/Producer": "Underlid",
            "/Creator": "Underlid",
        }
        packet = pdf.Root.Metadata.read_bytes().decode("utf-8")
        assert "Lid cards <B> & more" in "".join(ET.fromstring(packet).itertext())  # noqa: S314 - ours.
        assert "Date" not in packet
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        assert pdf.Root.ViewerPreferences.PrintScaling == Name("/None")
        assert str(pdf.Root.Lang) == "en"
