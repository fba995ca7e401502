from __future__ import annotations

import httpx
import pytest

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import show


def test_the_list_tells_what_lies_in_each(client: httpx.Client) -> None:
    """In natural order, with the number of objects."""
    page = show(client, "/containers")
    assert page.index(BOX) < page.index(EMPTY_BOX)
    assert "nothing packed</span>" in page
    assert "9 objects</span>" in page


def test_the_list_is_narrowed(client: httpx.Client) -> None:
    """By words and by state; what is asked for stays in its fields."""
    page = show(client, "/containers?q=spare")
    assert f"<b>{EMPTY_BOX}</b>" in page
    assert f"<b>{BOX}</b>" not in page
    assert 'name="q" value="spare"' in page
    empty = show(client, "/containers?state=empty")
    assert f"<b>{EMPTY_BOX}</b>" in empty
    assert f"<b>{BOX}</b>" not in empty
    assert "None is like that." in show(client, "/containers?state=swap")
    assert f"<b>{BOX}</b>" in show(client, "/containers?state=nonsense&order=nonsense")


def test_as_one_walks_each_place_stands_once(client: httpx.Client) -> None:
    """What has no place of its own comes last."""
    page = show(client, "/containers?order=walk")
    assert page.index("<h2>Long Store") < page.index("<h2>No place of their own")
    assert page.index(BOX) < page.index(EMPTY_BOX)


@pytest.mark.slow
def test_a_long_list_goes_on(client: httpx.Client) -> None:
    """Each container is on one page, and the last page leads no further."""
    for number in range(70):
        record = {"container_number": f"C-{number}", "kind": "box"}
        assert client.post("/api/containers", json={"record": record}).status_code == 201
    first = show(client, "/containers?state=empty")
    link = first.split('href="/containers?state=empty&amp;after=')[1].split('"')[0]
    second = show(client, f"/containers?state=empty&after={link}")
    assert "C-0<" in first
    assert "C-69<" in second
    assert "C-0<" not in second
    assert "after=" not in second
