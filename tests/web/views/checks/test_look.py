from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX, SPIKE
from tests.web.views.opened import show


def test_what_to_know_comes_before_what_to_do(client: httpx.Client) -> None:
    """Number, objects, warnings, then the looks with three answers each, none chosen."""
    page = show(client, f"/checks/look?container={BOX}")
    order = [f"<b>{BOX}</b>", SPIKE, "Before you touch it", 'name="pests"', "Looked at before"]
    assert sorted(order, key=page.index) == order
    assert page.count('name="pests"') == 3
    assert "checked>" not in page


def test_a_number_is_asked_for(client: httpx.Client) -> None:
    """Without one, and again where no container has it, with what was typed."""
    assert 'name="container"' in show(client, "/checks/look")
    page = show(client, "/checks/look?container=B-999", status=404)
    assert 'value="B-999"' in page
    assert "No container has it." in page


def test_an_empty_container_has_no_form(client: httpx.Client) -> None:
    """There is nothing to look for in it."""
    page = show(client, f"/checks/look?container={EMPTY_BOX}")
    assert "Nothing is packed in it" in page
    assert 'action="/checks/note"' not in page


def test_one_button_speaks_of_what_stands_open(client: httpx.Client) -> None:
    """Pests that were found are not wiped away by whoever came for the labels."""
    page = show(client, f"/checks/look?container={BOX}&kind=labels")
    assert 'name="everything" value="labels"' in page
    assert page.index("Look for more") < page.index('name="pests"')
