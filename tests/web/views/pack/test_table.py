from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import show


def test_the_table_shows_form_and_contents(client: httpx.Client) -> None:
    """The form asks for what the packing table is to ask for; each may stay empty."""
    page = show(client, f"/pack/table?container={BOX}")
    for name in ("object_number", "photo", "gallery", "layer", "title", "hazard", "hazard_state"):
        assert f'name="{name}"' in page
    assert 'capture="environment"' in page
    assert "Not known" in page
    assert "In it: " in page
    assert "Nothing yet." in show(client, f"/pack/table?container={EMPTY_BOX}")


def test_another_side_keeps_number_and_layer(client: httpx.Client) -> None:
    """The link of a thing that lies there fills the form."""
    page = show(client, f"/pack/table?container={BOX}&object=X.112&role=back&layer=3")
    assert 'name="object_number" value="X.112"' in page
    assert 'value="back" checked' in page
    assert 'value="3"' in page


def test_an_unknown_container_is_asked_for(client: httpx.Client) -> None:
    """So is one that is not named."""
    assert "What are you packing?" in show(client, "/pack/table?container=none", status=404)
    assert "What are you packing?" in show(client, "/pack/table")
