from __future__ import annotations

import httpx

from tests.web.store.opened import BOX, SPIKE
from tests.web.views.contents.packed import SPIKE_KEY, change
from tests.web.views.opened import show

PAGE = f"/history/container/{BOX}"


def test_every_revision_is_told_with_what_it_changed(client: httpx.Client) -> None:
    """Who, when, why; an old one is shown as it was and can be packed again."""
    change(client, "/contents/take-out", {"reason": "To display <b>"}, key=SPIKE_KEY)
    page = show(client, PAGE)
    assert page.index("Revision 2") < page.index("Revision 1")
    assert "To display &lt;b&gt;" in page
    assert "<br>Ada Quill" in page
    newest = page.split("Revision 2")[1].split("</ul>")[0]
    assert "taken out:" in newest
    assert SPIKE in newest
    then = show(client, f"{PAGE}?revision=1").split('id="then"')[1].split("</section>")[0]
    assert SPIKE in then
    assert 'name="to" value="1"' in then
    assert 'name="to"' not in show(client, f"{PAGE}?revision=2")


def test_a_changed_record_is_told_field_by_field(client: httpx.Client) -> None:
    """In the words of its form."""
    old = client.get(f"/api/containers/{BOX}")
    record = old.json()["record"] | {"gross": {"weight_g": 6200.0}}
    headers = {"If-Match": old.headers["etag"]}
    client.put(f"/api/containers/{BOX}", json={"record": record}, headers=headers)
    assert "6.2 kg" in show(client, PAGE)


def test_checks_and_slips_are_told(client: httpx.Client) -> None:
    """With what was found, and who has it."""
    body = {"checked_on": "2026-11-20", "results": [{"kind": "pests", "result": "found"}]}
    assert client.post(f"/api/containers/{BOX}/checks", json=body).status_code == 201
    change(client, "/contents/out", {"to_whom": "R. Vane"}, key=SPIKE_KEY)
    page = show(client, PAGE)
    assert "Pests: found" in page
    assert "R. Vane" in page


def test_what_is_not_there_is_not_found(client: httpx.Client) -> None:
    """Neither a container nor a revision."""
    show(client, "/history/container/B-999", status=404)
    show(client, f"{PAGE}?revision=99", status=404)
