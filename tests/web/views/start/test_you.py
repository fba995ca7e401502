from __future__ import annotations

import httpx

from tests.web.views.opened import follow, send, show


def test_a_name_that_cannot_be_written_is_told_beside_its_field(client: httpx.Client) -> None:
    """What was typed stays, and the summary leads to the field."""
    answer = send(client, "/you", "/you", {"name": "  "}, status=422)
    assert 'href="#field-name"' in answer.text
    assert 'aria-invalid="true"' in answer.text


def test_a_language_that_is_not_on_offer_is_not_kept(client: httpx.Client) -> None:
    """The page stays English."""
    follow(client, send(client, "/you", "/you", {"name": "A", "language": "xx"}))
    assert '<html lang="en">' in show(client, "/you")
