from __future__ import annotations

import html
import re

import httpx
import pytest

from service.web.store.cards.wanted import PrintBody
from tests.web.store.opened import BOX
from tests.web.views.opened import send

LABELS = "A4 2x4 99.1x67.7"


@pytest.mark.print
@pytest.mark.slow
def test_every_sheet_is_shown_and_nothing_is_remembered(client: httpx.Client) -> None:
    """Each with its picture and what is on it; what was ticked goes along to the making."""
    wanted = PrintBody(containers=[BOX], kinds=["end-label"]).model_dump_json(exclude_defaults=True)
    fields = {"wanted": wanted, "gone": f"1@{LABELS}"}
    page = send(client, f"/print?containers={BOX}", "/print/look", fields, status=200).text
    picture = re.search(r'<img class="photo" src="([^"]+)"', page)
    assert picture is not None
    assert client.get(html.unescape(picture[1])).headers["content-type"] == "image/png"
    assert f'alt="Sheet 1: {BOX}"' in page
    assert "the sheet that was begun" in page
    assert f'name="gone" value="1@{LABELS}"' in page
    assert 'formaction="/print/sheets"' in page
    assert client.get("/api/prints").json()["runs"] == []


@pytest.mark.slow
def test_too_much_to_look_at_can_still_be_made(client: httpx.Client) -> None:
    """It is said, and the button to make it stays."""
    cards = [{"container_number": f"B-{n}", "kind": "lid-card"} for n in range(1001)]
    wanted = PrintBody.model_validate({"cards": cards}).model_dump_json(exclude_defaults=True)
    page = send(
        client, f"/print?containers={BOX}", "/print/look", {"wanted": wanted}, status=200
    ).text
    assert "Too much to show" in page
    assert "Make the PDFs" in page
