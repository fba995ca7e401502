from __future__ import annotations

import httpx

from tests.web.store.opened import EMPTY_BOX, SPIKE
from tests.web.views.opened import show


def test_numbers_are_suggested_for_fields_and_as_a_page(client: httpx.Client) -> None:
    """Options for a script to fill in, links without one."""
    page = show(client, "/suggest?q=1931.14.7")
    assert f'<option value="{SPIKE}">' in page
    assert f'href="/objects/{SPIKE}"' in page


def test_containers_are_suggested(client: httpx.Client) -> None:
    """By their titles as well."""
    page = show(client, "/suggest?q=spare&of=containers")
    assert f'href="/containers/{EMPTY_BOX}"' in page
    assert "Nothing begins so." in show(client, "/suggest?q=zzz&of=containers")
