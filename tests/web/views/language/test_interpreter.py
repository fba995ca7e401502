from __future__ import annotations

from pathlib import Path

import httpx
import pytest

from tests.web.views.language.pseudo import CODE, bracketed
from tests.web.views.opened import HTML

BRACKETED = f'<html lang="{CODE}">'


@pytest.mark.parametrize(
    ("accepted", "is_bracketed"),
    [(CODE, True), (f"en;q=0.5,{CODE}", True), (f"en,{CODE};q=0.5", False), ("tlh", False)],
)
def test_a_page_speaks_what_the_browser_prefers(
    client: httpx.Client,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    accepted: str,
    is_bracketed: bool,  # noqa: FBT001 - a case
) -> None:
    """The best of what is on offer, else English; a page that is not there speaks too."""
    with bracketed(tmp_path, monkeypatch):
        for path in ("/", "/containers/B-999", "/no-such-page"):
            page = client.get(path, headers=HTML | {"Accept-Language": accepted})
            assert (BRACKETED in page.text) is is_bracketed


def test_what_was_chosen_counts_for_more(
    client: httpx.Client, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The cookie of this browser wins over what it prefers."""
    with bracketed(tmp_path, monkeypatch):
        client.cookies.set("underlid-language", CODE)
        page = client.get("/", headers=HTML | {"Accept-Language": "en"})
    assert BRACKETED in page.text
    assert "No specialist has reviewed this translation yet." in page.text
    assert "No specialist" not in client.get("/", headers=HTML | {"Accept-Language": "en"}).text


def test_programs_are_answered_in_english(
    client: httpx.Client, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The words of the API are those of its description, whatever a browser prefers."""
    with bracketed(tmp_path, monkeypatch):
        answer = client.get("/api/containers/B-999", headers={"Accept-Language": CODE})
    assert answer.json()["detail"] == "There is no container 'B-999'."
    assert "⟦" not in answer.text


def test_scripts_of_pages_are_answered_in_the_language_of_the_page(
    client: httpx.Client, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """They show what they are told."""
    with bracketed(tmp_path, monkeypatch):
        answer = client.get("/no-such-page", headers={"Accept-Language": CODE})
    assert answer.json()["advice"] == "⟦Look the path up in /openapi.json.⟧"


def test_no_cache_mixes_languages(client: httpx.Client) -> None:
    """A page says what it depends on, and asks not to be kept."""
    for path in ("/", "/c/B-027"):
        headers = client.get(path, headers=HTML).headers
        assert {"accept-language", "cookie"} <= {*headers["vary"].lower().split(", ")}
        assert headers["cache-control"] == "no-store"
