from __future__ import annotations

import httpx

from tests.web.store.people.people import ADA, DEE, enter


def test_managers_read_how_others_come_in(client: httpx.Client) -> None:
    """Where this machine alone is answered there is nothing to type."""
    path = "/api/sharing"
    assert client.get(path, headers=enter(client, DEE)).status_code == 403
    assert client.get(path, headers=enter(client, ADA)).json() == {
        "addresses": [],
        "fingerprint_sha256": "",
        "certificate_ends_at": None,
    }
