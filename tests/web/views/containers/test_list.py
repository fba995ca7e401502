from __future__ import annotations

import httpx
import pytest

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import show


def test_the_list_tells_what_lies_in_each(client: httpx.Client) -> None:
    """In natural order, with the number of objects."""
    page = show(client, "/containers")
    assert page.index(BOX) < page.index(EMPTY_BOX)
    assert "nothing packed" in page
    assert " objects</span>" in page


@pytest.mark.slow
def test_a_long_list_goes_on(client: httpx.Client) -> None:
    """Each container is on one page, and the last page leads no further."""
    for number in range(70):
        record = {"container_number": f"C-{number}", "kind": "box"}
        assert client.post("/api/containers", json={"record": record}).status_code == 201
    first = show(client, "/containers")
    link = first.split('href="/containers?after=')[1].split('"')[0]
    second = show(client, f"/containers?after={link}")
    assert "C-0<" in first
    assert "C-69<" in second
    assert "C-0<" not in second
    assert "?after=" not in second
