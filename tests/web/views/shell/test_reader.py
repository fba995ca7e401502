from __future__ import annotations

import httpx
import pytest

from tests.web.views.opened import HTML, send, show


def test_a_form_without_its_token_is_refused(client: httpx.Client) -> None:
    """A page of another site can send a form, but it cannot read the token."""
    show(client, "/you")
    for fields in ({"name": "X"}, {"name": "X", "form_token": "guessed"}):
        answer = client.post("/you", data=fields, headers=HTML)
        assert answer.status_code == 403


@pytest.mark.parametrize(
    ("accepted", "language"),
    [("", "en"), ("en-GB,en;q=0.9", "en"), ("xx;q=nothing,*", "en")],
)
def test_pages_speak_the_language_of_the_browser(
    client: httpx.Client, accepted: str, language: str
) -> None:
    """What is not on offer is English."""
    answer = client.get("/you", headers={"Accept-Language": accepted})
    assert f'<html lang="{language}">' in answer.text


def test_a_name_is_kept(client: httpx.Client) -> None:
    """Whoever names themselves is named on every page after that; signs stay signs."""
    send(client, "/you", "/you", {"name": "Zoë <b>Ok"})
    assert "Zoë &lt;b&gt;Ok" in show(client, "/containers")
