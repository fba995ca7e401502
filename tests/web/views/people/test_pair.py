from __future__ import annotations

import re

import httpx

from tests.web.store.people.people import DEE
from tests.web.views.opened import HTML, send, show
from tests.web.views.people.entered import sign_in_as

_CODE = re.compile(r'<b class="code">([^<]+)</b>')


def _make_code(client: httpx.Client) -> str:
    """Make a code as somebody who has signed in, and be nobody again."""
    sign_in_as(client, DEE)
    found = _CODE.search(send(client, "/people/phone", "/people/phone", {}, status=200).text)
    assert found is not None
    client.cookies.clear()
    return found[1]


def test_the_button_signs_in_and_leads_to_packing(staffed: httpx.Client) -> None:
    """Opening the address changes nothing, so that a look ahead of a browser uses nothing up."""
    code = _make_code(staffed)
    for _ in range(2):
        assert f'value="{code}"' in show(staffed, f"/pair/{code}")
    assert "underlid" not in staffed.cookies
    answer = send(staffed, f"/pair/{code}", "/pair", {"code": code.lower()})
    assert answer.headers["location"] == "/pack"
    assert "Signed in as <b>Dee Vane</b>" in show(staffed, "/you")


def test_a_code_is_used_once(staffed: httpx.Client) -> None:
    """The second is told beside the field, and nobody is signed in."""
    code = _make_code(staffed)
    send(staffed, "/pair", "/pair", {"code": code})
    staffed.cookies.clear()
    answer = send(staffed, "/pair", "/pair", {"code": code}, status=422)
    assert 'id="fault-code"' in answer.text
    assert staffed.get("/you", headers=HTML).status_code == 303


def test_codes_are_not_guessed(staffed: httpx.Client) -> None:
    """An address may try five a minute."""
    for number in range(5):
        send(staffed, "/pair", "/pair", {"code": str(number)}, status=422)
    send(staffed, "/pair", "/pair", {"code": "5"}, status=429)
