from __future__ import annotations

from pathlib import Path

import httpx

from service.pipeline.ready import Workshop
from tests.web.store.opened import open_client
from tests.web.store.people.people import DEE, add_people
from tests.web.views.opened import follow, send, show
from tests.web.views.people.entered import sign_in_as


def test_a_name_that_cannot_be_written_is_told_beside_its_field(client: httpx.Client) -> None:
    """What was typed stays, and the summary leads to the field."""
    answer = send(client, "/you", "/you", {"name": "  "}, status=422)
    assert 'href="#field-name"' in answer.text
    assert 'aria-invalid="true"' in answer.text


def test_a_language_that_is_not_on_offer_is_not_kept(client: httpx.Client) -> None:
    """The page stays English."""
    follow(client, send(client, "/you", "/you", {"name": "A", "language": "xx"}))
    assert '<html lang="en">' in show(client, "/you")


def test_whoever_has_signed_in_has_a_name_already(tmp_path: Path, workshop: Workshop) -> None:
    """Only the language is asked for, and the password is a step away."""
    folder = tmp_path / "new"
    with open_client(folder, workshop) as client:
        add_people(folder)
        client.headers["Origin"] = str(client.base_url).rstrip("/")
        sign_in_as(client, DEE)
        page = show(client, "/you")
        assert 'id="field-name"' not in page
        assert 'href="/people/password"' in page
        answer = send(client, "/you", "/you", {"name": "Somebody Else", "language": "en"})
        assert "Signed in as <b>Dee Vane</b>" in follow(client, answer)
        assert "underlid-name" not in client.cookies
