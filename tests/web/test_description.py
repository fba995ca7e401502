from __future__ import annotations

import json

import httpx
import pytest

from service.web.app import make_app
from service.web.press import Presses
from tests.web.sent import ONE_BOX, running_app


def test_example_can_be_sent(client: httpx.Client) -> None:
    """The example in the description is the sample file, and printing it gives a PDF."""
    document = client.get("/openapi.json").json()
    body = document["paths"]["/api/render"]["post"]["requestBody"]["content"]
    example = body["multipart/form-data"]["example"]
    assert example["records"] == ONE_BOX.read_text(encoding="utf-8")
    files = {"records": (None, example["records"], "application/json")}
    reply = client.post("/api/render", files=files, data={"kind": example["kind"]})
    assert reply.status_code == 200
    assert reply.content.startswith(b"%PDF")


def test_every_reference_is_defined(client: httpx.Client) -> None:
    """No part of the description points to a shape that is not in it."""
    text = client.get("/openapi.json").text
    defined = set(json.loads(text)["components"]["schemas"])
    wanted = {part.split('"')[0] for part in text.split("#/components/schemas/")[1:]}
    assert wanted <= defined
    assert "Problem" in wanted


def test_page_tells_every_path_and_loads_nothing(client: httpx.Client) -> None:
    """The page for people names each path and field and refers to this service only."""
    page = client.get("/docs")
    assert page.headers["content-type"].startswith("text/html")
    for path in client.get("/openapi.json").json()["paths"]:
        assert path in page.text
    assert "<dt><code>container</code></dt>" in page.text
    assert "src=" not in page.text
    assert "://" not in page.text


@pytest.mark.parametrize("host", ["prints.example", "0.0.0.0"])  # noqa: S104 - only a name here
def test_page_is_for_this_machine_only(host: str) -> None:
    """Where others can reach the service, the page is not there."""
    with running_app(make_app(Presses([], patience_seconds=0), host)) as client:
        assert client.get("/docs").status_code == 404
        assert client.get("/openapi.json").status_code == 200
