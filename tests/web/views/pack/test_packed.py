from __future__ import annotations

import html
import re

import httpx

from tests.web.store.opened import BOX, EMPTY_BOX
from tests.web.views.opened import follow, send, show
from tests.web.views.pack.test_item import FIELDS, post
from tests.web.views.pack.test_undo import fields_of_undo

PAGE = f"/pack/packed/{EMPTY_BOX}"


def tag_of(page: str) -> str:
    """Read the tag of the record that was seen."""
    found = re.search(r'name="tag" value="([^"]+)"', page)
    assert found is not None
    return html.unescape(found[1])


def fields(client: httpx.Client, **typed: str) -> dict[str, str]:
    """Fill the form in."""
    return {"number": EMPTY_BOX, "tag": tag_of(show(client, PAGE)), **typed}


def record(client: httpx.Client) -> dict[str, object]:
    """Read the container."""
    read: dict[str, object] = client.get(f"/api/containers/{EMPTY_BOX}").json()["record"]
    return read


def test_the_summary_tells_what_is_lacking(client: httpx.Client) -> None:
    """Findings of packing, titles and photos to be recorded, and the way to its cards."""
    post(client, FIELDS)
    page = show(client, PAGE)
    assert "2026.3.1 is untitled, to be recorded." in page
    assert "2026.3.1 has no photo yet." in page
    assert f"/print?what=containers&amp;containers={EMPTY_BOX}" in page
    assert show(client, f"/pack/packed/{BOX}")
    show(client, "/pack/packed/none", status=404)


def test_weight_and_packing_are_kept_and_taken_back(client: httpx.Client) -> None:
    """As they were read off the scale and the roll."""
    typed = fields(client, gross_weight="6.2 kg", packing_materials="acid-free tissue\nfoam")
    page = follow(client, send(client, PAGE, "/pack/weigh", typed))
    assert "Weight and packing are kept." in page
    kept = record(client)
    assert kept["gross"] == {"weight_g": 6200.0, "basis": "measured"}
    assert kept["packing_materials"] == ["acid-free tissue", "foam"]
    send(client, PAGE, "/pack/weigh", fields_of(page))
    assert (record(client)["gross"], record(client)["packing_materials"]) == (None, [])


def fields_of(page: str) -> dict[str, str]:
    """Read the form that takes it back."""
    return fields_of_undo(page.replace("/pack/weigh", "/pack/undo", 1))


def test_each_may_be_not_known(client: httpx.Client) -> None:
    """But that has to be said; what is not understood is told beside the field."""
    said = fields(client, weight_unknown="yes", materials_unknown="yes")
    send(client, PAGE, "/pack/weigh", said)
    nothing = send(client, PAGE, "/pack/weigh", fields(client), status=422).text
    assert "or say not known" in nothing
    odd = fields(client, gross_weight="12", materials_unknown="yes")
    assert "has no unit" in send(client, PAGE, "/pack/weigh", odd, status=422).text


def test_what_changed_meanwhile_is_told(client: httpx.Client) -> None:
    """Nobody's weight is overwritten unseen."""
    old = fields(client, gross_weight="6 kg", materials_unknown="yes")
    send(client, PAGE, "/pack/weigh", old)
    assert "changed meanwhile" in send(client, PAGE, "/pack/weigh", old, status=422).text
