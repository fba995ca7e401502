from __future__ import annotations

from pathlib import Path

import httpx

from tests.web.store.cards.test_swap_list import make_one_wrong
from tests.web.store.examples import add_run
from tests.web.store.opened import BOX
from tests.web.views.opened import show


def test_old_and_new_stand_side_by_side(client: httpx.Client, tmp_path: Path) -> None:
    """With where it is and why; the same is to be had on paper, of either size."""
    assert "tells the truth" in show(client, "/print/swap-list")
    add_run(tmp_path / "data")
    make_one_wrong(client)
    page = show(client, "/print/swap-list")
    assert f'href="/containers/{BOX}"' in page
    assert "comes off" in page
    assert "Pilots&#39; gear" in page
    for paper in ("A4", "Letter"):
        answer = client.get(f"/print/swap-list/{paper}.pdf")
        assert answer.content.startswith(b"%PDF")
    assert client.get("/print/swap-list/A9.pdf").status_code == 422
