"""Every word of a page can be said in another language: whatever is not is found here."""

from __future__ import annotations

from pathlib import Path

import httpx
import pytest

from tests.browser.views import VIEWS
from tests.web.views.language.pseudo import CODE, bracketed, find_unsaid, list_data
from tests.web.views.opened import read_token

LANGUAGE = {"Accept": "text/html", "Accept-Language": CODE}
NOT_FOR_READERS = {"patterns"}
"""The patterns show long words of all sorts to whoever works on pages."""

FORMS: tuple[tuple[str, dict[str, str]], ...] = (
    ("/pack/item", {"container": "B-027", "layer": "0"}),
    ("/pack/item", {"container": "B-027", "object_number": "X.112"}),
    ("/pack/new", {"container_number": "B-027"}),
    ("/new/object", {"weight": "heavy", "dimensions": "x", "number_of_parts": "many"}),
    ("/new/container", {"container_number": "B-1", "lid_size": "large", "gross_weight": "much"}),
    ("/new/container", {"container_number": "B-1", "inside": "B-999"}),
    ("/print/make", {"what": "lacking", "copies": "0"}),
    ("/stocks/keep", {"name": "Own", "page": "A4", "columns": "900", "rows": "9"}),
    ("/printers/measure", {"paper": "A4", "A_across": "x"}),
    ("/printers/address", {"name": "Own", "address": "nowhere"}),
    ("/attach/hold", {"address": "no code"}),
    ("/attach/scanned", {"container_number": "B-027"}),
    ("/attach/run", {"run": "1"}),
    ("/checks/note", {"container": "B-027", "on": "soon"}),
    ("/checks/note", {"container": "B-027", "everything": "pests tissue corrosion labels"}),
    ("/checks/note", {"container": "B-027", "pests": "found"}),
    ("/import", {}),
    ("/people/password", {"current": "x", "password": "y"}),
    ("/people/tokens", {"name": ""}),
    ("/people/add", {"name": "", "password": "short"}),
    ("/contents/put-in", {"container_number": "B-027", "revision": "1", "what": "1931.14.7"}),
    ("/contents/put-in", {"container_number": "B-027", "revision": "1", "what": "zzz"}),
    ("/contents/put-in", {"container_number": "B-028", "revision": "0", "what": "X.112"}),
    (
        "/pack/item",
        {
            "container": "B-027",
            "layer": "1",
            "object_number": "N.2",
            "title": "Case of birds",
            "hazard": "arsenic",
            "hazard_state": "confirmed",
        },
    ),
    ("/you", {"name": "Zoë", "language": ""}),
)
"""Forms, most with something wrong in them: where they go, and what is typed."""

AFTER = (
    *(
        "/",
        "/print?what=reprints",
        "/print/swap-list",
        "/containers/B-027",
        "/containers?state=swap",
    ),
    *(
        "/history/container/B-027",
        "/objects/N.2",
        "/checks",
        "/attach",
        "/run/1",
        "/c/B-027?r=1&k=B",
    ),
    *("/printers", "/stocks", "/contents/slips", "/print?containers=B-027", "/pack/packed/B-027"),
)
"""Pages that tell of what the forms have changed."""


def test_no_word_stays_english(
    printed: httpx.Client, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every page but what the records themselves say, in every state of the list of views."""
    data = list_data(tmp_path / "data" / "store.db")
    found: dict[str, str] = {}
    with bracketed(tmp_path, monkeypatch):
        for view in VIEWS:
            if view.name in NOT_FOR_READERS:
                continue
            page = printed.get(view.address, headers=LANGUAGE)
            assert f'<html lang="{CODE}">' in page.text or "<html" not in page.text, view
            found |= dict.fromkeys(find_unsaid(page.text, data), view.name)
    assert not found, "\n".join(f"{path}: {words}" for words, path in found.items())


def test_no_fault_or_notice_stays_english(
    printed: httpx.Client, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What a form is told, beside its fields or on the page after it."""
    found: dict[str, str] = {}
    printed.headers.update(LANGUAGE)
    with bracketed(tmp_path, monkeypatch):
        token = read_token(printed.get("/you").text)
        for path, fields in FORMS:
            answer = printed.post(path, data=fields | {"form_token": token})
            if answer.has_redirect_location:
                answer = printed.get(answer.headers["location"])
            data = {*list_data(tmp_path / "data" / "store.db"), *fields.values()}
            found |= dict.fromkeys(find_unsaid(answer.text, data), path)
        data = {*list_data(tmp_path / "data" / "store.db"), "Zoë"}
        for path in AFTER:
            found |= dict.fromkeys(find_unsaid(printed.get(path).text, data), path)
    assert not found, "\n".join(f"{path}: {words}" for words, path in found.items())
