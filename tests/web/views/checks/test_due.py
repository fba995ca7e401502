from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import show


def test_what_is_due_is_listed_with_its_place(client: httpx.Client) -> None:
    """What was never looked at is overdue; an empty box is not walked to."""
    page = show(client, "/checks")
    assert f"/checks/look?container={BOX}" in page.partition("Overdue")[2]
    assert f"container={EMPTY_BOX}" not in page
    assert "Never checked" in page
    assert 'formaction="/checks/sheet/Letter"' in page


def test_a_choice_goes_along(client: httpx.Client) -> None:
    """Kind, days and place stand in the links and on the sheet; elsewhere nothing is due."""
    page = show(client, "/checks?kind=pests&within=30")
    assert f"/checks/look?container={BOX}&amp;within=30&amp;kind=pests" in page
    assert '<input type="hidden" name="kind" value="pests">' in page
    assert "Pests: never checked" in page
    assert "Nothing is due here" in show(client, "/checks?place=Nowhere")


def test_what_was_found_waits(client: httpx.Client) -> None:
    """It is listed with its note and a way to what is to be done."""
    body = {
        "checked_on": "2026-11-25",
        "results": [{"kind": "pests", "result": "found", "note": "Larvae"}],
    }
    assert client.post(f"/api/containers/{BOX}/checks", json=body).status_code == 201
    page = show(client, "/checks")
    assert ": Larvae" in page
    assert f'href="/checks/pests?container={BOX}"' in page
