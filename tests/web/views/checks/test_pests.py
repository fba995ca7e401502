from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import show


def test_the_box_is_set_apart_and_its_neighbours_named(client: httpx.Client) -> None:
    """Its label, whom to tell, links to what stands beside it, the rules behind it."""
    page = show(client, f"/checks/pests?container={BOX}")
    assert 'action="/checks/isolation-label/A4"' in page
    assert "Collections desk" in page
    assert 'href="/rules#isolate-pests"' in page
    assert page.index("Before you touch it") < page.index("Set it apart")
    on = show(client, f"/checks/pests?container={BOX}&then={EMPTY_BOX}&within=30")
    assert f"/checks/look?container={EMPTY_BOX}&amp;within=30" in on
    assert "Next on your way" not in page
    page = show(client, f"/checks/pests?container={EMPTY_BOX}")
    assert "Where it stands is not recorded" in page


def test_a_number_is_asked_for(client: httpx.Client) -> None:
    """Without one, and where no container has it."""
    assert "Which container?" in show(client, "/checks/pests")
    assert "No container has it." in show(client, "/checks/pests?container=B-999", status=404)
