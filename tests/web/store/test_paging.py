from __future__ import annotations

import httpx

from tests.web.sent import problem_of


def test_pages_follow_one_another_by_their_links(client: httpx.Client) -> None:
    """Every object comes once, and the last page links to no other."""
    seen: list[str] = []
    url: str | None = "/api/objects?limit=2"
    while url:
        page = client.get(url)
        seen += [one["object_number"] for one in page.json()["objects"]]
        url = page.links.get("next", {}).get("url")
    everything = client.get("/api/objects").json()["objects"]
    assert seen == [one["object_number"] for one in everything]
    assert len(seen) > 2
    assert problem_of(client.get("/api/objects?limit=0"))["code"] == "unusable-field"
    assert problem_of(client.get("/api/objects?after=x"))["code"] == "cursor"
