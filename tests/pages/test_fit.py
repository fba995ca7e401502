from __future__ import annotations

from service.geometry import Size
from tests.contents.made import A4, A5, GARMENT_COVER, objects, packing
from tests.pages.made import cover_page, end_page, lid_pages, list_pages


def test_every_kind_has_its_fit() -> None:
    """Each kind of card becomes pages of its kind at the size asked for."""
    made = packing(objects(3))
    pages = [
        *lid_pages(made, A5),
        end_page(made, Size(150, 70)),
        cover_page(packing(objects(3), GARMENT_COVER), A5.turned),
        *list_pages(made, A4),
    ]
    assert [page.kind for page in pages] == ["lid-card", "end-label", "cover-card", "contents-list"]
    assert [page.size for page in pages] == [A5, Size(150, 70), A5.turned, A4]
    assert {page.container_number for page in pages} == {"B-042", "G-7"}
